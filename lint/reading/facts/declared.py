"""What the front of a pattern declares by letters: "A (oat)", "Color B: 2 balls", "MC – charcoal"."""

from __future__ import annotations

from dataclasses import dataclass

import regex

from lint.expression import expression
from lint.source import Span

_LETTER = r"(?P<letter>MC|CC\d?|[A-H])"
_DECLARED = expression(
    rf"(?m)(?:^[\s•*–-]*|[;,(:.]\s*|\band\s+|[Cc]olou?rs?\s+|[Yy]arn\s+){_LETTER}\s*(?:[(=:–—]|\s-\s)(?!\s*\d+(?:\.\d+)?\s*mm)"
    rf"|\([Cc]olou?r\s+{_LETTER}\)|\((?P<letter>MC|CC\d?|[A-H])\)"
)
_TAKEN = expression(
    rf"\b(?i:with|using|join|joining|change\s+to|changing\s+to|switch\s+to|switching\s+to|(?:facing|hook)\s*(?:,|\band\b))\s+(?i:(?:new\s+)?colou?r\s+|yarn\s+)?{_LETTER}(?=[.,;:]|\s+(?i:in|with|at|to)\b|\s*$)",
    regex.M,
)
_HOOK = expression(r"(?i)\bhooks?\b|mm\b|\bneedles?\b|\bsizes?\b")
_MARKER_PLACED = expression(
    r"(?i)\b(?:pm|plm)\b|\b(?:place|put|insert|set|attach|add|use|move|with|using|hang|run)\w*\s+(?:[\w-]+\s+){0,4}(?:markers?|m)\b|\bmark(?:ing|s)?\s+(?!ed)\w|\bmarkers?\s+(?:in|at|on|to|for|through|around|into)\b"
)
_MARKER_USED = expression(
    r"(?i)\b(?:remove|removing|rm)\s+(?:the\s+|all\s+|both\s+|each\s+|your\s+)*(?:st(?:itch)?\s+)?markers?\b|\b(?:in|into|to|at|around|of)\s+(?:the\s+|each\s+|next\s+|first\s+|last\s+)*marked\s+(?:st|sts|stitch|stitches|sp|space|sc|dc|hdc|tr|htr|ch)\b|\b(?:to|before|until|past|at)\s+(?:the\s+|next\s+|first\s+|last\s+|each\s+)*marker\b"
)


@dataclass(frozen=True, slots=True)
class Declared:
    """A colour letter, and where it is declared."""

    letter: str
    span: Span


def colour_letters(text: str, span: Span) -> tuple[Declared, ...]:
    """The letters that a stretch of front matter declares, each once."""
    found: dict[str, Declared] = {}
    for match in _DECLARED.finditer(text, span.start, span.end):
        letter = match["letter"]
        begin = max(text.rfind(sign, 0, match.start("letter")) for sign in ";.\n")
        stops = (at for at in (text.find("\n", match.end()), text.find(". ", match.end())) if at >= 0)
        if _HOOK.search(text, begin + 1, min([match.end() + 14, *stops])):
            continue  # "hook: H (5 mm)"
        at = match.start("letter")
        found.setdefault(letter, Declared(letter, Span(at, at + len(letter))))
    return tuple(found.values())


def letters_taken(text: str, begin: int) -> tuple[Declared, ...]:
    """The letters that rows say are taken up: "change to Color C", "with B"."""
    return tuple(Declared(match["letter"], Span(*match.span("letter"))) for match in _TAKEN.finditer(text, begin))


def is_colour_letter(word: str | None) -> bool:
    """Whether a colour's name in a row is one of the letters."""
    return word is not None and expression(r"MC|CC\d?|[A-H]").fullmatch(word) is not None


def letter_used(text: str, letter: str, outside: tuple[Span, ...]) -> bool:
    """Whether a letter stands anywhere but in some stretches of the text."""
    return any(
        not any(span.start <= match.start() < span.end for span in outside)
        for match in expression(rf"(?<![\w-]){letter}(?![\w])", own_words=True).finditer(text)
    )


def marker_used_before_placed(text: str, begin: int) -> Span | None:
    """The first words that need a marker, where none was placed before them anywhere in the text."""
    used = _MARKER_USED.search(text, begin)
    if used is None:
        return None
    placed = any(match.start() != used.start() for match in _MARKER_PLACED.finditer(text, 0, used.start()))
    return None if placed else Span(used.start(), used.end())
