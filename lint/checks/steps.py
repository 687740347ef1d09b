"""One size off the line of its neighbours, in finished measures and in numbers of stitches that nothing else checks.

Sizes are rounded unevenly, and steps change between small and large sizes: only a single figure that breaks an
otherwise straight line by a whole step, or the order of the sizes, is asked about.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.checks.context import Context
from lint.checks.measures import mismatches
from lint.finding import Finding, Related
from lint.ledger import Outcome
from lint.reading.measures import CM_IN_AN_INCH, Figure, inches, read_lengths, read_lists, read_pairs
from lint.source import Span

_STITCHES = r"(?:sts?|stitches|sc|hdc|htr|dc|tr|dtr|chs?|chains?)(?![\w-])"
_MANY = 6  # sizes from which on a line that is straight in all the others is taken to be meant straight
_STRAIGHT = 1e-6
_LEAST_OFF = 0.4  # of what is a break elsewhere: there a smaller one shows
_FIRST, _ENDS = 4, 5  # sizes from which on a figure inside, and at either end of, a list is looked at


@dataclass(frozen=True, slots=True)
class Stray:
    """The figure of a list that is off the line of the others: which one, and what the line has in its place."""

    index: int
    line: float


def stray(values: tuple[float | None, ...], rounding: float, least: float) -> Stray | None:
    """The one figure that breaks the line of all the others, if there is one.

    `rounding`: how far a figure may lie off a straight line by rounding; `least`: less than this is never a break.
    """
    if len(values) < _FIRST or any(value is None for value in values):
        return None
    known = [float(value) for value in values if value is not None]
    found = [one for index in range(len(known)) if (one := _without(known, index, rounding, least)) is not None]
    return found[0] if len(found) == 1 else None


def _without(values: list[float], index: int, rounding: float, least: float) -> Stray | None:
    others = [(i, value) for i, value in enumerate(values) if i != index]
    (first, low), (last, high) = others[0], others[-1]
    step = (high - low) / (last - first)
    if step <= 0 or any(abs(low + step * (i - first) - value) > rounding for i, value in others):
        return None
    line = low + step * (index - first)
    off = values[index] - line
    inside = 0 < index < len(values) - 1
    if inside:
        straight = all(abs(low + step * (i - first) - value) < _STRAIGHT for i, value in others)
        part = 1.0 if len(values) == _FIRST else 0.2 if straight and len(values) >= _MANY else 0.5
        least = least if part > 0.2 else _LEAST_OFF * least
        broken = abs(off) >= max(part * step, least) - 1e-9
    else:  # steps often change at the ends: there, only what stands out of the order of the sizes
        beyond = off > 0 if index == 0 else off < 0
        broken = len(values) >= _ENDS and beyond and abs(off) >= max(step, least) - 1e-9
    return Stray(index, line) if broken else None


def check_steps(context: Context) -> Iterator[Finding]:
    """size-step-broken: "32 (36, 40, 54, 48) in"."""
    if len(context.pattern.sizes) < _FIRST:
        return
    yield from _measures(context)
    yield from _stitches(context)


def _measures(context: Context) -> Iterator[Finding]:
    text, sizes = context.source.text, context.pattern.sizes
    lengths = read_lengths(text, len(sizes))
    pairs = read_pairs(text, lengths)
    tolerance = context.book.materials.tolerances.measurement
    passed = {p.first.span for p in pairs if mismatches(p, tolerance)}  # said already
    passed |= {p.second.span for p in pairs}  # the same measure once more
    for length in lengths:
        if length.span in passed:
            continue
        factor = 1.0 if length.unit == "in" else CM_IN_AN_INCH
        for side in length.sides:
            found = stray(tuple(figure.value for figure in side), 0.3 * factor, 1.25 * factor)
            if found is not None and len(side) == len(sizes):
                line = f"{inches(found.line)} in" if length.unit == "in" else f"{round(found.line * 2) / 2:g} cm"
                yield _finding(context, side, found, line)


def _stitches(context: Context) -> Iterator[Finding]:
    """Numbers of stitches outside the rows that were recomputed: seams, and what is said of rows in sentences."""
    rows = context.ledger.rows
    counted = {row.row.span for row in rows if any(cell.outcome is Outcome.AGREES for cell in row.cells)}
    steps = {row.row.span for row in rows} - counted
    labelled = {row.span for part in context.pattern.parts for row in part.rows if row.label is not None}
    for span, sides in read_lists(context.source.text, _STITCHES, len(context.pattern.sizes)):
        inside = [one for one in counted | steps | labelled if one.start <= span.start < one.end]
        if inside or len(sides) != 1 or len(sides[0]) != len(context.pattern.sizes):
            continue
        found = stray(tuple(figure.value for figure in sides[0]), 0.0, 2.0)
        # counts are whole: a stitch or two off a wide step is how repeats fall
        if found is not None and abs((sides[0][found.index].value or 0) - found.line) >= _step(sides[0], found):
            yield _finding(context, sides[0], found, f"{found.line:g}")


def _step(figures: tuple[Figure, ...], found: Stray) -> float:
    known = [figure.value or 0.0 for index, figure in enumerate(figures) if index != found.index]
    return (known[-1] - known[0]) / (len(figures) - 1 - (found.index in (0, len(figures) - 1)))


def _finding(context: Context, figures: tuple[Figure, ...], found: Stray, line: str) -> Finding:
    figure = figures[found.index]
    whole = Span(figures[0].span.start, figures[-1].span.end)
    size = context.pattern.sizes[found.index]
    return context.finding_at(
        "size-step-broken",
        figure.span,
        sizes=(size,),
        expected=line,
        found=context.source.slice(figure.span),
        related=(Related(whole, "the sizes beside it"),),
        size=size,
    )
