"""Reads the words of one row into steps, by recursive descent.  Never raises: what cannot be read
stays as an Unread step with the words that stopped it, and reading goes on at the next stop.

row     := clause ((","|";"|"."|"and"|dash) clause)*
clause  := chain | work | bracket | star | repeat | skip | join | yarn | turn | ring | loops | remark
bracket := "(" row ")" then a place (a group worked into it) or a number of times (a repeat)
star    := "*" … "rep from *" times        (folded in repeating.repeats)

The reader is built in layers, each a module of this folder: base, hand, tunisian, leftover, remark, skip, chain, yarn, finish,
evenly, shaping, cluster, edge, numberfirst, plain, alongside, placefirst, sized, bracket, motif, listrepeats, ending, otherwords, count.
"""

from __future__ import annotations

from collections.abc import Callable

from lint.reading.clauses.base import SEPARATORS, Reading, all_read
from lint.reading.clauses.count import CountClauses
from lint.reading.clauses.listrepeats import by_cross
from lint.reading.clauses.markers import read_marker
from lint.reading.clauses.plain import POINTS
from lint.reading.clauses.prepared import prepared
from lint.reading.clauses.settled import settle
from lint.reading.clauses.sidewords import all_sides, other_sides
from lint.reading.counting.otherplaces import in_all_others, rest_of_row
from lint.reading.places.asstitches import spaces_as_stitches
from lint.reading.places.fromhook import starts_in_chain
from lint.reading.places.limbs import limb_joined
from lint.reading.places.ofpieces import piece_run
from lint.reading.places.thoseonly import those_only
from lint.reading.places.together import told_together
from lint.reading.places.whichgives import filled_with, which_gives
from lint.reading.repeating import repeats
from lint.reading.repeating.growth import growing_on
from lint.reading.repeating.loosestars import fold_loose
from lint.reading.repeating.othersides import to_match
from lint.reading.repeating.piececalls import from_foundation, piece_again, piece_call
from lint.reading.repeating.rhythms import going_on, named_row_worked
from lint.reading.repeating.rowcalls import row_call, rows_of_piece
from lint.reading.repeating.rowsof import rows_even
from lint.reading.repeating.twoedges import two_edges
from lint.reading.repeating.unshaped import unshaped
from lint.reading.words.allbut import all_but_ends
from lint.reading.words.fittings import but_how, fitting_fixed, so_far_apart
from lint.reading.words.lastpass import before_the_end, so_many_at_end
from lint.reading.words.linestops import without_short_stops
from lint.reading.words.lists import count_alone, to_the_end
from lint.reading.words.needleloops import loops_together, may_tell_loops, needle_words
from lint.reading.words.settingout import set_out
from lint.reading.words.shortlists import signs_as_commas
from lint.reading.words.somebody import about_somebody
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import Chain, FastenOff, JoinYarn, Remark, RowCall, Step, Turn, Unread, UseYarn

MOST_WORDS = 3_000  # of one row or definition: beyond this a text is something else, and reading it would take too long


def read_row(stream: Stream) -> Reading:
    """Read a whole row: all its words become steps, counts, or Unread steps."""
    reading = Reading([])
    if len(stream.lexemes) > MOST_WORDS:
        reading.steps = [_too_long(stream)]
        return reading
    stream, words, unfit = prepared(stream)
    parser = Clauses(stream, reading, top=True)
    parser.run()
    settle(reading, stream, words, unfit)
    return reading


def read_inside(stream: Stream) -> list[Step]:
    """Read the words inside a bracket (or of a definition)."""
    if len(stream.lexemes) > MOST_WORDS:
        return [_too_long(stream)]
    reading = Reading([])
    Clauses(signs_as_commas(without_short_stops(stream)), reading, top=False).run()
    return fold_loose(reading.steps)


def _too_long(stream: Stream) -> Unread:
    return Unread(stream.span_from_all(), stream.words(0, 12) + " …", "this is longer than any row is")


