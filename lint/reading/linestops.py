"""Puts the stops that a line's end stands for between a row's words: a list of rows has many lines and few full stops."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.stream import CLOSERS
from lint.source import SourceText

_MAY_END = (
    "stitch",
    "any_stitch",
    "space",
    "special",
    "group_word",
    "one_stitch",
    "word",
    "turn",
    "times",
    ">",
    *CLOSERS,
)
_ROWS_NAMED = ("row", "round", "ordinal", "last", "the")
_TALK = ("stuff", "rotate", "telling", "marker", "fasten_off", "no_fasten", "attach", "change")  # no unit of a count
_COUNTS = ([";"], ["="], ["→"], ["dash"])  # what leads to a count
_CLOSES = ("stitch", "join", "fasten_off", "turn")  # what may follow it below


def with_line_stops(lexemes: list[Lexeme], source: SourceText) -> list[Lexeme]:
    """The lexemes, with a stop where a line ends after what may end a sentence and the next begins with a capital.

    On the same line "(34 sc) Repeat Rows 8-12" begins a sentence: what is in the brackets is not repeated.
    """
    found: list[Lexeme] = []
    for index, lexeme in enumerate(lexemes):
        before = found[-1] if found else None
        if before is not None and before.kind in (*CLOSERS, ">") and lexeme.kind == "repeat":
            if lexeme.text[:1].isupper() and lexemes[index + 1 : index + 2] and lexemes[index + 1].kind in _ROWS_NAMED:
                found.append(Lexeme(".", "", before.end, before.end, True))
        counted = before is not None and before.kind == "number" and found[-2:-1] and found[-2].kind in ("=", "→")
        if before is not None and "\n" in source.text[before.end : lexeme.start]:
            opens = lexeme.text[:1].isupper() and not lexeme.text.isupper() or counted and lexeme.kind in _TALK
            ended = (counted or before.kind in _MAY_END) and opens
            kinds = [one.kind for one in found[-3:]]  # "; 10 sts", and in the line below "sl st in next st"
            told = kinds[:1] in _COUNTS and kinds[1:] == ["number", "any_stitch"] and lexeme.kind in _CLOSES
            if ended or told:
                found.append(Lexeme(".", "", before.end, before.end, True))
        found.append(lexeme)
    return found
