"""Works the commonest clauses of all, "sc in next 5 sts" and the like, the short way: what they come to is told once a row.

The long way (stitching) gives the same; anything out of the common is left to it.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from lint.place import TargetKind, Which
from lint.tree import Repeat, Work
from lint.working.fabric import Node
from lint.working.kinds import goes_by
from lint.working.repeating import Repeating
from lint.working.rowstate import MOST_STITCHES, TooMany


@dataclass(slots=True)
class PlainRun:
    """A clause into the next so many stitches: what it makes, how many in each, or how many places are worked together."""

    kind: str
    places: int  # 0: not such a clause
    each: int = 1
    together: int = 0
    name: str | None = None  # of the stitches worked into, where they are named
    fits: set[str] = field(default_factory=set)  # kinds of stitch that answer to the name

    def answers(self, kinds: set[str]) -> bool:
        """Whether stitches of all these kinds are places of the run."""
        for kind in kinds - self.fits:
            if kind in ("space", "ring") or self.name is not None and not goes_by(kind, self.name):
                return False
            self.fits.add(kind)
        return True


_NOT_PLAIN = PlainRun("", 0)


class Plain(Repeating):
    """The short way for plain runs."""

    def plain_run(self, step: Work) -> PlainRun:
        """The clause as a plain run, told once for a row."""
        found = self.plain_runs.get(id(step))
        if found is None:
            found = self.plain_runs[id(step)] = self.as_plain(step) or _NOT_PLAIN
        return found

    def as_plain(self, step: Work) -> PlainRun | None:
        if (
            step.between is not None
            or len(step.places) != 1
            or step.special is not None
            or step.undefined
            or step.closing is not None
        ):
            return None
        place = step.places[0]
        target = place.targets[0]
        if (
            place.which is not Which.NEXT
            or target.kind not in (TargetKind.STITCH, TargetKind.ANY_STITCH)
            or place.of is not None
            or place.middle
            or place.below
            or place.between
            or place.skipped
            or place.from_words
            or place.ordinals
            or step.stitch in ("sl st", "picot")
            or step.stitch[:1] == "f"
            or self.leads is not None
        ):
            return None
        number, places = self.amount(step.number), self.amount(place.number)
        together = step.together or (2 if step.stitch == "dec" else 0)
        if not places or together and (number != 1 or places == 1 or places % together):
            return None
        if not together and (place.shared and places > 1 or number > 1 and places > 1 and not place.each_of):
            return None
        each = 2 * number if step.stitch == "inc" and not step.number_said else number
        if step.stitch == "inc" and step.number_said or not number:
            return None
        return PlainRun(self.kind_of(step), places, each, together, target.name)

    def work_plain(self, run: PlainRun) -> bool:
        """Work a plain run; False, and nothing done, where the places are not all plainly there."""
        cursor = self.cursor
        at = cursor.at
        end = at + run.places
        stop = cursor.stop
        if self.outer is not None or cursor.troubles or stop is not None and end > stop:
            return False
        found = cursor.nodes[at:end]
        if len(found) < run.places:
            return False
        if not run.answers({node.kind for node in found}):
            return False
        self.make_plain(run, found)
        cursor.at, cursor.last = end, found[-1]
        if len(self.made) > MOST_STITCHES:
            raise TooMany
        return True

    def plain_passes(self, step: Repeat, most: int, upto: int) -> int:
        """Work passes of a repeat of plain runs alone, at most so many; tells how many were worked.

        Up to a place, there is always room left for one pass more: the first and the last are worked the long way.
        """
        cursor, items = self.cursor, step.items
        if (
            self.outer is not None
            or cursor.troubles
            or not all(type(item) is Work and not item.perhaps for item in items)
        ):
            return 0
        runs = [self.plain_run(item) for item in items]
        wide = sum(run.places for run in runs)
        stop = min(upto, len(cursor.nodes) if cursor.stop is None else cursor.stop)
        passes = min(most, (stop - cursor.at) // wide - 1 if wide else 0)
        if passes < 1 or not all(run.places for run in runs):
            return 0
        nodes, at = cursor.nodes, cursor.at
        kinds = {node.kind for node in nodes[at : at + passes * wide]}
        if not all(run.answers(kinds) for run in runs):
            return 0
        for _ in range(passes):
            for run in runs:
                self.step_from = len(self.made)
                self.make_plain(run, nodes[at : at + run.places])
                at += run.places
            if len(self.made) > MOST_STITCHES:
                raise TooMany
        cursor.at, cursor.last = at, nodes[at - 1]
        return passes

    def make_plain(self, run: PlainRun, found: list[Node]) -> None:
        """The stitches of a plain run, into places that are there."""
        self.begun = self.works_stitches = True
        self.used += run.places
        made, kind, group = self.made, run.kind, self.group
        if run.together:
            together = run.together
            made += [Node(kind, tuple(found[first : first + together])) for first in range(0, run.places, together)]
            self.group_place = None
        elif run.each == 1:
            made += [Node(kind, (node,)) for node in found]  # a stitch alone in its place needs no number…
            group += 1
            made[-1].group = group  # …but the last, which what comes may join
            self.group_place = found[-1]
        else:
            for node in found:
                group += 1
                parents = (node,)
                made += [Node(kind, parents, group) for _ in range(run.each)]
            if run.each > 2:
                self.bunches[kind, run.each] += run.places
            self.group_place = found[-1]
        self.group = group
