"""Finds the places at the two ends of a row: its first, the top of its turning chain, the half loop at its edge."""

from __future__ import annotations

from dataclasses import replace

from lint.place import Place, Target, TargetKind, Which
from lint.working.cursor import Trouble
from lint.working.fabric import Chains, Node
from lint.working.reach import Reach

_ANY = Target(TargetKind.ANY_STITCH)

_LEAST_GROUP = 3


class RowEnds(Reach):
    """The first places of a row and the last."""

    def first_places(self, place: Place, number: int) -> list[Node]:
        """ "first": the row's first place at its start; the next one inside a repeat; the start again at a round's end."""
        cursor = self.cursor
        target = place.targets[0]
        nothing_yet = self.at_start()
        if not cursor.known:
            return [cursor.next(target, self.size) for _ in range(number)]
        shells = target.kind is TargetKind.SPECIAL and nothing_yet and self.is_group(target)
        if shells and any(len(run) > 1 for run in cursor.groups(target)):
            return [self.part_of_group(replace(place, which=Which.NEXT)) for _ in range(number)]
        if nothing_yet and self.begin_node is not None and number == 1 and cursor.nodes and cursor.at <= 1:
            node = cursor.nodes[0]
            if self.cursor.matches(node, target, self.size) or node.chain:
                cursor.last = node
                cursor.at = max(cursor.at, 1)
                return [node]
        left = cursor.remaining(place.targets, self.size)
        if self.made and not left and cursor.circular:
            node = next((node for node in cursor.nodes if cursor.matches(node, target, self.size, strict=False)), None)
            if node is not None:
                cursor.last = node
                return [node]
        return [cursor.next(target, self.size) for _ in range(number)]

    def at_start(self) -> bool:
        """Whether nothing is made yet but a beginning chain, and the space that it may hold."""
        return not self.made or len(self.made) <= 2 and self.begin_node is not None and self.made[0] is self.begin_node

    def pass_edge_loop(self, target: Target) -> None:
        """ "Sc in first dc, *ch 5, sc in next loop": not in the half loop beside that dc."""
        cursor = self.cursor
        if self.is_round or target.length is not None or cursor.at != 1 or len(cursor.nodes) < 4 or len(self.made) < 2:
            return
        here, chained = cursor.nodes[1], self.made[-1]
        lengths = {node.length for node in cursor.nodes[2:-2] if node.kind == "space"}
        half = here.kind == "space" == chained.kind and here.length < min((chained.length, *lengths))
        if half and self.choices.pick(("edge loop",), 2, 0) == 0:
            cursor.at = 2

    def loop_at_edge(self, target: Target) -> Node | None:
        """ "9 tr in ch-7 loop": the chain that the row below began with, where it counts as no stitch and no other is as long."""
        cursor = self.cursor
        length = target.length.at(self.size) if target.length is not None else None
        if length != cursor.uncounted or not cursor.known or cursor.find(target, self.size) is not None:
            return None
        if skipped := self.passed(len(cursor.nodes)):
            cursor.troubles.append(Trouble("left", "st", skipped))
        cursor.at, cursor.uncounted = len(cursor.nodes), 0
        cursor.last = Chains("space", length)
        return cursor.last

    def turning_chain(self, place: Place) -> list[Node]:
        """ "top of turning ch": the last place of the row, where the row below began."""
        cursor = self.cursor
        if not cursor.known:
            return [Node("unknown place")]
        for index in range(cursor.at, cursor.end):
            if cursor.nodes[index].chain:
                skipped = self.passed(index)
                if skipped:
                    cursor.troubles.append(Trouble("left", "st", skipped))
                cursor.at = index + 1
                cursor.last = cursor.nodes[index]
                return [cursor.nodes[index]]
        if cursor.uncounted or cursor.at < cursor.end:
            if cursor.at < cursor.end and not cursor.uncounted:
                return [cursor.next(_ANY, self.size)]
            cursor.uncounted = 0
            cursor.last = Node("turning chain")
            cursor.troubles.append(Trouble("uncounted chain", "turning chain"))
            return [cursor.last]
        return [cursor.next(_ANY, self.size)]

    def passed(self, index: int) -> int:
        """Stitches between here and `index`, the rest of a group whose space or middle was worked into apart."""
        cursor = self.cursor
        if cursor.last is not None and cursor.last.kind == "space" and cursor.last.special:
            like = {n.group for n in cursor.nodes[cursor.at : index] if n.special == cursor.last.special}
            return len(like - {cursor.last.group, 0})  # whole V-stitches like the one that was worked into
        if cursor.last is None or cursor.last.kind in ("space", "gap"):
            return 0
        group, ahead = cursor.last.group, cursor.nodes[cursor.at : index]
        if group and sum(node.group == group for node in cursor.nodes) < _LEAST_GROUP:
            group = 0  # two stitches of an increase have no middle
        end = cursor.nodes[index] if index < len(cursor.nodes) else None
        half = (
            end.group if end is not None and end.chain else 0
        )  # "sc in top of tch" passes the half shell that the chain is a part of
        if half and len(ahead) > 1 and all(node.group == half for node in ahead):
            return 0
        return sum(1 for node in ahead if node.is_stitch and not (group and node.group == group))
