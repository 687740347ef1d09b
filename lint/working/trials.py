"""Tries the readings of a row: the one that agrees with the printed count and fits the row below is kept."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from itertools import combinations, pairwise
from typing import TypeVar

from lint.tree import AlongEdge, Chain, JoinYarn, Step, Turn, UseYarn, Work, walk
from lint.working.bench import Bench, Worked
from lint.working.chains import ChainRules
from lint.working.choices import CHAIN_KEYS, CHAINS_BELOW, Choices, Key
from lint.working.compare import CHAINS_COUNTED, Comparison, compare
from lint.working.cursor import PlacesUnknown
from lint.working.earlier import EarlierRows
from lint.working.effort import A_READING, Effort
from lint.working.fabric import Fabric, Made, afresh
from lint.working.instances import Instance
from lint.working.recording import KeepingBench, RecordingBench
from lint.working.rowstate import NotDefined, Noted, TooMany
from lint.working.starts import from_other_end, is_round, names_spaces, names_structure, turns_first
from lint.working.workings import Workings

_B = TypeVar("_B", bound=Bench)
_MOST_TRIALS = 20
_MOST_SORTS = 5  # of other readings that a row without a count is tried in, one of each sort and all of it
_CHAINS_SEEN = ("chains too", "seen")  # a printed count has borne out that "each st" means chains as well
_UNSOUND = ("run out", "too often", "does not fit")
_NOT_SERIOUS = ("passed", "uncounted chain", "not there", "chains too")


@dataclass(frozen=True)
class Side:
    """The edge of a piece along its rows."""

    rows: int | None = None  # worked to and fro since the foundation; None where that is not known
    seamed: bool = False  # first and last row are joined, so that the edge runs round a tube
    kinds: tuple[str, ...] = ()  # the stitch that each of them is of; "" where it is of several


@dataclass(frozen=True)
class FreeLoops:
    """The other side of the chain that the pattern's one piece was begun on."""

    number: int | None = None  # chains from the first one worked into; None where not known, or of several pieces
    passed: bool = False  # some of them have no stitch in them: whoever says "free loop" may mean those or not
    circular: bool = False
    pieces: int = 0


@dataclass
class PieceState:
    """How the work on a pattern stands, for one size."""

    fabric: Fabric | None = None  # None: not known
    rules: ChainRules = field(default_factory=ChainRules)
    habits: dict[Key, int] = field(default_factory=dict)  # what the counts have settled so far
    unworked: list[Fabric] = field(default_factory=list)  # what rows left of rows below, to be joined to later
    more_left: bool = False  # rows not recomputed may have left more
    even_pieces: frozenset[str] = frozenset()  # the pieces in a pattern that keeps its number, by name
    pieces: dict[str, int | None] = field(default_factory=dict)  # the stitches of legs, arms… that are joined later
    side: Side = field(default_factory=Side)  # the edge along the rows of the piece
    loops: FreeLoops = field(default_factory=FreeLoops)
    carried: Chain | None = None  # a turning chain worked at the end of the row before
    joining: tuple[Step, ...] = ()  # yarn joined, and what was passed over to come there, before the next row
    earlier: EarlierRows = field(default_factory=EarlierRows)
    made: Made | None = None  # by the row before, where that is known
    number: int = 0  # of the row before; 0: it has none
    counts: dict[tuple[int, int], int | None] = field(default_factory=dict)  # what each row has made, by its key
    leans: str = ""  # the row not worked out on whose printed count alone the work stands, till a count agrees
    recent: list[Made] = field(default_factory=list)  # by the last rows, the newest last
    short_rows: bool = False  # the piece's heading says that rows turn before their end
    short: bool = False  # a row's label says so
    whole: int = 0  # stitches of the row before those that turn where stitches are left
    parted: bool = False  # rows to and fro go over a part of a round, the rest of which is left
    spiral: bool = False
    fastened: bool = False
    bare_starts: bool = False  # the pattern's first piece leaves its ring unsaid
    left_off: Fabric | None = None  # the round fastened off before this piece, till its first row is worked
    bench: type[Bench] = Bench  # what rows are worked on; a KeepingBench is kept with the reading worked on it
    stitches: int = 0
    effort: Effort = field(default_factory=Effort)  # one for all sizes and readings of a pattern
    settled: dict[int, dict[Key, int]] = field(default_factory=dict)  # by row, what most sizes answer
    answers: dict[int, dict[Key, tuple[int, int]]] = field(default_factory=dict)  # by row, with the answer by default
    usual: dict[Key, int] = field(default_factory=dict)  # chains read against the trade's habit: how they usually are
    speaks: Counter = field(default_factory=Counter)  # how many rows' counts speak for such a reading

    def begin(self, fabric: Fabric) -> None:
        """A piece begins on a ring or chain of its own: nothing is left of the one before."""
        self.fabric, self.earlier, self.carried = fabric, EarlierRows(self.earlier.shelf), None
        self.unworked, self.more_left, self.joining, self.side = [], False, (), Side(0)
        self.left_off, self.parted, self.recent, self.short, self.whole, self.number = None, False, [], False, 0, 0
        self.leans, self.fastened = "", False


