"""Finds the places in the row below that a clause names."""

from __future__ import annotations

from dataclasses import replace

from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.tree import Alongside, Group, Repeat, Skip, Step, TimesKind, Work
from lint.working.cursor import PlacesUnknown, Trouble, describe
from lint.working.fabric import Node
from lint.working.gaps import Gaps
from lint.working.parts import middle_of

_ANY = Target(TargetKind.ANY_STITCH)
_PLAIN = (TargetKind.ANY_STITCH, TargetKind.STITCH)


class Placing(Gaps):
    """Finding places: next, each, first, last, same, the middle of a corner, the top of a chain…"""

    def find(self, place: Place, following: tuple[Step, ...]) -> list[Node]:
        """The places in the row below that a clause names, taken."""
        if self.outer is not None:
            self.resume()
        cursor = self.cursor
        number = self.amount(place.number)
        place = replace(place, targets=self.of_turning_chain(place.targets)) if place.targets[0].name else place
        which = place.which
        target = place.targets[0]
        if place.between:
            return self.gaps(place, number)
        if target.kind is TargetKind.MARKED and which is not Which.EACH:
            return self.marked_places(number)
        if place.skipped:
            return self.skipped_places(place, number)
        if place.below and which is Which.EACH:
            raise PlacesUnknown("how many places the earlier row has for this is not known here")
        if place.bare and self.stands_in(place) and cursor.last is not None:
            cursor.at = 1
            return [cursor.last]
        if which is Which.NEXT and place.of is None and not place.middle and not place.below and target.kind in _PLAIN:
            return cursor.run(target, number, self.size)  # the commonest by far
        if cursor.open_ring(place.targets) and self.begin_node is not None:
            cursor.at = 1  # the beginning chain stands on the first
        if which is Which.ELSEWHERE:
            return [Node("elsewhere") for _ in range(number)]
        if which is Which.EACH:
            if place.of is not None:
                return self.part_of_each_group(place)
            if len(place.targets) == 1 and target.kind is TargetKind.SPECIAL and cursor.known and self.is_group(target):
                return self.part_of_each_group(replace(place, of=target))  # "V-st in each V-st": one place each
            return self.each_place(place, following)
        if which is Which.SAME or which is Which.JUST_MADE:
            node = cursor.last
            if place.from_words == "round's start" and len(self.made) > 2 and self.is_round and self.made[0].parents:
                if cursor.nodes[cursor.at :] and all(node.kind == "ch" for node in cursor.nodes[cursor.at :][:2]):
                    cursor.at += cursor.at == len(cursor.nodes) - 1  # its other side, met at the end of the way back
                return [self.made[0].parents[0]]  # "2 dc in same sp as beg ch-3": what the round began in
            if node is None or node.kind == "ch" and not self.made:
                node = cursor.next(_ANY, self.size) if cursor.nodes or not cursor.known else Node("unknown place")
            elif cursor.at < len(cursor.nodes) and node is cursor.nodes[cursor.at] and node.kind != "ring":
                cursor.at += 1
            return [node]
        if place.below:
            return self.below(place, number, following)
        if which is Which.NTH and place.of is None and place.ordinals:
            return [self.nth_of_next(place, number)]
        if which is Which.NTH or place.middle or (place.of is not None and which is Which.NEXT):
            return [self.part_of_group(place)]
        if which is Which.FIRST:
            return self.first_places(place, number)
        if which is Which.LAST and cursor.known:
            if target.kind is TargetKind.SPECIAL and self.is_group(target) and cursor.groups(target):
                index = self.last_groups(target, number)
            else:
                index = cursor.back_from_end(place.targets, number, self.size)
            space = place.targets[0].kind is TargetKind.SPACE
            skipped = self.spaces_passed(index, place.targets[0]) if space else self.passed(index)
            if skipped and self.made and not cursor.optional:
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
        return [cursor.next(target, self.size) for _ in range(number)]

    def skipped_places(self, place: Place, number: int) -> list[Node]:
        """Stitches that this row skipped, the first of them first; those of an earlier row use none of the row below."""
        if place.below or place.which is Which.ELSEWHERE and not self.skipped:
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

    def stands_in_closing_loop(self) -> bool:
        """Whether "next loop" at a round's start is the one after the loop that the round before was closed with."""
        nodes = self.cursor.nodes
        if self.cursor.at or not nodes or not nodes[0].closing or any(node.is_stitch for node in self.made):
            return False
        last = self.last_work.places if isinstance(self.last_work, Work) else ()
        closes_there = bool(last) and last[0].from_words in ("top", "start") and last[0].targets[0].kind in _PLAIN
        return self.choices.pick(("closing loop", "next"), 2, 1 if closes_there else 0) == 1

    def each_place(self, place: Place, following: tuple[Step, ...]) -> list[Node]:
        """A run over every place of its sorts; one to the row's end that finds none left is a trouble."""
        cursor = self.cursor
        boundary = self.boundary(place.limit, following)
        if place.targets == (Target(TargetKind.SPACE),) and self.stands_in_gap() and (gaps := self.gaps_to(boundary)):
            return gaps
        found = cursor.each(place.targets, boundary, self.size)
        if not found and (place.limit is None or place.limit.kind is LimitKind.END):
            cursor.run_out(place.targets[0], self.size)
        return found

    def each_and_beside(
        self, place: Place, beside: list[Alongside], following: tuple[Step, ...]
    ) -> tuple[list[Node], dict[int, tuple[Step, ...]]]:
        """The places of a run and those worked alongside it, in order; what goes into the latter, by the node's id."""
        cursor = self.cursor
        if place.of is not None or not cursor.known:
            raise PlacesUnknown
        start, boundary = cursor.at, self.boundary(place.limit, following)
        instead: dict[int, tuple[Step, ...]] = {}
        for step in beside:
            nodes = [node for node in cursor.nodes[start:boundary] if self.is_beside(node, step.place)]
            if not nodes:
                raise PlacesUnknown  # a corner or space that the row below does not show
            self.expect(step.place, len(nodes))
            instead |= {id(node): step.items for node in nodes}
        own = {id(node) for node in cursor.each(place.targets, boundary, self.size)}
        self.expect(place, len(own))
        found = [node for node in cursor.nodes[start:boundary] if id(node) in own or id(node) in instead]
        if found:
            cursor.last = found[-1]
        return found, instead

    def expect(self, place: Place, found: int) -> None:
        """ "in each of the 4 corner sps": so many there must be."""
        wanted = self.amount(place.number)
        if place.bare and not place.each_of and found != wanted:
            raise PlacesUnknown("the words name one such place, and the row below has several")
        if place.each_of and found != wanted:
            kind = "run out" if wanted > found else "left"
            self.cursor.troubles.append(Trouble(kind, describe(place.targets[0], self.size), abs(wanted - found)))

    def is_beside(self, node: Node, place: Place) -> bool:
        """Whether a node is one of the places of "working … in each …"; corners as the round below shows them."""
        owner, target = place.of, place.targets[0]
        if target.kind is TargetKind.CORNER:
            return node.corner
        if place.middle or (owner is not None and owner.kind is TargetKind.CORNER):
            return node.corner and not place.ordinals and self.cursor.matches(node, target, self.size)
        if owner is not None:
            return False
        return any(self.cursor.matches(node, item, self.size) for item in place.targets)

    def below(self, place: Place, number: int, following: tuple[Step, ...]) -> list[Node]:
        """A long stitch into an earlier row passes over the stitch that it covers, unless the text works or skips it."""
        if place.which is Which.EACH:
            raise PlacesUnknown
        skipped_apart = bool(following) and isinstance(following[0], Skip)
        covers = self.choices.pick(("covers", place.span.start), 2, 1 if skipped_apart else 0) == 0
        if covers and self.cursor.known:
            self.cursor.run(_ANY, number, self.size)
        return [Node("row below") for _ in range(number)]

    def nth_of_next(self, place: Place, number: int) -> Node:
        """ "2nd of next 3 sc" passes all three; a bare "3rd st" can only be told at the start of a row."""
        cursor = self.cursor
        nth = place.ordinals[0]
        if number > 1:
            found = cursor.run(place.targets[0], number, self.size)
            return found[min(nth, len(found)) - 1]
        if self.made or not cursor.known:
            raise PlacesUnknown
        for _ in range(nth - 1):
            cursor.next(place.targets[0], self.size)
        return cursor.next(place.targets[0], self.size)

    def resume(self) -> None:
        """Go back to the row below when the chain made in this row is used up."""
        if self.outer is not None and self.cursor.at >= len(self.cursor.nodes):
            self.cursor, self.outer = self.outer, None

    def spaces_passed(self, index: int, target: Target) -> int:
        """How many spaces like the one at `index` are left behind on the way to it."""
        between = self.cursor.nodes[self.cursor.at : index]
        return sum(node.kind == "space" and self.cursor.matches(node, target, self.size) for node in between)

    def boundary(self, limit: Limit | None, following: tuple[Step, ...]) -> int:
        """Where a run of "each" or a repeat ends: as said, or before the places that the next clauses name."""
        cursor = self.cursor
        if limit is not None and limit.kind is LimitKind.LAST and limit.target is not None:
            if limit.target.kind in (TargetKind.SPECIAL, TargetKind.CORNER):
                return self.last_groups(limit.target, self.amount(limit.number))
        if limit is not None and limit.kind is LimitKind.LAST:
            return cursor.back_from_end((limit.target or _ANY,), self.amount(limit.number), self.size)
        if limit is not None and limit.target is not None and limit.target.kind is TargetKind.MARKED:
            return self.to_marker(limit)
        if limit is not None and limit.kind is LimitKind.BEFORE and limit.target is not None:
            if limit.middle and limit.target.kind in (TargetKind.ANY_STITCH, TargetKind.SPACE):
                return self.middle_of_row(limit.target)
            if limit.middle or limit.target.kind is TargetKind.CORNER:
                marks = self.corner_marks() if limit.target.kind is TargetKind.CORNER else []
                if marks and (limit.middle or cursor.nodes[marks[0]].kind == "space" or _into_corner(following)):
                    past = cursor.at + (0 if limit.middle else 1)
                    return next((index for index in marks if index >= past), cursor.end)
                if limit.middle and cursor.known and not cursor.has_groups(limit.target):
                    raise PlacesUnknown("the row below shows no such group")
                for run in cursor.groups(limit.target):
                    middle = middle_of(run, cursor)
                    if middle >= cursor.at and not (middle == cursor.at and not limit.middle):
                        into = limit.middle or cursor.nodes[middle].kind == "space" or _into_corner(following)
                        return middle if into else run[0]
                return cursor.end
            if limit.target.kind is TargetKind.TURNING_CHAIN:
                last = cursor.end - 1
                if last < 0 or not cursor.nodes[last].chain:
                    return cursor.end
                its_space = self.into_whole_chain(following) or _into_its_space(following)
                with_space = last and cursor.whole_chain(cursor.nodes[last - 1]) and its_space
                return last - 1 if with_space else last
            found = cursor.find(limit.target, self.size)
            if found is None and limit.target.kind is TargetKind.SPACE and not cursor.has(limit.target, self.size):
                found = next((i for i in range(cursor.at, cursor.end) if cursor.nodes[i].kind == "space"), None)
            return cursor.end if found is None else found
        return self.reserve(following)

    def into_whole_chain(self, following: tuple[Step, ...]) -> bool:
        """ "2 sc in tch": several stitches over the chain use its space and its stitch together."""
        ahead = next((step for step in following if isinstance(step, (Work, Group, Skip))), None)
        place = ahead.places[0] if isinstance(ahead, Work) and ahead.places else None
        bare = place is not None and place.targets[0].kind is TargetKind.TURNING_CHAIN and not place.ordinals
        return bare and not place.from_words and self.amount(ahead.number) > 1

    def reserve(self, following: tuple[Step, ...]) -> int:
        """The places that the rest of the row names are not taken by a run "to end"."""
        cursor = self.cursor
        index = cursor.end
        for step in reversed(following):
            if isinstance(step, Repeat) and step.times.kind is TimesKind.FILL:
                return cursor.end
            places = step.places if isinstance(step, (Work, Group, Skip)) else ()
            if isinstance(step, Work) and (
                step.stitch == "sl st" or step is self.last_work and self.closes_later(step)
            ):
                continue
            if isinstance(step, Work) and not step.places and step.stitch != "picot":
                number = self.amount(step.number) * (step.together or (2 if step.stitch == "dec" else 1))
                index = self.back((_ANY,), number, index)
            for place in reversed(places):
                if place.which in (Which.NEXT, Which.LAST):
                    index = self.back(place.targets, self.amount(place.number), index)
                elif place.which is Which.EACH:
                    return cursor.end
            if isinstance(step, Repeat):
                return cursor.end if not _simple(step) else index
        return max(index, cursor.at)

    def closes_later(self, step: Work) -> bool:
        place = step.places[0] if step.places else None
        if place is None or not self.is_round:
            return False
        return place.targets[0].kind is TargetKind.TURNING_CHAIN or into_round_start(place, None)

    def of_turning_chain(self, targets: tuple[Target, ...]) -> tuple[Target, ...]:
        """ "tch sp" where the turning chain has no space of its own: the chain."""
        target = targets[0]
        if target.kind is not TargetKind.SPACE or target.name is None or self.cursor.has(target, self.size):
            return targets
        return (Target(TargetKind.TURNING_CHAIN),)

    def back(self, targets: tuple[Target, ...], number: int, index: int) -> int:
        return self.cursor.back_from_end(self.of_turning_chain(targets), number, self.size, index)

    def first_places(self, place: Place, number: int) -> list[Node]:
        """ "first": the row's first place at its start; the next one inside a repeat; the start again at a round's end."""
        cursor = self.cursor
        target = place.targets[0]
        nothing_yet = self.at_start()
        if not cursor.known:
            return [cursor.next(target, self.size) for _ in range(number)]
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
        if cursor.last is None or cursor.last.kind in ("space", "gap"):
            return 0
        group = cursor.last.group
        return sum(
            1 for node in cursor.nodes[cursor.at : index] if node.is_stitch and not (group and node.group == group)
        )


