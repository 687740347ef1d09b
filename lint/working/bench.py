"""Works one row or round, for one size, on the row below: the heart of the program.

Every stitch is made as a node that knows its place; counts are read off the nodes, never off the text.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace

from lint.amount import Amount
from lint.source import Span
from lint.tree import (
    Alongside,
    Chain,
    Counting,
    Either,
    Evenly,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    LastPlace,
    Limit,
    LimitKind,
    Loops,
    MakeRing,
    NoJoin,
    Passage,
    Place,
    Remark,
    Repeat,
    Skip,
    Special,
    Step,
    Target,
    TargetKind,
    TimesKind,
    Turn,
    UseYarn,
    Which,
    Work,
    walk,
)
from lint.working.chains import ChainRules, skipped_standing, standing
from lint.working.choices import Choices
from lint.working.cursor import Cursor, PlacesUnknown, Trouble, family
from lint.working.fabric import Fabric, Made, Node, count

_ANY = Target(TargetKind.ANY_STITCH)
_QUIET = (Turn, Remark, FastenOff, NoJoin, Loops, UseYarn, Join, LastPlace)
MOST_STITCHES = 400_000  # of one row: beyond this a repeat's number is taken for a slip of the pen


class TooMany(Exception):
    """A row that would make more stitches than any fabric holds."""


@dataclass
class Noted:
    """A trouble with the words it arose at."""

    trouble: Trouble
    span: Span


@dataclass
class Worked:
    """What came of working a row."""

    fabric: Fabric
    made: Made
    troubles: list[Noted]
    choices: Choices
    joined: bool = False
    turned: bool | None = None
    unsaid_chain: Span | None = None
    carried: Chain | None = None
    learned: list[tuple[int, Counting]] = field(default_factory=list)
    left: list[Node] = field(default_factory=list)
    used: int = 0


class Bench:
    """The state of the work within one row."""

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
        self.size = size
        self.is_round = is_round
        self.rules = rules
        self.choices = choices
        self.plain_stitch = plain_stitch
        self.blocks = blocks  # corner to corner: skipped chains are a space, not a stitch
        self.outer: Cursor | None = None  # the row below, while a chain made in this row is worked into
        self.made: list[Node] = []
        self.groups: Counter = Counter()
        self.picots = 0
        self.begun = False
        self.begin_node: Node | None = None
        self.uncounted = 0
        self.from_ring = any(node.kind == "ring" for node in fabric.nodes)
        self.group = 0
        self.group_place: Node | None = None
        self.group_run = 0
        self.closing: Node | None = None
        self.joined = False
        self.turned: bool | None = None
        self.left_rest = False
        self.unsaid: Span | None = None
        self.carried: Chain | None = None
        self.learned: list[tuple[int, Counting]] = []
        self.noted: list[Noted] = []
        self.hint: bool | None = None
        self.last_work: Step | None = None
        self.step_from = 0
        self.works_stitches = False
        self.space_lengths: set[int] = set()
        self.number_styles: set[str] = set()
        self.used = 0

    # the row ---------------------------------------------------------------------------------------

    def work(self, steps: tuple[Step, ...]) -> Worked:
        """Work a whole row.  Raises PlacesUnknown, TooMany."""
        self.hint = _join_hint(steps)
        self.last_work = next((s for s in reversed(steps) if isinstance(s, (Work, Group, Repeat, Passage, Evenly))), None)
        self.main = _main_stitch(steps) or self.plain_stitch
        self.mixed = any(isinstance(s, Work) and s.stitch in ("inc", "dec") or isinstance(s, Work) and s.number_after for s in walk(steps))
        self._run(steps, ())
        return self._finish()

    def _run(self, steps: tuple[Step, ...], following: tuple[Step, ...]) -> None:
        for index, step in enumerate(steps):
            self._step(step, steps, index, following)

    def _step(self, step: Step, steps: tuple[Step, ...], index: int, following: tuple[Step, ...]) -> None:
        if isinstance(step, Work):
            before = len(self.made)
            self._work(step, (*steps[index + 1 :], *following))
            self.step_from = before
        elif isinstance(step, Chain):
            self._chain(step, (*steps[index + 1 :], *following))
        elif isinstance(step, Group):
            before = len(self.made)
            self._group(step, (*steps[index + 1 :], *following))
            self.step_from = before
        elif isinstance(step, Repeat):
            self._repeat(step, (*steps[index + 1 :], *following))
        elif isinstance(step, Skip):
            self._skip(step)
        elif isinstance(step, Passage):
            self._run(step.items, (*steps[index + 1 :], *following))
        elif isinstance(step, Either):
            self._either(step, (*steps[index + 1 :], *following))
        elif isinstance(step, Evenly):
            self._begin()
            self.group += 1
            for _ in range(self._amount(step.number)):
                self._check_size()
                self.made.append(Node(step.stitch))
        elif isinstance(step, MakeRing):
            self._ring(step)
        elif isinstance(step, JoinYarn):
            self._join_yarn(step)
        elif isinstance(step, Join):
            self.joined = True
        elif isinstance(step, Turn):
            self._turn(step)
        elif isinstance(step, Remark):
            self._remark(step)

    def _check_size(self) -> None:
        if len(self.made) > MOST_STITCHES:
            raise TooMany

    def _amount(self, amount: Amount) -> int:
        value = amount.at(self.size)
        number = 0 if value is None else value
        if number > MOST_STITCHES:
            raise TooMany
        return number

    def _note(self, span: Span) -> None:
        """Give the troubles that the cursor met since last time the words at which they arose."""
        cursor = self.cursor
        for trouble in cursor.troubles:
            last = self.noted[-1] if self.noted else None
            if last and last.span == span and last.trouble.kind == trouble.kind and last.trouble.wanted == trouble.wanted:
                last.trouble.number += trouble.number
            else:
                self.noted.append(Noted(trouble, span))
        cursor.troubles.clear()

    # beginnings --------------------------------------------------------------------------------------

    def _begin(self) -> None:
        self.begun = True

    def _ring(self, step: MakeRing) -> None:
        self.cursor = Cursor(Fabric.ring(self._amount(step.length) if step.length is not None else 0))
        self.from_ring = True
        self.is_round = self.is_round or self.cursor.circular

    def _chain(self, step: Chain, following: tuple[Step, ...]) -> None:
        length = self._amount(step.length)
        if not length:
            return
        ahead = next((s for s in following if not isinstance(s, (Turn, Remark, Loops, UseYarn))), None)
        hook_place = _hook_place(ahead)
        if hook_place is not None and isinstance(ahead, Work) and ahead.stitch == "sl st" and self.begun:
            self.picots += 1  # "ch 3, sl st in 3rd ch from hook"
            self.pending_picot = True
            return
        if hook_place is not None and not self.made:
            chain = Cursor(Fabric.foundation(length))
            if self.cursor.nodes and self.blocks:
                self.outer = self.cursor
            self.cursor = chain
            self.begun = True
            return
        if not self.begun and not self.made and any(isinstance(s, (Work, Group, Repeat, Evenly, Passage)) for s in following):
            self._beginning_chain(step, length, following)
            return
        quiet = all(isinstance(s, (Turn, Remark, FastenOff, UseYarn)) for s in following)
        if quiet and any(isinstance(s, Turn) and s.turned for s in following) and self.made:
            self.carried = step
            return
        if quiet and not self.made and not self.begun:  # a foundation chain by itself
            self.cursor = Cursor(Fabric.foundation(length))
            self.foundation = length
            return
        self._space(length, None, step.corner)

    def _beginning_chain(self, step: Chain, length: int, following: tuple[Step, ...]) -> None:
        self.begun = True
        stitch = _main_stitch(following) or self.main
        if step.counting is not None and step.counting.throughout:
            self.learned.append((length, step.counting))
        stands = standing(length, step.counting, stitch, self.rules, self.choices, self.hint, step.span)
        if not stands.said:
            self.unsaid = step.span
        place = self.cursor.last
        if self.blocks and step.counting is None:
            self._space(length, None)
            return
        if stands.stitch is None:
            self.uncounted = length
            return
        self._counting_node(stands.stitch, length, place)
        if stands.space:
            self._space(stands.space, None)

    def _counting_node(self, stitch: str, length: int, place: Node | None) -> None:
        """A chain that counts as a stitch stands on the first place (or in the space where the round begins)."""
        cursor = self.cursor
        if place is not None and place.kind not in ("ring", "ch") and cursor.at == 0 and cursor.nodes and place is cursor.nodes[0]:
            cursor.at = 1
        elif place is not None and place.kind == "ch" and cursor.at == 0:
            cursor.at = 1
        node = Node(stitch, (place,) if place is not None else (), self._group_for(place), chain=length)
        self.made.append(node)
        self.begin_node = node

    def _group_for(self, place: Node | None) -> int:
        if place is None or place is not self.group_place or self.group_run != len(self.made) and not (self.made and self.made[-1].group == self.group):
            self.group += 1
            self.group_place = place
        self.group_run = len(self.made) + 1
        return self.group

    def _space(self, length: int, place: Node | None, corner: bool = False) -> None:
        """A run of chains; runs with nothing between are one space."""
        self._begin()
        if self.made and self.made[-1].kind == "space" and not self.made[-1].closing:
            self.made[-1].length += length
            self.made[-1].corner = self.made[-1].corner or corner
            return
        group = self._group_for(place) if place is not None else 0
        node = Node("space", (place,) if place is not None else (), group, length)
        node.corner = corner
        self.made.append(node)
        if place is not None:
            self.group_run = len(self.made)

    # stitches ------------------------------------------------------------------------------------------

    def _put(self, kind: str, place: Node, number: int, special: str | None = None) -> None:
        if place.kind == "ring":
            self.group += 1
            group = self.group
        else:
            if place is not self.group_place or (self.made and self.made[-1].group != self.group):
                self.group += 1
                self.group_place = place
            group = self.group
        made = self.made
        parents = (place,)
        for _ in range(number):
            node = Node(kind, parents, group)
            if special:
                node.special = special
            made.append(node)
        if len(made) > MOST_STITCHES:
            raise TooMany

    def _put_together(self, kind: str, places: list[Node]) -> None:
        self.group += 1
        self.group_place = None
        self.made.append(Node(kind, tuple(places), self.group))
        self._check_size()

    def _work(self, step: Work, following: tuple[Step, ...]) -> None:
        if getattr(self, "pending_picot", False) and step.stitch == "sl st":
            self.pending_picot = False
            return
        if step.stitch == "sl st":
            self._slip(step)
            return
        if step.stitch == "picot":
            self.picots += self._amount(step.number)
            return
        special = step.special
        if special is not None and special.items and not special.one_stitch:
            self._special(step, special, following)
            return
        if self._closes(step):
            return
        if step.stitch[:1] == "f" and step.stitch[1:] in self.rules.heights:
            self._begin()
            for _ in range(self._amount(step.number)):
                self.made.append(Node(step.stitch[1:]))
            self._check_size()
            return
        if special is not None and special.beginning and not self.begun:
            self.begun = True
            place = self.cursor.last or Node("unknown place")
            self._counting_node(special.name, 1, place)
            return
        number = self._amount(step.number)
        if not number and step.number_said:
            return
        self._begin()
        kind = self._kind(step)
        if not step.places:
            self._placeless(step, kind, number)
            self._note(step.span)
            return
        for place in step.places:
            self._into(step, kind, number, place, following)
        self._note(step.span)

    def _kind(self, step: Work) -> str:
        if step.stitch in ("inc", "dec"):
            return self.plain_stitch if self.main in ("inc", "dec") else self.main
        return step.stitch

    def _into(self, step: Work, kind: str, number: int, place: Place, following: tuple[Step, ...]) -> None:
        together = step.together or (2 if step.stitch == "dec" else 0)
        each = 2 * number if step.stitch == "inc" and not step.number_said else number
        if step.stitch == "inc" and step.number_said:
            each = 2
        if place.which is Which.FROM_HOOK:
            self._from_hook(step, kind, number, place)
            return
        if place.which is Which.EACH:
            beside = tuple(s.target for s in following[:4] if isinstance(s, Alongside))
            if beside:
                place = replace(place, targets=place.targets + beside)
        found = self._find(place, following)
        self._worked(place, len(found), step.stitch)
        if together:
            if len(found) == 1 and place.which is not Which.EACH and not place.shared:
                self._put(kind, found[0], number)  # all legs in one place
                return
            for first in range(0, len(found) - together + 1, together):
                self._put_together(kind, found[first : first + together])
            if len(found) % together:
                self.cursor.ran_out += 1
                self.cursor.troubles.append(Trouble("run out", "st", together - len(found) % together))
                self._put_together(kind, found[-(len(found) % together) :])
            return
        if place.shared and len(found) > 1 and place.which is not Which.EACH:
            self._put_together(kind, found)
            return
        if place.which is Which.EACH:
            self._each(step, kind, each, found, following)
            return
        if number > 1 and len(found) > 1 and step.number_said and not place.each_of:
            if number == len(found) and step.stitch != "inc":
                each = 1  # "5 sc in next 5 sts"
            elif step.stitch != "inc" and place.targets[0].kind is not TargetKind.SPACE:
                shared = self.choices.pick(("each or shared", step.span.start), 2, 0)
                if shared:
                    each = 0
                    self._put(kind, found[0], number)
        for node in found:
            self._put(kind, node, each)

    def _each(self, step: Work, kind: str, each: int, found: list[Node], following: tuple[Step, ...]) -> None:
        beside = [s for s in following[:4] if isinstance(s, Alongside)]
        if not beside:
            if each == 1 and not step.special:
                made, group = self.made, self.group
                for node in found:
                    group += 1
                    made.append(Node(kind, (node,), group))
                self.group = group
                self.group_place = None
                self._check_size()
                return
            for node in found:
                self._put(kind, node, each)
            return
        for node in found:
            override = next((s for s in beside if self.cursor.matches(node, s.target, self.size)), None)
            if override is None:
                self._put(kind, node, each)
            else:
                self._fill(override.items, node, ())

    def _placeless(self, step: Work, kind: str, number: int) -> None:
        cursor = self.cursor
        if cursor.nodes and cursor.nodes[0].kind == "ring" and len(cursor.nodes) == 1:
            self._put(kind, cursor.nodes[0], number * (2 if step.stitch == "inc" else 1))
            return
        together = step.together or (2 if step.stitch == "dec" else 0)
        self.works_stitches = True
        if together:
            for _ in range(number):
                self._put_together(kind, [cursor.next(_ANY, self.size) for _ in range(together)])
            return
        if step.stitch == "inc":
            for _ in range(number):
                self._put(kind, cursor.next(_ANY, self.size), 2)
            return
        spread = True
        if number > 1 and not step.number_after:
            spread = self.choices.pick(("bare number", step.span.start), 2, 0, ("bare number", "habit")) == 0
        if spread:
            for _ in range(number):
                self._check_size()
                self._put(kind, cursor.next(_ANY, self.size), 1)
        else:
            self._put(kind, cursor.next(_ANY, self.size), number)

    def _worked(self, place: Place, number: int, stitch: str) -> None:
        for target in place.targets:
            if target.kind is TargetKind.SPACE:
                if target.length is not None:
                    self.space_lengths.add(target.length.at(self.size) or 0)
                elif self.cursor.last is not None and self.cursor.last.kind == "space":
                    self.space_lengths.add(self.cursor.last.length)
            elif target.kind not in (TargetKind.RING, TargetKind.TURNING_CHAIN, TargetKind.PLACE, TargetKind.SPECIAL) and place.which not in (Which.SAME, Which.ELSEWHERE, Which.JUST_MADE) and place.of is None:
                self.works_stitches = True
        self.used += number

    def _from_hook(self, step: Work, kind: str, number: int, place: Place) -> None:
        """ "dc in 4th ch from hook": the chains before it are skipped, and may stand for a stitch."""
        cursor = self.cursor
        first = place.ordinals[0] - 1
        if cursor.known and not any(node.kind == "ch" for node in cursor.nodes):
            cursor.troubles.append(Trouble("not there", f"{place.ordinals[0]}th ch from hook"))
            self.cursor.ran_out += 1
        if self.blocks:
            self._space(first, None)
        else:
            stands = skipped_standing(first, step.closing, kind, self.rules, self.choices)
            if not stands.said and first > 1:
                self.unsaid = self.unsaid or place.span
            if stands.stitch is not None:
                self.group += 1
                node = Node(stands.stitch, (), self.group, chain=first)
                self.made.append(node)
                self.begin_node = node
                if stands.space:
                    self._space(stands.space, None)
            else:
                self.uncounted = first
        together = step.together or 0
        found: list[Node] = []
        for ordinal in place.ordinals:
            cursor.at = ordinal - 1
            found.append(cursor.next(Target(TargetKind.CHAIN), self.size))
        self.works_stitches = True
        if together:
            while len(found) < together:
                found.append(cursor.next(Target(TargetKind.CHAIN), self.size))
            self._put_together(kind, found)
        else:
            for node in found:
                self._put(kind, node, number)
            if number > 1 and self.is_round and cursor.at >= len(cursor.nodes):
                self.from_ring = True

    def _slip(self, step: Work) -> None:
        """A slip stitch travels: at a round's start it moves the start, in a row it passes over stitches."""
        cursor = self.cursor
        if not step.places or self.made or self.begun:
            for place in step.places:
                if place.which is Which.FROM_HOOK or place.targets[0].kind in (TargetKind.TURNING_CHAIN,):
                    continue
                if place.which in (Which.SAME, Which.JUST_MADE, Which.ELSEWHERE):
                    continue
                if self.is_round and not self.cursor.remaining(place.targets, self.size) and cursor.known:
                    continue  # a join said as a slip stitch
                self._find(place, ())
            self._note(step.span)
            return
        if cursor.circular and cursor.at == 0 and cursor.known and cursor.nodes and cursor.nodes[0].kind != "ring":
            if step.places[0].which in (Which.NEXT, Which.EACH) and cursor.nodes[0].is_stitch and not getattr(self, "moved", False):
                cursor.at = 1  # the join stands on the first stitch; "next" is the one after
        self.moved = True
        last: Node | None = None
        for place in step.places:
            for node in self._find(place, ()):
                last = node
        self._note(step.span)
        if last is None or not cursor.known:
            return
        index = next((i for i, node in enumerate(cursor.nodes) if node is last), None)
        if index is None:
            return
        if cursor.circular:
            before = cursor.optional
            cursor.rotate(index)
            cursor.optional += before
        else:
            cursor.at = index + (0 if last.kind == "space" else 1)
            if last.kind == "space":
                cursor.nodes, cursor.at = cursor.nodes[index:], 0
            cursor.last = last

    def _closes(self, step: Work) -> bool:
        """A joining stitch that closes the round as its last space ("ch 1, sc in top of beg ch-3")."""
        if step is not self.last_work or not self.is_round or len(step.places) != 1 or not self.made:
            return False
        place = step.places[0]
        target = place.targets[0]
        own_chain = target.kind is TargetKind.TURNING_CHAIN and self.begin_node is not None and self.cursor.circular
        own_first = place.which is Which.FIRST and target.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH) and self.made[0].is_stitch and self.made[-1].kind == "space"
        if not (own_chain or own_first):
            return False
        height = self.rules.height(step.stitch)
        said = step.closing.space if step.closing is not None and step.closing.counts else None
        if self.made[-1].kind == "space":
            self.made[-1].length = said or self.made[-1].length + height
        else:
            self._space(said or height, None)
        self.made[-1].closing = True
        self.closing = self.made[-1]
        self.joined = True
        return True

    def _special(self, step: Work, special: Special, following: tuple[Step, ...]) -> None:
        """A stitch the pattern defines by a run of others: a shell, a V-stitch, a filet block."""
        self._begin()
        number = self._amount(step.number)
        if special.places_itself and not step.places:
            for _ in range(number):
                self._run(special.items, ())
                self.groups[special.name] += 1
                self._check_size()
            return
        items = special.items
        places = step.places or (Place(step.span, Which.NEXT, (_ANY,), step.number if number > 1 else Amount.of(1)),)
        for place in places:
            for node in self._find(place, following):
                before = len(self.made)
                self._fill(items, node, ())
                for made in self.made[before:]:
                    made.special = special.name
                self.groups[special.name] += 1
            self._worked(place, 0, special.name)
        self._note(step.span)

    # groups ----------------------------------------------------------------------------------------------

    def _group(self, step: Group, following: tuple[Step, ...]) -> None:
        places = step.places
        for place in places:
            if place.which is Which.FROM_HOOK:
                self.cursor.at = place.ordinals[0] - 1
                found = [self.cursor.next(Target(TargetKind.CHAIN), self.size)]
            else:
                found = self._find(place, following)
            self._worked(place, len(found), "")
            beside = [s for s in following[:4] if isinstance(s, Alongside)] if place.which is Which.EACH else []
            for node in found:
                override = next((s for s in beside if self.cursor.matches(node, s.target, self.size)), None)
                self._fill(override.items if override else step.items, node, following)
        self._note(step.span)

    def _fill(self, items: tuple[Step, ...], place: Node, following: tuple[Step, ...]) -> None:
        """Work everything in a bracket into one place."""
        for index, item in enumerate(items):
            if isinstance(item, Work):
                self._work_into(item, place)
            elif isinstance(item, Chain):
                length = self._amount(item.length)
                after = items[index + 1] if index + 1 < len(items) else None
                if isinstance(after, Work) and after.stitch == "sl st":
                    self.picots += 1
                elif not self.begun and not self.made:
                    self.begun = True
                    stitch = _main_stitch(items[index + 1 :]) or self.main
                    stands = standing(length, item.counting, stitch, self.rules, self.choices, self.hint, item.span)
                    if not stands.said:
                        self.unsaid = item.span
                    if stands.stitch is None:
                        self.uncounted = length
                    else:
                        self._counting_node(stands.stitch, length, place)
                        if stands.space:
                            self._space(stands.space, place)
                else:
                    self._space(length, place, item.corner)
            elif isinstance(item, Repeat):
                for _ in range(self._fixed_passes(item)):
                    self._check_size()
                    self._fill(item.items, place, ())
            elif isinstance(item, Group):
                self._fill(item.items, place, ())
            elif isinstance(item, Remark):
                self._remark(item)

    def _work_into(self, item: Work, place: Node) -> None:
        number = self._amount(item.number)
        if item.stitch == "sl st":
            return
        if item.stitch == "picot":
            self.picots += number
            return
        special = item.special
        if special is not None and special.beginning and not self.begun:
            self.begun = True
            self._counting_node(special.name.removeprefix("beg ").removeprefix("beginning "), 1, place)
            return
        self._begin()
        if special is not None and special.items and not special.one_stitch:
            for _ in range(number):
                before = len(self.made)
                self._fill(special.items, place, ())
                for made in self.made[before:]:
                    made.special = special.name
                self.groups[special.name] += 1
            return
        kind = self._kind(item)
        if special is not None and special.beginning:
            kind = special.name.removeprefix("beg ")
        self._put(kind, place, number * (2 if item.stitch == "inc" else 1))

    def _remark(self, step: Remark) -> None:
        """ "(shell made)" names what was just worked."""
        if step.names and len(self.made) > self.step_from:
            for node in self.made[self.step_from :]:
                node.special = step.names
            if step.names == "picot":
                return
            self.groups[step.names] += 1

    # repeats -----------------------------------------------------------------------------------------------

    def _fixed_passes(self, step: Repeat) -> int:
        times = step.times
        if times.kind is TimesKind.FILL or times.number is None:
            return 1
        number = self._amount(times.number)
        if times.kind is TimesKind.MORE:
            return number + 1
        if times.kind is TimesKind.UNCLEAR:
            return number + self.choices.pick(("times", times.span.start), 2, 0, ("times", "habit"))
        return number

    def _repeat(self, step: Repeat, following: tuple[Step, ...]) -> None:
        times = step.times
        if times.kind is TimesKind.FILL:
            self._fill_repeat(step, following)
            return
        passes = self._fixed_passes(step)
        for number in range(passes):
            last = number == passes - 1
            items = step.items
            if last and step.stop is not None:
                items = items[: step.stop]
            if last and step.omit:
                items = _without(items, step.omit)
            before = len(self.made), self.cursor.at
            self._run(items, following if last else (*step.items, *following))
            self._check_size()
            if (len(self.made), self.cursor.at) == before and number > 2:
                break  # nothing is made and nothing used: more passes change nothing

    def _fill_repeat(self, step: Repeat, following: tuple[Step, ...]) -> None:
        """A repeat that runs as often as fits: it must come out whole."""
        self._resume()
        cursor = self.cursor
        if not cursor.known:
            raise PlacesUnknown
        old_stop = cursor.stop
        boundary = self._boundary(step.times.limit, following)
        cursor.stop = boundary
        passes = 0
        broken_off = False
        while True:
            if cursor.at >= boundary or not self._something_left(step, boundary):
                break
            state, made = self._save(), len(self.made)
            self._run(step.items, step.items)
            ran_out = self._ran_out_since(state)
            if ran_out or cursor.at == state[0][0]:
                whole_used = cursor.at
                self._restore(state, made)
                if step.stop is not None:
                    self._run(step.items[: step.stop], following)
                    if self._ran_out_since(state):
                        self._restore(state, made)
                        broken_off = True
                    else:
                        passes += 1
                else:
                    broken_off = True
                del whole_used
                break
            passes += 1
            self._check_size()
        left = self._left(step, boundary)
        if step.omit and passes:
            self.made = _drop_tail(self.made, step.omit, self.size)
        if left and (broken_off or passes == 0 or left):
            self.noted.append(Noted(Trouble("does not fit", _unit_of(step), left, str(passes)), step.span))
            cursor.at = max(cursor.at, boundary) if boundary < len(cursor.nodes) else cursor.at
        elif boundary < len(cursor.nodes) and cursor.at < boundary:
            cursor.at = boundary
        cursor.stop = old_stop

    def _something_left(self, step: Repeat, boundary: int) -> bool:
        return any(node.is_stitch or node.kind == "space" for node in self.cursor.nodes[self.cursor.at : boundary])

    def _left(self, step: Repeat, boundary: int) -> int:
        """Places of the sorts that the repeat works into, left between its last pass and its end."""
        window = self.cursor.nodes[self.cursor.at : max(self.cursor.at, min(boundary, len(self.cursor.nodes) - self.cursor.optional))]
        stitches, lengths = False, set()
        for inner in walk(step.items):
            places = inner.places if isinstance(inner, (Work, Group, Skip)) else ()
            if isinstance(inner, Work) and inner.stitch == "sl st":
                continue
            if isinstance(inner, Work) and not inner.places and not isinstance(inner, Group):
                stitches = stitches or not any(isinstance(s, Group) and inner in s.items for s in walk(step.items))
            for place in places:
                for target in place.targets:
                    if target.kind is TargetKind.SPACE:
                        lengths.add(target.length.at(self.size) if target.length else None)
                    elif target.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH, TargetKind.CHAIN) and place.which is not Which.SAME and place.of is None:
                        stitches = True
        found = 0
        for node in window:
            if node.kind == "space":
                found += bool(lengths) and (None in lengths or node.length in lengths)
            elif node.is_stitch:
                found += stitches
        return found

    def _save(self) -> tuple:
        return self.cursor.save(), len(self.noted), self.picots, Counter(self.groups), self.group, self.cursor.ran_out

    def _restore(self, state: tuple, made: int) -> None:
        self.cursor.restore(state[0])
        del self.noted[state[1] :]
        self.picots, self.groups, self.group = state[2], state[3], state[4]
        del self.made[made:]
        self.group_place = None

    def _ran_out_since(self, state: tuple) -> bool:
        return self.cursor.ran_out > state[5]

    # places --------------------------------------------------------------------------------------------------

    def _boundary(self, limit: Limit | None, following: tuple[Step, ...]) -> int:
        """Where a run of "each" or a repeat ends: as said, or before the places that the next clauses name."""
        cursor = self.cursor
        if limit is not None and limit.kind is LimitKind.LAST:
            return cursor.back_from_end((limit.target or _ANY,), self._amount(limit.number), self.size)
        if limit is not None and limit.kind is LimitKind.BEFORE and limit.target is not None:
            if limit.middle or limit.target.kind is TargetKind.CORNER:
                for run in cursor.groups(limit.target):
                    middle = _middle(run, cursor)
                    if middle >= cursor.at and not (middle == cursor.at and not limit.middle):
                        return middle if limit.middle or cursor.nodes[middle].kind == "space" else run[0]
                return cursor.end
            if limit.target.kind is TargetKind.TURNING_CHAIN:
                last = cursor.end - 1
                return last if last >= 0 and cursor.nodes[last].chain else cursor.end
            found = cursor.find(limit.target, self.size)
            if found is None and limit.target.kind is TargetKind.SPACE:
                found = next((i for i in range(cursor.at, cursor.end) if cursor.nodes[i].kind == "space"), None)
            return cursor.end if found is None else found
        return self._reserve(following)

    def _reserve(self, following: tuple[Step, ...]) -> int:
        """The places that the rest of the row names are not taken by a run "to end"."""
        cursor = self.cursor
        index = cursor.end
        for step in reversed(following):
            if isinstance(step, Repeat) and step.times.kind is TimesKind.FILL:
                return cursor.end
            places = step.places if isinstance(step, (Work, Group, Skip)) else ()
            if isinstance(step, Work) and (step.stitch == "sl st" or step is self.last_work and self._closes_later(step)):
                continue
            if isinstance(step, Work) and not step.places and step.stitch != "picot":
                number = self._amount(step.number) * (step.together or (2 if step.stitch == "dec" else 1))
                index = self._back((_ANY,), number, index)
            for place in reversed(places):
                if place.which in (Which.NEXT, Which.LAST):
                    index = self._back(place.targets, self._amount(place.number), index)
                elif place.which is Which.EACH:
                    return cursor.end
            if isinstance(step, Repeat):
                return cursor.end if not _simple(step) else index
        return max(index, cursor.at)

    def _closes_later(self, step: Work) -> bool:
        place = step.places[0] if step.places else None
        return bool(place and self.is_round and (place.targets[0].kind is TargetKind.TURNING_CHAIN or place.which is Which.FIRST))

    def _back(self, targets: tuple[Target, ...], number: int, index: int) -> int:
        return self.cursor.back_from_end(targets, number, self.size, index)

    def _find(self, place: Place, following: tuple[Step, ...]) -> list[Node]:
        """The places in the row below that a clause names, taken."""
        self._resume()
        cursor = self.cursor
        cursor.open_ring(place.targets)
        number = self._amount(place.number)
        which = place.which
        if which is Which.ELSEWHERE:
            return [Node("elsewhere") for _ in range(number)]
        if which is Which.EACH:
            if place.of is not None:
                return self._each_owned(place)
            boundary = self._boundary(place.limit, following)
            return cursor.each(place.targets, boundary, self.size)
        if which is Which.SAME or which is Which.JUST_MADE:
            node = cursor.last
            if node is None or node.kind == "ch" and not self.made:
                node = cursor.next(_ANY, self.size) if cursor.nodes or not cursor.known else Node("unknown place")
            elif cursor.at == 0 and cursor.nodes and node is cursor.nodes[0] and node.kind not in ("ring", "space"):
                cursor.at = 1
            elif cursor.at == 0 and cursor.nodes and node is cursor.nodes[0] and node.kind == "space":
                cursor.at = 1
            return [node]
        if which is Which.NTH or place.middle or (place.of is not None and which is Which.NEXT):
            return [self._owned(place)]
        if which is Which.FIRST:
            return self._first(place, number)
        if which is Which.LAST and cursor.known:
            index = cursor.back_from_end(place.targets, number, self.size)
            skipped = self._passed(index) if place.targets[0].kind is not TargetKind.SPACE else 0
            if skipped and self.made and not cursor.optional:
                cursor.troubles.append(Trouble("left", "st", skipped))
            cursor.at = max(cursor.at, index)
        if which is Which.ANY and cursor.known and cursor.nodes and not self.made:
            self._start_at(place)
            return [cursor.next(place.targets[0], self.size)]
        if place.targets[0].kind is TargetKind.TURNING_CHAIN:
            return self._turning_chain(place)
        if place.targets[0].kind in (TargetKind.CORNER, TargetKind.SPECIAL) and place.targets[0].name != "group" and cursor.known:
            return [self._owned(place) for _ in range(number)] if self._is_group(place.targets[0]) else [cursor.next(place.targets[0], self.size) for _ in range(number)]
        target = place.targets[0]
        return [cursor.next(target, self.size) for _ in range(number)]

    def _resume(self) -> None:
        """Go back to the row below when the chain made in this row is used up."""
        if self.outer is not None and self.cursor.at >= len(self.cursor.nodes):
            self.cursor, self.outer = self.outer, None

    def _is_group(self, target: Target) -> bool:
        cursor = self.cursor
        if target.kind is TargetKind.CORNER:
            return True
        return any(node.special == target.name for node in cursor.nodes[cursor.at :]) or not any(node.kind == target.name for node in cursor.nodes[cursor.at :])

    def _first(self, place: Place, number: int) -> list[Node]:
        """ "first": the row's first place at its start; the next one inside a repeat; the start again at a round's end."""
        cursor = self.cursor
        target = place.targets[0]
        nothing_yet = not self.made or (len(self.made) <= 2 and self.begin_node is not None and self.made[0] is self.begin_node)
        if not cursor.known:
            return [cursor.next(target, self.size) for _ in range(number)]
        if nothing_yet and self.begin_node is not None and number == 1 and cursor.nodes and cursor.at <= 1:
            node = cursor.nodes[0]
            if self.cursor.matches(node, target, self.size) or node.chain:
                cursor.last = node
                cursor.at = max(cursor.at, 1)
                return [node]
        left = cursor.remaining(place.targets, self.size)
        if self.made and not left and cursor.nodes and cursor.circular:
            node = cursor.nodes[0]
            if cursor.matches(node, target, self.size, strict=False):
                cursor.last = node
                return [node]
        return [cursor.next(target, self.size) for _ in range(number)]

    def _turning_chain(self, place: Place) -> list[Node]:
        """ "top of turning ch": the last place of the row, where the row below began."""
        cursor = self.cursor
        if not cursor.known:
            return [Node("unknown place")]
        for index in range(cursor.at, cursor.end):
            if cursor.nodes[index].chain:
                skipped = self._passed(index)
                if skipped:
                    cursor.troubles.append(Trouble("left", "st", skipped))
                cursor.at = index + 1
                cursor.last = cursor.nodes[index]
                return [cursor.nodes[index]]
        if cursor.uncounted or cursor.at < cursor.end:
            if cursor.at < cursor.end and not cursor.uncounted:
                return [cursor.next(_ANY, self.size)]
            cursor.uncounted = 0
            cursor.last = Node("turning chain")
            cursor.troubles.append(Trouble("uncounted chain", "turning chain"))
            return [cursor.last]
        return [cursor.next(_ANY, self.size)]

    def _passed(self, index: int) -> int:
        """Stitches between here and `index`, the rest of a group whose space or middle was worked into apart."""
        cursor = self.cursor
        if cursor.last is None or cursor.last.kind == "space":
            return 0
        group = cursor.last.group
        return sum(1 for node in cursor.nodes[cursor.at : index] if node.is_stitch and not (group and node.group == group))

    def _owned(self, place: Place) -> Node:
        """ "3rd dc of next shell", "ch-1 sp of next V-st", "center sc of next corner", "next corner"."""
        cursor = self.cursor
        target = place.targets[0]
        owner = place.of or (target if target.kind in (TargetKind.CORNER, TargetKind.SPECIAL) else None)
        if not cursor.known:
            return cursor.next(target, self.size)
        if owner is not None and owner.kind is TargetKind.TURNING_CHAIN or owner is not None and owner.kind is TargetKind.CHAIN:
            return cursor.next(target, self.size)
        runs = cursor.groups(owner)
        for run in runs:
            wanted = self._part_of(run, place, target, owner)
            if wanted is not None and wanted >= cursor.at:
                cursor.at = wanted + 1
                cursor.last = cursor.nodes[wanted]
                return cursor.last
        if owner is None or target.kind is TargetKind.SPACE or not runs:
            if place.ordinals and owner is None:
                for _ in range(place.ordinals[0] - 1):
                    cursor.next(target, self.size)
            return cursor.next(target, self.size)
        cursor.troubles.append(Trouble("run out", owner.name or "corner"))
        cursor.ran_out += 1
        cursor.last = Node("missing")
        return cursor.last

    def _part_of(self, run: list[int], place: Place, target: Target, owner: Target | None) -> int | None:
        nodes = self.cursor.nodes
        if place.ordinals and owner is not None:
            stitches = [i for i in run if nodes[i].is_stitch]
            return stitches[place.ordinals[0] - 1] if len(stitches) >= place.ordinals[0] else None
        if target.kind is TargetKind.SPACE:
            return next((i for i in run if nodes[i].kind == "space"), None)
        return _middle(run, self.cursor)

    def _each_owned(self, place: Place) -> list[Node]:
        cursor = self.cursor
        if not cursor.known:
            raise PlacesUnknown
        found = []
        for run in cursor.groups(place.of):
            index = self._part_of(run, place, place.targets[0], place.of)
            if index is not None and index >= cursor.at:
                found.append(cursor.nodes[index])
                cursor.last = cursor.nodes[index]
                cursor.at = index + 1
        return found

    # skips, joins, turns ---------------------------------------------------------------------------------------

    def _skip(self, step: Skip) -> None:
        cursor = self.cursor
        if step.rest:
            self.left_rest = True
            return
        at_start = not self.made or (self.begin_node is not None and len(self.made) == 1)
        foundation = bool(cursor.nodes) and cursor.nodes[0].kind == "ch" and not self.made
        for place in step.places:
            number = self._amount(place.number)
            if place.which is Which.ELSEWHERE:
                if not self.made:
                    self.cursor = cursor = Cursor(Fabric.unknown(self.is_round))
                continue
            if place.which is Which.FIRST and at_start and cursor.known and not foundation:
                cursor.at = max(cursor.at, number)
                cursor.last = cursor.nodes[min(number, len(cursor.nodes)) - 1] if cursor.nodes else None
                continue
            if place.targets[0].kind is TargetKind.TURNING_CHAIN and cursor.uncounted:
                continue
            for _ in range(number):
                if not cursor.known:
                    break
                cursor.next(place.targets[0], self.size)
                self._check_skip()
        if foundation and (step.counting is not None or cursor.at > 1):
            note = step.counting
            stitch = self.main
            if note is not None and note.counts:
                self._foundation_start(note.stitch if note.stitch not in (None, "stitch") else stitch, note.space or 0, cursor.at)
            elif note is None:
                stands = skipped_standing(cursor.at, None, stitch, self.rules, self.choices)
                if not stands.said:
                    self.unsaid = step.span
                if stands.stitch is not None:
                    self._foundation_start(stands.stitch, stands.space, cursor.at)
            self.begun = True
        self._note(step.span)

    def _check_skip(self) -> None:
        if self.cursor.ran_out > 10_000:
            raise TooMany

    def _foundation_start(self, stitch: str, space: int, chains: int) -> None:
        self.group += 1
        node = Node(stitch, (), self.group, chain=chains)
        self.made.append(node)
        self.begin_node = node
        if space:
            self._space(space, None)

    def _join_yarn(self, step: JoinYarn) -> None:
        cursor = self.cursor
        place = step.places[0] if step.places else None
        if place is not None and not self.made:
            if place.which is Which.ELSEWHERE or place.targets[0].kind is TargetKind.PLACE and place.targets[0].name == "edge":
                self.cursor = Cursor(Fabric.unknown(self.is_round))
            elif cursor.known and cursor.nodes:
                self._start_at(place)
                self._note(step.span)
        if step.stitch is not None:
            self._begin()
            node = self.cursor.last or Node("unknown place")
            if self.cursor.at == 0:
                self.cursor.at = 1 if self.cursor.nodes and node is self.cursor.nodes[0] else 0
            self._put(step.stitch, node, 1)

    def _start_at(self, place: Place) -> None:
        """Begin the round at a place of the sort named; by symmetry any will do."""
        cursor = self.cursor
        target = place.targets[0]
        index = None
        if place.middle or target.kind is TargetKind.CORNER or place.of is not None:
            runs = cursor.groups(place.of or (target if target.kind is TargetKind.CORNER else None))
            if runs:
                index = _middle(runs[0], cursor) if target.kind is not TargetKind.SPACE else next((i for i in runs[0] if cursor.nodes[i].kind == "space"), runs[0][0])
        if place.which is Which.LAST:
            index = cursor.back_from_end((target,), 1, self.size)
        if index is None:
            index = cursor.find(target, self.size, 0)
        if index is None:
            node = cursor.next(target, self.size)
            index = next((i for i, item in enumerate(cursor.nodes) if item is node), None)
            if index is None:
                return
        if cursor.circular:
            cursor.rotate(index)
            cursor.optional = 0
        else:
            cursor.nodes = cursor.nodes[index:]
            cursor.at = 0
            cursor.last = cursor.nodes[0]

    def _turn(self, step: Turn) -> None:
        self.turned = step.turned if self.turned is None or step.turned else self.turned

    def _either(self, step: Either, following: tuple[Step, ...]) -> None:
        cursor = self.cursor
        chosen = step.options[0]
        here = cursor.nodes[cursor.at] if cursor.at < len(cursor.nodes) else None
        for option in step.options:
            first = next((s for s in walk(option) if isinstance(s, (Work, Skip, Group)) and s.places), None)
            if here is not None and first is not None and self.cursor.matches(here, first.places[0].targets[0], self.size):
                chosen = option
                break
        self._run(chosen, following)

    # the end ------------------------------------------------------------------------------------------------------

    def _finish(self) -> Worked:
        cursor = self.outer if self.outer is not None and self.cursor.at >= len(self.cursor.nodes) else self.cursor
        self._note(self.last_work.span if self.last_work else Span(0, 0))
        if not self.made and hasattr(self, "foundation"):
            fabric = Fabric.foundation(self.foundation)
            return Worked(fabric, Made(0, {}, {}, 0, {}), self.noted, self.choices, self.joined, self.turned)
        if not self.made:
            fabric = Fabric(cursor.nodes, cursor.circular, cursor.known, uncounted=cursor.uncounted)
            return Worked(fabric, Made(0, {}, {}, 0, {}), self.noted, self.choices, self.joined, self.turned, carried=self.carried)
        left: list[Node] = []
        if cursor.known and not self.left_rest:
            window = cursor.nodes[cursor.at : len(cursor.nodes) - cursor.optional] if cursor.optional else cursor.nodes[cursor.at :]
            left = [node for node in window if node.is_stitch and self.works_stitches or node.kind == "space" and node.length in self.space_lengths]
        circular = self.is_round
        made = count(self.made, self.groups, self.picots, circular, self.from_ring)
        nodes = self.made
        if self.closing is not None:  # the next round begins in the space that the joining stitch closed
            index = next(i for i, node in enumerate(nodes) if node is self.closing)
            nodes = nodes[index:] + nodes[:index]
        fabric = Fabric(nodes, circular, uncounted=0 if circular else self.uncounted, picots=self.picots)
        return Worked(
            fabric, made, self.noted, self.choices, self.joined, self.turned, self.unsaid, self.carried, self.learned, left, self.used
        )


