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
from lint.reports.workbooks import as_bytes

Titled = tuple[str, GradingTable]  # a pattern's title and its table

_FORMULA = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r")


def titled(reports: Sequence[Report]) -> list[Titled]:
    """The tables of patterns with their titles."""
    return [(wording.title_of(report), grading_table(report)) for report in reports]


def grading_csv(reports: Sequence[Report]) -> bytes:
    """Every line of every pattern, steps from size to size behind the values.

    Words stand in quotation marks, so that no other separator inside them opens a cell.
    """
    return _as_csv(titled(reports))


def _as_csv(tables: Sequence[Titled]) -> bytes:
    out = io.StringIO(newline="")
    writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC)
    for title, table in tables:
        for line in _lines(title, table, whole=None):
            writer.writerow([_inert(cell) for cell in line])
    return out.getvalue().encode("utf-8-sig", "backslashreplace")


def grading_xlsx(reports: Sequence[Report]) -> bytes:
    """A workbook with two sheets: the parts as wholes, and every count that changes."""
    return _as_xlsx(titled(reports))


def _as_xlsx(tables: Sequence[Titled]) -> bytes:
    from openpyxl import Workbook
    from openpyxl.styles import Font

    book = Workbook()
    for sheet, whole in ((book.active, True), (book.create_sheet(), False)):
        sheet.title = "Parts" if whole else "Counts"
        for title, table in tables:
            for number, line in enumerate(_lines(title, table, whole)):
                sheet.append([wording.tame(cell) if isinstance(cell, str) else cell for cell in line])
                for cell in sheet[sheet.max_row]:
                    if isinstance(cell.value, str):
                        cell.data_type = "s"  # words are words, whatever they begin with
                    cell.font = Font(bold=number == 0)
        sheet.freeze_panes = "E2"
        for column in "ABC":
            sheet.column_dimensions[column].width = 24
    return as_bytes(book)


def _lines(title: str, table: GradingTable, whole: bool | None) -> Iterator[list[str | Value]]:
    if not table.lines:
        return
    steps = [f"{a} to {b}" for a, b in zip(table.sizes, table.sizes[1:], strict=False)]
    yield ["Pattern", "Part", "What", "Unit", *table.sizes, *steps]
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
    ".csv": _as_csv,
    ".xlsx": _as_xlsx,
    ".html": lambda tables: as_grading_page(tables).encode("utf-8", "backslashreplace"),
}
KINDS = tuple(_WRITERS)


def grading_file(tables: Sequence[Titled], path: str) -> bytes:
    """The tables in the form that the end of a file's name asks for: .csv, .xlsx or .html; KeyError for any other."""
    return _WRITERS[Path(path).suffix.lower()](tables)
