"""Rows that a bare list number labels: "3) sc around", in a list of its own or among rows with words: "R18: …", "19-20. …"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lint.expression import expression
from lint.pattern import Label
from lint.reading.lines.headings import Line
from lint.reading.lines.labels import Found, LabelReader

# a number, and work behind it
_NUMBERED_WORK = expression(
    r"(?i)[\s|]*(?:\d+(?:\.?\s*(?:[-–]|\bto\b|\bthru\b|\bthrough\b|\band\b|&)\s*\d+)?\s*(?:[).:|\t●•]|(?<=\s)[-–—](?=\s))|\[\d+(?:\s?[-–]\s?\d+)?\][.:]?\s|\d+(?:\s?[-–]\s?\d+)?\s{2,}(?:\p{L}+(?:\s\p{L}+)?\s{2,})?)\s*(?:(?:in|with|using)\s+(?:\w+[:,]?|(?:\w+\s){1,2}\w+,)\s*)?[\W_]*"
    r"(?:\d|ch|sc|dc|hdc|h?tr\b|ss\b|sl\s?st\b|m\.?r\b|mc\b|magic\s|inc|dec\b|blo\b|flo\b|rep|as\s|\(|turn,?\s(?:\d|ch)|start(?:ing)?\s(?:in|with)\s(?:a\s|\d)|into?\sa\s|make\s(?:an?\s)?(?:magic|ring|mr\b|\d)|(?:re)?join\s(?:\w+\s){1,3}(?:with\s(?:an?\s)?(?:sc|sl|ss|dc)|in\sany)\b)"
)


def labelled_by_number(labels: LabelReader, lines: Sequence[Line]) -> bool:
    """Whether rows are labelled by list numbers alone: several such lines begin with work, few worded labels stand."""
    bare = sum(1 for line in lines if labels.bare_number(line.text) and _NUMBERED_WORK.match(line.text))
    worded = sum(1 for line in lines if labels.at_line(line.text, 0) is not None)
    return bare >= 3 and bare > worded or bare == 2 and not worded


def next_in_number(labels: LabelReader, line: Line, before: Label | None) -> Found | None:
    """The bare number that labels a line of work, where it goes on from the row before: "19-20. sc around" after R18."""
    if before is None or not before.numbers or before.by_size or _NUMBERED_WORK.match(line.text) is None:
        return None
    found = labels.at_line(line.text, line.start, bare_numbers=True)
    if found is None or found.label.kind != "either" or found.label.numbers[:1] != (before.numbers[-1] + 1,):
        return None
    return replace(found, label=replace(found.label, kind=before.kind))
