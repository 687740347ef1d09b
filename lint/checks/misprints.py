"""Words that scanning or typing has damaged, and that were read as what they must have been."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.checks.words import row_lexemes
from lint.finding import Finding
from lint.misprints import MAYBE_DAMAGED


def check_misprints(context: Context) -> Iterator[Finding]:
    """misprint: "l dc" for "1 dc", "Sp first st" for "skip first st"; one finding a place."""
    if not MAYBE_DAMAGED.search(context.source.text):
        return
    for part, row, lexeme in context.once(row_lexemes):
        if lexeme.meant:
            yield context.finding(
                "misprint",
                lexeme.span,
                part,
                row or None,
                found=lexeme.text,
                expected=lexeme.meant,
                replacement=lexeme.meant,
            )
