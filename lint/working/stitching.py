"""Works one clause: so many of a stitch, in the places that it names."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

from lint.place import Place, Target, TargetKind, Which
from lint.tree import Alongside, Shaping, Skip, Step, Work
from lint.working.cursor import Cursor, PlacesUnknown, Trouble
from lint.working.fabric import Fabric, Node
from lint.working.making import Making, beside_one
from lint.working.rowstate import NotDefined
from lint.working.shaping import shaped, shaping_after
from lint.working.starts import into_round_start

_ANY = Target(TargetKind.ANY_STITCH)
_STITCHES = (TargetKind.STITCH, TargetKind.ANY_STITCH)
_MOST_TOGETHER = 6  # places that one stitch closes without being called a cluster; common practice, no source


def beside_steps(following: tuple[Step, ...]) -> list[Alongside]:
    """What the next clauses add on the way: "working 3 sc in each corner"."""
    return [step for step in following[:4] if isinstance(step, Alongside)]


class Stitching(Making):
    """Working clauses."""

    def work_stitches(self, step: Work, following: tuple[Step, ...]) -> None:
        if step.stitch == "picot":
            self.picot(self.amount(step.number), self.picot_chains(step))
            return
        if self.pending_picot and step.places and step.places[0].which is Which.FROM_HOOK:
            self.pending_picot = False
            if self.choices.pick(("picot stitch",), 2, 0) == 1:
                self.made.append(Node(step.stitch))
            return
        special = step.special
        if step.undefined:
            raise NotDefined(step.stitch)
        if self.closes_round(step):
            return
        if self.on_no_stitch(step):
            self.begin()
            for _ in range(self.amount(step.number)):
                self.made.append(Node(step.stitch[1:]))
            self.check_size()
            return
        if special is not None and special.beginning and not self.begun:
            self.begun = True
            place = self.cursor.last or Node("unknown place")
            self.stand_for(special.plain_name, 1, place)
            return
        number = self.amount(step.number)
        if not number and step.number_said:
            return
        taken = special.uses if special is not None and not special.items else 1
        if taken != 1 and (step.places or not taken) and not any(place.shared for place in step.places):
            raise PlacesUnknown(f"how many stitches below one {step.stitch} takes is not clear")
        self.begin()
        if taken > 1 and not step.places:
            step = replace(step, together=taken)
        kind = self.kind_of(step)
        if not step.places:
            self.work_placeless(step, kind, number)
            self.note(step.span)
            return
        if self.legs_apart(step):
            found = self.back_at_start(step) or [n for place in step.places for n in self.find(place, following)]
            self.works_stitches = True
            self.used += len(found)
            self.put_together(kind, found)
            self.note(step.span)
            return
        if step is self.last_work:
            step = self.over_both(step, following)
        if step.post and self.skipped_below:  # "skip next 2 FPdc 2 rows below, FPtr around each of next 2": of that row
            there = (replace(place, below=place.which is Which.NEXT or place.below) for place in step.places)
            step = replace(step, places=tuple(there))
        for index, place in enumerate(step.places):
            rest = step.places[index + 1 :]
            ahead = (replace(step, places=rest), *following) if rest else following
            self.work_in(step, kind, number, place, ahead)
            if place.which is Which.ELSEWHERE and place.targets[0].name == "piece":
                self.cursor = Cursor(Fabric.unknown(self.is_round))  # "sc in the other leg, sc in next 9 sts": of that
        self.note(step.span)

    def over_both(self, step: Work, following: tuple[Step, ...]) -> Work:
        """ "hdc in each st and in the ch-2 sp, join": where all such lie among the stitches, one run over both to the end."""
        run, other = step.places if len(step.places) == 2 and not step.together else (None, None)
        cursor = self.cursor
        if (
            run is None
            or other is None
            or not cursor.known
            or run.which is not Which.EACH
            or other.which is not Which.NEXT
        ):
            return step
        one_run = run.limit is None and run.of is None and other.of is None and not (other.between or other.below)
        if not one_run or other.targets[0].kind not in (TargetKind.CHAIN, TargetKind.SPACE):
            return step
        ahead = cursor.nodes[cursor.at : cursor.end]
        there = [i for i, node in enumerate(ahead) if any(cursor.matches(node, t, self.size) for t in other.targets)]
        by_chain = other.targets[0].kind is TargetKind.CHAIN
        number = sum(ahead[i].length or 1 for i in there) if by_chain else len(there)
        more = bool(there) and any(node.is_stitch for node in ahead[there[-1] + 1 :])
        if not more or number != self.amount(other.number) or any(isinstance(ahead, Skip) for ahead in following):
            return step  # "…, turn, leaving rem sts unworked"
        if self.choices.pick(("over both", step.span.start), 2, 0) == 1:
            return step
        return replace(step, places=(replace(run, targets=run.targets + other.targets),))

    def legs_apart(self, step: Work) -> bool:
        """ "sc2tog over same st and next st": one stitch whose legs stand in places that are told one by one."""
        legs = [place.number.lone for place in step.places]
        if len(legs) < 2 or not step.together or self.amount(step.number) != 1 or None in legs:
            return False
        if sum(leg or 0 for leg in legs) != step.together or any(p.which is Which.EACH for p in step.places):
            return False
        over = any(place.shared for place in step.places)
        return over or self.choices.pick(("legs apart", step.span.start), 2, 0) == 0

    def back_at_start(self, step: Work) -> list[Node]:
        """The legs of a round's last "sc2tog over same st and next st": the next one is where the first leg stands."""
        cursor = self.cursor
        zigzag = step.places[0].which is Which.SAME and [place.which for place in step.places[1:]] == [Which.NEXT]
        ended = self.is_round and cursor.known and step.together == 2
        ended = ended and not any(node.is_stitch for node in cursor.nodes[cursor.at : cursor.end])
        if not (zigzag and ended and self.made and cursor.last is not None):
            return []
        first = self.made[0].parents
        back = any(node.parents and node.parents[-1] is cursor.nodes[0] for node in self.made[1:])
        if len(first) != 2 or first[0] is not cursor.nodes[0] or back:
            return []
        legs, cursor.at = [cursor.last, first[0]], cursor.end
        return legs

    def work_in(self, step: Work, kind: str, number: int, place: Place, following: tuple[Step, ...]) -> None:
        together = step.together or (2 if step.stitch == "dec" else 0)
        each = 2 * number if step.stitch == "inc" and not step.number_said else number
        if step.stitch == "inc" and step.number_said:
            each = 2
        if place.which is Which.FROM_HOOK or self.counts_from_hook(place):
            self.work_from_hook(step, kind, number, place)
            return
        if step.stitch in ("inc", "dec") and place.below and place.targets[0].kind is TargetKind.PLACE:
            raise PlacesUnknown("where in that row it is, is not said")  # "Rnds 4-6: sc in each st, dec 2 in Rnd 6"
        beside = beside_steps(following) if place.which is Which.EACH else []
        if beside:
            found, instead = self.each_and_beside(place, beside, following)
            if together:
                raise PlacesUnknown("which stitches go together beside the other places is not said")
        else:
            found, instead = self.find(place, following), {}
        self.remember(place, len(found), step.stitch)
        if together:
            if len(found) == 1 and place.which is not Which.EACH and not place.shared:
                self.put(kind, found[0], number)  # all legs in one place
                return
            several = step.number_said and number > 1 and place.which is not Which.EACH and self.cursor.known
            if several and len(found) not in (number * together, together if number == together else 0):
                raise PlacesUnknown("how many stitches go together, and how often, does not come out")
            of_some = place.which in (Which.NEXT, Which.LAST) and not place.each_of
            asked = self.amount(place.number) if of_some else 0
            if len(found) == asked > together and len(found) % together:
                raise PlacesUnknown(
                    "how many stitches go together, and how often, does not come out"
                )  # "dec in next 3 sts"
            for first in range(0, len(found) - together + 1, together):
                self.put_together(kind, found[first : first + together])
            if len(found) % together:
                self.cursor.ran_out += 1
                self.cursor.troubles.append(Trouble("run out", "st", together - len(found) % together))
                self.put_together(kind, found[-(len(found) % together) :])
            return
        if place.shared and len(found) > 1 and place.which is not Which.EACH:
            if self.one_each_over(step, number, len(found)):
                for node in found if step.stitch == "inc" else ():
                    self.put(kind, node, 2)  # "inc 4 times over next 4 sts"
                self.put_one_each(kind, found if step.stitch != "inc" else [])
            else:
                self.put_together(kind, found)
            return
        if place.which is Which.EACH and step.number_said and place.span.start == step.span.start:
            number, each = 1, self.of_whole_run(number, each, len(found))
        shaping = self.shaping or shaping_after(following, place)
        if shaping is not None and not instead and (place.which is Which.EACH or shaping.over is not None):
            self.work_shaped(kind, each, found, shaping)
            return
        if place.which is Which.EACH:
            self.work_each(step, kind, each, found, instead)
            return
        spread = (
            number > 1 and len(found) > 1 and step.number_said and not place.each_of and not beside_one(step, place)
        )
        if spread and len(place.ordinals) < 2:
            if number == len(found) and step.stitch != "inc":
                # "5 sc in next 5 sts" is one in each; a house may mean five in each, and its counts tell
                each = 1 if self.choices.pick(("n in next n", "habit"), 2, 0) == 0 else number
            elif number > 3 and place.targets[0].kind in _STITCHES and place.which is Which.NEXT:
                if self.choices.pick(("so many in each", step.span.start), 2, 0) == 1:  # "6 sc in next 4 sts"
                    raise PlacesUnknown("whether so many go into each of those places is not said")
            elif not number % len(found) and self.choices.pick(("shared out", place.span.start), 2, 0) == 1:
                each = number // len(found)  # "8 sc in next 4 sts": eight in each, or in all
        single = step.between is None and place.which is Which.NEXT
        if each == 1 and single and found and found[0] is not self.group_place:
            self.put_one_each(kind, found)
            return
        if step.between is not None and number > 1:
            for node in found:
                self.put_apart(kind, node, number, self.amount(step.between))
            return
        if step.between is not None:
            self.work_each(step, kind, each, found, {})
            return
        for node in found:
            self.put(kind, node, each)

    def of_whole_run(self, number: int, each: int, places: int) -> int:
        """How many go into each place of "12 sc around", which names no place: one, where the run has just so many."""
        if number == places:
            return each if each != number else 1
        if number > 3:
            raise PlacesUnknown("whether so many go into each place, or into all of them, is not said")
        return each

    def one_each_over(self, step: Work, number: int, places: int) -> bool:
        """ "2 sc over next 2 sts" is one in each; "sc over next 4 sts" may be that, or one stitch, as the counts tell.

        No stitch closes more than a few places without being told to.
        """
        if step.special is not None or step.closing is not None:
            return False
        if step.number_said and number > 1:
            if number != places:
                raise PlacesUnknown(f"whether {number} stitches go over {places} places together is not said")
            return True
        return places > _MOST_TOGETHER or self.choices.pick(("over", step.span.start), 2, 0, ("over", "habit")) == 1

    def counts_from_hook(self, place: Place) -> bool:
        """ "Row 1: Dc in 4th ch" on a foundation chain, of which nothing is worked yet."""
        chain = place.which is Which.NTH and place.of is None and place.targets[0].kind is TargetKind.CHAIN
        nodes = self.cursor.nodes
        return chain and len(place.ordinals) == 1 and bool(nodes) and nodes[0].kind == "ch" and not self.made

    def work_each(
        self, step: Work, kind: str, each: int, found: list[Node], instead: dict[int, tuple[Step, ...]]
    ) -> None:
        if step.between is not None:
            for index, node in enumerate(found):
                if index:
                    self.add_space(self.amount(step.between), None)
                self.put(kind, node, each)
            whole = self.is_round and step is self.last_work and len(found) > 1
            if whole and self.choices.pick(("between the last and the first", step.span.start), 2, 0) == 1:
                self.add_space(self.amount(step.between), None)  # round a ring, as a printed count may tell
            return
        if not instead and each == 1 and not step.special:
            self.put_one_each(kind, found)
            return
        for node in found:
            if id(node) in instead:
                self.fill(instead[id(node)], node, ())
            else:
                self.put(kind, node, each)

    def work_shaped(self, kind: str, each: int, found: list[Node], shaping: Shaping) -> None:
        """A run that gains or loses stitches evenly or at its ends."""
        self.shaping = None
        units = shaped(found, shaping, self.amount(shaping.number)) if each == 1 else None
        if units is None:
            raise PlacesUnknown  # too few places to shape, or several in each: how it is spread is not said
        for places, stitches in units:
            if len(places) > 1:
                self.put_together(kind, list(places))
            else:
                self.put(kind, places[0], stitches)

    def work_placeless(self, step: Work, kind: str, number: int) -> None:
        cursor = self.cursor
        if step is self.only_work and cursor.known and not step.number_said and len(cursor.nodes) > 1:
            # "SC (24)": one stitch named as the whole row goes into every place
            if self.choices.pick(("whole row", step.span.start), 2, 0) == 0:
                found = cursor.each((_ANY,), cursor.end, self.size)
                per = 2 if step.stitch == "inc" else 1
                if step.stitch != "dec" and not step.together:
                    for node in found:
                        self.put(kind, node, per)
                    self.works_stitches = True
                    return
        if cursor.nodes and cursor.nodes[0].kind == "ring" and len(cursor.nodes) == 1:
            self.put(kind, cursor.nodes[0], number * (2 if step.stitch == "inc" else 1))
            return
        together = step.together or (2 if step.stitch == "dec" else 0)
        self.works_stitches = True
        if together:
            self.check_size(number * together)
            for _ in range(number):
                self.put_together(kind, [cursor.next(_ANY, self.size) for _ in range(together)])
            return
        if step.stitch == "inc":
            for _ in range(number):
                self.put(kind, cursor.next(_ANY, self.size), 2)
            return
        spread = True
        if number > 1 and not step.number_after:
            # "2 sc, sc 3": where runs are written with the number behind, a number in front is all in one
            default = 1 if self.runs_behind else 0
            spread = self.choices.pick(("bare number", step.span.start), 2, default, ("bare number", "habit")) == 0
        if spread:
            for _ in range(number):
                self.check_size()
                self.put(kind, self.loop_ahead(step) or cursor.next(_ANY, self.size), 1)
        else:
            self.put(kind, cursor.next(_ANY, self.size), number)
            self.crowded_at = len(self.made)

    def loop_ahead(self, step: Work) -> Node | None:
        """ "*Mdc, sc in next 3 sts" of a mosaic: the taller stitch hangs before a loop of the row below, and takes its place."""
        cursor = self.cursor
        loop = cursor.nodes[cursor.at] if cursor.known and cursor.at < cursor.end else None
        taller = self.rules.height(step.stitch) > self.rules.height(self.main)
        if loop is None or not loop.is_space or not taller or self.choices.pick(("over the loop",), 2, 0) == 0:
            return None
        cursor.at, cursor.last = cursor.at + 1, loop
        return loop

    def remember(self, place: Place, number: int, stitch: str) -> None:
        for target in place.targets:
            if target.kind is TargetKind.SPACE:
                if (owner := self.named_owner(place)) is not None:
                    self.space_owners.add(owner)
                elif target.length is not None:
                    self.space_lengths.add(target.length.at(self.size) or 0)
                elif self.cursor.last is not None and self.cursor.last.special is not None:
                    self.space_owners.add(self.cursor.last.special)
                elif self.cursor.last is not None and self.cursor.last.kind == "space":
                    self.space_lengths.add(self.cursor.last.length)
            elif target.kind is TargetKind.CORNER and self.cursor.last is not None and not self.cursor.last.is_stitch:
                self.space_lengths.add(self.cursor.last.length)  # the stitches on the way there are passed over
            elif (
                target.kind not in (TargetKind.RING, TargetKind.TURNING_CHAIN, TargetKind.PLACE, TargetKind.SPECIAL)
                and place.which not in (Which.SAME, Which.ELSEWHERE, Which.JUST_MADE)
                and place.of is None
                and not place.between
                and not place.below
            ):
                self.works_stitches = True
        self.used += number

    def work_from_hook(self, step: Work, kind: str, number: int, place: Place) -> None:
        """ "dc in 4th ch from hook", "dc2tog in 4th and 5th ch from hook"."""
        cursor = self.cursor
        found = self.from_hook(place, kind, step.closing)
        self.works_stitches = True
        together = step.together or (2 if step.stitch == "dec" else 0)
        if together:
            while len(found) < together:
                found.append(cursor.next(Target(TargetKind.CHAIN), self.size))
            self.put_together(kind, found)
            return
        for node in found:
            self.put(kind, node, 2 if step.stitch == "inc" else number)
        if number > 1 and self.is_round and cursor.at >= len(cursor.nodes):
            self.from_ring = True

    def closes_round(self, step: Work) -> bool:
        """A joining stitch that closes the round as its last space ("ch 1, sc in top of beg ch-3")."""
        if step is not self.last_work or not self.is_round or len(step.places) != 1 or not self.made:
            return False
        place = step.places[0]
        target = place.targets[0]
        note = step.closing if step.closing is not None and step.closing.counts else None
        own_chain = target.kind is TargetKind.TURNING_CHAIN and self.begin_node is not None and self.cursor.circular
        own_first = self.made[-1].kind == "space" and into_round_start(place, None if self.springs else self.made[0])
        spaces = any(
            node.kind == "space" for node in (self.made if note is not None and note.space == 0 else self.made[-1:])
        )
        said_so = note is not None and note.stitch is None and spaces
        if not (own_chain or own_first or said_so):
            if note is not None and note.stitch is None and not spaces:
                raise PlacesUnknown("which space the joining stitch closes is not said")  # "join with dc" behind sc
            return False
        height = self.rules.height(step.stitch)
        said = note.space if note is not None else None
        if self.made[-1].kind == "space":
            self.made[-1].length = said or self.length_of_last_loop(said) or self.made[-1].length + height
        else:
            self.add_space(said or self.length_of_last_loop(said) or height, None)
        self.made[-1].closing = True
        self.closing = self.made[-1]
        self.joined = True
        return True

    def length_of_last_loop(self, said: int | None) -> int:
        """A stitch said to form "the last loop", of no length, makes one like the round's others."""
        others = Counter(node.length for node in self.made[:-1] if node.kind == "space")
        return others.most_common(1)[0][0] if said == 0 and others else 0
