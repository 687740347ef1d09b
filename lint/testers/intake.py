"""Takes in all reports: from files to claims, with everything told that could not be matched."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import takewhile
from pathlib import PurePath

from lint.expression import expression
from lint.rulemodels import HookSize
from lint.testers.cells import column_letter
from lint.testers.claims import LONGEST_LINE, Claim, Intake, Place, Remark, Unmatched, Who
from lint.testers.columns import header_of
from lint.testers.files import Grid, Lines, ReportError, delimiter_of, read_file, split_line
from lint.testers.names import Names, plain
from lint.testers.prose import Context, ProseReader
from lint.testers.tables import read_grid

_ENOUGH = 30  # lines from which it is told what parts the cells of a table


def take_in(files: list[tuple[str, bytes]], names: Names, hooks: list[HookSize]) -> Intake:
    """Every claim in these files (name, content), in order; a file that cannot be read is told, and the others are read."""
    claims: list[Claim] = []
    unmatched: list[Unmatched] = []
    unread: list[tuple[str, str]] = []
    for name, raw in files:
        shown = PurePath(name).name if name != "-" else "standard input"
        reader = ProseReader(names, hooks, Who(_tester_of(PurePath(shown).stem)))
        try:
            pieces = read_file(shown, raw)
        except ReportError as error:
            unread.append((name, str(error)))
            continue
        own: list[Claim] = []
        several = sum(isinstance(piece, Grid) and piece.sheet is not None for piece in pieces) > 1
        for piece in pieces:
            if isinstance(piece, Grid) and piece.sheet is not None and several:
                _open_sheet(piece.sheet, reader)
            for found in _read(piece, reader):
                (unmatched if isinstance(found, Unmatched) else own).append(found)
        claims += own if several else _under_one_name(own, _tester_of(PurePath(shown).stem))
    return Intake(tuple(claims), tuple(unmatched), tuple(unread))


_GENERAL = expression(
    r"(?i)(?:sheet|tabelle|blatt|table|page|form(?: responses)?|responses|data|counts|report|test|results?|answers|summary)?[\s\d]*"
)


def _open_sheet(title: str, reader: ProseReader) -> None:
    """What the title of one of several sheets says: a part, a size, or whose sheet it is ("Mia (M)")."""
    names, bare = reader.names, title.strip()
    who = reader.context.who
    if names.part(bare):
        reader.context = replace(reader.context, part=bare)
    elif _GENERAL.fullmatch(bare) or plain(bare) in names.headings:
        return
    elif names.size(bare) is not None:
        reader.context = replace(reader.context, who=replace(who, size=bare))
    else:
        size = expression(r"[(\[,–-]\s*(?:size\s+)?([^()\[\],]+?)\s*[)\]]?\s*$").search(bare)
        sized = size is not None and names.size(size[1]) is not None
        reader.context = Context(Who(bare[: size.start()].strip(), size[1]) if sized else Who(bare))


def _under_one_name(claims: list[Claim], default: str) -> list[Claim]:
    """Remarks made before a file says whose it is are that tester's, if it says one only."""
    said = {claim.who.tester for claim in claims} - {default}
    if len(said) != 1 or any(claim.who.tester == default and not isinstance(claim, Remark) for claim in claims):
        return claims
    name = next(iter(said))
    return [
        replace(claim, who=replace(claim.who, tester=name)) if claim.who.tester == default else claim
        for claim in claims
    ]


def _read(piece: Grid | Lines, reader: ProseReader) -> Iterator[Claim | Unmatched]:
    if isinstance(piece, Lines):
        yield from _read_lines(piece, reader)
        return
    for one in _without_long(piece):
        if isinstance(one, Unmatched):
            yield one
        else:
            yield from read_grid(one, reader)


def _tester_of(stem: str) -> str:
    """Whose report a file is, by its name, until it says so itself: "mia-moth.eml" is Mia Moth's."""
    words = stem.replace("_", " ").replace("-", " ").split()
    return " ".join(word.capitalize() if word.islower() else word for word in words) or stem


def _read_lines(text: Lines, reader: ProseReader) -> Iterator[Claim | Unmatched]:
    """A text: lines of prose, and tables that were pasted between them; another's words that are quoted are told, not read."""
    at = 0
    while at < len(text.lines):
        if text.lines[at].lstrip().startswith(">"):
            end = next(
                (n for n in range(at, len(text.lines)) if not text.lines[n].lstrip().startswith(">")), len(text.lines)
            )
            lines = f"{end - at} quoted line{'s' if end - at > 1 else ''}"
            yield Unmatched(Place(text.file, at + 1), lines, "they are another's words in a mail that was answered")
            at = end
            continue
        if len(text.lines[at]) > LONGEST_LINE:
            yield _too_long(Place(text.file, at + 1), len(text.lines[at]))
            at += 1
            continue
        table = _pasted(text, at, reader)
        if table is not None:
            yield from read_grid(table, reader)
            at = table.rows[-1][0]
            continue
        yield from reader.line(text.lines[at], Place(text.file, at + 1))
        at += 1


def _too_long(place: Place, length: int) -> Unmatched:
    return Unmatched(
        place, f"a text of {length:,} characters", "it is longer than any line of a report, and was not read"
    )


def _without_long(grid: Grid) -> Iterator[Grid | Unmatched]:
    """A table without cells that are longer than any, and those told."""
    long = [(line, at) for line, cells in grid.rows for at, cell in enumerate(cells) if len(cell) > LONGEST_LINE]
    if not long:
        yield grid
        return
    dropped = set(long)
    for line, cells in grid.rows:
        for at, cell in enumerate(cells):
            if (line, at) in dropped:
                yield _too_long(Place(grid.file, line, grid.sheet, column_letter(at)), len(cell))
    rows = (
        (line, tuple("" if (line, at) in dropped else cell for at, cell in enumerate(cells)))
        for line, cells in grid.rows
    )
    yield replace(grid, rows=tuple(rows))


def _pasted(text: Lines, at: int, reader: ProseReader) -> Grid | None:
    """The table that begins in a line, to the next empty line; its first line must be one of headings."""
    head = text.lines[at]
    cut = split_line
    if header_of(split_line(head), reader.names) is None:
        parted = any(sign in head for sign in ",;|")
        sign = delimiter_of("\n".join(text.lines[at : at + _ENOUGH])) if parted else None
        if sign is None or header_of(head.split(sign), reader.names) is None:
            return None

        def cut(line: str) -> list[str]:
            return [cell.strip().strip('"') for cell in line.split(sign)]

    block = list(takewhile(str.strip, text.lines[at:]))
    if len(block) < 2 or len(cut(block[1])) < 2 and set(block[1].strip()) - set("-=+| "):
        return None
    numbered = [
        (at + 1 + index, tuple(cut(line)))
        for index, line in enumerate(block)
        if set(line.strip()) - set("-=+|: ")  # not one that is only drawn
    ]
    return Grid(text.file, None, tuple(numbered))
