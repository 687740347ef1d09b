"""Chains: foundation, ring, beginning and turning chains, and the spaces between stitches."""

from __future__ import annotations

from lint.place import Place, Target, TargetKind, Which
from lint.reading.clauses.tunisian import TUNISIAN
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    Counting,
    Evenly,
    FastenOff,
    Group,
    Join,
    Loops,
    MakeRing,
    Remark,
    Repeat,
    Skip,
    Step,
    Turn,
    UseYarn,
    Work,
    walk,
)
from lint.working.chains import JoinHint, Standing, chain_before, skipped_standing, standing
from lint.working.clusters import first_cluster
from lint.working.cursor import Cursor, PlacesUnknown, Trouble
from lint.working.fabric import Chains, Fabric, Node
from lint.working.leads import begins_far, ends_in, leads_to_piece, one_in_first, skips_first
from lint.working.placing import Placing
from lint.working.rowstate import main_stitch
from lint.working.starts import into_round_start

_MOST_STANDING = 6  # chains that stand for a stitch; common practice, no source
_FAN = 3  # stitches that go round the end of a foundation chain


class Beginning(Placing):
    """What a chain is by where it stands: a start, a stitch, a space, or the next row's turning chain."""

    def begin(self) -> None:
        self.begun = True

    def make_ring(self, step: MakeRing) -> None:
        self.cursor = Cursor(Fabric.ring(self.amount(step.length) if step.length is not None else 0))
        self.from_ring = True
        self.is_round = self.is_round or self.cursor.circular

    def turn_round_chain(self, perhaps: bool) -> None:
        """The other side of the foundation chain: from the chain before the last back to the first one used."""
        cursor, nodes = self.cursor, self.cursor.nodes
        if not cursor.known:
            return  # along an edge already, and on along another; or of a chain between two legs
        if self.other_side and not cursor.at or nodes and nodes[0].kind == "free loop" and not self.made:
            return  # there already: "Rotate. Sc in next 6 ch on the opposite side"
        if perhaps and (self.blocks or not nodes or nodes[0].kind != "ch" or cursor.at < len(nodes)):
            return  # a block is turned to be joined to the row below
        if cursor.at < len(nodes):
            raise PlacesUnknown
        if not nodes or nodes[0].kind != "ch":  # of a piece worked before: its chain is not known here
            self.begin()
            self.cursor = Cursor(Fabric.unknown(self.is_round))
            return
        first = next((i for i, node in enumerate(nodes) if any(node in made.parents for made in self.made)), 1)
        if first >= len(nodes):
            raise PlacesUnknown  # a chain of one that nothing was worked into has no other side to tell
        again = self.choices.pick(("end chain", "both sides"), 2, 0)  # whether the last chain is worked from below, too
        self.cursor = Cursor(Fabric.foundation(len(nodes) - 1 - first + again))
        if sum(nodes[first] in made.parents for made in self.made) >= _FAN:
            self.cursor.optional = 1  # they have gone round the end already
        self.other_side = True

    def work_chain(self, step: Chain, following: tuple[Step, ...]) -> None:
        length = self.amount(step.length)
        if not length:
            return
        ahead = next((s for s in following if not isinstance(s, (Turn, Remark, Loops, UseYarn))), None)
        into_chain = hook_place(ahead)
        counts = step.counting is not None and step.counting.counts  # "ch 7 (counts as tr and ch 3)"
        if isinstance(ahead, Evenly) and not counts and self.hangs_free(ahead, length):
            return
        if into_chain is not None and self.begins_arm(length, ahead, following):
            return
        on_stitch = closes_on_stitch(ahead) and bool(self.made) and self.made[-1].is_stitch
        below = self.cursor.nodes[0] if self.cursor.known and self.cursor.nodes else None
        looped = into_chain is not None and into_chain.ordinals == (length,) and below is not None and below.is_stitch
        begun = self.begun or looped and not self.blocks  # a picot may open a row
        if (into_chain is not None or on_stitch) and isinstance(ahead, Work) and ahead.stitch == "sl st" and begun:
            self.picot(1, length)  # "ch 3, sl st in 3rd ch from hook"
            self.pending_picot = True
            return
        if into_chain is not None and self.made and self.is_round and isinstance(ahead, Work) and ahead.stitch == "sc":
            self.picot(1, length)
            self.pending_picot = True  # "ch 4, sc in 4th ch from hook": a picot, whose sc some count and most do not
            return
        if into_chain is not None and not self.made:
            chain = Cursor(Fabric.foundation(length))
            if self.cursor.nodes and self.blocks:
                self.outer = self.cursor
            elif self.cursor.nodes and self.cursor.known and self.cursor.nodes[0].kind not in ("ch", "ring"):
                chain.nodes = chain.nodes + self.cursor.nodes  # stitches added at the edge, then the row goes on
            self.cursor = chain
            self.chain_note = step.counting
            self.begun = True
            return
        said = self.rules.said_of(length)
        counts = (
            step.counting is not None or said is not None and said.counts or self.hint is not None and self.hint.counts
        )
        to_piece = not self.made and not counts and leads_to_piece(following)
        if to_piece and self.choices.pick(("chain to a piece", length), 2, 0) == 0:
            # "ch 3, 9 sc around the first leg": it lies between two pieces, and stitches go into it too
            self.begun = True
            if self.cursor.known and self.cursor.nodes and self.cursor.nodes[0].is_stitch:
                self.cursor = Cursor(Fabric.unknown(self.is_round))
            return
        said = step.counting is not None and step.counting.counts  # "ch 1, sl st in next 5 sts, ch 3 (counts as dc)"
        if (
            (not self.begun or said)
            and not self.made
            and (not self.repeating or step.counting is not None)  # what every pass begins with is a space
            and any(isinstance(s, MAKES_STITCHES) for s in following)
            and not (
                step.counting is None
                and (self.first_of_loops(length, following) or self.bridge(step, length, following))
            )
        ):
            self.beginning_chain(step, length, following)
            return
        if said and self.made and not self.filling and not self.is_round and all(node.is_stitch for node in self.made):
            if any(isinstance(s, MAKES_STITCHES) for s in following):  # "…. Ch 3 (counts as dc), dc in next 4 sts"
                raise PlacesUnknown("a chain that counts as a stitch stands within the row: is it the next one's?")
        quiet = all(isinstance(s, (Turn, Remark, FastenOff, UseYarn)) for s in following)
        turned_before = self.turned_at == len(self.made)  # "turn with 1 ch", "turn, ch 1" at a row's end
        if quiet and self.made and (turned_before or any(isinstance(s, Turn) and s.turned for s in following)):
            self.carried = step
            return
        if quiet and not self.made and self.from_ring and self.cursor.nodes:
            self.carried = step  # "Magic ring, ch 2." in a line of its own: the first round's chain
            return
        if quiet and not self.made and not self.begun:  # a foundation chain by itself
            self.cursor = Cursor(Fabric.foundation(length))
            self.foundation = length
            return
        if not self.begun and not self.made and self.loops_from_join():
            self.springs, self.cursor.at = True, 1
        self.add_space(length, None, step.corner)

    def hangs_free(self, step: Evenly, length: int) -> bool:
        """Whether chains before stitches along an edge hang from them as a tie or strap, "ch 40, 20 sc along the neck"."""
        free = step.edge and length > _MOST_STANDING and not self.made and not self.begun
        if free:
            self.begin()
            self.made.append(Chains("space", length))
        return free

    def loop_on_hook(self, step: Work) -> None:
        """A Tunisian row's first stitch is the loop that is on the hook: it stands on the first one below."""
        stitch = "tss" if step.stitch == "ftss" else step.stitch  # "*yo, Tss2tog": the eyelet comes after that loop
        if stitch not in TUNISIAN or self.made or self.is_round:
            return
        if self.choices.pick(("loop on hook", "first"), 2, 0) == 1:
            return
        self.begun = True
        nodes = self.cursor.nodes
        if nodes and nodes[0].kind == "ch":
            self.made.append(Node(stitch, (nodes[0],)))
            return
        self.stand_for(stitch, 1, nodes[0] if nodes else None)

    def first_of_loops(self, length: int, following: tuple[Step, ...]) -> bool:
        """ "Ch 5, *sk next dc, sl st in next dc, ch 5": in a round of loops and slip stitches the first chain is a loop."""
        stitch = main_stitch(following)
        if length < 3 or not self.is_round or stitch is not None and self.rules.height(stitch) > 1:
            return False
        return any(isinstance(s, Chain) and self.amount(s.length) == length for s in walk(following))

    def bridge(self, step: Chain, length: int, following: tuple[Step, ...]) -> bool:
        """ "R15: ch 3, sk 9 sts for the thumb, sc in each st", "sk 9 sts, ch 3": a spiral has no beginning chains.

        Nor has a joined round one that is as long as what it passes over, and too long to stand for a stitch.  Where the
        round is worked in taller stitches and its join is left unsaid, "ch 5, sk 2 dc, *dc in next dc" may be either.
        """
        if not self.is_round or length < 2 or self.rules.said_of(length) is not None:
            return False
        ahead = next((s for s in following if not isinstance(s, (Remark, Loops, UseYarn))), None)
        over = sum(self.amount(place.number) or 0 for place in ahead.places) if isinstance(ahead, Skip) else 0
        over = over or (self.cursor.at if self.cursor.known and not self.moved else 0)
        tall = self.rules.height(main_stitch(following) or self.main)
        as_long = over == length > tall + 1
        closed = any(isinstance(s, (Join, Turn)) for s in following) or self.last_joins(following)
        if over < 2 or closed:
            return over > 1 and as_long
        rather = tall == 1 or over > length or as_long
        return self.choices.pick(("bridge", step.span.start), 2, 0 if rather else 1) == 0

    @staticmethod
    def last_joins(following: tuple[Step, ...]) -> bool:
        """Whether a round ends in a slip stitch, that may close it."""
        last = next((step for step in reversed(following) if isinstance(step, (Work, Group, Repeat))), None)
        return isinstance(last, Work) and last.stitch == "sl st"

    def loops_from_join(self) -> bool:
        """Whether a round that begins with a loop is closed into the stitch that holds the join: that one is taken."""
        cursor, last = self.cursor, self.last_work
        if not (cursor.circular and cursor.known and cursor.at == 0 and cursor.nodes and cursor.nodes[0].is_stitch):
            return False
        if self.at_base or not isinstance(last, Work) or len(last.places) != 1:
            return self.at_base
        slipped = last.stitch == "sl st" and last.places[0].targets[0].kind is not TargetKind.PLACE
        return not slipped and into_round_start(
            last.places[0], None
        )  # "sl st in base of first ch-5" is no first stitch

    def beginning_chain(self, step: Chain, length: int, following: tuple[Step, ...]) -> None:
        self.begun = True
        if self.first_leg(step, length, following):
            return
        stitch = main_stitch(following) or self.main
        if step.counting is not None:
            self.learned.append((length, step.counting))
        elif (edge := self.edge_of_loops(length, stitch, following)) is not None:
            more = length - self.rules.height(edge)
            self.unsaid = None if more else (step.span, True)
            self.stand_for(edge, length, self.cursor.last)
            if more:
                self.add_space(more, None)
            return
        elif (edge := self.edge_of_row(length, stitch, following)) is not None:
            self.unsaid = (step.span, True)
            self.stand_for(edge, length, self.cursor.last)
            return
        hint = self.hint
        if hint is None and length > 1 and self.rules.height(stitch) > 1 and skips_first(following):
            hint = JoinHint(True)  # the stitch at its foot is passed over: the chain stands for it
        plain = (
            hint is None and length > 1 and self.rules.said_of(length) is None and length not in self.rules.said_before
        )
        if plain and one_in_first(following, self.is_round):
            hint = JoinHint(False)  # "ch 2, hdc in first st and in each st across": a stitch that is no increase
        stands = standing(length, step.counting, stitch, self.rules, self.choices, hint, step.span)
        if self.blocks and step.counting is None:
            self.add_space(length, None)  # the block's own chain, into which the next row works
            return
        self.left_unsaid(step, length, stands)
        place = self.cursor.last
        if stands.stitch is None:
            self.uncounted = length
            return
        self.stand_for(stands.stitch, length, place)
        if stands.space:
            self.add_space(stands.space, None)

    def left_unsaid(self, step: Chain, length: int, stands: Standing) -> None:
        """Notes a beginning chain of which nothing is said, neither here nor of one like it in a row before."""
        as_before = self.rules.said_not if stands.stitch is None else self.rules.said_before
        if not stands.said and length not in as_before:
            self.unsaid = (step.span, stands.stitch is not None)

    def edge_of_loops(self, length: int, stitch: str, following: tuple[Step, ...]) -> str | None:
        """ "Ch 5, turn, sc in next loop, …, ch 2, dc in last sc": the chain is the like of what the row ends in, a dc and ch 2.

        So is "ch 3, *sc in 3rd dc of next shell, ch 2, dc in next sc*", where nothing else stands on the first stitch.
        """
        far = begins_far(following)
        last = ends_in(following)
        first = next((step for step in walk(following) if isinstance(step, Work)), None)
        looped = first is not None and bool(first.places) and first.places[0].targets[0].kind is TargetKind.SPACE
        if self.is_round or not (looped or far) or not isinstance(last, Work) or self.rules.height(stitch) > 1:
            return None
        height = self.rules.height(last.stitch)
        before = [step for step in following if isinstance(step, (Chain, Work, Repeat, Group))]
        closed = chain_before(last, before)
        ends = self.amount(closed.length) if closed is not None else 0
        alike = height > 1 and (ends and 0 <= length - height - ends <= 1 or far and length == height)
        if not alike or self.choices.pick(("edge of loops", length), 2, 0) == 1:
            return None
        return last.stitch

    def edge_of_row(self, length: int, stitch: str, following: tuple[Step, ...]) -> str | None:
        """ "Ch 4, 3 dc in next sp, …, tr in top of ch-4": the chain is as tall as the tr that the row ends in, and its like."""
        last = next((step for step in reversed(list(walk(following))) if isinstance(step, Work)), None)
        if self.is_round or last is None or last.special is not None or self.rules.said_of(length) is not None:
            return None
        alike = self.rules.height(last.stitch) == length > self.rules.height(stitch) > 1
        if not alike or self.choices.pick(("edge of row", length), 2, 0) == 1:
            return None
        return last.stitch

    def first_leg(self, step: Chain, length: int, following: tuple[Step, ...]) -> bool:
        """Whether the chain is a part of the row's first cluster, and counts with it as one."""
        cluster = first_cluster(step, following)
        if cluster is None:
            return False
        if not cluster.said and self.choices.pick(("first leg", step.span.start), 2, 0 if self.is_round else 1) == 1:
            return False
        self.leads = cluster
        self.uncounted = length
        self.stand_on(self.cursor.last)
        return True

    def stand_on(self, place: Node | None) -> None:
        """A beginning chain takes the row's first place (or stands in the space where the round begins)."""
        cursor = self.cursor
        if place is None or place.kind == "ring" or cursor.at or not cursor.nodes:
            return
        if place is cursor.nodes[0] or place.kind == "ch":
            cursor.at = 1

    def stand_for(self, stitch: str, length: int, place: Node | None) -> None:
        """A chain that counts as a stitch stands on the first place (or in the space where the round begins)."""
        self.stand_on(place)
        node = Node(stitch, (place,) if place is not None else (), self.group_for(place), chain=length)
        self.made.append(node)
        self.begin_node = node

    def foundation_start(self, stitch: str, space: int, chains: int) -> None:
        self.group += 1
        node = Node(stitch, (), self.group, chain=chains)
        self.made.append(node)
        self.begin_node = node
        if space:
            self.add_space(space, None)

    def from_hook(self, place: Place, stitch: str, note: Counting | None, several: bool = False) -> list[Node]:
        """The chains counted from the hook; those before the first are skipped, and may stand for a stitch.

        `several`: more than one stitch goes into the place, so that chains too many are the foundation's, not a space.
        """
        cursor = self.cursor
        first = place.ordinals[0] - 1
        chains = any(node.kind == "ch" for node in cursor.nodes)
        on_stitches = cursor.known and not chains and any(node.is_stitch for node in cursor.nodes)
        if on_stitches and not (self.blocks or self.called):
            raise PlacesUnknown("no chain is told that the row could begin on")
        if cursor.known and not chains:
            cursor.troubles.append(Trouble("not there", f"{place.ordinals[0]}th ch from hook"))
            cursor.ran_out += 1
        if self.blocks:
            self.add_space(first, None)
        elif not self.made or self.outer is not None:
            alone = first + 1 == len(cursor.nodes)  # all goes into the last chain: none is skipped on the foundation
            said = note or self.chain_note
            stands = skipped_standing(first, said, stitch, self.rules, self.choices, alone, several)
            if not stands.said and first > 1:
                self.unsaid = self.unsaid or (place.span, stands.stitch is not None)
            if self.outer is not None:  # an arm's skipped chains stand for a stitch in every arm or in none
                self.made += [Node(stands.stitch, (), chain=first)] if stands.stitch is not None else []
            elif stands.stitch is not None:
                self.foundation_start(stands.stitch, stands.space, first)
            else:
                self.uncounted = first
        found = []
        for ordinal in place.ordinals:
            cursor.at = ordinal - 1
            found.append(cursor.next(Target(TargetKind.CHAIN), self.size))
        return found

    def group_for(self, place: Node | None) -> int:
        if (
            place is None
            or place is not self.group_place
            or self.group_run != len(self.made)
            and not (self.made and self.made[-1].group == self.group)
        ):
            self.group += 1
            self.group_place = place
        self.group_run = len(self.made) + 1
        return self.group

    def add_space(self, length: int, place: Node | None, corner: bool = False) -> None:
        """A run of chains; runs with nothing between are one space."""
        self.begin()
        anchored, self.anchored = self.anchored, False
        if self.made and self.made[-1].kind == "space" and not self.made[-1].closing and not anchored:
            self.made[-1].length += length
            self.made[-1].corner = self.made[-1].corner or corner
            return
        group = self.group_for(place) if place is not None and place.kind != "ring" else 0
        node = Chains("space", length, (place,) if place is not None else (), group)
        node.corner = corner
        self.made.append(node)
        if place is not None:
            self.group_run = len(self.made)


def closes_on_stitch(step: Step | None) -> bool:
    """ "ch 3, sl st in sc just made": a picot that stands on the last stitch."""
    if not isinstance(step, Work) or step.stitch != "sl st" or len(step.places) != 1:
        return False
    place = step.places[0]
    return place.which is Which.JUST_MADE and place.targets[0].kind in (TargetKind.STITCH, TargetKind.ANY_STITCH)


def hook_place(step: Step | None) -> Place | None:
    """The place of a step that is counted from the hook, if it is."""
    if isinstance(step, (Work, Group, Skip)) and step.places and step.places[0].which is Which.FROM_HOOK:
        return step.places[0]
    return None
