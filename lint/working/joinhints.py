"""What the place that a round is joined into shows of its beginning: "join in top of ch-3", "sl st in base of first ch-5"."""

from __future__ import annotations

from lint.place import Place, TargetKind, Which
from lint.tree import Chain, FastenOff, Group, Join, Remark, Repeat, Skip, Step, Turn, UseYarn, Work
from lint.working.chains import JoinHint
from lint.working.starts import into_round_start

_BEHIND = (FastenOff, Remark, Turn, UseYarn)


def join_hint(steps: tuple[Step, ...]) -> JoinHint | None:
    """What the round's own join shows of its beginning chain."""
    for step in reversed(steps):
        if isinstance(step, Join) and step.places:
            place = step.places[0]
            chain = next((one for one in steps if isinstance(one, Chain)), None)
            length = place.targets[0].length
            if (
                chain is not None
                and length is not None
                and (length.lone or 0) > (chain.length.lone or length.lone or 0)
            ):
                return None  # "ch 1 … join in top of ch 3": the chain joined into is none of this round's
            if place.targets[0].kind in (TargetKind.TURNING_CHAIN, TargetKind.CHAIN):
                return JoinHint(True, place.ordinals[0] if place.ordinals else None)
            if place.which is Which.FIRST and place.targets[0].kind is TargetKind.STITCH:
                return JoinHint(False)
    return None


def closes_at_base(steps: tuple[Step, ...]) -> bool:
    """Whether a round's last loop is closed into the foot of its first: the stitch of the join, which is taken then.

    "*Ch 3, sk 1 sc, sc in next sc; rep from * around, sl st in base of first ch-3" has no loop behind its last stitch:
    there the stitch of the join is one that the passes go over.
    """
    worked = [step for step in steps if not isinstance(step, _BEHIND)]
    if len(worked) < 2:
        return False
    last, before = worked[-1], worked[-2]
    joins = isinstance(last, Join) or isinstance(last, Work) and last.stitch == "sl st"
    if joins and _loops_all_round(worked):
        return not last.places or _base(last.places[0]) or into_round_start(last.places[0], None)
    if not joins or len(last.places) != 1 or not _base(last.places[0]):
        return False
    if isinstance(before, Repeat) and before.items:
        before = before.items[-1]
    return isinstance(before, Chain)


def _loops_all_round(worked: list[Step]) -> bool:
    """ "*Ch 5, sc in next st; rep from * around, ch 5, join": loops from the join on, the last of which is closed there."""
    first, *between, _ = worked
    chains = [step for step in between if not isinstance(step, Skip)]
    if not isinstance(first, Repeat) or len(first.items) < 2 or len(chains) != 1:
        return False
    begun, closing = first.items[0], chains[0]
    loops = isinstance(begun, Chain) and isinstance(closing, Chain) and begun.length == closing.length
    return loops and isinstance(first.items[-1], (Work, Group))


def _base(place: Place) -> bool:
    """The "base of first ch-5", or the first chain of such a loop."""
    target = place.targets[0]
    if target.kind is TargetKind.PLACE:
        return target.name == "join"
    return target.kind is TargetKind.CHAIN and place.which is Which.FIRST and target.length is None
