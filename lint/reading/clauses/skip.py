"""Reads what is passed over: skips."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.reading.clauses.base import is_run
from lint.reading.clauses.remark import RemarkClauses
from lint.reading.clauses.skips import at_the_middle, skipped
from lint.reading.places import notes
from lint.reading.places.places import places
from lint.reading.places.targets import target
from lint.reading.words.piecewords import PIECE_WORDS, names_piece
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.runs import stops_before
from lint.tree import Chain, Either, Join, Remark, Repeat, Skip, Work

_STITCHES = (TargetKind.ANY_STITCH, TargetKind.STITCH)


class SkipClauses(RemarkClauses):
    """ "skip next 2 dc", "miss first 4 ch"."""

    def read_skip(self, start: int) -> bool:
        """ "skip next 2 dc", "sk 3", "miss first 4 ch (3 ch count as 1 tr)", "skip all remaining sts"."""
        stream = self.stream
        stream.take()
        stream.skip(",", "the", "over")
        if stream.take_if("section"):  # "skip all dc of first sleeve"
            span = stream.span_from(start)
            onward = Place(span, Which.NEXT, (Target(TargetKind.SPACE),), limit=Limit(LimitKind.SECTION))
            self.steps.append(Skip(span, (), to=onward))
            return True
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
        listed = stream.kind() == ","
        if (also := _worked_or_passed(stream, found)) is not None:
            self._either_way(start, found, also, listed)
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
        if stream.kind() == "between" and found[0].number == ONE and stream.peek(-1).lower.endswith("s"):
            return False  # "skip the sts between the markers": how many these are is not said
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

    def _either_way(self, start: int, found: tuple[Place, ...], also: Work, listed: bool) -> None:
        """ "sk next dc and hdc, …": both are passed over; of "sk 2 sts and hdc, …", "sk dc, hdc, …" the second is rather worked."""
        span = self.stream.span_from(start)
        passed = (Skip(span, (*found, Place(also.span, Which.NEXT, (Target(TargetKind.STITCH, also.stitch),)))),)
        worked = (Skip(found[0].span, found), also)
        rather = listed or found[-1].targets[0].kind is TargetKind.ANY_STITCH
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
        # "skip to next sp, dc in each dc to next sp": from that place on, or from one that the work stands before unsaid
        stands = next((one for one in reversed(self.steps) if not isinstance(one, (Chain, Remark))), None)
        if len(found) != 1 or run and not stops_before(stands, found[0].targets[0]):
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


def _worked_or_passed(stream: Stream, found: tuple[Place, ...]) -> Work | None:
    """Takes the "and sc," behind what is skipped: that stitch may be passed over too, or worked in the next one.

    So may the second of "sk dc, hdc, …", where both are named alike: by their names alone.
    """
    ahead = 2 if stream.kind(1) == "the" else 1
    alone = found[-1].targets[0].kind is TargetKind.STITCH and stream.kind(-2) == "skip"
    if stream.kind() != "and" and not (stream.kind() == "," and alone):
        return None
    if stream.kind(ahead) != "stitch" or stream.kind(ahead + 1) not in (*SIGNS, "end"):
        return None
    stream.at += ahead
    item = stream.take()
    return Work(item.span, item.value) if item.value != "sl st" else None


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
