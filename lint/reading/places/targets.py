"""Reads sorts of place: "dc", "ch-2 sp", "2-ch sp", "next shell", "row end", "turning ch".

target   := stitch | "ch-n sp" | "n-ch sp" | "sp" | "ch" | shell… | "row end" | "ring" | "corner" | "turning ch"
"""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.lexeme import Lexeme
from lint.place import OF_STITCH, Target, TargetKind
from lint.reading.places.endsof import ends_of_rows, side_of
from lint.reading.places.madeof import chains_of_loop, legs_behind
from lint.reading.words.onestitch import one_stitch_name
from lint.reading.words.piecewords import PIECE_WORDS, at_underarm
from lint.reading.words.stream import CLOSERS, SIGNS, Stream

ANY = Target(TargetKind.ANY_STITCH)
PINEAPPLE_LOOP = Target(TargetKind.SPACE, "pineapple")
FOUNDATION = Target(TargetKind.CHAIN, "foundation")  # of the chain that the piece was begun on
_OVER_GAPS = ("underarm", "underarms", "armhole", "thumb", "crotch", "bridge")  # what chains were made over
_BUTTONHOLES = ("buttonhole", "buttonholes")
_BEHIND_TIP = (*SIGNS, "end", "any_stitch", "stitch", "space", "and")
_HANDLES = ("handle", "handles")  # of chain, where they are worked into whole
FREE = ("leftover", "left-over", "free", "exposed")  # what is said of loops that the next row has left
LOOPS = ("back_loop", "front_loop", "both_loops", "third_loop")


def target(stream: Stream) -> Target | None:
    """A sort of place; None and nothing taken if there is none."""
    start = stream.at
    stream.skip("beginning", "unused", "remaining", "the")
    if stream.kind() == "skip" and stream.kind(1) in ("any_stitch", "stitch", "chain", "space"):
        stream.take()  # "each of 3 sk sts"
    if stream.word(*_OVER_GAPS) and stream.kind(1) == "chain" and stream.kind(2) not in ("dash", "number", "space"):
        stream.at += 2  # "each underarm ch"
        return Target(TargetKind.CHAIN, stream.peek(-2).lower)
    if at_underarm(stream):
        return Target(TargetKind.PLACE, "edge")
    if stream.word("outer") and stream.word("point", "points", "tip", "tips", ahead=1):
        stream.at += 2  # "in each outer point": of a star
        return Target(TargetKind.CORNER)
    corner = stream.take_if("corner")
    stream.at += bool(corner and stream.kind() == "dash" and (is_space_word(stream, 1) or stream.kind(1) == "chain"))
    found = _target(stream)
    if found is None:
        if corner:
            return Target(TargetKind.CORNER)
        stream.at = start
        return None
    if found.kind is TargetKind.CHAIN and found.length is not None and stream.take_if("corner"):
        stream.at += is_space_word(stream)
        return Target(TargetKind.SPACE, length=found.length, corner=True)  # "in each ch-2 corner (sp)"
    if corner and found.kind is TargetKind.SPACE:
        return replace(found, corner=True)
    if corner and found.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH):
        return Target(TargetKind.CORNER)  # "in corner dc"
    return found


def free_loop_of_foundation(stream: Stream) -> bool:
    """Takes the "loop of the foundation chain" of "each free loop of the foundation chain"."""
    start = stream.at
    freed = stream.kind(-1) == "unused"
    freed = bool(is_space_word(stream) and stream.take()) or freed
    if freed and stream.take_if("of"):
        stream.skip("the")
        if stream.take_if("foundation"):
            return True
    stream.at = start
    return False


def is_space_word(stream: Stream, ahead: int = 0) -> bool:
    """Whether a word for a chain space stands there (also where the pattern makes "sp" a stitch of its own)."""
    lexeme = stream.peek(ahead)
    return lexeme.kind == "space" or (lexeme.kind == "special" and lexeme.lower in ("sp", "sps", "space", "spaces"))