# what a clause about the other sides may begin with
_OF_OTHERS = ("make", "repeat", "open_work", "word", "number", "remaining", "other_side", "then", "the", "ending")
# what begins with words of many kinds, tried in this order: ends of last passes, other pieces, rows that grow, sides
_CALLS = (
    (("make", "foundation", "word"), from_foundation),
    (("make",), named_row_worked),
    (("make", "open_work", "word"), going_on),
    (("make", "with", "ending"), so_many_at_end),
    (("word",), before_the_end),
    (("make", "open_work", "repeat"), piece_again),
    (("open_work", "make", "word"), to_match),
    (("at", "word", "increase", "decrease"), two_edges),
    (("make", "as", "open_work"), piece_call),
    (("open_work", "word", "make", "increase", "decrease"), growing_on),
    (("make", "number"), piece_run),
    (("make", "in", "over", "across", "word"), those_only),
    (("join", "attach", "word"), limb_joined),
    (("make", "word"), spaces_as_stitches),
    (("word", "make", "attach", "telling"), fitting_fixed),
    (("word",), but_how),
    (("number",), so_far_apart),
    (("ordinal",), starts_in_chain),
    (("word",), which_gives),
    (("word", "stuff"), filled_with),
    (_OF_OTHERS, other_sides),
    (("make", "number"), all_sides),
)


