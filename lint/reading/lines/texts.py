"""The rows and parts of a text before their words are read."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from lint.expression import expression
from lint.pattern import Label
from lint.reading.page.wrapping import LAYERS
from lint.reading.sizes.gates import Sizes
from lint.source import SourceText, Span

_LAID_FLAT = r"(?i:(?:now |then )?(?:fold|flatten|press|pinch|squash)\b)"
_COUNT_BEHIND = expression(
    rf"\w[\s.,]*[(\[{{]\s*\d+[^()\[\]{{}}]{{0,20}}[)\]}}](?:[.;]\s+|\s+(?=\p{{Lu}})|,?\s+(?={_LAID_FLAT}))|\w[.;]\s+(?={_LAID_FLAT})"
)


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
    piece: str = ""  # the heading over this one, of a piece whose sections have headings of their own
    of_piece: int = 1  # how many are made of that piece, or of this one as a sentence tells


def closed_apart(source: SourceText, row: RowText) -> list[RowText]:
    """The row; behind its count another, "(12). Fold and 6 sc through both layers.": how the piece is closed is no part of it."""
    text = source.slice(row.span)
    counted = _COUNT_BEHIND.search(text) if row.label is not None and LAYERS.search(text) else None
    if counted is None or LAYERS.search(text, 0, counted.end()):
        return [row]
    at = row.span.start + counted.end()
    return [replace(row, span=Span(row.span.start, at)), replace(row, label=None, span=Span(at, row.span.end))]
