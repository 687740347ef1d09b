"""Numbers of times as the house writes them, and the capital of a row's first word."""

from __future__ import annotations

from collections.abc import Iterator

from lint.expression import expression
from lint.lexicon import Lexeme
from lint.restyle.chains import RULE
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground, RowWords
from lint.source import Span
from lint.tree import Repeat, RowCall, Times, TimesKind, Work, walk

_WORDS = (
    "", "once", "twice", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
)  # fmt: skip
_IN_ALL = expression(r"(?i)\s*(?:[x×]\s?(?P<a>\d+)|(?P<b>\d+)\s?(?:times|[x×])|(?P<c>\p{L}+)(?:\s+times)?)\s*")
_BEHIND = expression(rf"(?i)\s(?P<times>[x×]\s?\d+|\d+\s?times|(?P<c>once|twice|(?:{'|'.join(_WORDS[3:])})\s+times))\Z")
_IN_WORDS = ("3 times", "three times")
_MORE = expression(r"(?i)(?P<n>\d+|\p{L}+)\s+(?:more\s+times|times\s+more|times|more)")


def edits(ground: Ground) -> Iterator[Edit]:
    """Every number of times, and every first word, that the house writes otherwise."""
    wording = ground.house.wording
    for row in ground.rows:
        if row.row.label is None:
            continue
        if row.certain and (wording.times or wording.more):
            for step in walk(row.row.steps):
                if isinstance(step, (Repeat, RowCall)) and step.times is not None:
                    yield from _times(ground, step.times, isinstance(step, Repeat))
                elif isinstance(step, Work) and step.number.lone not in (None, 1):
                    yield from _times_of_one(ground, step, step.number.lone)
        if wording.first_word and row.lexemes:
            yield from _first_word(ground, row, wording.first_word[0].isupper())


def _times(ground: Ground, times: Times, signs: bool) -> Iterator[Edit]:
    """A number of times behind a repeat, or behind rows that are called for, which takes no sign: not "Rep Row 2 x 3"."""
    sample, number = ground.house.wording.times, times.number.lone if times.number is not None else None
    if number is None:
        return
    printed = ground.source.slice(times.span)
    signs = signs and times.kind is TimesKind.IN_ALL
    if times.kind in (TimesKind.IN_ALL, TimesKind.UNCLEAR) and sample is not None and (signs or sample in _IN_WORDS):
        match = _IN_ALL.fullmatch(printed)
        if match is None or match["c"] and match["c"].lower() not in _WORDS or "x" in printed.lower() and not signs:
            return
        lead, tail = printed[: len(printed) - len(printed.lstrip())], printed[len(printed.rstrip()) :]
        if match["c"] and number < 3 and sample == "3 times":
            return  # "twice" is a figure's own word
        yield Edit(times.span, lead + _said(number, sample) + tail, RULE, "numbers of times")
    if times.kind is TimesKind.MORE and ground.house.wording.more is not None:
        match = _MORE.search(printed)
        if match and number > 1 and "more" in match[0].lower() and not printed[match.end() :].strip(" ,.;"):
            order = ground.house.wording.more.replace("3 ", "")
            figure = match["n"] if match["n"].lower() != "twice" else "2"
            at = times.span.start
            yield Edit(Span(at + match.start(), at + match.end()), f"{figure} {order}", RULE, "numbers of times")


def _times_of_one(ground: Ground, step: Work, number: int) -> Iterator[Edit]:
    """How often one stitch is worked, where that is said behind it: "inc x 6", "sc2tog six times"."""
    match = _BEHIND.search(ground.source.slice(step.span)) if ground.house.wording.times is not None else None
    if match is not None and not (number < 3 and match["c"] and ground.house.wording.times == "3 times"):
        at = step.span.start
        new = _said(number, ground.house.wording.times)
        yield Edit(Span(at + match.start("times"), at + match.end("times")), new, RULE, "numbers of times")


def _said(number: int, sample: str) -> str:
    if sample == "three times":
        if number in (1, 2):
            return _WORDS[number]
        return f"{_WORDS[number]} times" if number < len(_WORDS) else f"{number} times"
    return sample.replace("3", str(number)) if sample != "3 times" or number > 1 else "1 time"


def _first_word(ground: Ground, row: RowWords, capital: bool) -> Iterator[Edit]:
    first: Lexeme | None = next((one for one in row.lexemes if one.kind not in (":", ".", "dash", ")", "=")), None)
    if first is None or not first.text[:1].isalpha() or any(letter.isupper() for letter in first.text[1:]):
        return
    if not ground.begins_row(row.row, first.start):
        return
    letter = first.text[0].upper() if capital else first.text[0].lower()
    own = {entry.use for entry in ground.house.abbreviations}
    if first.text not in own or first.text.islower() and capital:
        yield Edit(first.span, letter + first.text[1:], RULE, "first words")
