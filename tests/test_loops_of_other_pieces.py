"""Frills, skirts and brims on loops that a round of another piece has left free; yarns cut by their names.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

_TOY = (
    "Toy\nUS terms\n\nTrunk\nRnd 1: 7 sc in magic ring. (7)\nRnd 2: inc x 7 (14)\nRnd 3: sc 14 (14)\n"
    "Rnd 4: working in back loops only, (sc 5, dec) x 2 (12)\nRnd 5: sc 12 (12)\nFasten off.\n\n"
    "Paw (make 2)\nRnd 1: 5 sc in magic ring. (5)\nRnd 2: sc 5 (5)\nFasten off.\n\nFrill\n"
)


@pytest.mark.parametrize(
    "line",
    [
        "Join yarn in any leftover front loop of Rnd 3.",
        "Join Rust with sl st to a front loop of round 3, at the back.",
        "Hold the toy upside down and join Rust in an unused front loop of Rnd 3 at the side.",
        "Attach yarn to the first front loop left over from Rnd 3 of the trunk.",
        "Working in the remaining front loops of Rnd 3:",
    ],
)
@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("ch 1, sc in same loop and in each unused front loop around", 14),
        ("ch 1, *sc in next loop, 2 sc in next loop; rep from * around", 21),
        ("ch 1, 3 sc in each st around", 42),
    ],
)
def test_a_frill_on_the_loops_of_a_piece_before(line: str, row: str, made: int) -> None:
    """The loops that Rnd 4 left of Rnd 3 are fourteen, whatever was made in between, and may be called loops."""
    report = check(f"{_TOY}{line}\nRnd 1: {row}.\nRnd 2: sc in each st around.\n")
    assert counts(report)[-2:] == [made, made]
    assert corrections(report) == []


def test_a_chain_that_counts_stands_on_the_first_loop() -> None:
    """ "Ch 3, dc in the same loop, 2 dc in each remaining loop": two in each of fourteen."""
    row = "ch 3 (counts as a dc), dc in the same loop, 2 dc in each remaining front loop around, sl st to top of ch 3"
    assert counts(check(f"{_TOY}Join Rust in a free front loop of Rnd 3.\nRnd 1: {row}. (28)\n"))[-1] == 28


@pytest.mark.parametrize(
    "line",
    [
        "Join yarn in any leftover front loop of Rnd 2.",
        "Join yarn in any leftover back loop of Rnd 3.",
        "Go back to Rnd 3 and work in its front loops.",
        "The frill is worked in the front loops of Rnd 3.",
        "Working in the unused loops of the trunk:",
    ],
)
def test_loops_that_are_not_there_or_not_surely_meant(line: str) -> None:
    """Where no round has left such loops free, or the line is not understood, the round is not worked on the row below."""
    report = check(f"{_TOY.replace('Fasten off.', '')}{line}\nRnd 1: sc in each st around.\n")
    assert outcomes(report)[-1] == "not-recomputed"


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("sc in the free front loops of Rnd 3, join", 14),
        ("2 sc in each of the 14 unused front loops of Rnd 3", 28),
        ("hdc in each leftover loop of Rnd 3 around", 14),
        ("3 dc in each front loop of Rnd 3 of the trunk", 42),
        ("2 sc in leftover front loops of Rnd 3", None),  # in each of them, or two in all?
        ("sc in next 3 free front loops of Rnd 3, sc in each st around", None),
    ],
)
def test_loops_named_in_the_round_itself(row: str, made: int | None) -> None:
    """A round that names the loops it goes into, all of them or so many, stands on them."""
    report = check(f"{_TOY}Rnd 1: {row}.\n")
    assert counts(report)[-1] == made
    assert corrections(report) == []


def test_which_of_two_rounds_with_free_loops() -> None:
    """Two pieces have a Rnd 3 with free loops: only the name of one settles which is meant."""
    paw = "Paw\nRnd 1: 5 sc in magic ring. (5)\nRnd 2: inc x 5 (10)\nRnd 3: sc 10 (10)\nRnd 4: BLO, sc 10 (10)\nFasten off.\n\n"
    two = _TOY.replace("Paw (make 2)\nRnd 1: 5 sc in magic ring. (5)\nRnd 2: sc 5 (5)\nFasten off.\n\n", paw)
    row = "\nRnd 1: ch 1, sc in each loop around.\n"
    assert outcomes(check(f"{two}Join yarn in a front loop of Rnd 3.{row}"))[-1] == "not-recomputed"
    assert counts(check(f"{two}Join yarn in a front loop of Rnd 3 of the paw.{row}"))[-1] == 10
    assert counts(check(f"{two}Join yarn in a front loop of Rnd 3 of the trunk.{row}"))[-1] == 14


_BALL = "Ball\n\nBall\nWith Plum:\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: inc x 6 (12)\n{}\nRnd 3: (sc, inc) x 6 (18)\n"


@pytest.mark.parametrize(
    "line",
    [
        "Change to Straw, cut Plum.",
        "Change to Straw. Cut the Plum yarn.",
        "Join Straw. Fasten off Plum.",
        "Cut Straw.",
    ],
)
def test_the_other_yarn_is_cut(line: str) -> None:
    """The yarn that is cut is not the one on the hook: the work goes on without a join."""
    assert ("yarn-not-joined", 8) not in all_findings(check(_BALL.format(line)))


@pytest.mark.parametrize("line", ["Fasten off.", "Change to Straw. Cut Straw.", "Change to Straw. Fasten off Straw."])
def test_the_yarn_on_the_hook_is_cut(line: str) -> None:
    """Where it is the one on the hook, new yarn has to be joined."""
    assert ("yarn-not-joined", 8) in all_findings(check(_BALL.format(line)))


def test_a_yarn_cut_behind_a_round_of_two() -> None:
    """Which of the two is on the hook behind "3 sc in White, 3 sc in Red" is not said; nothing is found."""
    text = _BALL.format("Rnd 3: *3 sc in White, 3 sc in Red* x 2 (12)\nCut White.").replace("Rnd 3: (", "Rnd 4: (")
    assert corrections(check(text)) == []


@pytest.mark.parametrize(
    ("line", "section"),
    [
        ("75 m of 4 mm cotton cord, 5 mm hook", "yarn"),
        ("Jute, about 60 yards; 5 mm hook", "yarn"),
        ("The height of the finished bear is about 21 cm", "a finished size"),
        ("The width of the mat is 30 cm", "a finished size"),
    ],
)
def test_cord_and_height_are_given(line: str, section: str) -> None:
    """Cord by the metre is what the piece is made of; its height told in a sentence is its size."""

    def missing(text: str) -> bool:
        return any(section in one.message for one in check(text).findings if one.rule == "section-missing")

    row = "\n\nBase\nRnd 1: 6 sc in magic ring. (6)\n"
    assert missing(f"Mat\n\nLovely{row}")
    assert not missing(f"Mat\n\n{line}{row}")
