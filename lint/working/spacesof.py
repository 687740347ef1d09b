"""What the chain spaces of a row are a part of: a corner, a beginning chain, or a shell told stitch by stitch."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from lint.working.fabric import Node


class RowSpaces:
    """The spaces of a row, looked through once for each thing that is asked."""

    def __init__(self, nodes: Sequence[Node]) -> None:
        self.nodes = nodes

    @cached_property
    def begun(self) -> dict[int, int]:
        """By space, the length of the beginning chain that it is a part of: "ch-4 sp" where ch 4 counts as dc and ch 1."""
        found: dict[int, int] = {}
        real = {node.length for node in self.nodes if node.kind == "space"}
        for one, other in zip(self.nodes, self.nodes[1:], strict=False):
            for node, beside in ((one, other), (other, one)):
                if node.kind == "space" and beside.chain > node.length and beside.chain not in real:
                    found[id(node)] = beside.chain
        return found

    @cached_property
    def corners(self) -> set[int]:
        """The spaces at the corners: as the row's own count found them, else the longest."""
        spaces = [node for node in self.nodes if node.kind == "space"]
        marked = [node for node in spaces if node.corner]
        longest = max((node.length for node in spaces), default=0)
        return {id(node) for node in marked or spaces if marked or node.length == longest}

    @cached_property
    def within(self) -> set[int]:
        """The spaces that lie in a shell or V-stitch: of its name, or between stitches that stand in one place."""
        found = {id(node) for node in self.nodes if node.kind == "space" and (node.group or node.special)}
        for one, space, other in zip(self.nodes, self.nodes[1:], self.nodes[2:], strict=False):
            if space.kind == "space" and one.parents and other.parents and one.parents[0] is other.parents[0]:
                found.add(id(space))
        return found
