"""Moves in the row without making stitches: skips, slip stitches, new yarn, turns."""

from __future__ import annotations

from dataclasses import replace
from itertools import groupby

from lint.amount import Amount
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.tree import PLAIN, Chain, Group, JoinYarn, OpenWork, Remark, Repeat, Skip, Step, Turn, Work
from lint.working.chains import skipped_standing
from lint.working.cursor import Cursor, PlacesUnknown, Trouble
from lint.working.fabric import Fabric, Node
from lint.working.kinds import family
from lint.working.rowstate import TooMany
from lint.working.slipbegins import begins_loops
from lint.working.spreading import Spreading


class Moving(Spreading):
    """Passing over places, and choosing where a row begins."""

    def slip(self, step: Work, asked: bool = False) -> None:
        """A slip stitch travels: at a round's start it moves the start, in a row it passes over stitches.

        `asked`: the row's count has been asked whether it stands among the stitches.
        """
        if self.pending_picot:  # the one that closes a picot
            self.pending_picot = False
            return
        cursor = self.cursor
        self.said_at.add(len(self.made))
        if not step.places or self.made or self.begun or self.repeating:
            for place in step.places or self.next_few(step):
                if place.which is Which.FROM_HOOK and (self.on_bare_chain() or self.outer is not None):
                    self.cursor.at = place.ordinals[0] - 1  # "ch 7, sl st in 2nd ch from hook, sc in next 5 ch"
                    self.cursor.next(place.targets[0], self.size)
                    self.slipped += 1
                    continue
                if place.which is Which.FROM_HOOK or place.targets[0].kind is TargetKind.TURNING_CHAIN:
                    continue
                if self.blocks and place.below:
                    place = replace(
                        place, below=False, row=0
                    )  # "sl st in ch-3 sp of block of Row 1": to which they join
                if place.which in (Which.SAME, Which.JUST_MADE, Which.ELSEWHERE) or place.below:
                    self.used_earlier[place.row] += self.amount(place.number)
                    self.hung += self.amount(place.number) if place.which is Which.ELSEWHERE else 0
                    # to another piece, "ch 1, sl st in corresponding sp of first square, ch 1": still one space
                    self.anchored = not self.to_other_piece(step)
                    continue
                none_left = cursor.known and not self.cursor.remaining(place.targets, self.size)
                if none_left and (self.is_round or self.just_used(place)):
                    continue  # a join said as a slip stitch; "rep from * across, ending with the sl st in the last sp"
                passed = len(self.find(place, ()))
                self.slipped += 0 if asked else passed
                self.anchored = True
            self.note(step.span)
            return
        if cursor.circular and cursor.at == 0 and cursor.known and cursor.nodes and cursor.nodes[0].kind != "ring":
            if step.places[0].which in (Which.NEXT, Which.EACH) and cursor.nodes[0].is_stitch and not self.moved:
                cursor.at = 1  # the join stands on the first stitch; "next" is the one after
        self.moved = True
        lone = step.places[0] if len(step.places) == 1 and step.places[0].which is not Which.EACH else None
        if lone is not None and (lone.between or self.begins_in_bare_gap(lone)):
            if self.round_of_stitches():  # where there is no chain and no group, "next sp" is between stitches
                self.begin_between_stitches()
                self.note(step.span)
                return
        step = replace(step, places=tuple(self.of_first_arch(place) for place in step.places))
        last: Node | None = None
        for place in step.places:
            for node in self.find(place, ()):
                last = node
        self.note(step.span)
        if last is None or not cursor.known:
            return
        index = next((i for i, node in enumerate(cursor.nodes) if node is last), None)
        if index is None and last.kind == "gap" and self.gap_at is not None and cursor.circular:
            self.begin_in_gap(last)
        if index is None:
            return
        if cursor.circular:
            before = cursor.optional
            cursor.rotate(index)
            cursor.optional += before
            self.slipped_into = last
        else:
            cursor.at = index + (0 if last.is_space and not last.counted else 1)
            if last.is_space and not last.counted:
                cursor.lay(cursor.nodes[index:])
                cursor.at = 0
            cursor.last = last

    def of_first_arch(self, place: Place) -> Place:
        """ "sl st up to 3rd ch of first ch-5": into the first loop, where the row below has no beginning chain like that."""
        length = place.targets[0].length
        chain = place.targets[0].kind is TargetKind.TURNING_CHAIN and bool(place.ordinals) and length is not None
        if not chain or any(node.chain for node in self.cursor.nodes):
            return place
        return replace(place, targets=(Target(TargetKind.SPACE, length=length),), ordinals=(), from_words="")

    def placed_slip(self, step: Work, coming: Step | None) -> Work:
        """The place of a slip stitch of which none is told: the next, where other work shows that it stands in the row.

        Before a skip, amid stitches, at either end of a repeat, at the beginning of a row to and fro, and at such a row's
        end where its places are left; in a round a slip stitch at the end joins.
        """
        last = self.made[-1] if self.made else None
        amid = last.is_stitch if last is not None else bool(self.repeating) or not self.is_round
        amid = amid and (_goes_on_in_stitches(coming) or bool(self.repeating) and coming is None)
        left = (Target(TargetKind.ANY_STITCH),)
        several = self.amount(step.number) > 1  # "sl st 6" at a round's end, where six are left: not its join
        ends = last is not None and last.is_stitch and not self.repeating and (several or not self.is_round)
        if ends and self.cursor.known and not isinstance(coming, (Work, Group, Chain, Skip)):
            there = len(self.cursor.remaining(left, self.size))
            amid = self.amount(step.number) in (there, there - self.cursor.optional)
        amid = amid or several and last is None and self.is_round  # "sl st 2, ch 3": like "sl st in next 2 sts"
        skips = self.repeating and isinstance(coming, Skip) and not coming.rest
        if step.places or not (amid or skips):
            return step
        return replace(step, places=(Place(step.span, Which.NEXT, (Target(TargetKind.ANY_STITCH),), step.number),))

    def next_few(self, step: Work) -> tuple[Place, ...]:
        """The places of "sl st 3", which names none; in a round a slip stitch without a place joins."""
        if not step.number_said or self.is_round:
            return ()
        return (Place(step.span, Which.NEXT, (Target(TargetKind.ANY_STITCH),), step.number),)

    def on_bare_chain(self) -> bool:
        """Whether the row begins on its own chain, nothing being made yet."""
        nodes = self.cursor.nodes
        return bool(nodes) and nodes[0].kind == "ch" and not self.made

    def slips_are_places(self, step: Work, following: tuple[Step, ...]) -> bool:
        """ "sc 6, sl st 4, sc 14" within a round: slip stitches to be worked into, like any other stitch."""
        if self.slips_along_chain(step) or self.slips_in_turn and self._stands_in_row(step):
            return True
        if self.is_round and not self.made and begins_loops(step, following):
            return True
        if self.slips_along(step):
            if not self.made and following and isinstance(following[0], Chain):
                return False  # "sl st in first 4 sts, ch 2, hdc in each st": the row begins behind them, at its chain
            # "sl st BLO in next 4 sts, sc BLO in next 20 sts": who only passes over stitches names no loop
            return step.loop is not None or self.slips_stand(step)
        inside = bool(self.made) and any(isinstance(s, Work) and s.stitch != "sl st" for s in following)
        return self.is_round and inside and step.number_said and not step.places

    def slips_along(self, step: Work) -> bool:
        """ "sl st in next 4 sts" in a row to and fro."""
        return not self.is_round and bool(step.places) and _along_stitches(step.places)

    def slips_stand(self, step: Work) -> bool:
        """Whether slip stitches of a row to and fro are stitches of it, as printed counts tell where they take them in."""
        number = step.places[0].number.at(self.size) if step.places[0].which is not Which.EACH else None
        alike = (number, bool(self.made))  # as many of them, at the same end of the row
        coming = self.cursor.nodes[self.cursor.at :][: number or None]
        upon = bool(coming) and all(node.kind == "sl st" for node in coming)  # row upon row of them
        habit = ("slips stand", "habit", *alike)
        return self.choices.pick(("slips stand", step.places[0].span.start, *alike), 2, int(upon), habit) == 1

    def _stands_in_row(self, step: Work) -> bool:
        """Whether a slip stitch of such a row is none that closes a round."""
        return _one_in_next(step) and not (self.is_round and step.places[0].which is Which.FIRST)

    def slips_along_chain(self, step: Work) -> bool:
        """ "Ch 7, sl st in 2nd ch from hook, sc in next 4 ch, sl st in last ch": a leaf's row on its own chain."""
        nodes = self.cursor.nodes
        if self.is_round or not nodes or nodes[0].kind != "ch" or len(step.places) != 1:
            return False
        which, chain = step.places[0].which, step.places[0].targets[0].kind in (TargetKind.CHAIN, TargetKind.ANY_STITCH)
        onward = bool(self.made) and which in (Which.NEXT, Which.LAST, Which.EACH)
        return chain and (onward or which is Which.FROM_HOOK and not self.made)

    def begin_between_stitches(self) -> None:
        """The round begins in a gap between two stitches: it has as many gaps as stitches, and any of them will do."""
        self.cursor.at, self.cursor.last = 1, Node("gap")
        self.begun_in_gap = self.moved = True

    def begin_in_gap(self, gap: Node) -> None:
        """The round begins in the gap between two groups: the one after it comes first, and the gap is taken."""
        cursor = self.cursor
        before = cursor.optional
        cursor.rotate(cursor.at)
        cursor.optional += before
        cursor.last, self.gap_at, self.begun_in_gap = gap, 0, True

    def skip(self, step: Skip) -> None:
        cursor = self.cursor
        self.said_at.add(len(self.made))
        if step.rest:
            self.leave(step)
            return
        at_start = self.at_start()
        if self.made and self.made[-1].kind == "space":
            self.passed_under.add((self.made[-1].length, sum(self.amount(place.number) for place in step.places)))
        foundation = bool(cursor.nodes) and cursor.nodes[0].kind == "ch" and not self.made
        for place in step.places:
            number = self.amount(place.number)
            if place.which is Which.FROM_HOOK:
                cursor.at = max(cursor.at, place.ordinals[0] - 1)  # "starting in 2nd ch from hook"
                continue
            if place.targets[0].kind is TargetKind.PLACE and place.targets[0].name == "join":
                continue  # the joining slip stitch is no place of the round
            if place.which is Which.SAME and self.begin_node is not None and self.at_start():
                continue  # "3 ch, miss same tr": the one that the chain stands on
            if place.which is Which.ELSEWHERE:
                if place.row and self.repeating and not self.works_behind:
                    raise PlacesUnknown(f"whether what comes behind it is worked into row {place.row} too is not said")
                if not self.made:
                    self.cursor = cursor = Cursor(Fabric.unknown(self.is_round))
                elif place.below:
                    self.skipped_below += number
                continue
            hung = at_start and cursor.known and cursor.hung and place.targets[0].name == "sl st"
            if hung and number in (1, cursor.hung):
                continue  # "skip the 2 sl sts": those that hang the row below on another piece
            whole = place.targets[0].kind is TargetKind.SPECIAL  # "sk first V-st": all of it
            if place.which is Which.FIRST and at_start and cursor.known and not foundation and not whole:
                cursor.at = max(cursor.at, number)
                cursor.last = cursor.nodes[min(number, len(cursor.nodes)) - 1] if cursor.nodes else None
                continue
            if place.targets[0].kind is TargetKind.TURNING_CHAIN and cursor.uncounted:
                continue
            if place.middle and self.before:
                self.check_middle(number)
            once = not self.is_round and not self.repeating
            if place.bare and at_start and self.begin_node is not None and cursor.at == 1 and once:
                # "ch 4, turn, sk 2 sc, dc in next sc": the stitch below the chain may be one of the two
                number -= self.choices.pick(("skip takes the first", step.span.start), 2, 1 if number == 1 else 0)
            self.open_ring(place)
            for _ in range(number):
                if not cursor.known:
                    break
                if self.skips_chains(place, number, step):
                    break
                self.skipped.append(self.pass_group(place))
                self.check_skip()
        if foundation and (step.counting is not None or cursor.at > 1):
            note = step.counting
            stitch = self.main
            if note is not None and note.counts:
                self.foundation_start(
                    note.stitch if note.stitch not in (None, "stitch") else stitch, note.space or 0, cursor.at
                )
            elif note is None:
                stands = skipped_standing(cursor.at, None, stitch, self.rules, self.choices)
                if not stands.said:
                    self.unsaid = (step.span, stands.stitch is not None)
                if stands.stitch is not None:
                    self.foundation_start(stands.stitch, stands.space, cursor.at)
            self.begun = True
        self.note(step.span)

    def check_middle(self, number: int) -> None:
        """ "Skip the centre 12 sts, join yarn": the work must have come to those that lie in the row's middle."""
        cursor = self.cursor
        passed = self.before + sum(node.is_stitch for node in cursor.nodes[: cursor.at])
        behind = sum(node.is_stitch for node in cursor.nodes[cursor.at :]) - number
        if cursor.known and abs(passed - behind) > 1:
            raise PlacesUnknown("the stitches named do not lie in the middle of the row that was divided")

    def skips_chains(self, place: Place, number: int, step: Skip) -> bool:
        """ "ch 1, sk 1, dc in next dc" on a mesh: the one skipped may be the chain that lies there."""
        cursor = self.cursor
        ahead = cursor.nodes[cursor.at] if cursor.at < cursor.end else None
        if (
            not place.bare
            or place.targets[0].kind is not TargetKind.ANY_STITCH
            or ahead is None
            or ahead.kind != "space"
        ):
            return False
        if ahead.length != number or self.choices.pick(("skip chains", step.span.start), 2, 0) == 0:
            return False
        cursor.at += 1
        return True

    def leave(self, step: Skip) -> None:
        """ "leaving last 3 sts unworked": so many must be left, where a number is said."""
        self.left_rest = True
        cursor = self.cursor
        for place in step.places if cursor.known else ():
            if place.targets[0].kind is TargetKind.TURNING_CHAIN and not cursor.has(place.targets[0], self.size):
                continue  # "leaving the turning chain unworked" that counts as no stitch
            more = len(cursor.remaining(place.targets, self.size)) - self.amount(place.number)
            if more:
                cursor.troubles.append(Trouble("left" if more > 0 else "run out", "st", abs(more)))
        self.note(step.span)

    def check_skip(self) -> None:
        if self.cursor.ran_out > 10_000:
            raise TooMany

    def join_yarn(self, step: JoinYarn) -> None:
        cursor = self.cursor
        place = step.places[0] if step.places else None
        if place is not None and cursor.nodes and cursor.nodes[0].kind == "free loop":
            place = None  # anywhere on the foundation's other side
        if place is not None and self.made and step.stitch is None:
            self.to_other_piece(step)  # "ch 1, join with sl st to ch-3 sp of last motif, ch 1"
        if place is not None and not self.made:
            if (
                place.which is Which.ELSEWHERE
                or place.skipped
                or place.targets[0].kind is TargetKind.PLACE
                and place.targets[0].name == "edge"
            ):
                self.cursor = Cursor(Fabric.unknown(self.is_round))
            elif place.between and cursor.known and cursor.circular and all(node.is_stitch for node in cursor.nodes):
                self.begin_between_stitches()
            elif cursor.known and cursor.nodes:
                self.start_at(place)
                self.moved = True
                self.note(step.span)
        if step.stitch is not None:
            self.begin()
            node = self.cursor.last or Node("unknown place")
            if self.cursor.at == 0:
                self.cursor.at = 1 if self.cursor.nodes and node is self.cursor.nodes[0] else 0
            self.put(step.stitch, node, 1)

    def work_on(self, step: OpenWork, following: tuple[Step, ...]) -> None:
        """ "Work even.": a stitch in each, where the row below is of one stitch; else the words give no count."""
        if step.side:
            self.work_side(step)
            return
        kinds = {family(node.kind) for node in self.cursor.nodes if node.kind != "ring"}
        if step.stitch is not None and "space" not in kinds and kinds:
            kinds = {step.stitch}
        there = sum(node.is_stitch for node in self.cursor.nodes[self.cursor.at :])
        if step.over is not None and step.over.at(self.size) != there:
            raise PlacesUnknown(f"which of the stitches “{step.words}” goes over is not known here")
        several = step.pattern and len(kinds) > 1 and all(node.is_stitch for node in self.cursor.nodes)
        if not step.plain or len(kinds) != 1 and not several or not self.cursor.known or "space" in kinds:
            raise PlacesUnknown(f"“{step.words}” does not say how many stitches that is")
        if several:
            for kind, run in groupby(family(node.kind) for node in self.cursor.nodes):
                number = Amount.of(len(list(run)))
                places = (Place(step.span, Which.NEXT, (Target(TargetKind.ANY_STITCH),), number),)
                self.work_stitches(Work(step.span, kind, places=places), ())
            return
        places = (Place(step.span, Which.EACH, (Target(TargetKind.ANY_STITCH),)),)
        self.work_stitches(Work(step.span, kinds.pop(), places=places), following)

    def work_side(self, step: OpenWork) -> None:
        """ "Dc across side" of a round with corners: in each stitch as far as the next of them; of row ends nobody can tell."""
        if not self.is_round or not self.cursor.circular or not self.corner_marks():
            raise PlacesUnknown(f"“{step.words}” does not say how many stitches that is")
        limit = Limit(LimitKind.BEFORE, target=Target(TargetKind.CORNER))
        places = (Place(step.span, Which.EACH, (Target(TargetKind.ANY_STITCH),), limit=limit),)
        self.work_stitches(Work(step.span, step.stitch or PLAIN, places=places), ())

    def turn(self, step: Turn) -> None:
        self.turned_at = len(self.made) if step.turned else self.turned_at
        self.turned = step.turned if self.turned is None or step.turned else self.turned


