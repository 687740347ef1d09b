"""Reads that spaces are worked like stitches: "Work into a ch-1 sp as if it were a st", "treating each ch-1 sp as a st"."""

from __future__ import annotations

from dataclasses import replace

from lint.place import Place, TargetKind, Which
from lint.reading.places.targets import target
from lint.reading.words.stream import SIGNS, Stream
from lint.tree import Remark, Repeat, Skip, Step, Work, walk

_LIKE = ("if", "though", "it", "they", "was", "were", "is", "are", "another", "other", "any", "ordinary", "normal")


def spaces_as_stitches(stream: Stream, steps: list[Step], start: int) -> bool:
    """Adds the spaces to the places of the run before, "sc in each st around", where a clause says that they are places too."""
    told = stream.take_if("make") or stream.word("treat", "treating", "working", "work") and stream.take()
    within = not told and stream.word("including", "incl") and stream.take()
    stream.skip("in", "over")
    stream.skip("the", "each", "all", "every", "any")
    space = target(stream) if told or within else None
    named = space is not None and space.kind is TargetKind.SPACE and not space.corner
    if not named or not (within or _as_a_stitch(stream)) or stream.kind() not in (*SIGNS, "end", "join", "turn"):
        stream.at = start
        return False
    last = steps[-1] if steps else None
    run = last.places[0] if isinstance(last, Work) and len(last.places) == 1 else None
    if run is None or not _each_stitch(run) or any(isinstance(one, (Skip, Repeat)) for one in walk(tuple(steps))):
        stream.at = start
        return False  # "*sk next st, dc in next st; rep around": which of them are spaces then, the words do not say
    steps[-1] = replace(last, places=(replace(run, targets=(*run.targets, space)),))
    steps.append(Remark(stream.span_from(start)))
    return True


def _each_stitch(place: Place) -> bool:
    plain = place.of is None and place.every == 1 and not place.below and not place.between
    return plain and place.which is Which.EACH and [one.kind for one in place.targets] == [TargetKind.ANY_STITCH]


def _as_a_stitch(stream: Stream) -> bool:
    """Takes "as if it were a st", "as a stitch", "like any other st"."""
    likened = stream.take_if("as") or stream.word("like") and stream.take()
    while stream.kind() == "the" or stream.word(*_LIKE) or stream.kind() in ("any", "other"):
        stream.take()
    return bool(likened) and bool(stream.take_if("any_stitch"))
