"""Lengths in inches and centimetres as they are printed, over all sizes, and which of them stand for each other.

A list is taken flat: "20 (22, 24) in", "81-86 (91-96) cm" and "(8, 9, 10) cm" are so many figures one after the other,
and two lists that stand side by side are compared figure by figure.  Which size a figure is for follows from how many
there are.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import isfinite

import regex

from lint.expression import Expression, expression
from lint.remembered import WHOLE_TEXTS, remembered
from lint.source import Span

CM_IN_AN_INCH = 2.54  # exact since 1959

_PARTS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}
_SIGNS = "".join(_PARTS)
_FRACTION = rf"(?:1/2|[123]/4|[12]/3|[1357]/8|\d{{1,2}}/16)(?!\d|/\d|[{_SIGNS}])"  # but "7/8½/10" is a list
_DASH = r"[-–—](?=\s*[,:;)(\]\[])"  # a size without a figure
_INCH = r"(?:-?inch(?:es)?|ins?)(?![\w-])\.?|[\"”″]|''|’’"
_CM = r"(?:cms?|centimet(?:re|er)s?)(?![\w-])\.?"
_OF_SIDE = r"wide|long|high|tall|deep|square|around|round|across|each|thick|(?:in |of )?(?:width|length|height|depth|diameter|circumference)"
_BETWEEN = r"(?:\s*[,:;/–-]\s*(?:(?:and|&)\s+)?|\s+(?:and|&|to)\s+)"


@dataclass(frozen=True, slots=True)
class Figure:
    """One printed number; None is the dash of a size that has none."""

    span: Span
    value: float | None


@dataclass(frozen=True, slots=True)
class Length:
    """A printed measure: its sides ("8 x 11 in" has two), each a figure or a list over the sizes."""

    span: Span
    unit: str  # in | cm
    sides: tuple[tuple[Figure, ...], ...]

    def in_cm(self, value: float) -> float:
        """A figure of this measure in centimetres."""
        return value * CM_IN_AN_INCH if self.unit == "in" else value


@dataclass(frozen=True, slots=True)
class Pair:
    """The same measure in both units: "20 (22, 24) in (51 (56, 61) cm)"."""

    first: Length
    second: Length
    sure: bool  # set off by brackets or a stroke; else by a comma, or nothing
    about: bool  # "about 6 in": rounder than others


def number(printed: str) -> float | None:
    """The value of a number with its fraction: "7½", "7 1/2", "7-1/2", "7,5"; None for a dash, and for what is none ("1/0")."""
    printed = printed.strip().replace(",", ".")
    total = 0.0
    if printed and printed[-1] in _PARTS:
        total, printed = _PARTS[printed[-1]], printed[:-1].strip()
    elif "/" in printed:
        match = expression(r"(?:(?P<whole>\d+)[ \n-])?(?P<top>\d+)/(?P<bottom>\d+)").fullmatch(printed)
        if match is None or not int(match["bottom"]):
            return None
        total, printed = int(match["top"]) / int(match["bottom"]), match["whole"] or ""
    try:
        value = total + float(printed or 0) if printed or total else None
    except ValueError:
        return None
    return value if value is not None and isfinite(value) else None


def _number(sizes: int) -> str:
    comma = r"|\d++,\d{1,2}(?!\d)" if sizes < 2 else ""  # among sizes a comma parts two of them
    return rf"(?:\d++[ \n-]{_FRACTION}|{_FRACTION}|\d*+(?:\.\d++)?\s?[{_SIGNS}]{comma}|\d++(?:\.\d++)?|{_DASH})"


_BY = rf"(?:\s+(?i:{_OF_SIDE}))?\s*(?:[x×X]|\bby\b)\s*"
_BY_ALONE = expression(_BY)


def leads_to(unit: str) -> str:
    """Finds a place from which nothing but signs and words that may stand in such lists leads to a unit.

    Most figures of a pattern are no measures, and to try a list at each of them takes long.
    """
    return rf"(?=(?:[\d\s.,:;/()\[\]{{}}&{_SIGNS}xX×–—-]++|(?i:and|to|by|{_OF_SIDE}))*?(?i:{unit}))"


@lru_cache(maxsize=32)
def _list_pattern(unit: str, sizes: int) -> tuple[Expression, Expression]:
    """Finds one list of figures, or several joined by "x", that ends in a unit (or has it at each figure); a figure."""
    figure, number = "(?&figure)", _number(sizes)
    own = rf"{figure}\s?(?&unit)"
    bare = rf"(?:{_BETWEEN}{figure}){{{sizes - 1}}}" if sizes > 1 else r"(?!)"
    runs = rf"(?:\s?[/–-]\s?{figure})*"
    bracket = rf"\s?[(\[{{]\s*{figure}(?:{_BETWEEN}{figure})*\s*[)\]}}]"
    one = (
        rf"(?:{own}\s?[(\[{{]\s*{own}(?:{_BETWEEN}{own})*\s*[)\]}}]|{own}(?:{_BETWEEN}{own})+"
        rf"|(?:{figure}(?:{bare}(?!{_BETWEEN}\d)|{runs}(?:{bracket}(?:\s?{figure}{runs})?)*)"
        rf"|[(\[{{]\s*{figure}(?:{_BETWEEN}{figure})+\s*[)\]}}])(?:\s?(?&unit))?)"
    )
    pattern = (
        rf"(?(DEFINE)(?P<figure>{number})(?P<unit>(?i:{unit}))(?P<one>{one}))"
        rf"(?=[\d.(\[{{{_SIGNS}–—-]|\s[{_SIGNS}]){leads_to(unit)}(?<![\w.,{_SIGNS}-])(?<!\d/)(?P<all>(?&one)(?:{_BY}(?&one))*)(?<=(?i:{unit})(?:\s?[)\]}}])?)"
    )
    return expression(pattern), expression(number)


def read_lists(text: str, unit: str, sizes: int) -> Iterator[tuple[Span, tuple[tuple[Figure, ...], ...]]]:
    """Every list of figures before a unit (a regular expression): its place, and its figures side by side."""
    lists, figures = _list_pattern(unit, max(1, sizes))
    for match in _found_before(lists, text, _unit_pattern(unit)):
        start, end = match.span("all")
        cuts = [cut.span() for cut in _BY_ALONE.finditer(text, start, end)]
        begins, ends = [start, *(cut[1] for cut in cuts)], [*(cut[0] for cut in cuts), end]
        sides = tuple(
            tuple(Figure(Span(*one.span()), number(one[0])) for one in figures.finditer(text, first, last))
            for first, last in zip(begins, ends, strict=True)
        )
        if all(sides):
            yield Span(start, end), sides


_REACH = 400  # characters before a unit in which a list that ends in it stands


@lru_cache(maxsize=32)
def _unit_pattern(unit: str) -> Expression:
    """A unit behind a figure, or a bracket that closes: "sc in next st" has none."""
    return expression(rf"(?<=[\d{_SIGNS})\]}}]\s?)(?:{unit})", regex.I)


def _word_end(text: str, at: int) -> int:
    """The end of the word that a place is in: "120 m" and "4 mm" cut behind its first m would be two lengths."""
    while at < len(text) and text[at].isalnum():
        at += 1
    return min(at, len(text))


def _found_before(lists: Expression, text: str, units: Expression) -> Iterator[regex.Match]:
    """The lists in a text, looked for only where a unit follows: most figures of a pattern are no measures."""
    done = start = end = 0
    for unit in (*units.finditer(text), None):
        if unit is not None and (unit.start() - _REACH <= end or not end):
            start, end = start if end else max(0, unit.start() - _REACH), unit.end() + 4
            continue
        if end:
            for match in lists.finditer(text, max(start, done), _word_end(text, end)):
                done = match.end()
                yield match
        if unit is not None:
            start, end = max(0, unit.start() - _REACH), unit.end() + 4


@remembered(**WHOLE_TEXTS)  # several checks read the same text
def read_lengths(text: str, sizes: int) -> tuple[Length, ...]:
    """Every measure in inches or centimetres, in the order of the text."""
    found = [
        Length(span, unit, sides)
        for unit, words in (("in", _INCH), ("cm", _CM))
        for span, sides in read_lists(text, words, sizes)
        if not _of_next_line(text, span)
    ]
    first = list(_unit_first(text, sizes))
    taken = {text.count("\n", 0, length.span.start) for length in found} if first else set()
    found += [length for line, length in first if line not in taken]
    return tuple(sorted(found, key=lambda length: length.span.start))


def _of_next_line(text: str, span: Span) -> bool:
    """Whether the unit begins a line of figures of its own: "ins 34 36 40" over "cm 86 91 102"."""
    words = text[span.start : span.end]
    return (
        "\n" in words
        and not expression(r"\d").search(words[words.rindex("\n") :])
        and (expression(r"[ \t:|]*\d").match(text, span.end) is not None)
    )


_LONGEST_LABEL = (
    300  # characters before the figures; what is longer is no line of a table, and would be tried at length
)
_FIGURES_ONLY = r"[\d\s.,;:/|()\[\]½¼¾⅓⅔⅛⅜⅝⅞–-]*"
_UNIT_FIRST = expression(
    rf"(?m)^(?=[^\d\n]{{1,{_LONGEST_LABEL}}}+\d{_FIGURES_ONLY}$)(?P<label>|[^\d\n:|\t]*?[^\d\n:|\t\s][^\d\n:|\t]*?)[\s,(\[|]*(?:\b(?P<inch>(?i:inch(?:es)?|ins?|in\.))|[\"”]|\b(?P<cm>(?i:cms?|centimet(?:re|er)s?)))?[)\]]?[ ]*(?P<sign>[:=–|\t]|[ ]{{2,}})[ |\t]*(?P<rest>\d{_FIGURES_ONLY}|[(\[]\d{_FIGURES_ONLY})$"
)
_TABLE_UNIT = expression(
    r"(?i)^[^\n\d]*\b(?:measurements?|sizes?|all|given|table|schematic)\b[^\n\d]*?(?:\bin\s+|[(\[]\s*)(?:(?P<inch>inch(?:es)?|ins?)|(?P<cm>cms?|centimet(?:re|er)s?))\b[^\n\d]*$",
    regex.M,
)


def _unit_first(text: str, sizes: int) -> Iterator[tuple[int, Length]]:
    """Lines of a size table whose unit stands before the figures ("Bust (cm): 86 (94, 102)"), or over the table."""
    if sizes < 2:
        return
    over = [(match.end(), "in" if match["inch"] else "cm") for match in _TABLE_UNIT.finditer(text)]
    figure = expression(_number(sizes))
    for match in _UNIT_FIRST.finditer(text):
        sign = match["sign"]
        own = "in" if match["inch"] else "cm" if match["cm"] else None
        above = [unit for end, unit in over if end < match.start() and "\n\n" not in text[end : match.start()]]
        unit = own or (above[-1] if above and sign.strip(" ") in ("", "|", "\t") else None)
        figures = tuple(
            Figure(Span(*one.span()), number(one[0]))
            for one in figure.finditer(text, match.start("rest"), match.end("rest"))
        )
        if unit is not None and len(figures) == sizes:
            span = Span(figures[0].span.start, match.end("rest"))
            yield text.count("\n", 0, match.start()), Length(span, unit, (figures,))


# which stand for each other -----------------------------------------------------------------------------------

_SIDE = expression(rf"\s*(?:{_OF_SIDE})\b", regex.I)
_GLUE = expression(
    rf"(?P<side>(?:\s*\b(?:{_OF_SIDE})\b)*)\.?\s*(?P<sign>[(\[{{/|=≈]|,?\s*\bor\b|[–—-]|[,;]|\t|\s{{2,}})\s*"
    r"(?:(?:or|about|approx(?:\.|imately)?|i\.e\.|=|≈|~)\s*)*",
    regex.I,
)
_CLOSED = expression(rf"(?:\s*(?:{_OF_SIDE})\b)*\s*[)\]}},;]", regex.I)
_ABOUT = expression(r"(?:\b(?:about|approx(?:\.|imately)?|around|roughly|ca?\.)|~|≈)\s*$", regex.I)
_NEAR = 0.15  # without brackets, what is further apart than this share is two measures


_NO_LABEL_WORDS = expression(rf"(?i)(?<![a-z])(?:{_INCH}|{_CM})")


def read_pairs(text: str, lengths: tuple[Length, ...]) -> tuple[Pair, ...]:
    """The measures that stand beside the same one in the other unit."""
    found: list[Pair] = []
    taken = -1
    for at, (first, second) in enumerate(zip(lengths, lengths[1:], strict=False)):
        if at == taken or first.unit == second.unit:
            continue
        glue = _GLUE.fullmatch(text, first.span.end, second.span.start)
        if glue is None:
            if _line_below(text, first, second):
                found.append(Pair(first, second, False, False))
                taken = at + 1
            continue
        sign = glue["sign"].strip(" ,")
        if sign in ("(", "[", "{") and not _CLOSED.match(text, second.span.end):
            continue  # "6 in (10 cm for the larger size)"
        sure = sign in ("(", "[", "{", "/", "|", "=", "≈", "or")
        if not sure:
            behind = _SIDE.match(text, second.span.end)
            if (
                glue["side"].strip()
                and behind
                and behind[0].strip() != glue["side"].strip()
                or not _near(first, second)
            ):
                continue  # "30 in long, 10 cm wide"
        about = _ABOUT.search(text, max(0, first.span.start - 16), first.span.start) is not None
        found.append(Pair(first, second, sure, about))
        taken = at + 1
    return tuple(found)


def _line_below(text: str, first: Length, second: Length) -> bool:
    """Whether a list stands on the line under the same one in the other unit, with no label of its own or with the same."""
    between = text[first.span.end : second.span.start]
    if between.count("\n") != 1 or min(len(first.sides[0]), len(second.sides[0])) < 2 or not _near(first, second):
        return False
    label = _NO_LABEL_WORDS.sub("", between).strip(" \t\n:;,.()[]|=–-").lower()
    line = text[text.rfind("\n", 0, first.span.start) + 1 : first.span.start]
    return not label or label == _NO_LABEL_WORDS.sub("", line).strip(" \t\n:;,.()[]|=–-").lower()


def _near(first: Length, second: Length) -> bool:
    for one, other in zip(first.sides, second.sides, strict=False):
        for a, b in zip(one, other, strict=False):
            if a.value and b.value:
                big, small = sorted((first.in_cm(a.value), second.in_cm(b.value)), reverse=True)
                if big - small <= _NEAR * big:
                    return True
    return False


def size_of(index: int, figures: int, sizes: tuple[str, ...]) -> tuple[str, ...]:
    """The size that a figure of a list is for; () where it is for all of them, or not to be told."""
    if len(sizes) > 1 and figures and figures % len(sizes) == 0:
        return (sizes[index * len(sizes) // figures],)
    return ()


def inches(value: float) -> str:
    """A number of inches to the nearest quarter: 27½."""
    quarters = round(value * 4)
    whole, part = divmod(quarters, 4)
    return f"{whole or ''}{('', '¼', '½', '¾')[part]}" or "0"


def in_unit(unit: str, cm: float) -> str:
    """A length as it is printed in a unit: "27½ in", "67.5 cm"."""
    return f"{inches(cm / CM_IN_AN_INCH)} in" if unit == "in" else f"{centimetres(cm)} cm"


def centimetres(value: float) -> str:
    """A number of centimetres to the nearest half: 67.5."""
    return f"{round(value * 2) / 2:g}"


_LONGEST_LABEL = 300  # characters before a measure in which the words stand that say what it is of
_WORDS = expression(r"[^\W\d_][\w'’]*(?:[ /&-]+[^\W\d_][\w'’]*)*")
_NO_LABEL = expression(rf"(?i)^(?:(?:{_INCH}|{_CM}|or|and|to|about|approx\w*|x|by)(?=\W|$)[\s/-]*)+")
_OF_THE_ONE_BEFORE = expression(r"(?i)[\s.]*(?:wide|long|high|deep|tall|at\s+(?:the\s+)?[a-z]+)\b")
_FIGURE = expression(r"\d")


def label_of(text: str, span: Span) -> str:
    """The words that say what a measure is of: the last before it on its line; "" where there are none."""
    line = text[max(text.rfind("\n", 0, span.start) + 1, span.start - _LONGEST_LABEL) : span.start]
    own = ""
    for match in reversed(list(_WORDS.finditer(line))):
        run = _NO_LABEL.sub("", match[0])
        if len(run) <= 2:
            continue
        if _OF_THE_ONE_BEFORE.match(run) and _FIGURE.search(line, 0, match.start()):
            behind = _OF_THE_ONE_BEFORE.match(text, span.end)  # "16 in wide and 20 in long"
            own = own or (f" {_NO_LABEL_WORDS.sub('', behind[0]).strip(' .')}" if behind is not None else "")
            continue
        return run + own
    return ""
