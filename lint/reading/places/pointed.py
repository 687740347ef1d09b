"""Reads places that are pointed at: "each of the next 3 dc", "first st", "same sp as join", "any ch-2 sp", "ch-2 sp"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.lexicon import Lexeme
from lint.place import UNWORKED, Limit, LimitKind, Place, Target, TargetKind, Which
from lint.reading.places.leftforlater import left_for_later
from lint.reading.places.limits import limit
from lint.reading.places.ofpieces import PIECE
from lint.reading.places.ordinals import ordinal
from lint.reading.places.partof import part_of, which_owner
from lint.reading.places.targets import (
    ANY,
    FOUNDATION,
    FREE,
    LOOPS,
    along_what,
    free_loop_of_foundation,
    how_many,
    is_space_word,
    same_as,
    target,
)
from lint.reading.words.pickups import at_a_piece
from lint.reading.words.piecewords import PIECE_WORDS, has_stitches, only_piece
from lint.reading.words.stream import SIGNS, Stream

_A_CHAIN = Target(TargetKind.CHAIN)


def each_place(stream: Stream, start: int) -> Place | None:
    """ "each of the next 3 dc", "each dc and ch-1 sp around", "each of the 4 corner sps"."""
    told = stream.take().lower
    of = stream.kind() == "of"
    stream.skip("of", "the", "each")
    if stream.kind() in ("next", "first", "last", "same"):
        inner = pointed(stream, start)
        if inner is not None and inner.which is Which.NEXT and inner.number == ONE:
            reach = limit(stream)  # "in each next st around"
            if reach is not None:
                return replace(inner, which=Which.EACH, limit=reach, span=stream.span_from(start))
            if (stream.kind() in (*SIGNS, "end") or not of) and inner.of is None:
                return replace(inner, which=Which.EACH)  # "2 dc in each following dc", but "in each of next st (5 sts)"
        return replace(inner, each_of=True) if inner else None
    if told == "every" and (second := _every_nth(stream, start)) is not None:
        return second
    rest = stream.take_if("remaining") or stream.word("further") and stream.take()  # "in each further ch"
    stream.skip("unused", "any")
    if stream.word(*FREE) and stream.kind(1) in LOOPS:
        stream.take()  # "each leftover front loop of Rnd 14"
    one = stream.word("one", ahead=1) and stream.kind(2) not in ("any_stitch", "stitch")  # "in every other one"
    if stream.word("other") and not one and (stream.kind(1) == "number" or told == "each of the"):
        stream.take()  # "each of the other (11) dc"; "every other dc" may also be every second one
    before = stream.kind() == "middle" and stream.kind(1) == "number" and bool(stream.take())
    number = how_many(stream)
    plain = stream.kind(1) in ("any_stitch", "stitch")  # "in each of the 14 center front sts" is of a piece
    if number is not None and (before or stream.kind() == "middle" and plain):
        stream.take_if("middle")  # "in each of the 2 center sts"
        place = with_target(stream, start, Which.NEXT, number, middle=True)
        return replace(place, each_of=True) if place is not None and place.of is None else None
    if before:
        return None
    if (
        number is not None
        and told == "every"
        and not of
        and not _over_or_between(stream, start)
        and number != ONE
        and stream.kind() in ("any_stitch", "stitch")
    ):
        return None  # "2 sc in every 3 sts" may be over three of them
    if number is not None:
        unused = stream.take_if("unused")
        if word := _of_a_piece(stream):
            stream.take()
            return Place(stream.span_from(start), Which.ELSEWHERE, PIECE, number, each_of=True, from_words=word)
        if stream.kind() in LOOPS and stream.kind(1) in (*SIGNS, "end", "around"):
            stream.take()  # "in each of the 12 front loops", maybe behind "Working in the free front loops of Rnd 1,"
            return Place(stream.span_from(start), Which.NEXT, (ANY,), number, each_of=True)
        place = with_target(stream, start, Which.ELSEWHERE if unused else Which.NEXT, number)
        if (
            place is not None
            and place.which is Which.NEXT
            and number != ONE
            and place.of is None
            and at_a_piece(stream)
        ):
            return replace(place, which=Which.ELSEWHERE, each_of=True, span=stream.span_from(start))
        if place is None and stream.kind() in (*SIGNS, "end"):
            return Place(stream.span_from(start), Which.NEXT, (ANY,), number, each_of=True)  # "1 hdc in each of 2,"
        return replace(place, each_of=True, bare=place.which is Which.NEXT) if place else None
    loops = stream.take_if(*LOOPS)  # "2 sc in each front loop"
    if loops:
        stream.skip("of", "the")
    found = FOUNDATION if free_loop_of_foundation(stream) else target(stream) or (ANY if loops else None)
    if found is None:
        if stream.kind() in ("across", "around", "to", "within", "end", ".", ",", ";", "(") or rest:
            found = ANY
        else:
            return None
    targets = [found]
    while stream.kind() == "and" and stream.kind(1) not in ("each", "in", "next", "last", "turn", "join"):
        before = stream.at
        stream.take()
        more = target(stream)
        if more is None or stream.kind() in ("in", "over"):
            stream.at = before
            break
        targets.append(more)
    if found == Target(TargetKind.CHAIN) and len(targets) == 1 and _across_bottom(stream):
        return Place(stream.span_from(start), Which.EACH, (FOUNDATION,))
    owned = stream.at
    of, word = part_of(stream)
    of_which = which_owner(stream.lexemes[owned : stream.at])
    if of in (_A_CHAIN, FOUNDATION) and targets in ([ANY], [_A_CHAIN]) and not word:
        targets, of = [of], None  # "each st of ch", "each rem ch of foundation ch": those of the chain begun on
    if found.kind is TargetKind.ROW_END:
        along_what(stream)
    reach = limit(stream)
    if reach is None and stream.kind() == "across" and _a_side(stream):
        stream.pass_to(*SIGNS, "and")  # "in each dc across the side of the square": to its corner
        reach = Limit(LimitKind.BEFORE, target=Target(TargetKind.CORNER))
    if reach is not None and reach.kind is LimitKind.LAST and reach.target is None:
        reach = replace(reach, target=found)  # "in each ch-2 sp except last"
    span = stream.span_from(start)
    piece = only_piece(stream.lexemes[start : stream.at]) if word == "elsewhere" else ""
    if piece and reach is None and found == ANY:
        return Place(span, Which.ELSEWHERE, PIECE, each_of=True, from_words=piece)  # "each st of first sleeve"
    if of_which == "each":
        of_which = "all"  # "in each dc of each shell": all of all
    return Place(span, Which.EACH, tuple(targets), limit=reach, of=of, of_which=of_which, below=word == "elsewhere")


def _a_side(stream: Stream) -> bool:
    """Whether "across (the) side", "across the last side", "along all 4 sides" stands here."""
    ahead = 1
    while stream.kind(ahead) in ("the", "last", "next", "first", "remaining", "all", "each", "number") and ahead < 4:
        ahead += 1
    return stream.kind(ahead) == "side" or ahead == 1 and stream.kind(2) == "side"


def _every_nth(stream: Stream, start: int) -> Place | None:
    """Takes the "other st around" of "in every other st around", the "third st" of "in every third st"."""
    before = stream.at
    nth = 2 if stream.word("other") else stream.peek().number if stream.kind() == "ordinal" else 0
    if nth > 1 and _single(stream.lexemes[:start]) and stream.take() and stream.kind() in ("any_stitch", "stitch"):
        found = target(stream)
        reach = limit(stream)
        if found is not None and stream.kind() != "of":
            return Place(stream.span_from(start), Which.EACH, (found,), limit=reach, every=nth)
    stream.at = before
    return None


def _single(before: list[Lexeme]) -> bool:
    """Whether one stitch, or a bracket of them, is worked; "2 dc in every third st" may be how often one is added.

    Behind work in the corners, "every other" stitch may be all that are left.
    """
    while before and before[-1].kind in ("in", "each"):
        before = before[:-1]
    kinds = ["", "", *(item.kind for item in before)]
    if "corner" in kinds or kinds[-1] not in ("stitch", "special", "one_stitch", "group_word", ")", "]"):
        return False
    return kinds[-1] in (")", "]") or kinds[-2] != "number" or before[-2].number == 1


def _across_bottom(stream: Stream) -> bool:
    """Takes the "across (the) bottom (edge)" of "in each ch across bottom": the chain that the piece was begun on."""
    start = stream.at
    if stream.take_if("across"):
        stream.skip("the")
        if stream.word("bottom", "lower") and stream.take():
            stream.take_if("edge")
            if stream.kind() in (*SIGNS, "end", "and", "turn", "join"):
                return True
    stream.at = start
    return False


def pointed(stream: Stream, start: int) -> Place | None:
    """ "next 3 dc", "first st", "same sp as join", "last 2 sts", "any ch-2 sp"."""
    word = stream.take().kind
    stream.skip("the", "of", "each", "unused", "next") if word != "same" else stream.skip("the", "same")
    whole = 3 if stream.kind(2) == "the" else 2
    if (
        word == "next"
        and stream.kind() == "ordinal"
        and stream.kind(1) == "of"
        and stream.word("sts", "stitches", ahead=whole)
    ):
        return None  # "the next third of the sts" is a share of the row, and no third stitch
    if word == "next" and stream.kind() == "ordinal":
        return ordinal(stream, start)  # "in next 2nd sc"
    if stream.kind() == "marker_word":
        return None  # "at the first marker": no first stitch
    if word in ("next", "last") and stream.kind() in ("side", "edge"):
        stream.take() if is_space_word(stream, 1) or stream.kind(1) == "chain" else None  # "in next side sp"
    middle = bool(stream.take_if("middle"))
    own = _own_chains(stream) if word == "first" else None
    if own is not None:
        return Place(stream.span_from(start), Which.FROM_HOOK, (Target(TargetKind.CHAIN),), ordinals=(own,))
    one_of = word in ("first", "last") and "of" in (stream.kind(-1), stream.kind(-2))
    if word == "same" and stream.word("these", "those", ahead=-1) and stream.kind() == "number":
        word = "next"  # "in each of these 2 sts"
    number = how_many(stream)
    apart = word == "any" and not _over_or_between(stream, start)
    if apart and number is not None and number != ONE and stream.kind() in ("any_stitch", "stitch"):
        return None  # "in any 6 sts": which they are is not said
    stream.take_if(*LOOPS)  # "any front loop"
    if one_of and number is not None and (stream.kind() == "unused" or "skip" in stream.peek().lower):
        number = ONE  # "in first of the 2 skipped sts"
    which = {
        "next": Which.NEXT,
        "first": Which.FIRST,
        "last": Which.LAST,
        "same": Which.SAME,
        "any": Which.ANY,
        "remaining": Which.EACH,
    }[word]
    place = with_target(stream, start, which, number or ONE, middle=middle)
    if place is None:
        if which is Which.ANY:
            return None
        place = Place(stream.span_from(start), which, (ANY,), number or ONE)
    if word == "remaining" and number is not None and place.which is Which.EACH and place.of is None:
        place = replace(place, which=Which.NEXT, each_of=True)  # "sc in remaining 8 sts": so many, and no more
    if which is Which.SAME and stream.lexemes[start].lower == "that":
        place = replace(place, from_words="that")
    elif which is Which.SAME:
        words = stream.at
        same_as(stream)
        first = any(
            item.kind in ("beginning", "first", "join", "joining") for item in stream.lexemes[words : stream.at]
        )
        place = replace(place, span=stream.span_from(start), from_words="round's start" if first else "")
    if which is Which.ANY and (reach := limit(stream)) is not None:
        place = replace(place, which=Which.EACH, limit=reach)  # "in any ch till the end of the row"
    if stream.kind() == "or" and stream.kind(1) in ("next", "space", "chain", "number", "any_stitch"):
        return place
    return place


def all_but(stream: Stream) -> Place | None:
    """ "all but (the) last 2 sts", "all but last st": each up to those."""
    start = stream.at
    before = stream.peek(-1)
    everything = before.kind == "all" or before.lower == "in all" or bool(stream.take_if("all"))
    stream.take_if("any_stitch") if everything and stream.word("but", "except", ahead=1) else None
    if everything and stream.word("but", "except"):
        stream.take()
        stream.skip("the")
        if stream.take_if("last"):
            number = how_many(stream) or ONE
            found = target(stream)
            if found is not None or stream.kind() in (*SIGNS, "end", "turn"):
                reach = Limit(LimitKind.LAST, number, found or ANY)
                return Place(stream.span_from(start), Which.EACH, (ANY,), limit=reach)
    stream.at = start
    return None


def _over_or_between(stream: Stream, start: int) -> bool:
    """Whether a place stands behind "over" or "between": "dec over every two sts", "between any 2 dc"."""
    return start > 0 and any(item.kind in ("over", "between") for item in stream.lexemes[max(0, start - 2) : start + 1])


_CORNERS = ("corners", "points", "tips")
_SEVERAL = ("sts", "stitches", "sps", "spaces", *_CORNERS)


def all_told(stream: Stream, start: int) -> bool:
    """Whether "corners", "the sts" was taken since `start`: several, without a number, and so each of them."""
    said = stream.lexemes[max(0, start - 1) : stream.at]
    noun = said[-1].lower.split()[-1]
    return noun in _CORNERS or noun in _SEVERAL and any(item.kind in ("the", "corner") for item in said)


def chains_made(stream: Stream, before: Place) -> bool:
    """Whether the "3 ch" of "1 tr into next st and 3 ch" is chains to make: behind one place, where chains are told so."""
    alone = before.which is not Which.EACH and before.number == ONE and not before.each_of
    if not alone or stream.kind() != "number" or stream.kind(1) != "chain" or is_space_word(stream, 2):
        return False
    if stream.kind(2) not in (*SIGNS, "end", "and", "turn", "join"):
        return False
    pairs = zip(stream.lexemes, stream.lexemes[1:], strict=False)
    return not any(one.kind == "chain" and two.kind == "number" for one, two in pairs)  # a row that says "ch 3"


def _own_chains(stream: Stream) -> int | None:
    """Takes the "these 3 ch" of "first of these 3 ch", the "ch of ch-3 just made" of "first …": how many they are."""
    start = stream.at
    if stream.kind() == "same" and stream.word("these", "those", "the same") and stream.kind(1) == "number":
        stream.take()
        number = stream.take().number
        if stream.take_if("chain"):
            stream.take_if("made")
            return number
    stream.at = start
    return None


def with_target(stream: Stream, start: int, which: Which, number: Amount = ONE, middle: bool = False) -> Place | None:
    """The place of a sort that stands at the cursor, and what it is part of; None where there is none."""
    owner = stream.take() if number is not ONE and not middle and piece_and_stitch(stream) else None
    left = which is Which.NEXT and any(stream.word(UNWORKED, "un-worked", ahead=ahead) for ahead in (-1, 0))
    found = target(stream)
    if found is None:
        return None
    if owner is not None:  # "next 40 body sts"
        return Place(stream.span_from(start), Which.ELSEWHERE, PIECE, number, from_words=owner.lower)
    if found.kind is TargetKind.ROW_END:
        every = (found.name or "").startswith("each") and number is ONE
        which = Which.EACH if every else Which.ELSEWHERE
    if found.kind is TargetKind.PLACE and found.name == "edge":
        which = Which.ELSEWHERE
    if which is Which.NEXT and (number is not ONE or left) and left_for_later(stream):
        which = Which.ELSEWHERE
    elif stream.kind() == "unused":  # "in the ch skipped before it"
        stream.take()
        while stream.word("before", "it", "just", "earlier"):
            stream.take()
    targets = [found]
    owned = stream.at
    of, word = part_of(stream)
    of_which = which_owner(stream.lexemes[owned : stream.at])
    if of in (_A_CHAIN, FOUNDATION) and found in (ANY, _A_CHAIN) and not word and not middle:
        targets, of = [_A_CHAIN], None  # "last 4 sts of ch"
    if of is None and found.kind is TargetKind.SPECIAL and not word and is_space_word(stream):
        stream.take()  # "in next shell sp": the one that the shell holds
        targets, of = [Target(TargetKind.SPACE)], found
    if word == "each":
        whole, reach = stream.span_from(start), limit(stream)
        said = which.value if which in (Which.FIRST, Which.LAST) else ""
        return Place(
            whole, Which.EACH, tuple(targets), number, reach, of=of, of_which="each", middle=middle, from_words=said
        )
    if word == "any" and which is Which.NEXT:
        which = Which.ANY  # "in center dc of any corner": where a round may begin
    if word == "elsewhere":
        which = Which.ANY if which is Which.ANY else Which.ELSEWHERE
    if stream.word("that", "which") and stream.kind() in ("same", "word"):
        stream.pass_to()  # "in the ch that holds the first sc"
    if stream.kind() == "made" or which is Which.LAST and stream.word("worked"):
        stream.take()
        which = Which.JUST_MADE if which is not Which.SAME else which
    elif stream.kind() == "word" and stream.word("formed", "made") and stream.kind(1) in ("by", "from"):
        stream.pass_to()
        which = Which.FIRST
    if stream.kind() == "by":
        stream.pass_to()
        which = Which.FIRST
    if which in (Which.ANY, Which.NEXT) and stream.kind() == "across":
        ahead = 2 if stream.kind(1) == "the" else 1
        ahead += (
            stream.word("outer", "side", "long", "short", "top", "bottom", ahead=ahead)
            and stream.kind(ahead + 1) == "edge"
        )
        if stream.kind(ahead) in ("edge", "side"):
            stream.at += ahead + 1  # "in any st along edge"
            which = Which.ELSEWHERE
    piece = only_piece(stream.lexemes[start : stream.at]) if word == "elsewhere" else UNWORKED if left else ""
    if piece and not left and which is Which.ELSEWHERE and number != ONE and not middle:
        targets = list(PIECE)  # "next 36 sts of body"
    whole = stream.span_from(start)
    return Place(whole, which, tuple(targets), number, of=of, of_which=of_which, middle=middle, from_words=piece)


def piece_and_stitch(stream: Stream) -> bool:
    """Whether "body sts", "sleeve dc" stand there."""
    return stream.kind() == "word" and stream.kind(1) in ("any_stitch", "stitch") and has_stitches(stream.peek().lower)


def _of_a_piece(stream: Stream) -> str:
    """Takes the "back neck" of "each of the 23 back neck sts": stitches of another row, known by where they lie; its last word."""
    start = stream.at
    while stream.word(*PIECE_WORDS):
        stream.take()
    named = stream.at > start and stream.kind() in ("any_stitch", "stitch", "chain")
    stream.at = stream.at if named else start
    return stream.peek(-1).lower if named else ""
