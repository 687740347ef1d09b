"""The sleeve against the armhole that it is sewn into."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.checks.extent import pieces_of, rows_of
from lint.expression import expression
from lint.finding import Finding, Related
from lint.reading.facts.gauge import Gauge
from lint.reading.facts.measures import Length, in_unit, label_of, read_lengths, read_pairs
from lint.source import Span

_MARKED = expression(
    r"(?i)\b(?:mark\w*|place\w*|measure\w*)\b[^.;\n]{0,40}$"
)  # before the measure; behind it, the place that it is measured from
_FROM_SHOULDER = expression(r"(?i)^[^.;\n]{0,24}\b(?:down|below|from|either side|each side)\b[^.;\n]{0,40}\bshoulder")
_DEPTH = expression(r"(?i)\barmhole\b(?!\s+(?:to|edge))")
_UPPER_ARM = expression(r"(?i)\b(?:upper arm|sleeve width|sleeve (?:at )?top|bicep\w*)\b")


def check_armholes(context: Context) -> Iterator[Finding]:
    """armhole-sleeve-differs: markers 7 in down from the shoulder, and a sleeve that is 12 in wide at its top."""
    sizes = max(1, len(context.pattern.sizes))
    text = context.source.text
    lengths = read_lengths(text, sizes)
    converted = {pair.second.span for pair in read_pairs(text, lengths)}
    own = [
        one for one in lengths if one.span not in converted and len(one.sides) == 1 and len(one.sides[0]) in (1, sizes)
    ]
    marked = [one for one in own if _from_shoulder(text, one.span)]
    if len(marked) == 1:
        yield from _against_sleeve(context, marked[0], sizes)
        return
    said = [(one, label_of(text, one.span)) for one in own] if _DEPTH.search(text) and _UPPER_ARM.search(text) else []
    depth = [one for one, label in said if _DEPTH.search(label)]
    arms = [one for one, label in said if _UPPER_ARM.search(label)]
    if len(depth) == len(arms) == 1:
        yield from _against_measure(context, depth[0], arms[0], sizes)
    elif not depth:
        yield from _by_rows(context, sizes)


def _from_shoulder(text: str, span: Span) -> bool:
    before = text[max(text.rfind("\n", 0, span.start) + 1, span.start - 400) : span.start]
    return _MARKED.search(before) is not None and _FROM_SHOULDER.search(text[span.end : span.end + 90]) is not None


def _at(length: Length, size: int) -> float | None:
    figures = length.sides[0]
    value = figures[min(size, len(figures) - 1)].value
    return None if value is None else length.in_cm(value)


def _against_sleeve(context: Context, marked: Length, sizes: int) -> Iterator[Finding]:
    """Twice the depth that is marked against the stitches of the sleeve, none of whose rows is as wide."""
    sleeves = [piece for piece in pieces_of(context) if "sleeve" in piece.words]
    gauges = context.gauges
    if len(sleeves) != 1 or len(gauges) != 1:
        return
    tolerance = context.book.materials.tolerances.gauge
    out: list[tuple[int, int, float]] = []
    for size in range(sizes):
        rows, depth = rows_of(context, sleeves[0], size), _at(marked, size)
        counts = [row.cells[min(size, len(row.cells) - 1)].made.stitches for row in rows or ()]
        if not counts or depth is None or any(row.kind == "round" for row in rows or ()):
            return
        nearest = min(counts, key=lambda count: abs(count / gauges[0].per_cm - 2 * (depth or 0)))
        if not tolerance.allows(nearest / gauges[0].per_cm, 2 * depth):
            out.append((size, nearest, depth))
    if out:
        yield _sleeve(context, marked, gauges[0], out, sizes, sleeves[0].parts[0].span)


def _sleeve(
    context: Context, marked: Length, gauge: Gauge, out: list[tuple[int, int, float]], sizes: int, sleeve: Span
) -> Finding:
    size, count, depth = out[0]
    width = count / gauge.per_cm
    return _finding(
        context, marked, size, [one[0] for one in out], sizes, sleeve,
        depth=depth, sleeve=f"a sleeve of {count} sts is {in_unit(marked.unit, width)} wide",
    )  # fmt: skip


def _against_measure(context: Context, depth: Length, arm: Length, sizes: int) -> Iterator[Finding]:
    """Twice the depth against the upper arm: where most sizes keep to it, the one that does not is asked about."""
    tolerance = context.book.materials.tolerances.gauge
    known = [(size, a, b) for size in range(sizes) if (a := _at(depth, size)) and (b := _at(arm, size))]
    out = [(size, a, b) for size, a, b in known if not tolerance.allows(2 * a, b)]
    if out and 2 * len(out) < len(known):
        size, deep, wide = out[0]
        yield _finding(
            context, depth, size, [one[0] for one in out], sizes, arm.span,
            depth=deep, sleeve=f"the sleeve is {in_unit(arm.unit, wide)} wide",
        )  # fmt: skip


def _by_rows(context: Context, sizes: int) -> Iterator[Finding]:
    """The rows from the armholes up against the widest row of the sleeve: where most sizes keep to it, the one that does not."""
    pieces, gauges = pieces_of(context), context.gauges
    backs = [piece for piece in pieces if "back" in piece.words]
    sleeves = [piece for piece in pieces if "sleeve" in piece.words]
    if sizes < 3 or len(gauges) != 1 or not gauges[0].rows_per_cm or len(backs) != 1 or len(sleeves) != 1:
        return
    names = [part.name.lower() for part in backs[0].parts]
    first = next((at for at, name in enumerate(names) if "armhole" in name), None)
    if first is None:
        return
    out, unit = [], gauges[0].width.unit
    for size in range(sizes):
        above = [row for row in rows_of(context, backs[0], size) or () if row.part in backs[0].parts[first:]]
        wide = max((row.cells[size].made.stitches for row in rows_of(context, sleeves[0], size) or ()), default=0)
        if not above or not wide or any(row.kind == "round" for row in above):
            return
        depth, width = len(above) / gauges[0].rows_per_cm, wide / gauges[0].per_cm
        if not context.book.materials.tolerances.gauge.allows(width, 2 * depth):
            out.append((size, above, depth, wide, width))
    if not out or 2 * len(out) >= sizes:
        return
    size, above, depth, wide, width = out[0]
    yield context.finding_at(
        "armhole-sleeve-differs",
        above[-1].span,
        sizes=tuple(context.pattern.sizes[one[0]] for one in out),
        size=f" in size {context.pattern.sizes[size]}",
        found=f"{len(above)} rows",
        both=in_unit(unit, 2 * depth),
        sleeve=f"a sleeve of {wide} sts is {in_unit(unit, width)} wide, and in the other sizes the two are alike",
        related=(Related(sleeves[0].parts[0].span, "the sleeve"),),
    )


def _finding(
    context: Context, marked: Length, size: int, out: list[int], sizes: int, other: Span, depth: float, sleeve: str
) -> Finding:
    names = context.pattern.sizes
    figures = marked.sides[0]
    figure = figures[min(size, len(figures) - 1)]
    return context.finding_at(
        "armhole-sleeve-differs",
        figure.span,
        sizes=tuple(names[one] for one in out) if len(out) < sizes else (),
        size=f" in size {names[size]}" if sizes > 1 else "",
        found=in_unit(marked.unit, depth),
        both=in_unit(marked.unit, 2 * depth),
        sleeve=sleeve,
        related=(Related(other, "the sleeve"),),
    )
