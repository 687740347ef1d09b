"""Tables of testers' reports: their lines as claims, whatever shape the table has.

Three shapes are met: a line for each count (tester, size, row, count …); a line for each row with a column for each
tester or size; a line for each tester with a column for each row, as forms are exported.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lint.expression import expression
from lint.testers.cells import TableLine, column_letter, read_cells
from lint.testers.claims import Claim, Counted, Place, Remark, Unmatched, Who
from lint.testers.columns import Column, header_of
from lint.testers.files import Grid
from lint.testers.names import plain
from lint.testers.prose import ProseReader

_FAR_DOWN = 25  # lines in which the headings are looked for
_LONG_CELL = 3  # words that a label, a name or a size may have
_NOWHERE = Place("", 0)


def read_grid(grid: Grid, reader: ProseReader) -> Iterator[Claim | Unmatched]:
    """Everything that a table says; a table without headings is read line by line as prose."""
    headers = [
        (index, columns)
        for index, (_, cells) in enumerate(grid.rows[:_FAR_DOWN])
        if (columns := header_of(cells, reader.names)) is not None
    ]
    header = next((one for one in headers if _heads_rows(one[1])), headers[0] if headers else None)
    for line, at in grid.lost:
        place = Place(grid.file, line, grid.sheet, column_letter(at))
        yield Unmatched(place, "a formula", "its value is not in the file; open and save it in a spreadsheet program")
    if header is None:
        for line, cells in grid.rows:
            yield from _in_lines(cells, Place(grid.file, line, grid.sheet), reader)
        return
    index, columns = header
    for line, cells in grid.rows[:index]:
        yield from _in_lines(cells, Place(grid.file, line, grid.sheet), reader)
    yield from _body(_Table(grid, columns, reader), index)


def _heads_rows(columns: tuple[Column, ...]) -> bool:
    """Whether headings are those of rows or their counts, and not a line such as "Tester, Mia, Size, M"."""
    return any(column.meaning in ("row", "row count") for column in columns)


def _in_lines(cells: tuple[str, ...], place: Place, reader: ProseReader) -> Iterator[Claim | Unmatched]:
    """A line above or without a table; keys and their values side by side are a line each: "Tester, Mia, Size, M"."""
    filled = [cell for cell in cells if cell]
    keys = [plain(cell) for cell in filled[::2]]
    if len(filled) > 2 and len(filled) % 2 == 0 and all(key in reader.names.headings for key in keys):
        for key, value in zip(filled[::2], filled[1::2], strict=True):
            yield from reader.line(_joined((key, value)), place)
    else:
        yield from reader.line(_joined(cells), place)


def _joined(cells: tuple[str, ...]) -> str:
    filled = [cell for cell in cells if cell]
    return f"{filled[0].rstrip(':')}: {filled[1]}" if len(filled) == 2 else "  ".join(filled)


@dataclass(frozen=True)
class _Table:
    grid: Grid
    columns: tuple[Column, ...]
    reader: ProseReader

    @property
    def has_parts(self) -> bool:
        """Whether a column names parts."""
        return any(column.meaning == "part" for column in self.columns)

    def filled(self, cells: dict[int, str]) -> dict[str | None, list[tuple[Column, str]]]:
        """The filled cells of a line by their meaning."""
        found: dict[str | None, list[tuple[Column, str]]] = {}
        for column in self.columns:
            if column.at in cells:
                found.setdefault(column.meaning, []).append((column, cells[column.at]))
        return found


def _body(table: _Table, index: int) -> Iterator[Claim | Unmatched]:
    grid = table.grid
    body = [(line, {at: cell for at, cell in enumerate(cells) if cell}) for line, cells in grid.rows[index + 1 :]]
    people = _people(table, [cells for _, cells in body])
    unknown = {column.at: column for column in table.columns if column.meaning is None and column.at not in people}
    yield from _unused(table, grid.rows[index][0], body, unknown)
    headed = {column.at for column in table.columns}
    seen: set[Claim] = set()
    before: TableLine | None = None
    for number, cells in body:
        at_line = Place(grid.file, number, grid.sheet)
        if len(cells) == 1 and _is_sentence(table, *next(iter(cells.items()))):
            yield from table.reader.line(next(iter(cells.values())), at_line)
            continue
        line = _line(table, number, cells, before) if cells else None
        if line is None:
            continue
        claims = list(read_cells(line, people))
        if not claims and not _is_left_blank(line):
            yield from table.reader.line(_joined(tuple(cells.values())), at_line)
            continue
        before = line
        for claim in claims:
            once = claim if isinstance(claim, (Counted, Remark, Unmatched)) else replace(claim, place=_NOWHERE)
            if once not in seen:  # a tester's gauge repeated in every line is one gauge
                seen.add(once)
                yield claim
        for at, value in cells.items():
            if at not in headed:
                yield Unmatched(line.place(at), f"“{value}”", "it stands under no heading")
            elif at in unknown and plain(value):
                words = f"{unknown[at].heading}: {value}"
                yield Remark(line.who, line.place(at), "note", words, line.part, line.row)


def _is_sentence(table: _Table, at: int, words: str) -> bool:
    """Whether the only cell of a line is no cell of the table but a line of prose that follows it."""
    meaning = next((column.meaning for column in table.columns if column.at == at), None)
    return meaning in ("row", "tester", "part", "size") and len(plain(words).split()) > _LONG_CELL


def _is_left_blank(line: TableLine) -> bool:
    """Whether a line names a row, a tester or a size and says nothing of it; one that names none of them is prose."""
    names = line.reader.names
    if line.filled.keys() - {
        "row",
        "part",
        "tester",
        "size",
        "printed",
        "unit",
        "kind",
        "passed",
        "measured_what",
        None,
    }:
        return False
    row, part = line.one("row"), line.one("part")
    return not (row and names.row(row) is None) and not (part and names.part(part) is None)


def _line(table: _Table, number: int, cells: dict[int, str], before: TableLine | None) -> TableLine | None:
    """A line with what it says itself and, as in merged cells, what the line above it says; None for a part's heading."""
    reader, filled = table.reader, table.filled(cells)

    def said(meaning: str) -> str:
        return filled[meaning][0][1] if meaning in filled else ""

    row, part = said("row") or None, said("part") or None
    if row and not part and len(cells) == 1 and reader.names.row(row) is None and reader.names.part(row):
        reader.context = replace(reader.context, part=row)  # a line between the rows that names the part below it
        return None
    tester, size = said("tester"), said("size")
    if before is not None and row and tester in ("", before.who.tester):
        tester, size = tester or before.who.tester, size or before.who.size or ""
        part = part or (before.part if table.has_parts else None)
    who = Who(tester or reader.context.who.tester, size or reader.context.who.size)
    return TableLine(table.grid, reader, number, cells, filled, who, row, part or reader.context.part)


