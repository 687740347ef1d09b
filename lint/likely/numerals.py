"""Finds the printed numeral of an Amount in the words of a clause, and words a number of times."""

from __future__ import annotations

from lint.amount import Amount
from lint.expression import expression
from lint.source import Span

# a figure, though it stands behind the hyphen of a list; and what may stand between two figures of one
_OF_LIST = expression(r"(?<![\p{L}\d.])(?<!\p{L}-)\d+(?![\d.]|-\p{L})")
_BETWEEN = expression(r"\s?[,;:/–-]\s?|\s?,?\s?[(\[{]\s?|\s?[)\]}]\s?,?\s?[(\[{]?\s?")
_NUMERAL = expression(r"(?<![\p{L}\d.-])\d+(?![\d.]|-\p{L})")
_LOOSE = expression(r"\d+")
_LIST_BEHIND = expression(r"\s?[(\[{]\s*[\d-]|[/:;-]\d|\s*[,)\]}]\s*[\d-]")
_LIST_BEFORE = expression(r"[\d-]\s?[(\[{,:;/)\]-]\s*\Z")
_WORDS = {"once": 1, "twice": 2, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8}
_NUMBER_WORD = expression(r"(?i)\b(?:" + "|".join(_WORDS) + r")\b")


class Reader(int):
    """The size, by its place, whose maker reads a pattern of one number for every list; `sizes`: how many there are."""

    sizes: int

    def __new__(cls, size: int, sizes: int) -> Reader:
        reader = super().__new__(cls, size)
        reader.sizes = sizes
        return reader


def numeral(
    text: str, span: Span, amount: Amount, size: int, avoid: tuple[Span, ...] = (), loose: bool = False
) -> Span | None:
    """Where the figure that one size reads is printed, outside the stretches to avoid; None where it is not found.

    `loose`: also a figure that is a part of a word ("2nd", "ch-2").
    """
    if isinstance(size, Reader) and size.sizes > 1 and len(amount.values) == 1:
        at = _in_list_of(text, span, amount.values[0], size, avoid)
        if at is not None:
            return at
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


def _in_list_of(text: str, span: Span, value: int | None, reader: Reader, avoid: tuple[Span, ...]) -> Span | None:
    """The figure of a size in the first list over the sizes that has this value for it."""
    found = [
        match
        for match in _OF_LIST.finditer(text, span.start, span.end)
        if not any(other.start <= match.start() < other.end for other in avoid)
    ]
    first = 0
    for index, match in enumerate(found):
        ends = index + 1 == len(found) or not _BETWEEN.fullmatch(text, match.end(), found[index + 1].start())
        if ends:
            figures = found[first : index + 1]
            if len(figures) == reader.sizes and int(figures[reader].group()) == value:
                return Span(figures[reader].start(), figures[reader].end())
            first = index + 1
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
