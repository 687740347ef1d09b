"""The report as JSON data: one object a pattern."""

from __future__ import annotations

from typing import Any

from lint.finding import Finding, Likely
from lint.inspection import Report
from lint.ledger import Cell, LedgerRow
from lint.reports.workings import does_words, sum_line, times_words, words_of
from lint.source import Span
from lint.working.workings import Line, Workings

SCHEMA = "frogproof-report/1"


def failure_as_data(path: str, problem: str) -> dict[str, Any]:
    """The entry of a pattern that could not be read."""
    return {"schema": SCHEMA, "source": {"path": path}, "error": problem}


def as_data(report: Report) -> dict[str, Any]:
    """A Report as plain data for JSON."""
    done, of = report.recomputed
    return {
        "schema": SCHEMA,
        "source": _source(report),
        "title": report.pattern.title,
        "terms": report.terms.terms,
        "terms_said": report.terms.said,
        "sizes": list(report.pattern.sizes),
        **_maker(report),
        "house": report.house.title if report.house is not None else None,
        "parts": _parts(report),
        "findings": [_finding(report, finding) for finding in report.findings],
        "recomputed": {"rows": done, "of": of},
        "grade": {
            "score": report.grade.score,
            "verdict": report.grade.verdict,
            "areas": [{"area": area.area, "score": area.score} for area in report.grade.areas],
        },
    }


def _maker(report: Report) -> dict[str, Any]:
    """Where the report is one maker's: the size, and the text that all places are in."""
    return {} if report.maker is None else {"size": report.maker, "text": report.source.text}


def _source(report: Report) -> dict[str, Any]:
    source = report.source
    data: dict[str, Any] = {"path": source.path, "sha256": source.sha256}
    if source.origin is not None:
        data |= {"kind": source.origin.kind, "notes": list(source.origin.notes)}
    return data


def _parts(report: Report) -> list[dict[str, Any]]:
    parts: list[dict[str, Any]] = []
    for part in report.pattern.parts:
        told: _Told = {}
        own = [row for row in report.ledger.rows if row.part is part]
        rows = [{**_row(report, row), "workings": _workings(report, row, at, told)} for at, row in enumerate(own)]
        if own or not part.rows:  # rows that notes at the front name and tell are none of a piece
            parts.append({"name": part.name, "make": part.pieces, "rows": rows})
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


# workings that were given in full: in which row of the part, in which size
_Told = dict[Workings, tuple[int, int]]


def _workings(report: Report, row: LedgerRow, at: int, told: _Told) -> list[dict[str, Any] | None]:
    """How the count comes, for each size; lines that stand elsewhere in the part already are only pointed to."""
    found: list[dict[str, Any] | None] = []
    for size, cell in enumerate(row.cells):
        if cell.workings is None:
            found.append(None)
            continue
        first = told.setdefault(cell.workings, (at, size))
        lines: dict[str, Any] = {"same_as": {"row": first[0], "size": first[1]}}
        if first == (at, size):
            lines = {"lines": [{**_line(report, line), "so_far": total} for line, total in cell.workings.running()]}
        found.append(
            {
                "sum": sum_line(report, row, size),
                "uses": cell.workings.uses,
                "makes": cell.workings.makes,
                **lines,
            }
        )
    return found


def _line(report: Report, line: Line) -> dict[str, Any]:
    data: dict[str, Any] = {
        "words": words_of(report, line),
        **_place(report, line.span),
        "does": ": ".join(words for words in (does_words(report, line), times_words(line)) if words) or None,
        "uses": line.uses,
        "makes": {"stitches": line.makes, "spaces": {f"ch-{length}": number for length, number in line.spaces}},
    }
    if line.passes:
        data["passes"] = [
            {"times": one.times, "lines": [_line(report, inner) for inner in one.lines]} for one in line.passes
        ]
    return data


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
    stated = row.cells[size].stated
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
        elif unit == "per side":
            data["per_side"] = number
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
        "likely": [_likely(report, cause) for cause in finding.likely],
        "replacement": finding.replacement,
    }


def _likely(report: Report, cause: Likely) -> dict[str, Any]:
    """A likely cause; where the change can be made in the text, the stretch and the words that make it."""
    place = _place(report, cause.span) if cause.span is not None else {"start": None, "end": None}
    return {"change": cause.change, "then": cause.then, **place, "replacement": cause.replacement}


def _place(report: Report, span: Span) -> dict[str, Any]:
    def position(offset: int) -> dict[str, int]:
        at = report.source.position(offset)
        return {"line": at.line, "column": at.column, "offset": at.offset}

    where = report.source.place(span.start)
    data: dict[str, Any] = {"start": position(span.start), "end": position(span.end)}
    return data if where is None else {**data, "place": where}
