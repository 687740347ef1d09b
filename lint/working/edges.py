"""Edges that later rows are worked on: what a row left unworked, and the side of a piece along its rows."""

from __future__ import annotations

from dataclasses import replace

from lint.pattern import Row
from lint.place import FREE_CHAIN, WHOLE_ROW, Place, TargetKind, Which
from lint.tree import (
    MAKES_STITCHES,
    AlongEdge,
    Chain,
    Group,
    JoinYarn,
    MakeRing,
    OtherSide,
    Remark,
    RowCall,
    Skip,
    Step,
    Work,
    children,
    walk,
)
from lint.working.bench import Worked
from lint.working.cells import joins_yarn, misfits, of_this_row, skips_to_join
from lint.working.cursor import PlacesUnknown
from lint.working.fabric import Fabric, Made, Node
from lint.working.instances import Instance
from lint.working.rowkinds import rows_told
from lint.working.starts import along_row_ends, founds, is_round, on_foundation
from lint.working.trials import FreeLoops, PieceState, Side, Task, Trial, best_reading

_MOST_LEFT = 4  # edges that rows left unworked and that are kept: a body divides into no more


def leave_unworked(worked: Worked, fabric: Fabric, state: PieceState, circular: bool) -> None:
    """Keep what a row leaves of the row below; that of which a part was worked now is kept no more as it was."""
    earlier = [left for left in state.unworked if left is not fabric]
    if any(node.is_stitch for node in worked.unworked):
        before = fabric.before + sum(node.is_stitch for node in fabric.nodes)
        before -= sum(node.is_stitch for node in worked.unworked)
        earlier.append(replace(fabric, nodes=worked.unworked, before=before))
        state.parted = state.parted or fabric.circular and not circular
        state.whole = state.whole or (0 if circular else sum(node.is_stitch for node in fabric.nodes))
    state.parted = state.parted and not circular
    state.unworked = earlier[-_MOST_LEFT:]
    state.more_left = state.more_left or not fabric.known


def named_edge(besides: list[Task], state: PieceState) -> tuple[Task, Trial, Fabric] | None:
    """ "Skip the center 10 sts of Row 1, join yarn": the row on what that row left, where one edge alone will do."""
    fitting: list[tuple[Task, Trial, Fabric]] = []
    short: list[tuple[Task, Trial, Fabric]] = []
    for beside in besides:
        here = tuple(of_this_row(step) for step in beside.steps)
        if here == beside.steps:
            return None
        task = replace(beside, steps=here)
        try:
            best = best_reading(task, state)
        except PlacesUnknown:
            continue
        if best.fits and best.agrees:
            return task, best, beside.fabric
        if best.fits:
            fitting.append((task, best, beside.fabric))
        elif _turns_early(best):
            short.append((task, best, beside.fabric))
    found = fitting or short
    return found[0] if len(found) == 1 else None


def _turns_early(best: Trial) -> bool:
    """Whether a row agrees with its count, and turns where stitches are left that a later part may be joined to."""
    return bool(best.agrees and best.worked.turned and best.only_leaves)


def on_its_fabric(task: Task, state: PieceState) -> tuple[Task, Trial, Fabric]:
    """The row worked on the fabric at hand; where yarn is joined, perhaps on what an earlier row left unworked."""
    untold = state.more_left and _over_whole_row(task)  # short rows, of which it is not known how far they went
    if (state.parted or untold) and task.circular and task.fabric is state.fabric:
        task = _around_again(task, state)
    elif (state.whole or untold) and not task.circular and task.fabric is state.fabric and not joins_yarn(task.steps):
        task = _across_again(task, state)
    unclear = state.more_left and not task.circular and skips_to_join(task.steps)
    if not (state.unworked or unclear) or not joins_yarn(task.steps):
        return task, best_reading(task, state), task.fabric
    besides = [Task.of(task.instance, state, left, task.size, task.blocks) for left in reversed(state.unworked)]
    if (named := named_edge(besides, state)) is not None:
        return named
    last: Trial | None = None
    short: tuple[Task, Trial, Fabric] | None = None  # agrees, and leaves more, which a later part may be joined to
    for one in (*besides, task) if skips_to_join(task.steps) else (task, *besides):
        try:
            best = best_reading(one, state)
        except PlacesUnknown:
            continue
        if one is task and short is not None and not task.fabric.known:
            break
        if best.fits and best.agrees is not False:
            return one, best, one.fabric
        if one is not task and _turns_early(best):
            short = short or (one, best, one.fabric)
        last = best if one is task else last
    if short is not None:
        return short
    if unclear:
        raise PlacesUnknown("what the rows before have left to be joined to is not known")
    return task, last or best_reading(task, state), task.fabric


