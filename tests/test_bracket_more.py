"""A bracket that is worked so many times "more" behind a beginning in other words; counts told in a longer sentence."""

from __future__ import annotations

import pytest
from helpers import all_findings, check

ROUND = """Pond Hexagon
US terms
HEXAGON
Ch 4, join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 1, (2 dc in ring, ch 1) {times}; join with sl st in top of ch 3.{count}
"""


def _row(times: str, count: str) -> tuple[int | None, list[str]]:
    """The stitches of the round where they are told, and the corrections and queries about its counts."""
    report = check(ROUND.format(times=times, count=count))
    made = report.ledger.rows[-1].first.made
    rules = [rule for rule, _ in all_findings(report, ("correction", "query", "style"))]
    return made.stitches if made else None, [rule for rule in rules if rule in ("count-differs", "repeat-ambiguous")]


@pytest.mark.parametrize(
    ("times", "count", "made", "found"),
    [
        ("five times more", " (12 dc)", 12, []),  # what stands before is the first
        ("5 more times", " (14 dc)", 14, []),  # and here it is one of its own
        ("5 more times", "", None, ["repeat-ambiguous"]),
        ("5 more times", " (13 dc)", 12, ["repeat-ambiguous", "count-differs"]),
        ("5 times", "", 12, []),
        ("5 times", " (14 dc)", 12, ["count-differs"]),
    ],
)
def test_more_times_behind_a_bracket(times: str, count: str, made: int | None, found: list[str]) -> None:
    """The count says whether the words before the bracket are its first pass; without one, nothing is guessed."""
    assert _row(times, count)[0] == made
    assert sorted(_row(times, count)[1]) == sorted(found)


@pytest.mark.parametrize(
    ("sentence", "read"),
    [
        (" You should be able to count 12 dc and 6 ch-1 spaces.", True),
        (" You should be able to count 12 dc.", True),
        (" You can now count 12 dc, 6 ch-1 sps.", True),
        (" You should be able to work 12 dc and 6 ch-1 spaces.", False),
        (" You count 12 dc off from there.", False),
    ],
)
def test_a_count_in_a_longer_sentence(sentence: str, read: bool) -> None:
    """A sentence that lets the maker count is the row's count; one that lets her work is not."""
    report = check(ROUND.format(times="5 times", count=sentence))
    assert (report.ledger.rows[-1].row.stated is not None) == read
