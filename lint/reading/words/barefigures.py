"""Figures that stand for plain stitches: "(2, inc) x 6 (24)", "5, dec, 5 [11]", as toys' charts in words have them.

A figure alone may be anything, so all this is read only in a row of increases or decreases that names no stitch and has its
count printed behind it in brackets, against which the reading is held (common practice, no source).
"""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import PLAIN

_SHAPING = ("increase", "decrease")
_NAMED = ("stitch", "special", "one_stitch", "group_word", "chain")
_PLACES = ("to", "last", "each")  # "dec 1 st, work to last 2 sts, dec 1 st": its figures are of places
_BEFORE = (",", ";", ":", "and", "+", "star", *OPENERS)
_AFTER = (",", ";", "and", "+", "star", *CLOSERS)


def figures_as_stitches(stream: Stream) -> Stream:
    """The row's stream, in which each such figure has a plain stitch behind it."""
    lexemes = stream.lexemes
    counted = _count(lexemes)
    if counted is None:
        return stream
    work = lexemes[:counted]
    kinds = [item.kind for item in work]
    if not any(kind in _SHAPING for kind in kinds) or any(kind in (*_NAMED, *_PLACES) for kind in kinds):
        return stream
    found: list[Lexeme] = []
    for at, item in enumerate(work):
        before = kinds[at - 1] if at else ","
        after = kinds[at + 1] if at + 1 < counted else ","
        leads = at < 2 or kinds[at - 2] in _BEFORE  # "3 sts, inc", and not the "3 sts" of "dec over 3 sts"
        if item.kind == "any_stitch" and before == "number" and leads and after in _AFTER:
            found.append(replace(item, kind="stitch", value=PLAIN))
            continue
        found.append(item)
        crossed = (
            before == "star" and at > 1 and kinds[at - 2] in (*_SHAPING, *CLOSERS, "number")
        )  # "inc *6": six times
        alone = not crossed and before in _BEFORE and after in _AFTER and not (before in OPENERS and after in CLOSERS)
        if item.kind == "number" and alone:
            found.append(Lexeme("stitch", "", item.start, item.end, True, value=PLAIN))  # at the figure's own words
    return Stream([*found, *lexemes[counted:]], stream.vocabulary) if len(found) > counted or found != work else stream


def _count(lexemes: list[Lexeme]) -> int | None:
    """Where the count in brackets at the row's end begins: "(24)", "[24 sts]"."""
    end = len(lexemes)
    while end and lexemes[end - 1].kind in (".", ";"):
        end -= 1
    if not end or lexemes[end - 1].kind not in CLOSERS:
        return None
    opened = next((at for at in range(end - 2, max(-1, end - 5), -1) if lexemes[at].kind in OPENERS), None)
    inside = [item.kind for item in lexemes[opened + 1 : end - 1]] if opened else []
    return opened if inside in (["number"], ["number", "any_stitch"], ["number", "stitch"]) else None


__all__ = ["figures_as_stitches"]
