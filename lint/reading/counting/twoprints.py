"""Two counts of one row, one behind the other: "8 bls. (25 dc)", "…; rep from * to end: 8 sps. (9 dc)"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lint.pattern import Stated
from lint.reading.words.rowending import ends_work
from lint.reading.words.stream import OPENERS, Stream
from lint.source import Span
from lint.tree import Step


def bracket_behind(stream: Stream, at: int) -> tuple[int, int] | None:
    """The first and last sign of the brackets behind a full stop, where nothing is worked after them."""
    start = at + 1
    if [item.kind for item in stream.lexemes[at:start]] != ["."] or start >= len(stream.lexemes):
        return None
    close = stream.matching(start) if stream.lexemes[start].kind in OPENERS else None
    return (start, close) if close is not None and ends_work(stream, close + 1) else None


def of_squares(stream: Stream, found: Stated) -> bool:
    """Whether a count is of filet squares alone: of stitches of the pattern's own that tell where they go."""
    named = [stream.vocabulary.specials.get(item.unit.removeprefix("special:")) for item in found.items]
    return bool(named) and all(one is not None and one.places_itself for one in named)


def both(stream: Stream, steps: Sequence[Step], first: Stated | None, second: Stated) -> Stated:
    """The count of a row that had one before: both, where one is of filet squares and no work stands between them.

    A figure without a unit does not take the place of one with it. Figures of several rows or of a side are let be.
    """
    if first is None:
        return second
    bare = all(item.unit == "stitches" and not item.words for item in second.items)
    worked = bool(steps) and steps[-1].span.start > first.span.start
    units = {item.unit for item in second.items}
    parted = any(item.series or item.unit.startswith("per side") for item in (*first.items, *second.items))
    squares = of_squares(stream, first) != of_squares(stream, second)
    if worked or parted or not squares or first.per_side or second.per_side:
        return first if bare else second
    items = (*(item for item in first.items if item.unit not in units), *second.items)
    return replace(second, span=Span(first.span.start, second.span.end), items=items, perhaps=first.perhaps)