@dataclass(frozen=True)
class Task:
    """A row to be worked on a fabric, in one size."""

    instance: Instance
    steps: tuple[Step, ...]
    fabric: Fabric
    circular: bool
    size: int
    blocks: bool  # corner to corner

    @classmethod
    def of(cls, instance: Instance, state: PieceState, fabric: Fabric, size: int, blocks: bool) -> Task:
        return cls(instance, _with_carried(instance.steps, state), fabric, is_round(instance, fabric), size, blocks)

    @property
    def called(self) -> bool:
        """Whether the words are another row's, which is worked again."""
        return not self.instance.row.span.start <= self.place < self.instance.row.span.end

    @property
    def place(self) -> int:
        """Where the row's words begin, by which rows that work the same words are known."""
        return (self.instance.steps or (self.instance.row,))[0].span.start


@dataclass
class Trial:
    """One reading of a row, worked."""

    worked: Worked
    comparison: Comparison | None
    forced: dict[Key, int]
    either: frozenset[Key] = frozenset()  # what the count leaves open: the other answer agrees and fits as well
    open: bool = False  # another reading fits as well and makes another number, and no count speaks for either
    bench: KeepingBench | None = None  # where benches are kept

    @property
    def agrees(self) -> bool | None:
        return self.comparison.agrees if self.comparison is not None else None

    @property
    def fits(self) -> bool:
        """Whether the row uses up the row below, no more and no less."""
        return not self._serious and not self.worked.left

    @property
    def only_leaves(self) -> bool:
        """Whether all that speaks against the row is what it leaves of the row below."""
        return bool(self.worked.left) and all(noted.trouble.kind == "left" for noted in self._serious)

    @property
    def _serious(self) -> list[Noted]:
        return [noted for noted in self.worked.troubles if noted.trouble.kind not in _NOT_SERIOUS]

    @property
    def unsound(self) -> bool:
        """Whether the places run out, or a repeat does not come out, and no printed count speaks for what is made."""
        does_not_come_out = any(noted.trouble.kind in _UNSOUND for noted in self.worked.troubles)
        return self.open or self.agrees is None and does_not_come_out

    @property
    def rank(self) -> tuple[bool, bool, int, int]:
        """Lower is better; of readings that all differ, the one under which most of the printed figures agree."""
        differing = len(self.comparison.differences) if self.comparison is not None else 0
        return (self.agrees is False, not self.fits, differing, len(self.forced))


def best_reading(task: Task, state: PieceState) -> Trial:
    """The reading that agrees and fits, with as little forced as may be.  Raises PlacesUnknown, TooMany."""
    if task.fabric.assumed and names_structure(task.steps):
        raise PlacesUnknown
    if task.fabric.assumed and names_spaces(task.steps) and not any(node.is_space for node in task.fabric.nodes):
        raise PlacesUnknown("where the spaces of the row below are is not known here")
    best = _best(task, state)
    if best.agrees is None:
        best.open = (
            _guessed(best, task)
            or not best.fits
            and any(k[0] in ("lone star", "times") for k in best.worked.choices.asked)
        )
        doubled = "bare number" if _one_then_two(task.steps) else ""
        # in a pattern that elsewhere means the chains by "each st", a row without a count may mean them too
        chained = state.habits.get(_CHAINS_SEEN) and not state.habits.get(CHAINS_BELOW)
        told = _as_read_before(task, state) if task.called else {}  # the same words, where a count has borne them out
        covers = [
            (key, 1 - taken)
            for key, (taken, _) in best.worked.choices.asked.items()
            if key not in told
            and key[0]
            in (
                "times",
                doubled,
                "chains too" if chained else "",
                "covers",
                "times over",
                "to last",
                "picot stitch",
                "gaps",
                "skip chains",
                "same corner",
                "only told",
                "over",
                "past corner",
                "shared out",
                "each edge",
                "lone star",
                "decreases in each",
                "decrease over",
                "so many in each",
                "rest of group",
                "row folded",
                "passed or worked",
                "worked or listed",
                "first comes round",
                "chain's space",
            )
        ]
        one_of_each = {key[0]: {key: other} for key, other in reversed(covers)}
        for forced in (*list(one_of_each.values())[-_MOST_SORTS:], *_all_of_a_sort(covers)[:_MOST_SORTS]):
            trial = one_reading(task, state, {**best.forced, **forced})
            sort = next(iter(forced))[0]
            either = trial.fits or sort in ("times", "over") and not best.fits  # "n times": neither way fits
            best.open = best.open or either and trial.worked.made.stitches != best.worked.made.stitches
    elif best.agrees and best.fits:
        best.either = frozenset(key for key in best.worked.choices.asked if _either_way(key, best, task, state))
    return best


