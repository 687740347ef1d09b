"""What the pattern states that testers report on beside counts: gauge, hook, yarn and finished measures, by size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.expression import expression
from lint.inspection import Report
from lint.reading.facts.amounts import Quantity, read_quantities
from lint.reading.facts.measures import Figure, read_lengths, read_pairs
from lint.source import Span
from lint.testers.phrases import read_gauge, read_hook

_WORTH = {"balls": ("ball", 1.0), "g": ("g", 1.0), "oz": ("g", 28.349523125), "m": ("m", 1.0), "yd": ("m", 0.9144)}
_BAND = expression(r"\s*(?:/|=|per|to|a)\s*$")  # "230 m per 100 g", "50 g / 120 m": what a ball holds
_BALLS_BEHIND = expression(r"(?i)\b(?:balls?|skeins?|hanks?)\s*[:=]\s*(\d+(?:\s*[(\[][\d\s,:;/-]+[)\]])?)")
_IN_ALL = expression(r"(?i)\b(?:total|in all|altogether)\b")
_NO_YARN = expression(
    r"(?i)\b(?:hooks?|needles?|buttons?|eyes?|ribbon|elastic|stuffing|fibrefill|fiberfill|zip(?:per)?s?)\b"
)


@dataclass(frozen=True, slots=True)
class StatedGauge:
    """A gauge as printed: stitches and rows over so many cm."""

    stitches: float | None
    rows: float | None
    over_cm: float


@dataclass(frozen=True, slots=True)
class StatedMeasure:
    """A finished measure as printed: the words about it, and its cm in each size."""

    what: str
    cm: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class Figures:
    """All of it; `yarn` by unit (ball, g, m), the amounts in each size."""

    gauge: StatedGauge | None
    hook_mm: float | None
    yarn: dict[str, tuple[float | None, ...]]
    measures: tuple[StatedMeasure, ...]


def figures_of(report: Report) -> Figures:
    """What one pattern states."""
    text, sizes = report.source.text, max(1, len(report.pattern.sizes))
    zones = {key: [s.span for s in report.pattern.sections if s.key == key] for key in ("gauge", "materials", "size")}
    gauge, hook = None, None
    for span in zones["gauge"]:
        words = " ".join(text[span.start : span.end].split())
        found = read_gauge(f"gauge {words}")
        gauge = gauge or (StatedGauge(*found) if found else None)
        hook = hook or read_hook(words, [])
    lines = [line for span in zones["materials"] for line in text[span.start : span.end].splitlines()]
    hook = hook or next((mm for line in lines if "hook" in line.lower() and (mm := read_hook(line, []))), None)
    return Figures(gauge, hook, _yarn(text, zones["materials"], sizes), tuple(_measures(report, sizes)))


# yarn -----------------------------------------------------------------------------------------------------------


def _yarn(text: str, zones: list[Span], sizes: int) -> dict[str, tuple[float | None, ...]]:
    """The yarn of all lines that give any; a unit that one of them does not give is left out."""
    pieces = [piece for zone in zones for piece in _pieces(text, zone)]
    told = [amounts for piece in pieces for amounts in _amounts(text, piece, sizes) if amounts]
    units = set.intersection(*(set(one) for one in told)) if told else set()
    return {unit: tuple(_sum(one[unit][size] for one in told) for size in range(sizes)) for unit in sorted(units)}


def _pieces(text: str, zone: Span) -> Iterator[Span]:
    """Lines, cut at semicolons, and at commas outside brackets where hooks or buttons stand among the yarn."""
    for line in expression(r"[^;\n]+").finditer(text[zone.start : zone.end]):
        start = zone.start + line.start()
        if not _NO_YARN.search(line[0]):
            yield Span(start, start + len(line[0]))
            continue
        for piece in expression(r"(?:[^,(\[]|[(\[][^)\]]*[)\]]|,(?=\d{3}\b))+").finditer(line[0]):
            if not _NO_YARN.search(piece[0]):
                yield Span(start + piece.start(), start + piece.end())


def _amounts(text: str, piece: Span, sizes: int) -> Iterator[dict[str, tuple[float | None, ...]]]:
    """The amounts of one piece: of so many balls with what a ball holds, or of grams and lengths in all."""
    listed = list(read_quantities(text, piece, sizes))
    balls = [one for one in listed if one.unit == "balls"] or list(_balls_behind(text, piece, sizes))
    if not balls:
        band = {one.span for pair in zip(listed, listed[1:], strict=False) if _is_band(text, *pair) for one in pair}
        totals = [one for one in listed if one.span not in band] or listed
        if not expression(r"(?i)/\s?(?:ball|skein)").search(text[piece.start : piece.end]):
            yield _each_unit(totals, sizes)
        return
    for at, number in enumerate(balls):
        first = number.span.start if at else piece.start  # what a ball holds may stand before their number
        last = balls[at + 1].span.start if at + 1 < len(balls) else piece.end
        own = [
            one for one in listed if first <= one.span.start < last and one.unit != "balls" and len(one.figures) == 1
        ]
        if _IN_ALL.search(text[first:last]):
            yield _each_unit([number, *own], sizes)
            continue
        held = {_WORTH[one.unit]: one.figures[0].value for one in reversed(own)}
        counted = tuple(number.at(size) for size in range(sizes))
        yield {"ball": counted} | {
            unit: tuple(n * worth * value if n is not None and value is not None else None for n in counted)
            for (unit, worth), value in held.items()
        }


def _balls_behind(text: str, piece: Span, sizes: int) -> Iterator[Quantity]:
    """ "100 g balls: 3 (3: 4)": the number of balls behind the word."""
    found = _BALLS_BEHIND.search(text, piece.start, piece.end)
    figures = [] if found is None else list(expression(r"\d+").finditer(text, pos=found.start(1), endpos=found.end(1)))
    if len(figures) in (1, sizes):
        values = tuple(Figure(Span(*one.span()), float(one[0])) for one in figures)
        yield Quantity(Span(figures[0].start(), figures[-1].end()), "balls", values)


def _is_band(text: str, one: Quantity, other: Quantity) -> bool:
    """Whether two figures say what a ball holds: a weight and a length, one to the other."""
    kinds = {_WORTH[one.unit][0], _WORTH[other.unit][0]}
    between = expression(r"^\s*\p{L}+\.?").sub("", text[one.span.end : other.span.start])
    return kinds == {"g", "m"} and _BAND.match(between) is not None


def _each_unit(quantities: list[Quantity], sizes: int) -> dict[str, tuple[float | None, ...]]:
    """Amounts in all, by unit; of two in one unit ("120 m / 131 yds") the first."""
    found: dict[str, tuple[float | None, ...]] = {}
    for one in quantities:
        unit, worth = _WORTH[one.unit]
        values = (one.at(size) for size in range(sizes))
        found.setdefault(unit, tuple(value * worth if value is not None else None for value in values))
    return found


def _sum(values: Iterator[float | None]) -> float | None:
    listed = list(values)
    return None if None in listed else sum(listed)


# measures -------------------------------------------------------------------------------------------------------


def _measures(report: Report, sizes: int) -> Iterator[StatedMeasure]:
    text = report.source.text
    lengths = read_lengths(text, sizes)
    pairs = read_pairs(text, lengths)
    converted = {pair.second.span for pair in pairs}
    ends = {pair.first.span: pair.second.span.end for pair in pairs}
    for section in report.pattern.sections:
        if section.key != "size":
            continue
        start = section.span.start
        for length in lengths:
            if not section.span.start <= length.span.start < section.span.end or length.span in converted:
                continue
            end = ends.get(length.span, length.span.end)
            stop = expression(r"[,;.:\n]|$").search(text, end, section.span.end)
            first = max(start, *(text.rfind(sign, 0, length.span.start) + 1 for sign in "\n;,:"))
            words = f"{text[first : length.span.start]} {text[end : stop.start() if stop else end]}"
            start = end
            for side in length.sides:
                if len(side) in (1, sizes):
                    values = [figure.value for figure in side] * (sizes if len(side) == 1 else 1)
                    yield StatedMeasure(
                        " ".join(expression(r"[^\p{L} ]").sub(" ", words).split()).lower(),
                        tuple(length.in_cm(value) if value is not None else None for value in values),
                    )
