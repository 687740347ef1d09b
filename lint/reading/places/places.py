"""Reads where a stitch goes: "in each of next 3 dc", "in 3rd ch of beg ch-4", "around next st".

place    := prep? item ("and" prep? item)*
item     := "each" ["of"] ["next"] [n] target+ limit? | ("next"|"first"|"last"|"same"|"any") [n] target
          | nth {"," nth} "ch from hook" | nth target "of" target | "top of" chain | target
limit    := "across" | "around" | "to end" | "to last [n] target" | "to next target" | "to center target of …"
"""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import Place, Target, TargetKind, Which
from lint.reading.places.freechains import free_chains
from lint.reading.places.freeloops import free_part, in_all_of_them
from lint.reading.places.gapwords import between_groups, group_of_two, space_between
from lint.reading.places.limits import half_of_row, limit
from lint.reading.places.ofpieces import piece_stitches
from lint.reading.places.ordinals import chain_top, first_and_others, merges, numbered_together, ordinal
from lint.reading.places.partof import in_so_many_groups, middle_of_arch
from lint.reading.places.pineapples import loop_of_pineapple
from lint.reading.places.pointed import all_but, all_told, chains_made, each_place, pointed, with_target
from lint.reading.places.prepositions import begins_bare, preposition
from lint.reading.places.rowsides import ends_of_next_rows
from lint.reading.places.targets import (
    ANY,
    FREE,
    LOOPS,
    along_what,
    at_the_start,
    beside_word,
    how_many,
    is_space_word,
    of_a_row_below,
    of_last_row,
    other_beside,
    row_named,
)
from lint.reading.places.underwhat import below_what
from lint.reading.words.piecewords import (
    names_piece,
    of_joined_piece,
    of_other_piece,
    piece_alone,
    piece_word,
)
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream

_PREPOSITIONS = ("in", "over", "around", "to", "at")
_WORK_BEGINS = (
    "number", "stitch", "special", "one_stitch", "group_word", "make", "increase", "decrease", ":",
    "(", "[",
)  # fmt: skip
_POINTS = ("next", "each", "last", "first", "top", "same", "ordinal", "corner", "space")
_AFTER_NUMBER = (",", ";", ".", ")", "]", "}", "star", "end", "and")
_FILLERS = ("the", "of", "all", "both")
_PASSED_OVER = ("skipped", "missed", "sk", "skip")
_SIDE_WORDS = ("right", "left", "upper", "lower", "bottom", "top")

_LEFT = ("unworked", "unused", "free")


