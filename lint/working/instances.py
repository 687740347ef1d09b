"""Rows to work as values: which printed row each comes from, under which number and label, and with which steps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lint.amount import Amount
from lint.pattern import Row, Stated
from lint.tree import RowCall, Step, TimesKind
from lint.working.alternating import label_word

MOST_ROWS = 5000
NOT_THERE = "is not there to repeat"
WHICH_ROWS = "which of its rows works what is not said"
TOLD_TWICE = "so many times do not make so many rows in all"


@dataclass(frozen=True, slots=True)
class Instance:
    """One row to work: from which printed row, under which number, with which steps."""

    row: Row
    kind: str
    number: int | None
    label: str
    steps: tuple[Step, ...]
    stated: Stated | None
    stated_index: int | None
    inherited: Stated | None
    index: int
    length: int
    untold: str | None = None  # why it is not known what is worked: the row called for is not there
    loop: Loop | None = None  # on the last row of a cycle that goes on until something is reached
    base: tuple[int, int] | None = (
        None  # the row that stands where the one before stands, of the side that this matches
    )
    again: int = 0  # where the printed row begins that it repeats, where a whole piece is called for

    @property
    def key(self) -> tuple[int, int]:
        """By which it is known again: its printed row, and the how manieth it is of that."""
        return id(self.row), self.index


@dataclass(frozen=True, slots=True)
class Loop:
    """A cycle of rows worked until a number of stitches is reached; with no number, until a length is."""

    rows: tuple[Instance, ...]
    until: Amount | None
    unit: str = "stitches"
    stated: Stated | None = None  # the printed count, which is that of the last row of all
    call: RowCall | None = None  # of one row that grows from pass to pass
    base: tuple[Step, ...] = ()  # what that row works before it has grown
    passes: int = 1  # how often it has been worked


def passes_of(call: RowCall, cycle: int) -> int | None:
    """How often a cycle of rows is worked, 0 where this size does not work it, None where it is not said."""
    if call.times is None or call.times.number is None or call.times.kind is TimesKind.FILL:
        return None
    return min(call.times.number.lone or 0, MOST_ROWS // max(1, cycle))


def numbered(instance: Instance, number: int | None) -> str:
    """A label for a row that has none of its own."""
    word = label_word(instance.label, instance.kind) if instance.label != "Foundation" else ""
    return f"{word or ('Rnd' if instance.kind == 'round' else 'Row')} {number}"


def looped(one: Instance, loop: Loop | None, before: Sequence[Instance]) -> Instance:
    """A row that is worked again with those before it, going on until that is reached which ended them there."""
    if loop is None or len(before) + 1 < len(loop.rows):
        return one
    rows = (*before[len(before) + 1 - len(loop.rows) :], one)
    return replace(one, loop=replace(loop, rows=tuple(replace(row, stated=None) for row in rows)))
