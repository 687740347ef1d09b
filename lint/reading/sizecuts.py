"""Lines that speak to one size after another: "Size S: Ch 40. Size M: Ch 44." are a line for each of them."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.reading.gates import GateReader
from lint.reading.headings import Line

_STOP = regex.compile(r"(?:[.;/]|\s[–—])\s*(?=(?i:(?:for\s+)?(?:the\s+)?size|for\s|\p{Lu}))")


def by_size(line: Line, gates: GateReader) -> Iterator[Line]:
    """The line, or its parts where each begins with a gate for other sizes than the parts before it."""
    starts, met = [0], set(_sizes(line.text, gates))
    for stop in _STOP.finditer(line.text) if met else ():
        sizes = _sizes(line.text[stop.end() :], gates)
        if sizes and met.isdisjoint(sizes):
            starts.append(stop.end())
            met |= set(sizes)
    for start, end in zip(starts, [*starts[1:], len(line.text)], strict=True):
        yield Line(line.start + start, line.text[start:end]) if len(starts) > 1 else line


def _sizes(words: str, gates: GateReader) -> tuple[int, ...]:
    """The sizes that words begin by speaking to; none where all are meant, or they leave off."""
    gate = gates.at_line(words)
    if gate is None or gate.every or gate.leaves or not words[gate.end :].strip():
        return ()
    return gate.sizes or ()
