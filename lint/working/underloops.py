"""What the loops of a round stand over: stitches that every loop of a length passes without a word."""

from __future__ import annotations

from collections.abc import Sequence

from lint.working.fabric import Node


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


__all__ = ["passed_alike"]
