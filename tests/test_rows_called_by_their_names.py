"""Rows that are called for by a name of their own, so often or until there are so many; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_STRIP = "Strip\nUS terms\n\nBAND\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n{}\n"


def _made(text: str) -> list[int | None]:
    return [row.cells[0].made and row.cells[0].made.stitches for row in check(text).ledger.rows][1:]


_RIB = "Rib row: Ch 1, sc in blo of each st across, turn.\n"
_NEXT = "\nNext row: Ch 1, sc in each st across, turn. (10 sc)"


@pytest.mark.parametrize(
    "call",
    [
        "Rep the rib row 4 times more.",
        "Repeat rib row 4 more times.",
        "Rep the rib row until there are 6 rows in all.",
        "Repeat the rib row until you have 6 rows in all, Row 1 included.",
        "Repeat the rib row until there are 6 rows in all, including Row 1.",
        "Repeat the rib row until there are 6 rows in total, counting the first row.",
    ],
)
def test_a_row_with_a_name_is_worked_again(call: str) -> None:
    """The article before the name, and rows told in all, with the one that has a number among them."""
    assert _made(_STRIP.format(_RIB + call + _NEXT)) == [10] * 7


@pytest.mark.parametrize(
    "call",
    [
        "Rep the rib row until there are 6 rows in blue.",
        "Rep the rib row until there are 6 rib rows in all.",
        "Rep the rib row as given for the cuff until there are 6 rows.",
    ],
)
def test_rows_that_are_not_all_rows_stay_open(call: str) -> None:
    """Of such words it is not known how many rows they come to."""
    assert counts(check(_STRIP.format(_RIB + call + _NEXT)))[-1] is None


def test_rows_in_all_behind_rows_by_a_measure() -> None:
    """Where rows before were worked to a length, it is not known how many there are in all."""
    before = "Row 2: Ch 1, sc in each st across, turn.\nRep Row 2 until piece measures 5 in.\n"
    made = _made(_STRIP.format(before + _RIB + "Rep the rib row until there are 40 rows in all." + _NEXT))
    assert made[-1] is None and len(made) < 9


_TOP = (
    "Top\nUS terms\nSizes: S (M) L (XL) XXL\n\nBACK\nCh 74 (80) 84 (90) 94.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (73 (79) 83 (89) 93 sc)\n"
    "Dec row: Ch 1, sc2tog, sc to last 2 sts, sc2tog, turn.\n{}\nNext row: Ch 1, sc in each st across. (69 (73) 77 (81) 85 sc)\n"
)


@pytest.mark.parametrize(
    "call",
    [
        "Work the dec row: for S 1 more time; for M and L 2 more times; for XL and XXL 3 more times = 69 (73) 77 (81) 85 sc.",
        "Repeat the dec row: for S once; for M and L twice; for XL and XXL 3 times.",
        "Repeat the dec row: S 1 time, M/L 2 times, XL/XXL 3 times.",
        "Rep dec row for S 1 time; for M and L 2 times; for XL and XXL 3 times.",
        "Work the dec row: 1 (2) 2 (3) 3 more times.",
    ],
)
def test_how_often_is_told_behind_a_colon(call: str) -> None:
    """The sentence is no name of a piece, and every size is told how often."""
    report = check(_TOP.format(call))
    assert [counts(report, size)[-1] for size in range(5)] == [69, 73, 77, 81, 85]
    assert {outcomes(report, size)[-1] for size in range(5)} == {"agrees"}


@pytest.mark.parametrize(
    "call",
    [
        "Work the dec row: at the neck edge only.",
        "Work the dec row: for S 1 more time.",
        "Repeat the dec row: for S once, for M and L twice, for L and XL and XXL 3 times.",
        "Repeat the dec row for S 1 time; for M and L 2 times.",
    ],
)
def test_a_sentence_that_is_not_understood_is_not_passed_over(call: str) -> None:
    """What stands behind the colon leaves the rows behind it open."""
    report = check(_TOP.format(call))
    assert {counts(report, size)[-1] for size in range(5)} == {None}


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Decrease 1 st at each end of the following rows: for S 2 rows; for M and L 3 rows; for XL and XXL 4 rows.",
            [69, 73, 77, 81, 85],
        ),
        ("Dec 1 st at each end of the next rows: 2 (3) 3 (4) 4 rows.", [69, 73, 77, 81, 85]),
        ("Dec 1 st at each end of the following rows: for S 2 rows; for M and L 3 rows.", [None] * 5),
        (
            "Dec 1 st at each end of the following rows: for S Row 2; for M and L Row 3; for XL and XXL Row 4.",
            [None] * 5,
        ),
        ("Dec 1 st at each end of the following rows: 2 rows.", [None] * 5),
    ],
)
def test_how_many_rows_each_size_shapes(words: str, made: list[int | None]) -> None:
    """The figures behind the colon are how many rows follow, where every size has one."""
    text = (
        "Top\nUS terms\nSizes: S (M) L (XL) XXL\n\nFRONT\nCh 74 (80) 84 (90) 94.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (73 (79) 83 (89) 93 sc)\n"
        f"{words}\nNext row: Ch 1, sc in each st. (69 (73) 77 (81) 85 sc)\n"
    )
    report = check(text)
    assert [counts(report, size)[-1] for size in range(5)] == made
    assert not corrections(report)
