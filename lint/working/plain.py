"""Works the commonest clauses of all, "sc in next 5 sts" and the like, the short way: what they come to is told once a row.

The long way (stitching) gives the same; anything out of the common is left to it.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from lint.place import TargetKind, Which
from lint.tree import Work
from lint.working.cursor import family
from lint.working.fabric import Node
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
        fits, name = run.fits, run.name
        for node in found:
            kind = node.kind
            if kind not in fits:
                if kind in ("space", "ring") or name is not None and kind != name and family(kind) != name:
                    return False
                fits.add(kind)
        self.begun = self.works_stitches = True
        self.used += run.places
        made, kind, group = self.made, run.kind, self.group
        if run.together:
            for first in range(0, run.places, run.together):
                group += 1
                made.append(Node(kind, tuple(found[first : first + run.together]), group))
            self.group_place = None
        elif run.each == 1:
            for node in found:
                group += 1
                made.append(Node(kind, (node,), group))
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
        cursor.at, cursor.last = end, found[-1]
        if len(made) > MOST_STITCHES:
            raise TooMany
        return True
