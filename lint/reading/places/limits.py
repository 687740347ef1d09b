"""Reads how far a run or a repeat goes: "across", "to last 2 sts", "to center sc of next corner"."""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.place import Limit, LimitKind, Target, TargetKind
from lint.reading.places.ordinals import chain_top, ordinal
from lint.reading.places.partof import part_of
from lint.reading.places.targets import ANY, how_many, is_space_word, target
from lint.reading.words.piecewords import PIECE_WORDS, last_piece_told, names_piece, piece_alone
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream

_LENGTH = ("number", "decimal", ",", "dash", "/", ":", ";", "'", '"', "½", "¼", "¾", ".")
_FIGURES = ("number", "decimal", "½", "¼", "¾")
_UNITS = ("cm", "mm", "in", "ins", "inch", "inches")
_AFTER_ROUND = (",", ";", ".", "end", ":", "turn", "join", *OPENERS, *CLOSERS, "dash", "working", "make")
_SPACE_TOLD = 8  # words behind a run within which the space of the chain that it ends before is named


def past_lengths(stream: Stream, *stops: str) -> None:
    """Passes to the sentence's end, over brackets that only hold lengths: "until piece measures 14 (15, 16) in"."""
    while True:
        stream.at = stream.sentence_end(stream.at, ".", ";", *stops, *OPENERS)
        if stream.kind() in (",", ";") and stream.kind(-1) in _FIGURES and stream.kind(1) in _FIGURES:
            stream.take()  # "until piece measures 14, 15, 16 cm"
            continue
        if stream.kind() == "." and stream.kind(1) in OPENERS and stream.lexemes[stream.at - 1].lower in _UNITS:
            stream.take()  # "16 in. (40.5 cm) from beginning"
        close = stream.matching(stream.at) if stream.kind() in OPENERS else None
        inner = stream.lexemes[stream.at + 1 : close] if close is not None else []
        if not inner or any(item.kind not in _LENGTH and item.lower not in _UNITS for item in inner):
            return
        stream.at = close + 1


def _back_to(stream: Stream) -> int:
    """How many lexemes "back (down) to the rim" takes behind "in each ch": a run of chains ends where it was begun."""
    at = 0
    while stream.word("back", "down", ahead=at):
        at += 1
    at += 2 if stream.kind(at + 1) == "the" else 1
    led = stream.kind(at - 1) == "the" and stream.kind(at - 2) == "to" or stream.kind(at - 1) == "to"
    return at + 1 if led and stream.kind(at) == "word" and stream.kind(at + 1) in _AFTER_ROUND else 0


