"""A row behind one that was not understood starts from that one's printed count: it is as sure as that print, no surer.

Truths worked out by hand; what the words mean is common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

LOST = "Hat\n\nUS terms\n\nHAT\nRnd 1: 18 sc in magic ring. (18)\nRnd 2: Grumble round the wobbly bits. ({})\n"


def of(printed: str, rows: str):
    """The pattern behind a round that cannot be understood, with the count printed for that."""
    return check(LOST.format(printed) + rows)


def of_counts(result):
    """The findings of counts that differ."""
    return [one for one in result.findings if one.rule == "count-differs"]


def test_a_count_that_agrees_confirms_the_print():
    """Both prints fit together: the rows behind are counted on."""
    assert counts(of("20", "Rnd 3: sc around. (20)\nRnd 4: sc around. (20)\n"))[2:] == [20, 20]


def test_a_count_that_differs_is_not_given_and_both_are_named():
    """Either of the two prints may be the wrong one: no number is told for the row, and the finding names both."""
    result = of("20", "Rnd 3: sc around. (18)\nRnd 4: sc around. (18)\n")
    assert counts(result)[2:] == [None, 18]
    told = of_counts(result)
    assert len(told) == 1
    assert "Rnd 3" in told[0].message and "Rnd 2" in told[0].message
    assert [related.label for related in told[0].related if "Rnd 2" in related.label]
    assert not [one for one in result.findings if one.rule == "not-understood" and "Rnd 3" in one.message]


def test_rows_without_a_print_between_do_not_make_it_surer():
    """The row that has a print again is two rows behind the lost one."""
    result = of("20", "Rnd 3: sc around.\nRnd 4: [sc, inc] around. (27)\nRnd 5: sc around. (27)\n")
    assert counts(result)[2:] == [20, None, 27]


def test_a_row_that_says_its_own_number_is_counted_on_any_print():
    """Six groups of four are 24, whatever lies below: a wrong print of its own is told as ever."""
    result = of("18", "Rnd 3: [2 sc, inc] 6 times. (25)\n")
    assert counts(result)[2:] == [24]
    told = of_counts(result)
    assert told and "Rnd 2" not in told[0].message


def test_a_size_whose_print_is_off_is_left_out_alone():
    """The other sizes agree and are counted."""
    rows = "Rnd 3: sc around. (24, 30, 36)\n"
    head = "Hat\n\nUS terms\nSizes: S (M, L)\n\nHAT\nRnd 1: 18 sc in magic ring. (18)\nRnd 2: Grumble. ({})\n"
    result = check(head.format("24, 32, 36") + rows)
    last = result.ledger.rows[-1]
    assert [cell.made.stitches if cell.made else None for cell in last.cells] == [24, None, 36]


@pytest.mark.parametrize("count", ["4 dc", "4 sts"])
def test_stitches_of_a_row_known_by_its_count_answer_to_what_the_next_row_calls_them(count):
    """The row below is known by its count alone: its stitches are the dc that the next row names, its end the chain."""
    report = check(
        "US terms.\n\nABBREVIATIONS\nch chain, dc double crochet, st(s) stitch(es)\n\nWRAP\nCh 6.\n"
        "Row 1: Dc in 4th ch from hook (the 3 skipped ch count as the first dc), dc in each ch across. (4 dc)\n"
        f"Row 2: Turn, ch 3 (counts as first dc here and throughout), fiddle. ({count})\n"
        "Row 3: Turn, ch 3, dc in first dc (at the base of the ch 3), dc in each dc to turning ch, dc in top of turning ch. (5 dc)\n"
    )
    assert counts(report) == [4, None, 5]
    assert corrections(report) == []
