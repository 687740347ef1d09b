"""Whole patterns in drawn house styles: every row is counted right in every size, and a wrong print is found.

Common practice, no source: the wordings are the trade's, the counts are arithmetic.
"""

from __future__ import annotations

from random import Random

import pytest
from drawnpieces import drawn
from helpers import all_findings, check, corrections, worked_rows


@pytest.mark.parametrize("seed", range(120))
def test_sound_patterns_in_drawn_styles(seed: int) -> None:
    """Nothing is counted wrong and nothing is corrected; what stands in plain words is not lost either."""
    pattern = drawn(seed)
    report = check(pattern.text)
    made = [tuple(cell.made.stitches if cell.made else None for cell in row.cells) for row in worked_rows(report)]
    assert made == list(pattern.made)
    assert corrections(report) == []


@pytest.mark.parametrize("seed", range(60))
def test_a_wrong_print_is_found_where_it_stands(seed: int) -> None:
    """A printed count that is out by one or two in one size is found at its line, and nothing else is."""
    chance = Random(seed)
    wrong = chance.randint(1, drawn(seed).lines)
    pattern = drawn(seed, wrong, chance.choice((-2, -1, 1, 2)))
    report = check(pattern.text)
    off = [
        (rule, line)
        for rule, line in all_findings(report)
        if rule == "count-differs" or (rule, line) in corrections(report)
    ]
    assert [line for _, line in off] in ([pattern.line], [pattern.line + 1])  # a count may have a line of its own
