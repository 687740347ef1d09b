"""Puts what stands on a page in reading order: columns one after the other, lines from the top, tables row by row.

Knows nothing of PDF: only of runs of letters with their places, in points, from the page's lower left corner.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from lint.documents.lines import CELL, Words, plain
from lint.documents.rowtables import RowTable
from lint.expression import expression

_GUTTER = 8.0  # points between two columns, at least
_NARROW = 0.22  # of the page's text: what is narrower is a table's column
_LABEL = expression(r"(?i)\W*(?:(?:rows?|rnds?|rounds?|r)\s*\.?\s*\d|\d{1,3}\s*[.):]?\s*$|\d{1,3}(?:st|nd|rd|th)\s+r)")
_BULLET = expression(r"[•·▪◦●○*–—-]|\d{1,3}[.)]|\(?\w[.)]")


@dataclass(frozen=True, slots=True)
class Fragment:
    """A run of letters on one line: its words, its left and right end, its baseline, the letters' height."""

    words: tuple[Words, ...]
    left: float
    right: float
    base: float
    size: float
    bold: bool = False
    word: float = 0.0  # the width of its first word

    @property
    def text(self) -> str:
        return plain(list(self.words))


@dataclass(slots=True)
class Line:
    """A line in reading order: its words; its place; where the column that it stands in ends; whether it is a table's row."""

    words: list[Words]
    left: float
    right: float
    base: float
    size: float
    page: int
    edge: float
    word: float = 0.0  # the width of its first word
    bold: bool = False
    row: bool = False
    first: bool = False  # in its column
    top: bool = field(default=False)  # the first or the last of the page


def page_lines(fragments: list[Fragment], page: int, width: float) -> list[Line]:
    """The lines of a page, in the order of reading; `width` of the page, in points."""
    if not fragments:
        return []
    left = min(one.left for one in fragments)
    right = max(one.right for one in fragments)
    edge = max(right, width - left) if right < width else right
    order = _Order(right - left, page)
    lines = list(order.read(fragments, edge))
    top, bottom = max(line.base for line in lines), min(line.base for line in lines)
    for line in lines:
        line.top = line.base >= top - line.size or line.base <= bottom + line.size
    return lines


_Row = list[Fragment]  # what stands on one line, from the left


def _rows(fragments: list[Fragment]) -> list[_Row]:
    rows: list[_Row] = []
    for one in sorted(fragments, key=lambda one: -one.base):
        if rows and abs(rows[-1][0].base - one.base) <= 0.4 * max(one.size, rows[-1][0].size):
            rows[-1].append(one)
        else:
            rows.append([one])
    return [sorted(row, key=lambda one: one.left) for row in rows]


class _Order:
    def __init__(self, width: float, page: int) -> None:
        self.width = width  # of the page's text
        self.page = page

    def read(self, fragments: list[Fragment], edge: float, depth: int = 0) -> Iterator[Line]:
        """Lines of a region: above a pair of columns, the left one, the right one, below."""
        if not fragments:
            return
        rows = _rows(fragments)
        found = self._columns(rows) if depth < 8 else None
        if found is None:
            yield from self._lines(rows, edge)
            return
        at, start, end = found
        inside = [one for row in rows[start:end] for one in row]
        yield from self.read([one for row in rows[:start] for one in row], edge, depth + 1)
        yield from self.read([one for one in inside if one.left < at - 1], at - _GUTTER, depth + 1)
        yield from self.read([one for one in inside if one.left >= at - 1], edge, depth + 1)
        yield from self.read([one for row in rows[end:] for one in row], edge, depth + 1)

    def _columns(self, rows: list[_Row]) -> tuple[float, int, int] | None:
        """Where a right column begins, and the rows that the two columns take; the pair that takes most."""
        best: tuple[float, int, int] | None = None
        most = 0
        for at in self._starts(rows):
            for start, end in _clear(rows, at):
                band = rows[start:end]
                taken = sum(len(row) for row in band)
                if taken > most and self._side_by_side(band, at):
                    best, most = (at, start, end), taken
        return best

    @staticmethod
    def _starts(rows: list[_Row]) -> list[float]:
        """Left edges that three lines or more share, other than the leftmost."""
        lefts = sorted(one.left for row in rows for one in row)
        found: list[float] = []
        for at, left in enumerate(lefts):
            if at + 2 < len(lefts) and lefts[at + 2] - left <= 3 and left > lefts[0] + 20:
                if not found or left - found[-1] > 6:
                    found.append(left)
        return found

    def _side_by_side(self, band: list[_Row], at: float) -> bool:
        """Whether what stands left and right of a line are two columns of text, and not the columns of a table."""
        left = [one for row in band for one in row if one.left < at - 1]
        right = [one for row in band for one in row if one.left >= at - 1]
        if len({one.base for one in left}) < 3 or len({one.base for one in right}) < 3:
            return False
        widths = [max(one.right for one in side) - min(one.left for one in side) for side in (left, right)]
        if min(widths) < _NARROW * self.width:
            return False
        beside = [row for row in band if row[0].left < at - 1 and row[-1].left >= at - 1]
        labelled = [row for row in beside if _LABEL.match(row[0].text)]
        others = sum(_LABEL.match(one.text) is not None for one in right)
        table = len(labelled) > 0.6 * len(right) and others < 0.2 * len(right) and widths[1] < 0.35 * self.width
        return not table

    def _lines(self, rows: list[_Row], edge: float) -> Iterator[Line]:
        """The lines of one column; rows of a table whose cells are wrapped are put together."""
        lefts = [one.left for row in rows for one in row[1:]]
        aligned = [left for left in lefts if sum(abs(other - left) <= 3 for other in lefts) > 1]
        first = True
        at = 0
        while at < len(rows):
            end = _table_end(rows, at, aligned)
            table = _put_together(rows[at:end]) if end > at + 1 else [rows[at]]
            known = _columns_of(table)
            for row, words in zip(table, known or [None] * len(table), strict=True):
                line = self._line(row, edge, aligned)
                line.first, first = first, False
                line.words = words or line.words
                yield line
            at = max(end, at + 1)

    def _line(self, row: _Row, edge: float, aligned: list[float]) -> Line:
        words: list[Words] = list(row[0].words)
        cells = False
        for before, one in zip(row, row[1:], strict=False):
            if before.base > one.base + 0.5 * one.size and abs(before.left - one.left) <= 3:
                gap = " "  # the cell's next line
            elif before is row[0] and _BULLET.fullmatch(before.text):
                gap = " "
            elif any(abs(one.left - left) <= 3 for left in aligned):
                gap, cells = CELL, True
            else:
                gap = "  "
            words += [Words(gap), *one.words]
        size = max(one.size for one in row)
        bold = all(one.bold for one in row)
        left, right = row[0].left, max(one.right for one in row)
        return Line(words, left, right, min(one.base for one in row), size, self.page, edge, row[0].word, bold, cells)


