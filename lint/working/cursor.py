"""A place in the row below: which stitches and spaces are still to be worked into, and finding the next."""

from __future__ import annotations

from lint.place import Target, TargetKind
from lint.working.clumps import in_one_place, makes_group, names_loops, not_passed, those_named
from lint.working.fabric import Chains, Fabric, Node, SingleChain
from lint.working.kinds import goes_by
from lint.working.spacesof import RowSpaces
from lint.working.troubles import Trouble, describe, name_of

FEWEST_CORNERS = 3  # no shape with corners has fewer
CORNERS_UNKNOWN = "where the corners of the round below are is not known here"


class PlacesUnknown(Exception):
    """The text hangs on how many places there are, and that is not known here."""


class Cursor:
    """The row below in working order, with a place in it.

    `at` is the index of the first place not yet passed; `stop`, where set, ends a run before later places.
    Over an unknown edge every "next" place is granted, and anything that needs to know how many there are
    raises PlacesUnknown.
    """

    def __init__(self, fabric: Fabric) -> None:
        self.nodes = fabric.nodes
        self.known = fabric.known
        self.circular = fabric.circular
        self.uncounted, self.hung, self.loops = fabric.uncounted, fabric.hung, fabric.loops
        self.at = 0
        self.stop: int | None = None
        self.last: Node | None = self.nodes[0] if self.nodes else None
        self.marks = {id(node) for node in fabric.marks}
        self.gaps = {pair for a, b in fabric.gaps for pair in ((id(a), id(b)), (id(b), id(a)))}
        self.marks_unclear = fabric.marks_unclear
        self.optional = 0  # places at the end that a moved start passed over
        self.troubles: list[Trouble] = []
        self.ran_out = 0
        self._groups: list[list[int]] | None = None
        self._named: dict[str | None, list[list[int]]] = {}
        self._spaces: RowSpaces | None = None
        self._places: dict[tuple[int, bool | None], tuple[Target, int, int | None]] = {}

    # state -----------------------------------------------------------------------------------------

    def save(self) -> tuple:
        return (
            self.at,
            self.last,
            self.ran_out,
            len(self.troubles),
            self.nodes[self.at].used if self.at < len(self.nodes) else 0,
        )

    def restore(self, state: tuple) -> None:
        self.at, self.last, self.ran_out, troubles, used = state
        del self.troubles[troubles:]
        if self.at < len(self.nodes) and self.nodes[self.at].used != used:
            self.nodes[self.at].used = used

    @property
    def on_row_ends(self) -> bool:
        """Whether the places are the ends of a piece's rows."""
        return bool(self.nodes) and self.nodes[0].kind == "row end"

    @property
    def end(self) -> int:
        return len(self.nodes) if self.stop is None else min(self.stop, len(self.nodes))

    def lay(self, nodes: list[Node]) -> None:
        """Put other places, or the same in another order, in place of these."""
        self.nodes = nodes
        self._groups, self._spaces, self._places, self._named = None, None, {}, {}

    def rotate(self, index: int) -> None:
        """Move the start of a round to the place at `index`; the places passed over come round at its end."""
        self.lay(self.nodes[index:] + self.nodes[:index])
        self.optional = index
        self.at = 0
        self.last = self.nodes[0] if self.nodes else None

    # matching ----------------------------------------------------------------------------------------

    def matches(self, node: Node, target: Target, size: int, strict: bool = True) -> bool:
        kind = target.kind
        if kind is TargetKind.ANY_STITCH:
            return node.is_stitch or node.counted
        if kind is TargetKind.STITCH:
            if not node.is_stitch:
                return False
            return goes_by(node.kind, target.name) if strict else True
        if kind is TargetKind.SPACE:
            if node.kind != "space":
                begun_on = node.kind == "ring" or node.kind == "ch" and self.nodes[0].kind == "ch"  # "in the last loop"
                return begun_on and target.length is None and target.name is None
            if target.corner and id(node) not in self.spaces.corners or target.apart and id(node) in self.spaces.within:
                return False
            if target.name is not None and self.whole_chain(node) is None:
                return False  # "tch sp": only that of the turning chain
            length = target.length.at(size) if target.length else None
            return length is None or node.length == length or not strict or self.whole_chain(node) == length
        if kind is TargetKind.CHAIN:
            return node.kind in ("ch", "space")
        if kind is TargetKind.SPECIAL:
            return node.special == target.name or node.kind == target.name or not strict and node.is_stitch
        if kind is TargetKind.TURNING_CHAIN:
            return node.chain > 0
        if kind is TargetKind.RING:
            return node.kind == "ring"
        if kind is TargetKind.MARKED:
            return id(node) in self.marks
        return True

    def whole_chain(self, space: Node) -> int | None:
        """The length of the beginning chain that a space is a part of: "ch-4 sp" where ch 4 counts as dc and ch 1."""
        return self.spaces.begun.get(id(space))

    @property
    def spaces(self) -> RowSpaces:
        """What is known of the row's spaces."""
        self._spaces = self._spaces or RowSpaces(self.nodes)
        return self._spaces

    def remaining(self, targets: tuple[Target, ...], size: int) -> list[int]:
        """Indexes of the matching places from here to the end (or the stop)."""
        strict = any(self.matches(self.nodes[i], t, size) for i in range(self.at, self.end) for t in targets)
        return [
            i
            for i in range(self.at, self.end)
            if any(self.matches(self.nodes[i], target, size, strict) for target in targets)
        ]

    # taking places -------------------------------------------------------------------------------------

    def open_ring(self, targets: tuple[Target, ...], each: bool) -> bool:
        """A ring of chains worked into chain by chain ("hdc in each ch around", "in each st") is as many places as chains."""
        ring = self.nodes[0] if len(self.nodes) == 1 else None
        stitches = each and targets[0].kind is TargetKind.ANY_STITCH
        if (
            ring is not None
            and ring.kind == "ring"
            and ring.length > 2
            and (targets[0].kind is TargetKind.CHAIN or stitches)
        ):
            self.lay([SingleChain() for _ in range(ring.length)])
            self.at, self.last = 0, self.nodes[0]
            return True
        return False

    def next(self, target: Target, size: int) -> Node:
        """Take the next place of a sort; a made-up one, with the trouble noted, where there is none."""
        if not self.known:
            self.last = Node("unknown place") if target.kind is not TargetKind.SPACE else Chains("space")
            return self.last
        kind = target.kind
        if kind is TargetKind.RING:
            for node in self.nodes:
                if node.kind == "ring":
                    self.last = node
                    return node
        if kind is TargetKind.CHAIN:
            return self._next_chain(target)
        end = self.end
        index = self.at
        nodes = self.nodes
        if kind is TargetKind.ANY_STITCH:  # the commonest by far
            while index < end and nodes[index].kind == "space" and not nodes[index].counted:
                index += 1
            if index < end:
                node = nodes[index]
                if node.kind != "ring":
                    self.at = index + 1
                self.last = node
                return node
            return self.run_out(target, size)
        if index < end and self.matches(nodes[index], target, size):
            return self._take(index)
        strict, loose = self._first(target, size, True), self._first(target, size, False)
        if strict is not None:
            if loose is not None and loose < strict and kind is TargetKind.STITCH:
                if passed := self._stitches_between(loose, strict):
                    self.troubles.append(Trouble("passed", target.name or "", passed))
            return self._take(strict)
        bounded = (
            kind is TargetKind.STITCH
            and self.stop is not None
            or kind is TargetKind.SPECIAL
            and names_loops(nodes, target.name)
        )
        if loose is not None and (kind is TargetKind.SPACE or bounded) and self.has(target, size):
            loose = None  # there are such places in this row: these few left are others
        if loose is not None:
            if kind in (TargetKind.STITCH, TargetKind.SPACE, TargetKind.SPECIAL):
                self.troubles.append(Trouble("not there", describe(target, size), found=name_of(nodes[loose])))
            return self._take(loose)
        return self.run_out(target, size)

    def run(self, target: Target, number: int, size: int) -> list[Node]:
        """Take the next so many stitches of a sort."""
        found: list[Node] = []
        if self.known:
            nodes, index, end, name = self.nodes, self.at, self.end, target.name
            while index < end and len(found) < number:
                node = nodes[index]
                kind = node.kind
                if kind != "space" or name is None and node.counted:
                    if kind == "ring" or name is not None and not goes_by(kind, name):
                        break
                    found.append(node)
                index += 1
            if found:
                self.at, self.last = index, found[-1]
        while len(found) < number:
            found.append(self.next(target, size))
        return found

    def _stitches_between(self, first: int, last: int) -> int:
        return sum(1 for node in self.nodes[first:last] if node.is_stitch)

    def _take(self, index: int) -> Node:
        node = self.nodes[index]
        if node.kind != "ring":
            self.at = index + 1
        self.last = node
        return node

    def _next_chain(self, target: Target) -> Node:
        """The next single chain: of the foundation, or of a run of chains worked chain by chain."""
        index = self.at
        while index < self.end:
            node = self.nodes[index]
            if node.kind == "space":
                node.used += 1
                self.at = index + (node.used >= node.length)
                self.last = node
                return node
            if node.kind == "ch":
                return self._take(index)
            index += 1
        if self.at < self.end:
            self.called_chain(target, self.at)
            return self._take(self.at)
        return self.run_out(target, 0)

    def called_chain(self, target: Target, index: int) -> None:
        """Notes that a stitch is called a chain, where the row below has none."""
        node = self.nodes[index] if index < self.end else None
        if node is not None and node.is_stitch and not node.chain and node.kind != "free loop":
            self.troubles.append(Trouble("not there", describe(target, 0), found=name_of(node)))

    def run_out(self, target: Target, size: int) -> Node:
        """A made-up place where none is left, with the trouble noted."""
        self.ran_out += 1
        self.troubles.append(Trouble("run out", describe(target, size)))
        self.last = Node("missing")
        return self.last

    def each(self, targets: tuple[Target, ...], boundary: int, size: int) -> list[Node]:
        """Take every matching place up to `boundary`."""
        side = self.on_row_ends
        if not self.known or not side and any(target.kind is TargetKind.ROW_END for target in targets):
            raise PlacesUnknown
        found: list[Node] = []
        nodes = self.nodes
        if targets[0].kind is TargetKind.CHAIN and len(targets) == 1:
            while self.at < boundary and nodes[self.at].kind in ("ch", "space"):
                found.append(self._next_chain(targets[0]))
            if found or not any(node.kind == "space" for node in nodes[self.at : boundary]):
                if not found:
                    self.called_chain(targets[0], self.at)
                    return self.each((Target(TargetKind.ANY_STITCH),), boundary, size)
                return found
        if any(target.kind is TargetKind.CHAIN for target in targets):  # "in each sc and in each ch"
            for index in range(self.at, boundary):
                node = nodes[index]
                if node.kind == "space":
                    found += [node] * (node.length - node.used)
                elif node.kind != "ring":
                    found.append(node)
        else:
            window = range(self.at, boundary)
            for target in targets:
                if (
                    target.kind in (TargetKind.STITCH, TargetKind.SPECIAL)
                    and not self.kinds_there(target, boundary)
                    and not any(self.matches(nodes[i], target, size) for i in window)
                ):
                    first = next((nodes[i] for i in window if nodes[i].is_stitch), None)
                    if first is not None:
                        self.troubles.append(Trouble("not there", describe(target, size), found=name_of(first)))
                    targets = tuple(Target(TargetKind.ANY_STITCH) if item is target else item for item in targets)
            kinds = self.kinds_there(targets[0], boundary) if len(targets) == 1 else None
            if kinds is not None:
                found = [node for node in nodes[self.at : boundary] if node.kind in kinds]
            else:
                for index in window:
                    node = nodes[index]
                    if any(self.matches(node, target, size) for target in targets):
                        found.append(node)
        self.at = max(self.at, boundary)
        if found:
            self.last = found[-1]
        return found

    def kinds_there(self, target: Target, boundary: int) -> set[str] | None:
        """The kinds of the stitches named that stand before `boundary`; None where it is not their kind alone that tells them."""
        if target.kind not in (TargetKind.ANY_STITCH, TargetKind.STITCH):
            return None
        if target.kind is TargetKind.ANY_STITCH and any(node.counted for node in self.nodes[self.at : boundary]):
            return None
        kinds = {node.kind for node in self.nodes[self.at : boundary]} - {"space", "ring"}
        if target.kind is TargetKind.STITCH:
            kinds = {kind for kind in kinds if goes_by(kind, target.name)}
        return kinds

    def back_from_end(self, targets: tuple[Target, ...], number: int, size: int, end: int | None = None) -> int:
        """Index of the nth matching place from the end."""
        index = self.end if end is None else end
        while number > 0 and index > self.at:
            index -= 1
            if any(self.matches(self.nodes[index], target, size) for target in targets):
                number -= 1
        if number and targets[0].kind is TargetKind.TURNING_CHAIN:
            return self.end if end is None else end  # the row below has no counted chain
        return index if number == 0 else self.at

    def has(self, target: Target, size: int) -> bool:
        """Whether the row has any place of the sort, used or not."""
        if (id(target), None) not in self._places:
            self._places[id(target), None] = (target, 0, self._match(target, size, True, 0))
        return self._places[id(target), None][2] is not None

    def find(self, target: Target, size: int, start: int | None = None) -> int | None:
        """Index of the next matching place, strictly as named; None if there is none."""
        return self._first(target, size, True, start)

    def _first(self, target: Target, size: int, strict: bool, start: int | None = None) -> int | None:
        """Index of the first matching place from here on, or from `start`, before the end (or the stop).

        What is found is kept, with the place that it was looked for from: rows are long, and mostly gone through once.
        """
        begin = self.at if start is None else start
        key = (id(target), strict)
        _, since, found = self._places.get(key, (target, len(self.nodes) + 1, None))
        if not (since <= begin and (found is None or begin <= found)):
            found = self._match(target, size, strict, begin)
            if start is None:
                self._places[key] = (target, begin, found)  # the target is kept, and so its id
        return found if found is not None and found < self.end else None

    def _match(self, target: Target, size: int, strict: bool, begin: int) -> int | None:
        """Index of the first place from `begin` on that matches, whatever the stop."""
        ahead = range(begin, len(self.nodes))
        return next((i for i in ahead if self.matches(self.nodes[i], target, size, strict)), None)

    # groups ------------------------------------------------------------------------------------------

    def groups(self, owner: Target | None) -> list[list[int]]:
        """Indexes of the groups (worked into one place) from here on that are the kind named, or corners."""
        name = owner.name if owner is not None and owner.kind is TargetKind.SPECIAL else "group"
        if name != "group" and (named := self._groups_of(name)):
            return not_passed(named, self.at)
        return not_passed(self._groups_of("group"), self.at)

    def _groups_of(self, name: str | None) -> list[list[int]]:
        """The row's groups of a name, or those that are groups by what they hold: found once, for rows are long."""
        if name not in self._named:
            nodes, runs = self.nodes, self.all_groups()
            if name == "group":
                self._named[name] = [run for run in runs if makes_group(nodes, run)]
            else:
                self._named[name] = [part for run in runs for part in those_named(nodes, run, name)]
        return self._named[name]

    def has_groups(self, owner: Target | None) -> bool:
        """Whether there are such groups anywhere in the row."""
        at, self.at = self.at, 0
        found = self.groups(owner)
        self.at = at
        return bool(found)

    def all_groups(self) -> list[list[int]]:
        """Indexes of the whole row, parted where what lies side by side is no longer in one place."""
        if self._groups is None:
            self._groups = in_one_place(self.nodes, self.circular)
        return self._groups
