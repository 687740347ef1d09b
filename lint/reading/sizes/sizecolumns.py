"""Size tables that have a line for each size: "S | 34 in | 20 in", "Small: bust 34 in, length 20 in"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import regex

from lint.expression import Expression, expression
from lint.reading.facts.measures import Figure, number
from lint.source import Span

_FIGURE = expression(
    r"(?<![\w.,/])(?P<figure>\d{1,3}(?:[ -]\d/\d|\s?[½¼¾]|\.\d+)?)\s?(?:(?P<inch>(?i:-?inch(?:es)?|ins?\b)|[\"”″])|(?P<cm>(?i:cms?\b)))?(?![\w½¼¾]|\.\d)"
)
_CELLS = expression(r"\s*[|\t]\s*|\s{2,}")
_UNIT = expression(r"(?i)(?:\b(?P<inch>inch(?:es)?|ins?|in)\b|[\"”″])|\b(?P<cm>cms?|centimet(?:re|er)s?)\b")
_WORDS = expression(r"[^\W\d_][\w'’]*(?:\s[^\W\d_][\w'’]*)*")


@dataclass(frozen=True, slots=True)
class Column:
    """One measure of all sizes, each on its own line."""

    label: str
    unit: str  # in | cm
    figures: tuple[Figure, ...]


def read_columns(text: str, names: Sequence[str]) -> Iterator[Column]:
    """The measures of a table with a line for each size, in the order of the sizes; nothing where lines are unlike."""
    if len(names) < 2:
        return
    lines = list(expression(r"[^\n]+").finditer(text))
    forms = [_line_of(name) for name in names]
    for at in range(len(lines) - len(names) + 1):
        if not forms[0].match(text, lines[at].start(), lines[at].end()):
            continue
        run = lines[at : at + len(names)]
        begins = [form.match(text, line.start(), line.end()) for form, line in zip(forms, run, strict=True)]
        rows = [
            list(_FIGURE.finditer(text, begin.end(), line.end()))
            for line, begin in zip(run, begins, strict=True)
            if begin is not None
        ]
        if len(rows) < len(names):
            continue
        if not rows[0] or len({len(row) for row in rows}) != 1:
            continue
        head = lines[at - 1][0] if at else ""
        for index in range(len(rows[0])):
            yield from _column(text, head, run[0], [row[index] for row in rows], index, len(rows[0]))


def _line_of(name: str) -> Expression:
    """A line that begins with a size's name, up to where it goes on."""
    return expression(rf"(?i)[\s|•*-]*(?:size\s+)?{regex.escape(name)}\s*(?:[|:\t–=-]|\s{{2,}})", own_words=True)


def _column(
    text: str, head: str, first: regex.Match, cells: list[regex.Match], index: int, width: int
) -> Iterator[Column]:
    heads = [cell for cell in _CELLS.split(head.strip(" |\t")) if cell]
    told = heads[index - width] if len(heads) in (width, width + 1) else ""
    units = {"in" if cell["inch"] else "cm" if cell["cm"] else None for cell in cells}
    over = _UNIT.search(told)
    unit = units.pop() if len(units) == 1 else None
    unit = unit or (None if over is None else "in" if over["inch"] or not over["cm"] else "cm")
    before = _WORDS.findall(text[first.start() : cells[0].start()])
    label = _UNIT.sub("", told).strip(" ()[],:") or (before[-1] if before else "")
    if unit is not None:
        figures = tuple(Figure(Span(*cell.span("figure")), number(cell["figure"])) for cell in cells)
        yield Column(label, unit, figures)
