"""Runs out ranges and repeats of rows: which steps each numbered row works."""

from __future__ import annotations

from dataclasses import dataclass

from lint.pattern import Part, Row, Stated
from lint.tree import FastenOff, RowCall, Step, TimesKind, Turn

MOST_ROWS = 5000


@dataclass(frozen=True, slots=True)
class Instance:
    """One row to work: from which printed row, under which number, with which steps."""

    row: Row
    kind: str
    number: int | None
    label: str
    steps: tuple[Step, ...]
    stated: Stated | None
    stated_index: int | None
    inherited: Stated | None
    index: int
    length: int
    missing: str | None = None  # the row called for that is not there


class Expander:
    """Knows the rows met so far, so that "Rep Rows 2-5" finds them."""

    def __init__(self, parts: tuple[Part, ...]) -> None:
        self.parts = parts
        self.met: list[tuple[str, int, tuple[Step, ...], Stated | None, Part]] = []
        self.range_faults: list[tuple[Row, Part, int, int]] = []
        self.preludes: dict[int, tuple[Step, ...]] = {}  # by part: the chain or ring before its first row

    def expand(self, row: Row, part: Part) -> list[Instance]:
        label = row.label
        kind = label.kind if label is not None else "foundation"
        if label is None and not any(entry[4] is part for entry in self.met):
            self.preludes[id(part)] = self.preludes.get(id(part), ()) + tuple(row.steps)
        if kind == "next":
            kind = "row"
        numbers: list[int | None] = list(label.numbers) if label is not None and label.numbers else [None]
        call = next((step for step in row.steps if isinstance(step, RowCall)), None)
        numbers = numbers[:MOST_ROWS]
        if call is None:
            instances = [
                self._instance(row, kind, number, row.steps, None, i, len(numbers)) for i, number in enumerate(numbers)
            ]
        else:
            instances = self._called(row, part, kind, numbers, call)
        for instance in instances:
            if instance.missing is None and instance.number is not None or instance.steps and label is not None:
                self.met.append(
                    (kind, instance.number or 0, instance.steps, instance.stated or instance.inherited, part)
                )
        return instances

    def _instance(self, row, kind, number, steps, inherited, index, length, missing=None) -> Instance:
        stated = row.stated
        if stated is not None and stated.series:
            stated_index = index if len(stated.series) == length else None
            shown = stated if stated_index is not None or index == length - 1 else None
        elif stated is not None:  # a count on a range is its last row's, and that of the others where none changes it
            stated_index, shown = None, stated if index == length - 1 else None
            inherited = inherited if shown is not None else stated
        else:
            stated_index, shown = None, None
        words = row.label.words if row.label is not None else "Foundation"
        if row.label is not None and number is not None and length > 1:
            words = f"{_label_word(row.label.words, kind)} {number}"
        return Instance(row, kind, number, words, tuple(steps), shown, stated_index, inherited, index, length, missing)

    def _called(self, row: Row, part: Part, kind: str, numbers: list[int | None], call: RowCall) -> list[Instance]:
        at = row.steps.index(call)
        before = row.steps[:at]
        after = tuple(step for step in row.steps[at + 1 :])
        cycle = self._cycle(call, kind, part)
        if not cycle:
            what = f"{kind} {call.first}" if call.first else "the rows before"
            return [
                self._instance(row, kind, n, (), None, i, len(numbers), missing=what) for i, n in enumerate(numbers)
            ]
        passes = None
        if call.times is not None and call.times.number is not None and call.times.kind is not TimesKind.FILL:
            passes = call.times.number.at(0) or 0
            if passes * len(cycle) > MOST_ROWS:
                passes = MOST_ROWS // len(cycle)
        if numbers == [None] and passes is not None:
            last = self.met[-1][1] if self.met and self.met[-1][4] is part else 0
            numbers = [last + 1 + i for i in range(passes * len(cycle))] if last else [None] * (passes * len(cycle))
        elif numbers == [None] and len(cycle) > 1:
            numbers = [None] * len(cycle)
        elif passes is not None and len(numbers) != passes * len(cycle) and len(numbers) > 1:
            extra = sum(isinstance(step, RowCall) for step in row.steps) > 1
            if not extra and len(numbers) != (passes + 1) * len(cycle):
                self.range_faults.append((row, part, len(numbers), passes * len(cycle)))
        result = []
        calls = [step for step in row.steps if isinstance(step, RowCall)]
        if len(calls) > 1:  # "Rep Rows 5-8 3 times, then Rows 5 and 6 once"
            cycle = cycle * (passes or 1)
            for other in calls[1:]:
                more = self._cycle(other, kind, part)
                times = other.times.number.at(0) if other.times is not None and other.times.number is not None else 1
                cycle = cycle + more * max(1, min(times or 1, MOST_ROWS))
            after = tuple(step for step in after if not isinstance(step, RowCall))
        for index, number in enumerate(numbers):
            steps, inherited = cycle[index % len(cycle)]
            head = before if index == 0 else ()
            tail = after if index == len(numbers) - 1 else ()
            last = tail and any(isinstance(step, FastenOff) for step in tail)
            inner = tuple(s for s in steps if not isinstance(s, FastenOff)) if not last else steps
            result.append(self._instance(row, kind, number, (*head, *inner, *tail), inherited, index, len(numbers)))
        return result

    def _cycle(self, call: RowCall, kind: str, part: Part) -> list[tuple[tuple[Step, ...], Stated | None]]:
        """The steps of each row called for, in order."""
        here = [entry for entry in self.met if entry[4] is part]
        if call.part is not None:
            wanted = call.part.lower()
            first = next(
                (
                    i
                    for i, entry in enumerate(self.met)
                    if wanted in entry[4].name.lower() or entry[4].name.lower() in wanted
                ),
                len(self.met),
            )
            here = list(reversed(self.met[first:]))  # the first rows of these numbers from that piece on
        if call.first is None:
            rows = here[-call.number :] if call.number else []
            return [(steps, stated) for _, _, steps, stated, _ in rows]
        last = call.last if call.last is not None else call.first
        if not 0 <= last - call.first <= MOST_ROWS:
            return []
        found = []
        for number in range(call.first, last + 1):
            match = next(
                (
                    entry
                    for entry in reversed(here)
                    if entry[1] == number and (call.kind is None or entry[0] == call.kind)
                ),
                None,
            )
            match = match or next((entry for entry in reversed(here) if entry[1] == number), None)
            if match is None and call.part is None:  # a row of the same piece under an earlier heading
                match = next((entry for entry in reversed(self.met) if entry[1] == number and entry[0] == kind), None)
            if match is None:
                return []
            steps = match[2]
            if call.part is not None and number == call.first:  # the piece is begun as that one was
                steps = self.preludes.get(id(match[4]), ()) + steps
            found.append((steps, match[3]))
        return found


def _label_word(words: str, kind: str) -> str:
    """The label's own word for one row: "Rnds 4-9" gives "Rnd"."""
    first = words.split()[0].rstrip("0123456789-–.:") if words.split() else ""
    if first.lower() in ("rnds", "rows", "rounds", "rds"):
        return first[:-1]
    if first and first[0].isalpha() and first.lower() in ("rnd", "row", "round", "rd", "r"):
        return first
    return "Rnd" if kind == "round" else "Row"


def turns_first(steps: tuple[Step, ...]) -> bool:
    """Whether the work is turned before anything is worked."""
    for step in steps[:4]:
        if isinstance(step, Turn):
            return step.turned
    return False
