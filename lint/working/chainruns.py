"""Runs of chains that are named by their length or chain by chain: "5 sc in each ch-5", "in last ch of ch-4", "sc in each ch"."""

from __future__ import annotations

from dataclasses import replace
from itertools import takewhile

from lint.amount import Amount
from lint.place import Place, Target, TargetKind, Which
from lint.tree import MAKES_STITCHES, Step, Work
from lint.working.cursor import PlacesUnknown
from lint.working.fabric import Node
from lint.working.sidebyside import SideBySide


class ChainRuns(SideBySide):
    """What a run of chains between stitches is to the words: one space, or so many chains."""

    part: tuple[Node, int] | None = None  # the loop that was last worked into by one of its chains, and which that was

    def in_chain_space(self, place: Place) -> Place:
        """ "sc in last ch of ch-4", "5 sc in next ch-5": in that space, where the row below has such a one ahead."""
        of, target, chained = place.of, place.targets[0], place.targets[0].kind is TargetKind.CHAIN
        run = chained and of is None and place.which in (Which.NEXT, Which.FIRST)
        if run and target.length is not None and not place.ordinals:
            return self.in_next_run(place)
        if place.which is Which.NEXT and target.kind is TargetKind.TURNING_CHAIN and target.length is not None:
            numbered = len(place.ordinals) == 1 and place.from_words in ("", "same", "first")
            return self.part_of_loop(place, target, place.ordinals[0]) if numbered else place
        if chained and of is not None and place.which is Which.EACH and self.cursor.known:
            return self.in_all_of_loop(place, of)
        if not chained or of is None or of.kind is not TargetKind.CHAIN or of.length is None:
            return place
        if place.which not in (Which.FIRST, Which.LAST):
            return place
        return self.part_of_loop(place, of, 1 if place.which is Which.FIRST else self.amount(of.length))

    def in_all_of_loop(self, place: Place, loop: Target) -> Place:
        """ "sc in each ch of next ch-5 lp" as so many chains, one after the other."""
        cursor, anywhere = self.cursor, Target(TargetKind.SPACE)
        space = replace(anywhere, length=loop.length)
        at = cursor.find(space, self.size) if loop.kind in (TargetKind.CHAIN, TargetKind.SPACE) else None
        told = place.of_which == "next" or not place.of_which and self.repeating > 0
        if at is None or not told or cursor.nodes[at].used or cursor.find(anywhere, self.size) != at:
            return place
        number = Amount.of(cursor.nodes[at].length)
        return replace(place, which=Which.NEXT, number=number, each_of=True, of=None, of_which="")

    def part_of_loop(self, place: Place, chain: Target, nth: int) -> Place:
        """ "3rd ch of ch-5" as a place in that loop: in the one worked into just before at an earlier chain, else in the next.

        Raises PlacesUnknown where it may be either; a beginning chain ahead is what "3rd ch of ch-3" rather names.
        """
        cursor, space = self.cursor, Target(TargetKind.SPACE, length=chain.length)
        last, said = cursor.last, place.of_which or place.from_words
        if not cursor.known or chain.kind is TargetKind.TURNING_CHAIN and self.chain_ahead():
            return place
        loop = replace(place, which=Which.NEXT, targets=(space,), of=None, ordinals=(), from_words="")
        if last is not None and last.is_space and cursor.matches(last, space, self.size) and nth > 1 and said != "next":
            before = self.part[1] if self.part is not None and self.part[0] is last else None
            at_once = bool(self.made) and last in self.made[-1].parents
            if said == "same" or at_once and before is not None and before < nth:
                self.part = (last, nth)
                return replace(loop, which=Which.SAME)
            if before is None or before < nth:
                raise PlacesUnknown("whether the same loop is meant or the next is not said")
        at = cursor.find(space, self.size)
        if at is None or self.amount(place.number) > self.amount(chain.length):
            return place
        if self.amount(place.number) > 1:
            raise PlacesUnknown("which chains those are is not known here")
        self.part = (cursor.nodes[at], nth)
        return loop

    def chain_ahead(self) -> bool:
        """Whether the work comes to a beginning chain of the row below."""
        return bool(self.cursor.uncounted) or any(node.chain for node in self.cursor.nodes[self.cursor.at :])

    def in_next_run(self, place: Place) -> Place:
        """ "5 sc in next ch-5" as a place in that space; the chain that stands for a stitch before it is another."""
        cursor, space = self.cursor, Target(TargetKind.SPACE, length=place.targets[0].length)
        length = self.amount(space.length)
        at = cursor.find(space, self.size) if cursor.known and length > 1 else None
        here = cursor.nodes[cursor.at] if cursor.known and cursor.at < len(cursor.nodes) else None
        begun = cursor.uncounted == length or any(node.chain == length for node in cursor.nodes)
        if here is not None and here.is_space and length > 1 and here.length != length and not begun:
            raise PlacesUnknown("the chain that comes next is of another length")
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
        if self.repeating and len(told) > 1:  # "*sc in sc, sc in each ch; rep from *": as far as the next stitch
            if not window[0].is_space:
                raise PlacesUnknown("whether all of them are meant in every pass is not said")
            told = told[: sum(1 for _ in takewhile(lambda node: node.is_space, window))]
            boundary = cursor.at + len(told)
        cursor.at, cursor.last = max(cursor.at, boundary), told[-1]
        return told if length is not None else [node for node in told for _ in range(node.length - node.used)]
