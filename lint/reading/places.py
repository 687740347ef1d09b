"""Reads where a stitch goes: "in each of next 3 dc", "in 3rd ch of beg ch-4", "around next st".

place    := prep? item ("and" prep? item)*
item     := "each" ["of"] ["next"] [n] target+ limit? | ("next"|"first"|"last"|"same"|"any") [n] target
          | nth {"," nth} "ch from hook" | nth target "of" target | "top of" chain | target
limit    := "across" | "around" | "to end" | "to last [n] target" | "to next target" | "to center target of …"
"""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.reading.stream import Stream
from lint.reading.targets import (
    ANY,
    LOOPS,
    at_the_start,
    how_many,
    is_space_word,
    of_a_row_below,
    part_of,
    same_as,
    target,
)

_PREPOSITIONS = ("in", "over", "around", "to", "at")
_FILLERS = ("the", "of", "all", "both")
_AFTER_ROUND = (",", ";", ".", "end", ":", "turn", "join", "(", ")", "]", "dash", "working", "make")
_SIDE_WORDS = ("right", "left", "upper", "lower", "bottom", "top")


def places(stream: Stream, allow_to: bool = False) -> tuple[Place, ...]:
    """The places named at the cursor; () and nothing taken where there are none."""
    start = stream.at
    gap = bool(stream.take_if("between"))
    shared = False if gap else _preposition(stream, allow_to)
    if shared is None:
        if stream.kind() not in ("next", "same", "each") and not (
            stream.kind() in ("last", "first") and stream.kind(1) in ("number", "any_stitch", "stitch")
        ):
            return ()
        shared = False
    first = _item(stream, gap)
    if first is None:
        stream.at = start
        return ()
    found = [replace(first, shared=shared or first.shared)]
    while True:
        before = stream.at
        if not stream.take_if("and", ",") or (stream.kind(-1) == "," and stream.kind() not in ("in", "each")):
            stream.at = before
            break
        stream.skip("then")
        again = _preposition(stream, allow_to)
        if again is None and stream.kind() not in (
            "next",
            "each",
            "last",
            "first",
            "top",
            "same",
            "ordinal",
            "corner",
            "space",
        ):
            space = stream.kind() == "chain" and any(is_space_word(stream, ahead) for ahead in (1, 2, 3, 4))
            if not space and not (stream.kind() == "number" and stream.kind(1) in ("chain", "space", "dash")):
                stream.at = before
                break
        following = _item(stream)
        if following is None or (again is None and stream.kind() in _PREPOSITIONS):
            stream.at = before
            break
        if _merges(found[-1], following):
            found[-1] = replace(
                found[-1],
                targets=found[-1].targets + following.targets,
                limit=following.limit or found[-1].limit,
                span=found[-1].span.to(following.span),
            )
        else:
            found.append(following)
    return tuple(found)


def _merges(one: Place, other: Place) -> bool:
    """ "each dc and each ch-1 sp": one run over both sorts of place."""
    return one.which is Which.EACH and other.which is Which.EACH and one.limit is None and one.of is None


def _preposition(stream: Stream, allow_to: bool) -> bool | None:
    """Takes the preposition; tells whether several places share one stitch; None if there is none."""
    start = stream.at
    everything = stream.take_if("all", "together")
    kind = stream.kind()
    if kind in ("in", "around", "at") or (kind == "to" and allow_to):
        stream.take()
        if kind == "around" and stream.kind() in ("end", ",", ".", ";", ")", "]", "}"):
            stream.at = start
            return None
        stream.skip("in")
        return bool(everything)
    if kind == "over":
        stream.take()
        return True
    stream.at = start
    return None


