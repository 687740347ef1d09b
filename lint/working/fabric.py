"""The stitch graph: what a worked row leaves, each stitch knowing what it was worked into."""

from __future__ import annotations

import gc
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field


class Node:
    """A stitch, or (as Chains) what is made of chains.

    Not frozen: hundreds of thousands are made in one run.  Nothing changes a node once its row is done.
    """

    __slots__ = ("kind", "parents", "group", "chain", "special", "corner")
    length = 0
    closing = False
    counted = False
    used = 0

    def __init__(self, kind: str, parents: tuple[Node, ...] = (), group: int = 0, chain: int = 0) -> None:
        self.kind = kind
        self.parents = parents  # what it was worked into: one place, several for a decrease, none for a chain
        self.group = group  # nodes worked into one place at one time share a number; 0: alone in its place
        self.chain = chain  # chains of a beginning chain that counts as this stitch
        self.special: str | None = None
        self.corner = False

    @property
    def is_space(self) -> bool:
        return self.kind == "space"

    @property
    def is_stitch(self) -> bool:
        return self.kind not in ("space", "ring")

    def __repr__(self) -> str:
        return f"{self.kind}{self.length or ''}{'*' if self.chain else ''}"


class Chains(Node):
    """A run of chains between stitches (kind "space"), or a ring ("ring")."""

    __slots__ = ("length", "closing", "counted", "used")

    def __init__(self, kind: str, length: int = 0, parents: tuple[Node, ...] = (), group: int = 0) -> None:
        super().__init__(kind, parents, group)
        self.length = length  # chains in it; 0 where they are not known
        self.closing = False  # the space that a joining stitch closed
        self.counted = False  # a space that the pattern counts as a stitch, and which "next st" does not pass over
        self.used = 0  # single chains worked into so far


class SingleChain(Node):
    """One chain of a foundation, to be worked into: a wide piece has very many of them, which are held beside its first row."""

    __slots__ = ("used",)
    length = 1

    def __init__(self) -> None:
        super().__init__("ch")
        self.used = 0


def count_spaces(nodes: list[Node], values: dict[int, int]) -> int:
    """The stitches that spaces count as, by their length; one that counts as one is a place like a stitch.

    What a row begins with is no space between stitches.
    """
    if not values:
        return 0
    first = next((at for at, node in enumerate(nodes) if node.is_stitch and node.kind != "sl st"), len(nodes))
    found = [node for node in nodes[first:] if node.is_space and node.length in values]
    for node in found:
        node.counted = values[node.length] == 1
    return sum(values[node.length] for node in found)


def stitches_of(nodes: list[Node]) -> int:
    """How many of the nodes are stitches."""
    kinds = [node.kind for node in nodes]
    return len(kinds) - kinds.count("space") - kinds.count("ring")


def afresh(nodes: list[Node]) -> None:
    """None of the chains is worked into."""
    for node in nodes:
        if node.used:
            node.used = 0


_NO_STITCH = ("space", "ring", "ch")


@dataclass
class Fabric:
    """What lies on the hook side of the work: places in the order in which the last row made them."""

    nodes: list[Node] = field(default_factory=list)
    circular: bool = False
    known: bool = True  # False: an edge whose places the text does not give
    assumed: bool = False  # made up from a printed count, not from the words
    uncounted: int = 0  # chains of a beginning chain that did not count, 0 if none
    picots: int = 0
    marks: tuple[Node, ...] = ()  # places that markers hang in
    gaps: tuple[tuple[Node, Node], ...] = ()  # neighbours between which markers hang
    marks_unclear: bool = False  # there may be others
    before: int = 0  # stitches of the row that lie before these and are worked already
    loops: bool = False  # free loops of a round: places that are called loops as well as stitches
    hung: int = 0  # slip stitches that hang the row on another piece, which are no places of it

    @classmethod
    def ring(cls, chains: int = 0) -> Fabric:
        """A ring; one made of chains can be worked into chain by chain as well."""
        return cls([Chains("ring", chains)], circular=True)

    @classmethod
    def foundation(cls, length: int) -> Fabric:
        return cls([SingleChain() for _ in range(length)])

    @classmethod
    def row_ends(cls, rows: int, circular: bool) -> Fabric:
        """The side of a piece: as many places as it has rows."""
        return cls([Node("row end") for _ in range(rows)], circular)

    @classmethod
    def unknown(cls, circular: bool) -> Fabric:
        return cls([], circular, known=False, marks_unclear=True)

    @classmethod
    def plain(cls, kind: str, number: int, circular: bool) -> Fabric:
        """A row of so many stitches of one kind, as a printed count says."""
        nodes = [Node(kind) for _ in range(number)]
        if not circular:
            nodes[-1].chain = 3  # the row's own beginning chain, should the next row name it
        return cls(nodes, circular, assumed=True, marks_unclear=True)


