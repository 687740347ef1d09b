"""The report as JSON data: one object a pattern."""

from __future__ import annotations

from typing import Any

from lint.finding import Finding
from lint.inspection import Report
from lint.ledger import Cell, LedgerRow
from lint.source import Span

SCHEMA = "frogproof-report/1"


def as_data(report: Report) -> dict[str, Any]:
    """A Report as plain data for JSON."""
    done, of = report.recomputed
    return {
        "schema": SCHEMA,
        "source": {"path": report.source.path, "sha256": report.source.sha256},
        "title": report.pattern.title,
        "terms": report.terms.terms,
        "terms_said": report.terms.said,
        "sizes": list(report.pattern.sizes),
        "parts": _parts(report),
        "findings": [_finding(report, finding) for finding in report.findings],
        "recomputed": {"rows": done, "of": of},
        "grade": {
            "score": report.grade.score,
            "verdict": report.grade.verdict,
            "areas": [{"area": area.area, "score": area.score} for area in report.grade.areas],
        },
    }


def _parts(report: Report) -> list[dict[str, Any]]:
    parts: list[dict[str, Any]] = []
    for part in report.pattern.parts:
        rows = [_row(report, row) for row in report.ledger.rows if row.part is part]
        parts.append({"name": part.name, "make": part.make, "rows": rows})
    return parts


def _row(report: Report, row: LedgerRow) -> dict[str, Any]:
    stopped = next((cell.stopped_by for cell in row.cells if cell.stopped_by), None)
    return {
        "label": row.label,
        "kind": row.kind,
        "number": row.number,
        "line": report.source.line_of(row.span),
        "outcome": [cell.outcome.value for cell in row.cells],
        "made": [_made(cell) for cell in row.cells],
        "stated": [_stated(row, size) for size in range(len(row.cells))],
        "stopped_by": stopped,
    }


def _made(cell: Cell) -> dict[str, Any] | None:
    if cell.made is None:
        return None
    data: dict[str, Any] = {
        "stitches": cell.made.stitches,
        "by_kind": cell.made.by_kind,
        "spaces": {f"ch-{length}": number for length, number in sorted(cell.made.spaces.items())},
        "corners": cell.made.corners,
    }
    if cell.made.groups:
        data["groups"] = cell.made.groups
    return data


def _stated(row: LedgerRow, size: int) -> dict[str, Any] | None:
    stated = row.stated
    if stated is None:
        return None
    data: dict[str, Any] = {}
    for item in stated.items:
        number = item.at(size, row.stated_index)
        if number is None:
            continue
        unit, _, name = item.unit.partition(":")
        if unit == "stitches":
            data["stitches"] = number
        elif unit == "kind":
            data.setdefault("by_kind", {})[name] = number
        elif unit == "space":
            data.setdefault("spaces", {})[f"ch-{name}" if name else "any"] = number
        elif unit == "special":
            data.setdefault("groups", {})[name] = number
        elif unit == "corner":
            data["corners"] = number
    if stated.per_side is not None:
        data["per_side"] = stated.per_side.at(size)
    return data or None


def _finding(report: Report, finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "weight": finding.weight.value,
        "part": finding.part,
        "row": finding.row,
        "sizes": list(finding.sizes),
        **_place(report, finding.span),
        "related": [{**_place(report, other.span), "label": other.label} for other in finding.related],
        "message": finding.message,
        "expected": finding.expected,
        "found": finding.found,
        "likely": [{"change": cause.change, "then": cause.then} for cause in finding.likely],
        "replacement": finding.replacement,
    }


def _place(report: Report, span: Span) -> dict[str, Any]:
    def position(offset: int) -> dict[str, int]:
        at = report.source.position(offset)
        return {"line": at.line, "column": at.column, "offset": at.offset}

    return {"start": position(span.start), "end": position(span.end)}
