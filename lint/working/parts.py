"""Finds parts of what one place of an earlier row holds: the ch-1 sp of a V-st, a shell's 3rd dc, a corner's middle."""

from __future__ import annotations

from lint.place import LimitKind, Place, Target, TargetKind, Which
from lint.tree import Chain, Remark, Skip, Step
from lint.working.arms import Arms
from lint.working.cursor import CORNERS_UNKNOWN, Cursor, PlacesUnknown, Trouble
from lint.working.fabric import Fabric, Node

_STITCHES = (TargetKind.STITCH, TargetKind.ANY_STITCH)


class Parts(Arms):
    """Groups of the row below, and where in them a clause goes."""

    # of the row below: its places, the names that stand in it, and whether a group holds a space
    _seen: tuple[list[Node], set[str | None], bool] | None = None
    coming: tuple[Step, ...] = ()  # the steps behind the one whose places are looked for

    def is_group(self, target: Target) -> bool:
        cursor = self.cursor
        if target.kind is TargetKind.CORNER:
            return True
        return any(node.special == target.name for node in cursor.nodes[cursor.at :]) or not any(
            node.kind == target.name for node in cursor.nodes[cursor.at :]
        )

    def named_owner(self, place: Place) -> str | None:
        """The shell or V-stitch of the row below that a place names a part of: "ch-2 sp of next shell".

        "": whatever is in one place, where the row below has no such name; None: no part of anything is named.
        """
        owner, nodes = place.of, self.cursor.nodes
        if owner is None or owner.kind is not TargetKind.SPECIAL:
            return None
        if self._seen is None or self._seen[0] is not nodes:  # looked through once, for rows are long
            held = any(node.kind == "space" and node.group for node in nodes)
            self._seen = (nodes, {node.special for node in nodes}, held)
        _, named, held = self._seen
        if owner.name in named:
            return owner.name
        return "" if held else None

    @staticmethod
    def is_part(node: Node, owners: set[str]) -> bool:
        """Whether a space belongs to one of the shells or V-stitches named."""
        return node.special in owners or "" in owners and bool(node.group)

    def part_of_group(self, place: Place) -> Node:
        """ "3rd dc of next shell", "ch-1 sp of next V-st", "center sc of next corner", "next corner"."""
        cursor = self.cursor
        target = place.targets[0]
        owner = place.of or (target if target.kind in (TargetKind.CORNER, TargetKind.SPECIAL) else None)
        if not cursor.known:
            return cursor.next(target, self.size)
        of_row = target.kind in (TargetKind.ANY_STITCH, TargetKind.SPACE)
        if owner is None and place.middle and of_row and not cursor.circular:
            index = self.middle_of_row(target)
            if index < cursor.at:
                return cursor.run_out(target, self.size)
            cursor.at, cursor.last = index + 1, cursor.nodes[index]
            return cursor.last
        if (
            owner is not None
            and owner.kind is TargetKind.TURNING_CHAIN
            or owner is not None
            and owner.kind is TargetKind.CHAIN
        ):
            return cursor.next(target, self.size)
        if owner is not None and owner.kind is TargetKind.CORNER and (marks := self.corner_marks()):
            wanted = next((i for i in marks if i >= cursor.at), None)
            if (
                wanted is None
                or target.kind is not TargetKind.CORNER
                and not cursor.matches(cursor.nodes[wanted], target, self.size)
            ):
                return cursor.run_out(owner, self.size)
            cursor.at, cursor.last = wanted + 1, cursor.nodes[wanted]
            return cursor.last
        if self.flat_below and owner is not None and owner.kind is TargetKind.CORNER and not place.ordinals:
            self.cursor = Cursor(Fabric.unknown(self.is_round))  # round a flat piece: from here on along its edges
            self.cursor.last = Node("unknown place")
            return self.cursor.last
        runs = cursor.groups(owner)
        for run in runs:
            wanted = self.wanted_part(run, place, target, owner)
            if wanted is not None and wanted >= cursor.at:
                self.by_another_name(owner, cursor.nodes[run[0]].special)
                before, cursor.at = cursor.at, wanted + 1
                cursor.last = cursor.nodes[wanted]
                self.pass_rest(place, before, wanted, not place.ordinals or wanted == middle_of(run, cursor))
                return cursor.last
        if owner is not None and owner.kind is TargetKind.CORNER and not runs and cursor.circular:
            if target.kind is not TargetKind.CORNER or place.ordinals or cursor.at >= cursor.end:
                raise PlacesUnknown(CORNERS_UNKNOWN)
            self.in_turn += 1  # "3 sc in corner st, sc in next 8 sts": the stitch that is next makes a corner
            return cursor.next(Target(TargetKind.ANY_STITCH), self.size)
        named = owner is not None and owner.kind is TargetKind.SPECIAL and self.named_owner(place)
        groupless = target.kind is TargetKind.SPACE or not (runs or cursor.has_groups(owner))
        if owner is None or groupless and not named:
            return cursor.next(target, self.size)
        if owner.kind is TargetKind.CORNER:
            raise PlacesUnknown  # an edge whose corners are told in words only
        cursor.troubles.append(Trouble("run out", owner.name or "corner"))
        cursor.ran_out += 1
        cursor.last = Node("missing")
        return cursor.last

    def pass_rest(self, place: Place, before: int, index: int, middle: bool = True) -> None:
        """ "V-st in next V-st, dc in next dc": words that passed over a group's first stitches pass over its last ones, too."""
        cursor, nodes = self.cursor, self.cursor.nodes
        group, name = nodes[index].group, nodes[index].special

        def of_it(node: Node) -> bool:  # of "(V-st, ch 2, V-st)" the V-stitch, where its own space is meant
            return node.group == group and name in (None, node.special)

        if not group or index <= before or not of_it(nodes[index - 1]):
            return
        start = index - 1
        while start and of_it(nodes[start - 1]):
            start -= 1
        if before > start:
            return  # the group was entered before: its first stitches were not passed over
        end = index + 1
        while end < len(nodes) and of_it(nodes[end]):
            end += 1
        rather = int(middle and not self.skips_like(nodes[index + 1 : index + 2]))
        if end > index + 1 and self.choices.pick(("rest of group", place.span.start), 2, rather) == 1:
            cursor.at = end

    def skips_like(self, rest: list[Node]) -> bool:
        """Whether the words that come skip stitches of a sort told by number, "sk next 5 dc", and the group's rest is of it."""
        ahead = next((step for step in self.coming if not isinstance(step, (Chain, Remark))), None)
        target = ahead.places[0].targets[0] if isinstance(ahead, Skip) and ahead.places else None
        told = target is not None and target.kind in _STITCHES
        return told and any(self.cursor.matches(node, target, self.size) for node in rest)

    def pass_group(self, place: Place) -> Node:
        """ "Sk next V-st": the next that is not yet entered is passed over whole; any other place is the next of its sort."""
        cursor, target = self.cursor, place.targets[0]
        one = target.kind is not TargetKind.SPECIAL or any(node.kind == target.name for node in cursor.nodes)
        if one or not cursor.known or not cursor.has_groups(target):
            return cursor.next(target, self.size)  # a cluster is one stitch
        runs = cursor.groups(target)
        if runs and all(len(run) == 1 for run in runs):
            return cursor.next(target, self.size)
        for run in runs:
            middle = middle_of(run, cursor)
            if middle >= cursor.at:
                cursor.at = run[-1] + 1 if run[-1] >= run[0] else len(cursor.nodes)  # one may go round the join
                cursor.last = cursor.nodes[middle]
                return cursor.last
        return cursor.run_out(target, self.size)

    def by_another_name(self, owner: Target | None, special: str | None) -> None:
        """Notes "ch-1 sp of next cluster" where the row below has shells; a beginning shell is a shell, too."""
        if owner is None or owner.kind is not TargetKind.SPECIAL or not owner.name or not special:
            return
        named, there = (set(name.replace("-", " ").split()) for name in (owner.name, special))
        if not named & there and owner.name not in ("group", "corner"):
            self.cursor.troubles.append(Trouble("not there", owner.name, found=special))

    def last_groups(self, target: Target, number: int) -> int:
        """Where the last shells, V-stitches or corners of the row below begin."""
        cursor = self.cursor
        if self.blocks and target.kind is TargetKind.SPECIAL and cursor.known:
            return max(cursor.at, self.last_blocks(number))
        if any(node.kind == target.name for node in cursor.nodes):  # a cluster is one stitch
            return cursor.back_from_end((target,), number, self.size)
        marks = self.corner_marks() if target.kind is TargetKind.CORNER else []
        runs = [[index] for index in marks] or (cursor.groups(target) if cursor.known else [])
        if not 0 < number <= len(runs):
            raise PlacesUnknown
        return max(cursor.at, runs[-number][0])

    def last_blocks(self, number: int) -> int:
        """Where the last blocks of a row from corner to corner begin: each is stitches and one space."""
        nodes = self.cursor.nodes
        spaces = [index for index, node in enumerate(nodes) if node.kind == "space"]
        if not 0 < number <= len(spaces):
            raise PlacesUnknown
        if nodes[-1].kind != "space":
            return spaces[-number]
        return spaces[-number - 1] + 1 if number < len(spaces) else 0

    def middle_of_row(self, target: Target, number: int = 1) -> int:
        """Where the middle stitch of a flat row is, or the first of its middle ones; or the middle one of its spaces."""
        cursor = self.cursor
        found = [index for index, node in enumerate(cursor.nodes) if cursor.matches(node, target, self.size)]
        if not cursor.known or cursor.circular or len(found) < number or (len(found) - number) % 2:
            raise PlacesUnknown  # a round has no middle, nor has a row of an even number one middle stitch
        return found[(len(found) - number) // 2]

    def middle_ones(self, target: Target, number: int) -> list[Node]:
        """ "2 sc in each of the 2 center sts": where the work has come to them."""
        if self.middle_of_row(target, number) != self.cursor.at:
            raise PlacesUnknown("the stitches named are not those that the work has come to")
        return self.cursor.run(target, number, self.size)

    def corner_marks(self) -> list[int]:
        """Where the round below has its corners, as its own count found them."""
        return [index for index, node in enumerate(self.cursor.nodes) if node.corner]

    def wanted_part(self, run: list[int], place: Place, target: Target, owner: Target | None) -> int | None:
        nodes = self.cursor.nodes
        if place.ordinals and owner is not None:
            stitches = self.of_its_kind(run, target)
            return stitches[place.ordinals[0] - 1] if len(stitches) >= place.ordinals[0] else None
        if target.kind is TargetKind.SPACE:
            return next((i for i in run if nodes[i].kind == "space"), None)
        return middle_of(run, self.cursor)

    def of_its_kind(self, run: list[int], target: Target) -> list[int]:
        """The stitches of a group that bear the name: "2nd dc of next petal" is no second stitch; all where none does."""
        stitches = [i for i in run if self.cursor.nodes[i].is_stitch]
        if target.kind is not TargetKind.STITCH:
            return stitches
        return [i for i in stitches if self.cursor.matches(self.cursor.nodes[i], target, self.size)] or stitches

    def part_of_each_group(self, place: Place, following: tuple[Step, ...] = ()) -> list[Node]:
        """ "center dc of each shell": one of each; "each dc of each shell", "first 2 dc of each shell": all those."""
        cursor = self.cursor
        if not cursor.known:
            raise PlacesUnknown
        several = place.of_which == "all" or place.from_words in ("first", "last") or len(place.ordinals) > 1
        several = several and place.targets[0].kind in _STITCHES
        found, start = [], cursor.at
        end = self.boundary(place.limit, following) if place.limit is not None else cursor.end
        for run in cursor.groups(place.of):
            one = self.wanted_part(run, place, place.targets[0], place.of)
            wanted = self.wanted_parts(run, place) if several else [one] if one is not None else []
            for index in wanted:
                if cursor.at <= index < end:
                    found.append(cursor.nodes[index])
                    cursor.last = cursor.nodes[index]
                    cursor.at = index + 1
        to_end = place.limit is None or place.limit.kind is LimitKind.END
        if not found and (to_end and not self.repeating or not cursor.has_groups(place.of)):
            raise PlacesUnknown("the row below shows no such group from here on")
        self.between_groups += [node for node in cursor.nodes[start : cursor.at] if node.special is None]
        return found

    def wanted_parts(self, run: list[int], place: Place) -> list[int]:
        """Which stitches of one group a place names: its first dc, its last 2 dc, its 1st and 5th, or each of them."""
        stitches, number = self.of_its_kind(run, place.targets[0]), self.amount(place.number)
        which = place.from_words if place.of_which == "each" and place.from_words else place.which
        if place.ordinals:
            return [stitches[n - 1] for n in place.ordinals if n <= len(stitches)]
        if place.middle:
            before, odd = divmod(len(stitches) - number, 2)
            return stitches[before : before + number] if before >= 0 and not odd else []
        if which == Which.EACH and place.number.lone == 1:
            return stitches
        return stitches[-number:] if which == Which.LAST else stitches[:number]

    def names_parts(self, place: Place) -> bool:
        """Whether a place is several stitches of one group, or its first or last: what the middle one tells, tells not those."""
        owner, several = place.of, self.amount(place.number) > 1 or len(place.ordinals) > 1
        if (
            owner is None
            or owner.kind is not TargetKind.SPECIAL
            or place.targets[0].kind not in _STITCHES
            or place.below
        ):
            return False
        if place.which is Which.EACH:
            return place.of_which not in ("each", "all")
        return place.which in (Which.FIRST, Which.LAST) or several and place.which in (Which.NEXT, Which.NTH)

    def parts_of_group(self, place: Place) -> list[Node]:
        """ "first dc of next shell", "last 2 dc of same petal", "each dc of next shell", "1st and 5th dc of next fan"."""
        cursor = self.cursor
        if not cursor.known or not cursor.has_groups(place.of):
            raise PlacesUnknown("the row below shows no such group")
        here = next((node.parents[0] for node in reversed(self.made) if node.is_stitch and node.parents), None)
        for run in cursor.groups(place.of):
            entered = any(cursor.nodes[i] is here for i in run)
            if entered and place.of_which == "next" and place.which is not Which.NTH:
                continue
            wanted = [i for i in self.wanted_parts(run, place) if i >= cursor.at]
            if wanted:
                cursor.at, cursor.last = wanted[-1] + 1, cursor.nodes[wanted[-1]]
                return [cursor.nodes[i] for i in wanted]
        return [cursor.run_out(place.of or place.targets[0], self.size)]

    def start_at(self, place: Place) -> None:
        """Begin the round at a place of the sort named; by symmetry any will do."""
        cursor = self.cursor
        target = place.targets[0]
        index, runs = None, []
        corner = place.of.kind is TargetKind.CORNER if place.of is not None else target.kind is TargetKind.CORNER
        if corner and (marks := self.corner_marks()):
            index = marks[0]
        elif place.middle or corner or place.of is not None:
            runs = cursor.groups(place.of or (target if target.kind is TargetKind.CORNER else None))
            if runs and place.ordinals:
                index = self.wanted_part(runs[0], place, target, place.of)
            elif runs:
                index = (
                    middle_of(runs[0], cursor)
                    if target.kind is not TargetKind.SPACE
                    else next((i for i in runs[0] if cursor.nodes[i].kind == "space"), runs[0][0])
                )
        if place.of is not None and index is not None and place.which in (Which.FIRST, Which.LAST) and not corner:
            inside = [i for i in runs[0] if cursor.matches(cursor.nodes[i], target, self.size)]
            end = 0 if place.which is Which.FIRST else -1  # "join in first dc of any 7-dc group"
            index = inside[end] if inside else index
        elif place.which is Which.LAST:
            index = cursor.back_from_end((target,), 1, self.size)
        elif place.which is Which.NTH and place.of is None and len(place.ordinals) == 1 and not place.middle:
            there = [
                i for i, node in enumerate(cursor.nodes) if i >= cursor.at and cursor.matches(node, target, self.size)
            ]
            if place.ordinals[0] > len(there):
                raise PlacesUnknown("the place to begin in is not there")
            index = there[place.ordinals[0] - 1]  # "Join A in 4th st"
        elif place.which is Which.FROM_HOOK:
            raise PlacesUnknown("which place that is to begin in is not known here")  # "in 3rd st from end"
        if index is None:
            index = cursor.find(target, self.size, cursor.at if place.which is Which.NEXT else 0)
        if index is None:
            node = cursor.next(target, self.size)
            index = next((i for i, item in enumerate(cursor.nodes) if item is node), None)
            if index is None:
                return
        if place.from_words == "after" and not place.between:  # "in first st after any corner sp"
            index = (index + 1) % len(cursor.nodes)
        if cursor.circular:
            cursor.rotate(index)
            # of the group that the round begins in, the stitches before that place
            cursor.optional = index - runs[0][0] if runs and index in runs[0] and not corner else 0
        else:
            cursor.lay(cursor.nodes[index:])
            cursor.at = 0
            cursor.last = cursor.nodes[0]


def middle_of(run: list[int], cursor: Cursor) -> int:
    """The middle of a group: its space if it has one, else its middle stitch."""
    space = next((i for i in run if cursor.nodes[i].kind == "space"), None)
    return space if space is not None else run[len(run) // 2]
