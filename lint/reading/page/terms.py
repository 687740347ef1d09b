"""Tells whether a pattern is in US or UK terms, from what it says and what it uses."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import regex

from lint.expression import Expression, expression
from lint.rulebook import LayoutFile
from lint.source import Span

# "3 ch, 1 tr in next st", "ch 3 (counts as tr)"
_THREE_FOR_TREBLE = expression(
    r"(?i)\b(?:3\s?ch|ch\s?-?\s?3)\b\W{1,3}(?:\(?counts? as (?:a |1 |one |first )?|(?:1 ?)?)(?:tr|tc|treble)\b"
)
# "ch 3, 2 dc in ring", "3 ch (counts as dc)": the height of a US dc; between stitches "3 ch, 1 dc in next sp" is a loop
_THREE_FOR_DOUBLE = expression(
    r"(?i)\b(?:3\s?ch|ch\s?-?\s?3)\b\W{1,3}(?:counts? as (?:a |1 |one |first |the )*|(?:[2-9]|1\d)\s?)(?:dc|double crochet)\b"
)


@dataclass(frozen=True, slots=True)
class Terms:
    """The terms in force, and whether the pattern says them."""

    terms: str
    said: bool


def find_terms(text: str, layout: LayoutFile, wanted: str = "auto") -> Terms:
    """The terms of a text; `wanted` ("us" or "uk") overrules it."""
    said = _statements(text, layout)
    if wanted != "auto":
        return Terms(wanted, said is not None)
    if said is not None:
        return said
    uk = _hits(text, layout.uk_evidence)
    us = _hits(text, layout.us_evidence)
    heights = [match.span() for match in _THREE_FOR_TREBLE.finditer(text)]
    uk = uk + [Span(*span) for span in heights[:1]]  # three chains stand for a UK treble, four for a US one
    heights = [match.span() for match in _THREE_FOR_DOUBLE.finditer(text)]
    us = us + [Span(*span) for span in heights[:1]]
    explained = expression(
        r"(?i)\b(?:dc|double crochet)\b[^\n]{0,25}\bUS\b\W{0,3}(?:sc|single)|\btr\b[^\n]{0,25}\bUS\b\W{0,3}(?:dc|double)"
    ).search(
        text,
    )
    if explained or (
        len(uk) > len(us)
        and not any(text[span.start : span.end].lower() in ("sc", "hdc", "single crochet") for span in us)
    ):
        return Terms("uk", False)
    return Terms("us", False)


@lru_cache
def _any_of(phrases: tuple[str, ...]) -> Expression:
    """One of the phrases, as words of their own; (?!) where there are none."""
    some = "|".join(regex.escape(phrase) for phrase in phrases) or "(?!)"
    return expression(rf"(?i)(?<!\w)(?:{some})(?!\w)")


def _statements(text: str, layout: LayoutFile) -> Terms | None:
    """ "US terms", "UK crochet terms throughout", "All terms are UK", "Terms: US", "TERMS" over "UK"."""
    for terms, phrases in (("us", layout.us_statements), ("uk", layout.uk_statements)):
        if _any_of(tuple(phrases)).search(text):
            return Terms(terms, True)
    match = expression(
        r"(?i)\b(?:terms|terminology|abbreviations|stitches)\b[^.\n]{0,25}?\b(US|U\.S\.|UK|U\.K\.|American|British)(?!\w)(?![\w.]*\s*\d)"
    ).search(
        text,
    )
    if match is None:  # a heading, and the answer in the line below it
        match = expression(
            r"(?im)^[^\w\n]*+(?:terms|terminology)\W*\n\s*(US|U\.S\.|UK|U\.K\.|American|British)\b"
        ).search(text)
    if match is None:
        match = expression(
            r"(?i)\b(US|U\.S\.|UK|U\.K\.|American|British)\b[^.\n]{0,20}?\b(?:terms|terminology|stitch names|names)\b"
        ).search(
            text,
        )
    if match is None:  # in the title: "Pebble Coaster (UK)", "Pebble Coaster – US version"
        match = expression(
            r"\A\s*[^\n]*?(?:[(\[]|\s[–—-])\s?(US|U\.S\.|UK|U\.K\.)(?i:\s+(?:version|pattern))?[)\]]?[\s*_#]*?(?:\n|\Z)"
        ).match(text)
    if match:
        return Terms("us" if match[1].lower() in ("us", "u.s.", "american") else "uk", True)
    return None


def _hits(text: str, words: list[str]) -> list[Span]:
    found = []
    for word in words:
        match = expression(rf"(?i)(?<![\w-]){regex.escape(word)}s?(?![\w-])").search(text)
        if match:
            found.append(Span(match.start(), match.end()))
    return found
