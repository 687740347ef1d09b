"""Ends of a row that a run leaves out, however that is said.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, counts

TWELVE = "Mat\n\nUS terms\n\nMAT\nRow 1: Fsc 12, turn. (12)\nRow 2: Ch 1, "


def made(words: str) -> int | None:
    """The count of a row of these words on twelve stitches."""
    return counts(check(TWELVE + words + "\n"))[-1]


@pytest.mark.parametrize(
    "words",
    [
        "sc in each st, missing the last, turn.",
        "sc in each st, leaving the last unworked. Turn.",
        "sc in each st, leave last unworked. Turn.",
        "sc across, omitting the last st. Turn.",
        "sc across, skipping the last. Turn.",
        "sc across, not working the last st. Turn.",
        "sc across but leave the last. Turn.",
        "sc in each st apart from the last. Turn.",
        "sc in each st other than the last. Turn.",
        "sc in each st with the exception of the last. Turn.",
        "sc in all but the last. Turn.",
        "miss the first, sc in each st to end, turn.",
    ],
)
def test_one_end_is_left_out(words: str) -> None:
    """All but one of the twelve are worked."""
    assert made(words) == 11


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("sc in each st, missing first and last. Turn.", 10),
        ("sc in each st apart from the last 2 sts. Turn.", 10),
        ("sc in each st, skipping first 2 and last 2 sts. Turn.", 8),
        ("miss first, sc across, miss last, turn.", 10),
        ("2 sc in each st, missing the last, turn.", 22),
        ("2 sc in each st except the last 2, sc in last 2. Turn.", 22),
    ],
)
def test_what_is_left_out_at_the_ends(words: str, count: int) -> None:
    """How many at which end."""
    assert made(words) == count


@pytest.mark.parametrize(
    "words",
    [
        "2 sc in each st apart from the first and last. Turn.",
        "sc in each st except the third. Turn.",
        "sc in each st, leaving the last one. Turn.",
        "sc in each st except the last row. Turn.",
        "sc in each st except the last which gets 3 sc. Turn.",
    ],
)
def test_what_an_end_has_instead_is_not_guessed(words: str) -> None:
    """An exception that leaves open what is worked there is not counted."""
    assert made(words) is None
