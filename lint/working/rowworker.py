"""Works one row on the row below in the reading that its counts bear out, or says what stopped it: "Rnd 3: (sc, inc) x 6 (18)"."""

from __future__ import annotations

from collections import deque
from dataclasses import replace
from itertools import chain, islice

from lint.ledger import Cell, Outcome
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    MakeRing,
    Remark,
    Unread,
    walk,
)
from lint.working.besides import called_otherwise
from lint.working.betweenrows import between_rows
from lint.working.cells import (
    misfits,
    outcome_of,
    unclear_times,
)
from lint.working.chainlines import led_on
from lint.working.columns import columns_of, spread_of, told_singly
from lint.working.countworked import count_worked
from lint.working.cursor import PlacesUnknown
from lint.working.earlier import named_as_below
from lint.working.edges import (
    fabric_below,
    leave_unworked,
    on_its_fabric,
    resumed,
    with_free_loops,
    with_row,
)
from lint.working.fabric import Fabric, stitches_of
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
    row_as_printed,
)
from lint.working.growth import grows
from lint.working.instances import Instance
from lint.working.joinedpieces import counted_round_pieces
from lint.working.rowkinds import row_ends_counted
from lint.working.rowstate import NotDefined, TooMany
from lint.working.starts import founds, is_round, until_turned, works_ring
from lint.working.trials import PieceState, Side, Task, Trial, settle, workings_of

NO_MATCH = "what is worked so far does not match that other side"
NO_STITCHES = "no stitches were found in this row"


class RowWorker:
    """Works rows one by one; what holds for the pattern is set by who works the whole of it."""

    workings: bool | None = False  # of every row, of those that differ alone, or (None) of none
    works_behind = False  # whether any round is worked into one before the last
    named_ahead: frozenset[int] = frozenset()  # rows, by identity, that notes tell before they are called for by name
    ahead: tuple[deque[Instance], ...] = ()  # rows behind the one at hand: of its printed row, of later ones

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
        state.fabric = as_printed(own or others, size, is_round(instance, state.fabric), instance.steps)
        state.leans = instance.label if state.fabric is not None else ""
        state.earlier.not_known(instance.number or 0)
        state.rules.take_notes(instance.steps, size)
        state.carried, state.joining, state.side, state.made = last_chain(instance.steps), (), Side(), None
        state.more_left, state.parted, state.recent, state.short, state.whole = True, False, [], False, 0
        return Cell(Outcome.NOT_RECOMPUTED, stopped_by=words, stopped_at=span)

    def _work(self, instance: Instance, coming: Instance | None, state: PieceState, size: int, blocks: bool) -> Cell:
        own_numbers = instance.label.lower().startswith("short")  # "Rnd 1" is no "Short Row 1"
        if state.earlier.last and state.earlier.last == (instance.number or 0) - 1 and not own_numbers:
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
