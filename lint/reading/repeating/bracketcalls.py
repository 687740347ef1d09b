"""Reads how often rows are worked again that a bracket holds together: "[Rep Rows 2-5] twice", "[Rep Rows 2-3, then Row 5] 3 times"."""

from __future__ import annotations

from dataclasses import replace

from lint.reading.repeating.times import times
from lint.reading.words.stream import Stream
from lint.tree import RowCall, Step

_MOST_PASSES = 100


def rows_again(stream: Stream, items: list[Step], start: int) -> list[Step]:
    """The calls of a bracket that ends at the cursor, each as often as the words behind it say; none where they do not.

    Several calls are worked one after the other and then from the first again, so each pass has all of them.
    """
    calls = [item for item in items if isinstance(item, RowCall)]
    if not calls or len(calls) < len(items) or any(call.times is not None for call in calls):
        return []
    if len(calls) > 1 and not all(map(_plain, calls)):
        return []
    often = times(stream, after_bracket=True)
    if often is None:
        return []
    if len(calls) == 1:
        return [replace(calls[0], times=often, span=stream.span_from(start))]
    passes = often.number.lone if often.number is not None else None
    return calls * min(passes, _MOST_PASSES) if passes else []


def _plain(call: RowCall) -> bool:
    """Whether a call only names rows by their numbers, and nothing of it is to differ."""
    return call.first is not None and call == RowCall(call.span, call.first, call.last, kind=call.kind)


__all__ = ["rows_again"]
