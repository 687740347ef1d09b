"""Reads runs of places that are counted from the hook: "sc from 2nd ch across", "hdc into 2nd ch from hook 11 sts"."""

from __future__ import annotations

from lint.amount import Amount
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.reading.places.limits import limit
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Group, Repeat, Skip, Step, Work


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


def from_nth_chain(stream: Stream, start: int, number: int | None) -> tuple[Place, ...]:
    """ "sc from 2nd ch (across)": in that chain from the hook, and in each one after it; "3 sc from 2nd ch": in three."""
    the = 2 if stream.kind(1) == "the" else 1
    if not (stream.kind() == "from" and stream.kind(the) == "ordinal" and stream.kind(the + 1) == "chain"):
        return ()
    before = stream.at
    stream.at += the
    ordinal = stream.take().number
    stream.take()
    if stream.kind() == "from":
        stream.at += 2 if stream.kind(1) == "hook" else 1
    told = limit(stream)
    reach = told or Limit(LimitKind.END)
    if told and number or stream.kind() not in (",", ";", ".", "end", "(", "[", "turn", "dash", "=", "→"):
        stream.at = before
        return ()
    span, chain = stream.span_from(start), (Target(TargetKind.CHAIN),)
    first = Place(span, Which.FROM_HOOK, chain, ordinals=(ordinal,))
    if number is not None:
        return (first, Place(span, Which.NEXT, chain, Amount.of(number - 1), each_of=True)) if number > 1 else (first,)
    return first, Place(span, Which.EACH, chain, limit=reach)


def starts_in_chain(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "2nd ch from hook: 3 sc, inc": the chain that a row's first stitch goes into, in front of a colon."""
    works = any(isinstance(step, (Work, Group, Repeat)) for step in steps)
    kinds = [item.kind for item in stream.lexemes[start : start + 5]]
    if works or kinds != ["ordinal", "chain", "from", "hook", ":"]:
        return False
    ordinal = stream.peek().number
    stream.at = start + 5
    span = stream.span_from(start)
    steps.append(Skip(span, (Place(span, Which.FROM_HOOK, (Target(TargetKind.CHAIN),), ordinals=(ordinal,)),)))
    return True
