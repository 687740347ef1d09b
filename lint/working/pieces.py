"""Works a whole pattern, piece by piece and size by size, and keeps the ledger.

Where the words allow two readings, the one under which the pattern's own counts agree is kept; after a row
that differs, work goes on from the fabric that the next row agrees with.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from functools import cached_property
from itertools import chain, islice

from lint.ledger import Cell, Ledger
from lint.pattern import Part, Pattern
from lint.rulebook import Rulebook
from lint.tree import (
    FastenOff,
    RowCall,
    TimesKind,
)
from lint.working.bench import Bench
from lint.working.cells import (
    Entry,
    at_loop_end,
    in_step,
    side_by_side,
)
from lint.working.chains import ChainRules
from lint.working.choices import Key
from lint.working.earlier import works_behind
from lint.working.effort import Effort
from lint.working.expand import Expander
from lint.working.fabric import Fabric, no_search_for_garbage
from lint.working.goingon import (
    MOST_AHEAD,
    onward,
    with_even_pattern,
)
from lint.working.growth import counted
from lint.working.instances import MOST_ROWS, Instance, Loop
from lint.working.joinedpieces import with_piece
from lint.working.likepieces import own_ways
from lint.working.namedahead import rows_named_ahead
from lint.working.onereading import Column, Settled, in_one_reading
from lint.working.opening import open_part
from lint.working.printedrows import pieces
from lint.working.recording import RecordingBench
from lint.working.rowworker import RowWorker
from lint.working.starts import begins_own, corner_to_corner
from lint.working.trials import PieceState

_SHORT_ROWS = ("heel", "short row", "bust dart")  # headings under which rows turn before their end


class PatternWorker(RowWorker):
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
