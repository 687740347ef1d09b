"""A blank form for testers: every row and size that has a count, with drop-downs where the format has them."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator

from lint.inspection import Report
from lint.ledger import Outcome
from lint.reports.rows import printed_figures
from lint.reports.wording import title_of
from lint.reports.workbooks import as_bytes
from lint.testers.inert import inert

_ABOUT = ("Tester:", "Size:", "Hook used:", "Gauge:", "Yarn used:", "Finished measurements:")
_HINTS = {
    "Hook used:": "such as 4.5 mm",
    "Gauge:": "such as 16 sts and 12 rows to 10 cm",
    "Yarn used:": "such as 210 g; weigh what is left",
    "Finished measurements:": "such as width 48 cm, length 60 cm",
}
_HEADINGS = ("Part", "Row", "Size", "As printed", "Count got", "Kind of note", "Note")
_WIDTHS = (22, 18, 12, 26, 12, 16, 60)
_NOTES = ("typo", "unclear", "suggestion", "error")
_LONGEST_LIST = 255  # characters that a drop-down's list may have in a workbook


def as_csv_form(report: Report) -> str:
    """The form as CSV."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow([inert(f"Counts for: {title_of(report)}")])
    writer.writerows([key, ""] for key in _ABOUT)
    writer.writerow([])
    writer.writerow(_HEADINGS)
    writer.writerows([inert(cell) for cell in line] for line in _lines(report))
    return out.getvalue()


def as_workbook_form(report: Report) -> bytes:
    """The form as XLSX: a sheet about the tester and the make, and one for the counts.  All texts are plain text."""
    from openpyxl import Workbook  # here, for loading it takes a fifth of a second
    from openpyxl.styles import Alignment, Font
    from openpyxl.worksheet.datavalidation import DataValidation

    book = Workbook()
    about, counts = book.active, book.create_sheet("Counts")
    about.title = "About you"
    sizes = report.pattern.sizes if len(report.pattern.sizes) > 1 else ()
    _write(about, [[f"Counts for: {title_of(report)}"], *([key] for key in _ABOUT)])
    _write(counts, [list(_HEADINGS), *_lines(report)])
    about["A1"].font = Font(bold=True)
    for letter, width in zip("AB", (26, 48), strict=True):
        about.column_dimensions[letter].width = width
    for key, hint in _HINTS.items():  # shown when the cell is entered
        entered = DataValidation(allow_blank=True, showInputMessage=True, promptTitle=key.rstrip(":"), prompt=hint)
        about.add_data_validation(entered)
        entered.add(f"B{2 + _ABOUT.index(key)}")
    listed = ",".join(sizes)
    if sizes and len(listed) <= _LONGEST_LIST and not any('"' in size or "," in size for size in sizes):
        choice = DataValidation(type="list", formula1=f'"{listed}"', allow_blank=True, showErrorMessage=True)
        choice.error = "Please choose one of the pattern's sizes."
        about.add_data_validation(choice)
        choice.add(f"B{2 + _ABOUT.index('Size:')}")
    last = max(2, counts.max_row)
    whole = DataValidation(type="whole", operator="greaterThanOrEqual", formula1="0", allow_blank=True)
    whole.error, whole.showErrorMessage = "Please give the count as a whole number.", True
    kinds = DataValidation(type="list", formula1=f'"{",".join(_NOTES)}"', allow_blank=True)
    for validation, letter in ((whole, "E"), (kinds, "F")):
        counts.add_data_validation(validation)
        validation.add(f"{letter}2:{letter}{last}")
    for cell in counts[1]:
        cell.font = Font(bold=True)
    for letter, width in zip("ABCDEFG", _WIDTHS, strict=True):
        counts.column_dimensions[letter].width = width
    for row in counts.iter_rows(min_row=2, min_col=7, max_col=7):
        row[0].alignment = Alignment(wrap_text=True, vertical="top")
    counts.freeze_panes = "A2"
    counts.auto_filter.ref = f"A1:G{last}"
    counts.print_title_rows = "1:1"
    counts.page_setup.orientation = "landscape"
    counts.page_setup.fitToWidth, counts.page_setup.fitToHeight = 1, 0
    counts.sheet_properties.pageSetUpPr.fitToPage = True
    return as_bytes(book)


def _write(sheet, lines: list[list[str]]) -> None:
    """Lines into a sheet, every cell as text: one that begins with "=" is no formula."""
    for number, line in enumerate(lines, 1):
        for at, words in enumerate(line, 1):
            if words:
                cell = sheet.cell(number, at, "".join(sign for sign in words if sign >= " "))
                cell.data_type = "s"


def _lines(report: Report) -> Iterator[list[str]]:
    """Part, row, size and printed count of every row and size that has one, and blanks to fill."""
    sizes = report.pattern.sizes if len(report.pattern.sizes) > 1 else ("",)
    for row in report.ledger.rows:
        for size, cell in enumerate(row.cells):
            if cell.outcome is Outcome.NOT_WORKED or cell.stated is None:
                continue
            yield [row.part.name, row.label, sizes[size], printed_figures(report, row, size), "", "", ""]
