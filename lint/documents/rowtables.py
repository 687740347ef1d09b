"""Tables of rows and rounds, known by their head: "Row | Colour | Instruction | Sts".

Their rows are set in the order in which patterns say things, "Row 1 (A): Ch 1, sc in each st (10)", so that they are read
as any row is; every word keeps its place.  A table whose head is not understood is left as it stands.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lint.documents.lines import Words, plain
from lint.expression import expression

Line = list[Words]

_HEADS = {
    "label": r"(?:row|rnd|round|rd|r)s?(?: ?(?:#|no\.?|number))?",
    "colour": r"colou?rs?|yarn",
    "work": r"instructions?|directions?|patterns?|work|what to do|how to work|description",
    "count": r"(?:stitch |st )?counts?|results?|totals?(?: (?:sts|stitches|count))?|(?:no\.?|number|#) of (?:sts|stitches)",
    "either": r"sts?|stitch(?:es)?",  # the work or the count, as the cells below show
}
_PATTERNS = {kind: expression(rf"(?i)\W*(?:{words})\W*") for kind, words in _HEADS.items()}
_FIGURES = expression(r"\W*\d[\d\s,()\[\]/:–-]*(?:sts?|stitches|sc|dc|hdc|tr|htr)?\W*")
_BARE_LABEL = expression(r"\d{1,4}(?:\s*(?:-|–|—|to|&|and|,)\s*\d{1,4})*\.?")
_BARE_COUNT = expression(r"\d[\w\s,/:–-]*")


def is_head(line: str) -> bool:
    """Whether a line is the head of a table of rows that blanks set in columns: "Rnd     What to do     Sts"."""
    cells = expression(r"\t+|\s{2,}").split(line.strip())
    labelled = len(cells) > 1 and _PATTERNS["label"].fullmatch(cells[0]) is not None
    return labelled and all(any(name.fullmatch(cell) for name in _PATTERNS.values()) for cell in cells[1:])


@dataclass(frozen=True, slots=True)
class RowTable:
    """The columns of a table of rows, from 0, and the word for a row."""

    word: str
    label: int
    work: int
    colour: int | None
    count: int | None

    @classmethod
    def known_by(cls, head: Sequence[str], below: Sequence[Sequence[str]]) -> RowTable | None:
        """The table with this head over these rows, if every column of it is known."""
        columns: dict[str, int] = {}
        for number, name in enumerate(head):
            kind = next((kind for kind, pattern in _PATTERNS.items() if pattern.fullmatch(name)), None)
            if kind == "either":
                cells = [row[number] for row in below if number < len(row) and row[number]]
                figures = sum(_FIGURES.fullmatch(cell) is not None for cell in cells)
                kind = "count" if figures * 2 > len(cells) else "work"
            if kind is None or kind in columns:
                return None
            columns[kind] = number
        if "label" not in columns or "work" not in columns:
            return None
        word = "Row" if expression(r"(?i)\W*row").match(head[columns["label"]]) else "Rnd"
        return cls(word, columns["label"], columns["work"], columns.get("colour"), columns.get("count"))

    def line(self, cells: Sequence[Line]) -> Line | None:
        """A row's cells in the order of the words; None for one that is no row of work."""
        label, work = self._cell(cells, self.label), self._cell(cells, self.work)
        if not label or not work:
            return None
        bare = _BARE_LABEL.fullmatch(plain(label)) is not None
        line = [Words(f"{self.word} "), *label] if bare else [*label]
        colour, count = self._cell(cells, self.colour), self._cell(cells, self.count)
        if colour:
            line += [Words(" ("), *colour, Words(")")]
        line += [Words(" " if plain(line).endswith((":", ".", "-", "–")) else ": "), *work]
        if count:
            open_, close = (" (", ")") if _BARE_COUNT.fullmatch(plain(count)) else (" ", "")
            line += [Words(open_), *count, Words(close)]
        return line

    @staticmethod
    def _cell(cells: Sequence[Line], column: int | None) -> Line:
        return cells[column] if column is not None and column < len(cells) else []
