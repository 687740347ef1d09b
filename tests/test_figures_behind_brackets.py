"""A figure behind a bracket of several clauses that says how often without a word: "(3 sc, inc) 6 (30)"."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_BALL = "Acorn\n\n{} terms{}\n\nRnd 1: 7 {s} in magic ring (7)\nRnd 2: inc x 7 (14)\nRnd 3: {line}\n"


def _made(line: str, terms: str = "US", more: str = "") -> tuple[int | None, list]:
    stitch = "sc" if terms == "US" else "dc"
    report = check(_BALL.format(terms, more, s=stitch, line=line.replace("ST", stitch)))
    return counts(report)[-1], corrections(report)


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("line", ["(ST, inc) 7 (21)", "[inc, ST] 7 [21]", "(ST, inc) 7 (21 ST)."])
def test_a_figure_between_a_bracket_and_the_count(line: str, terms: str) -> None:
    """It is how often the bracket is worked."""
    assert _made(line, terms) == (21, [])


def test_a_wrong_figure_is_found() -> None:
    """One that runs past the round below is a mistake."""
    assert [rule for rule, _ in _made("(ST, inc) 8 (21)")[1]] == ["repeat-does-not-fit"]


@pytest.mark.parametrize("line", ["(ST, inc) 7", "(ST, inc), 7 (21)", "(ST, inc) 5, 4 ST (19)"])
def test_a_figure_that_may_be_anything(line: str) -> None:
    """Without the count behind it, or with a sign before it, nothing tells what it is."""
    assert _made(line)[0] is None


def test_figures_of_sizes() -> None:
    """In two sizes these are a figure for each."""
    assert _made("(ST, inc) 7 (21)", more="\n\nSizes: S (M)")[0] is None
