"""Reads what a row leaves: stitches left unworked, the rest left for later."""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.lexicon import Lexeme
from lint.place import LimitKind, Place, Target, TargetKind, Which
from lint.reading.clauses.base import STITCHY
from lint.reading.clauses.skip import SkipClauses
from lint.reading.counting.nocounts import count_behind_dash
from lint.reading.places.targets import target
from lint.reading.words.stream import OPENERS, SIGNS
from lint.tree import Group, Remark, Repeat, Skip, Step, Turn, Work

_OTHERS = ("other", "others", "rest")
_WAIT = ("form", "forms", "wait", "waits", "stay", "stays", "remain", "remains")
_ARE = ("are", "is", "will", "become", "becomes")
_WORKED = (*STITCHY, "make", "repeat", "skip", "row", "round", "ordinal", "each", "next", "increase", "decrease")
# what stitches are that wait: of those that "are doubled" or "will be increased" more is told than that
_WAITING = ("for", "on", "left", "held", "kept", "not", "waiting", "our", *_WAIT)


class LeaveClauses(SkipClauses):
    """ "leave last 4 sts unworked", "The other 14 sts wait."."""

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

    def left_unworked(self, start: int, close: int) -> bool:
        """ "…, turn (5 sc left unworked)": what a bracket says that the row leaves."""
        inner = self.stream.inside(start + 1, close)
        number = inner.amount()
        sort = target(inner) if number is not None else None
        while inner.word("left", "are", "is", "remain", "remains", "remaining", "will", "be"):
            inner.take()
        if sort is None or inner.take_if("unused") is None or not inner.done or not self.has_work():
            return False
        self.stream.at = close + 1
        span = self.stream.span_from(start)
        self.steps.append(Skip(span, (Place(span, Which.LAST, (sort,), number),), rest=True))
        return True

    def read_leave_last(self, start: int) -> bool:
        """ "leave last 4 sts unworked", "leaving the remaining 8 sc unworked for the instep"."""
        stream = self.stream
        if self.read_keeping_loops(start):
            return True
        stream.at = start
        stream.take()
        words, begun = stream.at, self.has_work()
        stream.skip("the")
        if stream.kind() == "yarn" and stream.word("attached", "hanging", "connected", ahead=1):
            stream.at += 2  # "Leave the yarn attached and rotate …"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.at = words
        phrase = stream.lexemes[words : stream.next_of(*SIGNS, "=", "→")]
        unworked = any(item.kind == "unused" or item.lower in ("unworked", "un-worked", "free") for item in phrase)
        length = any(  # "leaving 20 cm for sewing"
            one.kind == "number" and two.lower in ("cm", "mm", "inch", "inches")
            for one, two in zip(phrase, phrase[1:], strict=False)
        )
        length = length or [item.kind for item in phrase[-2:]] == ["number", "in"]  # "leaving 12 in. for sewing"
        counted = any(  # "leaving 6 sts at the end", "leave 2 at each end"
            one.kind == "number" and two.kind in ("any_stitch", "stitch", "at")
            for one, two in zip(phrase, phrase[1:], strict=False)
        )
        if (
            not unworked
            and not counted
            and (
                length
                or any(
                    item.lower in ("tail", "end", "ends", "length", "opening", "hole")
                    for item in stream.lexemes[words : words + 7]
                )
            )
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
        alone = stream.at == words
        number = stream.amount()
        named = target(stream)
        several = stream.peek(-1).lower.endswith("s") and stream.peek(-1).value != "sl st"
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
        bare = (
            alone and number is not None and stream.kind() in (*SIGNS, "=", "→", "dash", "end", "turn")
        )  # "leave 2 — 6"
        stream.pass_to(*SIGNS, "=", "→", *(("dash",) if bare else ()))  # "leaving the rest for the heel = 16 sc"
        told = named is not None or bare or bool(self.steps) and isinstance(self.steps[-1], Turn)
        negative = stream.peek(start - stream.at).lower.startswith("do not")
        if not (told and number is not None and begun) and not negative and not unworked:
            return False
        if any(item.kind == "each" or item.lower in ("both", "every", "either") for item in phrase):
            return False  # "leaving 3 sts unworked at each end"
        chain = named is not None and named.kind is TargetKind.TURNING_CHAIN
        if number is None and (last or (ahead is not None or chain) and named is not None):
            number = ONE if named is None or not several else None  # "leave the last (st) unworked", "leave last sts"
        span = stream.span_from(start)
        if number is None:
            self.steps.append(Skip(span, (), rest=True))
            return True
        turned = begun and isinstance(self.steps[-1], Turn) and self.steps[-1].turned
        behind = stream.lexemes[stream.at : stream.next_of("turn", start=stream.at)]  # a count may stand there, too
        follows = not turned and any(item.kind in STITCHY - {"number", "chain"} for item in behind)
        goes_on = follows and not last and not rest
        if ahead is not None and (begun if ahead.kind == "first" else not (goes_on or begun)):
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
