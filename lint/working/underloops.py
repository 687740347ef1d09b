"""What every pass of a round goes over without a word, and its last as well: under a loop, or on the way to a shell."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from lint.place import TargetKind, Which
from lint.tree import Chain, Group, Repeat, Step, Work, walk
from lint.working.fabric import Node

_STITCHES = (TargetKind.STITCH, TargetKind.ANY_STITCH)


def passed_alike(made: Sequence[Node], below: Sequence[Node], left: Sequence[Node], length: int | None) -> bool:
    """Whether the stitches left under a round's last loop are those that all its other loops of that length stand over.

    "*ch 4, dc in next 2 dc; rep from * around, ch 4, join" over a round with one sc between its pairs of dc.
    """
    kinds = tuple(node.kind for node in left if node.is_stitch)
    if not kinds or length is None:
        return False
    index = {id(node): at for at, node in enumerate(below)}
    worked = [(at, node) for at, node in enumerate(made) if node.parents]
    passed = set()
    for (at, one), (then, other) in zip(worked, worked[1:], strict=False):
        if then != at + 2 or made[at + 1].kind != "space" or made[at + 1].length != length:
            continue
        begin, end = index.get(id(one.parents[-1])), index.get(id(other.parents[0]))
        if begin is None or end is None:
            return False
        passed.add(tuple(node.kind for node in below[begin + 1 : end] if node.is_stitch))
    return passed == {kinds}


def passed_before(step: Step, made: Sequence[Node], below: Sequence[Node], left: Sequence[Node]) -> bool:
    """Whether the spaces left at a round's end are those that each pass crosses on its way to the shell left out there.

    "*…, sc in next lp, ch 3, shell in next shell; rep from * around, omitting last shell": the loop before that shell.
    """
    name = step.special.plain_name if isinstance(step, Work) and step.special is not None else None
    spaces = tuple(node.length for node in left if node.kind == "space")
    if name is None or not spaces:
        return False
    index = {id(node): at for at, node in enumerate(below)}
    worked = [node for node in made if node.parents]
    crossed = set()
    for one, other in pairwise(worked):
        if other.special != name or one.group == other.group:
            continue
        begin, end = index.get(id(one.parents[-1])), index.get(id(other.parents[0]))
        if begin is None or end is None:
            return False
        crossed.add(tuple(node.length for node in below[begin + 1 : end] if node.kind == "space"))
    return spaces in crossed


def fastens_loops(step: Repeat) -> bool:
    """ "*ch 4, skip 2 sc, sl st in next sc": loops held down by slip stitches, which are work on the stitches below."""
    works = [one for one in walk(step.items) if isinstance(one, (Work, Group))]
    places = [place for one in works for place in one.places]
    slips = bool(works) and all(isinstance(one, Work) and one.stitch == "sl st" for one in works)
    plain = all(
        p.which is Which.NEXT and p.of is None and not p.below and p.targets[0].kind in _STITCHES for p in places
    )
    return slips and bool(places) and plain and any(isinstance(one, Chain) for one in step.items)


def takes_all_spaces(step: Repeat) -> bool:
    """ "*sc in next sc, 3 sc in each ch-2 sp; rep from * around": the first pass would leave none for those behind it."""
    works = [one for one in step.items if isinstance(one, (Work, Group)) and one.places]
    spaces = [
        one
        for one in works
        for place in one.places
        if place.which is Which.EACH
        and not place.each_of
        and place.limit is None
        and place.of is None
        and place.targets[0].kind is TargetKind.SPACE
    ]
    stitches = any(
        one.places[0].which is Which.NEXT and one.places[0].targets[0].kind is not TargetKind.SPACE for one in works
    )
    return bool(spaces) and stitches


__all__ = ["fastens_loops", "passed_alike", "passed_before", "takes_all_spaces"]
