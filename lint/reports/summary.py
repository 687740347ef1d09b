"""A report in a few plain values: what a table over many patterns says of each; and what comes of a pattern."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from lint.finding import Weight
from lint.inspection import Report
from lint.reports import wording
from lint.reports.terminal import one_line


@dataclass(frozen=True, slots=True)
class Summary:
    """One pattern at a glance; `rows` of `of` rows (times sizes) were recomputed."""

    title: str
    kind: str  # of its document: text | docx | pdf…
    terms: str
    sizes: int
    verdict: str  # ready | queries | corrections
    sentence: str
    score: float
    corrections: int
    queries: int
    style: int
    rows: int
    of: int
    line: str  # all of it in one line, to read

    def reaches(self, weight: str) -> bool:
        """Whether there is a point of this weight or of a heavier one."""
        return bool(self.corrections or (weight == "query" and self.queries))


@dataclass(frozen=True, slots=True)
class Checked:
    """What came of one pattern: a summary and its shares of the outputs, or the problem that stood in the way."""

    path: str
    summary: Summary | None = None
    shares: dict[Any, Any] = field(default_factory=dict)
    problem: str = ""


def summary_of(report: Report) -> Summary:
    """A report at a glance."""
    done, of = report.recomputed
    corrections, queries, style = (wording.number_of(report, weight) for weight in Weight)
    return Summary(
        wording.tame(wording.title_of(report)),
        report.source.origin.kind if report.source.origin is not None else "text",
        report.terms.terms,
        max(1, len(report.pattern.sizes)),
        report.grade.verdict,
        report.grade.sentence,
        report.grade.score,
        corrections,
        queries,
        style,
        done,
        of,
        one_line(report),
    )
