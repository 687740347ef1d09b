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


def graded(sizes: int) -> str:
    """A yoke in so many sizes: the lists of all its rows have a figure for each."""

    def listed(first: int, step: int) -> str:
        figures = [str(first + step * size) for size in range(sizes)]
        return figures[0] if sizes == 1 else f"{figures[0]} ({', '.join(figures[1:])})"

    names = ["XXS", "XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X", "6X", "7X"][:sizes]
    line = f"Sizes: {names[0]} ({', '.join(names[1:])})\n\n" if sizes > 1 else ""
    rows = "".join(
        f"Rnd {n}: Ch 1, *sc in each of next {listed(19, 2)} sts, 2 sc in next st; rep from * 3 times more, "
        f"sc in each st around, join with sl st in first sc. ({listed(116 + 4 * n, 16)} sc)\n"
        for n in range(1, 31)
    )
    return f"Yoke\n\n{line}YOKE\nCh {listed(116, 16)}, join with sl st in first ch to form a ring.\n" + rows.replace(
        "Rnd 1: Ch 1, *", "Rnd 0: Ch 1, sc in each ch around, join with sl st in first sc.\nRnd 1: Ch 1, *"
    )


def sizes() -> None:
    """A whole check of twelve sizes against one."""
    with tempfile.TemporaryDirectory() as folder:
        commands = []
        for number in (1, 12):
            path = Path(folder) / f"{number}.txt"
            path.write_text(graded(number), encoding="utf-8")
            commands.append([sys.executable, "-m", "lint", "check", str(path)])
        one, twelve = seconds(*commands)
    print(f"one size {one:.2f} s, twelve sizes {twelve:.2f} s: ratio {twelve / one:.2f} (at most 4)")


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
    sizes()
    work()