def limit(stream: Stream) -> Limit | None:
    """How far a run goes; None and nothing taken if it is not said."""
    start = stream.at
    if _halfway(stream):
        return Limit(LimitKind.HALF)
    if stream.take_if("section"):
        return Limit(LimitKind.SECTION)
    gone = int(stream.kind() in ("across", "around"))
    behind = gone + (2 if stream.kind(gone + 1) == "the" else 1)
    if stream.word("but", "except", "excluding", ahead=gone) and stream.kind(behind) == "last":
        stream.at += gone + 1
        stream.skip("the", "last")  # "in each st but the last (2)", "in each st around except the last"
        number = stream.amount() or ONE
        return Limit(LimitKind.LAST, number, target(stream), but=True)  # of the run's own sort, where none is named
    if stream.kind() == "around" and any(word in stream.peek().lower for word in ("post", "stem")):
        return None  # a place
    if stream.kind() == "around" and (edge := _round_the_edge(stream)) is not None:
        return edge
    if (stream.kind() == "across" or stream.word("along")) and (edge := _named_edge(stream)) is not None:
        return edge
    if stream.word("even", "all", "right") and stream.kind(1) in ("across", "around"):
        stream.take()
    edge = 2 if stream.kind(1) in ("the", "each", "all") else 1
    edge += edge == 2 and stream.kind(2) == "number" and stream.kind(3) == "side"  # "across all 4 sides"
    aside = stream.kind(edge) in ("side", "edge", "other_side", "row_end") or stream.word(
        "bottom", "top", "foundation", "long", "short", "narrow", ahead=edge
    )
    aside = (
        aside
        or (
            stream.word("one", "other", "opposite", ahead=edge)
            or stream.kind(edge) in ("first", "next", "last", "ordinal")
        )
        and (stream.kind(edge + 1) in ("side", "edge") or stream.word("short", "long", ahead=edge + 1))
    )
    aside = (
        aside
        or stream.kind(edge) in ("chain", "foundation")
        and {stream.kind(-1), stream.kind(-2)} == {"stitch", "number"}
    )
    of_number = {stream.kind(-1), stream.kind(-2)} == {"stitch", "number"}
    aside = aside or of_number and stream.kind(edge) == "last" and stream.kind(edge + 1) == "row"
    aside = aside or of_number and bool(worded_edge(stream, edge))
    aside = aside or stream.word(*PIECE_WORDS, ahead=edge)  # "across back neck"
    each = "each" in (stream.kind(-2), stream.kind(-3))
    each_chain = stream.kind(-1) == "chain" and each
    if stream.kind() in ("across", "around") and (names_piece(stream, edge) or piece_alone(stream, 1)):
        if stream.kind(-1) != "stitch" or not each or not last_piece_told(stream, edge):
            return None  # "9 sc along the first leg"
        stream.at += edge + 1  # "dc in each ch to body, dc in each dc across body": all that are there
        return Limit(LimitKind.END)
    if stream.kind() == "around" and stream.word(*PIECE_WORDS, ahead=edge) and each_chain:
        stream.at += edge  # "in each ch around the neck": the chain, all round
        while stream.word(*PIECE_WORDS, "opening", "edge"):
            stream.take()
        return Limit(LimitKind.END)
    if stream.kind() == "across" and aside or stream.kind() == "around" and stream.word(*PIECE_WORDS, ahead=edge):
        return None  # along an edge, not along the row
    if (
        stream.word("all")
        and stream.kind(1) in (*_AFTER_ROUND, "=", "→")
        and stream.kind(-1) in ("stitch", "increase", "decrease")
    ):
        stream.take()  # "ch 1, turn, sc all"
        return Limit(LimitKind.END)
    gone = bool(stream.take_if("across", "around"))
    closes = stream.kind(1) == "and" and stream.kind(2) in ("join", "turn")  # "repeat * to * round and join"
    if not gone and stream.kind() == "round" and stream.word("round") and (stream.kind(1) in _AFTER_ROUND or closes):
        gone = bool(stream.take())  # "1 tr in each tr round"
    length = 1 if stream.kind() == "the" else 0
    if stream.word("entire", "whole", ahead=length) and stream.kind(length + 1) in ("row", "round"):
        stream.at += length + 2  # "the entire round"
        return Limit(LimitKind.END)
    if stream.word("length", "width", ahead=length) and stream.kind(length + 1) == "of":
        stream.at += length + 2  # "the length of the row"
        gone = True
    if gone and stream.kind() == "to" and stream.word("until", "till") and stream.kind(2) == "ordinal":
        gone = False  # "around until the second to last stitch"
    if gone:
        while stream.kind() in ("the", "row", "round", "of") or stream.word("entire", "whole", "rest"):
            stream.take()
    if stream.kind() == "ending" and stream.kind(-1) in ("to",):
        stream.take()
        return Limit(LimitKind.END)
    back = 1 if stream.word("back", "down") else 0
    if back and each_chain and stream.kind(1) in _AFTER_ROUND:
        stream.take()  # "ch 30, sl st in 2nd ch from hook and in each ch back"
        return Limit(LimitKind.END)
    ahead = back + (2 if stream.kind(back + 1) == "the" else 1)
    if (
        stream.kind(back) == "to"
        and stream.kind(ahead) in ("beginning", "base")
        and stream.kind(ahead + 1) in _AFTER_ROUND
    ):
        stream.at += ahead + 1  # "back to the start", "to base": all the way
        return Limit(LimitKind.END)
    if back and each_chain and (told := _back_to(stream)):
        stream.at += told
        return Limit(LimitKind.END)
    if stream.kind() in ("to", "within") and (marked := _to_marker(stream)) is not None:
        return marked
    if stream.kind() == "to" and each_chain and piece_alone(stream, 1):
        stream.at += 3 if stream.kind(1) == "the" else 2
        return Limit(LimitKind.END)  # "in each ch to body": a run of chains ends where stitches begin
    if stream.kind() in ("to", "within"):
        within = stream.take().kind == "within"
        ordinal_at = 1 if stream.kind() == "the" else 0
        if (
            stream.kind(ordinal_at) == "ordinal"
            and stream.kind(ordinal_at + 1) == "to"
            and stream.kind(ordinal_at + 2) == "last"
        ):
            number = Amount.of(stream.peek(ordinal_at).number)  # "until the second to last stitch"
            stream.at += ordinal_at + 3
            return Limit(LimitKind.LAST, number, target(stream) or ANY)
        if stream.word("there", "you") and stream.word("is", "are", "have", ahead=1):
            stream.at += 2  # "until there are 3 sts left"
        if stream.word("you") and stream.word("reach", "get", "come", ahead=1):
            stream.at += 2  # "until you reach the ch-1 sp"
            stream.take_if("to")
        stream.skip("the", "of")
        if stream.kind() == "remaining":  # "until remaining stitch is left"
            stream.take()
            number, found = how_many(stream), target(stream)
            if found is not None and stream.word("is", "are") and stream.word("left", ahead=1):
                stream.at += 2
                return Limit(LimitKind.LAST, number or ONE, found)
            stream.at = start
            return Limit(LimitKind.END) if gone else None
        if stream.kind() in ("ending", "row_end"):
            stream.take()
            while stream.kind() in ("of", "the", "row", "round", "side") or (
                stream.kind() == "chain" and stream.kind(-1) == "of"
            ):
                stream.take()
            return Limit(LimitKind.END)
        if stream.kind() in ("ordinal", "top"):  # "to 3rd ch of turning ch-4"
            at = stream.at
            named = ordinal(stream, at) if stream.kind() == "ordinal" else chain_top(stream, at)
            if named is not None and named.targets[0].kind is TargetKind.TURNING_CHAIN:
                return Limit(LimitKind.BEFORE, target=named.targets[0])
            stream.at = start
            return None
        if stream.kind() == "beginning" and stream.kind(1) == "chain" and stream.lexemes[start].kind == "across":
            stream.take()
            target(stream)  # "across to beginning ch-4, dc in its sp": the row below's, which comes last
            if not any(is_space_word(stream, ahead) for ahead in range(_SPACE_TOLD)):
                stream.at = start  # whether the run takes in the space that is part of the chain is not told
                return None
            return Limit(LimitKind.BEFORE, target=Target(TargetKind.TURNING_CHAIN))
        word = stream.take_if("last", "next", "first")
        if word and word.kind == "last" and stream.kind() == "side" and stream.kind(1) in _AFTER_ROUND:
            stream.take()
            return Limit(LimitKind.SIDE)
        if gone and word and word.kind == "first":  # "around to first sp": until the round comes back to it
            target(stream)
            return Limit(LimitKind.END)
        stream.skip("each", "the")
        if stream.kind() == "middle":
            stream.take()
            several = stream.amount() if stream.kind() == "number" else None  # "to center 2 sts"
            found = target(stream)
            owner, _ = part_of(stream)
            if several is not None and (owner is not None or found is None or found.kind is not TargetKind.ANY_STITCH):
                stream.at = start
                return None
            if several is not None:
                return Limit(LimitKind.BEFORE, several, found, middle=True)
            if owner is None and found is not None and found.kind in (TargetKind.SPACE, TargetKind.ANY_STITCH):
                return Limit(LimitKind.BEFORE, target=found, middle=True)
            return Limit(LimitKind.BEFORE, target=owner or Target(TargetKind.CORNER), middle=True)
        number = how_many(stream)
        found = target(stream)
        last_before = word is not None and word.kind == "last" and number is None  # "to last dc before t-ch"
        if last_before and found is not None and stream.word("before"):
            if (short := _short_of(stream, ONE, found)) is not None:
                return short
        if number is not None and found is not None and stream.word("before"):  # "until 3 sts before end"
            ahead = 2 if stream.kind(1) == "the" else 1
            if stream.kind(ahead) == "ending":
                stream.at += ahead + 1
                return Limit(LimitKind.LAST, number, found)
            if (short := _short_of(stream, number, found)) is not None:
                return short
        if number is not None and stream.word("is", "are"):
            stream.take()
        if number is not None and (stream.kind() == "remaining" or stream.word("remain", "remains", "left")):
            stream.take()  # "until 1 ch remains"
            return Limit(LimitKind.LAST, number, found or ANY, remain=True)
        if within and (stream.kind() == "of" or stream.kind() == "from" and _names_end(stream)):
            stream.pass_to()
        if word and word.kind == "last" or within:
            if found is None and number is None and not within and stream.kind() in (",", ";", "."):
                return Limit(LimitKind.LAST, ONE, ANY)  # "1 sc in each to last, 2 sc in last"
            if found is None and number is None:
                stream.at = start
                return Limit(LimitKind.END) if gone else None
            return Limit(LimitKind.LAST, number or ONE, found or ANY)
        if found is not None and (
            word or found.kind in (TargetKind.TURNING_CHAIN, TargetKind.CORNER, TargetKind.SPACE)
        ):
            return Limit(LimitKind.BEFORE, target=found)
        stream.at = start
        if gone:
            stream.take()
            return Limit(LimitKind.END)
        return None
    if gone:
        return Limit(LimitKind.END)
    return None


