"""Tells that a round opens with the first pass itself: "Ch 3, dc in ring, ch 1, (2 dc in ring, ch 1) 5 times more"."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from lint.place import Which
from lint.tree import Chain, Group, Join, MakeRing, Remark, Step, Times, TimesKind, Turn, UseYarn, Work

_Made = tuple[str, int]  # a stitch, or "ch", and how many
_UNCLEAR: _Made = ("?", 0)


def behind_opening(times: Times, opening: list[Step], items: list[Step]) -> Times:
    """How often a bracket is worked: "5 times more" are five where the work before it is one pass, with its beginning chain."""
    if times.kind is not TimesKind.MORE:
        return times
    ring = max((at for at, step in enumerate(opening) if isinstance(step, (Join, MakeRing))), default=-1)
    begun, one = _runs(opening[ring + 1 :]), _runs(items)
    if _UNCLEAR in (*begun, *one) or not begun or not one or begun[0][0] != "ch":
        return times
    (stitch, number), behind = one[0], one[1:]
    less = [(stitch, number - 1), *behind] if number > 1 else behind  # the chain stands for the first of them
    if stitch == "ch" or begun[0][1] < 1 or begun[1:] not in ([*one], [*less]):
        return times
    return replace(times, kind=TimesKind.IN_ALL)


def _runs(steps: Iterable[Step]) -> list[_Made]:
    """What steps make one after the other: ("dc", 2), ("ch", 1)."""
    return [one for step in steps for one in _of(step)]


def _of(step: Step) -> Iterator[_Made]:
    if isinstance(step, (Remark, Turn, UseYarn)) or isinstance(step, Work) and step.stitch == "sl st":
        return
    if isinstance(step, Chain):
        yield "ch", step.length.lone or 0
    elif isinstance(step, Group) and all(place.which is not Which.EACH for place in step.places):
        yield from _runs(step.items)
    elif isinstance(step, Work) and not step.together and all(place.which is not Which.EACH for place in step.places):
        places = [place.number.lone or 0 for place in step.places] or [1]
        yield step.stitch, (step.number.lone or 0) * sum(places)
    else:
        yield _UNCLEAR


__all__ = ["behind_opening"]
