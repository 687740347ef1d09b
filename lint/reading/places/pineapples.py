"""Reads the loops of a pineapple where "of pineapple" stands behind them: "in remaining lp of pineapple"."""

from __future__ import annotations

from lint.place import Place, TargetKind, Which
from lint.reading.places.targets import PINEAPPLE_LOOP, is_space_word, target
from lint.reading.words.stream import Stream


def loop_of_pineapple(stream: Stream, start: int) -> Place | None:
    """Takes "next lp of pineapple", "first ch-3 lp of next pineapple", "remaining lp of pineapple": the next one within it."""
    before = stream.at
    stream.skip("the", "number") if stream.word("one") else stream.skip("the")
    remaining = bool(stream.take_if("remaining"))
    first = not remaining and stream.take_if("next", "first")
    stream.take() if stream.word("only", "single") else None
    loop = target(stream)
    single = stream.at > before and is_space_word(stream, -1) and not stream.peek(-1).lower.endswith("s")
    found = (first or remaining) and single and loop is not None and loop.kind is TargetKind.SPACE
    if found and stream.take_if("of"):
        stream.skip("the", "next", "same", "each")
        if stream.word("pineapple"):
            stream.take()
            return Place(stream.span_from(start), Which.NEXT, (PINEAPPLE_LOOP,))
    stream.at = before
    return None
