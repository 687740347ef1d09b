"""How `frogproof read` says rows that are called: what they differ in, and no figure that they do not have by themselves.

Wordings are common practice, no source.
"""

from __future__ import annotations

import pytest

from lint.reports.clause import read_clauses
from lint.rulebook import load_rulebook


def told(clause: str) -> str:
    """What is said of a clause in US terms."""
    return next(iter(read_clauses([clause], load_rulebook(), "us"))).in_words()


@pytest.mark.parametrize(
    ("clause", "says"),
    [
        ("Rep last 2 rows.", "work the last 2 rows again"),
        ("As Rnd 3, but with 2 sc between incs.", "work row 3 again, with 2 between one shaping and the next"),
        ("As Rnd 3, replacing sc with hdc.", "work row 3 again, with hdc in the place of sc"),
        ("Cont in this way, working 1 more sc between incs each rnd.", "the last row again, with 1 more between"),
        ("Dc in each dc, ch 3 at each corner.", "on the way, 3 chains in each corner"),
    ],
)
def test_what_a_call_changes(clause: str, says: str) -> None:
    """An editor sees how it was read, and that it has no figures by itself."""
    assert says in told(clause)
    assert "0 stitches" not in told(clause)
