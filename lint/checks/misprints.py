"""Words that scanning or typing has damaged, and that were read as what they must have been."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.checks.words import row_lexemes
from lint.finding import Finding, Related
from lint.lexeme import Lexeme
from lint.misprints import MAYBE_DAMAGED


def check_misprints(context: Context) -> Iterator[Finding]:
    """misprint: "l dc" for "1 dc", "Sp first st" for "skip first st"; one finding a word, with all its places."""
    if not MAYBE_DAMAGED.search(context.source.text):
        return
    places: dict[tuple[str, str], list[tuple[Lexeme, str, str]]] = {}
    for part, row, lexeme in context.once(row_lexemes):
        if lexeme.meant:
            places.setdefault((lexeme.text, lexeme.meant), []).append((lexeme, part, row))
    for (word, meant), found in places.items():
        lexeme, part, row = found[0]
        related = tuple(Related(other.span, "here too") for other, _, _ in found[1:20])
        yield context.finding(
            "misprint",
            lexeme.span,
            part,
            row or None,
            found=word,
            expected=meant,
            related=related,
            replacement=meant,
        )
