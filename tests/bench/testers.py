"""A bench of testers, outside the normal run: python tests/bench/testers.py [--seed N] [--list]

Testers are simulated on the sound demo patterns and on shapes made up here, and on the same with one slip of the pen.
True testers work the words to the letter; others make one known slip on the way, or read one row otherwise.  Prints a
confusion table: what is true of a tester's count in the row where it first matters, against the verdict given there.

  true on sound      every count is due: "agrees" everywhere
  true on faulty     two to four testers follow the words; the print says otherwise: "print-wrong"
  true beside slip   the same, and one of them slipped before: "print-wrong" for the others
  one slips          one of three makes a slip of a known sort: "testers-slip"
  alone              one tester, and a slip: "testers-slip"
  read otherwise     two of three read one row otherwise: "words-misread"
  crowd              six testers on faulty words, each of whom slips with one chance in three: "print-wrong" for those
                     who counted that row in step

Then the time for 200 testers of 150 rows.
"""

from __future__ import annotations

import argparse
import random
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))  # this clone's own lint

from mutants import Ground, clause_number, doubled_clause, dropped_clause, printed_count, repeat_times
from mutation import sound_patterns

from lint.inspection import Report, inspect
from lint.ledger import Outcome
from lint.rulebook import load_rulebook
from lint.source import SourceText
from lint.testers.paths import Path as RowPath
from lint.testers.paths import paths_of
from lint.testers.review import Review, review
from lint.working.pieces import PatternWorker

DEMO = Path(__file__).resolve().parents[2] / "corpus_demo"
BOOK = load_rulebook()
UNWORKABLE = ("run out", "too often", "does not fit")
FAULTS = (printed_count, repeat_times, clause_number, dropped_clause, doubled_clause)
MISREADINGS = (repeat_times, clause_number, dropped_clause)
Counts = dict[int, int]  # by place in the ledger


@dataclass(frozen=True)
class Worked:
    """What came of a pattern's words alone: the count of every row, as far as they can be worked to the letter."""

    counts: Counts


def shapes() -> Iterator[tuple[str, str]]:
    """Sound patterns made up here: a flat circle, a square in rows of dc, a long panel, a tube with joined rounds."""
    head = "US terms\nCh 3 at the start of a row counts as dc. Ch 1 does not count as a st.\n\n"
    rounds = ["Rnd 1: Make a magic ring, 6 sc in ring. (6 sc)", "Rnd 2: 2 sc in each sc around. (12 sc)"]
    for number in range(3, 11):
        plain = "next sc" if number == 3 else f"next {number - 2} sc"
        rounds.append(f"Rnd {number}: *Sc in {plain}, 2 sc in next sc; rep from * 5 times more. ({6 * number} sc)")
    rounds += [f"Rnd {number}: Sc in each sc around. (60 sc)" for number in range(11, 19)]
    yield "circle", "Circle\n" + head + "\n".join(rounds)
    rows = ["Ch 32.", "Row 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across. (30 dc)"]
    turn = "Ch 3, turn, dc in next dc and in each dc across, working last dc in top of turning ch."
    rows += [f"Row {number}: {turn} (30 dc)" for number in range(2, 21)]
    yield "square", "Square\n" + head + "\n".join(rows)
    panel = ["Ch 57.", "Row 1: Sc in 2nd ch from hook and in each ch across. (56 sc)"]
    panel += [f"Row {number}: Ch 1, turn, sc in each sc across. (56 sc)" for number in range(2, 31)]
    yield "panel", "Panel\n" + head + "\n".join(panel)
    tube = ["Rnd 1: Make a magic ring, ch 1, 8 sc in ring, join with sl st in first sc. (8 sc)"]
    tube += ["Rnd 2: Ch 1, 2 sc in each sc around, join with sl st in first sc. (16 sc)"]
    tube += [
        "Rnd 3: Ch 1, *sc in next sc, 2 sc in next sc; rep from * 7 times more, join with sl st in first sc. (24 sc)"
    ]
    tube += [f"Rnd {n}: Ch 1, sc in each sc around, join with sl st in first sc. (24 sc)" for n in range(4, 15)]
    yield "tube", "Tube\n" + head + "\n".join(tube)


def read(text: str) -> Report:
    """The report on a text."""
    return inspect(SourceText(text), BOOK)


