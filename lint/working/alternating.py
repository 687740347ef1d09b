"""Rows told once for every other number: "Row 2 and all even rows" are worked before each odd row that is printed."""

from __future__ import annotations

from dataclasses import dataclass

from lint.pattern import Part, Row
from lint.tree import Step


@dataclass(frozen=True, slots=True)
class Due:
    """A row told before that is to be worked now, and its number."""

    row: Row
    steps: tuple[Step, ...]
    number: int


class Alternates:
    """What one size has met of such rows, by the part that they are told in."""

    def __init__(self) -> None:
        self._told: dict[int, tuple[Row, tuple[Step, ...]]] = {}

    def meet(self, row: Row, part: Part, steps: tuple[Step, ...]) -> None:
        """Keep a row whose label names all rows of its sort."""
        if row.label is not None and row.label.alternate:
            self._told[id(part)] = (row, steps)

    def due(self, part: Part, last: int, number: int | None) -> Due | None:
        """The row to be worked between the last one met and the one with this number, if exactly one lies between."""
        told = self._told.get(id(part))
        if told is None or number is None or last + 2 != number:
            return None
        row, steps = told
        first = row.label.numbers[0] if row.label is not None and row.label.numbers else 0
        return Due(row, steps, last + 1) if (last + 1 - first) % 2 == 0 else None


def label_word(words: str, kind: str) -> str:
    """The label's own word for one row: "Rnds 4-9" gives "Rnd"."""
    first = words.split()[0].rstrip("0123456789-–.:") if words.split() else ""
    if first.lower() in ("rnds", "rows", "rounds", "rds"):
        return first[:-1]
    if first and first[0].isalpha() and first.lower() in ("rnd", "row", "round", "rd", "r"):
        return first
    return "Rnd" if kind == "round" else "Row"
