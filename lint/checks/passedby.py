"""Rows worked until there are so many stitches, which go past that number in some sizes, and come to it in others."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile

from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding
from lint.ledger import LedgerRow, Outcome
from lint.source import Span
from lint.tree import RowCall

# "until there are 57 sts (not counting edge st)": what is counted otherwise may come to that number
_OTHERWISE = expression(r"(?i)\b(?:not\s+(?:count|includ)\w*|excl\w*|without|besides|plus|incl\w*|apart\s+from)\b")


def check_passed_by(context: Context) -> Iterator[Finding]:
    """count-differs: "inc 1 st at each end until there are 50 (54, 57) sts", where the third size has 56, and then 58."""
    for row, sizes in _passed(context):
        before, behind, wanted = next(row.cells[size].passed for size in sizes)
        span = row.row.span
        named = row.row.label.words if row.row.label is not None else f"Line {context.source.line_of(span)}"
        told = tuple(context.pattern.sizes[size] for size in sizes)
        yield context.finding(
            "count-differs",
            span,
            row.part.name,
            named,
            sizes=told,
            expected=f"{before} sts, and then {behind}",
            found=f"{wanted} sts",
            more=f" That is size {', '.join(told)}; the others come to their number." if told else "",
        )


def passed_spans(context: Context) -> list[Span]:
    """Where such rows stand: that they could not be counted to their end is said by this rule."""
    return [row.row.span for row, _ in _passed(context)]


def _passed(context: Context) -> Iterator[tuple[LedgerRow, list[int]]]:
    """The last row of such rows, and the sizes that pass their number by; only where more of the others come to it."""
    by_print: dict[int, list[LedgerRow]] = {}
    for row in context.ledger.rows:
        by_print.setdefault(id(row.row), []).append(row)
    for rows in by_print.values():
        again = any(isinstance(step, RowCall) and step.part is not None for step in rows[0].row.steps)
        passed = {size: row for row in rows for size, cell in enumerate(row.cells) if cell.passed is not None}
        passed = {size: row for size, row in passed.items() if not _differs_before(context, row, size)}
        otherwise = _OTHERWISE.search(context.source.slice(rows[0].row.span)) is not None
        if not passed or again or otherwise:  # "Work as for Left Front": it is told there
            continue
        stopped = {size for row in rows for size, cell in enumerate(row.cells) if cell.stopped_by is not None}
        worked = [size for size, cell in enumerate(rows[0].cells) if cell.outcome is not Outcome.NOT_WORKED]
        if len(passed) < len([size for size in worked if size not in stopped]):
            last = next(iter(passed.values()))
            yield last, [size for size, row in passed.items() if row is last]


def _differs_before(context: Context, row: LedgerRow, size: int) -> bool:
    """Whether an earlier row of the piece differs, or does not come out, in this size: then these rows may only follow from it."""
    before = takewhile(lambda one: one is not row, context.ledger.rows)
    cells = [one.cells[size] for one in before if one.part is row.part and size < len(one.cells)]
    return any(cell.outcome is Outcome.DIFFERS or cell.misfits for cell in cells)
