"""Reads work with its number first: stitches, where they go, and lists that go into one place."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import Which
from lint.reading import notes, repeats
from lint.reading.clusterclauses import ClusterClauses
from lint.reading.counts import list_ends
from lint.reading.lists import bare, one_list
from lint.reading.places import places
from lint.reading.stream import OPENERS
from lint.reading.targets import ANY, LOOPS, is_space_word, of_a_row_below
from lint.reading.work import GROUPS, work
from lint.tree import (
    Chain,
    Counting,
    Covers,
    Evenly,
    Group,
    Loops,
    OpenWork,
    OtherSide,
    Remark,
    Repeat,
    Special,
    Step,
    Times,
    TimesKind,
    Turn,
    Work,
)

_EDGE_WORDS = (
    "foundation", "beginning", "outer", "bottom", "top", "long", "short", "right", "left", "lower", "upper", "other",
    "first", "second", "next",
)  # fmt: skip
_WAY_WORDS = {"make", "in", "the", "across", "over", "around", "at", "then", "to"}  # what leads to "the other side"
_COLOURS = ("A", "B", "C", "D", "E", "F", "MC", "CC")


class WorkClauses(ClusterClauses):
    """ "2 dc in next st", "36 sc evenly along side", "2 dc, ch 2, 2 dc in next sp"."""

    def read_number_first(self, start: int) -> bool:
        """ "2 dc in next st", "3 ch", "36 sc evenly along side", "5 inc"."""
        stream = self.stream
        stream.skip("the")
        number = stream.amount()
        if number is not None:
            if stream.kind() in ("times",):
                return False
            if stream.kind() == "dash" and stream.kind(1) == "stitch" and stream.word(*GROUPS, ahead=2):
                stream.take()  # "3-dc group in next sp"
            if self.rows_of_work(start):
                return True
            stream.skip("more")
            picot = 1 if stream.kind() == "dash" else 0
            if stream.kind(picot) == "chain" and stream.kind(picot + 1) == "picot":
                stream.at += picot + 1  # "3-ch picot"
                picot_made = work(stream, start, None)
                return picot_made is not None and self.finish_work(start, picot_made)
            if stream.kind() in ("chain", "foundation"):
                stream.take()
                stream.take_if("foundation")  # "a 5 ch foundation ch"
                if is_space_word(stream) or (stream.kind() == "dash" and is_space_word(stream, 1)):
                    return False
                return self.chain_of(start, number)
        if number is None and self.worked_for_a_length(start):
            return True
        step = work(stream, start, number)
        if step is None:
            return False
        return self.finish_work(start, step) and self.times_of_last(start)

    def times_of_last(self, start: int) -> bool:
        """ "sc 3, inc x 6" at a row's end: six increases, or all of it six times; the row tells."""
        stream = self.stream
        last = self.steps[-1]
        words = stream.lexemes[start : stream.at]
        told = any(item.lower in ("x", "×") or item.kind == "times" for item in words)
        listed = isinstance(last, Work) and last.number_after and not last.places and told
        if not listed or not self._runs_before(last) or not list_ends(stream, stream.at) or self.depth:
            return True
        often = Times(last.span, TimesKind.IN_ALL, last.number)
        self.steps[-1] = replace(last, number=ONE, number_said=False, number_after=False)
        if not repeats.fold_row(self.steps, often, last.span, Covers.RATHER_LAST):
            self.steps[-1] = last
        return True

    def worked_for_a_length(self, start: int) -> bool:
        """ "sc over 3¾ inches": stitches told by a measure."""
        stream = self.stream
        words = [item.lower for item in stream.lexemes[start : stream.next_of(",", ";", ".", *OPENERS)]]
        if stream.kind() != "stitch" or not set(words) & {"inches", "inch", "ins", "cm"}:
            return False
        if stream.kind(1) not in ("over", "for") or stream.kind(2) not in ("number", "decimal"):
            return False
        stream.pass_to()
        self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
        return True

    def rows_of_work(self, start: int) -> bool:
        """ "10 rows even", "4 more rows of trebles on these sts": rows told by their number alone."""
        stream = self.stream
        ahead = 1 if stream.kind() in ("more",) or stream.word("further") else 0
        rows = stream.kind(ahead) in ("row", "round") and not stream.word("row", "rnd", "round", ahead=ahead)
        if not rows and stream.kind(ahead) != "open_work":
            return False
        if rows and stream.word("unchanged", ahead=ahead + 1) and self.has_work():
            stream.at += ahead + 2  # "66 sc (66) – 8 rows unchanged": the label says so too
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.at = stream.sentence_end(stream.at, ".", ";", ",", *OPENERS)
        while (
            stream.kind() == ","
            and stream.peek(1).text in _COLOURS
            and stream.kind(2) in (",", ".", ";", "end", "star")
        ):
            stream.at += 2  # "2 rows each A, B, A"
        self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
        return True

    def finish_work(self, start: int, step: Step) -> bool:
        stream = self.stream
        if isinstance(step, Work) and not step.places and stream.kind() == "in" and self.on_other_side():
            self.steps.append(OtherSide(step.span))  # "3 sc on the other side of the ch"
        if isinstance(step, Work) and step.stitch == "sl st" and not step.places and stream.kind() == "join":
            return self.read_join(start)  # "sl st to join in first st"
        if isinstance(step, Work) and step.places and stream.kind() == "join" and stream.word("to join", "to close"):
            words = stream.take().span  # "dc in first sc to join"
            step = replace(step, closing=Counting(words, True, None, 0))
        if isinstance(step, Work) and stream.kind() == "evenly":
            if step.places or step.stitch in ("inc", "dec"):
                return False
            if not step.number_said:  # "sc evenly around": how many is not said
                stream.at = stream.sentence_end(stream.at, ".", ";", ",", *OPENERS)
                self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
                return True
            stream.pass_to()
            step = Evenly(stream.span_from(start), step.stitch, step.number)
        if isinstance(step, Work) and not step.places and step.stitch not in ("inc", "dec") and self.along_edge():
            each = any(item.kind == "each" for item in stream.lexemes[start : stream.at])
            if not step.number_said or each:  # how many edges there are is not said
                self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
                return True
            step = Evenly(stream.span_from(start), step.stitch, step.number)
        if isinstance(step, Work) and (step.places or step.number_said):
            chains = self.chains_between()
            if chains is not None:
                found = step.places or places(stream)  # "2 dc with ch 1 between in next st"
                step = replace(step, between=chains, places=found, span=stream.span_from(start))
        if isinstance(step, Work) and not step.places and stream.kind() == "(" and stream.kind(1) == "in":
            step = self.place_in_brackets(start, step)
        if isinstance(step, Work) and step.undefined and stream.kind() in OPENERS:
            step = self.made_of(start, step)
        picot = isinstance(step, Work) and step.stitch == "sl st" and step.places[:1]
        picot = picot and picot[0].which in (Which.JUST_MADE, Which.FROM_HOOK)
        if isinstance(step, Work) and len(step.places) == 1 and not picot and self._loose_group(step):
            return True
        self.steps.append(step)
        if isinstance(step, Work):
            self.around_is_for_all(step)
        note = notes.of_last_loop(stream) if isinstance(step, Work) and step.places else None
        if note is not None:
            self.attach_counting(note)
            return True
        if stream.kind() == "forming":  # "dc in first sc to form last loop"
            return self.read_counting_sentence(stream.at)
        if stream.kind() == "corner" or (stream.kind() == "for" and stream.kind(1) in ("corner", "the")):
            stream.pass_to()
        return True

    def on_other_side(self) -> bool:
        """Takes "on the other side of the ch" after stitches."""
        stream = self.stream
        start = stream.at
        stream.skip("in", "the")
        if stream.take_if("other_side"):
            stream.skip("of", "the", "beginning")
            if stream.take_if("chain", "foundation"):
                return True
        stream.at = start
        return False

    def read_other_side(self, start: int) -> bool:
        """ "underside (2 sc, inc)", "other side of ch: sc in next 5": a heading for what goes into the chain's other side."""
        stream = self.stream
        stream.take()
        stream.skip("of", "the", "beginning")
        stream.skip("chain", "foundation")
        if not self.has_work() or stream.kind() not in (":", ",", *OPENERS):
            return False
        close = stream.matching(stream.at) if stream.kind() in OPENERS else stream.at
        if close is None:
            return False
        self.steps.append(OtherSide(stream.span_from(start)))
        if close > stream.at:
            self.steps += self.read_inside(stream.inside(stream.at + 1, close))
            stream.at = close + 1
        return True

    def place_in_brackets(self, start: int, step: Work) -> Work:
        """The step with the place that stands in brackets behind it: "1 spike dc (into sp between next 2 dc, from Rnd 2)"."""
        stream = self.stream
        close = stream.matching(stream.at)
        inner = stream.inside(stream.at + 1, close) if close is not None else stream.inside(0, 0)
        found = places(inner)
        inner.pass_to(",", ";") if inner.word("directly") else None
        inner.skip(",")
        below = of_a_row_below(inner)
        if not found or not inner.done:
            return step
        stream.at = close + 1
        found = tuple(replace(place, below=place.below or below) for place in found)
        return replace(step, places=found, span=stream.span_from(start))

    def made_of(self, start: int, step: Work) -> Work:
        """The step with what the brackets behind it say it is made of: "shell in next st (2 dc, ch 2, 2 dc)"."""
        stream = self.stream
        close = stream.matching(stream.at)
        items = tuple(self.read_inside(stream.inside(stream.at + 1, close))) if close is not None else ()
        if not items or not step.places or not all(isinstance(item, Chain) or bare(item) for item in items):
            return step
        stream.at = close + 1
        made = Special(step.stitch, items[0].span.to(items[-1].span), items, one_stitch=False)
        return replace(step, special=made, undefined=False, span=stream.span_from(start))

    def around_is_for_all(self, last: Work) -> None:
        """ "sc 1, inc 1 around": a list of runs of which the last is an increase or decrease is what goes on around."""
        shaping = last.stitch in ("inc", "dec") or last.together is not None
        run = len(last.places) == 1 and last.places[0].which is Which.EACH and last.places[0].targets == (ANY,)
        if not shaping or not run or last.places[0].span != last.span or not self._runs_before(last):
            return
        limit = last.places[0].limit
        first = next(i for i, step in enumerate(self.steps) if isinstance(step, Work))
        body = (*self.steps[first:-1], replace(last, places=()))
        span = body[0].span.to(last.span)
        self.steps[first:] = [Repeat(span, body, Times(last.places[0].span, TimesKind.FILL, limit=limit))]

    def _runs_before(self, last: Work) -> bool:
        """Whether all the work before this is of runs with no place named, one joined to the next by commas."""
        before = [step for step in self.steps[:-1] if not isinstance(step, (Chain, Turn, Loops))]
        chain = [*before, last]
        return (
            bool(before)
            and all(bare(step) for step in before)
            and all(self._joined(one, other) for one, other in zip(chain, chain[1:], strict=False))
        )

    def chains_between(self) -> Amount | None:
        """Takes "with ch-1 between (each)" after a run."""
        stream = self.stream
        start = stream.at
        stream.take_if(",")
        if stream.take_if("with"):
            stream.skip("the")
            number = None
            if stream.take_if("chain"):
                stream.take_if("dash")
                number = stream.amount()
            elif stream.kind() == "number" and stream.kind(1) == "chain":
                number = stream.amount()
                stream.take()
            if number is not None and stream.take_if("between"):
                stream.skip("each", "the", "stitch", "any_stitch", "same", "all")
                stream.take() if stream.word("them") else None
                return number
        stream.at = start
        return None

    def along_edge(self) -> bool:
        """Takes "along top", "down side", "across the lower edge" after a number of stitches."""
        stream = self.stream
        start = stream.at
        if stream.take_if("across", "over", "around") or stream.word("along", "down", "up") and stream.take():
            stream.skip("the", "each")
            named = False  # "along the bottom"
            while stream.word(*_EDGE_WORDS):
                named = stream.take().lower in ("bottom", "top")
            if stream.take_if("side", "edge", "top", "row_end", "chain", "foundation") or stream.word("side") or named:
                if stream.word("side"):
                    stream.take()
                if stream.kind() == "of":
                    stream.pass_to()
                return True
        stream.at = start
        return False

    def _other_side(self, start: int) -> bool:
        """ "working along the opposite side of the ch", "in the free loops of the starting ch", "on the other side"."""
        if self.steps and isinstance(self.steps[-1], Turn) and self.has_work() and self.steps[-1].turned:
            before = self.steps[-1]
            if self._other_side_words(start):
                self.steps[-2:] = [Remark(before.span), self.steps[-1]]  # the piece goes round, and is not turned over
                return True
            return False
        return self._other_side_words(start)

    def _other_side_words(self, start: int) -> bool:
        stream = self.stream
        end = stream.next_of(",", ";", ".", ":", "(", "[", "star")
        side = stream.next_of("other_side")
        chain = stream.next_of("chain", "foundation", start=side)
        if set(self._kinds(side + 1, chain)) - {"of", "the", "beginning", "same"} and side < end:
            chain = len(stream.lexemes)  # "along opposite side sc in next 8 ch": those are worked into
        if side >= end and (loops := self._free_loops(end)) is not None:
            side, chain = loops
        if side < end <= chain and any(i.kind in ("chain", "foundation") for i in stream.lexemes[start:side]):
            stream.at = end  # "working in starting ch on opposite side of row 1"
            self.steps.append(OtherSide(stream.span_from(start)))
            return True
        starting = next((i for i in range(start, end) if stream.lexemes[i].kind == "foundation"), end)
        if side >= end and starting < end and self.has_work() and not set(self._kinds(start, starting)) - _WAY_WORDS:
            if starting == end - 1 and "across" in self._kinds(start, end):
                stream.at = end  # "working along foundation ch": its other side, when this one is worked
                self.steps.append(OtherSide(stream.span_from(start)))
                return True
        if chain >= end:
            leads = side == end - 1 or side < end and stream.work_at(side + 1)
            alone = leads and self.has_work() and not set(self._kinds(start, side)) - _WAY_WORDS
            if alone:  # "working on the other side, sc 4": of what, only the chain can tell
                stream.at = side + 1
                self.steps.append(OtherSide(stream.span_from(start)))
            return alone
        stream.at = end
        if chain + 1 < end and stream.lexemes[chain + 1].kind in ("number", "stitch", "special", "increase"):
            stream.at = chain + 1  # "on other side of ch sc in next 5 chs"
        self.steps.append(OtherSide(stream.span_from(start)))
        return True

    def _kinds(self, first: int, last: int) -> list[str]:
        return [item.kind for item in self.stream.lexemes[first:last] if item.lower not in ("down", "up", "back")]

    def _free_loops(self, end: int) -> tuple[int, int] | None:
        """Where "unused loops" and "foundation ch" of "in unused loops of foundation ch" stand; None where they do not."""
        stream = self.stream
        free = stream.next_of("unused", "remaining")
        found = next((i for i in range(free, end) if stream.lexemes[i].kind == "foundation"), None)
        if found is None:
            starts = (i for i in range(free, end - 1) if stream.lexemes[i].kind == "beginning")
            found = next((i + 1 for i in starts if stream.lexemes[i + 1].kind == "chain"), None)
        loops = [item for item in stream.lexemes[free : found or free] if item.kind in ("space", "unused", *LOOPS)]
        named = any("l" in item.lower and item.lower.rstrip("s").endswith(("loop", "lp")) for item in loops)
        return (free, found) if found is not None and named else None

    def _loose_group(self, last: Work) -> bool:
        """ "2 dc, ch 2, 2 dc in next sp": the place after the last stitch may govern the whole list."""
        items: list[Step] = []
        after = last
        while self.steps:
            step = self.steps[-1]
            if not bare(step) or not self._joined(step, after):
                break
            items.insert(0, self.steps.pop())
            after = step
        lead: list[Step] = []
        while items and isinstance(items[0], Chain):
            lead.append(items.pop(0))
        whole = [*items, replace(last, places=())]
        if not items or not one_list(whole, last.places[0]):
            self.steps += [*lead, *items]
            return False
        self.steps += [*lead, Group(items[0].span.to(last.span), tuple(whole), last.places, loose=True)]
        return True

    def _joined(self, one: Step, other: Step) -> bool:
        """Whether only a comma, "and", "+" or a tight hyphen ("3dc-ch2-3dc") stands between two steps."""
        between = [item for item in self.stream.lexemes if one.span.end <= item.start < other.span.start]
        tight = bool(between) and between[0].start == one.span.end and between[-1].end == other.span.start
        return all(item.kind in (",", "and", "+") or item.kind == "dash" and tight for item in between)
