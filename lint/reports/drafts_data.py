"""Draft against draft as JSON data."""

from __future__ import annotations

from typing import Any

from lint.drafts.comparison import Comparison
from lint.finding import Finding
from lint.inspection import Report
from lint.testers.due import Due
from lint.testers.points import Point

SCHEMA = "frogproof-recheck/1"


def as_data(found: Comparison) -> dict[str, Any]:
    """A Comparison as plain data for JSON."""
    data = {
        "schema": SCHEMA,
        "old": {"path": found.old.source.path, "sha256": found.old.source.sha256},
        "new": {"path": found.new.source.path, "sha256": found.new.source.sha256},
        "settled": [_finding(found.old, finding) for finding in found.settled],
        "open": [{**_finding(found.new, one.new), "changed": one.changed} for one in found.open],
        "new_findings": [_finding(found.new, finding) for finding in found.new_findings],
        "counts_changed": [
            {
                "part": one.part,
                "row": one.row,
                "size": found.new.pattern.sizes[one.size] if len(found.new.pattern.sizes) > 1 else None,
                "line": one.line,
                "old": _due(one.old),
                "new": _due(one.new),
            }
            for one in found.counts
        ],
    }
    if found.testers is not None:
        data["testers"] = {
            "settled": [_point(found.old, point) for point in found.testers.settled],
            "open": [{**_point(found.new, point), "note": note or None} for point, note in found.testers.open],
            "new": [_point(found.new, point) for point in found.testers.new],
        }
    return data


def _finding(report: Report, finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "weight": finding.weight.value,
        "part": finding.part,
        "row": finding.row,
        "line": report.source.line_of(finding.span),
        "words": report.source.slice(finding.span),
        "message": finding.message,
    }


def _due(due: Due | None) -> dict[str, int | None] | None:
    return None if due is None else {"printed": due.printed, "recount": due.made}


def _point(report: Report, point: Point) -> dict[str, Any]:
    row = report.ledger.rows[point.index] if point.index is not None else None
    return {
        "kind": point.kind,
        "part": row.part.name if row is not None else None,
        "row": row.label if row is not None else None,
        "testers": list(point.testers),
        "says": point.says or None,
        "remarks": [remark.words for remark in point.remarks],
    }