def _item(stream: Stream, between: bool = False) -> Place | None:
    start = stream.at
    stream.skip(*_FILLERS)
    while stream.word(*_SIDE_WORDS) and (stream.word(*_SIDE_WORDS, ahead=1) or stream.kind(1) == "corner"):
        stream.take()  # "top right corner ch-2 sp"
    loop_words = stream.take_if(*LOOPS)
    if stream.kind() == "ordinal" and stream.word("loop", "lp", ahead=1) and stream.kind(2) in ("of", "in"):
        loop_words = stream.take(), stream.take()  # "the 3rd loop of each st"
    if loop_words:
        stream.skip("the", "of")
    kind = stream.kind()
    place: Place | None = None
    if kind == "each":
        place = _each(stream, start)
    elif kind in ("next", "first", "last", "same", "any", "remaining"):
        place = _pointed(stream, start)
    elif kind == "ordinal":
        place = _ordinal(stream, start)
    elif kind == "middle":
        stream.take()
        stream.skip("the")
        if stream.take_if("of"):  # "center of next loop" is the loop, "center of next shell" its middle stitch
            inner = _item(stream)
            if inner is not None and inner.targets[0].kind is not TargetKind.SPACE:
                inner = replace(inner, middle=True, of=inner.targets[0])
            place = replace(inner, span=stream.span_from(start)) if inner is not None else None
        else:
            place = _with_target(stream, start, Which.NEXT, middle=True)
    elif kind in ("top", "base"):
        place = _chain_top(stream, start)
    elif kind in ("number", "(", "[", "dash"):
        number = how_many(stream)
        if number is not None:
            place = _with_target(stream, start, Which.NEXT, number)
        elif kind == "number":
            place = _with_target(stream, start, Which.NEXT)
    else:
        place = _with_target(stream, start, Which.NEXT)
        if place is None and loop_words and stream.kind() not in ("word",):
            return None
    if place is None:
        stream.at = start
        return None
    if between:
        place = replace(place, between=True)
    elif stream.kind() == "at" and at_the_start(stream):
        place = replace(place, from_words="start", span=stream.span_from(start))
    elif of_a_row_below(stream):
        place = replace(place, below=True, span=stream.span_from(start))
    return place


def _each(stream: Stream, start: int) -> Place | None:
    stream.take()
    stream.skip("of", "the", "each")
    if stream.kind() in ("next", "first", "last", "same"):
        inner = _pointed(stream, start)
        return replace(inner, each_of=True) if inner else None
    rest = stream.take_if("remaining")
    stream.skip("unused", "any")
    number = how_many(stream)
    if number is not None:
        unused = stream.take_if("unused")
        place = _with_target(stream, start, Which.ELSEWHERE if unused else Which.NEXT, number)
        return replace(place, each_of=True) if place else None
    found = target(stream)
    if found is None:
        if stream.kind() in ("across", "around", "end") or rest:
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
    of, _ = part_of(stream)
    reach = limit(stream)
    return Place(stream.span_from(start), Which.EACH, tuple(targets), limit=reach, of=of)


def _pointed(stream: Stream, start: int) -> Place | None:
    """ "next 3 dc", "first st", "same sp as join", "last 2 sts", "any ch-2 sp"."""
    word = stream.take().kind
    stream.skip("the", "of", "each", "unused", "next") if word != "same" else stream.skip("the")
    middle = bool(stream.take_if("middle"))
    number = how_many(stream)
    which = {
        "next": Which.NEXT,
        "first": Which.FIRST,
        "last": Which.LAST,
        "same": Which.SAME,
        "any": Which.ANY,
        "remaining": Which.EACH,
    }[word]
    place = _with_target(stream, start, which, number or ONE, middle=middle)
    if place is None:
        if which is Which.ANY:
            return None
        place = Place(stream.span_from(start), which, (ANY,), number or ONE)
    if which is Which.SAME:
        same_as(stream)
        place = replace(place, span=stream.span_from(start))
    if stream.kind() == "or" and stream.kind(1) in ("next", "space", "chain", "number", "any_stitch"):
        return place
    return place


def _ordinal(stream: Stream, start: int) -> Place | None:
    ordinals = [stream.take().number]
    while True:
        before = stream.at
        stream.skip(",", "and")
        if stream.at > before and stream.kind() == "ordinal":
            ordinals.append(stream.take().number)
            continue
        stream.at = before
        break
    found = Target(TargetKind.CHAIN) if stream.kind() == "of" else target(stream)
    if found is None:
        return None
    if stream.kind() == "from":
        stream.take()
        stream.skip("the")
        if not stream.take_if("hook"):
            return None
        return Place(
            stream.span_from(start), Which.FROM_HOOK, (found,), Amount.of(len(ordinals)), ordinals=tuple(ordinals)
        )
    stream.skip("made")
    if stream.kind() == "of":
        stream.take()
        stream.skip("the")
        word = stream.take_if("next", "same", "last", "first", "each", "beginning")
        among = how_many(stream)
        owner = target(stream)
        if owner is None:
            return None
        if (
            among is not None
            and stream.kind() in ("at", "in")
            and stream.kind(1) == "each"
            and stream.kind(2) == "corner"
        ):
            if among.lone != 2 * ordinals[0] - 1:
                return None  # not the middle one
            stream.at += 3  # "2nd of 3 sc at each corner"
            corner = Target(TargetKind.CORNER)
            return Place(stream.span_from(start), Which.EACH, (owner,), of=corner, middle=True)
        if among is not None and word is not None and word.kind == "next":  # "2nd of next 3 sc"
            return Place(stream.span_from(start), Which.NTH, (owner,), among, ordinals=tuple(ordinals))
        if found.kind is TargetKind.CHAIN or owner.kind in (TargetKind.CHAIN, TargetKind.TURNING_CHAIN):
            return Place(
                stream.span_from(start),
                Which.NEXT,
                (Target(TargetKind.TURNING_CHAIN, length=owner.length),),
                ordinals=tuple(ordinals),
                from_words=word.kind if word else "",
            )
        which = {"same": Which.SAME, "last": Which.LAST, "each": Which.EACH}.get(word.kind if word else "", Which.NTH)
        return Place(
            stream.span_from(start),
            Which.NTH if which is not Which.EACH else which,
            (found,),
            ordinals=tuple(ordinals),
            of=owner,
        )
    return Place(stream.span_from(start), Which.NTH, (found,), ordinals=tuple(ordinals))


