"""Rows that were met, as values: what later rows may call for, and what is called for."""

from __future__ import annotations

from dataclasses import dataclass

from lint.pattern import Part, Stated
from lint.tree import Step
from lint.working.instances import Instance, Loop


@dataclass(frozen=True, slots=True)
class MetRow:
    """A row met so far, as later ones may call for it."""

    kind: str
    number: int
    label: str
    steps: tuple[Step, ...]
    stated: Stated | None
    part: Part
    mark: str
    stretch: int  # how often yarn has been fastened off before it
    key: tuple[int, int]  # by which it is known what it made, once it is worked
    loop: Loop | None  # where it is the last of rows that are worked until something is reached
    printed: int  # where its printed row begins

    @classmethod
    def of(cls, one: Instance, stated: Stated | None, part: Part, stretch: int) -> MetRow:
        number = one.number or 0
        printed = one.row.span.start
        return cls(
            one.kind, number, one.label, one.steps, stated, part, one.row.mark, stretch, one.key, one.loop, printed
        )


@dataclass(frozen=True, slots=True)
class Called:
    """A row that is called for: its steps, its count, and how it was labelled."""

    steps: tuple[Step, ...]
    stated: Stated | None
    kind: str
    label: str
    number: int | None
    loop: Loop | None = None
    printed: int = 0  # where the printed row begins of which this is one; 0 where no whole piece is called for


def as_called(entry: MetRow) -> Called:
    """A row met, as it is called for again."""
    return Called(entry.steps, entry.stated, entry.kind, entry.label, entry.number or None)


def as_whole_piece(entry: MetRow) -> Called:
    """A row of another piece that is worked again as a whole: rows that go on until something is reached do so here, too."""
    return Called(entry.steps, entry.stated, entry.kind, entry.label, entry.number or None, entry.loop, entry.printed)
