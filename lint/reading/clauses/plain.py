"""Reads work of which the stitch is not named again: "work to last 2 sts", "work next 16 sts", "… and twice in next st"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.growth import ShapedWhere
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.clauses.numberfirst import WorkClauses
from lint.reading.places.limits import limit
from lint.reading.places.places import places
from lint.reading.places.targets import ANY
from lint.tree import PLAIN, Chain, Shaping, Skip, Work

POINTS = ("next", "each", "same", "last", "first", "the", "ordinal")  # where "2 in next", "1 in each of next 4" go
_VERBS = ("work", "continue working", "cont working", "continue to work", "work even", "work straight", "work across")
_IN_PATTERN = (
    "patt",
    "pat",
    "rib",
    *(f"{v} in {p}" for v in ("work", "cont", "continue") for p in ("patt", "pat", "pattern", "rib", "ribbing")),
)
_ENDS = (",", ";", ".", "end", "(", "[", "turn", "dash", "=", "and", "join")


class PlainClauses(WorkClauses):
    """Runs of the stitch that the row is worked in."""

    def read_plain(self, start: int) -> bool:
        """ "work (even) to last 2 sts", "work across next 16 sts", "work 16", "work in each st to marker"."""
        stream = self.stream
        in_pattern = stream.word(*_IN_PATTERN)
        if not in_pattern and not stream.word(*_VERBS):
            return False
        stream.take()
        if stream.kind() == "in" and stream.kind(1) == "stitch" and self._reaches(2):
            stream.take()  # "work in sc to last 2 sts"
            return self.clause()
        if stream.kind() == "in" and stream.kind(1) == "stitch" and stream.kind(2) == "," and self._shapes(3):
            stream.take()  # "work in sc, inc 1 st at each end"
            stitch = stream.take().value
            span = stream.span_from(start)
            run = Place(span, Which.EACH, (ANY,), limit=Limit(LimitKind.END))
            self.steps.append(Work(span, stitch, places=(run,)))
            return True
        stitch = self._stitch_first()
        place = self._plain_place(start)
        if place is not None and stitch == PLAIN and stream.kind() == "in" and stream.kind(1) == "stitch":
            stream.take()  # "work 6 sts in sc"
            stitch = stream.take().value
        if place is None or stream.kind() not in _ENDS or stitch == "sl st":
            stream.at = start
            return False
        self.steps.append(Work(stream.span_from(start), stitch, places=(place,), in_pattern=in_pattern))
        return True

    def _stitch_first(self) -> str:
        """Takes the "in sc over" of "work in sc over next 6 sts"."""
        stream = self.stream
        run = stream.kind() == "in" and stream.kind(1) == "stitch" and stream.kind(2) in ("over", "in")
        if not run or stream.kind(3 if stream.kind(3) != "the" else 4) not in ("next", "first", "last"):
            return PLAIN
        stream.take()
        stitch = stream.take().value
        stream.take()
        stream.skip("the")
        return stitch

    def _shapes(self, ahead: int) -> bool:
        stream = self.stream
        said = stream.kind(ahead) in ("increase", "decrease") or stream.word("increasing", "decreasing", ahead=ahead)
        return said and any(stream.kind(further) in ("at", "evenly") for further in range(ahead + 1, ahead + 5))

    def _reaches(self, ahead: int) -> bool:
        return self.stream.kind(ahead) in ("to", "within", "across", "around")

    def _plain_place(self, start: int) -> Place | None:
        stream = self.stream
        across = bool(stream.take_if("across", "over")) or stream.word("work across", ahead=-1)
        if stream.kind() == "in" and stream.kind(1) == "each":
            stream.take()
        if stream.kind() in ("to", "within"):
            reach = limit(stream)
            return Place(stream.span_from(start), Which.EACH, (ANY,), limit=reach) if reach is not None else None
        if stream.kind() in ("next", "each", "first", "last"):
            found = places(stream)
            place = found[0] if len(found) == 1 and found[0].targets == (ANY,) else None
            if place is not None and place.which is Which.EACH and place.limit is None:
                place = replace(place, limit=limit(stream))
            return place
        number = stream.amount() if stream.kind() == "number" and not across else None
        if number is None or stream.kind() not in (*_ENDS, "any_stitch"):
            return None
        stream.take_if("any_stitch")
        return Place(stream.span_from(start), Which.NEXT, (ANY,), number)

    def read_more_of_it(self, start: int) -> bool:
        """ "sc in next 3 sts and twice in next st", "sc in next 3, 2 in next": the stitch before, so often in one place."""
        stream = self.stream
        last = next((step for step in reversed(self.steps) if not isinstance(step, (Chain, Skip))), None)
        if not isinstance(last, Work) or last.special is not None or last.together or stream.kind(1) != "in":
            return False
        number = stream.take().quantity
        stream.take()
        stream.skip("the")
        if stream.kind() == "ordinal" and stream.kind(1) in ("any_stitch", *_ENDS) and last.places:
            nth, before = stream.peek().number, last.places[0].number.lone
            if before is None or nth != before + 1 or last.places[0].which is not Which.NEXT:
                return False
            stream.take()  # "in next 3 sts and twice in the fourth st"
            stream.take_if("any_stitch")
            found: tuple[Place, ...] = (Place(stream.span_from(start), Which.NEXT, (ANY,)),)
        else:
            found = places(stream, bare=True)
        if not found:
            return False
        found = tuple(replace(place, each_of=True) for place in found)
        self.steps.append(Work(stream.span_from(start), last.stitch, number, found, number_said=True))
        return True

    def read_plus_each_end(self, start: int) -> bool:
        """ "sc across 20 sts plus one st at each side": what the run before gains at its ends."""
        stream = self.stream
        number = stream.amount()
        if number is None or stream.take_if("any_stitch") is None:
            return False
        if self.shaped_where() is not ShapedWhere.EACH_END:
            return False
        last = self.steps[-1] if self.steps else None
        if not isinstance(last, Work) or len(last.places) != 1:
            return False
        place = last.places[0]
        run = place.which is Which.EACH or place.which is Which.NEXT and last.number == ONE
        if not run:
            return False
        self.steps[-1] = replace(last, places=(replace(place, which=Which.EACH),))
        self.steps.append(Shaping(stream.span_from(start), number, True, ShapedWhere.EACH_END))
        return True
