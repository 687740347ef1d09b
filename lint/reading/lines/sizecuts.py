"""Lines that speak to one size after another: "Size S: Ch 40. Size M: Ch 44." are a line for each of them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from lint.expression import expression
from lint.reading.lines.headings import Line
from lint.reading.lines.labels import LabelReader
from lint.reading.sizes.gates import GateReader

_ALONE = expression(r"\d\W*$")  # a label with nothing behind it
_STOP = expression(r"(?:[.;/\n]|\s[–—])\s*(?=(?i:(?:for\s+)?(?:the\s+)?size|for\s|\p{Lu}))")


def by_size(line: Line, gates: GateReader) -> Iterator[Line]:
    """The line, or its parts where each begins with a gate for other sizes than the parts before it."""
    cuts = [0, *(stop.end() for stop in _STOP.finditer(line.text)), len(line.text)]
    starts: list[int] = []
    met: set[int] = set()
    for start, end in pairwise(cuts) if len(cuts) > 2 else ():
        sizes = _sizes(line.text[start:end], gates)
        if sizes and met.isdisjoint(sizes):
            starts.append(start)
            met |= set(sizes)
        elif not starts:
            break
    if len(starts) < 2:
        yield line
        return
    for start, end in pairwise([*starts, len(line.text)]):
        yield Line(line.start + start, line.text[start:end].rstrip(" /"))


def under_their_label(lines: list[Line], gates: GateReader, labels: LabelReader) -> list[Line]:
    """The lines; a label that stands alone over lines for one size after the other is one line with them."""
    found: list[Line] = []
    at = 0
    while at < len(lines):
        line, end, met = lines[at], at + 1, set()
        label = labels.at_line(line.text, 0) if gates.number > 1 and _ALONE.search(line.text) is not None else None
        while label is not None and not line.text[label.body :].strip() and end < len(lines):
            sizes = _sizes(lines[end].text, gates)
            if not sizes or not met.isdisjoint(sizes):
                break
            met |= set(sizes)
            end += 1
        if end > at + 2:
            text = line.text
            for one in lines[at + 1 : end]:
                text += "\n" * (one.start - line.start - len(text)) + one.text
            line = Line(line.start, text)
        else:
            end = at + 1
        found.append(line)
        at = end
    return found


def for_other_sizes(text: str, sizes: tuple[int, ...], gates: GateReader) -> list[int]:
    """Where the words of a row for some sizes begin to speak to others; nowhere if they go on for all, or again for some."""
    met, starts = set(sizes), []
    for stop in _STOP.finditer(text):
        gate = gates.at_line(text[stop.end() :])
        if gate is None:
            continue
        others = _sizes(text[stop.end() :], gates)
        if not others or not met.isdisjoint(others):
            return []
        starts.append(stop.end())
        met |= set(others)
    return starts


def _sizes(words: str, gates: GateReader) -> tuple[int, ...]:
    """The sizes that words begin by speaking to; none where all are meant, or they leave off."""
    gate = gates.at_line(words)
    if gate is None or gate.every or gate.leaves or not words[gate.end :].strip():
        return ()
    return gate.sizes or ()
