"""Chain spaces that a pattern says it counts as stitches: linen and moss stitch."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

CLOTH = """Barley Cloth
Chain 1 at the start of a row does not count. {}
Ch 22.
Row 1: Sc in 2nd ch from hook, *ch 1, sk next ch, sc in next ch; rep from * across. Turn. (21 sts)
Row 2: Ch 1, sc in first st, sc in next ch-1 sp, *ch 1, sk next st, sc in next ch-1 sp; rep from * to last st, sc in last st. Turn. (21 sts)
Row 3: Ch 1, {}, *ch 1, sk next st, sc in next st; rep from * across. Turn. ({} sts)
"""


@pytest.mark.parametrize(
    "note",
    [
        "Each ch-1 sp counts as one st.",
        "Ch-1 spaces (here and in the border) are always counted as stitches.",
        "Count every 1-ch sp as a stitch.",
        "The turning chain does not count as a st but each ch-1 sp counts as a st.",
        "Stitch counts include the ch-1 sps.",
        "All ch-1 sps are included in the stitch count.",
    ],
)
def test_counts_with_the_spaces(note: str) -> None:
    """They are part of a count in stitches, and "next st" is one of them."""
    report = check(CLOTH.format(note, "sc in first st", 21))
    assert not any(rule == "count-differs" for rule, _ in all_findings(report, ("correction", "query")))
    assert counts(report) == [11, 12, 11]  # the spaces are told apart


def test_a_wrong_count_with_spaces() -> None:
    """A row that makes 21 and prints 23 is wrong still; and one that works a st too few."""
    note = "Each ch-1 sp counts as one st."
    assert ("count-differs", 6) in all_findings(check(CLOTH.format(note, "sc in first st", 23)), ("correction",))
    report = check(CLOTH.format(note, "sc in each of first 2 sts", 21))
    assert any(line == 6 for _, line in all_findings(report, ("correction",)))


@pytest.mark.parametrize(
    "note",
    ["Ch-1 spaces never count as stitches.", "Do not count the ch-1 sp as a stitch.", "Each ch-2 sp counts as a st."],
)
def test_notes_that_say_otherwise(note: str) -> None:
    """What denies it, or speaks of other spaces, leaves the counts those of stitches alone."""
    report = check(CLOTH.format(note, "sc in first st", 21))
    assert any(rule == "count-differs" for rule, _ in all_findings(report, ("correction", "query")))


def test_stitches_left_out_go_over_the_spaces() -> None:
    """Slip stitches over 4 sts, and the last 4 left: 8 of 21 places, spaces among them."""
    more = (
        "Row 4: Ch 1, sc in each st across. Turn. (21 sts)\n"
        "Row 5: Ch 1, sc in first st, *ch 1, sk next st, sc in next st; rep from * across. Turn. (21 sts)\n"
        "Row 6: Sl st in first 4 sts, ch 1, sc in next 13 sts, turn, leaving last 4 sts unworked. (13 sts)\n"
    )
    text = CLOTH.format("Each ch-1 sp counts as a stitch.", "sc in first st", 21) + more
    assert not any(rule in ("count-differs", "places-left-over") for rule, _ in all_findings(check(text)))
    assert counts(check(text))[-1] == 13
    assert ("count-differs", 9) in all_findings(check(text.replace("(13 sts)", "(14 sts)")), ("correction",))


def test_no_count_is_missed_where_the_total_stays() -> None:
    """Rows whose stitches and spaces change places have one number throughout; none of them lacks a count."""
    text = CLOTH.format("Each ch-1 sp counts as a stitch.", "sc in first st", 21)
    kept = text.replace(" Turn. (21 sts)\nRow 3", " Turn.\nRow 3")
    assert kept != text and not any(rule == "count-missing" for rule, _ in all_findings(check(kept)))


FRAME = (
    "Frame\nUS terms\n\n"
    "Rnd 1: Ch 5, join with sl st to form a ring. Ch 3 (counts as dc), 3 dc in ring, ch 2, *4 dc in ring, ch 2; rep from * "
    "2 times more, join. ({})\n"
)


@pytest.mark.parametrize(
    ("count", "sound"),
    [
        ("20 sts: 16 dc, 4 ch-2 sps", True),
        ("20 sts, 16 dc and 4 corner sps", True),
        ("16 sts, 4 ch-2 sps", True),
        ("20 sts, 4 ch-2 sps", False),  # of what these 20 are is not said
        ("21 sts: 16 dc, 4 ch-2 sps", False),
        ("19 sts: 15 dc, 4 ch-2 sps", False),
    ],
)
def test_a_total_of_stitches_and_spaces_that_are_told_beside_it(count: str, sound: bool) -> None:
    """The sum of what is told is no other count; one that is not their sum is, and so is each of them."""
    wrong = [rule for rule, _ in all_findings(check(FRAME.format(count)), ("correction", "query"))]
    assert ("count-differs" not in wrong) is sound


def test_such_a_total_where_spaces_count() -> None:
    """A note that spaces are stitches does not make the total wrong that says of what it is."""
    text = CLOTH.format("Each ch-1 sp counts as a stitch.", "sc in first st", "21 sts: 11 sc, 10 ch-1 sps")
    text = text.replace("ch-1 sps sts", "ch-1 sps")
    assert "10 ch-1 sps)" in text
    assert not any(rule == "count-differs" for rule, _ in all_findings(check(text)))
    worse = text.replace("21 sts: 11 sc", "20 sts: 10 sc")
    assert any(rule == "count-differs" for rule, _ in all_findings(check(worse), ("correction",)))


@pytest.mark.parametrize("sign", ["-", "–"])
def test_a_count_whose_first_size_has_no_figure(sign: str) -> None:
    """A dash before the first comma stands for a size that does not work the row; one before a figure only leads to it."""
    text = (
        "Strip\n\nSizes: S (M, L)\n\nRow 1: Ch 9 (11, 13), sc in 2nd ch from hook and in each ch across, turn. (8 (10, 12) sc)\n"
        "Sizes M and L only:\nRow 2: Ch 1, 2 sc in first st, sc in each st to end, turn. ({}, {}, 13 sc)\n"
    )
    assert counts(check(text.format(sign, 11)), 1) == [10, 11]
    assert not any(rule == "count-differs" for rule, _ in all_findings(check(text.format(sign, 11))))
    assert any(rule == "count-differs" for rule, _ in all_findings(check(text.format(sign, 12)), ("correction",)))
