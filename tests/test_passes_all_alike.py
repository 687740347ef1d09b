"""Many passes of a repeat make what the same words make when they are written out; arithmetic, no source."""

from __future__ import annotations

import pytest
from helpers import check, counts, spaces

_HEAD = "Strip\nUS terms\n\nSTRIP\nCh 62.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (61 sc)\n"
_MESH = "Row 2: Ch 1, sc in first sc, *ch 1, sk next sc, sc in next sc; rep from * across, turn.\n"


@pytest.mark.parametrize(
    ("once", "often", "last"),
    [
        ("sc in next ch-1 sp, ch 1, sk next sc", 29, "sc in next ch-1 sp, sc in last sc"),
        ("dc in next ch-1 sp, dc in next sc", 30, ""),
        ("2 sc in next ch-1 sp, ch 2, sk next sc", 29, "2 sc in next ch-1 sp, sc in last sc"),
        ("hdc in next ch-1 sp, ch 3, sk next sc, sk next ch-1 sp, sc in next sc", 15, ""),
    ],
)
def test_as_written_out(once: str, often: int, last: str) -> None:
    """So many passes, or as many as there is room for, make the stitches and spaces of the words written out."""
    closing = f", {last}" if last else ""
    ways = [
        f"Row 3: Ch 1, sc in first sc, {', '.join([once] * often)}{closing}, turn.\n",
        f"Row 3: Ch 1, sc in first sc, *{once}; rep from * {often - 1} more times{closing}, turn.\n",
        f"Row 3: Ch 1, sc in first sc, ({once}) {often} times{closing}, turn.\n",
    ]
    made = [(counts(report := check(_HEAD + _MESH + way)), spaces(report)) for way in ways]
    assert made[0][0][:2] == [61, 31]
    assert made[1] == made[0]
    assert made[2] == made[0]


def test_one_place_unlike_the_others() -> None:
    """Where the row below changes on the way, the passes do too: a shell among single stitches is met where it is."""
    below = "Row 2: Ch 1, sc in first 20 sc, *ch 2, sk next sc, sc in next sc; rep from * 9 more times, sc in next 21 sc, turn."
    report = check(
        f"{_HEAD}{below}\nRow 3: Ch 1, *sc in next sc, ch 1, sk next st; rep from * to last sc, sc in last sc, turn.\n"
    )
    assert counts(report) == [61, 51, 26]
