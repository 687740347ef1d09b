""" "To last st before ch-2 sp, 2 dc in last st": the last ones of the run, not of the row; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_WING = (
    "Test wing\nUS terms\n\nWING\nRow 1: Ch 4, join with sl st to form a ring. Ch 3 (counts as dc here and throughout), 6 dc in ring, ch 2, 7 dc in ring, turn. (14 dc)\n"
    "Row 2: Ch 3, {}, (dc, ch 2, dc) in ch-2 sp, dc in each st to end, turn.\n"
)


@pytest.mark.parametrize(
    ("half", "made"),
    [
        ("dc in each st to last st before ch-2 sp, 2 dc in last st", 17),
        ("dc in each st to last 2 sts before ch-2 sp, dc in next st, 2 dc in last st", 17),
        ("dc in each st to last 2 sts before ch-2 sp, dc2tog over last 2 sts", 15),
        ("*ch 1, sk next st, dc in next st; rep from * to last 2 sts before ch-2 sp, dc in last 2 sts", 14),
    ],
)
def test_as_many_as_the_run_stopped_short_of(half: str, made: int) -> None:
    """They are worked before the space, and the other half is still there."""
    report = check(_WING.format(half))
    cell = report.ledger.rows[-1].cells[0]
    assert cell.made is not None and cell.made.stitches == made
    assert "places-left-over" not in {finding.rule for finding in report.findings}
