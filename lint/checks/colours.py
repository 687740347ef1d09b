"""Colours by their names: worked with and not in the materials, listed and never worked with.

Colour letters are looked after in `declared`; here only patterns whose materials and rows name the same colour in words.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

import regex

from lint.checks.context import Context
from lint.expression import Expression, expression
from lint.finding import Finding, Related
from lint.reading.facts.declared import colour_letters, is_colour_letter
from lint.source import Span

_CAPITALS = r"[A-Z][a-z]{2,}(?:\s[A-Z][a-z]{2,})?"
_NAME = rf"(?P<name>{_CAPITALS})"
_NO_COLOUR = frozenset(
    "right wrong back front row rnd round next last first the this yarn main contrast color colour side sides smaller larger hook "
    "working two three four both first second one any chain chains single double half treble slip stitch crochet".split()
)
_LISTED = expression(
    rf"(?:(?<=^)|(?<=[;:,(\n•*-])|(?<=\band))\s*{_NAME}\s*[:,(–-]\s*(?:\w+\s+){{0,2}}?\d[\d.,]*\s*(?:balls?|skeins?|hanks?|g\b|yds?|yards?|m\b|oz|x)"
    rf"|\b\d+\s+(?:balls?|skeins?|hanks?)\s+(?:(?:of|in)\s+)?{_NAME}\b"
)


@lru_cache(maxsize=4)
def _used(common: frozenset[str]) -> Expression:
    """Where yarn of a named colour is taken up; names in small letters are the common ones of the rules alone."""
    small = "|".join(regex.escape(name) for name in sorted(common, key=len, reverse=True) if len(name) > 2)
    name = rf"(?P<name>{_CAPITALS}|(?:light |dark |pale )?(?:{small}))"
    return expression(
        rf"\b(?i:with|using|join|joining|change\s+to|changing\s+to|switch\s+to|switching\s+to|attach)\s+(?i:(?:new\s+)?colou?r\s+|yarn\s+)?{name}\b(?!\s+(?i:side|hook|needle|markers?|row|rnd|round|seams?|thread|eyes?|felt|buttons?))"
    )


def check_named_colours(context: Context) -> Iterator[Finding]:
    """colour-not-declared, colour-not-used, of colours that are told by their names."""
    text = context.source.text
    rows = [row.span.start for part in context.pattern.parts for row in part.rows]
    zones = [section.span for section in context.pattern.sections if section.key in ("materials", "colours")]
    if not rows or not zones or len(colour_letters(text, Span(0, min(rows)))) > 1:
        return
    begin = min(part.span.start for part in context.pattern.parts if part.rows)
    front = text[:begin].lower()
    materials = " ".join(context.source.slice(zone) for zone in zones).lower()
    used: dict[str, list[Span]] = {}
    for match in _used(frozenset(context.book.words.colour_names)).finditer(text, begin):
        name = match["name"].lower()
        if not set(name.split()) & _NO_COLOUR and not is_colour_letter(match["name"]):
            used.setdefault(name, []).append(Span(*match.span("name")))
    known = [name for name in used if _has(materials, name)]
    if not known:
        return
    declared = ", ".join(context.source.slice(used[name][0]) for name in known)
    named = front + materials  # a title may head the part, and stand in front of the materials
    unknown = {name: places for name, places in used.items() if not _has(named, name)}
    for places in unknown.values():
        yield context.finding_at(
            "colour-not-declared",
            places[0],
            letter=context.source.slice(places[0]),
            declared=declared,
            related=tuple(Related(other, "here too") for other in places[1:10]),
        )
    listed = {
        match["name"]: Span(*match.span("name"))
        for zone in zones
        for match in _LISTED.finditer(text, zone.start, zone.end)
    }
    if not any(name.lower() in known for name in listed):
        return
    behind = text[begin:].lower()
    unused = {name: span for name, span in listed.items() if not _has(behind, name.lower())}
    if len(unknown) == len(unused) == 1:
        return  # one name written for the other
    for name, span in unused.items():
        yield context.finding("colour-not-used", span, letter=name)


def _has(text: str, name: str) -> bool:
    return expression(rf"\b{regex.escape(name)}\b", own_words=True).search(text) is not None
