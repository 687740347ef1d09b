"""Reads that a space is among those of the run before: "sc in next sp; rep from * across, center sp included"."""

from __future__ import annotations

from lint.place import Target, TargetKind
from lint.reading.places.targets import target
from lint.reading.words.stream import SIGNS, Stream
from lint.tree import Remark, Step, Work, walk

_TOLD = ("including", "incl", "counting")
_BEHIND = ("included", "too", "as well", "also")


def space_included(stream: Stream, steps: list[Step], start: int) -> bool:
    """Passes over the words where the run before goes into spaces of every length, so that it has that one in any case."""
    told = stream.word(*_TOLD) and stream.take()
    stream.skip("the", "each", "all")
    at = stream.at
    marked = stream.take_if("middle", "corner")
    space = target(stream) if marked else None
    behind = stream.word(*_BEHIND) and stream.take()
    ended = stream.kind() in (*SIGNS, "end", "join", "turn")
    if stream.at == at or not (told or behind) or not ended or space is None or space.kind is not TargetKind.SPACE:
        stream.at = start
        return False
    run = next((step for step in reversed(list(walk(tuple(steps)))) if isinstance(step, Work) and step.places), None)
    if run is None or not all(one == Target(TargetKind.SPACE) for place in run.places for one in place.targets):
        stream.at = start
        return False  # "sc in each ch-1 sp, center sp included": which has two chains, and is one more
    steps.append(Remark(stream.span_from(start)))
    return True


__all__ = ["space_included"]
