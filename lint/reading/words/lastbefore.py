"""The last stitches before a place: "dc in each st to last 2 sts before ch-2 sp, dc in last 2 sts" are not the row's last."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.place import Limit, LimitKind, TargetKind, Which
from lint.tree import Chain, Group, Marker, Remark, Repeat, Step, Work

_IDLE = (Remark, Chain, Marker)
_STITCHES = (TargetKind.STITCH, TargetKind.ANY_STITCH)


def last_before_place(steps: list[Step]) -> list[Step]:
    """The steps, in which "last" is "next" where just as many stitches are worked as a run before them stopped short of a place."""
    found = [
        replace(step, items=tuple(last_before_place(list(step.items)))) if isinstance(step, Repeat) else step
        for step in steps
    ]
    for at, step in enumerate(found):
        limit = _limit(step)
        if limit is not None and limit.kind is LimitKind.BEFORE and limit.short is not None:
            for index in _up_to_it(found, at + 1, limit.short):
                found[index] = replace(found[index], places=_in_turn(found[index]))
    return found


def _limit(step: Step) -> Limit | None:
    if isinstance(step, Repeat):
        return step.times.limit
    return step.places[-1].limit if isinstance(step, (Work, Group)) and step.places else None


def _up_to_it(steps: list[Step], first: int, short: Amount) -> list[int]:
    """Indexes of the clauses from `first` on that use just so many stitches; none where they use more or fewer."""
    used, indexes = Amount.of(0), []
    for index in range(first, len(steps)):
        step = steps[index]
        if isinstance(step, _IDLE):
            continue
        taken = _taken(step)
        if taken is None:
            return []
        used = used.plus(taken)
        indexes.append(index)
        if used == short:
            return indexes
    return []


def _taken(step: Step) -> Amount | None:
    """How many stitches a clause uses that works into next or last ones; None for any other."""
    if isinstance(step, Work) and not step.places:
        return Amount.of(step.together) if step.together and step.number.lone == 1 else None
    if not isinstance(step, (Work, Group)) or len(step.places) != 1:
        return None
    place = step.places[0]
    plain = place.which in (Which.NEXT, Which.LAST) and place.targets[0].kind in _STITCHES
    return place.number if plain and place.limit is None and not place.middle and place.of is None else None


def _in_turn(step: Step) -> tuple:
    return tuple(replace(place, which=Which.NEXT) if place.which is Which.LAST else place for place in step.places)


__all__ = ["last_before_place"]
