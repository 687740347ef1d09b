"""A row's workings made ready to show: each clause in a line, and the sum as a person would write it down."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.finding import Finding
from lint.inspection import Report
from lint.ledger import Cell, LedgerRow, Outcome
from lint.reports.rows import made_words, printed_figures, spaces_words
from lint.reports.wording import listed
from lint.working.workings import Line, Pass, Role, Workings

_MOST_INSIDE = 40  # characters of a sum in brackets; longer ones are told by what they come to
_MOST_TERMS = 4  # sorts of passes, or of places, that are told one by one
_LONGEST_WORDS = 90  # of a repeat, whose clauses stand below it
_DOES = {
    Role.FILLING: "as often as there is room",
    Role.PASSED: "passed over",
    Role.SLIPPED: "slip stitches, not counted",
    Role.FOUNDATION: "chains to work into",
    Role.LEG: "counts together with the stitches after it",
    Role.LENGTHENS: "makes the space before it longer",
    Role.CLOSES: "closes the round as its last space",
}


@dataclass(frozen=True, slots=True)
class ShownLine:
    """A clause: its words, what was done if that needs saying, places used, stitches made, stitches so far."""

    words: str
    does: str
    times: str  # of a repeat: "8 times"
    uses: str
    makes: str
    spaces: str = ""
    total: str = ""  # "" within a repeat, whose own line has it
    depth: int = 0


@dataclass(frozen=True, slots=True)
class ShownWorkings:
    """The workings of a row in one or more sizes: the lines, the places used in all, and the sum."""

    sizes: tuple[str, ...]  # () where all sizes are alike
    lines: tuple[ShownLine, ...]
    uses: int
    makes: int
    sum: str
    brief: str  # the sum in figures alone, "" where there is nothing to add up


@dataclass(frozen=True, slots=True)
class SizedLine:
    """A clause with what it uses and makes in each size; `lines` are those of the sizes."""

    words: str
    does: str  # "" where it is not the same in all sizes; so with `times`
    times: str
    depth: int
    lines: tuple[ShownLine, ...]


def side_by_side(told: tuple[ShownWorkings, ...]) -> tuple[SizedLine, ...]:
    """The workings of several sizes in one table; () where their clauses are not the same."""
    shapes = {tuple((line.words, line.depth) for line in one.lines) for one in told}
    if len(told) < 2 or len(shapes) > 1:
        return ()
    return tuple(
        SizedLine(
            lines[0].words,
            lines[0].does if len({line.does for line in lines}) == 1 else "",
            lines[0].times if len({line.times for line in lines}) == 1 else "",
            lines[0].depth,
            lines,
        )
        for lines in zip(*(one.lines for one in told), strict=True)
    )


def shown_workings(report: Report, row: LedgerRow) -> tuple[ShownWorkings, ...]:
    """The workings of a row, sizes that are worked alike together."""
    sizes = report.pattern.sizes
    alike: dict[tuple[Workings, str], list[int]] = {}
    for size, cell in enumerate(row.cells):
        if cell.workings is not None:
            alike.setdefault((cell.workings, sum_line(report, row, size)), []).append(size)
    return tuple(
        ShownWorkings(
            () if len(members) == len(row.cells) else tuple(sizes[size] for size in members),
            tuple(shown_lines(report, workings)),
            workings.uses,
            workings.makes,
            total,
            f"{said} = {workings.makes}" if " " in (said := formula(workings)) else "",
        )
        for (workings, total), members in alike.items()
    )


def shown_lines(report: Report, workings: Workings) -> Iterator[ShownLine]:
    """Every line, those of a repeat's passes one step further in."""
    for line, total in workings.running():
        yield from _shown(report, line, 0, str(total))


def sum_line(report: Report, row: LedgerRow, size: int) -> str:
    """ "6 + 8 × (1 + 2) = 30 sc; printed: 28 sc"."""
    cell = row.cells[size]
    printed = printed_figures(report, row, size)
    return outcome_of(report, cell) + (f"; printed: {printed}" if printed else "")


def sums_under(report: Report, finding: Finding) -> Iterator[tuple[str, str]]:
    """The sums of the row that a finding is about, in the sizes in which it differs; the size is "" where all do.

    A row of a single figure adds nothing to what the finding says.
    """
    rule = report.book.checks.get(finding.rule)
    if rule is None or rule.area != "counts":
        return
    for row in report.ledger.rows:
        here = row.part.name == finding.part and row.label == finding.row
        if not here or not row.row.span.start <= finding.span.start < row.row.span.end:
            continue
        differ = [(size, cell) for size, cell in enumerate(row.cells) if cell.outcome is Outcome.DIFFERS]
        sizes = [size for size, cell in differ if cell.workings is not None and " " in formula(cell.workings)]
        alike: dict[str, list[str]] = {}
        for size in sizes:
            alike.setdefault(sum_line(report, row, size), []).append(
                report.pattern.sizes[size] if len(row.cells) > 1 else ""
            )
        for said, names in alike.items():
            yield (listed(names) if len(names) < len(row.cells) else ""), said


