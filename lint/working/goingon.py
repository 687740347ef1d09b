"""What the next row is worked on: what this one made, met from its other end, or what its printed count says."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from lint.ledger import Cell
from lint.pattern import Part, Stated
from lint.reading.clauses.tunisian import TUNISIAN
from lint.tree import (
    MAKES_STITCHES,
    AlongEdge,
    Chain,
    FastenOff,
    JoinYarn,
    MakeRing,
    OpenWork,
    OtherSide,
    Step,
    Turn,
    Work,
    walk,
)
from lint.working.bench import Worked
from lint.working.cells import joins_yarn
from lint.working.compare import measured
from lint.working.cursor import PlacesUnknown
from lint.working.fabric import UNTOLD_KIND, Chains, Fabric, Made, Node
from lint.working.instances import Instance
from lint.working.rowstate import NotDefined, TooMany, main_stitch
from lint.working.starts import MOST_TURNING_CHAINS, begins_own, from_other_end, turns_after
from lint.working.trials import PieceState, Task, Trial, best_reading

MOST_AHEAD = 12  # rows that are worked to see whether a printed count is borne out
_ELSEWHERE = (FastenOff, JoinYarn, MakeRing, OpenWork, OtherSide, AlongEdge)
_PATTERN_ROWS = (
    3  # rows at least by which a piece shows that its pattern keeps its number: the first one, and two of it
)
MOST_RECENT = 6  # rows by which it is seen what a pattern's rows make


def last_chain(steps: tuple[Step, ...]) -> Chain | None:
    """The turning chain that ends a row ("…, ch 3, turn", "…, turn with 3 ch"), which the next row begins with."""
    last = max((i for i, step in enumerate(steps) if isinstance(step, MAKES_STITCHES)), default=-1)
    ending = [step for step in steps[last + 1 :][-3:] if isinstance(step, (Chain, Turn))]
    chain = next((step for step in ending[-2:] if isinstance(step, Chain)), None)  # before the turn, or behind it
    turned = chain is not None and any(isinstance(step, Turn) for step in ending[-2:])
    if not turned or any(isinstance(step, MakeRing) for step in steps):
        return None
    length = chain.length.at(0) or 0
    return chain if length <= MOST_TURNING_CHAINS else None  # longer ones are stitches to be, not known here


_LEFT_OPEN = "“{}” does not say how many stitches that is"


def is_plain(made: Made) -> bool:
    """Whether a row is of stitches alone: without spaces, shells or other groups."""
    return not (made.spaces or made.groups or made.bunches or made.petals)


def with_even_pattern(known: frozenset[str], part: Part, cells: Sequence[Cell]) -> frozenset[str]:
    """The pieces known to be in a pattern that keeps its number, after one more: rows of stitches alone, the first ones alike."""
    made = [cell.made for cell in cells if cell.made is None or cell.made.stitches]  # not the chain that it begins on
    first = {one.stitches for one in made[:_PATTERN_ROWS] if one is not None}
    even = len(made) >= _PATTERN_ROWS and None not in made and len(first) == 1 and all(map(is_plain, made))
    return known | {part.name.lower()} if even else known


def not_told(steps: tuple[Step, ...], recent: list[Made], even_pieces: frozenset[str] = frozenset()) -> str | None:
    """What is to be said of work "in patt" whose count is not known: where the last rows made spaces or shells, or gained and lost."""
    plain = [is_plain(made) for made in recent]
    alike = len({made.stitches for made in recent}) == 1
    even = len(recent) > 1 and all(plain)
    pair = len(recent) > 1 and all(plain[-2:]) and recent[-1].stitches == recent[-2].stitches
    steps_between = {(one.stitches > two.stitches) - (one.stitches < two.stitches) for one, two in pairwise(recent)}
    swings = {1, -1} <= steps_between  # the rows of such a pattern may gain and lose by themselves
    for step in walk(steps):
        if isinstance(step, Work) and step.in_pattern and not (even and not swings or pair):
            return _LEFT_OPEN.format("in pattern")
        if isinstance(step, OpenWork) and step.like in even_pieces and all(plain):
            continue
        straight = isinstance(step, OpenWork) and step.pattern == "straight"
        if isinstance(step, OpenWork) and step.pattern and not (even and (alike or straight) or pair and straight):
            return _LEFT_OPEN.format(step.words)
    return None


def onward(parts: Sequence[Part], expanded: Sequence[list[list[Instance]]]) -> list[Instance]:
    """The rows of the piece behind the first of `parts` that go on from it; none where they begin or are joined anew."""
    if any(isinstance(step, FastenOff) for row in parts[0].rows[-1:] for step in row.steps):
        return []
    for part, printed in zip(parts[1:], expanded, strict=True):
        rows = [instance for some in printed for instance in some]
        if rows:
            return [] if part.make > 1 or begins_own(rows) or joins_yarn(rows[0].steps) else rows
    return []


def goes_on_better(
    printed: Fabric, made: Fabric, ahead: Iterable[Instance], state: PieceState, size: int, blocks: bool
) -> bool:
    """Whether the rows ahead agree with the printed count and not with what was made.

    The next row tells; where it is one without a count that fits both, as rows worked even do, the one behind it.
    """
    for coming in ahead:
        tasks = [Task.of(coming, state, fabric, size, blocks) for fabric in (printed, made)]
        try:
            trials = [best_reading(task, state) for task in tasks]
        except (PlacesUnknown, TooMany, NotDefined):
            return False
        on_printed, on_made = trials
        fits = [trial.agrees is not False and trial.fits for trial in trials]
        if not all(fits) or on_printed.agrees is True and on_made.agrees is None:
            return fits[0]
        told = coming.stated is not None or coming.row.label is None or coming.loop is not None
        carried = state.carried or on_printed.worked.carried
        if told or carried or _goes_elsewhere(coming.steps):
            return False
        printed, made = (next_fabric(trial.worked, task, state) for trial, task in zip(trials, tasks, strict=True))
    return False


def _goes_elsewhere(steps: tuple[Step, ...]) -> bool:
    """Whether a row is worked, or leaves off, where the next need not stand on it; a change of colour alone does not."""
    joined = [step for step in walk(steps) if isinstance(step, JoinYarn)]
    recoloured = bool(joined) and not any(step.places or step.stitch for step in joined)
    return any(
        isinstance(step, _ELSEWHERE) and not (recoloured and isinstance(step, (FastenOff, JoinYarn)))
        for step in walk(steps)
    )


STANDS_ON_PRINT = "it stands on the count printed for {}, and does not come to its own count from there"


def follows_below(task: Task, best: Trial, state: PieceState) -> bool:
    """Whether a row makes another number on another number of stitches: then its count is no surer than the one below."""
    nodes = task.fabric.nodes
    if not nodes:
        return False  # its own chain is the beginning
    kind = next((node.kind for node in nodes if node.is_stitch), "sc")
    twice = Fabric.plain(kind, 2 * len(nodes), task.fabric.circular)  # one more might be a place left over
    try:
        other = best_reading(replace(task, fabric=twice), state)
    except (PlacesUnknown, TooMany, NotDefined):
        return True
    return other.worked.made.stitches != best.worked.made.stitches


def next_fabric(worked: Worked, task: Task, state: PieceState) -> Fabric:
    """The row below for the next row: a flat row is met from its other end, a turned round too."""
    nodes = worked.fabric.nodes
    if task.circular:
        if turns_after(task.steps):  # a round that begins with its turn was turned already
            nodes = from_other_end(nodes)
        if not worked.joined and worked.left and state.spiral:
            nodes = [*worked.left, *nodes]  # a spiral is one running loop: what was not used comes next
        return replace(worked.fabric, nodes=nodes)
    if nodes and nodes[0].kind in ("ch", "ring", *TUNISIAN) or worked.turned is False:
        return worked.fabric
    return replace(worked.fabric, nodes=list(reversed(nodes)))


def turned_over(fabric: Fabric | None, steps: tuple[Step, ...], coming: Instance | None) -> Fabric | None:
    """ "Turn." in a line of its own: the round behind it is met from its other end; a row is so without being told."""
    turns = any(isinstance(step, Turn) and step.turned for step in steps)
    if fabric is None or not fabric.circular or not turns or coming is None or coming.kind != "round":
        return fabric
    return replace(fabric, nodes=from_other_end(fabric.nodes))


_ONE_STITCH = ("bobble", "popcorn", "cluster", "puff")


def _of_stitches(unit: str, name: str) -> bool:
    """Whether a figure of a printed count is of stitches: "22 sc, 3 bobbles" are twenty-five."""
    return unit == "kind" or unit == "special" and name in _ONE_STITCH


def as_printed(stated: Stated | None, size: int, circular: bool, steps: tuple[Step, ...] = ()) -> Fabric | None:
    """A plain row of as many stitches as printed, where the count is of stitches alone; else not known.

    Of several kinds, "(6 sc, 30 dc)", it is of the commonest: how they lie is not told.  "(24 sts)" are of the one
    stitch that the row's own steps name, else of a kind that is not known.
    """
    if stated is None or not stated.items or stated.series:
        return None
    units = [item.unit.partition(":") for item in stated.items]
    numbers = [item.number.at(size) for item in stated.items]
    alike = (
        all(_of_stitches(unit, name) for unit, _, name in units)
        if len(units) > 1
        else units[0][0] in ("stitches", "kind")
    )
    if not alike or any(number is None or not 0 < number < 20_000 for number in numbers):
        return None
    kind = max(zip(numbers, units, strict=True))[1][2]
    return Fabric.plain(kind or _only_stitch(steps) or UNTOLD_KIND, sum(numbers), circular)


def _only_stitch(steps: tuple[Step, ...]) -> str | None:
    """The one stitch of which a row's steps are, with its beginning chain that counts as one; None where they are of several."""
    works = [step for step in walk(steps) if isinstance(step, Work) and step.stitch != "sl st"]
    named = {main_stitch((work,)) for work in works}
    named |= {
        step.counting.stitch for step in steps if isinstance(step, Chain) and step.counting and step.counting.stitch
    }
    return named.pop() if len(named - {"stitch"}) == 1 and "stitch" not in named else None


