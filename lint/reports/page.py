"""The report as one HTML page that needs nothing else: the pattern's own text with an editor's notes in its margin.

Everything that comes from the pattern passes through Jinja's escaping and `tame`; nothing is fetched and no script runs.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from markupsafe import Markup

from lint.finding import Finding
from lint.grading import GradingTable, grading_table
from lint.inspection import Report
from lint.ledger import LedgerRow
from lint.maker.words import MakersWords
from lint.pattern import Part as PatternPart
from lint.reports import wording
from lint.reports.caution import hazard_words
from lint.reports.help import RuleHelp, ShownGlossary, rules_behind, shown_glossary
from lint.reports.marks import TextLine, cut
from lint.reports.pictures import Picture, pictures
from lint.reports.rows import ShownRow, not_recomputed, shown_rows, what_stopped
from lint.reports.templating import environment
from lint.reports.verdict import PlainVerdict, plain_verdict
from lint.reports.workings import ShownWorkings, SizedLine, shown_workings, side_by_side, sums_under
from lint.ruletexts import CheckRule, WordRule

Part = tuple[str, str]  # one pattern's share of a page of several

_ASKS_HOW = ("counts", "wording")  # areas of points that may hang on how a row was worked
_URGENT_NAMED = 5  # notes that are told at the head of the page
_UNCHECKED_NAMED = 6  # rows not recomputed that are named at the head of the page


def as_page(report: Report, large: bool = False) -> str:
    """One pattern's report as a whole HTML page; `large`: opened in large print."""
    return environment().get_template("page.html").render(shown=ShownPattern.of(report, ""), large=large)


def as_pages(reports: list[Report], large: bool = False) -> str:
    """Several patterns' reports as one HTML page: an index with each verdict, then each pattern."""
    return "".join(joined([as_part(report, f"p{number}-") for number, report in enumerate(reports, 1)], large))


def as_part(report: Report, prefix: str) -> Part:
    """One pattern's share of a page of several: its entry in the index, and the rest; `prefix` begins all its anchors."""
    shown = ShownPattern.of(report, prefix)
    template = environment().get_template("part.html").module
    return str(template.entry(shown)), str(template.whole(shown))


def joined(parts: Sequence[Part], large: bool = False) -> Iterator[str]:
    """The page of several patterns, a stretch at a time."""
    return (
        environment().get_template("pages.html").generate(parts=[tuple(map(Markup, one)) for one in parts], large=large)
    )


def as_grading_page(tables: Sequence[tuple[str, GradingTable]]) -> str:
    """The sizes of one pattern or several side by side, each under its title, as one HTML page."""
    return environment().get_template("sizes.html").render(tables=tables, large=False)


@dataclass(frozen=True, slots=True)
class Note:
    """A finding as an editor's note."""

    number: int
    weight: str
    title: str
    finding: Finding
    line: int
    message: str
    place: str
    sizes: str
    area: str  # of the rule: counts, wording…
    sums: tuple[tuple[str, str], ...]  # how the row's count comes, by size
    related: tuple[tuple[tuple[int, ...], str], ...]
    why: str


@dataclass(frozen=True, slots=True)
class Group:
    """A line with the notes that begin on it, and the lines without notes that follow.

    Notes of one rule on the same words, as on the sections that are missing, stand together.
    """

    head: TextLine | None
    notes: tuple[tuple[Note, ...], ...]
    rest: tuple[TextLine, ...]


@dataclass(frozen=True, slots=True)
class Told:
    """Workings that some or all (`rows` is "") of the rows in a line share; sizes side by side where they can be."""

    rows: str
    workings: tuple[ShownWorkings, ...]
    sized: tuple[SizedLine, ...]


@dataclass(frozen=True, slots=True)
class How:
    """How the count of a line of the ledger comes; `open` where somebody will ask."""

    open: bool
    brief: str
    told: tuple[Told, ...]


@dataclass(frozen=True, slots=True)
class PartTable:
    """A part's rows in the ledger, each with the notes on it and how its count comes."""

    part: PatternPart
    rows: tuple[tuple[ShownRow, tuple[Note, ...], How | None], ...]


@dataclass(frozen=True, slots=True)
class Unread:
    """A row that was not recomputed, and the words that stopped it."""

    row: ShownRow
    words: str
    quoted: bool


@dataclass(frozen=True, slots=True)
class MakersText:
    """The pattern's words as the maker of one size reads them: each line's number in the file, and what it says."""

    size: str
    points: str
    lines: tuple[tuple[int, str], ...]


@dataclass(frozen=True, slots=True)
class ShownPattern:
    """All that the templates show of one pattern; `id` sets its anchors apart from other patterns' on the page."""

    id: str
    report: Report
    title: str
    points: str
    verdict: PlainVerdict
    first: tuple[Note, ...]  # what to put right first
    recomputed: str
    weights: tuple[tuple[str, wording.WeightWords, tuple[Note, ...]], ...]
    hazards: tuple[str, ...]
    notes: tuple[Note, ...]
    groups: tuple[Group, ...]
    tables: tuple[PartTable, ...]
    unread: tuple[Unread, ...]
    grading: GradingTable
    makers: tuple[MakersText, ...]
    pictures: tuple[Picture, ...]
    glossary: ShownGlossary
    rules: tuple[RuleHelp, ...]
    named: int = _UNCHECKED_NAMED

    @classmethod
    def of(cls, report: Report, prefix: str) -> ShownPattern:
        findings = wording.in_order(report)
        notes = tuple(_note(report, number, finding) for number, finding in enumerate(findings, 1))
        lines = cut(report.source, [finding.span for finding in findings])
        return cls(
            prefix,
            report,
            wording.title_of(report),
            wording.points(report),
            plain_verdict(report),
            tuple(_most_urgent(notes)),
            ". ".join((wording.rows_recomputed(report), *wording.read_as(report))),
            tuple(
                (w.value, words, tuple(n for n in notes if n.finding.weight is w))
                for w, words in wording.WEIGHTS.items()
            ),
            tuple(hazard_words(report.source.text, report.book.cautions)),
            notes,
            tuple(_groups(lines, notes)),
            tuple(_tables(report, notes)),
            tuple(Unread(row, *what_stopped(report, row)) for row in not_recomputed(report)),
            grading_table(report),
            tuple(_makers_texts(report)),
            pictures(report, findings),
            shown_glossary(report),
            rules_behind(report),
        )


