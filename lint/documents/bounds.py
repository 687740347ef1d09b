"""What a pattern's text is at most: what goes beyond is told in a sentence, and not worked at for minutes.

The bounds lie far beyond any pattern: a garment in twelve sizes has about 30,000
characters, a book of thirty pages 100,000, and a pattern in one paragraph 10,000.
"""

from __future__ import annotations

from lint.documents.unreadable import Unreadable
from lint.expression import expression
from lint.source import SourceText

MOST_CHARACTERS = 100_000
MOST_LINES = 5_000
LONGEST_LINE = 20_000
MOST_ROWS = 2_500
LONGEST_WORD = 2_000
LONGEST_NUMBER = 60
_ROW = expression(r"(?i)\b(?:rows?|rounds?|rnds?|rds?|r)[ \t]?\d")
_WORD = expression(rf"\S{{{LONGEST_WORD + 1},}}+")
_NUMBER = expression(rf"\d{{{LONGEST_NUMBER + 1},}}+")


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
    rows = len(_ROW.findall(text))
    if rows > MOST_ROWS:
        raise Unreadable(
            f"names {rows:,} rows and rounds, and at most {MOST_ROWS:,} are read at once: "
            "give each of its patterns in a file of its own"
        )
    for line, (start, after) in enumerate(
        zip(source.line_starts, (*source.line_starts[1:], len(text)), strict=False), 1
    ):
        if after - start > LONGEST_LINE:
            raise Unreadable(
                f"has a line of {after - start:,} characters (line {line}), and no pattern's is longer than {LONGEST_LINE:,}"
            )
    word = _WORD.search(text)
    if word is not None:
        line = source.position(word.start()).line
        raise Unreadable(
            f"has {word.end() - word.start():,} characters without a space in line {line}, which no pattern has"
        )
    number = _NUMBER.search(text)
    if number is not None:
        line = source.position(number.start()).line
        raise Unreadable(
            f"has a number of {number.end() - number.start():,} figures in line {line}, which no pattern has"
        )
    return source