class Clauses(CountClauses):
    """Reads every sort of clause: the last layer."""

    def run(self) -> None:
        stream = self.stream
        if self.top and not stream.at:
            self.colour_first()
        while True:
            while stream.kind() in SEPARATORS:
                stream.take()
            if stream.done:
                return
            start = stream.at
            if self.count():
                continue
            if not self.clause():
                stream.at = max(stream.at, start)
                if not self.rest_told(start):
                    self.not_read(start)
            if stream.at == start:  # every turn takes something
                stream.take()

    def clause(self) -> bool:
        stream = self.stream
        start = stream.at
        kind = stream.kind()
        if kind == "stitch" and (told := about_somebody(stream, start)) is not None:
            stream.at = told
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if kind == "star" or kind == "+" and (not self.runs_on(start) or self.plus_opened()):
            return self.read_star()
        if (
            kind in ("+", "/")
            and self.steps
            and stream.kind(1) in ("number", "stitch", "chain", "increase", "decrease")
        ):
            chained = isinstance(self.steps[-1], Chain) or "chain" in (stream.kind(1), stream.kind(2))
            if kind == "+" or chained and stream.kind(1) != "stitch":
                stream.take()  # "3 dc + ch 2 + 3 dc in corner sp": only joins the clauses; but "2 tr/dc" is one stitch
                return self.clause()
        if kind in ("at", "in", "for") and self.read_last_pass(start):
            return True
        stream.at = start
        if self.sizes_behind(start):
            return True
        if may_tell_loops(stream) and (
            needle_words(stream, self.steps, start) or loops_together(stream, self.steps, start)
        ):
            return True
        if (not start or stream.kind(-1) in (".", ";", ":", "and", *CLOSERS)) and self.edges_joined(start):
            return True
        if not self.runs_on(start) and self.read_chain_note(start):
            return True
        if kind in OPENERS:
            return self.read_bracket()
        if all_but_ends(stream, self.steps, start):
            return True
        if kind == "/" and self.rows_between_strokes(start):
            return True
        if kind in CLOSERS:
            lexeme = stream.take()
            self.steps.append(Unread(lexeme.span, lexeme.text, "this bracket is never opened", "never opened"))
            return True
        if any(kind in kinds and read(stream, self.steps, start) for kinds, read in _CALLS):
            return True
        if told_together(stream, self.steps, start) or self.run_shaped_evenly(start):
            return True
        if kind == "word" and stream.word("alternating") and self.stitches_in_turn(start):
            return True
        for read_others in (in_all_others, rest_of_row):
            stream.at = start
            if read_others(stream, self.steps, start):
                return True
        stream.at = start
        if stream.word("but") and stream.kind(1) == "make" and self.steps and isinstance(self.steps[-1], Turn):
            stream.take()  # "do not turn, but work back along the other side of the ch"
            return self.clause()
        if (kind == "skip" or stream.word("but")) and self.skips_every_nth(start):
            return True
        if stream.word("do") and self.drawn_alike(start):
            return True
        if (kind in ("make", "as", "open_work") or stream.word("do")) and repeats.passage(stream, self.steps, start):
            return True
        if self.motif_clause(start) or not self.has_work() and self.behind_others(start):
            return True
        if kind == "make" and rows_of_piece(stream, self.steps, start):
            return True
        stream.at = start
        if self.begins_rows(start) and rows_even(stream, self.steps, start):
            return True
        if self.begins_rows(start) and not self.has_work() and unshaped(stream, self.steps, start):
            return True
        if kind in ("same", "last", "first", "the", "row", "round", "ordinal") and self.rows_are_pattern(start):
            return True
        if kind == "number" and self.read_apart(start):
            return True
        stream.at = start
        read = _READERS.get(kind)
        if read is not None and read(self, start):
            return True
        stream.at = start
        if stream.word("add") and stream.kind(2 if stream.kind(1) == "the" else 1) == "chain":
            stream.at += 2 if stream.kind(1) == "the" else 1  # "Add a chain of 12"
            return self.clause()
        often = stream.word("once", "twice", "thrice") or stream.kind(1) == "in" and stream.kind(2) in POINTS
        if kind == "number" and often and self.read_more_of_it(start):
            return True
        stream.at = start
        if kind == "number" and stream.kind(1) == "any_stitch" and stream.kind(-1) in ("and", "+"):
            if self.read_plus_each_end(start):
                return True
            stream.at = start
        if stream.word("block") and any(isinstance(step, FastenOff) for step in self.steps):
            return self.read_sentence_remark(start)  # "Fasten off and block to size": what is done, not what is made
        if kind == "group_word" and stream.kind(1) == "of" and stream.kind(2) in OPENERS:
            stream.at += 2  # "shell of (3 dc, ch 1, 3 dc) in next sp"
            return self.read_bracket()
        crossed = (
            kind == "number" and stream.word("x", "×", ahead=1) and stream.kind(1) != "stitch"
        )  # X may be a stitch
        often = crossed or kind == "number" and stream.kind(1) == "times"  # "*8 sc, dec*, 3x"
        if often and stream.kind(1) == "times" and stream.kind(2) == "evenly" and self.times_evenly(start):
            return True
        behind = often and (not crossed or stream.kind(2) not in OPENERS or count_alone(stream, 2))
        if (behind or by_cross(stream)) and self.read_whole_row(start):
            return True
        stream.at = start
        one_name = stream.kind(3) == "stitch" and "one_stitch" in (stream.kind(4), stream.kind(5))  # "2x3dc-cl"
        if often and not one_name and self.times_first(start):
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
            if self.read_number_first(start):
                return True
            stream.at = start
        return not self.has_work() and set_out(stream, self.steps, start)

    def plus_opened(self) -> bool:
        """Whether a plus stands before the clause where another repeat has its star."""
        return any(isinstance(step, repeats.Mark) and step.sign == "+" for step in self.steps)

    def begins_rows(self, start: int) -> bool:
        """Whether a sentence begins here that may tell rows, or the whole of this one."""
        first = start
        while first and self.stream.lexemes[first - 1].kind in ("and", "then"):
            first -= 1  # "Then work 3 rows even"
        opens = not first or self.stream.lexemes[first - 1].kind in (".", ";", ":", *CLOSERS)
        kinds = ("make", "number", "open_work", "stitch", "word", "the", "for", "then", "unchanged", "row", "round")
        opens = (
            opens or not self.has_work() and isinstance(self.steps[-1], (Chain, Turn, UseYarn, JoinYarn))
            if self.steps
            else opens
        )
        called = first < start and bool(self.steps) and isinstance(self.steps[-1], RowCall)
        opens = opens or called  # "Rep Row 2 3 times, then work 5 rows even"
        return self.top and opens and self.stream.kind() in kinds

    def read_repeat(self, start: int) -> bool:
        if self.repeat_drawn(start):
            return True
        stream, starred = self.stream, repeats.open_star(self.steps)
        if stream.word("until", "till", ahead=1) and not starred and not to_the_end(stream, 2):
            self.stream.take()
            return self.read_until(self.stream.at)
        bracket = stream.kind(1) in OPENERS and stream.kind(2) not in CLOSERS
        if bracket and not starred and not count_alone(stream, 1) and stream.kind(2) not in ("row", "round", "ordinal"):
            self.stream.take()
            return self.read_bracket()  # "repeat [ch 1, dc in next st] across"
        return repeats.repeat_clause(self.stream, self.steps, start)

    def read_alternate(self, start: int) -> bool:
        """ "alternate repeating Rnd 11 and Rnd 12", "Alternate sc and inc around"."""
        if self.stitches_in_turn(start) or self.in_turn(start):
            return True
        self.stream.take()
        self.stream.take_if("repeat")
        return row_call(self.stream, self.steps, self.stream.at)

    def read_put_marker(self, start: int) -> bool:
        return read_marker(self.stream, self.steps, start)

    def read_row_call(self, start: int) -> bool:
        return row_call(self.stream, self.steps, start)

    def read_again(self, start: int) -> bool:
        if self.stream.kind(1) == "star" and repeats.open_star(self.steps):
            return repeats.repeat_clause(self.stream, self.steps, start)  # "*ch 1, skip 1, tr. From * across."
        the = self.stream.kind(1) == "the" and self.stream.kind(2) == "ordinal"
        if (the or self.stream.kind(1) == "ordinal") and not self.has_work():
            self.stream.at += the
            return self.read_beginning_remark(start)  # "From 2nd ch: sl st, sc, hdc"
        return repeats.again(self.stream, self.steps, start)


