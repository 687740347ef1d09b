"""Takes in all reports: from files to claims, with everything told that could not be matched."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePath

from lint.rulebook import HookSize
from lint.testers.claims import Claim, Intake, Place, Unmatched, Who
from lint.testers.columns import header_of
from lint.testers.files import Grid, Lines, ReportError, delimiter_of, read_file, split_line
from lint.testers.names import Names
from lint.testers.prose import ProseReader
from lint.testers.tables import read_grid


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
        for piece in pieces:
            for found in read_grid(piece, reader) if isinstance(piece, Grid) else _read_lines(piece, reader):
                (unmatched if isinstance(found, Unmatched) else claims).append(found)
    return Intake(tuple(claims), tuple(unmatched), tuple(unread))


def _tester_of(stem: str) -> str:
    """Whose report a file is, by its name, until it says so itself: "mia-moth.eml" is Mia Moth's."""
    words = stem.replace("_", " ").replace("-", " ").split()
    return " ".join(word.capitalize() if word.islower() else word for word in words) or stem


def _read_lines(text: Lines, reader: ProseReader) -> Iterator[Claim | Unmatched]:
    """A text: lines of prose, and tables that were pasted between them."""
    at = 0
    while at < len(text.lines):
        table = _pasted(text, at, reader)
        if table is not None:
            yield from read_grid(table, reader)
            at = table.rows[-1][0]
            continue
        yield from reader.line(text.lines[at], Place(text.file, at + 1))
        at += 1


def _pasted(text: Lines, at: int, reader: ProseReader) -> Grid | None:
    """The table that begins in a line, to the next empty line; its first line must be one of headings."""
    end = at
    while end < len(text.lines) and text.lines[end].strip():
        end += 1
    block = text.lines[at:end]
    if len(block) < 2:
        return None
    cells = [split_line(line) for line in block]
    if header_of(cells[0], reader.names) is None:
        sign = delimiter_of("\n".join(block))
        if sign is None or header_of(block[0].split(sign), reader.names) is None:
            return None
        cells = [[cell.strip().strip('"') for cell in line.split(sign)] for line in block]
    if len(cells[1]) < 2 and set(block[1].strip()) - set("-=+| "):
        return None
    numbered = [
        (at + 1 + index, tuple(line))
        for index, (line, words) in enumerate(zip(cells, block, strict=True))
        if set(words.strip()) - set("-=+|: ")  # a line that is only drawn
    ]
    return Grid(text.file, None, tuple(numbered))
