"""Reads "increasing in the last 3 sts", "increasing 1 st in each of next 4 sts": an increase in each of several stitches."""

from __future__ import annotations

from lint.place import Place, Which
from lint.reading.places.targets import target
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Step, Work


def increased_in_each(stream: Stream, steps: list[Step], start: int) -> bool:
    """Reads such words behind "increasing"; takes nothing where it may be one increase in all, or in stitches told already."""
    begun = stream.at
    one = stream.kind() == "number" and stream.peek().number == 1 and stream.kind(1) == "any_stitch"
    stream.at += 2 * one
    which = None
    if stream.take_if("in"):
        each = stream.take_if("each") is not None
        stream.skip("of", "the")
        which = {"last": Which.LAST, "next": Which.NEXT}.get(stream.kind())
        which = which if (each or not one) and (which is Which.NEXT or _runs_to_end(steps)) else None
    number = stream.take() and stream.amount() if which is not None else None
    sort = target(stream) if number is not None and (number.lone or 0) > 1 else None
    if sort is None or stream.kind() not in (*SIGNS, "end", "turn", "join", *OPENERS):
        stream.at = begun
        return False
    span = stream.span_from(start)
    steps.append(Work(span, "inc", places=(Place(span, which, (sort,), number=number, each_of=True),)))
    return True


def _runs_to_end(steps: list[Step]) -> bool:
    """Whether the clause before is a run over the row, whose last stitches are the row's."""
    before = steps[-1] if steps else None
    return isinstance(before, Work) and [place.which for place in before.places] == [Which.EACH]


__all__ = ["increased_in_each"]
