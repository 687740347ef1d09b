"""What a piece begins on: its own ring or chain, the piece before, or an edge that is not known."""

from __future__ import annotations

from lint.pattern import Part
from lint.tree import MakeRing
from lint.working.fabric import Fabric
from lint.working.instances import Instance
from lint.working.starts import begins_bare, begins_on_chain, begins_own, first_steps, founds
from lint.working.trials import PieceState


def open_part(part: Part, instances: list[Instance], state: PieceState, first: bool) -> None:
    """Put the state of the work where a part begins that has these rows; `first`: it is the pattern's first part."""
    bare = begins_bare(instances)
    carried, state.carried = state.carried, None
    if begins_own(instances):
        made = any(isinstance(step, MakeRing) for instance in instances[:2] for step in instance.steps)
        state.begin(Fabric() if made or founds(first_steps(instances)) else Fabric.ring())
    elif state.fastened or part.make > 1 or state.fabric is None or bare and state.bare_starts:
        state.fabric, state.left_off = Fabric.unknown(False), state.fabric if part.make == 1 else None
    elif not first and carried is not None and begins_on_chain(instances, carried):
        state.carried = (
            carried  # "…, ch 25, turn." ends the piece before, and this one is worked along that chain first
        )
    state.bare_starts = state.bare_starts or first and bare
    state.earlier.part = part.name
