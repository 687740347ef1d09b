"""Reads which ends of the row a run leaves out: "sc in each st, missing the last", "… apart from the first and last 2 sts"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Skip, Step, Work

# common practice, no source; what stands in a place that is "excepted" may be something else, or nothing
_EXCEPTS = (
    ("except",), ("excepting",), ("excluding",), ("bar",), ("save",), ("minus",), ("but",), ("but", "not"), ("other", "than"),
    ("apart", "from"), ("aside", "from"), ("with", "the", "exception", "of"), ("except", "for"),
)  # fmt: skip
_LEAVES = (
    ("missing",), ("missing", "out"), ("miss", "out"), ("omitting",), ("omit",), ("leaving", "out"), ("leave", "out"), ("ignoring",),
    ("ignore",), ("skipping",), ("not", "working"), ("without", "working"), ("but", "leave"), ("but", "skip"), ("but", "miss"),
    ("but", "omit"), ("but", "not", "working"), ("but", "do", "not", "work"),
)  # fmt: skip
_STOPS = (("stopping",), ("stop",), ("but", "stop"), ("but", "stopping"), ("stopping", "short"), ("finishing",))
_LONGEST_FIRST = sorted((*_EXCEPTS, *_LEAVES, *_STOPS), key=len, reverse=True)
_BEGIN = {phrase[0] for phrase in _LONGEST_FIRST}
_STITCHES = (TargetKind.ANY_STITCH, TargetKind.STITCH)
_POINTS_BACK = ("those", "these", "them", "it", "that")
_GOES_ON = ("number", "stitch", "increase", "decrease", "special", *OPENERS)


def all_but_ends(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes what a run to the end of the row, the last of the steps, leaves out at its ends; nothing where that is not sure."""
    step = steps[-1] if steps else None
    if step is None or stream.peek().lower.split()[:1] == [] or stream.peek().lower.split()[0] not in _BEGIN:
        return False
    run = step.places[-1] if isinstance(step, Work) and len(step.places) == 1 else None
    whole = run is not None and run.which is Which.EACH and (run.limit is None or run.limit.kind is LimitKind.END)
    if not whole or run.targets[0].kind not in _STITCHES or run.every != 1:
        return False
    phrase = _phrase(stream)
    ends = (_left(stream) if phrase in _STOPS else _ends(stream)) if phrase is not None else {}
    ahead = 1 if stream.kind() in (",", ";", "and") else 0
    goes_on = ahead and stream.kind(ahead) in _GOES_ON
    one = step.number == ONE and step.stitch not in ("inc", "dec")  # else an end may have one of its own, or none
    sure = phrase in (*_LEAVES, *_STOPS) or one or goes_on and "first" not in ends
    if ahead and any(item.lower in _POINTS_BACK for item in stream.lexemes[stream.at : stream.next_of(".", ";")]):
        sure = False  # "except first st and last st, 2 sc in those"
    if not ends or not sure or stream.kind() not in (*SIGNS, "end", "turn", "join", "and"):
        stream.at = start
        return False
    span = stream.span_from(start)
    if "last" in ends:
        reach = Limit(LimitKind.LAST, ends["last"], run.targets[0])
        steps[-1] = replace(step, places=(replace(run, limit=reach),), span=step.span.to(span))
    if "first" in ends:
        place = Place(span, Which.FIRST, (Target(TargetKind.ANY_STITCH),), ends["first"])
        steps.insert(-1, Skip(span, (place,)))
    return True


def _phrase(stream: Stream) -> tuple[str, ...] | None:
    """Takes the words that open an exception."""
    ahead = [word for item in stream.lexemes[stream.at : stream.at + 4] for word in item.lower.split()]
    for phrase in _LONGEST_FIRST:
        if tuple(ahead[: len(phrase)]) == phrase:
            words = 0
            while words < len(phrase):
                words += len(stream.take().lower.split())
            if words > len(phrase):
                return None
            while stream.kind() in ("in", "the", "for") or stream.word("for"):
                stream.take()
            return phrase
    return None


def _left(stream: Stream) -> dict[str, Amount]:
    """Takes "3 sts before the end", "when 3 sts remain", "with 3 sts left": how many the run stops short of."""
    when = stream.take() if stream.word("when", "with", "once") or stream.kind() == "with" else None
    number = stream.amount()
    if number is None or stream.take_if("any_stitch", "stitch") is None:
        return {}
    if stream.kind() == "remaining" or stream.word("remain", "left", "remaining"):
        stream.take()
        return {"last": number}
    short = stream.word("before", "from", "short", "of")
    while stream.word("before", "from", "short", "of") or stream.kind() in ("of", "from", "the"):
        stream.take()
    return {"last": number} if short and when is None and stream.take_if("ending", "row_end") else {}


def _ends(stream: Stream) -> dict[str, Amount]:
    """Takes "(the) last 2 sts", "first and last st": how many at each of the ends that are named."""
    ends: dict[str, Amount] = {}
    while stream.kind() in ("first", "last") and stream.kind() not in ends:
        end = stream.take().kind
        ends[end] = stream.amount() or ONE
        stream.take_if("any_stitch", "stitch")
        stream.take() if stream.word("one", "ones") else None
        ahead = 2 if stream.kind(1) == "the" else 1
        if stream.kind() in ("and", "&") and stream.kind(ahead) in ("first", "last"):
            stream.at += ahead
    if len(ends) == 2 and ends["first"] == ONE != ends["last"]:  # "first and last 2 sts": at each of them
        ends["first"] = ends["last"]
    return ends
