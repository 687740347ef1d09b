"""Draft against draft as one HTML page and on the terminal."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.drafts.comparison import Comparison, CountChange
from lint.finding import Finding
from lint.inspection import Report
from lint.reports import wording
from lint.reports.caution import hazard_words
from lint.reports.templating import environment
from lint.reports.terminal import write
from lint.reports.testers_page import TITLES
from lint.testers.due import Due
from lint.testers.points import Point


@dataclass(frozen=True, slots=True)
class Entry:
    """One point: what it is, where, and what it says; `note` is what changed about it."""

    title: str
    weight: str
    place: str
    line: int | None
    message: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """A row whose counts changed, in words."""

    place: str
    size: str
    line: int
    old: str
    new: str


@dataclass(frozen=True, slots=True)
class ShownComparison:
    """All that the template shows."""

    title: str
    sentence: str
    groups: tuple[tuple[str, tuple[Entry, ...]], ...]
    counts: tuple[Change, ...]
    hazards: tuple[str, ...]


def as_drafts_page(found: Comparison) -> str:
    """The whole page."""
    return environment().get_template("drafts.html").render(shown=shown_comparison(found), large=False)


def show(found: Comparison) -> None:
    """Print a summary to standard output, open points first."""
    shown = shown_comparison(found)
    write(shown.title)
    write(shown.sentence)
    for heading, entries in shown.groups:
        write("")
        write(f"{heading}: {len(entries)}")
        for one in entries:
            where = ", ".join(words for words in (one.place, f"line {one.line}" if one.line else "") if words)
            write(f"  {one.title}{f' - {where}' if where else ''}: {one.message}{f' ({one.note})' if one.note else ''}")
    if shown.counts:
        write("")
        write("Rows whose counts changed:")
        for change in shown.counts:
            size = f", size {change.size}" if change.size else ""
            write(f"  {change.place}{size}, line {change.line}: {change.old} -> {change.new}")


def one_line(found: Comparison) -> str:
    """The title and the sentence."""
    shown = shown_comparison(found)
    return wording.tame(f"{shown.title}: {shown.sentence}")


def shown_comparison(found: Comparison) -> ShownComparison:
    """A Comparison made ready to show."""
    groups = [
        ("Open still", tuple(_open(found))),
        ("New", tuple(_entry(found.new, finding) for finding in found.new_findings)),
        ("Settled", tuple(_entry(found.old, finding) for finding in found.settled)),
    ]
    if found.testers is not None:
        told = found.testers
        groups += [
            ("Testers’ points open still", tuple(_point(found.new, point, note) for point, note in told.open)),
            ("Testers’ points that are new with this draft", tuple(_point(found.new, point) for point in told.new)),
            ("Testers’ points settled", tuple(_point(found.old, point) for point in told.settled)),
        ]
    return ShownComparison(
        wording.title_of(found.new),
        _sentence(found),
        tuple(groups),
        tuple(_changes(found)),
        tuple(hazard_words(found.new.source.text, found.new.book.cautions)),
    )


def _sentence(found: Comparison) -> str:
    told = found.testers
    settled = len(found.settled) + (len(told.settled) if told is not None else 0)
    still = len(found.open) + (len(told.open) if told is not None else 0)
    new = len(found.new_findings) + (len(told.new) if told is not None else 0)
    rows = len({(one.part, one.row, one.line) for one in found.counts})
    changed = f"the counts of {rows} {'row' if rows == 1 else 'rows'} changed" if rows else "no row’s count changed"
    return f"{settled} settled, {still} open still, {new} new; {changed}."


def _open(found: Comparison) -> Iterator[Entry]:
    for one in found.open:
        yield _entry(found.new, one.new, "its words or figures have changed" if one.changed else "")


def _entry(report: Report, finding: Finding, note: str = "") -> Entry:
    words = wording.WEIGHTS[finding.weight]
    return Entry(
        words.title,
        finding.weight.value,
        wording.place_of(finding),
        report.source.line_of(finding.span),
        wording.message_of(finding),
        note,
    )


def _point(report: Report, point: Point, note: str = "") -> Entry:
    row = report.ledger.rows[point.index] if point.index is not None else None
    said = point.says or " ".join(f"“{remark.words}”" for remark in point.remarks)
    who = wording.listed(list(point.testers))
    return Entry(
        TITLES[point.kind],
        "query",
        f"{row.part.name}, {row.label}" if row is not None else "",
        report.source.line_of(row.span) if row is not None else None,
        f"{said} ({who})" if who else said,
        note,
    )


def _changes(found: Comparison) -> Iterator[Change]:
    sizes = found.new.pattern.sizes
    for one in found.counts:
        yield Change(f"{one.part}, {one.row}", _size(sizes, one), one.line, _due(one.old), _due(one.new))


def _size(sizes: tuple[str, ...], one: CountChange) -> str:
    return sizes[one.size] if len(sizes) > 1 and one.size < len(sizes) else ""


def _due(due: Due | None) -> str:
    """ "printed 40, recount 38", or that the draft does not have the row."""
    if due is None:
        return "not in this draft"
    printed = f"printed {due.printed}" if due.printed is not None else "nothing printed"
    return f"{printed}, recount {due.made if due.made is not None else 'not possible'}"