def _clear(rows: list[_Row], at: float) -> Iterator[tuple[int, int]]:
    """Runs of rows that nothing crosses where a column would begin, and its gutter before it."""
    start = 0
    for number, row in enumerate([*rows, None]):
        if row is None or any(one.left < at - 1 and one.right > at - _GUTTER for one in row):
            if number > start + 2:
                yield start, number
            start = number + 1


def _table_end(rows: list[_Row], at: int, aligned: list[float]) -> int:
    """The end of a table that begins here: rows of cells, and rows without a first cell that go on with them."""
    if len(rows[at]) < 2 or not any(abs(one.left - left) <= 3 for one in rows[at][1:] for left in aligned):
        return at
    first = rows[at][0].left
    end = at + 1
    while end < len(rows) and all(
        abs(one.left - first) <= 3 or any(abs(one.left - left) <= 3 for left in aligned) for one in rows[end]
    ):
        if len(rows[end]) < 2 and abs(rows[end][0].left - first) <= 3:
            break  # a line of the text below the table
        if rows[end - 1][0].base - rows[end][0].base > 3.5 * rows[end][0].size:
            break
        end += 1
    return end


def _columns_of(rows: list[_Row]) -> list[list[Words] | None] | None:
    """The rows of a table of rows and rounds in the order of words; None where it is another table, or its first row."""
    if len(rows) < 2:
        return None
    lefts = sorted(one.left for row in rows for one in row)
    columns = [left for at, left in enumerate(lefts) if not at or left - lefts[at - 1] > 3]
    table: list[list[list[Words]]] = []
    for row in rows:
        cells: list[list[Words]] = [[] for _ in columns]
        for one in row:
            near = max(at for at, left in enumerate(columns) if left <= one.left)
            cells[near] += [Words(" "), *one.words] if cells[near] else one.words
        table.append(cells)
    words = [[plain(cell) for cell in row] for row in table]
    known = RowTable.known_by(words[0], words[1:])
    return [None, *(known.line(row) for row in table[1:])] if known is not None else None


def _put_together(rows: list[_Row]) -> list[_Row]:
    """A table's rows, each with all the lines of its cells: told apart by the space between them, or by their first cells."""
    first = min(row[0].left for row in rows)
    heads = [abs(row[0].left - first) <= 3 for row in rows]
    if all(heads):
        return rows
    gaps = [above[0].base - below[0].base for above, below in zip(rows, rows[1:], strict=False)]
    by_space = _grouped(rows, [gap > 1.2 * min(gaps) for gap in gaps])
    if all(sum(abs(one.left - first) <= 3 for one in group) == 1 for group in by_space):
        return by_space
    return _grouped(rows, heads[1:])


def _grouped(rows: list[_Row], begins: list[bool]) -> list[_Row]:
    groups: list[list[_Row]] = [[rows[0]]]
    for row, new in zip(rows[1:], begins, strict=True):
        if new:
            groups.append([row])
        else:
            groups[-1].append(row)
    return [
        sorted((one for row in group for one in row), key=lambda one: (round(one.left / 6), -one.base))
        for group in groups
    ]
