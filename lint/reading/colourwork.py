"""Puts the colours of tapestry and mosaic rows out of the way: "2 sc A, 6 sc B", "(B) 8 sc", "with A sc 4, with B sc 2".

A colour within a row changes no count. Only letters and names that the pattern gives to its yarns are taken for colours.
"""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.stream import CLOSERS, OPENERS, Stream

_WORK = ("number", "stitch", "increase", "decrease", "special", "one_stitch")
_ENDS = (",", ";", ".", "and", "turn", "join", "star", *OPENERS, *CLOSERS)
_LETTERS = ("A", "B", "C", "D", "E", "F", "G", "H", "MC", "CC")


def colours_apart(stream: Stream) -> Stream:
    """The row's stream without the colours that stand within its work; a comma behind one that opens a clause."""
    found: list[Lexeme] = []
    at, changed = 0, False
    while at < len(stream.lexemes):
        skipped, comma = _colour_at(stream, at, found)
        if not skipped:
            found.append(stream.lexemes[at])
            at += 1
            continue
        changed, at = True, at + skipped
        if comma:
            before = stream.lexemes[at - 1]
            found += [*stream.lexemes[at - skipped : at], Lexeme(",", "", before.end, before.end, True)]
    return Stream(found, stream.vocabulary) if changed else stream


def _colour_at(stream: Stream, at: int, read: list[Lexeme]) -> tuple[int, bool]:
    """How many lexemes from `at` on are a colour to be passed; and whether they stay, with a comma behind them."""
    one = stream.lexemes[at]
    after = [_kind(stream, at + ahead) for ahead in range(4)]
    opens = not read or read[-1].kind in _ENDS
    if one.kind in OPENERS and _colour(stream, at + 1) and after[2] in CLOSERS and after[3] in _WORK:
        return (3, False) if opens else (0, False)  # "(B) 8 sc"
    if one.kind == "with" and _colour(stream, at + 1) and after[2] in _WORK and opens:
        return 2, True  # "with B sc 2"
    if one.kind in ("in", "with") and _colour(stream, at + 1) and after[2] in (*_ENDS, "end") and _worked(read):
        return 2, False  # "2 sc in A,"
    if one.kind == "in" and _colour(stream, at + 1) and after[2] in (*_ENDS, "end") and not opens:
        return 2, False  # "2 sc in each st in MC", "[…] 3 times in CC"
    if not _colour(stream, at):
        return 0, False
    if read and opens and read[-1].kind in (",", ";", ".") and after[1] in (":", "dash") and after[2] in _WORK:
        return 2, False  # ", B: 4 sc"
    if after[1] in (*_ENDS, "end") and _worked(read):
        return 1, False  # "6 sc B,"
    return 0, False


def _kind(stream: Stream, at: int) -> str:
    return stream.lexemes[at].kind if at < len(stream.lexemes) else "end"


def _colour(stream: Stream, at: int) -> bool:
    if at >= len(stream.lexemes):
        return False
    item, named = stream.lexemes[at], stream.vocabulary.colours
    return item.lower in named and (item.kind == "word" or item.text in _LETTERS)


def _worked(read: list[Lexeme]) -> bool:
    """Whether a stitch with its number, and no more, stands last: "2 sc", "sc 6"."""
    kinds = [item.kind for item in read[-3:]]
    listed = kinds[-2:] in (["number", "stitch"], ["stitch", "number"])
    return listed and (len(kinds) < 3 or kinds[0] in (*_ENDS, ":"))
