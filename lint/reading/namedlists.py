"""Lists that name the size at each figure: "3 sts for S, 4 for M and 5 for L", "60 (small), 66 (large)", "S: 11, M: 13"."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lint.lexicon import Lexeme
from lint.reading.audience import canonical

_MOST = 5  # lexemes of a name: "6-12 months"
_SIGNS = (":", "=", "dash", ",", ";", ".")
_CLOSES = {"(": ")", "[": "]", "{": "}"}
_UNITS = ("any_stitch", "stitch", "chain", "times", "row", "round", "space", "special", "more")


@dataclass(frozen=True, slots=True)
class NamedList:
    """A figure for each size, the index behind the list, and the index of the words that say of what (none: equal)."""

    values: tuple[int, ...]
    end: int
    unit: tuple[int, int]


def named_list(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]) -> NamedList | None:
    """The list that begins at an index; each size must be named once."""
    found: dict[int, int] = {}
    unit = (at, at)
    while at < len(lexemes):
        item = _figure_first(lexemes, at, sizes) or _name_first(lexemes, at, sizes)
        if item is None or item[0] in found:
            return None
        size, number, at, words = item
        found[size] = number
        unit = words if words[0] < words[1] else unit
        if len(found) == len(sizes):
            return NamedList(tuple(found[size] for size in range(len(sizes))), at, unit)
        while at < len(lexemes) and lexemes[at].kind in (",", ";", "/", "and", "or"):
            at += 1
    return None


def _figure_first(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]):
    """ "3 sts for S", "3 (small hat)": size, figure, the index behind, and where the unit stands."""
    if lexemes[at].kind != "number" or lexemes[at].amount is not None:
        return None
    number, at = lexemes[at].number, at + 1
    first = at
    while at < len(lexemes) and at < first + 2 and lexemes[at].kind in _UNITS:
        at += 1
    words = (first, at)
    if at >= len(lexemes):
        return None
    close = _CLOSES.get(lexemes[at].kind)
    if close is None and lexemes[at].lower != "for":
        return None
    at += 1
    while at < len(lexemes) and lexemes[at].lower in ("for", "the", "size"):
        at += 1
    named = _name_at(lexemes, at, sizes)
    if named is None:
        return None
    size, at = named
    while at < len(lexemes) and (lexemes[at].lower == "size" or close and lexemes[at].kind == "word"):
        at += 1
    if close is not None:
        if at >= len(lexemes) or lexemes[at].kind != close:
            return None
        at += 1
    return size, number, at, words


def _name_first(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]):
    """ "S: 11", "Size M – 13 sts", "S/M 12 sc"."""
    at += lexemes[at].lower == "size"
    named = _name_at(lexemes, at, sizes)
    if named is None or named[1] + 1 >= len(lexemes):
        return None
    signed = lexemes[named[1]].kind in (":", "=", "dash")
    size, at = named[0], named[1] + signed
    if lexemes[at].kind != "number" or lexemes[at].amount is not None:
        return None
    number, at = lexemes[at].number, at + 1
    first = at
    while at < len(lexemes) and at < first + 2 and lexemes[at].kind in _UNITS:
        at += 1
    if not signed and at == first:
        return None  # "M 12": a figure without a sign before it must say of what
    return size, number, at, (first, at)


def _name_at(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]) -> tuple[int, int] | None:
    """The size named at an index, and the index behind its name; the longest name wins."""
    for end in range(min(at + _MOST, len(lexemes)), at, -1):
        if lexemes[at].kind in _SIGNS or lexemes[end - 1].kind in _SIGNS:
            continue  # "S:" is the name and a sign
        words = "".join((" " if i > at and not lexemes[i].glued else "") + lexemes[i].text for i in range(at, end))
        size = sizes.get(canonical(words))
        if size is not None:
            return size, end
    return None
