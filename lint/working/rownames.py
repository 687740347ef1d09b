"""Rows that are called for by name: "Rep Dec row" finds "Dec row:", "Row 2 (dec row):" and "Decrease Row (RS):"."""

from __future__ import annotations

from collections.abc import Sequence

from lint.expression import expression
from lint.pattern import Part
from lint.tree import RowCall

_SHORT = ((r"\bdecreas(?:e|es|ing)\b", "dec"), (r"\bincreas(?:e|es|ing)\b", "inc"), (r"\bset[- ]?up\b", "setup"))
_ROW = expression(r"\b(?:rows?|rounds?|rnds?|rds?|rs|ws|right side|wrong side)\b")


def answers_to(label: str, name: str) -> bool:
    """Whether a row of this label is the one called for by that name; words in brackets name it as well."""
    wanted = _plain(name)
    parts = expression(r"[()\[\],–—]|\s-\s").split(label)
    return bool(wanted) and any(_plain(part) == wanted for part in parts)


def counted_from_one(numbers: Sequence[int | None], part: Part) -> bool:
    """Whether rows with these numbers are all there are in a piece: 1, 2, …, and then rows with a name alone."""
    told = [number for number in numbers if number]
    calls = (step for row in part.rows for step in row.steps if isinstance(step, RowCall))
    measured = any(call.open_ended or call.until is not None for call in calls)  # so many rows as that comes to
    return not measured and list(numbers[: len(told)]) == list(range(1, len(told) + 1))


def _plain(words: str) -> str:
    """Words in one form, without those for rows and sides."""
    words = words.lower()
    for form, short in _SHORT:
        words = expression(form).sub(short, words)
    return " ".join(_ROW.sub(" ", words).replace(".", " ").split())
