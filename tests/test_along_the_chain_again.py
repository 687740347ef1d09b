"""Rows that are worked along a chain, and once more along its other side; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_STRIPE = "Stripe\nUS terms\n\nSTRIPE\nCh 13.\nRow 1: {}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sc in 2nd ch from hook and in each ch across (12). Repeat on the other side of the ch (24).", 24),
        ("Sc in 2nd ch from hook and in each ch across (12). Repeat on the other side.", 24),
        ("Sc in 2nd ch from hook and in each ch across. (12 sc) Repeat along the opposite side of the ch. (24 sc)", 24),
        ("From the 2nd ch: 12 sc (12). Repeat on the other side of the ch (24).", 24),
        ("Sc in 2nd ch from hook, sc in next 10 ch, 3 sc in last ch (14). Repeat on the other side.", None),
        ("Sc in 2nd ch from hook and in each ch across (12). Repeat on the wrong side.", None),
        ("Sc in 2nd ch from hook and in each ch across (12). Repeat for the other side.", None),
        ("Sc in 2nd ch from hook and in each ch across (12). Repeat on the other side, working 3 sc in last ch.", None),
    ],
)
def test_once_more_along_the_other_side(words: str, made: int | None) -> None:
    """The second half has as many stitches as the first is said to have; one that turns the corner is not told so."""
    report = check(_STRIPE.format(words))
    assert counts(report) == [made]
    assert not corrections(report)


def test_a_count_of_both_sides_is_compared() -> None:
    """A printed count that is not twice the first is told."""
    words = "Sc in 2nd ch from hook and in each ch across (12). Repeat on the other side of the ch (26)."
    assert [rule for rule, _ in corrections(check(_STRIPE.format(words)))] == ["count-differs"]


def test_along_the_chain_again_in_sizes() -> None:
    """The count of the first half is a list over the sizes."""
    report = check(
        "Strap\nUS terms\nSizes: S (M: L)\n\nSTRAP\nCh 41 (45: 49).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across (40 (44: 48)). Repeat on the other side of the ch.\n"
    )
    assert [counts(report, size) for size in range(3)] == [[80], [88], [96]]
