"""Rounds of loops, each to a slip stitch, that begin with one beside the join."""

from __future__ import annotations

import pytest
from helpers import check, corrections, spaces

_US = "Frill\n\nUS terms\n\nRnd 1: 9 sc in magic ring, join with sl st in first sc. (9)\nRnd 2: {}\n"
_UK = "Frill\n\nUK terms\n\nRnd 1: 9 dc in magic ring, join with sl st to first dc. (9)\nRnd 2: {}\n"


@pytest.mark.parametrize(
    ("text", "words", "loops"),
    [
        (_US, "Sl st in same st as join, *ch 4, sl st in next st; rep from * around, ch 4, join{}.", {4: 9}),
        (_US, "Ch 1, sl st in same st, (ch 5, sl st in next st) around, ch 5, sl st in first sl st{}.", {5: 9}),
        (_UK, "Sl st in first dc, (ch 4, sl st in next dc) around, ch 4, join{}.", {4: 9}),
        # no loop stands behind the repeat: its last pass ends where the round began
        (_US, "Sl st in same st as join, (ch 4, sl st in next st) around{}.", {4: 9}),
    ],
)
@pytest.mark.parametrize("printed", ["", ". (9 loops)"])
def test_a_loop_for_each_stitch(text: str, words: str, loops: dict[int, int], printed: str) -> None:
    """The first slip stitch takes its stitch, so that there are as many loops as stitches."""
    report = check(text.format(words.format(printed)))
    assert spaces(report)[-1] == loops and corrections(report) == []


def test_a_wrong_number_of_loops() -> None:
    """A print that is one too many is found."""
    words = "Sl st in same st as join, (ch 4, sl st in next st) around, ch 4, join. (10 loops)"
    assert ("count-differs", 6) in corrections(check(_US.format(words)))
