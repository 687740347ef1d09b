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
