"""What the pattern states that testers report on beside counts: gauge, hook, yarn and finished measures, by size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import regex

from lint.inspection import Report
from lint.reading.measures import read_lengths, read_lists, read_pairs
from lint.testers.phrases import read_gauge, read_hook

_UNITS = (  # what is counted together: balls, grams, metres, with what one of the unit is worth
    ("ball", r"(?:balls?|skeins?|hanks?)(?![\w-])", 1.0),
    ("g", r"(?:g|gr|gms?|grams?|grammes?)(?![\w-])", 1.0),
    ("g", r"(?:oz|ounces?)(?![\w-])", 28.349523125),
    ("m", r"(?:m|met(?:re|er)s?)(?![\w-])", 1.0),
    ("m", r"(?:yds?|yards?)(?![\w-])", 0.9144),
)
_NO_YARN = regex.compile(
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
    return Figures(gauge, hook, _yarn(lines, sizes), tuple(_measures(report, sizes)))


# yarn -----------------------------------------------------------------------------------------------------------


def _yarn(lines: list[str], sizes: int) -> dict[str, tuple[float | None, ...]]:
    """The yarn of all lines that give any; a unit that one of them does not give is left out."""
    told = [amounts for line in lines for piece in line.split(";") if (amounts := _amounts(piece, sizes))]
    units = set.intersection(*(set(one) for one in told)) if told else set()
    return {unit: tuple(_sum(one[unit][size] for one in told) for size in range(sizes)) for unit in sorted(units)}


def _amounts(words: str, sizes: int) -> dict[str, tuple[float | None, ...]]:
    """The amounts of one line: of so many balls with what a ball holds, or of grams and lengths in all."""
    if _NO_YARN.search(words):
        return {}
    found: dict[str, tuple[float | None, ...]] = {}
    for unit, pattern, worth in _UNITS:
        for _, sides in read_lists(words, pattern, sizes):
            values = [figure.value for figure in sides[0]]
            if unit not in found and len(sides) == 1 and len(values) in (1, sizes):
                values = values * sizes if len(values) == 1 else values
                found[unit] = tuple(value * worth if value is not None else None for value in values)
    balls = found.get("ball")
    if balls is None:
        return {} if regex.search(r"(?i)\b(?:balls?|skeins?|hanks?)\b|/\s?(?:ball|skein)", words) else found
    held = {unit: values[0] for unit, values in found.items() if unit != "ball" and len(set(values)) == 1}
    return {"ball": balls} | {
        unit: tuple(number * held[unit] if number is not None and held[unit] else None for number in balls)
        for unit in held
    }


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
            stop = regex.compile(r"[,;.:\n]|$").search(text, end, section.span.end)
            first = max(start, *(text.rfind(sign, 0, length.span.start) + 1 for sign in "\n;,:"))
            words = f"{text[first : length.span.start]} {text[end : stop.start() if stop else end]}"
            start = end
            for side in length.sides:
                if len(side) in (1, sizes):
                    values = [figure.value for figure in side] * (sizes if len(side) == 1 else 1)
                    yield StatedMeasure(
                        " ".join(regex.sub(r"[^\p{L} ]", " ", words).split()).lower(),
                        tuple(length.in_cm(value) if value is not None else None for value in values),
                    )
