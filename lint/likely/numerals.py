"""Finds the printed numeral of an Amount in the words of a clause, and words a number of times."""

from __future__ import annotations

import regex

from lint.amount import Amount
from lint.source import Span

_NUMERAL = regex.compile(r"(?<![\p{L}\d.-])\d+(?![\d.]|-\p{L})")
_LOOSE = regex.compile(r"\d+")
_LIST_BEHIND = regex.compile(r"\s?[(\[{]\s*[\d-]|[/:;-]\d|\s*[,)\]}]\s*[\d-]")
_LIST_BEFORE = regex.compile(r"[\d-]\s?[(\[{,:;/)\]-]\s*\Z")
_WORDS = {"once": 1, "twice": 2, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8}
_NUMBER_WORD = regex.compile(r"(?i)\b(?:" + "|".join(_WORDS) + r")\b")


def numeral(
    text: str, span: Span, amount: Amount, size: int, avoid: tuple[Span, ...] = (), loose: bool = False
) -> Span | None:
    """Where the figure that one size reads is printed, outside the stretches to avoid; None where it is not found.

    `loose`: also a figure that is a part of a word ("2nd", "ch-2").
    """
    pattern = _LOOSE if loose else _NUMERAL
    found = [
        match
        for match in pattern.finditer(text, span.start, span.end)
        if not any(other.start <= match.start() < other.end for other in avoid)
    ]
    figures = [int(match.group()) for match in found]
    wanted = list(amount.values)
    for index in range(len(found) - len(wanted) + 1):
        if figures[index : index + len(wanted)] == wanted:
            match = found[index + (size if len(wanted) > 1 else 0)]
            return Span(match.start(), match.end())
    for match in _NUMBER_WORD.finditer(text, span.start, span.end) if len(wanted) == 1 else ():
        if _WORDS[match.group().lower()] == wanted[0]:
            return Span(match.start(), match.end())
    return None


def in_list(text: str, at: Span | None, within: Span) -> bool:
    """Whether a printed figure stands in a list over the sizes: another for it changes one size alone."""
    if at is None:
        return False
    before = _LIST_BEFORE.search(text[within.start : at.start]) is not None
    return before or _LIST_BEHIND.match(text, at.end, within.end) is not None


def with_value(amount: Amount, size: int, number: int) -> Amount:
    """An amount with another figure: that of one size where it is a list."""
    if len(amount.values) == 1:
        return Amount.of(number)
    return Amount(tuple(number if index == size else value for index, value in enumerate(amount.values)))


def often(number: int) -> str:
    """ "once", "twice", "5 times"."""
    return {1: "once", 2: "twice"}.get(number, f"{number} times")


def ordinal(number: int) -> str:
    """ "2nd"."""
    ending = "th" if 10 < number % 100 < 14 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"
