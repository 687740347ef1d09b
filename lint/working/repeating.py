"""Works repeats: a fixed number of passes, or as many as fit."""

from __future__ import annotations

from dataclasses import replace
from itertools import takewhile

from lint.amount import ONE, Amount
from lint.loops import is_loop
from lint.place import Limit, LimitKind, Target, TargetKind, Which
from lint.tree import Chain, Covers, Group, Repeat, Skip, Step, TimesKind, Work, walk
from lint.working.behindrepeats import (
    closes_last_side,
    into_space,
    moves_on,
    runs_on,
    said_again,
    to_a_sort,
    trails_off,
)
from lint.working.cursor import PlacesUnknown, Trouble
from lint.working.earlier import Behind, behind, passes
from lint.working.kinds import goes_by
from lint.working.moving import Moving
from lint.working.rowstate import Noted
from lint.working.underloops import fastens_loops, passed_alike, passed_before, takes_all_spaces

_ROOM = 12  # places: fewer may really be too few for one pass
_PASSES_TRIED = 3  # before a repeat is known to be one whose passes are all alike, or not
_FAR_TOO_OFTEN = 300  # passes beyond what fits: the number is a slip of the pen, and a count made of it tells nothing
_ALONG_EDGES = "how often the repeat is worked along the other edges of the piece is not said"
_INTO = (Work, Group, Skip)


