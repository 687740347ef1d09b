"""Printed counts that name the unit before its figure: "(dc: 24, ch-2 sps: 4)", "(sts 12)"."""

from __future__ import annotations

from lint.pattern import Stated, StatedItem
from lint.reading.places import countunits
from lint.reading.words.stream import Stream


def units_first(stream: Stream) -> Stated | None:
    """A whole stretch of units, each with a sign and its figure behind it; None where any of it is something else."""
    items: list[StatedItem] = []
    start = stream.at
    while not stream.done:
        begin = stream.at
        unit, words = countunits.unit(stream)
        signed = stream.take_if(":", "=") is not None or unit == "stitches"  # "(sts 12)"
        number = stream.amount() if signed else None
        if number is None or unit in (None, "unknown") or not (stream.done or stream.take_if(",", ";", "/", "and")):
            stream.at = start
            return None
        items.append(StatedItem(stream.span_from(begin), number, unit, words))
    alike = len({item.unit for item in items}) < len(items)  # of which row, or which size?
    return None if alike or not items else Stated(stream.span_from_all(), tuple(items))
