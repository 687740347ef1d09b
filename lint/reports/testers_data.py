"""Testers' counts as data: JSON, and CSV with one line for each count."""

from __future__ import annotations

import csv
import io
from typing import Any

from lint.testers.inert import inert
from lint.testers.points import Point
from lint.testers.review import Review
from lint.testers.verdicts import Judged

SCHEMA = "frogproof-testers/1"
_COLUMNS = (
    "tester",
    "size",
    "part",
    "row",
    "line",
    "printed",
    "recount",
    "got",
    "verdict",
    "why",
    "likely",
    "note",
    "place",
)


def as_data(review: Review) -> dict[str, Any]:
    """A Review as plain data for JSON."""
    report, together = review.report, review.together
    return {
        "schema": SCHEMA,
        "source": {"path": report.source.path, "sha256": report.source.sha256},
        "title": report.pattern.title,
        "sizes": list(review.names.sizes),
        "testers": [{"name": name, "size": _size(review, review.placement.sizes.get(name))} for name in review.testers],
        "points": [_point(review, point) for point in review.points],
        "counts": [_count(review, judged) for judged in review.judged],
        "gauge": [
            {
                "tester": line.got.who.tester,
                "stitches": line.stitches,
                "rows": line.rows,
                "stated": {"stitches": line.due_stitches, "rows": line.due_rows},
                "over_cm": 10,
                "hook_mm": line.got.hook_mm,
                "fit": line.fit,
                "hook_to_try_mm": line.hook,
            }
            for line in together.gauges
        ],
        "yarn": [
            {
                "size": _size(review, line.size),
                "unit": line.unit,
                "stated": line.stated,
                "used": [{"tester": one.who.tester, "amount": round(one.amount, 2)} for one in line.used],
                "more_than_stated": line.more,
            }
            for line in together.yarn
        ],
        "measures": [
            {
                "size": _size(review, line.size),
                "what": line.what,
                "stated_cm": line.stated,
                "got": [{"tester": one.who.tester, "cm": round(one.cm, 2)} for one in line.got],
                "off": line.off,
            }
            for line in together.measures
        ],
        "untested": [_size(review, size) for size in together.untested],
        "uncounted": [_where(review, index) for index in together.uncounted],
        "unmatched": [{"place": str(one.place), "what": one.what, "why": one.why} for one in review.unmatched],
    }


def as_csv(review: Review) -> str:
    """One line for each count; cells that a spreadsheet would take for formulas are made inert."""
    out = io.StringIO()
    writer = csv.DictWriter(out, _COLUMNS, extrasaction="ignore", lineterminator="\r\n")
    writer.writeheader()
    for judged in review.judged:
        data = _count(review, judged)
        data["likely"] = "; ".join([*data["readings"], *(one["title"] for one in data["likely"])])
        data["note"] = judged.step.placed.claim.note
        writer.writerow({key: inert(value) if isinstance(value, str) else value for key, value in data.items()})
    return out.getvalue()


def _size(review: Review, size: int | None) -> str | None:
    return review.names.sizes[size] if size is not None and review.names.sizes else None


def _where(review: Review, index: int) -> dict[str, Any]:
    row = review.report.ledger.rows[index]
    return {"part": row.part.name, "row": row.label, "line": review.report.source.line_of(row.span)}


def _likely(suggestions: tuple) -> list[dict[str, Any]]:
    return [{"name": one.name, "title": one.title, "says": one.says} for one in suggestions]


def _count(review: Review, judged: Judged) -> dict[str, Any]:
    step = judged.step
    return {
        "tester": judged.tester,
        "size": _size(review, step.row.size),
        **_where(review, step.row.index),
        "printed": step.row.due.printed,
        "recount": step.row.due.made,
        "got": step.placed.got,
        "verdict": judged.verdict.value,
        "why": judged.why,
        "since": judged.since,
        "likely": _likely(judged.likely),
        "readings": [one.words for one in judged.readings],
        "place": str(step.placed.claim.place),
    }


def _point(review: Review, point: Point) -> dict[str, Any]:
    where = {"part": None, "row": None, "line": None} if point.index is None else _where(review, point.index)
    return {
        "kind": point.kind,
        "open": point.open,
        **where,
        "sizes": [_size(review, size) for size in point.sizes if review.names.sizes],
        "testers": list(point.testers),
        "says": point.says or None,
        "figures": [
            {"size": _size(review, size), "printed": printed, "recount": made, "got": list(got)}
            for size, printed, made, got in point.figures
        ],
        "follow": [review.report.ledger.rows[index].label for index in point.follow],
        "causes": [{"change": cause.change, "then": cause.then} for cause in point.causes],
        "likely": _likely(point.likely),
        "readings": [
            {"words": one.words, "as_printed": one.allowed, "later_rows_that_agree": one.explains}
            for one in point.readings
        ],
        "remarks": [
            {"tester": one.who.tester, "words": one.words, "about": one.about or None, "place": str(one.place)}
            for one in point.remarks
        ],
    }
