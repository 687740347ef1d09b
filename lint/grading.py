"""The grading table: for each size every count of a pattern, and the measures that follow from them by its gauge.

A value is None where a size does not work the row, or its count is not known.  Measures are in the gauge's own unit,
inches or centimetres: stitches divided by the stitch gauge, rows by the row gauge (count = width x stitches per unit,
as grading lessons teach it).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from lint.checks.extent import worked_to_a_measure
from lint.inspection import Report
from lint.ledger import LedgerRow, Outcome
from lint.reading.facts.gauge import Gauge, pattern_gauges
from lint.reading.facts.measures import CM_IN_AN_INCH, label_of, read_lengths
from lint.reading.sizes.sizecolumns import read_columns
from lint.source import Span

Value = float | None
_ONE_SIZE = "one size"
_PRINTED = "as printed"


@dataclass(frozen=True, slots=True)
class GradedLine:
    """One count or measure of a part, a value a size."""

    part: str
    what: str  # "Row 9", "starts with", "rows or rounds", "widest"…
    unit: str  # sts | rows | cm | in
    values: tuple[Value, ...]
    summary: bool = False  # of the part as a whole, not of one row
    reckoned: bool = False  # from a count, by the gauge

    @property
    def steps(self) -> tuple[Value, ...]:
        """From each size to the next."""
        pairs = zip(self.values, self.values[1:], strict=False)
        return tuple(None if a is None or b is None else round(b - a, 2) for a, b in pairs)


@dataclass(frozen=True, slots=True)
class GradingTable:
    """All lines of a pattern; `gauge` says what the measures were reckoned with."""

    sizes: tuple[str, ...]
    lines: tuple[GradedLine, ...]
    gauge: str | None

    @property
    def summary(self) -> tuple[GradedLine, ...]:
        """The lines about whole parts."""
        return tuple(line for line in self.lines if line.summary)


def grading_table(report: Report) -> GradingTable:
    """The table of a pattern: the measures that it prints, each part as a whole, and every count that changes."""
    sizes = report.pattern.sizes if len(report.pattern.sizes) > 1 else (_ONE_SIZE,)
    if any(len(row.cells) != len(sizes) for row in report.ledger.rows):
        return GradingTable(sizes, (), None)
    gauges = pattern_gauges(report.source.text, report.pattern, report.book.stitches)
    lines = list(_printed(report, sizes))
    used: Gauge | None = None
    for _, rows in groupby(report.ledger.rows, key=lambda row: id(row.part)):
        part = [row for row in rows if row.kind != "foundation" or _known(row)]
        gauge = _gauge_of(report, gauges, part)
        used = used or gauge
        lines += _of_part(part, len(sizes), gauge, _open_end(report, part))
    return GradingTable(sizes, tuple(lines), report.source.slice(used.span) if used is not None else None)


def _open_end(report: Report, rows: Sequence[LedgerRow]) -> bool:
    """Whether the words of a part leave the number of its rows to a measure."""
    if not rows:
        return False
    part = rows[0].part
    later = [one.span.start for one in report.pattern.parts if one.span.start > part.span.start]
    span = Span(part.span.start, min(later, default=part.rows[-1].span.end))
    return worked_to_a_measure(report.source.text, span, max(1, len(report.pattern.sizes)))


def _printed(report: Report, sizes: tuple[str, ...]) -> Iterator[GradedLine]:
    """The measures that stand in the pattern as lists over its sizes, under the words before them."""
    text = report.source.text
    for length in read_lengths(text, len(sizes)):
        for number, side in enumerate(length.sides, 1):
            if len(side) == len(sizes) > 1:
                what = label_of(text, length.span) or "measure"
                several = f", side {number}" if len(length.sides) > 1 else ""
                values = tuple(figure.value for figure in side)
                yield GradedLine(_PRINTED, what + several, length.unit, values, True)
    for column in read_columns(text, sizes):
        values = tuple(figure.value for figure in column.figures)
        yield GradedLine(_PRINTED, column.label or "measure", column.unit, values, True)


def _known(row: LedgerRow) -> bool:
    return any(cell.made is not None and cell.made.stitches for cell in row.cells)


def _of_part(rows: Sequence[LedgerRow], sizes: int, gauge: Gauge | None, open_end: bool) -> Iterator[GradedLine]:
    if not rows:
        return
    name = rows[0].part.name
    worked = [_worked(rows, size) for size in range(sizes)]
    starts = tuple(_count(some[0], n) if some else None for n, some in enumerate(worked))
    ends = tuple(_count(some[-1], n) if some else None for n, some in enumerate(worked))
    for what, values in (
        ("starts with", starts),
        ("widest", tuple(_widest(some, size) for size, some in enumerate(worked))),
        ("ends with", ends),
    ):
        yield from _with_width(GradedLine(name, what, "sts", values, True), gauge)
    numbers = tuple(
        len(some) if some and not open_end and _all_known(some, size) else None for size, some in enumerate(worked)
    )
    yield GradedLine(name, "rows or rounds", "rows", numbers, True)
    if gauge is not None and gauge.rows_per_cm:
        unit = gauge.width.unit
        lengths = tuple(_over(value, gauge.rows_per_cm, unit) for value in numbers)
        yield GradedLine(name, "rows or rounds", unit, lengths, True, True)
    before: list[Value] = [None] * sizes
    for row in rows:
        values = tuple(_count(row, size) for size in range(sizes))
        if any(value is not None and value != old for value, old in zip(values, before, strict=True)):
            yield from _with_width(GradedLine(name, row.label, "sts", values), gauge)
        before = [old if value is None else value for value, old in zip(values, before, strict=True)]


def _with_width(line: GradedLine, gauge: Gauge | None) -> Iterator[GradedLine]:
    """A line of counts, and under it what they measure by the gauge."""
    yield line
    if gauge is not None:
        unit = gauge.width.unit
        widths = tuple(_over(value, gauge.per_cm, unit) for value in line.values)
        yield GradedLine(line.part, line.what, unit, widths, line.summary, True)


def _count(row: LedgerRow, size: int) -> int | None:
    made = row.cells[size].made
    return made.stitches if made is not None else None


def _worked(rows: Sequence[LedgerRow], size: int) -> list[LedgerRow]:
    """The rows that a size works, but for its foundation."""
    return [row for row in rows if row.kind != "foundation" and row.cells[size].outcome is not Outcome.NOT_WORKED]


def _all_known(rows: Sequence[LedgerRow], size: int) -> bool:
    """Whether every row was recomputed: one that was not may be wider, or stand for several."""
    return all(row.cells[size].made is not None and not row.open for row in rows)


def _widest(rows: Sequence[LedgerRow], size: int) -> int | None:
    return max(_count(row, size) or 0 for row in rows) if rows and _all_known(rows, size) else None


def _over(value: Value, per_cm: float, unit: str) -> Value:
    if value is None or not per_cm:
        return None
    return round(value / per_cm / CM_IN_AN_INCH, 2) if unit == "in" else round(value / per_cm, 1)


def _gauge_of(report: Report, gauges: Sequence[Gauge], rows: Sequence[LedgerRow]) -> Gauge | None:
    """The one gauge that a part is surely worked in: of its own main stitch, else of stitches in general."""
    kinds: dict[str, int] = {}
    for row in rows:
        for kind, number in (row.first.made.by_kind if row.first.made is not None else {}).items():
            kinds[kind] = kinds.get(kind, 0) + number
    main = max(kinds, key=lambda kind: kinds[kind], default="")
    rule = next((rule for rule in report.book.stitches.stitches if rule.key == main), None)
    forms = (
        {form.lower() for form in (rule.uk if report.terms.terms == "uk" else rule.us)} if rule is not None else set()
    )
    own = [gauge for gauge in gauges if gauge.stitch in forms]
    fitting = own or [gauge for gauge in gauges if gauge.stitch is None]
    return fitting[0] if len(fitting) == 1 else None