def to_the_letter(report: Report) -> Counts:
    """The counts that the words alone make, without a look at any printed one; none after words that do not work."""
    parts = tuple(
        replace(part, rows=tuple(replace(row, stated=None) for row in part.rows)) for part in report.pattern.parts
    )
    ledger = PatternWorker(replace(report.pattern, parts=parts), BOOK).ledger()
    counts: Counts = {}
    stopped = None
    for index, row in enumerate(ledger.rows):
        cell = row.first
        if any(misfit.kind in UNWORKABLE for misfit in cell.misfits) or cell.outcome is Outcome.NOT_RECOMPUTED:
            stopped = row.part
        if row.part is not stopped and cell.made is not None and cell.made.stitches:
            counts[index] = cell.made.stitches
    return counts


def usable(report: Report) -> set[int]:
    """Rows whose count is one of stitches, known and printed: what a tester mails is that number."""
    return {
        index
        for index, row in enumerate(report.ledger.rows)
        if row.number is not None
        and row.first.made is not None
        and row.first.stated is not None
        and all(item.unit == "stitches" or item.unit.startswith("kind") for item in row.first.stated.items)
    }


def as_csv(report: Report, testers: dict[str, Counts]) -> bytes:
    """Testers' counts as one spreadsheet."""
    lines = ["tester,part,row,count"]
    for name, counts in testers.items():
        for index, count in counts.items():
            row = report.ledger.rows[index]
            lines.append(f'{name},"{row.part.name}",{row.number},{count}')
    return "\n".join(lines).encode()


# slips ----------------------------------------------------------------------------------------------------------


def _from(counts: Counts, path: RowPath, at: int, off: Callable[[int], int]) -> Counts:
    """The counts with those from a place on the path on changed by so many."""
    changed = dict(counts)
    for place, row in enumerate(path.rows):
        if place >= at and row.index in changed:
            changed[row.index] += off(place - at)
    return changed


def one_more_or_less(counts: Counts, path: RowPath, draw: random.Random) -> Counts | None:
    """One increase or decrease by accident; it stays."""
    return _from(counts, path, draw.randrange(1, len(path.rows)), lambda _, by=draw.choice((-1, 1)): by)


def turning_chain(counts: Counts, path: RowPath, draw: random.Random) -> Counts | None:
    """The last stitch is left out in every row."""
    if path.rows[-1].row.kind != "row" or len(path.rows) > 15:
        return None
    return _from(counts, path, draw.randrange(1, 3), lambda rows: -1 - rows)


def one_more_each(counts: Counts, path: RowPath, draw: random.Random) -> Counts | None:
    """A stitch too many in every row or joined round."""
    return _from(counts, path, draw.randrange(1, 3), lambda rows: 1 + rows)


def start_chain(counts: Counts, path: RowPath, draw: random.Random) -> Counts | None:
    """One chain of the start is missed."""
    first = next((at for at, row in enumerate(path.rows) if row.on_chain), None)
    return _from(counts, path, first, lambda _: -1) if first is not None else None


def repeat_left_out(counts: Counts, path: RowPath, draw: random.Random) -> Counts | None:
    """The last repeat of a row is left out."""
    places = [at for at, row in enumerate(path.rows) if row.units and row.units[0].makes > 1 and at]
    if not places:
        return None
    at = draw.choice(places)
    return _from(counts, path, at, lambda _, by=path.rows[at].units[0].makes: -by)


def seen_late(counts: Counts, path: RowPath, draw: random.Random) -> Counts | None:
    """One lost, and only every fifth row counted."""
    if len(path.rows) < 8:
        return None
    changed = _from(counts, path, draw.randrange(1, len(path.rows) - 6), lambda _: -1)
    kept = {row.index for row in path.rows[::5]} | {path.rows[-1].index}
    rows = {row.index for row in path.rows}
    return {index: count for index, count in changed.items() if index not in rows or index in kept}


def rows_jumbled(counts: Counts, path: RowPath, draw: random.Random) -> Counts | None:
    """Words of other rows are followed: a drift by some here and some there."""
    if len(path.rows) < 6:
        return None
    lost = [draw.randrange(1, 4) for _ in path.rows]
    return _from(counts, path, draw.randrange(1, len(path.rows) - 4), lambda rows: -sum(lost[: rows + 1]))


SLIPS = (one_more_or_less, turning_chain, one_more_each, start_chain, repeat_left_out, seen_late, rows_jumbled)


# the bench ------------------------------------------------------------------------------------------------------


