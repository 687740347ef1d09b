"""Stitches bound off, as translated garments say it: "bind off 5 sts at each end", "Cast off 4 sts, sc to end".

Where it says at which edge, they are lost there as by a decrease; where they come first or last in the row,
slip stitches go over them.  "Bind off." alone says nothing of how the row is worked.
"""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.growth import ShapedWhere
from lint.lexeme import Lexeme
from lint.place import Place, Which
from lint.reading.clauses.base import all_read, is_run
from lint.reading.clauses.shaping import ShapingClauses
from lint.reading.places.targets import ANY
from lint.reading.repeating.shapedrows import shaped_rows
from lint.reading.words.lists import count_alone
from lint.reading.words.stream import OPENERS, SIGNS
from lint.tree import FastenOff, Shaping, Work

_ENDS = (*SIGNS, "end", "turn", "dash", "=", *OPENERS)
_EDGES = (
    "armhole",
    "armholes",
    "raglan",
    "chamfer",
    "underarm",
    "underarms",
    "neck",
    "neckline",
    "shoulder",
    "shoulders",
)


def bound_off(clauses: ShapingClauses, start: int) -> bool:
    """Read "bind off 5 sts" with its edge and its rows, if they are told; anything else is work left open."""
    stream = clauses.stream
    stream.take()
    if clauses.has_work() and stream.kind() in (".", "end", "join", *OPENERS) and all_read(clauses.steps):
        clauses.steps.append(FastenOff(stream.span_from(start)))  # "sc in each st across. Bind off."
        return True
    stream.skip("the")
    named = stream.take_if("first", "last")
    number = stream.amount()
    bare = stream.kind() in (*_ENDS, "at", "then", "and")  # "Cast off 4, dc to end": of nothing but stitches
    counted = number is not None and (stream.take_if("any_stitch", "stitch") is not None or bare)
    if counted and (
        named is None and _at_an_edge(clauses, start, number) or _slipped_over(clauses, start, number, named)
    ):
        return True
    stream.at = start
    return clauses.read_open_work(start)


def _at_an_edge(clauses: ShapingClauses, start: int, number: Amount) -> bool:
    stream = clauses.stream
    before = stream.at
    stream.take() if stream.kind() == "from" or stream.word("on") else None
    where = clauses.shaped_where()
    beside = not clauses.has_work() or is_run(clauses.steps[-1])
    if where not in (ShapedWhere.EACH_END, ShapedWhere.ONE_END) or not beside or clauses.stops_short():
        if where is not ShapedWhere.ONE_END:  # "sc to last 5 sts, bind off 5 sts at neck edge": those last ones
            stream.at = before
        return False
    _past_what_for(clauses)
    shaping = Shaping(stream.span_from(start), number, False, where)
    rows = None if clauses.has_work() else shaped_rows(stream, shaping, start)
    clauses.steps += rows or [shaping]
    return True


def _slipped_over(clauses: ShapingClauses, start: int, number: Amount, named: Lexeme | None) -> bool:
    """Whether the stitches are the row's first or last ones: "bind off 5 sts, sc to end", "sc to last 5 sts, bind off 5"."""
    stream = clauses.stream
    _past_what_for(clauses)
    first = not clauses.has_work() and stream.kind() in (",", "then", "and", ";", ".") and stream.work_at(stream.at + 1)
    first = first and not (stream.kind(1) in OPENERS and count_alone(stream, 1))  # "Bind off 5 sts. (12)"
    last = clauses.stops_short() and stream.kind() in _ENDS
    if not (first or last) or named is not None and first != (named.kind == "first"):
        return False
    place = Place(stream.span_from(start), Which.NEXT, (ANY,), number=number)
    clauses.steps.append(Work(stream.span_from(start), "sl st", ONE, places=(place,)))
    return True


def _past_what_for(clauses: ShapingClauses) -> None:
    """Takes "for (the) armhole", "for raglan chamfer": what is shaped, which is no matter to the number."""
    stream, before = clauses.stream, clauses.stream.at
    if stream.take_if("for"):
        stream.skip("the", "each", "first", "ordinal")
        at = stream.at
        while stream.word(*_EDGES):
            stream.take()
        if stream.at > at and stream.kind() in _ENDS:
            return
    stream.at = before
