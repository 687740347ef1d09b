"""Likely causes of rows that do not come out, and which later rows follow from them.

For each such row, small edits are tried on the row alone; those under which it comes out are tried on the whole
pattern, and the ones that leave the fewest rows at fault, and are the smallest slips, are kept.  What a cause mends
further on follows from it.  The next row at fault is then looked at with the first one mended.
"""

from __future__ import annotations

from dataclasses import dataclass

from lint.faults import fault_of, range_ends, told_in, works_nothing
from lint.finding import Likely
from lint.ledger import Ledger, LedgerRow, Outcome
from lint.likely.called import of_calls
from lint.likely.edits import Edit
from lint.likely.numerals import Reader
from lint.likely.order import Swap, of_order
from lint.likely.othersizes import changes_a_list, in_other_size
from lint.likely.printed import as_made
from lint.likely.rework import Rework
from lint.likely.search import Candidate, RowSearch, watched
from lint.likely.wording import what_then
from lint.pattern import Pattern
from lint.rulebook import Rulebook
from lint.source import SourceText
from lint.working.effort import Effort
from lint.working.onesize import pattern_for

_ONE_OF_SEVERAL = 1.0  # more for one figure of a list, where several sizes are at fault
MOST_CAUSES = 3
MOST_FAULTS = 6  # explained in one pattern: beyond that it is not one slip or another
_TIMES_WIDER, _LEAST_BOUND = 4, 600  # places of a row of an edited pattern: than the widest as it is; at the least
_MOST_TRIED = 6  # edits tried on the whole pattern
_MOST_CALLS = 8  # besides, of other rows called for and of rows changed about
_MOST_KEPT = 24
_MOST_EFFORT = 180_000  # the same with the readings of rows that were tried and not kept
_MOST_STITCHES = 180_000  # worked in trying edits on whole patterns: about a second, and half of one more in large ones


@dataclass(frozen=True, slots=True)
class Explained:
    """The likely causes of one row's fault, best first, and the rows (by place in the ledger) that the best one mends."""

    likely: tuple[Likely, ...]
    mends: tuple[int, ...]
    in_words: bool  # the best cause is in the words of a row, not in a printed count


@dataclass(frozen=True)
class _Tried:
    """An edit tried on the whole pattern, and the rows still at fault with it."""

    edit: Edit | Swap
    faults: frozenset[int]
    passed: int  # places that a later row passes without a word
    as_many: bool  # whether it leaves the number of rows as it is


def explain(source: SourceText, pattern: Pattern, book: Rulebook, ledger: Ledger) -> dict[int, Explained]:
    """By place in the ledger, what may be the cause of a row that does not come out."""
    open_faults = {
        index: [
            size for size, cell in enumerate(row.cells) if fault_of(cell) is not None or works_nothing(row.row, cell)
        ]
        for index, row in enumerate(ledger.rows)
    }
    open_faults = {index: told_in(ledger.rows[index].cells, sizes) for index, sizes in open_faults.items()}
    for index in range_ends(ledger):
        open_faults[index] = open_faults[index] or ledger.rows[index].worked_in
    open_faults = {index: sizes for index, sizes in open_faults.items() if sizes}
    if not open_faults:
        return {}
    search = _Search(source, pattern, book, ledger)
    result: dict[int, Explained] = {}
    for _ in range(MOST_FAULTS):
        if not open_faults or search.spent():
            break
        index = min(open_faults)
        sizes = open_faults.pop(index)
        explained = search.explain(index, sizes)
        if explained is None:
            printed = ledger.rows[index].row.span.start
            open_faults = {
                other: at for other, at in open_faults.items() if ledger.rows[other].row.span.start != printed
            }
            continue
        result[index] = explained
        for other in explained.mends:
            open_faults.pop(other, None)
    return result


