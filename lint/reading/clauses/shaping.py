"""Reads shaping told by where it falls, not stitch by stitch: "dec 1 st at each end", "inc 6 sts evenly across"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.growth import ShapedWhere
from lint.lexicon import Lexeme
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.clauses.base import STITCHY, is_run
from lint.reading.clauses.finish import FinishClauses
from lint.reading.places.increasedin import increased_in_each
from lint.reading.places.limits import limit
from lint.reading.places.targets import ANY, target
from lint.reading.repeating.rowsof import shaped_rows
from lint.reading.words.stream import OPENERS, SIGNS
from lint.tree import NOT_UNDERSTOOD, Evenly, OpenWork, Remark, RowCall, Shaping, Step, Unread, Work

_AS_BEFORE = (
    "in this way",
    "in this manner",
    "in the same way",
    "in same way",
    "in the same manner",
    "as before",
    "as set",
    "as established",
    "as est",
)
_EDGES = ("ending", "row_end", "side", "edge")


class ShapingClauses(FinishClauses):
    """ "decrease 4 sts evenly", "inc 1 st at beg and end of row", "decreasing 1 st at each end"."""

    def read_shaping(self, start: int) -> bool:
        stream = self.stream
        word = stream.take()
        increase = word.kind == "increase" or word.lower == "increasing"
        if word.kind == "word" and word.lower == "double" and stream.kind() in ("each", "all"):
            increase = True  # "double every 3rd st"
            ahead = 2 if stream.kind() == "all" and stream.kind(1) == "the" else 1
            if stream.kind() == "all" and stream.kind(ahead) not in ("any_stitch", "stitch"):
                return False
            stream.at += ahead - 1
            if stream.kind(1) in ("any_stitch", "stitch"):
                stream.take()
                sort = target(stream) or ANY
                place = Place(stream.span_from(start), Which.EACH, (sort,), limit=limit(stream))
                self.steps.append(Work(stream.span_from(start), "inc", places=(place,)))
                return True
        elif word.doubled or word.kind == "word" and word.lower not in ("increasing", "decreasing"):
            return False
        if word.lower == "increasing" and increased_in_each(stream, self.steps, start):
            return True
        number = stream.amount() or ONE
        if stream.word("x", "×") and stream.kind(1) == "number":
            stream.at += 2  # "increase 9 x 1 st in every 6th row"
        if stream.kind() == "times" and stream.kind(1) == "evenly":
            stream.take()  # "dec 6 times evenly"
        stream.take_if("more")
        every = self.every_nth(plain=True) if increase and number == ONE else None
        if every is not None:
            self.run_before(start)
            self.steps.append(Shaping(stream.span_from(start), every, True, ShapedWhere.EVERY))
            return True
        if not increase and stream.word("every") and stream.kind(1) == "number":
            stream.pass_to()  # "decrease every 4 sts": over which of them is not said
            self.steps.append(Unread(stream.span_from(start), stream.words(start, stream.at), NOT_UNDERSTOOD))
            return True
        stream.skip("any_stitch", "stitch")
        if stream.kind() == "more":
            stream.take()
            stream.skip("any_stitch", "stitch")
        self._as_before()
        if stream.kind() == "," and stream.kind(1) == "evenly":
            stream.take()  # "increasing 15 more sts, evenly"
        before = stream.at
        where = self.shaped_where()
        if (
            where is ShapedWhere.EACH_END
            and number != ONE
            and any(item.kind == "first" for item in stream.lexemes[before : stream.at])
        ):  # "increasing 2 sts in the first and last st": two in all, or two in each
            self.steps.append(Unread(stream.span_from(start), stream.words(start, stream.at), NOT_UNDERSTOOD))
            return True
        if where is None:
            stream.at = before
            stream.take_if("in")
        elif where is ShapedWhere.EVENLY and number == ONE and stream.kind() == "number" and stream.kind(1) == "times":
            number = stream.take().quantity  # "inc evenly 6 times"
            stream.take()
        elif not self.has_work():
            shaping = Shaping(stream.span_from(start), number, increase, where)
            rows = shaped_rows(stream, shaping, start)
            if rows is not None:
                self.steps += rows
                return True
        if where is None and self._in_each_row(start, number, increase):
            return True
        if stream.kind() == "each" or stream.kind() == "next" and stream.kind(1) in ("row", "round"):
            if any(item.kind in ("row", "round") for item in stream.lexemes[stream.at : stream.at + 6]):
                self.pass_rows()  # "every 4 rows 6 times"
                self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
                return True
        if where is None and stream.kind(-1) in ("any_stitch", "stitch") and stream.kind() == "at":
            stream.at = stream.sentence_end(stream.at, ".", ";", ",", *OPENERS)  # "dec 2 sts at toe and 2 sts at heel"
            self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
            return True
        if where is None:
            return False
        span = stream.span_from(start)
        if where is ShapedWhere.ONE_END and self.stops_short():  # "sc to last 2 sts, dec at end of row": there
            self.steps.append(Work(span, "inc" if increase else "dec", number, number_said=number != ONE))
            return True
        self.steps.append(Shaping(span, number, increase, where))
        return True

    def read_own_increase(self, start: int) -> bool:
        """ "double every 2nd st", where the pattern's list says that to double is to work two in one stitch."""
        stream = self.stream
        special = stream.vocabulary.specials.get(str(stream.take().value))
        one = special.items[0] if special is not None and len(special.items) == 1 else None
        every = self.every_nth(plain=True) if isinstance(one, Work) and one.number.lone == 2 else None
        if every is None or every == ONE or one.together is not None:
            return False
        self.steps.append(Shaping(stream.span_from(start), every, True, ShapedWhere.EVERY))
        return True

    def _as_before(self) -> None:
        """Takes "in this way", "as before": how the stitches are gained or lost, which is no matter to their number."""
        stream = self.stream
        for words in _AS_BEFORE:
            said = " ".join(item.lower for item in stream.lexemes[stream.at : stream.at + len(words.split())])
            if said == words:
                stream.at += len(words.split())
                return
            if stream.word(words):  # one word to the lexicon
                stream.take()
                return

    def _in_each_row(self, start: int, number: Amount, increase: bool) -> bool:
        """ "Continue in this way, increasing 4 sts in each rnd": where they fall is as before, and so many in all."""
        stream = self.stream
        before = stream.at
        counted = stream.kind(-1) in ("any_stitch", "stitch") or stream.kind(-2) in ("any_stitch", "stitch")
        alone = all(isinstance(step, OpenWork) and not step.plain for step in self.steps)
        each = counted and alone and (stream.take_if("each") or stream.word("per", "a") and stream.take())
        if each and stream.take_if("row", "round"):
            self._as_before()
            if stream.done or stream.kind() in (".", ";", "dash", "=", *OPENERS):
                self.steps.clear()
                self.steps.append(Shaping(stream.span_from(start), number, increase, ShapedWhere.EVENLY))
                return True
        stream.at = before
        return False

    def run_shaped_evenly(self, start: int) -> bool:
        """ "sc across, working 5 increases evenly spaced", "with 6 evenly spaced decreases": over the run before."""
        stream = self.stream
        if not self.steps or not is_run(self.steps[-1]) or not stream.take_if("make", "with"):
            return False
        number = stream.amount()
        spread = bool(stream.take_if("evenly"))
        stream.take() if spread and stream.word("spaced") else None
        sort = stream.take_if("increase", "decrease") if number is not None else None
        spread = sort is not None and bool(stream.take_if("evenly")) or spread
        if sort is None or not spread:
            stream.at = start
            return False
        self.pass_row_words()
        where = ShapedWhere.EVENLY
        self.steps.append(Shaping(stream.span_from(start), number, sort.kind == "increase", where))
        return True

    def shaped_evenly(self, start: int, step: Work) -> bool:
        """ "sc2tog 6 times evenly around, sc in all other sts", "sc across, working 6 decreases evenly spaced"."""
        stream = self.stream
        if stream.kind(1) == "number" and not step.number_said:  # "sc2tog evenly 6 times"
            stream.take()
            step = replace(step, number=stream.amount() or ONE, number_said=True)
            stream.take_if("times")
        else:
            stream.take()
        runs = bool(self.steps) and is_run(self.steps[-1])
        if not step.number_said or step.special is not None or self.has_work() and not runs:
            return False
        self.pass_row_words()
        each = (step.together or 2) - 1
        number = Amount(tuple(None if one is None else one * each for one in step.number.values))
        shaping = Shaping(stream.span_from(start), number, step.stitch == "inc", ShapedWhere.EVENLY)
        if step.together is not None and not runs:
            place = Place(shaping.span, Which.EACH, (ANY,), limit=Limit(LimitKind.END))
            self.steps.append(Work(shaping.span, step.stitch, places=(place,)))
        self.steps.append(shaping)
        if step.together is not None:
            self.pass_all_others(step.stitch)
        return True

    def times_evenly(self, start: int) -> bool:
        """ "dc in each st across, 10 times evenly spaced across work dc2tog": over the run before."""
        stream = self.stream
        number, before = stream.amount(), len(self.steps)
        runs = bool(self.steps) and is_run(self.steps[-1])
        bare = not runs and not self.has_work()
        if number is not None and (runs or bare) and stream.take_if("times") and stream.take_if("evenly"):
            self.pass_row_words()
            stream.skip(",", ":", "make")
            step = self.steps.pop() if self.clause() and len(self.steps) == before + 1 else None
            gain, span, behind = _gained(step), stream.span_from(start), stream.at
            if bare and gain:  # "…, sc in all other sts"
                self.pass_all_others(step.stitch)
                gain = gain if stream.at > behind else 0
                place = Place(span, Which.EACH, (ANY,), limit=Limit(LimitKind.END))
                self.steps.append(Work(span, step.stitch, places=(place,)))
            if gain:
                several = Amount(tuple(None if one is None else one * abs(gain) for one in number.values))
                self.steps.append(Shaping(span, several, gain > 0, ShapedWhere.EVENLY))
                self.pass_row_words()
                return True
        del self.steps[before:]
        stream.at = start
        return False

    def pass_all_others(self, stitch: str) -> None:
        """Passes ", hdc in all other sts", which the run of a shaping spread evenly holds already."""
        stream = self.stream
        start = stream.at
        stream.skip(",", "and", "number")
        if stream.kind() == "stitch" and stream.take().value == stitch:
            said = stream.word("in all") and bool(stream.take()) or bool(stream.take_if("in"))
            each = not stream.word("every") and bool(stream.take_if("each")) or stream.kind(-1) == "total"
            stream.skip("the")
            other = each and stream.word("other", "others") or stream.kind() == "remaining"
            if said and other and stream.take() and stream.take_if("any_stitch", "stitch"):
                self.pass_row_words()
                return
        stream.at = start

    def pass_rows(self) -> None:
        """Passes to the sentence's end or a bracket, over brackets that speak of rows: "(10 x 1 st in every 5th row)"."""
        stream = self.stream
        while True:
            stream.at = stream.sentence_end(stream.at, ".", ";", *OPENERS)
            close = stream.matching(stream.at) if stream.kind() in OPENERS else None
            if close is None or not any(item.kind in ("row", "round") for item in stream.lexemes[stream.at : close]):
                return
            stream.at = close + 1

    def stops_short(self) -> bool:
        """Whether the run before ends short of the row's end."""
        before = self.steps[-1] if self.steps else None
        limit = before.places[-1].limit if isinstance(before, Work) and before.places else None
        return limit is not None and limit.kind is LimitKind.LAST

    def run_before(self, start: int) -> None:
        """ "sc, increasing in every 5th st": a stitch that stands alone before is a run over the row."""
        last = self.steps[-1] if self.steps else None
        alone = isinstance(last, Work) and not last.places and not last.number_said and last.together is None
        works = [step for step in self.steps if isinstance(step, Work)]
        if alone and len(works) == 1 and last.stitch not in ("inc", "dec", "sl st"):
            run = Place(last.span, Which.EACH, (ANY,), limit=Limit(LimitKind.END))
            self.steps[-1] = replace(last, places=(run,))

    def every_nth(self, plain: bool = False) -> Amount | None:
        """Takes "in every 3rd st (around)", "every other st": the n.  `plain`: "every 3 sts" as well."""
        stream = self.stream
        start = stream.at
        stream.take_if("in")
        plain = plain and stream.word("every")  # "in each 3 sts" are three
        if stream.word("every", "each") and stream.take():
            ordinal = stream.take_if("ordinal", "number") if plain else stream.take_if("ordinal")
            other = ordinal is None and stream.word("other") and stream.take()
            if (ordinal or other) and stream.take_if("any_stitch", "stitch"):
                self.pass_row_words()
                return Amount.of(ordinal.number if ordinal else 2)
        stream.at = start
        return None

    def shaped_where(self) -> ShapedWhere | None:
        """Takes "evenly (across)", "at each end (of row)", "at beg and end of row", "at end of row"."""
        stream = self.stream
        if stream.kind() in ("across", "around") and stream.kind(1) == "evenly":
            stream.take()
        if stream.take_if("evenly"):
            self.pass_row_words()
            return ShapedWhere.EVENLY
        stream.skip("at", "in", "the")
        at_edge = stream.at
        while stream.word(
            "neck", "armhole", "front", "side", "center", "centre", "raglan", "inner", "outer", "inside", "outside"
        ):
            stream.take()
        if stream.at > at_edge and stream.take_if("edge", "side", "ending"):
            self.pass_row_words()
            return ShapedWhere.ONE_END  # "at neck edge"
        stream.at = at_edge
        if stream.kind() == "first" and stream.kind(1) == "and":
            stream.at += 2  # "increasing in the first and last st"
            stream.skip("in", "the")
            if stream.take_if("last") and stream.take_if("any_stitch", "stitch"):
                self.pass_row_words()
                return ShapedWhere.EACH_END
            stream.at = at_edge
        called = any(isinstance(step, RowCall) for step in self.steps)  # of which of the rows it is said is not told
        if stream.kind() in ("first", "last") and stream.kind(1) in ("any_stitch", "stitch") and not called:
            stream.at += 2  # "increasing (1 st) in the last st"
            return ShapedWhere.ONE_END if stream.kind() in (*SIGNS, "end", "turn", "join", *OPENERS) else None
        if stream.kind() == "each" or stream.word("both"):
            stream.take()
            stream.skip("the")
            if not stream.take_if(*_EDGES):
                return None
            self.pass_row_words()
            return ShapedWhere.EACH_END
        begins, ends = bool(stream.take_if("beginning")), False
        if begins:
            stream.skip("of", "row", "round", "the")
            both = stream.kind() == "and"
            stream.skip("and", "at", "the")
            ends = both and bool(stream.take_if("ending", "row_end"))
        elif stream.take_if("ending", "row_end"):
            ends = True
        if not begins and not ends:
            return None
        self.pass_row_words()
        return ShapedWhere.EACH_END if begins and ends else ShapedWhere.ONE_END

    def pass_row_words(self) -> None:
        """Passes "across the row", "of this row", "spaced around"."""
        stream = self.stream
        while stream.kind() in ("across", "around", "over", "of", "the", "row", "round", "side") or stream.word(
            "this", "spaced", "row", "throughout"
        ):
            stream.take()

    def read_put(self, start: int) -> bool:
        """ "place 3 sc in same st" is work; "place 8 mm eyes between Rnds 12 and 13" is not."""
        stream = self.stream
        end = stream.sentence_end(start, ".", ";")
        work = (
            i
            for i in range(start, end)
            if stream.leads_to_work(i) or stream.kind(i - start) == "," and stream.work_at(i + 1)
        )
        end = next(work, end)
        words = stream.lexemes[start:end]
        between = next((i for i, item in enumerate(words) if item.kind == "between"), len(words))
        rows = any(item.kind in ("row", "round") or item.lower == "r" for item in words[between:])
        things = not any(item.kind in STITCHY for item in words[:between])  # "place the beads between Rnds 5 and 6"
        put = any(item.lower in ("eye", "eyes", "nose", "safety") for item in words) or _filled_in(words)
        if rows and things or put:
            stream.at = end
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.take()
        return stream.kind() in ("number", "stitch", "(", "[") and self.clause()

    def read_evenly(self, start: int) -> bool:
        """ "Evenly distribute 88 dc along"."""
        stream = self.stream
        stream.take()
        if not (stream.word("distribute", "space", "spread") and stream.take() or stream.take_if("make")):
            return False
        number = stream.amount()
        if number is None or stream.kind() != "stitch":
            return False
        stitch = stream.take().value
        stream.pass_to()
        self.steps.append(Evenly(stream.span_from(start), stitch, number))
        return True


