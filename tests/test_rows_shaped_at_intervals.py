"""Rows shaped at intervals under a label for more rows than are shaped; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections

_BACK = (
    "Test back\nUS terms\nSizes: S (M)\n\nBACK\nCh 31 (35).\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 30 (34) sc\n{}\nNext row: Ch 1, sc in each st across. {} sc\n"
)


def _made(words: str, last: str) -> list[tuple[int | None, tuple[int | None, ...]]]:
    rows = check(_BACK.format(words, last)).ledger.rows
    return [(row.number, tuple(cell.made and cell.made.stitches for cell in row.cells)) for row in rows[2:]]


@pytest.mark.parametrize(
    ("words", "last"),
    [
        ("Rows 2-17: Inc 1 st at each end of every 4th row 4 times. 38 (42) sts", "38 (42)"),
        ("Rows 2-20: Increase 1 st at both ends every 4th row 4 (3) times. 38 (40) sts", "38 (40)"),
        ("Rows 2-13: Dec 1 st at armhole edge on every 3rd row 2 (4) times. 28 (30) sts", "28 (30)"),
    ],
)
def test_the_last_row_has_its_number(words: str, last: str) -> None:
    """In which rows it falls is not said, so that only the last is numbered; its count is held in each size."""
    rows, text = _made(words, last), _BACK.format(words, last)
    ends = tuple(int(figure.strip("()")) for figure in last.split())
    assert [cells for number, cells in rows if number is not None] == [ends, ends][
        : sum(n is not None for n, _ in rows)
    ]
    assert rows[-1][1] == ends
    assert corrections(check(text)) == []
    assert corrections(check(text.replace(f"{last} sts", f"{last.replace('(', '(1')} sts"))) == [("count-differs", 8)]


def test_rows_that_end_elsewhere_in_each_size() -> None:
    """Which row of one size stands beside which of another is not known, so that none of them is shown."""
    rows = _made("Rows 2-9 (13): Inc 1 st at each end of every 4th row 2 (3) times. 34 (40) sts", "34 (40)")
    assert all(cells[0] is None for number, cells in rows[:-1] if number is not None)
    assert rows[-1][1] == (34, 40)


def test_more_shaped_than_rows() -> None:
    """A label for fewer rows than are shaped is a fault of the label."""
    text = _BACK.format("Rows 2-4: Inc 1 st at each end of every 2nd row 4 times. 38 (42) sts", "38 (42)")
    assert corrections(check(text)) == [("range-length-differs", 8)]


def test_an_interval_too_long_for_its_label() -> None:
    """From the first of four in every 4th row to the last there are thirteen rows; more may be named, fewer may not."""
    for rows, found in (("2-14", []), ("2-13", [("range-length-differs", 8)]), ("2-5", [("range-length-differs", 8)])):
        text = _BACK.format(f"Rows {rows}: Inc 1 st at each end of every 4th row 4 times. 38 (42) sts", "38 (42)")
        assert corrections(check(text)) == found, rows


def test_shaped_rows_that_are_named_one_by_one() -> None:
    """Four rows with three between each are as far apart as they are said to be."""
    text = _BACK.format("Rows 5, 9, 13 and 17: Inc 1 st at each end (every 4th row). 38 (42) sts", "38 (42)")
    assert ("range-length-differs", 8) not in corrections(check(text))


def test_a_label_before_words_that_may_be_for_more_rows() -> None:
    """What goes on, and was not understood, may end on any number; other work that was not understood has its own."""
    text = _BACK.format("Row 2: Continue with frobs in this way to 12 sts.", "38 (42)").replace("Next row", "Row 7")
    assert ("row-number-out-of-order", 9) not in corrections(check(text))
    other = text.replace("Continue with frobs in this way to 12 sts.", "Ch 1, frob in each st across, turn.")
    assert ("row-number-out-of-order", 9) in corrections(check(other))
