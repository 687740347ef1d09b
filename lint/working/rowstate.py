"""The state of the work within one row, which every layer of the bench shares."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from lint.amount import Amount
from lint.source import Span
from lint.tree import (
    PLAIN,
    Chain,
    Counting,
    Evenly,
    Group,
    Shaping,
    Step,
    Work,
    walk,
)
from lint.working.chains import ChainRules, JoinHint
from lint.working.choices import Choices
from lint.working.clusters import FirstCluster
from lint.working.cursor import Cursor, Trouble
from lint.working.earlier import EarlierRows
from lint.working.fabric import Fabric, Node
from lint.working.kinds import family
from lint.working.markers import Markers
from lint.working.passedover import leads_past, passed_in_silence

# of one row: the widest blanket's border has a tenth of them; beyond, a number is taken for a slip of the pen
MOST_STITCHES = 25_000


_NO_MAIN = ("sl st", "picot", "inc", "dec", PLAIN)


class TooMany(Exception):
    """A row that would make more stitches than any fabric holds, or that comes when too many are worked already."""


@dataclass
class Noted:
    """A trouble with the words it arose at."""

    trouble: Trouble
    span: Span


class NotDefined(Exception):
    """A shell, V-stitch… that the pattern nowhere defines: what it makes is not known."""


class RowState:
    """What has been made in this row so far, and where the work stands in the row below."""

    def __init__(
        self,
        fabric: Fabric,
        size: int,
        is_round: bool,
        rules: ChainRules,
        choices: Choices,
        plain_stitch: str = "sc",
        blocks: bool = False,
    ) -> None:
        self.cursor = Cursor(fabric)
        self.markers = Markers(fabric)
        self.size = size
        self.is_round = is_round
        self.said_round = is_round  # not only because it begins in a ring
        self.rules = rules
        self.choices = choices
        self.plain_stitch = plain_stitch
        self.before = fabric.before  # stitches of the row below that lie before these
        self.free_loops: int | None = None  # along the other side of the foundation, where that is known
        self.chains_passed = False  # not all of those have a stitch in them
        self.ending_done = False  # what the next clause tells, the repeat before it has done in its last pass
        self.flat_below = False  # a round is worked along the edge of a flat piece
        self.blocks = blocks  # corner to corner: skipped chains are a space, not a stitch
        self.outer: Cursor | None = None  # the row below, while a chain made in this row is worked into
        self.arm_from = 0  # how many nodes were made before that chain
        self.made: list[Node] = []
        self.groups: Counter = Counter()
        self.picots = 0
        self.filling = 0  # brackets, within brackets, that are being worked into one place
        self.named: Counter = Counter()  # groups that only "(petal made)" names
        self.bunches: Counter = Counter()  # three or more of a stitch in one place, by kind and number
        self.begun = False
        self.begin_node: Node | None = None
        self.leads: FirstCluster | None = None  # the cluster that the beginning chain is the first leg of
        self.uncounted = 0
        self.chain_note: Counting | None = None  # said of a chain that is worked into in this row
        self.from_ring = "ring" in [node.kind for node in fabric.nodes]
        self.group = 0
        self.group_place: Node | None = None
        self.group_run = 0
        self.closing: Node | None = None
        self.joined = False
        self.turned: bool | None = None
        self.turned_at = -1  # how many nodes stood when the work was turned
        self.left_rest = False
        self.between_groups: list[Node] = []  # what runs over shells have passed between them
        self.beyond: list[Node] = []  # what lies behind the stitches that the row is confined to
        self.unsaid: tuple[Span, bool] | None = None  # a chain of which nothing is said, and whether it was counted
        self.carried: Chain | None = None
        self.learned: list[tuple[int, Counting]] = []
        self.noted: list[Noted] = []
        self.hint: JoinHint | None = None
        self.at_base = False  # whether the round is closed into the foot of its first chain
        self.last_work: Step | None = None
        self.opens: Step | None = None  # the first working clause
        self.step_from = 0
        self.works_stitches = False
        self.space_lengths: set[int] = set()
        self.space_owners: set[str] = set()  # shells, V-stitches… of which the spaces are worked into
        self.only_work: Work | None = None  # the one working clause of a row that has but one
        self.in_stitches_too = False  # the row's words name stitches to work into, besides gaps and spaces
        self.runs_behind = False  # some runs of the row have their number behind: "sc 3"
        self.slip_row = False  # a row of slip stitches, which count
        self.called = False  # the words are another row's, which may begin on a chain that this one has not
        self.told_beside: set[int] = set()  # what is worked beside a run, by the step's id
        self.slips_in_turn = False  # "*sl st in next st, hdc in next st*": slip stitches that the next row works into
        self.decreases = False  # some of the row's stitches go over several places
        self.pending_picot = False
        self.joined_loops = 0  # loops joined to another piece half way
        self.anchored = False  # a slip stitch ends the run of chains before it
        self.repeating = 0  # repeats around the step that is worked
        self.passed_under: set[tuple[int, int]] = set()  # (chains of a loop, places that a skip passed under it)
        self.springs = False  # the round's first loop springs from the join, which a stitch closes at its end
        self.passed_by: dict[Span, int] = {}  # stitches that a clause has passed over without a word
        self.crowded_at = -1  # how much was made when a number without a place went into one stitch
        self.said_at: set[int] = set()  # how much was made where words passed over places
        self.gap_at: int | None = None  # the place before which the gap worked into last lies
        self.begun_in_gap = False
        self.shaping: Shaping | None = None  # of the run that comes next
        self.skipped: list[Node] = []  # passed over by this row's words, and not yet worked into
        self.skipped_below = 0  # of a row below, passed over by this row's words and not yet worked into
        self.other_side = False  # on the foundation's other side, whose free loops are called loops as well as chains
        self.in_turn = 0  # stitches taken for corners since each was the next one: the row has to come out so
        self.moved = False  # slip stitches have moved the start of the round
        self.slipped = 0  # places passed by slip stitches among other stitches, which a printed count may take in
        self.hung = 0  # slip stitches into another piece
        self.slipped_into: Node | None = None  # where they have come to
        self.foundation: int | None = None  # a row that is nothing but a chain
        self.main = plain_stitch
        self.plain_runs: dict = {}  # by a step's id: how its clause is worked the short way
        self.like_steps: dict[int, bool] = {}  # by a repeat's id: whether its passes may be copied
        self.used = 0
        self.earlier = EarlierRows()  # the rows before, by their numbers
        self.used_earlier: Counter = Counter()  # of those rows, the places that this one has worked into
        self.works_behind = False  # into an earlier round, past the row below

    def run(self, steps: tuple[Step, ...], following: tuple[Step, ...]) -> None:
        raise NotImplementedError  # the bench itself, the last layer, runs steps

    def check_size(self, coming: int = 0) -> None:
        if len(self.made) + coming > MOST_STITCHES:
            raise TooMany

    def amount(self, amount: Amount) -> int:
        value = amount.at(self.size)
        number = 0 if value is None else value
        if number > MOST_STITCHES:
            raise TooMany
        return number

    def note_passed(self, step: Work | Group, before: int) -> None:
        """Keep what a step, whose first stitch is `made[before]`, has passed over without a word."""
        if before not in self.said_at and not leads_past(step):
            passed = passed_in_silence(self.made, before, self.cursor, before == self.crowded_at)
            if passed:
                self.passed_by[step.span] = self.passed_by.get(step.span, 0) + passed

    def note(self, span: Span) -> None:
        """Give the troubles that the cursor met since last time the words at which they arose."""
        cursor = self.cursor
        if not cursor.troubles:
            return
        for trouble in cursor.troubles:
            last = self.noted[-1] if self.noted else None
            if (
                last
                and last.span == span
                and last.trouble.kind == trouble.kind
                and last.trouble.wanted == trouble.wanted
            ):
                last.trouble.number += trouble.number
            else:
                self.noted.append(Noted(trouble, span))
        cursor.troubles.clear()

    def picot(self, number: int, chains: int) -> None:
        """So many picots of so many chains, on the stitch made last."""
        self.picots += number

    def save(self) -> tuple:
        """Where the work stands, to come back to; what is made after it is only added, or lengthens the last space."""
        return (
            self.cursor.save(),
            len(self.noted),
            self.picots,
            dict(self.groups),  # quicker than a Counter by far, and a repeat saves at every pass
            self.group,
            self.cursor.ran_out,
            len(self.made),
            self.made[-1].length if self.made else 0,
            self.anchored,
            self.begun,
            list(self.skipped),
            dict(self.bunches),
            self.works_stitches,
            self.joined_loops,
            self.slipped,
            dict(self.used_earlier),
            self.cursor,
            self.outer,
            self.hung,
            self.skipped_below,
            dict(self.passed_by),
        )

    def restore(self, state: tuple) -> None:
        """Undo everything since `state` was saved."""
        cursor, noted, self.picots, groups, self.group, _, made, length, self.anchored, self.begun = state[:10]
        self.groups, self.bunches = Counter(groups), Counter(state[11])
        self.skipped, self.works_stitches = list(state[10]), state[12]
        self.joined_loops, self.slipped, self.used_earlier = state[13], state[14], Counter(state[15])
        self.cursor, self.outer, self.hung, self.skipped_below, passed = state[16:21]
        self.passed_by = dict(passed)
        self.cursor.restore(cursor)
        del self.noted[noted:]
        del self.made[made:]
        if self.made and self.made[-1].length != length:
            self.made[-1].length = length
        self.group_place = None

    def ran_out_since(self, state: tuple) -> bool:
        return self.cursor.ran_out > state[5]


def main_stitch(steps: tuple[Step, ...]) -> str | None:
    """The first stitch worked, slip stitches apart."""
    for step in walk(steps):
        if isinstance(step, Work) and not step.undefined and step.stitch not in _NO_MAIN:
            if step.special is not None and step.special.items:
                return main_stitch(step.special.items)
            if step.special is not None:
                continue
            return family(step.stitch)
        if isinstance(step, Evenly):
            return step.stitch
    return None
