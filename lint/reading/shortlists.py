"""Rows that are lists of stitches parted by other signs than commas: "inc-5sc-inc-5sc", "5sc; inc; 5sc; inc", "inc . 5sc . inc . 5sc"."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.stream import OPENERS, Stream

_SIGNS = ("dash", ";", ".", "|")
_ITEM = ("number", "stitch", "increase", "decrease")  # "3dc-cl" is one stitch, and so are those that a pattern names
_WORK = _ITEM[1:]
_PAIRED = ("stitch", "any_stitch", "special", "one_stitch", "group_word")
_FEWEST = 3  # items that make a list


def signs_as_commas(stream: Stream) -> Stream:
    """The row with such signs as commas, where it is nothing but short items and what ends it.

    A last item could as well be the printed count behind a sign, so that it has to stand in the list before, or the
    signs have to be hyphens without a space.
    """
    end = next((at for at, item in enumerate(stream.lexemes) if item.kind in (*OPENERS, "join", "turn", ",")), None)
    words = stream.lexemes[:end]
    while words and words[-1].kind in (".", ";"):
        words = words[:-1]
    for sign in _SIGNS:
        at = [index for index, item in enumerate(words) if item.kind == sign]
        items = _items(words, at)
        if not at or not all(map(_short, items)):
            continue
        glued = sign == "dash" and all(words[i].glued and words[i + 1].glued for i in at)
        listed = len(items) >= _FEWEST and _told(items[-1]) in map(_told, items[:-1])
        if glued and (len(items) >= _FEWEST or _figure_glued(items[0])) or listed:
            changed = [replace(item, kind=",") if i in at else item for i, item in enumerate(stream.lexemes)]
            return Stream(changed, stream.vocabulary)
    return stream


def crosses(stream: Stream) -> Stream:
    """The row with the star of "8*(2 sc, inc)" as the cross that it is there: close between a figure and a bracket."""
    changed = list(stream.lexemes)
    for at, (figure, star, bracket) in enumerate(zip(changed, changed[1:], changed[2:], strict=False)):
        close = star.kind == "star" and star.text == "*" and star.glued and bracket.glued
        if close and figure.kind == "number" and bracket.kind in OPENERS:
            changed[at + 1] = replace(star, kind="word", text="x")
    return Stream(changed, stream.vocabulary)


def pairs_as_two(stream: Stream) -> Stream:
    """The row with "a pair of sc" as "2 sc"."""
    found: list[Lexeme] = []
    at = 0
    while at < len(stream.lexemes):
        first = at + 1
        words = stream.lexemes[first : first + 3]
        pair = (
            stream.lexemes[at].kind == "the"
            and [item.lower for item in words[:2]] == ["pair", "of"]
            and words[-1].kind in _PAIRED
        )
        if pair and len(words) == 3:
            begun, end = stream.lexemes[at], words[1]
            found.append(Lexeme("number", "pair", begun.start, end.end, begun.glued, "word", 2))
            at = first + 2
        else:
            found.append(stream.lexemes[at])
            at += 1
    return Stream(found, stream.vocabulary) if len(found) < len(stream.lexemes) else stream


def _items(words: list[Lexeme], at: list[int]) -> list[list[Lexeme]]:
    cuts = [-1, *at, len(words)]
    return [words[start + 1 : end] for start, end in zip(cuts, cuts[1:], strict=False)]


def _short(item: list[Lexeme]) -> bool:
    """Whether an item is a stitch, or a number of one: "inc", "5sc", "sc 4"."""
    kinds = [one.kind for one in item]
    return 1 <= len(kinds) <= 2 and all(kind in _ITEM for kind in kinds) and sum(kind in _WORK for kind in kinds) == 1


def _figure_glued(item: list[Lexeme]) -> bool:
    """Whether a figure stands close to its stitch: "2sc-inc" are two stitches and an increase, "sc-inc" is one."""
    return len(item) == 2 and item[0].kind == "number" and item[1].glued


def _told(item: list[Lexeme]) -> tuple[str, ...]:
    return tuple(one.lower for one in item)
