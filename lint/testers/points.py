"""The points for the coordinator: what testers' reports leave open, and what they settle."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from lint.finding import Finding, Likely, Weight
from lint.inspection import Report
from lint.testers.claims import Remark
from lint.testers.names import Names
from lint.testers.placing import Placement
from lint.testers.readings import Reading
from lint.testers.signatures import Suggestion
from lint.testers.together import Together
from lint.testers.verdicts import Judged, Verdict

KINDS = {  # in the order in which they are shown; whether the pattern's people have to do something about it
    "print-wrong": True,
    "words-misread": True,
    "cannot-tell": True,
    "error": True,
    "unclear": True,
    "typo": True,
    "other-draft": True,
    "yarn-more": True,
    "measure-off": True,
    "read-otherwise": True,
    "untested": True,
    "suggestion": False,
    "testers-slip": False,
    "note": False,
}


@dataclass(frozen=True, slots=True)
class Point:
    """One point: its kind (a key of KINDS), where it is, whose it is, and what is to be said.

    `index` is the row's place in the ledger; `figures` are the printed count, the recount and what was got, by size.
    """

    kind: str
    says: str
    testers: tuple[str, ...] = ()
    index: int | None = None
    sizes: tuple[int, ...] = ()
    figures: tuple[tuple[int, int | None, int | None, tuple[int, ...]], ...] = ()
    likely: tuple[Suggestion, ...] = ()
    readings: tuple[Reading, ...] = ()
    remarks: tuple[Remark, ...] = field(default_factory=tuple)
    causes: tuple[Likely, ...] = ()  # what the editor's reading gives as likely causes
    follow: tuple[int, ...] = ()  # rows that follow from this one

    @property
    def open(self) -> bool:
        return KINDS[self.kind]


_COUNT_POINTS = {
    Verdict.PRINT_WRONG: "print-wrong",
    Verdict.WORDS: "words-misread",
    Verdict.CANNOT_TELL: "cannot-tell",
    Verdict.SLIP: "testers-slip",
}


def points_of(
    report: Report,
    names: Names,
    placement: Placement,
    judged: tuple[Judged, ...],
    together: Together,
    quiet: tuple[tuple[str, Suggestion], ...],
) -> Iterator[Point]:
    """Every point, by kind, and within a kind in the order of the pattern."""
    found = [
        *_with_causes(report, list(_of_counts(judged))),
        *_of_remarks(placement),
        *_of_drafts(placement),
        *_of_yarn(together),
        *_of_measures(together),
        *(Point("read-otherwise", one.says, (tester,), likely=(one,)) for tester, one in quiet),
        *(Point("untested", f"Nobody made size {names.sizes[size]}.", sizes=(size,)) for size in together.untested),
    ]
    order = list(KINDS)
    last = len(report.ledger.rows)
    yield from sorted(found, key=lambda p: (order.index(p.kind), p.index if p.index is not None else last))


def _of_counts(judged: tuple[Judged, ...]) -> Iterator[Point]:
    """One point for the counts of one row that have one verdict, and are off by the same number."""
    groups: dict[tuple, list[Judged]] = defaultdict(list)
    for one in judged:
        kind = _COUNT_POINTS.get(one.verdict)
        if kind is not None:
            off = None if one.verdict is Verdict.PRINT_WRONG else one.step.off
            who = one.tester if one.verdict is Verdict.SLIP else None
            groups[kind, one.step.row.index, off, who, one.step.placed.unit].append(one)
    for (kind, index, *_), ones in groups.items():
        best = max(ones, key=lambda one: (len(one.readings), len(one.likely)))
        figures = []
        for size in sorted({one.step.row.size for one in ones}):
            own = [one for one in ones if one.step.row.size == size]
            due = own[0].step.row.due
            figures.append((size, due.printed, due.made, tuple(one.step.placed.got for one in own)))
        testers = tuple(dict.fromkeys(one.tester for one in ones))
        sizes = tuple(size for size, *_ in figures)
        yield Point(kind, _sentence(best.why), testers, index, sizes, tuple(figures), best.likely, best.readings)


def _with_causes(report: Report, points: list[Point]) -> Iterator[Point]:
    """Points with the likely causes that the editor's reading gives; prints that are wrong through an earlier row go with it."""
    found = count_findings(report)
    heads: list[Point] = []
    for point in sorted((p for p in points if p.kind == "print-wrong"), key=lambda p: p.index):
        if point.index not in found and heads and _is_of_one_piece(report, heads[-1], point):
            heads[-1] = replace(heads[-1], follow=(*heads[-1].follow, point.index))
        else:
            heads.append(point)
    for point in (*heads, *(p for p in points if p.kind != "print-wrong")):
        finding = found.get(point.index) if point.kind in ("print-wrong", "words-misread") else None
        yield replace(point, causes=finding.likely) if finding is not None and not point.readings else point


