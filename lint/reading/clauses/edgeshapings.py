"""Shaping at the edges told by its stitch: "sc2tog at each end of next 4 rows", "working 2 sc in first and last st".

Such a stitch says what is gained or lost there, and no more: the rest of the row is as it is told beside it, or as before.
"""

from __future__ import annotations

from lint.amount import Amount
from lint.growth import ShapedWhere
from lint.reading.clauses.base import is_run
from lint.reading.clauses.shaping import ShapingClauses
from lint.reading.repeating.shapedrows import shaped_rows
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import NOT_UNDERSTOOD, Shaping, Unread, Work

_ENDS = (*SIGNS, "end", "turn", "join", "dash", "=", *OPENERS)


def decreased_at_edges(clauses: ShapingClauses, start: int) -> bool:
    """Read "(work a) dc2tog at neck edge", with the rows that it is done in, if they are told."""
    stream = clauses.stream
    stream.take_if("make")
    _one(stream)
    stitch = stream.peek().value
    lost = _worked_together(stream)
    short = clauses.stops_short()
    if lost is None or clauses.has_work() and not short and not is_run(clauses.steps[-1]):
        return False
    words = stream.lexemes[stream.at : stream.at + 4]
    begins = any(item.kind == "beginning" for item in words)
    ends = any(item.kind in ("ending", "row_end") for item in words)
    where = clauses.shaped_where() if stream.kind() == "at" or stream.word("on") and stream.take() else None
    if where not in (ShapedWhere.EACH_END, ShapedWhere.ONE_END):
        return False
    shaping = Shaping(stream.span_from(start), Amount.of(lost), False, where)
    _once(stream)
    rows = None if clauses.has_work() else shaped_rows(stream, shaping, start)
    if rows is None and stream.kind() not in (*_ENDS, "and"):
        return False
    there = short and ends or begins and not clauses.has_work()
    if rows is None and where is ShapedWhere.ONE_END and there:  # "sc2tog at beg, sc to end": work like any other
        clauses.steps.append(Work(shaping.span, stitch, together=lost + 1))
        return True
    if short:  # "sc to last 4 sts, sc2tog at each end": of what is left, or of the whole row?
        clauses.steps.append(Unread(shaping.span, stream.words(start, stream.at), NOT_UNDERSTOOD))
        return True
    clauses.steps += rows or [shaping]
    return True


def increased_in_ends(clauses: ShapingClauses, start: int) -> bool:
    """Read "working 2 sc in (both the) first and last st" behind a run that goes over them."""
    stream = clauses.stream
    stream.take_if("make", "with")
    number = stream.amount()
    run = is_run(clauses.steps[-1]) if clauses.steps else False
    if not run or number is None or number.lone is None or number.lone < 2 or not stream.take_if("stitch"):
        return False
    if not stream.take_if("in") or not _first_and_last(stream, 1) or stream.kind() not in _ENDS:
        return False
    clauses.steps.append(Shaping(stream.span_from(start), Amount.of(number.lone - 1), True, ShapedWhere.EACH_END))
    return True


def decreased_over_ends(clauses: ShapingClauses, start: int) -> bool:
    """Read "decrease over the first two and the last two stitches"."""
    stream = clauses.stream
    stream.take()
    if (
        clauses.has_work()
        or stream.take_if("over") is None
        or not _first_and_last(stream, 2)
        or stream.kind() not in _ENDS
    ):
        return False
    clauses.steps.append(Shaping(stream.span_from(start), Amount.of(1), False, ShapedWhere.EACH_END))
    return True


def _one(stream: Stream) -> None:
    """Takes "a", "one", "1" before a stitch's name."""
    if stream.kind() == "the" or stream.kind() == "number" and stream.peek().number == 1 and stream.kind(1) == "stitch":
        stream.take()


def _worked_together(stream: Stream) -> int | None:
    """Takes "sc2tog", "dc 3 tog": how many stitches fewer that leaves."""
    if stream.kind() != "stitch" or stream.kind(1) != "number" or stream.kind(2) != "together":
        return None
    several = stream.peek(1)
    stream.at += 3
    return several.number - 1 if several.amount is None and several.number > 1 else None


def _once(stream: Stream) -> None:
    """Takes "1 time", "once"."""
    if stream.word("once"):
        stream.take()
    elif stream.kind() == "number" and stream.peek().number == 1 and stream.kind(1) == "times":
        stream.at += 2


def _first_and_last(stream: Stream, number: int) -> bool:
    """Takes "the first (2) (sts) and (the) last (2) sts", where each is of so many."""
    stream.take() if stream.word("both") else None
    for end in ("first", "last"):
        stream.skip("the", "in", "over")
        if stream.take_if(end) is None:
            return False
        several = stream.amount()
        if (several.lone if several is not None else 1) != number:
            return False
        named = stream.take_if("any_stitch", "stitch")
        if end == "first" and stream.take_if("and") is None or end == "last" and named is None:
            return False
    return True