def _along_stitches(places: tuple[Place, ...]) -> bool:
    sorts, ways = (TargetKind.STITCH, TargetKind.ANY_STITCH), (Which.NEXT, Which.FIRST, Which.LAST, Which.EACH)
    return all(place.targets[0].kind in sorts and (place.which in ways or place.below) for place in places)


def slipped_up_to(step: Work, following: tuple[Step, ...]) -> Work:
    """ "Sl st in each st to center dc of first petal, ch 1, sc in same dc": the place that the run goes to is slipped into, too."""
    limit = step.places[-1].limit if step.places else None
    ahead = next((one for one in following if not isinstance(one, (Chain, Remark))), None)
    if limit is None or limit.kind is not LimitKind.BEFORE or limit.target is None or limit.short is not None:
        return step
    if not isinstance(ahead, (Work, Group)) or not ahead.places or ahead.places[0].which is not Which.SAME:
        return step
    span = step.places[-1].span
    owned = limit.target.kind in (TargetKind.SPECIAL, TargetKind.CORNER)
    if limit.middle and owned:
        last = Place(span, Which.NEXT, (Target(TargetKind.ANY_STITCH),), of=limit.target, middle=True)
    else:
        last = Place(span, Which.NEXT, (limit.target,), middle=limit.middle)
    return replace(step, places=(*step.places, last))


