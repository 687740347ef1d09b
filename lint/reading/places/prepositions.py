"""Reads the word before a place: "in", "over", "around", "for the next 4 sts", or none at all."""

from __future__ import annotations

from lint.reading.places.partof import leads_to
from lint.reading.places.targets import LOOPS
from lint.reading.words.piecewords import piece_ahead
from lint.reading.words.rowending import ends_work
from lint.reading.words.stream import SIGNS, Stream

_ALL_OF = ("remaining", "any_stitch", "stitch", "number", "space", "corner", "chain")  # what "in all" may speak of
_SHAPES = ("stitch", "increase", "decrease")


def begins_bare(stream: Stream) -> bool:
    """Whether a place without a word before it begins at the cursor: "sc next 5 sts", "sc the first 4 sts", "sc 2nd ch from hook"."""
    kind, behind = stream.kind(), stream.kind(1)
    if kind in ("next", "same", "each"):
        return True
    if kind == "ring":
        return stream.kind(-1) in _SHAPES and stream.kind(1) in (
            "end",
            ".",
            ",",
            ";",
            "(",
            "=",
            "dash",
        )  # "6 sc MR (6)"
    if kind == "the" and stream.kind(-1) in _SHAPES:
        named = behind in ("first", "last", "next") and stream.kind(2) == "number"
        return named and stream.kind(3) in ("any_stitch", "stitch")
    if kind in ("remaining", "last", "first"):
        return behind in ("number", "any_stitch", "stitch")
    if stream.word("1st"):
        return behind in ("any_stitch", "stitch")  # "sc 1st dc"
    return kind == "ordinal" and behind == "chain" and stream.kind(2) == "from"


def _an_edge(stream: Stream, ahead: int) -> bool:
    """Whether the "side" of "along the first side", "along the next short side" stands there."""
    ahead += stream.word("long", "short", "narrow", "outer", "upper", "lower", "left", "right", ahead=ahead)
    return stream.kind(ahead) in ("row", "side", "edge")


def _count_behind(stream: Stream) -> bool:
    """Whether the "6 sts" that ends the row is the count of a shaping all the way around, and no number of places to work over."""
    shaped = stream.kind(-1) in ("increase", "decrease", "together")
    figures = stream.kind(1) == "number" and stream.peek(2).lower in ("sts", "stitches")
    return shaped and figures and stream.kind(3) in (".", "end") and ends_work(stream, stream.at + 3)


def preposition(stream: Stream, allow_to: bool) -> bool | None:
    """Takes the preposition; tells whether several places share one stitch; None if there is none."""
    start = stream.at
    if stream.kind() == "around" and _count_behind(stream):
        return None  # "Dec around 6 sts.": all the way, and the count behind it
    if stream.word("in all") and stream.word("but", "except", ahead=1):
        stream.take()
        return False
    named = 2 if stream.kind(1) == "the" else 1
    others = stream.word("other", "further", ahead=named) and stream.kind(named + 1) in (
        "any_stitch",
        "stitch",
        "chain",
    )
    if stream.word("in all") and (others or stream.kind(1) in _ALL_OF):
        stream.take()
        return False  # "2 sc in all sts": not a total
    if stream.word("in all") and stream.word("of", ahead=1) and stream.kind(2) == "the" and stream.kind(3) in _ALL_OF:
        stream.at += 3
        return False  # "sc in all of the sts around"
    everything = stream.take_if("all", "together")
    if stream.word("using") and stream.kind(2 if stream.kind(1) == "the" else 1) == "next":
        stream.take()  # "dec using the next 2 sts"
        return True
    kind = stream.kind()
    if kind in LOOPS and stream.kind(1) == "of":
        return False  # "1 sc through back loop of each st": the loop is read with the place
    if kind in ("over", "across", "around") and stream.kind(1) == "to" and allow_to and leads_to(stream):
        stream.at += 2  # "sl st over to next ch", "sl st across to first corner sp"
        return False
    pointing = 2 if stream.kind(1) == "the" else 1  # "round the first tr of Rnd 1"
    pointed = stream.kind(pointing) in ("next", "each", "same", "first", "last", "any") or piece_ahead(stream)
    if stream.word("round") and kind == "round" and pointed:
        kind = "around"  # "FPdc round next dc", "1 dc round each of next 3 tr", "12 dc round the first leg"
    if (
        stream.word("round")
        and kind == "round"
        and stream.kind(1) == "stitch"
        and stream.peek(-1).value[:2] in ("FP", "BP")
    ):
        kind = "around"  # "FPdc round FPdc"
    which = 2 if stream.kind(1) == "the" else 1
    if (
        kind == "across"
        and not piece_ahead(stream)
        and stream.kind(which) in ("first", "next", "last", "number")
        and stream.kind(which + 1) != "round"
        and not _an_edge(stream, which + 1)
    ):
        stream.take()  # "sl st across first 6 sts"
        return False
    if kind == "across" and piece_ahead(stream):
        stream.take()  # "9 sc along the first leg"
        return False
    if kind in ("in", "around", "at") or (kind == "to" and allow_to):
        stream.take()
        if kind == "around" and stream.kind() in ("end", ",", ".", ";", ")", "]", "}"):
            stream.at = start
            return None
        stream.skip("in")
        if kind == "around" and stream.word("post", "posts") and stream.kind(1) == "at":
            stream.take()
        if kind == "around" and stream.kind() == "at" and stream.kind(1) == "row_end":
            stream.take()  # "around post at end of each row"
        return bool(everything)
    if kind == "over":
        stream.take()
        return True
    if kind == "for" and _for_stitches(stream):
        stream.take()  # "sc for the next 4 sts, hdc for the remaining 8"
        return False
    stream.at = start
    return None


def _for_stitches(stream: Stream) -> bool:
    """Whether "for" stands between a stitch and the stitches that it goes into, and not before a piece, a size or rows."""
    if stream.kind(-1) not in _SHAPES or stream.kind(-1) != "increase" and stream.kind(-2) == "number":
        return False  # "30 dc for 12 sts", "2 sc for the next 4 sts": in each, or in all of them?
    at = 2 if stream.kind(1) == "the" else 1
    if stream.kind(at) in ("next", "first", "last", "remaining"):
        at += 1
    elif stream.kind(at) != "number":
        return False
    lone = stream.kind(at - 1) == "remaining"
    if stream.kind(at) == "number":
        at += 1
        lone = True
    if stream.kind(at) in ("any_stitch", "stitch"):
        if stream.kind(-1) == "decrease":
            return False  # "dec for the next 4 sts": two over four, or four of them?
        return stream.kind(at + 1) not in ("row", "round", "in", "of", "stitch")
    return lone and stream.kind(at) in (*SIGNS, "end", "and", "join", "turn")
