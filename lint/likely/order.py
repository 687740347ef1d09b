"""Two rows that have changed places: each has the other's words under its own label."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lint.pattern import Part, Pattern, Row
from lint.source import Span
from lint.tree import FastenOff

_SWAPPED = 1.9


@dataclass(frozen=True, slots=True)
class Swap:
    """Two rows of a part that change their words and counts, by where they are printed; told as an Edit is."""

    change: str
    first: Span
    second: Span
    span: Span
    words: str
    cost: float = _SWAPPED
    in_words: bool = True
    least: int = 2

    def of_pattern(self, pattern: Pattern) -> Pattern:
        """The pattern with the two rows changed about."""
        return replace(pattern, parts=tuple(self._of_part(part) for part in pattern.parts))

    def _of_part(self, part: Part) -> Part:
        places = {row.span: index for index, row in enumerate(part.rows)}
        if self.first not in places or self.second not in places:
            return part
        rows = list(part.rows)
        one, other = places[self.first], places[self.second]
        rows[one] = replace(part.rows[other], label=part.rows[one].label)
        rows[other] = replace(part.rows[one], label=part.rows[other].label)
        return replace(part, rows=tuple(rows))


def of_order(pattern: Pattern, row: Row, text: str) -> Iterator[Swap]:
    """A row changed about with the one before it, and with the one after."""
    for part in pattern.parts:
        for first, second in zip(part.rows, part.rows[1:], strict=False):
            if row.span.start in (first.span.start, second.span.start) and _alike(first, second):
                one, other = first.label, second.label
                own = text[one.span.end : first.span.end]
                its = text[other.span.end : second.span.end]
                if own.strip() == its.strip():
                    continue
                between = text[first.span.end : other.span.end]
                change = f"{one.words} and {other.words} the other way round"
                whole = Span(one.span.end, second.span.end)
                ends = any(
                    isinstance(step, FastenOff) for step in first.steps
                )  # with work to come: that tells by itself
                swap = Swap(change, first.span, second.span, whole, its + between + own)
                yield replace(swap, least=1) if ends else swap


def _alike(first: Row, second: Row) -> bool:
    labels = (first.label, second.label)
    if any(label is None or len(label.numbers) != 1 or label.by_size for label in labels):
        return False
    return first.label.kind == second.label.kind and first.span.end <= second.span.start
