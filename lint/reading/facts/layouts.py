"""How the assembly lays out motifs: row by row, which of them and how many, with halves at the ends where it says so."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import regex

from lint.expression import expression
from lint.reading.facts.assembly import NUMBERS, as_number, laid_out, singular
from lint.source import Span

_NUMBER = rf"\d{{1,3}}|{'|'.join(NUMBERS)}"
_LIST = r"\d{1,3}(?:\s*(?:,|and|&|[-–]|to)\s*(?:and\s*)?\d{1,3})*"
_ROW = expression(
    rf"(?im)^[ \t*•]*+(?:strips?|rows?|columns?)\s+(?P<which>{_LIST})\s*(?:\([^)\n]*\))?\s*[:–—-]\s*(?P<what>[^.\n]+)"
)
_ITEM = expression(rf"(?i)\b(?P<number>{_NUMBER}|an?)\s+(?P<half>half[- ])?(?P<noun>[a-z]+)\b")
_HALVES = expression(
    rf"(?i)\b(?:a\s+)?(?:half|halves)\b[^.;\n]{{0,40}}?\b(?:at|to|on)\s+(?:each|both|the|either)\s+ends?\b(?:\s+of\s+(?:(?P<other>every other|alternate|the even|even)|(?:rows?|strips?)\s+(?P<which>{_LIST})))?"
)
_MOST_ROWS, _MOST_PIECES = 60, 1_000  # beyond these a layout is not drawn


@dataclass(frozen=True, slots=True)
class LaidMotif:
    """So many motifs side by side."""

    number: int
    noun: str  # in the singular, lower case: "hexagon"
    half: bool = False


@dataclass(frozen=True, slots=True)
class Layout:
    """The rows of an assembly from the first on, each from one end to the other."""

    span: Span
    rows: tuple[tuple[LaidMotif, ...], ...]


def read_layout(text: str, sentences: Iterable[Span], nouns: frozenset[str]) -> Layout | None:
    """The one layout that the sentences of assembly give; None where there is none, or there are several.

    `nouns`: the names of the pattern's pieces, in the singular.
    """
    spans = list(sentences)
    by_number: dict[int, tuple[LaidMotif, ...]] = {}
    start = end = None
    for span in spans:
        for match in _ROW.finditer(text, span.start, span.end):
            motifs = tuple(_motifs(match["what"], nouns))
            numbers = _numbers(match["which"])
            if not motifs or not numbers or any(number in by_number for number in numbers):
                continue
            by_number |= dict.fromkeys(numbers, motifs)
            start, end = match.start() if start is None else start, match.end()
    if start is not None and sorted(by_number) == list(range(1, len(by_number) + 1)):
        return _bounded(Layout(Span(start, end), tuple(by_number[number] for number in sorted(by_number))))
    found = [one for span in spans if (one := laid_out(text, span, nouns)) is not None]
    if len({one.rows for one in found}) != 1:
        return None
    noun = found[0].noun or (next(iter(nouns)) if len(nouns) == 1 else "motif")
    rows = [(LaidMotif(number, noun),) for number in found[0].rows]
    for match in _HALVES.finditer(text, found[0].span.start, found[0].span.end + 200):
        half = LaidMotif(1, noun, half=True)
        for index in _with_halves(match, rows):
            rows[index] = (half, *rows[index], half)
        break
    return _bounded(Layout(found[0].span, tuple(rows)))


def _with_halves(match: regex.Match, rows: list[tuple[LaidMotif, ...]]) -> list[int]:
    """The rows that have halves at their ends: those named, every other one, or those that are shorter by one."""
    if match["which"]:
        return [number - 1 for number in _numbers(match["which"]) if number <= len(rows)]
    shorter = [index for index, row in enumerate(rows) if row[0].number < max(other[0].number for other in rows)]
    return shorter or list(range(1, len(rows), 2))


def _motifs(words: str, nouns: frozenset[str]) -> Iterable[LaidMotif]:
    """ "1 half hexagon, 5 hexagons, 1 half hexagon"; what a bracket adds up is left out."""
    for match in _ITEM.finditer(expression(r"\([^)]*\)").sub("", words)):
        noun = singular(match["noun"])
        if noun in nouns or noun in ("motif", "square", "block", "hexagon", "triangle"):
            number = 1 if match["number"].lower() in ("a", "an") else as_number(match["number"])
            yield LaidMotif(number, noun, bool(match["half"]))


def _numbers(words: str) -> list[int]:
    """ "1, 3-5 and 7": 1, 3, 4, 5, 7."""
    found: list[int] = []
    for match in expression(r"(\d+)(?:\s*(?:[-–]|to)\s*(\d+))?").finditer(words):
        first, last = int(match[1]), int(match[2] or match[1])
        found += range(first, min(last, first + _MOST_ROWS) + 1)
    return found


def _bounded(layout: Layout) -> Layout | None:
    pieces = sum(motif.number for row in layout.rows for motif in row)
    return layout if len(layout.rows) <= _MOST_ROWS and pieces <= _MOST_PIECES else None