def _around_again(task: Task, state: PieceState) -> Task:
    """A round after rows to and fro over a part of one: over these rows alone, if its count says so (they may be closed
    by a chain), else on what they and the rest of that round give together, which the words do not tell.
    """
    alone = best_reading(task, state)
    works = [step for step in task.steps if isinstance(step, (*MAKES_STITCHES, Chain))]
    works = [step for step in works if not (isinstance(step, Work) and step.stitch == "sl st")]
    closed = len(works) > 1 and isinstance(works[-1], Chain)  # "sc in each st across, ch 6, join": by a chain
    sure = alone.fits and (alone.agrees or closed and alone.agrees is None)
    return task if sure else replace(task, fabric=Fabric.unknown(True))


def _across_again(task: Task, state: PieceState) -> Task:
    """A row after short rows: over the last of them alone, unless its count is that of the row before them all."""
    called = (step.name or "" for step in task.instance.row.steps if isinstance(step, RowCall))
    all_of_it = _over_whole_row(task)
    short = state.short_rows or any("short" in name.lower() for name in (task.instance.label, *called))
    if short and not all_of_it:
        return task
    alone = best_reading(task, state)
    differs = alone.comparison.differences if alone.comparison is not None else ()
    again = len(differs) == 1 and differs[0].stated == state.whole or all_of_it and not alone.agrees
    return replace(task, fabric=Fabric.unknown(False)) if again or state.short and alone.agrees is None else task


def _over_whole_row(task: Task) -> bool:
    """Whether a run is told to go over all there is: "sc in all sts across"."""
    places = (place for step in task.steps if isinstance(step, Work) for place in step.places)
    return any(place.from_words == WHOLE_ROW for place in places)


def resumed(task: Task, state: PieceState) -> tuple[Task, Trial, Fabric] | None:
    """Work under a name of its own on what was fastened off before it, where yarn is joined and its count agrees.

    That is a round on the last round, or a row along the side of all rows.
    """
    fabric, state.left_off = state.left_off, None
    if fabric is None or task.fabric is not state.fabric or not joins_yarn(task.steps):
        return None
    worked = tuple(step for step in task.steps if not isinstance(step, JoinYarn))
    if along_row_ends(worked) and state.side.rows and not task.circular:
        fabric = Fabric.row_ends(state.side.rows, circular=False)
    elif not (fabric.known and fabric.circular) or task.instance.kind != "round" or not _joined_here(task.steps):
        return None
    one = replace(Task.of(task.instance, state, fabric, task.size, task.blocks), steps=worked)
    try:
        best = best_reading(one, state)
    except PlacesUnknown:
        return None
    sound = best.fits and best.agrees and not misfits(best.worked, one.instance)
    return (one, best, fabric) if sound else None


def _joined_here(steps: tuple[Step, ...]) -> bool:
    """Whether yarn is joined in a place of the row below, "in any sc", not in one that lies elsewhere."""
    joined = [place for step in steps if isinstance(step, JoinYarn) for place in step.places]
    return bool(joined) and not any(one.below or one.row or one.which is Which.ELSEWHERE for one in joined)


def fabric_below(instance: Instance, state: PieceState) -> Fabric:
    """What a row is worked on: an edge that it or the line before it speaks of, else what the last row left."""
    edge = side_edge(instance, state) or foundation_edge(instance, state) or _chain_untold(instance.steps)
    if edge is not None:
        state.joining = tuple(step for step in state.joining if not isinstance(step, AlongEdge) or step.row)
    return edge or state.fabric


def _chain_untold(steps: tuple[Step, ...]) -> Fabric | None:
    """An edge that is not known, for the free loops of chains where the words do not say of which."""
    places = (place for step in walk(steps) if isinstance(step, (Work, Group)) for place in step.places)
    return Fabric.unknown(False) if any(FREE_CHAIN in place.targets for place in places) else None