def _target(stream: Stream) -> Target | None:
    start = stream.at
    lexeme = stream.peek()
    if lexeme.kind == "marked":
        stream.take()
        stream.skip("middle")
        if stream.kind() == "chain":
            _chain_target(stream)
            return Target(TargetKind.MARKED)
        stream.skip("corner")
        named = stream.take_if("any_stitch", "stitch", "space", "corner") or stream.kind(-1) == "corner"
        return Target(TargetKind.MARKED) if named else None
    if (ends := ends_of_rows(stream)) is not None:
        return ends
    if lexeme.kind == "any_stitch":
        stream.take()
        if stream.kind() == "or" and is_space_word(stream, 1):
            stream.at += 2
            return Target(TargetKind.PLACE)
        return Target(TargetKind.PLACE) if _or_chain_space(stream) else ANY
    if lexeme.kind == "stitch":
        stream.take()
        stream.take_if("any_stitch", "row_end") if stream.kind() == "any_stitch" else None
        if stream.kind() == "row_end":
            stream.take()
            return Target(TargetKind.ROW_END, f"{OF_STITCH}{lexeme.value}")
        if stream.kind() == "number" and stream.kind(1) == "together":  # "in first dc2tog"
            stream.at += 2
        if stream.kind() == "one_stitch":
            return Target(TargetKind.SPECIAL, one_stitch_name(stream.take().lower))  # "in next dc cluster"
        if is_space_word(stream) and stream.word("sp", "sps", "space", "spaces"):
            stream.take()  # "in each tr space": the space beside it
            return Target(TargetKind.SPACE)
        return Target(TargetKind.PLACE) if _or_chain_space(stream) else Target(TargetKind.STITCH, lexeme.value)
    if stream.word("pineapple") and is_space_word(stream, 1):
        stream.at += 2  # "in first pineapple loop": one of those within the pineapple
        return PINEAPPLE_LOOP
    if is_space_word(stream):
        stream.take()
        return Target(TargetKind.SPACE, length=chains_of_loop(stream))
    handle = stream.word(*_HANDLES) and (
        is_space_word(stream, 1) or stream.kind(1) in (*SIGNS, "end", "around", "across")
    )
    if stream.word(*_BUTTONHOLES) or handle:
        stream.take()  # "2 dc in every buttonhole (sp)"
        stream.take() if is_space_word(stream) else None
        return Target(TargetKind.SPACE)
    if lexeme.kind == "special" and lexeme.lower == "corner" and is_space_word(stream, 1):
        stream.at += 2  # "3 sc in each corner sp", where the pattern names a corner of its own
        return Target(TargetKind.SPACE, corner=True)
    if lexeme.kind in ("special", "one_stitch", "group_word", "picot"):
        stream.take()
        name = lexeme.value or lexeme.lower
        return Target(TargetKind.SPECIAL, one_stitch_name(name) if lexeme.kind == "one_stitch" else name)
    if stream.word("pair", "pairs") and stream.kind(1) == "of" and stream.kind(2) == "any_stitch":
        return None  # "in each pair of sts": one in two of them, or in each?
    if stream.word("group", "groups", "pair", "pairs"):
        stream.take()
        legs = legs_behind(stream)  # "groups of 3 dc"
        bare = (
            legs is None and stream.kind() == "of" and stream.kind(1) == "number" and stream.kind(2) in (*SIGNS, "end")
        )
        stream.at += 2 if bare else 0  # "first dc of any group of 3"
        return Target(TargetKind.SPECIAL, "group", legs.number if legs is not None else None)
    if stream.word("tip", "point", "points") and stream.kind(1) in _BEHIND_TIP:
        stream.take()  # of a leaf, a star or a ripple: where it turns
        stream.take_if("any_stitch", "stitch", "space")
        return Target(TargetKind.CORNER)
    if lexeme.kind == "chain":
        return _chain_target(stream)
    if lexeme.kind == "foundation":
        stream.take()
        return FOUNDATION
    if lexeme.kind == "side" and stream.kind(1) in (*SIGNS, "end") and stream.kind(-1) in ("in", "the"):
        stream.take()  # "sc in side,"
        return Target(TargetKind.ROW_END)
    if lexeme.kind in ("side", "edge") and stream.kind(1) == "of":
        side = side_of(stream)
        if side is not None or lexeme.kind == "side":
            return side
    if lexeme.kind == "number" and stream.peek(1).lower == "chsp":
        stream.at += 2
        return Target(TargetKind.SPACE, length=lexeme.quantity)
    if lexeme.kind == "number" and stream.kind(1) in ("dash", "chain", "stitch", "word"):
        stream.take()
        number = lexeme.quantity
        stream.take_if("dash")
        if stream.take_if("chain"):
            stream.take_if("dash")
            if is_space_word(stream):
                stream.take()
                return Target(TargetKind.SPACE, length=number)
            return Target(TargetKind.CHAIN, length=number)
        if stream.kind() == "stitch" and stream.kind(-1) == "dash":
            stitch = stream.take()
            if stream.take_if("corner"):
                return Target(TargetKind.CORNER)
            if stream.kind() in ("special", "group_word") or stream.word("group", "groups"):
                stream.take()
                return Target(TargetKind.SPECIAL, "group", number)
            del stitch
        stream.at = start
        return None
    simple = {
        "row_end": TargetKind.ROW_END,
        "ring": TargetKind.RING,
        "turning_chain": TargetKind.TURNING_CHAIN,
        "place": TargetKind.PLACE,
        "hole": TargetKind.PLACE,
        "edge": TargetKind.PLACE,
        "joining": TargetKind.PLACE,
        "join": TargetKind.PLACE,
    }.get(lexeme.kind)
    if simple:
        stream.take()
        if simple is TargetKind.TURNING_CHAIN:
            _dashed_number(stream)
            if stream.kind() == "chain":
                stream.take()
                _dashed_number(stream)
        if simple is TargetKind.TURNING_CHAIN and is_space_word(stream):
            stream.take()
            return Target(TargetKind.SPACE, "turning chain")  # "in tch sp"
        if lexeme.kind == "joining" and is_space_word(stream):
            stream.take()
            return Target(TargetKind.SPACE, "joining")  # "in joining loop": the one that closed the round below
        if lexeme.kind == "joining":
            stream.take_if("stitch", "any_stitch")
        if simple is TargetKind.ROW_END and ("each" in lexeme.lower or lexeme.lower.endswith("s")):
            return Target(simple, "each")
        name = "edge" if lexeme.kind in ("edge", "hole") else "join" if lexeme.kind in ("join", "joining") else None
        return Target(simple, name)
    return None


