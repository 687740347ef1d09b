"""Finds gaps: between two stitches, which uses none of them, and between two groups, which is a place of its own."""

from __future__ import annotations

from itertools import zip_longest

from lint.place import Limit, Place, Target, TargetKind, Which
from lint.tree import Group, Step, Work
from lint.working.cursor import PlacesUnknown, Trouble
from lint.working.fabric import Node
from lint.working.parts import Parts

_SPACE = Target(TargetKind.SPACE)
_MARKED = Target(TargetKind.MARKED)


class Gaps(Parts):
    """Working between: "sc between each dc around", "3 dc in sp between next 2 groups"."""

    def gaps(self, place: Place, number: int, boundary: int) -> list[Node]:
        """The gaps a clause names.  How many there are between stitches shows only round a whole round."""
        cursor = self.cursor
        if place.which is Which.ANY and number == 1 and not self.made and self.round_of_stitches():
            self.begun_in_gap, self.works_stitches = True, True  # "standing dc in sp between any two dc"
            cursor.last = Node("gap")
            return [cursor.last]
        if place.from_words in ("before", "behind it", "after") and place.targets[0].kind is TargetKind.SPECIAL:
            if place.from_words == "behind it" and not self.group_passed():
                raise PlacesUnknown("which group is meant that has been worked into is not said")
            if place.which is Which.EACH:
                return self.beside_groups(place.from_words == "after", boundary)
            bare = place.bare or place.which is Which.LAST and self.none_behind()
            return [self.beside_group(place.from_words == "after", bare) for _ in range(number)]
        if self.in_stitches_too and place.from_words.startswith("between") and self.round_of_stitches():
            raise PlacesUnknown("which of the gaps are meant, beside the stitches, is not said")
        if place.from_words in ("before", "behind it", "after"):
            return [self.beside_next(place) for _ in range(number)]
        if place.targets[0].kind is TargetKind.SPECIAL and cursor.known:
            if place.targets[0].length is not None and self.has_smaller_group(place.targets[0].length.at(self.size)):
                raise PlacesUnknown("whether the spaces beside the smaller groups are meant is not said")
            if place.which is Which.EACH and not self.groups_alike(place.targets[0].name):
                raise PlacesUnknown("whether the spaces beside the groups at the edges are meant is not said")
            if place.which is Which.EACH:
                found = self.gaps_to(boundary)
                if not found and not self.repeating:
                    raise PlacesUnknown("there is no such space from here on")  # "in each V-st and in each sp between"
                return found
            name = place.targets[0].name
            named = name if any(node.special == name for node in cursor.nodes) else None
            return [self.next_gap(named=named) or cursor.run_out(_SPACE, self.size) for _ in range(number)]
        if place.from_words == "between two" and place.which is not Which.EACH and self.round_of_stitches():
            step = 1 + self.choices.pick(("gaps",), 2, 0)  # the next gap, or the gap in the next pair
            self.works_stitches = True
            return [cursor.run(place.targets[0], step, self.size)[0] for _ in range(number)]
        if place.from_words == "between" and self.round_of_stitches():
            # a round has as many gaps as stitches, and each is as good as the stitch behind it
            self.works_stitches = True
            if place.which is Which.EACH and self.begun_in_gap and cursor.at <= 1:
                return self.other_gaps(place.targets, boundary)
            if place.which is Which.EACH:
                return cursor.each(place.targets, boundary, self.size)
            return cursor.run(place.targets[0], number, self.size)
        if place.which is Which.EACH and self.begun_in_gap and self.round_of_stitches():
            return self.other_gaps(place.targets, boundary)
        if place.which is not Which.EACH and cursor.stop is None:
            return [Node("gap") for _ in range(number)]
        whole = cursor.known and cursor.circular and not self.made and cursor.stop is None
        if not whole or any(not node.is_stitch for node in cursor.nodes):
            raise PlacesUnknown
        return [Node("gap") for _ in cursor.each(place.targets, cursor.end, self.size)]

    def has_smaller_group(self, legs: int) -> bool:
        """Whether a group ahead has fewer stitches than the groups that the words name, "between groups of 3 dc"."""
        nodes = self.cursor.nodes
        runs = [run for run in self.cursor.all_groups() if _is_group(run) and run[-1] >= self.cursor.at]
        return any(sum(nodes[index].is_stitch for index in run) < legs for run in runs)

    def groups_alike(self, name: str | None) -> bool:
        """Whether all groups of a row to and fro are such as the words name, "between each V-st", or of one makeup."""
        cursor = self.cursor
        runs = [run for run in cursor.all_groups() if _is_group(run)]
        if self.is_round or name in (None, "group") or all(cursor.nodes[run[0]].special == name for run in runs):
            return True
        return len({tuple(cursor.nodes[index].kind for index in run) for run in runs}) < 2

    def bare_gaps(self, boundary: int) -> list[Node]:
        """What "each sp" means where there is no chain space: the gaps between groups, or those that the round began in."""
        found = self.gaps_to(boundary)
        if not found and self.begun_in_gap and self.round_of_stitches():
            return self.other_gaps((Target(TargetKind.ANY_STITCH),), boundary)
        return found

    def other_gaps(self, targets: tuple[Target, ...], boundary: int) -> list[Node]:
        """All gaps between stitches but the one that the round began in, if anything stands there."""
        self.works_stitches = True
        self.cursor.at = 1 if self.made else 0
        return self.cursor.each(targets, boundary, self.size)

    def begins_in_bare_gap(self, place: Place) -> bool:
        """ "Sl st in next sp" at the beginning of a round, where neither chains nor groups lie below."""
        return place.targets == (_SPACE,) and not self.made and self.ungrouped()

    def ungrouped(self) -> bool:
        """Whether the stitches below share no places, or all of them one, a ring: then no "sp" lies between groups."""
        runs = self.cursor.all_groups()
        return len(runs) == 1 or all(len(run) == 1 for run in runs)

    def round_of_stitches(self) -> bool:
        """Whether the round below is of stitches alone, and none of them was skipped: its gaps can be told one by one."""
        cursor = self.cursor
        return cursor.known and cursor.circular and not self.skipped and all(node.is_stitch for node in cursor.nodes)

    def beside_next(self, place: Place) -> Node:
        """ "dc in sp before next dc": the chain space there, or the bare gap, which is as good as the stitch beside it."""
        cursor = self.cursor
        if place.from_words == "after":
            beside = cursor.next(place.targets[0], self.size)
        ahead = cursor.nodes[cursor.at] if cursor.at < cursor.end else None
        if ahead is not None and ahead.kind == "space":
            self.space_lengths.add(ahead.length)
            return cursor.next(_SPACE, self.size)
        if self.skipped:
            raise PlacesUnknown("which gap is the next one after a stitch is skipped is not said")
        if self.in_stitches_too:
            return self.gap_ahead(place)
        self.works_stitches = True
        return beside if place.from_words == "after" else cursor.next(place.targets[0], self.size)

    def gap_ahead(self, place: Place) -> Node:
        """ "*dc in next dc, dc in sp before next dc": where stitches are worked into as well, a gap uses none of them."""
        cursor = self.cursor
        if place.from_words == "after" or not self.round_of_stitches() or self.gap_at == cursor.at:
            raise PlacesUnknown("which gap that is, is not said")
        self.gap_at, cursor.last = cursor.at, Node("gap")
        return cursor.last

    def beside_group(self, after: bool, bare: bool) -> Node:
        """ "2 dc in sp before next 3-dc group": the chain space there, or the bare gap, whatever stands on its other side.

        `bare`: neither next nor last is said, so that "V-st in V-st, dc in sp after V-st" is after the one worked into.
        """
        cursor = self.cursor
        if not cursor.known:
            return cursor.next(_SPACE, self.size)
        runs = [run for run in cursor.all_groups() if run[0] >= cursor.at and run[0] <= run[-1] and _is_group(run)]
        worked = [run for run in cursor.all_groups() if any(cursor.nodes[index] is cursor.last for index in run)]
        if after and worked and _is_group(worked[0]):
            if not bare:
                raise PlacesUnknown("after which of the groups that is, is not said")
            runs = worked
        if not after and runs and runs[0][0] == self.gap_at:
            runs = runs[1:]  # "*V-st in sp before next V-st; rep from *": that gap has been used
            if not runs and self.repeating:
                return cursor.run_out(_SPACE, self.size)
        index = (runs[0][-1] + 1 if after else runs[0][0]) if runs else None
        if index is None or index == self.gap_at or index >= len(cursor.nodes) or self.skipped:
            raise PlacesUnknown
        beside = index if after else index - 1
        if beside >= cursor.at and cursor.nodes[beside].kind == "space":
            cursor.at, cursor.last = beside + 1, cursor.nodes[beside]
            return cursor.last
        cursor.at = self.gap_at = index
        cursor.last = Node("gap")
        return cursor.last

    def beside_groups(self, after: bool, boundary: int) -> list[Node]:
        """ "V-st in sp before each V-st": one for each group up to the boundary."""
        cursor = self.cursor
        if not cursor.known or after or cursor.at == self.gap_at:
            raise PlacesUnknown("which gaps these are is not known here")
        ahead = [run for run in cursor.all_groups() if _is_group(run) and cursor.at <= run[0] < boundary]
        return [self.beside_group(after, False) for _ in ahead]

    def group_passed(self) -> bool:
        """Whether a group has been worked into, or the gap before one: "sp between this V-st and next" needs one."""
        runs = [run for run in self.cursor.all_groups() if _is_group(run)]
        return self.gap_at is not None or any(run[0] < self.cursor.at for run in runs)

    def none_behind(self) -> bool:
        """Whether no group lies ahead of the one worked into last, or of the gap before which the row has come."""
        cursor = self.cursor
        runs = [run for run in cursor.all_groups() if _is_group(run) and run[-1] >= cursor.at]
        return cursor.known and not any(run[0] >= cursor.at and run[0] != self.gap_at for run in runs)

    def gaps_to(self, boundary: int) -> list[Node]:
        """Every gap between groups up to `boundary`."""
        found = []
        while (node := self.next_gap(boundary)) is not None:
            found.append(node)
        self.cursor.at = max(self.cursor.at, boundary)
        return found

    def next_gap(self, boundary: int | None = None, named: str | None = None) -> Node | None:
        """The next place between two groups, of that name: the chain space there, or the bare gap; None if there is none."""
        cursor = self.cursor
        end = cursor.end if boundary is None else boundary
        whole = cursor.all_groups()
        wraps = bool(whole) and whole[0][0] > whole[0][-1]  # the first group began at the round's end
        runs = [run for run in whole if run[-1] >= cursor.at - 1]
        for before, after in zip_longest(runs, runs[1:]):
            index = after[0] if after is not None else whole[0][0] if wraps else len(cursor.nodes)
            if index > end or index < cursor.at or index == self.gap_at:
                continue
            if after is not None and len(after) == 1 and cursor.nodes[index].kind == "space" and index < end:
                cursor.at, cursor.last = index + 1, cursor.nodes[index]
                return cursor.last
            if after is None and not wraps and not self.gap_closes_round():
                continue
            if named is not None and any(cursor.nodes[run[0]].special != named for run in (before, after or before)):
                continue  # "between next 2 V-sts", behind a pair of dc that stands in one place
            if _is_group(before) and (after is None or _is_group(after)):
                cursor.at = self.gap_at = index
                cursor.last = Node("gap")
                return cursor.last
        return None

    def pineapple_loops(self, place: Place, number: int) -> list[Node]:
        """ "sc in first pineapple loop": the next loops between two stitches that stand alone, and are of no shell."""
        cursor = self.cursor
        if not cursor.known or place.which not in (Which.FIRST, Which.NEXT):
            raise PlacesUnknown("which loops are the pineapple's is not known here")
        alone = {run[0] for run in cursor.all_groups() if not _is_group(run) and cursor.nodes[run[0]].is_stitch}
        spaces = [index for index in range(cursor.at, cursor.end) if cursor.nodes[index].kind == "space"]
        loops = [index for index in spaces if index - 1 in alone and index + 1 in alone][:number]
        if len(loops) < number:
            raise PlacesUnknown("which loops are the pineapple's is not known here")
        cursor.at, cursor.last = loops[-1] + 1, cursor.nodes[loops[-1]]
        return [cursor.nodes[index] for index in loops]

    def gap_closes_round(self) -> bool:
        """Whether the gap between a round's last group and its first is there, and the round did not begin in it."""
        cursor = self.cursor
        runs = cursor.all_groups()
        apart = cursor.circular and len(runs) > 1 and min(runs[0]) == 0 and max(runs[0]) < len(cursor.nodes) - 1
        return apart and _is_group(runs[0]) and not self.begun_in_gap

    def next_mark(self, start: int | None = None) -> int | None:
        """Index of the next marked place, or of the place behind the next gap with a marker; None if there is none."""
        cursor = self.cursor
        for index in range(cursor.at if start is None else start, cursor.end):
            here, before = cursor.nodes[index], cursor.nodes[index - 1]
            if id(here) in cursor.marks or index > cursor.at and (id(before), id(here)) in cursor.gaps:
                return index
        return None

    def to_marker(self, limit: Limit) -> int:
        """Where a run "to (1 st before) marker" ends; in a round with no other marker ahead, at the round's end."""
        cursor = self.cursor
        index = self.next_mark() if cursor.known else None
        if index is None and (not cursor.known or not self.is_round or cursor.marks_unclear):
            raise PlacesUnknown("where the marker hangs is not known here")
        if index is None and self.repeating and (cursor.marks or cursor.gaps):
            cursor.run_out(limit.target or _MARKED, self.size)  # one pass too many
        index = cursor.end if index is None else index
        short = self.amount(limit.short) if limit.short is not None else 0
        return cursor.back_from_end((Target(TargetKind.ANY_STITCH),), short, self.size, index)

    def marked_places(self, number: int) -> list[Node]:
        """ "in (next) marked st": passing over none that is not worked; at a round's start also the first."""
        cursor = self.cursor
        found: list[Node] = []
        for _ in range(number):
            index = self.next_mark() if cursor.known else None
            if index is None and self.repeating and cursor.marks:
                found.append(cursor.run_out(_MARKED, self.size))
                continue
            if index is None or id(cursor.nodes[index]) not in cursor.marks:
                if not (self.is_round and cursor.known and not self.made and not cursor.marks_unclear) or cursor.marks:
                    raise PlacesUnknown("where the marker hangs is not known here")
                index = cursor.at
            left = sum(node.is_stitch for node in cursor.nodes[cursor.at : index])
            if left:
                cursor.troubles.append(Trouble("left", "st", left))
            cursor.at, cursor.last = index + 1, cursor.nodes[index]
            found.append(cursor.nodes[index])
        return found

    def stands_in_gap(self) -> bool:
        """Whether "sp" can only be the gap between two groups, for no chain space is ahead."""
        cursor = self.cursor
        return cursor.known and not any(node.kind in ("space", "ring") for node in cursor.nodes[cursor.at : cursor.end])


def _is_group(run: list[int]) -> bool:
    return len(run) > 1


def into_stitches(step: Step) -> bool:
    """Whether a clause goes into stitches of the row below, and into no gap or space beside them."""
    if not isinstance(step, (Work, Group)) or isinstance(step, Work) and step.stitch in ("sl st", "picot"):
        return False
    sorts, ways = (TargetKind.STITCH, TargetKind.ANY_STITCH), (Which.NEXT, Which.EACH, Which.LAST)
    return any(
        place.which in ways and place.targets[0].kind in sorts and not (place.between or place.below or place.of)
        for place in step.places
    )