def _hook_place(step: Step | None) -> Place | None:
    if isinstance(step, (Work, Group)) and step.places and step.places[0].which is Which.FROM_HOOK:
        return step.places[0]
    return None


def _middle(run: list[int], cursor: Cursor) -> int:
    """The middle of a group: its space if it has one, else its middle stitch."""
    space = next((i for i in run if cursor.nodes[i].kind == "space"), None)
    return space if space is not None else run[len(run) // 2]


def _join_hint(steps: tuple[Step, ...]) -> bool | None:
    """What the round's own join shows of its beginning chain: into the chain, it counts; into the first stitch, it does not."""
    for step in reversed(steps):
        if isinstance(step, Join) and step.places:
            place = step.places[0]
            if place.targets[0].kind is TargetKind.TURNING_CHAIN or place.targets[0].kind is TargetKind.CHAIN:
                return True
            if place.which is Which.FIRST and place.targets[0].kind is TargetKind.STITCH:
                return False
    return None


def _main_stitch(steps: tuple[Step, ...]) -> str | None:
    """The first stitch worked, slip stitches apart."""
    for step in walk(steps):
        if isinstance(step, Work) and step.stitch not in ("sl st", "picot", "inc", "dec"):
            if step.special is not None and step.special.items:
                return _main_stitch(step.special.items)
            if step.special is not None:
                continue
            return family(step.stitch)
        if isinstance(step, Evenly):
            return step.stitch
    return None


def _simple(step: Repeat) -> bool:
    return step.times.kind is not TimesKind.FILL


def _unit_of(step: Repeat) -> str:
    """What a repeat works into, in words: "ch-5 sp" where it is spaces alone, else "st"."""
    kinds = set()
    for inner in walk(step.items):
        for place in inner.places if isinstance(inner, (Work, Group)) else ():
            for target in place.targets:
                length = target.length.lone if target.length else None
                kinds.add((f"ch-{length} sp" if length else "sp") if target.kind is TargetKind.SPACE else "st")
    return kinds.pop() if len(kinds) == 1 else "place"


def _without(items: tuple[Step, ...], omit: tuple[Step, ...]) -> tuple[Step, ...]:
    """Items less the last ones named by "omitting last …"."""
    kept = list(items)
    for item in reversed(omit):
        for index in range(len(kept) - 1, -1, -1):
            other = kept[index]
            if isinstance(item, Chain) and isinstance(other, Chain) or isinstance(item, Work) and isinstance(other, Work) and item.stitch == other.stitch:
                del kept[index]
                break
    return tuple(kept)


def _drop_tail(made: list[Node], omit: tuple[Step, ...], size: int) -> list[Node]:
    """The row less the last stitches or space that the last pass leaves out."""
    nodes = list(made)
    for item in omit:
        if isinstance(item, Chain) and nodes and nodes[-1].kind == "space":
            nodes.pop()
        elif isinstance(item, Work) and nodes and nodes[-1].kind == item.stitch:
            for _ in range(item.number.at(size) or 0):
                if nodes and nodes[-1].kind == item.stitch:
                    nodes.pop()
    return nodes
