"""Reads what is passed over: skips, stitches left unworked, the rest left for later."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.lexicon import Lexeme
from lint.place import LimitKind, Place, Target, TargetKind, Which
from lint.reading.clauses.base import STITCHY, is_run
from lint.reading.clauses.remark import RemarkClauses
from lint.reading.clauses.skips import at_the_middle, skipped
from lint.reading.counting.nocounts import count_behind_dash
from lint.reading.places import notes
from lint.reading.places.places import places
from lint.reading.places.targets import target
from lint.reading.words.piecewords import PIECE_WORDS, names_piece
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Chain, Either, Group, Join, Remark, Repeat, Skip, Step, Turn, Work

_OTHERS = ("other", "others", "rest")
_WAIT = ("form", "forms", "wait", "waits", "stay", "stays", "remain", "remains")
_ARE = ("are", "is", "will", "become", "becomes")
_WORKED = (*STITCHY, "make", "repeat", "skip", "row", "round", "ordinal", "each", "next", "increase", "decrease")
# what stitches are that wait: of those that "are doubled" or "will be increased" more is told than that
_WAITING = ("for", "on", "left", "held", "kept", "not", "waiting", "our", *_WAIT)
_STITCHES = (TargetKind.ANY_STITCH, TargetKind.STITCH)


class SkipClauses(RemarkClauses):
    """ "skip next 2 dc", "miss first 4 ch", "leave last 4 sts unworked"."""

    def read_skip(self, start: int) -> bool:
        """ "skip next 2 dc", "sk 3", "miss first 4 ch (3 ch count as 1 tr)", "skip all remaining sts"."""
        stream = self.stream
        stream.take()
        stream.skip(",", "the", "over")
        if stream.kind() == "to" and names_piece(stream, 2 if stream.kind(1) == "the" else 1):
            stream.pass_to()  # "skip to the other leg"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.kind() == "to" and self._skips_to(start):
            return True
        if stream.kind() == "first" and self._skips_under_chain(start):
            return True
        if stream.kind() in ("all", "each", "any_stitch", "stitch") and self._skips_all_to(start):
            return True
        if stream.kind() == "each" and "to" in [i.kind for i in stream.lexemes[stream.at : stream.next_of(*SIGNS)]]:
            return False
        if stream.kind() in ("all", "remaining"):
            words = stream.lexemes[stream.at : stream.next_of(",", ";", ".")]
            onward = any(item.kind in ("to", "between") or item.lower in ("before", "until", "till") for item in words)
            if onward and not (words[-1].kind in ("end", "ending", "row_end") or words[-1].lower == "end"):
                return False  # "skip all sts between the markers" is not all that is left
            stream.pass_to(",", ";", ".")
            self.steps.append(Skip(stream.span_from(start), (), rest=True))
            return True
        if stream.kind() in OPENERS:
            close = stream.matching(stream.at)
            if close is None:
                return False
            inner = stream.inside(stream.at + 1, close)
            found = skipped(inner)
            if not found or not inner.done:
                found = self._skipped_list(stream.inside(stream.at + 1, close))
            if not found:
                return False
            stream.at = close + 1
        else:
            found = skipped(stream)
        if not found:
            return False
        if self.has_work():  # "sc in next 30 sts, skip next 6 sts of the body": on the way
            found = tuple(_on_the_way(place) for place in found)
        if (also := _worked_or_passed(stream)) is not None:
            self._either_way(start, found, also)
            return True
        if self._passed_on_the_way(start, found):
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.kind() in ("from", "at", "of") and _names_piece_side(stream):
            stream.pass_to()  # "skip 7 sts from left side", "skip 3 sts at underarm", "skip 6 sts of body"
        if len(found) == 1 and stream.kind() in ("at", "in"):
            found = (at_the_middle(stream, found[0]),)
        if self.steps and isinstance(self.steps[-1], Join) and found[0].targets[0].kind is TargetKind.CHAIN:
            self.steps.append(Remark(stream.span_from(start)))  # "join in first hdc, skipping ch-2"
            return True
        if stream.kind() == "of" and (passed := self._of_turning_chain(found)) is not None:
            self.steps.append(replace(passed, span=stream.span_from(start)))
            return True
        if stream.kind() == "made" and found[0].targets[0].kind is TargetKind.CHAIN:
            stream.take()  # "sk ch just made": this row's own
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.kind() == "word" and stream.word("directly", "behind") or stream.kind() == "between":
            stream.pass_to()
        stream.take_if("remaining")  # "skip one st and turning chain remaining"
        if stream.kind() == "or" and stream.kind(1) in ("next", "number", "chain"):
            stream.take()
            other = skipped(stream)
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
        if stream.kind() == "at" and any(item.kind == "repeat" for item in stream.lexemes[stream.at : stream.at + 6]):
            if not (self.steps and isinstance(self.steps[-1], Repeat)):
                return False
            stream.pass_to()  # "…, skipping 1 sc at end of last rep"
        self.steps.append(Skip(stream.span_from(start), found, counting))
        return True

    def _either_way(self, start: int, found: tuple[Place, ...], also: Work) -> None:
        """ "sk next dc and hdc, …": both are passed over; of "sk 2 sts and hdc, …" the second is rather worked."""
        span = self.stream.span_from(start)
        passed = (Skip(span, (*found, Place(also.span, Which.NEXT, (Target(TargetKind.STITCH, also.stitch),)))),)
        worked = (Skip(found[0].span, found), also)
        rather = found[-1].targets[0].kind is TargetKind.ANY_STITCH
        self.steps.append(Either(span, (worked, passed) if rather else (passed, worked)))

    def _passed_on_the_way(self, start: int, found: tuple[Place, ...]) -> bool:
        """ "sc in each dc around, skipping ch-3 sps": what a run over the stitches passes anyway."""
        words = self.stream.lexemes[start + 1 : self.stream.at]
        run = self.steps[-1] if self.steps and is_run(self.steps[-1]) else None
        over_stitches = run is not None and all(target.kind in _STITCHES for target in run.places[-1].targets)
        spaces = len(found) == 1 and found[0].targets[0].kind in (TargetKind.SPACE, TargetKind.CHAIN)
        every = words[0].kind in ("each", "all") or words[-1].lower in (
            "sps",
            "spaces",
            "loops",
            "lps",
            "chs",
            "chains",
        )
        pointed = any(item.kind in ("next", "first", "last", "same") for item in words) or found[0].number != ONE
        return over_stitches and spaces and every and not pointed

    def _skips_under_chain(self, start: int) -> bool:
        """ "ch 3, dc in each st around, skipping the first": it is passed over before the run."""
        stream = self.stream
        unit = stream.kind(1) in ("any_stitch", "stitch", "chain")
        chained = len(self.steps) > 1 and isinstance(self.steps[-2], Chain)
        if not (chained and stream.lexemes[start].lower in ("skipping", "missing") and is_run(self.steps[-1])):
            return False
        if stream.kind(1 + unit) not in (",", ";", ".", "end", "(", "[", "and", "join", "turn"):
            return False
        stream.at += 1 + unit
        span = stream.span_from(start)
        self.steps.insert(-1, Skip(span, (Place(span, Which.FIRST, (Target(TargetKind.ANY_STITCH),)),)))
        return True

    def _of_turning_chain(self, found: tuple[Place, ...]) -> Skip | None:
        """ "skip 2 ch of turning ch, dc in next ch": the space that chain holds; the next of its chains is its stitch."""
        stream = self.stream
        before = stream.at
        stream.take()
        owner = target(stream) if len(found) == 1 and found[0].targets[0].kind is TargetKind.CHAIN else None
        if owner is None or owner.kind is not TargetKind.TURNING_CHAIN:
            stream.at = before
            return None
        space = Place(found[0].span, Which.NEXT, (Target(TargetKind.SPACE, "turning chain"),))
        return Skip(found[0].span, (space,), to=Place(found[0].span, Which.NEXT, (owner,)))

    def only_these(self, start: int) -> bool:
        """ "work on these sts only", "working on these 14 sts": the rest of the row below is left for later."""
        stream = self.stream
        words = stream.lexemes[start : stream.next_of(*SIGNS, start=start)]
        on = next((i for i, item in enumerate(words[:3]) if item.lower in ("on", "over")), None)
        kinds = [item.kind for item in words]
        these = any(item.lower in ("these", "those") for item in words)
        if on is None or not (these and "any_stitch" in kinds) or set(kinds) & {"row", "round", "each"}:
            return False
        stream.at = start + len(words)
        span = stream.span_from(start)
        self.steps.append(Skip(span, (), rest=True) if self.has_work() else Remark(span))
        return True

    def _skips_to(self, start: int) -> bool:
        """ "skip to next gap (and work …)": on to a place that the next clause works into."""
        stream = self.stream
        before = stream.at
        stream.take()
        found = places(stream, bare=True)
        ahead = stream.lexemes[stream.at + 1 : stream.next_of(*SIGNS, "and", start=stream.at + 1)]
        run = any(item.kind in ("each", "across", "around", "all") for item in ahead)
        # "skip to next sp, dc in each dc to next sp": from that place on, or from the one that the work has come to
        if run or len(found) != 1:
            stream.at = before
            return False
        if found[0].which is Which.NEXT and stream.kind() in (",", ";", ".", "and", "then", "end"):
            self.steps.append(Skip(stream.span_from(start), (), to=found[0]))
            return True
        stream.at = before
        return False

    def _skips_all_to(self, start: int) -> bool:
        """ "skip all sts to next ch-2 sp", "miss each tr up to next sp": on to a place, whatever lies between."""
        stream = self.stream
        before = stream.at
        stream.skip("all", "each", "the")
        sort = stream.take_if("any_stitch", "stitch")
        if sort is not None and stream.kind() == "to" and self._skips_to(start):
            return True
        stream.at = before
        return False

    def _skipped_list(self, inner: Stream) -> tuple[Place, ...]:
        """What "sk (dc, ch 1, dc)" passes over: each stitch and each run of chains."""
        span = inner.span_from_all()
        found: list[Place] = []
        for item in self.read_inside(inner):
            if isinstance(item, Chain):
                sort = Target(TargetKind.SPACE, length=item.length)
                found.append(Place(span, Which.NEXT, (sort,)))
            elif isinstance(item, Work) and not item.places and item.special is None and item.together is None:
                found.append(Place(span, Which.NEXT, (Target(TargetKind.STITCH, item.stitch),), item.number))
            else:
                return ()
        return tuple(found)

    def _stops_short(self) -> bool:
        """Whether the work so far ends "to last 6 sts", so that "these 6 sts" are those left."""
        work = next((step for step in reversed(self.steps) if isinstance(step, (Work, Group, Repeat))), None)
        place = work.places[-1] if isinstance(work, (Work, Group)) and work.places else None
        limit = work.times.limit if isinstance(work, Repeat) else place.limit if place is not None else None
        return limit is not None and limit.kind is LimitKind.LAST

    def read_leave(self, start: int) -> bool:
        self.stream.take()
        self.steps.append(Skip(self.stream.span_from(start), (), rest=True))
        return True

    def read_leave_last(self, start: int) -> bool:
        """ "leave last 4 sts unworked", "leaving the remaining 8 sc unworked for the instep"."""
        stream = self.stream
        if self.read_keeping_loops(start):
            return True
        stream.at = start
        stream.take()
        words, begun = stream.at, self.has_work()
        phrase = stream.lexemes[words : stream.next_of(*SIGNS, "=", "→")]
        unworked = any(item.kind == "unused" or item.lower in ("unworked", "un-worked", "free") for item in phrase)
        if not unworked and any(
            item.lower in ("tail", "end", "ends", "length", "opening", "hole")
            for item in stream.lexemes[words : words + 7]
        ):
            stream.at = stream.sentence_end(words, ".", ";", ",")  # "leaving a 15 cm tail"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.skip("across", "in", "the")
        ahead = stream.take_if("first", "next")
        last = stream.kind() == "last"
        stream.skip("last")
        rest = stream.take_if("remaining") is not None or stream.word(*_OTHERS) and bool(stream.take())
        rest = rest or stream.word("these", "those") and self._stops_short() and bool(stream.take())
        stream.skip("the", "of", "last", "remaining")
        middle = stream.take_if("middle") is not None
        number = stream.amount()
        named = target(stream)
        sort = named or Target(TargetKind.ANY_STITCH)
        if rest and begun and (self._left_so() or stream.kind() in (*SIGNS, "end", "turn", "and", "=", "→")):
            self._leave_rest(start, number, sort)  # "Leave rem sts."
            return True
        joins = (
            stream.kind() == "unused" and stream.kind(1) in ("and", ",", ";") and stream.kind(2) in ("attach", "join")
        )
        if joins and number is not None and not begun:
            stream.take()  # "Leave centre 10 sts unworked and rejoin yarn in next st": passed over from here
            span = stream.span_from(start)
            self.steps.append(Skip(span, (Place(span, Which.NEXT, (sort,), number, middle=middle),)))
            return True
        stream.pass_to(*SIGNS, "=", "→")  # "leaving the rest for the heel = 16 sc" ends on a count
        told = named is not None or bool(self.steps) and isinstance(self.steps[-1], Turn)
        negative = stream.peek(start - stream.at).lower.startswith("do not")
        if not (told and number is not None and begun) and not negative and not unworked:
            return False
        if any(item.kind == "each" or item.lower in ("both", "every", "either") for item in phrase):
            return False  # "leaving 3 sts unworked at each end"
        chain = named is not None and named.kind is TargetKind.TURNING_CHAIN
        if number is None and (last or (ahead is not None or chain) and named is not None):
            number = ONE  # "leave the last (st) unworked"
        span = stream.span_from(start)
        if number is None:
            self.steps.append(Skip(span, (), rest=True))
            return True
        follows = any(item.kind in STITCHY - {"number", "chain"} for item in stream.lexemes[stream.at :])
        goes_on = follows and not last
        if ahead is not None and (begun if ahead.kind == "first" else not goes_on):
            return False
        if ahead is None and follows and not begun:
            return False  # "leaving the last 2 sts unworked, sc across"
        onward = ahead is not None or goes_on and not _runs_to_end(self.steps[-1])
        place = Place(span, Which.NEXT if onward else Which.LAST, (sort,), number)
        self.steps.append(Skip(span, (place,), rest=not onward))
        return True

    def _left_so(self) -> bool:
        """Takes what may be said behind stitches that are left, "for later", "on hold"; a count may stand there, too."""
        stream = self.stream
        if stream.kind() == "for":
            stream.pass_to(*SIGNS, "=", "→", "dash")
            return True
        held = stream.word("on") and stream.word("hold", ahead=1)
        stream.at += 2 if held else 0
        stream.take() if stream.word("aside", "behind", "waiting", "alone") else None
        return held or count_behind_dash(stream)

    def _leave_rest(self, start: int, number: Amount | None, sort: Target) -> None:
        span = self.stream.span_from(start)
        left = (Place(span, Which.LAST, (sort,), number),) if number is not None else ()
        self.steps.append(Skip(span, left, rest=True))

    def rest_told(self, start: int) -> bool:
        """ "turn. The other 14 sts are the instep and wait.", "The remaining 20 sts form the heel.": they are left."""
        stream = self.stream
        stream.at = start
        stream.skip("the")
        turned = bool(self.steps) and isinstance(self.steps[-1], Turn) and self.has_work()
        if not turned or not (stream.take_if("remaining") or stream.word(*_OTHERS) and stream.take()):
            stream.at = start
            return False
        stream.skip("of", "the")
        number = stream.amount()
        named = target(stream)
        words = stream.lexemes[stream.at : stream.next_of(".", ";", *OPENERS, "=", "→", "dash")]
        said = _tells_waiting(words) and not any(item.kind in _WORKED for item in words)
        if named is None and number is not None or not said or any(item.lower.startswith("work") for item in words):
            stream.at = start
            return False
        stream.at += len(words)
        self._leave_rest(start, number, named or Target(TargetKind.ANY_STITCH))
        return True


def _worked_or_passed(stream: Stream) -> Work | None:
    """Takes the "and sc," behind what is skipped: that stitch may be passed over too, or worked in the next one."""
    ahead = 2 if stream.kind(1) == "the" else 1
    if stream.kind() != "and" or stream.kind(ahead) != "stitch" or stream.kind(ahead + 1) not in (*SIGNS, "end"):
        return None
    stream.at += ahead
    item = stream.take()
    return Work(item.span, item.value) if item.value != "sl st" else None


def _tells_waiting(words: list[Lexeme]) -> bool:
    """Whether words behind "the other sts" begin with what these are or do while they are not worked."""
    said = [item for item in words if item.lower not in ("now", "be")]
    if said and said[0].lower in _WAIT:
        return True
    behind = said[1] if len(said) > 1 and said[0].lower in _ARE else None
    return behind is not None and (behind.kind in ("the", "unused") or behind.lower in _WAITING)


def _runs_to_end(step: Step) -> bool:
    """Whether work goes to the row's end: "sc across", which what is left is taken from."""
    return isinstance(step, Work) and any(place.which is Which.EACH for place in step.places)


def _names_piece_side(stream: Stream) -> bool:
    """Whether "from the left side", "from right front" stands at the cursor: where what is skipped begins."""
    words = stream.lexemes[stream.at + 1 : stream.next_of(*SIGNS, "and", "for")]
    idle = ("the", "side", "first", "last", "edge")
    return (
        bool(words)
        and words[-1].kind != "middle"
        and not any(i.kind == "middle" for i in words[:2])
        and all(item.kind in idle or item.lower in PIECE_WORDS for item in words)
    )


def _on_the_way(place: Place) -> Place:
    """The place of a skip; stitches of a named piece are the next ones."""
    of_piece = place.which is Which.ELSEWHERE and place.targets[0].name == "piece"
    return replace(place, which=Which.NEXT, targets=(Target(TargetKind.ANY_STITCH),)) if of_piece else place
