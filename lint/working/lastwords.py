"""What the last words of a row tell of its end: into which loop or part its last stitch goes, and how far its last run."""

from __future__ import annotations

from lint.place import Limit, Place, TargetKind, Which
from lint.tree import Evenly, Group, Repeat, Shaping, Step, Work, walk
from lint.working.fabric import Node


def into_any_loop(step: Step | None) -> bool:
    """Whether the row's last stitch goes "in last loop", whatever its length."""
    place = step.places[-1] if isinstance(step, (Work, Group)) and step.places else None
    target = place.targets[0] if place is not None else None
    return target is not None and target.kind is TargetKind.SPACE and target.length is None


def joins_loop(before: Node, stitch: Node, after: Node) -> bool:
    """Whether a stitch goes into another piece, in the middle of a loop."""
    elsewhere = any(place.kind == "elsewhere" for place in stitch.parents)
    return elsewhere and before.kind == after.kind == "space"


def into_part(step: Step | None) -> bool:
    """Whether the row's last work goes into a part of something: "5 dc in ch-2 sp of next V"."""
    last = (
        next((s for s in reversed(tuple(walk((step,)))) if isinstance(s, (Work, Group)) and s.places), None)
        if step
        else None
    )
    return last is not None and last.places[-1].of is not None


def last_limit(step: Step | None) -> Limit | None:
    """How far the row's last run or repeat goes."""
    if isinstance(step, Repeat):
        return step.times.limit
    return step.places[-1].limit if isinstance(step, (Work, Group)) and step.places else None


def all_slip_stitches(steps: tuple[Step, ...]) -> bool:
    """Whether the row is made of slip stitches, which then are its stitches."""
    works = [step for step in walk(steps) if isinstance(step, (Work, Group, Evenly, Shaping))]
    whole = any(isinstance(s, Work) and s.places and _goes_along(s.places) for s in works)
    return whole and all(isinstance(step, Work) and step.stitch == "sl st" for step in works)


def _goes_along(places: tuple[Place, ...]) -> bool:
    """ "in each st", "in 2nd ch from hook and in next 9 ch": along the row below or a chain, not into one place."""
    from_hook = places[0].which is Which.FROM_HOOK and len(places) > 1
    return places[-1].which is Which.EACH or from_hook and places[-1].which is Which.NEXT
