"""Words said in passing that may change what is worked: they are told as not understood, and never passed over.

The forms are common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, counts

DISC = """US terms.

ABBREVIATIONS
ch chain, sc single crochet, sl st slip stitch, st(s) stitch(es), rnd round

DISC
Ch 4, join with sl st in first ch to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)
Rnd 2: {}
"""
ALTERING = [
    "but not in the last two",
    "every third time",
    "twice as many",
    "and again on the other side",
    "leaving one unworked at each end",
    "in every second one",
    "half of them",
    "instead of the last",
    "without the last one",
    "adding one at each end",
    "until it lies flat",
    "skipping every fourth",
    "as many as fit",
    "doubling the corners",
    "and 2 more",
    "working the last two together",
    "in both",
    "with 2 in the last",
    "ending 3 short",
    "then the same again",
    "in pairs",
    "as before but one less",
    "three times in the corner",
    "starting from the second",
    "all but the first",
    "keeping 4 at each end",
    "over two rows",
    "into the row below",
    "decreasing evenly",
]
TALK = [
    "be careful not to twist",
    "keeping the yarn at the back",
    "leaving a long tail",
    "not too tight",
    "as shown in the photo",
    "working loosely",
    "it will curl at first",
    "counting as you go",
    "not in the chart",
]


@pytest.mark.parametrize("words", ALTERING)
def test_words_in_brackets_that_may_change_the_round(words):
    """The round is not counted as if they were not there."""
    assert counts(check(DISC.format(f"Ch 1, sc in next 11 sts ({words}), sc in next st, join. (12 sc)")))[-1] is None


@pytest.mark.parametrize("words", [one for one in ALTERING if not one.startswith(("leaving", "decreasing", "as many"))])
def test_sentences_that_may_change_the_round(words):
    """Nor where they stand in a sentence of their own behind the work."""
    told = words[0].upper() + words[1:]
    assert counts(check(DISC.format(f"Ch 1, sc in each st around, join. {told}. (12 sc)")))[-1] is None


@pytest.mark.parametrize("words", TALK)
def test_talk_in_brackets_takes_no_round_away(words):
    """Words about the hand, the yarn or the look of the work change no count."""
    assert counts(check(DISC.format(f"Ch 1, sc in next 11 sts ({words}), sc in next st, join. (12 sc)")))[-1] == 12
