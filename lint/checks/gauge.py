"""The gauge against the finished size: stitches of a piece divided by the gauge, and rows by the row gauge.

Everything that is not clear is passed over, and what is found is a question: fabric gives, and a designer may count on
that.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lint.checks import extent
from lint.checks.context import Context
from lint.checks.extent import Extent
from lint.checks.lines import FIRST
from lint.expression import expression
from lint.finding import Finding, Related
from lint.ledger import LedgerRow
from lint.reading.facts.gauge import Gauge
from lint.reading.facts.measures import Figure, Length, in_unit, read_lengths, read_pairs, size_of
from lint.source import Span

_AROUND = expression(r"(?i)\baround\b|\bcircumference\b|\bround\b")
_CHEST = expression(r"(?i)\b(?:chest|bust)\b")
_WIDE = expression(r"(?i)\bwid(?:e|th)\b")
_LONG = expression(r"(?i)\b(?:long|length|tall|high|height|deep|depth)\b")
_OF_BODY = expression(r"(?i)\bto fit\b|\bfits?\b|\bbody\s+(?:chest|bust)\b")
_PLACE = expression(
    r"(?i)\b(?:neck|wrist|thumb|ankle|calf|top|bottom|hem|brim|cuff|base|opening|waist|hips?|upper arm|edging|border|unstretched|stretched)\b"
)
_LENGTH_ALONE = expression(
    r"(?i)\W*(?:finished\s+|total\s+|overall\s+|back\s+|body\s+)*length(?:\s+(?:from\s+)?(?:the\s+)?(?:back\s+|top\s+of\s+|high\s+)*(?:shoulders?|hem)(?:\s+to\s+(?:the\s+)?(?:bottom\s+|lower\s+)?(?:hem|edge|shoulders?))?)?\W*"
)
_FIGURES = expression(r"[\d½¼¾⅓⅔.,()\[\]{}/:;–-]+|\b(?:cm|ins?|inch(?:es)?|mm)\b")
_UPPER_ARM = expression(r"(?i)\b(?:upper\s+arm|bicep\w*|sleeve\s+(?:top|width\s+at\s+top))\b")
_CUFF = expression(r"(?i)\b(?:at|of|around)\s+(?:the\s+)?(?:cuff|wrist)\b|\b(?:cuff|wrist)\s+(?:width|circumference)\b")
_CLOSE, _ODD = 1.5, 1.9  # cm: how near the other sizes come to each other, and how far off one of them then stands out
_PART_OF_LENGTH = expression(
    r"(?i)\b(?:armhole|underarm|raglan|yoke|neck|inseam|inside|shoulder|cap|rib\w*|brim|cuff|hem|fringe|tassels?|drop|to the|from)\b"
)


@dataclass(frozen=True, slots=True)
class _Told:
    """A measure that the finished size tells, with the words about it."""

    length: Length
    words: str


@dataclass(frozen=True, slots=True)
class _Off:
    """A size in which a measure is not what the gauge makes of the counts; both in cm, and where it is printed."""

    size: int
    printed: float
    reckoned: float
    count: int
    figure: Figure


def check_gauge(context: Context) -> Iterator[Finding]:
    """gauge-disagrees: 60 stitches at 3 to the inch are no 16 inches around, 80 rows at 5 no 20 inches long."""
    text, sizes = context.source.text, max(1, len(context.pattern.sizes))
    lengths = read_lengths(text, sizes)
    pairs = read_pairs(text, lengths)
    gauges = context.gauges
    if not gauges:
        return
    converted = {pair.second.span for pair in pairs}
    told = list(_finished(context, lengths, converted, {p.first.span: p.second.span.end for p in pairs}))
    blamed: set[bool] = set()  # the stitch gauge, the row gauge: what is out in every size is asked about once
    looked_at: set[tuple[Span, bool]] = set()
    for wanted, worked in _claims(context, told, gauges):
        if len(wanted) != 1 or worked is None or (wanted[0].length.span, worked.of_rows) in looked_at:
            continue
        looked_at.add((wanted[0].length.span, worked.of_rows))
        finding = _compared(context, gauges, wanted[0], worked)
        if finding is None or not finding.sizes and worked.of_rows in blamed:
            continue
        if not finding.sizes:
            blamed.add(worked.of_rows)
        yield finding


def _claims(
    context: Context, told: list[_Told], gauges: Sequence[Gauge]
) -> Iterator[tuple[list[_Told], Extent | None]]:
    """Measures of one kind, and what is worked to them; a comparison needs one of the one and one of the other."""
    finished = [one for one in told if not _OF_BODY.search(one.words)]
    yield [one for one in told if _AROUND.search(one.words) and not _PLACE.search(one.words)], extent.around(context)
    yield [one for one in finished if _CHEST.search(one.words)], extent.chest(context)
    flat = [one for one in told if _WIDE.search(one.words) or len(told) == 1 and len(one.length.sides) == 2]
    width, length = extent.flat_width(context), extent.length(context)
    yield flat, width
    whole = [one for one in told if not _PART_OF_LENGTH.search(one.words)]
    yield [one for one in whole if _LONG.search(one.words) and len(one.length.sides) == 1], length
    alone = [one for one in told if _LENGTH_ALONE.fullmatch(one.words) and len(one.length.sides) == 1]
    yield alone, extent.back_length(context)
    two_sided = [one for one in told if len(one.length.sides) == 2]
    if len(two_sided) == len(told) == 1 and width is not None and length is not None:
        other = _side_left(context, gauges, two_sided[0], width)
        yield ([other] if other is not None else []), length
    for one in finished:
        if len(one.length.sides) != 1 or _AROUND.search(one.words):
            continue
        if _UPPER_ARM.search(one.words):
            yield [one], extent.sleeve_top(context)
        elif _CUFF.search(one.words):
            yield [one], extent.sleeve_cuff(context)
        if _WIDE.search(one.words):
            yield [one], extent.named(context, one.words, of_rows=False)
        elif _LONG.search(one.words) and not _PART_OF_LENGTH.search(one.words):
            yield [one], extent.named(context, one.words, of_rows=True)


def _side_left(context: Context, gauges: Sequence[Gauge], told: _Told, width: Extent) -> _Told | None:
    """The side of "8 x 60 in" that is not the width, where one side alone can be the width."""
    one, other = told.length.sides
    if len(one) != 1 or len(other) != 1 or one[0].value is None or other[0].value is None:
        return None
    tolerance = context.book.materials.tolerances.gauge
    widths = [width.counts[0][0] / gauge.per_cm for gauge in _gauges_of(context, gauges, width.row)]
    fits = [
        any(tolerance.allows(told.length.in_cm(side[0].value or 0), wide) for wide in widths) for side in (one, other)
    ]
    if fits.count(True) != 1:
        return None
    left = other if fits[0] else one
    return _Told(Length(told.length.span, told.length.unit, (left,)), told.words)


# what is told --------------------------------------------------------------------------------------------------


def _finished(
    context: Context, lengths: tuple[Length, ...], converted: set[Span], ends: dict[Span, int]
) -> Iterator[_Told]:
    """Every measure of the finished size (each once), with the words of its own clause."""
    text = context.source.text
    for section in context.pattern.sections:
        if section.key != "size":
            continue
        start = section.heading.start  # "Finished bust: …" says in its heading what is measured
        for length in lengths:
            if not section.span.start <= length.span.start < section.span.end or length.span in converted:
                continue
            end = ends.get(length.span, length.span.end)
            stop = expression(r"[,;.\n]|$").search(text, end, section.span.end)
            first = max(start, max(text.rfind(sign, 0, length.span.start) + 1 for sign in "\n;,"))
            between = _FIGURES.sub(" ", text[length.span.end : end])  # "in wide / 51 (52, 54) cm" tells what it is of
            words = f"{text[first : length.span.start]} {between} {text[end : stop.start() if stop else end]}"
            start = end
            yield _Told(length, words)


# one against the other -----------------------------------------------------------------------------------------


def _compared(context: Context, gauges: Sequence[Gauge], told: _Told, worked: Extent) -> Finding | None:
    fitting = _gauges_of(context, gauges, worked.row)
    if worked.of_rows:
        fitting = [gauge for gauge in fitting if gauge.rows_per_cm]
    sides = [side for side in told.length.sides if len(side) in (1, len(worked.counts))]
    if not fitting or len(sides) != len(told.length.sides):
        return None
    sizes = range(0 if worked.draws_in else len(worked.counts))
    out = [off for size in sizes if (off := _off(context, fitting, told, sides, worked, size))]
    if not out and len(sides) == 1 and (odd := _odd_one(fitting, told, sides[0], worked)) is not None:
        return _finding(context, fitting[0], told, worked, [odd], "; the other sizes come out")
    return _finding(context, fitting[0], told, worked, out) if out else None


def _odd_one(gauges: list[Gauge], told: _Told, side: tuple[Figure, ...], worked: Extent) -> _Off | None:
    """The one size whose measure leaves its count, where those of all the others keep close to theirs.

    Fabric gives in all sizes alike: so much the more does one figure stand out.
    """
    if len(side) < FIRST or len(side) != len(worked.counts) or any(figure.value is None for figure in side):
        return None
    every = [
        one for size, figure in enumerate(side) if (one := _nearest(gauges, told, figure, worked, size)) is not None
    ]
    if len(every) != len(side):
        return None  # a size without a count, or a gauge of stitches alone
    apart = [one.printed - one.reckoned for one in every]
    for size, one in enumerate(every):
        others = [gap for at, gap in enumerate(apart) if at != size]
        spread, middle = max(others) - min(others), sum(others) / len(others)
        if spread <= _CLOSE and abs(apart[size] - middle) >= max(_ODD, 2 * spread):
            return one
    return None


def _nearest(gauges: list[Gauge], told: _Told, figure: Figure, worked: Extent, size: int) -> _Off | None:
    """A figure with the count that comes nearest to it, if there is one."""
    value = told.length.in_cm(figure.value or 0)
    per_cm = [per for gauge in gauges if (per := gauge.rows_per_cm if worked.of_rows else gauge.per_cm)]
    reckoned = [(worked.pieces * count / per, count) for per in per_cm for count in worked.counts[size]]
    nearest, count = min(reckoned, key=lambda one: abs(one[0] - value), default=(0.0, 0))
    return _Off(size, value, nearest, count, figure) if reckoned else None


def _off(
    context: Context,
    gauges: Sequence[Gauge],
    told: _Told,
    sides: list[tuple[Figure, ...]],
    worked: Extent,
    size: int,
) -> _Off | None:
    """The measure of one size, where none of the counts comes to it by any gauge that can be meant."""
    tolerance = context.book.materials.tolerances.gauge
    figures = [side[min(size, len(side) - 1)] for side in sides]
    known = [(told.length.in_cm(figure.value), figure) for figure in figures if figure.value]
    reckoned = [
        (worked.pieces * count / per_cm, count)
        for gauge in gauges
        for count in worked.counts[size]
        if (per_cm := gauge.rows_per_cm if worked.of_rows else gauge.per_cm)
    ]
    if not known or not reckoned or any(tolerance.allows(value, one) for value, _ in known for one, _ in reckoned):
        return None
    value, figure = min(known, key=lambda one: abs(one[0] - reckoned[0][0]))
    nearest, count = min(reckoned, key=lambda one: abs(one[0] - value))
    return _Off(size, value, nearest, count, figure)


def _finding(context: Context, gauge: Gauge, told: _Told, worked: Extent, out: list[_Off], more: str = "") -> Finding:
    first = out[0]
    everywhere = len(out) == len(worked.counts)
    span, other = (gauge.span, told.length.span) if everywhere else (first.figure.span, gauge.span)
    names = context.pattern.sizes
    concerned = (
        () if everywhere else tuple(name for one in out for name in size_of(one.size, len(worked.counts), names))
    )
    unit = told.length.unit
    pieces = "" if worked.pieces == 1 else "two pieces of "
    return context.finding(
        "gauge-disagrees",
        span,
        sizes=concerned,
        expected=in_unit(unit, first.reckoned),
        found=in_unit(unit, first.printed),
        related=(
            Related(other, "the finished size" if everywhere else "the gauge"),
            Related(worked.row.span, f"{first.count} rows in all" if worked.of_rows else f"{first.count} sts"),
        ),
        count=f"{pieces}{first.count} {'rows' if worked.of_rows else 'sts'}",
        gauge=_per(gauge, worked.of_rows),
        across=worked.across,
        where=(f" (size {names[first.size]})" if len(names) > 1 else "") + more,
    )


def _per(gauge: Gauge, of_rows: bool) -> str:
    """The gauge as it is said: "16 sts to 4 in"."""
    length = (gauge.height or gauge.width) if of_rows else gauge.width
    figure = (length.sides[-1] if of_rows else length.sides[0])[0]
    number = f"{gauge.rows:g} rows" if of_rows else f"{gauge.stitches:g} sts"
    return f"{number} to {in_unit(length.unit, length.in_cm(figure.value or 0))}"


def _gauges_of(context: Context, gauges: Sequence[Gauge], row: LedgerRow) -> list[Gauge]:
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
