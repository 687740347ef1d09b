"""Reads how often a clause is worked, where that stands behind it: "dec (3 times)", "sc in ring 8 times"."""

from __future__ import annotations

from lint.amount import Amount
from lint.place import Place, TargetKind, Which
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream


def several_may_be_meant(found: tuple[Place, ...]) -> bool:
    """Whether "n times" behind a place may be of as many places: "sc in next 2 sts 3 times", not "sc in ring 8 times"."""
    if any(place.between for place in found):
        return True  # "V-st between next 2 V-sts 4 times"
    onward = any(place.which in (Which.NEXT, Which.EACH) for place in found)
    return onward and any(target.kind in (TargetKind.ANY_STITCH, TargetKind.STITCH) for target in found[-1].targets)


def times_in_brackets(stream: Stream) -> Amount | None:
    """ "dec (3 times)", "hdc2tog (twice)"."""
    start = stream.at
    if stream.take_if("("):
        word = stream.peek()
        if word.lower in ("once", "twice", "thrice"):
            stream.take()
            number: Amount | None = Amount.of(word.number)
        else:
            number = stream.amount()
            if not stream.take_if("times"):
                number = None
        if number is not None and stream.take_if(")"):
            return number
    stream.at = start
    return None


def so_many_from_hook(stream: Stream, found: tuple[Place, ...]) -> tuple[Place, ...]:
    """The places with the "11 sts" of "hdc into 2nd ch from hook 11 sts": that chain, and the ten behind it."""
    ends = stream.kind(2) in (*SIGNS, *OPENERS, *CLOSERS, "turn", "end")
    if stream.kind() != "number" or stream.kind(1) != "any_stitch" or not ends or len(found) != 1:
        return found
    number = stream.peek().number
    if found[0].which is not Which.FROM_HOOK or stream.peek().amount is not None or number < 2:
        return found
    stream.at += 2
    return (*found, Place(found[0].span, Which.NEXT, found[0].targets, Amount.of(number - 1), each_of=True))
