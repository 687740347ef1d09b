"""One size off the line of its neighbours, in finished measures, in what parts start and end with, and in numbers of rows."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from lint.checks.context import Context
from lint.checks.lines import FIRST, Stray, ascending, fall, sizes_leap, stray, stray_count
from lint.checks.measures import mismatches
from lint.checks.seams import check_seams
from lint.expression import expression
from lint.finding import Finding, Related
from lint.ledger import LedgerRow, Outcome
from lint.pattern import Part
from lint.reading.facts.measures import CM_IN_AN_INCH, Figure, in_unit, label_of, read_lengths, read_lists, read_pairs
from lint.reading.sizes.listings import listings
from lint.reading.sizes.sizecolumns import read_columns
from lint.source import Span
from lint.tree import RowCall

_STITCHES = r"(?:sts?|stitches|sc|hdc|htr|dc|tr|dtr|chs?|chains?)(?![\w-])"
_GROWS = expression(
    r"(?i)\b(?:bust|chest|hips?|waist|head|circumference|length|long|upper arm|sleeves?|width|wide|foot|hand|wrist|shoulders?|back|front|yoke|bicep|around)\b"
)
_MEASURED_FROM = expression(r"(?i)(?<=\w)\s+(?:from|to|below|above)\b.*")
_MAY_FALL = expression(r"(?i)\b(?:depth|drop|neck\w*|opening|gap|ease|strap|rise|slit)\b")


def check_steps(context: Context) -> Iterator[Finding]:
    """size-step-broken: "32 (36, 40, 54, 48) in"."""
    if len(context.pattern.sizes) < 2:
        return
    yield from _measures(context)
    yield from _stitches(context)
    yield from _parts(context)


# measures ------------------------------------------------------------------------------------------------------


def _measures(context: Context) -> Iterator[Finding]:
    text, sizes = context.source.text, context.pattern.sizes
    lengths = read_lengths(text, len(sizes))
    pairs = read_pairs(text, lengths)
    tolerance = context.book.materials.tolerances.measurement
    passed = {p.first.span for p in pairs if mismatches(p, tolerance)}  # said already
    passed |= {p.second.span for p in pairs}  # the same measure once more
    told = [
        _Measure(label_of(text, one.span), text[one.span.end : one.span.end + 12].split("\n")[0], one.unit, tuple(side))
        for one in lengths
        for side in one.sides
        if one.span not in passed and len(side) == len(sizes)
    ]
    told += [_Measure(one.label, "", one.unit, tuple(one.figures)) for one in read_columns(text, sizes)]
    leaps = Counter(
        (unit, found.index) for (unit, _), found in {(one.unit, one.values): one.off() for one in told}.items() if found
    )
    for one in told:
        found = one.off()
        at_end = found is not None and found.index in (0, len(sizes) - 1)
        meant = at_end and found is not None and (leaps[one.unit, found.index] > 1 or sizes_leap(sizes, found.index))
        yield from _measure(context, one, None if meant else found)


@dataclass(frozen=True, slots=True)
class _Measure:
    """A measure of the finished piece, with one figure for each size."""

    label: str
    behind: str
    unit: str
    figures: tuple[Figure, ...]

    @property
    def values(self) -> tuple[float | None, ...]:
        """The figures alone."""
        return tuple(figure.value for figure in self.figures)

    def off(self) -> Stray | None:
        """The figure that leaves the line of the others."""
        factor = 1.0 if self.unit == "in" else CM_IN_AN_INCH
        return stray(self.values, 0.3 * factor, 1.25 * factor)


def _measure(context: Context, one: _Measure, found: Stray | None) -> Iterator[Finding]:
    unit, figures = one.unit, one.figures
    fallen = _fallen(context, one.label, one.behind, one.values)
    if found is not None:
        yield _off_line(
            context, figures, found.index, in_unit(unit, found.line * CM_IN_AN_INCH if unit == "in" else found.line)
        )
    elif fallen is not None:
        yield _fell(context, figures, fallen)


def _fallen(context: Context, label: str, behind: str, values: Sequence[float | None]) -> int | None:
    """The size in which a measure that grows with the size is less than in the size before."""
    own = _MEASURED_FROM.sub("", label)  # "length from back neck" is no measure of the neck
    if not _GROWS.search(f"{own} {behind}") or _MAY_FALL.search(own):
        return None
    known = [value for value in values if value is not None]
    if len(known) == len(values) and ascending(context.pattern.sizes) and all(a > b for a, b in pairwise(known)):
        return 1
    return fall(values, strict=False)


# counts --------------------------------------------------------------------------------------------------------


def _stitches(context: Context) -> Iterator[Finding]:
    """Numbers of stitches outside the rows that were recomputed: seams, and what is said of rows in sentences."""
    sizes = len(context.pattern.sizes)
    if sizes < FIRST:
        return
    rows = context.ledger.rows
    worked = {row.row.span for row in rows}
    labelled = {row.span for part in context.pattern.parts for row in part.rows if row.label is not None}
    seams = {finding.span for finding in check_seams(context)}  # said already
    for span, sides in read_lists(context.source.text, _STITCHES, sizes):
        inside = [one for one in worked | labelled if one.start <= span.start < one.end]
        said = any(one.start < span.end and span.start < one.end for one in seams)
        if inside or said or len(sides) != 1 or len(sides[0]) != sizes:
            continue
        values = [figure.value for figure in sides[0]]
        found = stray(values, 0.0, 2.0)
        # counts are whole: a stitch or two off a wide step is how repeats fall
        if found is not None and sizes_leap(context.pattern.sizes, found.index):
            continue
        if found is not None and abs((values[found.index] or 0) - found.line) >= found.step:
            yield _off_line(context, sides[0], found.index, f"{found.line:g}")


def _parts(context: Context) -> Iterator[Finding]:
    """What each part starts with, ends with, and how many rows it has; at most one question a part."""
    sizes = len(context.pattern.sizes)
    for index, part in enumerate(context.pattern.parts):
        rows = [row for row in context.ledger.rows if row.part is part and row.kind != "foundation"]
        cells = [cell for row in rows for cell in row.cells if cell.outcome is not Outcome.NOT_WORKED]
        if not rows or any(len(row.cells) != sizes for row in rows):
            continue
        if any(isinstance(step, RowCall) and step.part is not None for row in rows for step in row.row.steps):
            continue  # worked as another piece, whose figures are asked about there
        if any(cell.made is None or cell.outcome is Outcome.DIFFERS or cell.misfits for cell in cells):
            continue  # what is at fault there is said there
        worked = [[row for row in rows if row.cells[size].outcome is not Outcome.NOT_WORKED] for size in range(sizes)]
        if not all(worked):
            continue
        starts = [_made(some[0], size) for size, some in enumerate(worked)]
        ends = [_made(some[-1], size) for size, some in enumerate(worked)]
        numbers = [len(some) for some in worked] if not any(row.open for row in rows) else [0] * sizes
        for values in (starts, numbers, ends):
            found = _at_fault(values, falls=values is not ends)
            if found is not None and not (found[1] is not None and sizes_leap(context.pattern.sizes, found[0])):
                yield _of_part(context, part, index, values, *found)
                break


def _made(row: LedgerRow, size: int) -> int:
    made = row.cells[size].made
    return made.stitches if made is not None else 0


def _at_fault(values: Sequence[int], falls: bool) -> tuple[int, Stray | None] | None:
    found = stray_count(values)
    if found is not None:
        return found.index, found
    fallen = fall(values, strict=True) if falls else None
    return None if fallen is None else (fallen, None)


def _of_part(context: Context, part: Part, index: int, values: Sequence[int], at: int, found: Stray | None) -> Finding:
    """The finding, marked at the printed list that has the same break; at the part's first row where none has."""
    text, sizes = context.source.text, context.pattern.sizes
    for figures in _lists(text, Span(part.span.start, part.rows[-1].span.end), len(sizes)):
        printed = [int(figure.value or 0) for figure in figures]
        same = _at_fault(printed, falls=found is None)
        if same is None or same[0] != at or (same[1] is None) != (found is None):
            continue
        if found is None:
            return _fell(context, figures, at)
        return _off_line(context, figures, at, f"{same[1].line if same[1] else found.line:g}")
    first = part.rows[0]
    span = first.label.span if first.label is not None else first.span
    what = _less(values[at - 1], sizes[at - 1]) if found is None else _line(f"{found.line:g}")
    return context.finding_at("size-step-broken", span, sizes=(sizes[at],), found=values[at], size=sizes[at], what=what)


