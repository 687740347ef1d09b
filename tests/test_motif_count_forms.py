"""Printed counts of motifs in further forms: sums, series with "then", blocks and spaces as they follow in filet."""

from __future__ import annotations

import pytest
from helpers import check, outcomes

_START = "Square\nUS terms\n\nSQUARE\nR1: 12 dc in magic ring. = 12\n"


@pytest.mark.parametrize("form", ["= {} + 4 corner spaces", "({} + 4 ch-2 sps)", "({} plus 4 ch-2 sps)"])
def test_stitches_plus_spaces(form: str) -> None:
    """ "24 + 4 corner spaces" is so many stitches, and spaces beside them."""
    round_ = f"R2: ch 1, [sc 2, (2 dc, ch 2, 2 dc) in next st] x 4. Sl st to first sc. {form}\n"
    assert outcomes(check(_START + round_.format(24))) == ["agrees", "agrees"]
    assert outcomes(check(_START + round_.format(28))) == ["agrees", "differs"]


@pytest.mark.parametrize("form", ["= 24, then {}", "(24, then {})", "(24, then {} sts)"])
def test_series_with_then(form: str) -> None:
    """ "= 24, then 48" gives each round of a range its count."""
    assert outcomes(check(f"{_START}R2-3: ch 1, 2 sc in each st. {form.format(48)}\n")) == ["agrees"] * 3
    assert outcomes(check(f"{_START}R2-3: ch 1, 2 sc in each st. {form.format(44)}\n"))[2] == "differs"


_FILET = (
    "Filet\nUS terms\nSp (space) = ch 2, sk 2 sts, dc in next dc.\nBl (block) = dc in each of next 3 sts.\n\nFILET\nCh 18.\n"
    "Row 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn. (16 dc)\n"
    "Row 2: Ch 3 (counts as dc), dc in next 3 dc, [ch 2, sk 2 dc, dc in next dc] 3 times, dc in last 3 sts, turn. COUNT\n"
)


@pytest.mark.parametrize(
    ("count", "outcome"),
    [
        ("(1 bl, 3 sps, 1 bl)", "agrees"),
        ("(2 bls, 3 sps)", "agrees"),
        ("- 1 bl, 3 sps, 1 bl", "agrees"),
        ("(1 bl, 4 sps, 1 bl)", "differs"),
        ("(3 bls, 3 sps)", "differs"),
    ],
)
def test_blocks_and_spaces_of_a_row_told_stitch_by_stitch(count: str, outcome: str) -> None:
    """Blocks and spaces are counted off the row, in the order of the row or added up."""
    assert outcomes(check(_FILET.replace("COUNT", count)))[1] == outcome
