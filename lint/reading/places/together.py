"""Reads stitches worked together in words: "work off 2 sc as 1 sc", "take 2 sts tog", "sc together every 3rd and 4th st".

Old leaflets and translated toys say so (common practice, no source). Every: over and over to the round's end.
"""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.places.targets import ANY
from lint.reading.words.stream import Stream
from lint.source import Span
from lint.tree import PLAIN, Repeat, Step, Times, TimesKind, Work

_TAKES = ("take", "taking", "join", "draw", "knit", "close", "crochet")
_EVERY = ("every", "each", "always")
_STS = ("any_stitch", "stitch")


def told_together(stream: Stream, steps: list[Step], start: int) -> bool:
    """Reads a clause of stitches worked together at the cursor; takes nothing where there is none."""
    found = _as_one(stream, start) or _every_two_places(stream, start) or _all_along(stream, start)
    if found is None:
        stream.at = start
        return False
    steps.append(found)
    return True


def _as_one(stream: Stream, start: int) -> Work | None:
    """ "work off 2 sc as 1 sc", "work 2 sts as 1", "take 2 sts tog", "working last 2 sts tog", "2 sts tog"."""
    stream.at = start
    taking = stream.word(*_TAKES)
    last = stream.kind(2 if stream.kind(1) == "the" else 1) == "last"
    if last and (taking or stream.kind() == "make" or stream.word("working")):
        return _last_as_one(stream, start)
    if not (taking or stream.kind() in ("make", "next", "number")):
        return None
    stream.take() if stream.kind() not in ("next", "number") else None
    taking = stream.word("off") and bool(stream.take()) or taking
    taking = stream.take_if("next") is not None or stream.kind(1) in ("any_stitch", "together") or taking
    number = stream.take_if("number")
    if number is None or number.number < 2 or stream.kind() not in (*_STS, "together"):
        return None
    stitch = _stitch(stream) if stream.kind() in _STS else PLAIN
    if taking and stream.take_if("together"):
        if stream.kind() in ("across", "around"):
            stream.take()
            return _to_the_end(stream.span_from(start), stitch, number.number)
        often = _how_often(stream)
        return Work(stream.span_from(start), stitch, often, together=number.number, number_said=often != ONE)
    if stream.take_if("as") is None or not (stream.kind() == "number" and stream.take().number == 1):
        return None
    if stream.kind() in _STS:
        stitch = _stitch(stream)
    return Work(stream.span_from(start), stitch, ONE, together=number.number)


def _last_as_one(stream: Stream, start: int) -> Work | None:
    """The "last 2 sts tog" behind "working", "work", "taking"."""
    stream.take()
    stream.skip("the", "last")
    number = stream.take_if("number")
    if number is None or number.number < 2 or stream.kind() not in _STS:
        return None
    stitch = _stitch(stream)
    if stream.take_if("together") is None:
        return None
    place = Place(stream.span_from(start), Which.LAST, (ANY,), Amount.of(number.number), shared=True)
    return Work(place.span, stitch, ONE, (place,), number.number)


def _how_often(stream: Stream) -> Amount:
    """Takes the "twice", "6 times", "x 6" behind a decrease."""
    if stream.word("twice", "thrice"):
        return stream.take().quantity
    if stream.kind() == "number" and stream.kind(1) == "times":
        number = stream.take().quantity
        stream.take()
        return number
    if stream.word("x", "×") and stream.kind(1) == "number":
        stream.take()
        return stream.take().quantity
    return ONE


def _every_two_places(stream: Stream, start: int) -> Step | None:
    """ "sc together every 3rd and 4th st", "decrease every 2nd and 3rd st": a decrease over these, the rest plain."""
    stream.at = start
    stitch = _opening(stream)
    if stitch is None:
        return None
    told = bool(stream.take_if("together", "decrease")) or stream.kind(-1) == "decrease"
    stream.take_if("in")
    opens = not start and stream.take_if("the")
    if not opens and not _every(stream):
        return None
    one, joint, two = stream.take(), stream.take(), stream.take()
    if (one.kind, joint.kind, two.kind) != ("ordinal", "and", "ordinal") or two.number != one.number + 1:
        return None
    stream.take_if(*_STS)
    told = bool(stream.take_if("together")) or told
    if not told:
        return None
    stream.take_if("around", "across")
    span = stream.span_from(start)
    if opens:  # "crochet the 1st and 2nd st tog, sc in the rest": at the row's beginning
        return Work(span, stitch, ONE, together=2) if one.number == 1 and stream.kind() in (",", ";", ".") else None
    if one.number == 1:
        return _to_the_end(span, stitch, 2)
    plain = Work(span, stitch, Amount.of(one.number - 1), number_said=True)
    items = (plain, Work(span, stitch, ONE, together=2))
    return Repeat(span, items, Times(span, TimesKind.FILL, None, Limit(LimitKind.END)))


def _all_along(stream: Stream, start: int) -> Work | None:
    """ "sc together always 2 sts", "always crochet 2 sts together", "sc every 2 sts together": to the round's end."""
    stream.at = start
    always = stream.word("always") and bool(stream.take())
    stitch = _opening(stream)
    if stitch is None:
        return None
    told = bool(stream.take_if("together"))
    always = _every(stream) or always
    number = stream.take_if("number")
    if not always or number is None or number.number < 2 or stream.kind() not in _STS:
        return None
    stream.take()
    if not (stream.take_if("together") or told):
        return None
    stream.take_if("around", "across")
    return _to_the_end(stream.span_from(start), stitch, number.number)


def _opening(stream: Stream) -> str | None:
    """The stitch that the clause opens with; that of the row for "crochet", "work" or "decrease"."""
    if stream.kind() in ("make", "decrease"):
        stream.take()
        return PLAIN
    return stream.take().value if stream.kind() == "stitch" else None


def _every(stream: Stream) -> bool:
    return stream.word(*_EVERY) and bool(stream.take())


def _stitch(stream: Stream) -> str:
    one = stream.take()
    return one.value if one.kind == "stitch" else PLAIN


def _to_the_end(span: Span, stitch: str, together: int) -> Work:
    run = Place(span, Which.EACH, (ANY,), limit=Limit(LimitKind.END))
    return Work(span, stitch, ONE, (run,), together)
