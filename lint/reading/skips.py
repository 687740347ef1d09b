"""Reads what a skip passes over: "next 2 dc", "centre 10 sts of Row 2", "ch-1 sp and next dc"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.place import Place, Target, TargetKind, Which
from lint.reading.piecewords import PIECE_WORDS
from lint.reading.places import places
from lint.reading.stream import Stream
from lint.reading.targets import is_space_word, of_last_row, target

_FULL = ("full", "complete", "long", "whole", "worked")  # "the last full row": the one that was divided


def skipped(stream: Stream) -> tuple[Place, ...]:
    """What a "skip" passes over: places named with or without "next"."""
    start = stream.at
    if stream.kind() == "ordinal" and stream.peek().number == 1 and stream.kind(1) in ("any_stitch", "stitch"):
        stream.take()  # "miss 1st st"
        found = target(stream)
        return (Place(stream.span_from(start), Which.FIRST, (found,)),)
    named = places(stream)
    if named:
        elsewhere = of_another_row(stream) or any(place.below for place in named)
        if elsewhere and stream.kind() == "of":
            stream.pass_to()
        if elsewhere:
            return tuple(replace(place, which=Which.ELSEWHERE) for place in named)
        return (*named, *_and_skipped(stream))
    stream.at = start
    which = {"first": Which.FIRST, "last": Which.LAST}.get(stream.kind(), Which.NEXT)
    bare = stream.kind() == "number"
    words = stream.at
    stream.skip("first", "next", "last", "the", "middle")
    middle = any(item.kind == "middle" for item in stream.lexemes[words : stream.at])
    number = stream.amount()
    found = target(stream)
    if number is None and found is None:
        return ()
    if of_another_row(stream):
        which = Which.ELSEWHERE
    place = Place(stream.span_from(start), which, (found or Target(TargetKind.ANY_STITCH),), number or Amount.of(1))
    place = replace(place, bare=bare, middle=middle)
    if stream.kind() == "of" and stream.kind(1) in ("chain", "foundation"):
        stream.at += 2  # "skip 2 sts of ch"
    if of_last_row(stream) and stream.kind() == "for":
        stream.pass_to()  # "on last row for instep"
    if stream.kind() == "at" and stream.kind(2 if stream.kind(1) == "the" else 1) == "base":
        stream.pass_to()  # "miss st at base of ch": the one that the chain stands on
        place = replace(place, which=Which.FIRST)
    return (place, *_and_skipped(stream))


def at_the_middle(stream: Stream, place: Place) -> Place:
    """The place with the "at centre (front)", "at the centre of Row 2" behind it taken in."""
    start = stream.at
    stream.skip("at", "the")
    if stream.take_if("middle") is None:
        stream.at = start
        return place
    while stream.word(*PIECE_WORDS):
        stream.take()
    which = Which.ELSEWHERE if of_another_row(stream) else place.which
    return replace(place, which=which, middle=True)


def _and_skipped(stream: Stream) -> tuple[Place, ...]:
    """The "and ch-1 sp" of "skip next dc and ch-1 sp"; () and nothing taken where no more is passed over."""
    mark = stream.at
    more: tuple[Place, ...] = ()
    if stream.kind() == "," and stream.kind(1) in ("next", "number"):
        stream.take()  # "sk next ch-1 sp, next 30 dc and next ch-1 sp": a list that ends with "and"
        more = skipped(stream)
        if len(more) > 1 and stream.kind() in (",", ";", ".", "end"):
            return more
        stream.at = mark
        return ()
    if stream.take_if("and"):
        stream.skip("the")
        if _stitch_passed(stream):
            item = stream.take()
            return (Place(item.span, Which.NEXT, (Target(TargetKind.STITCH, item.value),)),)
        sorts = ("number", "next", "any_stitch", "chain", "turning_chain")
        if stream.kind() in sorts or is_space_word(stream):
            more = skipped(stream)
            if stream.kind() in ("in",):
                more = ()
    if not more:
        stream.at = mark
    return more


def _stitch_passed(stream: Stream) -> bool:
    """Whether the "sc" of "sk ch-3 sp and sc, sc in next sc" is passed over: the next clause is the first to work one."""
    said_again = stream.kind(2) == "stitch" and stream.peek(2).value == stream.peek().value and stream.kind(3) == "in"
    return stream.kind() == "stitch" and stream.kind(1) in (",", ";") and said_again


def of_another_row(stream: Stream) -> bool:
    """Takes "of the 32nd row of Front" after a place: that row is not the one below."""
    ahead = 2 if stream.kind(1) == "the" else 1
    full = stream.kind(ahead) == "last" and stream.word(*_FULL, ahead=ahead + 1)
    if stream.kind() == "of" and (stream.kind(ahead) in ("row", "round", "ordinal") or full):
        stream.pass_to()
        return True
    return False
