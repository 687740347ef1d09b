"""The files that a check can write: OUTPUTS is the one registry.  Nothing is written here, only made."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import Enum
from typing import Any

from lint.documents.unreadable import Unreadable
from lint.inspection import Report


class Output(str, Enum):
    """What can be asked for, by the name of its option."""

    HTML = "html"
    JSON = "json"
    DOCX = "docx"
    PDF = "pdf"
    SARIF = "sarif"
    CSV = "csv"
    XLSX = "xlsx"
    GRADING = "grading"

    @property
    def shows_workings(self) -> bool:
        """Whether the output tells how every count comes, or only those that differ."""
        return self in (Output.HTML, Output.JSON)

    @property
    def marks_the_file(self) -> bool:
        """Whether the output is the pattern's own file, with marks."""
        return self in (Output.DOCX, Output.PDF)


@dataclass(frozen=True, slots=True)
class Wanted:
    """An output, and the path that it goes to."""

    output: Output
    path: str


@dataclass(frozen=True, slots=True)
class Checked:
    """A pattern that was asked for: its report and the bytes of its file, or the entry that says what failed."""

    report: Report | None
    raw: bytes
    failure: dict[str, Any] | None = None


class WrongKind(Exception):
    """An output that cannot be made of what was given; the message is one sentence."""


def outputs(wanted: list[Wanted], checked: list[Checked], large: bool, several: bool) -> dict[str, bytes]:
    """The bytes of every output by its path; outputs of which there is nothing to say are left out.  May raise WrongKind.

    `several`: more than one pattern was asked for, so that JSON is a list.
    """
    job = _Job(checked, large, several)
    made = {one.path: OUTPUTS[one.output](replace(job, path=one.path)) for one in wanted if job.worth(one)}
    if len(made) < sum(job.worth(one) for one in wanted):
        raise WrongKind("two outputs cannot go to one file")
    return made


@dataclass(frozen=True, slots=True)
class _Job:
    checked: list[Checked]
    large: bool
    several: bool
    path: str = ""  # where the output goes: the end of its name tells the form of a grading table

    @property
    def reports(self) -> list[Report]:
        return [one.report for one in self.checked if one.report is not None]

    def worth(self, wanted: Wanted) -> bool:
        """Whether an output is made although nothing could be checked: only lists that tell of failures are."""
        listed = wanted.output is Output.JSON and (self.several or wanted.path == "-")
        return bool(self.reports) or listed

    def only(self, kind: str, option: str) -> Checked:
        """The one document that a marked copy is made of."""
        if self.several:
            raise WrongKind(f"{option} marks one document at a time; name one .{kind} file")
        origin = self.checked[0].report.source.origin if self.checked[0].report is not None else None
        if origin is None or origin.kind != kind:
            raise WrongKind(f"{option} marks a .{kind} file, and {self.checked[0].report.source.path} is none")
        return self.checked[0]


def _html(job: _Job) -> bytes:
    from lint.reports.page import as_page, as_pages

    page = as_pages(job.reports, job.large) if len(job.reports) > 1 else as_page(job.reports[0], job.large)
    return page.encode("utf-8", "backslashreplace")


def _json(job: _Job) -> bytes:
    from lint.reports.data import as_data

    entries = [as_data(one.report) if one.report is not None else one.failure for one in job.checked]
    text = json.dumps(entries if job.several else entries[0], indent=1, ensure_ascii=False) + "\n"
    return text.encode("utf-8", "backslashreplace")


def _docx(job: _Job) -> bytes:
    from lint.reports.marked import as_docx

    return _marked(as_docx, job.only("docx", "--docx"))


def _pdf(job: _Job) -> bytes:
    from lint.reports.marked import as_pdf

    return _marked(as_pdf, job.only("pdf", "--pdf-notes"))


def _marked(make: Callable[[Report, bytes], bytes], checked: Checked) -> bytes:
    try:
        return make(checked.report, checked.raw)
    except Unreadable as error:
        raise WrongKind(f"{checked.report.source.path} {error}") from error


def _sarif(job: _Job) -> bytes:
    from lint.reports.sarif import as_sarif

    failures = [one.failure for one in job.checked if one.failure is not None]
    text = json.dumps(as_sarif(job.reports, failures), indent=1, ensure_ascii=False) + "\n"
    return text.encode("utf-8", "backslashreplace")


def _csv(job: _Job) -> bytes:
    from lint.reports.sheets import as_csv

    return as_csv(job.reports)


def _xlsx(job: _Job) -> bytes:
    from lint.reports.sheets import as_xlsx

    return as_xlsx(job.reports)


def _grading(job: _Job) -> bytes:
    from lint.reports.grading import grading_file

    if not job.path.lower().endswith((".csv", ".xlsx", ".html")):
        raise WrongKind(f"{job.path}: a grading table is written as .csv, .xlsx or .html")
    return grading_file(job.reports, job.path)


OUTPUTS: dict[Output, Callable[[_Job], bytes]] = {
    Output.HTML: _html,
    Output.JSON: _json,
    Output.DOCX: _docx,
    Output.PDF: _pdf,
    Output.SARIF: _sarif,
    Output.CSV: _csv,
    Output.XLSX: _xlsx,
    Output.GRADING: _grading,
}
