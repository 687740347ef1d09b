"""Shaping at two edges at once, rows that grow as they are said to, and row ends by their rows; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_FRONT = (
    "Test top\nUS terms\nSizes: S (M)\n\nFRONT\nCh 31 (35).\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 30 (34) sc.\n{}\n"
)


def _made(text: str, size: int = 0) -> list[int | None]:
    return [
        cell.made and cell.made.stitches
        for cell in (row.cells[min(size, len(row.cells) - 1)] for row in check(text).ledger.rows)
        if cell.outcome.value != "not-worked"
    ]


@pytest.mark.parametrize(
    "words",
    [
        "Dec 1 st at armhole edge every row 2 (3) times, AT THE SAME TIME dec 1 st at neck edge every row 4 (3) times.",
        "At the same time, dec 1 st at armhole edge on next 2 (3) rows and dec 1 st at neck edge on next 4 (3) rows.",
        "Dec 1 st at neck edge every row 4 (3) times, and at the same time dec 1 st at armhole edge every row 2 (3) times. 24 (28) sc.",
        "Continue to dec 1 st at armhole edge every RS row 2 (3) times and at the same time dec 1 st at neck edge every RS row 4 (3) times, until 24 (28) sts remain.",
    ],
)
def test_two_edges_at_once(words: str) -> None:
    """Rows that lose at both edges come first, then those of the edge that has more of them, in each size by itself."""
    text = _FRONT.format(words)
    assert _made(text)[2:] == [28, 26, 25, 24]
    assert _made(text, 1)[2:] == [32, 30, 28]
    assert "count-differs" not in {finding.rule for finding in check(text).findings}


def test_a_wrong_count_behind_both() -> None:
    """How many stitches are said to remain is held against what the rows leave."""
    words = "Dec 1 st at armhole edge every row twice and at the same time dec 1 st at neck edge every row 4 times, until 23 sts remain."
    assert "count-differs" in {finding.rule for finding in check(_FRONT.format(words)).findings}


@pytest.mark.parametrize(
    "words",
    [
        "Dec 1 st at armhole edge every row 2 (3) times, AT THE SAME TIME dec 1 st at neck edge every 4th row 4 (3) times.",
        "Dec 1 st at armhole edge every row 2 (3) times, then dec 1 st at neck edge every row until shoulder fits.",
        "At the same time, dec 1 st at armhole edge every row, and dec 1 st at neck edge every row 4 (3) times.",
    ],
)
def test_two_edges_of_which_the_rows_are_not_told(words: str) -> None:
    """Two paces, or one without an end: which row loses how many is not made up."""
    assert _made(_FRONT.format(words))[-1] is None


_SHAWL = (
    "Test shawl\nUS terms\n\nSHAWL\nCh 4.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (3 sc)\n"
    "Row 2: Ch 1, 2 sc in first sc, sc in each sc across, turn. (4 sc)\n"
    "Row 3: Ch 1, sc in each sc to last sc, 2 sc in last sc, turn. (5 sc)\n{}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rows 4-7: Rep Rows 2 and 3, increasing 1 st at the same edge on every row.", [6, 7, 8, 9]),
        ("Rows 4-5: Rep Rows 2 and 3, inc 1 st at shaped edge in each row. (7 sc)", [6, 7]),
        ("Rows 4-5: Rep Rows 2 and 3, increasing 2 sts at the neck edge on every row.", [None, None]),
    ],
)
def test_a_remark_on_what_rows_gain(words: str, made: list[int | None]) -> None:
    """It tells what the rows do that are called for; where they do something else, they are not what is meant."""
    assert _made(_SHAWL.format(words))[-len(made) :] == made


_STRIP = (
    "Test strip\nUS terms\n\nSTRIP\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
    "Rows 2-6: Ch 1, sc in each st across, turn. (8 sc)\n"
    "Rows 7-9: Ch 3 (counts as dc), dc in next st and in each st across, turn. (8 dc)\n{}\n\nEDGE\nRow 1: Ch 1, {}.\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("2 sc in each dc row end across, turn", 6),
        ("sc in the end of each sc row, 2 sc in the end of each dc row, turn", 12),
        ("sc in each sc row end across, 2 sc in each dc row end across, turn", 12),
        ("2 sc in the side of each dc row across, turn", 6),
        ("2 sc in each tr row end across, turn", None),
    ],
)
def test_row_ends_by_the_stitch_of_their_rows(words: str, made: int | None) -> None:
    """Only rows of that stitch are meant; those of a stitch that no row has are not made up."""
    assert _made(_STRIP.format("", words))[-1] == made


@pytest.mark.parametrize("last", ["Rep Row 2 until strip measures 10 in.", "Rep Row 2 every 4th row 3 times."])
def test_rows_of_untold_number_have_untold_ends(last: str) -> None:
    """Behind rows worked to a length, or at intervals, nobody knows how many row ends there are."""
    assert _made(_STRIP.format(last, "sc in each row end across, turn"))[-1] is None
