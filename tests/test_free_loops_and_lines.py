"""Work into the loops that a round has left free, wherever they are said; and short lines between rounds.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

_POT = (
    "Pot\n\nBowl\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: 2 sc in each st. (16)\nRnd 3: sc around. (16)\n"
    "Rnd 4: in BLO, (2 sc, sc2tog) 4 times. (12)\nRnd 5: sc around. (12)\n\nFrill\nJoin yarn in any front loop of Rnd 3.\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("3 sc in each leftover front loop of Rnd 3", 48),
        ("Ch 1, 2 sc in each free front loop of Rnd 3 around", 32),
        ("2 sc in every front loop left over from Rnd 3", 32),
        ("2 sc in each exposed FLO of Rnd 3", 32),
        ("sc in each front loop of Rnd 3", 16),
        ("(sc, 2 sc in next st) 8 times in the leftover front loops of Rnd 3", 24),
        ("(3 sc, 2 sc in next st) 4 times in FLO of Rnd 3", 20),
    ],
)
def test_a_piece_on_the_loops_of_the_one_before(words: str, made: int) -> None:
    """The 16 front loops that Rnd 4 left free are the places of a frill, though it stands under a name of its own."""
    report = check(_POT + f"Rnd 1: {words}. ({made})\nRnd 2: sc around. ({made})\n")
    assert counts(report)[-2:] == [made, made]
    assert corrections(report) == []


@pytest.mark.parametrize(
    "words",
    [
        "3 sc in each leftover back loop of Rnd 3",
        "3 sc in each leftover front loop of Rnd 2",
        "3 sc in each leftover front loop of Rnd 5",
        "(sc in next st, inc, inc) 4 times, sc in next 4 in the leftover front loops of Rnd 3",
    ],
)
def test_loops_that_are_not_there_or_not_of_all_the_work(words: str) -> None:
    """Loops that no round left free, or that are said of the last of several stitches only, give no count."""
    assert outcomes(check(_POT + f"Rnd 1: {words}.\n"))[-1] == "not-recomputed"


def test_too_few_repeats_for_the_free_loops() -> None:
    """Work told to go into free loops is held against those, not against the round made last."""
    report = check(_POT + "Rnd 1: (sc, 2 sc in next st) 6 times in the free front loops of Rnd 3. (18)\n")
    assert all_findings(report) == [("places-left-over", 12)]


@pytest.mark.parametrize("line", ["fill", "fill it loosely", "fill the bowl", "stuff firmly"])
def test_a_short_line_behind_a_count(line: str) -> None:
    """What is done between rounds, in small letters and without a stop, is no work of the round above it."""
    report = check(f"Pot\n\nBowl\nRnd 1: 8 sc in MC [8]\nRnd 2: 2sc in each st [16]\n{line}\nRnd 3: 16sc [16]\n")
    assert counts(report) == [8, 16, 16]


@pytest.mark.parametrize("line", ["fill the gap with 3 sc", "wibble in next 3 sts", "again", "omit the last one"])
def test_a_short_line_that_may_be_work(line: str) -> None:
    """Words below a count that may add to the round, or take from it, leave it not recomputed."""
    report = check(f"Pot\n\nBowl\nRnd 1: 8 sc in MC [8]\nRnd 2: 2sc in each st [16]\n{line}\nRnd 3: 16sc [16]\n")
    assert outcomes(report)[1] == "not-recomputed"


_SCALLOPED = (
    "Scarf\n\nUS terms\n\nSCARF\nCh 26.\n"
    "Row 1: Sc in 2nd ch from hook, *skip 3 ch, 7 dc in next ch, skip 3 ch, sc in next ch; rep from * across. (21 dc, 4 sc)\n"
    "Fasten off.\n\nSECOND END\nRow 1: With RS facing and working along opposite side of foundation ch, join yarn in first ch, "
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("ch 1, sc in same ch, *skip 3 ch, 9 dc in next ch, skip 3 ch, sc in next ch; rep from * across", 31),
        ("ch 1, sc in same ch and in each ch across", 25),
        ("ch 1, sc in same ch, *ch 3, skip next 3 ch, sc in next ch; rep from * across", 7),
        ("ch 1, sc in each free loop across", None),
        ("ch 1, sc in each st across", None),
        ("ch 1, sc in first ch, *2 sc in next sp, sc in next ch; rep from * across", None),
    ],
)
def test_the_other_side_of_a_chain_that_was_not_worked_chain_by_chain(words: str, made: int | None) -> None:
    """Chains that the first row passed over are chains of the other side; whether they are loops or stitches is not told."""
    assert counts(check(_SCALLOPED.replace("(21 dc, 4 sc)", "") + f"{words}.\n")) == [25, made]
