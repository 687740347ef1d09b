"""Filet squares worked one way over a block and another over a space (common practice, no source)."""

from __future__ import annotations

import pytest
from helpers import all_findings, counts, outcomes
from helpers import check as check_text

ABBREVIATIONS = "Abbreviations\nbl(s) = block(s)\nch = chain\ndc = double crochet\nsp(s) = space(s)\n"
ROWS = """Mat

Ch 21.
Row 1: Dc in 4th ch from hook (counts as 2 dc), dc in each ch across, turn. (19 dc)
Row 2: Ch 3, 1 bl, 4 sps, 1 bl, turn. (11 dc)
Row 3: Ch 3, 1 bl, 1 sp, 2 bls, 1 sp, 1 bl, turn. (15 dc)
Row 4: Ch 3, 1 bl, 4 sps, 1 bl, turn. (11 dc)
"""
FOUR_WAYS = """Filet stitches
Space over space: Ch 2, dc in next dc.
Space over block: Ch 2, skip 2 dc, dc in next dc.
Block over space: 2 dc in next sp, dc in next dc.
Block over block: Dc in next 3 dc.
"""


def check(definitions, rows=ROWS):
    """The counts of the mat's rows, what is found in it, and the report."""
    notes = "Notes\nCh 3 at the start of a row counts as a dc.\n"
    report = check_text(f"FILET MAT\n\nUS terms\n\n{ABBREVIATIONS}\n{definitions}\n{notes}\n{rows}")
    return counts(report), {rule for rule, _ in all_findings(report, ("correction", "query"))}, report


@pytest.mark.parametrize(
    "definitions",
    [
        FOUR_WAYS,
        "Special stitches\nSp over sp: ch 2, skip ch-2 sp, dc in next dc.\nSp over bl: ch 2, skip 2 dc, dc in next dc.\n"
        "Bl over sp: 2 dc in sp, dc in next dc.\nBl over bl: dc in next 3 dc.\n",
        "Special stitches\nSpace (sp): Ch 2, skip next 2 sts or ch-2 sp, dc in next dc.\nBlock (bl): Dc in next 3 dc.\n"
        "Block made over a space: 2 dc in next sp, dc in next dc.\n",
    ],
)
def test_squares_are_worked_by_what_lies_below(definitions):
    """Each way has its own entry; the rows only say "bl" and "sp"."""
    made, rules, _ = check(definitions)
    assert made == [19, 11, 15, 11]
    assert "places-run-out" not in rules and "not-understood" not in rules


def test_chains_of_a_space_are_among_the_stitches():
    """ "Dc in each of next 3 sts" over a space goes into the space and the dc behind it."""
    made, rules, _ = check(
        "Special stitches\nSpace (sp): Ch 2, skip 2 sts, dc in next st.\nBlock (bl): Dc in each of next 3 sts.\n"
    )
    assert made == [19, 11, 15, 11] and "places-run-out" not in rules


@pytest.mark.parametrize(
    "over_space", ["", "Block over space: fill the hole and go on.\n", "Space over space: work it as always.\n"]
)
def test_a_way_that_is_not_told_is_not_guessed(over_space):
    """A block of "next 3 dc" over a space has no dc to go into: the row is not counted, and nothing is corrected."""
    made, rules, report = check(
        "Special stitches\nSpace (sp): Ch 2, skip next 2 dc, dc in next dc.\nBlock (bl): Dc in each of next 3 dc.\n"
        + over_space,
    )
    assert made[:3] == [19, 11, None] and any("over what lies below" in item.message for item in report.findings)
    assert "places-run-out" not in rules


@pytest.mark.parametrize(("blocks", "unchecked"), [(6, False), (5, True)])
def test_a_row_of_blocks_alone_counts_them_by_an_equal_width(blocks, unchecked):
    """19 dc are 6 blocks of three and the edge; of 5 blocks nobody could say how wide they are."""
    rows = ROWS.replace("(19 dc)", f"(19 dc, {blocks} bls)")
    _, rules, report = check(FOUR_WAYS, rows)
    assert ("figure-not-checked" in rules) == unchecked and outcomes(report)[1:] == ["agrees"] * 3
