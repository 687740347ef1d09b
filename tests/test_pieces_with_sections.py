"""Pieces that have only sections, each under a heading of its own; and what notes say of chains in the fabric.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check

_BACK = (
    "Test top\nUS terms\n\n{}\nWelt\nCh 17.\nRow 1: Sc in 2nd ch from hook and in each ch across. (16 sc)\n"
    "Row 2: Ch 1, turn, sc in each sc across.\nPanel\nRow 1: Ch 1, turn, hdc in each st across.\n"
    "Row 2: Ch 1, turn, 2 hdc in first st, hdc in each st across. (17 hdc)\n"
    "Shoulders\nRow 1: Ch 1, turn, sc in each st across. (17 sc)\n\n"
)


def _made_below(text: str, heading: str) -> list[tuple[str, int | None]]:
    """Section and stitches of every row from the line of a heading on."""
    at = text.rindex(heading)
    rows = [row for row in check(text).ledger.rows if row.row.span.start > at]
    return [(row.part.name, row.first.made.stitches if row.first.made else None) for row in rows]


@pytest.mark.parametrize(("back", "front"), [("BACK", "FRONT"), ("Back", "Front")])
def test_a_section_like_that_of_the_other_piece(back: str, front: str) -> None:
    """ "Welt" under "FRONT" is worked as for the welt of the back, and its panel's rows as those of the panel."""
    text = _BACK.format(back) + f"{front}\nWelt\nWork as for Back.\nPanel\nRows 1 and 2: Same as for Back.\n"
    assert _made_below(text, front) == [("Welt", 16), ("Welt", 16), ("Panel", 16), ("Panel", 17)]


def test_the_whole_piece_and_a_part_of_it() -> None:
    """A piece without sections of its own calls for all of the other's, or for those before one."""
    text = _BACK.format("BACK") + "FRONT\nWork as for Back to shoulders.\n"
    assert [made for _, made in _made_below(text, "FRONT")] == [16, 16, 16, 17]
    text = _BACK.format("BACK") + "FRONT\nWork as for Back.\n"
    assert [made for _, made in _made_below(text, "FRONT")] == [16, 16, 16, 17, 17]


@pytest.mark.parametrize(
    "front", ["FRONT\nRibbing\nWork as for Back.\n", "FRONT\nRow 1: Fsc 16.\nWork Row 2 of Back.\n"]
)
def test_which_section_is_meant_is_not_said(front: str) -> None:
    """No section of that name, or several with such a row: nothing is counted."""
    assert _made_below(_BACK.format("BACK") + front, "FRONT")[-1][1] is None


def test_where_the_sections_end_is_not_told() -> None:
    """Headings that all look alike do not tell which of them are sections of the one with no rows."""
    apart = _BACK.format("Back").replace("\nPanel", "\n\nPanel").replace("\nWelt", "\n\nWelt")
    assert _made_below(apart + "Sleeve\n\nWork as for Back.\n", "Sleeve")[0][1] is None


_NOTED = "Test cloth\nUS terms\n\nNotes\n{}\n\nCLOTH\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, turn, sc in each st across.\n"


@pytest.mark.parametrize(
    "note",
    [
        "Each ch-1 sp counts as a stitch.",
        "The 1-ch spaces count as stitches.",
        "The beginning ch-1 does not count as a stitch. All ch-1 count as a stitch.",
        "Each ch 1 counts as a stitch; the turning ch 1 does not count as a stitch.",
    ],
)
def test_chains_in_the_fabric_that_count(note: str) -> None:
    """A chain's space that counts is not the chain that begins a row; and a note on beginning chains goes first."""
    rows = check(_NOTED.format(note)).ledger.rows
    assert [row.first.made.stitches for row in rows if row.row.label] == [11, 11]


def test_a_beginning_chain_that_counts() -> None:
    """The note says so, and both rows have one stitch more than they have sc."""
    rows = check(_NOTED.format("The turning ch 1 counts as a stitch.")).ledger.rows
    assert [row.first.made.stitches for row in rows if row.row.label][1] == 12


def test_a_text_without_any_piece() -> None:
    """Front matter alone is read, and nothing breaks."""
    assert check("Test mat\nUS terms\nGauge: 12 sts = 4 in\n").ledger.rows == ()


def test_a_short_word_over_the_next_piece() -> None:
    """ "FO" at the end of a piece ends it, and is no heading: the next piece begins anew."""
    text = (
        "Test doll\nUS terms\nFO = fasten off\nMC = magic circle\n\nCOLLAR\nRd 1: 6 sc in MC [6]\nRd 2: *inc* x6 [12]\nFO\n\n"
        "HEAD\nskin\nRd 1: 5 sc in MC [5]\nRd 2: *inc* x5 [10]\nFO\n"
    )
    assert [row.first.made.stitches for row in check(text).ledger.rows if row.row.label] == [6, 12, 5, 10]


def test_a_section_called_by_its_own_name() -> None:
    """The second fin has the rows of the first; "EARS (make 2)" in capitals is a piece of its own again."""
    text = (
        "Test fish\nUS terms\n\nTAIL\nFirst fin:\nRow 1: Fsc 5, turn. (5)\nRow 2: Sc2tog, sc in each st, turn. (4)\nFasten off.\n"
        "Second fin:\nRow 1: Fsc 5, turn. (5)\nRow 2: Work as for first fin.\n\nEARS (make 2)\nRow 1: Fsc 3, turn. (3)\n\n"
        "NOSE\nWork as for Tail.\n"
    )
    made = _made_below(text, "Second fin")
    assert made[:3] == [("Second fin", 5), ("Second fin", 4), ("EARS", 3)]
    assert [one for name, one in made if name == "NOSE"] == [5, 4, 5, 4]
