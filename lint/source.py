"""The pattern's text, never altered, and places in it."""

from __future__ import annotations

import hashlib
from bisect import bisect_right
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A stretch of the text: offsets from 0, in characters, end exclusive."""

    start: int
    end: int

    def to(self, other: Span) -> Span:
        """The stretch from the start of this span to the end of the other."""
        return Span(self.start, max(self.end, other.end))


@dataclass(frozen=True, slots=True)
class Position:
    """Where a character stands: line and column from 1, offset from 0."""

    line: int
    column: int
    offset: int


@dataclass(frozen=True, slots=True)
class SourceText:
    """A pattern's text as read, with its path, and its line starts for finding positions."""

    text: str
    path: str = "-"
    line_starts: tuple[int, ...] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        starts = [0]
        for index, character in enumerate(self.text):
            if character == "\n":
                starts.append(index + 1)
        object.__setattr__(self, "line_starts", tuple(starts))

    @property
    def sha256(self) -> str:
        return hashlib.sha256(self.text.encode("utf-8", "surrogatepass")).hexdigest()

    def position(self, offset: int) -> Position:
        line = bisect_right(self.line_starts, offset)
        return Position(line, offset - self.line_starts[line - 1] + 1, offset)

    def line_of(self, span: Span) -> int:
        return self.position(span.start).line

    def slice(self, span: Span) -> str:
        return self.text[span.start : span.end]
