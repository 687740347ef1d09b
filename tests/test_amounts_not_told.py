"""Amounts that the words leave open, and repeats said in brackets: nothing is guessed, and nothing passed over.

The forms are common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

DISC = """US terms.

ABBREVIATIONS
ch chain, sc single crochet, inc increase, sl st slip stitch, st(s) stitch(es), rep repeat, rnd round

DISC
Ch 4, join with sl st in first ch to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)
Rnd 2: {}
"""


@pytest.mark.parametrize(
    "words",
    [
        "sc in any 6 sts",
        "sc in every 4 sts",
        "2 sc in every 3 sts",
        "sc in a third of the sts",
        "sc in next 3-4 sts",
        "sc in about the next 3 sts",
        "2 or 3 sc in next st",
        "sc in next 2 sts, inc (rep 6)",
        "sc, inc (rep from * 6 times)",
    ],
)
def test_amounts_that_the_words_leave_open(words):
    """The round is told as not understood."""
    assert counts(check(DISC.format(f"Ch 1, {words}, join.")))[-1] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("*sc, inc (rep from * around), join. (18)", 18),
        ("*sc, inc (rep from * 5 times more), join. (18)", 18),
        ("*sc in next st, inc (repeat from * to end), join. (18)", 18),
    ],
)
def test_repeats_from_a_star_in_brackets(words, made):
    """The repeat is one, whether or not it stands in brackets."""
    report = check(DISC.format(words))
    assert counts(report)[-1] == made
    assert corrections(report) == []


@pytest.mark.parametrize("words", ["sc, inc ... (18)", "sc, inc … 18"])
def test_dots_that_leave_it_to_the_reader(words):
    """How the round goes on is not said: it is neither counted nor called wrong."""
    report = check(DISC.format(words))
    assert outcomes(report)[-1] == "not-recomputed"
    assert corrections(report) == []


@pytest.mark.parametrize(
    "words",
    [
        "sc in each st around … 12 sc",
        "sc in next 11 sts, sc in next st … 12 sts",
        "*sc, inc; rep from * around ... (18)",
    ],
)
def test_dots_that_only_lead_to_the_count(words):
    """Behind work that has gone all the way, or comes to the count, dots lead to it."""
    assert outcomes(check(DISC.format(words)))[-1] == "agrees"
