"""How many rows a label names, against how many its own words say there are: "Rnds 5-8: sc around (24) – 3 rnds"."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.checks.rows import range_differs
from lint.expression import expression
from lint.finding import Finding, Related
from lint.pattern import Row
from lint.source import Span
from lint.tree import RowCall

# in brackets or between strokes, or behind a sign and last in the row
_ROWS = r"(?P<rows>\d{1,3})\s+(?:rows?|rounds?|rnds?|rds?)(?:\s+(?:in\s+(?:all|total)|altogether|unchanged|even))?"
_TOLD = expression(rf"(?i)[(\[]\s*{_ROWS}\s*[)\]]|/\s*{_ROWS}\s*/|(?<=[)\]}}\w.]\s*[–—,=-]\s*){_ROWS}\s*\.?\s*$")


def check_told(context: Context) -> Iterator[Finding]:
    """range-length-differs: a range of rows, and another number of them said once beside it."""
    for part in context.pattern.parts:
        for row in part.rows:
            told = _told(context, row)
            if told is None:
                continue
            span, worked = told
            related = Related(span, "so many are told here")
            yield range_differs(context, part, row.label, len(row.label.numbers), worked, related)


def _told(context: Context, row: Row) -> tuple[Span, int] | None:
    """Where a row of a range tells of another number of rows; None where it tells none, or of parts of the range."""
    label = row.label
    if label is None or label.by_size or len(label.numbers) < 2 or any(isinstance(s, RowCall) for s in row.steps):
        return None
    told = list(_TOLD.finditer(context.source.slice(row.span)))
    if len(told) != 1 or int(told[0]["rows"]) in (1, len(label.numbers)):
        return None
    start = row.span.start
    return Span(start + told[0].start("rows"), start + told[0].end()), int(told[0]["rows"])