def places(stream: Stream, allow_to: bool = False, bare: bool = False) -> tuple[Place, ...]:
    """The places named at the cursor; () and nothing taken where there are none.  `bare`: no "in" need stand before."""
    start = stream.at
    gap = bool(stream.take_if("between"))
    if gap and stream.kind(1) == "and" and {stream.kind(), stream.kind(2)} <= {"first", "last", "next", "ordinal"}:
        stream.at += 2  # "between last and first shells", "between first and second dc"
    shared = False if gap else preposition(stream, allow_to)
    if shared is None:
        if not bare and not begins_bare(stream):
            return ()
        shared = False
    first = _item(stream, gap)
    if first is None:
        stream.at = start
        return ()
    found = in_so_many_groups(stream, replace(first, shared=True) if shared and not first.shared else first)
    while True:
        before = stream.at
        comma = stream.take_if(",")
        by_hand = stream.kind() == "in" and "insert" in stream.peek().lower  # a movement of its own
        if by_hand or not stream.take_if("and") and not (comma and stream.kind() in ("in", "each")):
            stream.at = before
            break
        stream.skip("then")
        pointed = stream.kind() == "the" and stream.kind(1) in _POINTS and stream.kind(1) != "same"
        stream.at += pointed
        again = preposition(stream, allow_to)
        if again is None and chains_made(stream, found[-1]):
            stream.at = before
            break
        if again is None and stream.kind() not in _POINTS:
            space = stream.kind() == "chain" and any(is_space_word(stream, ahead) for ahead in (1, 2, 3, 4))
            number = stream.kind() == "number" and stream.kind(1) in ("chain", "space", "dash")
            if not space and not number and not (allow_to and _more_to_slip(stream)):
                stream.at = before
                break
        following = _item(stream)
        first_said = comma is not None and stream.kind() in _WORK_BEGINS  # "…, in last 2 sts sc2tog"
        run = following is not None and following.which is Which.EACH and following.limit is not None
        first_said = first_said and not (run and stream.kind() in OPENERS)  # "…, and each ch across (15)"
        left = again is None and any(item.lower in _LEFT for item in stream.lexemes[before : stream.at])
        left_open = left or pointed and stream.kind() not in (*SIGNS, *CLOSERS, "end", "turn", "join")
        if left_open or following is None or first_said or (again is None and stream.kind() in _PREPOSITIONS):
            stream.at = before
            break
        last = following.which is Which.LAST or following.from_words == "last" and following.which is Which.EACH
        ends = last and found[-1].which is Which.FIRST and stream.lexemes[before - 1].kind == "first"
        if ends and (following.number != ONE or following.which is Which.EACH):
            stream.at = start
            return ()  # "in first and last 5 sts": one and five, or five at each end? "first and last dc of each shell"
        if ends and following.of is not None:  # "in first and last dc of next shell"
            found[-1] = replace(following, which=Which.FIRST, span=found[-1].span, shared=found[-1].shared)
            following = replace(following, of_which="same")
        if (both := numbered_together(found[-1], following)) is not None:
            found[-1] = both
        elif merges(found[-1], following):
            found[-1] = replace(
                found[-1],
                targets=found[-1].targets + following.targets,
                limit=following.limit or found[-1].limit,
                span=found[-1].span.to(following.span),
            )
        else:
            found.append(following)
    return tuple(found)


def _more_to_slip(stream: Stream) -> bool:
    """ "sl st in next hdc and 2 dc,": stitches to move over, and no work of their own."""
    counted = stream.kind() == "number" and stream.kind(1) in ("stitch", "any_stitch")
    return counted and stream.peek(1).value != "sl st" and stream.kind(2) in (",", ";", ".", "end")


def _that_was_skipped(stream: Stream) -> None:
    """Takes the "you (just) skipped", "that was skipped" of "in the st you skipped"."""
    start = stream.at
    while stream.word("that", "which", "you", "we", "was", "were", "just", "has", "have", "been"):
        stream.take()
    if stream.at == start or not stream.word("skipped", "missed"):
        stream.at = start
        return
    stream.take()
    if stream.word("before", "earlier"):
        stream.take()