def into_round_start(place: Place, first: Node | None) -> bool:
    """Whether a place is where the round began: the join, or its first stitch, as `first` shows it has one."""
    target = place.targets[0]
    if target.kind is TargetKind.PLACE:
        return target.name == "join"
    named = place.which is Which.FIRST and (first is None or first.is_stitch) or place.from_words in ("top", "start")
    return named and target.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH)


def _into_corner(following: tuple[Step, ...]) -> bool:
    """Whether the next clause goes into the corner's middle: "sc to corner, 3 sc in center sc of corner"."""
    step = next((step for step in following if isinstance(step, (Work, Group, Skip))), None)
    place = step.places[0] if step is not None and step.places else None
    owner = place and (place.of or place.targets[0])
    return place is not None and (place.middle or owner.kind is TargetKind.CORNER)


def _simple(step: Repeat) -> bool:
    return step.times.kind is not TimesKind.FILL


def _into_its_space(following: tuple[Step, ...]) -> bool:
    """Whether the next clauses go into the turning chain's own space, and then into its chain: "dc in ch-4 sp, dc in 3rd ch"."""
    ahead = [step for step in following if isinstance(step, (Work, Group)) and step.places][:2]
    if len(ahead) < 2:
        return False
    space, chain = ahead[0].places[0], ahead[1].places[0]
    return space.targets[0].kind is TargetKind.SPACE and chain.targets[0].kind is TargetKind.TURNING_CHAIN
