"""Reads the words of one row into steps, by recursive descent.  Never raises: what cannot be read
stays as an Unread step with the words that stopped it, and reading goes on at the next stop.

row     := clause ((","|";"|"."|"and"|dash) clause)*
clause  := chain | work | bracket | star | repeat | skip | join | yarn | turn | ring | loops | remark
bracket := "(" row ")" then a place (a group worked into it) or a number of times (a repeat)
star    := "*" … "rep from *" times        (folded in reading.repeats)
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.amount import Amount
from lint.pattern import Stated
from lint.reading import counts, notes, repeats
from lint.reading.places import places
from lint.reading.rowcalls import row_call
from lint.reading.stream import CLOSERS, OPENERS, Stream
from lint.reading.targets import is_space_word, target
from lint.reading.times import times as read_times
from lint.reading.work import post_stitch, work
from lint.tree import (
    Alongside,
    Chain,
    Either,
    Evenly,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    LastPlace,
    Loops,
    MakeRing,
    NoJoin,
    Place,
    Remark,
    Repeat,
    Skip,
    Step,
    Target,
    TargetKind,
    Turn,
    Unread,
    UseYarn,
    Which,
    Work,
    walk,
)

_SEPARATORS = (
    ",",
    ";",
    ".",
    ":",
    "dash",
    "and",
    "then",
    "..",
    "...",
    "•",
    "·",
    "=",
    "→",
    "|",
    "with?",
    "but",
    "!",
    '"',
)
_STITCHY = {
    "stitch",
    "special",
    "one_stitch",
    "group_word",
    "chain",
    "increase",
    "decrease",
    "skip",
    "picot",
    "repeat",
    "number",
}
_WORKING_WORDS = {
    "continue",
    "work",
    "working",
    "pattern",
    "patt",
    "complete",
    "same",
    "repeat",
    "until",
    "decrease",
    "increase",
    "even",
    "correspond",
    "as",
    "match",
    "established",
}


@dataclass
class Reading:
    """Steps read so far, the printed count met, and what is open."""

    steps: list[Step]
    stated: Stated | None = None


def read_row(stream: Stream) -> Reading:
    """Read a whole row: all its words become steps, counts, or Unread steps."""
    reading = Reading([])
    parser = _Clauses(stream, reading, top=True)
    parser.run()
    reading.steps = _closing_join(repeats.fold_loose(reading.steps))
    return reading


def read_inside(stream: Stream) -> list[Step]:
    """Read the words inside a bracket (or of a definition)."""
    reading = Reading([])
    _Clauses(stream, reading, top=False).run()
    return repeats.fold_loose(reading.steps)


def all_read(steps: list[Step]) -> bool:
    return not any(isinstance(step, Unread) for step in walk(tuple(steps)))


class _Clauses:
    def __init__(self, stream: Stream, reading: Reading, top: bool) -> None:
        self.stream = stream
        self.reading = reading
        self.steps = reading.steps
        self.top = top

    def run(self) -> None:
        stream = self.stream
        while True:
            while stream.kind() in _SEPARATORS and not self._empty_size():
                stream.take()
            if stream.done:
                return
            start = stream.at
            if self._count():
                continue
            if not self._clause():
                stream.at = max(stream.at, start)
                self._not_read(start)
            if stream.at == start:  # every turn takes something
                stream.take()

    def _empty_size(self) -> bool:
        """A dash that stands for a size which does not work this: "- (-, 76, 80) hdc"."""
        stream = self.stream
        return (
            stream.kind() == "dash"
            and stream.vocabulary.sizes > 1
            and stream.kind(1) in OPENERS
            and stream.kind(2) in ("dash", "number")
        )

    def _run_on(self, start: int) -> bool:
        """Whether the words at `start` hang on a clause before them without a stop: they may change what it means."""
        return start > 0 and self.stream.lexemes[start - 1].kind not in (*_SEPARATORS, *OPENERS, *CLOSERS, "star")

    # counts --------------------------------------------------------------------------------------

    def _count(self) -> bool:
        """A printed count at the cursor, in any of its forms."""
        if not self.top:
            return False
        found = counts.bare_count(self.stream, bool(self.steps))
        if found is None:
            return False
        self.reading.stated = found
        return True

    # clauses -------------------------------------------------------------------------------------

    def _clause(self) -> bool:
        stream = self.stream
        start = stream.at
        kind = stream.kind()
        if kind == "star":
            return self._star()
        if kind in OPENERS:
            return self._bracket()
        if kind in CLOSERS:
            lexeme = stream.take()
            self.steps.append(Unread(lexeme.span, lexeme.text, "this bracket is never opened"))
            return True
        read = self._readers().get(kind)
        if read is not None and read(start):
            return True
        stream.at = start
        if kind in (
            "number",
            "stitch",
            "special",
            "one_stitch",
            "group_word",
            "increase",
            "decrease",
            "picot",
            "beginning",
            "the",
        ):
            if self._number_first(start):
                return True
            stream.at = start
        return False

    def _readers(self):
        return {
            "chain": self._chain,
            "in": self._place_first,
            "over": self._place_first,
            "skip": self._skip,
            "join": self._join,
            "joining": self._join,
            "the": self._the,
            "last": self._last_place,
            "first": self._last_place,
            "attach": self._attach,
            "turn": self._turn,
            "no_turn": self._no_turn,
            "no_join": self._no_join,
            "no_fasten": self._remark_phrase,
            "fasten_off": self._fasten_off,
            "with": self._with,
            "make": self._make,
            "ring": self._ring,
            "back_loop": self._loops,
            "front_loop": self._loops,
            "both_loops": self._loops,
            "third_loop": self._loops,
            "repeat": self._repeat,
            "as": self._row_call,
            "same": self._row_call,
            "ending": self._ending,
            "omit": self._omit,
            "unworked": self._leave,
            "leave": self._leave_last,
            "marker": self._sentence_remark,
            "beginning": self._beginning_remark,
            "for": self._for_remark,
            "at": self._at_remark,
            "from": self._again,
            "throughout": self._remark_phrase,
            "counts": self._counting_sentence,
            "counts_not": self._counting_sentence,
            "each": self._each_remark,
        }

    def _chain(self, start: int) -> bool:
        """ "ch 3", "ch3", "chain-3", and "ch 4, join to form a ring"."""
        stream = self.stream
        stream.take()
        if stream.kind() == "dash" and stream.peek(1).glued:
            stream.take()
        number = stream.amount()
        if number is None:
            if stream.kind() in ("number",) and stream.word("one"):
                number = Amount.of(stream.take().number)
            else:
                return False
        if is_space_word(stream):
            return False
        return self._chain_of(start, number)

    def _chain_of(self, start: int, number: Amount) -> bool:
        stream = self.stream
        self.steps.append(Chain(stream.span_from(start), number))
        note = notes.for_first_stitch(stream)
        if note is not None:
            self._attach_counting(note)
        self._ring_close(start, number)
        return True

    def _ring_close(self, start: int, number: Amount) -> None:
        """After a chain: "join with sl st (in first ch) to form a ring" makes the chain a ring."""
        stream = self.stream
        mark = stream.at
        stream.skip(",", ".", ";", "and", "then")
        verb = stream.peek()
        if verb.kind == "join" or (verb.kind == "stitch" and verb.value == "sl st"):
            words_from = stream.at
            ring = False
            ordinal = False
            while not stream.done and stream.kind() not in (",", ";", ".", ":", "(", "[", "{", "star"):
                ring = ring or stream.kind() == "ring"
                ordinal = ordinal or stream.kind() == "first" or stream.kind() == "ordinal"
                stream.take()
            plain = self.top and stream.at - words_from <= 3 and verb.kind == "join"  # "ch 4, join."
            to_chain = (
                self.top
                and not any(item.kind == "hook" for item in stream.lexemes[words_from : stream.at])
                and any(item.kind == "chain" for item in stream.lexemes[words_from : stream.at])
                and ordinal
            )
            if ring or ((plain or to_chain) and not self._has_work()):
                self.steps[-1] = MakeRing(stream.span_from(start), number)
                return
        stream.at = mark

    def _has_work(self) -> bool:
        return any(isinstance(step, (Work, Group)) for step in walk(tuple(self.steps)))

    def _number_first(self, start: int) -> bool:
        """ "2 dc in next st", "3 ch", "36 sc evenly along side", "5 inc"."""
        stream = self.stream
        stream.skip("the")
        number = stream.amount()
        if number is not None:
            if stream.kind() in ("times",):
                return False
            stream.skip("more")
            if stream.kind() == "chain":
                stream.take()
                if is_space_word(stream) or (stream.kind() == "dash" and is_space_word(stream, 1)):
                    return False
                return self._chain_of(start, number)
        step = work(stream, start, number)
        if step is None:
            return False
        return self._finish_work(start, step)

    def _finish_work(self, start: int, step: Step) -> bool:
        stream = self.stream
        if isinstance(step, Work) and stream.kind() == "evenly":
            if not step.number_said or step.places:
                return False
            while not stream.done and stream.kind() not in (",", ";", ".", "(", "[", "{", "star", ")", "]", "}"):
                stream.take()
            step = Evenly(stream.span_from(start), step.stitch, step.number)
        self.steps.append(step)
        if stream.kind() == "corner" or (stream.kind() == "for" and stream.kind(1) in ("corner", "the")):
            while not stream.done and stream.kind() not in (",", ";", ".", "(", "[", "{", "star", ")", "]", "}"):
                stream.take()
        return True

    def _place_first(self, start: int) -> bool:
        """ "in next sp make 2 dc, ch 2 and 2 dc", "over next 2 sts work dc2tog", "in first st *make 2 hdc"."""
        stream = self.stream
        if stream.kind(1) in ("back_loop", "front_loop", "both_loops"):  # "in FLO: …"
            stream.take()
            return self._loops(start)
        found = places(stream)
        if not found:
            return False
        stream.skip(",")
        stream.take_if("make")
        if stream.kind() in OPENERS:
            close = stream.matching(stream.at)
            if close is None:
                return False
            items = read_inside(stream.inside(stream.at + 1, close))
            stream.at = close + 1
            times = read_times(stream)
            if times is not None:
                items = [Repeat(stream.span_from(start), tuple(items), times)]
        else:
            items = self._loose_list(stream)
        if not items and self._more_places(found):
            return True
        if not items or not all_read(items):
            return False
        items = [item for item in items if not isinstance(item, Remark)]
        if len(items) == 1 and isinstance(items[0], Work) and not items[0].places:
            self.steps.append(replace(items[0], places=found, span=stream.span_from(start)))
        else:
            self.steps.append(Group(stream.span_from(start), tuple(items), found))
        return True

    def _more_places(self, found: tuple[Place, ...]) -> bool:
        """ "dc in 4th ch from hook (counts as 2 dc) and in each ch across": more places for the stitch before."""
        if self.stream.kind() not in (",", ";", ".", "end", "(", *CLOSERS, "dash"):
            return False
        for index in range(len(self.steps) - 1, -1, -1):
            step = self.steps[index]
            if isinstance(step, (Work, Group)) and step.places:
                self.steps[index] = replace(step, places=(*step.places, *found))
                return True
            if not isinstance(step, Remark):
                return False
        return False

    def _loose_list(self, stream: Stream) -> list[Step]:
        """An unbracketed list after "make": it ends with the item after "and", or is one item."""
        items: list[Step] = []
        last = False
        while True:
            before = len(items)
            start = stream.at
            sub = _Clauses(stream, Reading(items), top=False)
            if (
                stream.kind()
                in ("chain", "number", "stitch", "special", "one_stitch", "picot", "group_word", "increase", "decrease")
                and sub._clause()
            ):
                pass
            if len(items) == before:
                stream.at = start
                return items if last or len(items) == 1 else []
            if last:
                return items
            if (
                stream.kind() == ","
                and stream.kind(1) in ("chain", "number", "stitch", "special", "one_stitch", "picot", "and")
                and _and_ahead(stream)
            ):
                stream.take()
                if stream.take_if("and"):
                    last = True
            elif stream.kind() == "and":
                stream.take()
                last = True
            elif before == 0:
                return items
            else:
                return []

    def _skip(self, start: int) -> bool:
        """ "skip next 2 dc", "sk 3", "miss first 4 ch (3 ch count as 1 tr)", "skip all remaining sts"."""
        stream = self.stream
        stream.take()
        stream.skip(",", "the", "over")
        if stream.kind() in ("all", "remaining"):
            while not stream.done and stream.kind() not in (",", ";", "."):
                stream.take()
            self.steps.append(Skip(stream.span_from(start), (), rest=True))
            return True
        if stream.kind() in OPENERS:
            close = stream.matching(stream.at)
            if close is None:
                return False
            inner = stream.inside(stream.at + 1, close)
            found = _skipped(inner)
            if not found or not inner.done:
                return False
            stream.at = close + 1
        else:
            found = _skipped(stream)
        if not found:
            return False
        if stream.kind() == "word" and stream.word("directly", "behind") or stream.kind() == "between":
            _to_sign(stream)
        if stream.kind() == "or" and stream.kind(1) in ("next", "number", "chain"):
            stream.take()
            other = _skipped(stream)
            if not other:
                return False
            span = stream.span_from(start)
            self.steps.append(Either(span, ((Skip(span, found),), (Skip(span, other),))))
            return True
        counting = None
        if stream.kind() == "(":
            close = stream.matching(stream.at)
            note = notes.counting(stream.inside(stream.at + 1, close)) if close else None
            if note is not None:
                counting = note
                stream.at = close + 1
        self.steps.append(Skip(stream.span_from(start), found, counting))
        return True

    # joins, yarn, turns ----------------------------------------------------------------------------

    def _join(self, start: int) -> bool:
        stream = self.stream
        stream.take()
        if stream.kind() in ("of", "as") or stream.word("round", "rnd", "rounds"):
            _to_sign(stream)
            self.steps.append(Join(stream.span_from(start)))
            return True
        colour = self._colour()
        yarn = stream.take_if("yarn")
        colour = colour or (self._colour() if yarn else None)
        stream.skip("then")
        stitch, step = None, None
        if stream.take_if("with"):
            stream.skip("the")
            one = stream.amount()
            del one
            if stream.kind() == "stitch":
                stitch = stream.take().value
        found = places(stream, allow_to=True)
        if not stitch and stream.kind() == "with":
            stream.take()
            stream.skip("the")
            stream.amount()
            if stream.kind() == "stitch":
                stitch = stream.take().value
        if not found:
            found = places(stream, allow_to=True)
        if not found and stream.kind() in ("in", "to"):
            return False
        del step
        if stream.kind() == "together" or stream.word("together"):
            return False
        if stream.kind() == "at":  # "at the start of a short edge"
            _to_sign(stream)
        elsewhere = bool(found) and found[0].which in (Which.ANY, Which.ELSEWHERE)
        span = stream.span_from(start)
        if (
            colour
            or yarn
            or elsewhere
            or (found and not self._has_work() and not any(isinstance(s, Chain) for s in self.steps))
        ):
            self.steps.append(JoinYarn(span, colour, stitch if stitch != "sl st" else None, found))
        elif stitch not in (None, "sl st"):
            self.steps.append(Work(span, stitch, places=found))
        else:
            self.steps.append(Join(span, found))
        if stream.kind() == "to" and stream.kind(1) in ("join", "word"):
            _to_sign(stream)
        return True

    def _attach(self, start: int) -> bool:
        """ "join yarn with sl st in …", "attach White to any ch-5 sp"."""
        stream = self.stream
        stream.take()
        colour = self._colour()
        if colour is None and stream.kind() == "word" and not stream.word("with"):
            colour = stream.take().text
        stitch = None
        if stream.take_if("with"):
            stream.skip("the")
            stream.amount()
            if stream.kind() == "stitch":
                stitch = stream.take().value
        found = places(stream, allow_to=True)
        if not found and not stream.done and stream.kind() not in (",", ";", "."):
            _to_sign(stream)
            found = (Place(stream.span_from(start), Which.ELSEWHERE, (Target(TargetKind.PLACE),)),)
        elif found and stream.kind() in ("of",):
            _to_sign(stream)
        self.steps.append(JoinYarn(stream.span_from(start), colour, stitch if stitch != "sl st" else None, found))
        return True

    def _colour(self) -> str | None:
        """A colour's letter or name at the cursor, if the pattern declares it or it looks like one."""
        stream = self.stream
        start = stream.at
        new = stream.word("new", "next", "second", "main", "contrasting")
        if new and stream.kind(1) == "color":
            stream.at += 2
            return "new colour"
        stream.skip("the", "color", "yarn") if stream.kind() == "color" else None
        lexeme = stream.peek()
        if lexeme.kind in ("word", "the", "ring") and (
            lexeme.lower in stream.vocabulary.colours
            or lexeme.text in ("A", "B", "C", "D", "E", "F", "MC", "CC")
            or lexeme.text[:1].isupper()
            and stream.kind(-1) in ("join", "attach", "color", "yarn")
            and lexeme.kind == "word"
        ):
            stream.take()
            return lexeme.text
        stream.at = start
        return None

    def _fasten_off(self, start: int) -> bool:
        stream = self.stream
        stream.take()
        colour = self._colour()
        while not stream.done and stream.kind() not in (",", ";", ".", "(", "[", "{", ")", "]", "}", "dash"):
            if stream.kind() == "and" and stream.kind(1) in ("join", "attach", "turn"):
                break
            stream.take()
        self.steps.append(FastenOff(stream.span_from(start), colour))
        return True

    def _turn(self, start: int) -> bool:
        stream = self.stream
        stream.take()
        self.steps.append(Turn(stream.span_from(start)))
        return True

    def _no_turn(self, start: int) -> bool:
        self.stream.take()
        self.steps.append(Turn(self.stream.span_from(start), turned=False))
        return True

    def _no_join(self, start: int) -> bool:
        self.stream.take()
        _to_sign(self.stream)
        self.steps.append(NoJoin(self.stream.span_from(start)))
        return True

    def _with(self, start: int) -> bool:
        """ "With A," "With RS facing," "with the last dc in top of turning ch"."""
        stream = self.stream
        stream.take()
        end = stream.at
        while end < len(stream.lexemes) and stream.lexemes[end].kind not in (",", ";", ".", ":"):
            end += 1
        words = stream.lexemes[stream.at : end]
        if any(word.kind == "facing" for word in words):
            stream.at = end
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.skip("the")
        if stream.kind() in ("last", "first"):
            stream.at -= 1
            return self._last_place(start)
        colour = self._colour()
        if colour is None and len(words) <= 3 and not any(word.kind in _STITCHY for word in words):
            stream.at = end
            colour = words[-1].text if words else None
        if colour is None:
            if len(words) and words[-1].kind == "hook" or any(word.kind == "hook" for word in words):
                stream.at = end
                self.steps.append(Remark(stream.span_from(start)))
                return True
            return False
        self.steps.append(UseYarn(stream.span_from(start), colour))
        return True

    # rings, loops, making -----------------------------------------------------------------------------

    def _ring(self, start: int) -> bool:
        stream = self.stream
        if self._has_work():
            return False
        stream.take()
        self.steps.append(MakeRing(stream.span_from(start)))
        return True

    def _make(self, start: int) -> bool:
        """ "make a magic ring", "work 73 sc evenly", "working last dc in top of ch", "work in BLO"."""
        stream = self.stream
        participle = stream.take().lower in ("working", "making", "placing")
        stream.skip("the", "then")
        if stream.kind() == "ring":
            return self._ring(start)
        if stream.kind() in ("last", "first"):
            return self._last_place(start)
        if stream.kind() in ("back_loop", "front_loop", "both_loops"):
            return self._loops(start)
        if stream.kind() == "in" and stream.kind(1) in ("back_loop", "front_loop", "both_loops"):
            stream.take()
            return self._loops(start)
        if participle and self._has_work() and stream.kind() in ("number", "(", "[", "stitch"):
            return self._alongside(start)
        if stream.kind() in (*OPENERS, "number", "stitch", "special", "chain", "in", "one_stitch", "over", "repeat"):
            return self._clause()
        return False

    def _alongside(self, start: int) -> bool:
        """ "working 3 sc in each ch-2 sp": applies on the way of the run before."""
        stream = self.stream
        items: list[Step] = []
        if not _Clauses(stream, Reading(items), top=False)._clause() or len(items) != 1:
            return False
        item = items[0]
        found = item.places if isinstance(item, (Work, Group)) else ()
        if len(found) != 1 or found[0].which is not Which.EACH and found[0].targets[0].kind is not TargetKind.CORNER:
            if len(found) == 1:
                self.steps.append(replace(item, span=stream.span_from(start)))
                return True
            return False
        inner = (replace(item, places=()),) if isinstance(item, Work) else item.items
        self.steps.append(Alongside(stream.span_from(start), inner, found[0].targets[0]))
        return True

    def _last_place(self, start: int) -> bool:
        """ "(working|with) (the) last dc in top of turning ch", "the first into the same place as the ss"."""
        stream = self.stream
        stream.skip("with", "the", "make")
        first = stream.kind() == "first"
        stream.take_if("last", "first")
        stream.take_if("stitch", "any_stitch", "special")
        found = places(stream, allow_to=True)
        if not found:
            return False
        if first:
            self.steps.append(Remark(stream.span_from(start)))
        else:
            self.steps.append(LastPlace(stream.span_from(start), found))
        return True

    def _the(self, start: int) -> bool:
        self.stream.skip("the")
        return self.stream.kind() in ("first", "last") and self._last_place(start)

    def _loops(self, start: int) -> bool:
        stream = self.stream
        kind = stream.take().kind
        stream.skip("of", "the")
        self.steps.append(Loops(stream.span_from(start), kind.split("_")[0]))
        return True

    # brackets ---------------------------------------------------------------------------------------

    def _bracket(self) -> bool:
        stream = self.stream
        start = stream.at
        close = stream.matching(start)
        if close is None:
            lexeme = stream.take()
            stream.at = len(stream.lexemes)
            self.steps.append(Unread(lexeme.span, lexeme.text, "this bracket is never closed"))
            return True
        inner = stream.inside(start + 1, close)
        if self.top:
            found = counts.bracket_count(stream, start, close, bool(self.steps))
            if found is not None:
                self.reading.stated = found
                stream.at = close + 1
                return True
        note = notes.counting(stream.inside(start + 1, close))
        if note is not None:
            stream.at = close + 1
            self._attach_counting(note)
            return True
        if close > start + 1 and all(item.kind in ("number", "dash", ",", "/", ":", ";") for item in inner.lexemes):
            stream.at = close + 1
            words = " ".join(item.text for item in stream.lexemes[start : close + 1])
            self.steps.append(
                Unread(
                    stream.span_from(start),
                    words,
                    "numbers in brackets that are neither a count nor one number for each size",
                )
            )
            return True
        items = read_inside(inner)
        stream.at = close + 1
        stream.skip("star") if stream.kind() == "star" and stream.kind(1) == "repeat" else None
        return self._after_bracket(start, items)

    def _after_bracket(self, start: int, items: list[Step]) -> bool:
        stream = self.stream
        close = stream.at
        worked = [step for step in walk(tuple(items)) if isinstance(step, (Work, Chain, Group, Skip))]
        if worked and stream.kind() == "." and stream.kind(1) == "repeat":
            stream.take()
        times = read_times(stream, after_bracket=True) if worked else None
        if times is not None:
            step: Step = Repeat(stream.span_from(start), tuple(items), times)
            found = places(stream) if stream.kind() in ("in",) else ()
            if found:
                step = Group(stream.span_from(start), (step,), found)
            self.steps.append(step)
            return True
        if worked:
            mark = stream.at
            together = stream.take_if("all")
            found = places(stream)
            if found:
                self.steps.append(Group(stream.span_from(start), tuple(items), found))
                return True
            stream.at = mark
            del together
        span = stream.span_from(start)
        gloss = start > 0 and stream.lexemes[start - 1].kind not in (*_SEPARATORS, "star", "make", *OPENERS)
        if not all_read(items) or not worked or gloss:
            self.steps += _plain_turns(items)
            self.steps.append(Remark(span, names=notes.made_name(self.stream.lexemes[start + 1 : close - 1])))
            return True
        if _only_star_before(self.steps) or not self.top or repeats.open_star(self.steps):
            self.steps += items  # "*(2 dc in next st, dc in next st), rep from *": brackets that only hold together
            return True
        words = " ".join(item.text for item in stream.lexemes[start:close])
        self.steps.append(Unread(span, words, "no place and no number of times follows the bracket"))
        return True

    def _attach_counting(self, note) -> None:
        for index in range(len(self.steps) - 1, max(-1, len(self.steps) - 3), -1):
            step = self.steps[index]
            if isinstance(step, Chain) and step.counting is None:
                self.steps[index] = replace(step, counting=note)
                return
            if isinstance(step, Work) and step.closing is None:
                self.steps[index] = replace(step, closing=note)
                return
        self.steps.append(Remark(note.span, counting=note))

    # repeats ----------------------------------------------------------------------------------------

    def _star(self) -> bool:
        stream = self.stream
        lexeme = stream.take()
        self.steps.append(repeats.Mark(lexeme.span, lexeme.value))
        mark = stream.at
        times = read_times(stream, after_bracket=True)
        if times is not None and repeats.pair(self.steps):
            repeats.fold_pair(self.steps, times, stream.span_from(mark))
            return True
        stream.at = mark
        return True

    def _repeat(self, start: int) -> bool:
        return repeats.repeat_clause(self.stream, self.steps, start)

    def _row_call(self, start: int) -> bool:
        return row_call(self.stream, self.steps, start)

    def _again(self, start: int) -> bool:
        return repeats.again(self.stream, self.steps, start)

    def _ending(self, start: int) -> bool:
        stream = self.stream
        if repeats.ending_at_mark(stream, self.steps):
            return True
        stream.take()
        stream.skip("last", "repeat", "with", "by", "the")
        if stream.done or stream.kind() in (",", ";", "."):
            return False
        return self._clause()

    def _omit(self, start: int) -> bool:
        return repeats.omit(self.stream, self.steps, start)

    def _leave(self, start: int) -> bool:
        self.stream.take()
        self.steps.append(Skip(self.stream.span_from(start), (), rest=True))
        return True

    def _leave_last(self, start: int) -> bool:
        """ "leave last 4 sts unworked", "leaving the remaining 8 sc unworked for the instep"."""
        stream = self.stream
        stream.take()
        end = stream.at
        while end < len(stream.lexemes) and stream.lexemes[end].kind not in (
            ",",
            ";",
            ".",
            "(",
            "[",
            "{",
            "star",
            "=",
            *CLOSERS,
        ):
            end += 1
        if not any(
            item.kind == "unused" or item.lower in ("unworked", "un-worked", "free")
            for item in stream.lexemes[stream.at : end]
        ):
            return False
        stream.at = end
        self.steps.append(Skip(stream.span_from(start), (), rest=True))
        return True

    # remarks ----------------------------------------------------------------------------------------

    def _remark_phrase(self, start: int) -> bool:
        self.stream.take()
        self.steps.append(Remark(self.stream.span_from(start)))
        return True

    def _sentence_remark(self, start: int) -> bool:
        _to_sign(self.stream)
        self.steps.append(Remark(self.stream.span_from(start)))
        return True

    def _beginning_remark(self, start: int) -> bool:
        """ "beginning in the top of ch-3": says where the run before starts."""
        stream = self.stream
        if stream.kind(1) in ("special", "one_stitch"):
            return False
        stream.take()
        if not places(stream):
            return False
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def _for_remark(self, start: int) -> bool:
        stream = self.stream
        if any(
            item.kind in ("number", "stitch", "row") for item in stream.lexemes[start + 1 : start + 3]
        ) and not stream.word("corner", ahead=1):
            return False
        corner = any(item.kind == "corner" for item in stream.lexemes[start + 1 : start + 4])
        _to_sign(stream)
        if corner and self.steps and isinstance(self.steps[-1], Chain):
            self.steps[-1] = replace(self.steps[-1], corner=True)
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def _at_remark(self, start: int) -> bool:
        """ "at the start of a short edge": where the work is."""
        stream = self.stream
        if self._run_on(start):
            return False
        stream.take()
        while not stream.done and stream.kind() not in (",", ";", ".", "(", "[", "{", "star", *CLOSERS):
            if stream.kind() in _STITCHY:
                return False
            stream.take()
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def _each_remark(self, start: int) -> bool:
        if self.stream.kind(1) in ("row", "round"):
            return self._sentence_remark(start)
        return False

    def _counting_sentence(self, start: int) -> bool:
        """ "Ch 3. Counts as first dc." as a sentence of its own."""
        stream = self.stream
        end = stream.at
        while end < len(stream.lexemes) and stream.lexemes[end].kind not in (".", ";", "("):
            end += 1
        note = notes.counting(stream.inside(stream.at, end))
        if note is None:
            return False
        stream.at = end
        self._attach_counting(note)
        return True

    def _not_read(self, start: int) -> None:
        """What is left of the clause: a remark if it can't be work, else Unread."""
        stream = self.stream
        sentence_end = start
        depth = 0
        while sentence_end < len(stream.lexemes):
            kind = stream.lexemes[sentence_end].kind
            depth += kind in OPENERS
            depth -= kind in CLOSERS
            if depth < 0 or kind == "." and not depth:
                break
            sentence_end += 1
        sentence = stream.lexemes[start:sentence_end]
        if (
            sentence
            and not self._run_on(start)
            and not any(
                item.kind in _STITCHY or item.lower in _WORKING_WORDS or item.kind in ("make", "row", "round")
                for item in sentence
            )
        ):
            stream.at = sentence_end
            self.steps.append(Remark(stream.span_from(start)))
            return
        end = start + 1
        while end < len(stream.lexemes) and stream.lexemes[end].kind not in (
            ",",
            ";",
            ".",
            "(",
            "[",
            "{",
            "star",
            *CLOSERS,
        ):
            end += 1
        stream.at = end
        words = " ".join(item.text for item in stream.lexemes[start:end])
        self.steps.append(Unread(stream.span_from(start), words, "these words were not understood"))


