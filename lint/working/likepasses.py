"""Passes of a repeat that go as the one before them went are copied, not worked stitch by stitch.

"*Ch 1, sk next sc, sc in next ch-1 sp; rep from * across" comes a hundred times in a row of moss stitch.  A pass is
copied only where what lies below is what lay below the pass before, and where that pass changed nothing of the state of
the work but what a pass of the same kind changes by as much again; everything else is left to the long way, which
gives the same.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from lint.place import Place, TargetKind, Which
from lint.tree import Chain, Repeat, Skip, Step, Work
from lint.working.fabric import Chains, Node
from lint.working.plain import Plain
from lint.working.rowstate import MOST_STITCHES, TooMany

_LOCAL = (TargetKind.STITCH, TargetKind.ANY_STITCH, TargetKind.SPACE)  # places found by what stands next
_COUNTERS = ("group", "used", "step_from")  # what each pass may add to
_GROWING = ("made", "skipped", "said_at", "plain_runs")  # what each pass may lengthen
_MOVING = ("group_place", "cursor", "gap_at")  # what is looked at by itself


@dataclass(slots=True)
class PassMark:
    """How the work stands between two passes."""

    at: int
    made: int
    length: int  # of the last chains made, which a pass may lengthen
    skipped: int
    counters: tuple[int, ...]
    rest: tuple  # of everything that a copied pass must not have changed


class LikePasses(Plain):
    """The short way for passes that are all alike."""

    def pass_mark(self, step: Repeat) -> PassMark | None:
        """The state before a pass, where its steps are such as may be copied."""
        local = self.like_steps.get(id(step))
        if local is None:
            local = self.like_steps[id(step)] = all(map(_is_local, step.items)) and not self._all_plain(step)
        if not local or self.outer is not None or self.cursor.troubles:
            return None
        return self._mark()

    def _all_plain(self, step: Repeat) -> bool:
        """Whether the passes are worked the short way for plain runs."""
        return all(isinstance(item, Work) and self.plain_run(item).places for item in step.items)

    def _mark(self) -> PassMark:
        last = self.made[-1].length if self.made else 0
        counters = tuple(getattr(self, name) for name in _COUNTERS)
        return PassMark(self.cursor.at, len(self.made), last, len(self.skipped), counters, self._rest())

    def _rest(self) -> tuple:
        """Every other field of the state as a value to be compared: containers by how much they hold."""
        values = []
        for name, value in vars(self).items():
            if name in _COUNTERS or name in _GROWING or name in _MOVING:
                continue
            if isinstance(value, Counter):
                values.append((name, value.total()))
            else:
                values.append((name, len(value) if isinstance(value, (list, dict, set)) else value))
        values.append(sum(noted.trouble.number for noted in self.noted))  # one that is met again is added to
        cursor = self.cursor
        values.append(
            (id(cursor), cursor.stop, cursor.ran_out, len(cursor.troubles), len(self.choices.asked), self.gap_at)
        )
        return tuple(values)

    def like_passes(self, began: PassMark | None, most: int, upto: int) -> int:
        """Copy the pass that began there as often as it can go again up to a place, but for the last time; how often."""
        if began is None or self.outer is not None or self.cursor.troubles:
            return 0
        ended = self._mark()
        lengthened = bool(began.made) and self.made[began.made - 1].length != began.length
        if ended.at <= began.at or lengthened or ended.length != began.length or ended.rest != began.rest:
            return 0
        wide = ended.at - began.at
        nodes, cursor = self.cursor.nodes, self.cursor
        stop = min(upto, len(nodes) if cursor.stop is None else cursor.stop)
        window = nodes[began.at : ended.at]
        passes = self._how_often(nodes, ended.at, window, min(most, (stop - ended.at) // wide - 1))
        block = self.made[began.made : ended.made]
        places = {id(node): at for at, node in enumerate(window)}
        skipped = self.skipped[began.skipped :]
        touched = [parent for node in block for parent in node.parents] + skipped
        touched += [node for node in (cursor.last, self.group_place) if node is not None]
        group = began.counters[0]
        own = all(not node.group or node.group > group for node in block)
        if passes < 1 or not own or not block or any(id(node) not in places for node in touched):
            return 0
        if any(
            node.chain or node.special or node.corner or getattr(node, "closing", False) or node.used for node in block
        ):
            return 0
        if len(self.made) + passes * len(block) > MOST_STITCHES:
            raise TooMany
        more = [now - before for now, before in zip(ended.counters, began.counters, strict=True)]
        for one in range(1, passes + 1):
            below = nodes[ended.at + (one - 1) * wide : ended.at + one * wide]
            self.made += [_copied(node, below, places, more[0] * one) for node in block]
            self.skipped += [below[places[id(node)]] for node in skipped]
        shift = passes * len(block)
        self.said_at |= {at + shift for at in self.said_at if began.made <= at <= ended.made}
        for name, now, gain in zip(_COUNTERS, ended.counters, more, strict=True):
            setattr(self, name, now + gain * passes)
        cursor.at, cursor.last = ended.at + passes * wide, below[places[id(cursor.last)]] if cursor.last else None
        self.group_place = below[places[id(self.group_place)]] if self.group_place else None
        return passes

    def _how_often(self, nodes: list[Node], at: int, window: list[Node], most: int) -> int:
        """How many times what lies in the window follows behind it, at most so many."""
        wide, passes = len(window), 0
        pattern = _pattern(nodes, at - wide, wide)
        while passes < most and _pattern(nodes, at, wide) == pattern:
            passes, at = passes + 1, at + wide
        return passes


def _is_local(step: Step) -> bool:
    """Whether a step is a chain, or goes into what stands next, and into nothing named in another way."""
    if isinstance(step, Chain):
        return step.counting is None
    if not isinstance(step, (Work, Skip)) or not step.places or isinstance(step, Skip) and (step.rest or step.to):
        return False
    if isinstance(step, Work) and (
        step.special is not None
        or step.undefined
        or step.closing is not None
        or step.between is not None
        or step.perhaps
    ):
        return False
    if isinstance(step, Work) and (
        step.stitch in ("sl st", "picot", "inc", "dec") or step.stitch[:1] in ("f", "F", "B")
    ):
        return False
    return all(map(_is_next, step.places))


def _is_next(place: Place) -> bool:
    """Whether a place is told by nothing but its sort, and that it comes next."""
    target = place.targets[0]
    plain = place == Place(
        place.span, Which.NEXT, place.targets, place.number, each_of=place.each_of, shared=place.shared
    )
    return plain and target.kind in _LOCAL and not target.corner and len(place.targets) == 1


def _pattern(nodes: list[Node], at: int, wide: int) -> list[tuple]:
    """What so many places are, and which of them stand in one place with the one before."""
    return [
        (
            node.kind,
            node.length,
            node.chain,
            node.special,
            node.corner,
            node.closing,
            node.used,
            getattr(node, "counted", False),
            bool(node.group) and at + index > 0 and nodes[at + index - 1].group == node.group,
        )
        for index, node in enumerate(nodes[at : at + wide])
    ]


def _copied(node: Node, below: list[Node], places: dict[int, int], group: int) -> Node:
    """A stitch or chain of a pass as the pass over these places makes it."""
    parents = tuple(below[places[id(parent)]] for parent in node.parents)
    own = node.group + group if node.group else 0
    return Chains(node.kind, node.length, parents, own) if isinstance(node, Chains) else Node(node.kind, parents, own)
