"""Reads what a skip passes over: "next 2 dc", "centre 10 sts of Row 2", "ch-1 sp and next dc"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.place import Place, Target, TargetKind, Which
from lint.reading.clauses.base import is_run
from lint.reading.places.places import places
from lint.reading.places.pointed import piece_and_stitch
from lint.reading.places.targets import how_many, is_space_word, of_last_row, row_named, target
from lint.reading.words.piecewords import PIECE_WORDS
from lint.reading.words.stream import CLOSERS, SIGNS, Stream
from lint.tree import MAKES_STITCHES, NOT_UNDERSTOOD, JoinYarn, Skip, Step, Unread

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
        behind = stream.at
        elsewhere = of_another_row(stream) or any(place.below for place in named)
        number = row_named(stream, behind) if stream.at > behind else 0
        if elsewhere and stream.kind() == "of":
            stream.pass_to()
        if elsewhere:
            return tuple(replace(place, which=Which.ELSEWHERE, row=number or place.row) for place in named)
        return (*named, *_and_skipped(stream))
    stream.at = start
    which = {"first": Which.FIRST, "last": Which.LAST}.get(stream.kind(), Which.NEXT)
    bare = stream.kind() == "number"
    words = stream.at
    stream.skip("first", "next", "last", "the", "middle")
    middle = any(item.kind == "middle" for item in stream.lexemes[words : stream.at])
    both = stream.word("both") and stream.kind(1) in ("stitch", "any_stitch", "chain", "space") and stream.take()
    length = stream.kind(1) == "dash" or _of_one_space(stream)  # the 3 of "3-ch loop", "3ch-sp" is a length
    number = how_many(stream) if length else stream.amount()
    number = Amount.of(2) if both else number  # "skip both sl sts"
    if number is not None and stream.kind() == "middle" and stream.kind(1) in ("any_stitch", "stitch"):
        middle = stream.take() is not None  # "the 10 center sts"
    stream.take() if number is not None and piece_and_stitch(stream) else None  # "6 body sts"
    found = target(stream)
    lone = which is not Which.NEXT and stream.kind() in (*SIGNS, "end", "and", "turn", "join")  # "miss the first, …"
    if number is None and found is None and not lone:
        return ()
    behind, row = stream.at, 0
    if of_another_row(stream):
        which, row = Which.ELSEWHERE, row_named(stream, behind)
    place = Place(stream.span_from(start), which, (found or Target(TargetKind.ANY_STITCH),), number or Amount.of(1))
    place = replace(place, bare=bare, middle=middle, row=row)
    if stream.kind() == "of" and stream.kind(1) in ("chain", "foundation"):
        stream.at += 2  # "skip 2 sts of ch"
    if of_last_row(stream) and stream.kind() == "for":
        stream.pass_to()  # "on last row for instep"
    if stream.kind() == "at" and stream.kind(2 if stream.kind(1) == "the" else 1) == "base":
        stream.pass_to()  # "miss st at base of ch": the one that the chain stands on
        place = replace(place, which=Which.FIRST)
    return (place, *_and_skipped(stream))


def _of_one_space(stream: Stream) -> bool:
    """Whether "2ch-sp", "2 ch sp" stands at the cursor, which is one space, not "2 ch-sps"."""
    space = 3 if stream.kind(2) == "dash" else 2
    return stream.kind(1) == "chain" and is_space_word(stream, space) and not stream.peek(space).lower.endswith("s")


def at_the_middle(stream: Stream, place: Place) -> Place:
    """The place with the "at centre (front)", "at the centre of Row 2" behind it taken in."""
    start = stream.at
    stream.skip("at", "in", "the")
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
    more = _listed_to_a_space(stream)
    if more:
        return more
    if stream.kind() == "," and stream.kind(2 if stream.kind(1) == "the" else 1) in ("next", "number"):
        stream.take()  # "sk next ch-1 sp, next 30 dc and next ch-1 sp": a list that ends with "and"
        stream.skip("the")
        more = skipped(stream)
        if more and stream.kind() == "," and stream.kind(1) == "and":
            stream.take()
            more += _and_skipped(stream)
        owner = 2 if stream.kind(1) == "the" else 1  # "…, 23 dc and ch-1 space of the sleeve"
        owned = stream.kind() in ("of", "for") and stream.word(*PIECE_WORDS, ahead=owner)
        if len(more) > 1 and (stream.kind() in (",", ";", ".", "end") or owned):
            return more
        stream.at = mark
        return ()
    if stream.take_if("and"):
        stream.skip("the")
        if _stitch_passed(stream):
            item = stream.take()
            return (Place(item.span, Which.NEXT, (Target(TargetKind.STITCH, item.value),)),)
        if stream.kind() == "last" and stream.kind(1) in ("number", "any_stitch", "stitch"):
            return places(stream, bare=True)  # "skip the first 3 sts and the last 3 sts for the thumb"
        sorts = ("number", "next", "any_stitch", "chain", "turning_chain")
        if stream.kind() in sorts or is_space_word(stream):
            more = skipped(stream)
            if stream.kind() in ("in",):
                more = ()
            elif more and stream.word("after", "behind", "beyond") and stream.word("it", "them", "these", ahead=1):
                stream.at += 2
    if not more:
        stream.at = mark
    return more


def _listed_to_a_space(stream: Stream) -> tuple[Place, ...]:
    """The ", sc and ch-2 sp" of "sk next ch-2 sp, sc and ch-2 sp": no space is worked by its name alone, so all are passed over."""
    mark = stream.at
    found: list[Place] = []
    while stream.kind() in (",", "and"):
        stream.skip(",", "and", "the", "next")
        start = stream.at
        sort = (
            target(stream) if stream.kind() in ("stitch", "any_stitch", "chain", "number", "space", "corner") else None
        )
        if sort is None or sort.kind not in (TargetKind.SPACE, TargetKind.STITCH, TargetKind.ANY_STITCH):
            break
        found.append(Place(stream.span_from(start), Which.NEXT, (sort,)))
        if sort.kind is TargetKind.SPACE and stream.kind() in (",", ";", ".", "end", *CLOSERS):
            return tuple(found)
    stream.at = mark
    return ()


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


def at_both_ends(steps: list[Step], stream: Stream) -> list[Step]:
    """The steps with "skip the first 3 sts and the last 3 sts" cut in two: the last are passed over when the rest is worked.

    Where yarn is joined between, the row ends elsewhere, and the words are unread.
    """
    at = next((at for at, step in enumerate(steps) if isinstance(step, Skip) and _at_both_ends(step)), None)
    if at is None:
        return steps
    first, last = (replace(steps[at], places=(place,)) for place in steps[at].places)
    works = [i for i, step in enumerate(steps) if isinstance(step, MAKES_STITCHES)]
    if works and works[-1] < at:  # "sc in each st around, skipping the first st and the last st"
        run = works[-1]
        if len(works) == 1 and is_run(steps[run]):
            return [*steps[:run], first, *steps[run:at], last, *steps[at + 1 :]]
    elif works and works[0] > at and not any(isinstance(step, JoinYarn) for step in steps[at : works[-1]]):
        return [*steps[:at], first, *steps[at + 1 : works[-1] + 1], last, *steps[works[-1] + 1 :]]
    inside = [i for i, item in enumerate(stream.lexemes) if first.span.start <= item.start < first.span.end]
    unread = Unread(first.span, stream.words(inside[0], inside[-1] + 1), NOT_UNDERSTOOD)
    return [*steps[:at], unread, *steps[at + 1 :]]


def _at_both_ends(step: Skip) -> bool:
    return [place.which for place in step.places] == [Which.FIRST, Which.LAST]