class Repeating(Moving):
    """Working a passage again and again."""

    def to_the_letter(self, steps: tuple[Step, ...]) -> tuple[Step, ...]:
        """The steps with "2 sc, inc x 6" as two stitches and six increases, where it is not read as all of it six times."""
        if not any(isinstance(step, Repeat) and step.covers is Covers.RATHER_LAST for step in steps):
            return steps
        return tuple(own for step in steps for own in self._as_list(step))

    def _as_list(self, step: Step) -> tuple[Step, ...]:
        listed = isinstance(step, Repeat) and step.covers is Covers.RATHER_LAST and step.tail == 1
        if (
            not listed
            or not isinstance(step.items[-1], Work)
            or step.items[-1].number != ONE
            or step.times.number is None
        ):
            return (step,)
        last = step.items[-1]
        if last.places or self.choices.pick(("times over", step.span.start), 2, 1) == 0:
            return (step,)
        return (*step.items[:-1], replace(last, number=step.times.number, number_said=True, number_after=True))

    def work_repeat(self, step: Repeat, following: tuple[Step, ...]) -> None:
        if not step.items:
            raise PlacesUnknown("there are no words between the marks of the repeat")
        if step.covers is Covers.PERHAPS:
            if self.choices.pick(("lone star", step.span.start), 2, 0) == 0:
                self.run(step.items, following)
                return
        elif step.covers is not Covers.ALL:
            last = self.choices.pick(("times over", step.span.start), 2, int(step.covers is Covers.RATHER_LAST))
            if last == 1:
                once, again = step.items[: -step.tail], step.items[-step.tail :]
                self.run(once, (*again, *following))
                step = replace(step, items=again)
        self.works_stitches = self.works_stitches or fastens_loops(step)
        self.repeating += 1
        past = behind(step, self.size)
        if past is not None:
            step = self.worked_behind(step, past, following)
        if step.times.kind is TimesKind.FILL:
            self.repeat_to_fill(step, following)
        else:
            self.repeat_number(step, following)
        self.repeating -= 1

    def worked_behind(self, step: Repeat, past: Behind, following: tuple[Step, ...]) -> Repeat:
        """The repeat with the number of its passes, which the earlier round tells; the row below is left as it is."""
        self.works_behind = self.left_rest = True
        if step.times.kind is not TimesKind.FILL:
            return step
        loop_ends = self.used_earlier[past.row] and trails_off(step, following)  # "…, ending with ch 5, join"
        limit = step.times.limit
        if step.breaks_off and not loop_ends or limit is not None and limit.kind is not LimitKind.END:
            raise PlacesUnknown(f"how often the repeat runs over round {past.row} is not said")
        closes = any(is_loop(one) for one in following)
        ends = isinstance(step.items[-1], Chain) and bool(self.made) and self.made[-1].is_space
        closes = closes or ends  # "sc around first dc, ch 4, *sc around next dc, ch 4; rep from * around"
        number = passes(past, self.earlier.get(past.row), self.used_earlier[past.row], closes)
        return replace(step, times=replace(step.times, kind=TimesKind.IN_ALL, number=Amount.of(number), limit=None))

    def repeat_number(self, step: Repeat, following: tuple[Step, ...]) -> None:
        """A repeat that says how often; passes beyond what fits are a trouble."""
        passes = self.fixed_passes(step)
        self.took_last = False
        noted, ran_out, whole = len(self.noted), self.cursor.ran_out, passes
        number = 0
        while number < passes:
            last = number == passes - 1
            items = step.last_pass if last and step.last_pass is not None else step.items
            before = len(self.made), self.cursor.at
            mark = self.pass_mark(step) if number < _PASSES_TRIED and items is step.items else None
            self.run(items, following if last else (*step.items, *following))
            if self.cursor.ran_out > ran_out and whole == passes:
                whole = number
            self.check_size()
            if number - whole > _FAR_TOO_OFTEN:
                raise PlacesUnknown(f"the repeat is worked {passes} times, and the row below has places for {whole}")
            if (len(self.made), self.cursor.at) == before and number > 2:
                whole = passes
                break  # nothing is made and nothing used: more passes change nothing
            number += 1
            self.check_last(number < passes)
            if number == 1:
                number += self.plain_passes(step, passes - 2, len(self.cursor.nodes))
            number += self.like_passes(mark, passes - number - 1, len(self.cursor.nodes))
        if 1 <= whole < passes:  # some passes fit, and then the places run out
            wanted = next((n.trouble.wanted for n in self.noted[noted:] if n.trouble.kind == "run out"), "st")
            self.noted[noted:] = [n for n in self.noted[noted:] if n.trouble.kind != "run out"]
            self.noted.append(Noted(Trouble("too often", wanted, passes, str(whole)), step.times.span))

    def repeat_to_fill(self, step: Repeat, following: tuple[Step, ...]) -> None:
        """A repeat that runs as often as fits: it must come out whole."""
        self.resume()
        cursor = self.cursor
        if not cursor.known:
            raise PlacesUnknown
        first = next((place for one in walk(step.items) if isinstance(one, _INTO) for place in one.places), None)
        if first is not None:
            self.open_ring(first, around=True)
        old_stop = cursor.stop
        limit = step.times.limit
        if self.is_round and (limit is None or limit == Limit(LimitKind.END)) and closes_last_side(following):
            limit = Limit(LimitKind.SIDE) if self.corner_marks() else limit
        boundary = self.boundary(limit, following)
        cursor.stop = boundary
        passes, before_last, self.took_last = 0, None, False
        while cursor.at < boundary and self.something_left(step, boundary):
            state, gap = self.save(), self.gap_at
            mark = self.pass_mark(step) if passes < _PASSES_TRIED else None
            self.run(step.items, step.items)
            if not self.cursor.known:
                raise PlacesUnknown(_ALONG_EDGES)  # "*10 sc, 3 sc in corner; rep from * around": round a flat piece
            if self.ran_out_since(state) and self.skips_past(step, state, boundary, following):
                passes, before_last = passes + 1, state
                break
            stands = cursor.at == state[0][0] and self.gap_at == gap
            if stands and len(self.made) > state[6] and not self.ran_out_since(state):
                if passes and self.is_round and moves_on(step.items[-1]):  # the last petal: come round to the first
                    passes += step.last_pass is None
                    self.restore(state) if step.last_pass is not None else None
                    break
                raise PlacesUnknown("the repeat works into nothing of the row below, so that its end is not known")
            closed = not self.anchored and moves_on(step.items[-1]) and trails_off(step, following)
            if self.ran_out_since(state) or stands or closed:
                self.restore(state)
                break
            passes, before_last = passes + 1, state
            self.check_last(passes == 1)
            if passes == 1:
                passes += self.plain_passes(step, len(cursor.nodes), boundary)
            passes += self.like_passes(mark, len(cursor.nodes), boundary)
            self.check_size()
        if not passes and boundary - cursor.at > _ROOM:
            raise PlacesUnknown("the repeat does not fit even once, though there is room")
        lone = step.items[0] if len(step.items) == 1 or isinstance(step.items[-1], Chain) else None
        if passes and isinstance(lone, Work) and self.legs_apart(lone) and self.back_at_start(lone):
            self.run(step.items, following)
            passes += 1
        elif self.comes_back_to_start(step, passes):
            self.run(step.items[:-1], following)
            passes += 1
        if step.last_pass is not None:
            passes += self.altered_pass(step.last_pass, before_last, following)
        elif (step.breaks_off or trails_off(step, following)) and self.left_by(step, boundary):
            passes += self.cut_pass(step, boundary, following)
        elif step.breaks_off and passes:
            self.chains_before(step, following)
        elif (self.is_round or into_space(following)) and self.left_by(step, boundary):
            self.pass_over_last(step, boundary)
        left = self.left_by(step, boundary)
        none_left = limit is not None and limit.kind is LimitKind.END and limit.number.lone == 0
        # "…; rep from * to last 0 (0, 2) sts, sc to end": in some sizes nothing is left for it
        self.ending_done = (step.breaks_off or none_left) and passes > 0 and not left and runs_on(following)
        if left and boundary >= len(cursor.nodes) and to_a_sort(step) and runs_on(following):
            left = (
                0  # "*sc to marked sp, 3 sc in it; rep from * around, sc in each st to end": the last clause takes them
            )
        if left and self.is_round and following and isinstance(following[0], Chain):
            length = following[0].length.at(self.size)
            left = 0 if passed_alike(self.made, cursor.nodes, cursor.nodes[cursor.at : boundary], length) else left
        omitted = step.items[len(step.last_pass or step.items) :]
        if left and self.is_round and omitted and step.items[: -len(omitted)] == step.last_pass:
            over = cursor.nodes[cursor.at : boundary]
            left = 0 if passed_before(omitted[0], self.made, cursor.nodes, over) else left
        shrunk = self.called and any(node.kind != "ch" for node in cursor.nodes)  # a row called again, down to its ends
        if not passes and not left and not shrunk:
            raise PlacesUnknown("the repeat would not be worked even once")
        if passes == 1 and takes_all_spaces(step):
            raise PlacesUnknown("which of those spaces each pass takes is not said")
        if left:
            self.noted.append(Noted(Trouble("does not fit", _unit_of(step), left, str(passes)), step.span))
            cursor.at = max(cursor.at, boundary) if boundary < len(cursor.nodes) else cursor.at
        elif boundary < len(cursor.nodes) and cursor.at < boundary:
            cursor.at = boundary
        cursor.stop = old_stop

    def check_last(self, again: bool) -> None:
        """ "*…, sc in last dc; rep from * around": the row's last cannot be meant in every pass."""
        if again and self.took_last and self.turned_at < 0:
            raise PlacesUnknown("which of them is the last one in every pass is not said")

    def comes_back_to_start(self, step: Repeat, passes: int) -> bool:
        """ "*(ch 2, dc, ch 2, sl st) in same st, sl st in next st; rep around": the last slip stitch is back in the first."""
        last = step.items[-1]
        slips = isinstance(last, Work) and last.stitch == "sl st" and bool(last.places)
        if not (self.is_round and passes and slips and last.places[0].which is Which.NEXT):
            return False
        first = next((s for s in walk(step.items) if isinstance(s, (Work, Group)) and s.places), None)
        if first is None or first.places[0].which is not Which.SAME or self.cursor.at < self.cursor.end:
            return False
        ended = self.cursor.nodes[self.cursor.end - 1]  # "sl st in next dc and in next sp": the dc alone was left
        return len(last.places) == 1 or self.cursor.matches(ended, last.places[-1].targets[0], self.size)

    def skips_past(self, step: Repeat, state: tuple, boundary: int, following: tuple[Step, ...]) -> bool:
        """A last pass whose closing skip reaches into the shell or V-stitch at which the repeat ends."""
        if not isinstance(step.items[-1], Skip) or not into_space(following):
            return False
        self.restore(state)
        self.run(step.items[:-1], step.items)
        if self.ran_out_since(state) or not boundary < len(self.cursor.nodes):
            return False
        self.cursor.at = max(self.cursor.at, boundary)
        return True

    def altered_pass(self, items: tuple[Step, ...], before_last: tuple | None, following: tuple[Step, ...]) -> int:
        """The last pass, of other words than those before it, in what they have left; else in place of the last."""
        state = self.save()
        if self.something_left_at_all():
            self.run(items, following)
            if not self.ran_out_since(state):
                return 1
            self.restore(state)
        if before_last is not None:
            self.restore(before_last)
            self.run(items, following)
        return 0

    def cut_pass(self, step: Repeat, boundary: int, following: tuple[Step, ...]) -> int:
        """A last pass cut short by what is worked instead: as much of it as uses up what is left."""
        state = self.save()
        for length in range(len(step.items) - 1, 0, -1):
            cut = list(step.items[:length])
            again = next(
                (i for i in range(length - 1, -1, -1) if following and said_again(cut[i:], following[0])), None
            )
            # "ending with ch 4" says a part of the pass once more, or its last loop in another length
            less = cut[:again] + cut[again + 1 :] if again is not None else cut
            for items in [less] if again is None or is_loop(following[0]) else [cut, less]:
                self.run(tuple(items), following)
                if not self.ran_out_since(state) and not self.left_by(step, boundary):
                    return 1
                self.restore(state)
        return 0

    def chains_before(self, step: Repeat, following: tuple[Step, ...]) -> None:
        """ "*ch 5, sc in next loop; rep from * across, ending with sc in last loop": that sc has its ch 5 as well."""
        chains = tuple(takewhile(lambda item: isinstance(item, Chain), step.items))
        if chains and len(chains) + 1 == len(step.items) and following and said_again(step.items[-1:], following[0]):
            self.run(chains, following)

    def pass_over_last(self, step: Repeat, boundary: int) -> None:
        """ "*sk next sp, shell in next sp; rep from * around, join": the last skip, before the join, goes without saying."""
        skips = tuple(takewhile(lambda item: isinstance(item, Skip), step.items))
        state = self.save()
        self.run(skips, ())
        if not skips or self.ran_out_since(state) or self.left_by(step, boundary):
            self.restore(state)

    def something_left_at_all(self) -> bool:
        return self.cursor.at < self.cursor.end

    def something_left(self, step: Repeat, boundary: int) -> bool:
        nodes = self.cursor.nodes  # looked at one by one, for a copy of what is left takes as long as the row is wide
        at = range(self.cursor.at, min(boundary, len(nodes)))
        return any(nodes[index].is_stitch or nodes[index].kind == "space" for index in at)

    def left_by(self, step: Repeat, boundary: int) -> int:
        """Places of the sorts that the repeat works into, left between its last pass and its end."""
        cursor, at = self.cursor, self.cursor.at
        window = cursor.nodes[at : max(at, min(boundary, len(cursor.nodes) - cursor.optional))]
        stitches, chains, lengths, owners = False, False, set(), set()
        named: set[str | None] = set()  # None: any stitch
        for inner in walk(step.items):
            places = inner.places if isinstance(inner, (Work, Group, Skip)) else ()
            if isinstance(inner, Work) and inner.stitch in ("sl st", "picot"):
                continue
            if isinstance(inner, Work) and not inner.places and not isinstance(inner, Group):
                stitches = stitches or not any(isinstance(s, Group) and inner in s.items for s in walk(step.items))
                named.add(None)
            for place in places:
                for target in place.targets:
                    if target.kind is TargetKind.SPACE and (owner := self.named_owner(place)) is not None:
                        owners.add(owner)
                    elif target.kind is TargetKind.SPACE:
                        lengths.add(target.length.at(self.size) if target.length else None)
                    elif (
                        target.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH, TargetKind.CHAIN)
                        and place.which is not Which.SAME
                        and place.of is None
                    ):
                        stitches = True
                        named.add(target.name if target.kind is TargetKind.STITCH else None)
                        chains = chains or target.kind is TargetKind.CHAIN
        into_part = any(
            place.of is not None or place.middle
            for inner in walk(step.items)
            if isinstance(inner, (Work, Group))
            for place in inner.places
        )
        passed = any(noted.trouble.kind == "passed" for noted in self.noted)  # by each pass before, as by the last
        others_passed = (
            bool(lengths or owners) or passed and not into_part
        ) and None not in named  # "*shell in next ch-2 sp, sc in next sc"
        apart = any(target.apart for one in walk(step.items) if isinstance(one, _INTO) for target in _targets(one))
        found = 0
        group = self.cursor.last.group if into_part and self.cursor.last is not None else 0
        for node in window:
            if group and node.group == group:
                continue  # the rest of a shell that was worked into
            if apart and node.kind == "space" and id(node) in self.cursor.spaces.within:
                continue  # within a shell, where those between shells are worked into
            if node.kind == "space":
                found += (
                    chains
                    and not node.used
                    or self.is_part(node, owners)
                    or bool(lengths)
                    and (None in lengths or node.length in lengths)
                )
            elif node.is_stitch and not (others_passed and not any(goes_by(node.kind, name) for name in named)):
                found += stitches
        return found


def _targets(step: Work | Group | Skip) -> list[Target]:
    return [target for place in step.places for target in place.targets]


def _unit_of(step: Repeat) -> str:
    """What a repeat works into, in words: "ch-5 sp" where it is spaces alone, else "st"."""
    kinds = set()
    for inner in walk(step.items):
        for place in inner.places if isinstance(inner, (Work, Group)) else ():
            for target in place.targets:
                length = target.length.lone if target.length else None
                kinds.add((f"ch-{length} sp" if length else "sp") if target.kind is TargetKind.SPACE else "st")
    return kinds.pop() if len(kinds) == 1 else "place"
