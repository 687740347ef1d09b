"""The points as SARIF 2.1.0 (OASIS standard, Static Analysis Results Interchange Format), for programs that show such lists."""

from __future__ import annotations

from collections.abc import Sequence
from importlib import metadata
from pathlib import PurePath
from typing import Any
from urllib.parse import quote

from lint.finding import Finding, Weight
from lint.inspection import Report
from lint.reports import wording
from lint.source import Span

_LEVELS = {Weight.CORRECTION: "error", Weight.QUERY: "warning", Weight.STYLE: "note"}

RunPart = tuple[dict[str, dict[str, Any]], list[dict[str, Any]]]


def as_sarif(reports: Sequence[Report], failures: Sequence[dict[str, Any]] = ()) -> dict[str, Any]:
    """A SARIF log with one run; `failures` are the entries of patterns that could not be read.

    Places are lines and columns in plain text.  In a document, whose lines are not those of its file, they are the names
    of the place ("page 2") and of the row.
    """
    return joined([run_part(report) for report in reports], failures)


def run_part(report: Report) -> RunPart:
    """One pattern's share of a run: its rules by their names, and its results."""
    findings = wording.in_order(report)
    return {one.rule: _rule(report, one.rule) for one in findings}, [_result(report, one) for one in findings]


def joined(parts: Sequence[RunPart], failures: Sequence[dict[str, Any]] = ()) -> dict[str, Any]:
    """The log of the shares of all patterns."""
    by_name: dict[str, dict[str, Any]] = {}
    for rules, _ in parts:
        by_name = {**rules, **by_name}
    rules = [by_name[name] for name in sorted(by_name)]
    places = {rule["id"]: index for index, rule in enumerate(rules)}
    results = [{"ruleId": one["ruleId"], "ruleIndex": places[one["ruleId"]], **one} for _, own in parts for one in own]
    failed = [{"level": "error", "message": {"text": f"{one['source']['path']}: {one['error']}"}} for one in failures]
    invocation: dict[str, Any] = {"executionSuccessful": not failed}
    if failed:
        invocation["toolExecutionNotifications"] = failed
    driver = {"name": "frogproof", "version": metadata.version("frogproof"), "rules": rules}
    return {
        "$schema": "https://json.schemastore.org/sarif-2.1.0.json",
        "version": "2.1.0",
        "runs": [
            {
                "tool": {"driver": driver},
                "columnKind": "unicodeCodePoints",
                "invocations": [invocation],
                "results": results,
            }
        ],
    }


def _rule(report: Report, name: str) -> dict[str, Any]:
    rule: dict[str, Any] = {"id": name, "name": "".join(word.capitalize() for word in name.split("-"))}
    try:
        found = report.book.rule(name)
    except KeyError:
        return rule
    rule["fullDescription"] = {"text": found.why.strip()}
    rule["defaultConfiguration"] = {"level": _LEVELS[found.weight]}
    return rule


def _result(report: Report, finding: Finding) -> dict[str, Any]:
    text = [wording.tame(finding.message)]
    text += [wording.tame(wording.could_it_be(cause)) for cause in finding.likely]
    location = _location(report, finding.span)
    named = [name for name in (finding.part, finding.row) if name]
    if named:
        location["logicalLocations"] = [{"fullyQualifiedName": wording.tame("/".join(named))}]
    result: dict[str, Any] = {
        "ruleId": finding.rule,
        "level": _LEVELS[finding.weight],
        "message": {"text": "\n".join(text)},
        "locations": [location],
    }
    related = [
        {"id": number, **_location(report, other.span, wording.tame(other.label))}
        for number, other in enumerate(finding.related, 1)
    ]
    if related:
        result["relatedLocations"] = related
    if finding.replacement is not None and report.source.origin is None:
        result["fixes"] = [_fix(report, finding)]
    return result


def _location(report: Report, span: Span, label: str | None = None) -> dict[str, Any]:
    physical: dict[str, Any] = {"artifactLocation": {"uri": _uri(report.source.path)}}
    place = report.source.place(span.start)
    if place is None:
        physical["region"] = _region(report, span)
    told = ": ".join(words for words in (place, label) if words)
    return {"physicalLocation": physical, **({"message": {"text": told}} if told else {})}


def _region(report: Report, span: Span) -> dict[str, Any]:
    start, end = report.source.position(span.start), report.source.position(span.end)
    return {
        "startLine": start.line,
        "startColumn": start.column,
        "endLine": end.line,
        "endColumn": end.column,
        "charOffset": span.start,
        "charLength": span.end - span.start,
    }


def _fix(report: Report, finding: Finding) -> dict[str, Any]:
    inserted = {"insertedContent": {"text": wording.tame(finding.replacement or "")}}
    replacement = {"deletedRegion": _region(report, finding.span), **(inserted if finding.replacement else {})}
    return {
        "description": {"text": "Put the words right"},
        "artifactChanges": [{"artifactLocation": {"uri": _uri(report.source.path)}, "replacements": [replacement]}],
    }


def _uri(path: str) -> str:
    if path == "-":
        return "standard-input"
    pure = PurePath(path)
    return pure.as_uri() if pure.is_absolute() else quote(pure.as_posix().encode("utf-8", "surrogateescape"))
