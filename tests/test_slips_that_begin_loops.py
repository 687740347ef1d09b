"""Rounds of loops, each to a slip stitch, that begin with one beside the join."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, spaces

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


_WIDE = "Frill\n\nUS terms\n\nRnd 1: 12 sc in magic ring, join with sl st in first sc. (12)\nRnd 2: {}\n"


@pytest.mark.parametrize(
    ("words", "loops"),
    [
        ("Sl st in same st as join, (ch 3, sk 1, sl st in next st) around, ch 3, join.", {3: 6}),
        ("Sl st in first sc, *ch 4, sk next 2 sc, sl st in next sc; rep from * around, ch 4, join.", {4: 4}),
        ("Sl st in first sc, *ch 4, sk next 2 sc, sl st in next sc; rep from * around.", {4: 4}),
        (
            "Sl st in first sc, *ch 4, sk 2 sc, sl st in next sc; rep from * 2 more times, ch 4, sk last 2 sc, join.",
            {4: 4},
        ),
    ],
)
def test_loops_over_several_stitches(words: str, loops: dict[int, int]) -> None:
    """The loop behind the repeat is the last one: it passes over what the others do, and is no part of another."""
    report = check(_WIDE.format(words))
    assert spaces(report)[-1] == loops and corrections(report) == []
    assert "places-left-over" not in [rule for rule, _ in all_findings(report)]


def test_a_wrong_number_of_loops() -> None:
    """A print that is one too many is found."""
    words = "Sl st in same st as join, (ch 4, sl st in next st) around, ch 4, join. (10 loops)"
    assert ("count-differs", 6) in corrections(check(_US.format(words)))


_AT_BASE = ["join in base of first ch-4", "sl st in base of first ch", "join with sl st to base of beginning ch", "sl st in first ch"]  # fmt: skip


@pytest.mark.parametrize("text", [_US, _UK])
@pytest.mark.parametrize("end", _AT_BASE)
@pytest.mark.parametrize("printed", ["", " (9 loops)"])
def test_a_round_closed_into_the_foot_of_its_first_loop(text: str, end: str, printed: str) -> None:
    """That loop springs from the stitch of the join, which is taken: one loop beside each stitch, and none left over."""
    stitch = "sc" if text is _US else "dc"
    for words in (f"Ch 4, ({stitch} in next st, ch 4) 8 times", f"*Ch 4, {stitch} in next st; rep from * around, ch 4"):
        report = check(text.format(f"{words}, {end}.{printed}"))
        assert spaces(report)[-1] == {4: 9} and counts(report)[-1] == 8
        assert "places-left-over" not in [rule for rule, _ in all_findings(report)] and corrections(report) == []


def test_a_round_closed_into_its_first_stitch() -> None:
    """There nothing tells that the loop before it took one: the stitch of the join is worked into last."""
    words = "Ch 4, (sc in next st, ch 4) 8 times, sc in next st, sl st in first sc."
    assert counts(check(_US.format(words)))[-1] == 9
