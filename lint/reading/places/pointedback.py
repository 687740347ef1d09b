"""Finds which stitches "each of those" points back at: those that the run before it left out."""

from __future__ import annotations

from dataclasses import replace

from lint.place import LimitKind, Place, TargetKind, Which
from lint.tree import Step, Unread, Work

_NOT_TOLD = "which stitches are meant by “each of those” is not told"


def those_meant(steps: list[Step]) -> list[Step]:
    """The steps, with "sc around except the last 2, 2 sc in each of those" worked in the last two; else not understood."""
    found: list[Step] = []
    for step in steps:
        place = step.places[0] if isinstance(step, Work) and len(step.places) == 1 else None
        if place is None or not _points_back(place):
            found.append(step)
            continue
        before = found[-1] if found else None
        limit = before.places[-1].limit if isinstance(before, Work) and before.places else None
        if limit is not None and limit.kind is LimitKind.LAST and limit.number.lone:
            last = replace(place, which=Which.LAST, number=limit.number)
            found.append(replace(step, places=(last,)))
        else:
            found.append(Unread(step.span, "each of those", _NOT_TOLD))
    return found


def _points_back(place: Place) -> bool:
    """Whether a place is "each of those", with no number and no name of what they are."""
    plain = place.targets[0].kind is TargetKind.ANY_STITCH and place.number.lone == 1
    return place.which is Which.SAME and place.each_of and plain
