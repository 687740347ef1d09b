"""Reads which gap is meant: "sp between next 2 groups", "sp before each V-st", "sp between this V-st and next"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import Place, Target, TargetKind, Which
from lint.reading.places.limits import limit
from lint.reading.places.targets import how_many, target
from lint.reading.words.piecewords import PIECE_WORDS
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream


def group_of_two(one: Target, other: Target | None, beside: str) -> tuple[Target | None, str]:
    """ "Sp between first dc and next V-st": the gap before that group, and not one between two; else the second of both."""
    if other is None or (one.kind is TargetKind.SPECIAL) is (other.kind is TargetKind.SPECIAL):
        return other, beside
    return (other, "before") if other.kind is TargetKind.SPECIAL else (one, "after")


def space_between(stream: Stream, place: Place, start: int) -> Place:
    """ "sp between next 2 groups", "each sp between sts", "sp between ch-3 and next dc": the gap, as often as the space."""
    before = stream.at
    if stream.kind() == "between" and stream.word(*PIECE_WORDS, ahead=2 if stream.kind(1) == "the" else 1):
        stream.pass_to(*SIGNS)  # "gap between thumb and hand"
        return replace(place, which=Which.ELSEWHERE, span=stream.span_from(start))
    between = stream.take().kind == "between"
    stream.take() if not between and stream.word("before", "after") else None
    beside = "" if between else stream.peek(-1).lower
    many = between and stream.kind() in ("any_stitch", "stitch")  # "sp between sts": the gap itself, however many
    anywhere = between and stream.kind() == "any"  # "in sp between any two dc", where a round may begin
    pair = between and stream.kind() in ("next", "any") and stream.kind(1) == "number" and stream.peek(1).number == 2
    beside = "between" if many else "between two" if pair else beside
    every = between and stream.kind() == "each"  # "in gap between each st across"
    ahead = _before_the_next(stream) if between else None
    if ahead is not None:
        span = stream.span_from(start)
        return replace(place, targets=(ahead,), between=True, span=span, bare=False, from_words="behind it")
    last = not between and beside == "after" and stream.kind() == "last"  # "in sp after last V-st"
    every = every or not between and stream.kind() == "each"  # "in sp before each V-st"
    stream.skip("the", "next", "first", "last", "each", "all", "any") if between else stream.skip(
        "the", "next", "first", *(("last",) if last else ()), *(("each",) if every else ())
    )
    how_many(stream)
    found = target(stream)
    if found is not None and stream.take_if("and"):
        stream.skip("the", "next", "first", "last")
        how_many(stream)
        one, found = found, target(stream)
        found, beside = group_of_two(one, found, beside)
    if found is None:
        stream.at = before
        return place
    whole, reach = stream.span_from(start), limit(stream)
    every = every or between and place.bare and reach is not None and place.number == ONE  # "in sp between sts across"
    which = Which.ANY if anywhere else Which.EACH if every else Which.LAST if last else place.which
    bare = place.bare and not any(item.kind == "next" for item in stream.lexemes[before : stream.at])
    place = replace(place, which=which, targets=(found,), between=True, limit=reach, span=whole, bare=bare)
    return replace(place, from_words=beside)


def between_groups(stream: Stream, place: Place, start: int) -> Place:
    """Takes the "between (the 2) shells" of "in next ch-2 sp between shells": a space that lies in none of them."""
    space, before = place.targets[0], stream.at
    if space.kind is not TargetKind.SPACE or space.length is None or len(place.targets) > 1 or place.of is not None:
        return place
    if not stream.take_if("between"):
        return place
    stream.skip("the", "next", "each")
    how_many(stream)
    beside = target(stream)
    grouped = beside is not None and beside.kind is TargetKind.SPECIAL
    if not grouped or stream.kind() not in (*SIGNS, "end", "number", *OPENERS, *CLOSERS, "and"):
        stream.at = before
        return place
    return replace(place, targets=(replace(space, apart=True),), span=stream.span_from(start))


def _before_the_next(stream: Stream) -> Target | None:
    """Takes "this V-st and next", "last and next V-st": the gap behind the group just worked into, which is that group."""
    start = stream.at
    stream.skip("the")
    worked = stream.word("this", "that") or stream.kind() == "last"
    stream.take()
    one = target(stream) if worked and stream.kind() != "and" else None
    following = worked and stream.take_if("and") is not None
    stream.skip("the")
    if following and (stream.take_if("next") or stream.word("following") and stream.take()):
        other = target(stream)
        if (one or other) is not None and other in (None, one or other):
            return one or other
    stream.at = start
    return None