class _Search:
    """One pattern, mended step by step, in each size as its maker reads it."""

    def __init__(self, source: SourceText, pattern: Pattern, book: Rulebook, ledger: Ledger) -> None:
        self.source = source
        self.pattern = pattern
        self.book = book
        self.ledger = ledger
        self.names = pattern.sizes
        self.worked = self.bound = 0
        self.effort = Effort(_MOST_EFFORT)
        sizes = range(max(1, len(pattern.sizes)))
        self.patterns = {size: pattern_for(pattern, size) for size in sizes}
        self.places = {  # by size, the rows of the ledger that it works
            size: [at for at, row in enumerate(ledger.rows) if row.cells[size].outcome is not Outcome.NOT_WORKED]
            for size in sizes
        }

    def spent(self) -> bool:
        return self.effort.spent or self.worked > _MOST_STITCHES + min(self.ledger.stitches, _MOST_STITCHES // 2)

    def _rework(self, pattern: Pattern, watch: frozenset[int] = frozenset()) -> Rework:
        rework = Rework(pattern, self.book, watch, self.effort, self.bound)
        self.bound = self.bound or max(_LEAST_BOUND, _TIMES_WIDER * rework.widest)  # by the first: the pattern as it is
        self.worked += rework.column.stitches + 30 * len(rework.entries)
        return rework

    def explain(self, index: int, sizes: list[int]) -> Explained | None:
        """The causes of a row (by place in the ledger) that is at fault in these sizes, as the first of them shows it."""
        size = sizes[0]
        places = self.places[size]
        at = places.index(index)
        now = self._rework(self.patterns[size], watched(at))
        if len(now.entries) != len(places) or at not in now.moments or at not in now.faults:
            return None
        reader = Reader(size, len(self.patterns))
        search = RowSearch(now, at, self.source.text, reader)
        found = [*search.candidates(), *self._printed(now, at, index, reader), *self._called(now, at, reader)]
        found += self._swapped(now, at, size)
        candidates = sorted(found, key=lambda candidate: candidate.edit.cost)
        self.worked += search.worked
        others = [other for other in self.places if other not in sizes and index in self.places[other]]
        tried = self._tried(candidates, at, now, size, list(dict.fromkeys((*others[:1], *others[-1:]))))
        if not tried:
            return None
        several = len(sizes) > 1
        best = min((len(one.faults), one.passed) for one in tried)
        kept = [one for one in tried if (len(one.faults), one.passed) == best]
        kept.sort(key=lambda one: one.edit.cost + (_ONE_OF_SEVERAL if several and self._of_one_size(one.edit) else 0))
        mend = kept[0].edit
        mended = {size: {places[other] for other in now.faults - kept[0].faults if other > at}}
        mended |= self._mended_in(mend, index, [other for other in sizes if other != size])
        meant = sizes if self._of_one_size(mend) else self.patterns
        if kept[0].as_many:
            own = {one: mend if one == size else in_other_size(mend, self.patterns[one]) for one in meant}
            self.patterns |= {one: own[one].of_pattern(self.patterns[one]) for one in meant if own[one] is not None}
        told = {(one.edit.change, one.edit.words): one for one in reversed(kept)}  # the same words at two places: once
        kept = [one for one in kept if told[one.edit.change, one.edit.words] is one]
        likely = tuple(self._likely(one, index, size, now) for one in kept[:MOST_CAUSES])
        return Explained(likely, self._mended_in_all(mended), kept[0].edit.in_words)

    def _mended_in(self, mend: Edit | Swap, index: int, sizes: list[int]) -> dict[int, set[int]]:
        """By size, the later rows that come out in it with an edit; not for sizes whose words the edit leaves as they are."""
        found = {}
        for size in sizes:
            own = in_other_size(mend, self.patterns[size])
            if own is None or self.spent():
                continue
            now, then = self._rework(self.patterns[size]), self._rework(own.of_pattern(self.patterns[size]))
            places = self.places[size]
            if len(now.entries) == len(places):
                found[size] = {places[at] for at in now.faults - then.faults_as_in(now) if places[at] > index}
        return found

    def _mended_in_all(self, mended: dict[int, set[int]]) -> tuple[int, ...]:
        """The later rows that come out in every size in which the edit was tried and they are at fault."""
        rows = sorted(set().union(*mended.values()))
        return tuple(row for row in rows if all(row in mended[size] for size in self._at_fault(row) if size in mended))

    def _at_fault(self, index: int) -> list[int]:
        row = self.ledger.rows[index]
        found = [size for size, cell in enumerate(row.cells) if fault_of(cell) is not None]
        return told_in(row.cells, found)

    def _printed(self, now: Rework, at: int, index: int, size: Reader) -> list[Candidate]:
        cell = now.entries[at].cell
        instance = now.moments[at].instance
        stated = instance.stated or instance.inherited
        if stated is None or cell.made is None or any(m.kind in ("run out", "too often") for m in cell.misfits):
            return []
        steps = self._in_step(index, size, cell.made.stitches)
        edits = as_made(stated, instance.stated_index, cell, self.source.text, size, steps)
        return [Candidate(edit, ("printed",)) for edit in edits]

    def _called(self, now: Rework, at: int, size: Reader) -> list[Candidate]:
        """Other rows called for, or called for as often as the label says."""
        instance = now.moments[at].instance
        edits = of_calls(instance.row.steps, self.source.text, size, instance.length)
        return [Candidate(edit, ("called", number)) for number, edit in enumerate(edits)]

    def _swapped(self, now: Rework, at: int, size: int) -> list[Candidate]:
        """The row changed about with a neighbour, where more is at fault than one slip in its words would do."""
        swaps = of_order(self.patterns[size], now.moments[at].instance.row, self.source.text)
        return [Candidate(swap, ("swapped", number)) for number, swap in enumerate(swaps)]

    def _in_step(self, index: int, size: int, made: int) -> bool:
        """Whether a figure is as far from the count printed before it as from the one after."""
        rows = self.ledger.rows
        beside = []
        for other in (index - 1, index + 1):
            row = rows[other] if 0 <= other < len(rows) else None
            if row is None or row.part is not rows[index].part or row.stated is None or not row.stated.items:
                return False
            beside.append(row.stated.items[0].at(size, row.stated_index))
        return None not in beside and made - beside[0] == beside[1] - made

    def _tried(self, candidates: list[Candidate], at: int, now: Rework, size: int, others: list[int]) -> list[_Tried]:
        """The candidates on the whole pattern; of those that leave the same row, one is worked and speaks for all.

        `others`: sizes in which the row comes out as it is, and must go on doing so.
        """
        results: dict[object, tuple[frozenset[int], int, bool]] = {}
        beside = {other: len(self._rework(self.patterns[other]).faults) for other in others}
        tried = []
        called = sum(bool(c.leaves) and c.leaves[0] in ("called", "swapped") for c in candidates)
        for candidate in candidates:
            edited = candidate.edit.of_pattern(self.patterns[size])
            key = candidate.leaves
            if key not in results:
                if len(results) >= _MOST_TRIED + min(called, _MOST_CALLS) or self.spent():
                    continue
                again = self._rework(edited)
                results[key] = again.faults_as_in(now), again.passed, len(again.entries) == len(now.entries)
            faults, passed, as_many = results[key]
            harmed = any(other < at for other in faults - now.faults)  # a row before it that came out
            if at in faults or harmed or len(now.faults) - len(faults) < candidate.edit.least:
                continue
            held = {} if self._of_one_size(candidate.edit) else beside
            if all(self._faults_with(candidate.edit, other) <= most for other, most in held.items()):
                tried.append(_Tried(candidate.edit, faults, passed, as_many))
            if len(tried) >= _MOST_KEPT:
                break
        return tried

    def _of_one_size(self, edit: Edit | Swap) -> bool:
        """Whether what changes is one figure of a list over the sizes."""
        return len(self.patterns) > 1 and changes_a_list(edit, self.pattern)

    def _faults_with(self, edit: Edit | Swap, size: int) -> int:
        """How many rows of another size are at fault with an edit; none that was not, where it leaves that size as it is."""
        own = in_other_size(edit, self.patterns[size])
        return len(self._rework(own.of_pattern(self.patterns[size])).faults) if own is not None else 0

    def _for_one_size(self, edit: Edit | Swap, size: int) -> bool:
        """Whether an edit changes a figure that is this size's alone."""
        others = [self.patterns[other] for other in self.patterns if other != size][:1]
        return self._of_one_size(edit) or any(in_other_size(edit, other) is None for other in others)

    def _likely(self, one: _Tried, index: int, size: int, now: Rework) -> Likely:
        rows, places = self.ledger.rows, self.places[size]
        mended: list[LedgerRow] = [rows[places[o]] for o in sorted(now.faults - one.faults) if places[o] > index]
        later = [o for o, place in enumerate(places) if place > index and rows[place].part is rows[index].part]
        clean = bool(later) and not any(other in one.faults for other in later)
        change = one.edit.change
        if self._for_one_size(one.edit, size):
            change = f"{change} for size {self.names[size]}"
        reader = (size, self.names[size]) if len(self.names) > 1 else None
        then = what_then(self.source, one.edit, rows[index], mended, clean, reader)
        return Likely(change, then, one.edit.span, one.edit.words)
