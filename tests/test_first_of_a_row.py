"""Whether a chain counts before one stitch in the first one, where nothing says so; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, counts

_FLAT = "Cloth\n\nUS terms\n\nCLOTH\nRow 1: Fsc 24, turn. (24)\nRow 2: {}\n"
_ROUND = "Mat\n\nUS terms\n\nMAT\nRnd 1: 24 sc in magic ring, join. (24)\nRnd 2: {}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 2, hdc in first st, hdc in next st and in each st across.", 24),
        ("Ch 2, hdc in first st (increase made), hdc in each st across.", 25),
        ("Ch 2, hdc in first st for an increase, hdc in each st across.", 25),
        ("Ch 3, dc in first st, dc in each st to last 2 sts, dc2tog.", 24),
        ("Ch 2, hdc in first st, hdc in next 22 sts, 2 hdc in last st.", 26),
    ],
)
def test_a_flat_row(words: str, made: int) -> None:
    """The chain counts for nothing where the row is even; where it is shaped, or said to increase, it may count."""
    assert counts(check(_FLAT.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 3, dc in first st and in each st around, join.", 24),
        ("Ch 3, dc in first st, 2 dc in each of next 23 sts, join.", 48),
        ("Ch 3, dc in first st, dc in next 2 sts, (2 dc in next st, dc in next 2 sts) 7 times, join.", 32),
        ("Ch 2, dc in first 2 sts, 2 dc in next st, (dc in next 2 sts, 2 dc in next st) 7 times, join.", 32),
    ],
)
def test_a_round_that_increases(words: str, made: int) -> None:
    """The passes show it: they begin with two in a stitch as chain and first stitch do, or as the round does without the chain."""
    assert counts(check(_ROUND.format(words)))[-1] == made
