"""The ledger made ready to show: alike rows of a range in one line, stitches by the pattern's own names."""

from __future__ import annotations

import re
from dataclasses import dataclass

from lint.inspection import Report
from lint.ledger import Cell, LedgerRow, Outcome
from lint.working.fabric import Made

OUTCOMES = {
    Outcome.AGREES: ("✓", "agrees"),
    Outcome.DIFFERS: ("≠", "differs"),
    Outcome.NOT_STATED: ("–", "nothing printed"),
    Outcome.NOT_RECOMPUTED: ("?", "not recomputed"),
    Outcome.NOT_WORKED: ("·", "not worked in this size"),
}


@dataclass(frozen=True, slots=True)
class ShownCell:
    """What came of a row in one size."""

    outcome: str
    sign: str
    words: str
    made: str
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ShownRow:
    """One line of the ledger: a row, or several alike."""

    first: LedgerRow
    label: str
    line: int
    printed: str
    cells: tuple[ShownCell, ...]
    rows: tuple[LedgerRow, ...]

    @property
    def number(self) -> int:
        """How many rows are in this line."""
        return len(self.rows)

    @property
    def differs(self) -> bool:
        return any(cell.outcome is Outcome.DIFFERS for row in self.rows for cell in row.cells)

    @property
    def assumed(self) -> bool:
        """Whether the row was worked on a printed count, because of the row below nothing better is known."""
        return any(cell.assumed and cell.made is not None for cell in self.first.cells)

    @property
    def stopped(self) -> bool:
        return any(cell.outcome is Outcome.NOT_RECOMPUTED for cell in self.first.cells)


def shown_rows(report: Report, rows: list[LedgerRow]) -> list[ShownRow]:
    """Lines of the ledger, in order; neighbours that come from one printed row and are alike are one line."""
    runs: list[list[LedgerRow]] = []
    last: tuple | None = None
    for row in rows:
        key = _alike(report, row)
        if runs and key == last and row.row is runs[-1][0].row and row.part is runs[-1][0].part:
            runs[-1].append(row)
        else:
            runs.append([row])
        last = key
    return [_shown(report, run) for run in runs]


def not_recomputed(report: Report) -> list[ShownRow]:
    """The lines of the ledger that could not be recomputed in some size."""
    return [row for row in shown_rows(report, list(report.ledger.rows)) if row.stopped]


def what_stopped(report: Report, row: ShownRow) -> tuple[str, bool]:
    """The words that stopped a row, and whether they are the pattern's own (else they say the reason)."""
    cell = next(cell for cell in row.first.cells if cell.outcome is Outcome.NOT_RECOMPUTED)
    if cell.stopped_at is not None and cell.stopped_by:
        own = report.source.slice(cell.stopped_at)
        if _bare(own) == _bare(cell.stopped_by):
            return own, True
    return cell.stopped_by or "its words were not understood", False


def made_words(report: Report, made: Made) -> str:
    """ "28 sts (24 dc, 4 FPdc), 4 ch-2 sps, 4 corners"."""
    kinds = [f"{number} {report.book.stitch_word(report.terms.terms, kind)}" for kind, number in made.by_kind.items()]
    said = []
    if len(kinds) == 1:
        said = kinds
    elif kinds:
        said = [f"{_of(made.stitches, 'st')} ({', '.join(kinds)})"]
    said += spaces_words(report, made.spaces)
    said += [_of(number, name) for name, number in made.groups.items()]
    if made.corners:
        said.append(_of(made.corners, "corner"))
    return ", ".join(said) or "no stitches yet"


def spaces_words(report: Report, spaces: dict[int, int]) -> list[str]:
    """ "4 ch-2 sps", "1 ch-5 sp"; in UK terms "4 × 2-ch sps"."""
    uk = report.terms.terms == "uk"
    return [
        f"{number}\u00a0×\u00a0{length}-ch sp{'s' * (number != 1)}" if uk else _of(number, f"ch-{length} sp")
        for length, number in sorted(spaces.items())
    ]


def printed_figures(report: Report, row: LedgerRow, size: int) -> str:
    """The printed count as one size reads it, "" if none speaks of this row: "28 sc, 4 ch-2 sps"."""
    stated = row.cells[size].stated
    if stated is None or not _printed(report, row):
        return ""
    found = ((item.at(size, row.stated_index), item.words) for item in stated.items)
    return ", ".join(f"{number} {words}".strip() for number, words in found if number is not None)


def _of(number: int, name: str) -> str:
    return f"{number} {name}" if number == 1 or name.endswith("s") else f"{number} {name}s"


def _bare(text: str) -> str:
    return "".join(text.split()).casefold()


def _alike(report: Report, row: LedgerRow) -> tuple:
    cells = tuple((cell.outcome, cell.made, cell.stopped_by, cell.assumed, _figures(cell)) for cell in row.cells)
    return _printed(report, row), cells


def _figures(cell: Cell) -> tuple[tuple[int, int], ...]:
    return tuple((d.stated, d.made) for d in cell.comparison.differences) if cell.comparison is not None else ()


def _shown(report: Report, run: list[LedgerRow]) -> ShownRow:
    first = run[0]
    printed = _printed(report, first)
    cells = tuple(_cell(report, first, cell, printed) for cell in first.cells)
    return ShownRow(first, _label(run), report.source.line_of(first.span), printed, cells, tuple(run))


def _label(run: list[LedgerRow]) -> str:
    """ "Rows 7–30" of a run that begins with "Row 7"."""
    first, last = run[0].label, run[-1].label
    if len(run) == 1:
        return first
    begin, end = re.fullmatch(r"(.*[^\W\d])( ?)(\d+)", first), re.search(r"\d+$", last)
    if begin is None or end is None:
        return f"{first} to {last}"
    word, gap, number = begin.groups()
    plural = "" if len(word) == 1 else "S" if word.isupper() else "s"
    return f"{word}{plural}{gap}{number}–{end[0]}"


def _printed(report: Report, row: LedgerRow) -> str:
    """The words of the printed count that speak of this row, "" if none do."""
    stated = row.stated
    if stated is None:
        return ""
    inside = row.range_length > 1 and row.index_in_range < row.range_length - 1
    if inside and all(cell.outcome in (Outcome.NOT_STATED, Outcome.NOT_WORKED) for cell in row.cells):
        return ""
    index = row.stated_index
    if stated.series and index is not None and index < len(stated.series) and len(stated.items) == 1:
        return f"{stated.series[index]} {stated.items[0].words}".strip()
    return " ".join(report.source.slice(stated.span).split())


def _cell(report: Report, row: LedgerRow, cell: Cell, printed: str) -> ShownCell:
    sign, words = OUTCOMES[cell.outcome]
    if cell.outcome is Outcome.NOT_STATED and printed:
        words = "not compared"
    remarks = (
        [_difference(difference) for difference in cell.comparison.differences] if cell.comparison is not None else []
    )
    made = made_words(report, cell.made) if cell.made is not None else ""
    return ShownCell(cell.outcome.value, sign, words, made, tuple(remarks))


def _difference(difference) -> str:
    unit = difference.item.words
    said = f"printed {difference.stated}{' ' + unit if unit else ''}, comes out {difference.made}"
    return f"{said}; agrees if {difference.under}" if difference.under else said
