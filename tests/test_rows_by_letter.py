"""Rows labelled by letters, lines over the rows that shape, ends of rows told apart; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, counts

_STRIP = (
    "Test strip\nUS terms\n\nSTRIP\nCh 9.\nRow A: Hdc in 2nd ch from hook and in each ch across. (8)\n"
    "Row B: Ch 1, turn, hdc in each st across.\nRow C: Ch 1, turn, 2 sc in first st, sc in each st across. (9)\n"
)


@pytest.mark.parametrize(
    ("call", "made"),
    [
        ("Rep Row C.", [10]),
        ("Repeat Row C twice more.", [10, 11]),
        ("Rep Rows B and C twice.", [9, 10, 10, 11]),
        ("Rep Rows C and D.", [None]),
        ("Rep Rows B and C until 14 sts.", [None]),
    ],
)
def test_rows_called_by_their_letter(call: str, made: list[int | None]) -> None:
    """A row of that letter is worked again; one that is not there, or more than is understood, is not counted."""
    rows = check(_STRIP + call + "\n").ledger.rows
    got = [row.first.made.stitches if row.first.made is not None else None for row in rows]
    assert got == [0, 8, 8, 9, *made]


@pytest.mark.parametrize("line", ["Decrease for the crown:", "Now increase as follows:", "Begin shaping:"])
def test_a_line_over_the_rows_that_shape(line: str) -> None:
    """It makes no stitches, and the rows below it go on."""
    text = f"Test cap\nUS terms\n\nCAP\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: 2 sc in each st. (16)\n{line}\nRnd C: Sc2tog around. (8)\n"
    assert counts(check(text)) == [8, 16, 8]


@pytest.mark.parametrize(
    ("end", "made"),
    [
        ("At end of Row 3, fasten off.", 8),
        ("At the end of Row 3 do not turn.", 8),
        ("At end of Row 3, ch 5 for the loop.", None),
        ("At end of Row 3, 2 sc in last st.", None),
    ],
)
def test_what_is_done_at_the_end_of_a_row(end: str, made: int | None) -> None:
    """What makes no stitches is understood there; what may make some is not passed over."""
    text = f"Test strip\nUS terms\n\nSTRIP\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)\nRows 2 and 3: Ch 1, turn, sc in each st across. {end}\n"
    assert counts(check(text)) == [8, made, made]


def test_yarn_joined_at_the_first_marker() -> None:
    """No first stitch is meant; the stitches told are counted."""
    text = "Test sleeve\nUS terms\n\nSLEEVE\nRow 1: Join yarn at the first marker, ch 1, work 30 hdc evenly between the markers, turn. (30)\n"
    assert counts(check(text)) == [30]
