"""Reads brackets: a count, a note, a group into one place, a repeat, or a remark."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.clauses.base import SEPARATORS, all_read
from lint.reading.clauses.inbrackets import (
    closes_last_loop,
    holds_work,
    is_square,
    one_pass_each,
    one_place_each,
    only_star_before,
    picot_of,
    plain_turns,
    shapes,
    shapes_over_several,
    squares,
    starred_repeat,
)
from lint.reading.clauses.sidewords import along_side
from lint.reading.clauses.sized import SizedClauses
from lint.reading.counting import counts, twoprints
from lint.reading.places import notes
from lint.reading.places.howoften import clauses_of
from lint.reading.places.places import places
from lint.reading.repeating import repeats
from lint.reading.repeating.bracketcalls import rows_again
from lint.reading.repeating.times import bracket_times
from lint.reading.repeating.times import times as read_times
from lint.reading.words.stream import CLOSERS, OPENERS
from lint.tree import (
    Chain,
    Covers,
    Evenly,
    Group,
    LastPlace,
    OpenWork,
    Remark,
    Repeat,
    Skip,
    Step,
    Times,
    TimesKind,
    Turn,
    Unread,
    Work,
    walk,
)

_HOW_FAR = ("around", "across", "to", "number", "all", "another", "more")

_NAMES = ("group_word", "special", "one_stitch", "picot", "corner")  # what a bracket may be called

_MOST_PASSES = 12  # common practice, no source: a greater figure is rather a count of stitches


class BracketClauses(SizedClauses):
    """What stands in brackets is told by what follows them."""

    def read_bracket(self) -> bool:
        stream = self.stream
        start = stream.at
        close = stream.matching(start)
        if close is None:
            lexeme = stream.take()
            stream.at = len(stream.lexemes)
            self.steps.append(Unread(lexeme.span, lexeme.text, "this bracket is never closed", "never closed"))
            return True
        inner = stream.inside(start + 1, close)
        told = self.times_of_list, self.for_some_sizes, self.counts_piece, self.left_unworked
        if any(read(start, close) for read in told):
            return True
        length = self._explained_chains(start, close)
        if length is not None and (note := notes.adds_up(inner, length)) is not None:
            stream.at = close + 1
            self.attach_counting(note)  # "ch 3 (= 1 dc)", which is no count of the row
            return True
        if self.top and not self.goes_on_in_squares(start, close) and not self.made_again(start, close):
            found = counts.bracket_count(stream, start, close, bool(self.steps))
            shaped = found is not None and any(item.words in ("increased", "decreased") for item in found.items)
            if found is not None and not shaped:  # "(6 increased)" tells of the work, and counts no stitches
                self.reading.stated = twoprints.both(stream, self.steps, self.reading.stated, found)
                stream.at = close + 1
                return True
        if self.begins_decrease(start, close):
            return True
        nested = any(item.kind in OPENERS for item in inner.lexemes)
        placed = close + 1 < len(stream.lexemes) and stream.lexemes[close + 1].kind == "in"
        note = self.counting_in(inner) if not nested and not placed else None
        if note is not None:
            stream.at = close + 1
            named = inner.lexemes[1 if inner.kind() in ("the", "beginning") else 0].kind
            self.attach_counting(note, named in ("chain", "turning_chain"))
            return True
        if close > start + 1 and all(item.kind in ("number", "dash", ",", "/", ":", ";") for item in inner.lexemes):
            stream.at = close + 1
            words = stream.words(start, close + 1)
            self.steps.append(
                Unread(
                    stream.span_from(start),
                    words,
                    "numbers in brackets that are neither a count nor one number for each size",
                )
            )
            return True
        items = one_place_each(self.read_inside(inner))
        stream.at = close + 1
        if len(items) == 1 and isinstance(items[0], LastPlace):  # "(working last dc in top of tch)"
            self.steps += items
            return True
        if stream.kind() == "star" and stream.kind(1) == "repeat" and not repeats.open_star(self.steps):
            stream.take()  # "(2 sc, inc)* repeat around"
        return self.after_bracket(start, items)

    def counts_piece(self, start: int, close: int) -> bool:
        """ "sc around the first leg (12), ch 2": how many stitches that piece gives, where the clause does not say it."""
        last = self.steps[-1] if self.steps else None
        inner = self.stream.inside(start + 1, close)
        number = inner.amount()
        inner.take_if("stitch", "any_stitch")
        if (
            number is None
            or not inner.done
            or not isinstance(last, Work)
            or last.number_said
            or not self.runs_on(start)
        ):
            return False
        place = last.places[0] if len(last.places) == 1 else None
        if place is None or place.which is not Which.ELSEWHERE or place.targets[0].name != "piece" or last.together:
            return False
        like = any(isinstance(step, Work) and step.number == number for step in self.steps[:-1])
        if place.number != ONE or counts.list_ends(self.stream, close + 1) and not like:
            return False  # "sc in 12 sts of second leg (24)", "…, sc around the second leg (28)": the row's own count
        self.stream.at = close + 1
        self.steps[-1] = replace(last, number=number, number_said=True, span=last.span.to(self.stream.span_from(start)))
        return True

    def _explained_chains(self, start: int, close: int) -> int | None:
        """How many chains a bracket hangs on, those before it or those missed "in 4th ch from hook", if nothing hangs on it."""
        behind = self.stream.kind(close + 1 - start)
        hangs = self.runs_on(start) or self._behind_short_chain(start)
        step = self.steps[-1] if self.steps else None
        if not hangs or behind not in (*SEPARATORS, *OPENERS, "star", "end", "turn", "stitch"):
            return None
        if isinstance(step, Chain):
            return step.length.lone if step.counting is None else None
        missed = isinstance(step, Work) and step.closing is None and [p.which for p in step.places] == [Which.FROM_HOOK]
        missed = missed and any(item.kind == "chain" for item in self.stream.lexemes[start:close])  # not "(1 dc)"
        return step.places[0].ordinals[0] - 1 if missed and step.places[0].ordinals else None

    def goes_on_in_squares(self, start: int, close: int) -> bool:
        """ "…, 1 bl, [1 sp, 4 bls].": behind a comma such a bracket is work, unless it counts the squares so far."""
        if self.stream.lexemes[start - 1 : start] == [] or self.stream.lexemes[start - 1].kind != ",":
            return False
        items = self.read_inside(self.stream.inside(start + 1, close))
        if not items or not all(map(is_square, items)):
            return False
        said, worked = squares(tuple(items)), squares(tuple(self.steps))
        return said is not None and worked is not None and said != worked

    def made_again(self, start: int, close: int) -> bool:
        """ "(2 blocks made), …, (2 blocks made)": each tells what the clause before it made, and none the row's count."""
        words = self.stream.lexemes[start : close + 1]
        if len(words) != 5 or words[1].kind != "number" or words[3].kind != "made":
            return False
        before = self.stream.lexemes[:start]
        return any(
            [one.kind for one in before[at : at + 2]] == [words[0].kind, "number"]
            and before[at + 2].lower == words[2].lower
            and before[at + 3].kind == "made"
            for at in range(len(before) - 3)
        )

    def _behind_short_chain(self, start: int) -> bool:
        """Whether "4 ch." stands before a bracket, with the full stop of an abbreviation."""
        kinds = [item.kind for item in self.stream.lexemes[max(0, start - 2) : start]]
        return kinds == ["chain", "."]

    def begins_decrease(self, start: int, close: int) -> bool:
        """ "Ch 2, dc in next st (counts as dc2tog)": chain and stitch together are one, over two places."""
        stream = self.stream
        inside = stream.lexemes[start + 1 : close]
        number = next(
            (i for i, item in enumerate(inside[:-1]) if item.kind == "number" and inside[i + 1].kind == "together"), 0
        )
        counts_as = any(item.kind == "counts" for item in inside)
        turned = len(self.steps) > 2 and isinstance(self.steps[-2], Turn)  # "ch 2, turn, dc in next st"
        first = len(self.steps) - (3 if turned else 2)
        chain, leg = (self.steps[first], self.steps[-1]) if first >= 0 else (None, None)
        if not (number and counts_as and isinstance(chain, Chain) and isinstance(leg, Work)):
            return False
        legs = inside[number].number
        used = leg.together or 1
        one = len(leg.places) == 1 and leg.number == ONE and leg.special is None and used == legs - 1
        place = leg.places[0] if one else None
        next_ones = place is not None and place.which is Which.NEXT and place.number.lone == used and place.of is None
        if not next_ones or inside[number - 1].value != leg.stitch:
            return False
        stream.at = close + 1
        span = (leg if turned else chain).span.to(stream.span_from(start))
        over = Place(span, Which.NEXT, place.targets, Amount.of(legs), shared=True)
        joined = replace(leg, span=span, together=legs, places=(over,))
        self.steps[first:] = [*self.steps[first + 1 : -1], joined]
        return True

    def times_of_list(self, start: int, close: int) -> bool:
        """ "sc 1, inc 1 (6 times)", "… (repeat around)" at a row's end: how often the list before is worked."""
        stream = self.stream
        inner = stream.inside(start + 1, close)
        if starred_repeat(inner, self.steps):
            stream.at = close + 1
            return True
        again = bool(inner.take_if("repeat"))
        inner.take_if("all")
        often = read_times(inner)
        if often is None or not inner.done or repeats.open_star(self.steps):
            return False
        if often.kind is TimesKind.UNCLEAR:
            often = replace(often, kind=TimesKind.IN_ALL)
        if not again and often.kind is not TimesKind.FILL and not counts.list_ends(stream, close + 1):
            before = self.steps[-1] if self.steps else None
            if not isinstance(before, (Work, Group)) or not self.runs_on(start):
                return False
            stream.at = close + 1  # "2 sc in next st (3 times), sc in last 9 sts": of that clause alone
            self.steps[-1] = Repeat(before.span.to(stream.span_from(start)), (before,), often)
            return True
        if len(self.steps) == 1:
            self.steps[:] = clauses_of(self.steps[0], stream.lexemes) or self.steps  # "2 sc inc (x6)"
        stream.at = close + 1
        whole = again or often.kind is TimesKind.FILL
        span = stream.span_from(start)
        if repeats.fold_row(self.steps, often, span, Covers.ALL if whole else Covers.RATHER_ALL):
            return True
        stream.at = start
        return False

    def last_work(self) -> Step | None:
        """The last step that works or passes over anything."""
        return next((s for s in reversed(self.steps) if isinstance(s, (Work, Chain, Group, Skip, Repeat))), None)

    def names_brackets(self) -> None:
        """Passes the "between [ ]" of "[…]; repeat between [ ] 3 more times", which names the bracket just closed."""
        stream = self.stream
        start = stream.at
        stream.take_if(".", ",", ";")
        if stream.take_if("repeat"):
            stream.skip("between", "from", "the")
            if stream.kind() in OPENERS and stream.kind(1) in CLOSERS:
                stream.at += 2
                return
        stream.at = start

    def bare_repeat(self) -> Times | None:
        """ "[5 sc, inc] repeat.", "[5 sc, inc], and repeat (14)": to the end, as nothing else is said."""
        stream = self.stream
        start = stream.at
        stream.take_if(",", ";", ".")
        stream.take_if("and", "then")
        told = stream.take_if("repeat") is not None and stream.kind() in (".", ";", "end", "(", "[", "=", "dash")
        figure = stream.peek(1).number if stream.kind(1) == "number" and stream.kind() in ("(", "[", "dash", "=") else 0
        often = 0 < figure <= _MOST_PASSES and stream.kind(2) not in ("any_stitch", "stitch")
        if told and not often:  # "repeat (6)" may say how often
            return Times(stream.span_from(start), TimesKind.FILL, limit=Limit(LimitKind.END))
        stream.at = start
        return None

    def _so_many(self, found: tuple[Place, ...]) -> tuple[Place, ...]:
        """ "(2 dc, ch 1, 2 dc) in ea sp x5": in each of so many; the number is not that of a repeat."""
        stream = self.stream
        if len(found) == 1 and found[0].which is Which.EACH and stream.word("x", "×") and stream.kind(1) == "number":
            stream.take()
            number = stream.amount()
            return (replace(found[0], which=Which.NEXT, number=number, each_of=True, limit=None),) if number else found
        return found

    def _so_often(self, start: int, group: Group) -> Step:
        """ "(dc, ch 1) in ring 12 times", "(sc, ch 3, sc) in next sp twice": how often, said behind the place."""
        stream = self.stream
        before, number = stream.at, stream.kind() == "number"
        if number and all(place.which is Which.NEXT and not place.each_of for place in group.places):
            often = read_times(stream, after_bracket=True)
            alone = stream.kind() in (*SEPARATORS, "end", *OPENERS, *CLOSERS, "star", "join", "turn")
            if often is not None and often.kind is TimesKind.IN_ALL and alone:
                return Repeat(stream.span_from(start), (group,), often)
        stream.at = before
        return group

    def _star_within(self, start: int, close: int, items: list[Step]) -> int | None:
        """ "[2 sc in next st, * sc in next 3 sts] around, ending last rep at *": before which item the one star stands."""
        stars = [item for item in self.stream.lexemes[start + 1 : close] if item.kind == "star"]
        if len(stars) != 1:
            return None
        behind = [index for index, item in enumerate(items) if item.span.start > stars[0].start]
        return behind[0] if behind and behind[0] else None

    def after_bracket(self, start: int, items: list[Step]) -> bool:
        stream = self.stream
        close = stream.at
        worked = [step for step in walk(tuple(items)) if isinstance(step, (Work, Chain, Group, Skip))]
        if worked and stream.kind() in (".", ",", ";") and stream.kind(1) == "repeat" and stream.kind(2) in _HOW_FAR:
            stream.take()  # "(2 sc in first sc, sc 1), repeat around"
        if worked:
            self.names_brackets()
        if again := rows_again(stream, items, start):  # "[Rep Rows 2-5] 24 times"
            self.steps += again
            return True
        if not worked and items and all(isinstance(step, OpenWork) for step in items):
            if read_times(stream, after_bracket=True) is not None:  # "[3 rows A, 3 rows B] twice"
                self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
                return True
        led = any(isinstance(step, (Work, Group)) for step in self.steps)
        times = along_side(stream, items) or bracket_times(stream, led) if worked else None
        times = times or (self.bare_repeat() if worked and self.top else None)
        if times is not None:
            stop = self._star_within(start, close, items)
            step: Step = repeats.Folded(stream.span_from(start), tuple(items), times, sign="[", stop_sign=stop)
            found = places(stream) if stream.kind() in ("in",) else ()
            if found and shapes_over_several(items, found[0]):
                words = stream.words(start, stream.at)
                self.steps.append(
                    Unread(stream.span_from(start), words, "whether each place takes all of it is not said")
                )
                return True
            if found:
                step = Group(stream.span_from(start), (step,), found)
            self.steps.append(step)
            return True
        if worked:
            mark = stream.at
            if stream.kind() == "for" and stream.kind(2 if stream.kind(1) == "the" else 1) in _NAMES:
                stream.at += 3 if stream.kind(1) == "the" else 2  # "(3 dc, ch 2, 3 dc) for a shell in next ch"
            stream.take_if("all")
            found = self._so_many(places(stream))
            if found and shapes_over_several(items, found[0]):
                words = stream.words(start, stream.at)
                self.steps.append(
                    Unread(stream.span_from(start), words, "whether each place takes all of it is not said")
                )
                return True
            if found and (often := one_pass_each(items, found)) is not None:
                self.steps.append(Repeat(stream.span_from(start), tuple(items), often))
                return True
            if found:
                self.steps.append(self._so_often(start, Group(stream.span_from(start), tuple(items), found)))
                return True
            stream.at = mark
        span = stream.span_from(start)
        if worked and all(isinstance(step, Skip) for step in items) and not isinstance(self.last_work(), Skip):
            self.steps += items  # "(skip next 3 dc)": brackets that hold nothing but a skip
            return True
        gloss = start > 0 and stream.lexemes[start - 1].kind not in (*SEPARATORS, "star", "make", *OPENERS)
        if notes.calls_it_shaping(stream.lexemes[start + 1 : close - 1]):
            called = shapes(self.steps[-1:])
            why = "what stands before is none"  # "sc in next st (an increase)": is one stitch too few told?
            self.steps.append(Remark(span) if called else Unread(span, stream.words(start, close), why))
            return True
        gloss = gloss or self._behind_short_chain(start)
        spread = gloss and bool(self.steps) and isinstance(self.steps[-1], Evenly)  # how stitches are spread on an edge
        explains = not worked or spread or len(worked) == 1 and notes.only_named(items, worked[0])
        if not worked and holds_work(stream.lexemes[start:close]):
            explains = False  # "(this round only: 2 sc in last st)"
        if worked == [] and closes_last_loop(stream, self.steps, start, close):
            return True
        if gloss and len(items) == 2 and picot_of(items) and isinstance(self.steps[-1], Work):
            if self.steps[-1].stitch == "picot":  # "picot (ch 3, sl st in 3rd ch from hook)": how it is made
                self.steps.append(Remark(span))
                return True
        if not gloss and notes.tells_made(stream.lexemes[start:close]) and (picot := picot_of(items)):
            self.steps += picot  # ", (ch 3, sl st in last sc - picot made),": worked here, and told what it makes
            return True
        if explains and (gloss or not all_read(items) or not worked) or notes.tells_made(stream.lexemes[start:close]):
            self.steps += plain_turns(items)
            self.steps.append(Remark(span, names=notes.made_name(self.stream.lexemes[start + 1 : close - 1])))
            return True
        if not gloss and (only_star_before(self.steps) or not self.top or repeats.open_star(self.steps)):
            self.steps += items  # "*(2 dc in next st, dc in next st), rep from *": brackets that only hold together
            return True
        if worked and all(map(is_square, items)):
            self.steps += items  # "(bl, 3 sps, bl), 2 sps": squares of filet, each of which says where it goes
            return True
        words = stream.words(start, close)
        loose = tuple(items) if all_read(items) and not gloss else ()
        self.steps.append(Unread(span, words, "no place and no number of times follows the bracket", items=loose))
        return True
