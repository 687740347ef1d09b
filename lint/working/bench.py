"""Works one row or round, for one size, on the row below: the heart of the program.

Every stitch is made as a node that knows its place; counts are read off the nodes, never off the text.
The bench is built in layers, each using only those before it: rowstate, parts, gaps, reach, placing, beginning, making,
stitching, grouping, moving, repeating, plain.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from itertools import takewhile

from lint.place import LimitKind, Which
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    AlongEdge,
    Alongside,
    Chain,
    Confined,
    Counting,
    Either,
    Evenly,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    LastPlace,
    Loops,
    MakeRing,
    Marker,
    NoJoin,
    OpenWork,
    OtherSide,
    Passage,
    Remark,
    Repeat,
    Shaping,
    Skip,
    Step,
    Turn,
    UseYarn,
    Work,
    walk,
)
from lint.working.choices import Choices
from lint.working.confining import confine
from lint.working.cursor import CORNERS_UNKNOWN, FEWEST_CORNERS, Cursor, PlacesUnknown
from lint.working.earlier import from_free_loops
from lint.working.fabric import Fabric, Made, Node, count, count_spaces, unname_if_others_alike
from lint.working.gaps import into_stitches
from lint.working.grouping import PARTED, PETAL
from lint.working.joinhints import closes_at_base, join_hint
from lint.working.kinds import family
from lint.working.lastwords import all_slip_stitches, into_any_loop, into_part, joins_loop, last_limit
from lint.working.leads import joined_and_turned, on_stitches
from lint.working.likepasses import LikePasses
from lint.working.moving import in_turn, slipped_up_to
from lint.working.rowstate import Noted, main_stitch
from lint.working.troubles import Trouble
from lint.working.underloops import passed_alike


@dataclass
class Worked:
    """What came of working a row."""

    fabric: Fabric
    made: Made
    troubles: list[Noted]
    choices: Choices
    joined: bool = False
    turned: bool | None = None
    unsaid_chain: tuple[Span, bool] | None = None  # and whether it was read as a stitch
    carried: Chain | None = None
    learned: list[tuple[int, Counting]] = field(default_factory=list)
    left: list[Node] = field(default_factory=list)
    used: int = 0
    unworked: list[Node] = field(default_factory=list)  # all of the row below that lies beyond the last place
    foundation: list[Node] = field(default_factory=list)  # the chain that the row is worked on, all of it


_LONGEST_TURN = 4  # chains; more that do not count are a loop at the edge, "1 ch-7 loop"


class Bench(LikePasses):
    """Works the steps of one row."""

    def work(self, steps: tuple[Step, ...]) -> Worked:
        """Work a whole row.  Raises PlacesUnknown, TooMany."""
        steps = from_free_loops(steps)
        self.hint, self.at_base = join_hint(steps), closes_at_base(steps)
        self.last_work = next((s for s in reversed(steps) if isinstance(s, MAKES_STITCHES)), None)
        self.opens = next((s for s in steps if isinstance(s, MAKES_STITCHES)), None)
        self.main = main_stitch(steps) or self.stitch_below() or self.plain_stitch
        self.slip_row = all_slip_stitches(steps) or self.slips_in_all(steps)
        works = [step for step in walk(steps) if isinstance(step, MAKES_STITCHES)]
        self.slips_in_turn = any(map(in_turn, works))
        self.decreases = any(isinstance(s, Work) and (s.together or s.stitch == "dec") for s in works)
        alone = len(works) == 1 and isinstance(works[0], Work) and works[0].special is None
        self.only_work = works[0] if alone else None
        self.in_stitches_too = any(into_stitches(step) for step in works)
        self.runs_behind = any(isinstance(s, Work) and s.number_after and s.stitch not in ("inc", "dec") for s in works)
        self.run(steps, ())
        return self.finish()

    def first_skipped(self, step: Repeat) -> int:
        """How many places each pass of a repeat passes over before it works anything."""
        skips = takewhile(lambda item: isinstance(item, Skip), step.items)
        return sum(self.amount(place.number) for skip in skips for place in skip.places)

    def slips_in_all(self, steps: tuple[Step, ...]) -> bool:
        """ "Sl st in next 18 sts" on a round of 18: a round of slip stitches."""
        works = [step for step in walk(steps) if isinstance(step, (*MAKES_STITCHES, Skip))]
        only = works[0] if len(works) == 1 else None
        if not isinstance(only, Work) or only.stitch != "sl st" or any(p.which is not Which.NEXT for p in only.places):
            return False
        number = (only.places[0] if len(only.places) == 1 else only).number.at(self.size)
        return number is not None and number > 1 and number == sum(node.is_stitch for node in self.cursor.nodes)

    def stitch_below(self) -> str | None:
        """The stitch of a row below that is of one stitch alone."""
        kinds = {family(node.kind) for node in self.cursor.nodes if node.is_stitch and node.kind != "ch"}
        kind = kinds.pop() if len(kinds) == 1 else ""
        return kind if kind in self.rules.heights and kind != "sl st" else None

    def run(self, steps: tuple[Step, ...], following: tuple[Step, ...]) -> None:
        steps = self.to_the_letter(steps)
        for index, step in enumerate(steps):
            self.back_from_arm(step)
            self.step(step, steps, index, following)
        self.back_from_arm(None)

    def step(self, step: Step, steps: tuple[Step, ...], index: int, following: tuple[Step, ...]) -> None:
        if isinstance(step, Work):
            if step.perhaps and self.choices.pick(("only told", step.span.start), 2, 0):
                return
            self.loop_on_hook(step)
            step = self.decreases_in_each(step)
            before = len(self.made)
            run = self.plain_run(step)
            ahead = steps[index + 1] if index + 1 < len(steps) else None
            shaped = isinstance(ahead, Shaping) and ahead.over is not None
            if run.places and not shaped and self.work_plain(run):
                self.step_from = before
                return
            if step.stitch == "sl st" and not self.slip_row:
                if self.slips_are_places(step, (*steps[index + 1 :], *following)):
                    self.work_stitches(step, (*steps[index + 1 :], *following))
                else:
                    asked = self.slips_along(step)
                    step = self.placed_slip(step, steps[index + 1] if index + 1 < len(steps) else None)
                    self.slip(slipped_up_to(step, steps[index + 1 :]), asked)
                return
            if (
                step.stitch != "picot"
                and step.special is not None
                and step.special.items
                and not step.special.one_stitch
            ):
                own = step.special.at if not step.places else ()
                if own and self.cursor.has(own[0].targets[0], self.size):
                    step = replace(step, places=own)
                self.work_special(step, step.special, (*steps[index + 1 :], *following))
            else:
                self.work_stitches(step, (*steps[index + 1 :], *following))
            self.note_passed(step, before)
            self.step_from = before
        elif isinstance(step, Chain):
            self.work_chain(step, (*steps[index + 1 :], *following))
        elif isinstance(step, Group):
            before = len(self.made)
            self.work_group(step, (*steps[index + 1 :], *following))
            self.note_passed(step, before)
            self.step_from = before
        elif isinstance(step, Repeat):
            self.work_repeat(step, (*steps[index + 1 :], *following))
        elif isinstance(step, Skip) and step.to is not None and not step.places:
            self.skip_to(step, steps, index, following)
        elif isinstance(step, Skip):
            self.skip(step)
        elif isinstance(step, Confined):
            self.beyond = confine(self.cursor, self.amount(step.number), step.first)
        elif isinstance(step, Passage):
            self.run(step.items, (*steps[index + 1 :], *following))
        elif isinstance(step, Either):
            self.work_either(step, (*steps[index + 1 :], *following))
        elif isinstance(step, Evenly):
            below = self.cursor.nodes if self.cursor.known and not self.cursor.at else []
            if all(node.kind == "ch" for node in below):  # "Ch 40." in the line before
                self.hangs_free(step, len(below))
            self.begin()
            self.group += 1
            each = step.edges > 1 and self.choices.pick(("each edge", step.span.start), 2, 0) == 1
            for _ in range(self.amount(step.number) * (step.edges if each else 1)):
                self.check_size()
                self.made.append(Node(step.stitch))
            self.cursor = Cursor(Fabric.unknown(self.is_round))  # along an edge: no longer on the row below
        elif isinstance(step, Shaping):
            self.shape(step, steps, index, following)
        elif isinstance(step, OpenWork):
            self.work_on(step, (*steps[index + 1 :], *following))
        elif isinstance(step, OtherSide):
            self.turn_round_chain(step.perhaps)
        elif isinstance(step, AlongEdge) and step.row:
            self.cursor = Cursor(self.earlier.loops(step, self.is_round))
        elif isinstance(step, AlongEdge):
            row_ends = not self.made and self.cursor.on_row_ends
            if self.made or not isinstance(next(iter(steps[index + 1 :]), None), Chain):
                self.begin()  # "working along the row ends, ch 1, 20 sc": that chain begins the row
            if not row_ends:  # "working in the ends of the rows, sc in each": how many there are is known
                self.cursor = Cursor(Fabric.unknown(self.is_round))
        elif isinstance(step, MakeRing):
            self.make_ring(step)
        elif isinstance(step, JoinYarn):
            coming = (*steps[index + 1 :], *following)
            self.join_yarn(step if self.made or self.is_round else joined_and_turned(step, coming))
        elif isinstance(step, Join):
            self.joined = True
        elif isinstance(step, Turn):
            coming = (*steps[index + 1 :], *following)
            # with a chain behind it, maybe: "…, ch 1, turn, sc in next 4 sts"
            made = [node for node in self.made if not node.is_space] if on_stitches(coming) else self.made
            worked = bool(made) and made[-1].is_stitch and not made[-1].chain
            aside = any(isinstance(s, OtherSide) for s in coming)  # the piece goes round, and is not turned over
            # "Ch 6, dc in 4th ch from hook, dc in next 2 ch, turn, sl st in ch-3 sp of last block": on to the row below
            aside = aside or self.blocks and not any(node.parents and node.parents[0].is_space for node in self.made)
            if step.turned and worked and not aside and any(isinstance(s, MAKES_STITCHES) for s in coming):
                raise PlacesUnknown("the work is turned within the row, and goes on over what was just made")
            self.turn(step)
        elif isinstance(step, Remark):
            self.remark(step)
        elif isinstance(step, Marker):
            self.markers.place(step, self.made, self.is_round, bool(self.turned))
        elif isinstance(step, Alongside):
            evenly = any(isinstance(before, Evenly) for before in steps[:index])  # whose number tells all
            if id(step) not in self.told_beside and not evenly:  # "*sc, ch 1, skip 1*, working 3 sc in each corner"
                raise PlacesUnknown("where that is worked beside the rest is not known here")
        elif not isinstance(step, (FastenOff, LastPlace, Loops, NoJoin, UseYarn)):
            raise PlacesUnknown  # no step is passed over in silence

    def finish(self) -> Worked:
        cursor = self.outer if self.outer is not None and self.cursor.at >= len(self.cursor.nodes) else self.cursor
        self.note(self.last_work.span if self.last_work else Span(0, 0))
        if not self.made and self.foundation is not None:
            fabric = Fabric.foundation(self.foundation)
            return Worked(fabric, Made(0, {}, {}, 0, {}), self.noted, self.choices, self.joined, self.turned)
        if not self.made:
            fabric = replace(self.markers.below, nodes=cursor.nodes, circular=cursor.circular, known=cursor.known)
            fabric.uncounted = cursor.uncounted
            return Worked(
                fabric, Made(0, {}, {}, 0, {}), self.noted, self.choices, self.joined, self.turned, carried=self.carried
            )
        if self.beyond and cursor.known and cursor.at < len(cursor.nodes) and not self.left_rest:
            raise PlacesUnknown("not all of the stitches that the row is for are worked")
        self.noted += [Noted(Trouble("left", "st", number), span) for span, number in self.passed_by.items()]
        left = self.left_over(cursor)
        ran_out = any(noted.trouble.kind == "run out" for noted in self.noted)
        if self.in_turn and (left or ran_out or self.in_turn < FEWEST_CORNERS):
            raise PlacesUnknown(CORNERS_UNKNOWN)
        short = sum(noted.trouble.number for noted in self.noted if noted.trouble.kind == "run out")
        if 0 < short <= self.crossed:
            raise PlacesUnknown("whether the chains of the row below are stitches to this one is not said")
        flat = self.turned and not self.joined and not self.said_round  # a row that began in a ring
        circular = self.is_round and not flat
        self.count_opening_group(circular)
        for name, times in self.named.items():
            once = times == 1 and len(self.made) > 2 * (len(self.made) - self.step_from)
            if times == self.groups[name] and (unname_if_others_alike(self.made, name, times) or once):
                del self.groups[name]  # said of the first: how many more there are is not counted
        made = count(self.made, self.groups, self.picots, circular, self.from_ring, self.slip_row, self.slipped)
        if made.sides and any(place.kind == "elsewhere" for node in self.made for place in node.parents):
            made = replace(made, sides=())  # joined to another piece on the way, which alters that side
            made = replace(made, joining=sum(map(joins_loop, self.made, self.made[1:], self.made[2:])))
        if self.joined_loops:
            made = replace(made, joined_loops=self.joined_loops)
        petals = [number for (sort, *_), number in self.bunches.items() if sort == PETAL]
        bunches = [number for (sort, *_), number in self.bunches.items() if sort not in (PETAL, PARTED)]
        if not self.groups:
            parted = any(sort == PARTED for sort, *_ in self.bunches)
            alone = [sum(numbers) if len(numbers) == 1 else 0 for numbers in (bunches, petals)]
            made = replace(made, bunches=alone[0], petals=alone[1], parted=parted) if parted or any(alone) else made
        nodes = self.made
        if self.closing is not None:  # the next round begins in the space that the joining stitch closed
            index = next(i for i, node in enumerate(nodes) if node is self.closing)
            nodes = nodes[index:] + nodes[:index]
        uncounted = 0 if circular else self.uncounted
        if counted := count_spaces(self.made, self.rules.spaces):
            made = replace(made, counted=counted)
        fabric = Fabric(nodes, circular, uncounted=uncounted, picots=self.picots, hung=self.hung)
        self.markers.finish(self.made, fabric)
        made = replace(made, edge_loop=uncounted) if uncounted > _LONGEST_TURN else made
        return Worked(
            fabric,
            made,
            self.noted,
            self.choices,
            self.joined,
            self.turned,
            self.unsaid,
            self.carried,
            self.learned,
            left,
            self.used,
            [*cursor.nodes[cursor.at :], *self.beyond] if cursor.known and not circular else [],
            cursor.nodes if cursor.nodes and cursor.nodes[0].kind == "ch" else [],
        )

    def count_opening_group(self, circular: bool) -> None:
        """ "Ch 4, dc in same st, *V-st in next st…": the group that the beginning chain opens is a V-stitch too."""
        first = self.made[0]
        if not first.chain or first.special or not first.parents or not self.groups:
            return
        here = [node for node in self.made if node.parents and node.parents[0] is first.parents[0]]
        ahead = 0
        for index, node in enumerate(self.made):
            if node.kind != "space" and not (node.parents and node.parents[0] is first.parents[0]):
                break
            ahead = index + 1 if node.kind != "space" else ahead
        opening = self.made[:ahead]
        behind = len(self.made)
        while circular and behind > ahead and self.made[behind - 1] in here:
            behind -= 1
        opening = self.made[behind:] + opening
        if any(node.special for node in opening):
            return  # "(first shell made)" has counted it
        for name in list(self.groups):
            group = next((node.group for node in self.made if node.special == name and node.group), 0)
            like = [(node.kind, node.length) for node in self.made if node.group == group] if group else []
            if len(like) > 1 and like == [(node.kind, node.length) for node in opening]:
                self.groups[name] += 1
                for node in opening:
                    node.special, node.group = name, first.group
                return

    def begins_with_turn(self) -> bool:
        """Whether the round's first place holds three stitches or more, as a chain's end does that is gone round."""
        first = next((node for node in self.made if node.is_stitch), None)
        return first is not None and sum(node.parents[:1] == first.parents[:1] for node in self.made) > 2

    def left_over(self, cursor: Cursor) -> list[Node]:
        """Places of the row below, of the sorts worked into, that nothing was worked into and no words passed over."""
        if not cursor.known or self.left_rest:
            return []
        group = cursor.last.group if cursor.last is not None and into_part(self.last_work) else 0
        left = [
            node
            for node in cursor.nodes[cursor.at : len(cursor.nodes) - cursor.optional]
            if not (group and node.group == group)  # the rest of a V-stitch whose space was worked into
            if node.is_stitch
            and self.works_stitches
            and not self.blocks  # a block hides the stitches of the one below
            or node.kind == "space"
            and (node.length in self.space_lengths or self.is_part(node, self.space_owners))
        ]
        if self.other_side and left == cursor.nodes[-1:] and self.begins_with_turn():
            return []  # "3 sc in 2nd ch from hook" has gone round the chain's end, before its other side was worked
        if left and all(node.is_space for node in left):
            used = {id(place) for node in self.made for place in node.parents}
            passed = {n.length for n in cursor.nodes[: cursor.at] if n.is_space and id(n) not in used}
            left = [node for node in left if node.length not in passed]  # others like it were passed over before
        in_loop = cursor.last is not None and cursor.last.is_space and into_any_loop(self.last_work)
        if in_loop and left and left == cursor.nodes[-1:] and left[0].chain:
            return []  # "sc in last loop": the beginning chain is that loop, all of it
        limit = last_limit(self.last_work)
        if limit is not None and limit.kind is LimitKind.LAST and len(left) == self.amount(limit.number):
            return []  # "sc to last 4 sts, turn": those are left, as it says
        last = self.made[-1]
        if self.joined and last.kind == "space" and (last.length, len(left)) in self.passed_under:
            return []  # the round's last loop passes over as many as its others
        if self.joined and last.kind == "space" and passed_alike(self.made, cursor.nodes, left, last.length):
            return []
        begun = self.opens is not self.last_work or self.begin_node is not None
        if (
            self.joined
            and begun
            and isinstance(self.last_work, Repeat)
            and self.first_skipped(self.last_work) == len(left)
        ):
            return []  # "shell in first sc, [sk 2 sc, shell in next sc] 8 times, join": the last skip goes without saying
        return left