def _chain_top(stream: Stream, start: int) -> Place | None:
    """ "top of beg ch-3", "base of ch 3"."""
    word = stream.take().kind
    stream.skip("of", "the", "each", "next", "last", "same", "first", "in")
    chain_words = stream.take_if("beginning")
    found = target(stream)
    if found is None:
        if not chain_words:
            return None
        found = Target(TargetKind.CHAIN)
    if word == "base":
        return Place(stream.span_from(start), Which.SAME, (Target(TargetKind.PLACE),))
    if found.kind is TargetKind.CHAIN:
        found = Target(TargetKind.TURNING_CHAIN, length=found.length)
    return Place(stream.span_from(start), Which.NEXT, (found,), from_words="top")


def _with_target(stream: Stream, start: int, which: Which, number: Amount = ONE, middle: bool = False) -> Place | None:
    found = target(stream)
    if found is None:
        return None
    if found.kind is TargetKind.ROW_END:
        which = Which.ELSEWHERE
    if found.kind is TargetKind.PLACE and found.name == "edge":
        which = Which.ELSEWHERE
    targets = [found]
    of, word = part_of(stream)
    if word == "each":
        return Place(stream.span_from(start), Which.EACH, tuple(targets), number, limit(stream), of=of, middle=middle)
    if word == "elsewhere":
        which = Which.ANY if which is Which.ANY else Which.ELSEWHERE
    if stream.word("that", "which") and stream.kind() in ("same", "word"):
        stream.pass_to()  # "in the ch that holds the first sc"
    if stream.kind() == "made":
        stream.take()
        which = Which.JUST_MADE if which is not Which.SAME else which
    elif stream.kind() == "word" and stream.word("formed", "made") and stream.kind(1) in ("by", "from"):
        stream.pass_to()
        which = Which.FIRST
    if stream.kind() == "by":
        stream.pass_to()
        which = Which.FIRST
    reach = None
    return Place(stream.span_from(start), which, tuple(targets), number, reach, of=of, middle=middle)


def limit(stream: Stream) -> Limit | None:
    """How far a run goes; None and nothing taken if it is not said."""
    start = stream.at
    if stream.word("even") and stream.kind(1) in ("across", "around"):
        stream.take()
    gone = bool(stream.take_if("across", "around"))
    if not gone and stream.kind() == "round" and stream.word("round") and stream.kind(1) in _AFTER_ROUND:
        gone = bool(stream.take())  # "1 tr in each tr round"
    if gone:
        while stream.kind() in ("the", "row", "round", "of") or stream.word("entire", "whole"):
            stream.take()
    if stream.kind() == "ending" and stream.kind(-1) in ("to",):
        stream.take()
        return Limit(LimitKind.END)
    if stream.kind() in ("to", "within"):
        within = stream.take().kind == "within"
        stream.skip("the", "of")
        if stream.kind() in ("ending", "row_end"):
            stream.take()
            while stream.kind() in ("of", "the", "row", "round", "side") or (
                stream.kind() == "chain" and stream.kind(-1) == "of"
            ):
                stream.take()
            return Limit(LimitKind.END)
        if stream.kind() in ("ordinal", "top"):  # "to 3rd ch of turning ch-4"
            named = _item(stream)
            if named is not None and named.targets[0].kind is TargetKind.TURNING_CHAIN:
                return Limit(LimitKind.BEFORE, target=named.targets[0])
            stream.at = start
            return None
        word = stream.take_if("last", "next", "first")
        stream.skip("each", "the")
        if stream.kind() == "middle":
            stream.take()
            target(stream)
            owner, _ = part_of(stream)
            return Limit(LimitKind.BEFORE, target=owner or Target(TargetKind.CORNER), middle=True)
        number = how_many(stream)
        found = target(stream)
        if number is not None and (stream.kind() == "remaining" or stream.word("remain", "remains", "left")):
            stream.take()  # "until 1 ch remains"
            return Limit(LimitKind.LAST, number, found or ANY)
        if within and stream.kind() == "of":
            stream.pass_to()
        if word and word.kind == "last" or within:
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