def _makers_texts(report: Report) -> Iterator[MakersText]:
    """One for each size of a pattern in several."""
    sizes, own_words = report.pattern.sizes, MakersWords(report)
    for place, size in enumerate(sizes if len(sizes) > 1 else ()):
        own = tuple(one for one in report.findings if not one.sizes or size in one.sizes)
        lines = enumerate(own_words.words(place).splitlines(), 1)
        words = tuple((number, line) for number, line in lines if line.strip())
        yield MakersText(size, wording.points(replace(report, findings=own)), words)


def _note(report: Report, number: int, finding: Finding) -> Note:
    rule = _rule(report, finding)
    return Note(
        number,
        finding.weight.value,
        wording.WEIGHTS[finding.weight].title,
        finding,
        report.source.line_of(finding.span),
        wording.message_of(finding),
        ", ".join(name for name in (wording.place_of(finding), report.source.place(finding.span.start)) if name),
        wording.in_sizes(finding.sizes).removeprefix("In ") if finding.sizes else "",
        rule.area if rule is not None else "",
        tuple(sums_under(report, finding)),
        tuple(wording.related_lines(report, finding)),
        rule.why.strip() if rule is not None else "",
    )


def _rule(report: Report, finding: Finding) -> CheckRule | WordRule | None:
    try:
        return report.book.rule(finding.rule)
    except KeyError:
        return None


def _groups(lines: list[TextLine], notes: tuple[Note, ...]) -> list[Group]:
    """The lines with the notes beside them; matters of style stand by themselves, after the text."""

    def beside(number: int) -> bool:
        return notes[number - 1].weight != "style"

    runs: list[list[TextLine]] = []
    for line in lines:
        if any(beside(number) for number in line.notes) or not runs:
            runs.append([])
        runs[-1].append(line)
    groups = []
    for first, *rest in runs:
        if any(beside(number) for number in first.notes):
            groups.append(
                Group(
                    first,
                    tuple(_together([notes[number - 1] for number in sorted(first.notes) if beside(number)])),
                    tuple(rest),
                )
            )
        else:
            groups.append(Group(None, (), (first, *rest)))
    return groups


def _most_urgent(notes: Sequence[Note]) -> list[Note]:
    """The notes on counts that are named on the first page, what is certainly wrong before the questions."""
    of_counts = [note for note in notes if note.area == "counts" and note.weight != "style"]
    return sorted(of_counts, key=lambda note: (note.weight != "correction", note.number))[:_URGENT_NAMED]


def _together(notes: list[Note]) -> list[tuple[Note, ...]]:
    """The notes on a line; neighbours of one rule, on the same words and with a sentence alone, in one."""

    def sort(note: Note) -> tuple:
        found = note.finding
        alone = not (found.likely or found.related or note.sums or found.found or found.expected or found.replacement)
        return found.rule, found.span, found.weight, None if alone else note.number

    return [tuple(alike) for _, alike in groupby(notes, sort)]


def _tables(report: Report, notes: tuple[Note, ...]) -> list[PartTable]:
    by_part = [
        (part, shown_rows(report, [row for row in report.ledger.rows if row.part is part]))
        for part in report.pattern.parts
    ]
    on = _notes_by_row([row for _, rows in by_part for row in rows], notes)
    return [
        PartTable(part, tuple((row, notes := tuple(on.get(id(row), ())), _how(report, row, notes)) for row in rows))
        for part, rows in by_part
        if rows
    ]


def _how(report: Report, row: ShownRow, notes: tuple[Note, ...]) -> How | None:
    """How a line's count comes, told once for all of its rows that are worked alike."""
    by_workings: dict[tuple, list[LedgerRow]] = {}
    for one in row.rows:
        by_workings.setdefault(tuple(cell.workings for cell in one.cells), []).append(one)
    told = [
        Told(_named(rows) if len(by_workings) > 1 else "", shown, side_by_side(shown))
        for rows in by_workings.values()
        if (shown := shown_workings(report, rows[0]))
    ]
    if not told:
        return None
    asked = row.differs or any(note.weight != "style" and note.area in _ASKS_HOW for note in notes)
    briefs = {one.brief for one_told in told for one in one_told.workings}
    return How(asked, briefs.pop() if len(briefs) == 1 else "", tuple(told))


def _named(rows: list[LedgerRow]) -> str:
    """ "Row 4, Row 6 and 9 more like them"."""
    labels = [row.label for row in rows]
    return (
        wording.listed(labels) if len(labels) < 4 else f"{labels[0]}, {labels[1]} and {len(labels) - 2} more like them"
    )


def _notes_by_row(rows: list[ShownRow], notes: tuple[Note, ...]) -> dict[int, list[Note]]:
    """The notes on each line of the ledger: on the row they name, else on the first that comes from the same words."""
    found: dict[int, list[Note]] = {}
    for note in notes:
        at = note.finding.span.start
        near = [row for row in rows if row.first.row.span.start <= at < row.first.row.span.end]
        named = [row for row in near if note.finding.row in (row.label, row.first.label)]
        for row in (named or near)[:1]:
            found.setdefault(id(row), []).append(note)
    return found
