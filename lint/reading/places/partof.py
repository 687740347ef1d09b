"""Reads what a place is part of: "of next V-st", "of each shell", "of 3 at the tip"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.lexicon import Lexeme
from lint.place import Place, Target, TargetKind, Which
from lint.reading.places.targets import how_many, of_last_row, target
from lint.reading.words.piecewords import is_piece, names_piece, on_a_piece, tells_piece
from lint.reading.words.stream import CLOSERS, SIGNS, Stream

_ALTERS = ("increasing", "decreasing", "except", "excepting", "excluding", "once", "twice", "thrice", "minus", "plus")
_PARTS = (TargetKind.SPACE, TargetKind.STITCH, TargetKind.ANY_STITCH)
_POINTS = ("the", "same", "next", "last", "each", "first", "beginning", "any", "ordinal")


def part_of(stream: Stream) -> tuple[Target | None, str]:
    """ "of next V-st", "of each shell", "of block of Row 1": what the place is part of, and "each" where so said.

    "of the hem", "of one side" are places outside the row below: no target, and "elsewhere".
    """
    start = stream.at
    if of_last_row(stream) and not stream.word("working"):  # "each st of previous row": of the row below, as ever
        return None, ""
    stream.at = start
    start = stream.at = _at_side_of_piece(stream)
    if stream.word("on") and on_a_piece(stream):
        stream.pass_to()
        return None, "elsewhere"
    at_corner = stream.kind() == "at" and "corner" in (stream.kind(1), stream.kind(2))  # "center sc at each corner"
    if stream.take_if("of", *(("at",) if at_corner else ())) is None:
        return None, ""
    whole = 1 if stream.kind() in ("the", "same") else 0
    if stream.kind(whole) in ("row", "round") and stream.kind(whole + 1) == "number":
        stream.at = start  # "next st of Row 1" lies below
        return None, ""
    if stream.kind(whole) in ("row", "round") and stream.kind(whole + 1) != "below":
        stream.at += whole + 1  # "first st of the row"
        return None, ""
    each, any_ = False, False
    while stream.kind() in _POINTS or stream.word("previous", "prev", "preceding"):
        if stream.kind() == "ordinal" and not names_piece(stream):
            break
        word = stream.take().kind
        each, any_ = word == "each" or each, word == "any" or any_
    found = target(stream) or _of_so_many(stream)
    if found is None and stream.word("v", "vs", "vee", "vees"):
        stream.take()
        found = Target(TargetKind.SPECIAL, "group")  # "ch-2 sp of next V"
    if found is None:
        if stream.kind() in ("row", "round") and stream.kind(1) == "below":
            stream.at += 2
            return None, "elsewhere"
        numbered = stream.kind() == "number" and stream.kind(1) in ("word", "side", "edge", "row", "round", "unused")
        half = stream.kind() == "half" and stream.kind(1) in (*SIGNS, "end", *CLOSERS)  # "ch-4 sp of First Half"
        half = half or stream.kind() == "middle" and tells_piece(stream.peek(1).lower)  # "of the center flower"
        if numbered or half or stream.kind() in ("word", "side", "edge", "row", "round", "yarn"):
            begun = stream.at
            stream.pass_to()
            stream.at = _more_said(stream.lexemes, begun, stream.at)
            return None, "elsewhere"
        stream.at = start
        return None, ""
    return found, "each" if each else "any" if any_ else ""


def _at_side_of_piece(stream: Stream) -> int:
    """Behind the "on the inside" of "any st on the inside of first leg", where that stands: at which side, of all its stitches."""
    at = stream.at
    if stream.kind() not in ("in", "at"):
        return at
    the = 2 if stream.kind(1) == "the" else 1
    of = the + 1 if stream.word("inside", ahead=the) else the + 2  # "inner side", "inner thigh"
    if not stream.word("inside", "inner", ahead=the) or stream.kind(of) != "of":
        return at
    pointing = of + 1
    while stream.kind(pointing) in ("the", "first", "last", "ordinal") or stream.word("other", ahead=pointing):
        pointing += 1
    return at + of if is_piece(stream.peek(pointing).lower) else at


def which_owner(words: list[Lexeme]) -> str:
    """Which shell "of next shell", "of the same shell" tells of; "" for "of shell"."""
    return next((item.kind for item in words if item.kind in ("next", "same", "each", "any", "last", "first")), "")


def _more_said(lexemes: list[Lexeme], start: int, end: int) -> int:
    """Where words behind a place's name begin to say more of the work: "of body decreasing 4 evenly", "of back twice"."""
    for at in range(start + 1, end):
        more = lexemes[at].kind == "and" and at + 1 < end and lexemes[at + 1].kind in ("number", "each", "next")
        if more or lexemes[at].kind in ("increase", "decrease", "omit") or lexemes[at].lower in _ALTERS:
            return at
    return end


def _of_so_many(stream: Stream) -> Target | None:
    """Takes the "3 at the tip", "3 sc in corner" of "center sc of 3 at the tip": the group of so many that stands there."""
    start = stream.at
    number = stream.take_if("number")
    stream.take_if("stitch", "any_stitch", "group_word")
    while stream.word("group", "together") or stream.kind() in ("made", "increase"):
        stream.take()
    found = Target(TargetKind.SPECIAL, "group")
    if stream.take_if("at", "in"):
        while stream.kind() in ("the", "same", "next", "last", "each", "first", "beginning"):
            stream.take()
        found = target(stream) or found
    if (
        number is not None
        and found.kind in (TargetKind.SPECIAL, TargetKind.CORNER)
        and stream.kind() in (*SIGNS, "end", "for")
    ):
        return found
    stream.at = start
    return None


def in_so_many_groups(stream: Stream, place: Place) -> list[Place]:
    """The place, once for each of the groups of "(in ch-1 sp) of (each of) next 4 V-sts"; alone where no such words follow."""
    if stream.kind() != "of":
        return [place]
    start = stream.at
    part = place.of is None and place.number == ONE and place.limit is None and place.which in (Which.NEXT, Which.NTH)
    if part and place.targets[0].kind in _PARTS:
        stream.take()
        stream.skip("each", "of", "the")
        number = how_many(stream) if stream.take_if("next") else None
        owner = target(stream) if number is not None and number.lone else None
        if owner is not None and owner.kind is TargetKind.SPECIAL:
            one = replace(place, of=owner, of_which="next", bare=False, span=place.span.to(stream.span_from(start)))
            return [one] * number.lone
        stream.at = start
    return [place]


def middle_of_arch(place: Place | None) -> Place | None:
    """ "center ch of next ch-5": the arch itself, whichever of its chains."""
    if place is None or place.of is None or place.targets[0].kind is not TargetKind.CHAIN:
        return place
    if place.of.kind is TargetKind.SPACE or place.of.kind is TargetKind.CHAIN and place.of.length is not None:
        return replace(place, targets=(Target(TargetKind.SPACE, length=place.of.length),), of=None, middle=False)
    return place


def leads_to(stream: Stream) -> bool:
    """Whether "over to", "across to" names the place come to, and not how many are left or where the row ends."""
    if stream.kind() == "over":
        return True
    named = 3 if stream.kind(2) == "the" else 2
    return stream.kind(named) in ("first", "next", "corner") and stream.kind(named + 1) != "number"