def outcome_of(report: Report, cell: Cell) -> str:
    """ "6 + 8 × (1 + 2) = 30 sc", with slip stitches that are counted apart."""
    made = made_words(report, cell.made)
    said = formula(cell.workings)
    if not said.isdigit():
        made = f"{said} = {made}"
    if cell.made.slips:
        made += f", and {cell.made.slips} slip stitch{'es' * (cell.made.slips > 1)} beside them"
    return made


def formula(workings: Workings) -> str:
    """The sum, clause by clause: "1 + 11", "6 × (2 + 2)", "30"."""
    return _sum(workings.lines)


def _sum(lines: tuple[Line, ...]) -> str:
    return " + ".join(term for line in lines for term in _terms(line)) or "0"


def _terms(line: Line) -> list[str]:
    """What a clause adds to the sum."""
    if not line.makes:
        return []
    if not line.passes:
        if len(line.units) > _MOST_TERMS:
            return [str(line.makes)]
        return [str(number) if each == 1 else _product(number, str(each)) for number, each in line.units]
    if len(line.passes) > _MOST_TERMS:
        return [str(line.makes)]
    return [_product(one.times, _inside(one)) for one in line.passes if one.makes]


def _product(times: int, each: str) -> str:
    """ "4 × 3", "6 × (1 + 2)"; what is done once is said without the sign."""
    if times == 1:
        return each
    return f"{times} × ({each})" if " " in each else f"{times} × {each}"


def _inside(one: Pass) -> str:
    said = _sum(one.lines)
    return said if len(said) <= _MOST_INSIDE else str(one.makes)


def _shown(report: Report, line: Line, depth: int, total: str = "") -> Iterator[ShownLine]:
    words = words_of(report, line)
    if line.passes and len(words) > _LONGEST_WORDS:
        words = f"{words[:40].rpartition(' ')[0]} … {words[-40:].partition(' ')[2]}"
    spaces = ", ".join(spaces_words(report, dict(line.spaces)))
    makes = _makes(line) if line.makes or not spaces else ""
    yield ShownLine(words, does_words(report, line), times_words(line), str(line.uses), makes, spaces, total, depth)
    done = 0
    for one in line.passes:
        if len(line.passes) > 1:
            yield ShownLine("", _which(done, one), "", _each(one, one.uses), _each(one, one.makes), depth=depth + 1)
        for inner in one.lines:
            yield from _shown(report, inner, depth + 1)
        done += one.times


def words_of(report: Report, line: Line) -> str:
    """A clause as printed, on one line."""
    return " ".join(report.source.slice(line.span).split())


def does_words(report: Report, line: Line) -> str:
    """What was done, where the words alone do not show it."""
    said = [_DOES[line.role]] if line.role in _DOES else []
    if line.stands is not None:
        said.append(_stands(report, line))
    if line.lacking:
        said.append(f"{line.lacking} {'place' if line.lacking == 1 else 'places'} too few below")
    return "; ".join(said)


def times_words(line: Line) -> str:
    """How often a repeat was worked."""
    if line.role not in (Role.REPEAT, Role.FILLING):
        return ""
    number = sum(one.times for one in line.passes)
    return {0: "not at all", 1: "once", 2: "twice"}.get(number, f"{number} times")


def _stands(report: Report, line: Line) -> str:
    stitch, alone = line.stands.stitch, line.makes <= 1 and not line.uses
    if stitch is None:
        return "does not count as a stitch" if not line.makes else "the beginning chain does not count"
    name = report.book.stitch_word(report.terms.terms, stitch)
    return f"counts as 1 {name}" if line.makes == 1 or alone else f"the beginning chain counts as 1 {name}"


def _which(done: int, one: Pass) -> str:
    """Which passes these are: "passes 1 to 4", "pass 5"."""
    first, last = done + 1, done + one.times
    return f"pass {first}" if first == last else f"passes {first} to {last}"


def _each(one: Pass, number: int) -> str:
    return f"{one.times} × {number}" if one.times > 1 else str(number)


def _makes(line: Line) -> str:
    """ "6 × 3 = 18", "1 + 3 = 4"."""
    if len(line.passes) == 1 and line.passes[0].times > 1 and line.makes:
        return f"{_each(line.passes[0], line.passes[0].makes)} = {line.makes}"
    said = "" if line.passes else " + ".join(_terms(line))
    return f"{said} = {line.makes}" if " " in said else str(line.makes)
