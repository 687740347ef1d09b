"""Reads work in what is left of a row: "1 sc in all others", "complete the round in sc", "sc in half the row"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.growth import ShapedWhere
from lint.place import Limit, LimitKind, Place, TargetKind, Which
from lint.reading.counting.atordinals import first_ones, numbered, spread, taken
from lint.reading.places.limits import limit
from lint.reading.places.targets import ANY
from lint.reading.words.runs import alongside
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Chain, Group, Join, Loops, Remark, Shaping, Step, Turn, UseYarn, Work

_ENDS = (*SIGNS, "end", "turn", "join", "dash", "=", *OPENERS, *CLOSERS)
_FINISH = ("complete", "finish", "end", "continue", "continuing", "finishing", "completing")
_IDLE = (Chain, Join, Loops, Remark, Turn, UseYarn)


def in_all_others(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "2 sc in first and last st, sc in all others", "3 sc in each corner st and 1 sc in all other sts": the stitches left.

    What goes before tells which they are: the first and the last, or the corners.  "Every other st" may be every second one.
    """
    if stream.kind() in ("make", "and"):
        stream.take()
    number = stream.amount()
    stitch = stream.take_if("stitch")
    if stitch is None or number not in (None, ONE) or not _others(stream):
        return False
    span = stream.span_from(start)
    run = Work(span, stitch.value, ONE, (Place(span, Which.EACH, (ANY,), limit=limit(stream)),), number_said=True)
    if stream.kind() not in _ENDS:
        return False
    run = replace(run, span=stream.span_from(start), number_said=number is not None)
    first = next((i for i, step in enumerate(steps) if not isinstance(step, _IDLE) and not _slips(step)), len(steps))
    before = steps[first:]  # a chain or a turn among them would be worked somewhere between
    if len(before) == 1 and isinstance(before[0], Shaping) and before[0].where is ShapedWhere.EACH_END:
        steps.append(run)  # "inc in first and last st, sc in all others"
        return True
    if not before or not all(isinstance(step, (Work, Group)) and step.places for step in before):
        return False
    if all(_in_corners(step) for step in before):
        steps[first:] = [run, *(alongside(step) for step in before)]
        return True
    ends = _at_the_ends(before)
    if ends is None and first_ones(before):
        steps.append(
            run
        )  # "2 sc in first st, sc in the rest, 2 sc in last st": what comes behind takes its place of it
        return True
    if ends is None and numbered(before):
        steps[first:] = spread(before, run, taken(steps[:first]))  # "2 sc in 6th and 12th st, sc in all others"
        return True
    if ends is None:
        return False
    steps[first:] = [ends[0], run, ends[1]]
    return True


def _others(stream: Stream) -> bool:
    """Takes "in all (the) others", "in all other sts", "in each of the other sts"."""
    if not stream.word("in all") and stream.take_if("in") is None:
        return False
    every = stream.word("in all") and bool(stream.take())
    each = stream.take_if("each", "all")
    every = every or each is not None and (each.kind == "all" or "of" in each.lower or stream.kind() == "of")
    stream.skip("of", "the")
    if stream.word("others", "rest", "the others", "the rest"):
        stream.take()
        return True
    told = stream.kind() == "any_stitch" and (stream.kind(1) == "between" or stream.word("between", ahead=1))
    if told and stream.kind(2) in _ENDS:
        stream.at += 2  # "in each st between"
        return True
    if every and stream.word("other", "remaining"):
        stream.take()
        return stream.take_if("any_stitch") is not None
    return False


def _slips(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch == "sl st"


def _in_corners(step: Work | Group) -> bool:
    """Whether work goes into every corner, and nowhere else."""
    place = step.places[0]
    each = len(step.places) == 1 and place.which is Which.EACH and place.of is None
    reach = place.limit is None or place.limit.kind is LimitKind.END
    return each and reach and place.targets[0].kind is TargetKind.CORNER


def _at_the_ends(before: list[Work | Group]) -> tuple[Step, Step] | None:
    """What goes into the first and what into the last stitch, where that is all there is."""
    places = [place for step in before for place in step.places]
    single = all(place.number == ONE and place.of is None for place in places)
    if not single or [place.which for place in places] != [Which.FIRST, Which.LAST]:
        return None
    first, last = (before * 2)[:2]
    return replace(first, places=(places[0],)), replace(last, places=(places[1],))


def rest_of_row(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "complete the round in sc", "finish the row with hdc": one in each stitch that is left."""
    if not stream.word(*_FINISH):
        return False
    stream.take()
    stream.skip("the")
    if stream.take_if("row", "round") is None or stream.take_if("in", "with") is None:
        return False
    stitch = stream.take_if("stitch")
    if stitch is None or stitch.value == "sl st" or stream.kind() not in _ENDS:
        return False
    span = stream.span_from(start)
    steps.append(Work(span, stitch.value, places=(Place(span, Which.EACH, (ANY,), limit=Limit(LimitKind.END)),)))
    return True