# what reads a clause, by the kind of its first word
_READERS: dict[str, Callable[[Clauses, int], bool]] = {
    "chain": Clauses.read_chain,
    "turning_chain": Clauses.read_turning_chain,
    "special": Clauses.read_own_increase,
    "in": Clauses.read_place_first,
    "over": Clauses.read_place_first,
    "skip": Clauses.read_skip,
    "join": Clauses.read_join,
    "joining": Clauses.read_join,
    "the": Clauses.read_the,
    "another": Clauses.read_another,
    "other_side": Clauses.read_other_side,
    "last": Clauses.read_last_place,
    "first": Clauses.read_last_place,
    "attach": Clauses.read_attach,
    "turn": Clauses.read_turn,
    "no_turn": Clauses.read_no_turn,
    "no_join": Clauses.read_no_join,
    "no_fasten": Clauses.read_no_fasten,
    "fasten_off": Clauses.read_fasten_off,
    "with": Clauses.read_with,
    "make": Clauses.read_make,
    "ring": Clauses.read_ring,
    "back_loop": Clauses.read_loops,
    "front_loop": Clauses.read_loops,
    "both_loops": Clauses.read_loops,
    "third_loop": Clauses.read_loops,
    "repeat": Clauses.read_repeat,
    "as": Clauses.read_row_call,
    "same": Clauses.read_this,
    "alternate": Clauses.read_alternate,
    "place": Clauses.read_put,
    "evenly": Clauses.read_evenly,
    "middle": Clauses.read_which_one,
    "foundation": Clauses.read_foundation,
    "around": Clauses.read_whole_row,
    "across": Clauses.read_whole_row,
    "ending": Clauses.read_ending,
    "omit": Clauses.read_omit,
    "unworked": Clauses.read_leave,
    "leave": Clauses.read_leave_last,
    "marker": Clauses.read_put_marker,
    "beginning": Clauses.read_beginning_remark,
    "for": Clauses.read_for_remark,
    "at": Clauses.read_at_remark,
    "from": Clauses.read_again,
    "throughout": Clauses.read_throughout,
    "counts": Clauses.read_counting_sentence,
    "counts_not": Clauses.read_counting_sentence,
    "forming": Clauses.read_counting_sentence,
    "each": Clauses.read_each_remark,
    "all": Clauses.read_all_in_ring,
    "change": Clauses.read_change,
    "hold_back": Clauses.read_hold_back,
    "row": Clauses.read_may_be,
    "round": Clauses.read_may_be,
    "telling": Clauses.read_telling,
    "open_work": Clauses.read_open_work,
    "unchanged": Clauses.read_unchanged,
    "return_pass": Clauses.read_return_pass,
    "edge_stitch": Clauses.read_edge_stitch,
    "movement": Clauses.read_movements,
    "forward_pass": Clauses.read_forward_pass,
    "to": Clauses.read_until,
    "increase": Clauses.read_shaping,
    "decrease": Clauses.read_shaping,
    "word": Clauses.read_word,
    "multiple": Clauses.read_whole_sentence,
    "rotate": Clauses.read_rotate,
    "stuff": Clauses.read_sentence_remark,
}

__all__ = ["Reading", "all_read", "read_inside", "read_row"]
