"""A caution for toys and children's things with small parts or cords."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.reading.facts.hazards import words_in


def check_cautions(context: Context) -> Iterator[Finding]:
    """caution-missing: small parts or cords on a thing for a child, and no word of caution in the text."""
    listed, text = context.book.cautions, context.source.text
    if not context.ledger.rows or any(words_in(text, listed.given_by)):
        return
    young = list(words_in(text, listed.for_children))
    child = young or list(words_in(text, listed.older_children))
    parts = list(words_in(text, listed.small_parts))
    if child:
        parts += words_in(text, listed.parts_for_others)
    cords = list(words_in(text, (*listed.cords, *listed.cords_for_others))) if child else []
    found = sorted(parts, key=lambda one: one[1].start) or sorted(cords, key=lambda one: one[1].start)
    if not found:
        return
    word, span = found[0]
    hazard = (
        "Small parts can come off and be swallowed" if parts else "Cords and ties can catch round a neck or a finger"
    )
    yield context.finding(
        "caution-missing",
        span,
        word=word,
        hazard=hazard,
        related=tuple(Related(at, f"speaks of “{other}”") for other, at in child[:1]),
    )
