"""Loops counted from the hook, the third loop of a stitch, and work that goes on after the yarn was cut.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("from the 3rd loop from the hook 8 hdc", 8),
        ("starting from the third loop from the hook: 8 hdc", 8),
        ("sc in the 2nd loop from the hook and in each loop", 9),
        ("hdc in the 3rd loop from the hook, hdc in each loop to the end", 8),
    ],
)
def test_loops_of_a_chain_counted_from_the_hook(words: str, made: int) -> None:
    """The loops of a chain alone are its chains, the third as well as the second: ten chains, 9 or 8 left."""
    report = check(f"Belt\nUS terms\n\nStrap\nCh 10.\nRow 1: {words}. ({made})\n")
    assert counts(report) == [made]
    assert corrections(report) == []


@pytest.mark.parametrize(
    "words",
    [
        "hdc in the 3rd loop around",
        "hdc in 3rd loops around",
        "hdc in 3rd loop only of each hdc around",
        "3rd loop only, hdc in each st",
        "In third loop: hdc around",
        "hdc in third loop of next 14 hdc",
    ],
)
def test_the_third_loop_of_a_stitch(words: str) -> None:
    """ "3rd loop" around a round of hdc is a loop of each stitch, written in figures or in letters."""
    report = check(f"Band\nUS terms\n\nCuff\nRnd 1: 14 hdc in magic ring. (14)\nRnd 2: {words}. (14)\n")
    assert counts(report) == [14, 14]


_SHOE = (
    "Shoe\nUS terms\n\nSole\nRnd 1: With A, 9 sc in magic ring, join. (9)\n"
    "Rnd 2: Ch 1, 2 sc in each sc around, join. (18) Fasten off.\n\nSide\n"
)


@pytest.mark.parametrize(
    ("join", "row", "made"),
    [
        ("Join B in first sc.", "Ch 1, working in back loops only, sc in each sc around, join.", 18),
        ("Attach B with sl st to any sc.", "Ch 1, *sc in next 8 sc, 2 sc in next sc; rep from * around, join.", 20),
    ],
)
def test_a_round_on_the_one_fastened_off(join: str, row: str, made: int) -> None:
    """New yarn joined in a stitch, under a name of its own: the round stands on the last one, as its count says."""
    report = check(_SHOE + f"{join}\nRnd 1: {row} ({made})\nRnd 2: Ch 1, sc in each sc around, join. ({made})\n")
    assert counts(report)[2:] == [made, made]


@pytest.mark.parametrize(
    ("join", "count"),
    [("Join B in first sc.", "(12)"), ("Join B in first sc.", ""), ("Join B in any sc of Rnd 1.", "(18)")],
)
def test_a_round_somewhere_on_what_was_fastened_off(join: str, count: str) -> None:
    """Where the count does not bear it out, none is printed or another round is named, nothing is guessed."""
    report = check(_SHOE + f"{join}\nRnd 1: Ch 1, sc in each sc around, join. {count}\n")
    assert outcomes(report)[2] == "not-recomputed"
    assert corrections(report) == []


_MAT = (
    "Mat\nUS terms\n\nPanel\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (5 sc)\n"
    "Rows 2-7: Ch 1, sc in each sc across, turn. (5 sc)\nFasten off.\n\nSide Edging\nJoin B at the corner.\n"
)


@pytest.mark.parametrize(("count", "made"), [(14, 14), (12, None)])
def test_an_edge_along_the_rows_after_fastening_off(count: int, made: int | None) -> None:
    """Two in each of seven row ends are fourteen; another count leaves it open which edge is meant."""
    report = check(_MAT + f"Row 1: Ch 1, 2 sc in each row end, turn. ({count} sc)\n")
    assert counts(report)[-1] == made
    assert corrections(report) == []


@pytest.mark.parametrize("join", ["in the first ch of the starting chain", "in any ch of the beginning chain"])
def test_a_lower_edge_on_the_starting_chain(join: str) -> None:
    """The chain that a piece was started on, by any name, has its chains' other side free."""
    report = check(
        "Cowl\nUS terms\n\nTube\nCh 14 and join with a sl st in the first ch.\nRnd 1: Ch 1, sc in each ch around, join. (14 sc)\n"
        f"Rnd 2: Ch 1, 2 sc in each sc around, join. (28 sc)\nFasten off.\n\nHem\nJoin yarn {join}.\n"
        "Rnd 1: Ch 1, sc in each ch around, join. (14 sc)\n"
    )
    assert counts(report) == [14, 28, 14]


@pytest.mark.parametrize("told", ["A twist is 4 sts.", "The twist is worked over 4 sts.", "It makes 4 sts."])
def test_what_a_stitch_comes_to_behind_its_recipe(told: str) -> None:
    """A sentence on how many stitches a cable has stands behind its recipe, and agrees with it."""
    assert _twisted(told) == [12, 12]


@pytest.mark.parametrize("told", ["A twist is 6 sts.", "A twist is worked over 2 sts."])
def test_what_a_stitch_does_not_come_to(told: str) -> None:
    """Where that sentence contradicts the recipe, rows with the stitch are not counted by either."""
    assert _twisted(told) == [12, None]


def _twisted(told: str) -> list[int | None]:
    return counts(
        check(
            "Strip\nUS terms\n\nSpecial stitch\nTwist: skip next 2 sts, FPtr around each of next 2 sts, working in front, "
            f"FPtr around each of the 2 skipped sts. {told}\n\nStrip\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch. (12)\n"
            "Row 2: Ch 1, turn, sc in next 4 sts, twist over next 4 sts, sc in next 4 sts. (12)\n"
        )
    )