def _unused(
    table: _Table, head: int, body: list[tuple[int, dict[int, str]]], unknown: dict[int, Column]
) -> Iterator[Unmatched]:
    """Columns whose heading says nothing known, and those that are known and not used."""
    for column in table.columns:
        filled = sum(bool(cells.get(column.at)) for _, cells in body)
        if filled and (column.at in unknown or column.meaning == "passed"):
            why = "it is not used here"
            if column.at in unknown:
                cells_are = "cell is" if filled == 1 else "cells are"
                why = f"its heading has no meaning known here; {filled} filled {cells_are} kept as notes"
            place = Place(table.grid.file, head, table.grid.sheet, column_letter(column.at))
            yield Unmatched(place, f"the column “{column.heading}”", why)


def _people(table: _Table, body: list[dict[int, str]]) -> dict[int, Who]:
    """The columns of a table of rows that are headed by a tester or a size: those without a meaning that hold figures."""
    meanings = {column.meaning for column in table.columns}
    if "row" not in meanings or "count" in meanings:
        return {}
    found: dict[int, Who] = {}
    names = table.reader.names
    for column in table.columns:
        values = [cells[column.at] for cells in body if cells.get(column.at)]
        figures = sum(
            expression(r"\d{1,4}\b").match(value) is not None or table.reader.is_as_printed(value) for value in values
        )
        is_size = names.size(column.heading) is not None
        if (column.meaning is None or is_size) and values and figures * 2 >= len(values):
            if is_size:
                found[column.at] = replace(table.reader.context.who, size=column.heading)
                continue
            size = expression(r"[(\[,/–-]\s*(?:size\s+)?([^()\[\],]+?)\s*[)\]]?\s*$").search(column.heading)
            if size is not None and names.size(size[1]) is not None:
                found[column.at] = Who(column.heading[: size.start()].strip(), size[1])
            else:
                found[column.at] = Who(column.heading, table.reader.context.who.size)
    return found
