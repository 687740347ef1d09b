"""Runs worked on one way round: "sc in each sc, 3 sc in each ch-2 sp", "sc in each ch, sc in each sc"."""

from __future__ import annotations

from collections import Counter

from lint.place import LimitKind, Place, Target, TargetKind, Which
from lint.tree import Alongside, Chain, Step
from lint.working.clumps import makes_group
from lint.working.cursor import PlacesUnknown, Trouble, describe
from lint.working.fabric import Node
from lint.working.parts import middle_of
from lint.working.rowends import RowEnds

_ONE_OF_THEM = (Which.FIRST, Which.LAST, Which.NTH, Which.SAME)  # "working 3 sc in first and third corner sp"


class SideBySide(RowEnds):
    """Which places each of several runs takes, in the order in which they are met."""

    middles: frozenset[int] = frozenset()  # of groups of three, where the row below shows no corners
    seconds: frozenset[int] = frozenset()  # of groups of three, corners or not

    def each_and_beside(
        self, place: Place, beside: list[Alongside], following: tuple[Step, ...]
    ) -> tuple[list[Node], dict[int, tuple[Step, ...]]]:
        """The places of a run and those worked alongside it, in order; what goes into the latter, by the node's id."""
        cursor = self.cursor
        self.told_beside.update(map(id, beside))
        if place.of is not None or not cursor.known:
            raise PlacesUnknown
        start, boundary = cursor.at, self.run_end(place, following)
        instead: dict[int, tuple[Step, ...]] = {}
        window, holds = cursor.nodes[start:boundary], Counter[int]()
        self.middles, self.seconds = self.middles_of_threes(), self.seconds_of_threes()
        for step in beside:
            if step.place.which in _ONE_OF_THEM and step.place.of is None:
                raise PlacesUnknown("which of those places are worked beside the run is not known here")
            nodes = self.taken(step.place, window)
            if (limit := step.place.limit) is not None and limit.kind is not LimitKind.END:
                if not limit.but or limit.target != step.place.targets[0]:
                    raise PlacesUnknown("how far that goes beside the run is not known here")
                nodes = nodes[: len(nodes) - self.amount(limit.number)]  # "3 sc in each ch-2 sp except last"
            if not nodes:
                raise PlacesUnknown  # a corner or space that the row below does not show
            if (
                step.place.targets[0].kind is TargetKind.CORNER
                and _only_chains(step)
                and not all(n.is_space for n in nodes)
            ):
                raise PlacesUnknown("whether the stitch at the corner is worked as well is not said")
            self.expect(step.place, len(nodes))
            instead |= {id(node): step.items for node in nodes}
            holds.update({id(node): nodes.count(node) for node in nodes})
        if _single_chain(place) or self.of_groups(place):
            own = self.taken(place, window)
            cursor.at = boundary
        else:
            own = cursor.each(place.targets, boundary, self.size)
        if any(self.of_groups(one) for one in (place, *(step.place for step in beside))):
            self.check_groups_apart(own, instead)
        self.expect(place, len(own))
        holds |= Counter(map(id, own))
        found = [node for node in window for _ in range(holds[id(node)])]
        if found:
            cursor.last = found[-1]
        return found, instead

    def of_groups(self, place: Place) -> bool:
        """Whether a run takes one place of each shell or V-stitch."""
        target = place.targets[0]
        return len(place.targets) == 1 and target.kind is TargetKind.SPECIAL and self.is_group(target)

    def taken(self, place: Place, window: list[Node]) -> list[Node]:
        """What a run takes of a window: the middle of each shell, else every place of its sort."""
        if not self.of_groups(place):
            return [node for node in window for _ in range(self.held(node, place))]
        cursor, inside = self.cursor, set(map(id, window))
        middles = [cursor.nodes[middle_of(run, cursor)] for run in cursor.groups(place.targets[0])]
        return [node for node in middles if id(node) in inside]

    def check_groups_apart(self, own: list[Node], instead: dict[int, tuple[Step, ...]]) -> None:
        """Of "sc in each st and shell in each shell" it is not said whether the shell's other stitches are meant, too."""
        counted = Counter(map(id, own))
        for run in self.cursor.all_groups():
            inside = [id(self.cursor.nodes[index]) for index in run]
            if len(run) > 1 and sum((one in instead) + counted[one] for one in inside) > 1:
                raise PlacesUnknown("whether the other stitches of the groups are meant, too, is not said")

    def passes_some(self, space: Target) -> bool:
        """Whether a run over stitches has passed such spaces: "sc in each dc except the last, 3 sc in each ch-2 sp"."""
        cursor = self.cursor
        if self.moved or self.repeating or not cursor.known:
            return False
        behind = [node for node in cursor.nodes[: cursor.at] if node.kind == "space"]
        behind = [node for node in behind if cursor.matches(node, space, self.size)]
        worked = {id(parent) for node in self.made for parent in node.parents} if behind else set()
        return any(id(node) not in worked for node in behind)

    def held(self, node: Node, place: Place) -> int:
        """How many places of a run, or of what is worked beside it, a node holds: a space has as many single chains."""
        if _single_chain(place) and node.kind in ("ch", "space"):
            return node.length - node.used
        return int(self.is_beside(node, place))

    def expect(self, place: Place, found: int) -> None:
        """ "in each of the 4 corner sps": so many there must be."""
        wanted = self.amount(place.number)
        one = place.bare or place.which is Which.NEXT  # "in corner sp", "in next corner sp"
        if one and not place.each_of and found != wanted:
            raise PlacesUnknown("the words name one such place, and the row below has several")
        if place.each_of and found != wanted:
            kind = "run out" if wanted > found else "left"
            self.cursor.troubles.append(Trouble(kind, describe(place.targets[0], self.size), abs(wanted - found)))

    def middles_of_threes(self) -> frozenset[int]:
        """The middle stitches of "each 3-sc corner" where no corner is known: all that were made three to a place."""
        cursor = self.cursor
        groups = [run for run in cursor.all_groups() if makes_group(cursor.nodes, run)]
        threes = all(len(run) == 3 and all(cursor.nodes[i].is_stitch for i in run) for run in groups)
        if not threes or any(node.corner for node in cursor.nodes):
            return frozenset()
        return frozenset(id(cursor.nodes[run[1]]) for run in groups)

    def seconds_of_threes(self) -> frozenset[int]:
        """The second stitches of all that were made three to a place: "2nd sc of each corner" is the middle one."""
        nodes = self.cursor.nodes
        groups = [run for run in self.cursor.all_groups() if makes_group(nodes, run) and len(run) == 3]
        return frozenset(id(nodes[run[1]]) for run in groups if all(nodes[i].is_stitch for i in run))

    def is_beside(self, node: Node, place: Place) -> bool:
        """Whether a node is one of the places of "working … in each …"; corners as the round below shows them."""
        owner, target = place.of, place.targets[0]
        if target.kind is TargetKind.CORNER:
            return node.corner
        if place.middle or (owner is not None and owner.kind is TargetKind.CORNER):
            corner = node.corner or id(node) in self.middles
            second = not place.ordinals or place.ordinals == (2,) and id(node) in self.seconds
            return corner and second and self.cursor.matches(node, target, self.size)
        if owner is not None:
            return False
        return any(self.cursor.matches(node, item, self.size) for item in place.targets)


def _only_chains(step: Alongside) -> bool:
    return all(isinstance(item, Chain) for item in step.items)


def _single_chain(place: Place) -> bool:
    """Whether "each ch", "each of the 2 ch" is meant, one chain after the other."""
    target, each = place.targets[0], place.which is Which.EACH or place.each_of
    return (
        each
        and len(place.targets) == 1
        and target.kind is TargetKind.CHAIN
        and target.length is None
        and target.name is None
    )
