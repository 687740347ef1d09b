"""The ledger as a table for spreadsheets: CSV, or a workbook with the points beside it.

What comes from the pattern is written so that no spreadsheet takes it for a formula.
"""

from __future__ import annotations

import codecs
import csv
import io
from collections.abc import Iterable, Iterator, Sequence

from lint.inspection import Report
from lint.ledger import LedgerRow, Outcome
from lint.reports import wording
from lint.reports.workbooks import as_bytes

Cell = str | int | None

LEDGER = (
    "File", "Pattern", "Part", "Make", "Row", "Number", "Place", "Size", "Printed", "Recomputed", "By stitch",
    "Chain spaces", "Corners", "Outcome", "Stopped at",
)  # fmt: skip
POINTS = (
    "File", "Pattern", "Weight", "Rule", "Part", "Row", "Place", "Sizes", "Words", "Message", "As printed", "Expected",
    "Likely causes",
)  # fmt: skip
_OUTCOMES = {
    Outcome.AGREES: "agrees",
    Outcome.DIFFERS: "differs",
    Outcome.NOT_STATED: "no count printed",
    Outcome.NOT_RECOMPUTED: "not recomputed",
    Outcome.NOT_WORKED: "not worked in this size",
}
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")
_LONGEST = 32_000  # characters in a cell; spreadsheets hold 32,767


def as_csv(reports: Sequence[Report]) -> bytes:
    """The ledger as CSV in UTF-8 with its mark, which spreadsheets need to know it; a formula's sign gets a ' before it."""
    return codecs.BOM_UTF8 + csv_text([LEDGER, *(row for report in reports for row in ledger_lines(report))])


def csv_text(rows: Iterable[Sequence[Cell]]) -> bytes:
    """Rows of a CSV file in UTF-8, without its mark."""
    out = io.StringIO(newline="")
    csv.writer(out).writerows([_inert(cell) for cell in row] for row in rows)
    return out.getvalue().encode("utf-8", "backslashreplace")


def as_xlsx(reports: Sequence[Report]) -> bytes:
    """A workbook: the ledger, and the points."""
    ledger, points = ([row for report in reports for row in lines(report)] for lines in (ledger_lines, point_lines))
    return workbook(ledger, points)


def workbook(ledger: Iterable[Sequence[Cell]], points: Iterable[Sequence[Cell]]) -> bytes:
    """A workbook of two sheets; words are stored as words, whatever they begin with."""
    from openpyxl import Workbook
    from openpyxl.cell import WriteOnlyCell
    from openpyxl.styles import Alignment, Font

    book = Workbook(write_only=True)
    for title, head, rows in (("Ledger", LEDGER, ledger), ("Points", POINTS, points)):
        sheet = book.create_sheet(title)
        sheet.freeze_panes = "A2"
        for at, words in enumerate(head):
            sheet.column_dimensions["ABCDEFGHIJKLMNO"[at]].width = (
                40 if words in ("Words", "Message", "Likely causes") else 16
            )
        for number, row in enumerate((head, *rows)):
            cells = []
            for value in row:
                cell = WriteOnlyCell(sheet, _held(value))
                if isinstance(value, str):
                    cell.data_type = "s"  # never "f"
                    cell.quotePrefix = value.startswith(_FORMULA)
                cell.alignment = Alignment(vertical="top", wrap_text=True)
                cell.font = Font(bold=number == 0)
                cells.append(cell)
            sheet.append(cells)
    return as_bytes(book)


def ledger_lines(report: Report) -> Iterator[tuple[Cell, ...]]:
    """A line for every row and round as worked, in every size."""
    sizes = report.pattern.sizes if len(report.pattern.sizes) > 1 else ("",)
    for row in report.ledger.rows:
        for size, name in enumerate(sizes):
            yield _ledger_line(report, row, size if len(row.cells) > size else 0, name)


def _ledger_line(report: Report, row: LedgerRow, size: int, name: str) -> tuple[Cell, ...]:
    cell = row.cells[size]
    made = cell.made
    kinds = ", ".join(f"{number} {kind}" for kind, number in made.by_kind.items()) if made is not None else None
    spaces = (
        ", ".join(f"{number} ch-{length}" for length, number in sorted(made.spaces.items()))
        if made is not None
        else None
    )
    printed = report.source.slice(cell.stated.span) if cell.stated is not None else None
    return (
        report.source.path,
        wording.title_of(report),
        row.part.name,
        row.part.make,
        row.label,
        row.number,
        wording.where(report, row.span.start),
        name or None,
        printed,
        made.stitches if made is not None else None,
        kinds,
        spaces,
        (made.corners or None) if made is not None else None,
        _OUTCOMES[cell.outcome],
        cell.stopped_by,
    )


def point_lines(report: Report) -> Iterator[tuple[Cell, ...]]:
    """A line for every finding."""
    for finding in wording.in_order(report):
        yield (
            report.source.path,
            wording.title_of(report),
            wording.WEIGHTS[finding.weight].title,
            finding.rule,
            finding.part,
            finding.row,
            wording.where(report, finding.span.start),
            ", ".join(finding.sizes) or None,
            report.source.slice(finding.span),
            wording.message_of(finding),
            finding.found,
            finding.expected,
            "\n".join(wording.question(cause) for cause in finding.likely) or None,
        )


def _held(value: Cell) -> Cell:
    """A value as a cell can hold it."""
    return wording.tame(value).replace("\r", "␍")[:_LONGEST] if isinstance(value, str) else value


def _inert(value: Cell) -> Cell:
    """A value that no spreadsheet computes when it opens the CSV."""
    held = _held(value)
    if isinstance(held, str) and (held.startswith(_FORMULA) or held.lstrip().startswith(_FORMULA)):
        return "'" + held
    return held
