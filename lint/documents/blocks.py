"""Paragraphs and tables in the order of a document, and how they become lines of text."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import median

from lint.documents.lines import Lines, Words, in_lines, plain, row_of, stripped
from lint.documents.rowtables import RowTable
from lint.source import SourceText


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph: its words, line breaks among them; none for one left empty.

    `heading`: it is set off as a heading; `space`: between it and the paragraph above, in points.
    """

    words: tuple[Words, ...]
    heading: bool = False
    space: float = 0.0


@dataclass(frozen=True, slots=True)
class Table:
    """A table: its rows, the cells of each, the blocks of each cell."""

    rows: tuple[tuple[tuple[Block, ...], ...], ...]

    @property
    def frames(self) -> bool:
        """Whether the table only sets passages side by side: each of its cells is to be read by itself, like a column.

        Known by a table in a cell, by a cell of many paragraphs, and by several cells with more than one in a row.
        """
        if all(len(row) < 2 for row in self.rows):
            return True
        for row in self.rows:
            heights = [sum(1 for block in cell if isinstance(block, Table) or plain_of(block)) for cell in row]
            inner = any(isinstance(block, Table) for cell in row for block in cell)
            if inner or max(heights, default=0) > 3 or sum(height > 1 for height in heights) > 1:
                return True
        return False


Block = Paragraph | Table


def plain_of(block: Block) -> str:
    """A paragraph's words as they read; "" for a table."""
    return plain(list(block.words)).strip() if isinstance(block, Paragraph) else ""


def laid_out(blocks: Iterable[Block], path: str, kind: str, notes: Iterable[str] = ()) -> SourceText:
    """The blocks as a text: a line a paragraph, a line a table's row, blank lines where the print sets things apart."""
    blocks = list(blocks)
    layout = _Layout(Spacing.of([block for block in blocks if isinstance(block, Paragraph)]))
    layout.add(blocks)
    return layout.lines.source(path, kind, tuple(notes))


@dataclass(frozen=True, slots=True)
class Spacing:
    """What the space between paragraphs says in one document.

    Empty paragraphs, where the writer has the habit, show what stands apart, and the space of styles says nothing.  Where
    headings are set off, more space than is usual shows it.  Where neither is, any space may.
    """

    by_hand: bool
    usual: float | None  # in points; None: no paragraph is set off as a heading

    @classmethod
    def of(cls, paragraphs: Sequence[Paragraph]) -> Spacing:
        """The habits of a document."""
        filled = [paragraph for paragraph in paragraphs if plain_of(paragraph)]
        by_hand = (len(paragraphs) - len(filled)) * _FEW > len(paragraphs)
        spaces = [paragraph.space for paragraph in filled if not paragraph.heading]
        headed = sum(paragraph.heading for paragraph in filled[1:]) > 0 and bool(spaces)
        return cls(by_hand, median(spaces) if headed else None)

    def apart(self, paragraph: Paragraph) -> bool:
        """Whether the space before a paragraph sets it apart."""
        if self.by_hand or paragraph.space < _SEEN:
            return False
        return self.usual is None or paragraph.space > max(1.35 * self.usual, self.usual + 2)


_FEW = 12  # one empty paragraph in so many is a habit
_MOST_COLUMNS = 6  # of a table of rows and rounds
_SEEN = 4.0  # points; less is no space that a reader sees


class _Layout:
    def __init__(self, spacing: Spacing) -> None:
        self.spacing = spacing
        self.lines = Lines()
        self.paragraphs = 0
        self.tables = 0

    def add(self, blocks: Iterable[Block], place: str | None = None) -> None:
        """Add blocks; `place` where they stand in a table."""
        for block in blocks:
            if isinstance(block, Table):
                self._table(block, place)
            else:
                self._paragraph(block, place)

    def _paragraph(self, block: Paragraph, place: str | None) -> None:
        lines = in_lines(list(block.words))
        if not plain_of(block):
            self.lines.blank()
            return
        if place is None:
            self.paragraphs += 1
            place = f"paragraph {self.paragraphs}"
        if block.heading:
            self.lines.blank()
        elif self.spacing.apart(block):
            self.lines.apart(lines[0])
        for words in lines:
            self.lines.line(words, place)

    def _table(self, table: Table, outer: str | None) -> None:
        if outer is None:
            self.tables += 1
        name = f"table {self.tables}"
        self.lines.blank()
        rows = [[cell_lines(cell) for cell in row] for row in table.rows]
        frames = table.frames
        known = None if frames else _row_table(rows)
        for number, row in enumerate(table.rows, 1):
            place = outer or f"{name}, row {number}"
            if frames:
                for cell in row:
                    self.add(cell, place)
                    self.lines.blank()
            else:
                self._row(rows[number - 1], known if number > 1 else None, place)
        self.lines.blank()

    def _row(self, cells: list[list[list[Words]]], known: RowTable | None, place: str) -> None:
        filled = [number for number, cell in enumerate(cells) if cell]
        if not filled:
            return
        ordered = known.line([row_of([cell]) for cell in cells]) if known is not None else None
        first = filled[0] if len(filled) == 1 else 0  # a cell that goes on with the one above
        self.lines.line(ordered or row_of(cells[first : filled[-1] + 1]), place)


def cell_lines(cell: Iterable[Block]) -> list[list[Words]]:
    """The lines of a cell that hold anything."""
    lines = [words for block in cell if isinstance(block, Paragraph) for words in in_lines(list(block.words))]
    return [words for words in map(stripped, lines) if words]


def _row_table(rows: list[list[list[list[Words]]]]) -> RowTable | None:
    """The table as one of rows and rounds, by the first of its rows."""
    if not 1 < len(rows) or len(rows[0]) > _MOST_COLUMNS:
        return None
    words = [[plain(row_of([cell])) for cell in row] for row in rows]
    return RowTable.known_by(words[0], words[1:])


def spaced(words: list[Words], raised: Words) -> list[Words]:
    """Words and figures set above the line: "1" and a raised "1/2" are 1 1/2, never 11/2."""
    before = plain(words)[-1:]
    if before.isdigit() and raised.text[:1].isdigit():
        return [*words, Words(" "), raised]
    return [*words, raised]
