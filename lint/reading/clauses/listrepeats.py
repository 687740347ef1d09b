"""Reads how often a list is worked that no bracket holds together: "2 sc, inc, x6", "*2 sc, inc* - 6 times", "6x (2 sc, inc)"."""

from __future__ import annotations

from dataclasses import replace

from lint.place import LimitKind, Place, Which
from lint.reading.clauses.base import all_read
from lint.reading.clauses.motif import MotifClauses
from lint.reading.counting import counts
from lint.reading.places.howoften import clauses_of
from lint.reading.places.limits import limit
from lint.reading.places.places import places
from lint.reading.places.targets import ANY
from lint.reading.repeating import repeats
from lint.reading.repeating.times import times as read_times
from lint.reading.words.lists import count_alone
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Chain, Covers, Group, Repeat, Times, TimesKind, Work, walk

_IN_TURN = ("number", "stitch", "increase", "decrease", "special", "one_stitch", "and", ",", "the")


class ListRepeats(MotifClauses):
    """Stars, and numbers of times that stand by themselves."""

    def read_star(self) -> bool:
        stream = self.stream
        lexeme = stream.take()
        self.steps.append(repeats.Mark(lexeme.span, lexeme.value))
        mark = stream.at
        if stream.kind() == "," and stream.kind(1) in ("around", "across") and repeats.pair(self.steps):
            stream.take()  # "*ch 4, sk 2, sc in next*, around"
        times = read_times(stream, after_bracket=True)
        if times is not None and repeats.pair(self.steps):
            repeats.fold_pair(self.steps, times, stream.span_from(mark))
            self.all_in_ring()
            return True
        stream.at = mark
        if (
            stream.kind() == "in"
            and stream.kind(1) == "each"
            and repeats.pair(self.steps)
            and self._group_in_each(mark)
        ):
            return True
        alone = stream.kind() == "number" and counts.list_ends(stream, mark + 1) and lexeme.text == "*"
        if alone and self.has_work() and not repeats.open_star(self.steps[:-1]):
            number = stream.take()  # "2 sc, inc *6": a multiplication sign
            sign = self.steps.pop()
            often = Times(number.span, TimesKind.IN_ALL, number.quantity)
            if not repeats.fold_row(self.steps, often, number.span, Covers.RATHER_ALL):
                self.steps.append(sign)
                stream.at = mark
        return True

    def _group_in_each(self, mark: int) -> bool:
        """ "*sc, ch 1* in each st around": the stars hold together what goes into each, as brackets do."""
        stream = self.stream
        found = places(stream)
        sign = self.steps[-1].sign
        opened = max(i for i, s in enumerate(self.steps[:-1]) if isinstance(s, repeats.Mark) and s.sign == sign)
        items = self.steps[opened + 1 : -1]
        placed = any(isinstance(item, (Work, Group)) and item.places for item in items)
        ends = stream.kind() in (*SIGNS, "end", "turn", "join", "dash", "=", *OPENERS)
        if not found or not ends or placed or not all(isinstance(item, (Work, Chain)) for item in items):
            stream.at = mark
            return False
        self.steps[opened:] = [Group(self.steps[opened].span.to(stream.span_from(mark)), tuple(items), found)]
        return True

    def stitches_in_turn(self, start: int) -> bool:
        """ "Alternate sc and inc around", "alternate FPdc and BPdc to the end": one after the other, as often as there is room."""
        stream = self.stream
        first = end = start + 1
        while end < len(stream.lexemes) and stream.lexemes[end].kind in _IN_TURN:
            end += 1
        parted = [item.kind for item in stream.lexemes[first:end]].count("and") == 1
        items = self.read_inside(stream.inside(first, end)) if parted else []
        if len(items) < 2 or not all(isinstance(item, Work) and not item.places for item in items):
            return False
        stream.at = end
        reach = limit(stream)
        if (
            reach is None
            or reach.kind not in (LimitKind.END, LimitKind.LAST)
            or stream.kind() not in (*SIGNS, "end", "dash", "=", "join", "turn")
        ):
            stream.at = start
            return False
        span = stream.span_from(start)
        self.steps.append(repeats.Folded(span, tuple(items), Times(span, TimesKind.FILL, limit=reach), sign="["))
        return True

    def read_whole_row(self, start: int) -> bool:
        """The "around" or "10 times" that ends "sc next 3, 2 sc next, around": how often all the words before are worked."""
        stream = self.stream
        if self._other_side(start):  # "along the underside of the chain, sc in next 6"
            return True
        if stream.kind(1) == "to" and any(i.lower == "marked" for i in stream.lexemes[start : start + 9]):
            stream.take()
            return self.read_until(stream.at)
        if not start or stream.lexemes[start - 1].kind not in (",", ".", ";", "dash"):
            return (by_cross(stream) or self._in_gaps()) and self.clause_often(start)
        if repeats.pair(self.steps) and (often := read_times(stream, after_bracket=True)) is not None:
            repeats.fold_pair(self.steps, often, stream.span_from(start))  # "*2 sc, inc* - 6 times"
            return True
        often = read_times(stream)
        if often is None or stream.kind() not in (",", ".", ";", "end", "dash", "(", "[", "turn", "join"):
            return False
        if often.kind is TimesKind.UNCLEAR:
            often = replace(often, kind=TimesKind.IN_ALL)
        return repeats.fold_row(self.steps, often, stream.span_from(start))

    def _in_gaps(self) -> bool:
        """Whether the clause before goes between places: "V-st between next 2 V-sts 4 times" is one in each such gap."""
        last = self.steps[-1] if self.steps else None
        return isinstance(last, (Work, Group)) and bool(last.places) and all(place.between for place in last.places)

    def clause_often(self, start: int) -> bool:
        """The "x 6" right behind a clause: "2 sc x 6", "3 sc in next st x 4"."""
        stream = self.stream
        last = self.steps[-1] if self.steps else None
        clause = isinstance(last, (Work, Group)) and start > 0 and stream.lexemes[start - 1].end == last.span.end
        if not clause or any(place.which is not Which.NEXT or place.limit is not None for place in last.places):
            return False
        often = read_times(stream, after_bracket=True)
        if (
            often is None
            or often.number is None
            or stream.kind() not in (*SIGNS, *OPENERS, "end", "dash", "=", "→", "and")
        ):
            stream.at = start
            return False
        items = clauses_of(last, stream.lexemes)
        if items is None:
            stream.at = start
            return False
        self.steps[-1] = Repeat(stream.span_from(start), items, often)
        return True

    def times_first(self, start: int) -> bool:
        """ "6x (2 sc, inc)": how often, before the bracket; or before one clause without any: "4 x sc2tog"."""
        stream = self.stream
        often = read_times(stream, after_bracket=True)
        if often is not None and stream.kind() in _WORKS:
            return self._one_clause_often(start, often)
        if often is not None and stream.take_if(":") and stream.kind() not in OPENERS:
            return self._sentence_often(start, often)
        close = stream.matching(stream.at) if stream.kind() in OPENERS else None
        if often is None or close is None:
            return False
        items = self.read_inside(stream.inside(stream.at + 1, close))
        after, then, last = ([item.kind for item in stream.lexemes[close + 1 : close + 4]] + ["end"] * 3)[:3]
        goes_on = after == "number" and then in ("stitch", "increase", "decrease")
        goes_on = goes_on and last in (
            *OPENERS,
            ",",
            "=",
            "dash",
        )  # "5 x (4 sc, inc) 5 sc (35)"; else that is the count
        if not goes_on and after in ("in", "number", "times", "repeat", "star", "around") or not all_read(items):
            return False
        if not any(isinstance(item, (Work, Group)) for item in walk(tuple(items))):
            return False
        stream.at = close + 1
        self.steps.append(Repeat(stream.span_from(start), tuple(items), often))
        return True

    def _sentence_often(self, start: int, often: Times) -> bool:
        """ "8x: 2 sc, inc (32)": all that the sentence tells, up to its count."""
        stream = self.stream
        end = stream.sentence_end(stream.at, ".", ";", "=", "dash", "→", "turn", "join", *OPENERS)
        items = self.read_inside(stream.inside(stream.at, end))
        works = any(isinstance(item, (Work, Group)) for item in items)
        behind = stream.lexemes[end : end + 2]
        told = behind and behind[0].kind in OPENERS and not count_alone(stream, end - stream.at)
        if not works or not all_read(items) or told:
            return False
        stream.at = end
        self.steps.append(Repeat(stream.span_from(start), tuple(items), often))
        return True

    def _one_clause_often(self, start: int, often: Times) -> bool:
        stream = self.stream
        end = min(stream.next_of(*SIGNS, "=", "dash", "and", "turn", "join", "→"), len(stream.lexemes))
        while end < len(stream.lexemes) and stream.lexemes[end].kind == "dash" and stream.lexemes[end].glued:
            end = stream.next_of(*SIGNS, "=", "dash", "and", "turn", "join", "→", start=end + 1)  # "6x sc-dec"
        items = self.read_inside(stream.inside(stream.at, end))
        if len(items) != 1 or not isinstance(items[0], (Work, Group)) or not all_read(items):
            return False
        stream.at = end
        work = items[0]
        if isinstance(work, Work) and work.number_said and not work.places and _counts_by_cross(stream):
            items = [replace(work, places=(Place(work.span, Which.NEXT, (ANY,)),))]  # "1x2sc" beside "3xsc": two in one
        self.steps.append(Repeat(stream.span_from(start), tuple(items), often))
        return True


def _counts_by_cross(stream: Stream) -> bool:
    """Whether the words put a cross between a number and a stitch elsewhere: "3xsc"."""
    kinds = [(item.kind, item.lower) for item in stream.lexemes]
    return any(
        one == "number" and (cross in ("x", "×") or sign == "times") and stitch == "stitch"
        for (one, _), (sign, cross), (stitch, _) in zip(kinds, kinds[1:], kinds[2:], strict=False)
    )


_WORKS = ("stitch", "increase", "decrease", "special", "one_stitch", "group_word", "number")


def by_cross(stream: Stream) -> bool:
    """Whether "x 6" stands at the cursor."""
    return stream.word("x", "×") and stream.kind() != "stitch" and stream.kind(1) == "number"
