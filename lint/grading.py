"""The grading table: for each size every count of a pattern, and the measures that follow from them by its gauge.

A value is None where a size does not work the row, or its count is not known.  Measures are in the gauge's own unit,
inches or centimetres: stitches divided by the stitch gauge, rows by the row gauge (count = width x stitches per unit,
as grading lessons teach it).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from lint.inspection import Report
from lint.ledger import LedgerRow, Outcome
from lint.reading.gauge import Gauge, read_gauges
from lint.reading.measures import CM_IN_AN_INCH, read_lengths, read_pairs

Value = float | None


@dataclass(frozen=True, slots=True)
class GradedLine:
    """One count or measure of a part, a value a size."""

    part: str
    what: str  # "Row 9", "starts with", "rows", "widest"…
    unit: str  # sts | rows | cm | in
    values: tuple[Value, ...]
    summary: bool = False  # of the part as a whole, not of one row

    @property
    def steps(self) -> tuple[Value, ...]:
        """From each size to the next."""
        pairs = zip(self.values, self.values[1:], strict=False)
        return tuple(None if a is None or b is None else round(b - a, 1) for a, b in pairs)


@dataclass(frozen=True, slots=True)
class GradingTable:
    """All lines of a pattern in several sizes; `gauge` says what the measures were reckoned with."""

    sizes: tuple[str, ...]
    lines: tuple[GradedLine, ...]
    gauge: str | None

    @property
    def summary(self) -> tuple[GradedLine, ...]:
        """The lines about whole parts."""
        return tuple(line for line in self.lines if line.summary)


def grading_table(report: Report) -> GradingTable:
    """The table of a pattern; one without lines for a pattern in one size."""
    sizes = report.pattern.sizes
    if len(sizes) < 2 or any(len(row.cells) != len(sizes) for row in report.ledger.rows):
        return GradingTable(sizes, (), None)
    gauges = _gauges(report)
    lines: list[GradedLine] = []
    used: Gauge | None = None
    for _, rows in groupby(report.ledger.rows, key=lambda row: id(row.part)):
        part = [row for row in rows if row.kind != "foundation" or _known(row)]
        gauge = _gauge_of(report, gauges, part)
        used = used or gauge
        lines += _of_part(part, len(sizes), gauge)
    return GradingTable(sizes, tuple(lines), report.source.slice(used.span) if used is not None else None)


def _known(row: LedgerRow) -> bool:
    return any(cell.made is not None and cell.made.stitches for cell in row.cells)


def _of_part(rows: Sequence[LedgerRow], sizes: int, gauge: Gauge | None) -> Iterator[GradedLine]:
    if not rows:
        return
    name = rows[0].part.name
    counts = [tuple(_count(row, size) for size in range(sizes)) for row in rows]
    worked = [_worked(rows, size) for size in range(sizes)]
    unit = gauge.width.unit if gauge is not None else "cm"
    yield GradedLine(
        name, "starts with", "sts", tuple(_count(some[0], n) if some else None for n, some in enumerate(worked)), True
    )
    widest = tuple(_widest(some, size) for size, some in enumerate(worked))
    yield GradedLine(name, "widest", "sts", widest, True)
    if gauge is not None:
        yield GradedLine(name, "widest", unit, tuple(_over(value, gauge.per_cm, unit) for value in widest), True)
    yield GradedLine(
        name, "ends with", "sts", tuple(_count(some[-1], n) if some else None for n, some in enumerate(worked)), True
    )
    numbers = tuple(len(some) if some and _all_known(some, size) else None for size, some in enumerate(worked))
    yield GradedLine(name, "rows or rounds", "rows", numbers, True)
    if gauge is not None and gauge.rows_per_cm:
        yield GradedLine(name, "length", unit, tuple(_over(value, gauge.rows_per_cm, unit) for value in numbers), True)
    before: list[Value] = [None] * sizes
    for row, values in zip(rows, counts, strict=True):
        if any(value is not None and value != old for value, old in zip(values, before, strict=True)):
            yield GradedLine(name, row.label, "sts", values)
        before = [old if value is None else value for value, old in zip(values, before, strict=True)]


def _count(row: LedgerRow, size: int) -> int | None:
    made = row.cells[size].made
    return made.stitches if made is not None else None


def _worked(rows: Sequence[LedgerRow], size: int) -> list[LedgerRow]:
    """The rows that a size works, but for its foundation."""
    return [row for row in rows if row.kind != "foundation" and row.cells[size].outcome is not Outcome.NOT_WORKED]


def _all_known(rows: Sequence[LedgerRow], size: int) -> bool:
    """Whether every row was recomputed: one that was not may be wider, or stand for several."""
    return all(row.cells[size].made is not None for row in rows)


def _widest(rows: Sequence[LedgerRow], size: int) -> int | None:
    return max(_count(row, size) or 0 for row in rows) if rows and _all_known(rows, size) else None


def _over(value: Value, per_cm: float, unit: str) -> Value:
    if value is None or not per_cm:
        return None
    return round(value / per_cm / CM_IN_AN_INCH, 2) if unit == "in" else round(value / per_cm, 1)


def _gauges(report: Report) -> list[Gauge]:
    text, sizes = report.source.text, len(report.pattern.sizes)
    lengths = read_lengths(text, sizes)
    pairs = read_pairs(text, lengths)
    words = tuple(form for rule in report.book.stitches.stitches for form in (*rule.us, *rule.uk) if form)
    zones = [section.span for section in report.pattern.sections if section.key == "gauge"]
    return [one for zone in zones for one in read_gauges(text, zone, lengths, pairs, words)]


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
