"""Draft against draft: which points are settled, which are open still, which are new, and whose counts changed."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass

from lint.drafts.alignment import Alignment, align, plain_words
from lint.drafts.moved import moved
from lint.expression import expression
from lint.finding import Finding
from lint.inspection import Report
from lint.ledger import Outcome
from lint.testers.due import MAIN, Due, due_in
from lint.testers.points import Point
from lint.testers.review import Review


@dataclass(frozen=True, slots=True)
class CountChange:
    """A row whose counts are not those of the old draft; a draft that does not have the row has None."""

    part: str
    row: str
    size: int
    old: Due | None
    new: Due | None
    line: int  # in the new draft, else in the old one


@dataclass(frozen=True, slots=True)
class OpenPoint:
    """A finding that is still there; `changed`: with other words or figures."""

    old: Finding
    new: Finding
    changed: bool


@dataclass(frozen=True)
class Points:
    """Testers' points: settled, open still (with what changed about them), and new with the new draft."""

    settled: tuple[Point, ...] = ()
    open: tuple[tuple[Point, str], ...] = ()
    new: tuple[Point, ...] = ()


@dataclass(frozen=True, repr=False)
class Comparison:
    """All that is to be told of two drafts."""

    old: Report
    new: Report
    settled: tuple[Finding, ...]
    open: tuple[OpenPoint, ...]
    new_findings: tuple[Finding, ...]
    counts: tuple[CountChange, ...]
    testers: Points | None = None


def compare_drafts(old: Report, new: Report, review: Review | None = None) -> Comparison:
    """Two drafts; `review`: testers' reports on the old one, which are judged beside the new one as well."""
    alignment = align(old, new)
    pairs = _paired(old, new, alignment)
    partners = {id(other) for _, other in pairs}
    paired = {id(finding) for finding, _ in pairs}
    return Comparison(
        old,
        new,
        tuple(finding for finding in old.findings if id(finding) not in paired),
        tuple(OpenPoint(one, other, _changed(old, new, one, other)) for one, other in pairs),
        tuple(finding for finding in new.findings if id(finding) not in partners),
        tuple(_counts(old, new, alignment)),
        _testers(review, moved(review, new, alignment), alignment) if review is not None else None,
    )


# findings -------------------------------------------------------------------------------------------------------


def _paired(old: Report, new: Report, alignment: Alignment) -> list[tuple[Finding, Finding]]:
    """The findings of the old draft with those of the new that are the same, the surest likeness first."""
    place_old = {id(f): _row_of(old, f, alignment.new_of) for f in old.findings}
    place_new = {id(f): _row_of(new, f, None) for f in new.findings}
    words = {id(f): plain_words(r.source.slice(f.span)) for r in (old, new) for f in r.findings}

    def place(finding: Finding) -> int | None:
        return place_old.get(id(finding), place_new.get(id(finding)))

    likenesses: list[Callable[[Finding], Hashable | None]] = [
        lambda f: (f.rule, place(f), words[id(f)], f.message),
        lambda f: (f.rule, place(f), words[id(f)]),
        lambda f: (f.rule, place(f), _without_figures(f.message)) if place(f) is not None else None,
        lambda f: (f.rule, place(f)) if place(f) is not None else None,
        lambda f: (f.rule, words[id(f)], f.message) if words[id(f)] else None,
        lambda f: (f.rule, f.message) if place(f) is None else None,
    ]
    left, rest, found = list(old.findings), list(new.findings), []
    for likeness in likenesses:
        by_key: dict[Hashable, list[Finding]] = defaultdict(list)
        for finding in rest:
            if (key := likeness(finding)) is not None:
                by_key[key].append(finding)
        for finding in list(left):
            same = by_key.get(likeness(finding))
            if same:
                other = same.pop(0)
                found.append((finding, other))
                left.remove(finding)
                rest.remove(other)
    return sorted(found, key=lambda pair: pair[1].span.start)


def _row_of(report: Report, finding: Finding, new_of: dict[int, int] | None) -> int | None:
    """The row that a finding is on, as its place in the new draft's ledger (-1: gone); None for what is on no row."""
    for index, row in enumerate(report.ledger.rows):
        if row.row.span.start <= finding.span.start < row.row.span.end:
            return index if new_of is None else new_of.get(index, -1 - index)
    return None


def _without_figures(message: str) -> str:
    return expression(r"\d+").sub("#", message)


def _changed(old: Report, new: Report, one: Finding, other: Finding) -> bool:
    same_words = plain_words(old.source.slice(one.span)) == plain_words(new.source.slice(other.span))
    return not same_words or (one.expected, one.found) != (other.expected, other.found)


# counts ---------------------------------------------------------------------------------------------------------


def _counts(old: Report, new: Report, alignment: Alignment) -> Iterator[CountChange]:
    by_name = {name.casefold(): place for place, name in enumerate(old.pattern.sizes)}
    for index, row in enumerate(new.ledger.rows):
        before = alignment.old_of.get(index)
        line = new.source.line_of(row.span)
        for size, cell in enumerate(row.cells):
            name = new.pattern.sizes[size] if len(new.pattern.sizes) > 1 else ""
            old_size = by_name.get(name.casefold(), size if not name and len(old.pattern.sizes) < 2 else None)
            after = due_in(row, size, MAIN) if cell.outcome is not Outcome.NOT_WORKED else None
            was = _due(old, before, old_size)
            if after != was and (after or was or Due(None, None)) != Due(None, None):
                yield CountChange(row.part.name, row.label, size, was, after, line)
    for index, row in enumerate(old.ledger.rows):
        if index not in alignment.new_of:
            for size in range(len(row.cells)):
                was = _due(old, index, size)
                if was is not None and was != Due(None, None):
                    yield CountChange(row.part.name, row.label, size, was, None, old.source.line_of(row.span))


def _due(report: Report, index: int | None, size: int | None) -> Due | None:
    if index is None or size is None:
        return None
    row = report.ledger.rows[index]
    return due_in(row, size, MAIN) if row.cells[size].outcome is not Outcome.NOT_WORKED else None


# testers' points ------------------------------------------------------------------------------------------------


def _testers(old: Review, new: Review, alignment: Alignment) -> Points:
    rest = [point for point in new.points if point.open]
    settled, still = [], []
    for point in (point for point in old.points if point.open):
        place = alignment.new_of.get(point.index) if point.index is not None else None
        partner = next((other for other in rest if _is_same(point, other, place)), None)
        if partner is None:
            settled.append(point)
            continue
        rest.remove(partner)
        words = {plain_words(remark.about) for remark in point.remarks if remark.about}
        text = plain_words(new.report.source.text)
        if words and not any(word in text for word in words):
            settled.append(point)  # the words that were quoted are gone
        else:
            reworded = point.index in alignment.reworded
            still.append((partner, "the words of the row have changed since" if reworded else ""))
    return Points(tuple(settled), tuple(still), tuple(rest))


def _is_same(point: Point, other: Point, place: int | None) -> bool:
    if point.kind != other.kind or not (set(point.testers) & set(other.testers) or not point.testers):
        return False
    if point.remarks or other.remarks:
        return {remark.words for remark in point.remarks} == {remark.words for remark in other.remarks}
    return place == other.index and (place is not None or (point.sizes, point.says) == (other.sizes, other.says))
