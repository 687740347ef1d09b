"""Lists that name the size at each figure: "3 sts for S, 4 for M and 5 for L", "60 (small), 66 (large)", "S: 11, M: 13".

The first size may go without its name where the others are named in brackets: "72 (medium: 76, large: 80)".
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lint.lexicon import Lexeme
from lint.reading.sizes.audience import canonical

_MOST = 5  # lexemes of a name: "6-12 months"
_SIZES = ("size", "sizes")
_SIGNS = (":", "=", "dash", ",", ";", ".")
_CLOSES = {"(": ")", "[": "]", "{": "}"}
TIMES = ("once", "twice", "thrice")
_UNITS = (
    "any_stitch",
    "stitch",
    "chain",
    "times",
    "row",
    "round",
    "space",
    "special",
    "more",
    "total",
)  # of "4 rounds total for S and 6 for L", too


@dataclass(frozen=True, slots=True)
class NamedList:
    """A figure for each size, the index behind the list, and the index of the words that say of what (none: equal).

    `said`: words that go without saying, "times" in "once (twice)".
    """

    values: tuple[int, ...]
    end: int
    unit: tuple[int, int]
    said: tuple[Lexeme, ...] = ()


def times_list(lexemes: list[Lexeme], at: int, sizes: int, own: int = 0) -> NamedList | None:
    """ "twice (3 times, 4 times)", "once (once, twice)": a list over the sizes in which the words for times stand too.

    `own`: how many of the sizes the passage is for, where it is for some.
    """
    start, values, worded = at, [], False
    while at < len(lexemes) and lexemes[at].kind == "number" and lexemes[at].amount is None and len(values) < sizes:
        values.append(lexemes[at].number)
        worded = worded or lexemes[at].lower in TIMES
        at += 1
        if lexemes[at : at + 1] and lexemes[at].kind == "times":
            worded, at = True, at + 1
        signs = tuple(_CLOSES) if len(values) == 1 else (",", ":", ";", "/")
        if len(values) == sizes or not lexemes[at : at + 1] or lexemes[at].kind not in signs:
            break
        at += 1
    if (
        len(values) < max(2, sizes)
        or own == len(values) - 1
        or not worded
        or not lexemes[at : at + 1]
        or lexemes[at].kind not in _CLOSES.values()
    ):
        return None
    at += 1
    at += bool(lexemes[at : at + 1]) and lexemes[at].kind == "times"
    end = lexemes[at - 1].end
    return NamedList(tuple(values), at, (start, start), (Lexeme("times", "times", end, end, False),))


def named_list(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]) -> NamedList | None:
    """The list that begins at an index; each size must be named once."""
    return _named(lexemes, at, sizes, {}, (at, at)) or _first_unnamed(lexemes, at, sizes)


def _first_unnamed(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]) -> NamedList | None:
    """ "72 (medium: 76, large: 80)", "9 ch (for 6 months 11 ch, for 12 months 13 ch)": the first size's figure goes before."""
    lead = _figure(lexemes, at)
    if lead is None or lead[1] >= len(lexemes) or lexemes[lead[1]].kind not in _CLOSES or len(set(sizes.values())) < 2:
        return None
    number, opened, unit = lead
    found = _named(lexemes, opened + 1, sizes, {0: number}, unit)
    closed = found is not None and lexemes[found.end : found.end + 1]
    if not closed or closed[0].kind != _CLOSES[lexemes[opened].kind]:
        return None
    return NamedList(found.values, found.end + 1, found.unit)


def _named(
    lexemes: list[Lexeme], at: int, sizes: Mapping[str, int], found: dict[int, int], unit: tuple[int, int]
) -> NamedList | None:
    """The figures named from an index on, with those that are `found` before it, until every size has one."""
    opened: str | None = None  # "9 ch for S (for M 11 ch, for L 13 ch)": the bracket around the others
    while at < len(lexemes):
        item = _figure_first(lexemes, at, sizes) or _name_first(lexemes, at, sizes)
        if item is None or any(size in found for size in item[0]):
            return None
        named, number, at, words = item
        found.update(dict.fromkeys(named, number))
        unit = words if words[0] < words[1] else unit
        if len(found) == len(sizes):
            if opened is not None and (at >= len(lexemes) or lexemes[at].kind != opened):
                return None
            return NamedList(tuple(found[size] for size in range(len(sizes))), at + (opened is not None), unit)
        while at < len(lexemes) and lexemes[at].kind in (",", ";", "/", "and", "or"):
            at += 1
        if opened is None and at < len(lexemes) and lexemes[at].kind in _CLOSES:
            opened, at = _CLOSES[lexemes[at].kind], at + 1
    return None


def figure_of_size(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]) -> tuple[int, int] | None:
    """A figure with the name of its size at an index, "medium: 23", "23 for M": the size, and the index behind."""
    item = (_figure_first(lexemes, at, sizes) or _name_first(lexemes, at, sizes)) if at < len(lexemes) else None
    return (item[0][0], item[2]) if item is not None else None


