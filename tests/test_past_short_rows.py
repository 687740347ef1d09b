"""Rows behind short rows: over the stitches that these have left, over all there is, or over the last of them; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_WEDGE = (
    "Wedge\nUS terms\n\nWEDGE\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
    "Row 2: Ch 1, sc in next 15 sts, turn, leaving rem 5 sts unworked. (15 sc)\n"
    "Row 3: Ch 1, sc in next 10 sts, turn, leaving rem 5 sts unworked. (10 sc)\nRow 4: {}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc in each of next 10 sts, sc in next 5 unworked sts, turn.", 15),
        ("Ch 1, sc in each of next 10 sts, sc in the 5 unworked sts, turn.", 15),
        ("Ch 1, sc in each st across, sc in the next 2 unworked sts, turn.", 12),
        ("Ch 1, sc in each st across, sc in the next unworked st, turn.", 11),
        ("Ch 1, sc in each of next 8 sts, sc in next 2 unworked sts, turn.", 10),
        ("Ch 1, sc in each of next 10 sts, sc in next 2 skipped chs, turn.", None),
    ],
)
def test_unworked_stitches_behind_all_of_a_short_row(words: str, made: int | None) -> None:
    """They are those that the row before has left, where the row's own are used up."""
    report = check(_WEDGE.format(words))
    assert counts(report)[-1] == made
    assert not corrections(report)


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, sc in all sts across.",
        "Ch 1, sc across all sts.",
        "Ch 1, sc across the whole row.",
        "Ch 1, sc over all sts.",
        "Work over all sts: Ch 1, sc in each st across.",
        "Ch 1, working over all sts, sc in each st across.",
        "Ch 1, sc in each st across, closing the gaps.",
        "Ch 1, sc in each st across, close both gaps at the turns.",
        "Ch 1, sc in each st and in the unworked sts across.",
        "Ch 1, sc in each st across, closing the gap with sc2tog.",
    ],
)
def test_over_all_there_is(words: str) -> None:
    """How many stitches the short rows and what they have left give together, the words do not tell."""
    assert counts(check(_WEDGE.format(words)))[-1] is None
    report = check(_WEDGE.format(f"{words} (20 sc)"))
    assert counts(report)[-1] is None and not corrections(report)


@pytest.mark.parametrize(
    "words", ["sc in all sts across", "sc across all sts", "sc across the whole row", "sc over all sts"]
)
def test_over_all_there_is_without_short_rows(words: str) -> None:
    """Where no row has left any, all of them are those of the row below."""
    text = "Mat\nUS terms\n\nMAT\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, {}, turn.\n"
    assert counts(check(text.format(words))) == [20, 20]


@pytest.mark.parametrize(
    "left", ["leaving rem 5 sts unworked", "leaving 5 sts unworked", "leaving the other 5 sts unworked for the neck"]
)
def test_a_number_of_stitches_left_behind_the_turn(left: str) -> None:
    """They are the row's last, whatever count stands behind, and yarn can be joined to them later."""
    text = (
        "Top\nUS terms\n\nFRONT\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
        f"Row 2: Ch 1, sc in next 15 sts, turn, {left}. (15 sc)\nRow 3: Ch 1, sc in each st across. (15 sc)\nFasten off.\n"
        "Skip next 2 unworked sts of Row 1 and join yarn in next st.\nNext row: Ch 1, sc in same st and in each st across. (3 sc)\n"
    )
    report = check(text)
    assert counts(report) == [20, 15, 15, 3]
    assert not corrections(report)
    assert corrections(check(text.replace("5 sts unw", "6 sts unw").replace("rem 5", "rem 6")))


@pytest.mark.parametrize("of", ["of Rnd 1", "beyond the turn"])
def test_a_round_is_no_short_row(of: str) -> None:
    """Short rows have numbers of their own, so that the stitches of Rnd 1 are none of Short Row 1."""
    text = (
        "Yoke\nUS terms\n\nYOKE\nCh 60, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (60 sc)\n"
        "Short Row 1: Ch 1, sc in next 20 sts, turn, leaving rem sts unworked. (20 sc)\n"
        f"Short Row 2: Ch 1, sc in each of these 20 sts, sc in next 4 sts {of}, turn. (24 sc)\n"
    )
    report = check(text)
    assert counts(report) == [60, 20, 24]
    assert not corrections(report)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc in each st to the turn, sc in the next unworked st beyond it, turn.", 11),
        ("Ch 1, sc in each st to the turn, sc in next 2 sts beyond it, turn.", 12),
        ("Ch 1, sc in next 10 sts, sc in next 3 sts of Row 1 beyond the turn, turn.", 13),
        ("Ch 1, sc in each of these 10 sts, then sc in next 5 sts of Row 1 past the turn, turn.", 15),
        ("Ch 1, sc in each st to the turn, sc2tog over the gap, turn.", None),
        ("Ch 1, sc in each st past the turn.", None),
    ],
)
def test_up_to_the_turn_and_beyond_it(words: str, made: int | None) -> None:
    """Up to the turn of the short row below are all of its stitches, and beyond it those of the row before."""
    report = check(_WEDGE.format(words))
    assert counts(report)[-1] == made
    assert not corrections(report)


def test_over_all_there_is_behind_a_row_that_was_not_counted() -> None:
    """A printed count of a short row is none of all the stitches there are."""
    text = (
        "Yoke\nUS terms\n\nYOKE\nCh 60, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (60 sc)\n"
        "Short Row 1: Ch 1, sc in next 20 sts, turn, leaving rem sts unworked. (20 sc)\nShort Row 2: Ch 1, sc as you like. (28 sc)\n"
        "Rnd 2: Ch 1, work over all sts, sc in each st around, closing the gap at both turns, join. (60 sc)\n"
    )
    report = check(text)
    assert counts(report)[-1] is None
    assert not corrections(report)
