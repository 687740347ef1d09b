"""Rows of a piece worked again for another one, told in a sentence; and pieces folded flat.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, outcomes

_BAG = (
    "Bag\nUS terms\n\nBase\nRnd 1: 10 sc into magic ring. (10 sc)\nRnd 2: 2 sc in each sc. (20 sc)\n\nFirst Handle\n"
    "Row 1: Ch 1, sc in next 5 sc, turn. (5 sc)\nRow 2: Ch 1, sc in each sc, turn. (5 sc)\n"
    "Row 3: Ch 1, sc2tog, sc in next sc, sc2tog. (3 sc)\nFasten off.\n\nSecond Handle\n"
)


def _second(line: str) -> list[tuple[int | None, int | None]]:
    rows = [row for row in check(_BAG + line + "\n").ledger.rows if row.part.name == "Second Handle"]
    return [(row.number, row.first.made.stitches if row.first.made else None) for row in rows]


@pytest.mark.parametrize(
    "line",
    [
        "Skip next 5 sc of Rnd 2, join yarn in next sc and work Rows 1-3 as for first handle.",
        "With RS facing, rejoin yarn to next sc and work as for first handle.",
        "Work 1st to 3rd rows as for first handle.",
        "Rejoin yarn at the other side and rep rows 1-3 of first handle.",
        "Skip 5 sc, join yarn in next sc. Work Rows 1 to 3 of First Handle.",
    ],
)
def test_a_second_piece_told_in_a_sentence(line: str) -> None:
    """The rows that a sentence under a heading calls for are that piece's, under their own numbers."""
    assert _second(line) == [(1, 5), (2, 5), (3, 3)]


def test_only_some_rows_of_the_other_piece() -> None:
    """ "Work Rows 1 and 2 as for first handle" makes those two."""
    assert _second("Join yarn in next sc and work Rows 1 and 2 as for first handle.") == [(1, 5), (2, 5)]


@pytest.mark.parametrize(
    "line",
    [
        "Join yarn in next sc and work as for first handle, reversing the stripes.",
        "Join yarn in next sc and complete as for first handle.",
        "Work Rows 1 and 2 as for first handle, then 2 more rows of dc.",
        "Join yarn in next sc, work as for first handle but leave the last row out.",
    ],
)
def test_a_second_piece_that_is_not_quite_the_same(line: str) -> None:
    """What changes the rows called for leaves the piece not counted; it is not passed over in silence."""
    assert [made for _, made in _second(line)] == [None]


@pytest.mark.parametrize(
    ("words", "left"),
    [
        ("fold in half and knit for both sides 5 sc", False),
        ("Fold in half, 5 sc for both layers.", False),
        ("fold in half and knit for both sides 3 sc", True),
    ],
)
def test_a_round_folded_and_worked_for_both_sides(words: str, left: bool) -> None:
    """A round of ten folded flat has five places: five stitches through both sides use them all."""
    report = check(f"Bird\n\nWing\n1 row: 5 sc in magic ring (5)\n2 row: 5 inc (10)\n3 row: {words}\n")
    assert outcomes(report)[-1] == "not-stated"
    assert corrections(report) == []
    assert ("places-left-over" in [one.rule for one in report.findings]) is left


@pytest.mark.parametrize(
    "words",
    [
        "Make the ribbing and the body as for the back until the panel is 6 rows shorter than the back.",
        "Crochet the front piece exactly as for the back, with a lower neck.",
        "Repeat the ribbing and body as for the back.",
    ],
)
def test_several_parts_of_a_piece_like_those_of_another(words: str) -> None:
    """How much of the piece that is, is not known: told, and the next row is not worked on the piece before."""
    text = f"Vest\nUS terms\n\nBACK\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n\nFRONT\n{words}\nNext Row: Ch 1, sc in each st.\n"
    report = check(text)
    assert report.ledger.rows[-1].cells[0].made is None
    assert "not-understood" in [one.rule for one in report.findings]
