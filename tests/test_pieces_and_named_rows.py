"""How many of a piece are made, told below its name; rows that notes name ahead; chains behind row ends; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_PIECE = (
    "Bag\nUS terms\n\n{}\n{}\n{}Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
    "Row 2: Ch 1, sc in each st across. (10 sc)\n"
)


def _made(text: str) -> list[int | None]:
    return [row.cells[0].made and row.cells[0].made.stitches for row in check(text).ledger.rows]


@pytest.mark.parametrize(
    ("below", "number"),
    [
        ("Make two", 2),
        ("(make 3)", 3),
        ("Make 2 alike.", 2),
        ("4 pieces", 4),
        ("Both alike", 2),
        ("Make two, one in A and one in B", 2),
    ],
)
@pytest.mark.parametrize("blank", ["", "\n"])
def test_how_many_are_made_below_the_name(below: str, number: int, blank: str) -> None:
    """The line is the heading's, whether the chain stands right below it or behind an empty line."""
    report = check(_PIECE.format("SIDE PANELS", below, blank))
    assert [(part.name, part.make) for part in report.pattern.parts] == [("SIDE PANELS", number)]
    assert [row.cells[0].made.stitches for row in report.ledger.rows] == [0, 10, 10]


@pytest.mark.parametrize(("heading", "number"), [("FLAPS (3 alike)", 3), ("Flaps - both alike", 2)])
def test_how_many_are_alike(heading: str, number: int) -> None:
    """The figure says how many; without one they are two."""
    assert [(part.name.lower(), part.make) for part in check(_PIECE.format(heading, "", "")).pattern.parts] == [
        ("flaps", number)
    ]


def test_a_row_that_makes_several_is_no_such_line() -> None:
    """Behind a row, and with stitches in it, the line is work."""
    report = check(_PIECE.format("PANEL", "", "") + "Make 2 sc in the last st.\n")
    assert report.pattern.parts[0].make == 1


_NOTES = (
    "Vest\nUS terms\n\nNOTES\nDec row: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\n\nBACK\nCh 21.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n{}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Row 2: Work Dec row. (18 sc)", [0, 20, 18]),
        ("Work Dec row 3 times.", [0, 20, 18, 16, 14]),
        ("Work Dec row every RS row 3 times.", [0, 20, 18, 16, 14]),
        ("Row 2: Ch 1, sc in each st across, turn.\nRep Dec row twice.", [0, 20, 20, 18, 16]),
    ],
)
def test_a_row_that_the_notes_name_ahead(words: str, made: list[int]) -> None:
    """It is worked where it is called for, and nothing is asked about it where it is told."""
    report = check(_NOTES.format(words))
    assert [row.cells[0].made.stitches for row in report.ledger.rows] == made
    assert not {"not-understood", "abbreviation-undefined"} & {finding.rule for finding in report.findings}


def test_a_row_named_ahead_that_nobody_calls_for() -> None:
    """It may be the first row of a piece without a heading: it stays one that is not understood."""
    report = check(_NOTES.format("Row 2: Ch 1, sc in each st across. (20 sc)"))
    assert report.ledger.rows[0].label == "Dec row"


@pytest.mark.parametrize(("often", "made"), [("3 times in total", [18, 16, 14]), ("2 more times", [18, 16, 14])])
def test_a_named_row_just_worked_is_among_those_in_total(often: str, made: list[int]) -> None:
    """ "Work dec row 3 times in total" behind that row leaves two more."""
    text = (
        "Flap\nUS terms\n\nFLAP\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
        f"Dec row: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18 sc)\nWork dec row {often}. (14 sc)\n"
    )
    assert _made(text)[2:] == made


_EDGED = (
    "Mat\nUS terms\n\nMAT\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
    "Rows 2-8: Ch 1, sc in each st across, turn. (12 sc)\n"
    "Rnd 1: Ch 1, sc in each of 12 sc, ch 2, {}, ch 2, sc in each of {} ch, ch 2, sc in each of 8 row ends, ch 2, join. {}\n"
)


@pytest.mark.parametrize("side", ["sc in each of 8 row ends", "sc in next 8 row ends", "8 sc evenly along side edge"])
def test_chains_behind_row_ends_are_the_foundations(side: str) -> None:
    """Round the corner the chains that are told by their number are those that the piece was begun on."""
    report = check(_EDGED.format(side, "12", "(40 sc, 4 ch-2 sps)"))
    assert [finding.rule for finding in report.findings if finding.rule.startswith(("places", "count-d"))] == []
    assert report.ledger.rows[-1].cells[0].made.stitches == 40


def test_a_slip_among_them_is_found() -> None:
    """Their number is counted: eleven for twelve are one too few."""
    report = check(_EDGED.format("sc in each of 8 row ends", "11", "(40 sc, 4 ch-2 sps)"))
    assert "count-differs" in {finding.rule for finding in report.findings}
