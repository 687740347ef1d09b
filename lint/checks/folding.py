"""One cause, one finding: rows that only follow from an earlier mistake are told of in its finding."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from lint.checks.context import Context
from lint.checks.rows import finding_of, range_finding
from lint.faults import RULES, range_ends
from lint.finding import Finding, Related, Weight
from lint.ledger import LedgerRow, Outcome

_OF_FIT = frozenset(RULES.values())


@dataclass
class _Open:
    """A finding of its own, to which rows that follow from it are added."""

    finding: Finding
    source: int  # offset of the printed row
    mended: bool  # its likely cause is in the words: what that leaves at fault is another mistake
    followers: list[LedgerRow] = field(default_factory=list)

    unsaid: bool = False  # no count is printed of the row, so that what it makes is what its words make
    index: int = 0  # of the row in the ledger
    off: tuple[str, int] | None = None  # the unit that it differs in from the printed count, and by how many
    silent: bool = False  # rows lie between of which no count is printed

    @property
    def taints(self) -> bool:
        """Whether the mistake leaves the row below wrong for the rows after it."""
        sure = self.finding.weight is Weight.CORRECTION or self.unsaid and self.finding.rule in _OF_FIT
        return sure and self.finding.rule != "place-not-there"


def check_rows(context: Context) -> Iterator[Finding]:
    """The rules of counts, corners and fit, and range-length-differs."""
    heirs = {other: index for index, explained in context.causes.items() for other in explained.mends}
    found: dict[int, _Open] = {}
    last: _Open | None = None  # the mistake just before this row, if nothing has come right since
    ends = range_ends(context.ledger)
    for index, row in enumerate(context.ledger.rows):
        if index and not _goes_on(context.ledger.rows[index - 1], row):
            last = None
        finding = finding_of(row, context)
        if index in ends:
            finding = range_finding(context, row, finding)
        if finding is None:
            if any(cell.made is not None for cell in row.cells):
                last = replace(last, silent=True) if last is not None and _prints_none(row) else None
            continue
        cause = found.get(heirs.get(index, -1))
        if last is not None and last.silent:
            last = found.get(last.index) if last.off and last.off == _off(row) else None
        if cause is None and (index not in ends or last is not None and last.taints):
            cause = _led_by(last, finding, row, index in context.causes)
        if cause is not None:
            if index in ends and not cause.taints and cause.source == row.row.span.start:
                cause.finding = replace(finding, likely=cause.finding.likely)  # the range is what is certainly wrong
            cause.followers.append(row)
            if finding.weight is Weight.CORRECTION:
                cause.finding = replace(cause.finding, weight=Weight.CORRECTION)  # something is certainly wrong here
            continue
        explained = context.causes.get(index)
        if explained is not None:
            finding = replace(finding, likely=explained.likely)
        in_words = explained is not None and explained.in_words
        source, unsaid = row.row.span.start, row.row.stated is None
        last = found[index] = _Open(finding, source, in_words, unsaid=unsaid, index=index, off=_off(row))
        if any(cell.picked_up for cell in row.cells):
            last = None  # work went on from the printed count: later rows don't follow from this
    for opened in found.values():
        yield _folded(opened)


def _prints_none(row: LedgerRow) -> bool:
    """Whether no count is printed of a row in any size, so that it cannot show that the work has come right."""
    return all(cell.outcome in (Outcome.NOT_STATED, Outcome.NOT_WORKED) for cell in row.cells)


def _off(row: LedgerRow) -> tuple[str, int] | None:
    """The unit in which a row first differs from its printed count, and by how many."""
    differing = (cell.comparison.differences for cell in row.cells if cell.comparison is not None)
    first = next((differences[0] for differences in differing if differences), None)
    return (first.item.unit, first.stated - first.made) if first is not None else None


def _goes_on(before: LedgerRow, row: LedgerRow) -> bool:
    """Whether a row is worked on the one before it: in the same piece, or under a heading that begins no piece."""
    if row.part is before.part:
        return True
    pairs = zip(before.cells, row.cells, strict=True)
    return any(one.made is not None and one.made.stitches and one.made.stitches == other.below for one, other in pairs)


def _led_by(last: _Open | None, finding: Finding, row: LedgerRow, explained: bool) -> _Open | None:
    """The mistake just before, where a row of the same printed words, or the row after it, comes of it."""
    if last is None:
        return None
    if last.source == row.row.span.start:
        return last
    if last.finding.weight is not Weight.CORRECTION and finding.rule not in _OF_FIT:
        return None  # what a row makes that may be right is not why the next one's count differs
    own = last.mended and explained
    on_which_row = last.finding.rule == "range-length-differs"  # the row that a range ends on tells what lies below
    return last if (finding.rule != "place-not-there" or on_which_row) and last.taints and not own else None


def _folded(opened: _Open) -> Finding:
    rows = [row for row in opened.followers if row.row.span.start != opened.source]
    if not rows:
        return opened.finding
    part = opened.finding.part
    labels = list(
        dict.fromkeys(row.label if row.part.name == part else f"{row.part.name}, {row.label}" for row in rows)
    )
    one = len(labels) == 1
    follow = (
        labels[0] if one else f"{labels[0]} and {labels[1]}" if len(labels) == 2 else f"{labels[0]} to {labels[-1]}"
    )
    related = tuple(Related(row.span, "follows from this") for row in rows[:6])
    return replace(
        opened.finding,
        message=f"{opened.finding.message} {follow} {'follows' if one else 'follow'} from this.",
        related=(*opened.finding.related, *related),
    )


# findings of other checks ----------------------------------------------------------------------------------------

_NEAR = 20  # characters between a size's name and the words for it: "XL only: work …"
_OF_COUNTS = frozenset({*RULES.values(), "count-differs", "corners-differ", "place-not-there", "range-length-differs"})


def fold_others(findings: list[Finding]) -> list[Finding]:
    """One finding where a word that is not explained, of other terms, or a yarn not joined is at the bottom of a fault.

    A stitch of the other country's terms, or a word in a row before the one whose count it upsets, is told as that; else
    the count is told.
    """
    kept = [one for one in findings if not _said_already(one, findings)]
    for count in tuple(kept):
        cause = count.likely[0] if count.likely and count.rule in _OF_COUNTS else None
        if cause is None or cause.span is None:
            continue
        inside = [one for one in kept if cause.span.start <= one.span.start < cause.span.end]
        word = next((one for one in inside if _tells_by_itself(one, count)), None)
        if word is not None:
            message = f"{word.message} {count.message}"
            told = replace(word, message=message, likely=count.likely, related=count.related)
            kept = [told if one is word else one for one in kept if one is not count]
            continue
        called = next((one for one in kept if one.rule == "called-row-side" and one.row == count.row), None)
        if called is not None and called.span.start <= cause.span.start < called.span.end:
            told = replace(called, message=f"{called.message} {count.message}", likely=count.likely)
            kept = [told if one is called else one for one in kept if one is not count]
            continue
        for one in inside:
            if one.rule == "abbreviation-undefined" and not one.related:
                told = replace(count, message=f"{count.message} {one.message}")
                kept = [told if other is count else other for other in kept if other is not one]
            elif one.rule == "yarn-not-joined":
                kept = [other for other in kept if other is not one]
    return kept


def _said_already(one: Finding, findings: list[Finding]) -> bool:
    """Whether a row was not counted for want of what another finding asks after: a marker, a size."""
    if one.rule != "not-understood":
        return False
    return any(
        other.rule == "marker-not-placed"
        and (other.part, other.row) == (one.part, one.row)
        and "marker" in one.message
        or other.rule == "size-not-listed"
        and "sizes" in one.message
        and 0 <= one.span.start - other.span.end < _NEAR
        for other in findings
    )


# of one figure, the first of these that asks about it; the others only bear it out
_OF_FIGURES = ("measurement-disagrees", "seam-counts-differ", "size-step-broken", "yarn-amount-falls", "gauge-disagrees", "ease-disagrees", "armhole-sleeve-differs")  # fmt: skip


def fold_figures(findings: list[Finding]) -> list[Finding]:
    """One finding for one printed figure: that it leaves the line, with the gauge that says so too among its places."""
    by_span: dict[tuple[int, int], list[Finding]] = {}
    for finding in findings:
        if finding.rule in _OF_FIGURES:
            by_span.setdefault((finding.span.start, finding.span.end), []).append(finding)
    kept: list[Finding] = []
    for finding in findings:
        if finding.rule == "ease-disagrees" and _of_a_figure_told(finding, findings):
            continue  # the ease only follows from the body's or the finished measure, which is asked about
        if finding.rule == "armhole-sleeve-differs" and any(
            one.rule == "size-step-broken" and one.sizes == finding.sizes for one in findings
        ):
            continue  # the figure that leaves the line is asked about, and with it the seam that it upsets
        if _falls_beside_a_figure_told(finding, findings):
            continue  # it is less than the one before it, which is too much
        alike = sorted(
            by_span.get((finding.span.start, finding.span.end), ()), key=lambda one: _OF_FIGURES.index(one.rule)
        )
        if finding.rule not in _OF_FIGURES or alike[0] is finding:
            more = tuple(place for other in alike[1:] for place in other.related if place not in finding.related)
            kept.append(replace(finding, related=(*finding.related, *more)) if alike else finding)
    return kept


def _falls_beside_a_figure_told(fall: Finding, findings: list[Finding]) -> bool:
    """Whether a figure is less than the one before it, and another of its list is asked about for a better reason."""
    if fall.rule != "size-step-broken" or fall.expected is not None or not fall.related:
        return False
    beside = fall.related[0].span
    better = ("measurement-disagrees", "gauge-disagrees")
    return any(
        one.rule in better and one.span != fall.span and beside.start <= one.span.start and one.span.end <= beside.end
        for one in findings
    )


def _of_a_figure_told(ease: Finding, findings: list[Finding]) -> bool:
    """Whether one of the two measures that an ease lies between is itself in question."""
    between = [ease.span, *(place.span for place in ease.related)]
    told = [one for one in findings if one.rule in _OF_FIGURES[: _OF_FIGURES.index("ease-disagrees")]]
    places = [span for one in told for span in (one.span, *(place.span for place in one.related))]
    return any(one.start < other.end and other.start < one.end for one in between for other in places)


def _tells_by_itself(word: Finding, count: Finding) -> bool:
    """Whether a word's finding is the one to keep: of the other country's terms, or in a row before the count's."""
    if word.related:
        return False
    return word.rule == "terms-mixed" or word.rule == "abbreviation-undefined" and word.row != count.row