def _halfway(stream: Stream) -> bool:
    """Takes "halfway across (the row)", "half way along", "to halfway"."""
    start = stream.at
    stream.take_if("to")
    told = stream.word("halfway") or stream.kind() == "half" and stream.word("way", ahead=1)
    if told:
        stream.at += 1 if stream.word("halfway") else 2
        stream.take_if("across", "around")
        stream.skip("the")
        stream.take_if("row", "round")
        if stream.kind() in (*SIGNS, "end", "turn", "and"):
            return True
    stream.at = start
    return False


def half_of_row(stream: Stream) -> Limit | None:
    """Takes the "half (of) the row", "half the sts" of "sc in half the row"."""
    start = stream.at
    if stream.take_if("half"):
        stream.skip("of", "the")
        if stream.take_if("row", "any_stitch") and stream.kind() in (*SIGNS, "end", "turn", "and"):
            return Limit(LimitKind.HALF)
    stream.at = start
    return None


def _short_of(stream: Stream, number: Amount, counted: Target) -> Limit | None:
    """Takes the "before (the next) ch-2 sp" of "to 1 st before ch-2 sp": a space or the turning chain."""
    start = stream.at
    stream.take()
    while stream.kind() in ("the", "next", "middle", "first"):
        stream.take()
    found = target(stream)
    sorts = (TargetKind.SPACE, TargetKind.TURNING_CHAIN)
    plain = counted.kind in (TargetKind.ANY_STITCH, TargetKind.STITCH)
    if found is None or found.kind not in sorts or not plain:
        stream.at = start
        return None
    return Limit(LimitKind.BEFORE, target=found, short=number)


