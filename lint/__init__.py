"""frogproof reads a written crochet pattern as a technical editor does.

`check_text` checks a pattern's text; `Report` is what comes of it, `Finding` one point in it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from lint.finding import Finding
    from lint.source import SourceText


def check_text(text: str, terms: str = "auto", path: str = "-", house: str = ""):
    """Check a pattern's text and give its Report.  `terms`: us, uk or auto; `house`: a house file's text, if any."""
    from lint.house.loading import book_for, read_house
    from lint.inspection import inspect
    from lint.rulebook import load_rulebook
    from lint.source import SourceText

    if not house:
        return inspect(SourceText(text, path), terms=terms)
    held = read_house(house, "house.yaml", load_rulebook())
    return inspect(SourceText(text, path), book_for(held, load_rulebook()), terms, house=held)


__all__ = ["Finding", "SourceText", "check_text"]


def __getattr__(name: str):
    """What is offered here is imported when it is asked for, so that the command starts at once (PEP 562)."""
    if name == "Finding":
        from lint.finding import Finding

        return Finding
    if name == "SourceText":
        from lint.source import SourceText

        return SourceText
    raise AttributeError(f"module 'lint' has no attribute '{name}'")
