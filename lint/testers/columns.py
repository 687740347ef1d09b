"""Columns of tables matched by the meaning of their headings, whatever their order and their words."""

from __future__ import annotations

from dataclasses import dataclass

from lint.expression import expression
from lint.testers.names import Names, plain

_SHORT = 3  # a word this short means something only where it is the whole heading
_UNIT = expression(
    r"(?i)(?<![\p{L}\d])(cm|centimet(?:re|er)s?|in|ins|inch(?:es)?|mm|g|gr|grams?|m|met(?:re|er)s?|yds?|yards?|balls?|skeins?|oz)(?![\p{L}\d])|[\"”]"
)


@dataclass(frozen=True, slots=True)
class Column:
    """A column: where it is (from 0), its heading, and what it holds.

    `meaning`: a key of `columns` in rules/testers.yaml; "measure"; "row count" where the heading names a row; or None.
    """

    at: int
    heading: str
    meaning: str | None = None
    row: str | None = None
    part: str | None = None
    unit: str | None = None
    size: str | None = None  # where the heading names one: "size S count"


def column_of(heading: str, at: int, names: Names) -> Column:
    """A column by its heading."""
    heading = " ".join(heading.split())
    meaning, row, part = _meaning(heading, names)
    unit = _UNIT.search(heading)
    size, rest = _size_in(heading, names)
    if size is not None and names.headings.get(rest) in ("count", "printed"):
        return Column(at, heading, names.headings[rest], size=size)
    return Column(at, heading, meaning, row, part, unit[0].lower() if unit else None)


def _size_in(heading: str, names: Names) -> tuple[str | None, str]:
    """A size of the pattern at either end of a heading, and the heading's other words: "Count (M)", "size S count"."""
    words = plain(heading).split()
    for length in range(len(words) - 1, 0, -1):
        for said, rest in ((words[:length], words[length:]), (words[-length:], words[:-length])):
            if said != ["size"] and names.size(" ".join(said)) is not None:
                return " ".join(said), " ".join(rest)
    return None, ""


def header_of(cells: tuple[str, ...] | list[str], names: Names) -> tuple[Column, ...] | None:
    """The columns of a line of headings; None where the line is none.

    Half of its cells must have a known meaning, two of them different ones; or the first heads the rows of a table
    whose other columns are testers.
    """
    filled = [(at, cell) for at, cell in enumerate(cells) if cell.strip()]
    if len(filled) < 2 or filled[0][1].rstrip().endswith(":") or any(_is_value(cell, names) for _, cell in filled):
        return None
    columns = tuple(column_of(cell, at, names) for at, cell in filled)
    known = [column for column in columns if column.meaning is not None]
    if len({(column.meaning, column.row) for column in known}) >= 2 and len(known) * 2 >= len(filled):
        return columns
    return columns if columns[0].meaning == "row" else None


def _is_value(cell: str, names: Names) -> bool:
    """Whether a cell begins with a figure and is no row's label: it is no heading."""
    return expression(r"\s*[\d½¼¾.,]").match(cell) is not None and names.row_pattern.match(cell.strip()) is None


def _meaning(heading: str, names: Names) -> tuple[str | None, str | None, str | None]:
    key = plain(heading)
    phrases = names.headings
    if key in phrases:
        return phrases[key], None, None
    label = names.row_pattern.search(heading)
    if label is not None and not label["start"] and not expression(r"(?i)\b(?:gauge|tension|swatch)\b").search(heading):
        before = heading[: label.start()].strip(" ,:–-")
        return "row count", label[0], before if before and names.part(before) else None
    inside = [phrase for phrase in phrases if len(phrase) > _SHORT and f" {phrase} " in f" {key} "]
    if inside:
        best = max(inside, key=len)
        return phrases[best], None, None
    bare = plain(_UNIT.sub(" ", expression(r"[(\[].*?[)\]]").sub(" ", heading)))
    if bare in phrases:
        return phrases[bare], None, None
    return None, None, None
