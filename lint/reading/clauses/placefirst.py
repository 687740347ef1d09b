"""Reads places said first, and "make" clauses: "in next sp make 2 dc and ch 2", "working behind petals"."""

from __future__ import annotations

from dataclasses import replace

from lint.place import Place, TargetKind, Which
from lint.reading.clauses.alongside import WithClauses
from lint.reading.clauses.base import STITCHY, Reading, all_read
from lint.reading.counting.lastcounts import last_figure
from lint.reading.places.freeloops import FreeLoops
from lint.reading.places.places import places
from lint.reading.places.targets import LOOPS
from lint.reading.repeating import repeats
from lint.reading.repeating.marks import Mark
from lint.reading.repeating.repeats import open_star
from lint.reading.repeating.rowcalls import names_rows, row_call
from lint.reading.repeating.times import times as read_times
from lint.reading.words.lists import bare, mirrored, mirrored_behind_chain
from lint.reading.words.piecewords import makes_pieces
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.source import Span
from lint.tree import (
    AlongEdge,
    Group,
    Loops,
    MakeRing,
    OpenWork,
    Remark,
    Repeat,
    RowCall,
    Step,
    UseYarn,
    Work,
)

_AFTER_LOOPS = (":", ",", ";", ".", "end", "number", "stitch", "increase", "decrease", "dash", *OPENERS)
_LISTED = ("chain", "number", "stitch", "special", "one_stitch", "picot", "group_word", "increase", "decrease")
# what may follow a clause that only names more places
_AFTER_PLACES = (":", ",", ";", ".", "end", *OPENERS, "dash", "turn", "no_turn", "join", "star", "fasten_off")

_RING_ENDS = (":", ",", ";", ".")  # "In a magic ring; ch 1; 8 sc"
_EACH_IN_ONE = ("sc", "hdc", "dc", "tr", "inc")  # these go into one place each, over however many they are worked


