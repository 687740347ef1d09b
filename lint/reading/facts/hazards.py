"""Finds words of a list in a text, as whole words: toys, cords, cautions."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache

import regex

from lint.expression import Expression, expression
from lint.source import Span


@lru_cache(maxsize=64)
def _any_of(listed: tuple[str, ...]) -> Expression:
    forms = "|".join(
        expression(r"\\? ").sub(r"\\s+", regex.escape(word)) for word in sorted(listed, key=len, reverse=True)
    )
    return expression(rf"(?i)(?<![\w-])(?:{forms})(?![\w-])")


def words_in(text: str, listed: Iterable[str], offset: int = 0) -> Iterator[tuple[str, Span]]:
    """Every place where a word of the list stands, the word in lower case; the longest word where several fit."""
    for match in _any_of(tuple(listed)).finditer(text.replace("’", "'")):
        yield " ".join(match.group(0).lower().split()), Span(offset + match.start(), offset + match.end())