def _one_then_two(steps: tuple[Step, ...]) -> bool:
    """Whether "1 sc, 2 sc" stands in a row: three stitches would be told as such, so that two may go into one place."""
    works = [step for step in walk(steps) if isinstance(step, Work)]
    return any(
        one.stitch == two.stitch and one.number.lone == 1 and two.number.lone == 2 and not (one.places or two.places)
        for one, two in pairwise(works)
        if one.number_said and two.number_said
    )


def _guessed(best: Trial, task: Task) -> bool:
    """Whether "6 sc" was taken for six in one place only because the row then comes out; "1 sc, 2 sc" says so itself."""
    return any(key[0] == "bare number" for key in best.forced) and not _one_then_two(task.steps)


def _either_way(key: Key, best: Trial, task: Task, state: PieceState) -> bool:
    """Whether a row comes out with its chain counted and not counted: "ch 2, hdc2tog, hdc to end" does."""
    taken, options = best.worked.choices.asked[key]
    settled = (key in state.habits or options != 2) and key not in state.usual
    if key[0] != "chain counts" or settled or key in best.worked.choices.hinted:
        return False
    try:
        other = one_reading(task, state, {**best.forced, key: 1 - taken})
    except (PlacesUnknown, NotDefined, TooMany):
        return False
    return bool(other.agrees) and other.fits


def _best(task: Task, state: PieceState) -> Trial:
    first = one_reading(task, state, {})
    uneven = first.agrees is None and _told_by_side(task)  # "17 dc per side", and the sides are not alike
    if first.agrees is not False and first.fits and not uneven or not first.worked.choices.asked:
        return first
    best = first
    others = first.worked.choices.others()
    pairs = (pair for pair in combinations(others, 2) if pair[0][0] != pair[1][0])
    tries = [dict([one]) for one in others] + _all_of_a_sort(others) + [dict(pair) for pair in pairs]
    for forced in tries[:_MOST_TRIALS]:
        try:
            trial = one_reading(task, state, forced)
        except PlacesUnknown:
            continue  # a reading that leaves places open settles nothing
        settles = task.instance.stated is not None or trial.fits and not best.fits
        if (trial.rank < best.rank or uneven and trial.agrees and trial.fits) and settles:
            best = trial
            if best.agrees is not False and best.fits:
                break
    return best


def _all_of_a_sort(others: list[tuple[Key, int]]) -> list[dict[Key, int]]:
    """Every choice of one sort answered alike: who writes "hdc over next 2 sts" four times in a row means one thing by it."""
    sorts: dict[str, dict[Key, int]] = {}
    for key, other in others:
        sorts.setdefault(key[0], {}).setdefault(key, other)
    return [alike for alike in sorts.values() if len(alike) > 1]


def _told_by_side(task: Task) -> bool:
    """Whether the row's count is that of one side alone."""
    stated = task.instance.stated
    return stated is not None and all(item.unit.startswith("per side") for item in stated.items)


def one_reading(task: Task, state: PieceState, forced: dict[Key, int]) -> Trial:
    """One reading of a row.  Raises PlacesUnknown, TooMany."""
    if state.effort.spent:
        raise TooMany("the pattern has more stitches than are worked at once")
    bench = _bench(state.bench, task, state, forced)
    try:
        worked = bench.work(task.steps)
    finally:
        state.effort.spend(A_READING + len(bench.made) + bench.cursor.ran_out)
    kept = bench if isinstance(bench, KeepingBench) else None
    return Trial(worked, _compared(task, worked), forced, bench=kept)


