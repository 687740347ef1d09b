"""The gap "between this V-st and the next" is told by a group that has been worked into; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, counts

_LACE = (
    "Scarf\n\nUS terms\n\nSpecial stitch\nV-st: (dc, ch 1, dc) in st or sp stated.\n\nSCARF\nRow 1: Fsc 14, turn. (14)\n"
    "Row 2: Ch 3 (counts as dc), skip 1 st, *V-st in next st, skip 2 sts; rep from * 3 times more, dc in last st, turn.\n"
    "Row 3: Ch 3 (counts as dc), {}, dc in top of ch-3.\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "V-st in next ch-1 sp, *V-st in sp between this V-st and next, V-st in next ch-1 sp; rep from * 2 more times",
            16,
        ),
        ("V-st in sp before first V-st, *V-st in sp between this and next V-st; rep from * 2 more times", 10),
        ("*V-st in sp between this and next V-st; rep from * across", None),
    ],
)
def test_this_group_and_the_next(words: str, made: int | None) -> None:
    """Where none has been come to, which group "this" is, is not guessed."""
    assert counts(check(_LACE.format(words)))[-1] == made