_COVERS = ("half", "halves", "layers", "pieces", "cover", "circles", "squares", "motifs", "inside")
_FILLING = ("place", "word", "the", "number", "between", "in", "to", "first", "ordinal", "half")
_OF_THE_WORK = ("work", "hook", "yarn", "loop", "loops", "needle", "remaining", "unworked")


def _filled_in(words: list[Lexeme]) -> bool:
    """ "Place bauble between the 2 halves", "Put the pillow form inside": a thing that the piece is worked around."""
    if len(words) < 3 or words[-1].lower not in _COVERS or any(item.kind not in _FILLING for item in words):
        return False
    thing = words[2 if words[1].kind == "the" else 1]
    return thing.kind == "word" and not any(item.lower in _OF_THE_WORK for item in words)


def _gained(step: Step | None) -> int:
    """How many stitches a clause gains where it stands for one of a run: -1 for "dc2tog", 1 for "2 sc in next st"."""
    if not isinstance(step, Work) or step.special is not None:
        return 0
    if step.together is not None or step.stitch in ("inc", "dec"):
        alone = step.number == ONE and len(step.places) <= 1
        return (1 if step.stitch == "inc" else 1 - (step.together or 2)) if alone else 0
    one = len(step.places) == 1 and step.places[0].number == ONE and step.places[0].targets == (ANY,)
    one = one and step.places[0].which in (Which.NEXT, Which.SAME, Which.ANY) and step.number.lone is not None
    return (step.number.lone or 1) - 1 if one else 0
