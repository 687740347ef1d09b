"""Reads how often by the sides of a shape: "rep from * for remaining 3 sides", "[…] on each side", "repeat for all four sides"."""

from __future__ import annotations

from lint.lexeme import Lexeme
from lint.place import Limit, LimitKind
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Times, TimesKind

_LEADS = ("for", "on", "along", "across", "around", "over")
_OTHERS = ("remaining", "rem", "other", "following", "more")
_ALL = ("each", "all", "every")
_FILLERS = ("the", "of", "and", "corner", "corners")
_SIDES = ("side", "sides", "edge", "edges")


def by_sides(stream: Stream) -> Times | None:
    """Takes such words behind a bracket or a star: without a number, the passes go on to the end.

    The number of the other sides is of passes more, but for a bracket that is worked on those alone.
    """
    start = stream.at
    before = [item.kind for item in stream.lexemes[max(0, start - 3) : start]]
    bracket = bool(before) and before[-1] in CLOSERS
    led = stream.word(*_LEADS) and stream.take() is not None or stream.peek(-1).lower in _LEADS
    if not (bracket or "star" in before) or not led and stream.kind() != "number":
        stream.at = start
        return None
    others = every = named = several = False
    number = None
    while not stream.done and stream.kind() not in (*SIGNS, "end", "join", "turn"):
        item = stream.peek()
        if item.kind == "number" and number is None and (number := stream.amount()) is not None:
            continue
        others, every = others or item.lower in _OTHERS, every or item.lower in _ALL
        named = named or item.lower in _SIDES
        several = several or item.lower in ("sides", "edges")
        if item.lower not in (*_OTHERS, *_ALL, *_FILLERS, *_SIDES):
            break
        stream.take()
    told = named and (every or others) and (several or every)
    if not told or stream.kind() not in (*SIGNS, "end", "join", "turn"):
        stream.at = start
        return None
    span = stream.span_from(start)
    if number is None:
        if not _turns_corner(stream.lexemes[:start]):
            stream.at = start
            return None  # "(2 sc, ch 1, 2 sc) on each side": how many sides there are, nothing tells
        return Times(span, TimesKind.FILL, limit=Limit(LimitKind.END))
    return Times(span, TimesKind.MORE if others and not bracket else TimesKind.IN_ALL, number)


def _turns_corner(words: list[Lexeme]) -> bool:
    """Whether what is worked again goes to a corner or a space, or into one place for a corner, so that each pass is a side."""
    end = next((at for at in range(len(words) - 1, -1, -1) if words[at].kind in (*CLOSERS, "repeat", "star")), 0)
    depth, inside = 0, []
    for item in reversed(words[: end + 1]):
        depth += (item.kind in CLOSERS) - (item.kind in OPENERS)
        if item.kind in OPENERS and depth == 0 and words[end].kind in CLOSERS:
            break
        inside.append(item.kind)
    group = words[end].kind not in CLOSERS and any(kind in OPENERS for kind in inside)
    return group or "corner" in inside or "space" in inside
