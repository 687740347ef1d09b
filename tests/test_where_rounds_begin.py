"""Words that say where the first stitch of a round goes: it is worked there, if the words behind do not work it again."""

from __future__ import annotations

import pytest
from helpers import check, counts

_RING = "Sorrel Cap\nUS terms\n\nCAP\nRnd 1: 12 sc in magic ring, join with sl st in first sc.\nRnd 2: "


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Ch 1, work first sc in same st, sc in next 11 sts, join with sl st in first sc.", 12),
        ("Ch 1, work the first sc in the same st as joining, 2 sc in each of next 11 sts, join.", 23),
        ("Ch 1, working first sc in same st, sc in each st around, join.", 12),
        ("Ch 1, sc around, working first sc in same st as joining, join.", 12),
        ("Ch 1, work the first sc in the same st as join, *sc in next 2 sts, 2 sc in next st, rep from * around.", 16),
    ],
)
def test_first_stitch_placed(row: str, made: int) -> None:
    """ "Work first sc in same st" makes a stitch, unless the words before or behind use up all places without it."""
    assert counts(check(_RING + row + "\n")) == [12, made]


@pytest.mark.parametrize("sign", [":", ";", ",", ".", " –", " -"])
def test_place_told_ends_at_its_sign(sign: str) -> None:
    """What stands behind "same st as join:" is worked; it is no part of the place."""
    row = f"Ch 1, 2 sc in same st as join{sign} sc in next 10 sts, 2 sc in next st, join with sl st in first sc."
    assert counts(check(_RING + row + "\n")) == [12, 14]
