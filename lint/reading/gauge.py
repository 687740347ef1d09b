"""The gauge as it is printed: so many stitches to so many inches or centimetres."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import regex

from lint.reading.measures import Length, Pair, number
from lint.source import Span


@dataclass(frozen=True, slots=True)
class Gauge:
    """A number of stitches over a width; `stitch` is the word for them, None where any are counted ("sts")."""

    span: Span  # from the number of stitches to the end of the width
    stitches: float
    stitch: str | None
    width: Length  # "10 cm", or "4 x 4 in": the second side is that of the rows
    rows: float | None = None  # over the same length

    @property
    def per_cm(self) -> float:
        """Stitches in a centimetre."""
        return self.stitches / self.width.in_cm(self.width.sides[0][0].value or 1)

    @property
    def rows_per_cm(self) -> float | None:
        """Rows in a centimetre, where the gauge gives them."""
        return self.rows / self.width.in_cm(self.width.sides[-1][0].value or 1) if self.rows else None


_COUNT = r"(?<![\w.,½¼¾-])(?<!\d/)(?P<count>\d+(?:[.,]\d+)?(?:\s?½)?)\s*"
_ANY = r"sts?|stitches|stitch"
_JOINS = regex.compile(r"(?i)[=:]|\b(?:to|per|over|in|is|are|make|makes|measures?|measuring|equals?|square|every)\b")
# a figure of these is no count of single stitches, or the length is not the width of so many
_OTHER = regex.compile(
    r"(?i)\b(?:rep(?:eat)?s?|ripples?|patterns? reps?|patts?|motifs?|blocks?|squares? of|shells?|clusters?|groups?|v-sts?|"
    r"sps?|spaces|mesh(?:es)?|rnds? \d|rounds? \d|rows? \d|ch|chains?|edging|puffs?|popcorns?|bobbles?)\b"
)
_ROWS = regex.compile(rf"(?i){_COUNT}(?:[a-z]{{1,5}}\s+)?(?:rows?|rnds?|rounds?)\b")
_STOP = regex.compile(r"[;\n]|\.(?=\s)|(?<=\w\w)\.$")


def read_gauges(
    text: str, zone: Span, lengths: tuple[Length, ...], pairs: tuple[Pair, ...], words: tuple[str, ...]
) -> Iterator[Gauge]:
    """Every gauge in stitches inside a stretch of the text; `words` are the names of stitches that may be counted."""
    converted = {pair.second.span for pair in pairs}
    ends = {pair.first.span: pair.second.span.end for pair in pairs}
    named = "|".join(regex.escape(word) for word in sorted(words, key=len, reverse=True))
    counted = regex.compile(rf"(?i){_COUNT}(?P<word>{_ANY}|{named})\b(?!['’]?s?\s+(?:rows?|rnds?|rounds?)\b)")
    start = zone.start
    for length in lengths:
        if not zone.start <= length.span.start < zone.end or length.span in converted:
            continue
        end = ends.get(length.span, length.span.end)
        stop = [found.end() for found in _STOP.finditer(text, start, length.span.start)]
        before = Span(stop[-1] if stop else start, length.span.start)
        behind = regex.compile(r"[)\]]?\s*[=:]\s*(?=\d)").match(text, end)
        start = end
        if len(length.sides[0]) != 1 or not length.sides[0][0].value:
            continue
        found = list(counted.finditer(text, before.start, before.end))
        if found and _JOINS.search(text, found[-1].end(), before.end):
            stretch = before
        elif behind is not None:  # "10 cm (4 in) = 17 sts x 9 rows"
            stop = _STOP.search(text, behind.end(), zone.end)
            stretch = Span(behind.end(), stop.start() if stop else zone.end)
            found = list(counted.finditer(text, stretch.start, stretch.end))[:1]
        else:
            continue
        if _OTHER.search(text, stretch.start, stretch.end):
            continue
        rows = _ROWS.search(text, stretch.start, max(stretch.end, end))
        for one in found:
            stitches = number(one["count"])
            word = None if regex.fullmatch(rf"(?i){_ANY}", one["word"]) else one["word"].lower()
            if stitches:
                span = Span(min(one.start(), length.span.start), max(one.end(), length.span.end))
                yield Gauge(span, stitches, word, length, number(rows["count"]) if rows else None)
