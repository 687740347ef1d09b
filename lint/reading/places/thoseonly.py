"""Reads "working over the first 6 sts only, ch 1, sc in each st across": the row's words are for these stitches alone."""

from __future__ import annotations

from dataclasses import replace

from lint.place import Which
from lint.reading.words.stream import SIGNS, Stream
from lint.tree import MAKES_STITCHES, Confined, Group, Repeat, Step, Turn, Unread, Work

_LEADS = ("in", "over", "across")  # "on" is one of the first
_VERBS = ("continue", "continuing", "cont")
_FEW = ("only", "just", "alone")
_WORKS = ("stitch", "special", "one_stitch", "group_word", "increase", "decrease", "chain", "skip")
_SETS_OUT = ("chain", "turn", "star", "(", "[")  # work that has its places behind it


def those_only(stream: Stream, steps: list[Step], start: int) -> bool:
    """Reads such a clause at the cursor; takes nothing where there is none, or where its stitches are a place to work into."""
    stream.at = start
    verb = stream.take_if("make") is not None or stream.word(*_VERBS) and stream.take() is not None
    few = _few(stream)
    if stream.take_if(*_LEADS) is None or any(isinstance(step, MAKES_STITCHES) for step in steps):
        stream.at = start
        return False
    few = _few(stream) or few
    stream.skip("the")
    these = stream.kind() == "same" and stream.word("these", "those") and stream.take() is not None
    first = stream.take_if("first", "next") is not None
    number = stream.amount() if first or these else None
    if number is None or stream.take_if("any_stitch") is None:
        stream.at = start
        return False
    few = _few(stream) or few
    alone = these or few and several_on_them(stream, stream.at)
    if stream.kind() not in (",", ":", ";", ".", "end") or not (alone or _work_of_its_own(stream, verb or few)):
        stream.at = start
        return False
    steps.append(Confined(stream.span_from(start), number, first, bool(few)))
    return True


def _few(stream: Stream) -> bool:
    return bool(stream.word(*_FEW)) and stream.take() is not None


def several_on_them(stream: Stream, at: int) -> bool:
    """Whether several clauses stand behind the place told first that ends at an index: "on first 6 sts, sc2tog, 2 sc, sc2tog".

    They are not each worked over all six.
    """
    before = stream.lexemes[max((i + 1 for i in range(at) if stream.lexemes[i].kind in SIGNS), default=0) : at]
    end = stream.next_of(".", start=at + 1)
    behind = [i for i in range(at + 2, end) if stream.lexemes[i - 1].kind in (",", ";")]
    told_first = not any(item.kind in _WORKS for item in before)
    return told_first and any(stream.lexemes[i].kind != "turn" for i in behind)


def _work_of_its_own(stream: Stream, told: bool) -> bool:
    """Whether the words behind say themselves where they go: "On next 3 sts, ch 1, sc in each"; a stitch alone goes here."""
    if stream.kind(1) in _SETS_OUT:
        return True
    clause = stream.lexemes[stream.at + 1 : stream.next_of(",", ";", ".", start=stream.at + 1)]
    kinds = {item.kind for item in clause}
    return bool(kinds & {"each", "across", "around"}) or told and "in" in kinds


def within_clause(steps: list[Step]) -> list[Step]:
    """The steps, where "On first 6 sts: 2 sc in each; sc in next 18 sts" is for its own clause: more follows than 6 sts hold."""
    at = next((at for at, step in enumerate(steps) if isinstance(step, Confined)), None)
    told = steps[at] if at is not None else None
    if not isinstance(told, Confined) or told.only or not told.first:
        return steps
    behind = steps[at + 1 :]
    wanted = [_wanted(step) for step in behind]
    few = told.number.lone
    runs = [place for step in behind if isinstance(step, Work) for place in step.places if place.which is Which.EACH]
    if few is None or sum(wanted) <= few and len(runs) < 2:
        return steps
    run = behind[0]
    each = run.places[0] if isinstance(run, Work) and len(run.places) == 1 else None
    if each is None or each.which is not Which.EACH or each.limit is not None or any(map(_runs_on, behind[1:])):
        why = "whether all that follows is for those stitches is not said"
        return [*steps[:at], Unread(told.span, f"first {few} sts", why), *behind]
    place = replace(each, which=Which.FIRST if not at else Which.NEXT, number=told.number, each_of=True)
    return [*steps[:at], replace(run, places=(place,)), *behind[1:]]


def _wanted(step: Step) -> int:
    """How many stitches of the row below a clause names by their number."""
    places = step.places if isinstance(step, (Work, Group)) else ()
    named = [place.number.lone or 0 for place in places if place.which is Which.NEXT]
    return sum(named) if places else (step.number.lone or 0) if isinstance(step, Work) else 0


def _runs_on(step: Step) -> bool:
    """Whether a clause may be for the same few stitches again, or turns back over them."""
    return isinstance(step, (Turn, Confined, Repeat))
