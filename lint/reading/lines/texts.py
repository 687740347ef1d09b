"""The rows and parts of a text before their words are read."""

from __future__ import annotations

from dataclasses import dataclass, field

from lint.pattern import Label
from lint.reading.sizes.gates import Sizes
from lint.source import Span


@dataclass
class RowText:
    """A labelled row's words, or a stretch without a label inside a part (label None)."""

    label: Label | None
    span: Span
    sizes: Sizes | None = None  # those that work it; None: all
    gate: int = 0  # which "Sizes … only" it stands under, 0 for none
    sizes_unknown: bool = False  # it stands under one whose sizes are not the pattern's


@dataclass
class PartText:
    """A heading over rows, and what stands under it."""

    name: str
    span: Span
    make: int = 1
    rows: list[RowText] = field(default_factory=list)
    named: bool = True
