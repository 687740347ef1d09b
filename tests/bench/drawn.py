"""Many patterns in drawn house styles: python tests/bench/drawn.py [FIRST [MANY]]

Prints every pattern of which a row is counted wrong, is lost, or is corrected without cause, and of another so many with a
wrong print those where it is not found; then the sums.
"""

from __future__ import annotations

import sys
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from drawnpieces import drawn  # noqa: E402
from helpers import all_findings, check, corrections, worked_rows  # noqa: E402


def main() -> None:
    first, many = (
        (int(number) for number in (*sys.argv[1:3], "1", "200")[:2]) if len(sys.argv) != 2 else (int(sys.argv[1]), 200)
    )
    cells = right = lost = wrong = false = missed = 0
    for seed in range(first, first + many):
        pattern = drawn(seed)
        report = check(pattern.text)
        made = [[cell.made.stitches if cell.made else None for cell in row.cells] for row in worked_rows(report)]
        pairs = [pair for row, own in zip(made, pattern.made, strict=False) for pair in zip(row, own, strict=True)]
        gone = sum(one is None for one, _ in pairs) + abs(len(made) - len(pattern.made))
        off = sum(one is not None and one != other for one, other in pairs)
        unfounded = corrections(report)
        if gone or off or unfounded:
            print(f"seed {seed}: {off} wrong, {gone} lost, corrections {unfounded}")
        cells, right = cells + sum(map(len, pattern.made)), right + sum(one == other for one, other in pairs)
        lost, wrong, false = lost + gone, wrong + off, false + len(unfounded)
        chance = Random(seed)
        faulty = drawn(seed, chance.randint(1, pattern.lines), chance.choice((-2, -1, 1, 2)))
        at = [line for rule, line in all_findings(check(faulty.text)) if rule == "count-differs"]
        if faulty.line not in at and faulty.line + 1 not in at:
            missed += 1
            print(f"seed {seed}: the print of line {faulty.line} is wrong, found at {at}")
    print(
        f"{many} patterns: {right} of {cells} right, {wrong} wrong, {lost} lost, {false} false; {missed} wrong prints missed"
    )


if __name__ == "__main__":
    main()
