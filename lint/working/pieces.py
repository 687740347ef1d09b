"""Works a whole pattern, piece by piece and size by size, and keeps the ledger.

Where the words allow two readings, the one under which the pattern's own counts agree is kept; after a row
that differs, work goes on from the fabric that the next row agrees with.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from itertools import combinations

from lint.ledger import Cell, Ledger, LedgerRow, Misfit, Outcome
from lint.pattern import Part, Pattern, Stated
from lint.rulebook import Rulebook
from lint.source import Span
from lint.tree import Chain, Evenly, Group, Join, MakeRing, Repeat, Step, TimesKind, Turn, UseYarn, Which, Work, walk
from lint.working.bench import Bench, Worked
from lint.working.chains import ChainRules
from lint.working.choices import Choices, Key
from lint.working.compare import Comparison, compare
from lint.working.cursor import PlacesUnknown
from lint.working.expand import Expander, Instance, turns_first
from lint.working.fabric import Fabric
from lint.working.rowstate import TooMany

_TRIALS = 20


@dataclass
class _Trial:
    """One reading of a row, worked."""

    worked: Worked
    comparison: Comparison | None
    forced: dict[Key, int]

    @property
    def agrees(self) -> bool | None:
        return self.comparison.agrees if self.comparison is not None else None

    @property
    def fits(self) -> bool:
        serious = [n for n in self.worked.troubles if n.trouble.kind not in ("passed", "uncounted chain", "not there")]
        return not serious and not self.worked.left

    @property
    def rank(self) -> tuple:
        return (self.agrees is False, not self.fits, len(self.forced))


@dataclass
class _State:
    """How the work stands, for one size."""

    fabric: Fabric | None = None  # None: not known
    rules: ChainRules = field(default_factory=ChainRules)
    habits: dict[Key, int] = field(default_factory=dict)
    carried: Chain | None = None
    spiral: bool = False
    fastened: bool = False
    stitches: int = 0


class PatternWorker:
    """Works every part of a pattern in one or more sizes."""

    def __init__(self, pattern: Pattern, book: Rulebook) -> None:
        self.pattern = pattern
        self.sizes = max(1, len(pattern.sizes))
        self.heights = {rule.key: rule.height for rule in book.stitches.stitches}
        self.heights["sl st"] = 0

    def ledger(self) -> Ledger:
        columns = [self._size(size) for size in range(self.sizes)]
        rows, stitches, faults = [], 0, ()
        for column, made, range_faults in columns:
            stitches += made
            faults = faults or tuple(range_faults)
        for entries in zip(*(column for column, _, _ in columns)):
            part, instance, _ = entries[0]
            rows.append(
                LedgerRow(
                    part,
                    instance.row,
                    instance.label,
                    instance.kind,
                    instance.number,
                    instance.row.label.span if instance.row.label is not None else instance.row.span,
                    instance.stated
                    or (instance.inherited if all(cell.outcome is Outcome.AGREES for _, _, cell in entries) else None),
                    instance.stated_index,
                    tuple(cell for _, _, cell in entries),
                    instance.index,
                    instance.length,
                )
            )
        return Ledger(tuple(rows), stitches, faults)

    # one size ------------------------------------------------------------------------------------------

    def _size(self, size: int) -> tuple[list[tuple[Part, Instance, Cell]], int, list]:
        state = _State(rules=self._rules(), spiral=self.pattern.facts.get("spiral", False))
        expander = Expander(self.pattern.parts)
        column: list[tuple[Part, Instance, Cell]] = []
        for part in self.pattern.parts:
            instances = [instance for row in part.rows for instance in expander.expand(row, part)]
            self._open_part(part, instances, state)
            blocks = _corner_to_corner(instances)
            for index, instance in enumerate(instances):
                coming = instances[index + 1] if index + 1 < len(instances) else None
                cell = self._row(instance, coming, state, size, blocks)
                if cell is not None:
                    column.append((part, instance, cell))
            last = part.rows[-1].steps if part.rows else ()
            state.fastened = any(type(step).__name__ == "FastenOff" for step in last)
        return column, state.stitches, expander.range_faults

    def _rules(self) -> ChainRules:
        rules = ChainRules(heights=self.heights)
        for length, counting in self.pattern.countings:
            if length is None:
                rules.any_length = counting
            else:
                rules.by_length[length] = counting
        return rules

    def _open_part(self, part: Part, instances: list[Instance], state: _State) -> None:
        """A piece begins on its own ring or chain, goes on from the piece before, or on an edge not known."""
        first = next((instance for instance in instances if instance.steps), None)
        steps = first.steps if first is not None else ()
        own = any(isinstance(step, MakeRing) for step in steps[:4]) or _founds(steps) or _works_ring(steps)
        if own:
            made = any(isinstance(step, MakeRing) for instance in instances[:2] for step in instance.steps)
            state.fabric = Fabric() if made or _founds(steps) else Fabric.ring()
        elif state.fastened or part.make > 1 or state.fabric is None:
            state.fabric = Fabric.unknown(False)
        state.carried = None

    # one row ---------------------------------------------------------------------------------------------

    def _row(self, instance: Instance, coming: Instance | None, state: _State, size: int, blocks: bool) -> Cell | None:
        row = instance.row
        if instance.missing:
            state.fabric = None
            return Cell(
                Outcome.NOT_RECOMPUTED, stopped_by=f"{instance.missing} is not there to repeat", stopped_at=row.span
            )
        if _not_for_size(instance, size):
            return Cell(Outcome.NOT_WORKED)
        unread = row.unread()
        if row.label is None and (
            unread or not any(isinstance(s, (Work, Group, Repeat, Chain, MakeRing, Evenly)) for s in walk(row.steps))
        ):
            if unread and any(isinstance(s, (Chain, MakeRing)) for s in row.steps):
                state.fabric = Fabric.unknown(False)  # a start that was not read
            if any(isinstance(s, (Work, Group, Repeat)) for s in walk(row.steps)):
                state.fabric = Fabric.unknown(False)
                return Cell(
                    Outcome.NOT_RECOMPUTED,
                    stopped_by=unread[0].words if unread else None,
                    stopped_at=unread[0].span if unread else None,
                )
            return None
        if not unread:
            unread = [s for s in walk(instance.steps) if type(s).__name__ == "Unread"]
        if unread:
            return self._not_recomputed(instance, state, size, unread[0].words, unread[0].span)
        if row.label is not None and not any(
            isinstance(s, (Work, Group, Repeat, Chain, MakeRing, Evenly)) for s in walk(instance.steps)
        ):
            return self._not_recomputed(instance, state, size, "no stitches were found in this row", row.span)
        if state.fabric is None:
            if _founds(instance.steps) or any(isinstance(step, MakeRing) for step in instance.steps):
                state.fabric = Fabric()
            else:
                state.fabric = Fabric.unknown(instance.kind == "round")
        return self._work(instance, coming, state, size, blocks)

    def _not_recomputed(self, instance: Instance, state: _State, size: int, words: str, span: Span) -> Cell:
        own = instance.stated if instance.index == instance.length - 1 else None
        state.fabric = _as_printed(own or instance.inherited, size, _is_round(instance, state.fabric))
        state.carried = None
        return Cell(Outcome.NOT_RECOMPUTED, stopped_by=words, stopped_at=span)

    def _work(self, instance: Instance, coming: Instance | None, state: _State, size: int, blocks: bool) -> Cell:
        steps = self._with_carried(instance.steps, state)
        is_round = _is_round(instance, state.fabric)
        below = sum(node.is_stitch for node in state.fabric.nodes) if state.fabric.known else None
        below_assumed = state.fabric.assumed
        try:
            best = self._best(instance, steps, state.fabric, is_round, state, size, blocks)
        except PlacesUnknown:
            words = "how many places there are to work into is not known here"
            return self._not_recomputed(instance, state, size, words, instance.row.span)
        except TooMany:
            return self._not_recomputed(instance, state, size, "more stitches than any row can hold", instance.row.span)
        worked = best.worked
        self._settle(best, state)
        state.carried = worked.carried
        fabric = _next_fabric(worked, is_round, state)
        picked = False
        if best.agrees is False and coming is not None and worked.made.stitches:
            printed = _as_printed(instance.stated, size, is_round)
            if printed is not None and self._goes_on_better(printed, fabric, coming, state, size, blocks):
                fabric, picked = printed, True
        state.fabric = fabric
        if not worked.made.stitches and not worked.made.spaces and instance.row.label is None:
            return Cell(Outcome.NOT_STATED, worked.made)
        state.stitches += worked.made.stitches
        outcome = Outcome.NOT_STATED if best.agrees is None else Outcome.AGREES if best.agrees else Outcome.DIFFERS
        comparison = best.comparison
        if instance.stated is None:
            outcome = Outcome.AGREES if best.agrees else Outcome.NOT_STATED
            comparison = comparison if best.agrees else None
        return Cell(
            outcome,
            worked.made,
            comparison,
            _misfits(worked, instance),
            below=below,
            unsaid_chain=(worked.unsaid_chain, _counted(best)) if worked.unsaid_chain is not None else None,
            unclear_times=_unclear(best, steps),
            picked_up=picked,
            assumed=below_assumed,
        )

    def _with_carried(self, steps: tuple[Step, ...], state: _State) -> tuple[Step, ...]:
        """A turning chain worked at the end of the row before opens this one."""
        if state.carried is None:
            return steps
        for step in steps:
            if isinstance(step, Chain):
                return steps
            if not isinstance(step, (Turn, UseYarn)):
                break
        return (state.carried, *steps)

    def _best(
        self, instance: Instance, steps, fabric: Fabric, is_round: bool, state: _State, size: int, blocks: bool
    ) -> _Trial:
        """The reading that agrees and fits, with as little forced as may be."""
        stated = instance.stated or instance.inherited
        first = self._trial(instance, stated, steps, fabric, is_round, state, size, blocks, {})
        if first.agrees is not False and first.fits or not first.worked.choices.asked:
            return first
        best = first
        others = first.worked.choices.others()
        tries = [dict([one]) for one in others] + [
            dict(pair) for pair in combinations(others, 2) if pair[0][0] != pair[1][0]
        ]
        for forced in tries[:_TRIALS]:
            trial = self._trial(instance, stated, steps, fabric, is_round, state, size, blocks, forced)
            if trial.rank < best.rank and (instance.stated is not None or trial.fits and not best.fits):
                best = trial
                if best.agrees is not False and best.fits:
                    break
        return best

    def _trial(self, instance, stated, steps, fabric, is_round, state, size, blocks, forced) -> _Trial:
        for node in fabric.nodes:
            node.used = 0
        nodes = fabric.nodes
        if is_round and turns_first(steps) and len(nodes) > 1:
            nodes = [nodes[0], *reversed(nodes[1:])]
        below = Fabric(
            nodes,
            fabric.circular or is_round and not (nodes and nodes[0].kind == "ch"),
            fabric.known,
            fabric.assumed,
            fabric.uncounted,
        )
        bench = Bench(below, size, is_round, state.rules, Choices(state.habits, forced), blocks=blocks)
        worked = bench.work(steps)
        comparison = (
            compare(stated, worked.made, size, instance.stated_index)
            if stated is not None and (stated is not instance.inherited)
            else None
        )
        if stated is not None and comparison is None:
            inherited = compare(stated, worked.made, size)
            comparison = inherited if inherited.agrees else None
        return _Trial(worked, comparison, forced)

    def _settle(self, best: _Trial, state: _State) -> None:
        """Keep what the counts have settled for the rest of the pattern."""
        for length, counting in best.worked.learned:
            state.rules.learn(length, counting)
        if best.agrees and best.fits:
            for key, taken in best.forced.items():
                if key[0] == "times":
                    state.habits[("times", "habit")] = taken
                elif key[0] == "bare number":
                    state.habits[("bare number", "habit")] = taken
                elif key[0] == "chain counts":
                    state.habits[key] = taken

    def _goes_on_better(
        self, printed: Fabric, made: Fabric, coming: Instance, state: _State, size: int, blocks: bool
    ) -> bool:
        """Whether the next row agrees with the printed count and not with what was made."""
        results = []
        for fabric in (printed, made):
            try:
                trial = self._best(
                    coming,
                    self._with_carried(coming.steps, state),
                    fabric,
                    _is_round(coming, fabric),
                    state,
                    size,
                    blocks,
                )
            except (PlacesUnknown, TooMany):
                return False
            results.append(trial.agrees is not False and trial.fits)
        return results[0] and not results[1]


def _not_for_size(instance: Instance, size: int) -> bool:
    """Whether the printed count has a dash for this size: the size does not work this row."""
    stated = instance.stated
    return stated is not None and bool(stated.items) and all(item.number.at(size) is None for item in stated.items)


def _is_round(instance: Instance, fabric: Fabric | None) -> bool:
    if instance.kind == "round":
        return not _turned_flat(instance.steps)
    joins = any(isinstance(step, Join) for step in instance.steps)
    turns = any(isinstance(step, Turn) and step.turned for step in instance.steps)
    if instance.kind == "row":
        return joins and not turns
    return bool(fabric and fabric.circular)


def _turned_flat(steps: tuple[Step, ...]) -> bool:
    """A "round" that ends in a turn without a join is a row under another name."""
    joins = any(isinstance(step, Join) for step in steps)
    return bool(steps) and not joins and any(isinstance(step, Turn) and step.turned for step in steps)


def _founds(steps: tuple[Step, ...]) -> bool:
    """Whether the steps begin with a foundation chain."""
    for index, step in enumerate(steps):
        if isinstance(step, Chain):
            rest = [s for s in steps[index + 1 :] if isinstance(s, (Work, Group, Repeat, Chain))]
            if not rest:
                return True
            head = rest[0]
            places = head.places if isinstance(head, (Work, Group)) else ()
            return bool(places) and places[0].which is Which.FROM_HOOK
        if isinstance(step, (Work, Group, Repeat)):
            return (
                isinstance(step, Work) and step.stitch.startswith("f") and step.stitch[1:] in ("sc", "hdc", "dc", "tr")
            )
    return False


def _works_ring(steps: tuple[Step, ...]) -> bool:
    """ "6 sc in magic ring": the ring is made in the row that works into it."""
    for step in walk(steps):
        if isinstance(step, (Work, Group)) and step.places:
            return step.places[0].targets[0].kind.value == "ring"
    return False


def _corner_to_corner(instances: list[Instance]) -> bool:
    """Whether rows after the first begin with a chain of their own that is worked into: blocks from corner to corner."""
    for instance in instances:
        if (
            instance.kind == "row"
            and instance.number not in (None, 1)
            and _founds(instance.steps)
            and any(isinstance(s, Work) for s in walk(instance.steps))
        ):
            return True
    return False


def _next_fabric(worked: Worked, is_round: bool, state: _State) -> Fabric:
    """The row below for the next row: a flat row is met from its other end, a turned round too."""
    nodes = worked.fabric.nodes
    if is_round:
        if worked.turned and len(nodes) > 1:
            nodes = [nodes[0], *reversed(nodes[1:])]
        if not worked.joined and worked.left and state.spiral:
            nodes = [*worked.left, *nodes]  # a spiral is one running loop: what was not used comes next
        return replace(worked.fabric, nodes=nodes)
    if nodes and nodes[0].kind in ("ch", "ring") or worked.turned is False:
        return worked.fabric
    return replace(worked.fabric, nodes=list(reversed(nodes)))


def _as_printed(stated: Stated | None, size: int, circular: bool) -> Fabric | None:
    """A plain row of as many stitches as printed, where the count is of stitches alone; else not known."""
    if stated is None or len(stated.items) != 1 or stated.series:
        return None
    item = stated.items[0]
    number = item.number.at(size)
    unit, _, name = item.unit.partition(":")
    if number is None or unit not in ("stitches", "kind") or not 0 < number < 20_000:
        return None
    return Fabric.plain(name or "sc", number, circular)


def _misfits(worked: Worked, instance: Instance) -> tuple[Misfit, ...]:
    found = [
        Misfit(n.trouble.kind, n.trouble.wanted, n.trouble.number, n.trouble.found, n.span) for n in worked.troubles
    ]
    if worked.left and not any(m.kind == "does not fit" for m in found):
        stitches = [node for node in worked.left if node.is_stitch]
        wanted = "st" if stitches else f"ch-{worked.left[0].length} sp"
        last = next((s for s in reversed(instance.steps) if isinstance(s, (Work, Group, Repeat))), None)
        found.append(
            Misfit(
                "left over",
                wanted,
                len(stitches) or len(worked.left),
                "",
                last.span if last is not None else instance.row.span,
            )
        )
    return tuple(found)


def _counted(best: _Trial) -> bool:
    for key, (taken, _) in best.worked.choices.asked.items():
        if key[0] in ("chain counts", "skipped chains count"):
            return taken == 0
    return False


def _unclear(best: _Trial, steps: tuple[Step, ...]) -> tuple[Span, int, bool] | None:
    """A bare "n times": the passes taken, and whether the printed count settles it."""
    for step in walk(steps):
        if isinstance(step, Repeat) and step.times.kind is TimesKind.UNCLEAR and step.times.number is not None:
            taken = best.worked.choices.asked.get(("times", step.times.span.start))
            if taken is not None:
                passes = (step.times.number.values[0] or 0) + taken[0]
                return step.times.span, passes, bool(best.agrees and best.fits)
    return None
