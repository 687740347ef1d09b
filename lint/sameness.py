"""Whether two texts make the same fabric: every row of both, as worked, in every size."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

from lint.inspection import Report, Worked
from lint.ledger import Cell, LedgerRow, Outcome
from lint.source import Span


def rows_that_differ(before: Report | Worked, after: Report | Worked) -> list[int] | None:
    """Places in the ledger where two texts do not make the same; None where not even their rows are the same."""
    one, other = before.ledger.rows, after.ledger.rows
    if len(one) != len(other) or before.pattern.sizes != after.pattern.sizes:
        return None
    return [index for index, (row, now) in enumerate(zip(one, other, strict=True)) if not _same(row, now)]


def _same(row: LedgerRow, now: LedgerRow) -> bool:
    if (row.kind, row.number, len(row.cells)) != (now.kind, now.number, len(now.cells)):
        return False
    return all(_same_cell(row, now, *pair) for pair in zip(row.cells, now.cells, strict=True))


def _same_cell(row: LedgerRow, now: LedgerRow, one: Cell, other: Cell) -> bool:
    if one.outcome is not other.outcome or one.made != other.made:
        return False
    if [(misfit.kind, misfit.number) for misfit in one.misfits] != [(m.kind, m.number) for m in other.misfits]:
        return False
    if _figures(one) != _figures(other):
        return False
    if one.outcome is Outcome.NOT_WORKED:
        return True  # a size that does not work a row does not care for its words
    # what was not recomputed can only be the same if the words were taken for the same
    return one.made is not None or plain(row.row.steps) == plain(now.row.steps)


def _figures(cell: Cell) -> list[tuple]:
    items = cell.stated.items if cell.stated is not None else ()
    return [(item.unit, item.number, item.series) for item in items if item.unit != "unknown"]


def plain(value: Any) -> Any:
    """A tree without the places and the words it was read from."""
    if is_dataclass(value):
        if isinstance(value, Span):
            return None
        inner = (field.name for field in fields(value) if field.name not in ("words", "why"))
        return (type(value).__name__, *(plain(getattr(value, name)) for name in inner))
    if isinstance(value, tuple):
        return tuple(plain(item) for item in value)
    return value.value if isinstance(value, Enum) else value
