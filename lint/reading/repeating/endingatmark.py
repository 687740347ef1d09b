"""Reads where the last pass of a repeat stops: ", ending last rep at **", "(stopping at ** on the last rep)"."""

from __future__ import annotations

from dataclasses import replace

from lint.reading.repeating.marks import Folded, is_mark
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import Step

_STOPS = ("stop", "stopping")
_TOLD_LAST = ("on", "for", "time", "pass", "final")


def ending_at_mark(stream: Stream, steps: list[Step]) -> bool:
    """ ", ending last rep at **": the last pass of the repeat before stops there."""
    start = stream.at
    stream.skip(",", ";", "and")
    stream.take() if stream.word("but") else None
    bracket = stream.take_if(*OPENERS) is not None
    if stream.kind() not in ("ending", "repeat") and not stream.word(*_STOPS):
        stream.at = start
        return False
    while stream.kind() in ("ending", "last", "repeat", "the") or stream.word("on", "last", *_STOPS):
        stream.take()
    if not stream.take_if("at", "in") or not is_mark(stream):
        stream.at = start
        return False
    stream.take()
    _pass_told_last(stream)
    if bracket and not stream.take_if(*CLOSERS):
        stream.at = start
        return False
    if stream.kind() == "with" and "remaining" in {item.kind for item in stream.lexemes[stream.at : stream.at + 9]}:
        stream.pass_to()  # "with one stitch and turning chain remaining"
    for index in range(len(steps) - 1, -1, -1):
        step = steps[index]
        if isinstance(step, Folded):
            if step.stop_sign is None:
                break
            span = step.span.to(stream.span_from(start))
            steps[index] = replace(step, span=span, last_pass=step.items[: step.stop_sign])
            return True
    stream.at = start
    return False


def _pass_told_last(stream: Stream) -> None:
    """Passes "on the last rep", "the last time" behind the mark."""
    start = stream.at
    while stream.kind() in ("last", "repeat", "the", "in", "times", "round") or stream.word(*_TOLD_LAST):
        stream.take()
    if stream.kind(-1) not in ("repeat", "times") and not stream.word("time", "pass", ahead=-1):
        stream.at = start
