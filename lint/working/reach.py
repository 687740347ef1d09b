"""How far a run goes: to a limit that is said, or up to the places that the rest of the row names."""

from __future__ import annotations

from dataclasses import replace
from itertools import takewhile

from lint.loops import is_loop
from lint.place import UNWORKED, Limit, LimitKind, Place, Target, TargetKind, Which, without_beginning
from lint.runs import stops_before
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    Group,
    Join,
    OtherSide,
    Remark,
    Repeat,
    Skip,
    Step,
    TimesKind,
    Work,
)
from lint.working.cursor import PlacesUnknown
from lint.working.fabric import Node
from lint.working.gaps import Gaps
from lint.working.parts import middle_of
from lint.working.starts import into_round_start

_ANY = Target(TargetKind.ANY_STITCH)


class Reach(Gaps):
    """Where "each … to end", "to last 2 sts", "rep from * to next corner" end."""

    took_last = False  # within a repeat, the last place of the whole row
    crossed = 0  # chains that lie among stitches told by their number alone, "dc in next 3 sts"

    def next_run(self, target: Target, number: int) -> list[Node]:
        """The next so many stitches; chains among them may be counted, too, by who tells no more than their number."""
        start = self.cursor.at
        found = self.cursor.run(target, number, self.size)
        if number == 1:
            return found
        inside = self.cursor.nodes[start : self.cursor.at]
        past = self.repeating and any(node.corner and node.is_space for node in inside)
        if past and self.choices.pick(("past corner", "side"), 2, 0) == 1:
            raise PlacesUnknown("the stitches named go past a corner")  # "*3 sc in corner, sc in next 4 dc", of three
        if target.kind is TargetKind.ANY_STITCH:
            self.crossed += sum(node.length for node in inside if node.kind == "space")
        return found

    def boundary(self, limit: Limit | None, following: tuple[Step, ...]) -> int:
        """Where a run ends, less the stitches of "to 1 st before ch-2 sp"."""
        if limit is None or limit.short is None or limit.target is None or limit.target.kind is TargetKind.MARKED:
            return self.whole_boundary(limit, following)
        end = self.whole_boundary(replace(limit, short=None), following)
        first = self.cursor.nodes[0] if self.cursor.circular and self.cursor.nodes else None
        begun_there = first is not None and first.is_space and self.cursor.matches(first, limit.target, self.size)
        at_end = end >= self.cursor.end and not begun_there  # the last side of a round goes to the place it began in
        if not self.cursor.known or at_end and limit.target.kind is TargetKind.SPACE:
            raise PlacesUnknown("the place that the run stops short of is not there")
        return self.cursor.back_from_end((_ANY,), self.amount(limit.short), self.size, end)

    def last_side(self, following: tuple[Step, ...]) -> int:
        """Where the last side of a shape begins: past its last corner, or before that one if the clauses behind name it."""
        corners = self.corner_marks()
        if not corners:
            raise PlacesUnknown("where the last side begins is not known here")
        named = [place for step in following if isinstance(step, (Work, Group)) for place in step.places]
        again = any(place.which is not Which.SAME and _names_corner(place) for place in named)
        return corners[-1] if again else corners[-1] + 1

    def half_of_row(self) -> int:
        """Where the first half of a row of stitches alone ends."""
        cursor = self.cursor
        half, odd = divmod(len(cursor.nodes), 2)
        if not cursor.known or odd or cursor.at >= half or not all(node.is_stitch for node in cursor.nodes):
            raise PlacesUnknown("where the middle of the row is, is not known here")
        return half

    def whole_boundary(self, limit: Limit | None, following: tuple[Step, ...]) -> int:
        """Where a run of "each" or a repeat ends: as said, or before the places that the next clauses name."""
        cursor = self.cursor
        if limit is not None and limit.kind is LimitKind.SIDE:
            return self.last_side(following)
        if limit is not None and limit.kind is LimitKind.SECTION:
            return self.section_end()
        if limit is not None and limit.kind is LimitKind.HALF:
            return self.half_of_row()
        if (
            limit is not None
            and limit.remain
            and self.decreases
            and not any(isinstance(s, MAKES_STITCHES) for s in following)
        ):
            raise PlacesUnknown("whether so many are left unworked, or are all that there then are, is not said")
        if limit is not None and limit.kind is LimitKind.END and limit.target is not None and self.flat_below:
            raise PlacesUnknown("how many places there are along the edge is not known here")
        if limit is not None and limit.kind is LimitKind.LAST and self.goes_through(limit, following):
            return cursor.end
        if limit is not None and limit.kind is LimitKind.LAST:
            self.took_last = self.took_last or self.repeating > 0
        if limit is not None and limit.kind is LimitKind.LAST and limit.target is not None:
            if limit.target.kind in (TargetKind.SPECIAL, TargetKind.CORNER):
                return self.last_groups(limit.target, self.amount(limit.number))
        if limit is not None and limit.kind is LimitKind.LAST:
            return self.before_last(limit.target or _ANY, self.amount(limit.number))
        if limit is not None and limit.target is not None and limit.target.kind is TargetKind.MARKED:
            return self.to_marker(limit)
        if limit is not None and limit.kind is LimitKind.BEFORE and limit.target is not None:
            if limit.middle and limit.target.kind in (TargetKind.ANY_STITCH, TargetKind.SPACE):
                return self.middle_of_row(limit.target, self.amount(limit.number))
            named = limit.target.kind is TargetKind.SPECIAL and (limit.target.name or "").lower() == "corner"
            if named and not any(node.special == limit.target.name for node in cursor.nodes):
                limit = replace(limit, target=Target(TargetKind.CORNER))  # a group of that name, and none in this row
            if limit.middle or limit.target.kind is TargetKind.CORNER:
                marks = self.corner_marks() if limit.target.kind is TargetKind.CORNER else []
                if marks and (limit.middle or cursor.nodes[marks[0]].kind == "space" or _into_corner(following)):
                    past = cursor.at + (0 if limit.middle else 1)
                    return next((index for index in marks if index >= past), cursor.end)
                if limit.middle and cursor.known and not cursor.has_groups(limit.target):
                    raise PlacesUnknown("the row below shows no such group")
                for run in cursor.groups(limit.target):
                    middle = middle_of(run, cursor)
                    if middle >= cursor.at and not (middle == cursor.at and not limit.middle):
                        into = limit.middle or cursor.nodes[middle].kind == "space" or _into_corner(following)
                        return middle if into else run[0]
                return cursor.end
            if limit.target.kind is TargetKind.TURNING_CHAIN:
                last = cursor.end - 1
                if last < 0 or not cursor.nodes[last].chain:
                    return cursor.end
                its_space = self.into_whole_chain(following) or _into_its_space(following)
                with_space = last and cursor.whole_chain(cursor.nodes[last - 1]) and its_space
                return last - 1 if with_space else last
            found = cursor.find(limit.target, self.size)
            if found is not None and found == cursor.at and cursor.nodes[found - 1 : found] == self.skipped[-1:] != []:
                found = cursor.find(limit.target, self.size, found + 1)  # "skip 20 dc, dc in each dc to next ch-1 sp"
            if found is None and limit.target.kind is TargetKind.SPACE and not cursor.has(limit.target, self.size):
                found = next((i for i in range(cursor.at, cursor.end) if cursor.nodes[i].kind == "space"), None)
            return cursor.end if found is None else found
        return self.reserve(following)

    def skip_to(self, step: Skip, steps: tuple[Step, ...], index: int, following: tuple[Step, ...]) -> None:
        """ "dc in each dc to next ch-2 sp, ch 4, skip to next ch-2 sp": to the one behind that which the run went up to.

        The next clause may work into it; a run of stitches begins behind it.
        """
        self.said_at.add(len(self.made))
        if step.to.limit is not None:
            return self.skip_sleeve()
        cursor, target = self.cursor, step.to.targets[0]
        marked = target.kind is TargetKind.MARKED
        if not cursor.known or target.kind is not TargetKind.SPACE and not marked:
            return
        ahead = self.next_mark(cursor.at) if marked else cursor.find(target, self.size)
        if ahead is None and not marked:
            return
        before = next((one for one in reversed(steps[:index]) if not isinstance(one, (Chain, Remark))), None)
        if ahead == cursor.at and stops_before(before, target):
            ahead = self.next_mark(ahead + 1) if marked else cursor.find(target, self.size, ahead + 1)
        if ahead is None:
            raise PlacesUnknown("the place to skip to is not there")
        rest = steps if index + 1 == len(steps) and self.repeating else (*steps[index + 1 :], *following)
        coming = next((one for one in rest if isinstance(one, MAKES_STITCHES)), None)
        run = isinstance(coming, Work) and bool(coming.places) and _over(coming.places[0]) == "stitches"
        ahead += int(run and not marked)
        self.skipped += cursor.nodes[cursor.at : ahead]
        cursor.at = ahead

    def section_end(self) -> int:
        """Where the front or the back of a yoke ends: at the next of its four corner spaces, or with the row."""
        corners = self.yoke_corners()
        return next((at for at in corners if at > self.cursor.at), self.cursor.end)

    def skip_sleeve(self) -> None:
        """From the space that a sleeve begins at, to that at its end."""
        cursor, corners = self.cursor, self.yoke_corners()
        last = cursor.at - 1 if cursor.last is not None and cursor.last.is_space else cursor.at
        begins = [at for at in corners[::2] if at in (cursor.at, last)]
        if not begins:
            raise PlacesUnknown("where the sleeve begins is not known here")
        end = corners[corners.index(begins[0]) + 1]
        self.skipped += cursor.nodes[cursor.at : end]
        cursor.at = end

    def yoke_corners(self) -> list[int]:
        """The four spaces that lie between the sections of a yoke; fronts, sleeves and back are not told without them."""
        cursor = self.cursor
        corners = [at for at, node in enumerate(cursor.nodes) if node.kind == "space"]
        if not cursor.known or len(corners) != 4:
            raise PlacesUnknown("where the sections of the yoke lie is not known here")
        return corners

    def run_end(self, run: Place, following: tuple[Step, ...]) -> int:
        """ "*sc in each dc across, 3 sc in next ch-2 sp; rep from * around": across one side, up to that space."""
        to_end = run.limit is None or run.limit.kind is LimitKind.END and run.limit.target is None
        side = self.side_end(run, following) if self.repeating and to_end else None
        side = self.chains_ahead(run, following) if side is None else side
        side = self.space_between(run, following) if side is None else side
        return self.boundary(run.limit, following) if side is None else side

    def space_between(self, run: Place, following: tuple[Step, ...]) -> int | None:
        """ "sc in each sc, 3 sc in ch-2 sp, sc in each sc": up to the space between two runs, where each space is named."""
        if run.limit is not None or not self.cursor.known or _over(run) != "stitches":
            return None
        ahead = [step for step in following if isinstance(step, (Work, Group, Skip, Repeat))]
        into = [step.places[0] if isinstance(step, (Work, Group, Skip)) and step.places else None for step in ahead]
        again = 0
        for place in into[1::2]:
            if place is None or place.which is not Which.EACH or _over(place) != "stitches":
                break
            again += 1
        named = 2 * again + int(
            _is_space(into[2 * again : 2 * again + 1])
        )  # "..., sc in each sc, 3 sc in ch-2 sp, join"
        rest = into[named:]
        if not again or None in rest or _is_space(rest):
            return None
        ends = {self.side_end(run, tuple(ahead[at:])) for at in range(0, named, 2)}
        spaces = sum(self.cursor.nodes[at].kind == "space" for at in range(self.cursor.at, self.cursor.end))
        return ends.pop() if len(ends) == 1 and spaces == (named + 1) // 2 else None

    def chains_ahead(self, run: Place, following: tuple[Step, ...]) -> int | None:
        """ "sc in each sc, sc in each ch, sc in each sc": a run over stitches ends at the chains that the next one goes into."""
        runs = [step for step in following if isinstance(step, (Work, Group, Skip, Repeat))][:2]
        places = [step.places[0] for step in runs if isinstance(step, Work) and step.places]
        over = [_over(place) for place in (run, *places)] if run.limit is None and self.cursor.known else []
        again = over[2:] == ["stitches"] or over[2:] == [] and places and places[0].which is Which.EACH
        if over[:2] != ["stitches", "chains"] or not again:
            return None
        nodes = self.cursor.nodes
        return next((at for at in range(self.cursor.at, self.cursor.end) if nodes[at].kind == "space"), None)

    def side_end(self, run: Place, following: tuple[Step, ...]) -> int | None:
        """The place of the next space that the next clause goes into, and not the run itself."""
        ahead = next((step for step in following if isinstance(step, (Work, Group, Skip, Repeat))), None)
        place = ahead.places[0] if isinstance(ahead, (Work, Group)) and ahead.places else None
        if place is None or place.which is not Which.NEXT or place.of is not None or place.below or place.skipped:
            return None
        space = place.targets[0]
        own = [target for target in run.targets if target.kind is TargetKind.SPACE]
        told = space.length is not None and all(target.length not in (None, space.length) for target in own)
        pointed = space.kind is TargetKind.SPACE and space.name is None and (not own or told)
        return self.cursor.find(space, self.size) if pointed else None

    def before_chain(self, following: tuple[Step, ...]) -> int | None:
        """ "dc in last dc and in top of t-ch": the last but the turning chain, which the next words name."""
        ahead = next((step for step in following if isinstance(step, (Work, Group, Skip, Repeat))), None)
        place = ahead.places[0] if isinstance(ahead, (Work, Group)) and ahead.places else None
        last, nodes = self.cursor.end - 1, self.cursor.nodes
        named = place is not None and place.targets[0].kind is TargetKind.TURNING_CHAIN
        return last if named and last > self.cursor.at and nodes[last].chain else None

    def before_last(self, target: Target, number: int) -> int:
        """ "to last 3 sts": before so many stitches, or places, where a house counts the spaces among them."""
        cursor = self.cursor
        index = cursor.back_from_end((target,), number, self.size)
        if target.kind is not TargetKind.ANY_STITCH:
            return index
        places = cursor.back_from_end((target, Target(TargetKind.SPACE)), number, self.size)
        if places == index:
            return index
        return places if self.choices.pick(("last sts", "with spaces"), 2, 0) == 1 else index

    def goes_through(self, limit: Limit, following: tuple[Step, ...]) -> bool:
        """ "rep from * to last loop, ch 5, join": where nothing more is worked, the last may be meant with the others."""
        works = any(isinstance(step, (Work, Group, Repeat, Skip)) for step in following)
        if works or limit.but or not self.is_round or self.hint is None and not _joins(following):
            return False
        return self.choices.pick(("to last",), 2, 0) == 1

    def into_whole_chain(self, following: tuple[Step, ...]) -> bool:
        """ "2 sc in tch": several stitches over the chain use its space and its stitch together."""
        ahead = next((step for step in following if isinstance(step, (Work, Group, Skip))), None)
        place = ahead.places[0] if isinstance(ahead, Work) and ahead.places else None
        bare = place is not None and place.targets[0].kind is TargetKind.TURNING_CHAIN and not place.ordinals
        return bare and not place.from_words and self.amount(ahead.number) > 1

    def reserve(self, following: tuple[Step, ...]) -> int:
        """The places that the rest of the row names are not taken by a run "to end"."""
        cursor = self.cursor
        index = cursor.end
        if self.outer is not None:  # of an arm's chain only those that go on along it
            following = tuple(takewhile(_along_chain, following))
        if any(isinstance(step, OtherSide) for step in following):  # what comes behind it has places of its own
            following = tuple(takewhile(lambda step: not isinstance(step, OtherSide), following))
        for step in reversed(following):
            if isinstance(step, Repeat) and step.times.kind is TimesKind.FILL:
                return cursor.end
            places = step.places if isinstance(step, (Work, Group, Skip)) else ()
            if isinstance(step, Work) and (
                step.stitch == "sl st" or self.on_no_stitch(step) or step is self.last_work and self.closes_later(step)
            ):
                continue
            if isinstance(step, Work) and not step.places and step.stitch != "picot":
                number = self.amount(step.number) * (step.together or (2 if step.stitch == "dec" else 1))
                index = self.back((_ANY,), number, index)
            for place in reversed(places):
                if place.which in (Which.NEXT, Which.LAST) and place.from_words != UNWORKED:  # those lie behind all
                    index = self.back(place.targets, self.amount(place.number), index)
                    index -= self.its_space_left(step, index)
                elif place.which is Which.EACH:
                    return cursor.end
                elif self.other_side and place.which is Which.SAME and place.from_words == "round's start":
                    index -= 1  # along the chain's other side: the one that the round began in comes last
            if isinstance(step, Repeat):
                return cursor.end if not _simple(step) else index
        return max(index, cursor.at)

    def its_space_left(self, step: Step, index: int) -> int:
        """ "1 dc in each dc and ch-1 sp, 2 dc in turning ch": whether the chain's own space is left for the two, 1 or 0."""
        spaced = index > self.cursor.at and self.into_whole_chain((step,))
        if not spaced or not self.cursor.whole_chain(self.cursor.nodes[index - 1]):
            return 0
        return 1 - self.choices.pick(("chain's space", step.span.start), 2, 0)

    def on_no_stitch(self, step: Work) -> bool:
        """Whether a stitch has its own base, as foundation stitches have and Tunisian yarn overs; or is a loop."""
        return step.stitch[:1] == "f" and step.stitch[1:] in self.rules.heights or is_loop(step)

    def closes_later(self, step: Work) -> bool:
        place = step.places[0] if step.places else None
        if place is None or not self.is_round:
            return False
        return place.targets[0].kind is TargetKind.TURNING_CHAIN or into_round_start(place, None)

    def as_made(self, targets: tuple[Target, ...]) -> tuple[Target, ...]:
        """What the row below has for a name: for "tch sp" without a space of its own the chain; for "beg cl" a cl."""
        target = targets[0]
        if target.kind is TargetKind.SPECIAL and target.name is not None:
            plain = without_beginning(target.name)
            return (
                targets
                if plain == target.name or self.cursor.has(target, self.size)
                else (replace(target, name=plain),)
            )
        if target == _LOOP and self.cursor.nodes and all(node.kind == "ch" for node in self.cursor.nodes):
            return (
                Target(TargetKind.CHAIN),
            )  # "2nd loop from the hook, and each loop": on a chain alone they are its own
        if target.kind is not TargetKind.SPACE or target.name is None or self.cursor.has(target, self.size):
            return targets
        return (Target(TargetKind.TURNING_CHAIN),)

    def back(self, targets: tuple[Target, ...], number: int, index: int) -> int:
        return self.cursor.back_from_end(self.as_made(targets), number, self.size, index)


