"""The gauge as it is printed: so many stitches, and so many rows, to so many inches or centimetres."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

import regex

from lint.expression import Expression, expression
from lint.pattern import Pattern
from lint.reading.facts.measures import Figure, Length, Pair, number, read_lengths, read_pairs
from lint.rulebook import StitchFile
from lint.source import Span


@dataclass(frozen=True, slots=True)
class Gauge:
    """A number of stitches over a width; `stitch` is the word for them, None where any are counted ("sts")."""

    span: Span  # from the number of stitches to the end of the width
    stitches: float
    stitch: str | None
    width: Length  # "10 cm", or "4 x 4 in": the second side is that of the rows
    rows: float | None = None  # over the same length, or over `height`
    height: Length | None = None  # of the rows, where they have a measure of their own: "9 rows = 4 in"

    @property
    def per_cm(self) -> float:
        """Stitches in a centimetre."""
        return self.stitches / self.width.in_cm(self.width.sides[0][0].value or 1)

    @property
    def rows_per_cm(self) -> float | None:
        """Rows in a centimetre, where the gauge gives them."""
        height = self.height or self.width
        return self.rows / height.in_cm(height.sides[-1][0].value or 1) if self.rows else None


_COUNT = r"(?<![\w.,½¼¾-])(?<!\d/)(?P<count>\d+(?:[.,]\d+)?(?:\s?[½¼¾])?)\s*"
_ANY = r"sts?|stitches|stitch"
_JOINS = expression(
    r"(?i)[=:]|/\s*$|\b(?:to|per|over|in|is|are|make|makes|measures?|measuring|equals?|square|every|for)\b"
)
_ONE = expression(
    r"(?i)\b(?:per|(?:to|over|in)\s+(?:the|an?|each|every)|an|each|every)\s+(?P<unit>inch|in\b\.?|cm|centimet(?:re|er))(?![\w-])"
)
_BEHIND = expression(
    r"(?i)[)\]]?\s*(?:(?:square|sq\.?|across|wide|in\s+[\w-]+(?:\s+[\w-]+)?|over\s+[\w-]+(?:\s+[\w-]+)?)\s*)?(?:[=:]|\b(?:is|equals)\b)\s*(?=\d)"
)
# a figure of these is no count of single stitches, or the length is not the width of so many
_OTHER = expression(
    r"(?i)\b(?:rep(?:eat)?s?|ripples?|patterns? reps?|patts?|motifs?|blocks?|squares? of|shells?|clusters?|groups?|v-sts?|"
    r"sps?|spaces|mesh(?:es)?|rnds? \d|rounds? \d|rows? \d|ch|chains?|edging|puffs?|popcorns?|bobbles?)\b"
)
_ROWS = expression(rf"(?i){_COUNT}(?:[a-z]{{1,5}}\s+)?(?:rows?|rnds?|rounds?)\b")
_STOP = expression(r"[;\n]|\.(?=\s)|(?<=\w\w)\.$")
_LINE = expression(
    r"(?im)^[ \t•*-]*+(?:[a-z]+\s+)?(?:gauge|tension)(?:\s+(?:swatch|square|information))?\b(?!\s+(?:is|are|not)\b[^\n\d]*$)[^\n]*"
)


def gauge_zones(text: str, sections: Iterable[Span]) -> tuple[Span, ...]:
    """The stretches of the text that tell a gauge: its sections, and lines elsewhere that begin with the word."""
    zones = list(sections)
    for match in _LINE.finditer(text):
        if not any(zone.start <= match.end() - 1 < zone.end or zone.start == match.start() for zone in zones):
            zones.append(Span(*match.span()))
    return tuple(sorted(zones, key=lambda zone: zone.start))


def pattern_gauges(text: str, pattern: Pattern, stitches: StitchFile) -> tuple[Gauge, ...]:
    """Every gauge in stitches that a pattern gives, wherever it stands."""
    lengths = read_lengths(text, max(1, len(pattern.sizes)))
    pairs = read_pairs(text, lengths)
    words = tuple(form for rule in stitches.stitches for form in (*rule.us, *rule.uk) if form)
    zones = gauge_zones(text, (section.span for section in pattern.sections if section.key == "gauge"))
    return tuple(one for zone in zones for one in read_gauges(text, zone, lengths, pairs, words))


@lru_cache(maxsize=4)
def _counted(words: tuple[str, ...]) -> Expression:
    """Finds a number of stitches, by any of their names."""
    named = "|".join(regex.escape(word) for word in sorted(words, key=len, reverse=True))
    return expression(rf"(?i){_COUNT}(?P<word>{_ANY}|{named})\b(?!['’]?s?\s+(?:rows?|rnds?|rounds?)\b)")


def read_gauges(
    text: str, zone: Span, lengths: tuple[Length, ...], pairs: tuple[Pair, ...], words: tuple[str, ...]
) -> tuple[Gauge, ...]:
    """Every gauge in stitches inside a stretch of the text; `words` are the names of stitches that may be counted.

    Rows that have a measure of their own ("16 sts = 4 in, 9 rows = 4 in") go to the gauges that have none.
    """
    counted = _counted(words)
    gauges: list[Gauge] = []
    lone: list[tuple[float, Length]] = []
    for stretch, length, lone_count in _stretches(text, zone, lengths, pairs, counted):
        rows = _ROWS.search(text, stretch.start, stretch.end)
        per_length = number(rows["count"]) if rows is not None else None
        found = list(counted.finditer(text, stretch.start, stretch.end))[: 1 if lone_count else None]
        for one in found:
            stitches = number(one["count"])
            word = None if expression(rf"(?i){_ANY}").fullmatch(one["word"]) else one["word"].lower()
            if stitches:
                span = Span(min(one.start(), length.span.start), max(one.end(), length.span.end))
                gauges.append(Gauge(span, stitches, word, length, per_length or None))
        if not found and per_length:
            lone.append((per_length, length))
    if len(lone) == 1:
        ((rows_told, height),) = lone
        return tuple(one if one.rows else replace(one, rows=rows_told, height=height) for one in gauges)
    return tuple(gauges)


def _stretches(
    text: str, zone: Span, lengths: tuple[Length, ...], pairs: tuple[Pair, ...], counted: Expression
) -> Iterator[tuple[Span, Length, bool]]:
    """The words that count over each measure, the measure, and whether they stand behind it ("10 cm = 17 sts x 9 rows")."""
    converted = {pair.second.span for pair in pairs}
    ends = {pair.first.span: pair.second.span.end for pair in pairs}
    start = zone.start
    for length in _with_single_units(text, zone, lengths):
        if length.span in converted:
            continue
        end = ends.get(length.span, length.span.end)
        stop = [found.end() for found in _STOP.finditer(text, start, length.span.start)]
        before = Span(stop[-1] if stop else start, length.span.start)
        behind = _BEHIND.match(text, end)
        start = end
        if len(length.sides[0]) != 1 or not length.sides[0][0].value or not length.sides[-1][0].value:
            continue
        counts = [found.end() for one in (counted, _ROWS) for found in one.finditer(text, before.start, before.end)]
        one_unit = length.span.end - length.span.start and text[length.span.start].isalpha()
        if counts and (one_unit or _JOINS.search(text, max(counts), before.end)):
            stretch, is_behind = before, False
        elif behind is not None:
            stop_at = _STOP.search(text, behind.end(), zone.end)
            stretch, is_behind = Span(behind.end(), stop_at.start() if stop_at else zone.end), True
        else:
            continue
        if not _OTHER.search(text, stretch.start, stretch.end):
            yield stretch, length, is_behind


def _with_single_units(text: str, zone: Span, lengths: tuple[Length, ...]) -> list[Length]:
    """The measures of a stretch of the text, and "per inch", which has no figure."""
    found = [length for length in lengths if zone.start <= length.span.start < zone.end]
    for match in _ONE.finditer(text, zone.start, zone.end):
        span = Span(*match.span())
        if not any(other.span.start < span.end and span.start < other.span.end for other in found):
            unit = "in" if match["unit"].lower().startswith("in") else "cm"
            found.append(Length(span, unit, ((Figure(span, 1.0),),)))
    return sorted(found, key=lambda length: length.span.start)
