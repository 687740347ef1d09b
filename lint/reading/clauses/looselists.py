"""Lists without brackets: those that go into one place together, and those that are gone on with around."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import LimitKind, TargetKind, Which
from lint.reading.clauses.edge import EdgeClauses
from lint.reading.clauses.runlists import joined, runs_before, shapes
from lint.reading.counting.counts import list_ends
from lint.reading.places.places import places
from lint.reading.places.targets import ANY
from lint.reading.words.lists import bare, mirrored, one_list
from lint.tree import Chain, Covers, Group, Repeat, Step, Times, TimesKind, Work


class LooseListClauses(EdgeClauses):
    """ "2 dc, ch 2, 2 dc in next sp", "sc 1, inc 1 around", "dc in each st with ch-1 between"."""

    def around_is_for_all(self, last: Work) -> None:
        """ "sc 1, inc 1 around": a list of runs of which the last is an increase or decrease is what goes on around."""
        run = len(last.places) == 1 and last.places[0].which is Which.EACH and last.places[0].targets == (ANY,)
        if not run or last.places[0].span != last.span or not runs_before(self.stream, self.steps):
            return
        beside = last.places[0].limit is not None and last.places[0].limit.kind is LimitKind.END and self._whole_list()
        if not shapes(last) and not (beside and any(shapes(step) for step in self.steps[:-1])):
            return
        limit = last.places[0].limit
        first = next(i for i, step in enumerate(self.steps) if isinstance(step, Work))
        body = (*self.steps[first:-1], replace(last, places=()))
        span = body[0].span.to(last.span)
        often = Times(last.places[0].span, TimesKind.FILL, limit=limit)
        covers = Covers.ALL if shapes(last) or last.number_said else Covers.RATHER_LAST  # "inc, sc around"
        self.steps[first:] = [Repeat(span, body, often, covers=covers)]

    def _whole_list(self) -> bool:
        """Whether "around" has just been said of the last words of the row."""
        around = any(item.kind == "around" for item in self.stream.lexemes[max(0, self.stream.at - 2) : self.stream.at])
        return around and list_ends(self.stream, self.stream.at)

    def chains_between(self) -> Amount | None:
        """Takes "with ch-1 between (each)" after a run."""
        stream = self.stream
        start = stream.at
        stream.take_if(",")
        if stream.take_if("with"):
            one = ONE if stream.take_if("the") else None  # "with a ch between"
            number = None
            if stream.take_if("chain"):
                stream.take_if("dash")
                number = stream.amount() or one
            elif stream.kind() == "number" and stream.kind(1) == "chain":
                number = stream.amount()
                stream.take()
            if number is not None and stream.take_if("between"):
                stream.skip("each", "the", "stitch", "any_stitch", "same", "all")
                stream.take() if stream.word("them") else None
                return number
        stream.at = start
        return None

    def over_space(self, start: int) -> bool:
        """Also "3 dc, ch 2, 3 dc, ch 1 in each corner sp": a list that ends in a chain, for a chain by itself is worked into none."""
        return super().over_space(start) or self._group_ends_in_chain()

    def _group_ends_in_chain(self) -> bool:
        stream, before = self.stream, self.stream.at
        chain = self.steps[-1]
        found = places(stream) if stream.kind() == "in" and isinstance(chain, Chain) else ()
        spaces = len(found) == 1 and found[0].targets[0].kind in (TargetKind.SPACE, TargetKind.CORNER)
        first, after = len(self.steps) - 1, chain
        while first and bare(self.steps[first - 1]) and joined(stream, self.steps[first - 1], after):
            first -= 1
            after = self.steps[first]
        first += next((at for at, step in enumerate(self.steps[first:]) if not isinstance(step, Chain)), 0)
        items = self.steps[first:]
        if not spaces or sum(isinstance(step, Work) for step in items) < 2 or not mirrored(items[:-1]):
            stream.at = before
            return False
        self.steps[first:] = [Group(items[0].span.to(stream.span_from(before)), tuple(items), found)]
        return True

    def loose_group(self, last: Work) -> bool:
        """ "2 dc, ch 2, 2 dc in next sp": the place after the last stitch may govern the whole list."""
        items: list[Step] = []
        after = last
        while self.steps:
            step = self.steps[-1]
            if not bare(step) or not joined(self.stream, step, after):
                break
            items.insert(0, self.steps.pop())
            after = step
        lead: list[Step] = []
        while items and isinstance(items[0], Chain):
            lead.append(items.pop(0))
        whole = [*items, replace(last, places=())]
        place = last.places[0]
        apart = place.shared and place.number.lone != 1 or any(step.stitch in ("inc", "dec") for step in whole if isinstance(step, Work))  # fmt: skip
        if not items or apart or not one_list(whole, place):
            self.steps += [*lead, *items]
            return False
        self.steps += [*lead, Group(items[0].span.to(last.span), tuple(whole), last.places, loose=True)]
        return True
