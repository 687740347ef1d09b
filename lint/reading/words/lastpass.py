"""Alters the last pass of a repeat: "…, ending last rep with sc in last 4 sts", "except work 3 sc in last st"; and what is
worked before the end."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import Place
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Chain, Group, Remark, Repeat, Step, Work

_EXCEPT = ("except", "excepting", "excluding", "bar")

_ENDS = ("join", "joining", "fasten_off")
_BEFORE_END = ("the", "round", "row", "last", *_ENDS)


def before_the_end(stream: Stream, steps: list[Step], start: int) -> bool:
    """Passes "Before joining,", "Before you fasten off,": what is worked behind it stands in its order."""
    end = stream.next_of(*SIGNS, start=start)
    words = stream.lexemes[start + 1 : end]
    idle = all(item.kind in _BEFORE_END or item.lower in ("you", "closing") for item in words)
    ends = any(item.kind in _ENDS or item.lower == "closing" for item in words)
    stops = start > 0 and stream.lexemes[start - 1].kind in (*SIGNS, *CLOSERS)
    if not (steps and stops and stream.word("before") and idle and ends and stream.kind(end - stream.at) == ","):
        return False
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


def ending_in(step: Repeat, ending: Step) -> Repeat:
    """ "rep from * once more, ending last rep with sc in last 4 sts": the last pass stops before the like of it."""
    items = step.items
    index = next((i for i in range(len(items) - 1, -1, -1) if _same_sort(items[i], ending)), None)
    return replace(step, last_pass=items[:index]) if index is not None else step


def last_into(step: Repeat, stitch: str, found: tuple[Place, ...]) -> Repeat:
    """ "*…, sc in sp of next shell; rep from * across, working last sc in turning ch": no shell is left for that one."""
    item = step.items[-1] if step.items and step.last_pass is None else None
    if not isinstance(item, Work) or item.stitch != stitch or len(item.places) != 1 or item.places[0].of is None:
        return step
    return replace(step, last_pass=(*step.items[:-1], replace(item, places=found)))


def so_many_at_end(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "…; rep from * to end, working only 3 dc in last st", "but with 2 dc instead of 3 in last ch", "except 3 sc in last st":
    the last pass makes so many of the stitch that it ends in."""
    step = steps[-1] if steps else None
    item = step.items[-1] if isinstance(step, Repeat) and step.items and step.last_pass is None else None
    if not isinstance(item, Work) or len(item.places) != 1 or item.places[0].number != ONE or item.together:
        return False
    at, stream.at = stream.at, start
    excepted = stream.word(*_EXCEPT)
    altered = (excepted or stream.word("but")) and stream.take() is not None
    stream.at += altered and stream.word("that", "for")
    if stream.take_if("ending") is not None:
        stream.skip("last", "repeat", "with", "by")
    altered = _only(stream) or altered
    stream.skip("make", "with")
    altered = _only(stream) or altered
    named = _in_last(stream)
    if named:
        stream.skip(",", "make")
        altered = _only(stream) or altered
    number, stitch = stream.amount(), stream.take_if("stitch")
    altered = _only(stream) or altered
    others = _instead(stream)
    named = _in_last(stream) or named
    altered = _only(stream) or altered
    others = others or _instead(stream)
    told = others in (None, (item.number, None), (item.number, item.stitch)) and (named or others is not None)
    ended = stream.kind() in (*SIGNS, "end", "join", "turn", *OPENERS) and number is not None
    ended = ended and (excepted or number != item.number)  # "*…, 2 dc in next st* to end, except work 2 dc in last st"
    if not (told and ended and (altered or others) and stitch is not None and stitch.value == item.stitch):
        stream.at = at
        return False
    changed = replace(item, number=number, number_said=True)
    steps[-1] = replace(step, span=step.span.to(stream.span_from(start)), last_pass=(*step.items[:-1], changed))
    return True


def _only(stream: Stream) -> bool:
    """Takes "only", "just"."""
    return stream.word("only", "just") and stream.take() is not None


def _in_last(stream: Stream) -> bool:
    """Takes "in the last st"."""
    start = stream.at
    if stream.take_if("in") is not None:
        stream.skip("the", "very")
        if stream.take_if("last") is not None and stream.take_if("any_stitch", "stitch", "chain", "space") is not None:
            return True
    stream.at = start
    return False


def _instead(stream: Stream) -> tuple[Amount | None, str | None] | None:
    """Takes "instead of 3", "(instead of 3 dc)": what stands in every other pass; None where it is not told."""
    start = stream.at
    stream.skip(",")
    opened = stream.take_if(*OPENERS) is not None
    at = stream.at
    stream.at += stream.word("instead of", "in place of", "rather than")
    stream.at += 2 if stream.word("instead", "rather") and stream.word("of", "than", ahead=1) else 0
    led = stream.at > at
    stream.skip("the", "usual")
    number = stream.amount() if led else None
    stitch = stream.take_if("stitch") if number is not None else None
    if number is None or opened and stream.take_if(*CLOSERS) is None:
        stream.at = start
        return None
    return number, stitch.value if stitch is not None else None


def _same_sort(one: Step, other: Step) -> bool:
    if isinstance(one, Work) and isinstance(other, Work):
        return one.stitch == other.stitch
    return isinstance(one, Group) and isinstance(other, Group) or isinstance(one, Chain) and isinstance(other, Chain)
