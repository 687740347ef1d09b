"""A piece begun as another one was: its foundation and its first rows; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_BACK = (
    "Test jacket\nUS terms\nSizes: S (M, L)\n\nBACK\nCh 32 (36, 40).\n"
    "Foundation Row: Sc in 2nd ch from hook and in each ch across, turn. (31 (35, 39) sc)\n"
    "Row 1: Ch 1, hdc in each st across, turn.\nRow 2: Ch 1, hdc2tog, hdc in each st across, turn. (30 (34, 38) hdc)\n"
    "Row 3: Ch 1, hdc2tog, hdc in each st across, turn. (29 (33, 37) hdc)\n\nFRONT\n{}\nNext Row: Ch 1, hdc in each st across.\n"
)


def _last(words: str) -> list[int | None]:
    cells = check(_BACK.format(words)).ledger.rows[-1].cells
    return [cell.made.stitches if cell.made is not None else None for cell in cells]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Work foundation row and 1st row as for Back.", [31, 35, 39]),
        ("Foundation row and 1st row: As given for Back.", [31, 35, 39]),
        ("Foundation row: As for Back.\nRow 1: As for Back.", [31, 35, 39]),
        ("Foundation ch, foundation row and Rows 1-2 same as Back.", [30, 34, 38]),
        ("Work the foundation row and first 2 rows of Back.", [30, 34, 38]),
        ("Work Rows 1 and 2 as for Back.", [30, 34, 38]),
        ("Ch 22 (24, 26).\nFoundation row and 1st row as for Back.", [21, 23, 25]),
    ],
)
def test_the_beginning_of_another_piece(words: str, made: list[int]) -> None:
    """The rows are worked on that piece's chain, or on their own, and never on the last row of the piece before."""
    assert _last(words) == made


@pytest.mark.parametrize(
    "words",
    [
        "Foundation row and 1st row as for Back, but with smaller hook.",
        "Foundation row and Row 3 as for Back.",
        "Work foundation row and Rows 1, 2 and 1 as for Back.",
        "Work foundation row and rows 1 to 2 as for Back, then work 2 more rows.",
    ],
)
def test_a_beginning_that_is_not_quite_the_same(words: str) -> None:
    """What is not surely the rows from the first on is not counted, and said so."""
    assert _last(words) == [None, None, None]
    assert "not-understood" in {finding.rule for finding in check(_BACK.format(words)).findings}


def test_a_row_of_another_piece_without_its_foundation() -> None:
    """A first row labelled by itself has nothing told below it."""
    report = check(_BACK.format("Row 1: As for Back."))
    assert [row.cells[0].made for row in report.ledger.rows if row.part.name == "FRONT"][0] is None
