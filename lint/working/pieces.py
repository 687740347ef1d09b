"""Works a whole pattern, piece by piece and size by size, and keeps the ledger.

Where the words allow two readings, the one under which the pattern's own counts agree is kept; after a row
that differs, work goes on from the fabric that the next row agrees with.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from dataclasses import replace
from functools import cached_property
from itertools import chain, islice

from lint.ledger import Cell, Ledger, Outcome
from lint.pattern import Part, Pattern
from lint.rulebook import Rulebook
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    FastenOff,
    MakeRing,
    Remark,
    RowCall,
    TimesKind,
    Unread,
    walk,
)
from lint.working.bench import Bench
from lint.working.besides import called_otherwise
from lint.working.betweenrows import between_rows
from lint.working.cells import (
    Entry,
    at_loop_end,
    in_step,
    misfits,
    outcome_of,
    side_by_side,
    unclear_times,
)
from lint.working.chainlines import led_on
from lint.working.chains import ChainRules
from lint.working.choices import Key
from lint.working.columns import columns_of, spread_of, told_singly
from lint.working.countworked import count_worked
from lint.working.cursor import PlacesUnknown
from lint.working.earlier import named_as_below, works_behind
from lint.working.edges import (
    fabric_below,
    leave_unworked,
    on_its_fabric,
    resumed,
    with_free_loops,
    with_row,
)
from lint.working.effort import Effort
from lint.working.expand import Expander
from lint.working.fabric import Fabric, no_search_for_garbage, stitches_of
from lint.working.goingon import (
    MOST_AHEAD,
    MOST_RECENT,
    STANDS_ON_PRINT,
    as_printed,
    follows_below,
    goes_on_better,
    last_chain,
    next_fabric,
    not_told,
    onward,
    row_as_printed,
    with_even_pattern,
)
from lint.working.growth import counted, grows
from lint.working.instances import MOST_ROWS, Instance, Loop
from lint.working.joinedpieces import counted_round_pieces, with_piece
from lint.working.likepieces import own_ways
from lint.working.namedahead import rows_named_ahead
from lint.working.onereading import Column, Settled, in_one_reading
from lint.working.opening import open_part
from lint.working.printedrows import pieces
from lint.working.recording import RecordingBench
from lint.working.rowkinds import row_ends_counted
from lint.working.rowstate import NotDefined, TooMany
from lint.working.starts import begins_own, corner_to_corner, founds, is_round, until_turned, works_ring
from lint.working.trials import PieceState, Side, Task, Trial, settle, workings_of

_SHORT_ROWS = ("heel", "short row", "bust dart")  # headings under which rows turn before their end
NO_MATCH = "what is worked so far does not match that other side"
NO_STITCHES = "no stitches were found in this row"


class PatternWorker:
    """Works every part of a pattern in one or more sizes."""

    def __init__(
        self, pattern: Pattern, book: Rulebook, workings: bool | None = False, effort: Effort | None = None
    ) -> None:
        """`workings`: whether those of every row are wanted, of the rows that differ alone, or (None) of none.

        `effort`: how much may be worked in all; rows that come when it is spent are not recomputed.
        """
        self.pattern = pattern
        self.effort = effort or Effort()
        self.workings = workings
        self.sizes = max(1, len(pattern.sizes))
        self.settled: Settled = pattern.settled
        self.works_behind = works_behind(pattern)
        self.named_ahead = rows_named_ahead(pattern.parts)
        self.printed = {id(part): [piece for row in part.rows for piece in pieces(row)] for part in pattern.parts}
        self.heights = {rule.key: rule.height for rule in book.stitches.stitches}
        self.heights["sl st"] = 0
        self.ahead: tuple[deque[Instance], ...] = ()  # rows behind the one at hand: of its printed row, of later ones
        self.never_count = frozenset(
            rule.key for rule in book.stitches.stitches if rule.turning_chain_counts == "never"
        )

    def ledger(self) -> Ledger:
        """Every row of every size, worked; a printed row's rows are set side by side from its first one on."""
        with no_search_for_garbage():
            columns, self.settled = in_one_reading(self.sizes, self._settled_so, self.settled)
        parts = [part for part in self.pattern.parts for _ in self.printed[id(part)]]
        rows = [
            side_by_side(part, entries)
            for part, *printed in zip(parts, *(column.rows for column in columns), strict=True)
            for entries in in_step(printed)
        ]
        faults = next((column.range_faults for column in columns if column.range_faults), ())
        return Ledger(tuple(rows), sum(column.stitches for column in columns), faults)

    def _settled_so(self, size: int, settled: Settled) -> Column:
        """One size, with some answers settled."""
        self.settled = settled
        return self.work_size(size)

    # one size ------------------------------------------------------------------------------------------

    def work_size(self, size: int) -> Column:
        """Every row, worked.  Where a count made a chain stand for what it usually does not, the rest must bear it out.

        "Rep last 2 rows 4 times" is four times more, unless the pattern's counts come out with four in all.
        """
        column, state = self._worked({}, size)
        in_all = bool(column.faults) and self._means_in_all
        if in_all:
            column, state = self._worked({}, size, in_all)
        if not state.usual:
            return column
        usual, _ = self._worked(state.usual, size, in_all)
        weak = any(key[1] == 1 and state.speaks[key] < 2 for key in state.usual)  # one row's word for a ch 1: a slip
        return usual if usual.faults < column.faults + (2 if weak else 1) else column

    @cached_property
    def _means_in_all(self) -> bool:
        """Whether rows that are called for so many times come out, over all sizes, if those worked are among them."""
        calls = (step for part in self.pattern.parts for row in part.rows for step in row.steps)
        if not any(isinstance(s, RowCall) and s.times and s.times.kind is TimesKind.UNCLEAR for s in calls):
            return False
        wanted, self.workings = self.workings, None  # these two are only compared
        more, in_all = (sum(self._worked({}, n, way)[0].faults for n in range(self.sizes)) for way in (False, True))
        self.workings = wanted
        return in_all < more

    def _worked(self, habits: dict[Key, int], size: int, in_all: bool = False) -> tuple[Column, PieceState]:
        spiral = self.pattern.facts.get("spiral", False)
        state = PieceState(
            rules=ChainRules.of(self.pattern, self.heights, self.never_count),
            habits=dict(habits),
            spiral=spiral,
            effort=self.effort,
            bench=RecordingBench if self.workings else Bench,
        )
        for row, key, answer in self.settled:
            state.settled.setdefault(row, {})[key] = answer
        expander = Expander(size, in_all, own_ways(self.pattern.parts))
        worked: list[tuple[Entry, ...]] = []
        blocks = False
        parts = self.pattern.parts
        expanded = [[expander.expand(row, part) for row in self.printed[id(part)]] for part in parts]
        for at, (part, instances) in enumerate(zip(parts, expanded, strict=True)):
            in_order = [instance for some in instances for instance in some]
            state.rules.here = {length: said for length, said in self.pattern.countings if part.name in said.pieces}
            state.short_rows = any(word in part.name.lower() for word in _SHORT_ROWS)
            if in_order:
                self._open_part(part, in_order, state)
            goes_on = not begins_own(in_order) and any(one.kind == "row" for one in in_order)  # "Decrease section"
            blocks = corner_to_corner(in_order) or blocks and goes_on
            done: list[Cell] = []
            behind = [*in_order, *onward(parts[at:], expanded[at + 1 :])]
            met = 0
            for some in instances:
                met += len(some)
                after = islice(behind, met, met + MOST_AHEAD)
                worked.append(tuple(self._printed_row(some, deque(after), done, expander, state, blocks)))
            state.pieces = with_piece(state.pieces, part, done)
            state.even_pieces = with_even_pattern(state.even_pieces, part, done)
            if in_order:
                state.fastened = any(isinstance(step, FastenOff) for step in part.rows[-1].steps)
        return Column(tuple(worked), state.stitches, tuple(expander.range_faults), state.answers), state

    def _printed_row(
        self,
        instances: list[Instance],
        after: deque[Instance],
        done: list[Cell],
        expander: Expander,
        state: PieceState,
        blocks: bool,
    ) -> Iterator[Entry]:
        """The rows of one printed row, worked, and added to those `done` in this piece; a row of mere talk is none."""
        size, coming = expander.size, deque(instances)
        while coming:
            instance = coming.popleft()
            self.ahead = coming, after
            cell = self._row(instance, next(chain(coming, after), None), state, size, blocks)
            if cell is None:
                continue
            done.append(cell)
            state.counts[instance.key] = cell.made.stitches if cell.made is not None else None
            state.number = instance.number or 0
            if instance.loop is not None:
                if self._goes_on(instance.loop, done, state, size):
                    coming.extendleft(reversed(expander.more(instance.loop)))
                else:
                    done[-1] = at_loop_end(instance.loop, cell, state, size)
            yield Entry(instance, done[-1])

    def _goes_on(self, loop: Loop, cells: list[Cell], state: PieceState, size: int) -> bool:
        """Whether the cycle just worked is worked once more; where that can't be told, the fabric is not known."""
        cycle = len(loop.rows)
        now = cells[-1].made
        before = cells[-1 - cycle].made if len(cells) > cycle else None
        if now is None or before is None:
            state.fabric = None
            return False
        gained = now.stitches - before.stitches
        if loop.until is None:
            if gained:
                state.fabric = Fabric.unknown(False)  # how many rows there are is told by a length
            return False
        there, was = (counted(loop.unit, made) for made in (now, before))
        if there is None or was is None:
            state.fabric = None
            return False
        gained, missing = there - was, (loop.until.at(size) or 0) - there
        return bool(gained) and missing * gained > 0 and len(cells) < MOST_ROWS

    def _open_part(self, part: Part, instances: list[Instance], state: PieceState) -> None:
        open_part(part, instances, state, first=part is self.pattern.parts[0])

    # one row ---------------------------------------------------------------------------------------------

    def _row(
        self, instance: Instance, coming: Instance | None, state: PieceState, size: int, blocks: bool
    ) -> Cell | None:
        row = instance.row
        if id(row) in self.named_ahead:
            return None
        if instance.untold:
            return self._not_recomputed(instance, state, size, instance.untold, row.span)
        if instance.base is not None and (state.made is None or state.counts.get(instance.base) != state.made.stitches):
            return self._not_recomputed(instance, state, size, NO_MATCH, row.span)
        unread = row.unread()
        if row.label is None and (
            unread or not any(isinstance(s, (*MAKES_STITCHES, Chain, MakeRing)) for s in walk(instance.steps))
        ):
            return between_rows(instance, coming, state, unread)
        if not unread:
            unread = [s for s in walk(instance.steps) if isinstance(s, Unread)]
        if unread:
            return self._not_recomputed(instance, state, size, unread[0].words, unread[0].span)
        if instance.steps and all(isinstance(s, Remark) and s.returns for s in instance.steps):
            return None  # the return pass of a Tunisian row under a label of its own
        if row.label is not None and not any(
            isinstance(s, (*MAKES_STITCHES, Chain, MakeRing)) for s in walk(instance.steps)
        ):
            return self._not_recomputed(instance, state, size, NO_STITCHES, row.span)
        on_stitches = state.fabric is not None and any(node.is_stitch for node in state.fabric.nodes)
        makes = any(isinstance(s, MAKES_STITCHES) for s in walk(instance.steps))
        if row.label is not None and on_stitches and not makes:
            return self._not_recomputed(instance, state, size, NO_STITCHES, row.span)
        if on_stitches and not makes and led_on(instance, coming, state):
            return None
        if on_stitches and (instance.number == 1 or row.label is None) and works_ring(instance.steps):
            state.begin(Fabric.ring())  # "Rnd 1: 6 sc in a magic ring": a piece under no heading that was seen
        if state.fabric is None:
            if founds(instance.steps) or any(isinstance(step, MakeRing) for step in instance.steps):
                state.fabric = Fabric()
            else:
                state.fabric = Fabric.unknown(instance.kind == "round")
        return self._work(instance, coming, state, size, blocks)

    def _not_recomputed(self, instance: Instance, state: PieceState, size: int, words: str, span: Span) -> Cell:
        own = instance.stated if instance.index == instance.length - 1 else None
        others = instance.inherited if not called_otherwise(instance.row, instance.length) else None
        state.fabric = as_printed(own or others, size, is_round(instance, state.fabric))
        state.leans = instance.label if state.fabric is not None else ""
        state.earlier.not_known(instance.number or 0)
        state.carried, state.joining, state.side, state.made = last_chain(instance.steps), (), Side(), None
        state.more_left, state.parted, state.recent, state.short, state.whole = True, False, [], False, 0
        return Cell(Outcome.NOT_RECOMPUTED, stopped_by=words, stopped_at=span)

    def _work(self, instance: Instance, coming: Instance | None, state: PieceState, size: int, blocks: bool) -> Cell:
        if state.earlier.last and state.earlier.last == (instance.number or 0) - 1:
            steps = named_as_below(instance.steps, state.earlier.last)
            instance = replace(instance, steps=steps) if steps is not instance.steps else instance
        steps = row_ends_counted(instance.steps, state)
        instance = replace(instance, steps=steps) if steps is not instance.steps else instance
        fabric = fabric_below(instance, state)
        leans = state.leans if fabric is state.fabric else ""
        task = Task.of(instance, state, fabric, size, blocks)
        if (words := not_told(task.steps, state.recent, state.even_pieces)) is not None:
            return self._not_recomputed(instance, state, size, words, instance.row.span)
        try:
            steps = until_turned(task.steps, instance.kind, fabric.circular, coming)
            steps = counted_round_pieces(steps, state.pieces)
            task = replace(task, steps=steps) if steps is not task.steps else task
            task, best, fabric = resumed(task, state) or on_its_fabric(task, state)
            task, best = count_worked(task, best, state)
            figure_worked = task.instance is not instance
            instance = task.instance
        except PlacesUnknown as unknown:
            words = str(unknown) or "how many places there are to work into is not known here"
            return self._not_recomputed(instance, state, size, words, instance.row.span)
        except NotDefined as missing:
            return self._not_recomputed(instance, state, size, f"{missing} is nowhere defined", instance.row.span)
        except TooMany as bound:
            words = str(bound) or "more stitches than any row can hold"
            return self._not_recomputed(instance, state, size, words, instance.row.span)
        worked = best.worked
        if best.unsound:
            why = "its words do not come out on the row below"
            if best.open:
                why = "they can be read in two ways, which make different numbers of stitches"
            cell = self._not_recomputed(instance, state, size, why, instance.row.span)
            unclear = unclear_times(best, task.steps, fabric)
            return replace(cell, misfits=misfits(worked, instance), assumed=fabric.assumed, unclear_times=unclear)
        if not grows(instance.row, instance.steps, state.made, worked.made):
            return self._not_recomputed(instance, state, size, "it does not grow as it is said to", instance.row.span)
        if leans and best.agrees is False and follows_below(task, best, state):
            cell = self._not_recomputed(instance, state, size, STANDS_ON_PRINT.format(leans), instance.row.span)
            return replace(cell, comparison=best.comparison, leans=leans)
        state.leans = "" if best.agrees else state.leans
        self.keep(task, best, state)
        worked = best.worked
        state.short = state.short or "short" in instance.label.lower()
        if best.agrees and worked.turned and (state.short_rows or "short" in instance.label.lower()):
            worked.left = []  # turned before the end, as short rows are
        makes = worked.made.stitches or worked.made.spaces
        asked = makes and (self.workings or self.workings is not None and best.agrees is False)
        workings = workings_of(best, task, state) if asked else None
        if self.works_behind:
            state.earlier.worked(instance.number or 0, fabric.nodes, worked.fabric.nodes, worked.made, task.steps)
        settle(best, state, task.place)
        unsaid = worked.unsaid_chain
        unsaid = (unsaid[0], None) if unsaid is not None and best.either else unsaid
        columns = columns_of(worked.fabric.nodes, fabric.nodes) if worked.made.by_kind else None
        spread = spread_of(worked.fabric.nodes) if told_singly(instance.steps, task.circular) else ()
        self.done_with(fabric)
        leave_unworked(worked, fabric, state, task.circular)
        state.loops = with_free_loops(state.loops, best, task)
        state.side = with_row(state.side, instance, worked.made, task.circular)
        state.carried, state.joining, state.made = worked.carried, (), worked.made
        state.recent = [*state.recent, *([worked.made] if makes else [])][-MOST_RECENT:]
        state.fabric = next_fabric(worked, task, state)
        picked = False
        if best.agrees is False and coming is not None and worked.made.stitches:
            printed = row_as_printed(instance.stated, worked.made, state.fabric, size, task.circular)
            ahead = islice(chain(*self.ahead), MOST_AHEAD)
            if printed is not None and goes_on_better(printed, state.fabric, ahead, state, size, blocks):
                state.fabric, picked = printed, True
        if not worked.made.stitches and not worked.made.spaces and instance.row.label is None:
            return Cell(Outcome.NOT_STATED, worked.made)
        state.stitches += worked.made.stitches
        outcome, comparison = outcome_of(instance, best)
        return Cell(
            outcome,
            worked.made,
            comparison,
            misfits(worked, instance),
            below=stitches_of(fabric.nodes) if fabric.known else None,
            unsaid_chain=unsaid,
            unclear_times=unclear_times(best, task.steps, fabric),
            picked_up=picked,
            assumed=fabric.assumed,
            workings=workings,
            columns=columns,
            spread=spread,
            stated=instance.stated if figure_worked else None,
        )

    # for those who look on ------------------------------------------------------------------------------

    def keep(self, task: Task, best: Trial, state: PieceState) -> None:
        """A row in the reading that was kept, before anything of it is put away."""

    def done_with(self, fabric: Fabric) -> None:
        """The row two below is needed no more."""
        for node in fabric.nodes:
            node.parents = ()
