"""Spaces before and after V-stitches in turn with these, and corners that come round; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_VS = (
    "Mist\n\nUS terms\n\nSpecial stitch: V-st = (dc, ch 1, dc) in same place.\n\nMIST\nRow 1: Fsc 10, turn. (10)\n"
    "Row 2: Ch 3 (counts as dc), sk 1, [V-st in next st, sk 2] twice, V-st in next st, dc in last st, turn. (3 V-sts, 2 dc)\n"
    "Row 3: Ch 3 (counts as dc), {}, dc in last dc.\n"
)
_SQUARE = (
    "Tile\n\nUS terms\n\nTILE\n"
    "Rnd 1: Ch 3 (counts as dc), dc in magic ring, ch 2, *2 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of ch-3. "
    "(8 dc, 4 ch-2 sps)\nRnd 2: Ch 1, {}, join.\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("dc in sp before first V-st, *V-st in V-st, dc in sp after V-st; rep from * across", 12),
        ("*V-st in V-st, dc in sp after V-st; rep from * to last V-st, V-st in V-st", 10),
        ("*V-st in next V-st, dc in sp after next V-st; rep from * across", None),
        ("2 dc in each V-st and in each sp between V-sts", None),
        ("V-st in each V-st and in each sp between V-sts", None),
    ],
)
def test_the_space_after_a_v_stitch(words: str, made: int | None) -> None:
    """ "Sp after V-st" is that behind the one just worked into; "after next V-st" may be either, and is not guessed."""
    assert counts(check(_VS.format(words)))[-1] == made


@pytest.mark.parametrize(
    "words",
    [
        "*3 sc in corner, sc in each dc to next corner; rep from * around",
        "*sc in each dc to corner, 3 sc in corner; rep from * around",
        "*3 sc in corner sp, sc in next 2 dc; rep from * around",
    ],
)
def test_a_side_before_the_first_corner_comes_last(words: str) -> None:
    """A round told from the corner on has what lies before its first corner at its end."""
    assert counts(check(_SQUARE.format(words)))[-1] == 20


def test_a_run_past_a_corner_is_not_guessed() -> None:
    """Three stitches of a side that has two: not shown without a count, and told where a count is printed."""
    words = "*3 sc in ch-2 sp, sc in next 3 dc; rep from * around"
    assert counts(check(_SQUARE.format(words)))[-1] is None
    printed = _SQUARE.format(words).replace(", join.\n", ", join. (20 sc)\n")
    assert [rule for rule, _ in all_findings(check(printed), ("correction",))] == ["count-differs"]