UNTOLD_KIND = "stitch"  # of a row that stands on its printed count alone: whatever the next row calls its stitches


@dataclass(frozen=True, slots=True)
class Made:
    """What one row made, counted: stitches of sc height and up with chains that count, by kind, and spaces by length."""

    stitches: int
    by_kind: dict[str, int]
    spaces: dict[int, int]
    corners: int
    groups: dict[str, int]
    sides: tuple[int, ...] = ()  # stitches between one corner and the next
    runs: tuple[int, ...] = ()  # the same, less those that stand in the corners' own places
    chains: int = 0
    apart: dict[str, int] = field(default_factory=dict)  # by kind, less those that are part of a shell, V-stitch…
    bunches: int = 0  # places that hold three or more of a stitch, where all hold alike: shells that go unnamed
    parted: bool = False  # beside them are groups with chains inside, which a print may mean as well
    petals: int = 0  # places that hold a bracket from sc, chain or slip stitch to such again, where all hold alike
    spaces_apart: dict[int, int] = field(default_factory=dict)  # by length, less those inside a V-stitch, shell…
    joined_loops: int = 0  # loops joined to another piece half way by a slip stitch
    joining: int = 0  # stitches that join so, a loop on both sides of each
    filet_blocks: int = 0  # blocks of a filet row, by the width of its spaces; 0 where it is none
    lace_loops: int = 0  # chain loops from one sc to the next, where the row has other spaces as well
    counted: int = 0  # stitches that its chain spaces count as, where the pattern says so
    edge_loop: int = 0  # the chains of a loop that the row begins with, which stand for no stitch
    slips: int = 0  # slip stitches among other stitches, which count only where a printed count takes them in


def count(
    nodes: list[Node],
    groups: Counter,
    picots: int,
    circular: bool,
    from_ring: bool,
    slip_row: bool = False,
    slipped: int = 0,
) -> Made:
    """Count a row's nodes; slip stitches are stitches only in a row of nothing else (`slip_row`)."""
    kinds: Counter = Counter()
    apart: Counter = Counter()
    spaces: Counter = Counter()
    spaces_apart: Counter = Counter()
    chains = lace_loops = 0
    kinds.update([node.kind for node in nodes])
    apart.update([node.kind for node in nodes if node.special is None])
    for node in nodes if "space" in kinds else ():
        if node.kind == "space":
            spaces[node.length] += 1
            spaces_apart[node.length] += node.special is None
            chains += node.length
    if len(spaces) > 1:
        trios = zip(nodes, nodes[1:], nodes[2:], strict=False)
        lace_loops = sum(one.kind == other.kind == "sc" and space.kind == "space" for one, space, other in trios)
    for kind in _NO_STITCH:
        del kinds[kind], apart[kind]
    apart.update(dict.fromkeys(kinds, 0))  # none apart is said as well
    slips = 0 if slip_row else kinds.pop("sl st", 0) + slipped
    units = Counter(groups)
    if picots:
        units["picot"] += picots
    marks = find_corners(nodes, from_ring) if circular else []
    sides, runs = _sides(nodes, marks)
    if not any(sides):
        marks, sides, runs = [], (), ()
    for index in marks:
        nodes[index].corner = True  # so that the next round finds them
    corners = len(marks)
    return Made(
        sum(kinds.values()),
        dict(kinds),
        dict(spaces),
        corners,
        dict(units),
        sides,
        runs,
        chains,
        dict(apart),
        spaces_apart=dict(spaces_apart),
        filet_blocks=_filet_blocks(nodes, spaces) if len(kinds) == 1 and len(spaces) == 1 and not circular else 0,
        lace_loops=lace_loops,
        slips=slips,
    )


