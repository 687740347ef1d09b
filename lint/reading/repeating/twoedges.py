"""Reads shaping at two edges at the same time: "dec 1 st at armhole edge every RS row 3 times AND AT THE SAME TIME dec 1 st at
neck edge every RS row 9 times": rows that lose at both edges, and then those that lose at one alone; and in two paces, "… every other RS row 4 times more".
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import zip_longest

from lint.amount import ONE, Amount
from lint.growth import ShapedWhere
from lint.reading.places.countunits import left_over
from lint.reading.repeating.rhythms import ends, every_so_many, how_often
from lint.reading.words.stream import CLOSERS, Stream
from lint.source import Span
from lint.tree import OpenWork, RowCall, Shaping, Step, Times, TimesKind

_EDGES = ("armhole", "neck", "front", "side", "raglan", "center", "centre", "inner", "outer", "shoulder", "opposite")
_GO_ON = ("continue", "cont", "continuing")
_SHAPES = ("increase", "decrease")
_MOST_ROWS = 400


@dataclass(frozen=True, slots=True)
class _Edge:
    """What one edge gains in each of its rows (below 0: loses), one row in how many, and how often."""

    gain: int
    step: int
    times: Amount
    more: bool = False  # "3 times more": the row just worked was shaped at this edge, too


def two_edges(stream: Stream, steps: list[Step], start: int) -> bool:
    """Two shapings in one sentence that says "at the same time", each with its rows; nothing taken where one has none."""
    if steps or start and stream.lexemes[start - 1].kind not in (".", ";", *CLOSERS):
        return False
    together = _same_time(stream)
    stream.skip(",")
    goes_on = stream.word(*_GO_ON)
    if goes_on:
        stream.take()
        stream.skip("to")
    one = _edge(stream)
    stream.skip(",")
    stream.skip("and")
    together = _same_time(stream) or together
    stream.skip(",")
    other = _edge(stream) if one is not None and together else None
    if one is None or other is None or not _ended(stream):
        stream.at = start
        return False
    from_one_row = one.step == other.step or goes_on or one.more and other.more
    if one.gain * other.gain < 0 and one.step == other.step:
        calls = _calls(stream, one, other, start)
    else:
        alike = (
            one.gain * other.gain > 0 and from_one_row
        )  # else in which of its rows the slower edge begins is not told
        calls = _shaped_rows(stream.span_from(start), one, other) if alike else []
    if not calls:
        stream.at = start
        return False
    steps += calls
    return True


def _ended(stream: Stream) -> bool:
    """Whether the sentence ends here, or with how many stitches are left: "…, until 12 sts rem", which is its count."""
    behind = 1 if stream.kind() == "," else 0
    if stream.word("until", "till", ahead=behind):
        stream.at += behind + 1
        while stream.word("there", "are", "you", "have", "only"):
            stream.take()
        counted = stream.amount() is not None and stream.take_if("any_stitch", "stitch") is not None
        stream.at += left_over(stream, 0)
        return counted and ends(stream)  # the row's count, and read so
    return ends(stream)


def _same_time(stream: Stream) -> bool:
    """Takes "at the same time"."""
    ahead = 2 if stream.kind(1) == "the" else 1
    if stream.kind() == "at" and stream.kind(ahead) == "same" and stream.word("time", ahead=ahead + 1):
        stream.at += ahead + 2
        return True
    return False


def _edge(stream: Stream) -> _Edge | None:
    """Takes "dec 1 st at neck edge on every row 5 times", "dec 1 st at each end of next 4 rows"."""
    if stream.kind() not in _SHAPES and not stream.word("increasing", "decreasing"):
        return None
    word = stream.take()
    more = word.kind == "increase" or word.lower == "increasing"
    number = (stream.amount() or ONE).lone
    stream.skip("any_stitch", "stitch")
    edges = _edges(stream)
    if number is None or not edges:
        return None
    gain = number * edges if more else -number * edges
    stream.skip("in", "of", "over", "for", "on", "the")
    stream.take() if stream.word("on") else None
    if stream.take_if("next", "following"):
        rows = stream.amount()
        return _Edge(gain, 1, rows) if rows is not None and stream.take_if("row", "round") else None
    step = every_so_many(stream)
    often = how_often(stream) if step is not None else None
    if step is None or often is None or often[0] is None or often[0].number is None:
        return None
    return _Edge(gain, step, often[0].number, often[0].kind is TimesKind.MORE)


def _edges(stream: Stream) -> int:
    """Takes "at (the) neck edge", "at each end": at how many edges it is; 0 for anything else."""
    stream.skip("at", "the")
    if stream.kind() == "each" or stream.word("both"):
        stream.take()
        return 2 if stream.take_if("ending", "side", "edge") else 0
    named = stream.at
    while stream.word(*_EDGES):
        stream.take()
    return 1 if stream.at > named and stream.take_if("edge", "side", "ending") else 0


def _calls(stream: Stream, one: _Edge, other: _Edge, start: int) -> list[Step]:
    """The rows that are shaped at both edges, then those of the edge that has more of them; [] where that has none."""
    sizes = max(len(one.times.values), len(other.times.values))
    pairs = [(one.times.at(size), other.times.at(size)) for size in range(sizes)]
    if any(not a or not b for a, b in pairs):
        return []
    told = (
        (one.gain + other.gain, [min(a, b) for a, b in pairs]),
        (one.gain, [max(0, a - b) for a, b in pairs]),
        (other.gain, [max(0, b - a) for a, b in pairs]),
    )
    span, found = stream.span_from(start), []
    for gain, often in told:
        if any(often):
            row: Step = Shaping(span, Amount.of(abs(gain)), gain > 0, ShapedWhere.EVENLY)
            row = row if gain else OpenWork(span, "even", plain=True)
            times = Times(span, TimesKind.IN_ALL, Amount(tuple(often)))
            found.append(RowCall(span, None, None, times=times, own=((row,),), apart=one.step if one.step > 1 else 0))
    return found


def _shaped_rows(span: Span, one: _Edge, other: _Edge) -> list[Step]:
    """The rows that both edges shape together, each in every so manieth row from the same one on; those between are worked even.

    They are one call, for the printed count is that of every size's last one.
    """
    sizes = range(max(len(one.times.values), len(other.times.values)))
    last = max(edge.step * (edge.times.at(size) or 0) for edge in (one, other) for size in sizes)
    if last > _MOST_ROWS:
        return []
    gains = []
    for size in sizes:
        told = [sum(edge.gain for edge in (one, other) if _falls(edge, row, size)) for row in range(1, last + 1)]
        gains.append([abs(gain) for gain in told if gain])
    rows = tuple((Shaping(span, Amount(figures), one.gain > 0, ShapedWhere.EVENLY),) for figures in zip_longest(*gains))
    once = Times(span, TimesKind.IN_ALL, Amount(tuple(min(1, len(told)) for told in gains)))
    step = max(one.step, other.step)
    return [RowCall(span, None, None, times=once, own=rows, apart=step if step > 1 else 0)] if rows else []


def _falls(edge: _Edge, row: int, size: int) -> bool:
    """Whether an edge is shaped in the so manieth row."""
    return row % edge.step == 0 and row // edge.step <= (edge.times.at(size) or 0)


__all__ = ["two_edges"]