def count_findings(report: Report) -> dict[int, Finding]:
    """By place in the ledger, the editor's finding on the count of a row; rows that follow from another have none."""
    found: dict[int, Finding] = {}
    for finding in report.findings:
        if finding.row is None or finding.weight is Weight.STYLE or report.book.rule(finding.rule).area != "counts":
            continue
        for index, row in enumerate(report.ledger.rows):
            span = row.row.span
            if (
                row.label == finding.row
                and row.part.name == finding.part
                and span.start <= finding.span.start < span.end
            ):
                found.setdefault(index, finding)
    return found


def _is_of_one_piece(report: Report, head: Point, point: Point) -> bool:
    rows = report.ledger.rows
    return rows[head.index].part is rows[point.index].part


def _of_remarks(placement: Placement) -> Iterator[Point]:
    """Remarks of one kind on one row together; those on no row each by itself."""
    by_place: dict[tuple, list[Remark]] = defaultdict(list)
    for number, (remark, index) in enumerate(placement.remarks):
        by_place[remark.kind, index, None if index is not None else number].append(remark)
    for (kind, index, _), remarks in by_place.items():
        testers = tuple(dict.fromkeys(remark.who.tester for remark in remarks))
        yield Point(kind, "", testers, index, remarks=tuple(remarks))


def _of_drafts(placement: Placement) -> Iterator[Point]:
    groups: dict[tuple, list] = defaultdict(list)
    for one in placement.placed:
        if one.other_draft:
            groups[one.index, one.claim.printed, one.due.printed].append(one)
    for (index, theirs, ours), ones in groups.items():
        testers = tuple(dict.fromkeys(one.tester for one in ones))
        says = f"Their copy says {theirs} here, this one {ours}: was another draft tested?"
        yield Point("other-draft", says, testers, index, tuple(sorted({one.size for one in ones})))


def _of_yarn(together: Together) -> Iterator[Point]:
    for line in together.yarn:
        if line.more and line.stated is not None:
            unit = {"g": "g", "m": "m", "ball": "balls"}[line.unit]
            several = f", {line.on_average:.3g} {unit} on average" if len(line.used) > 1 else ""
            says = (
                f"{line.most:.3g} {unit} of yarn were needed{several}; stated are {line.stated:.3g} {unit}. "
                "Is the amount to be raised?"
            )
            testers = tuple(dict.fromkeys(one.who.tester for one in line.used))
            yield Point("yarn-more", says, testers, sizes=(line.size,))


def _of_measures(together: Together) -> Iterator[Point]:
    for line in together.measures:
        if line.off and line.stated is not None:
            says = f"{_sentence(line.what)[:-1]}: {line.on_average:.3g} cm measured, {line.stated:.3g} cm stated."
            testers = tuple(dict.fromkeys(one.who.tester for one in line.got))
            yield Point("measure-off", says, testers, sizes=(line.size,))


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}." if words else ""
