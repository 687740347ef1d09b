"""The stitch graph of a whole pattern, kept for pictures: every stitch of every row, and what it was worked into.

The ledger needs only the row below, and lets go of the rest.  For a picture one size is worked once more, and its benches
are kept; on those that are watched each stitch also knows the words that made it, its yarn and its loop.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import NamedTuple

from lint.pattern import Part, Pattern, Row
from lint.rulebook import Rulebook
from lint.source import Span
from lint.tree import JoinYarn, Loops, UseYarn, Work
from lint.working.accounts import Entry, every_pass
from lint.working.choices import Key
from lint.working.effort import Effort
from lint.working.fabric import Fabric, Node, afresh, no_search_for_garbage
from lint.working.instances import Instance
from lint.working.onereading import Column
from lint.working.pieces import PatternWorker
from lint.working.recording import KeepingBench, RecordingBench
from lint.working.trials import PieceState, Task, Trial

_MOST_WORKED = 300_000  # beyond this nothing is drawn
Address = tuple[int, int]  # a stitch by its layer in the piece and its place in that layer


class Stitch(NamedTuple):
    """One stitch, run of chains ("space"), foundation chain ("ch") or ring; a tuple, for there are many."""

    kind: str
    parents: tuple[Address, ...] = ()  # what it was worked into
    length: int = 0  # chains in a space
    chain: int = 0  # chains of a beginning chain that stands for this stitch
    group: int = 0  # stitches worked into one place at one time share a number
    special: str | None = None
    corner: bool = False
    yarn: str | None = None  # "A", where the words name the yarns
    loop: str | None = None  # back | front | third, where the words name one
    words: Span | None = None  # the clause that made it
    under: bool = False  # a chain's other side, of a foundation that is worked round


@dataclass(frozen=True, slots=True)
class Picot:
    """A loop of chains closed on itself, after so many of its row's stitches."""

    after: int
    chains: int


@dataclass(frozen=True, slots=True)
class Layer:
    """One row or round as it lies, in the order in which it was worked; a foundation has no row."""

    label: str
    row: Row | None
    circular: bool
    stitches: tuple[Stitch, ...]
    left: tuple[Address, ...] = ()  # places of the row below that nothing was worked into though something should be
    picots: tuple[Picot, ...] = ()


@dataclass(frozen=True, slots=True)
class Piece:
    """Rows that stand on each other, of one part or several; on an edge that is not known, a new piece begins."""

    parts: tuple[Part, ...]
    layers: tuple[Layer, ...]
    continued: bool = False  # goes on from a piece before, on an edge that is not known

    @property
    def stitches(self) -> int:
        """Stitches, spaces and foundation chains in all."""
        return sum(len(layer.stitches) for layer in self.layers)


def stitch_graph(
    pattern: Pattern, book: Rulebook, size: int = 0, unwatched: Collection[Part] = ()
) -> tuple[Piece, ...]:
    """Every piece of a pattern as one size works it; rows that were not recomputed are not in it.

    `unwatched`: parts of whose stitches the words, yarns and loops are not asked for, which takes less time.
    """
    worker = _GraphWorker(pattern, book, unwatched)
    return worker.pieces(size)


@dataclass(slots=True)
class _Kept:
    """One row as it was worked: the row below, the nodes made, and the record of what each step did."""

    part: Part
    instance: Instance
    below: list[Node]
    bench: KeepingBench
    circular: bool
    left: list[Node]
    yarn: str | None
    foundation: list[Node]  # the chain that the row began on, where it went round to its other side


class _GraphWorker(PatternWorker):
    """Works a pattern in one size and lets go of nothing."""

    def __init__(self, pattern: Pattern, book: Rulebook, unwatched: Collection[Part]) -> None:
        super().__init__(pattern, book, workings=None, effort=Effort(_MOST_WORKED))
        self.unwatched = {id(part) for part in unwatched}
        self.rows: list[_Kept] = []
        self.rows_of: dict[int, list[_Kept]] = {}  # by the column that they belong to
        self.part: Part | None = None
        self.yarn: str | None = None

    def pieces(self, size: int) -> tuple[Piece, ...]:
        with no_search_for_garbage():
            column = self.work_size(size)
            return tuple(_Graph(self.rows_of[id(column)]).pieces())

    def _worked(self, habits: dict[Key, int], size: int, in_all: bool = False) -> tuple[Column, PieceState]:
        self.rows, self.yarn = [], None
        column, state = super()._worked(habits, size, in_all)
        self.rows_of[id(column)] = self.rows
        return column, state

    def _open_part(self, part: Part, instances: list[Instance], state: PieceState) -> None:
        super()._open_part(part, instances, state)
        state.bench = KeepingBench if id(part) in self.unwatched else RecordingBench
        self.part = part

    def keep(self, task: Task, best: Trial, state: PieceState) -> None:
        bench = best.bench
        afresh(best.worked.fabric.nodes)
        outer = bench.outer.nodes if bench.outer is not None else ()
        known = [*task.fabric.nodes, *bench.first_side, *bench.cursor.nodes, *outer]
        self.rows.append(
            _Kept(
                self.part,
                task.instance,
                known,
                bench,
                task.circular,
                list(best.worked.left),
                self.yarn,
                bench.first_side,
            )
        )
        self.yarn = _last_yarn(bench.entry, self.yarn) if isinstance(bench, RecordingBench) else None

    def done_with(self, fabric: Fabric) -> None:
        """Everything is kept."""


