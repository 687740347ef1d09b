"""Chains joined to a ring and worked into one by one, whatever the first round calls them.

Truths worked out by hand; the forms are common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

COWL = """US terms.

ABBREVIATIONS
ch chain, sc single crochet, dc double crochet, sl st slip stitch, st(s) stitch(es), sp(s) space(s), sk skip, rep repeat, rnd round

COWL
Ch {}, join with sl st in first ch to form a ring.
Rnd 1: Ch 1, {}
"""


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in each st around; join. (96 sc)", 96),
        ("sc in every st to the end; join. (96 sc)", 96),
        ("sc in each ch around; join. (96 sc)", 96),
        ("2 sc in each stitch. (192 sc)", 192),
        ("*sc in next 2 sts, sk 1 st; rep from * around. (64 sc)", 64),
        ("*sc in next st, ch 1, sk 1 st; rep from * around, join. (48 sc, 48 ch-1 sps)", 48),
    ],
)
def test_each_stitch_of_a_ring_of_chains_is_a_chain(words, made):
    """The stitches of a joined chain are its chains: 96 of them."""
    report = check(COWL.format(96, words))
    assert counts(report)[-1] == made
    assert corrections(report) == []


def test_wrong_count_upon_a_ring_of_chains():
    """A count that is out by one is told."""
    report = check(COWL.format(96, "sc in each st around, join. (95 sc)"))
    assert [rule for rule, _ in corrections(report)] == ["count-differs"]


@pytest.mark.parametrize(
    ("words", "made"),
    [("12 sc in ring, join. (12 sc)", 12), ("*3 dc in ring, ch 2; rep from * 3 times more, join.", 12)],
)
def test_stitches_into_the_ring_itself(words, made):
    """What goes into the ring goes into its middle, however many chains it has."""
    assert counts(check(COWL.format(4, words)))[-1] == made