def _or_chain_space(stream: Stream) -> bool:
    """Takes the "or ch-1 sp" of "in next st or ch-1 sp"; of "2 sts or ch-2 sp" the space stands for both stitches."""
    start = stream.at
    several = stream.kind(-2) == "number" and stream.peek(-2).number != 1
    if stream.take_if("or") and stream.kind() == "chain" and _chain_target(stream).kind is TargetKind.SPACE:
        if not several or stream.word("sps", "spaces", ahead=-1):
            return True
    stream.at = start
    return False


def _dashed_number(stream: Stream) -> Amount | None:
    start = stream.at
    if stream.parts_from_count():
        return None
    stream.take_if("dash")
    if not stream.peek().glued and stream.kind(1) in ("stitch", "any_stitch", "increase", "decrease", "special"):
        return None  # "starting in 2nd ch 3 sc": the three are the stitches', as in "in last 2 ch - 32 sts"
    spelt = stream.peek().value == "word" and not stream.word("once", "twice", "thrice")
    ends = stream.kind(1) in (*SIGNS, "end", "dash", "and", "to") or is_space_word(stream, 1)
    if stream.kind() == "number" and (stream.peek().value != "word" or spelt and ends):  # "the chain three"
        return stream.take().quantity
    stream.at = start
    return None


def _chain_target(stream: Stream) -> Target:
    """ "ch-2 sp", "ch2 space", "ch sp", "ch-3" (a turning chain or run), "ch" (one chain)."""
    stream.take()
    if stream.kind() == "any_stitch" or stream.kind() == "dash" and is_space_word(stream, 1):
        stream.take()
    length = _dashed_number(stream)
    if stream.kind() == "dash" and is_space_word(stream, 1):
        stream.take()
    if length is not None and stream.word("eye", "eyes"):
        stream.take()  # "in ch-1 eye", in old patterns
        return Target(TargetKind.SPACE, length=length)
    if is_space_word(stream) or length is not None and stream.word(*_BUTTONHOLES, *_HANDLES):
        stream.take()
        return Target(TargetKind.SPACE, length=length)
    return Target(TargetKind.CHAIN, length=length)


def how_many(stream: Stream) -> Amount | None:
    """The number of places at the cursor; not the 2 of "2-ch sp", which is a length."""
    if stream.kind() == "number":
        chain = 2 if stream.kind(1) == "dash" else 1
        if stream.kind(chain) == "chain":
            space = chain + 2 if stream.kind(chain + 1) == "dash" else chain + 1
            plural = stream.peek(space).lower in ("sps", "spaces", "loops", "lps")
            if is_space_word(stream, space) and not (
                plural and chain == 1 and space == chain + 1 and not stream.peek(1).glued
            ):
                return None
        if stream.kind(1) == "dash" and stream.kind(2) == "stitch":
            return None
        if chain == 2 and stream.kind(2) == "chain" and stream.peek(1).glued and stream.peek(2).glued:
            return None  # "3rd ch of beg 3-ch": a chain of three
        if stream.peek(1).lower == "chsp" and stream.peek().number > 1:
            return None  # "each 5 chsp"
    return stream.amount()


def at_the_start(stream: Stream) -> bool:
    """Takes "at (the) beginning of rnd" after a place."""
    start = stream.at
    stream.skip("at", "in", "the")
    if stream.take_if("beginning"):
        stream.skip("of", "the")
        if stream.take_if("row", "round"):
            return True
    stream.at = start
    return False


