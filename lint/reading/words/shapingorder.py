"""Shapings that are told behind their places: "evenly spacing 4 inc", "every 2nd st: inc", in the order in which they are read."""

from __future__ import annotations

from dataclasses import replace

from lint.lexeme import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

_SHAPED = ("increase", "decrease")
_SPACED = ("spacing", "spacing out", "spaced", "spreading", "spread", "distributing", "placing", "working", "making")
_ENDS = (",", ";", ".", "join", "turn", *OPENERS, *CLOSERS)


def shapings_in_order(stream: Stream) -> Stream:
    """The row's stream with "inc 4 evenly" and "inc in every 2nd st" for such words."""
    words = stream.lexemes
    if not any(item.kind in _SHAPED for item in words):
        return stream
    told: list[Lexeme] = []
    at = 0
    while at < len(words):
        found = _spaced_evenly(words[at : at + 4]) or _each_of_these(words[at : at + 6])
        behind = at + found[1] if found is not None else at
        ends = behind >= len(words) or words[behind].kind in _ENDS
        if found is None or not ends:
            told.append(words[at])
            at += 1
            continue
        told += found[0]
        at = behind
    return Stream(told, stream.vocabulary) if len(told) != len(words) else stream


def _spaced_evenly(words: list[Lexeme]) -> tuple[list[Lexeme], int] | None:
    """ "evenly spacing 4 inc" as "inc 4 evenly", and how many words that is; the number keeps its place in the text."""
    if [item.kind for item in words[::2]] != ["evenly", "number"] or len(words) < 4:
        return None
    evenly, spaced, number, shaped = words
    if shaped.kind not in _SHAPED or spaced.lower not in _SPACED and spaced.kind != "make":
        return None
    return [
        replace(shaped, start=evenly.start, end=evenly.end),
        number,
        replace(evenly, start=shaped.start, end=shaped.end),
    ], 4


def _each_of_these(words: list[Lexeme]) -> tuple[list[Lexeme], int] | None:
    """ "in every 2nd st: inc" as "inc in every 2nd st", and how many words that is."""
    led = bool(words) and words[0].kind == "in"
    kinds = [item.kind for item in words[led:]][:5]
    if kinds[:2] != ["each", "ordinal"] or kinds[2:3] not in (["any_stitch"], ["stitch"]) or kinds[3:4] != [":"]:
        return None
    if kinds[4:] not in (["increase"], ["decrease"]):
        return None
    shaped = words[led + 4]
    place = words[: led + 3]
    last = replace(place[-1], end=shaped.end)
    return [replace(shaped, start=place[0].start, end=place[0].start), *place[:-1], last], led + 5
