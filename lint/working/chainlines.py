"""Chains in a line of their own, between one row and the next: "Ch 1.", "Ch 4, join to the other leg.".

Where the numbers of the rows go on, they are not the start of another piece.
"""

from __future__ import annotations

from lint.place import TargetKind, Which
from lint.tree import Chain, Group, Remark, Skip, Step, Work, walk
from lint.working.fabric import Fabric
from lint.working.instances import Instance
from lint.working.trials import PieceState

_TURNING = 5  # chains at most that lead up to a row
_TALLER = 1  # chains more than the first stitch is high: a loose hand works them so; common practice, no source


def led_on(line: Instance, coming: Instance | None, state: PieceState) -> bool:
    """Whether a line without a label is chains of the piece at hand; if so, the state has them before the coming row."""
    goes_on = coming is not None and state.number and coming.number == state.number + 1
    if line.row.label is not None or not goes_on or _begins_in_chain(coming.steps):
        return False
    lone = line.steps[0] if len(line.steps) == 1 else None
    if isinstance(lone, Chain) and (lone.length.lone or _TURNING + 1) <= _as_high(coming.steps, state):
        state.carried = lone
    elif not all(isinstance(step, Remark) for step in line.steps):
        state.fabric = Fabric.unknown(coming.kind == "round")  # what lies below the coming row, is not told
    return True


def _as_high(steps: tuple[Step, ...], state: PieceState) -> int:
    """How many chains may lead up to a row's first stitch: more of them are a bridge, or stitches to be."""
    first = next((step for step in walk(steps) if isinstance(step, Work) and step.stitch != "sl st"), None)
    height = state.rules.heights.get(first.stitch) if first is not None else None
    return min(_TURNING, height + _TALLER) if height is not None else _TURNING


def _begins_in_chain(steps: tuple[Step, ...]) -> bool:
    first = next((step for step in walk(steps) if isinstance(step, (Work, Group, Skip)) and step.places), None)
    place = first.places[0] if first is not None else None
    return place is not None and (place.which is Which.FROM_HOOK or place.targets[0].kind is TargetKind.RING)
