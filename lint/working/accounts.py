"""Turns what was recorded while a row was worked into its workings.  Nothing is worked here: the row's own nodes are counted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from lint.place import TargetKind
from lint.source import Span
from lint.tree import Alongside, Group, LastPlace, Repeat, Shaping, Step, TimesKind, Work
from lint.working.fabric import Node
from lint.working.workings import Line, Pass, Role, Stands, Workings

_NO_PLACES = ("ring", "gap", "row below", "elsewhere")  # what stitches go into without using a place of the row below
_TOLD_APART = (Alongside, LastPlace, Shaping)  # words about a run before or after them, which are worked there


@dataclass(slots=True)
class Entry:
    """A step as it was worked: which of the row's nodes it made, what it passed over, its passes if it has any."""

    step: Step
    start: int
    end: int = 0
    passed: Sequence[Node] = ()
    found: Sequence[Node] = ()  # the places that its words named
    passes: Sequence[list[Entry] | LikeEntries] = ()
    role: Role | None = None  # where the bench shows it
    uncounted: int = 0  # chains of a beginning chain that does not count
    ahead: bool = False  # words about the run that comes next


@dataclass(slots=True, frozen=True)
class LikeEntries:
    """Passes of a repeat that went as the pass before them, and were not recorded one by one."""

    times: int
    below: Sequence[Node]  # what the pass before them and these were worked over, in as many equal windows
    made: int  # stitches and spaces made by each

    def see(self, seen: set[int]) -> None:
        """Add the places these passes used: those that the pass before them used, each in its own window."""
        wide = len(self.below) // (self.times + 1)
        used = [at for at in range(wide) if id(self.below[at]) in seen]
        seen.update(id(self.below[first + at]) for first in range(wide, len(self.below), wide) for at in used)


def every_pass(entry: Entry) -> Iterator[Sequence[Entry]]:
    """The passes of an entry one by one, for those who need the stitches of each."""
    last: Sequence[Entry] = ()
    for entries in entry.passes:
        if not isinstance(entries, LikeEntries):
            last = entries
            yield entries
            continue
        for _ in range(entries.times):
            last = [replace(one, start=one.start + entries.made, end=one.end + entries.made) for one in last]
            yield last


