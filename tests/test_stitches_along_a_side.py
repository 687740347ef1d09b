"""Stitches told by the side they are on, between corners that are told; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_SQUARE = (
    "Test square\nUS terms\n\n"
    "Rnd 1: Ch 4, join with sl st to form a ring. Ch 3 (counts as dc), 4 dc in ring, ch 2, (5 dc in ring, ch 2) 3 times, "
    "join with sl st to top of ch-3. (20 dc, 4 ch-2 sps)\nRnd 2: {}\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "Join yarn in any corner, *(3 sc, ch 2, 3 sc) in corner, sc in each of the 5 sts of the side; rep from * around. (44)",
        "Join yarn in any corner, *(3 sc, ch 2, 3 sc) in corner, 1 sc in next 5 dc along that side; rep from * around. (44)",
        "Join yarn in any corner, *(3 sc, ch 2, 3 sc) in corner, 5 sc on this side; rep from * around. (44)",
        "Join yarn in any corner, *(3 sc, ch 2, 3 sc) in corner, sc in the 5 dc of the side; rep from * around. (44)",
        "Join yarn in any corner, *(3 sc, ch 2, 3 sc) in corner, sc in each dc of the side; rep from * around. (44)",
        "Join yarn in any corner, *(3 sc, ch 2, 3 sc) in corner, sc across the side; rep from * on all sides. (44)",
        "Ch 1, *sc along the side, (3 sc, ch 2, 3 sc) in corner; rep from * around, join. (44)",
    ],
)
def test_along_a_side(words: str) -> None:
    """A number of stitches is that number, and a run goes to the next corner, on each of the sides."""
    assert counts(check(_SQUARE.format(words))) == [20, 44]
    assert corrections(check(_SQUARE.format(words))) == []


def test_one_too_few_along_a_side() -> None:
    """The count is held against what the words make on all sides."""
    words = "Ch 1, *sc in each of the 5 dc of the side, 3 sc in corner; rep from * around, join. (33)"
    assert counts(check(_SQUARE.format(words))) == [20, 32]
    assert [rule for rule, _ in corrections(check(_SQUARE.format(words)))] == ["count-differs"]


@pytest.mark.parametrize(
    "words", ["Sc in each dc of the side, 3 sc in corner.", "Ch 1, sc in each row end of the side."]
)
def test_one_side_alone_is_not_all_round(words: str) -> None:
    """Without a repeat, or along row ends, nothing says that the words for one side are for all four."""
    assert counts(check(_SQUARE.format(words)))[1] != 32


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in each st across, 12 sc in row ends", 24),
        ("sc in each st across. 12 sc in row ends, 12 sc across the chain, join", 36),
        ("sc in each st across, 12 sc into the row ends, join", 24),
    ],
)
def test_many_stitches_in_row_ends_are_all_there_are(words: str, made: int) -> None:
    """ "12 sc in row ends" tells how many go along the edge: not twelve into each row end, and no count of the row."""
    report = check(
        "US terms.\n\nABBREVIATIONS\nch chain, sc single crochet, st(s) stitch(es)\n\nMAT\nCh 13.\n"
        f"Row 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\nRnd 2: Ch 1, {words}.\n"
    )
    assert counts(report)[-1] == made
    assert "count-differs" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("words", "made"), [("5 dc in row ends", None), ("5 dc in each row end", None), ("9 sc in row ends", 21)]
)
def test_some_stitches_in_row_ends_may_be_either(words: str, made: int | None) -> None:
    """Five in row ends may be shells in each or five in all: which, the words do not say."""
    report = check(
        "US terms.\n\nABBREVIATIONS\nch chain, sc single crochet, dc double crochet, st(s) stitch(es)\n\nMAT\nCh 13.\n"
        f"Row 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\nRnd 2: Ch 1, sc in each st across, {words}, join.\n"
    )
    assert counts(report)[-1] in (made, None)
    assert (counts(report)[-1] is None) or made is not None


@pytest.mark.parametrize("words", ["sc in each row end", "5 dc in each row end", "sc in each ch across bottom"])
def test_another_edge_is_not_passed_on_the_way_across(words: str) -> None:
    """A border that goes on to the row ends makes more than the stitches across: it is never counted as those alone."""
    report = check(
        "US terms.\n\nABBREVIATIONS\nch chain, sc single crochet, dc double crochet, st(s) stitch(es)\n\nMAT\nCh 13.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n"
        f"Row 2: Ch 1, turn, sc in each st across. (12 sc)\nRnd 3: Ch 1, sc in each st across, {words}, join.\n"
    )
    assert counts(report)[-1] in (None, 24 if "bottom" in words else None)
