"""What is told to one size after the other, in one line or in several.  Counts by arithmetic."""

from __future__ import annotations

import pytest
from helpers import check, counts

SOCK = (
    "Sock\n\nUS terms\n\nSizes: S (M, L)\n\nLEG\n{lines}\n"
    "Row 1: Hdc in 3rd ch from hook (skipped ch-2 does not count) and in each ch across. 38 (42, 46) hdc\n"
)


@pytest.mark.parametrize(
    "lines",
    [
        "Size S: Ch 40. Size M: Ch 44. Size L: Ch 48.",
        "For size S, ch 40. For size M, ch 44. For size L, ch 48.",
        "For size S, ch 40.\nFor size M, ch 44.\nFor size L, ch 48.",
        "S: ch 40; M: ch 44; L: ch 48.",
        "S: Ch 40\nM: Ch 44\nL: Ch 48",
        "Small: Ch 40 / Medium: Ch 44 / Large: Ch 48",
        "Small: Ch 40.\nMedium: Ch 44.\nLarge: Ch 48.",
    ],
)
def test_a_chain_for_each_size(lines: str) -> None:
    """Each size works on the chain that is told to it, less the two chains skipped."""
    report = check(SOCK.format(lines=lines))
    assert [counts(report, size)[-1] for size in range(3)] == [38, 42, 46]


def test_two_sizes_together() -> None:
    """Two sizes share a chain, and the third has its own."""
    report = check(SOCK.format(lines="Sizes S and M: Ch 42. Size L: Ch 48."))
    assert [counts(report, size)[-1] for size in range(3)] == [40, 40, 46]


def test_rows_told_in_one_line() -> None:
    """Rows even and then shaped rows in one paragraph: 40 sts, less two in each of three rows, every size its own number."""
    text = (
        "Sock\n\nUS terms\n\nSizes: S (M, L)\n\nLEG\nCh 41 (45, 49).\nRow 1: Sc in 2nd ch from hook and in each ch to end. 40 (44, 48) sts.\n"
        "Work even for 8 (9, 10) rows. Dec 1 st at each end of next row, then every 4th row 2 (2, 3) times more. 34 (38, 40) sts.\n"
    )
    report = check(text)
    for size, (rows, last) in enumerate([(18, 34), (19, 38), (24, 40)]):
        cells = [row.cells[size].made for row in report.ledger.rows if row.kind != "foundation"]
        made = [cell.stitches for cell in cells if cell is not None]
        assert (len(made), made[-1]) == (rows, last)
