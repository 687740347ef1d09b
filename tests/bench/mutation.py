"""How well single slips of the pen are found: python tests/bench/mutation.py [FOLDER …] [--seed N] [--most N] [--list]

Takes the sound patterns of corpus_demo/ (or those of the folders named: every text without "-faulty" in its name), makes
many edits of each, one at a time, and checks the edited pattern.  A table tells for every sort of edit:

  made        edits drawn
  as good     left out of what follows: every row of the edited pattern makes exactly what it made before and is printed
              as before, so that it is the same pattern in other words ("skip next dc, sc in ch-2 sp" without its skip)
  unspoken    left out too: something else is made, but every row is recomputed, comes out on the row below, and no
              printed figure and no later row speaks of what changed.  --list shows them, so that the excuse can be judged
  found       share of the others of which a correction or query tells that the sound pattern has not
  at home     share of the found of which the first such finding stands in the edited row or the next
  corrections corrections to one found edit
  cause       share (of all that are left) whose first likely cause, applied to the text, gives a pattern that makes and
              prints what the sound one does
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(Path(__file__).resolve().parent)]

from mutants import COUNT_FAULTS, OPERATORS, Ground, Mutant  # noqa: E402

from lint.finding import Finding, Weight  # noqa: E402
from lint.inspection import Report, inspect  # noqa: E402
from lint.rulebook import load_rulebook  # noqa: E402
from lint.source import SourceText  # noqa: E402

TOLD = (Weight.CORRECTION, Weight.QUERY)


@dataclass
class Tally:
    """What came of the edits of one sort."""

    made: int = 0
    as_good: int = 0
    unspoken: int = 0
    found: int = 0
    at_home: int = 0
    corrections: int = 0
    causes: int = 0
    missed: list[str] = field(default_factory=list)

    @property
    def left(self) -> int:
        return self.made - self.as_good - self.unspoken


class Bench:
    """Checks texts, and compares an edited pattern with the sound one."""

    def __init__(self, seed: int, most: int) -> None:
        self.book = load_rulebook()
        self.seed = seed
        self.most = most
        self.tallies: dict[str, Tally] = {}
        self.false: list[str] = []
        self.patterns = 0

    def inspect(self, text: str) -> Report:
        return inspect(SourceText(text), self.book, workings=False)

    def pattern(self, path: Path) -> None:
        """All edits of one sound pattern that the seed draws."""
        text = path.read_text(encoding="utf-8")
        sound = self.inspect(text)
        self.patterns += 1
        self.false += [f"{path.stem}: {f.rule} {f.row}" for f in sound.findings if f.weight is Weight.CORRECTION]
        ground = Ground.of(text, sound.pattern, sound.terms.terms)
        for operator in OPERATORS:
            mutants = list(operator(ground))
            draw = random.Random(f"{self.seed} {path.stem} {operator.__name__}")
            for mutant in draw.sample(mutants, min(self.most, len(mutants))):
                self.edited(path.stem, text, sound, mutant)

    def edited(self, name: str, text: str, sound: Report, mutant: Mutant) -> None:
        """One edit."""
        tally = self.tallies.setdefault(mutant.operator, Tally())
        tally.made += 1
        edited = mutant.text(text)
        try:
            report = self.inspect(edited)
        except Exception as error:  # nothing that an author wrote may end in one
            tally.missed.append(f"RAISES    {name}: {_shown(text, mutant)}: {error!r}")
            return
        new = new_findings(sound, report)
        told = f"{name}: {_shown(text, mutant)}"
        if not new and same(sound, report):
            tally.as_good += 1
            return
        if not new and comes_out(report):
            tally.unspoken += 1
            tally.missed.append(f"unspoken  {told}")
            return
        if not new:
            tally.missed.append(f"MISSED    {told}")
            return
        tally.found += 1
        first = min(new, key=lambda finding: (TOLD.index(finding.weight), finding.span.start))
        home = mutant.home_in_mutant()
        at_home = home is None or home.start <= first.span.start <= home.end
        tally.at_home += at_home
        if not at_home:
            tally.missed.append(f"ELSEWHERE {told} -> {first.rule} at {first.row}")
        corrections = [finding for finding in new if finding.weight is Weight.CORRECTION]
        tally.corrections += len(corrections)
        if len(corrections) > 1:
            tally.missed.append(f"MANY      {told} -> {'; '.join(f'{f.rule} {f.row}' for f in corrections)}")
        cause = next((finding.likely[0] for finding in new if finding.likely), None)
        if cause is not None and self.undoes(cause, edited, text, sound):
            tally.causes += 1
        elif mutant.operator in COUNT_FAULTS:
            tally.missed.append(f"CAUSE     {told} -> {first.rule} {first.row}: {cause.change if cause else None}")

    def undoes(self, cause: Any, edited: str, text: str, sound: Report) -> bool:
        """Whether a likely cause gives back the sound pattern: its words, or other words for the same rows."""
        if cause.replacement is None:
            return False
        mended = edited[: cause.span.start] + cause.replacement + edited[cause.span.end :]
        return mended == text or same(sound, self.inspect(mended))


def new_findings(sound: Report, report: Report) -> list[Finding]:
    """Corrections and queries that the sound pattern does not have."""
    had = Counter((finding.rule, finding.row) for finding in sound.findings)
    new = []
    for finding in report.findings:
        key = (finding.rule, finding.row)
        if had[key]:
            had[key] -= 1
        elif finding.weight in TOLD:
            new.append(finding)
    return new


def figures(report: Report) -> list[tuple]:
    """What every row makes and prints, and that it comes out; stitches passed on the way to a space need no skip."""
    rows = []
    for row in report.ledger.rows:
        printed = (
            [[item.at(size, row.stated_index) for item in row.stated.items] for size in range(len(row.cells))]
            if row.stated
            else None
        )
        cells = [
            (cell.made, sorted((m.kind, m.wanted, m.number) for m in cell.misfits if m.kind != "passed"))
            for cell in row.cells
        ]
        rows.append((row.kind, printed, cells))
    return rows


def same(sound: Report, report: Report) -> bool:
    """Whether two texts give the same rows with the same counts."""
    return figures(sound) == figures(report)


def comes_out(report: Report) -> bool:
    """Whether every row is recomputed, agrees with what is printed of it, and uses up the row below."""
    cells = [cell for row in report.ledger.rows for cell in row.cells]
    return all(cell.outcome.value in ("agrees", "not-stated", "not-worked") and not cell.misfits for cell in cells)


def _shown(text: str, mutant: Mutant) -> str:
    line = text[: mutant.start].count("\n") + 1
    old = " ".join(text[mutant.start : mutant.end].split())
    around = " ".join(text[max(0, mutant.start - 25) : mutant.end + 25].split())
    return f"line {line}: {old[:40]!r} -> {' '.join(mutant.words.split())[:40]!r} in …{around[:110]}…"


def table(tallies: dict[str, Tally]) -> str:
    """The table, as text that Markdown shows as a table too."""
    lines = [
        "| edit | made | as good | unspoken | found | at home | corrections | cause |",
        "|---|---|---|---|---|---|---|---|",
    ]
    total, counts = Tally(), Tally()
    for name, tally in tallies.items():
        for into in (total, counts) if name in COUNT_FAULTS else (total,):
            for key in ("made", "as_good", "unspoken", "found", "at_home", "corrections", "causes"):
                setattr(into, key, getattr(into, key) + getattr(tally, key))
        lines.append(_line(name, tally, name in COUNT_FAULTS))
    return "\n".join([*lines, _line("count faults", counts, True), _line("all", total, False)])


def _line(name: str, tally: Tally, of_counts: bool) -> str:
    found = f"{tally.found / tally.left:.0%}" if tally.left else "-"
    home = f"{tally.at_home / tally.found:.0%}" if tally.found else "-"
    each = f"{tally.corrections / tally.found:.2f}" if tally.found else "-"
    cause = f"{tally.causes / tally.left:.0%}" if tally.left and of_counts else ""
    return f"| {name} | {tally.made} | {tally.as_good} | {tally.unspoken} | {found} | {home} | {each} | {cause} |"


def sound_patterns(folder: Path) -> list[Path]:
    """The sound patterns of a folder; in corpus_demo those without planted mistakes."""
    if folder == ROOT / "corpus_demo":
        import yaml

        truth = yaml.safe_load((ROOT / "tests" / "demo_mistakes.yaml").read_text(encoding="utf-8"))
        return sorted(folder / name for name, entry in truth.items() if not entry["mistakes"])
    return sorted(path for path in folder.glob("*.txt") if "-faulty" not in path.stem)


def main() -> None:
    """Run the bench and print its table."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("folders", nargs="*", type=Path, default=[ROOT / "corpus_demo"])
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--most", type=int, default=8, help="edits of one sort in one pattern")
    parser.add_argument("--list", action="store_true", help="show every edit that is not found as it should be")
    options = parser.parse_args()
    bench = Bench(options.seed, options.most)
    for folder in options.folders:
        for path in sound_patterns(folder):
            bench.pattern(path)
    if options.list:
        for name, tally in bench.tallies.items():
            print(f"-- {name}")
            print("".join(f"   {line}\n" for line in tally.missed), end="")
    print(table(bench.tallies))
    print(f"{bench.patterns} sound patterns, seed {options.seed}; false corrections on them: {len(bench.false)}")
    for line in bench.false:
        print(f"   {line}")


if __name__ == "__main__":
    main()
