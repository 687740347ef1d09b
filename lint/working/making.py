"""Makes the nodes: stitches into one place, decreases over several, everything in a bracket."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import Place, Which
from lint.tree import PLAIN, Chain, Group, JoinYarn, Loops, Remark, Repeat, Special, Step, TimesKind, UseYarn, Work
from lint.working.beginning import Beginning
from lint.working.chains import standing
from lint.working.cursor import PlacesUnknown
from lint.working.fabric import Node
from lint.working.folds import fold
from lint.working.rowstate import MOST_STITCHES, NotDefined, TooMany, main_stitch


class Making(Beginning):
    """Putting stitches and groups of stitches into places already found."""

    def put(self, kind: str, place: Node, number: int, special: str | None = None) -> None:
        if place.kind == "ring":
            if not self.made or self.made[-1].kind == "space":  # in a ring, spaces part the groups
                self.group += 1
            group = self.group
        else:
            if place is not self.group_place or (self.made and self.made[-1].group != self.group):
                self.group += 1
                self.group_place = place
            group = self.group
        made = self.made
        parents = (place,)
        if number > 2 and not self.filling:
            opened = made and made[-1] is self.begin_node and made[-1].parents == parents
            self.bunches[kind, number + 1 if opened else number] += 1
        for _ in range(number):
            node = Node(kind, parents, group)
            if special:
                node.special = special
            made.append(node)
        if len(made) > MOST_STITCHES:
            raise TooMany

    def decreases_in_each(self, step: Work) -> Work:
        """ "dec in each of next 4 sts": over these four, or four of them: the row tells."""
        place = step.places[0] if len(step.places) == 1 else None
        decrease = step.together or step.stitch == "dec"
        if place is None or not decrease or step.number.lone != 1 or place.which not in (Which.NEXT, Which.LAST):
            return step
        number = self.amount(place.number)
        generic = place.shared and step.stitch == "dec" and not step.together and number > 2
        if generic and step.number_said:
            raise PlacesUnknown("how many stitches go together is not said")  # "dec 1 st over next 6 sts"
        if generic and number == 3:
            return replace(step, together=3)  # "dec over the last 3 sts": all in one, for two leave one over
        if generic and number % 2:
            raise PlacesUnknown("how many stitches go together, and how often, does not come out")
        if generic and not place.each_of:
            taken = self.choices.pick(("decrease over", step.span.start), 2, 0)
            return replace(step, together=number) if taken else step
        if not place.each_of or number < 2:
            return step
        if place.which is Which.LAST:
            raise PlacesUnknown("whether each of those is a decrease is not said")  # "dec in each of the last 4 sts"
        taken = self.choices.pick(("decreases in each", step.span.start), 2, 0)
        return replace(step, number=place.number, places=(), number_said=True) if taken else step

    def put_one_each(self, kind: str, places: list[Node]) -> None:
        """One stitch into each of several places that follow each other."""
        self.made += [Node(kind, (place,)) for place in places]
        if places:
            self.group += 1
            self.made[-1].group = self.group  # what comes may be put into the last place as well
        self.group_place = places[-1] if places else None
        self.check_size()

    def put_together(self, kind: str, places: list[Node]) -> None:
        self.group += 1
        self.group_place = None
        self.made.append(Node(kind, tuple(places), self.group))
        self.check_size()

    def kind_of(self, step: Work) -> str:
        if self.leads is not None and self.leads.work is step and self.leads.name:
            return self.leads.name
        if step.stitch in ("inc", "dec", PLAIN):
            return self.plain_stitch if self.main in ("inc", "dec") else self.main
        return step.stitch

    def fill(self, items: tuple[Step, ...], place: Node, following: tuple[Step, ...]) -> None:
        """Work everything in a bracket into one place."""
        self.filling += 1
        self.fill_items(items, place, following)
        self.filling -= 1

    def fill_items(self, items: tuple[Step, ...], place: Node, following: tuple[Step, ...]) -> None:
        for index, item in enumerate(items):
            if isinstance(item, Work):
                self.fill_stitch(item, place)
            elif isinstance(item, Chain):
                length = self.amount(item.length)
                after = items[index + 1] if index + 1 < len(items) else None
                closed = isinstance(after, Work) and after.stitch == "sl st" and after.places
                if closed and after.places[0].which is not Which.ELSEWHERE:
                    self.picot(1, length)  # closed into its own chain or stitch
                elif not self.begun and not self.made and (not self.repeating or item.counting is not None):
                    self.begun = True
                    if self.first_leg(item, length, (*items[index + 1 :], *following)):
                        continue
                    stitch = main_stitch(items[index + 1 :]) or self.main
                    stands = standing(length, item.counting, stitch, self.rules, self.choices, self.hint, item.span)
                    self.left_unsaid(item, length, stands)
                    if stands.stitch is None:
                        self.uncounted = length
                    else:
                        self.stand_for(stands.stitch, length, place)
                        if stands.space:
                            self.add_space(stands.space, place)
                else:
                    self.add_space(length, place, item.corner)
            elif isinstance(item, Repeat):
                for _ in range(self.fixed_passes(item)):
                    self.check_size()
                    self.fill(item.items, place, ())
            elif isinstance(item, Group):
                self.fill(item.items, place, ())
            elif isinstance(item, Remark):
                self.remark(item)
            elif not isinstance(item, (Loops, UseYarn)):
                raise PlacesUnknown  # a skip, a turn, another place: this is not all in one place

    def fill_stitch(self, item: Work, place: Node) -> None:
        number = self.amount(item.number)
        if any(named.which not in (Which.SAME, Which.FROM_HOOK) for named in item.places) and item.stitch != "sl st":
            raise PlacesUnknown  # "(sc in next st, ch 3)" and then a place: where it goes is said twice
        if item.stitch == "sl st":
            self.anchored = not self.to_other_piece(item)
            return
        if item.stitch == "picot":
            self.picot(number, self.picot_chains(item))
            return
        if item.undefined:
            raise NotDefined(item.stitch)
        special = item.special
        if special is not None and special.beginning and special.one_stitch and not self.begun:
            self.begun = True
            self.stand_for(special.plain_name, 1, place)
            return
        if special is not None and special.items and not special.one_stitch:
            for _ in range(number):
                self.fill_special(special, place)
            return
        self.begin()
        kind = self.kind_of(item)
        if special is not None and special.beginning:
            kind = special.plain_name
        if item.between is not None:
            self.put_apart(kind, place, number, self.amount(item.between))
            return
        self.put(kind, place, number * (2 if item.stitch == "inc" else 1))

    def picot_chains(self, step: Work) -> int:
        """The chains of a picot as the pattern explains it; else 3, the common one (common practice, no source)."""
        items = step.special.items if step.special is not None else ()
        return next((self.amount(item.length) for item in items if isinstance(item, Chain)), 3)

    def put_apart(self, kind: str, place: Node, number: int, chains: int) -> None:
        """ "2 dc with ch 1 between": stitches in one place with chains between them."""
        for index in range(number):
            if index:
                self.add_space(chains, place)
            self.put(kind, place, 1)

    def to_other_piece(self, step: Work | JoinYarn) -> bool:
        """Whether a slip stitch joins the loop just begun to another piece: the loop goes on behind it."""
        joins = any(place.which is Which.ELSEWHERE for place in step.places)
        if joins and self.made and self.made[-1].kind == "space":
            self.joined_loops += 1
        return joins

    def fill_special(self, special: Special, place: Node) -> None:
        """A shell or V-stitch in one place; a beginning one is one of them, and its chain a part of it."""
        before, unsaid, hint = len(self.made), self.unsaid, self.hint
        self.hint = None if special.beginning else hint  # its chain is a part of it, wherever the round is joined
        self.fill(special.items, place, ())
        self.hint = hint
        if special.beginning:
            self.unsaid = unsaid
        ringed = place.kind == "ring" and len(self.made) > before + 1
        self.group += ringed
        for made in self.made[before:]:
            made.special = special.plain_name
            if ringed:  # else the spaces part the groups there
                made.group = self.group
        self.group += ringed
        self.groups[special.plain_name] += 1

    def remark(self, step: Remark) -> None:
        """ "(shell made)" names what was just worked; "through both layers" may fold the round below."""
        if step.layers:
            fold(step, self.cursor, self.choices, self.only_work)
        if step.names and len(self.made) > self.step_from:
            if self.begin_node is not None and self.made[0] is self.begin_node and self.step_from <= 2:
                self.unsaid = None  # "(beg V-st made)" says that the chain is a part of it
            for node in self.made[self.step_from :]:
                node.special = step.names
            if step.names == "picot":
                return
            self.groups[step.names] += 1
            self.named[step.names] += 1

    def fixed_passes(self, step: Repeat) -> int:
        times = step.times
        if times.kind is TimesKind.FILL or times.number is None:
            return 1
        number = self.amount(times.number)
        if times.kind is TimesKind.MORE:
            return number + 1
        if times.kind is TimesKind.UNCLEAR:
            return number + self.choices.pick(("times", times.span.start), 2, 0, ("times", "habit"))
        return number


def beside_one(step: Work, place: Place) -> bool:
    """ "2 sc in next st and the next 2 sts": so many go into the one place, and so into each of the others."""
    others = [one for one in step.places if one is not place]
    return any(one.number == ONE and one.which in (Which.NEXT, Which.FIRST, Which.LAST) for one in others)