def _round_the_edge(stream: Stream) -> Limit | None:
    """Takes "around the (outer) edge", which goes all round where the row below is a round."""
    start = stream.at
    stream.take()
    while stream.kind() == "the" or stream.word("outer", "outside", "entire", "whole"):
        stream.take()
    if stream.take_if("edge"):
        return Limit(LimitKind.END, target=Target(TargetKind.PLACE, "edge"))
    stream.at = start
    return None


def worded_edge(stream: Stream, ahead: int = 0) -> int:
    """How many lexemes "cast-off edge", "hem edge" has ahead: an edge by words that name it; 0 where none stands there."""
    for length in range(1, 4):
        if stream.kind(ahead + length) == "edge":
            return length + 1
        if stream.kind(ahead + length - 1) not in ("word", "dash"):
            return 0
    return 0


_EDGES = {"bottom": "bottom", "lower": "bottom", "foundation": "bottom", "top": "top", "upper": "top"}


def _named_edge(stream: Stream) -> Limit | None:
    """Takes the "across (the) bottom", "along top edge" behind "sc in each ch": the foundation's other side, or the last row."""
    start = stream.at
    stream.take()
    stream.skip("the")
    name = _EDGES.get(stream.peek().lower)
    each = any(item.kind == "each" for item in stream.lexemes[max(0, start - 4) : start])
    if name is not None and each:
        stream.take()
        stream.take_if("edge", "side")
        if stream.kind() in (*SIGNS, "end", "and", "join", "then", "working"):
            return Limit(LimitKind.END, target=Target(TargetKind.PLACE, name))
    stream.at = start
    return None


def _names_end(stream: Stream) -> bool:
    """Whether "from (the) (other) end (of row)" stands at the cursor."""
    ahead = 1
    while stream.kind(ahead) in ("the", "last") or stream.word("other", "far", ahead=ahead):
        ahead += 1
    return stream.kind(ahead) in ("ending", "row_end", "edge")


def _to_marker(stream: Stream) -> Limit | None:
    """Takes "to (1 st before) (next) marker", "until you reach the marked st"."""
    start = stream.at
    within = stream.take().kind == "within"
    if stream.word("you") and stream.word("reach", "get", "come", ahead=1):
        stream.at += 2
        stream.take_if("to")
    stream.skip("the")
    short = None
    if stream.kind() == "number" and stream.kind(1) in ("any_stitch", "stitch"):
        short = stream.amount()
        stream.take()
        if not (stream.word("before", "from", "of") and stream.take()) and not (within and stream.take_if("of")):
            stream.at = start
            return None
    while stream.kind() in ("the", "next", "first", "last", "each", "same", "ordinal"):
        stream.take()
    marked = stream.take_if("marker_word")
    if marked is None and stream.kind() == "marked":
        marked = target(stream)
    if marked is None:
        stream.at = start
        return None
    return Limit(LimitKind.BEFORE, target=Target(TargetKind.MARKED), short=short)
