"""frogproof reads a written crochet pattern as a technical editor does.

`check_text` checks a pattern's text; `Report` is what comes of it, `Finding` one point in it.
"""

from lint.finding import Finding
from lint.source import SourceText


def check_text(text: str, terms: str = "auto", path: str = "-"):
    """Check a pattern's text and give its Report.  `terms`: us, uk or auto."""
    from lint.inspection import inspect

    return inspect(SourceText(text, path), terms=terms)


__all__ = ["Finding", "SourceText", "check_text"]
