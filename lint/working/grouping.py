"""Works groups into one place, and shells and other stitches that the pattern defines."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.place import LimitKind, Place, Target, TargetKind, Which
from lint.tree import Chain, Either, Group, Repeat, Skip, Special, Step, Times, TimesKind, Unread, Work, walk
from lint.working.cursor import PlacesUnknown
from lint.working.fabric import Node
from lint.working.rowstate import main_stitch
from lint.working.stitching import Stitching, beside_steps

_ANY = Target(TargetKind.ANY_STITCH)
PETAL = "petal"  # how such groups are counted among the places that hold several stitches
PARTED = "parted"  # a group with chains inside: one shell, or two groups


def _petal(step: Group) -> bool:
    """Whether a group ends with a slip stitch and begins with one, or with a chain that another matches."""
    works = [item for item in step.items if isinstance(item, (Work, Chain))]
    if not works or not (isinstance(works[-1], Work) and works[-1].stitch == "sl st"):
        return False
    chains = [item for item in works if isinstance(item, Chain)]
    return isinstance(works[0], Work) and works[0].stitch == "sl st" or works[0] in chains and len(chains) > 1


def _rises_and_falls(step: Group) -> bool:
    """Whether a group begins and ends low, as a petal does: with sc, slip stitch or chain."""
    works = [item for item in step.items if isinstance(item, (Work, Chain))]
    low = [isinstance(item, Chain) or item.stitch in ("sc", "sl st") for item in works]
    return len(works) > 2 and low[0] and low[-1] and not all(low)


class Grouping(Stitching):
    """Working several stitches into one place."""

    def work_special(self, step: Work, special: Special, following: tuple[Step, ...]) -> None:
        """A stitch the pattern defines by a run of others: a shell, a V-stitch, a filet block."""
        number = self.amount(step.number)
        if moves_itself(special):
            special, step = self.slipped_to(special, step)
        span_said = self.span_said(step) if special.places_itself else None
        if special.places_itself and (not step.places or span_said is not None):
            noted, start = len(self.noted), self.cursor.at
            self.run_special(special, number)
            used = sum(node.is_stitch for node in self.cursor.nodes[start : self.cursor.at])
            if span_said is not None and used == 1 and not step.places[0].shared:
                self.run_special(special, span_said - 1)  # "long dc in next 3 sts": one in each
                used = span_said
            for trouble in self.noted[noted:]:
                trouble.span = step.span  # what does not fit is the row's words, not those of the definition
            if span_said is not None and used != span_said and len(self.noted) == noted:
                raise PlacesUnknown(f"{special.name} is worked over {used} sts by its own words, over {span_said} here")
            return
        if special.places_itself and (run := _run_of(step)) is not None:
            return self.work_repeat(run, following)
        items = special.items
        places = step.places or (Place(step.span, Which.NEXT, (_ANY,), step.number if number > 1 else Amount.of(1)),)
        for place in places:
            hooked = place.which is Which.FROM_HOOK
            stitch = main_stitch(items) or self.main
            if place.which is Which.EACH and place.span == step.span and not special.one_stitch:
                raise PlacesUnknown("which places those are is not said")  # "4 V-sts across", "shells to end"
            if place.which is Which.EACH and beside_steps(following):
                self.fill_beside(step, place, special, following)
                continue
            found = self.from_hook(place, stitch, step.closing, True) if hooked else self.find(place, following)
            for node in found:
                self.fill_several(special, node, self.number_in_each(step, number, place, len(found)))
            self.remember(place, 0, special.name)
        self.note(step.span)

    def slipped_to(self, special: Special, step: Work) -> tuple[Special, Work]:
        """A beginning shell and where it stands: its own slip stitch leads there, but where the row has gone there already."""
        own = replace(special, items=special.items[1:], places_itself=False)
        there = self.moved and (self.slipped_into is None or self.slipped_into.kind == "space")
        if self.made or self.begun or there:
            return own, step
        self.run(special.items[:1], ())
        same = Place(step.span, Which.SAME, (Target(TargetKind.PLACE),))
        return own, replace(step, places=(same,))

    def fill_several(self, special: Special, place: Node, number: int) -> None:
        """So many shells in one place, each a group of its own."""
        for again in range(number):
            self.group_place = None if again else self.group_place
            self.fill_special(special, place)
        self.check_size()

    def number_in_each(self, step: Work, number: int, place: Place, places: int) -> int:
        """How many shells go into each place: "2 shells in next st"; "2 shells in next 2 sts" is rather one in each."""
        if not step.places or number < 2 or not step.number_said:
            return 1
        if place.which is Which.EACH and number > 3 and number == places:
            raise PlacesUnknown("whether so many go into each of those, or into all, is not said")  # "4 V-sts in V-sts"
        spread = place.which is Which.NEXT and not place.each_of and places == number
        if place.which is not Which.EACH and not place.each_of and 1 < places != number:
            raise PlacesUnknown("how many go into each of those places is not said")  # "4 shells in next 2 sps"
        return 1 if spread and self.choices.pick(("n in next n", "habit"), 2, 0) == 0 else number

    def fill_beside(self, step: Work, place: Place, special: Special, following: tuple[Step, ...]) -> None:
        """ "Shell in each shell and dc in each dc across": the stitches between are those of no shell."""
        cursor, start, beside = self.cursor, self.cursor.at, beside_steps(following)
        self.told_beside.update(map(id, beside))
        if not cursor.known or any(one.place.of is not None or one.place.middle for one in beside):
            raise PlacesUnknown
        limits = [one.place.limit for one in beside if one.place.limit is not None]
        if len(beside) > 1 and any(limit.kind is not LimitKind.END for limit in limits):
            raise PlacesUnknown("how far that goes beside the run is not known here")
        whole = replace(
            place, limit=limits[-1] if limits else place.limit
        )  # "…, dc in each dc to last dc": as far as both go
        if limits and place.limit not in (None, limits[-1]):
            raise PlacesUnknown("how far that goes beside the run is not known here")
        boundary = self.run_end(whole, following)
        own = {id(node) for node in self.find(whole, following)}
        window = [node for node in cursor.nodes[start:boundary] if id(node) in own or node.special is None]
        between = [node for node in window if id(node) not in own]
        others = {id(node): one.items for one in beside for node in between if self.is_beside(node, one.place)}
        if not others or not own:
            raise PlacesUnknown
        number = self.number_in_each(step, self.amount(step.number), place, len(own))
        for node in window:
            self.fill_several(special, node, number if id(node) in own else 0)
            if id(node) in others:
                self.fill(others[id(node)], node, following)
        cursor.at = max(cursor.at, boundary)

    def run_special(self, special: Special, times: int) -> None:
        """A stitch whose own words say where it goes, so many times."""
        for _ in range(times):
            before = len(self.made)
            begun = self.space_begun(special.items)
            self.run(special.items[1:] if begun else special.items, ())
            if not any(node.is_stitch for node in self.made[before:]):  # a loop, that is worked into by its name
                for node in self.made[before:]:
                    node.special = special.plain_name
            self.groups[special.name] += 1
            self.check_size()

    def space_begun(self, items: tuple[Step, ...]) -> bool:
        """Whether a filet row's beginning chain has made the chains that its first space begins with: "ch 5 (counts as first
        dc and ch 2), 1 sp, 3 bls"."""
        if len(self.made) != 2 or not isinstance(items[0], Chain) or len(items) < 2:
            return False
        first, space = self.made
        return bool(first.chain) and space.is_space and space.length == self.amount(items[0].length)

    def span_said(self, step: Work) -> int | None:
        """The 4 of "cable over next 4 sts", where the stitch's own words say which of them each part goes into."""
        place = step.places[0] if len(step.places) == 1 else None
        plain = place is not None and place.which is Which.NEXT and place.of is None and not place.between
        number = self.amount(place.number) if plain else 1
        return number if number > 1 and self.amount(step.number) == 1 else None

    def one_by_one(self, step: Group) -> bool:
        """Whether a list without brackets is worked a stitch a place, as the counts and the fit say."""
        works = [item for item in step.items if isinstance(item, Work)]
        mirrored = works[0].stitch == works[-1].stitch
        into_one = mirrored or step.places[0].targets[0].kind is TargetKind.SPACE
        return self.choices.pick(("loose list", step.span.start), 2, 0 if into_one else 1) == 1

    def work_group(self, step: Group, following: tuple[Step, ...]) -> None:
        places = step.places
        last = step.items[-1] if step.items else None  # an edit that is tried may leave nothing of it
        if step.loose and isinstance(last, Work) and self.one_by_one(step):  # not where an edit has put a chain behind
            self.run((*step.items[:-1], replace(last, places=places)), following)
            return
        for place in places:
            beside = beside_steps(following) if place.which is Which.EACH else []
            instead: dict[int, tuple[Step, ...]] = {}
            if place.which is Which.FROM_HOOK:
                found = self.from_hook(place, main_stitch(step.items) or self.main, None, several=True)
            elif beside:
                found, instead = self.each_and_beside(place, beside, following)
            else:
                found = self.find(place, following)
            self.remember(place, len(found), "")
            if place.which is Which.EACH or _petal(step):
                self.begin()  # its chains are a part of every petal, not the round's beginning
            for node in found:
                before = len(self.made)
                self.fill(instead.get(id(node), step.items), node, following)
                made = tuple(one.kind for one in self.made[before:] if one.is_stitch)
                if not self.filling and len(made) > 2 and _rises_and_falls(step):
                    self.bunches[PETAL, made] += 1
                elif not self.filling and len(made) > 2 and len(made) < len(self.made) - before:
                    self.bunches[PARTED, made] += 1
        self.note(step.span)

    def work_either(self, step: Either, following: tuple[Step, ...]) -> None:
        """One of two ways of working a thing: the one that fits what lies below."""
        cursor = self.cursor
        chosen = step.options[0]
        here = cursor.nodes[cursor.at] if cursor.at < len(cursor.nodes) else None
        if step.over:
            below = "space" if here is not None and here.kind == "space" else "stitch"
            chosen = step.options[step.over.index(below)]
            if isinstance(chosen[0], Unread):
                raise PlacesUnknown(chosen[0].why)
            return self.run(chosen, following)
        for option in step.options:
            first = next((s for s in walk(option) if isinstance(s, (Work, Skip, Group)) and s.places), None)
            if (
                here is not None
                and first is not None
                and self.cursor.matches(here, first.places[0].targets[0], self.size)
            ):
                chosen = option
                break
        firsts = [option[0].places[0].targets if isinstance(option[0], Skip) else None for option in step.options]
        if firsts[0] is not None and len(set(firsts)) == 1:  # what lies below tells nothing, the count may
            passed = all(isinstance(one, Skip) for one in step.options[0])  # else it is rather worked
            named = firsts[0][0].kind is TargetKind.STITCH  # "sk dc, hdc, …": a list, or a stitch without its place
            name = "passed or worked" if passed else "worked or listed" if named else "worked or passed"
            chosen = step.options[self.choices.pick((name, step.span.start), len(firsts), 0)]
        self.run(chosen, following)


def moves_itself(special: Special) -> bool:
    """ "Beg shell: sl st to ch-2 sp, ch 3, dc, ch 2, 2 dc in same sp": its own words lead to where it stands."""
    first = special.items[0] if special.places_itself and special.beginning and special.items else None
    slips = isinstance(first, Work) and first.stitch == "sl st" and len(first.places) == 1
    return slips and first.places[0].targets[0].kind is TargetKind.SPACE


def _run_of(step: Work) -> Repeat | None:
    """ "Sps to end", "blocks across": a filet square as often as there is room, for its own words say what each takes."""
    place = step.places[0] if len(step.places) == 1 else None
    run = place is not None and place.which is Which.EACH and place.span == step.span and not step.number_said
    if not run or [one.kind for one in place.targets] != [TargetKind.ANY_STITCH]:
        return None
    times = Times(step.span, TimesKind.FILL, limit=place.limit)
    return Repeat(step.span, (replace(step, places=()),), times)
