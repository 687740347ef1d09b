"""Benchmarks, outside the normal run: python tests/bench/benchmark.py [NAME …]

Prints ratios, not bare times, for machines differ: a whole `check --html` against a bare `import spacy` in the same shell;
`--help`, `explain` and `rules` against a bare interpreter; twelve sizes against one; a warm check against bare tokenizing of
the same text; faulty against sound; stitches worked a second on one core, how time grows from 1,000 to 1,000,000 of them,
and the memory that each takes.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PATTERN = ROOT / "corpus_demo" / "inkberry-hexagon-blanket.txt"
RUNS = 5
_ENVIRONMENT = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}  # as on a desk


def seconds(*commands: list[str]) -> list[float]:
    """The best of several runs of each command; they take turns, so that a slow spell of the machine hits all."""
    best = [float("inf")] * len(commands)
    for _ in range(RUNS):
        for index, command in enumerate(commands):
            began = time.perf_counter()
            subprocess.run(command, check=False, capture_output=True, cwd=ROOT, env=_ENVIRONMENT)
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


def graded_mesh(sizes: int) -> str:
    """A tank in mesh of 54 rows, in so many sizes from 63 stitches to 163: each size is a long piece of work by itself."""
    names = ["XXS", "XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X", "6X", "7X"][-sizes:]
    chains = [64 + 100 * size // 22 * 2 for size in range(12)][-sizes:]
    listed = str(chains[0]) if sizes == 1 else f"{chains[0]} ({', '.join(map(str, chains[1:]))})"
    line = f"Sizes: {names[0]} ({', '.join(names[1:])})\n\n" if sizes > 1 else ""
    return (
        f"Tank\n\n{line}Each ch-1 sp counts as one st.\n\nBACK\nCh {listed}.\n"
        "Row 1: Sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across, turn.\n"
        "Row 2: Ch 1, sc in first sc, sc in next ch-1 sp, *ch 1, sk next sc, sc in next ch-1 sp; rep from * to last sc, sc in last sc, turn.\n"
        "Row 3: Ch 1, sc in first sc, *ch 1, sk next sc, sc in next ch-1 sp; rep from * to last 2 sc, ch 1, sk next sc, sc in last sc, turn.\n"
        "Rep Rows 2 and 3 until 54 rows have been worked.\nFasten off.\n"
    )


def sizes() -> None:
    """A whole check of twelve sizes against the largest of them alone, with and without workings."""
    with tempfile.TemporaryDirectory() as folder:
        for name, made in (("yoke", graded), ("mesh", graded_mesh)):
            for report in ([], ["--json", str(Path(folder) / "out.json")]):
                commands = []
                for number in (1, 12):
                    path = Path(folder) / f"{number}.txt"
                    path.write_text(made(number), encoding="utf-8")
                    commands.append([sys.executable, "-m", "lint", "check", str(path), *report])
                one, twelve = seconds(*commands)
                told = f"{name}{' with workings' if report else ''}"
                print(f"{told}: one size {one:.2f} s, twelve {twelve:.2f} s: ratio {twelve / one:.2f} (at most 4)")


def start() -> None:
    """What needs no spaCy: against a bare interpreter, and under a quarter of a second."""
    lint = [sys.executable, "-m", "lint"]
    bare, *others = seconds(
        [sys.executable, "-c", "pass"],
        [*lint, "--help"],
        [*lint, "explain"],
        [*lint, "rules"],
        [*lint, "check", "--help"],
        [*lint, "house"],
    )
    for name, took in zip(("--help", "explain", "rules", "check --help", "house"), others, strict=True):
        print(f"{name} {took:.2f} s: {took / bare:.1f} bare interpreters (at most 0.25 s)")


def warm() -> None:
    """Patterns checked one after the other in one process, against bare tokenizing of the same texts."""
    from lint.inspection import inspect
    from lint.remembered import forget_all
    from lint.rulebook import load_rulebook
    from lint.source import SourceText
    from lint.tokens import _tokenizer

    book = load_rulebook()
    texts = [
        SourceText(path.read_text(encoding="utf-8"), path.name) for path in sorted((ROOT / "corpus_demo").glob("*.txt"))
    ]
    faulty = ("plumstone", "pockle", "withybed")
    tokenizer = _tokenizer()

    def best(do: Callable[[], object]) -> float:
        took = []
        for _ in range(4):
            forget_all()  # the same pattern comes once
            began = time.process_time()
            do()
            took.append(time.process_time() - began)
        return min(took)

    times = {text.path: best(lambda text=text: inspect(text, book, workings=False)) for text in texts}
    rows = {text.path: len(inspect(text, book, workings=False).ledger.rows) for text in texts}
    bare = best(lambda: [tokenizer(line) for text in texts for line in text.text.splitlines()])
    sound = [path for path in times if not path.startswith(faulty)]
    rate = sum(rows[path] for path in sound) / sum(times[path] for path in sound)
    each = {
        kind: sum(times[p] for p in some) / sum(rows[p] for p in some)
        for kind, some in (("sound", sound), ("faulty", set(times) - set(sound)))
    }
    print(f"warm checks of seven patterns: {sum(times.values()) / bare:.0f} times bare tokenizing of their lines")
    print(
        f"sound patterns: {rate / 60:.1f} of 60 rows a second (100 are the aim); a row of a faulty one takes {each['faulty'] / each['sound']:.1f} times as long"
    )


def work() -> None:
    """Stitches worked a second, growth, and memory."""
    import gc
    import tracemalloc

    from lint.reading.document import read_pattern
    from lint.rulebook import load_rulebook
    from lint.source import SourceText
    from lint.working.pieces import PatternWorker

    book = load_rulebook()
    base = None
    for stitches in (1_000, 3_000, 10_000, 30_000, 100_000, 300_000, 1_000_000):
        pattern, _, _ = read_pattern(SourceText(panel(stitches, 200 if stitches < 1_000_000 else 1_000)), book)
        best = float("inf")
        for _ in range(3 if stitches < 300_000 else 1):
            began = time.process_time()
            ledger = PatternWorker(pattern, book).ledger()
            best = min(best, time.process_time() - began)
        each = best / ledger.stitches
        base = base or each
        print(
            f"{ledger.stitches:>8} stitches: {ledger.stitches / best:>10,.0f} a second; time a stitch {each / base:.2f} of the smallest"
        )
    for wide in (
        2_000,
        8_000,
    ):  # the most that is held at once is a row and the row below: wide rows show what a stitch takes
        pattern, _, _ = read_pattern(SourceText(panel(4 * wide, wide)), book)
        gc.collect()
        tracemalloc.start()
        PatternWorker(pattern, book).ledger()
        most = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        print(
            f"rows of {wide:,} stitches: {most / (2 * wide):.0f} bytes for each stitch of a row and the row below (at most 200)"
        )


BENCHMARKS = {one.__name__: one for one in (start_up, start, sizes, warm, work)}


if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))
    for name in sys.argv[1:] or BENCHMARKS:
        BENCHMARKS[name]()
