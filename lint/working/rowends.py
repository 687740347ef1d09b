"""Finds the places at the two ends of a row: its first, the top of its turning chain, the half loop at its edge."""

from __future__ import annotations

from dataclasses import replace

from lint.place import Place, Target, TargetKind, Which
from lint.tree import Work
from lint.working.cursor import PlacesUnknown, Trouble
from lint.working.fabric import Chains, Node
from lint.working.reach import Reach

_ANY = Target(TargetKind.ANY_STITCH)

_STITCHES = (TargetKind.ANY_STITCH, TargetKind.STITCH)
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
            if number > 1:
                raise PlacesUnknown("whether those are worked into again is not said")
            node = next((node for node in cursor.nodes if cursor.matches(node, target, self.size, strict=False)), None)
            if node is not None:
                cursor.last = node
                return [node]
        return [cursor.next(target, self.size) for _ in range(number)]

    def at_start(self) -> bool:
        """Whether nothing is made yet but a beginning chain, and the space that it may hold."""
        return not self.made or len(self.made) <= 2 and self.begin_node is not None and self.made[0] is self.begin_node

    def just_used(self, place: Place) -> bool:
        """Whether "the last sp", where none is left, is the one that the work has come to."""
        last = self.cursor.last
        return place.which is Which.LAST and last is not None and self.cursor.matches(last, place.targets[0], self.size)

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

    def closing_loop(self) -> Node:
        """ "sc in joining loop": the one that the round below was closed with, in which this one begins."""
        cursor = self.cursor
        if not self.at_start() or not cursor.nodes or not cursor.nodes[0].closing:
            raise PlacesUnknown
        cursor.at, cursor.last = 1, cursor.nodes[0]
        return cursor.last

    def stands_in_closing_loop(self) -> bool:
        """Whether "next loop" at a round's start is the one after the loop that the round before was closed with."""
        nodes = self.cursor.nodes
        if self.cursor.at or not nodes or not nodes[0].closing or any(node.is_stitch for node in self.made):
            return False
        last = self.last_work.places if isinstance(self.last_work, Work) else ()
        closes_there = bool(last) and last[0].from_words in ("top", "start") and last[0].targets[0].kind in _STITCHES
        return self.choices.pick(("closing loop", "next"), 2, 1 if closes_there else 0) == 1

    def turning_chain(self, place: Place) -> list[Node]:
        """ "top of turning ch": the last place of the row, where the row below began."""
        cursor = self.cursor
        if not cursor.known:
            return [Node("unknown place")]
        if place.ordinals and (loop := self.loop_of_chains(place)) is not None:
            return [loop for _ in place.ordinals]
        if len(place.ordinals) > 1:
            raise PlacesUnknown("which chains those are is not known here")
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

    def loop_of_chains(self, place: Place) -> Node | None:
        """ "2nd ch of ch-4", "2nd and 3rd ch of next lp": single chains of a loop, where such a one comes next."""
        cursor, length = self.cursor, place.targets[0].length
        index: int | None = cursor.at
        if place.from_words == "loop":
            index = cursor.find(Target(TargetKind.SPACE, length=length), self.size)
        elif place.from_words or length is None:
            return None
        loop = cursor.nodes[index] if index is not None and index < cursor.end else None
        if index is None or loop is None or loop.kind != "space" or max(place.ordinals) > loop.length:
            return None
        if length is not None and loop.length != length.at(self.size):
            return None
        cursor.at, cursor.last = index + 1, loop
        self.space_lengths.add(loop.length)
        return loop

    def last_of_group(self, place: Place, number: int) -> list[Node]:
        """ "*sc in first ch, 3 sc in next ch, sc in last ch; rep from * around": of the loop, or petal, that the pass is in."""
        cursor = self.cursor
        here = cursor.nodes[cursor.at] if cursor.at < cursor.end else None
        if not self.repeating or here is None or cursor.last is None:
            return []
        if place.targets[0].kind is TargetKind.CHAIN:
            if here is not cursor.last or here.kind != "space" or here.length - here.used < number:
                return []
            here.used, cursor.at = here.length, cursor.at + 1
            return [here] * number
        group = cursor.last.group if place.targets[0].kind in (TargetKind.STITCH, TargetKind.ANY_STITCH) else 0
        rest = [at for at in range(cursor.at, cursor.end) if cursor.nodes[at].group == group]
        found = [at for at in rest if cursor.matches(cursor.nodes[at], place.targets[0], self.size)][-number:]
        apart = any(node.is_stitch and node.group != group for node in cursor.nodes)  # not all of them in one ring
        if not group or not apart or here.group != group or len(found) < number:
            return []
        cursor.at, cursor.last = found[-1] + 1, cursor.nodes[found[-1]]
        return [cursor.nodes[at] for at in found]

    def passed(self, index: int) -> int:
        """Stitches between here and `index`, the rest of a group whose space or middle was worked into apart."""
        cursor = self.cursor
        if cursor.last is not None and cursor.last.kind == "space" and cursor.last.special:
            like = {n.group for n in cursor.nodes[cursor.at : index] if n.special == cursor.last.special}
            return len(like - {cursor.last.group, 0})  # whole V-stitches like the one that was worked into
        if cursor.last is None or cursor.last.kind in ("space", "gap"):
            return 0
        group, ahead = cursor.last.group, cursor.nodes[cursor.at : index]
        if group and not _LEAST_GROUP <= sum(node.group == group for node in cursor.nodes) < len(cursor.nodes):
            group = 0  # two stitches of an increase have no middle, nor have all those of a ring
        end = cursor.nodes[index] if index < len(cursor.nodes) else None
        half = (
            end.group if end is not None and end.chain else 0
        )  # "sc in top of tch" passes the half shell that the chain is a part of
        if half and len(ahead) > 1 and all(node.group == half for node in ahead):
            return 0
        return sum(1 for node in ahead if node.is_stitch and not (group and node.group == group))
