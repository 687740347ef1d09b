"""Tells the join that closes a round from slip stitches on the way, whatever they are called."""

from __future__ import annotations

from dataclasses import replace

from lint.place import TargetKind, Which
from lint.tree import FastenOff, Group, Join, NoJoin, Remark, Repeat, Step, Turn, Work, walk


def joined_on_the_way(steps: list[Step]) -> list[Step]:
    """ "join with sl st to ch-3 sp of next tile, ch 3, 3 dc in same sp": before more work, a slip stitch like any other."""
    found: list[Step] = []
    for index, step in enumerate(steps):
        if isinstance(step, Repeat):
            step = replace(step, items=tuple(joined_on_the_way(list(step.items))))
        into = step.places[0].targets[0].kind if isinstance(step, Join) and len(step.places) == 1 else None
        if into in (TargetKind.SPACE, TargetKind.SPECIAL) and step.places[0].which in (Which.NEXT, Which.SAME):
            if any(isinstance(after, (Work, Group)) and not _slip(after) for after in walk(tuple(steps[index + 1 :]))):
                step = Work(step.span, "sl st", places=step.places)
        found.append(step)
    return found


def _slip(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch == "sl st"


def closing_join(steps: list[Step]) -> list[Step]:
    """A slip stitch into the first stitch or the beginning chain, when nothing is worked after it, closes the round."""
    for index in range(len(steps) - 1, -1, -1):
        step = steps[index]
        if isinstance(step, (FastenOff, Turn, Remark, NoJoin)):
            continue
        if isinstance(step, Work) and step.stitch == "sl st" and len(step.places) == 1:
            place = step.places[0]
            to_chain = place.targets[0].kind in (TargetKind.TURNING_CHAIN,) or place.from_words == "top"
            own = index > 0 and any(isinstance(other, (Work, Group, Repeat)) for other in steps[:index])
            if own and (to_chain or place.which is Which.FIRST or place.ordinals):
                steps[index] = Join(step.span, step.places)
        break
    return steps
