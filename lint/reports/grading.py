"""The grading table as a sheet for a designer's own: CSV, a workbook with the parts and every count, or a page.

What comes from the pattern is written so that no spreadsheet takes it for a formula.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence
from pathlib import Path

from lint.grading import GradingTable, Value, grading_table
from lint.inspection import Report
from lint.reports import wording
from lint.reports.page import as_grading_page

_FORMULA = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r")


def grading_csv(reports: Sequence[Report]) -> bytes:
    """Every line of every pattern, steps from size to size behind the values.

    Words stand in quotation marks, so that no other separator inside them opens a cell.
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC)
    for report in reports:
        for line in _lines(report, grading_table(report), whole=None):
            writer.writerow([_inert(cell) for cell in line])
    return out.getvalue().encode("utf-8-sig", "backslashreplace")


def grading_xlsx(reports: Sequence[Report]) -> bytes:
    """A workbook with two sheets: the parts as wholes, and every count that changes."""
    from openpyxl import Workbook
    from openpyxl.styles import Font

    book = Workbook()
    for sheet, whole in ((book.active, True), (book.create_sheet(), False)):
        sheet.title = "Parts" if whole else "Counts"
        for report in reports:
            for number, line in enumerate(_lines(report, grading_table(report), whole)):
                sheet.append([wording.tame(cell) if isinstance(cell, str) else cell for cell in line])
                for cell in sheet[sheet.max_row]:
                    if isinstance(cell.value, str):
                        cell.data_type = "s"  # words are words, whatever they begin with
                    cell.font = Font(bold=number == 0)
        sheet.freeze_panes = "E2"
        sheet.column_dimensions["A"].width = sheet.column_dimensions["B"].width = 24
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _lines(report: Report, table: GradingTable, whole: bool | None) -> Iterator[list[str | Value]]:
    if not table.lines:
        return
    steps = [f"{a} to {b}" for a, b in zip(table.sizes, table.sizes[1:], strict=False)]
    yield ["Pattern", "Part", "What", "Unit", *table.sizes, *steps]
    title = wording.title_of(report)
    for line in table.lines:
        if whole is None or line.summary is whole:
            yield [title, line.part, line.what, line.unit, *line.values, *line.steps]


def _inert(cell: str | Value) -> str | Value:
    """A cell of words that no spreadsheet computes; numbers without an idle ".0"."""
    if not isinstance(cell, str):
        return int(cell) if isinstance(cell, float) and cell.is_integer() else cell
    cell = wording.tame(cell)
    return "'" + cell if cell.lstrip().startswith(_FORMULA) else cell


_WRITERS = {
    ".csv": grading_csv,
    ".xlsx": grading_xlsx,
    ".html": lambda reports: as_grading_page(reports).encode("utf-8", "backslashreplace"),
}


def grading_file(reports: Sequence[Report], path: str) -> bytes:
    """The table in the form that the end of a file's name asks for: .csv, .xlsx or .html; KeyError for any other."""
    return _WRITERS[Path(path).suffix.lower()](reports)
