"""Slip stitches that a round of loops begins with: "sl st in same st as join, (ch 3, sl st in next st) around, ch 3, join"."""

from __future__ import annotations

from lint.place import Which
from lint.tree import Chain, FastenOff, Join, Remark, Repeat, Skip, Step, Turn, Work


def begins_loops(step: Work, following: tuple[Step, ...]) -> bool:
    """Whether a slip stitch is the first of a round of loops, each to a slip stitch of its own, and takes its stitch.

    Only where the last loop stands by itself behind the repeat: else the last pass ends where the round began.
    """
    place = step.places[0] if len(step.places) == 1 else None
    if place is None or place.which not in (Which.SAME, Which.FIRST) or step.number.lone != 1:
        return False
    ahead = [one for one in following if not isinstance(one, Remark)]
    repeat, loop = (*ahead[:2], None, None)[:2]
    if not isinstance(repeat, Repeat) or not isinstance(loop, Chain) or len(repeat.items) < 2:
        return False
    chain, *skips, slip = repeat.items
    if not all(isinstance(one, Skip) for one in skips):
        return False
    closed = all(isinstance(one, (Join, Turn, FastenOff, Skip)) or _slips(one) for one in ahead[2:])
    return closed and isinstance(chain, Chain) and _slips(slip) and chain.length == loop.length


def _slips(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch == "sl st"
