"""Reads rows worked again by their names: "Rep Inc row 4 more times", "Rep Dec row every 4th row 3 times more"."""

from __future__ import annotations

from lint.reading.repeating.rowsof import every_so_many
from lint.reading.repeating.times import times
from lint.reading.words.stream import Stream
from lint.tree import RowCall, Step, TimesKind


def named_row_call(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Rep Inc row 4 more times": the row named by its label."""
    stream.skip("repeat", "the")
    words = stream.at
    while stream.kind() in ("increase", "decrease", "word") and stream.at - words < 3:
        stream.take()
    if stream.at == words or stream.kind() not in ("row", "round"):
        return False
    kind = stream.take().kind
    name = stream.words(words, stream.at)
    told = stream.kind() == "number" and not stream.word("once", "twice", "thrice")
    number = stream.row_number() if told and stream.kind(1) not in ("times", "more") else None
    if number is not None:  # "Rep Hat Round 2, 3 times more": a row of another piece
        name = stream.words(words, words + 1)
        stream.take_if(",")
        how_often = times(stream)
        steps.append(RowCall(stream.span_from(start), number, number, times=how_often, kind=kind, part=name))
        return how_often is None or how_often.kind is not TimesKind.FILL
    spread = _spread(stream)
    how_often = times(stream)
    if how_often is not None and how_often.kind is TimesKind.FILL or spread and how_often is None:
        return False
    steps.append(RowCall(stream.span_from(start), None, None, times=how_often, kind=kind, name=name, apart=spread))
    return True


def _spread(stream: Stream) -> bool:
    """Takes the "every 4th row" of "Rep Dec row every 4th row 3 times more": the rows lie apart, with others between."""
    start = stream.at
    stream.skip("in", "on", "of") if stream.kind(1) == "each" or stream.word("on") else None
    stream.take() if stream.word("on") else None
    if (step := every_so_many(stream)) is not None:
        return step > 1
    stream.at = start
    return False