def _skipped(stream: Stream) -> tuple[Place, ...]:
    """What a "skip" passes over: places named with or without "next"."""
    start = stream.at
    named = places(stream)
    if named:
        return tuple(replace(place, which=Which.ELSEWHERE) for place in named) if _of_another_row(stream) else named
    stream.at = start

    stream.skip("the", "first", "next", "last")
    stream.at = start
    which = {"first": Which.FIRST, "last": Which.LAST}.get(stream.kind(), Which.NEXT)
    stream.skip("first", "next", "last", "the")
    number = stream.amount()
    found = target(stream)
    if number is None and found is None:
        return ()
    if _of_another_row(stream):
        which = Which.ELSEWHERE
    place = Place(stream.span_from(start), which, (found or Target(TargetKind.ANY_STITCH),), number or Amount.of(1))
    more: tuple[Place, ...] = ()
    mark = stream.at
    if stream.take_if("and"):
        if stream.kind() in ("number", "next", "any_stitch") or is_space_word(stream) or stream.kind() == "chain":
            more = _skipped(stream)
            if stream.kind() in ("in",):
                more = ()
        if not more:
            stream.at = mark
    return (place, *more)


def _of_another_row(stream: Stream) -> bool:
    """Takes "of the 32nd row of Front" after a place: that row is not the one below."""
    ahead = 2 if stream.kind(1) == "the" else 1
    if stream.kind() == "of" and stream.kind(ahead) in ("row", "round", "ordinal"):
        _to_sign(stream)
        return True
    return False


