"""The report for the test's coordinator as one HTML page that needs nothing else, in the look of the editor's report."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass

from lint.ledger import LedgerRow
from lint.reports import wording
from lint.reports.caution import hazard_words
from lint.reports.templating import environment
from lint.testers.points import Point
from lint.testers.review import Review
from lint.testers.verdicts import Judged, Verdict

ABREAST = 8  # testers side by side in one table: more are set in further tables
SIGNS = {
    Verdict.AGREES: ("✓", "agrees", "with what the words make, or with the print where the row was not recomputed"),
    Verdict.PRINT_WRONG: ("≠", "print wrong", "the testers and the recount agree, the print does not"),
    Verdict.WORDS: ("¶", "words", "testers agree with each other, and not with the words as read here"),
    Verdict.SLIP: ("△", "tester’s slip", "one tester differs"),
    Verdict.FOLLOWS: ("↓", "follows", "off since an earlier row, and judged from there"),
    Verdict.CANNOT_TELL: ("?", "cannot tell", "the reason stands with the point"),
}
TITLES = {
    "print-wrong": "Print wrong",
    "words-misread": "Words in doubt",
    "cannot-tell": "Cannot tell",
    "error": "Mistake reported",
    "unclear": "Unclear place",
    "typo": "Typing error",
    "other-draft": "Another draft",
    "yarn-more": "Yarn",
    "measure-off": "Measurement",
    "read-otherwise": "Sound counts, but",
    "untested": "Not tested",
    "suggestion": "Suggestion",
    "testers-slip": "Tester’s slip",
    "note": "Note",
}
# the line at a point's edge: as heavy as the editor's report has a correction, a query and a matter of style
_WEIGHTS = {
    "print-wrong": "correction",
    "words-misread": "correction",
    "typo": "style",
    "suggestion": "style",
    "note": "style",
}


@dataclass(frozen=True, slots=True)
class Cell:
    """One count in the table of testers and rows."""

    got: int
    sign: str
    words: str
    verdict: str


@dataclass(frozen=True, slots=True)
class Line:
    """One row of the table, or several alike that follow each other: what is due, and each tester's count."""

    label: str
    line: int
    printed: str
    recount: str
    cells: tuple[Cell | None, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """The counts of some testers of one size in one part."""

    size: str
    part: str
    testers: tuple[str, ...]
    lines: tuple[Line, ...]
    number: int
    several: bool  # the part's testers are more than one table holds


@dataclass(frozen=True, slots=True)
class ShownPoint:
    """A point with the words about it."""

    number: int
    title: str
    weight: str
    place: str
    line: int | None
    sizes: str
    testers: str
    point: Point
    figures: tuple[tuple[str, str, str, str], ...]  # size, printed, recount, got
    follow: str = ""  # rows that follow from this one


@dataclass(frozen=True, slots=True)
class ShownReview:
    """All that the template shows."""

    review: Review
    title: str
    sentence: str
    hazards: tuple[str, ...]
    summary: tuple[str, ...]
    open: tuple[ShownPoint, ...]
    slips: tuple[ShownPoint, ...]
    notes: tuple[ShownPoint, ...]
    tables: tuple[Table, ...]
    uncounted: tuple[str, ...]
    signs: tuple[tuple[str, str, str], ...]


def as_testers_page(review: Review) -> str:
    """The whole page."""
    return environment().get_template("testers.html").render(shown=shown_review(review), large=False)


def shown_review(review: Review) -> ShownReview:
    """A Review made ready to show."""
    points = [_point(review, number, point) for number, point in enumerate(review.points, 1)]
    used = {one.verdict for one in review.judged}
    return ShownReview(
        review,
        wording.title_of(review.report),
        sentence_of(review),
        tuple(hazard_words(review.report.source.text, review.report.book.cautions)),
        tuple(_summary(review)),
        tuple(one for one in points if one.point.open),
        tuple(one for one in points if one.point.kind == "testers-slip"),
        tuple(one for one in points if not one.point.open and one.point.kind != "testers-slip"),
        tuple(_tables(review)),
        tuple(_uncounted(review)),
        tuple(SIGNS[verdict] for verdict in Verdict if verdict in used),
    )


def sentence_of(review: Review) -> str:
    """The verdict in one sentence."""
    kinds = [point.kind for point in review.points if point.open]
    wrong, words = kinds.count("print-wrong"), kinds.count("words-misread")
    if not review.judged:
        return "No count could be set beside the pattern."
    said = []
    if wrong:
        said.append(f"{wrong} printed {'count is' if wrong == 1 else 'counts are'} wrong by testers and recount")
    if words:
        said.append(f"the words of {words} {'row' if words == 1 else 'rows'} are in doubt")
    more = len(kinds) - wrong - words
    if more:
        said.append(f"{more} {'other point is' if more == 1 else 'other points are'} open")
    return wording.opening(f"{', '.join(said)}.") if said else "Nothing is left open by the testers’ counts."


def _summary(review: Review):
    testers, rows = len(review.testers), len({one.step.row.index for one in review.judged})
    counts, agree = len(review.judged), sum(one.verdict is Verdict.AGREES for one in review.judged)
    yield f"{testers} {'tester' if testers == 1 else 'testers'}, {counts} counts of {rows} rows; {agree} agree."
    slips = sum(point.kind == "testers-slip" for point in review.points)
    if slips:
        yield f"{slips} {'slip' if slips == 1 else 'slips'} of testers, listed at the end: nothing for the pattern to mend."
    if review.unmatched:
        number = len(review.unmatched)
        yield f"{number} {'thing' if number == 1 else 'things'} could not be matched, and {'is' if number == 1 else 'are'} listed."


def _sizes(review: Review, sizes: tuple[int, ...]) -> str:
    return wording.listed([review.names.sizes[size] for size in sizes]) if review.names.sizes else ""


def _point(review: Review, number: int, point: Point) -> ShownPoint:
    row = review.report.ledger.rows[point.index] if point.index is not None else None
    return ShownPoint(
        number,
        TITLES[point.kind],
        _WEIGHTS.get(point.kind, "query"),
        f"{row.part.name}, {row.label}" if row is not None else "",
        review.report.source.line_of(row.span) if row is not None else None,
        _sizes(review, point.sizes),
        wording.listed(list(point.testers)),
        point,
        tuple(
            (_sizes(review, (size,)), _figure(printed), _figure(made), ", ".join(str(one) for one in sorted(set(got))))
            for size, printed, made, got in point.figures
        ),
        _run_of([review.report.ledger.rows[index].label for index in point.follow]),
    )


def _run_of(labels: list[str]) -> str:
    return "" if not labels else labels[0] if len(labels) == 1 else f"{labels[0]} to {labels[-1]}"


def _figure(number: int | None) -> str:
    return "—" if number is None else str(number)


# the table of testers and rows ------------------------------------------------------------------------------------


def _tables(review: Review):
    counts: dict[tuple[int, int], dict[int, dict[str, Judged]]] = defaultdict(lambda: defaultdict(dict))
    rows = review.report.ledger.rows
    for one in review.judged:
        index = one.step.row.index
        own = counts[one.step.row.size, id(rows[index].part)][index]
        if one.tester not in own or one.step.placed.unit == "main":
            own[one.tester] = one
    number = 0
    for (size, _), by_row in sorted(counts.items(), key=lambda one: (one[0][0], min(one[1]))):
        met = {tester for own in by_row.values() for tester in own}
        testers = [tester for tester in review.testers if tester in met]
        for start in range(0, len(testers), ABREAST):
            some = tuple(testers[start : start + ABREAST])
            number += 1
            lines = _merged([_line(review, rows[index], by_row[index], some) for index in sorted(by_row)])
            name = review.names.sizes[size] if review.names.sizes else ""
            yield Table(name, rows[min(by_row)].part.name, some, tuple(lines), number, len(testers) > ABREAST)


def _line(review: Review, row: LedgerRow, own: dict[str, Judged], testers: tuple[str, ...]) -> Line:
    cells = [_cell(own[tester]) if tester in own else None for tester in testers]
    due = next(iter(own.values())).step.row.due
    line = review.report.source.line_of(row.span)
    return Line(row.label, line, _figure(due.printed), _figure(due.made), tuple(cells))


def _cell(judged: Judged) -> Cell:
    sign, words, _ = SIGNS[judged.verdict]
    return Cell(judged.step.placed.got, sign, words, judged.verdict.value)


def _merged(lines: list[Line]) -> list[Line]:
    """Rows of one line of the pattern with the same counts all over, as one."""
    runs: list[list[Line]] = []
    for line in lines:
        last = runs[-1][-1] if runs else None
        same = last is not None and (line.line, line.printed, line.recount, line.cells) == (
            last.line,
            last.printed,
            last.recount,
            last.cells,
        )
        runs[-1].append(line) if same else runs.append([line])
    return [run[0] if len(run) == 1 else Line(f"{run[0].label} to {run[-1].label}", *_rest(run[0])) for run in runs]


def _rest(line: Line) -> tuple:
    return line.line, line.printed, line.recount, line.cells


def _uncounted(review: Review):
    """Runs of rows that nobody counted, by part."""
    rows, runs = review.report.ledger.rows, []
    for index in review.together.uncounted:
        if runs and index == runs[-1][-1] + 1 and rows[index].part is rows[index - 1].part:
            runs[-1].append(index)
        else:
            runs.append([index])
    for run in runs:
        first, last = rows[run[0]], rows[run[-1]]
        yield f"{first.part.name}, {first.label}" + (f" to {last.label}" if len(run) > 1 else "")
