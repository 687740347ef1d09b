"""What a pattern's text is at most: what goes beyond is told in a sentence, and not worked at for minutes.

The bounds lie far beyond any pattern: a book of sixty pages has about 200,000 characters.
"""

from __future__ import annotations

import regex

from lint.documents.unreadable import Unreadable
from lint.source import SourceText

MOST_CHARACTERS = 250_000
MOST_LINES = 20_000
LONGEST_LINE = 50_000
LONGEST_NUMBER = 60
_NUMBER = regex.compile(rf"\d{{{LONGEST_NUMBER + 1},}}+")


def within_bounds(source: SourceText) -> SourceText:
    """The text as it is; raises Unreadable where it is no pattern's."""
    text = source.text
    if len(text.strip()) > MOST_CHARACTERS or len(text) > 4 * MOST_CHARACTERS:
        raise Unreadable(
            f"is a text of {len(text):,} characters, and at most {MOST_CHARACTERS:,} are read at once: "
            "give each of its patterns in a file of its own"
        )
    if len(source.line_starts) > MOST_LINES:
        raise Unreadable(f"has {len(source.line_starts):,} lines, and at most {MOST_LINES:,} are read at once")
    for line, (start, after) in enumerate(
        zip(source.line_starts, (*source.line_starts[1:], len(text)), strict=False), 1
    ):
        if after - start > LONGEST_LINE:
            raise Unreadable(
                f"has a line of {after - start:,} characters (line {line}), and no pattern's is longer than {LONGEST_LINE:,}"
            )
    number = _NUMBER.search(text)
    if number is not None:
        line = source.position(number.start()).line
        raise Unreadable(
            f"has a number of {number.end() - number.start():,} figures in line {line}, which no pattern has"
        )
    return source
