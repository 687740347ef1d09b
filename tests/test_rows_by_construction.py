"""Rows whose counts are known from how they were built: read, held against right and wrong prints, never counted otherwise."""

from __future__ import annotations

import pytest
from construction import built
from helpers import all_findings, check, mades

SEEDS = range(25)


def _held(report, made) -> list[tuple]:
    """Each row as worked beside what it makes; only those that are recomputed."""
    pairs = zip(mades(report), made, strict=True)
    return [
        ((got.stitches, {k: n for k, n in got.spaces.items() if n}), want) for got, want in pairs if got is not None
    ]


@pytest.mark.parametrize("seed", SEEDS)
def test_rows_without_counts_make_what_they_were_built_to_make(seed: int) -> None:
    """No count is printed that a wrong reading could be caught by; at most a row that two readings fit has none."""
    pattern = built(seed)
    held = _held(check(pattern.text), pattern.made)
    assert held and all(got == want for got, want in held)
    assert len(held) >= len(pattern.made) - 1


@pytest.mark.parametrize("seed", SEEDS)
def test_right_prints_agree(seed: int) -> None:
    """With the right count behind each row all of them are recomputed, and none is doubted."""
    pattern = built(seed)
    report = check(pattern.counted())
    assert [got for got, _ in _held(report, pattern.made)] == list(pattern.made)
    assert "count-differs" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize("seed", SEEDS)
def test_a_wrong_print_is_told_and_the_words_are_kept_to(seed: int) -> None:
    """A count that is out by one or two is told at its row alone; no odd reading is found that agrees with it."""
    pattern = built(seed)
    wrong = 1 + seed % (len(pattern.rows) - 1)
    text = pattern.counted(wrong, (-2, -1, 1, 2)[seed % 4])
    report = check(text)
    line = text.count("\n", 0, text.index(pattern.rows[wrong])) + 1
    assert [at for rule, at in all_findings(report) if rule == "count-differs"] == [line]
    assert all(got == want for got, want in _held(report, pattern.made))
