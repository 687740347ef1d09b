"""Reads so many ends of rows by their rows: "the end of each of the next 18 rows", "ends of next 4 rows", "side of next row"."""

from __future__ import annotations

from lint.amount import ONE
from lint.lexicon import Lexeme
from lint.place import Place, Target, TargetKind, Which
from lint.reading.places.targets import how_many
from lint.reading.words.stream import Stream
from lint.tree import Work

_SIDE = ("side", "sides", "edge", "ends")
_GOES_ON = ("of", "below", "number", "ordinal", "dash")  # "of next row 4": what is meant is told otherwise


def ends_of_next_rows(stream: Stream) -> Place | None:
    """Takes "(the) end(s) of (each of) next 18 rows" at the cursor."""
    start = stream.at
    stream.skip("the")
    if stream.take_if("ending") is None and not (stream.word(*_SIDE) and stream.take()):
        stream.at = start
        return None
    of = stream.take_if("of") is not None
    stream.skip("the", "each", "of")
    pointed = of and stream.take_if("next", "first") is not None
    number = how_many(stream) if of else None
    told = pointed or number is not None
    if not told or stream.take_if("row") is None or stream.kind() in _GOES_ON:
        stream.at = start
        return None
    number = number or ONE
    ends = Target(TargetKind.ROW_END, "each" if number != ONE else None)
    return Place(stream.span_from(start), Which.ELSEWHERE, (ends,), number, each_of=number != ONE)


_MOST_IN_ONE = 3  # stitches that go into one row end
_FEWEST_IN_ALL = 7  # "24 sc in row ends" tells how many there are in all; "5 dc in row ends" may be shells


def in_row_ends(step: Work, words: list[Lexeme]) -> str:
    """What "24 sc in row ends" tells: "in all" along the edge, "each" into every one, or "" where it may be either."""
    place = step.places[0] if len(step.places) == 1 else None
    plain = step.number_said and step.together is None and step.special is None and step.stitch not in ("inc", "dec")
    if place is None or not plain or place.targets[0].kind is not TargetKind.ROW_END or place.which is not Which.EACH:
        return "each"
    if any("each" in item.lower or "every" in item.lower for item in words):
        return "each"
    figures = [number or 0 for number in step.number.values]
    return "in all" if min(figures) >= _FEWEST_IN_ALL else "each" if max(figures) <= _MOST_IN_ONE else ""