def _goes_on_in_stitches(coming: Step | None) -> bool:
    """Whether the clause behind a slip stitch goes into the next stitches: "5 sc, sl st, 6 sc", "sl st, 3 hdc in next"."""
    if not isinstance(coming, (Work, Group)) or isinstance(coming, Work) and coming.stitch in ("sl st", "picot"):
        return False
    sorts = (TargetKind.ANY_STITCH, TargetKind.STITCH)
    return all(place.which is Which.NEXT and place.targets[0].kind in sorts for place in coming.places)


def in_turn(step: Step) -> bool:
    """Whether a repeat works slip stitches and others by turns, each in one stitch: "*sl st in next st, hdc in next st*"."""
    if not isinstance(step, Repeat) or not all(isinstance(item, Work) and _one_in_next(item) for item in step.items):
        return False
    return len({item.stitch == "sl st" for item in step.items}) == 2


def _one_in_next(step: Work) -> bool:
    place = step.places[0] if len(step.places) == 1 else None
    plain = not step.together and step.special is None and step.number.lone == 1
    into = place is not None and place.targets[0].kind in (TargetKind.STITCH, TargetKind.ANY_STITCH, TargetKind.CHAIN)
    return plain and into and place.which in (Which.NEXT, Which.FIRST, Which.LAST) and place.of is None