_LOOP = Target(TargetKind.SPACE)


def _over(place: Place) -> str:
    """What a run goes over, place by place: stitches or chains; "" for all else."""
    if place.which not in (Which.EACH, Which.NEXT) or place.of is not None or len(place.targets) != 1:
        return ""
    kind = place.targets[0].kind
    stitches = kind in (TargetKind.STITCH, TargetKind.ANY_STITCH)
    return "stitches" if stitches else "chains" if kind is TargetKind.CHAIN else ""


def _is_space(places: list[Place | None]) -> bool:
    return any(place is not None and place.targets[0].kind is TargetKind.SPACE for place in places)


def _along_chain(step: Step) -> bool:
    places = getattr(step, "places", ())
    return bool(places) and all(place.targets[0].kind is TargetKind.CHAIN for place in places)


def _joins(following: tuple[Step, ...]) -> bool:
    return any(isinstance(step, Join) for step in following)


def _into_corner(following: tuple[Step, ...]) -> bool:
    """Whether the next clause goes into the corner's middle: "sc to corner, 3 sc in center sc of corner"."""
    step = next((step for step in following if isinstance(step, (Work, Group, Skip))), None)
    place = step.places[0] if step is not None and step.places else None
    owner = place and (place.of or place.targets[0])
    return place is not None and (place.middle or owner.kind is TargetKind.CORNER)


def _names_corner(place: Place) -> bool:
    kinds = (TargetKind.CORNER, TargetKind.SPACE)
    return place.middle or any(target.corner or target.kind in kinds for target in place.targets)


def _simple(step: Repeat) -> bool:
    return step.times.kind is not TimesKind.FILL


def _into_its_space(following: tuple[Step, ...]) -> bool:
    """Whether the next clauses go into the turning chain's own space, and then into its chain: "dc in ch-4 sp, dc in 3rd ch"."""
    ahead = [step for step in following if isinstance(step, (Work, Group)) and step.places][:2]
    if len(ahead) < 2:
        return False
    space, chain = ahead[0].places[0], ahead[1].places[0]
    return space.targets[0].kind is TargetKind.SPACE and chain.targets[0].kind is TargetKind.TURNING_CHAIN
