"""Repeat marks among the steps of a row, and the passages that they set apart: "*2 sc, inc**, sc; rep from *"."""

from __future__ import annotations

from dataclasses import dataclass

from lint.reading.words.stream import Stream
from lint.source import Span
from lint.tree import Passage, Repeat, Step


@dataclass(frozen=True, slots=True)
class Mark:
    """A star or other repeat mark among the steps of a row, until it is folded away."""

    span: Span
    sign: str


@dataclass(frozen=True, slots=True)
class Folded(Repeat):
    """A starred repeat that still knows its sign and where ** stood, for "from * to ** once" and "ending at **"."""

    sign: str = "*"
    stop_sign: int | None = None
    marks: tuple[tuple[str, int], ...] = ()  # other marks within it, each with the index of the step it stands before


@dataclass(frozen=True, slots=True)
class Recalled(Passage):
    """A passage worked once more, that still knows its sign: "*A*, B, rep from * to *, C, rep from * to *, D"."""

    sign: str = "*"
    one: tuple[Step, ...] = ()


def is_mark(stream: Stream) -> bool:
    """Whether a repeat mark stands at the cursor: a star, or the "+" of "rep from +"."""
    return stream.kind() in ("star", "+")