class Bench:
    """Counts what is true against what is said."""

    def __init__(self, seed: int, times: int) -> None:
        self.seed = seed
        self.times = times
        self.table: dict[str, Counter] = {}
        self.wrong: list[str] = []
        self.due = {
            "true on sound": "agrees",
            "true on faulty": "print-wrong",
            "true beside slip": "print-wrong",
            "one slips": "testers-slip",
            "alone": "testers-slip",
            "read otherwise": "words-misread",
            "crowd": "print-wrong",
        }
        self.causes: dict[str, Counter] = {}

    def tell(self, truth: str, verdict: str, told: str) -> None:
        """One tester's count in the row where it first matters."""
        self.table.setdefault(truth, Counter())[verdict] += 1
        if verdict != self.due[truth]:
            self.wrong.append(f"{truth:17} {verdict:14} {told}")

    def pattern(self, name: str, text: str) -> None:
        """One sound pattern: all sorts of testers on it, and on the same with slips of the pen."""
        sound = read(text)
        draw = random.Random(f"{self.seed} {name}")
        rows, counts = usable(sound), to_the_letter(sound)
        due = {index: counts[index] for index in counts if index in rows}
        self._sound(name, sound, due)
        paths = [path for path in paths_of(sound) if sum(row.index in due for row in path.rows) > 3]
        for slip in SLIPS if paths else ():
            for _ in range(self.times):
                self._slip(name, sound, due, slip, draw.choice(paths), draw)
        ground = Ground.of(text, sound.pattern, sound.terms.terms)
        for operator in FAULTS:
            edits = list(operator(ground))
            for edit in draw.sample(edits, min(self.times, len(edits))):
                self._fault(f"{name} {operator.__name__} {edit.words!r}", edit.text(text), paths, draw)
        for operator in MISREADINGS:
            edits = list(operator(ground))
            for edit in draw.sample(edits, min(self.times, len(edits))):
                self._misread(f"{name} {operator.__name__} {edit.words!r}", sound, due, read(edit.text(text)))

    def _sound(self, name: str, sound: Report, due: Counts) -> None:
        found = review(sound, [("t.csv", as_csv(sound, {"A": due, "B": due, "C": due}))])
        for one in found.judged:
            self.tell("true on sound", one.verdict.value, f"{name} {one.step.row.label}")

    def _slip(self, name: str, sound: Report, due: Counts, slip: Callable, path: RowPath, draw: random.Random) -> None:
        slipped = slip(due, path, draw)
        first = next((i for i in slipped or {} if slipped[i] != due[i]), None)
        if first is None or min(slipped.values()) < 1:
            return
        told = f"{name} {slip.__name__} {sound.ledger.rows[first].label}: {slipped[first]} for {due[first]}"
        for truth, others in (("one slips", {"B": due, "C": due}), ("alone", {})):
            found = review(sound, [("t.csv", as_csv(sound, {"A": slipped, **others}))])
            self._at(found, truth, {"A"}, first, told)
            for one in found.judged:
                if one.tester == "A" and one.step.row.index == first:
                    self.causes.setdefault(slip.__name__, Counter())[one.likely[0].name if one.likely else "none"] += 1

    def _fault(self, name: str, text: str, paths: list[RowPath], draw: random.Random) -> None:
        faulty = read(text)
        counts, rows = to_the_letter(faulty), usable(faulty)
        first = next((i for i, row in enumerate(faulty.ledger.rows) if row.first.outcome is Outcome.DIFFERS), None)
        if first is None or first not in counts or first not in rows or faulty.ledger.rows[first].first.misfits:
            return
        if counts[first] != faulty.ledger.rows[first].first.made.stitches:
            return
        due = {index: count for index, count in counts.items() if index in rows}
        testers = {letter: due for letter in "ABCD"[: draw.randrange(2, 5)]}
        told = f"{name} {faulty.ledger.rows[first].label}"
        self._at(review(faulty, [("t.csv", as_csv(faulty, testers))]), "true on faulty", set(testers), first, told)
        path = next((path for path in paths_of(faulty) if any(row.index == first for row in path.rows)), None)
        at = next((at for at, row in enumerate(path.rows) if row.index == first), 0)
        if at > 1:
            slipped = _from(due, path, draw.randrange(0, at), lambda _: -1)
            found = review(faulty, [("t.csv", as_csv(faulty, {**testers, "Z": slipped}))])
            self._at(found, "true beside slip", set(testers), first, told)
        crowd, sound = {}, set()
        for letter in "ABCDEF":
            slip = draw.choice(SLIPS) if draw.random() < 1 / 3 else None
            theirs = slip(due, path, draw) if slip else None
            crowd[letter] = theirs if theirs and min(theirs.values()) > 0 else due
            if crowd[letter] is due or all(crowd[letter].get(i) == due[i] for i in due if i <= first):
                sound.add(letter)
        if len(sound) > 1:
            self._at(review(faulty, [("t.csv", as_csv(faulty, crowd))]), "crowd", sound, first, told)

    def _misread(self, name: str, sound: Report, due: Counts, other: Report) -> None:
        if len(other.ledger.rows) != len(sound.ledger.rows):
            return
        counts = to_the_letter(other)
        theirs = {index: counts[index] for index in due if index in counts}
        first = next((i for i in theirs if theirs[i] != due[i]), None)
        if first is None:
            return
        found = review(sound, [("t.csv", as_csv(sound, {"A": theirs, "B": theirs, "C": due}))])
        told = f"{name} {sound.ledger.rows[first].label}: {theirs[first]} for {due[first]}"
        self._at(found, "read otherwise", {"A", "B"}, first, told)

    def _at(self, found: Review, truth: str, testers: set[str], index: int, told: str) -> None:
        for one in found.judged:
            if one.tester in testers and one.step.row.index == index:
                self.tell(truth, one.verdict.value, f"{told} | {one.why}")

    def show(self, listed: bool) -> None:
        """The table, and the figures that are aimed at."""
        verdicts = ["agrees", "print-wrong", "words-misread", "testers-slip", "follows", "cannot-tell"]
        print(f"| {'truth':17} | {' | '.join(verdicts)} | right |\n|---|{'---|' * (len(verdicts) + 1)}")
        right = total = 0
        for truth, row in self.table.items():
            own, all_of = row[self.due[truth]], sum(row.values())
            figures = " | ".join(f"{row[verdict]:{len(verdict)}}" for verdict in verdicts)
            print(f"| {truth:17} | {figures} | {own / all_of:.1%} |")
            if truth != "true on sound":
                right, total = right + own, total + all_of
        called = sum(
            self.table.get(t, Counter())["testers-slip"] for t in ("true on faulty", "true beside slip", "crowd")
        )
        print(f"right verdict where something is wrong: {right} of {total}, {right / total:.1%} (at least 95 %)")
        print(f"print wrong called tester wrong, with two and more testers: {called} (0)")
        print("\nthe cause that is named first, by the slip that was made:")
        for slip, causes in self.causes.items():
            print(f"  {slip:17} {', '.join(f'{cause} {number}' for cause, number in causes.most_common())}")
        for line in self.wrong if listed else ():
            print(line)


