"""What ends rows that are worked again: stitches, a length, or something that is not counted here; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_WEDGE = "Test wedge\nUS terms\n\nWEDGE\nRow 1: Fsc 24, turn. (24 sc)\nRow 2: Ch 1, sc2tog, sc in each st across, turn. (23 sc)\nRow 3: Ch 1, sc in each st across, turn.\n{}\nNext Row: Ch 1, sc in each st across.\n"


def _ends(call: str) -> list[int | None]:
    """The counts of the last row that is called for, and of the row behind."""
    rows = check(_WEDGE.format(call)).ledger.rows
    return [row.cells[0].made.stitches if row.cells[0].made is not None else None for row in rows[-2:]]


@pytest.mark.parametrize(
    "until",
    ["16 sts remain", "there are 16 sts in all", "16 sc are left, ending with a WS row", "16 sts rem for back neck"],
)
def test_so_many_stitches(until: str) -> None:
    """The rows end at the number that is said."""
    assert _ends(f"Rep Row 2 until {until}.") == [16, 16]


@pytest.mark.parametrize(
    "until",
    ["9 in", "9½ ins from beg", '2" shorter than desired', "about 23 cm", "there are 8 (9) in", "you have 9 in"],
)
def test_lengths_are_no_stitches(until: str) -> None:
    """ "until 9 in" is a length: even rows stay as many stitches, shaped ones come to no number that is known."""
    assert _ends(f"Rep Row 3 until {until}.") == [23, 23]
    assert _ends(f"Rep Row 2 until {until}.")[1] is None


def test_to_the_end() -> None:
    """ "until end" says how far of rows that are numbered, and of others not how many they are."""
    assert _ends("Rows 4-6: Rep Row 2 until end.") == [20, 20]
    assert _ends("Rep Row 2 until end.")[1] is None


@pytest.mark.parametrize("until", ["piece is 4 rows shorter than back", "4 rows less than Front"])
def test_rows_of_another_piece_are_no_stitches(until: str) -> None:
    """How many rows that is, is not known here."""
    assert _ends(f"Rep Row 2 until {until}.")[1] is None


@pytest.mark.parametrize(
    "until",
    [
        "6 sts have been decreased",
        "you have decreased 4 sts",
        "16 sts are left on each side",
        "there are 16 sts between the markers",
        "16 sts remain unworked",
        "2 sts less than Front remain",
        "16 sts remain for each strap",
    ],
)
def test_stitches_that_are_not_those_of_the_row(until: str) -> None:
    """A number of other stitches ends no row at that count: told as not understood."""
    report = check(_WEDGE.format(f"Rep Row 2 until {until}."))
    assert report.ledger.rows[-1].cells[0].made is None
    assert "not-understood" in {finding.rule for finding in report.findings}


@pytest.mark.parametrize(
    "words", ["you have 16 sts left on the row", "you have 16 sts on the row", "16 sts remain in the row"]
)
def test_stitches_on_a_row_are_no_rows(words: str) -> None:
    """ "16 sts left on the row" are so many stitches, and no length told in rows."""
    assert _ends(f"Rep Row 2 until {words}.") == [16, 16]


def test_a_named_row_until_so_many() -> None:
    """ "Rep Dec Row until 10 sts remain" ends as a row told by number does; what it does not come to is not guessed."""
    rows = "Row 1: Fsc 16, turn. (16)\nDec Row: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (14)\n"
    for words, made in (("10 sts remain", 10), ("you have 10 sts left on the row", 10), ("9 sts remain", None)):
        text = f"Test tab\nUS terms\n\nTAB\n{rows}Rep Dec Row until {words}.\nNext Row: Ch 1, sc in each st across.\n"
        row = check(text).ledger.rows[-1].cells[0]
        assert (row.made.stitches if row.made is not None else None) == made
