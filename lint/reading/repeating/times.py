"""Reads how often: "4 times", "twice more", "x 6", "another 2 times", "around", "to last 2 sts"."""

from __future__ import annotations

from dataclasses import replace

from lint.place import Limit, LimitKind
from lint.reading.places.limits import limit
from lint.reading.places.targets import target
from lint.reading.repeating.sidetimes import by_sides
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Times, TimesKind


def times(stream: Stream, after_bracket: bool = False) -> Times | None:
    """How often, at the cursor: "4 times", "twice more", "x 6", "another 2 times", "around", "to last 2 sts"."""
    start = stream.at
    if after_bracket and (led := _led(stream)) is not None:
        return led
    if after_bracket and stream.kind() in OPENERS and (close := stream.matching(start)) is not None:
        inner = stream.inside(start + 1, close)  # "(inc) (6 times)", "(sc, inc) (x6)"
        found = times(inner, after_bracket=True)
        if found is not None and inner.done and found.number is not None:
            stream.at = close + 1
            return replace(found, span=stream.span_from(start))
    if after_bracket and stream.kind() == "repeat":
        after_bracket = stream.kind(-1) != "star"  # "*ch 5, sc in next st* rep 6 times": in all, or six more
        stream.take()
        stream.take() if stream.word("this", "these") else stream.skip(
            "all", "the"
        )  # "[sc 5, inc] repeat this 4 times"
        if (bare := _bare_number(stream, start)) is not None:
            return bare if after_bracket else replace(bare, kind=TimesKind.UNCLEAR)  # "*sc, inc* repeat 6"
    if (sides := by_sides(stream)) is not None:
        return sides
    total = bool(stream.take_if("total")) or (
        stream.word("for") and stream.kind(1) == "total" and bool(stream.take()) and bool(stream.take())
    )
    if stream.kind() == "the" and stream.kind(1) == "more":
        stream.take()  # "a further 3 times"
    another = bool(stream.take_if("another", "more"))
    if stream.word("x", "×", "*") and stream.kind(1) in ("number", "(", "["):
        stream.take()
        number = stream.amount()
        if number is not None:
            stream.take_if("times")
            if after_bracket and stream.kind() in ("around", "across") and stream.kind(1) in (*SIGNS, "end"):
                stream.take()  # "(2 sc, dec) x6 around"
            return Times(stream.span_from(start), TimesKind.IN_ALL, number)
    once = stream.peek()
    if once.kind == "number" and once.lower in ("once", "twice", "thrice"):
        stream.take()
        more = another or bool(stream.take_if("more"))
        more = more or once.lower == "once" and not (after_bracket or total)  # "rep from * once": it is no repeat else
        several = after_bracket and once.lower != "once"  # "once around" may be all the way
        if several and stream.kind() in ("around", "across") and stream.kind(1) in (*SIGNS, "end"):
            stream.take()  # "(4 sc, dec) twice around"
        kind = TimesKind.MORE if more else (TimesKind.IN_ALL if after_bracket or total else TimesKind.UNCLEAR)
        return Times(stream.span_from(start), kind, once.quantity)
    number = stream.amount()
    if number is not None:
        more = another or bool(stream.take_if("more"))
        more = more or once.lower.startswith("once ") and not (after_bracket or total)  # "once (twice, 3 times)"
        if stream.kind() == "times" or stream.word("x", "×", "xs"):
            glued_x = stream.take()
            del glued_x
            more = more or bool(stream.take_if("more", "another"))
            stream.skip("more")
            said = stream.kind() == "total" or stream.word("total", "altogether")
            in_all = said and bool(stream.take()) or total
            if stream.kind() in ("around", "across"):
                stream.take()
            kind = TimesKind.MORE if more else (TimesKind.IN_ALL if after_bracket or in_all else TimesKind.UNCLEAR)
            if more and after_bracket:
                kind = (
                    TimesKind.UNCLEAR
                )  # "ch 3, dc in ring, (2 dc in ring) 5 times more": what was before is the first
            return Times(stream.span_from(start), kind, number)
        glued = after_bracket and not another and stream.at == start + 1 and stream.peek(-1).glued
        if glued and stream.kind(-2) in CLOSERS and stream.kind() in (*OPENERS, ".", ",", ";", "end", "dash", "="):
            return Times(stream.span_from(start), TimesKind.IN_ALL, number)  # "[sc1, inc1]6"
        stream.at = start
        return None
    reach = (None if after_bracket else _until_all_are_worked(stream)) or limit(stream)
    if reach is not None:
        return Times(stream.span_from(start), TimesKind.FILL, limit=reach)
    stream.at = start
    if after_bracket and start and stream.kind(-1) == "repeat":
        stream.at = start
    return None


