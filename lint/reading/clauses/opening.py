"""Clauses whose first word alone does not decide what they are: what stands before or behind it does."""

from __future__ import annotations

from lint.place import Which
from lint.reading.clauses.count import CountClauses
from lint.reading.clauses.listrepeats import by_cross
from lint.reading.clauses.markers import read_marker
from lint.reading.clauses.plain import POINTS
from lint.reading.repeating import repeats
from lint.reading.repeating.rowcalls import row_call
from lint.reading.repeating.rowsof import rows_even
from lint.reading.repeating.unshaped import patterned_like, unshaped
from lint.reading.words.lists import count_alone, to_the_end
from lint.reading.words.needleloops import loops_together, may_tell_loops, needle_words
from lint.reading.words.settingout import set_out
from lint.reading.words.somebody import about_somebody
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS
from lint.tree import Chain, FastenOff, JoinYarn, Remark, RowCall, Turn, Unread, UseYarn, Work

_JOINED = ("number", "stitch", "chain", "increase", "decrease")  # what may stand behind a sign that only joins clauses
_ROWS_BEGIN = (
    "make",
    "number",
    "open_work",
    "stitch",
    "word",
    "the",
    "for",
    "then",
    "unchanged",
    "row",
    "round",
    "telling",
)


class OpeningClauses(CountClauses):
    """The layer of clauses that are tried before and behind those which their first word decides."""

    def read_about_somebody(self, start: int) -> bool:
        stream = self.stream
        if (told := about_somebody(stream, start)) is None:
            return False
        stream.at = told
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def read_opened_star(self, start: int) -> bool:
        """A star, or a plus that stands for one: "+ dc in next st, ch 1; rep from + across"."""
        opens = self.stream.kind() == "star" or not self.runs_on(start) or self.plus_opened()
        return opens and self.read_star()

    def plus_opened(self) -> bool:
        """Whether a plus stands before the clause where another repeat has its star."""
        return any(isinstance(step, repeats.Mark) and step.sign == "+" for step in self.steps)

    def read_joined(self, start: int) -> bool:
        """ "3 dc + ch 2 + 3 dc in corner sp": a sign that only joins clauses; but "2 tr/dc" is one stitch."""
        stream = self.stream
        if not self.steps or stream.kind(1) not in _JOINED:
            return False
        chained = isinstance(self.steps[-1], Chain) or "chain" in (stream.kind(1), stream.kind(2))
        if stream.kind() != "+" and (not chained or stream.kind(1) == "stitch"):
            return False
        stream.take()
        return self.clause()

    def read_needle_loops(self, start: int) -> bool:
        stream = self.stream
        return may_tell_loops(stream) and (
            needle_words(stream, self.steps, start) or loops_together(stream, self.steps, start)
        )

    def read_edges_joined(self, start: int) -> bool:
        begins = not start or self.stream.kind(-1) in (".", ";", ":", "and", *CLOSERS)
        return begins and self.edges_joined(start)

    def read_note_on_chain(self, start: int) -> bool:
        return not self.runs_on(start) and self.read_chain_note(start)

    def read_opened_bracket(self, start: int) -> bool:
        return self.read_bracket()

    def read_stray_closer(self, start: int) -> bool:
        lexeme = self.stream.take()
        self.steps.append(Unread(lexeme.span, lexeme.text, "this bracket is never opened", "never opened"))
        return True

    def read_alternating(self, start: int) -> bool:
        return self.stream.word("alternating") and self.stitches_in_turn(start)

    def read_but_work(self, start: int) -> bool:
        """ "do not turn, but work back along the other side of the ch", "sc in each st around, but work 3 sc in each corner st"."""
        stream = self.stream
        if not stream.word("but"):
            return False
        turned = bool(self.steps) and isinstance(self.steps[-1], Turn) and stream.kind(1) == "make"
        if not turned and not self.corners_otherwise():
            return False
        stream.take()
        return self.clause()

    def corners_otherwise(self) -> bool:
        """Whether so many stitches in each corner follow, behind a run of one in each stitch: what the corners have instead."""
        stream = self.stream
        run = self.steps[-1] if self.steps else None
        each = isinstance(run, Work) and [place.which for place in run.places] == [Which.EACH]
        kinds = [item.kind for item in stream.lexemes[stream.at + 1 : stream.next_of(*SIGNS)] if item.kind != "make"]
        return (
            each
            and kinds[:3] == ["number", "stitch", "in"]
            and kinds[-2:] in (["each", "corner"], ["corner", "space"], ["corner", "any_stitch"])
        )

    def read_every_nth(self, start: int) -> bool:
        return (self.stream.kind() == "skip" or self.stream.word("but")) and self.skips_every_nth(start)

    def read_drawn_alike(self, start: int) -> bool:
        return self.stream.word("do") and self.drawn_alike(start)

    def read_passage(self, start: int) -> bool:
        stream = self.stream
        begins = stream.kind() in ("make", "as", "open_work") or stream.word("do")
        return begins and repeats.passage(stream, self.steps, start)

    def read_behind_others(self, start: int) -> bool:
        return not self.has_work() and self.behind_others(start)

    def read_rows_even(self, start: int) -> bool:
        return self.begins_rows(start) and rows_even(self.stream, self.steps, start)

    def read_unshaped(self, start: int) -> bool:
        open_ = self.begins_rows(start) and not self.has_work()
        return open_ and any(read(self.stream, self.steps, start) for read in (unshaped, patterned_like))

    def begins_rows(self, start: int) -> bool:
        """Whether a sentence begins here that may tell rows, or the whole of this one."""
        first = start
        while first and self.stream.lexemes[first - 1].kind in ("and", "then"):
            first -= 1  # "Then work 3 rows even"
        opens = not first or self.stream.lexemes[first - 1].kind in (".", ";", ":", *CLOSERS)
        behind = bool(self.steps) and isinstance(self.steps[-1], (Chain, Turn, UseYarn, JoinYarn))
        opens = opens or behind and not self.has_work()
        called = first < start and bool(self.steps) and isinstance(self.steps[-1], RowCall)
        opens = opens or called  # "Rep Row 2 3 times, then work 5 rows even"
        return self.top and opens and self.stream.kind() in _ROWS_BEGIN

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

    def read_add_chain(self, start: int) -> bool:
        """ "Add a chain of 12"."""
        stream = self.stream
        the = stream.kind(1) == "the"
        if not stream.word("add") or stream.kind(1 + the) != "chain":
            return False
        stream.at += 1 + the
        return self.clause()

    def read_once_more(self, start: int) -> bool:
        """ "6 sc, once": a number, and how often, or a point of the row."""
        stream = self.stream
        often = stream.word("once", "twice", "thrice") or stream.kind(1) == "in" and stream.kind(2) in POINTS
        return often and self.read_more_of_it(start)

    def read_plus_ends(self, start: int) -> bool:
        stream = self.stream
        added = stream.kind(1) == "any_stitch" and stream.kind(-1) in ("and", "+")
        return added and self.read_plus_each_end(start)

    def read_blocked(self, start: int) -> bool:
        """ "Fasten off and block to size": what is done, not what is made."""
        off = self.stream.word("block") and any(isinstance(step, FastenOff) for step in self.steps)
        return off and self.read_sentence_remark(start)

    def read_group_of(self, start: int) -> bool:
        """ "shell of (3 dc, ch 1, 3 dc) in next sp", "a petal of (sc, 3 dc, sc) in each sp"."""
        stream = self.stream
        if stream.kind(1) == "group_word":
            stream.take_if("the")
        if stream.kind(1) != "of" or stream.kind(2) not in OPENERS:
            return False
        stream.at += 2
        return self.read_bracket()

    def read_often(self, start: int) -> bool:
        """ "*8 sc, dec*, 3x", "(sc, inc) 3 times evenly", "2x 3 dc": a number of times behind or before its work."""
        stream = self.stream
        number = stream.kind() == "number"
        crossed = number and stream.word("x", "×", ahead=1) and stream.kind(1) != "stitch"  # X may be a stitch
        often = crossed or number and stream.kind(1) == "times"
        if often and stream.kind(1) == "times" and stream.kind(2) == "evenly" and self.times_evenly(start):
            return True
        behind = often and (not crossed or stream.kind(2) not in OPENERS or count_alone(stream, 2))
        if (behind or by_cross(stream)) and self.read_whole_row(start):
            return True
        stream.at = start
        one_name = stream.kind(3) == "stitch" and "one_stitch" in (stream.kind(4), stream.kind(5))  # "2x3dc-cl"
        return often and not one_name and self.times_first(start)

    def read_set_out(self, start: int) -> bool:
        return not self.has_work() and set_out(self.stream, self.steps, start)
