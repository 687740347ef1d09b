"""Other ways to say "each" and "evenly spaced"; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_BALL = "Test ball\nUS terms\n\nBALL\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: {}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sc in every one. (12)", 12),
        ("Sc in each single st. (12)", 12),
        ("2 sc in each and every one around. (24)", 24),
        ("Sc in each one of next 8 sts, inc in each one of next 4 sts. (16)", 16),
        ("3 inc, spaced evenly around. (15)", 15),
        ("Sc around with 3 inc evenly distributed. (15)", 15),
        ("Inc 3 times, evenly spaced out. (15)", 15),
        ("3 dec, spread evenly. (9)", 9),
    ],
)
def test_round(words: str, made: int) -> None:
    """Every one is each one, and what is spread evenly is spread over the whole round."""
    assert counts(check(_BALL.format(words)))[-1] == made
    assert corrections(check(_BALL.format(words))) == []


def test_a_wrong_count_beside_it() -> None:
    """The count is held against what is spread."""
    assert corrections(check(_BALL.format("3 inc, spaced evenly around. (16)"))) == [("count-differs", 7)]


@pytest.mark.parametrize("words", ["Sc evenly around, working some inc.", "Sc in one. (1)"])
def test_not_each(words: str) -> None:
    """One is one, and how many are spread has to be said."""
    assert counts(check(_BALL.format(words)))[-1] in (None, 1)