def row_as_printed(stated: Stated | None, made: Made, fabric: Fabric, size: int, circular: bool) -> Fabric | None:
    """What a row that does not come out as printed would be by its print; `fabric`: what it made."""
    plain = as_printed(stated, size, circular) or closed_as_printed(stated, made, fabric, size)
    spaces = spaces_as_printed(stated, made, size, circular) or mesh_as_printed(stated, made, fabric, size)
    return plain or spaces or repeats_as_printed(stated, made, fabric, size)


def repeats_as_printed(stated: Stated | None, made: Made, fabric: Fabric, size: int) -> Fabric | None:
    """A round of groups that are all alike, with as many of them as are printed: "(6 sc, 6 ch-5 loops)" of five made."""
    signs = [(node.kind, node.length) for node in fabric.nodes]
    lengths = (u for u in range(1, len(signs) // 2 + 1) if len(signs) % u == 0)
    unit = next((u for u in lengths if signs == signs[:u] * (len(signs) // u)), None)
    if stated is None or stated.series or not fabric.circular or unit is None:
        return None
    groups, wanted = len(signs) // unit, set()
    for item in stated.items:
        there, number = next(filter(None, measured(item, made, stated)), None), item.number.at(size)
        if not there or not number or number * groups % there:
            return None
        wanted.add(number * groups // there)
    number = wanted.pop() if len(wanted) == 1 else 0
    if not 0 < number * unit < 20_000:
        return None
    nodes = [Chains(*sign) if sign[0] == "space" else Node(sign[0]) for sign in signs[:unit] * number]
    return Fabric(nodes, True, assumed=True)


def closed_as_printed(stated: Stated | None, made: Made, fabric: Fabric, size: int) -> Fabric | None:
    """The round with the one space more that is printed: the last, before the join, is often left unsaid."""
    if stated is None or stated.series or not fabric.circular or len(made.spaces) < 1:
        return None
    lacking = []
    for item in stated.items:
        unit, _, length = item.unit.partition(":")
        if unit == "space":
            there = made.spaces.get(int(length), 0) if length.isdigit() else sum(made.spaces.values())
            lacking += [length] * min(2, (item.number.at(size) or 0) - there)  # two are as bad as a million
    alone = next(iter(made.spaces)) if len(made.spaces) == 1 else None
    length = int(lacking[0]) if len(lacking) == 1 and lacking[0].isdigit() else alone if len(lacking) == 1 else None
    ends = fabric.nodes and fabric.nodes[0].is_stitch and fabric.nodes[-1].is_stitch
    if not length or not ends:
        return None
    return replace(fabric, nodes=[*fabric.nodes, Chains("space", length)])


def mesh_as_printed(stated: Stated | None, made: Made, fabric: Fabric, size: int) -> Fabric | None:
    """A flat row of stitches with spaces between them, all alike, with as many of them as printed, and with its own ends."""
    item = stated.items[0] if stated is not None and len(stated.items) == 1 and not stated.series else None
    number, nodes = item.number.at(size) if item is not None and item.unit.startswith("space") else None, fabric.nodes
    between, spaces = nodes[1:], sum(made.spaces.values())
    if not number or not spaces or fabric.circular or number > 20_000 or len(between) % spaces:
        return None
    unit = between[: len(between) // spaces]
    alike = [(node.kind, node.length) for node in unit] * spaces == [(node.kind, node.length) for node in between]
    if not alike or sum(node.is_space for node in unit) != 1 or not unit[0].is_space:
        return None
    more = [Chains("space", one.length) if one.is_space else Node(one.kind) for one in unit] * (number - spaces)
    kept = between[max(0, spaces - number) * len(unit) :]
    return replace(fabric, nodes=[nodes[0], *more, *kept], assumed=True)


def spaces_as_printed(stated: Stated | None, made: Made, size: int, circular: bool) -> Fabric | None:
    """As many spaces as printed with stitches between, in what was made: only to see whether the next row agrees."""
    if stated is None or len(stated.items) != 1 or stated.series or not stated.items[0].unit.startswith("space"):
        return None
    number, spaces = stated.items[0].number.at(size), sum(made.spaces.values())
    if not number or not spaces or len(made.spaces) != 1 or made.stitches % spaces or number > 20_000:
        return None
    kind, length = next(iter(made.by_kind), "sc"), next(iter(made.spaces))
    nodes = []
    for _ in range(number):
        nodes += [Node(kind) for _ in range(made.stitches // spaces)]
        nodes.append(Chains("space", length))
    return Fabric(nodes, circular, assumed=True)
