"""Stitches that a row passes over without a word on its way from a run of stitches to the space behind them."""

from __future__ import annotations

from lint.place import TargetKind
from lint.tree import Group, Work
from lint.working.cursor import Cursor
from lint.working.fabric import Node


def leads_past(step: Work | Group) -> bool:
    """Whether where a step goes is named so that what lies before it need not be said: "in next V-st", "in ch-2 sp of next shell"."""
    return any(place.of is not None or place.targets[0].kind is TargetKind.SPECIAL for place in step.places)


def passed_in_silence(made: list[Node], first: int, cursor: Cursor) -> int:
    """How many stitches lie between that of the last stitch before `made[first]` and the space which this one goes into.

    None where chains lead over them, or where the stitch before did not stand beside them: 3 dc in each space of a
    granny square pass over those below, but a run of sc that ends two dc before its corner leaves them out.
    """
    if not 0 < first < len(made) or not cursor.known:
        return 0
    before, after = made[first - 1].parents, made[first].parents
    if not before or not after or not before[-1].is_stitch or not after[0].is_space:
        return 0
    nodes = cursor.nodes
    at = min(cursor.at, len(nodes)) - 1
    while at > 0 and nodes[at] is not after[0] and nodes[at].is_stitch:
        at -= 1
    if at <= 0 or nodes[at] is not after[0]:
        return 0
    passed, own = 0, True
    while at > 0:
        at -= 1
        node = nodes[at]
        if node is before[-1]:
            return passed if not (own and passed) or _runs_up(made, first, nodes, at) else 0
        own = own and node.group == after[0].group != 0
        if not node.is_stitch or node.chain or node.kind == "sl st":
            return 0
        passed += 1
    return 0


def _runs_up(made: list[Node], first: int, nodes: list[Node], at: int) -> bool:
    """Whether neighbours of the row below were worked one after the other up to `nodes[at]`.

    "Sc in next sc, shell in next ch-2 sp" goes from stitch to shell, whose own stitches lie before its space.
    """
    one = made[first - 2] if first > 1 else None
    return one is not None and bool(one.parents) and at > 0 and one.parents[-1] is nodes[at - 1] and one.is_stitch
