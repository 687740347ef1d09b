"""Works a pattern again with an edit made, and keeps how the work stood before the rows that are looked at."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace

from lint.faults import fault_of, unequal_sides, works_nothing
from lint.ledger import Cell
from lint.likely.edits import Edit
from lint.pattern import Part, Pattern
from lint.rulebook import Rulebook
from lint.tree import MakeRing
from lint.working.choices import Key
from lint.working.cursor import PlacesUnknown
from lint.working.effort import Effort
from lint.working.fabric import Fabric, Node
from lint.working.instances import Instance
from lint.working.onereading import Column
from lint.working.pieces import Entry, PatternWorker
from lint.working.rowstate import NotDefined, TooMany
from lint.working.starts import founds
from lint.working.trials import PieceState, Task, Trial, best_reading, one_reading

Outcome = tuple  # what a row leaves for those after it, by which two edits are told apart


@dataclass(frozen=True)
class Moment:
    """A row, and how the work stood before it."""

    part: Part
    instance: Instance
    coming: Instance | None
    state: PieceState
    blocks: bool


_TOO_WIDE = "the row below is far wider than any row of the pattern"


class Rework(PatternWorker):
    """A pattern of one size worked, with the moments kept that are watched (by their row's place among the rows)."""

    size = 0

    def __init__(
        self,
        pattern: Pattern,
        book: Rulebook,
        watched: frozenset[int] = frozenset(),
        effort: Effort | None = None,
        widest: int = 0,
    ) -> None:
        """`widest`: how many places a row may have, for an edit can make each row the double of the last; 0: as many as may be."""
        super().__init__(pattern, book, workings=None, effort=effort)
        self.bound, self.widest = widest, 0
        self.watched = watched
        self.moments: dict[int, Moment] = {}
        self._runs: list[tuple[Column, dict[int, Moment]]] = []
        self._met = 0
        self._part: Part | None = None
        self.column: Column = self.work_size(self.size)
        self.moments = next(moments for column, moments in self._runs if column is self.column)
        self.entries: tuple[Entry, ...] = tuple(entry for entries in self.column.rows for entry in entries)

    def _worked(self, habits: dict[Key, int], size: int, in_all: bool = False) -> tuple[Column, PieceState]:
        self._met, self.moments = 0, {}
        column, state = super()._worked(habits, size, in_all)
        self._runs.append((column, self.moments))
        return column, state

    def _open_part(self, part: Part, instances: list[Instance], state: PieceState) -> None:
        self._part = part
        super()._open_part(part, instances, state)

    def _row(
        self, instance: Instance, coming: Instance | None, state: PieceState, size: int, blocks: bool
    ) -> Cell | None:
        before = _kept(state) if self._met in self.watched else None
        places = len(state.fabric.nodes) if state.fabric is not None else 0
        self.widest = max(self.widest, places)
        if self.bound and places > self.bound:
            cell = self._not_recomputed(instance, state, size, _TOO_WIDE, instance.row.span)
        else:
            cell = super()._row(instance, coming, state, size, blocks)
        if cell is not None:
            if before is not None and self._part is not None:
                self.moments[self._met] = Moment(self._part, instance, coming, before, blocks)
            self._met += 1
        return cell

    @property
    def faults(self) -> frozenset[int]:
        """The places of the rows that do not come out."""
        at_fault = {
            index
            for index, entry in enumerate(self.entries)
            if fault_of(entry.cell) is not None
            or entry.cell.stopped_by is not None
            or works_nothing(entry.instance.row, entry.cell)
        }
        ranges = {row.span.start for row, _, _, _ in self.column.range_faults}
        ends = {one.instance.row.span.start: i for i, one in enumerate(self.entries)}
        return frozenset(at_fault | {end for start, end in ends.items() if start in ranges})

    def faults_as_in(self, other: Rework) -> frozenset[int]:
        """The rows that do not come out, by their places in another reworking, in which a call made more rows or fewer.

        The rows of one printed row are set side by side from its last one on; one that is not there has a place below 0.
        """
        if len(self.entries) == len(other.entries):
            return self.faults
        there = {key: index for index, key in enumerate(_from_the_end(other.entries))}
        keys = _from_the_end(self.entries)
        return frozenset(there.get(keys[index], -1 - index) for index in self.faults)

    @property
    def passed(self) -> int:
        """Places that rows pass on their way to one of the kind that they name, without a word."""
        return sum(m.number for entry in self.entries for m in entry.cell.misfits if m.kind == "passed")

    # rows worked again ---------------------------------------------------------------------------------

    def reading(self, moment: Moment) -> Trial | None:
        """The row as it was read."""
        state = _kept(moment.state)
        task = self._task(moment, moment.instance, state)
        try:
            return best_reading(task, state)
        except (PlacesUnknown, TooMany, NotDefined):
            return None

    def alone(self, moment: Moment, edit: Edit, forced: dict[Key, int]) -> Trial | None:
        """The row worked with an edit, in the same reading; None where it can't be."""
        state = _kept(moment.state)
        try:
            return one_reading(self._task(moment, edit.of_instance(moment.instance), state), state, forced)
        except (PlacesUnknown, TooMany, NotDefined):
            return None

    def stretch(self, moments: list[Moment], edit: Edit) -> tuple[bool, Outcome]:
        """Several rows, the first of them edited: whether all come out, and what the last leaves."""
        state = _kept(moments[0].state)
        for moment in moments:
            instance = edit.of_instance(moment.instance)
            cell = self._row(instance, None, state, self.size, moment.blocks)
            if cell is not None and (fault_of(cell) is not None or cell.stopped_by is not None):
                return False, ()
        return True, leaves(state.fabric.nodes) if state.fabric is not None else ()

    def _task(self, moment: Moment, instance: Instance, state: PieceState) -> Task:
        fabric = state.fabric
        if fabric is None:
            own = founds(instance.steps) or any(isinstance(step, MakeRing) for step in instance.steps)
            fabric = Fabric() if own else Fabric.unknown(instance.kind == "round")
        return Task.of(instance, state, fabric, self.size, moment.blocks)


def _from_the_end(entries: tuple[Entry, ...]) -> list[tuple[int, int]]:
    """For every row, its printed row and how many rows of that one come after it."""
    seen: Counter[int] = Counter()
    keys = []
    for entry in reversed(entries):
        printed = entry.instance.row.span.start
        keys.append((printed, seen[printed]))
        seen[printed] += 1
    return keys[::-1]


def comes_out(trial: Trial | None) -> bool:
    """Whether a row agrees, uses up the row below, and has alike sides."""
    if trial is None or trial.agrees is False or not trial.fits or not trial.worked.made.stitches:
        return False
    astray = any(noted.trouble.kind == "not there" for noted in trial.worked.troubles)
    return not astray and unequal_sides(trial.worked.made) is None


def leaves(nodes: list[Node]) -> Outcome:
    """What a row leaves: two edits that leave the same are as good for every row after it."""
    return tuple((node.kind, node.length, node.special, node.corner, bool(node.chain)) for node in nodes)


def _kept(state: PieceState) -> PieceState:
    """The state as it is now, out of reach of the work that follows."""
    return replace(
        state,
        rules=replace(state.rules, by_length=dict(state.rules.by_length), said_before=set(state.rules.said_before)),
        habits=dict(state.habits),
        usual=dict(state.usual),
        speaks=Counter(state.speaks),
    )