def side_edge(instance: Instance, state: PieceState) -> Fabric | None:
    """The edge along the rows, where a row goes into each of its row ends and how many there are is known."""
    rows, circular = state.side.rows, instance.kind == "round" or is_round(instance, None)
    divided = bool(state.unworked) or state.fastened
    if not rows or divided or circular is not state.side.seamed or not along_row_ends(instance.steps):
        return None
    return Fabric.row_ends(rows, circular)


def seamed(steps: tuple[Step, ...], side: Side) -> Side:
    """The side of a piece, running round a tube once a seam is told."""
    return replace(side, seamed=True) if any(isinstance(s, Remark) and s.seam for s in steps) else side


def moves_on(row: Row) -> bool:
    """Whether a line that is not wholly read joins yarn somewhere, or passes over stitches."""
    words = " ".join(step.words.lower() for step in row.unread())
    moved = any(isinstance(step, (AlongEdge, JoinYarn, Skip)) for step in row.steps)
    return moved or "join" in words or "attach" in words


def with_row(side: Side, instance: Instance, made: Made, circular: bool) -> Side:
    """The side of a piece after one more row; not known after a round, a row worked along it, or one of untold many."""
    if made.stitches or made.spaces:
        to_and_fro = side.rows is not None and not circular and not along_row_ends(instance.steps)
        if to_and_fro and rows_told(instance.row):
            kind = next(iter(made.by_kind)) if len(made.by_kind) == 1 else ""
            side = replace(side, rows=side.rows + 1, kinds=(*side.kinds, kind))
        else:
            side = replace(side, rows=None, kinds=())
    return seamed(instance.steps, side)


def foundation_edge(instance: Instance, state: PieceState) -> Fabric | None:
    """The other side of the foundation, where a row begins on it; not known where no one chain is meant."""
    nodes = state.fabric.nodes if state.fabric is not None else []
    begun = nodes and nodes[0].kind in ("ch", "ring")
    steps = (*state.joining, *instance.steps)
    if begun or not on_foundation(steps) or founds(instance.steps) or any(isinstance(s, MakeRing) for s in steps):
        return None
    loops = state.loops
    if not loops.number or loops.passed and not _in_chains(steps):
        return Fabric.unknown(instance.kind == "round")
    return Fabric([Node("free loop") for _ in range(loops.number)], loops.circular)


def _in_chains(steps: tuple[Step, ...]) -> bool:
    """Whether the words call everything that they work into or pass over a chain."""
    for step in steps:
        if isinstance(step, (Work, Group, Skip)):
            rest = isinstance(step, Skip) and step.rest
            if not rest and not (step.places and all(map(_is_chain, step.places))):
                return False
        elif not _in_chains(children(step)):
            return False
    return True


def _is_chain(place: Place) -> bool:
    return place.which is Which.SAME or any(target.kind is TargetKind.CHAIN for target in place.targets)


def _ring_length(task: Task) -> int | None:
    """The chains of the ring that a round is worked into, chain by chain."""
    made = next((step.length for step in task.steps if isinstance(step, MakeRing)), None)
    if made is not None:
        return made.at(task.size)
    nodes = task.fabric.nodes
    return nodes[0].length if nodes and nodes[0].kind == "ring" else None


def with_free_loops(loops: FreeLoops, best: Trial, task: Task) -> FreeLoops:
    """What is known of the foundation's other side after a row; a row on a chain begins a piece."""
    nodes = best.worked.fabric.nodes
    chains = {id(place) for node in nodes for place in node.parents if place.kind == "ch"}
    if not chains:
        return loops
    both = any(isinstance(step, OtherSide) for step in task.steps)
    stands = {place.kind for node in nodes[:1] if node.chain for place in node.parents}
    counted = bool(nodes[0].chain) and "ch" not in stands  # on which chain it stands is not said
    worked = [at for at, chain in enumerate(best.worked.foundation) if id(chain) in chains]
    span = worked[-1] - worked[0] + 1 if len(worked) == len(chains) else len(chains)  # from the first one worked into
    number = None if counted else span
    if counted and (ring := _ring_length(task)) == len(chains) + 1:
        number = ring  # the beginning chain stands on the first chain of the ring
    slipped = best.agrees is False or not best.fits
    number = None if both or slipped or loops.pieces else number
    return FreeLoops(number, span > len(chains), best.worked.fabric.circular, loops.pieces + 1)
