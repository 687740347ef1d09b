"""Headings that say in the same line where the piece is begun; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_PANTS = (
    "Pants\nUS terms\n\n{}\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
    "Row 2: Ch 1, sc in each st across. (10 sc)\nFasten off.\n\nSECOND LEG\nWork exactly as first leg, but do not fasten off at the end.\n"
)


@pytest.mark.parametrize(
    "heading",
    [
        "FIRST LEG - Beg at ankle.",
        "FIRST LEG – Begin at lower edge.",
        "FIRST LEG. Beg. at ankle.",
        "FIRST LEG: Start at the ankle.",
        "FIRST LEG - Beginning at the lower edge.",
    ],
)
def test_where_a_piece_is_begun(heading: str) -> None:
    """The words before the sign are the piece's name, by which it is called for later."""
    report = check(_PANTS.format(heading))
    assert [part.name for part in report.pattern.parts] == ["FIRST LEG", "SECOND LEG"]
    assert [row.cells[0].made.stitches for row in report.ledger.rows] == [0, 10, 10, 10, 10]


@pytest.mark.parametrize(
    "line", ["NOTE - Begin at the ankle.", "GAUGE - Begin at the ankle.", "NOTES: Begin at the ankle."]
)
def test_notes_are_no_pieces(line: str) -> None:
    """A note that says where to begin heads no rows."""
    assert [part.name for part in check(_PANTS.format(line)).pattern.parts] == ["Pants", "SECOND LEG"]
