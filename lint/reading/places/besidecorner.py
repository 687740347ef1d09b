"""Reads where a round is begun beside a corner: "join in first st after any corner sp", "in sc after a ch-2 sp"."""

from __future__ import annotations

from lint.amount import ONE
from lint.place import Place, TargetKind, Which
from lint.reading.places.targets import target
from lint.reading.words.stream import Stream

_STITCHES = (TargetKind.ANY_STITCH, TargetKind.STITCH)


def after_corner(stream: Stream, found: tuple[Place, ...]) -> tuple[Place, ...]:
    """The place of a join as the one behind a corner or space that is told with it; as it was where none is."""
    one = found[0] if len(found) == 1 else None
    stitch = one is not None and one.targets[0].kind in _STITCHES and one.number == ONE and one.of is None
    if not stitch or one.which not in (Which.NEXT, Which.FIRST, Which.ANY) or not stream.word("after", "following"):
        return found
    start = stream.at
    stream.take()
    stream.skip("the", "any", "each")
    stream.take() if stream.word("a", "an") else None
    beside = target(stream)
    if beside is None or beside.kind not in (TargetKind.CORNER, TargetKind.SPACE):
        stream.at = start
        return found
    span = one.span.to(stream.span_from(start))
    return (Place(span, Which.ANY, (beside,), from_words="after"),)