class Accounts:
    """Reads the entries of one row in the order in which it was worked."""

    def __init__(self, made: list[Node], slip_row: bool) -> None:
        self.made = made
        self.no_stitch = ("space", "ring", "ch") if slip_row else ("space", "ring", "ch", "sl st")
        self.seen: set[int] = set()  # places used by the clauses so far
        self.told: dict[tuple, Line] = {}  # lines by what they say: most passes of a repeat say the same

    def workings(self, entries: Sequence[Entry]) -> Workings:
        """The workings of the whole row."""
        return Workings(self.lines(entries))

    def lines(self, entries: Sequence[Entry]) -> tuple[Line, ...]:
        """A line for each entry that makes, uses or says something."""
        lines: list[Line] = []
        ahead: Span | None = None
        for entry in entries:
            line = self.line(entry)
            if isinstance(entry.step, _TOLD_APART) and not line.makes:
                if entry.ahead:
                    ahead = entry.step.span
                elif lines and lines[-1].span.start <= line.span.start:
                    lines[-1] = replace(lines[-1], span=lines[-1].span.to(line.span))
            elif _tells(line):
                if ahead is not None and ahead.start <= line.span.start:
                    line = replace(line, span=ahead.to(line.span))
                ahead = None
                lines.append(line)
        return tuple(lines)

    def line(self, entry: Entry) -> Line:
        """An entry's line."""
        step = entry.step
        if entry.passes or isinstance(step, Repeat):
            return self.repeat(entry)
        nodes = self.made[entry.start : entry.end]
        stitches = [node for node in nodes if node.kind not in self.no_stitch]
        spaces = _spaces(nodes) if len(stitches) < len(nodes) else ()
        chain = next((node for node in stitches if node.chain), None)
        stands = Stands(chain.kind, chain.chain) if chain is not None else None
        if entry.uncounted:
            stands = Stands(None, entry.uncounted)
        role = entry.role or (Role.PASSED if entry.passed and not nodes else Role.WORK)
        places = [*entry.passed, *(place for node in nodes for place in node.parents)]
        uses, lacking = self.uses(step, places, entry.found)
        units = _units(stitches)
        key = (id(step), id(role), uses, spaces, units, stands and (stands.stitch, stands.chains), lacking)
        line = self.told.get(key)
        if line is None:
            line = Line(step.span, role, uses, len(stitches), spaces, units, stands, lacking)
            self.told[key] = line
        return line

    def repeat(self, entry: Entry) -> Line:
        """A line with its passes; those that are alike and follow each other are told once."""
        step = entry.step
        worked: list[tuple[Line, ...]] = []
        for entries in entry.passes:
            if isinstance(entries, LikeEntries):
                entries.see(self.seen)
                worked += worked[-1:] * entries.times
            else:
                worked.append(self.lines(entries))
        passes = tuple(Pass(len(list(alike)), lines) for lines, alike in groupby(worked))
        role = Role.PASSAGE
        if isinstance(step, Repeat):
            role = Role.FILLING if step.times.kind is TimesKind.FILL else Role.REPEAT
        lines = [(one.times, line) for one in passes for line in one.lines]
        spaces: Counter = Counter()
        for times, line in lines:
            for length, number in line.spaces:
                spaces[length] += times * number
        return Line(
            step.span,
            role,
            sum(one.times * one.uses for one in passes),
            sum(one.times * one.makes for one in passes),
            tuple(sorted(spaces.items())),
            lacking=sum(times * line.lacking for times, line in lines),
            passes=passes,
        )

    def uses(self, step: Step, places: list[Node], found: Sequence[Node]) -> tuple[int, int]:
        """How many places are used that no clause used before, and how many are lacking.

        Of a space that is worked chain by chain every chain is a place.
        """
        seen, uses, lacking, spaces = self.seen, 0, 0, 0
        for place in places:
            if id(place) not in seen:
                seen.add(id(place))
                if place.kind == "missing":
                    lacking += 1
                elif place.kind not in _NO_PLACES:
                    uses += 1
                    spaces += place.kind == "space"
        if found and _chain_by_chain(step):
            uses += sum(place.is_space for place in found) - spaces
        return uses, lacking


def _chain_by_chain(step: Step) -> bool:
    named = step.places if isinstance(step, (Work, Group)) else ()
    return any(target.kind is TargetKind.CHAIN for place in named for target in place.targets)


def _spaces(nodes: list[Node]) -> tuple[tuple[int, int], ...]:
    return tuple(sorted(Counter(node.length for node in nodes if node.kind == "space").items()))


def _units(stitches: list[Node]) -> tuple[tuple[int, int], ...]:
    """In how many places how many of these stitches stand; a beginning chain is told by itself."""
    sizes: list[int] = []
    last: Node | None = None
    for node in stitches:
        place = node.parents[0] if node.parents and not node.chain else None
        if sizes and place is last and not node.chain:
            sizes[-1] += 1
        else:
            sizes.append(1)
        last = node if node.chain else place  # nothing stands in a chain of this row: the next begins a unit
    if len(sizes) == 1:
        return ((1, sizes[0]),)
    return tuple((number, each) for each, number in Counter(sizes).items())


def _tells(line: Line) -> bool:
    """Whether a line is worth a reader's eye; joins, turns and the like make nothing and use nothing."""
    said = (Role.REPEAT, Role.FILLING, Role.FOUNDATION, Role.LEG, Role.LENGTHENS, Role.CLOSES)
    return bool(line.uses or line.makes or line.spaces or line.lacking or line.stands) or line.role in said