def _plain_turns(items: list[Step]) -> list[Step]:
    return [step for step in items if isinstance(step, (Turn, NoJoin))]


def _only_star_before(steps: list[Step]) -> bool:
    return bool(steps) and isinstance(steps[-1], repeats.Mark)


def _and_ahead(stream: Stream) -> bool:
    """Whether an "and" follows before the list can end, so that the comma belongs to it."""
    for ahead in range(1, 16):
        kind = stream.kind(ahead)
        if kind == "and":
            return True
        if kind in (";", ".", "end", "star", "in", "skip", "repeat", "turn", "join"):
            return False
    return False


def _to_sign(stream: Stream) -> None:
    while not stream.done and stream.kind() not in (",", ";", ".", "(", "[", "{", "star", *CLOSERS):
        stream.take()


def _closing_join(steps: list[Step]) -> list[Step]:
    """A slip stitch into the first stitch or the beginning chain, when nothing is worked after it, closes the round."""
    for index in range(len(steps) - 1, -1, -1):
        step = steps[index]
        if isinstance(step, (FastenOff, Turn, Remark, NoJoin)):
            continue
        if isinstance(step, Work) and step.stitch == "sl st" and len(step.places) == 1:
            place = step.places[0]
            to_chain = place.targets[0].kind in (TargetKind.TURNING_CHAIN,) or place.from_words == "top"
            own = index > 0 and any(isinstance(other, (Work, Group, Repeat)) for other in steps[:index])
            if own and (to_chain or place.which is Which.FIRST or place.ordinals):
                steps[index] = Join(step.span, step.places)
        break
    return steps


__all__ = ["Reading", "all_read", "post_stitch", "read_inside", "read_row"]
