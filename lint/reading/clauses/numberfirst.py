"""Reads work with its number first: stitches, where they go, and lists that go into one place."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.growth import ShapedWhere
from lint.place import TargetKind, Which
from lint.reading.clauses.eachside import UNTOLD, each_of_sides, times_sides
from lint.reading.clauses.looselists import LooseListClauses
from lint.reading.clauses.runlists import next_ones_in_turn, shapes, times_of_last
from lint.reading.clauses.sidewords import along_one_side
from lint.reading.places import notes
from lint.reading.places.places import places
from lint.reading.places.rowsides import in_row_ends
from lint.reading.places.targets import is_space_word, of_a_row_below
from lint.reading.places.totals import one_in_each, one_round_of, rows_follow, told_in_all
from lint.reading.places.work import GROUPS, work
from lint.reading.words.closing import in_place_of_loop
from lint.reading.words.lists import bare
from lint.reading.words.stream import OPENERS, SIGNS
from lint.source import Span
from lint.tree import (
    Chain,
    Counting,
    Evenly,
    OpenWork,
    OtherSide,
    Remark,
    RowCall,
    Shaping,
    Special,
    Step,
    Unread,
    Work,
)

_COLOURS = ("A", "B", "C", "D", "E", "F", "MC", "CC")


class WorkClauses(LooseListClauses):
    """ "2 dc in next st", "36 sc evenly along side", "2 dc, ch 2, 2 dc in next sp"."""

    def read_number_first(self, start: int) -> bool:
        """ "2 dc in next st", "3 ch", "36 sc evenly along side", "5 inc"."""
        stream = self.stream
        stream.skip("the")
        if stream.kind() == "beginning" and stream.kind(1) == "number" and stream.kind(2) == "stitch":
            stream.take()  # "beg 3dc-cl"
        number = stream.amount()
        several = stream.word("x", "×") and stream.kind(1) == "number" and stream.kind(2) == "stitch"
        if number is not None and several and stream.kind(4) == "one_stitch":
            stream.take()  # "2x3dc-cl": two clusters of three
            return self.many_of_legs(start, number)
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
            if stream.kind() in ("chain", "foundation", "turning_chain"):
                stream.take()  # "3 ch", "3 turning ch"
                stream.take_if("foundation")  # "a 5 ch foundation ch"
                if is_space_word(stream) or (stream.kind() == "dash" and is_space_word(stream, 1)):
                    return False
                return self.chain_of(start, number)
        if number is None and self.worked_for_a_length(start):
            return True
        if number is not None and self.every_nth_doubled(start, number):
            return True
        step = work(stream, start, number)
        if step is None:
            return False
        if not self.finish_work(start, step):
            return False
        if not self.depth:
            times_of_last(stream, self.steps, start)
        return True

    def many_of_legs(self, start: int, number: Amount) -> bool:
        """So many of the "3dc-cl" at the cursor."""
        step = work(self.stream, start, self.stream.amount())
        if not isinstance(step, Work):
            return False
        return self.finish_work(start, replace(step, number=number, number_said=True))

    def every_nth_doubled(self, start: int, number: Amount) -> bool:
        """ "2 sc in every 3rd st (and 1 sc in all other sts)": what a run over the row gains."""
        stream = self.stream
        before = stream.at
        stitch = stream.take_if("stitch")
        every = self.every_nth() if stitch is not None and number.lone == 2 else None
        if every is None or stitch.value == "sl st":
            stream.at = before
            return False
        mark = stream.at
        stream.skip(",", "and")
        one = stream.kind() == "number" and stream.peek().number == 1 and stream.kind(1) == "stitch"
        one = one or stream.kind() == "stitch"
        end = stream.next_of(*SIGNS, "dash", "=")
        if one and any(item.lower in ("other", "others") for item in stream.lexemes[stream.at : end]):
            stream.at = end
        else:
            stream.at = mark
        self.steps.append(Shaping(stream.span_from(start), every, True, ShapedWhere.EVERY))
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
        if one_round_of(stream):
            return self.clause()
        rows = rows_follow(stream, ahead, not self.has_work())
        if not rows and stream.kind(ahead) != "open_work":
            return False
        even = stream.word("unchanged", ahead=ahead + 1) or stream.kind(ahead + 1) == "unchanged"
        if rows and even and self.has_work():
            stream.at += ahead + 2  # "66 sc (66) – 8 rows unchanged": the label says so too
            self.steps.append(Remark(stream.span_from(start)))
            return True
        in_all = rows and stream.kind(ahead + 1) == "total" or stream.word("altogether", ahead=ahead + 1)
        if in_all and self.steps and isinstance(self.steps[-1], RowCall) and self.steps[-1].times is not None:
            stream.at += ahead + 2  # "Rep Rows 2 and 3 four times more, 11 rows in all"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.at = stream.sentence_end(stream.at, ".", ";", ",", *OPENERS)
        while stream.kind() == "," and stream.peek(1).text in _COLOURS and stream.kind(2) in (*SIGNS, "end", "star"):
            stream.at += 2  # "2 rows each A, B, A"
        self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
        return True

    def finish_work(self, start: int, step: Step) -> bool:
        stream = self.stream
        if isinstance(step, Work) and not step.places and self.on_other_side():
            self.steps.append(OtherSide(Span(step.span.end, stream.lexemes[stream.at - 1].end)))
            if stream.kind() in ("in", "next", "each"):  # "hdc along the other side in next 8 ch"
                step = replace(step, places=places(stream), span=stream.span_from(start))
            else:
                step = self.in_chains(start, step)  # "3 sc on the other side of the ch"
            if not self.says_how_many(start, step):
                why = "how many stitches go there is not said"
                self.steps.append(Unread(stream.span_from(start), stream.words(start, stream.at), why))
                return True
        if isinstance(step, Work) and (shaped := self.at_each_end(step)) is not None:
            step = shaped
        if isinstance(step, Work) and (in_turn := self.place_in_turn(step)) is not None:
            step = in_turn
        if isinstance(step, Work) and step.stitch == "sl st" and not step.places and stream.kind() == "join":
            return self.read_join(start)  # "sl st to join in first st"
        if isinstance(step, Work) and step.places and stream.kind() == "join" and stream.word("to join", "to close"):
            words = stream.take().span  # "dc in first sc to join", "sl st to first sc to join the rnd"
            named = int(stream.kind() == "the")
            if stream.kind(named) in ("round", "row", "ring") and stream.kind(named + 1) in (
                *SIGNS,
                "end",
                "dash",
                "=",
                ":",
            ):
                stream.at += named + 1
            step = replace(step, closing=Counting(words, True, None, 0))
        if isinstance(step, Work) and step.places[:1] and step.places[0].which is Which.FIRST:
            words = in_place_of_loop(stream)
            step = replace(step, closing=Counting(words, True, None, 0)) if words is not None else step
        if (
            isinstance(step, Work)
            and step.stitch in ("inc", "dec")
            and stream.kind() == ","
            and stream.kind(1) == "evenly"
        ):
            stream.take()  # "6 inc, evenly spaced around"
        if isinstance(step, Work) and stream.kind() == "evenly":
            if step.places or step.undefined or step.special is not None:
                return False  # "4 shells evenly" are no 4 stitches
            if step.together is not None or step.stitch in ("inc", "dec"):
                return self.shaped_evenly(start, step)
            if not step.number_said and stream.kind(1) == "number":
                stream.take()
                step = replace(step, number=stream.amount() or ONE, number_said=True)  # "sc evenly 26 around the edge"
                stream.at -= 1
            if not step.number_said:  # "sc evenly around": how many is not said
                stream.at = stream.sentence_end(stream.at, ".", ";", ",", *OPENERS)
                in_all = told_in_all(stream, step.stitch)
                span, words = stream.span_from(start), stream.words(start, stream.at)
                self.steps.append(OpenWork(span, words) if in_all is None else Evenly(span, step.stitch, in_all))
                return True
            behind = stream.at
            stream.pass_to()
            more = (at for at in range(behind, stream.at - 1) if stream.lexemes[at].kind == "and")
            stream.at = next(
                (at for at in more if stream.lexemes[at + 1].kind == "number"), stream.at
            )  # "… and 3 in corner"
            sides = each_of_sides(stream.lexemes[behind : stream.at])
            if sides == UNTOLD:
                self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
                return True
            step = self.over_all_edges(start, replace(step, number=times_sides(step.number, sides)))
        if isinstance(step, Work) and not step.places and step.stitch not in ("inc", "dec") and self.along_edge():
            each = any(item.kind == "each" for item in stream.lexemes[start : stream.at])
            if not step.number_said or each:  # how many edges there are is not said
                whole = not step.number_said and step.together is None and step.special is None
                side = step.stitch if whole and along_one_side(stream.lexemes[start : stream.at]) else None
                words = stream.words(start, stream.at)
                self.steps.append(OpenWork(stream.span_from(start), words, stitch=side, side=side is not None))
                return True
            step = self.over_all_edges(start, step)
        told = in_row_ends(step, stream.lexemes[start : stream.at]) if isinstance(step, Work) else "each"
        if told == "in all":
            step = Evenly(stream.span_from(start), step.stitch, step.number, edge=True)
        elif not told:
            self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
            return True
        on_edge = isinstance(step, Work) and bool(step.places) and step.places[-1].targets[0].name == "edge"
        if on_edge or isinstance(step, Evenly):
            one_in_each(stream, step.stitch)
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
        joins = isinstance(step, Work) and step.stitch == "sl st" and _of_other_piece(step)
        if isinstance(step, Work) and len(step.places) == 1 and not picot and not joins and self.loose_group(step):
            return True
        self.steps.append(step)
        if isinstance(step, Work):
            next_ones_in_turn(stream, self.steps) or self.around_is_for_all(step)
        note = notes.of_last_loop(stream) if isinstance(step, Work) and step.places else None
        if note is not None:
            self.attach_counting(note)
            return True
        if stream.kind() == "forming":  # "dc in first sc to form last loop"
            return self.read_counting_sentence(stream.at)
        if stream.kind() == "corner" or self.tells_what_for():
            stream.pass_to()
        return True

    def at_each_end(self, step: Work) -> Shaping | None:
        """The "sc2tog at each end (of row)" that a row loses, however its stitches run."""
        stream = self.stream
        if step.places or step.number.lone != 1 or not shapes(step) or stream.kind() != "at":
            return None
        before = stream.at
        where = self.shaped_where()
        if where is not ShapedWhere.EACH_END or stream.kind() not in (*SIGNS, "end", "turn"):
            stream.at = before
            return None
        span, changed = step.span.to(stream.span_from(before)), Amount.of((step.together or 2) - 1)
        return Shaping(span, changed, step.stitch == "inc", where)

    def place_in_turn(self, step: Work) -> Work | None:
        """ "sc in next 3 sts, 2 sc in 4th st": the one that comes next; "ch 12, sc in 2nd ch": from the hook."""
        place = step.places[0] if step.places else None
        if place is None or place.which is not Which.NTH or place.of is not None or len(place.ordinals) != 1:
            return None
        chain = self.steps[-1] if self.steps else None
        if place.targets[0].kind is TargetKind.CHAIN and isinstance(chain, Chain) and not self.has_work():
            if (chain.length.lone or 0) > place.ordinals[0] > 1:
                return replace(step, places=(replace(place, which=Which.FROM_HOOK), *step.places[1:]))
        if len(step.places) > 1:
            return None
        used = 0
        for before in reversed(self.steps):
            run = before.places[0] if isinstance(before, Work) and len(before.places) == 1 else None
            if run is None or run.which is not Which.NEXT or run.number.lone is None or run.of is not None:
                break
            used += run.number.lone
        if not used or used + 1 != place.ordinals[0] or place.number.lone != 1:
            return None
        return replace(step, places=(replace(place, which=Which.NEXT, ordinals=()),))

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


def _of_other_piece(step: Work) -> bool:
    """ "ch 1, sl st in ch-3 sp of First Motif": a join on the way, whose place is that of no stitch before it."""
    return any(place.which is Which.ELSEWHERE for place in step.places)
