"""Alters the last pass of a repeat: "…, ending last rep with sc in last 4 sts", "except work 3 sc in last st"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import Place
from lint.reading.words.stream import Stream
from lint.tree import Chain, Group, Repeat, Step, Work


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


def excepting(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "…; rep from * to end, except work 3 sc in last st": the last pass ends in so many."""
    words = stream.at
    stream.take()
    stream.skip("that", "for", "make")
    while stream.word("only", "just", "that"):
        stream.take()
    return _ends_in(stream, steps, start) or _back_to(stream, words)


def only_so_many(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "…; rep from * to end, working only 3 dc in last st": the same, in other words."""
    stream.at = start
    if stream.kind(1) == "with":
        stream.take()  # "finishing with"
    stream.take()
    stream.take_if("make")
    few = stream.word("only", "just") and stream.take() is not None
    return few and _ends_in(stream, steps, start) or _back_to(stream, start)


def _ends_in(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes "3 dc in last st": of the last item of the repeat before, its last pass makes so many."""
    step = steps[-1] if steps else None
    number = stream.amount()
    stitch = stream.take_if("stitch")
    stream.skip("in", "the")
    named = stream.take_if("last") is not None and stream.take_if("any_stitch", "stitch") is not None
    item = step.items[-1] if isinstance(step, Repeat) and step.items else None
    one = isinstance(item, Work) and len(item.places) == 1 and item.places[0].number == ONE and not item.together
    if not (named and stitch and number and one) or step.last_pass is not None or item.stitch != stitch.value:
        return False
    changed = replace(item, number=number, number_said=True)
    steps[-1] = replace(step, span=step.span.to(stream.span_from(start)), last_pass=(*step.items[:-1], changed))
    return True


def _back_to(stream: Stream, start: int) -> bool:
    """Puts the stream back: nothing was read."""
    stream.at = start
    return False


def _same_sort(one: Step, other: Step) -> bool:
    if isinstance(one, Work) and isinstance(other, Work):
        return one.stitch == other.stitch
    return isinstance(one, Group) and isinstance(other, Group) or isinstance(one, Chain) and isinstance(other, Chain)
