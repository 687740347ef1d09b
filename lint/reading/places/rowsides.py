"""Reads so many ends of rows by their rows: "the end of each of the next 18 rows", "ends of next 4 rows", "side of next row"."""

from __future__ import annotations

from lint.amount import ONE
from lint.place import Place, Target, TargetKind, Which
from lint.reading.places.targets import how_many
from lint.reading.words.stream import Stream

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
