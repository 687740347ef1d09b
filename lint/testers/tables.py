"""Tables of testers' reports: their lines as claims, whatever shape the table has.

Three shapes are met: a line for each count (tester, size, row, count …); a line for each row with a column for each
tester or size; a line for each tester with a column for each row, as forms are exported.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import regex

from lint.testers.claims import Claim, Counted, GaugeGot, Measured, Place, Remark, Unmatched, Who, YarnUsed
from lint.testers.columns import Column, header_of
from lint.testers.files import Grid
from lint.testers.names import plain
from lint.testers.phrases import read_count, read_hook, read_measures, read_yarn
from lint.testers.prose import ProseReader

_FAR_DOWN = 25  # lines in which the headings are looked for
_REMARKS = ("typo", "unclear", "suggestion")
_NOTHING = ("", "-", "–", "—", "n/a", "na", "none", "no", "nil", "nothing", "/", ".")


@dataclass(frozen=True)
class _Line:
    """One line of a table: the cells by their column, and where they stand."""

    table: _Table
    number: int
    cells: dict[int, str]

    def place(self, at: int | None = None) -> Place:
        grid = self.table.grid
        return Place(grid.file, self.number, grid.sheet, column_letter(at) if at is not None else None)

    def of(self, meaning: str) -> Iterator[tuple[Column, str]]:
        for column in self.table.columns:
            if column.meaning == meaning and self.cells.get(column.at):
                yield column, self.cells[column.at]

    def one(self, meaning: str) -> str:
        return next((value for _, value in self.of(meaning)), "")


@dataclass(frozen=True)
class _Table:
    grid: Grid
    columns: tuple[Column, ...]
    reader: ProseReader


def column_letter(at: int) -> str:
    """The letter of a spreadsheet's column, counted from 0."""
    letters = ""
    at += 1
    while at:
        at, rest = divmod(at - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def read_grid(grid: Grid, reader: ProseReader) -> Iterator[Claim | Unmatched]:
    """Everything that a table says; a table without headings is read line by line as prose."""
    header = next(
        (
            (index, columns)
            for index, (_, cells) in enumerate(grid.rows[:_FAR_DOWN])
            if (columns := header_of(cells, reader.names)) is not None
        ),
        None,
    )
    for line, at in grid.lost:
        place = Place(grid.file, line, grid.sheet, column_letter(at))
        yield Unmatched(place, "a formula", "its value is not in the file; open and save it in a spreadsheet program")
    if header is None:
        for line, cells in grid.rows:
            yield from reader.line(_joined(cells), Place(grid.file, line, grid.sheet))
        return
    index, columns = header
    for line, cells in grid.rows[:index]:
        yield from reader.line(_joined(cells), Place(grid.file, line, grid.sheet))
    yield from _body(_Table(grid, columns, reader), index)


def _joined(cells: tuple[str, ...]) -> str:
    filled = [cell for cell in cells if cell]
    return f"{filled[0].rstrip(':')}: {filled[1]}" if len(filled) == 2 else "  ".join(filled)


def _body(table: _Table, index: int) -> Iterator[Claim | Unmatched]:
    body = [(line, {at: cell for at, cell in enumerate(cells) if cell}) for line, cells in table.grid.rows[index + 1 :]]
    people = _people(table, [cells for _, cells in body])
    head = table.grid.rows[index][0]
    known = {column.at for column in table.columns if column.meaning is not None} | people.keys()
    for column in table.columns:
        filled = sum(bool(cells.get(column.at)) for _, cells in body)
        if filled and (column.at not in known or column.meaning == "passed"):
            why = "it is not used here"
            if column.at not in known:
                cells_are = "cell is" if filled == 1 else "cells are"
                why = f"its heading has no meaning known here; {filled} filled {cells_are} kept as notes"
            place = Place(table.grid.file, head, table.grid.sheet, column_letter(column.at))
            yield Unmatched(place, f"the column “{column.heading}”", why)
    headed = {column.at for column in table.columns}
    seen: set[Claim] = set()
    for number, cells in body:
        if not cells:
            continue
        line = _Line(table, number, cells)
        for claim in _line_claims(line, people):
            once = claim if isinstance(claim, (Counted, Remark, Unmatched)) else replace(claim, place=_NOWHERE)
            if once not in seen:  # a tester's gauge repeated in every line is one gauge
                seen.add(once)
                yield claim
        for at, value in cells.items():
            if at not in headed:
                yield Unmatched(line.place(at), f"“{value}”", "it stands under no heading")
            elif at not in known and plain(value):
                heading = next(column.heading for column in table.columns if column.at == at)
                row = line.one("row") or None
                yield Remark(_who(line), line.place(at), "note", f"{heading}: {value}", line.one("part") or None, row)


_NOWHERE = Place("", 0)


def _people(table: _Table, body: list[dict[int, str]]) -> dict[int, Who]:
    """The columns of a table of rows that are headed by a tester or a size: those without a meaning that hold figures."""
    meanings = {column.meaning for column in table.columns}
    if "row" not in meanings or "count" in meanings:
        return {}
    found: dict[int, Who] = {}
    names = table.reader.names
    for column in table.columns:
        values = [cells[column.at] for cells in body if cells.get(column.at)]
        figures = sum(regex.match(r"\d{1,4}\b", value) is not None for value in values)
        is_size = names.size(column.heading) is not None
        if (column.meaning is None or is_size) and values and figures * 2 >= len(values):
            if is_size:
                found[column.at] = replace(table.reader.context.who, size=column.heading)
                continue
            size = regex.search(r"[(\[,/–-]\s*(?:size\s+)?([^()\[\],]+?)\s*[)\]]?\s*$", column.heading)
            if size is not None and names.size(size[1]) is not None:
                found[column.at] = Who(column.heading[: size.start()].strip(), size[1])
            else:
                found[column.at] = Who(column.heading, table.reader.context.who.size)
    return found


def _who(line: _Line) -> Who:
    default = line.table.reader.context.who
    return Who(line.one("tester") or default.tester, line.one("size") or default.size)


def _line_claims(line: _Line, people: dict[int, Who]) -> Iterator[Claim | Unmatched]:
    who, reader = _who(line), line.table.reader
    row, part = line.one("row") or None, line.one("part") or None
    if row and not part and reader.names.row(row) is None and reader.names.part(row) and len(line.cells) == 1:
        reader.context = replace(reader.context, part=row)  # a line between the rows that names the part below it
        return
    part = part or reader.context.part
    counts = [*_counts(line, who, row, part), *_by_row(line, who, part)]
    for at, person in people.items():
        if row and line.cells.get(at):
            counts.extend(_counted(line, line.cells[at], at, person, row, part))
    yield from counts
    yield from _gauge(line, who)
    for column, value in line.of("yarn"):
        used = read_yarn(value, column.unit)
        yield from (YarnUsed(who, line.place(column.at), amount, unit, value) for amount, unit in used)
        if not used and value.casefold() not in _NOTHING:
            yield _unread(line, column, value, "an amount")
    for column, value in line.of("measure"):
        yield from _measures(line, who, column, value)
    yield from _remark(line, who, row, part, counts)
    for kind in _REMARKS:
        for column, value in line.of(kind):
            if value.casefold() not in _NOTHING:
                yield _placed_remark(line, who, kind, value, column.at, row, part)


def _counts(line: _Line, who: Who, row: str | None, part: str | None) -> list[Claim | Unmatched]:
    printed = read_count(line.one("printed"))
    due = printed.count if printed is not None else None
    found: list[Claim | Unmatched] = []
    for column, value in line.of("count"):
        if row is None:
            found.append(Unmatched(line.place(column.at), f"the count “{value}”", "its line names no row"))
            continue
        found.extend(_counted(line, value, column.at, who, row, part, due))
    for column, value in () if found or row is None else line.of("off"):
        number = regex.fullmatch(r"[+]?\s*([-−]?\s*\d{1,4})", value)
        if number is None:
            found.append(_unread(line, column, value, "a number"))
        else:
            off = int(number[1].replace("−", "-").replace(" ", ""))
            found.append(
                Counted(who, row, line.place(column.at), off=off, part=part, note=line.one("note"), quoted=value)
            )
    return found


def _by_row(line: _Line, who: Who, part: str | None) -> Iterator[Claim | Unmatched]:
    for column, value in line.of("row count"):
        yield from _counted(line, value, column.at, who, column.row or "", column.part or part)


def _counted(
    line: _Line, value: str, at: int, who: Who, row: str, part: str | None, due: int | None = None
) -> Iterator[Claim | Unmatched]:
    place = line.place(at)
    base = Counted(
        who, row, place, part=part, unit=line.one("unit") or None, printed=due, note=line.one("note"), quoted=value
    )
    found = read_count(value) if not regex.fullmatch(r"\d{1,4}", value) else None
    if found is None and value.isdigit() and len(value) <= 4:
        yield replace(base, count=int(value))
    elif found is not None:
        printed = found.printed if found.printed is not None else due
        yield replace(base, count=found.count, off=found.off, unit=found.unit or base.unit, printed=printed)
        yield from (replace(base, count=count, unit=unit, printed=None) for count, unit in found.more)
    elif line.table.reader.is_as_printed(value):
        yield replace(base, as_printed=True)
    elif plain(value) and not regex.search(r"\d", value):  # words where a count was asked for: a remark on the row
        yield _placed_remark(line, who, line.table.reader.kind(value), value, at, row, part)
    else:
        yield Unmatched(place, f"“{value}”", "it is no count")


def _gauge(line: _Line, who: Who) -> Iterator[Claim | Unmatched]:
    """The gauge and the hook of one line, as one claim."""
    hooks = line.table.reader.hooks
    figures: dict[str, float | None] = {"stitches": None, "rows": None}
    over, at, quoted = 10.0, None, []
    for column, value in line.of("gauge"):
        if not regex.search(r"\d", value):
            continue
        read = next(iter(line.table.reader.line(f"gauge {value}", line.place(column.at))), None)
        if not isinstance(read, GaugeGot):
            yield _unread(line, column, value, "a gauge")
            continue
        figures, over, at = {"stitches": read.stitches, "rows": read.rows}, read.over_cm, column.at
        quoted.append(value)
    for key in ("stitches", "rows"):
        for column, value in line.of(f"gauge_{key}"):
            number = regex.match(r"\s*(\d+(?:[.,]\d+)?)", value)
            if number is None:
                yield _unread(line, column, value, "a number")
                continue
            figures[key], at = float(number[1].replace(",", ".")), at if at is not None else column.at
            quoted.append(value)
    mm = None
    for column, value in line.of("hook"):
        bare = regex.fullmatch(r"\s*(\d{1,2}(?:[.,]\d{1,2})?)\s*", value)
        mm = float(bare[1].replace(",", ".")) if bare else read_hook(f"hook {value}", hooks)
        if mm is None:
            yield _unread(line, column, value, "a hook's size")
        at = at if at is not None else column.at
        quoted.append(value)
    if any(value is not None for value in (*figures.values(), mm)):
        yield GaugeGot(who, line.place(at), figures["stitches"], figures["rows"], over, mm, ", ".join(quoted))


def _measures(line: _Line, who: Who, column: Column, value: str) -> Iterator[Claim | Unmatched]:
    if value.casefold() in _NOTHING:
        return
    heading = regex.sub(r"[(\[].*?[)\]]", "", column.heading).strip().lower()
    general = plain(heading) in (plain(word) for word in line.table.reader.names.words.columns["measure"])
    found = read_measures(value, column.unit)
    if not found:
        yield _unread(line, column, value, "a measure in cm or inches")
    for what, cm in found:
        named = line.one("measured_what") or ("" if general else heading)
        yield Measured(who, line.place(column.at), " ".join((named, what)).strip(), cm, value)


def _remark(
    line: _Line, who: Who, row: str | None, part: str | None, counts: list[Claim | Unmatched]
) -> Iterator[Claim]:
    """The note of a line, of the kind that is said or that its words show."""
    told = {claim.words for claim in counts if isinstance(claim, Remark)}
    for column, value in line.of("note"):
        if value.casefold() in _NOTHING or value in told:
            continue
        kind = plain(line.one("kind"))
        kind = kind if kind in line.table.reader.names.words.kinds else line.table.reader.kind(value)
        yield _placed_remark(line, who, kind, value, column.at, row, part)


def _placed_remark(line: _Line, who: Who, kind: str, words: str, at: int, row: str | None, part: str | None) -> Remark:
    label = None if row else line.table.reader.names.row_pattern.search(words)
    return Remark(who, line.place(at), kind, words, part, row or (label[0] if label else None), line.one("words"))


def _unread(line: _Line, column: Column, value: str, what: str) -> Unmatched:
    return Unmatched(line.place(column.at), f"“{value}” under “{column.heading}”", f"{what} was expected there")
