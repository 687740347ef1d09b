"""Rows of filet squares parted by semicolons or full stops: "3 sps; 1 bl; 4 sps; 1 bl" is worked, and counts nothing."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.words.stream import Stream

_SQUARES = ("special", "space", "group_word", "one_stitch")
_FEWEST = 3  # pieces that make a list


def squares_as_list(stream: Stream) -> Stream:
    """The row with such signs as commas, where a sort comes again: a printed count names each of its sorts once."""
    words = stream.lexemes
    cuts = [-1, *(at for at, item in enumerate(words) if item.kind in (";", ".")), len(words)]
    put: set[int] = set()
    run: list[tuple[int, str]] = []  # the sign before each piece, and its sort
    for before, behind in zip(cuts, cuts[1:], strict=False):
        sort = _square(words, before + 1, behind)
        if sort:
            run.append((before, sort))
        if not sort or behind == len(words):
            put |= _signs(run)
            run = []
    if not put:
        return stream
    return Stream([replace(item, kind=",") if at in put else item for at, item in enumerate(words)], stream.vocabulary)


def _square(words: list[Lexeme], first: int, end: int) -> str:
    """The sort of a piece that is a number of squares and no more, its count or a turn behind it perhaps; "" of any other."""
    kinds = [item.kind for item in words[first : min(end, first + 3)]]
    ends = len(kinds) == 2 or kinds[2:] in (["("], ["["], ["turn"], ["dash"])
    if kinds[:1] != ["number"] or not ends or kinds[1:2] not in ([kind] for kind in (*_SQUARES, "stitch")):
        return ""
    unit = words[first + 1]
    return f"{'' if unit.kind == 'stitch' else ' '}{(unit.value or unit.lower).rstrip('s')}"


def _signs(run: list[tuple[int, str]]) -> set[int]:
    """The signs that part the pieces of a list, and the one before it; none where it may be a count."""
    sorts = [sort for _, sort in run]
    again = len(set(sorts)) < len(sorts) and any(sort[:1] == " " for sort in sorts)
    return {at for at, _ in run if at >= 0} if again and len(run) >= _FEWEST else set()
