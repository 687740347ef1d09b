"""Lists for the sizes of a passage alone, fractions in lists, chains below a line of talk; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check

_SOCK = (
    "Test sock\nUS terms\nSizes: Baby, Child, Adult\n{}\n\nCUFF\nCh {}.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across. ({})\n{}\n"
)


def _made(text: str) -> list[list[int | None]]:
    rows = [row for row in check(text).ledger.rows if row.row.label is not None]
    return [[cell.made.stitches if cell.made is not None else None for cell in row.cells] for row in rows]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("sc in next 3/4 sts, sc2tog, sc in each st to end. (11/13)", [None, 11, 13]),
        ("sc2tog 2/3 times, sc in each st to end. (10/11)", [None, 10, 11]),
        ("sc2tog, sc in each st to end. (11, 13 sc)", [None, 11, 13]),
        ("sc in next 3/4, sc2tog, sc in each st to end.", [None, None, None]),
        ("sc in next 3/4/5 sts, sc2tog, sc in each st to end.", [None, 11, 13]),
    ],
)
def test_lists_for_two_of_three_sizes(row: str, made: list[int | None]) -> None:
    """In a passage for two sizes two figures are theirs; what is no such list is not counted."""
    text = _SOCK.format("", "9/13/15", "8/12/14", f"Child and Adult only:\nRow 2: Ch 1, turn, {row}")
    assert _made(text)[1] == made


def test_a_count_that_one_of_them_does_not_come_to() -> None:
    """The figures of a count parted by a comma are compared, each in its size."""
    text = _SOCK.format(
        "", "9/13/15", "8/12/14", "Child and Adult only:\nRow 2: Ch 1, turn, sc2tog, sc in each st to end. (11, 14 sc)"
    )
    assert [f.sizes for f in check(text).findings if f.rule == "count-differs"] == [("Adult",)]


@pytest.mark.parametrize("length", ["7/8½/10", "5/6½/7¾", "6½/7/8"])
def test_halves_in_a_list_parted_by_strokes(length: str) -> None:
    """ "7/8½" is two figures, and no seven eighths and a half."""
    text = _SOCK.format(f'Length: {length}"', "9/13/15", "8/12/14", "")
    assert "size-step-broken" not in dict(all_findings(check(text)))


@pytest.mark.parametrize("talk", ["The cuff is worked sideways, in short rows of ribs.", "This part becomes the leg!"])
def test_a_chain_below_a_line_of_talk(talk: str) -> None:
    """The sentence makes nothing; the chain in the next line begins the piece."""
    text = _SOCK.format("", "9/13/15", "8/12/14", "").replace("CUFF\n", f"CUFF\n{talk}\n")
    assert _made(text)[0] == [8, 12, 14]
