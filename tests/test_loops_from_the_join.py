"""Rounds of loops that begin at the join, the last loop told behind the repeat: it is closed into the stitch of the join."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, spaces

ROUND_12 = """US terms.

ABBREVIATIONS
ch chain, sc single crochet, dc double crochet, sl st slip stitch, st(s) stitch(es), sk skip, rep repeat, rnd round

DISC
Ch 4, join with sl st in first ch to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)
Rnd 2: {}
Fasten off.
"""


@pytest.mark.parametrize(
    "words",
    [
        "*Ch 5, sc in next st; rep from * around, ch 5, join. (12 loops)",
        "*Ch 5, sc in next st; rep from * 10 times more, ch 5, sl st in first st. (12 loops)",
        "(Ch 5, sc in next st) around, ch 5, join. (12 loops)",
    ],
)
def test_last_loop_is_closed_into_the_stitch_of_the_join(words):
    """Twelve stitches carry twelve loops: eleven stitches and the one that is joined into."""
    report = check(ROUND_12.format(words))
    assert counts(report)[-1] == 11
    assert spaces(report)[-1] == {5: 12}
    assert corrections(report) == []


def test_stitches_passed_over_behind_the_last_loop():
    """The two stitches before the join are passed over by the last loop."""
    report = check(ROUND_12.format("*Ch 5, sk 2 sc, sc in next sc; rep from * around, ch 5, sk 2 sc, join. (4 loops)"))
    assert spaces(report)[-1] == {5: 4}
    assert corrections(report) == []


def test_round_without_a_loop_behind_its_repeat_ends_in_the_stitch_of_the_join():
    """Nothing stands behind the repeat: every stitch, the one of the join too, is worked into."""
    report = check(ROUND_12.format("*Ch 5, sc in next st; rep from * around, join. (12 loops)"))
    assert counts(report)[-1] == 12
    assert spaces(report)[-1] == {5: 12}
    assert corrections(report) == []


@pytest.mark.parametrize(
    "words",
    [
        "*Ch 5, sc in next st; rep from * around, ch 5, join. (13 loops)",
        "*Ch 5, sc in next st; rep from * 11 times more, ch 5, join. (12 loops)",
    ],
)
def test_one_loop_too_many_is_still_told(words):
    """A loop more than there are stitches to close it into is a mistake."""
    assert len(corrections(check(ROUND_12.format(words)))) == 1


def test_another_loop_behind_the_repeat_is_a_loop_of_its_own():
    """A closing chain of another length is not the last of the loops: nothing is taken for it."""
    report = check(ROUND_12.format("*Ch 3, sc in next sc; rep from * around, ch 5, join. (12 ch-3 loops)"))
    assert spaces(report)[-1] == {3: 12, 5: 1}
