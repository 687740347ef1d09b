"""Random and hostile texts, outside the normal run: python tests/bench/fuzz.py [--seconds 60] [--cases N] [--seed 1]

Damaged demo patterns, words of the trade in any order, random characters and texts built to be hard.  Every one must
come to a report, its HTML page and its JSON, without a traceback and within the time limit; prints how many did, the
slowest, and each one that did not.  Exit status 1 if there was any.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import time
import traceback
from collections.abc import Callable, Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from lint.inspection import inspect  # noqa: E402
from lint.reports.data import as_data  # noqa: E402
from lint.reports.page import as_page  # noqa: E402
from lint.rulebook import load_rulebook  # noqa: E402
from lint.source import SourceText  # noqa: E402

LIMIT = 5.0  # seconds for one text of up to a million characters
DEMOS = [path.read_text(encoding="utf-8") for path in sorted((ROOT / "corpus_demo").glob("*.txt"))]
WORDS = (
    "Rnd Row Rnds Rows 1: 2: 3 4-9: 2-1: Next Ch 3 ch-2 sc dc 2tog hdc tr sl st sts in next each of the ring sp skip * ** ( ) "
    "[ ] { } , ; . : rep from times more twice around across to last turn join with inc dec first same corner (12 sts) (6, 8) "
    "= - – ½ 0 99999999 back loop only FPdc work evenly fasten off as for until magic shell st(s) dc2tog counts marker Row(s) "
    'S (M, L, XL) 4 (5, 6, 7) Size Sizes: Small Bust 32" 81 cm Gauge: Tension 16 sts and 9 rows = 10 4 in hook 4.5 mm US G-6 '
    "UK Materials yarn DK weight #3 50 g 100 m balls Finished size 8 x 10 inches Abbreviations BACK FRONT SLEEVE (make 2) x6 × / "
    "Work even Shape armholes Left reversing shaping only for all sizes -- --- | \t \n \n \n Strips of half 0 sts 1/0 0/0 ∞ ² ٣"
).split(" ")


def damaged(random: random.Random) -> str:
    """A demo pattern with characters, words, lines or numbers lost, doubled, moved or exchanged."""
    text = random.choice(DEMOS)
    for _ in range(random.randint(1, 8)):
        kind = random.randrange(7)
        at = random.randrange(len(text) + 1)
        upto = min(len(text), at + random.randint(1, 40))
        if kind == 0:
            text = text[:at] + text[upto:]
        elif kind == 1:
            text = text[:upto] + text[at:upto] + text[upto:]
        elif kind == 2:
            text = text[:at] + " " + random.choice(WORDS) + " " + text[at:]
        elif kind == 3:
            lines = text.split("\n")
            random.shuffle(lines)
            text = "\n".join(lines)
        elif kind == 4:
            start = random.randrange(len(text) + 1)
            text = text[start : start + random.randint(0, 1500)]
        elif kind == 5:
            text = (
                text[:at] + chr(random.choice([random.randrange(32, 127), random.randrange(160, 0x2FFF)])) + text[upto:]
            )
        else:
            text = text[:at] + str(random.choice([0, 1, 7, 10**9, 10**30, 3.5])) + text[at:]
    return text


def soup(random: random.Random) -> str:
    """Words of the trade in any order."""
    return " ".join(random.choice(WORDS) for _ in range(random.randint(0, 120)))


def noise(random: random.Random) -> str:
    """Any characters, lone surrogates too."""
    return "".join(chr(random.randrange(1, 0x11000)) for _ in range(random.randint(0, 300)))


KINDS: tuple[Callable[[random.Random], str], ...] = (damaged, damaged, soup, noise)


def hard() -> Iterator[tuple[str, str]]:
    """Texts built to take long, go deep or break something, with a name each."""
    head = "Hat\nUS terms\n\n"
    yield "a thousand million times", f"{head}Rnd 1: 6 sc in ring. (6)\nRnd 2: [2 sc in each sc] 1000000000 times.\n"
    yield "a number of a million figures", f"{head}Rnd 1: {'9' * 1_000_000} sc in ring.\n"
    yield "ten thousand brackets", f"{head}Rnd 1: {'(' * 10_000}sc in ring{')' * 10_000}.\n"
    yield "ten thousand open brackets", f"{head}Rnd 1: {'[' * 10_000}\n"
    yield "stars without end", f"{head}Rnd 1: {'*' * 100_000} sc; rep from * around.\n"
    yield (
        "a row that repeats itself",
        f"{head}Ch 10.\nRow 1: Sc in each ch.\nRow 2: Rep Row 2.\nRow 3: Rep Rows 1-3 until 90 rows in all.\n",
    )
    yield (
        "ranges backwards and endless",
        f"{head}Ch 10.\nRow 9-2: Sc in each ch.\nRows 3-999999999: Ch 1, sc in each sc, turn.\n",
    )
    yield (
        "stitches that name each other",
        f"{head}Shell: work 2 fans in same st.\nFan: work 2 shells in same st.\nRnd 1: Shell in ring.\nRnd 2: Fan in each shell.\n",
    )
    yield "one line of a megabyte", f"{head}Rnd 1: " + "sc in next st, " * 66_000
    yield "a megabyte of rows", head + "".join(f"Rnd {n}: Sc in each sc around. (6)\n" for n in range(1, 28_000))
    yield "a megabyte of numbers", head + "12 (13, 14) " * 83_000
    yield "a megabyte of lengths", head + "4 in (10 cm) x 6 in " * 50_000
    yield "a megabyte of commas", head + "," * 1_000_000
    yield "a megabyte of blanks", head + " " * 1_000_000 + "x"
    yield "a megabyte of line ends", head + "\n" * 1_000_000
    yield "a megabyte of one letter", head + "a" * 1_000_000
    yield "a megabyte of dashes", head + "-" * 1_000_000
    yield (
        "a thousand sizes",
        "Top\nSizes: "
        + ", ".join(f"{n} cm" for n in range(1000))
        + "\nRow 1: "
        + ", ".join("10" for _ in range(1000))
        + " sc.\n",
    )
    yield "a thousand headings", "\n\n".join(f"PART {n}\n\nRnd 1: 6 sc in ring. (6)" for n in range(1_000))
    yield "abbreviations without end", "Abbreviations\n" + "".join(f"ab{n}: stitch {n}\n" for n in range(20_000))
    yield "a megabyte of hooks", head + "Materials\n" + "4.5 mm (US 7) hook " * 50_000
    yield "a megabyte of sentences", head + "Sew the 4 ears to the head. " * 36_000
    yield "a megabyte of notes", head + "Notes\n" + "Ch 3 counts as a dc throughout. " * 31_000


def survives(text: str, book) -> tuple[float, str | None]:
    """How long a text takes, and the traceback if there is one."""
    began = time.perf_counter()
    try:
        report = inspect(SourceText(text), book)
        json.dumps(as_data(report))
        as_page(report)
    except Exception:  # noqa: BLE001 - whatever it is, it is what we look for
        return time.perf_counter() - began, traceback.format_exc()
    return time.perf_counter() - began, None


def main() -> int:
    """Run until the time or the number of cases is up."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=60.0)
    parser.add_argument("--cases", type=int, default=None)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--hard", action="store_true", help="only the texts built to be hard, each with its time")
    options = parser.parse_args()
    book = load_rulebook()
    bad = 0
    slowest = (0.0, "")
    for name, text in hard():
        took, trace = survives(text, book)
        if options.hard:
            print(f"{took:6.2f} s  {name}")
        if trace or took > LIMIT:
            bad += 1
            print(f"HARD {name}: {took:.2f} s\n{trace or ''}"[-2_000:])
        slowest = max(slowest, (took, name))
    if options.hard:
        return 1 if bad else 0
    began, cases = time.perf_counter(), 0
    while cases < options.cases if options.cases else time.perf_counter() - began < options.seconds:
        chance = random.Random(f"{options.seed}/{cases}")
        kind = chance.choice(KINDS)
        text = kind(chance)
        took, trace = survives(text, book)
        cases += 1
        if trace or took > LIMIT:
            bad += 1
            print(f"CASE {options.seed}/{cases - 1} {kind.__name__}: {took:.2f} s\n{trace or ''}"[-2_000:])
        slowest = max(slowest, (took, f"{kind.__name__} {cases - 1}"))
    print(f"{cases} cases, {bad} tracebacks or over {LIMIT:g} s; slowest {slowest[0]:.2f} s ({slowest[1]})")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