def workings_of(best: Trial, task: Task, state: PieceState) -> Workings:
    """The workings of a row in the reading that was kept; it is worked once more if nobody watched.  Before `settle`."""
    if isinstance(best.bench, RecordingBench):
        return best.bench.workings()
    bench, _ = watched(best, task, state)
    return bench.workings()


def watched(best: Trial, task: Task, state: PieceState) -> tuple[RecordingBench, Worked]:
    """A row in the reading that was kept, worked once more on a bench that is watched.  Before `settle`."""
    bench = _bench(RecordingBench, task, state, best.forced)
    return bench, bench.work(task.steps)


def _bench(sort: type[_B], task: Task, state: PieceState, forced: dict[Key, int]) -> _B:
    nodes = task.fabric.nodes
    afresh(nodes)
    if task.circular and task.fabric.circular and turns_first(task.steps):
        nodes = from_other_end(nodes)
    on_chain = bool(nodes) and nodes[0].kind == "ch"
    below = replace(task.fabric, nodes=nodes, circular=task.fabric.circular or task.circular and not on_chain)
    habits = {**state.habits, **_as_read_before(task, state)} if task.called else state.habits
    choices = Choices(habits, forced, settled=state.settled.get(task.place, {}))
    bench = sort(below, task.size, task.circular, state.rules, choices, blocks=task.blocks)
    bench.flat_below = not task.fabric.circular
    bench.called = task.called
    bench.earlier = state.earlier
    bench.free_loops, bench.chains_passed = state.loops.number, state.loops.passed
    return bench


def _as_read_before(task: Task, state: PieceState) -> dict[Key, int]:
    """Of a row that is worked again: what its count has settled where it was first worked, on its chain, its times and its loops."""
    before = (state.answers.get(step.span.start) for step in task.instance.steps)
    answers: Mapping[Key, tuple[int, int]] = next((found for found in before if found), {})
    return {key: taken for key, (taken, _) in answers.items() if key[0] in (*CHAIN_KEYS, "times", "over the loop")}


def _compared(task: Task, worked: Worked) -> Comparison | None:
    """The row's own count compared; a count taken over from another row speaks only where it agrees."""
    instance = task.instance
    if instance.stated is not None:
        return compare(instance.stated, worked.made, task.size, instance.stated_index)
    if instance.inherited is not None:
        inherited = compare(instance.inherited, worked.made, task.size)
        return inherited if inherited.agrees else None
    return None


def settle(best: Trial, state: PieceState, place: int) -> None:
    """Keep what the counts have settled for the rest of the pattern."""
    for length, counting in best.worked.learned:
        state.rules.take_note(length, counting)
    for key, (taken, _) in best.worked.choices.asked.items():
        if key[0] in CHAIN_KEYS and key in best.forced:
            state.usual[key] = 1 - taken
    differences = best.comparison.differences if best.comparison is not None else ()
    state.habits[CHAINS_BELOW] = int(any(one.under == CHAINS_COUNTED for one in differences))
    if not (best.agrees and best.fits):
        return
    choices = best.worked.choices
    if choices.asked:
        state.answers[place] = {
            key: (taken, choices.defaults[key]) for key, (taken, _) in choices.asked.items() if key not in best.either
        }
    for key, taken in best.forced.items():
        if key[0] == "chains too":
            state.habits[_CHAINS_SEEN] = taken
        if key[0] in ("times", "bare number", "n in next n", "slips stand", "over"):
            state.habits[(key[0], "habit", *key[2:])] = taken
    for key, (taken, _) in best.worked.choices.asked.items():
        if key[0] == "chain counts" and key not in best.either:
            state.habits[key] = taken
        if key in state.usual and key not in best.either:
            state.speaks[key] += 1


def _with_carried(steps: tuple[Step, ...], state: PieceState) -> tuple[Step, ...]:
    """A turning chain worked at the end of the row before opens this one; so does yarn joined in a line of its own."""
    joins = any(isinstance(step, JoinYarn) for step in steps)
    joining = tuple(step for step in state.joining if not joins or isinstance(step, AlongEdge))
    if joining and not any(isinstance(step, AlongEdge) for step in steps):
        return (*joining, *steps)
    if state.carried is None:
        return steps
    for step in steps:
        if isinstance(step, Chain):
            return steps
        if not isinstance(step, (Turn, UseYarn)):
            break
    return (state.carried, *steps)
