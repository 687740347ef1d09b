"""Reads words that are not work: remarks, markers, notes on chains; and keeps what cannot be read."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from lint.amount import ONE
from lint.place import TargetKind, Which
from lint.reading.clauses.base import STITCHY
from lint.reading.clauses.leftover import LeftClauses
from lint.reading.places import notes
from lint.reading.places.limits import past_lengths
from lint.reading.places.places import places
from lint.reading.repeating.rowsof import run_for_rows
from lint.reading.repeating.swaps import changes_stitch
from lint.reading.words.piecewords import for_a_thing, tells_piece
from lint.reading.words.rowending import ends_in_stitches
from lint.reading.words.runs import begins_at
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS
from lint.tree import Chain, OpenWork, OtherSide, Remark, Repeat, Skip, Unread, UseYarn, Work

_WORK_BEGINS = ("number", "stitch", "chain", "join", "turn", "special", "make", "repeat", "skip")
_POINTED = ("remaining", "last", "first", "next", "any_stitch", "stitch", "number", "ordinal", "space")
_SIGNS = (",", ";", ".", ":", "dash", "(", "[", "{", "star", *CLOSERS)
_LENGTHS = {"cm", "mm", "in", "ins", "inch", "inches"}
_ENDS_TOLD = {"measures", "measure", "rows", "rounds", "length", "long", "desired", "size", "completed"}


class RemarkClauses(LeftClauses):
    """Remarks, and what is left unread."""

    def read_throughout(self, start: int) -> bool:
        """ "in each st throughout" adds nothing; of "4 sc, dec throughout" it is not said what goes on so."""
        listed = self.stream.kind(-1) in ("stitch", "increase", "decrease") and len(self.steps) > 1
        listed = listed and all(isinstance(step, Work) for step in self.steps[-2:])
        return not listed and self.read_remark_phrase(start)

    def read_remark_phrase(self, start: int) -> bool:
        self.stream.take()
        return self.noted(start)

    def read_unchanged(self, start: int) -> bool:
        """ "sc in each st without increasing": said of the work before it."""
        return self.has_work() and self.read_remark_phrase(start)

    def read_sentence_remark(self, start: int) -> bool:
        """A marker, stuffing, folding: up to the next stop, or to "and" before work."""
        stream = self.stream
        if stream.word("rotate", "rotate piece") and stream.kind(1) in (",", ";", ".") and self.has_work():
            stream.take()  # "3 sc in last ch, rotate, 6 sc"
            self.steps.append(OtherSide(stream.span_from(start), perhaps=True))
            return True
        while not stream.done and stream.kind() not in _SIGNS:
            if self.work_begins():
                break
            if stream.kind() == "to" and stream.kind(1) == "make":  # "rotate to work along other side"
                stream.take()
                break
            stream.take()
        return self.noted(start)

    def work_begins(self) -> bool:
        """Whether a connecting word leads from a remark back to work."""
        stream = self.stream
        return stream.kind() == "and" and stream.kind(1) in _WORK_BEGINS or stream.leads_to_work(stream.at)

    def noted(self, start: int) -> bool:
        """What was passed since `start` is a remark."""
        self.steps.append(Remark(self.stream.span_from(start)))
        return True

    def read_beginning_remark(self, start: int) -> bool:
        """ "beginning in the top of ch-3" says where the run before starts; before any work, where this row does."""
        stream = self.stream
        if stream.kind(1) in ("special", "one_stitch"):
            return False
        if not self.has_work() and stream.kind(1) == "with":  # "Start with a magic ring"
            stream.at += 2
            stream.skip("the")
            colour = self.colour()  # "Start with Col A"
            if colour is not None:
                self.steps.append(UseYarn(stream.span_from(start), colour))
                return True
            if stream.kind() == "word" and stream.kind(1) in (",", "yarn", "color") and not stream.vocabulary.specials:
                stream.pass_to()  # "Start with white, …"
                self.steps.append(UseYarn(stream.span_from(start)))
                return True
            if stream.kind() == "space" and self.loop_for_ring(start):
                return True
            last = self.steps[-1] if self.clause() else None
            if isinstance(last, Work) and last.number == ONE and not last.places and last.stitch != "sl st":
                self.steps[-1] = replace(last, perhaps=True)  # "Starting with a standing dc, 2 dc in each st"
            return last is not None
        if not self.has_work() and stream.kind(1) in ("number", "stitch") and stream.word("start", "begin", "starting"):
            stream.take()  # "start 6 sc in a magic circle"
            return self.clause()
        if stream.kind(1) == "by" and stream.kind(2) == "make" and not self.has_work():
            stream.at += 2  # "Begin by making a loop"
            return self.clause()
        if stream.kind(1) == "with" and stream.kind(2) == "chain" and self.has_work():
            stream.pass_to()  # "8 dc in ring, starting with ch 3 as first dc": one of the eight
            return self.noted(start)
        stream.take()
        if stream.kind() == "at" and not self.has_work():  # "Starting at toe end, ch 22"
            return self.where_words(start)
        if stream.take_if("with", "from", "on"):
            ahead = 1 if stream.kind() == "the" else 0
            if stream.kind(ahead) in ("right_side", "wrong_side") and stream.kind(ahead + 1) == "row":
                stream.pass_to()  # "Beg with a RS row, work in patt"
                return self.noted(start)
        kinds = [item.kind for item in stream.lexemes[start : start + 6]]
        if stream.kind() in ("each", "same") and ("row" in kinds or "round" in kinds):
            stream.pass_to(".", ";")  # "Begin each new round with a standing dc, or ch 3 instead."
            return self.noted(start)
        found = places(stream, bare=True)
        if not found:
            return False
        span = stream.span_from(start)
        corner = found[0].which is Which.ANY and (
            found[0].targets[0].kind is TargetKind.CORNER or found[0].targets[0].corner
        )
        pointed = (found[0].which in (Which.SAME, Which.NEXT, Which.FIRST) or corner) and found[0].number == ONE
        second = found[0].which is Which.NEXT and found[0].targets[0].kind in (TargetKind.ANY_STITCH, TargetKind.STITCH)
        second = second and any(isinstance(s, Chain) and s.length == ONE for s in self.steps)
        at_first = pointed and not second  # "ch 1, starting in next st": it may be the second one
        if self.has_work() and (found[0].which is Which.FROM_HOOK or found[0].ordinals):
            return begins_at(stream, self.steps, found, span)
        if self.has_work() and not second or at_first and not found[0].ordinals and len(found) == 1:
            self.steps.append(Remark(span))  # "starting in next st"
        elif found[0].which is Which.FROM_HOOK:
            self.steps.append(Skip(span, found))
        elif found[0].which is Which.NTH and found[0].targets[0].kind is TargetKind.CHAIN and found[0].ordinals:
            self.steps.append(Skip(span, (replace(found[0], which=Which.FROM_HOOK),)))  # "starting in second chain"
        else:
            return False
        return True

    def read_for_remark(self, start: int) -> bool:
        stream = self.stream
        if self.top and run_for_rows(stream, self.steps, start):
            return True
        colon = stream.next_of(":", *SIGNS)
        words = stream.lexemes[start + 1 : colon]
        if stream.kind(colon - start) == ":" and not self.has_work() and any(tells_piece(i.lower) for i in words):
            if all(item.kind in ("the", "word", "side") for item in words):
                stream.at = colon  # "For the ears: sc 5, …"
                return self.noted(start)
        if stream.word("but", "except", ahead=-1):
            return False  # "…, but for the final one"
        clause = stream.lexemes[start : stream.next_of(*SIGNS, start=start)]
        many = any(item.kind in ("each", "remaining", "number") for item in clause)
        many = many or any(item.kind in _POINTED for item in clause[1:3]) and not for_a_thing(self.steps, clause)
        if self.runs_on(start) and many and not any(item.kind == "corner" for item in clause):
            return False  # "2 sc for each st", "hdc for the remaining 12"
        near = stream.lexemes[start + 1 : start + 3]
        if any(item.kind in ("number", "stitch", "row") for item in near) and not stream.word("corner", ahead=1):
            return False
        corner = any(item.kind == "corner" for item in stream.lexemes[start + 1 : start + 4])
        if not self.idle_to_sign():
            return False
        if corner and self.steps and isinstance(self.steps[-1], Chain):
            self.steps[-1] = replace(self.steps[-1], corner=True)
        return self.noted(start)

    def tells_what_for(self) -> bool:
        """Whether "for corner", "for the beak" stands here; "for the remaining 12" is where it is worked."""
        stream = self.stream
        if stream.kind() != "for":
            return False
        words = stream.lexemes[stream.at + 1 : stream.next_of(*SIGNS)]
        if any(item.lower in ("size", "sizes") or item.lower in stream.vocabulary.size_names for item in words):
            return False  # "3 sc in first st for the smallest size": of the others, not
        return stream.kind(1) == "corner" or stream.kind(1) == "the" and stream.kind(2) not in _POINTED

    def idle_to_sign(self) -> bool:
        """Pass everything up to the next stop or bracket, unless there is work among it."""
        start = self.stream.at
        self.stream.pass_to()
        passed = range(start, self.stream.at)
        idle = not any(self.stream.lexemes[index].kind in ("make", "skip", "repeat") for index in passed)
        return idle and not any(self.stream.work_at(index) for index in passed)

    def read_at_remark(self, start: int) -> bool:
        """ "at the start of a short edge": where the work is."""
        return not self.runs_on(start) and self.where_words(start)

    def where_words(self, start: int) -> bool:
        """Pass words that say where the work is, up to the next stop; not where work stands among them."""
        stream = self.stream
        stream.take()
        while not stream.done and stream.kind() not in SIGNS:
            if stream.kind() in STITCHY:
                return False
            stream.take()
        return self.noted(start)

    def read_change(self, start: int) -> bool:
        """ "Change to white", "changing to B in last st": a colour, not a stitch."""
        if changes_stitch(self.stream):
            return False
        if self.hand_join(start):
            return True
        while not self.stream.done and self.stream.kind() not in _SIGNS and not self.work_begins():
            self.stream.take()
        words = self.stream.span_from(start)
        self.steps.append(UseYarn(words) if start == 0 or not self.has_work() else Remark(words))
        return True

    def read_whole_sentence(self, start: int) -> bool:
        """ "a multiple of 6 sts + 1 (add 1 for base chain)": what the pattern is built on, not work."""
        stream = self.stream
        if self.has_work():
            return False
        stream.pass_to(".")
        return self.noted(start)

    def read_chain_note(self, start: int) -> bool:
        """ "Beg ch-3 counts as dc.", "Each chain 2 at the start of a round counts as hdc": a rule, not a chain to work."""
        stream = self.stream
        if stream.kind() not in ("chain", "beginning", "turning_chain", "each", "the", "same", "word"):
            return False
        if start and stream.kind(-1) not in (".", ";"):
            return False
        end = stream.sentence_end(start, ".", ";", ",")
        if stream.kind() == "chain" and not any(item.kind == "at" for item in stream.lexemes[start:end]):
            return False  # "Ch 3 counts as dc" works the chain as well
        found = notes.global_countings(stream.inside(start, end))
        if not found and not self.tells_what_chain_makes(end):
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start), counting=found[0][1] if found else None))
        return True

    def tells_what_chain_makes(self, end: int) -> bool:
        """ "The ch 3 makes a ch-3 sp beside the dc.": what a chain that was worked before comes to be."""
        stream = self.stream
        kinds = [item.kind for item in stream.lexemes[stream.at : end]]
        tells = stream.word("makes", "forms", "creates", "gives", "leaves", ahead=3)
        return kinds[:3] == ["the", "chain", "number"] and tells and "space" in kinds[4:10] and "make" not in kinds

    def read_telling(self, start: int) -> bool:
        """ "You will be working in a spiral.": the whole sentence tells, and works nothing."""
        stream = self.stream
        if self.runs_on(start):
            return False
        if stream.word("continue around") and self.stops_on_the_way():
            lexeme = stream.take()
            self.steps.append(Unread(lexeme.span, lexeme.text, "what is worked over and over is not said"))
            return True
        if stream.peek().lower.endswith(":"):  # "Tip: keep your chains loose."
            stream.at = stream.sentence_end(stream.at, ".", "!")
            if {item.kind for item in stream.lexemes[start : stream.at]} & {"number", "skip", "repeat", "each", "next"}:
                return False
            return self.noted(start)
        seams = stream.word("seam the", "sew")  # no row: the whole sentence is finishing
        end = stream.sentence_end(start, ".", ";", *(() if seams else (",", ":", "star", *OPENERS)))
        end = next((i for i in range(start + 1, end) if stream.leads_to_work(i)), end)
        ands = [i for i in range(start + 1, end) if stream.lexemes[i].kind == "and"]
        end = next((i for i in range(start + 1, end) if stream.lexemes[i].lower == "working"), end)
        put = [i for i in ands if i < end and [item.kind for item in stream.lexemes[i + 1 : i + 2]] == ["place"]]
        end = next(iter(put), end)
        words = stream.lexemes[start:end]
        works = any(
            item.kind in ("make", "skip", "repeat", "in")
            and before.lower != "to"  # "to make a square"
            and not (seams and item.lower == "on")  # "sew on the buttons opposite the ch-2 sps"
            for before, item in zip(words, words[1:], strict=False)
        )
        works = works and any(item.kind in STITCHY for item in words[1:])
        kinds = [item.kind for item in words]
        more = words[0].lower.startswith("cont") and any(
            one == "number" and two in ("row", "round", "more") for one, two in pairwise(kinds)
        )  # "Cont in rounds for 8 rounds": rows are worked
        if works or more or ends_in_stitches(words[1:]):
            return False  # "make sure to work 2 sc in last st" is more than a remark
        stream.at = end  # what follows a comma is read for itself: "being careful not to twist, join with sl st"
        return self.noted(start)

    def read_apart(self, start: int) -> bool:
        """ "Insert eyes between R5 and R6, 5 sts apart": how far apart what the clause before tells of is set."""
        stream = self.stream
        told = self.steps and isinstance(self.steps[-1], Remark) and stream.kind(-1) == ","
        if (
            not told
            or stream.amount() is None
            or not stream.take_if("any_stitch", "stitch")
            or not stream.word("apart")
        ):
            return False
        stream.take()
        return self.noted(start)

    def until_length(self, start: int) -> bool:
        """Whether "until piece measures 10 cm", "for 4 in" stands at `start`: how long, not how many stitches."""
        words = self.stream.lexemes[start : self.stream.at]
        said = {item.lower for item in words}
        long = bool(said & (_ENDS_TOLD | _LENGTHS)) and all(item.kind not in ("any_stitch", "stitch") for item in words)
        return long and words[0].kind in ("to", "for")

    def read_open_work(self, start: int) -> bool:
        """ "Work even until piece measures 25 cm": work whose count the words do not give."""
        stream = self.stream
        if self.read_plain(start):
            return True
        stream.at = start
        alone = not self.has_work() and not stream.word("in patt", "in pattern")
        first = stream.take()
        if first.lower != "unchanged":
            past_lengths(stream, ",")
        words = stream.words(start, stream.at)
        plain = alone and first.lower in ("work even", "work straight", "unchanged")
        plain = plain and (stream.at == start + 1 or self.until_length(start + 1))
        self.steps.append(OpenWork(stream.span_from(start), words, plain))
        return True

    def read_until(self, start: int) -> bool:
        """ "until piece measures 25 cm": an end told by a length or a number of rows."""
        stream = self.stream
        if stream.word("to") and stream.word("shape", ahead=1) and not self.has_work():
            stream.take()  # "To shape armholes …"
            return self.what_for(stream.at)
        if self.loop_to_hang_by(start):
            return True
        if stream.kind(1) == "make" and stream.word("to"):
            stream.take()  # "turn to work along the other side of the ch"
            return self.clause()
        behind = start and stream.kind(-1) in (",", ";") and self.has_work()
        if stream.kind(1) == "ending" and stream.kind(2) in (*SIGNS, "end") and behind:
            stream.at += 2  # "sl st across 14 dc, to end"
            return self.noted(start)
        marked = any(item.lower in ("marked", "marker") for item in stream.lexemes[start : start + 9])
        if marked and stream.word("until", "till"):
            stream.pass_to()  # "until you get to your 2nd marked stitch"
            self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
            return True
        if not stream.word("until", "till"):
            return False
        past_lengths(stream)
        end, stream.at = stream.at, start
        words = {item.lower for item in stream.lexemes[start:end]}
        reached = words & {"sets", "groups", "spaces", "petals"} and words & {"you", "there"}
        if reached and isinstance(self.steps[-1] if self.steps else None, Repeat) and self.steps[-1].times.number:
            stream.pass_to(",", ";", ".")  # "repeat from * two more times until you have 4 groups": said already
            return self.steps.append(Remark(stream.span_from(start))) is None
        if not reached and not words & _ENDS_TOLD:
            return False
        stream.at = end
        self.steps.append(OpenWork(stream.span_from(start), stream.words(start, end)))
        return True

    def read_each_remark(self, start: int) -> bool:
        """ "each row has 6 dc and 2 ch-1 sps more than the row before": how the rows grow.

        Or more places for a stitch before a note: "hdc in 3rd ch from hook (does not count) and each ch across".
        """
        if self.stream.kind(-1) == "and" and self.stream.kind(-2) in CLOSERS:
            found = places(self.stream)
            if found and self.more_places(found):
                return True
            self.stream.at = start
        if self.stream.kind(1) not in ("row", "round"):
            return False
        self.stream.pass_to()
        return self.noted(start)

    def read_counting_sentence(self, start: int) -> bool:
        """ "Ch 3. Counts as first dc." as a sentence of its own."""
        stream = self.stream
        before = self.steps[-1] if self.steps else None
        end = notes.note_end(stream, stream.at, before.length.lone if isinstance(before, Chain) else None)
        named = any(item.kind in ("chain", "turning_chain") for item in stream.lexemes[stream.at : end])
        note = notes.counting(stream.inside(stream.at, end))
        run = isinstance(before, Work) and [place.which for place in before.places] == [Which.EACH]
        if note is None or run and note.space is None and not named:  # "sc in each st; count the last 2 sts as one"
            return False
        stream.at = end
        self.attach_counting(note, run and named)
        return True

    def read_which_one(self, start: int) -> bool:
        """The gloss of "3 sc in next sc – center sc of corner,": which stitch that is."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", *OPENERS, "star")
        inside = stream.lexemes[start + 1 : end]
        if not start or stream.kind(-1) != "dash" or any(i.kind in ("in", "number", "make", "skip") for i in inside):
            return False
        stream.at = end
        return self.noted(start)

    def read_may_be(self, start: int) -> bool:
        """ "Rnd 6 may be repeated for a larger motif.": a sentence that leaves it to the maker."""
        stream = self.stream
        end = stream.sentence_end(start, ".", ";")
        if self.has_work() or not any(item.lower in ("may", "can") for item in stream.lexemes[start:end][:4]):
            return False
        stream.at = end
        return self.noted(start)