def many(testers: int, rows: int, seed: int) -> None:
    """How long many testers take, from a spreadsheet to every verdict, HTML and JSON."""
    from lint.reports.testers_data import as_data
    from lint.reports.testers_page import as_testers_page

    head = "Long Panel\nUS terms\nCh 1 does not count as a st.\n\nCh 81.\nRow 1: Sc in 2nd ch from hook and in each ch across. (80 sc)\n"
    text = head + "\n".join(f"Row {n}: Ch 1, turn, sc in each sc across. (80 sc)" for n in range(2, rows + 1))
    draw = random.Random(seed)
    sheet = {}
    pattern = read(text)
    (path,) = paths_of(pattern)
    due = {row.index: 80 for row in path.rows if row.row.number is not None}
    for number in range(testers):
        slip = draw.choice((*SLIPS[:1], *SLIPS[5:])) if number % 2 else None
        sheet[f"Tester {number}"] = slip(due, path, draw) if slip else due
    raw = as_csv(pattern, sheet)
    began = time.process_time()
    found = review(read(text), [("t.csv", raw)])
    judged = time.process_time()
    as_testers_page(found), as_data(found)
    ended = time.process_time()
    counts = len(found.judged)
    print(
        f"{testers} testers, {rows} rows, {counts} counts: judged in {judged - began:.1f} s, HTML and JSON {ended - judged:.1f} s of the processor (5 s)"
    )


def main() -> None:
    """The whole bench."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--times", type=int, default=6, help="cases of a sort in a pattern")
    parser.add_argument("--list", action="store_true", help="every verdict that is not the one due")
    asked = parser.parse_args()
    bench = Bench(asked.seed, asked.times)
    for path in sound_patterns(DEMO):
        bench.pattern(path.stem, path.read_text(encoding="utf-8"))
    for name, text in shapes():
        bench.pattern(name, text)
    bench.show(asked.list)
    many(200, 150, asked.seed)


if __name__ == "__main__":
    main()
