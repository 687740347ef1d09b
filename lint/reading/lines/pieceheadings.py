"""Pieces that have only sections: "BACK" over "Ribbing" and "Main Panel", each with rows of its own."""

from __future__ import annotations

from lint.reading.lines.makes import without_makes
from lint.reading.lines.texts import PartText
from lint.source import SourceText


def told_pieces(source: SourceText, parts: list[PartText]) -> list[PartText]:
    """The headings with rows; those that stand under the heading of a piece without any are told its name."""
    over: PartText | None = None
    first: PartText | None = None  # the first section under it
    for part, coming in zip(parts, [*parts[1:], None], strict=False):
        if not _has_rows(part):
            between = source.text[part.span.end : coming.span.start] if coming is not None else ""
            follows = coming is not None and not without_makes(between).strip("\n :*_#")
            over, first = (part, coming) if follows else (None, None)
        elif over is not None and first is not None:
            if _is_section(source, part, over, first):
                part.piece, part.of_piece = over.name, max(part.of_piece, over.make)
            else:
                over, first = None, None
    return [part for part in parts if _has_rows(part)]


def _has_rows(part: PartText) -> bool:
    return any(row.label is not None or row.span for row in part.rows)


def _is_section(source: SourceText, part: PartText, over: PartText, first: PartText) -> bool:
    """Whether a heading looks like the first section's and unlike the piece's: in small letters, or with no line above."""
    (capitals, apart), (small, below), (this_capitals, this_apart) = (
        _looks(source, one) for one in (over, first, part)
    )
    if capitals != small:
        return this_capitals == small
    return apart and not below and not this_apart


def _looks(source: SourceText, part: PartText) -> tuple[bool, bool]:
    """How a heading is set: in capitals; behind an empty line."""
    line = source.text.rfind("\n", 0, part.span.start)
    before = source.text[source.text.rfind("\n", 0, max(line, 0)) + 1 : max(line, 0)]
    return part.name.isupper(), not before.strip()
