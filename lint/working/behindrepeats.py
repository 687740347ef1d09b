"""What stands behind a repeat, or ends its passes, and what that tells of where it ends: "…; rep from * around, ch 3, join"."""

from __future__ import annotations

from lint.loops import is_loop
from lint.place import LimitKind, TargetKind, Which
from lint.reading.words.lists import alike
from lint.tree import Chain, Group, Join, Remark, Repeat, Skip, Step, Work


def moves_on(step: Step) -> bool:
    """ "…, sl st in next ch-1 sp": what a pass ends with, so that the next begins there."""
    return isinstance(step, Work) and step.stitch == "sl st" and [one.which for one in step.places] == [Which.NEXT]


def into_space(following: tuple[Step, ...]) -> bool:
    """Whether the next clause goes into a space, a shell or a corner, so that stitches before it are passed over."""
    ahead = next((step for step in following if isinstance(step, (Work, Group))), None)
    kinds = (TargetKind.SPACE, TargetKind.SPECIAL, TargetKind.CORNER)
    return bool(ahead and ahead.places) and ahead.places[0].targets[0].kind in kinds


def closes_last_side(following: tuple[Step, ...]) -> bool:
    """ "…; rep from * around, (sc, ch 2, sc) in corner, sc in each sc to end": the last corner is worked behind the repeat."""
    ahead = [step for step in following if isinstance(step, (Work, Group, Repeat, Skip))]
    works = [step for step in ahead if not (isinstance(step, Work) and step.stitch == "sl st")]
    first = works[0].places[0] if len(works) > 1 and isinstance(works[0], (Work, Group)) and works[0].places else None
    return first is not None and first.targets[0].kind is TargetKind.CORNER and first.which in (Which.NEXT, Which.LAST)


def to_a_sort(step: Repeat) -> bool:
    """Whether the passes of a repeat run up to a marker, a space or a corner, so that the last one ends there."""
    runs = [item.places[-1].limit for item in step.items if isinstance(item, Work) and item.places]
    return any(limit is not None and limit.kind is LimitKind.BEFORE for limit in runs)


def runs_on(following: tuple[Step, ...]) -> bool:
    """Whether the next clause works every stitch to the end."""
    ahead = following[0] if following else None
    place = ahead.places[0] if isinstance(ahead, Work) and len(ahead.places) == 1 else None
    return place is not None and place.which is Which.EACH and (not place.limit or place.limit.kind is LimitKind.END)


def trails_off(step: Repeat, following: tuple[Step, ...]) -> bool:
    """ "*ch 3, sk 2, sc in next; rep from * around, ch 3, join": the last loop passes over what all others do."""
    ahead = [s for s in following if not isinstance(s, Remark)]
    closes = len(ahead) > 1 and is_loop(ahead[0]) and isinstance(ahead[1], Join)
    return closes and any(alike(item, ahead[0]) for item in step.items)


def said_again(rest: list[Step], ending: Step) -> bool:
    """Whether the first of these steps is what the ending words say: the same work, or the loop that ends the pass."""
    last_loop = isinstance(rest[0], Chain) and isinstance(ending, Chain) and all(isinstance(s, Skip) for s in rest[1:])
    return last_loop or alike(rest[0], ending)
