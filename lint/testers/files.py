"""What testers send, taken from files as grids of cells or lines of text.

CSV and TSV with whatever delimiter and encoding they have, XLSX sheets; every other file is text.
"""

from __future__ import annotations

import csv
import html
import io
import warnings
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass

from lint.expression import expression

_DELIMITERS = ",;\t|"
_TABLE_ENDINGS = (".csv", ".tsv", ".tab")
_MAIL = expression(
    rb"(?i)(?:from|return-path|received|delivered-to|mime-version|message-id|date|subject): [^\n]*\r?\n(?:[\w-]+: |\s)"
)
_FORMULA = expression(rb"<f[ >/]")
_MOST_BYTES = 200_000_000  # of one sheet unpacked: more is no tester's report


class ReportError(Exception):
    """A file that cannot be read as a tester's report; the message says why, in one clause."""


@dataclass(frozen=True, slots=True)
class Grid:
    """A table as it stands in a file: its rows' lines (from 1) with their cells, as text."""

    file: str
    sheet: str | None
    rows: tuple[tuple[int, tuple[str, ...]], ...]
    lost: tuple[tuple[int, int], ...] = ()  # line and column (from 0) of formulas whose value is not in the file


@dataclass(frozen=True, slots=True)
class Lines:
    """A text: its lines, the first of which is number 1."""

    file: str
    lines: tuple[str, ...]


def read_file(name: str, raw: bytes) -> list[Grid | Lines]:
    """The tables or the text of one file.  Raises ReportError."""
    if raw[:4] == b"PK\x03\x04":
        return _sheets(name, raw)
    if name.lower().endswith(".eml") or _MAIL.match(raw):
        return _mail(name, raw)
    if raw[:8] == b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1":
        raise ReportError("is a spreadsheet of an old format; saved as XLSX or CSV it can be read")
    text = _decoded(raw)
    if name.lower().endswith(_TABLE_ENDINGS):
        return [_grid(name, text)]
    return [Lines(name, tuple(text.splitlines()))]


def _mail(name: str, raw: bytes) -> list[Grid | Lines]:
    """A mail: its sender and its text, and what is attached to it."""
    import email  # here, for few reports are mails
    from email import policy

    mail = email.message_from_bytes(raw, policy=policy.default)
    if "content-type" not in mail:  # no more than lines: their numbers are those of the file
        return [Lines(name, tuple(_decoded(raw).splitlines()))]
    pieces: list[Grid | Lines] = []
    body = mail.get_body(preferencelist=("plain", "html"))
    text = body.get_content() if body is not None else ""
    if body is not None and body.get_content_subtype() == "html":
        text = _without_tags(text)
    pieces.append(Lines(name, (f"From: {mail['from'] or ''}", *text.splitlines())))
    for part in mail.iter_attachments():
        attached = part.get_filename() or "attachment"
        content = part.get_payload(decode=True) or b""
        pieces += read_file(f"{name}, {attached}", content)
    return pieces


def _without_tags(text: str) -> str:
    """The words of an HTML mail, each paragraph, line and row of a table on a line of its own."""
    text = expression(r"(?is)<(style|script|head)\b.*?</\1>").sub("", text)
    text = expression(r"(?i)\s*</?t[dh]\b[^>]*>\s*").sub("\t", expression(r"\s*\n\s*").sub(" ", text))
    text = expression(r"(?i)<(?:br|/p|/div|/tr|/li|/h\d)\b[^>]*>").sub("\n", text)
    text = expression(r"(?i)</?table\b[^>]*>").sub("\n\n", text)
    lines = html.unescape(expression(r"<[^>]*>").sub("", text)).split("\n")
    return "\n".join(expression(r"\t+").sub("\t", line).strip() for line in lines)


def split_line(line: str) -> list[str]:
    """The cells of one line of a pasted table: by tabs, bars, or two blanks and more."""
    if "\t" in line:
        return [cell.strip() for cell in line.split("\t")]
    if line.count("|") > 1 or line.count("|") == 1 and not line.strip().startswith("|"):
        return [cell.strip() for cell in line.strip().strip("|").split("|")]
    return [cell for cell in expression(r"\s{2,}").split(line.strip()) if cell]


