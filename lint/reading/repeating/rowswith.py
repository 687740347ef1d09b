"""Reads rows told by their number and one run: "Work 6 rounds with 1 dc in each dc", "4 rows of 1 sc in each st across"."""

from __future__ import annotations

from lint.amount import ONE
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.places.targets import target
from lint.reading.words.stream import OPENERS, Stream
from lint.tree import RowCall, Step, Work

_LEADS = ("with", "of", "make", ",", ":")


def rows_with_run(stream: Stream, steps: list[Step], start: int) -> bool:
    """Such a sentence, from its verb on to its end or its count; nothing taken for any other."""
    if stream.take_if("make") is None:
        return False
    stream.skip("another", "more")
    number = stream.amount()
    stream.skip("more")
    told = number is not None and stream.take_if("row", "round") and stream.take_if(*_LEADS)
    stream.skip("make")
    each = stream.amount() if told else None
    stitch = stream.take_if("stitch") if told and each in (None, ONE) else None
    if stitch is None or stitch.value == "sl st" or not stream.take_if("in") or not stream.take_if("each"):
        stream.at = start
        return False
    sort = target(stream)
    stream.skip("around", "across")
    if sort is None or not (stream.done or stream.kind() in (".", ";", "dash", "=", *OPENERS)):
        stream.at = start
        return False
    span = stream.span_from(start)
    run = Place(span, Which.EACH, (sort,), limit=Limit(LimitKind.END))
    steps.append(RowCall(span, None, None, rows=number, own=((Work(span, stitch.value, places=(run,)),),)))
    return True


__all__ = ["rows_with_run"]