def _figure(lexemes: list[Lexeme], at: int) -> tuple[int, int, tuple[int, int]] | None:
    """One figure with the unit behind it, or "ch" before it: the figure, the index behind, and where the unit stands."""
    before = at
    if at < len(lexemes) and lexemes[at].kind in ("chain", "make"):
        at += 1 + (lexemes[at].kind == "make" and lexemes[at + 1 : at + 2] != [] and lexemes[at + 1].kind == "chain")
    if at >= len(lexemes) or lexemes[at].kind != "number" or lexemes[at].amount is not None:
        return None
    number, end = lexemes[at].number, at + 1
    if before < at and lexemes[at - 1].kind == "chain":
        return number, end, (at - 1, at)
    while end < len(lexemes) and end < at + 3 and lexemes[end].kind in _UNITS:
        end += 1
    return number, end, (at + 1, end)


def _figure_first(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]):
    """ "3 sts for S", "3 (small hat)": size, figure, the index behind, and where the unit stands."""
    if lexemes[at].kind != "number" or lexemes[at].amount is not None:
        return None
    number, at = lexemes[at].number, at + 1
    first = at
    while at < len(lexemes) and at < first + 2 and (lexemes[at].kind in _UNITS or lexemes[at].lower == "total"):
        at += 1
    words = (first, at)
    if at >= len(lexemes):
        return None
    close = _CLOSES.get(lexemes[at].kind)
    if close is None and lexemes[at].lower != "for":
        return None
    at += 1
    while at < len(lexemes) and lexemes[at].lower in ("for", "the", "both", *_SIZES):
        at += 1
    named = _names_at(lexemes, at, sizes, told=True)
    if named is None:
        return None
    size, at = named
    while at < len(lexemes) and (lexemes[at].lower in _SIZES or close and lexemes[at].kind == "word"):
        at += 1
    if close is not None:
        if at >= len(lexemes) or lexemes[at].kind != close:
            return None
        at += 1
    return size, number, at, words


def _name_first(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]):
    """ "S: 11", "Size M – 13 sts", "S/M 12 sc", "for L ch 31"."""
    told = lexemes[at].lower == "for"
    at += told
    while at < len(lexemes) and lexemes[at].lower in ((*_SIZES, "the", "both") if told else _SIZES):
        at += 1
    named = _names_at(lexemes, at, sizes) if at < len(lexemes) else None
    if named is None or named[1] + 1 >= len(lexemes):
        return None
    size, at = named
    signed = lexemes[at].kind in (":", "=", "dash") or told and lexemes[at].kind == ","
    spelled = lexemes[at - 1].text.isalpha()
    figure = _figure(lexemes, at + signed)
    if figure is None or lexemes[at + signed].kind == "make" and not (told or signed):
        return None
    number, at, unit = figure
    if not (signed or told or spelled) and unit[0] == unit[1]:
        return None  # "Size 6 12": a figure behind a figure, without a sign between them, must say of what
    return size, number, at, unit


def _names_at(
    lexemes: list[Lexeme], at: int, sizes: Mapping[str, int], told: bool = False
) -> tuple[tuple[int, ...], int] | None:
    """The sizes that share one figure, "Woman and Man", "S, M and L", and the index behind them.

    `told`: the figure stands before them; a name with another behind it is then the next size's.
    """
    first = name_at(lexemes, at, sizes)
    if first is None:
        return None
    found, end = [first[0]], first[1]
    while end < len(lexemes) and lexemes[end].kind in (",", "and", "/"):
        at = end + 1
        while at < len(lexemes) and (lexemes[at].kind == "and" or lexemes[at].lower == "for"):
            at += 1
        spelled = at < len(lexemes) and lexemes[at].kind != "number"  # "8 for 2, 10 for 4": the 10 is a figure
        more = name_at(lexemes, at, sizes) if spelled else None
        if (
            more is None
            or told
            and lexemes[more[1] : more[1] + 1]
            and lexemes[more[1]].kind in (":", "=", "dash", "number")
        ):
            break
        found.append(more[0])
        end = more[1]
    return tuple(found), end


def name_at(lexemes: list[Lexeme], at: int, sizes: Mapping[str, int]) -> tuple[int, int] | None:
    """The size named at an index, and the index behind its name; the longest name wins."""
    for end in range(min(at + _MOST, len(lexemes)), at, -1):
        if lexemes[at].kind in _SIGNS or lexemes[end - 1].kind in _SIGNS:
            continue  # "S:" is the name and a sign
        words = "".join((" " if i > at and not lexemes[i].glued else "") + lexemes[i].text for i in range(at, end))
        size = sizes.get(canonical(words))
        if size is not None:
            return size, end
    return None
