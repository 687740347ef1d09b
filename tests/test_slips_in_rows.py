"""Slip stitches of rows to and fro that later rows are worked into, and those that only pass over stitches.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

BASE = "Cuff\n\nUS terms\n\nCUFF\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sts)\n"
TAPERED = BASE + "Row 2: Ch 1, {0}sc in next 15 sts, {0}sl st in last 5 sts, turn. (20 sts)\n"


@pytest.mark.parametrize("loops", ["", "working in BLO, "])
def test_a_count_that_takes_them_in_makes_them_places(loops: str) -> None:
    """ "(20 sts)" counts the five slip stitches, and the rows after go into them, with or without a count."""
    more = (
        "Row 3: Ch 1, sl st in first 5 sts, sc in each st to end, turn.\nRow 4: Ch 1, sc in each st across. (20 sc)\n"
    )
    report = check(TAPERED.format(loops) + more)
    assert counts(report) == [20, 15, 15, 20]
    assert corrections(report) == []


def test_a_named_loop_tells_it_without_a_count() -> None:
    """Who slip stitches through the back loop makes fabric."""
    rows = "Row 2: Ch 1, sc BLO in next 15 sts, sl st BLO in next 5 sts, turn.\nRow 3: Ch 1, sc in each st. (20 sc)\n"
    report = check(BASE + rows)
    assert counts(report) == [20, 15, 20]
    assert corrections(report) == []


def test_stitches_passed_over_stay_unworked() -> None:
    """An underarm: the slip stitches only travel, and the next row has the stitches between them."""
    rows = "Row 2: Sl st in next 4 sts, ch 1, sc in next 12 sts, turn, leave rem 4 sts. (12 sc)\nRow 3: Ch 1, sc in each st.\n"
    assert counts(check(BASE + rows)) == [20, 12, 12]


def test_stitches_beyond_a_short_row_cover_none() -> None:
    """The stitches that a short row left come behind it and take none of its own."""
    rows = (
        "Row 2: Ch 1, sc BLO in next 15 sts, leave last 5 sts unworked, turn. (15 sc)\n"
        "Row 3: Ch 1, sc BLO in each st to end, turn.\n"
        "Row 4: Ch 1, sc BLO in next 15 sts, sl st BLO in 5 unworked sts of Row 1, turn. (20 sts)\n"
        "Row 5: Ch 1, sc in each st across. (20 sc)\n"
    )
    report = check(BASE + rows)
    assert counts(report) == [20, 15, 15, 15, 20]
    assert corrections(report) == []


def test_a_wrong_count_among_them_is_found() -> None:
    """21 is neither the stitches nor all."""
    text = (
        TAPERED.format("")
        .replace("turn. (20 sts)\nRow 2", "turn. (20 sts)\nRow 2")
        .replace("5 sts, turn. (20", "5 sts, turn. (21")
    )
    assert ("count-differs", 8) in corrections(check(text))
