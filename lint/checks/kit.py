"""Hooks and notions: what the instructions ask for and the materials do not list."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.source import Span

_MM = regex.compile(r"(?i)(?<![\w.,])(?P<mm>\d{1,2}(?:[.,]\d{1,2})?)\s?mm\b")
_HOOK = regex.compile(r"(?i)\bhooks?\b")
_OTHER_HOOK = regex.compile(
    r"(?i)\b(?:with|using|change to|changing to|switch to|to)\s+(?:the\s+|a\s+)?(?P<which>larger|smaller)\s+hook\b"
)
# what a row can only be worked with, and words that list it
_NOTIONS = (
    (regex.compile(r"(?i)\b(?:stitch\s+)?markers?\b|\bpm\b"), regex.compile(r"(?i)\bmarkers?\b|\bscrap yarn|contrast(?:ing)? yarn|safety pin|bobby pin|paper ?clip"), "stitch marker"),
    (regex.compile(r"(?i)\bsew (?:on )?(?:the |on |\d+ |two |three |four |five )*buttons?\b"), regex.compile(r"(?i)\bbuttons?\b"), "button"),
    (regex.compile(r"(?i)\bstuff(?:ing)?\s+(?:firmly|lightly|the|as|body|head|it|with|before|and)\b"), regex.compile(r"(?i)\bstuff|fibre?fill|filling|fiberfil|polyfill|wadding|toy fill"), "stuffing"),
    (regex.compile(r"(?i)\b(?:insert|attach|fix|place|add)\s+(?:the\s+)?(?:safety )?eyes\b"), regex.compile(r"(?i)\beyes?\b|\bbeads?\b|\bbuttons?\b"), "pair of eyes"),
    (regex.compile(r"(?i)\b(?:sew|insert|set) (?:in )?(?:the )?zip(?:per)?\b"), regex.compile(r"(?i)\bzip"), "zip"),
)  # fmt: skip


def check_kit(context: Context) -> Iterator[Finding]:
    """hook-not-listed, notion-not-listed: only where the pattern has a list of materials that names a hook."""
    text = context.source.text
    zones = [section.span for section in context.pattern.sections if section.key == "materials"]
    listed = " ".join(context.source.slice(zone) for zone in zones)
    if not _HOOK.search(listed):
        return
    told = [Span(part.span.start, part.rows[-1].span.end) for part in context.pattern.parts if part.rows]
    yield from _hooks(context, listed, zones, told)
    for used, lists, name in _NOTIONS:
        if lists.search(listed) or any(lists.search(line) for line in _unheaded(context, text)):
            continue
        found = next((one for zone in told if (one := used.search(text, zone.start, zone.end))), None)
        if found is not None:
            yield context.finding_at(
                "notion-not-listed", Span(*found.span()), found=found[0], notion=name,
                related=(Related(Span(zones[0].start, zones[0].start + 1), "the list of materials"),),
            )  # fmt: skip


def _unheaded(context: Context, text: str) -> Iterator[str]:
    """The lines before the first piece: what is needed often stands there under no heading, or another."""
    first = min((part.rows[0].span.start for part in context.pattern.parts if part.rows), default=0)
    yield from text[:first].splitlines()


def _hooks(context: Context, listed: str, zones: list[Span], told: list[Span]) -> Iterator[Finding]:
    text = context.source.text
    sizes = {float(match["mm"].replace(",", ".")) for match in _MM.finditer(listed)}
    for zone in told:
        for match in _MM.finditer(text, zone.start, zone.end):
            size = float(match["mm"].replace(",", "."))
            hook = _HOOK.search(text, match.end(), min(len(text), match.end() + 24))
            if hook is not None and "\n" not in text[match.end() : hook.start()] and sizes and size not in sizes:
                yield _not_listed(context, Span(match.start(), hook.end()), zones[0])
                return
        other = _OTHER_HOOK.search(text, zone.start, zone.end)
        if other is not None and len(sizes) == 1 and len(_HOOK.findall(listed)) == 1:
            yield _not_listed(context, Span(*other.span()), zones[0])
            return


def _not_listed(context: Context, span: Span, materials: Span) -> Finding:
    return context.finding_at(
        "hook-not-listed",
        span,
        found=context.source.slice(span),
        related=(Related(Span(materials.start, materials.start + 1), "the list of materials"),),
    )
