"""Reads broomstick lace: loops laid on a needle, and so many of them worked into together."""

from __future__ import annotations

from itertools import pairwise

from lint.amount import ONE, Amount
from lint.place import Place, Target, TargetKind, Which
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Remark, Skip, Step, Work

_NEEDLES = ("needle", "needles", "broomstick", "dowel", "broom")
_LOOPS = ("loop", "loops", "lp", "lps")
_OPENS = ("insert", "slip", "slide", "treating", "holding", "hold", "remove", "lift", "take", "lay", "place", "put")
_OPENS += (
    "placing",
    "putting",
    "slipping",
    "transferring",
    "transfer",
    "lengthen",
    "extend",
    "draw",
    "pull",
    "leave",
    "keep",
    "keeping",
    "leaving",
)
# what may stand between "insert hook" and the stitches that are worked into the loops
_ON_THE_WAY = frozenset(
    "insert hook the your through thru under from right to left first next and then slip slide them these loops lps off of on onto "
    "needle broomstick dowel together as one group keeping holding hold treating draw pull yarn up a loop lp remove lift take , yo yoh yrh "
    "work make all at once twist twisted in same direction place into with it".split()
)
_INTO = frozenset(
    "in into through the center centre middle of this these same group loops lps all both space sp place it".split()
)
_PLACED = ("each", "any_stitch", "stitch", "chain", "next", "number", "skip", "star")
_MOST_WORDS = 45


def on_a_needle(stream: Stream) -> bool:
    """Whether the words lay loops on a needle."""
    return any(item.lower in _NEEDLES for item in stream.lexemes)


def needle_words(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Slip loop from hook on to needle", "place on needle": what becomes of a loop that is drawn up elsewhere."""
    stream.at = start
    end = stream.next_of(",", ";", ".", ":", *OPENERS, *CLOSERS, start=start)
    words = stream.lexemes[start:end]
    if not words or not any(item.lower in _NEEDLES for item in words):
        return False
    lowers = " ".join(item.lower for item in words).split()
    onto = lowers[-1] in _NEEDLES and {"on", "onto"} & set(lowers)
    taken = [item for item, then in pairwise([*words, words[-1]]) if item.kind != "each" or then.lower not in _LOOPS]
    drawn = any(item.kind in _PLACED for item in taken)
    opens = lowers[0] in _OPENS or lowers[0] in ("onto", "on")
    if not onto or drawn or not opens:
        return False
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


def loops_together(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Insert hook through next 5 loops and slip them off together, 5 sc in group": five loops used, five stitches made."""
    end = min(start + _MOST_WORDS, len(stream.lexemes))
    at = next((i for i in range(start + 1, end) if stream.lexemes[i].kind == "stitch"), None)
    if at is None or stream.lexemes[at - 1].kind != "number":
        return False
    stream.at = start
    loops, together = None, False
    while stream.at < at - 1:
        item = stream.take()
        if item.kind == "number" and stream.word(*_LOOPS):
            if loops is not None and item.quantity != loops:
                return _not_so(stream, start)
            loops = item.quantity
        elif item.kind == "chain" and stream.kind() == "number" or item.kind == "number" and stream.kind() == "chain":
            number = stream.take().quantity if item.kind == "chain" else item.quantity
            stream.take() if item.kind == "number" else None
            if number != ONE:
                return _not_so(stream, start)  # does it count as one of the stitches?
        elif item.kind in OPENERS:
            close = stream.matching(stream.at - 1)
            if close is None or stream.kind() not in ("counts_not",) or close >= at:
                return _not_so(stream, start)
            stream.at = close + 1
        elif not set(item.lower.split()) <= _ON_THE_WAY and not (item.number == 1 and stream.kind(-2) == "as"):
            return _not_so(stream, start)
        by_needle = item.lower in ("off", "through", "thru") and on_a_needle(stream)
        together = together or by_needle or item.lower == "together" or item.number == 1
    number, stitch = stream.amount(), stream.take_if("stitch")
    led = stream.at
    while not stream.done and (set(stream.peek().lower.split()) <= _INTO or stream.peek().quantity == loops):
        stream.take()
    into = [item.lower for item in stream.lexemes[led : stream.at]]
    named = any(word in (*_LOOPS, "group", "space", "sp", "place", "it") for word in into)
    ends = stream.kind() in (*SIGNS, "end", "and", "turn", "repeat", *CLOSERS, *OPENERS)
    several = loops is not None and loops.lone is not None and loops.lone > 1
    if not (several and together and number is not None and stitch is not None and ends and (named or not into)):
        return _not_so(stream, start)
    span = stream.span_from(start)
    any_stitch = (Target(TargetKind.ANY_STITCH),)
    steps.append(Skip(span, (Place(span, Which.NEXT, any_stitch, Amount.of(loops.lone - 1)),)))
    steps.append(Work(span, stitch.value, number, (Place(span, Which.NEXT, any_stitch),), number_said=True))
    return True


def _not_so(stream: Stream, start: int) -> bool:
    """Puts the stream back: nothing was read."""
    stream.at = start
    return False


def may_tell_loops(stream: Stream) -> bool:
    """Whether a clause may begin here that tells of loops on a needle, or of several worked into together."""
    if stream.peek().lower.split()[:1] and stream.peek().lower.split()[0] not in _OPENS:
        return False
    ahead = range(1, 14)
    return any(stream.peek(i).lower in _LOOPS or stream.peek(i).lower in _NEEDLES for i in ahead)
