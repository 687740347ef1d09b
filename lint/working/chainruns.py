"""Runs of chains that are named by their length or chain by chain: "5 sc in each ch-5", "in last ch of ch-4", "sc in each ch"."""

from __future__ import annotations

from dataclasses import replace

from lint.place import Place, Target, TargetKind, Which
from lint.tree import MAKES_STITCHES, Step, Work
from lint.working.fabric import Node
from lint.working.sidebyside import SideBySide


class ChainRuns(SideBySide):
    """What a run of chains between stitches is to the words: one space, or so many chains."""

    def in_chain_space(self, place: Place) -> Place:
        """ "sc in last ch of ch-4", "5 sc in next ch-5": in that space, where the row below has such a one ahead."""
        of, target, chained = place.of, place.targets[0], place.targets[0].kind is TargetKind.CHAIN
        run = chained and of is None and place.which in (Which.NEXT, Which.FIRST)
        if run and target.length is not None and not place.ordinals:
            return self.in_next_run(place)
        if not chained or of is None or of.kind is not TargetKind.CHAIN or of.length is None:
            return place
        space = Target(TargetKind.SPACE, length=of.length)
        if place.which not in (Which.FIRST, Which.LAST) or self.cursor.find(space, self.size) is None:
            return place
        return replace(place, which=Which.NEXT, targets=(space,), of=None)

    def in_next_run(self, place: Place) -> Place:
        """ "5 sc in next ch-5" as a place in that space; the chain that stands for a stitch before it is another."""
        cursor, space = self.cursor, Target(TargetKind.SPACE, length=place.targets[0].length)
        length = self.amount(space.length)
        at = cursor.find(space, self.size) if cursor.known and length > 1 else None
        if (
            at is None
            or cursor.nodes[at].length != length
            or any(n.chain == length for n in cursor.nodes[cursor.at : at])
        ):
            return place
        return replace(place, targets=(space, *place.targets[1:]))

    def chains_alone(self, place: Place, boundary: int, following: tuple[Step, ...]) -> list[Node] | None:
        """What "5 sc in each ch-5", "sc in each ch" takes of a row of stitches and spaces: the spaces, or their single chains.

        None where nothing of the sort is said; a count may tell that the stitches between are meant, too.
        """
        cursor, target = self.cursor, place.targets[0]
        if place.targets != (target,) or target.kind is not TargetKind.CHAIN or target.name is not None:
            return None
        ahead = next((step for step in following if isinstance(step, MAKES_STITCHES)), None)
        if isinstance(ahead, Work) and any(one.which is Which.EACH for one in ahead.places):
            return None  # "sc in each ch, sc in each sc, sc in each ch": those that come first
        window = cursor.nodes[cursor.at : boundary] if cursor.known else []
        spaces = [node for node in window if node.is_space]
        length = self.amount(target.length) if target.length is not None else None
        told = [node for node in spaces if length in (None, node.length)]
        if not told or len(spaces) == len(window) and length is None:
            return None
        if self.choices.pick(("chains alone", place.span.start), 2, 0) == 1:
            return None
        cursor.at, cursor.last = max(cursor.at, boundary), told[-1]
        return told if length is not None else [node for node in told for _ in range(node.length - node.used)]
