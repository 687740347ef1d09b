"""Rows worked again in patterns of several sizes: so many of them, up to a number, as another piece is worked."""

from __future__ import annotations

import pytest
from helpers import check, worked_rows

BACK = """Test top

US terms

Sizes: S (M, L)

BACK
Ch 11 (13, 15).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (10 (12, 14) sc)
Row 2: Ch 1, sc in each st across, turn.
Row 3: Ch 1, 2 sc in first st, sc in each st across, turn.
"""


def rows_of(report, part: str) -> list[tuple[int | None, list[int | None]]]:
    """Number and stitches, by size, of every row of a piece that makes any."""
    rows = [row for row in report.ledger.rows if row.part.name == part and row.number is not None]
    return [(row.number, [cell.made.stitches if cell.made else None for cell in row.cells]) for row in rows]


@pytest.mark.parametrize(
    ("words", "last"),
    [
        ("Rep Row 2 until there are 5 (6, 7) rows in all.", [5, 6, 7]),
        ("Rep Row 2 – 5 (6, 7) rows in all.", [5, 6, 7]),
        ("Rep Row 2 until Row 5 (6, 7) is complete.", [5, 6, 7]),
        ("Rep Row 2 until 5 (6, 7) rows have been worked.", [5, 6, 7]),
        ("Rep Row 2 for 2 (3, 4) rows.", [5, 6, 7]),
        ("Rep Row 2 for 2 more rows.", [5, 5, 5]),
        ("Rep Row 2 2 (3, 4) times.", [5, 6, 7]),
        ("Rep Rows 2 and 3 1 (2, 2) times more.", [5, 7, 7]),
        ("Rep last 2 rows - (1, 2) times.", [3, 5, 7]),
        ("Rep Row 2 once (twice, 3 times).", [4, 5, 6]),
        ("Next 2 (3, 4) rows: Ch 1, sc in each st across, turn.", [5, 6, 7]),
    ],
)
def test_so_many_rows(words: str, last: list[int]) -> None:
    """Rows are worked again for so many rows, or times, or up to so many in all, in each size by its own figure."""
    rows = rows_of(check(BACK + words), "BACK")
    for size, end in enumerate(last):
        assert [number for number, made in rows if made[size] is not None] == list(range(1, end + 1))


def test_a_piece_worked_like_another() -> None:
    """ "Work as for Back to end of Row n" makes that piece's rows, with its chain, up to each size's own row."""
    text = BACK + "Rows 4-5 (5, 6): Rep Row 3.\n\nFRONT\nWork as for Back to end of Row 4 (4, 5).\n"
    assert rows_of(check(text), "FRONT") == [
        (1, [10, 12, 14]),
        (2, [10, 12, 14]),
        (3, [11, 13, 15]),
        (4, [12, 14, 16]),
        (5, [None, None, 17]),
    ]
    row = next(row for row in check(text).ledger.rows if row.part.name == "FRONT")
    assert text[row.span.start :].startswith("Work as for Back")


def test_a_piece_worked_like_another_through_its_headings() -> None:
    """The rows of that piece go on under the headings inside it, up to the row or the heading that is named."""
    text = BACK + "\nShape Armholes\nRow 4: Ch 1, sc in each st to last 2 sts, turn, leaving rem sts unworked.\n"
    to_row = rows_of(check(text + "\nFRONT\nWork as given for Back until Row 4 is complete.\n"), "FRONT")
    assert to_row[-1] == (4, [9, 11, 13])
    to_heading = rows_of(check(text + "\nFRONT\nWork as for Back to armholes.\n"), "FRONT")
    assert [number for number, _ in to_heading] == [1, 2, 3]


@pytest.mark.parametrize(
    "words",
    [
        "Work as for Back, reversing the stripes.",
        "Work as for Sleeve to end of Row 3.",
        "Work as for Back to end of Row 9.",
        "Work as for Back to the pocket.",
    ],
)
def test_a_piece_that_can_not_be_told(words: str) -> None:
    """Where the piece, its row or its heading is not there, or it is worked with changes, nothing is made up."""
    report = check(f"{BACK}\nFRONT\n{words}\nRow 9: Ch 1, sc in each st across.\n")
    assert all(cell.made is None for row in report.ledger.rows if row.part.name == "FRONT" for cell in row.cells)


def test_stitches_named_by_their_piece() -> None:
    """ "In each of the 5 (6, 7) back neck sts" makes one in each, whatever lies below."""
    text = (
        BACK
        + "Fasten off.\n\nEDGING\nJoin yarn at the side seam.\nRnd 1: Ch 1, sc in each of the 5 (6, 7) back neck sts, 10 sc evenly along the edge; join. (15 (16, 17) sc)\n"
    )
    (row,) = [row for row in worked_rows(check(text)) if row.part.name == "EDGING"]
    assert [cell.outcome.value for cell in row.cells] == ["agrees"] * 3


def test_shares_told_behind_a_row() -> None:
    """How a last row's stitches are shared out is no work."""
    text = BACK + "Fasten off. Mark the center 4 sts for the neck, with 3 (4, 5) sts on each side for the shoulders.\n"
    report = check(text)
    assert report.recomputed[0] == report.recomputed[1]


def test_rows_that_do_not_stand_side_by_side() -> None:
    """ "Rep Rows 2 and 4" is not Rows 2 to 4: the two in turn."""
    report = check(BACK + "Row 4: Ch 1, 2 sc in first st, sc in each st across, turn.\nRows 5-6: Rep Rows 2 and 4.")
    assert [[cell.made.stitches for cell in row.cells] for row in worked_rows(report)[-2:]] == [
        [12, 14, 16],
        [13, 15, 17],
    ]
