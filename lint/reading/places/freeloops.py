"""Loops of an earlier round that the next one has left free: "in any leftover front loop of Rnd 8 of the body"."""

from __future__ import annotations

from dataclasses import dataclass

from lint.amount import ONE, Amount
from lint.place import Place, Target, TargetKind, Which
from lint.reading.places.targets import FREE, LOOPS
from lint.reading.words.piecewords import tells_piece
from lint.reading.words.stream import SIGNS, Stream

_POINTING = ("any", "the", "first", "of", "each", "next", "all")
_LEFT = ("left", "over", "unworked", "unused", "remaining")  # "the front loops left over from Rnd 8"
_WHERE = ("back", "front", "side", "centre", "center", "middle", "bottom", "top")  # "at centre back"
_LOOP_WORDS = ("loop", "loops", "lp", "lps")


@dataclass(frozen=True)
class FreeLoops:
    """Loops of a round: its number, the loop if one is named, and the piece if one is."""

    row: int
    loop: str | None
    piece: str = ""
    every: bool = False  # all of them, or the number said
    number: Amount | None = None


NOT_NUMBERED = FreeLoops(0, None)  # of a round that the words do not name


def free_loops(stream: Stream, free: bool = False) -> FreeLoops | None:
    """Takes the loops that stand at the cursor, up to the clause's end; `free`: only if they are said to be so."""
    start = stream.at
    if (found := _loops(stream, free)) is not None and stream.kind() in (*SIGNS, ":", "end", "dash", "and"):
        return found
    stream.at = start
    return None


def _loops(stream: Stream, free: bool) -> FreeLoops | None:
    if stream.kind() not in ("in", "to", "across", "on"):
        return None
    stream.take()
    loop, said, named, every, number = None, False, False, False, None
    while stream.kind() in (*_POINTING, "unused", "remaining", *LOOPS) or stream.word("a", "one", *FREE, *_LOOP_WORDS):
        item = stream.take()
        every = every or item.kind in ("each", "all") or item.lower.endswith(("loops", "lps"))
        if number is None and stream.kind() == "number" and not named:
            number = stream.amount()  # "each of the 8 front loops"
        said = said or item.kind in ("unused", "remaining") or item.lower in FREE
        named = named or item.kind in LOOPS or item.lower in _LOOP_WORDS or item.lower.endswith((" loop", " loops"))
        loop = item.kind.split("_")[0] if item.kind in LOOPS else loop
        if item.kind == "of" and named:
            stream.at -= 1  # "… of Rnd 8"
            break
    while stream.word(*_LEFT) or stream.peek().lower in ("that", "were", "are"):
        stream.take()
        said = True
    row = _round_number(stream) if stream.kind() in ("of", "in") or stream.word("from", "on") else None
    if row is None or not named or free and not said or loop in ("both", "third") or not said and loop is None:
        return None
    piece = _piece(stream)
    stream.skip("around", "across")
    if stream.kind() == "at":
        stream.take()
        stream.skip("the")
        while stream.word(*_WHERE) or stream.kind() in ("side", "middle"):
            stream.take()
    return FreeLoops(row, loop, piece, every, number)


def _round_number(stream: Stream) -> int | None:
    """Takes "of Rnd 8", "from the 8th round", "of R8"."""
    stream.take()
    stream.skip("the")
    if stream.kind() == "ordinal" and stream.kind(1) in ("row", "round"):
        stream.at += 2
        return stream.peek(-2).number
    lettered = stream.word("r", "rd") and stream.peek(1).glued
    if not (stream.kind() in ("row", "round") or lettered) or stream.kind(1) != "number":
        return None
    stream.at += 2
    return stream.peek(-1).number


def _piece(stream: Stream) -> str:
    """Takes "of the body", "on Body"; the word for the piece."""
    start = stream.at
    if stream.kind() == "of" or stream.word("on"):
        stream.take()
        stream.skip("the")
        if stream.kind() == "word" or tells_piece(stream.peek().lower):  # whether there is such a piece, is seen later
            return stream.take().lower
    stream.at = start
    return ""


def in_all_of_them(stream: Stream, start: int) -> Place | None:
    """Takes "the free front loops of Rnd 3", "each of the 8 unused loops of rnd 3 (around)" behind an "in"."""
    if stream.kind(-1) != "in" or stream.kind(-2) not in ("stitch", "special", "increase", "number", "any_stitch"):
        return None  # "(sc, inc) 8 times in the leftover loops of Rnd 3": all of that goes there
    stream.at -= 1
    found = free_loops(stream)
    pointed = any(item.kind in ("next", "first") for item in stream.lexemes[start : stream.at])
    if found is None or not found.every or pointed:
        stream.at = start
        return None
    span, number = stream.span_from(start), found.number
    which = Which.EACH if number is None else Which.NEXT
    return Place(
        span,
        which,
        (Target(TargetKind.ANY_STITCH),),
        number or ONE,
        each_of=number is not None,
        below=True,
        from_words=found.piece or "loops",
        row=found.row,
    )


def free_part(stream: Stream) -> int:
    """How many lexemes at the cursor are the "free loop of", "unused side of" what is named next; 0: none."""
    if stream.kind() == "unused" and stream.kind(1) == "of":
        return 2
    free = stream.kind() in ("unused", "remaining") or stream.word(*FREE)
    part = stream.word(*_LOOP_WORDS, ahead=1) or stream.kind(1) == "side"
    return 3 if free and part and stream.kind(2) == "of" else 0


def loops_of_all(stream: Stream, place: Place) -> bool:
    """Whether "the back loops of the sts" is all that is said: "15 sc" there may be one in each, or fifteen."""
    if place.which is not Which.EACH:
        return False
    words = [item for item in stream.lexemes if place.span.start <= item.start < place.span.end]
    return any(item.kind in LOOPS for item in words) and not any(item.kind in ("each", "all") for item in words)


__all__ = ["NOT_NUMBERED", "FreeLoops", "free_loops", "loops_of_all"]