def _item(stream: Stream, between: bool = False) -> Place | None:
    start = stream.at
    if (loops := in_all_of_them(stream, start)) is not None:
        return loops
    if stream.word("pairs", "twos", "threes") and stream.kind(-1) == "in":
        return None  # "next 6 sts tog in pairs": how they are taken, and no place
    if (but_some := all_but(stream)) is not None:
        return but_some  # "in all but last 2 sts"
    if (ends := ends_of_next_rows(stream) or loop_of_pineapple(stream, start)) is not None:
        return ends
    if (half := half_of_row(stream)) is not None:
        return Place(stream.span_from(start), Which.EACH, (ANY,), limit=half)
    stream.skip(*_FILLERS)
    said = stream.lexemes[max(0, start - 1) : stream.at]
    all_of = any(item.kind == "all" or item.lower == "in all" for item in said)
    if all_of and stream.word("other", "further") and stream.kind(1) in ("any_stitch", "stitch", "chain"):
        stream.take()  # "in all (the) other sts", "in all further ch": those that are left
    while stream.word(*_SIDE_WORDS):
        behind = 3 if stream.kind(1) == "dash" and stream.word("hand", ahead=2) else 1
        if not (stream.word(*_SIDE_WORDS, ahead=behind) or stream.kind(behind) == "corner"):
            break
        stream.at += behind  # "top right corner ch-2 sp", "right-hand corner"
    left_free = (stream.kind() == "unused" or stream.word(*FREE)) and stream.kind(1) in LOOPS
    if left_free:  # "in the unworked front loop of the st two rows below"; else it is any round's
        stream.take()
    loop_words = stream.take_if(*LOOPS)
    if loop_words and stream.kind() == "number" and of_a_row_below(stream):
        return Place(stream.span_from(start), Which.NEXT, (ANY,), below=True)  # "in front loop two rows below"
    if stream.kind() == "ordinal" and stream.word("loop", "lp", ahead=1) and stream.kind(2) in ("of", "in"):
        loop_words = stream.take(), stream.take()  # "the 3rd loop of each st"
    if loop_words:
        before = stream.at
        stream.skip("the", "of", "all")
        all_of = all_of or any(item.kind == "all" for item in stream.lexemes[before : stream.at])
    kind = stream.kind()
    place: Place | None = None
    if stream.word("end") and stream.word("st", "stitch", ahead=1) and not loop_words:
        stream.at += 2  # "Tss in end st"
        return Place(stream.span_from(start), Which.LAST, (ANY,))
    if stream.word("it") and stream.kind(1) in (",", ";", ".", "end", "and", "then", "(", *CLOSERS):
        stream.take()
        return Place(stream.span_from(start), Which.SAME, (Target(TargetKind.PLACE),), from_words="that")
    if of_joined_piece(stream):
        return Place(stream.span_from(start), Which.ELSEWHERE, (Target(TargetKind.PLACE),))
    if kind == "as" and stream.peek().lower == "same as":  # "sc in same as ch 1"
        stream.pass_to()
        place = Place(stream.span_from(start), Which.SAME, (Target(TargetKind.PLACE),), from_words="again")
    elif free := free_part(stream):
        stream.at += free  # "in the free loop of each of the 3 ch"
        several = stream.lexemes[stream.at - 2].lower.endswith("s")
        place = _item(stream) if stream.kind() not in ("row", "round") else None
        place = free_chains(stream, place, several)
    elif kind == "each":
        place = each_place(stream, start)
    elif kind == "first" and stream.kind(1) == "of" and "next" in (stream.kind(2), stream.kind(3)):
        stream.take()
        stream.skip("of", "the")
        place = pointed(stream, start)  # "in the first of the next 4 sts": the next one, and none of those behind it
        place = replace(place, number=ONE, each_of=False) if place is not None else None
    elif kind == "first" and (numbered := first_and_others(stream, start)) is not None:
        place = numbered
    elif kind in ("next", "first", "last", "same", "any", "remaining") and not names_piece(stream):
        if kind != "same" or not stream.word("these", "those", "that") or stream.kind(1) not in ("last", "next"):
            place = pointed(stream, start)
        else:
            stream.take()  # "on these last 2 sts"
            place = pointed(stream, start)
    elif kind == "beginning" and stream.kind(1) in (".", ",", ";", "end"):
        stream.take()  # "sl st to beg."
        place = Place(stream.span_from(start), Which.FIRST, (ANY,), from_words="start")
    elif kind == "beginning" and (stream.kind(1) == "corner" or is_space_word(stream, 1)):
        stream.take()  # "2 dc in beginning corner sp", at a round's end
        place = with_target(stream, start, Which.FIRST)
    elif kind == "beginning" and stream.kind(1) == "ordinal":
        stream.take()  # "in beginning 3rd ch"
        place = ordinal(stream, start)
        if place is not None and place.targets[0].kind is TargetKind.CHAIN:
            place = replace(place, targets=(Target(TargetKind.TURNING_CHAIN),), from_words="beginning")
    elif stream.word("one") and stream.word("after", "following", "after that", "after this", ahead=1):
        stream.at += 2  # "1 tr into the one after (that)"
        stream.take() if stream.word("it") else None
        place = Place(stream.span_from(start), Which.NEXT, (ANY,))
    elif stream.word("previous", "prev") and stream.peek(start - stream.at - 1).kind == "around":
        stream.take()  # "around the post of previous dc"
        place = with_target(stream, start, Which.JUST_MADE)
    elif (
        names_piece(stream) or piece_alone(stream) and stream.lexemes[start - 1 : start] and _leads_round(stream, start)
    ):
        stream.pass_to(*SIGNS, "and", ":", "with")  # "9 sc around the second leg"
        if any(item.lower in ("half", "halves") for item in stream.lexemes[start : stream.at]):
            stream.at = start
            return None  # "in the second half": of the row, or of a piece
        word = (
            piece_word([item.lower for item in stream.lexemes[start : stream.at]])
            if _leads_round(stream, start)
            else ""
        )
        place = Place(stream.span_from(start), Which.ELSEWHERE, (Target(TargetKind.PLACE, "piece"),), from_words=word)
    elif stream.word("it") and any(item.kind == "ring" for item in stream.lexemes[: stream.at]):
        stream.take()  # "make a magic ring and work 5 dc into it"
        place = Place(stream.span_from(start), Which.NEXT, (Target(TargetKind.RING),))
    elif kind == "ordinal":
        place = ordinal(stream, start)
    elif kind == "middle":
        stream.take()
        stream.skip("the")
        if stream.take_if("of"):  # "center of next loop" is the loop, "center of next shell" its middle stitch
            inner = _item(stream)
            if inner is not None and inner.targets[0].kind not in (TargetKind.SPACE, TargetKind.PLACE):
                inner = replace(inner, middle=True, of=inner.targets[0])
            place = replace(inner, span=stream.span_from(start)) if inner is not None else None
        else:
            place = middle_of_arch(with_target(stream, start, Which.NEXT, middle=True))
    elif kind in ("top", "base"):
        place = chain_top(stream, start)
    elif kind == "ending" and stream.word("end") and stream.kind(1) == "chain":
        stream.take()  # "3 sc in end ch"
        place = with_target(stream, start, Which.LAST)
    elif kind in ("number", "(", "[", "dash"):
        number = how_many(stream)
        loops = number is not None and stream.kind() == "unused" and stream.kind(1) == "of"
        if loops and stream.kind(3 if stream.kind(2) == "the" else 2) in ("chain", "foundation"):
            stream.skip("unused", "of", "the")
            stream.take()  # "sc in 6 free loops of ch"
            span = stream.span_from(start)
            return Place(span, Which.ELSEWHERE, (Target(TargetKind.CHAIN),), number, each_of=True)
        if (of_piece := piece_stitches(stream, start, number)) is not None:
            return of_piece  # "sc across 40 body sts"
        if number is not None:
            place = with_target(stream, start, Which.NEXT, number)
            place = place and replace(place, bare=all_of)
            if place is None and stream.kind() in _AFTER_NUMBER:
                place = Place(stream.span_from(start), Which.NEXT, (ANY,), number, each_of=True)  # "sc in 3, inc in 1"
        elif kind == "number":  # "in the 2-ch sp": its length, and no number of places
            place = with_target(stream, start, Which.NEXT)
            place = place and replace(place, bare=place.which is Which.NEXT)
    else:
        place = with_target(stream, start, Which.NEXT)
        place = place and replace(place, bare=place.which is Which.NEXT)
        whole = place is not None and place.targets[0].kind is TargetKind.CHAIN and place.targets[0].length is not None
        if kind == "beginning" and whole and place.of is None:  # "2 sc in beg ch-4"
            place = replace(place, targets=(replace(place.targets[0], kind=TargetKind.TURNING_CHAIN),))
        if place is None and loop_words and stream.kind() not in ("word",):
            return None
    if place is None and kind in ("row", "round") and stream.kind(1) == "number" and stream.kind(2) == "below":
        number = stream.peek(1).number
        stream.at += 3  # "spike sc into Rnd 3 below next st": over that stitch
        covered = _item(stream)
        known = covered is not None and covered.which is Which.NEXT and covered.of is None
        return replace(covered, below=True, row=number, span=stream.span_from(start)) if known else None
    if place is None and kind in ("row", "round") and stream.kind(1) == "number":
        stream.pass_to()  # "down into round 3 between the petals"
        place = Place(stream.span_from(start), Which.ELSEWHERE, (Target(TargetKind.PLACE),), below=True)
    if place is None and of_other_piece(stream):
        place = Place(stream.span_from(start), Which.ELSEWHERE, (Target(TargetKind.PLACE),))
    if place is None:
        stream.at = start
        return None
    if place.bare and (all_of or all_told(stream, start)):  # "in all sts", "in all 24 sts", "in the sts"
        whole = place.number == ONE
        place = (
            replace(place, which=Which.EACH, limit=limit(stream), bare=False) if whole else replace(place, each_of=True)
        )
    of_last_row(stream)
    if place.targets[0].kind is TargetKind.ROW_END:
        along_what(stream)
    _that_was_skipped(stream)
    said = stream.lexemes[start : stream.at]
    if any(item.lower in _PASSED_OVER for item in said):
        one = place.which is Which.NEXT and place.number == ONE and said[-1].kind in ("row", "round")
        words = "round before" if one else place.from_words  # "in skipped st from last rnd": of the one it lies on
        place = replace(place, skipped=True, below=one, from_words=words)
    if place.targets[0].kind in (TargetKind.SPACE, TargetKind.SPECIAL) and _between_picots(stream):
        place = replace(place, span=stream.span_from(start))  # "in next p-lp between picots": the middle of the loop
    behind = stream.at
    place = between_groups(stream, place, start)
    if between:
        beside, told = group_of_two(place.targets[0], other_beside(stream), place.from_words)
        if beside is not None and told in ("before", "after"):  # "between first dc and V-st"
            place = replace(place, targets=(beside,), which=Which.NEXT, from_words=told)
        place = replace(place, between=True, number=ONE if place.number.lone == 2 else place.number)
        if of_a_row_below(stream):
            place = replace(place, below=True, row=row_named(stream, behind), span=stream.span_from(start))
    elif place.targets[0] == Target(TargetKind.SPACE) and beside_word(stream):
        place = space_between(stream, place, start)
    elif stream.kind() == "at" and stream.kind(2 if stream.kind(1) == "the" else 1) == "base":
        while stream.kind() in ("at", "the"):
            stream.take()
        chain_top(stream, start)  # "in the st at base of ch-3"
        place = Place(stream.span_from(start), Which.SAME, (Target(TargetKind.PLACE),), from_words="round's start")
    elif stream.kind() == "at" and stream.kind(1) == "top":
        stream.take()  # "in join at top of ch-3"
        chain_top(stream, start)
        of_last_row(stream)
    elif (stream.kind() == "at" or stream.word("on")) and at_the_start(stream):
        place = replace(place, from_words="start", span=stream.span_from(start))
    elif of_a_row_below(stream) or stream.take_if("below"):
        below_what(stream)
        counted = any(item.kind in ("number", "ordinal") for item in stream.lexemes[behind : stream.at])
        # "ch-3 sp of block in row below" is a part of what the last row made, and no long stitch
        named = row_named(stream, behind)
        place = replace(place, below=place.of is None or counted, row=named, span=stream.span_from(start))
    if left_free and not place.below:
        stream.at = start
        return None
    return place


def _leads_round(stream: Stream, start: int) -> bool:
    """Whether "around", "along" or "on" stands before a place: round another piece."""
    return stream.lexemes[start - 1].kind in ("around", "across") or stream.lexemes[start - 1].lower in ("on", "round")


def _between_picots(stream: Stream) -> bool:
    """Takes the "between (the 2) picots" that tells where in a loop a stitch stands."""
    ahead = 1
    while stream.kind(ahead) == "the" or stream.kind(ahead) == "number" and stream.peek(ahead).number == 2:
        ahead += 1
    picots = stream.word("picot", "picots", ahead=ahead)
    if stream.kind() != "between" or not picots or stream.kind(ahead + 1) not in (*SIGNS, "end"):
        return False
    stream.at += ahead + 1
    return True
