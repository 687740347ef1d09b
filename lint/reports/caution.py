"""Finds out whether a pattern looks like a thing with small parts or cords, which calls for a standing note."""

from __future__ import annotations

from lint.reading.facts.hazards import words_in
from lint.rulebook import CautionFile


def hazard_words(text: str, cautions: CautionFile, most: int = 4) -> list[str]:
    """The first few words of a text that speak of toys, babies or cords, each once, in lower case."""
    listed = (*cautions.for_children, *cautions.small_parts, *cautions.cords)
    return list(dict.fromkeys(word for word, _ in words_in(text, listed)))[:most]