def of_last_row(stream: Stream) -> bool:
    """Takes "of previous row", "of last rnd", "on last row", "in previous row" after a place: that is where all goes."""
    start = stream.at
    before = stream.kind() == "in" and stream.word("previous", "prev", "preceding", ahead=1 + (stream.kind(1) == "the"))
    if stream.take_if("of", "from") or (before or stream.word("on")) and stream.take():
        stream.skip("the")
        if stream.take_if("last") or stream.word("previous", "prev", "preceding") and stream.take():
            stream.take() if stream.word("short") and _past_it(stream.lexemes[stream.at :]) else None
            if stream.take_if("row", "round"):
                return True
    stream.at = start
    return False


def _past_it(words: list[Lexeme]) -> bool:
    """Whether no "next st" behind a run over a short row may be one of that row's own: it is said to lie beyond it."""
    return not any(item.kind == "next" for item in words) or any(item.lower in ("beyond", "past") for item in words)


def other_beside(stream: Stream) -> Target | None:
    """Takes the "and first group" of "between last group and first group": what stands on the gap's other side."""
    start = stream.at
    two = any(
        item.kind == "number" for item in stream.lexemes[max(0, start - 3) : start]
    )  # "between next 2 sts": both are told
    if not two and stream.take_if("and"):
        pointed = stream.at
        stream.skip("the", "next", "first", "last", "same", "following")
        told = stream.at > pointed
        found = target(stream) if how_many(stream) is None else None
        if found is not None and (told or stream.kind() in (",", ";", *CLOSERS)):  # "between first dc and V-st, …"
            return found
    stream.at = start
    return None


def along_what(stream: Stream) -> None:
    """Takes the "across bottom edge" of "in every row end across bottom edge"."""
    start = stream.at
    if stream.take_if("across", "around") or stream.word("down", "up") and stream.take():
        stream.skip("the", "other_side")
        while stream.word("long", "short", "right", "left", "lower", "upper", "bottom", "top", "other", "outer"):
            stream.take()
        if stream.take_if("side", "edge", "top") or stream.word(*PIECE_WORDS) and stream.take():
            return  # "around the cuff"
    stream.at = start


def of_a_row_below(stream: Stream) -> bool:
    """Takes "2 rows below", "2 rows down", "from row below", "of row 1", "on rnd 3" after a place: it is not in the row below."""
    start = stream.at
    if stream.word("left") and stream.take() and stream.word("over"):
        stream.take()  # "each front loop left over from Rnd 14"
    stream.skip("from", "in", "of", "on", "the")
    stream.skip("number", "ordinal")
    if stream.kind() == "below" and " " in stream.peek().lower and stream.kind(-1) == "number":
        stream.take()
        return True
    if stream.kind() in ("row", "round"):
        named = stream.at > start
        stream.take()
        if stream.take_if("below"):
            if stream.kind() in ("the", "row", "round", "word", "number", "of"):
                while stream.kind() in ("the", "row", "round", "number", "of") or stream.word("previous", "current"):
                    stream.take()
            return True
        if named and stream.peek(-2).kind == "ordinal" or stream.take_if("number"):
            stream.take_if("below") if stream.word("below") else None  # "of Rnd 2 below"
            if stream.kind() == "group_word" and stream.kind(1) in (*SIGNS, "end", "and"):
                stream.take()  # "in ch-3 sp of Row 1 block"
            return True
    stream.at = start
    return False


def beside_word(stream: Stream) -> bool:
    """Whether "between", "before next dc", "after the next dc" stands behind a space: it is the gap there."""
    if stream.word("just", "right", "directly", "immediately"):
        return stream.word("before", "after", ahead=1)
    return stream.kind() == "between" or stream.word("before", "after")


def row_named(stream: Stream, start: int) -> int:
    """The 1 of the "of Rnd 1", "of the 1st round" taken since `start`; 0 for "2 rows below"."""
    words = stream.lexemes[start : stream.at]
    below = any(item.kind == "below" for item in words)
    named = words[-1].kind in ("row", "round") and words[-2:-1] and words[-2].kind in ("ordinal", "first")
    if named and words[0].kind in ("of", "from", "in"):
        return words[-2].number or 1
    for word, number in zip(words, words[1:], strict=False):
        if word.kind in ("row", "round") and number.kind == "number" and number.amount is None:
            return number.number
        if word.kind == "ordinal" and number.kind in ("row", "round") and not below:
            return word.number
    return 0


def same_as(stream: Stream) -> None:
    """Passes "as join", "as last sc", "as joining sl st", "at base of ch"."""
    if stream.kind() == "as" or stream.word("where") or stream.word("slipped", "joined") and stream.kind(1) == "to":
        stream.take()
        while (
            not stream.done
            and stream.kind() not in (*SIGNS, ":", "and", "turn", "then")
            and not (stream.kind() == "dash" and stream.work_at(stream.at + 1))
            and not stream.leads_to_work(stream.at)
            and not stream.placed_work_at(stream.at)
        ):
            stream.take()
