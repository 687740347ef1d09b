"""Patterns by construction, many of them: python tests/bench/construction.py [FIRST] [HOW MANY]

Each seed makes a pattern of tests/construction.py, read without counts, with right ones and with one that is wrong:

  right     rows that make what they were built to make
  none      rows that are not recomputed
  wrong     rows that make something else: each is a fault of the program
  missed    wrong prints that are not told at their row
  false     right prints that are doubted
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from construction import Built, built  # noqa: E402
from helpers import all_findings, check, mades  # noqa: E402


def held(pattern: Built, text: str, tally: Counter, seed: int) -> set[int]:
    """Holds each row of a report against what it was built to make; the lines of its count-differs findings."""
    report = check(text)
    for row, got, want in zip(pattern.rows, mades(report), pattern.made, strict=True):
        made = got and (got.stitches, {length: number for length, number in got.spaces.items() if number})
        sort = "none" if made is None else "right" if made == want else "wrong"
        tally[sort] += 1
        if sort != "right":
            print(f"seed {seed}, {sort}: {made} for {want}: {row}")
    return {line for rule, line in all_findings(report) if rule == "count-differs"}


def main() -> None:
    first, many = (int(word) for word in [*sys.argv[1:], *("0", "200")[len(sys.argv) - 1 :]][:2])
    tally: Counter[str] = Counter()
    for seed in range(first, first + many):
        pattern = built(seed)
        held(pattern, pattern.text, tally, seed)
        tally["false"] += len(held(pattern, pattern.counted(), tally, seed))
        at = 1 + seed % (len(pattern.rows) - 1)
        text = pattern.counted(at, (-2, -1, 1, 2)[seed % 4])
        line = text.count("\n", 0, text.index(pattern.rows[at])) + 1
        told = held(pattern, text, tally, seed)
        tally["missed"] += line not in told
        if line not in told:
            print(f"seed {seed}, missed: {pattern.rows[at]}")
    print(", ".join(f"{name} {tally[name]}" for name in ("right", "none", "wrong", "missed", "false")))


if __name__ == "__main__":
    main()
