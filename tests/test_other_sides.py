"""Sides and pieces worked as the mirror of others, and those completed to match; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_NECK = """Test vest
UK terms
Sizes: S (M)

BACK
Make 31 (35) ch.
1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn. 30 (34) dc.
2nd to 4th rows: 1 ch, 1 dc in each dc to end, turn.
Shape neck
Next row: 1 ch, 1 dc in each of first 12 (13) dc, turn, leaving rem dc unworked.
Dec 1 st at neck edge on next 3 rows. 9 (10) dc.
Work 2 rows straight.
Fasten off.
{joined}
{completed}
"""
_JOINED = (
    "With RS facing, miss centre {} dc, rejoin yarn in next dc, 1 ch, 1 dc in same place, 1 dc in each dc to end, turn."
)


def _made(text: str, size: int = 0) -> list[int | None]:
    return [
        row.cells[min(size, len(row.cells) - 1)].made and row.cells[min(size, len(row.cells) - 1)].made.stitches
        for row in check(text).ledger.rows
    ]


@pytest.mark.parametrize(
    "completed",
    [
        "Complete to match first side, reversing shapings.",
        "Finish to correspond with first side of neck, reversing all shaping.",
        "Complete this side to match the first side.",
        "Complete as for first side, reversing shaping.",
    ],
)
def test_a_side_completed_to_match(completed: str) -> None:
    """What the first side has behind the row that parts it off is worked, in every size."""
    text = _NECK.format(joined=_JOINED.format("6 (8)"), completed=completed)
    assert _made(text)[-6:] == [12, 11, 10, 9, 9, 9]
    assert _made(text, 1)[-6:] == [13, 12, 11, 10, 10, 10]


def test_a_side_that_does_not_match() -> None:
    """Where the other side stands on another number of stitches, its rows are not those that are worked."""
    text = _NECK.format(
        joined=_JOINED.format("7 (9)"), completed="Complete to match first side, reversing shapings. 9 (10) dc."
    )
    assert _made(text)[-2:] == [11, None] or _made(text)[-1] is None


@pytest.mark.parametrize(
    "completed",
    [
        "Complete to match first side in rib.",
        "Complete to match the collar, reversing shapings.",
        "Complete to match first side, reversing shapings and leaving 2 rows out.",
    ],
)
def test_what_is_not_just_the_other_side(completed: str) -> None:
    """Another stitch, another piece or another number of rows is told as not understood."""
    text = _NECK.format(joined=_JOINED.format("6 (8)"), completed=completed)
    assert _made(text)[-1] is None
    assert "not-understood" in {finding.rule for finding in check(text).findings}


_FRONTS = """Test cardigan
US terms

LEFT FRONT
Ch 16.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (15 sc)
Row 2: Ch 1, sc in each st across, turn.
Shape Neck
Row 3: Ch 1, sc in first 11 sts, turn, leaving rem sts unworked. (11 sc)
Row 4: Ch 1, sc2tog, sc in each st across, turn. (10 sc)
Fasten off.

RIGHT FRONT
{}
"""


@pytest.mark.parametrize(
    "words",
    [
        "Work as for Left Front, reversing shaping.",
        "Work the same as Left Front but mirrored.",
        "Work as given for Left Front, with all shapings reversed.",
        "Work as for Left Front in mirror image.",
    ],
)
def test_a_piece_in_reverse(words: str) -> None:
    """The mirrored rows make as many stitches, those under the headings within the piece among them."""
    text = _FRONTS.format(words)
    assert _made(text)[-4:] == [15, 15, 11, 10]
    assert "pieces-do-not-mirror" not in {finding.rule for finding in check(text).findings}


@pytest.mark.parametrize(
    "words", ["Work as for Left Front, reversing stripes.", "Work as for Left Front in reverse order."]
)
def test_a_piece_with_something_else_reversed(words: str) -> None:
    """Only shaping may be reversed without changing a count."""
    assert _made(_FRONTS.format(words))[-1] is None


def test_rows_up_to_a_count_of_another_piece() -> None:
    """ "Until there are 16 sts" goes on in a piece that is worked like another as it does in that one."""
    text = (
        "Test sleeves\nUS terms\n\nRIGHT SLEEVE\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. 10 sc.\n"
        "Row 2: Ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn. 12 sc.\n"
        "Rep Row 2 until there are 18 sts.\nFasten off.\n\nLEFT SLEEVE\nWork as for Right Sleeve.\n"
    )
    assert _made(text)[-5:] == [10, 12, 14, 16, 18]


@pytest.mark.parametrize(
    "words",
    [
        "Work to correspond to Left Front, reversing shaping.",
        "Ch 16.\nWork to match Left Front, reversing all shapings.",
    ],
)
def test_a_piece_of_which_nothing_is_worked_yet(words: str) -> None:
    """Right below its name it is all of the other piece that is called for."""
    assert _made(_FRONTS.format(words))[-4:] == [15, 15, 11, 10]
