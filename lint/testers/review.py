"""Runs the stages in order on one pattern and its testers' reports: take in, place, follow, judge, put together."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass

from lint.inspection import Report
from lint.testers.anonymous import anonymous
from lint.testers.claims import Intake, Unmatched
from lint.testers.courses import Course, course_of
from lint.testers.due import MAIN
from lint.testers.facts import facts_of
from lint.testers.intake import take_in
from lint.testers.names import Names
from lint.testers.paths import paths_of
from lint.testers.placing import Placed, Placement, place
from lint.testers.points import Point, count_findings, points_of
from lint.testers.readings import ReadingSearch
from lint.testers.signatures import Suggestion, quiet_suggestions
from lint.testers.stated import Figures, figures_of
from lint.testers.together import Together, put_together
from lint.testers.verdicts import Judged, judge


@dataclass(frozen=True, repr=False)
class Review:
    """All that testers' reports come to; the reports only show it."""

    report: Report
    names: Names
    intake: Intake
    placement: Placement
    judged: tuple[Judged, ...]
    quiet: tuple[tuple[str, Suggestion], ...]  # tester, and what may be behind something else than counts
    figures: Figures
    together: Together
    points: tuple[Point, ...]

    def __repr__(self) -> str:
        return f"Review({self.report.source.path!r}, {len(self.judged)} counts, {len(self.points)} points)"

    @property
    def testers(self) -> list[str]:
        """The testers in the order of their reports."""
        return list(dict.fromkeys(claim.who.tester for claim in self.intake.claims))

    @property
    def unmatched(self) -> tuple[Unmatched, ...]:
        """Everything that could not be matched to a meaning, a row or a size."""
        return (*self.intake.unmatched, *self.placement.unmatched)


def names_of(report: Report) -> Names:
    """The names of one pattern's sizes and parts."""
    parts = tuple(dict.fromkeys(row.part.name for row in report.ledger.rows))
    return Names(report.book.testers, report.pattern.sizes if len(report.pattern.sizes) > 1 else (), parts)


def review(report: Report, files: list[tuple[str, bytes]], hide_names: bool = False) -> Review:
    """Judge testers' reports, files by name and content.  `report` is best inspected with workings.

    Files that cannot be read are named in `intake.unread`.
    """
    names = names_of(report)
    intake = take_in(files, names, report.book.materials.hooks)
    return review_claims(report, names, anonymous(intake) if hide_names else intake)


def review_claims(report: Report, names: Names, intake: Intake) -> Review:
    """Judge what was taken in."""
    return review_placed(report, names, intake, place(report, names, intake))


def review_placed(report: Report, names: Names, intake: Intake, placement: Placement) -> Review:
    """Judge counts that stand on their rows already."""
    courses, words = _courses(report, placement), report.book.testers
    figures = figures_of(report)
    together = put_together(report, names, intake, placement, figures)
    judged = tuple(judge(courses, words, ReadingSearch(report), frozenset(count_findings(report))))
    facts = facts_of(intake, together, words)
    off = {course.tester for course in courses if course.departures}
    quiet = [
        (course.tester, suggestion)
        for course in courses
        if course.tester in facts and course.tester not in off
        for suggestion in quiet_suggestions(course, facts[course.tester], words)
    ]
    quiet = tuple(dict.fromkeys(quiet))
    points = tuple(points_of(report, names, placement, judged, together, quiet))
    return Review(report, names, intake, placement, judged, quiet, figures, together, points)


def _courses(report: Report, placement: Placement) -> list[Course]:
    """Every tester on every path that the tester counted on; counts in other units are a course each."""
    by_tester: dict[tuple[str, int, str], list[Placed]] = defaultdict(list)
    for one in placement.placed:
        by_tester[one.tester, one.size, one.unit].append(one)
    paths = defaultdict(list)
    for path in paths_of(report):
        paths[path.size].append(path)
    courses = []
    for (tester, size, unit), placed in by_tester.items():
        rows = {one.index for one in placed}
        for path in paths[size]:
            if any(row.index in rows for row in path.rows):
                own = path if unit == MAIN else path.in_unit(unit)
                courses.append(course_of(tester, own, placed))
    return courses