class _Graph:
    """Turns what was kept into frozen layers."""

    def __init__(self, rows: list[_Kept]) -> None:
        self.rows = rows
        self.address: dict[int, Address] = {}
        self.layers: list[Layer] = []

    def pieces(self) -> list[Piece]:
        found: list[Piece] = []
        parts: list[Part] = []
        continued = False
        for kept in self.rows:
            if not kept.bench.made:
                continue
            made = kept.bench.made
            stands = any(id(place) in self.address for node in made for place in node.parents)
            stands = stands or kept.part in parts and not any(node.parents for node in made)
            if parts and not stands:
                found.append(Piece(tuple(parts), tuple(self.layers), continued))
                continued = kept.part in parts
                parts, self.layers, self.address = [], [], {}
            if kept.part not in parts:
                parts.append(kept.part)
            self.add(kept)
        return [*found, Piece(tuple(parts), tuple(self.layers), continued)] if parts else found

    def add(self, kept: _Kept) -> None:
        wanted = {id(place) for node in kept.bench.made for place in node.parents if id(place) not in self.address}
        if wanted:
            base = [node for node in _once(kept.below) if id(node) not in self.address]
            if any(id(node) in wanted for node in base):
                kind = {node.kind for node in base}
                label = "" if kind <= {"ch", "ring"} else "row below"
                first = {id(node) for node in kept.foundation}
                stitches = [
                    Stitch(node.kind, length=node.length, under=bool(first) and id(node) not in first) for node in base
                ]
                self.put(base, stitches, label, kept.circular)
        made = kept.bench.made
        nothing = [None] * len(made)
        words, yarns, loops = nothing, nothing, nothing
        if isinstance(kept.bench, RecordingBench):
            words, yarns, loops = _told(kept.bench.entry, len(made), kept.yarn)
        stitches = [
            Stitch(
                node.kind,
                self.addresses(node.parents),
                node.length,
                node.chain,
                node.group,
                node.special,
                node.corner,
                yarns[index],
                loops[index],
                words[index],
            )
            for index, node in enumerate(made)
        ]
        picots = tuple(Picot(after, chains) for after, chains in kept.bench.picots_on)
        left = tuple(self.address[id(node)] for node in kept.left if id(node) in self.address)
        circular = kept.bench.is_round and kept.bench.turned is None or kept.circular or kept.bench.joined
        self.put(made, stitches, kept.instance.label, circular, kept.instance.row, left, picots)

    def addresses(self, places: tuple[Node, ...]) -> tuple[Address, ...]:
        """Where these lie, of those that are in the picture."""
        if len(places) == 1:  # by far the most stitches, and there are many
            one = self.address.get(id(places[0]))
            return (one,) if one is not None else ()
        return tuple(self.address[id(place)] for place in places if id(place) in self.address)

    def put(
        self,
        nodes: list[Node],
        stitches: list[Stitch],
        label: str,
        circular: bool,
        row: Row | None = None,
        left: tuple[Address, ...] = (),
        picots: tuple[Picot, ...] = (),
    ) -> None:
        for index, node in enumerate(nodes):
            self.address[id(node)] = (len(self.layers), index)
        self.layers.append(Layer(label, row, circular, tuple(stitches), left, picots))


def _once(nodes: list[Node]) -> list[Node]:
    return list({id(node): node for node in nodes}.values())


def _told(entry: Entry, number: int, yarn: str | None) -> tuple[list, list, list]:
    """For each node of a row: the clause that made it, its yarn and its loop."""
    words: list[Span | None] = [None] * number
    yarns: list[str | None] = [yarn] * number
    loops: list[str | None] = [None] * number

    def walk(one: Entry) -> None:
        for entries in every_pass(one):
            for inner in entries:
                step = inner.step
                if isinstance(step, (UseYarn, JoinYarn)) and step.colour:
                    yarns[inner.start :] = [step.colour] * (number - inner.start)
                elif isinstance(step, Loops):
                    loop = step.loop if step.loop != "both" else None
                    loops[inner.start :] = [loop] * (number - inner.start)
                elif not inner.passes:
                    words[inner.start : inner.end] = [step.span] * (inner.end - inner.start)
                    if isinstance(step, Work) and step.loop is not None:
                        loops[inner.start : inner.end] = [step.loop] * (inner.end - inner.start)
                walk(inner)

    walk(entry)
    return words, yarns, loops


def _last_yarn(entry: Entry, yarn: str | None) -> str | None:
    """The yarn in work when a row is done."""
    for entries in every_pass(entry):
        for inner in entries:
            if isinstance(inner.step, (UseYarn, JoinYarn)) and inner.step.colour:
                yarn = inner.step.colour
            yarn = _last_yarn(inner, yarn)
    return yarn
