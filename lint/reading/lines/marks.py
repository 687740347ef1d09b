"""Marks behind rows, up to which another piece is worked: "Rep last row 3 times. 32 sts. **", then "as Back to **"."""

from __future__ import annotations

from lint.expression import expression
from lint.source import SourceText, Span

# the sign alone behind a row's words; "rep from * to **", "ending last rep at **" name a sign within it
_BEHIND = expression(r"(?i)(?<!\b(?:to|at|from|before|after|until|and)\s*)\s*(?P<sign>\*{2,3})[.\s]*$")
_BELOW = expression(r"[ \t]*\n?[ \t]*(?P<sign>\*{2,3})[.\s]*(?:\n|$)")
_FAR = 24  # characters behind a row in which its mark stands


def marked(source: SourceText, span: Span) -> tuple[Span, str]:
    """A row's words without the mark that stands behind them, and the mark; "" where there is none."""
    words = source.slice(span)
    if "**" not in words:
        near = source.text.find("**", span.end, span.end + _FAR) >= 0
        below = _BELOW.match(source.text, span.end, span.end + _FAR) if near else None
        return span, below["sign"] if below is not None else ""
    found = _BEHIND.search(words)
    if found is None or "**" in words[: found.start()]:
        return span, ""
    return Span(span.start, span.start + found.start()), found["sign"]
