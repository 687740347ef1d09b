"""Post stitches that leave the columns in which the rows around them stand."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from lint.checks.context import Context
from lint.faults import fault_of
from lint.finding import Finding
from lint.ledger import LedgerRow
from lint.working.columns import Columns

_FEWEST = 2  # rows that stack, before one that does not is a slip
_FEWEST_ALIKE = 3


def check_posts(context: Context) -> Iterator[Finding]:
    """posts-off-column: one row whose post stitches stand beside the posts below, or go the contrary way."""
    for _, group in groupby(context.ledger.rows, key=lambda row: id(row.part)):
        rows = [row for row in group if row.first.columns is not None]
        if any(fault_of(row.first) for row in rows):
            continue
        beside = [row for row in rows if _beside(row.first.columns)]
        stacked = [row for row in rows if not row.first.columns.plain and not row.first.columns.missed]
        if beside and len(beside) + len(stacked) == len(rows) and len(stacked) >= _FEWEST and _one_slip(rows, beside):
            yield _finding(context, beside[0], f"{beside[0].first.columns.plain} of them go around plain stitches")
            continue
        ways = [_way(row.first.columns) for row in rows]
        usual = max(("alike", "contrary"), key=ways.count)
        other = [row for row, way in zip(rows, ways, strict=True) if way not in (usual, None)]
        if len(other) == 2 and ways.count(usual) >= _FEWEST_ALIKE and _one_slip(rows, other) and None not in ways:
            yield _finding(context, other[0], "front and back have changed places against the rows around it")


def _beside(columns: Columns) -> bool:
    """Whether as many posts go around plain stitches as posts below are passed by."""
    return 0 < columns.plain == columns.missed


def _way(columns: Columns) -> str | None:
    if columns.plain or columns.alike and columns.contrary:
        return None
    return "alike" if columns.alike else "contrary"


def _one_slip(rows: list[LedgerRow], off: list[LedgerRow]) -> bool:
    """Whether the rows that are off are one row, or it and the next, which comes back."""
    at = [index for index, row in enumerate(rows) if any(row is one for one in off)]
    return len(at) == 1 or len(at) == 2 and at[1] == at[0] + 1


def _finding(context: Context, row: LedgerRow, what: str) -> Finding:
    return context.finding("posts-off-column", row.span, row.part.name, row.label, what=what)
