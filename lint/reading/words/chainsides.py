"""Asides that send the row to a chain's other side: "3 sc in last ch, (other side of the chain) 3 sc, inc"."""

from __future__ import annotations

from dataclasses import replace

from lint.lexeme import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

_LEADS = ("turn", "the", "on", "in", "to", "along", "make", "and", "from", "over", "then")
_LEAD_WORDS = ("now", "rotate", "work", "working", "go", "going", "down", "up", "along", "back", "switch", "to")
_OF_CHAIN = ("of", "the", "chain", "foundation", "beginning")
_STOPS = (",", ";", ".", ":", "end", *OPENERS, *CLOSERS)


def other_sides_told(stream: Stream) -> Stream:
    """The row with such an aside as words of its own, where a chain is spoken of before: its brackets would hide it.

    So is "turn to the other side," which turns no fabric.
    """
    words = stream.lexemes
    if not any(item.kind == "other_side" for item in words) or not any(item.kind == "chain" for item in words):
        return stream
    told: list[Lexeme] = []
    at, chained = 0, False
    while at < len(words):
        item = words[at]
        chained = chained or item.kind == "chain"
        opened = item.kind in OPENERS
        found = _aside(words, at + opened) if chained and (opened or item.kind == "turn") else None
        if found is None or opened and words[found[1]].kind not in CLOSERS:
            told.append(item)
            at += 1
            continue
        first, end = found
        told += [replace(item, kind=",", text=","), *words[first:end]]
        told.append(replace(words[end], kind=":", text=":") if end < len(words) else words[first])
        at = end + 1
    return Stream(told, stream.vocabulary)


def _aside(words: list[Lexeme], at: int) -> tuple[int, int] | None:
    """Where the words "other side of the chain" stand behind what leads to them, and where they end; None for other words."""
    first = at
    while first < len(words) and (words[first].kind in _LEADS or words[first].lower in _LEAD_WORDS):
        first += 1
    if first >= len(words) or words[first].kind != "other_side":
        return None
    end = first + 1
    while end < len(words) and words[end].kind in _OF_CHAIN:
        end += 1
    stops = end < len(words) and words[end].kind in _STOPS
    stops = stops or [item.kind for item in words[end : end + 2]] == ["and", "make"]  # "… and work 3 sc"
    return (first, end) if stops else None