def delimiter_of(text: str) -> str | None:
    """The sign that parts the cells of a text, a comma, a semicolon, a tab or a bar; None where there is none."""
    head = "\n".join(text.splitlines()[:30])
    best, most = None, 1.0
    for sign in _DELIMITERS:
        try:
            lengths = [len(row) for row in csv.reader(io.StringIO(head), delimiter=sign) if row]
        except csv.Error:
            continue
        wide = sum(length > 1 for length in lengths) / max(1, len(lengths))
        share = wide * max(lengths, default=1)
        if wide > 0.5 and share > most:
            best, most = sign, share
    return best


def _grid(name: str, text: str) -> Grid:
    text = text.replace("\x00", "")
    sign = delimiter_of(text)
    if sign is None:
        return Grid(name, None, tuple((line, (words.strip(),)) for line, words in enumerate(text.splitlines(), 1)))
    reader, numbered, before = csv.reader(io.StringIO(text), delimiter=sign), [], 0
    try:
        for row in reader:  # a cell in quotes may run over several lines: a row's line is that of its beginning
            numbered.append((before + 1, tuple(cell.strip() for cell in row)))
            before = reader.line_num
    except csv.Error as error:
        raise ReportError(f"cannot be read as a table (line {reader.line_num}: {error})") from error
    return Grid(name, None, tuple(numbered))


def _decoded(raw: bytes) -> str:
    """Text in UTF-8, UTF-16 or Windows-1252.  Raises ReportError."""
    encodings = ("utf-16",) if raw.startswith((b"\xff\xfe", b"\xfe\xff")) else ("utf-8-sig", "cp1252")
    if b"\x00" in raw[:4096] and encodings[0] != "utf-16":
        raise ReportError("is neither text nor a spreadsheet")
    for encoding in encodings:
        try:
            text = raw.decode(encoding)
            return text.replace("\r\n", "\n").replace("\r", "\n")
        except UnicodeDecodeError:
            continue
    raise ReportError("is neither text nor a spreadsheet")


# spreadsheets ---------------------------------------------------------------------------------------------------


def _sheets(name: str, raw: bytes) -> list[Grid]:
    import openpyxl  # here, for loading it takes a fifth of a second

    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as packed:
            inside = [one for one in packed.infolist() if one.filename.startswith("xl/worksheets/")]
            if any(one.file_size > _MOST_BYTES for one in packed.infolist()):
                raise ReportError("is far larger than any tester's report")
            formulas = any(_FORMULA.search(packed.read(one)) for one in inside)
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of drop-downs and the like that are not read
            book = openpyxl.load_workbook(io.BytesIO(raw), read_only=True, data_only=True)
            written = openpyxl.load_workbook(io.BytesIO(raw), read_only=True) if formulas else None
            return [
                _sheet(name, sheet, written[sheet.title] if written else None)
                for sheet in book.worksheets
                if sheet.sheet_state == "visible"
            ]
    except ReportError:
        raise
    except Exception as error:  # a broken file can break in a hundred ways, and all of them mean this
        raise ReportError(f"cannot be read as a spreadsheet ({type(error).__name__})") from error


def _sheet(name: str, sheet, written) -> Grid:
    rows = []
    for line, cells in enumerate(sheet.iter_rows(values_only=True), 1):
        if any(cell is not None for cell in cells):
            rows.append((line, tuple(_as_text(cell) for cell in cells)))
    return Grid(name, sheet.title, tuple(rows), tuple(_lost(rows, written)) if written is not None else ())


def _lost(rows: list[tuple[int, tuple[str, ...]]], written) -> Iterator[tuple[int, int]]:
    shown = dict(rows)
    for line, cells in enumerate(written.iter_rows(values_only=True), 1):
        for at, cell in enumerate(cells):
            if isinstance(cell, str) and cell.startswith("=") and not (shown.get(line) or ())[at : at + 1] > ("",):
                yield line, at


def _as_text(cell: object) -> str:
    if cell is None:
        return ""
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell).strip()
