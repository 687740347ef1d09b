"""Counts without a sign of their own behind a row's end: "join with sl st in first sc, 24 sc.", "in each st across 24 sc"."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

ROUND_12 = """US terms.

ABBREVIATIONS
ch chain, sc single crochet, sl st slip stitch, st(s) stitch(es), rnd round, inc increase

DISC
Ch 4, join with sl st in first ch to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)
Rnd 2: {}
"""
ROW_12 = """US terms.

ABBREVIATIONS
ch chain, sc single crochet, dc double crochet, sl st slip stitch, st(s) stitch(es)

STRIP
Ch 14.
Row 1: {}
Row 2: Ch 1, sc in each st across, turn. (12 sts)
"""


@pytest.mark.parametrize(
    "behind",
    [
        "join with sl st in first sc, 24 sc.",
        "join with sl st in first sc 24 sc",
        "join, 24 sc",
        "ss in first sc, 24 sc.",
        "join, 24 sts in total.",
        "join, 24 sc made.",
        "join, 24.",
    ],
)
def test_figure_behind_the_join_is_the_count(behind):
    """Nothing is worked behind a join that ends the round: the figure there is its count, and not 24 more stitches."""
    report = check(ROUND_12.format("Ch 1, 2 sc in each sc around, " + behind))
    assert (counts(report)[-1], outcomes(report)[-1]) == (24, "agrees")


def test_wrong_count_behind_the_join_is_told():
    """A wrong figure behind a join is a wrong count, at its words."""
    report = check(ROUND_12.format("Ch 1, 2 sc in each sc around, join with sl st in first sc, 26 sc."))
    assert [rule for rule, _ in corrections(report)] == ["count-differs"]


def test_few_stitches_behind_a_join_are_no_count():
    """Two stitches are not the count of a round: the words are worked or not understood, never compared with it."""
    report = check(ROUND_12.format("Ch 1, 2 sc in each sc around, join with sl st in first sc, 2 sc."))
    assert "count-differs" not in {rule for rule, _ in corrections(report)}


@pytest.mark.parametrize("count", ["[12 dc]", "{12 dc}", "12 dc", ", 12 dc."])
def test_figure_behind_a_run_that_a_note_cuts_in_two(count):
    """ "(the skipped ch count) and in each ch across [12 dc]": the bracket is no group that goes into each chain."""
    words = f"Dc in 4th ch from hook (skipped ch count as first dc) and in each ch across {count}"
    report = check(ROW_12.format(words))
    assert (counts(report)[0], outcomes(report)[0]) == (12, "agrees")
    assert corrections(report) == []


def test_figure_behind_a_turn():
    """The row went to its end and is turned: the figure is its count."""
    report = check(
        ROW_12.format("Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across, turn, 12 dc.")
    )
    assert (counts(report)[0], outcomes(report)[0]) == (12, "agrees")


def test_stitches_behind_a_short_row_are_no_count():
    """A row that is turned before its end may go on with the figure: nothing is compared with it."""
    report = check(ROW_12.format("Sc in 2nd ch from hook and in next 5 ch, turn, 6 sc.").replace("Ch 14", "Ch 13"))
    assert outcomes(report)[0] != "differs"


@pytest.mark.parametrize("told", ["(See photo 3.)", "(see photo 3)", "(See figure 2.)", "(see photo)"])
def test_pointing_at_a_photo_behind_the_count(told):
    """What is shown elsewhere is no work, and the count before it is the count."""
    report = check(ROUND_12.format(f"Ch 1, 2 sc in each sc around, join with sl st in first sc. 24 sc. {told}"))
    assert (counts(report)[-1], outcomes(report)[-1]) == (24, "agrees")


def test_figure_behind_the_join_with_words_that_are_not_understood():
    """Where more is said behind it, the figure is neither worked nor taken for the count."""
    report = check(ROUND_12.format("Ch 1, 2 sc in each sc around, join with sl st in first sc. 24 sc wibbled."))
    assert counts(report)[-1] in (None, 24)
    assert corrections(report) == []


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sl st in first st, 11 sc", 11),
        ("Sl st in first st, 11 sc, join.", 11),
        ("6 sc, sl st in first st, 5 sc", None),
        ("Sc in next 3 sts, sl st in first st, 9 sc, join.", None),
        ("Sc in next 12 sts, ss in first sc, 12 sc.", 12),
    ],
)
def test_slip_stitch_that_may_close_the_round_or_not(words, made):
    """Where the round has not made as many by then, the figure is work, or not said to be either; never a wrong count."""
    report = check(ROUND_12.format(words))
    assert counts(report)[-1] == made
    assert "count-differs" not in {rule for rule, _ in corrections(report)}


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("20 sc evenly along the side, 20 sc, turn.", 20),
        ("20 sc evenly along the side, 21 sc, turn.", None),
        ("20 sc evenly along the side, 3 sc, turn.", 23),
    ],
)
def test_figure_behind_stitches_along_an_edge(words, made):
    """As many are their count, about as many may be a slip of it, and few are more stitches."""
    report = check(
        ROW_12.format("Dc in 4th ch from hook and in each ch across.").replace(
            "sc in each st across, turn. (12 sts)", words
        )
    )
    assert counts(report)[-1] == made


def test_count_of_a_filet_row_in_two_sentences():
    """ "18 dc. 11 ch-2 sps." behind squares may be the count as well as work: the row is not counted."""
    report = check(
        "US terms.\n\nABBREVIATIONS\nch chain, dc double crochet, sp space, st(s) stitch(es)\nsp: ch 2, sk 2 sts, dc in next st\n"
        "bl: dc in next 3 sts\n\nMESH\nCh 15.\nRow 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across. (13 dc)\n"
        "Row 2: Ch 3 (counts as dc), turn. 1 bl. 2 sps. 1 bl. 9 dc. 2 ch-2 sps.\n"
    )
    assert counts(report)[-1] in (9, None)
