"""Yarn: amounts that fall as the sizes rise, and balls that do not hold the length that is asked for."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import regex

from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.reading.measures import read_lists
from lint.source import Span

_BALLS = r"(?:balls?|skeins?|hanks?|cakes?|cones?|spools?)(?![\w-])"
_AMOUNTS = rf"(?:{_BALLS}|g(?:rams?)?(?![\w-])|oz(?![\w-])|yds?(?![\w-])|yards?(?![\w-])|m(?:et(?:re|er)s?)?(?![\w-]))"
_METRES = {"m": 1.0, "y": 0.9144}
_NUMBER = r"(?<![\w.,])\d{1,5}(?:[.,]\d{3})?"
_LENGTH = regex.compile(rf"(?i)(?P<number>{_NUMBER})\s?(?P<unit>yds?|yards?|m|met(?:re|er)s?)(?![\w-])")
_TOTAL = regex.compile(r"(?i)\b(?:total|in all|altogether|total of)\b")
_COUNT = regex.compile(rf"(?i)(?P<number>(?<![\w.,])\d{{1,3}})\s+(?:[\w-]+\s+){{0,3}}?{_BALLS}")
_SPARE = 0.05  # of the length: as much as rounding between yards and metres makes


def check_amounts(context: Context) -> Iterator[Finding]:
    """yarn-amount-falls, yarn-too-short."""
    for section in context.pattern.sections:
        if section.key in ("materials", "colours"):
            yield from _falls(context, section.span)
            yield from _too_short(context, section.span)


def _falls(context: Context, zone: Span) -> Iterator[Finding]:
    """A larger size that is to use less: of two that break the line the later one is asked about."""
    sizes = context.pattern.sizes
    if len(sizes) < 2:
        return
    text = context.source.text[: zone.end]
    for span, sides in read_lists(text, _AMOUNTS, len(sizes)):
        if span.start < zone.start or len(sides) != 1 or len(sides[0]) != len(sizes):
            continue
        for at, (one, other) in enumerate(pairwise(sides[0]), 1):
            if one.value is not None and other.value is not None and other.value < one.value:
                yield context.finding_at(
                    "yarn-amount-falls",
                    other.span,
                    sizes=(sizes[at],),
                    found=f"{other.value:g}",
                    related=(Related(one.span, f"{one.value:g} for size {sizes[at - 1]}"),),
                    before=f"{one.value:g}",
                    size=sizes[at],
                    smaller=sizes[at - 1],
                )
                break


def _too_short(context: Context, zone: Span) -> Iterator[Finding]:
    """ "3 balls of 100 m each, 400 m in total"; only where one line gives one number of balls, one length and a total."""
    text = context.source.text
    start = zone.start
    for line in text[zone.start : zone.end].splitlines(keepends=True):
        at, start = start, start + len(line)
        balls = list(_COUNT.finditer(text, at, at + len(line)))
        lengths = list(_LENGTH.finditer(text, at, at + len(line)))
        if len(balls) != 1 or not _TOTAL.search(line):
            continue
        for unit in _METRES:
            same = [one for one in lengths if one["unit"][0].lower() == unit]
            if len(same) != 2:
                continue
            (each, all_of_it) = sorted(same, key=lambda one: _figure(one["number"]))
            number = int(balls[0]["number"])
            there, wanted = number * _figure(each["number"]), _figure(all_of_it["number"])
            if number > 1 and wanted > there * (1 + _SPARE):
                yield context.finding_at(
                    "yarn-too-short",
                    Span(*all_of_it.span()),
                    expected=f"{there:g} {each['unit']}",
                    found=all_of_it[0],
                    related=(Related(Span(*balls[0].span()), f"{number} × {each[0]} = {there:g} {each['unit']}"),),
                    balls=balls[0][0],
                )
            break


def _figure(printed: str) -> float:
    return float(regex.sub(r"[.,](?=\d{3}$)", "", printed))
