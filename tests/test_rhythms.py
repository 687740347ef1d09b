"""Rows worked again at intervals, one sort after the other, and even rows behind them; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, counts

_SLEEVE = (
    "Test sleeve\nUS terms\nSizes: S (M, L)\n\nSLEEVE\nCh 33 (37, 41).\n"
    "Row 1: Hdc in 2nd ch from hook and in each ch across, turn. (32 (36, 40) hdc)\n"
    "Row 2 (Dec Row): Ch 1, hdc2tog, hdc in each st to last 2 sts, hdc2tog, turn. (30 (34, 38) hdc)\n{}\n"
    "Last Row: Ch 1, hdc in each st across.\n"
)


def _last(words: str) -> list[int | None]:
    cells = check(_SLEEVE.format(words)).ledger.rows[-1].cells
    return [cell.made.stitches if cell.made is not None else None for cell in cells]


@pytest.mark.parametrize(
    "words",
    [
        "Work a Dec Row on every 4th row 3 (4, 5) more times. (24 (26, 28) hdc)",
        "Continue in hdc, working a dec row every 4th row 3 (4, 5) times more.",
        "Cont in patt, rep Dec Row on every foll 4th row 3 (4, 5) times more.",
        "Rep Row 2 every 4th row 3 (4, 5) more times.",
        "Rep last row every 4th row 3 (4, 5) times more.",
        "Continue in hdc, decreasing 1 st at each end of every 4th row 3 (4, 5) more times.",
    ],
)
def test_one_row_in_four(words: str) -> None:
    """The row that is named is worked so often, with rows between that keep the number."""
    assert _last(words) == [24, 26, 28]


@pytest.mark.parametrize(
    "words",
    [
        "Rep Dec Row every row 3 (4, 5) more times, then every other row twice. (20 (22, 24) hdc)",
        "Work Dec Row on every other row 3 (4, 5) times more and on every 4th row 2 times.",
        "Dec 1 st at each end of every row 3 (4, 5) times, then every other row 2 times.",
        "Dec 1 st at each end of next row, then every other row 2 (3, 4) times, then every row 2 times.",
        "Work Dec Row on next row, then on every foll 6th row 4 (5, 6) times.",
    ],
)
def test_one_interval_after_another(words: str) -> None:
    """Each sort of rows goes on from the one before."""
    assert _last(words) == [20, 22, 24]


@pytest.mark.parametrize(
    "even", [", then work even until piece measures 9 in.", " and work straight to 9 in.", ", then work 5 rows even."]
)
@pytest.mark.parametrize("rows", ["Rep Dec Row 3 times more", "Rep Dec Row every 4th row 3 times more"])
def test_even_rows_behind_them(rows: str, even: str) -> None:
    """The even rows keep what the shaping left."""
    assert _last(rows + even) == [24, 28, 32]


@pytest.mark.parametrize(
    "words",
    [
        "Rep Dec Row every 4th row 3 times and AT THE SAME TIME dec 1 st at neck edge every other row 4 times.",
        "Rep Dec Row every 4th row 3 times more, then every 6th row.",
        "Rep last 2 rows every 4th row 3 times.",
        "Work Dec Row every 4th row 3 times at front edge only.",
        "Dec 1 st at each end of every row 3 times, then 2 sts every other row 2 times.",
    ],
)
def test_what_is_not_surely_understood_is_not_counted(words: str) -> None:
    """Two shapings at a time, no end told, several rows at an interval, one end only: told, and not passed over."""
    assert _last(words) == [None, None, None]
    assert "not-understood" in {finding.rule for finding in check(_SLEEVE.format(words)).findings}


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rep Decrease row a total of 4 times.", 22),
        ("Rep Decrease row every 6th row 4 times in total.", 22),
        ("Work Decrease row every alt row 4 times altogether.", 22),
        ("Rep Decrease row every 6th row 4 times more.", 20),
    ],
)
def test_so_often_in_total(words: str, made: int) -> None:
    """The named row that has just been worked is the first of all; of "4 times more" it is none."""
    rows = "Row 1: Fsc 30, turn. (30)\nDecrease row: Ch 1, sc2tog, sc to last 2 sts, sc2tog. (28)\n"
    assert counts(check(f"Front\n\nUS terms\n\nFRONT\n{rows}{words}\nLast row: Ch 1, sc across.\n"))[-1] == made
