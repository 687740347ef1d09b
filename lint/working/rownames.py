"""Rows that are called for by name: "Rep Dec row" finds "Dec row:", "Row 2 (dec row):" and "Decrease Row (RS):"."""

from __future__ import annotations

from lint.expression import expression

_SHORT = ((r"\bdecreas(?:e|es|ing)\b", "dec"), (r"\bincreas(?:e|es|ing)\b", "inc"), (r"\bset[- ]?up\b", "setup"))
_ROW = expression(r"\b(?:rows?|rounds?|rnds?|rds?|rs|ws|right side|wrong side)\b")


def answers_to(label: str, name: str) -> bool:
    """Whether a row of this label is the one called for by that name; words in brackets name it as well."""
    wanted = _plain(name)
    parts = expression(r"[()\[\],–—]|\s-\s").split(label)
    return bool(wanted) and any(_plain(part) == wanted for part in parts)


def _plain(words: str) -> str:
    """Words in one form, without those for rows and sides."""
    words = words.lower()
    for form, short in _SHORT:
        words = expression(form).sub(short, words)
    return " ".join(_ROW.sub(" ", words).replace(".", " ").split())
