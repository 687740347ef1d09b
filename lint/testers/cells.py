"""The cells of one line of a table as claims: counts, gauge and hook, yarn, measures and remarks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lint.expression import expression
from lint.testers.claims import Claim, Counted, GaugeGot, Measured, Place, Remark, Unmatched, Who, YarnUsed
from lint.testers.columns import Column
from lint.testers.files import Grid
from lint.testers.names import plain
from lint.testers.phrases import read_count, read_hook, read_measures, read_yarn
from lint.testers.prose import ProseReader

_REMARKS = ("typo", "unclear", "suggestion")
_NOTHING = ("", "-", "–", "—", "n/a", "na", "none", "no", "nil", "nothing", "/", ".")


@dataclass(frozen=True)
class TableLine:
    """One line of a table: its cells by column (from 0) and by meaning, and whose it is, of which row and part."""

    grid: Grid
    reader: ProseReader
    number: int
    cells: dict[int, str]
    filled: dict[str | None, list[tuple[Column, str]]]
    who: Who
    row: str | None
    part: str | None

    def place(self, at: int | None = None) -> Place:
        """The place of a cell, or of the line."""
        return Place(self.grid.file, self.number, self.grid.sheet, column_letter(at) if at is not None else None)

    def of(self, meaning: str) -> list[tuple[Column, str]]:
        """The filled cells of a meaning."""
        return self.filled.get(meaning, [])

    def one(self, meaning: str) -> str:
        """The first filled cell of a meaning, else ""."""
        return self.filled[meaning][0][1] if meaning in self.filled else ""


def column_letter(at: int) -> str:
    """The letter of a spreadsheet's column, counted from 0."""
    letters = ""
    at += 1
    while at:
        at, rest = divmod(at - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def read_cells(line: TableLine, people: dict[int, Who]) -> Iterator[Claim | Unmatched]:
    """Everything that a line says; `people`: the columns that are headed by a tester or a size."""
    counts = [*_counts(line), *_by_row(line)]
    for at, person in people.items():
        if line.row and line.cells.get(at):
            counts.extend(_counted(replace(line, who=person), line.cells[at], at, line.row))
    yield from counts
    yield from _gauge(line)
    for column, value in line.of("yarn"):
        used = read_yarn(value, column.unit)
        yield from (YarnUsed(line.who, line.place(column.at), amount, unit, value) for amount, unit in used)
        if not used and value.casefold() not in _NOTHING:
            yield _unread(line, column, value, "an amount")
    for column, value in line.of("measure"):
        yield from _measures(line, column, value)
    yield from _remarks(line, {claim.words for claim in counts if isinstance(claim, Remark)})


def _counts(line: TableLine) -> list[Claim | Unmatched]:
    found: list[Claim | Unmatched] = []
    for column, value in line.of("count"):
        if line.row is not None:
            own = replace(line, who=replace(line.who, size=column.size)) if column.size else line
            found.extend(_counted(own, value, column.at, line.row, _printed(line, column.size)))
        elif told := _in_prose(line, column.at, value):
            found.extend(told)
        else:
            found.append(Unmatched(line.place(column.at), f"the count “{value}”", "its line names no row"))
    for column, value in () if found or line.row is None else line.of("off"):
        number = expression(r"[+]?\s*([-−]?\s*\d{1,4})").fullmatch(value)
        if number is None:
            found.append(_unread(line, column, value, "a number"))
        else:
            off = int(number[1].replace("−", "-").replace(" ", ""))
            found.append(replace(_base(line, value, column.at, line.row), off=off))
    return found


def _printed(line: TableLine, size: str | None) -> int | None:
    """What the tester's copy says, of a size where the headings name sizes."""
    cells = [cell for column, cell in line.of("printed") if column.size in (None, size)]
    found = read_count(cells[0]) if cells else None
    return found.count if found is not None and not found.more else None


def _by_row(line: TableLine) -> Iterator[Claim | Unmatched]:
    for column, value in line.of("row count"):
        own = replace(line, part=column.part) if column.part else line
        yield from _counted(own, value, column.at, column.row or "")


def _base(line: TableLine, value: str, at: int, row: str | None) -> Counted:
    unit = line.one("unit") or None
    return Counted(line.who, row or "", line.place(at), part=line.part, unit=unit, note=line.one("note"), quoted=value)


def _counted(line: TableLine, value: str, at: int, row: str, due: int | None = None) -> Iterator[Claim | Unmatched]:
    base = replace(_base(line, value, at, row), printed=due) if due is not None else _base(line, value, at, row)
    if value.isdigit() and len(value) <= 4:
        yield replace(base, count=int(value))
    elif (found := read_count(value)) is not None:
        printed = found.printed if found.printed is not None else due
        yield replace(base, count=found.count, off=found.off, unit=found.unit or base.unit, printed=printed)
        yield from (replace(base, count=count, unit=unit, printed=None) for count, unit in found.more)
    elif line.reader.is_as_printed(value):
        yield replace(base, as_printed=True)
    elif plain(value) and not expression(r"\d").search(value):  # words where a count was asked for: a remark on the row
        yield _placed_remark(replace(line, row=row), line.reader.kind(value), value, at)
    else:
        yield Unmatched(line.place(at), f"“{value}”", "it is no count")


def _gauge(line: TableLine) -> Iterator[Claim | Unmatched]:
    """The gauge and the hook of one line, as one claim."""
    if not line.filled.keys() & {"gauge", "gauge_stitches", "gauge_rows", "hook"}:
        return
    hooks = line.reader.hooks
    figures: dict[str, float | None] = {"stitches": None, "rows": None}
    over, at, quoted = 10.0, None, []
    for column, value in line.of("gauge"):
        if not expression(r"\d").search(value):
            continue
        read = next(iter(line.reader.line(f"gauge {value}", line.place(column.at))), None)
        if not isinstance(read, GaugeGot):
            yield _unread(line, column, value, "a gauge")
            continue
        figures, over, at = {"stitches": read.stitches, "rows": read.rows}, read.over_cm, column.at
        quoted.append(value)
    for key in ("stitches", "rows"):
        for column, value in line.of(f"gauge_{key}"):
            number = expression(r"\s*(\d+(?:[.,]\d+)?)").match(value)
            if number is None:
                yield _unread(line, column, value, "a number")
                continue
            figures[key], at = float(number[1].replace(",", ".")), at if at is not None else column.at
            quoted.append(value)
    mm = None
    for column, value in line.of("hook"):
        bare = expression(r"\s*(\d{1,2}(?:[.,]\d{1,2})?)\s*").fullmatch(value)
        mm = float(bare[1].replace(",", ".")) if bare else read_hook(f"hook {value}", hooks)
        if mm is None:
            yield _unread(line, column, value, "a hook's size")
        at = at if at is not None else column.at
        quoted.append(value)
    if any(value is not None for value in (*figures.values(), mm)):
        yield GaugeGot(line.who, line.place(at), figures["stitches"], figures["rows"], over, mm, ", ".join(quoted))


def _measures(line: TableLine, column: Column, value: str) -> Iterator[Claim | Unmatched]:
    if value.casefold() in _NOTHING:
        return
    heading = expression(r"[(\[].*?[)\]]").sub("", column.heading).strip().lower()
    general = plain(heading) in (plain(word) for word in line.reader.names.words.columns["measure"])
    found = read_measures(value, column.unit)
    if not found:
        yield _unread(line, column, value, "a measure in cm or inches")
    for what, cm in found:
        named = line.one("measured_what") or ("" if general else heading)
        yield Measured(line.who, line.place(column.at), " ".join((named, what)).strip(), cm, value)


def _remarks(line: TableLine, told: set[str]) -> Iterator[Claim]:
    """The notes of a line, of the kind that is said or that their words show; counts that stand in them are counts."""
    if not line.filled.keys() & {"note", "kind", "words", *_REMARKS}:
        return
    kinds = line.reader.names.words.kinds
    said = plain(line.one("kind"))
    notes = [(column, value, said if said in kinds else line.reader.kind(value)) for column, value in line.of("note")]
    notes += [(column, value, kind) for kind in _REMARKS for column, value in line.of(kind)]
    if not notes and (said in kinds or line.one("words")):
        meaning = "words" if line.one("words") else "kind"
        notes = [(column, value, said if said in kinds else "note") for column, value in line.of(meaning)][:1]
    for column, value, kind in notes:
        if value.casefold() in _NOTHING or value in told:
            continue
        counts = _in_prose(line, column.at, value)
        yield from counts
        if not counts:
            yield _placed_remark(line, kind, value, column.at)


def _in_prose(line: TableLine, at: int, value: str) -> list[Claim]:
    """A cell in which rows are told of by sentences ("Rnd 5: 38, not 40; Rnd 9: 51"), if there is any count in it."""
    names = line.reader.names
    if not any(expression(r"\d").search(value[found.end() :]) for found in names.labels_in(value)[:1]):
        return []
    reader = ProseReader(names, line.reader.hooks, line.who)
    reader.context = replace(reader.context, part=line.part)
    pieces = expression(r"\n|;\s|\.\s+(?=\p{Lu})").split(value)
    claims = [claim for piece in pieces for claim in reader.line(piece, line.place(at))]
    return claims if any(isinstance(claim, Counted) for claim in claims) else []


def _placed_remark(line: TableLine, kind: str, words: str, at: int) -> Remark:
    label = None if line.row else line.reader.names.row_pattern.search(words)
    row = line.row or (label[0] if label else None)
    return Remark(line.who, line.place(at), kind, words, line.part, row, line.one("words"))


def _unread(line: TableLine, column: Column, value: str, what: str) -> Unmatched:
    return Unmatched(line.place(column.at), f"“{value}” under “{column.heading}”", f"{what} was expected there")