def _filet_blocks(nodes: list[Node], spaces: Counter) -> int:
    """The blocks of a filet row: runs of tall stitches between its spaces, each as wide as a space and an edge shared."""
    width = next(iter(spaces)) + 1
    runs = [0]
    for node in nodes:
        if node.kind == "space":
            runs.append(0)
        else:
            runs[-1] += node.is_stitch
    whole = all(run and (run - 1) % width == 0 for run in runs)
    return sum((run - 1) // width for run in runs) if whole else 0


def unname_if_others_alike(nodes: list[Node], name: str, times: int) -> bool:
    """ "(first block made)" was said of the first alone, or so often: where others are alike, its name tells none apart."""
    named = [node.kind for node in nodes if node.special == name and node.is_stitch]
    one = named[: len(named) // times]
    groups: dict[int, list[str]] = {}
    for node in nodes:
        if node.is_stitch and node.group and not node.special:
            groups.setdefault(node.group, []).append(node.kind)
    if one * times != named or one not in groups.values():
        return False
    for node in nodes:
        if node.special == name:
            node.special = None
    return True


def find_corners(nodes: list[Node], from_ring: bool) -> list[int]:
    """Where the corners of a round are.

    A corner is a place that holds a chain space between stitches, or three or more stitches, at the shape's
    interval; in a first round worked in a ring, the spaces between its groups; or a chain said to be one.
    """
    marks = [index for index, node in enumerate(nodes) if node.corner]
    if not 3 <= len(marks) <= 8:
        spaces = [index for index, node in enumerate(nodes) if node.kind == "space"]
        if from_ring:
            marks = spaces
        else:
            inside = [index for index in spaces if _in_group(nodes, index)]
            longest = max((nodes[index].length for index in inside), default=0)
            marks = [index for index in inside if nodes[index].length == longest] if inside else _triples(nodes)
    return marks if 3 <= len(marks) <= 8 else []


def _sides(nodes: list[Node], marks: list[int]) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The stitches of each side between the corners at `marks`: all of them, and those not in a corner's own place."""
    marked = set(marks)
    beside = (nodes[index - 1] if nodes[index].kind == "space" else nodes[index] for index in marks)
    places = {id(node.parents[0]) for node in beside if node.parents and node.parents[0].kind != "ring"}
    sides: list[int] = []
    runs: list[int] = []
    side = run = 0
    for offset in range(1, len(nodes) + 1) if marks else ():
        node = nodes[(marks[0] + offset) % len(nodes)]
        if (marks[0] + offset) % len(nodes) in marked:
            sides.append(side)
            runs.append(run)
            side = run = 0
        elif node.kind not in ("space", "ring", "ch"):
            side += 1
            run += not (node.parents and id(node.parents[0]) in places)
    return tuple(sides), tuple(runs)


def _in_group(nodes: list[Node], index: int) -> bool:
    """Whether a space lies between stitches worked into the same place."""
    node = nodes[index]
    if node.closing and node.parents:
        return True
    before, after = nodes[index - 1], nodes[(index + 1) % len(nodes)]
    if node.closing or index == len(nodes) - 1 or index == 0:
        return bool(before.parents and after.parents and before.parents[0] is after.parents[0] and before is not after)
    return bool(node.group and node.group == before.group == after.group) or bool(
        before.parents and after.parents and before.parents[0] is after.parents[0] and before.parents[0].kind != "ring"
    )


def _triples(nodes: list[Node]) -> list[int]:
    """The middle stitches of places that hold three stitches or more."""
    by_place: dict[int, list[int]] = {}
    for index, node in enumerate(nodes):
        if node.parents and len(node.parents) == 1 and node.kind != "space" and node.parents[0].kind != "ring":
            by_place.setdefault(id(node.parents[0]), []).append(index)
    found = []
    for indexes in by_place.values():
        if len(indexes) >= 3:
            if indexes[-1] - indexes[0] >= len(nodes) // 2 and indexes[0] == 0:  # both ends of the round
                cut = next((i for i in range(1, len(indexes)) if indexes[i] - indexes[i - 1] > 1), 0)
                indexes = indexes[cut:] + indexes[:cut]
            found.append(indexes[len(indexes) // 2])
    grouped = sum(len(indexes) for indexes in by_place.values() if len(indexes) >= 3)
    sides = any(node.kind not in ("space", "ring") for node in nodes) and grouped < sum(
        n.kind != "space" for n in nodes
    )
    apart = sum(n.kind != "space" for n in nodes) - grouped >= len(found)  # stitches enough to lie between them
    if not 3 <= len(found) <= 8 or not (sides and apart) and len(found) not in (3, 4, 6):
        return []  # a group in every place is a lace round, unless there are as many as a shape has corners
    sorts = Counter((len(indexes), nodes[indexes[0]].kind) for indexes in by_place.values() if len(indexes) >= 3)
    if len(sorts) > 1 and (len(found) < 4 or max(sorts.values()) < len(found) - 1):
        return []  # corners are alike, but for a slip in one of them
    return sorted(found)


@contextmanager
def no_search_for_garbage() -> Iterator[None]:
    """Stitches point only downwards, so that none needs the collector, whose search would take as long as the work."""
    enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if enabled:
            gc.enable()
