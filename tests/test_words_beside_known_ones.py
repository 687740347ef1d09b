"""Wordings that stand next to ones that are read, and mean something else: what they make, or that they are not understood.

Worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

HEAD = "Piece\n\nUS terms\n\nPIECE\n"
CHAIN_OF_9 = f"{HEAD}Ch 9.\n"


def _begun(stitches: int) -> str:
    return f"{HEAD}Rnd 1: {stitches} sc in magic ring. ({stitches})\n"


@pytest.mark.parametrize("words", ["3 inc per round.", "dec 3 per round.", "sc around, 3 inc in each round."])
def test_shaping_of_every_round_is_not_worked_in_its_first_stitches(words: str) -> None:
    """ "3 inc per round" are spread among other stitches, of which nothing is said."""
    report = check(f"{_begun(9)}Rnds 2-3: {words}\n")
    assert counts(report)[1:] in ([None], [None, None])


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("until you have repeated it 4 times (15)", 15),
        ("until it has been repeated 4 times. (15)", 15),
        ("until it has been repeated a total of 5 times (15)", 15),
        ("until you have worked it 5 times (15)", 15),
    ],
)
def test_until_it_is_repeated_so_often(words: str, made: int) -> None:
    """What is repeated 4 times may be worked 5 times: the row tells."""
    report = check(f"{_begun(10)}Rnd 2: *Sc in next st, inc; rep from * {words}\n")
    assert (counts(report)[-1], corrections(report)) == (made, [])


@pytest.mark.parametrize("unit", ["made", "shells made"])
def test_so_many_made_need_not_be_stitches(unit: str) -> None:
    """ "(2 made)" behind shells counts those."""
    words = f"*5 dc in next st, sk 1, sc in next st, sk 1; rep from * around. (2 {unit})"
    assert corrections(check(f"{_begun(8)}Rnd 2: {words}\n")) == []


@pytest.mark.parametrize("words", ["ending\n1 sc.", "ends\n1 sc"])
def test_last_pass_below_the_word_for_it(words: str) -> None:
    """A line that breaks behind "ending" goes on with what the row ends in, and with no count."""
    report = check(f"{_begun(10)}Rnd 2: *Sc in next 2 sts, inc; rep from *, {words}\n")
    assert (counts(report)[-1], corrections(report)) == (13, [])


@pytest.mark.parametrize("words", ["continue to Marker", "proceed to End", "continue to Corner"])
def test_going_on_to_a_place_is_no_next_piece(words: str) -> None:
    """Words for a place in the row, in capitals too, name no piece that comes next."""
    assert counts(check(f"{_begun(9)}Rnd 2: Sc in next 4 sts, {words}.\n"))[-1] is None


def test_chain_said_to_count_hangs_from_no_edge() -> None:
    """ "Ch 7 (counts as tr and ch 3)" is the row's first stitch; "ch 30" before an edge is a tie."""
    assert counts(check(f"{HEAD}Row 1: Ch 7 (counts as tr and ch 3), 15 dc evenly along the side.\n")) == [16]
    assert counts(check(f"{HEAD}Row 1: Ch 30, 15 dc evenly along the side.\n")) == [15]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("hdc in next 3 ch, sc in next 4 ch along the other side of ch. (17)", 17),
        ("sc in next 2 ch, hdc in next 3 ch, sc in next 2 ch along the other side. (17)", 17),
        ("sc in next 6 ch, 2 sc in last ch along the other side. (18)", 18),
        ("sc in each ch along the other side. (17)", 17),
    ],
)
def test_all_behind_the_end_of_the_chain_goes_to_its_other_side(words: str, made: int) -> None:
    """ "Along the other side" is said of all that comes behind the chain's last place, not of the last clause alone."""
    report = check(f"{CHAIN_OF_9}Rnd 1: Sc in 2nd ch from hook and in next 6 ch, 3 sc in last ch, {words}\n")
    assert (counts(report), corrections(report)) == ([made], [])


_GRADED = (
    "Piece\n\nUS terms\n\nSizes: S (M, L)\n\nPIECE\nCh 13 (15, 17).\nRow 1: Sc in 2nd ch from hook and in each ch across. (12, 14, 16)\n"
    "{before}Row 2: Ch 1, turn, 2 sc in first st, sc to last st, 2 sc in last st.\n{behind}"
)


@pytest.mark.parametrize(
    "note", ["Size L only: work Row 2.", "Only work Row 2 for size L.", "For size L only, work Row 2."]
)
def test_row_worked_again_by_one_size(note: str) -> None:
    """Behind a row these words bid one size to work it again; before it they say which size works it."""
    report = check(_GRADED.format(before="", behind=f"{note}\n"))
    assert [cell.made.stitches for cell in report.ledger.rows[2].cells if cell.made] == [14, 16, 18]
    told = check(_GRADED.format(before=f"{note}\n", behind=""))
    assert [cell.made.stitches for cell in told.ledger.rows[-1].cells if cell.made] == [18]


@pytest.mark.parametrize(
    "words",
    [
        "dec, keeping neck edge straight sc 10. (11)",
        "dec, taking care not to twist sc 10. (11)",
        "dec, holding tail behind 10 sc. (11)",
    ],
)
def test_work_behind_a_remark_without_a_comma_is_not_passed_over(words: str) -> None:
    """Stitches that stand at the end of words that only tell something are told as not understood."""
    report = check(f"{HEAD}Row 1: Fsc 12, turn. (12)\nRow 2: Ch 1, {words}\n")
    assert counts(report)[-1] in (None, 11)
    assert not {"count-differs", "places-run-out", "places-left-over"} & {rule for rule, _ in corrections(report)}


@pytest.mark.parametrize("more", ["and twice round the neck", "and three in the corner"])
def test_more_work_behind_an_edge_is_not_passed_over(more: str) -> None:
    """What is worked besides, behind so many stitches along an edge, is told as not understood."""
    assert counts(check(f"{HEAD}Row 1: 15 sc evenly up right front {more}.\n")) == [None]
    assert counts(check(f"{HEAD}Row 1: 15 sc evenly up right front and 8 sc round the neck.\n")) == [23]
