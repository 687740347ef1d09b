"""Reads shaping told by where it falls, not stitch by stitch: "dec 1 st at each end", "inc 6 sts evenly across"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.growth import ShapedWhere
from lint.lexicon import Lexeme
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.clauses.base import STITCHY, is_run
from lint.reading.clauses.evenly import EvenlyClauses
from lint.reading.places.increasedin import increased_in_each
from lint.reading.places.limits import limit
from lint.reading.places.places import places
from lint.reading.places.targets import ANY, target
from lint.reading.repeating.shapedrows import shaped_rows
from lint.reading.words.stream import OPENERS, SIGNS
from lint.tree import NOT_UNDERSTOOD, OpenWork, Remark, RowCall, Shaping, Unread, Work

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


class ShapingClauses(EvenlyClauses):
    """ "decrease 4 sts evenly", "inc 1 st at beg and end of row", "decreasing 1 st at each end"."""

    def read_shaping(self, start: int) -> bool:
        stream = self.stream
        word = stream.take()
        if word.lower in ("while", "whilst") and stream.word("increasing", "decreasing"):
            word = stream.take()  # "sc around while increasing 4 sts evenly"
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
        where = None if word.kind == "increase" and number == ONE and self.into_one_stitch() else self.shaped_where()
        if (
            where is ShapedWhere.EACH_END
            and number != ONE
            and any(item.kind == "first" for item in stream.lexemes[before : stream.at])
        ):  # "increasing 2 sts in the first and last st": two in all, or two in each
            self.steps.append(Unread(stream.span_from(start), stream.words(start, stream.at), NOT_UNDERSTOOD))
            return True
        if where is None and self.said_of_run(word, before):
            stream.at, where = before, ShapedWhere.EVENLY  # "increasing 1 st.": wherever it falls, it is one more
        elif where is None:
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
        if word.lower == "decreasing" and number == ONE and stream.at == start + 1 and stream.kind() == "over":
            found = places(stream)  # "sc across, decreasing over last 2 sts"
            if len(found) == 1 and found[0].which in (Which.FIRST, Which.LAST, Which.NEXT) and found[0].number != ONE:
                self.steps.append(Work(stream.span_from(start), "dec", places=found))
                return True
        if where is None:
            return False
        participle = word.lower in ("increasing", "decreasing")
        over = self.shaped_over(participle) if where is ShapedWhere.EVENLY else None
        span = stream.span_from(start)
        if where is ShapedWhere.ONE_END and self.stops_short():  # "sc to last 2 sts, dec at end of row": there
            self.steps.append(Work(span, "inc" if increase else "dec", number, number_said=number != ONE))
            return True
        self.steps.append(Shaping(span, number, increase, where, over))
        return True

    def said_of_run(self, word: Lexeme, at: int) -> bool:
        """Whether "…, increasing 1 st" is all that is said of the run before it."""
        behind = self.stream.lexemes[at].kind if at < len(self.stream.lexemes) else "end"
        ended = behind in (*SIGNS, "end", "dash", "=", *OPENERS)
        counted = self.stream.lexemes[at - 1].kind in ("any_stitch", "stitch")
        told = word.lower in ("increasing", "decreasing") and counted and ended
        return told and bool(self.steps) and is_run(self.steps[-1])

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

    def pass_rows(self) -> None:
        """Passes to the sentence's end or a bracket, over brackets that speak of rows: "(10 x 1 st in every 5th row)"."""
        stream = self.stream
        while True:
            stream.at = stream.sentence_end(stream.at, ".", ";", *OPENERS)
            close = stream.matching(stream.at) if stream.kind() in OPENERS else None
            if close is None or not any(item.kind in ("row", "round") for item in stream.lexemes[stream.at : close]):
                return
            stream.at = close + 1

    def into_one_stitch(self) -> bool:
        """Whether "inc in last st" stands for itself: a stitch of the row's, and nothing that is told of the run before it."""
        stream = self.stream
        at = 2 if stream.kind(1) == "the" else 1
        named = stream.kind() == "in" and (stream.kind(at) in ("first", "last") or stream.word("end", ahead=at))
        named = named and stream.kind(at + 1) in ("any_stitch", "stitch")
        called = any(isinstance(step, RowCall) for step in self.steps)
        return named and not called and not (self.steps and is_run(self.steps[-1]))

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

    def skips_every_nth(self, start: int) -> bool:
        """ "sc in each st around, skipping every 6th st": the run before passes over these."""
        stream = self.stream
        run = self.steps[-1] if self.steps else None
        each = isinstance(run, Work) and len(run.places) == 1 and run.places[0].which is Which.EACH
        stream.at += stream.word("but")
        skips = stream.take_if("skip")
        every = self.every_nth() if each and skips and stream.kind() == "each" and run.number == ONE else None
        if every is None or stream.kind() not in (*SIGNS, *OPENERS, "end", "join", "turn", "dash", "="):
            stream.at = start
            return False
        self.steps.append(Shaping(stream.span_from(start), every, False, ShapedWhere.SKIPPED))
        return True

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
            *("neck", "armhole", "front", "side", "center", "centre", "raglan", "inner", "outer", "inside", "outside"),
            *("same", "shaped", "sloping", "curved", "long", "short"),
        ):
            stream.take()
        if stream.at > at_edge and stream.take_if("edge", "side", "ending"):
            stream.take() if stream.word("only", "alone") else None
            self.pass_row_words()
            return ShapedWhere.ONE_END  # "at neck edge"
        stream.at = at_edge
        if self.in_the_middle():
            return ShapedWhere.EVENLY  # "at centre back": the run has so many more, wherever they stand in it
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
            self.pass_middle_stitch()
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

    def in_the_middle(self) -> bool:
        """Takes "centre back", "center", "middle of the row" at the clause's end."""
        stream, start = self.stream, self.stream.at
        if stream.take_if("middle"):
            while stream.word("back", "front") or stream.kind() in ("of", "the", "row", "round"):
                stream.take()
            if stream.kind() in (*SIGNS, "end", "turn", "join", *OPENERS):
                return True
        stream.at = start
        return False

    def pass_middle_stitch(self) -> None:
        """Takes "of (the) centre front st", beside which it is shaped; nothing of any other words."""
        stream, start = self.stream, self.stream.at
        stream.skip("of", "the")
        middle = stream.at > start and (stream.take_if("middle", "marked") or stream.word("centre", "center"))
        while stream.word("centre", "center", "front", "neck", "back"):
            stream.take()
        if not middle or stream.take_if("any_stitch", "stitch") is None:
            stream.at = start

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


_COVERS = ("half", "halves", "layers", "pieces", "cover", "circles", "squares", "motifs", "inside")
_FILLING = ("place", "word", "the", "number", "between", "in", "to", "first", "ordinal", "half")
_OF_THE_WORK = ("work", "hook", "yarn", "loop", "loops", "needle", "remaining", "unworked")


def _filled_in(words: list[Lexeme]) -> bool:
    """ "Place bauble between the 2 halves", "Put the pillow form inside": a thing that the piece is worked around."""
    if len(words) < 3 or words[-1].lower not in _COVERS or any(item.kind not in _FILLING for item in words):
        return False
    thing = words[2 if words[1].kind == "the" else 1]
    return thing.kind == "word" and not any(item.lower in _OF_THE_WORK for item in words)
