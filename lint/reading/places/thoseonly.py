"""Reads "working over the first 6 sts only, ch 1, sc in each st across": the row's words are for these stitches alone."""

from __future__ import annotations

from lint.reading.words.stream import Stream
from lint.tree import MAKES_STITCHES, Confined, Step

_LEADS = ("in", "over", "across")  # "on" is one of the first
_VERBS = ("continue", "continuing", "cont")
_FEW = ("only", "just", "alone")
_SETS_OUT = ("chain", "turn", "star", "(", "[")  # work that has its places behind it


def those_only(stream: Stream, steps: list[Step], start: int) -> bool:
    """Reads such a clause at the cursor; takes nothing where there is none, or where its stitches are a place to work into."""
    stream.at = start
    verb = stream.take_if("make") is not None or stream.word(*_VERBS) and stream.take() is not None
    few = _few(stream)
    if stream.take_if(*_LEADS) is None or any(isinstance(step, MAKES_STITCHES) for step in steps):
        stream.at = start
        return False
    few = _few(stream) or few
    stream.skip("the")
    these = stream.kind() == "same" and stream.word("these", "those") and stream.take() is not None
    first = stream.take_if("first", "next") is not None
    number = stream.amount() if first or these else None
    if number is None or stream.take_if("any_stitch") is None:
        stream.at = start
        return False
    few = _few(stream) or few
    if stream.kind() not in (",", ":", ";", ".", "end") or not (these or _work_of_its_own(stream, verb or few)):
        stream.at = start
        return False
    steps.append(Confined(stream.span_from(start), number, first))
    return True


def _few(stream: Stream) -> bool:
    return bool(stream.word(*_FEW)) and stream.take() is not None


def _work_of_its_own(stream: Stream, told: bool) -> bool:
    """Whether the words behind say themselves where they go: "On next 3 sts, ch 1, sc in each"; a stitch alone goes here."""
    if stream.kind(1) in _SETS_OUT:
        return True
    clause = stream.lexemes[stream.at + 1 : stream.next_of(",", ";", ".", start=stream.at + 1)]
    kinds = {item.kind for item in clause}
    return bool(kinds & {"each", "across", "around"}) or told and "in" in kinds


__all__ = ["those_only"]
