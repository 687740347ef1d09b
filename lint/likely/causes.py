"""Likely causes of rows that do not come out, and which later rows follow from them.

For each such row, small edits are tried on the row alone; those under which it comes out are tried on the whole
pattern, and the ones that leave the fewest rows at fault, and are the smallest slips, are kept.  What a cause mends
further on follows from it.  The next row at fault is then looked at with the first one mended.
"""

from __future__ import annotations

from dataclasses import dataclass

from lint.faults import fault_of
from lint.finding import Likely
from lint.ledger import Ledger, LedgerRow
from lint.likely.edits import Edit
from lint.likely.printed import as_made
from lint.likely.rework import Rework
from lint.likely.search import Candidate, RowSearch, watched
from lint.likely.wording import what_then
from lint.pattern import Pattern, Stated
from lint.rulebook import Rulebook
from lint.source import SourceText

MOST_CAUSES = 3
MOST_FAULTS = 6  # explained in one pattern: beyond that it is not one slip or another
_MOST_TRIED = 6  # edits tried on the whole pattern
_MOST_KEPT = 24
_MOST_STITCHES = 250_000  # worked in trying edits on whole patterns: about a second


@dataclass(frozen=True, slots=True)
class Explained:
    """The likely causes of one row's fault, best first, and the rows (by place in the ledger) that the best one mends."""

    likely: tuple[Likely, ...]
    mends: tuple[int, ...]
    in_words: bool  # the best cause is in the words of a row, not in a printed count


@dataclass(frozen=True)
class _Tried:
    """An edit tried on the whole pattern: the rows still at fault, and the pattern with it."""

    edit: Edit
    faults: frozenset[int]
    pattern: Pattern


def explain(source: SourceText, pattern: Pattern, book: Rulebook, ledger: Ledger) -> dict[int, Explained]:
    """By place in the ledger, what may be the cause of a row that does not come out."""
    open_faults = {
        index: [size for size, cell in enumerate(row.cells) if fault_of(cell) is not None]
        for index, row in enumerate(ledger.rows)
    }
    open_faults = {index: sizes for index, sizes in open_faults.items() if sizes}
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
    """One pattern, mended step by step."""

    def __init__(self, source: SourceText, pattern: Pattern, book: Rulebook, ledger: Ledger) -> None:
        self.source = source
        self.pattern = pattern
        self.book = book
        self.ledger = ledger
        self.worked = 0

    def spent(self) -> bool:
        return self.worked > _MOST_STITCHES

    def _rework(self, pattern: Pattern, size: int, watch: frozenset[int] = frozenset()) -> Rework:
        rework = Rework(pattern, self.book, size, watch)
        self.worked += rework.column.stitches + 30 * len(rework.column.cells)
        return rework

    def explain(self, index: int, sizes: list[int]) -> Explained | None:
        size = sizes[0]
        now = self._rework(self.pattern, size, watched(index))
        if len(now.column.cells) != len(self.ledger.rows) or index not in now.moments or index not in now.faults:
            return None
        search = RowSearch(now, index, self.source.text)
        candidates = sorted([*search.candidates(), *self._printed(now, index)], key=lambda c: c.edit.cost)
        self.worked += search.worked
        others = [other for other in range(len(self.ledger.rows[index].cells)) if other not in sizes]
        beside = self._rework(self.pattern, others[0]) if others else None
        tried = self._tried(candidates, index, now, beside)
        if not tried:
            return None
        best = min(len(one.faults) for one in tried)
        kept = [one for one in tried if len(one.faults) == best]
        kept.sort(key=lambda one: one.edit.cost)
        mended = tuple(sorted(other for other in now.faults - kept[0].faults if other > index))
        self.pattern = kept[0].pattern
        likely = tuple(self._likely(one, index, now) for one in kept[:MOST_CAUSES])
        return Explained(likely, mended, not isinstance(kept[0].edit.old, Stated))

    def _printed(self, now: Rework, index: int) -> list[Candidate]:
        cell = now.column.cells[index][2]
        instance = now.moments[index].instance
        stated = instance.stated or instance.inherited
        if stated is None or cell.made is None or any(m.kind in ("run out", "too often") for m in cell.misfits):
            return []
        steps = self._in_step(index, cell.made.stitches)
        edits = as_made(stated, instance.stated_index, cell, self.source.text, now.size, steps)
        return [Candidate(edit, ("printed",)) for edit in edits]

    def _in_step(self, index: int, made: int) -> bool:
        """Whether a figure is as far from the count printed before it as from the one after."""
        rows = self.ledger.rows
        beside = []
        for other in (index - 1, index + 1):
            row = rows[other] if 0 <= other < len(rows) else None
            if row is None or row.part is not rows[index].part or row.stated is None or not row.stated.items:
                return False
            beside.append(row.stated.items[0].at(0, row.stated_index))
        return None not in beside and made - beside[0] == beside[1] - made

    def _tried(self, candidates: list[Candidate], index: int, now: Rework, beside: Rework | None) -> list[_Tried]:
        """The candidates on the whole pattern; of those that leave the same row, one is worked and speaks for all.

        `beside`: a size in which the row comes out as it is, and must go on doing so.
        """
        results: dict[object, frozenset[int] | None] = {}
        tried = []
        for candidate in candidates:
            key = candidate.leaves
            if key not in results:
                if len(results) >= _MOST_TRIED or self.spent():
                    continue
                again = self._rework(candidate.edit.of_pattern(self.pattern), now.size)
                alike = len(again.column.cells) == len(now.column.cells)
                results[key] = again.faults if alike else None
            faults = results[key]
            if faults is None or index in faults or len(faults) >= len(now.faults):
                continue
            edited = candidate.edit.of_pattern(self.pattern)
            if beside is None or len(self._rework(edited, beside.size).faults) <= len(beside.faults):
                tried.append(_Tried(candidate.edit, faults, edited))
            if len(tried) >= _MOST_KEPT:
                break
        return tried

    def _likely(self, one: _Tried, index: int, now: Rework) -> Likely:
        rows = self.ledger.rows
        mended: list[LedgerRow] = [rows[other] for other in sorted(now.faults - one.faults) if other > index]
        later = [other for other in range(index + 1, len(rows)) if rows[other].part is rows[index].part]
        clean = bool(later) and not any(other in one.faults for other in later)
        return Likely(
            one.edit.change, what_then(self.source, one.edit, rows[index], mended, clean), one.edit.span, one.edit.words
        )
