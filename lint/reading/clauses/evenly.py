"""Reads shaping that is spread evenly: "inc 6 sts evenly across", "sc2tog 6 times evenly around"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.growth import ShapedWhere
from lint.place import Limit, LimitKind, Place, TargetKind, Which
from lint.reading.clauses.base import is_run
from lint.reading.clauses.finish import FinishClauses
from lint.reading.places.places import places
from lint.reading.places.targets import ANY
from lint.reading.words.stream import Stream
from lint.tree import Evenly, Shaping, Step, Work


class EvenlyClauses(FinishClauses):
    """ "inc 6 sts evenly", "working 5 increases evenly spaced", "evenly distribute 88 dc"."""

    def run_shaped_evenly(self, start: int) -> bool:
        """ "sc across, working 5 increases evenly spaced", "with 6 evenly spaced decreases": over the run before."""
        stream = self.stream
        if not self.steps or not is_run(self.steps[-1]) or not stream.take_if("make", "with"):
            return False
        number = stream.amount()
        spread = bool(stream.take_if("evenly"))
        stream.take() if spread and stream.word("spaced") else None
        sort = stream.take_if("increase", "decrease") if number is not None else None
        spread = sort is not None and bool(stream.take_if("evenly")) or spread
        if sort is None or not spread:
            stream.at = start
            return False
        self.pass_row_words()
        where = ShapedWhere.EVENLY
        self.steps.append(Shaping(stream.span_from(start), number, sort.kind == "increase", where))
        return True

    def shaped_evenly(self, start: int, step: Work) -> bool:
        """ "sc2tog 6 times evenly around, sc in all other sts", "sc across, working 6 decreases evenly spaced"."""
        stream = self.stream
        if stream.kind(1) == "number" and not step.number_said:  # "sc2tog evenly 6 times"
            stream.take()
            step = replace(step, number=stream.amount() or ONE, number_said=True)
            stream.take_if("times")
        else:
            stream.take()
        runs = bool(self.steps) and is_run(self.steps[-1])
        if not step.number_said or step.special is not None or self.has_work() and not runs:
            return False
        self.pass_row_words()
        each = (step.together or 2) - 1
        number = Amount(tuple(None if one is None else one * each for one in step.number.values))
        shaping = Shaping(stream.span_from(start), number, step.stitch == "inc", ShapedWhere.EVENLY)
        if step.together is not None and not runs:
            place = Place(shaping.span, Which.EACH, (ANY,), limit=Limit(LimitKind.END))
            self.steps.append(Work(shaping.span, step.stitch, places=(place,)))
        self.steps.append(shaping)
        if step.together is not None:
            self.pass_all_others(step.stitch)
        return True

    def times_evenly(self, start: int) -> bool:
        """ "dc in each st across, 10 times evenly spaced across work dc2tog": over the run before."""
        stream = self.stream
        number, before = stream.amount(), len(self.steps)
        runs = bool(self.steps) and is_run(self.steps[-1])
        bare = not runs and not self.has_work()
        if number is not None and (runs or bare) and stream.take_if("times") and stream.take_if("evenly"):
            self.pass_row_words()
            stream.skip(",", ":", "make")
            step = self.steps.pop() if self.clause() and len(self.steps) == before + 1 else None
            gain, span, behind = _gained(step), stream.span_from(start), stream.at
            if bare and gain:  # "…, sc in all other sts"
                self.pass_all_others(step.stitch)
                gain = gain if stream.at > behind else 0
                place = Place(span, Which.EACH, (ANY,), limit=Limit(LimitKind.END))
                self.steps.append(Work(span, step.stitch, places=(place,)))
            if gain:
                several = Amount(tuple(None if one is None else one * abs(gain) for one in number.values))
                self.steps.append(Shaping(span, several, gain > 0, ShapedWhere.EVENLY))
                self.pass_row_words()
                return True
        del self.steps[before:]
        stream.at = start
        return False

    def pass_all_others(self, stitch: str) -> None:
        """Passes ", hdc in all other sts", which the run of a shaping spread evenly holds already."""
        stream = self.stream
        start = stream.at
        stream.skip(",", "and", "number")
        if stream.kind() == "stitch" and stream.take().value == stitch:
            said = stream.word("in all") and bool(stream.take()) or bool(stream.take_if("in"))
            each = not stream.word("every") and bool(stream.take_if("each")) or stream.kind(-1) == "total"
            stream.skip("the")
            other = each and stream.word("other", "others") or stream.kind() == "remaining"
            if said and other and stream.take() and stream.take_if("any_stitch", "stitch"):
                self.pass_row_words()
                return
        stream.at = start

    def pass_row_words(self) -> None:
        """Passes "across the row", "of this row", "spaced around"."""
        stream = self.stream
        while stream.kind() in ("across", "around", "over", "of", "the", "row", "round", "side") or stream.word(
            "this", "spaced", "row", "throughout"
        ):
            stream.take()

    def shaped_over(self, participle: bool) -> Place | None:
        """Takes "over next 20 sts", "across these sts", "to end" behind "dec 4 sts evenly": the stitches that are shaped.

        "Sc in next 20 sts, increasing 4 sts evenly" shapes these.  None: the whole run, or what is left of the row.
        """
        stream, start = self.stream, self.stream.at
        last = self.steps[-1] if self.steps else None
        before = (
            last.places[-1] if isinstance(last, Work) and len(last.places) == 1 and _each_of_several(last) else None
        )
        if stream.word("these", "those") and stream.kind(1) in ("any_stitch", "stitch") and before is not None:
            stream.at += 2
            return before
        if stream.kind() == "remaining" and stream.kind(1) in ("any_stitch", "stitch") or _to_end(stream):
            stream.at += 2
            return None
        if stream.kind() in ("in", "next", "first", "last"):
            found = places(stream)
            if len(found) == 1 and _several(found[0]) and not stream.word("times") and stream.kind() != "times":
                return found[0]
            stream.at = start
        return before if participle else None

    def read_evenly(self, start: int) -> bool:
        """ "Evenly distribute 88 dc along"."""
        stream = self.stream
        stream.take()
        if not (stream.word("distribute", "space", "spread") and stream.take() or stream.take_if("make")):
            return False
        number = stream.amount()
        if number is None or stream.kind() != "stitch":
            return False
        stitch = stream.take().value
        stream.pass_to()
        self.steps.append(Evenly(stream.span_from(start), stitch, number))
        return True


def _several(place: Place) -> bool:
    """Whether a place is so many stitches, one after the other: "next 20 sts"."""
    stitches = place.targets[0].kind in (TargetKind.ANY_STITCH, TargetKind.STITCH)
    alone = place.of is None and place.limit is None and not place.ordinals
    return stitches and alone and place.which in (Which.NEXT, Which.FIRST, Which.LAST) and place.number != ONE


def _each_of_several(step: Work) -> bool:
    plain = step.number == ONE and step.special is None and not step.together and step.stitch not in ("inc", "dec")
    return plain and _several(step.places[0])


def _to_end(stream: Stream) -> bool:
    return stream.kind() == "to" and stream.kind(1) in ("ending", "row_end")


def _gained(step: Step | None) -> int:
    """How many stitches a clause gains where it stands for one of a run: -1 for "dc2tog", 1 for "2 sc in next st"."""
    if not isinstance(step, Work) or step.special is not None:
        return 0
    if step.together is not None or step.stitch in ("inc", "dec"):
        alone = step.number == ONE and len(step.places) <= 1
        return (1 if step.stitch == "inc" else 1 - (step.together or 2)) if alone else 0
    one = len(step.places) == 1 and step.places[0].number == ONE and step.places[0].targets == (ANY,)
    one = one and step.places[0].which in (Which.NEXT, Which.SAME, Which.ANY) and step.number.lone is not None
    return (step.number.lone or 1) - 1 if one else 0