def _led(stream: Stream) -> Times | None:
    """Takes "- 6 times", "for 6 times", "do this twice", "throughout" behind a bracket, with the words that lead to it."""
    start = stream.at
    if stream.word("throughout") and stream.kind(1) in (*SIGNS, "end"):
        stream.take()
        return Times(stream.span_from(start), TimesKind.FILL, limit=Limit(LimitKind.END))
    stream.take_if(",", ".", ";") if stream.word("do", "work", ahead=1) else None
    if stream.word("do", "work") and stream.word("this", "these", "that", ahead=1):
        stream.at += 2
    elif stream.kind() == "dash" and not stream.peek(1).glued or stream.word("for"):
        stream.take()
    if stream.at == start or not counts_passes(stream):
        stream.at = start
        return None
    found = times(stream, after_bracket=True)
    if found is None or found.number is None:
        stream.at = start
        return None
    return replace(found, span=stream.span_from(start))


def _bare_number(stream: Stream, start: int) -> Times | None:
    """ "[sc, inc] repeat 6", "[sc, inc] repeat (6) (18)": a number in brackets is one of passes where the count stands behind."""
    bracketed = stream.kind() in OPENERS
    number = stream.peek(1 if bracketed else 0)
    behind = 2 if bracketed else 1
    if bracketed and (stream.word("x", "×", ahead=2) or stream.kind(2) == "times"):
        behind += 1
    if number.kind != "number":
        return None
    close = stream.kind(behind) in CLOSERS
    after = behind + (1 if bracketed else 0)
    counted = stream.kind(after) in OPENERS or stream.kind(after) == "." and stream.kind(after + 1) in OPENERS
    if bracketed and not (close and (counted or behind == 3)):
        return None
    if not bracketed and stream.kind(after) not in (".", ",", ";", "end", *OPENERS):
        return None
    stream.at += after
    return Times(stream.span_from(start), TimesKind.IN_ALL, number.quantity)


def bare_passes(stream: Stream) -> Times | None:
    """ "*sc, inc; rep from * 6", "…; repeat 5 more": a figure and no word of times, where a starred passage is repeated."""
    start = stream.at
    number = stream.amount()
    if number is not None and stream.take_if("more") and stream.kind() in (*SIGNS, "end", "dash", "=", *OPENERS):
        return Times(stream.span_from(start), TimesKind.MORE, number)
    stream.at = start
    bare = _bare_number(stream, start)
    return None if bare is None else replace(bare, kind=TimesKind.UNCLEAR)


def said_in_all(stream: Stream, often: Times | None) -> bool:
    """Whether "a total of 4 times", "4 times in all" stands there, and not a number of times alone."""
    if often is None or often.kind is not TimesKind.IN_ALL:
        return False
    said = [item for item in stream.lexemes if often.span.start <= item.start < often.span.end]
    return any(item.kind == "total" or item.lower in ("total", "altogether") for item in said)


def counts_passes(stream: Stream) -> bool:
    """Whether "6 times", "x 6", "twice", "a total of 6 times" stands at the cursor: a number alone is none of passes."""
    ahead = 3 if stream.word("a") and stream.kind(1) == "total" else 0
    if stream.word("x", "×", ahead=ahead):
        return stream.kind(ahead + 1) == "number"
    figure = stream.kind(ahead) == "number"
    said = stream.word("once", "twice", "thrice", ahead=ahead) or stream.kind(ahead + 1) == "times"
    return figure and (said or stream.word("x", "×", "xs", ahead=ahead + 1))


def _until_all_are_worked(stream: Stream) -> Limit | None:
    """Takes "until all loops are worked", "until the chain is used up", "in each loop around"."""
    start = stream.at
    named = stream.kind(1) == "all" or stream.kind(1) == "the" and stream.kind(2) in ("chain", "foundation")
    if stream.word("until", "till") and named:
        end = stream.next_of(*SIGNS)
        end_up = stream.lexemes[end - 1].lower == "up"
        if stream.lexemes[end - 1 - end_up].lower in ("worked", "used", "filled", "done", "completed"):
            stream.at = end
            return Limit(LimitKind.END)
    if stream.kind() == "in" and stream.kind(1) == "each" and target(stream.inside(start + 2, len(stream.lexemes))):
        stream.at += 2
        target(stream)
        stream.take_if("around", "across")
        if stream.kind() in (*SIGNS, "end"):
            return Limit(LimitKind.END)
    stream.at = start
    return None
