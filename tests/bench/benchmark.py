"""Benchmarks, outside the normal run: python tests/bench/benchmark.py

Prints ratios, not bare times, for machines differ: a whole `check --html` on one two-page pattern against a bare
`import spacy` in the same shell; stitches worked a second on one core; how time grows from 1,000 to 300,000 stitches.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PATTERN = ROOT / "corpus_demo" / "inkberry-hexagon-blanket.txt"
RUNS = 7


def seconds(*commands: list[str]) -> list[float]:
    """The best of several runs of each command; they take turns, so that a slow spell of the machine hits all."""
    best = [float("inf")] * len(commands)
    for _ in range(RUNS):
        for index, command in enumerate(commands):
            began = time.perf_counter()
            subprocess.run(command, check=False, capture_output=True, cwd=ROOT)
            best[index] = min(best[index], time.perf_counter() - began)
    return best


def start_up() -> None:
    """A whole check with its HTML report against `import spacy`."""
    with tempfile.TemporaryDirectory() as folder:
        out = str(Path(folder) / "report.html")
        check = [sys.executable, "-m", "lint", "check", str(PATTERN), "--html", out]
        bare, whole = seconds([sys.executable, "-c", "import spacy"], check)
    print(f"import spacy {bare:.2f} s, check --html {whole:.2f} s: ratio {whole / bare:.2f} (at most 1.8)")


def panel(stitches: int, width: int = 200) -> str:
    """A plain panel of about so many stitches: increases and decreases that cancel, row after row."""
    repeats = width // 10
    rows = max(2, stitches // width)
    return (
        f"Panel\n\nPANEL\nCh {width + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across. ({width} sc)\n"
        f"Row 2: Ch 1 (does not count as a st), turn, *sc in next 4 sc, 2 sc in next sc, sc2tog over next 2 sc, sc in next 3 sc; "
        f"rep from * {repeats - 1} times more. ({width} sc)\nRows 3-{rows}: Rep Row 2. ({width} sc)\n"
    )


def work() -> None:
    """Stitches worked a second, and growth."""
    sys.path.insert(0, str(ROOT))
    from lint.reading.document import read_pattern
    from lint.rulebook import load_rulebook
    from lint.source import SourceText
    from lint.working.pieces import PatternWorker

    book = load_rulebook()
    base = None
    for stitches in (1_000, 3_000, 10_000, 30_000, 100_000, 300_000):
        pattern, _, _ = read_pattern(SourceText(panel(stitches)), book)
        best = float("inf")
        for _ in range(3):
            began = time.perf_counter()
            ledger = PatternWorker(pattern, book).ledger()
            best = min(best, time.perf_counter() - began)
        each = best / ledger.stitches
        base = base or each
        print(
            f"{ledger.stitches:>8} stitches: {ledger.stitches / best:>10,.0f} a second; time a stitch {each / base:.2f} of the smallest"
        )


if __name__ == "__main__":
    start_up()
    work()