_WHOLE = expression(r"\d+")
_FIRST_OF_RANGE = expression(r"\d+\s?[-–]\s?(?=\d)")


def _lists(text: str, span: Span, sizes: int) -> Iterator[tuple[Figure, ...]]:
    """The figures of every list in a stretch of the text that has one number a size; of "2-20 (24, 28)" the last rows."""
    for one in listings(text[span.start : span.end], sizes):
        start, end = span.start + one.span.start, span.start + one.span.end
        opened = _FIRST_OF_RANGE.match(text, start)
        numbers = _WHOLE.finditer(text, opened.end() if opened is not None else start, end)
        found = tuple(Figure(Span(*match.span()), float(match[0])) for match in numbers)
        if len(found) == sizes:
            yield found


# what is said --------------------------------------------------------------------------------------------------


def _line(expected: str) -> str:
    return f"leaves the line of the other sizes, on which it would be about {expected}"


def _less(before: object, size: str) -> str:
    return f"is less than the {before} for size {size}"


def _off_line(context: Context, figures: Sequence[Figure], index: int, line: str) -> Finding:
    return _finding(context, figures, index, _line(line), line)


def _fell(context: Context, figures: Sequence[Figure], index: int) -> Finding:
    before = context.source.slice(figures[index - 1].span).strip()
    return _finding(context, figures, index, _less(before, context.pattern.sizes[index - 1]), None)


def _finding(context: Context, figures: Sequence[Figure], index: int, what: str, expected: str | None) -> Finding:
    figure = figures[index]
    whole = Span(figures[0].span.start, figures[-1].span.end)
    size = context.pattern.sizes[index]
    return context.finding_at(
        "size-step-broken",
        figure.span,
        sizes=(size,),
        expected=expected,
        found=context.source.slice(figure.span),
        related=(Related(whole, "the sizes beside it"),),
        size=size,
        what=what,
    )
