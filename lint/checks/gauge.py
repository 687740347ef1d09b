"""The gauge against the finished size: stitches of a piece whose width is told, divided by the gauge.

Only where it is clear which rows a measure speaks of: a thing worked around in one count, two alike pieces whose chest
is told, or one flat piece of one width.  Everything else is passed over, and what is found is a question: fabric gives,
and a designer may count on that.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

import regex

from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.ledger import LedgerRow
from lint.reading.gauge import Gauge, read_gauges
from lint.reading.measures import CM_IN_AN_INCH, Length, inches, read_lengths, read_pairs, size_of
from lint.source import Span

_AROUND = regex.compile(r"(?i)\baround\b|\bcircumference\b|\bround\b")
_CHEST = regex.compile(r"(?i)\b(?:chest|bust)\b")
_WIDE = regex.compile(r"(?i)\bwid(?:e|th)\b")
_OF_BODY = regex.compile(r"(?i)\bto fit\b|\bfits?\b|\bbody\s+(?:chest|bust)\b")
_PLACE = regex.compile(
    r"(?i)\b(?:neck|wrist|thumb|ankle|calf|top|bottom|hem|brim|cuff|base|opening|waist|hips?|upper arm|edging|border|unstretched|stretched)\b"
)
_MOST_OFTEN = 4  # rows of one count before that count is the piece's own


@dataclass(frozen=True, slots=True)
class _Told:
    """A measure that the finished size tells, with the words about it."""

    length: Length
    words: str


@dataclass(frozen=True, slots=True)
class _Worked:
    """The stitches that make up a width, one figure a size, and a row that shows them."""

    counts: tuple[int, ...]
    row: LedgerRow
    pieces: int = 1
    across: str = "around"


def check_gauge(context: Context) -> Iterator[Finding]:
    """gauge-disagrees: 60 stitches at 3 to the inch are no 16 inches around."""
    text, sizes = context.source.text, max(1, len(context.pattern.sizes))
    lengths = read_lengths(text, sizes)
    pairs = read_pairs(text, lengths)
    words = tuple(form for rule in context.book.stitches.stitches for form in (*rule.us, *rule.uk) if form)
    zones = [section.span for section in context.pattern.sections if section.key == "gauge"]
    gauges = [one for zone in zones for one in read_gauges(text, zone, lengths, pairs, words)]
    if not gauges:
        return
    told = list(
        _finished(
            context, lengths, {pair.second.span for pair in pairs}, {p.first.span: p.second.span.end for p in pairs}
        )
    )
    for wanted, worked in (
        ([one for one in told if _AROUND.search(one.words) and not _PLACE.search(one.words)], _around(context)),
        ([one for one in told if _CHEST.search(one.words) and not _OF_BODY.search(one.words)], _two_pieces(context)),
        (
            [one for one in told if _WIDE.search(one.words) or len(told) == 1 and len(one.length.sides) == 2],
            _flat(context),
        ),
    ):
        if len(wanted) == 1 and worked is not None:
            finding = _compared(context, gauges, wanted[0], worked)
            if finding is not None:
                yield finding
                return


# what is told --------------------------------------------------------------------------------------------------


def _finished(
    context: Context, lengths: tuple[Length, ...], converted: set[Span], ends: dict[Span, int]
) -> Iterator[_Told]:
    """Every measure of the finished size (each once), with the words of its own clause."""
    text = context.source.text
    for section in context.pattern.sections:
        if section.key != "size":
            continue
        start = section.span.start
        for length in lengths:
            if not section.span.start <= length.span.start < section.span.end or length.span in converted:
                continue
            end = ends.get(length.span, length.span.end)
            stop = regex.compile(r"[,;.\n]|$").search(text, end, section.span.end)
            first = max(start, max(text.rfind(sign, 0, length.span.start) + 1 for sign in "\n;,"))
            between = text[length.span.end : end]
            words = f"{text[first : length.span.start]} {between} {text[end : stop.start() if stop else end]}"
            start = end
            yield _Told(length, words)


# what is worked ------------------------------------------------------------------------------------------------


def _own_count(rows: list[LedgerRow], size: int) -> int | None:
    """The count that most rows have and none goes beyond, in one size; None where there is none, or rows have spaces."""
    made = [row.cells[min(size, len(row.cells) - 1)].made for row in rows]
    counts = Counter(one.stitches for one in made if one is not None and not one.spaces)
    most = max((one.stitches + sum(one.spaces.values()) for one in made if one is not None), default=0)
    if not counts:
        return None
    count, times = counts.most_common(1)[0]
    return count if times >= _MOST_OFTEN and count == most else None


def _worked(rows: list[LedgerRow], sizes: int, pieces: int = 1, across: str = "around") -> _Worked | None:
    counts = tuple(_own_count(rows, size) for size in range(sizes))
    if not rows or any(count is None for count in counts):
        return None
    made = [row for row in rows if row.first.made is not None and row.first.made.stitches == counts[0]]
    return _Worked(tuple(count for count in counts if count), made[0], pieces, across) if made else None


def _around(context: Context) -> _Worked | None:
    """A hat, a cowl, a mitt: rounds of one count, and none wider."""
    rounds = [row for row in context.ledger.rows if row.kind == "round"]
    return _worked(rounds, max(1, len(context.pattern.sizes)))


def _two_pieces(context: Context) -> _Worked | None:
    """Back and front of one width, or one panel made twice."""
    sizes = max(1, len(context.pattern.sizes))
    named = {word: [row for row in context.ledger.rows if row.part.name.strip().lower() == word and row.kind == "row"]
             for word in ("back", "front")}  # fmt: skip
    flat = {id(row.part): row.part for row in context.ledger.rows if row.kind == "row"}
    if named["back"]:
        back = _worked(named["back"], sizes, 2)
        if back is None or not named["front"]:
            return None
        front = _worked(named["front"], sizes, 2)
        return back if front is not None and front.counts == back.counts else None
    if len(flat) == 1:
        (part,) = flat.values()
        return _worked([row for row in context.ledger.rows if row.part is part], sizes, 2) if part.make == 2 else None
    return None


def _flat(context: Context) -> _Worked | None:
    """One flat piece, all of whose rows have one count."""
    rows = [row for row in context.ledger.rows if row.kind != "foundation"]
    if len({id(row.part) for row in rows}) != 1 or any(row.kind != "row" for row in rows):
        return None
    worked = _worked(rows, max(1, len(context.pattern.sizes)), across="wide")
    if worked is None or rows[0].part.make != 1 or len(worked.counts) < len(rows[0].cells):
        return None
    for row in rows:
        for size, cell in enumerate(row.cells):
            if cell.made is not None and (cell.made.stitches != worked.counts[size] or cell.made.spaces):
                return None
    return worked


# one against the other -----------------------------------------------------------------------------------------


def _compared(context: Context, gauges: list[Gauge], told: _Told, worked: _Worked) -> Finding | None:
    fitting = _gauges_of(context, gauges, worked.row)
    sides = [side for side in told.length.sides if len(side) in (1, len(worked.counts))]
    if not fitting or len(sides) != len(told.length.sides):
        return None
    tolerance = context.book.materials.tolerances.gauge
    out: list[tuple[int, float, float, int]] = []  # size, printed, computed (both in cm), index of the side's figure
    for size, count in enumerate(worked.counts):
        printed = [(side[min(size, len(side) - 1)].value, min(size, len(side) - 1)) for side in sides]
        known = [(told.length.in_cm(value), index) for value, index in printed if value]
        widths = [worked.pieces * count / gauge.per_cm for gauge in fitting]
        if not known or any(tolerance.allows(value, width) for value, _ in known for width in widths):
            continue
        value, index = min(known, key=lambda one: abs(one[0] - widths[0]))
        out.append((size, value, widths[0], index))
    if not out:
        return None
    size, value, width, index = out[0]
    figures = sides[0]
    all_out = len(out) == len(worked.counts)
    gauge, figure = fitting[0], figures[min(index, len(figures) - 1)]
    span, other = (gauge.span, told.length.span) if all_out else (figure.span, gauge.span)
    names = context.pattern.sizes
    concerned = () if all_out else tuple(name for one in out for name in size_of(one[0], len(worked.counts), names))
    unit = told.length.unit
    pieces = "" if worked.pieces == 1 else "two pieces of "
    return context.finding(
        "gauge-disagrees",
        span,
        sizes=concerned,
        expected=_in(unit, width),
        found=_in(unit, value),
        related=(
            Related(other, "the finished size" if all_out else "the gauge"),
            Related(worked.row.span, f"{worked.counts[size]} sts"),
        ),
        count=f"{pieces}{worked.counts[size]}",
        gauge=f"{gauge.stitches:g} sts to {_in(gauge.width.unit, gauge.width.in_cm(gauge.width.sides[0][0].value or 0))}",
        across=worked.across,
        where=f" (size {names[size]})" if len(names) > 1 else "",
    )


def _gauges_of(context: Context, gauges: list[Gauge], row: LedgerRow) -> list[Gauge]:
    """The gauges that can be those of a row: of its own stitch, else of stitches in general; of another stitch never."""
    made = row.first.made
    kind = max(made.by_kind, key=lambda one: made.by_kind[one]) if made is not None and made.by_kind else ""
    own = [gauge for gauge in gauges if gauge.stitch is not None and _key(context, gauge.stitch) == kind]
    return own or [gauge for gauge in gauges if gauge.stitch is None]


def _key(context: Context, word: str) -> str | None:
    """A stitch's key by a printed form, in the pattern's own terms."""
    for rule in context.book.stitches.stitches:
        forms = rule.uk if context.terms.terms == "uk" else rule.us
        if word in (form.lower() for form in forms):
            return rule.key
    return None


def _in(unit: str, cm: float) -> str:
    return f"{inches(cm / CM_IN_AN_INCH)} in" if unit == "in" else f"{round(cm * 2) / 2:g} cm"
