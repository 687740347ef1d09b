"""Finds the places in the row below that a clause names."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from lint.place import UNWORKED, Limit, LimitKind, Place, Target, TargetKind, Which
from lint.tree import Chain, Skip, Step, Turn
from lint.working.chainruns import ChainRuns
from lint.working.choices import CHAINS_BELOW
from lint.working.cursor import CORNERS_UNKNOWN, Cursor, PlacesUnknown, Trouble
from lint.working.fabric import Fabric, Node
from lint.working.kinds import family

_ANY = Target(TargetKind.ANY_STITCH)
_LOOP = Target(TargetKind.SPACE)
_MOST_GAPS = 2  # that chains are made over in one row: both underarms
_PLAIN = (TargetKind.ANY_STITCH, TargetKind.STITCH)


class Placing(ChainRuns):
    """Finding places: next, each, first, last, same, the middle of a corner, the top of a chain…"""

    def open_ring(self, place: Place, around: bool = False) -> None:
        """A ring of chains is opened by the first words that speak of its chains; a beginning chain stands on the first."""
        if self.cursor.open_ring(place.targets, around or place.which is Which.EACH) and self.begin_node is not None:
            self.cursor.at = 1

    def find(self, place: Place, following: tuple[Step, ...]) -> list[Node]:
        """The places in the row below that a clause names, taken."""
        self.coming = following
        if self.outer is not None:
            self.resume()
        cursor = self.cursor
        if place.targets[0].name == "joining":
            return [self.closing_loop()]
        if place.targets[0].name == "pineapple":
            return self.pineapple_loops(place, self.amount(place.number))
        if place.targets[0].name or place.targets == (_LOOP,):
            targets = self.as_made(place.targets)
            place = replace(place, targets=targets) if targets != place.targets else place
        if (self.other_side or cursor.loops) and place.targets == (_LOOP,):
            place = replace(place, targets=(_ANY if cursor.loops else Target(TargetKind.CHAIN),))
        place = self.in_chain_space(place)
        if place.below and place.targets[0].kind is TargetKind.MARKED:
            place = replace(place, targets=(_ANY,))  # a marker of an earlier row: not one of those hung since
        which, number = place.which, self.amount(place.number)
        target = place.targets[0]
        if self.moved and not self.made and not self.begun:
            self.leave_slipped_stitch(place)
        if self.is_round and not self.made:
            self.first_comes_round(place)
        if place.between and not place.below:
            return self.gaps(place, number, self.boundary(place.limit, following))
        if target.kind is TargetKind.MARKED and which is not Which.EACH:
            return self.marked_places(number)
        if place.skipped:
            return self.skipped_places(place, number, following)
        if place.below and which is Which.EACH:
            raise PlacesUnknown("how many places the earlier row has for this is not known here")
        if place.bare and self.stands_in(place) and cursor.last is not None:
            cursor.at = 1
            return [cursor.last]
        bare = which is Which.NEXT and place.targets == (_LOOP,)
        if bare and self.begun_in_gap and self.round_of_stitches() and self.ungrouped():
            place = replace(place, targets=(_ANY,), between=True, from_words="between")  # a sp like the one begun in
            return self.gaps(place, number, cursor.end)
        if place.from_words == UNWORKED and self.made and cursor.known and cursor.at >= cursor.end:
            return [Node("elsewhere") for _ in range(number)]  # "the 5 unworked sts" behind all of a short row's own
        if which is Which.NEXT and place.of is None and not place.middle and not place.below and target.kind in _PLAIN:
            return self.next_run(target, number)  # the commonest by far
        self.open_ring(place)
        if which is Which.NEXT and target.kind is TargetKind.SPACE:
            self.pass_edge_loop(target)
            if cursor.uncounted and (loop := self.loop_at_edge(target)) is not None:
                return [loop]
        if which is Which.ELSEWHERE:
            alone = self.only_work
            if alone is not None and place in alone.places and number == 1 and not alone.number_said:
                raise PlacesUnknown("how many stitches go there is not said")  # "sc around the hem", and nothing else
            return [Node("elsewhere") for _ in range(number)]
        if self.names_parts(place):
            return self.parts_of_group(place)
        if which is Which.EACH:
            if place.of is not None:
                return self.part_of_each_group(place, following)
            if len(place.targets) == 1 and target.kind is TargetKind.SPECIAL and cursor.known and self.is_group(target):
                return self.part_of_each_group(
                    replace(place, of=target), following
                )  # "V-st in each V-st": one place each
            return self.each_place(place, following)
        if which is Which.SAME or which is Which.JUST_MADE:
            node = cursor.last
            first = next((made.parents[0] for made in self.made if made.parents), None)
            if place.from_words == "round's start" and len(self.made) > 2 and self.is_round and first is not None:
                if self.other_side and cursor.at == len(cursor.nodes) - 1:
                    cursor.at += 1  # "2 sc in same ch as first sc": the last one of the chain's other side
                return [first]  # "2 dc in same sp as beg ch-3": what the round began in
            if node is None or node.kind == "ch" and not self.made:
                node = cursor.next(_ANY, self.size) if cursor.nodes or not cursor.known else Node("unknown place")
            elif cursor.at < len(cursor.nodes) and node is cursor.nodes[cursor.at] and node.kind != "ring":
                cursor.at += 1
            return [node]
        if target.kind is TargetKind.PLACE and target.name == "join" and self.at_start() and cursor.nodes:
            cursor.at, cursor.last = max(cursor.at, int(cursor.nodes[0].kind != "ring")), cursor.nodes[0]
            return [cursor.nodes[0]]  # "dc in the joining st"
        if place.bare and target.kind is TargetKind.CORNER and self.still_in_corner():
            if self.choices.pick(("same corner", place.span.start), 2, 1) == 1:
                return [cursor.last]  # "ch 3, 2 dc in corner, ch 2, 3 dc in corner"
        if which is Which.ANY and (place.middle or place.of is not None) and self.begins_anywhere():
            self.start_at(place)
            cursor.at = 0 if cursor.nodes[0].kind == "ring" else 1
            return [cursor.nodes[0]]
        if place.below:
            return self.below(place, number, following)
        if which is Which.NTH and place.of is None and place.ordinals:
            return [self.nth_of_next(place, number), *self.further_on(place, number)]
        if place.middle and number > 1 and place.of is None and which is Which.NEXT:
            return self.middle_ones(target, number)
        if which is Which.NTH or place.middle or (place.of is not None and which is Which.NEXT):
            return [self.part_of_group(place)]
        if which in (Which.FIRST, Which.LAST) and target.kind is TargetKind.CORNER and self.flat_below:
            return [self.part_of_group(replace(place, which=Which.NEXT))]  # a corner of a flat piece gone round
        if which is Which.FIRST:
            return self.first_places(place, number)
        if which is Which.LAST and cursor.known:
            if found := self.last_of_group(place, number):
                return found
            self.took_last = self.took_last or self.repeating > 0
            corner = target.kind is TargetKind.CORNER and bool(self.corner_marks())
            if corner or target.kind is TargetKind.SPECIAL and self.is_group(target) and cursor.groups(target):
                index = self.last_groups(target, number)
            else:
                index = cursor.back_from_end(place.targets, number, self.size, self.before_chain(following))
            space = place.targets[0].kind is TargetKind.SPACE
            skipped = self.spaces_passed(index, place.targets[0]) if space else self.passed(index)
            if skipped and not cursor.optional:
                cursor.troubles.append(Trouble("left", "st", skipped))
            cursor.at = max(cursor.at, index)
        if which is Which.ANY and cursor.known and cursor.nodes and not self.made:
            self.start_at(place)
            return [cursor.next(place.targets[0], self.size)]
        if place.targets[0].kind is TargetKind.TURNING_CHAIN:
            return self.turning_chain(place)
        if (
            place.targets[0].kind in (TargetKind.CORNER, TargetKind.SPECIAL)
            and place.targets[0].name != "group"
            and cursor.known
        ):
            return (
                [self.part_of_group(place) for _ in range(number)]
                if self.is_group(place.targets[0])
                else [cursor.next(place.targets[0], self.size) for _ in range(number)]
            )
        if target.kind is TargetKind.SPACE and self.stands_in_closing_loop():
            cursor.at = 1
        if target.kind is TargetKind.SPACE and target.length is None and self.stands_in_gap():
            return [self.next_gap() or cursor.next(target, self.size) for _ in range(number)]
        if target.kind is TargetKind.SPACE and cursor.known:
            return [self.next_space(place) for _ in range(number)]
        return [cursor.next(target, self.size) for _ in range(number)]

    def next_space(self, place: Place) -> Node:
        """The next chain space; the rest of the V-stitch that it lies in is passed over as the first of it was."""
        before, ran_out = self.cursor.at, self.cursor.ran_out
        node = self.cursor.next(place.targets[0], self.size)
        if self.cursor.ran_out == ran_out and self.cursor.at > before and node is self.cursor.nodes[self.cursor.at - 1]:
            self.pass_rest(place, before, self.cursor.at - 1)
        return node

    def leave_slipped_stitch(self, place: Place) -> None:
        """ "Sl st in next 3 dc, (dc, ch 2, dc) in corner sp": the last of the three comes round again at the round's end."""
        cursor = self.cursor
        passed = (
            cursor.known and cursor.circular and cursor.at == 0 and bool(cursor.nodes) and cursor.nodes[0].is_stitch
        )
        into_space = place.targets[0].kind is TargetKind.SPACE and place.which is Which.NEXT
        if passed and into_space and self.slipped_into is cursor.nodes[0]:
            before = cursor.optional
            cursor.rotate(1)
            cursor.optional += before

    def first_comes_round(self, place: Place) -> None:
        """ "Ch 1, *5 dc in next sp, sc in next cluster": the first cluster, which holds the join, may be the last one named."""
        cursor = self.cursor
        at_join = cursor.known and cursor.circular and cursor.at == 0 and self.begin_node is None and not self.moved
        if not at_join or len(cursor.nodes) < 2 or not cursor.nodes[0].is_stitch:
            return
        whole = place.targets[0].kind is TargetKind.CORNER
        corner = next((at for at in self.corner_marks() if whole or cursor.nodes[at].is_stitch), 0)
        to_corner = place.which is Which.NEXT and TargetKind.CORNER in (
            place.targets[0].kind,
            place.of and place.of.kind,
        )
        if to_corner and corner and self.choices.pick(("corner comes round",), 2, 1) == 1:
            cursor.rotate(corner)  # "*3 sc in corner sc, sc to next corner": what lies before it comes last
        into_space = place.targets[0].kind in (TargetKind.SPACE, TargetKind.CHAIN) and place.of is None
        into_space = into_space and place.which in (Which.NEXT, Which.FIRST)
        if into_space and self.choices.pick(("first comes round",), 2, 0) == 1:
            cursor.rotate(cursor.find(place.targets[0], self.size) or 1)

    def still_in_corner(self) -> bool:
        """Whether all of the round so far stands in one corner, and ends with a chain."""
        last = self.cursor.last
        if last is None or not last.corner or len(self.made) < 3 or self.made[-1].kind != "space":
            return False
        return all(not node.parents or node.parents[0] is last for node in self.made)

    def begins_anywhere(self) -> bool:
        """Whether the row's first stitch may choose its place."""
        return self.cursor.known and bool(self.cursor.nodes) and not self.made

    def skipped_places(self, place: Place, number: int, following: tuple[Step, ...]) -> list[Node]:
        """Stitches that this row skipped, the first of them first; those of an earlier row use none of the row below."""
        if place.which is Which.EACH:  # "in each skipped st": all that this row has skipped; what an earlier one has
            number = len(self.skipped)  # is not known here
            if not number or place.below or place.limit not in (None, Limit(LimitKind.END)):
                raise PlacesUnknown("how many stitches were skipped is not known here")
        if self.skipped_below >= number and not self.skipped:
            self.skipped_below -= number  # a cable's second half: each of these too covers the stitch in front of it
            return self.below(place, number, following)
        unknown = not self.cursor.known  # yarn was joined to the skipped stitches of an earlier row
        if place.below or not self.skipped and (place.which is Which.ELSEWHERE or unknown):
            return [Node("row below") for _ in range(number)]
        if len(self.skipped) < number:
            raise PlacesUnknown  # skipped in which row, and how many there are, is not known here
        found, self.skipped = self.skipped[:number], self.skipped[number:]
        self.cursor.last = found[-1] if found else self.cursor.last
        return found

    def stands_in(self, place: Place) -> bool:
        """Whether "in corner sp" at a round's start is the space where the round was begun."""
        cursor = self.cursor
        if not (self.moved and self.at_start() and cursor.at <= 1 and cursor.last is not None):
            return False
        if cursor.last.kind != "space" or not cursor.nodes or cursor.last is not cursor.nodes[0]:
            return False
        target = place.targets[0]
        return target.kind is TargetKind.CORNER or cursor.matches(cursor.last, target, self.size)

    def each_place(self, place: Place, following: tuple[Step, ...]) -> list[Node]:
        """A run over every place of its sorts; one to the row's end that finds none left is a trouble."""
        edge = self.to_edge(place)
        cursor = self.cursor
        boundary = cursor.end if edge else self.run_end(place, following)
        over_gap = any(
            item.kind is TargetKind.CHAIN and item.name not in (None, "foundation") for item in place.targets
        )
        if over_gap and sum(node.kind == "space" for node in cursor.nodes) > _MOST_GAPS:
            raise PlacesUnknown("which of the chains are meant is not known here")  # "each underarm ch", among lace
        if place.targets == (_LOOP,) and self.stands_in_gap() and (gaps := self.bare_gaps(boundary)):
            return gaps
        if place.targets[0].kind is TargetKind.CORNER and cursor.known:
            return self.each_corner(boundary)
        if place.targets[0].kind is TargetKind.SPACE and self.passes_some(place.targets[0]):
            raise PlacesUnknown("whether the spaces passed before are meant, too, is not said")
        named = place.targets[0].kind is TargetKind.STITCH and not self.repeating
        if named and any(cursor.matches(node, place.targets[0], self.size) for node in self.between_groups):
            raise PlacesUnknown("whether the stitches passed before are meant, too, is not said")
        found = self.chains_alone(place, boundary, following)
        found = cursor.each(self.every_stitch(place, boundary), boundary, self.size) if found is None else found
        done, self.ending_done = self.ending_done, False  # "…; rep from * round, ending sc in each sc to end"
        if place.every > 1:
            chains = len(following) < 2 or not isinstance(
                following[1], Turn
            )  # "dc in every other st, ch 1": after each?
            chains = chains and bool(following) and isinstance(following[0], Chain)
            if len(found) % place.every or self.repeating or chains:
                raise PlacesUnknown("which of the stitches are meant is not said, and they do not come out even")
            found = found[:: place.every]
        if not found and not done and (place.limit is None or place.limit.kind is LimitKind.END):
            cursor.run_out(place.targets[0], self.size)
        return found

    def to_edge(self, place: Place) -> bool:
        """ "sc in each ch across bottom", "in each st across top": the edge that is named, of a flat piece gone round."""
        limit, target = place.limit, place.targets[0]
        edge = limit.target.name if limit is not None and limit.kind is LimitKind.END and limit.target else None
        if target.kind is TargetKind.CHAIN and target.name == "foundation" and not self.cursor.known:
            edge = "bottom"
        if edge not in ("bottom", "top") or not self.flat_below:
            return False
        below = self.markers.below
        if edge == "top" and (self.made or not self.cursor.known):
            self.cursor = Cursor(Fabric(below.nodes, known=below.known))
        elif edge == "bottom" and (
            self.free_loops is None or self.chains_passed and target.kind is not TargetKind.CHAIN
        ):
            raise PlacesUnknown("how many chains there are along the bottom is not known here")
        elif edge == "bottom":
            self.begin()
            self.cursor = Cursor(Fabric([Node("free loop") for _ in range(self.free_loops)]))
        return True

    def every_stitch(self, place: Place, boundary: int) -> tuple[Target, ...]:
        """The sorts of a run: for "sc in each sc" over a row of sc and bobbles every stitch, as the counts may deny."""
        cursor, target = self.cursor, place.targets[0]
        if place.targets == (_ANY,) and cursor.known and self.chains_are_stitches(place, boundary):
            return (_ANY, Target(TargetKind.CHAIN))
        if len(place.targets) > 1 or target.kind is not TargetKind.STITCH or not cursor.known:
            return place.targets
        if len({node.kind for node in cursor.nodes[cursor.at : boundary]}) < 2:
            return place.targets
        window = [node for node in cursor.nodes[cursor.at : boundary] if node.is_stitch]
        others = [node for node in window if not cursor.matches(node, target, self.size)]
        if not others or len(others) == len(window) or any(family(node.kind) in self.rules.heights for node in others):
            return place.targets
        every = self.choices.pick(("every stitch", place.span.start), 2, 1) == 1
        return (_ANY,) if every else place.targets

    def chains_are_stitches(self, place: Place, boundary: int) -> bool:
        """Whether "in each st" over a row with chains takes those as well, one by one, as a printed count may tell."""
        window = self.cursor.nodes[self.cursor.at : boundary]
        chains = sum(node.length for node in window if node.is_space)
        if not chains or not any(node.is_stitch for node in window):
            return False
        counted = bool(self.choices.habits.get(CHAINS_BELOW))
        if self.choices.pick(("chains too", place.span.start), 2, int(counted)) == 0:
            return False
        if not counted:  # else the count of the row below is asked about
            self.cursor.troubles.append(Trouble("chains too", "ch", chains))
        return True

    def each_corner(self, boundary: int) -> list[Node]:
        """ "(2 dc, ch 2, 2 dc) in each remaining corner": only where the row below shows its corners."""
        cursor, marks = self.cursor, self.corner_marks()
        if not marks:
            raise PlacesUnknown(CORNERS_UNKNOWN)
        found = [cursor.nodes[index] for index in marks if cursor.at <= index < boundary]
        if found:
            cursor.at, cursor.last = max(index for index in marks if index < boundary) + 1, found[-1]
        else:
            cursor.run_out(Target(TargetKind.CORNER), self.size)
        return found

    def below(self, place: Place, number: int, following: tuple[Step, ...]) -> list[Node]:
        """A long stitch into an earlier row passes over the stitch that it covers, unless the text works or skips it.

        One into a gap, "between the groups of Rnd 2", rather lies over a gap, too.
        """
        if place.which is Which.EACH:
            raise PlacesUnknown
        self.used_earlier[place.row] += number
        apart = bool(following) and isinstance(following[0], Skip)
        ended = (
            self.cursor.known and self.cursor.at >= self.cursor.end
        )  # "sc in 4 unworked sts of Row 1", beyond a short row
        covers = (
            not (self.works_behind or ended)
            and self.choices.pick(("covers", place.span.start), 2, int(apart or place.between)) == 0
        )
        if covers and self.cursor.known:
            self.cursor.run(_ANY, number, self.size)
        return [Node("row below") for _ in range(number)]

    def nth_of_next(self, place: Place, number: int) -> Node:
        """ "2nd of next 3 sc" passes all three; a bare "3rd st" can only be told at the start of a row."""
        cursor = self.cursor
        nth = place.ordinals[0]
        if place.from_words == "last":  # "3rd of last 5 tr": where the words before have come as far as those
            if not cursor.known or cursor.back_from_end(place.targets, number, self.size) != cursor.at:
                raise PlacesUnknown
        if number > 1:
            found = cursor.run(place.targets[0], number, self.size)
            return found[min(nth, len(found)) - 1]
        if self.begin_node is not None and self.at_start() and cursor.known and cursor.at <= 1 < nth:
            for _ in range(nth - 1 - cursor.at):  # "ch 3, dc in 2nd dc": the chain stands on the first
                cursor.next(place.targets[0], self.size)
            return cursor.next(place.targets[0], self.size)
        if self.made or not cursor.known:
            raise PlacesUnknown
        for _ in range(nth - 1):
            cursor.next(place.targets[0], self.size)
        return cursor.next(place.targets[0], self.size)

    def further_on(self, place: Place, number: int) -> list[Node]:
        """The 7th of "in 1st and 7th st"."""
        if len(place.ordinals) > 1 and (number > 1 or list(place.ordinals) != sorted(set(place.ordinals))):
            raise PlacesUnknown
        found = []
        for before, nth in pairwise(place.ordinals):
            for _ in range(nth - before - 1):
                self.cursor.next(place.targets[0], self.size)
            found.append(self.cursor.next(place.targets[0], self.size))
        return found

    def resume(self) -> None:
        """Go back to the row below when the chain made in this row is used up."""
        if self.outer is not None and self.cursor.at >= len(self.cursor.nodes):
            self.cursor, self.outer = self.outer, None

    def spaces_passed(self, index: int, target: Target) -> int:
        """How many spaces like the one at `index` are left behind on the way to it."""
        between = self.cursor.nodes[self.cursor.at : index]
        return sum(node.kind == "space" and self.cursor.matches(node, target, self.size) for node in between)
