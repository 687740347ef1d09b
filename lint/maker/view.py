"""The report of a pattern as the maker of one size reads it: that size's words, rows, counts and findings.

Nothing is found here that the whole report has not: each of its findings that concerns the size is told again, in the
figures of this size where its check finds it in the pattern of one size, else in its own words.
"""

from __future__ import annotations

from dataclasses import replace

from lint.checks import run_checks
from lint.checks.context import Context
from lint.finding import Finding
from lint.grade import grade
from lint.inspection import Report
from lint.likely.causes import explain
from lint.maker.swaps import Swaps
from lint.maker.words import MakersWords
from lint.pattern import Label, Pattern
from lint.reading.sizes.audience import SizeWords
from lint.source import Origin, SourceText, Span
from lint.working.onesize import pattern_for
from lint.working.pieces import PatternWorker


class NoSuchSize(Exception):
    """A size that the pattern does not have; the message is one sentence that names those it has."""


def size_called(report: Report, name: str) -> int:
    """The place of a size that is named as makers do: "M", "medium", "2nd".  Raises NoSuchSize."""
    names = report.pattern.sizes
    if len(names) < 2:
        raise NoSuchSize("this pattern is read as one size, so there is none to choose")
    exact = [place for place, own in enumerate(names) if own.casefold() == name.strip().casefold()]
    found = exact or SizeWords(names).sizes_of(name.strip()) or ()
    if len(found) != 1:
        what = f"“{name}” names several sizes; choose one of" if found else f"there is no size “{name}”; its sizes are"
        raise NoSuchSize(f"{what} {', '.join(names[:-1])} and {names[-1]}")
    return found[0]


def report_for(report: Report, size: int, workings: bool = True) -> Report:
    """The report as the maker of one size (counted from 0) reads it; `workings` as for `inspect`."""
    swaps = MakersWords(report).swaps(size)
    source = _source(report.source, swaps)
    name = report.pattern.sizes[size]
    pattern = _pattern(report, size, swaps, source)
    ledger = PatternWorker(pattern, report.book, workings).ledger()
    causes = explain(source, pattern, report.book, ledger)
    context = Context(source, pattern, report.terms, report.lexicon, ledger, report.book, causes, report.house)
    findings = _told_anew(report, name, swaps, run_checks(context))
    graded = grade(findings, *ledger.recomputed(), report.book)
    return replace(report, source=source, pattern=pattern, ledger=ledger, findings=findings, grade=graded, maker=name)


def _source(source: SourceText, swaps: Swaps) -> SourceText:
    origin = source.origin
    if origin is not None:
        pieces = (
            replace(
                one,
                start=swaps.span(Span(one.start, one.end)).start,
                end=swaps.span(Span(one.start, one.end)).end,
                node=-1,
            )
            for one in origin.pieces
        )
        origin = Origin(origin.kind, tuple(pieces), origin.notes)
    return SourceText(swaps.applied(source.text), source.path, origin)


def _pattern(report: Report, size: int, swaps: Swaps, source: SourceText) -> Pattern:
    """The pattern of one size, every place where it stands in that size's words."""
    own = pattern_for(report.pattern, size)
    moved: Pattern = swaps.moved(own)
    parts = []
    for old_part, part in zip(own.parts, moved.parts, strict=True):
        rows = tuple(
            replace(row, label=_label(old.label, row.label, report.source, source)) if row.label is not None else row
            for old, row in zip(old_part.rows, part.rows, strict=True)
        )
        if rows:
            parts.append(replace(part, rows=rows))
    return replace(moved, parts=tuple(parts), sizes=(report.pattern.sizes[size],))


def _label(old: Label | None, label: Label, before: SourceText, now: SourceText) -> Label:
    """A label whose words, where they are those of the text, are this size's."""
    same = old is not None and " ".join(before.slice(old.span).split()) == " ".join(old.words.split())
    return replace(label, words=" ".join(now.slice(label.span).split())) if same else label


def _told_anew(report: Report, name: str, swaps: Swaps, anew: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The whole report's findings that concern a size, each as it is found in the pattern of that size, if it is."""
    free = list(anew)
    told: list[Finding] = []
    for finding in report.findings:
        if finding.sizes and name not in finding.sizes:
            continue
        own = replace(swaps.moved(finding), sizes=())
        again = [other for other in free if other.rule == own.rule and _touch(other, own)]
        if again:
            own = min(again, key=lambda other: (other.message != own.message, other.span != own.span))
            free.remove(own)
        told.append(own)
    return tuple(sorted(told, key=lambda f: (f.span.start, f.span.end, f.rule, f.message)))


def _touch(one: Finding, other: Finding) -> bool:
    return one.span.start <= other.span.end and other.span.start <= one.span.end