class PlaceFirstClauses(WithClauses):
    """ "in next sp make 2 dc and ch 2", "working behind petals"."""

    def _in_colour(self, start: int) -> bool:
        """ "In black, 6 sc in ring", "In Color A, ch 5"; before a chain that is all, whatever word the colour has."""
        stream = self.stream
        if not stream.word("in"):
            return False
        stream.take()
        chain = [stream.kind(ahead) for ahead in range(1, 4)] == [",", "chain", "number"]
        alone = chain and not start and stream.kind(4) in (".", "end") and len(stream.lexemes) <= start + 6
        colour = self.colour() or (stream.take().text if alone and stream.kind() == "word" else None)
        stream.take_if("yarn") if colour is not None else None
        if colour is None or stream.kind() not in (",", ":"):
            stream.at = start
            return False
        self.steps.append(UseYarn(stream.span_from(start), colour))
        return True

    def read_place_first(self, start: int) -> bool:
        """ "in next sp make 2 dc, ch 2 and 2 dc", "over next 2 sts work dc2tog", "in first st *make 2 hdc"."""
        stream = self.stream
        loop = 2 if stream.kind(1) == "the" else 1
        if stream.kind(loop) in LOOPS and (
            loop == 1 or stream.kind(3) in _AFTER_LOOPS
        ):  # "in FLO: …", "in the BLO 9 sc"
            stream.at += loop
            return self.read_loops(start)
        if self.old_loops(start) or self._other_side(start):
            return True
        if not self.has_work() and self._in_colour(start):
            return True
        inserted = "insert" in stream.peek().lower
        if inserted and self.read_loop_drawn(start):
            return True
        found = places(stream)
        if not found:
            return False
        if stream.word("we", "you") and stream.kind(1) == "make":
            stream.take()  # "Inside the ring we make 6 sc"
        if self.goes_on_behind_note(start, found[0]) and self.more_places(found):
            return True  # "hdc in 3rd ch from hook (does not count) and in each ch across: 20 hdc"
        if found[0].targets[0].kind is TargetKind.RING and not self.has_work():
            worked = stream.kind() == "make" and stream.kind(1) == ":"
            stream.at += worked  # "In a magic ring work: ch 2, 10 hdc"
            kinds = [stream.kind(ahead) for ahead in range(4)]
            if kinds[:1] == ["make"] and {*kinds[1:3]} == {"number", "chain"} and kinds[3] in OPENERS:
                stream.take()  # "Into the ring work 3 ch (counts as 1 tr), 13 tr"
                self.steps.append(MakeRing(stream.span_from(start)))
                return True
        if found[0].targets[0].kind is TargetKind.RING and not self.has_work() and stream.kind() in _RING_ENDS:
            drawn_up = not stream.word("ring", "the ring", ahead=-1)
            self.steps.append(MakeRing(stream.span_from(start)) if drawn_up else Remark(stream.span_from(start)))
            return True  # "In MR: ch 3, 11 dc": all that follows goes into it
        if stream.kind() == ":" and found[0].which is Which.ELSEWHERE:
            self.steps.append(AlongEdge(stream.span_from(start)))  # "On the first leg: skip 1 st, 7 sc"
            return True
        led = stream.kind() == ":"  # "In next sp: ch 3, 2 dc, ch 2, 3 dc."
        stream.skip(",", ":")
        if stream.kind() == "star" and stream.kind(1) in ("make", "number", "stitch") and not open_star(self.steps):
            mark = stream.take()  # "in first st *make 2 hdc, hdc in next 4 sts*": the place goes with the star's first
            self.steps.append(Mark(mark.span, mark.value))
            found = tuple(replace(place, which=Which.NEXT) for place in found)
        if stream.take_if("make"):
            led = stream.take_if(":") is not None or led  # "In every arch work: 1 sc, 3 dc, 1 sc"
        if stream.kind() in OPENERS:
            close = stream.matching(stream.at)
            if close is None:
                return False
            items = self.read_inside(stream.inside(stream.at + 1, close))
            stream.at = close + 1
            times = read_times(stream)
            if times is not None:
                items = [Repeat(stream.span_from(start), tuple(items), times), *self._last_of_list()]
        else:
            items = self.loose_list(stream, led)
        verb = stream.lexemes[start - 1].kind == "make" if start else False  # "work in each st" is no more of the last
        if not items and not inserted and not verb and self.more_places(found):
            return True
        if not items or not all_read(items) or any(_placed(item) for item in items):
            return False  # what goes into a place of its own does not go into this one
        items = [item for item in items if not isinstance(item, Remark)]
        if len(items) == 1 and isinstance(items[0], Work) and not items[0].places:
            one = items[0]
            several = (found[0].number.lone or 1) > (one.together or 1) > 1 and found[0].which is Which.FIRST
            if several and stream.kind() == "," and stream.kind(1) not in ("turn", "no_turn", "join", "end"):
                return False  # "Over first 6 sts, sc2tog, sc in next 2 sts, sc2tog": the row's words go on
            if one.stitch in _EACH_IN_ONE and one.together is None:  # "over next 10 sts: sc"
                found = tuple(replace(place, shared=False) for place in found)
            self.steps.append(replace(one, places=found, span=stream.span_from(start)))
        else:
            self.steps.append(Group(stream.span_from(start), tuple(items), found))
        return True

    def _last_of_list(self) -> list[Step]:
        """ "in next dc make (dc, ch 2) 3 times; and dc": the item that "and" adds to the place."""
        stream = self.stream
        before = stream.at
        stream.skip(";", ",")
        items: list[Step] = []
        if stream.take_if("and") and type(self)(stream, Reading(items), top=False).clause():
            if len(items) == 1 and isinstance(items[0], Work) and not items[0].places:
                return items
        stream.at = before
        return []

    def goes_on_behind_note(self, start: int, place: Place) -> bool:
        """Whether "and in next 6 ch," behind a note in brackets names more places for the stitch before the note.

        Into places of another sort ("and in next sp, 3 dc, ch 2, 3 dc") may go what follows.
        """
        before = [item.kind for item in self.stream.lexemes[max(0, start - 3) : start]]
        said = [kind for kind in before if kind != ","]  # "(mark it), and in next 6 sts"
        if before[-1:] != ["and"] or said[-2:-1] not in [[closer] for closer in CLOSERS]:
            return False
        if place.which is Which.EACH:
            return True
        work = next((step for step in reversed(self.steps) if not isinstance(step, Remark)), None)
        kinds = {target.kind for one in work.places for target in one.targets} if isinstance(work, Work) else set()
        return kinds == {target.kind for target in place.targets}

    def more_places(self, found: tuple[Place, ...]) -> bool:
        """ "dc in 4th ch from hook (counts as 2 dc) and in each ch across": more places for the stitch before."""
        counted = found[-1].which is Which.EACH and self.stream.kind(-1) in ("across", "around")
        counted = counted and last_figure(self.stream) is not None
        if not counted and self.stream.kind() not in (*_AFTER_PLACES, *CLOSERS):
            return False
        for index in range(len(self.steps) - 1, -1, -1):
            step = self.steps[index]
            if isinstance(step, (Work, Group)) and step.places:
                self.steps[index] = replace(step, places=(*step.places, *found))
                return True
            if not isinstance(step, Remark):
                return False
        return False

    def loose_list(self, stream: Stream, led: bool) -> list[Step]:
        """An unbracketed list after "make": it ends with the item after "and"; without "and", it is one item or a
        list that reads the same from both ends ("2 dc, ch 2, 2 dc"), or all of a sentence that a colon led to.

        `led`: a colon stands before it.
        """
        items: list[Step] = []
        after = [stream.at]  # where the stream stands after each item
        last = False
        while stream.kind(self._article()) in _LISTED:
            before = stream.at
            stream.at += self._article()
            sub = type(self)(stream, Reading(items), top=False)
            if not sub.clause() or len(items) != len(after):
                stream.at, items[len(after) - 1 :] = before, []
                break
            after.append(stream.at)
            if last:
                return items
            stream.take_if(",")
            last = bool(stream.take_if("and"))
            stream.take_if("make") if last else None
        if last:
            stream.at = after[0]
            return []
        placeless = next((i for i, item in enumerate(items) if not bare(item) and not _joins(item)), len(items))
        whole = placeless == len(items) > 1 and stream.kind() in (".", ";", "end")
        if whole and (led or mirrored_behind_chain(items)):
            return items
        listed = next((n for n in range(placeless, 1, -1) if mirrored(items[:n])), min(1, len(items)))
        two = isinstance(items[0], Work) and isinstance(items[1], Work) if placeless > 1 else False
        if listed == 1 and two and not _joins(items[1]):
            stream.at = after[0]
            return []  # which of them go into the place is not said
        stream.at = after[listed]
        return items[:listed]

    def _article(self) -> int:
        """How many lexemes of "a 3-tr cluster", "another shell" stand before the item itself."""
        return int(self.stream.kind() in ("the", "another"))

    def _says_how_often(self) -> bool:
        """Whether a number of times stands in the clause at the cursor."""
        stream = self.stream
        clause = stream.lexemes[stream.at : stream.next_of(",", ";", ".")]
        return any(item.kind in ("times", "more") or item.lower in ("once", "twice", "again") for item in clause)

    def read_make(self, start: int) -> bool:
        """ "make a magic ring", "work 73 sc evenly", "working last dc in top of ch", "work in BLO"."""
        stream = self.stream
        if self.only_these(start) or self.read_plain(start):
            return True
        stream.at = start
        participle = stream.take().lower in ("working", "making", "placing")
        if stream.kind() == "from" and stream.kind(1) == "star" and open_star(self.steps):
            stream.at = start  # "*10 hdc, dec*, work from * to * 8 times"
            return repeats.repeat_clause(stream, self.steps, start)
        if stream.kind() == "from" and self.passage_of_a_row(start):
            return True
        if stream.kind() == "as" and names_rows(stream):
            return row_call(stream, self.steps, stream.at)  # "Work as Row 3"
        if self._other_side(start):
            return True
        if self.steps and isinstance(self.steps[-1], RowCall) and names_rows(stream):
            return row_call(stream, self.steps, start)  # "Rep Rows 2-5; then work Rows 2 and 3 once more"
        if names_rows(stream) and (self._says_how_often() or self.depth and not self.has_work()):
            return row_call(stream, self.steps, start)  # "Work Row 2 once more", "[Work Row 2] twice"
        stream.skip("the", "then")
        if stream.kind() == "number" and stream.kind(1) in (".", "end") and not self.has_work():
            stream.take()  # "Make 2."
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.kind() == "number" and makes_pieces(stream):
            stream.at += 2  # "Make 2 panels."
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.kind() == "corner" and stream.kind(1) in ("number", "stitch", "(", "["):
            stream.take()  # "make corner 2 dc, ch 2, 2 dc in sp"
        if stream.word("further") and stream.kind(1) == "number":
            stream.take()
        if stream.kind() == "ring":
            return self.read_ring(start)
        if stream.kind() == "space" and self.loop_for_ring(start):
            return True
        if stream.kind() in ("last", "first"):
            return self.read_last_place(start)
        if stream.kind() in LOOPS:
            return self.read_loops(start)
        if stream.kind() == "in" and stream.kind(2 if stream.kind(1) == "the" else 1) in LOOPS:
            if self.old_loops(start):
                return True  # "work in the back loops left from Rnd 12"
            stream.skip("in", "the")
            return self.read_loops(start)
        if self.along_edge_words(start):
            return True
        if stream.kind() == "more" and stream.word("behind", ahead=1):
            stream.take()  # "working again behind the petals"
        held = stream.word("behind") or stream.kind() == "in" and stream.word("front", "back", ahead=1)
        if held and (participle or not self.has_work()):
            return self.read_behind(start)
        if participle and self.has_work() and stream.kind() == "number":
            before = stream.at
            number = stream.amount()
            if number is not None and self.every_nth_doubled(start, number):
                return True  # "sc in each st, working 2 sc in every 7th st"
            stream.at = before
        if participle and self.has_work() and stream.kind() in ("number", "(", "[", "stitch"):
            return self.read_alongside(start)
        if participle and stream.kind() == "in" and self.in_gaps_between(start):
            return True
        if stream.kind() == "open_work":
            return self.read_open_work(start)
        if self.old_loops(start):
            return True
        if stream.kind() in (
            *_LISTED,
            *OPENERS,
            "number",
            "stitch",
            "special",
            "chain",
            "in",
            "one_stitch",
            "over",
            "repeat",
        ):
            return self.clause()
        return False

    def passage_of_a_row(self, start: int) -> bool:
        """ "work from first * to 2nd * on Row 12": a passage by the marks of another row, which is not looked up."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", *OPENERS)
        words = stream.lexemes[stream.at : end]
        marks = [item for item in words if item.kind == "star"]
        if len(marks) != 2 or not any(item.kind in ("row", "round") for item in words):
            return False
        stream.at = end
        self.steps.append(OpenWork(stream.span_from(start), stream.words(start, end)))
        return True

    def read_behind(self, start: int) -> bool:
        """ "working behind petals,", "working in front of tr just made": how the work is held; work may follow at once."""
        stream = self.stream
        in_front = stream.take().kind == "in" and stream.take()
        if not in_front or stream.kind() == "of":  # "working in front FPtr around …": of what is left unsaid
            stream.skip("of", "the", "last", "number", "same")
            stream.take_if("stitch", "special", "group_word", "one_stitch", "any_stitch", "chain", "word")
        while stream.kind() in ("made", "space", "dash", "number", "any_stitch") and not stream.done:
            if stream.kind() == "number" and stream.kind(1) in ("stitch", "chain"):
                break
            stream.take()
        if not self.starts_work():
            words = stream.at
            stream.pass_to(*SIGNS, ":")
            if any(item.kind in STITCHY for item in stream.lexemes[words : stream.at]):
                return False
        held = stream.lexemes[start : stream.at]
        made = any(item.kind == "made" for item in held) or held[-1].text in ("A", "B", "C", "D", "E", "F", "MC", "CC")
        ahead = stream.lexemes[stream.at : stream.sentence_end(stream.at, ".")]
        elsewhere = any(item.kind in ("below", "row", "round") or item.kind == "unused" for item in ahead)
        if not made and not elsewhere:
            return False  # behind petals: into which round is not said
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def starts_work(self) -> bool:
        """Whether a number or a stitch stands at the cursor."""
        return self.stream.kind() in ("number", "stitch", "special", "chain", "in")

    def read_another(self, start: int) -> bool:
        """ "another sc in same st", "a further 3 sc": so many, whatever was worked there before."""
        self.stream.take()
        at = self.stream.at + (self.stream.kind() == "number")
        what = self.stream.lexemes[at].kind if at < len(self.stream.lexemes) else "end"
        steps = len(self.steps)
        if what not in ("stitch", "special", "one_stitch", "chain") or not self.clause():
            return False
        if len(self.steps) > steps:  # "another" is among the step's words, for what they say of the last stitch
            step = self.steps[steps]
            self.steps[steps] = replace(step, span=Span(self.stream.lexemes[start].start, step.span.end))
        return True

    def read_the(self, start: int) -> bool:
        if self.loop_is_first(start):
            return True
        self.stream.skip("the")
        if self.stream.kind() == "more":
            return self.read_another(start)
        if self.stream.kind() == "multiple":
            return self.read_whole_sentence(start)
        return self.stream.kind() in ("first", "last") and self.read_last_place(start)

    def read_loops(self, start: int) -> bool:
        stream = self.stream
        kind = stream.take().kind
        the = 2 if stream.kind(1) == "the" else 1
        if stream.kind() in ("of", "in") and stream.kind(the) in ("row", "round") and stream.kind(the + 1) == "number":
            stream.at += the + 2  # "FLO of rnd 9:": loops of another row
            return self.on_old_loops(start, FreeLoops(stream.peek(-1).number, kind.split("_")[0]))
        stream.skip("of", "the")
        if stream.word("on") and stream.word("back", ahead=2):
            stream.pass_to()  # "in the hump on the back of the chains"
        if stream.kind() == "chain" and stream.kind(1) in (",", ":", ".", "end"):
            stream.take()  # "working in the back ridges of the chain,"
        if stream.kind() == "each" and stream.kind(2) in (",", ";", ".", ":", "end", "star"):
            stream.at += 2  # "working in back loop of each sc,"
        self.steps.append(Loops(stream.span_from(start), kind.split("_")[0]))
        return True


def _joins(item: Step) -> bool:
    """ "4 sc, ch 2, sl st in next picot of First Motif, ch 2, 4 sc": the join to another piece, within a list for one place."""
    slips = isinstance(item, Work) and item.stitch == "sl st" and bool(item.places)
    return slips and all(place.which is Which.ELSEWHERE for place in item.places)


def _placed(item: Step) -> bool:
    return isinstance(item, (Work, Group)) and bool(item.places) and not _joins(item)
