"""Yarn: amounts that fall as the sizes rise, and balls that do not hold the length or weight that is told for all of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from lint.checks.context import Context
from lint.checks.lines import ascending
from lint.expression import expression
from lint.finding import Finding, Related
from lint.reading.facts.amounts import Quantity, read_quantities
from lint.source import Span

_TOTAL = expression(r"(?i)\b(?:total|in all|altogether|overall)\b|=")
_EACH = expression(
    r"(?i)\b(?:each|per|a)\b|/\s*(?:ball|skein|hank)|@|\bat\b|[x×]\s*\d"
    r"|(?:m|met(?:re|er)s?|yds?|yards?|g|gr|grams?|oz)\.?\s*(?:per|/|=|to)\s*\d+(?:[.,]\d+)?\s*(?:m|met|yd|yard|g|oz)"
    r"|\b(?:balls?|skeins?|hanks?)\s+of\s+\d"
)
_SPARE = 0.05  # of the length: as much as rounding between yards and metres makes


def check_amounts(context: Context) -> Iterator[Finding]:
    """yarn-amount-falls, yarn-total-disagrees."""
    for section in context.pattern.sections:
        if section.key in ("materials", "colours"):
            quantities = read_quantities(context.source.text, section.span, max(1, len(context.pattern.sizes)))
            yield from _falls(context, quantities)
            for stretch in _stretches(context.source.text, section.span, quantities):
                inside = [one for one in quantities if stretch.start <= one.span.start < stretch.end]
                yield from _total(context, stretch, inside)


def _stretches(text: str, zone: Span, quantities: Sequence[Quantity]) -> Iterator[Span]:
    """Where one yarn is told: a line, or two lines one below the other of which one alone tells the balls."""
    lines = list(_lines(text, zone))
    balls = [
        sum(one.unit == "balls" and line.start <= one.span.start < line.end for one in quantities) for line in lines
    ]
    yield from lines
    for (line, number), (below, other) in pairwise(zip(lines, balls, strict=True)):
        if number + other == 1 and text[line.end : below.start].count("\n") == 1:
            yield line.to(below)


def _falls(context: Context, quantities: Sequence[Quantity]) -> Iterator[Finding]:
    """A larger size that is to use less: of two that break the line the later one is asked about."""
    sizes = context.pattern.sizes
    if len(sizes) < 2:
        return
    for quantity in quantities:
        known = [figure.value for figure in quantity.figures if figure.value is not None]
        downwards = len(known) > 2 and all(a > b for a, b in pairwise(known)) and not ascending(sizes)
        if len(quantity.figures) != len(sizes) or downwards:
            continue
        for at, (one, other) in enumerate(pairwise(quantity.figures), 1):
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


def _lines(text: str, zone: Span) -> Iterator[Span]:
    """The lines of a list, and the line below where one only goes on in brackets."""
    for match in expression(r"[^\n]+").finditer(text, zone.start, zone.end):
        yield Span(*match.span())


def _total(context: Context, line: Span, quantities: Sequence[Quantity]) -> Iterator[Finding]:
    """ "3 balls of 100 m each, 400 m in total": only where a line has one number of balls, one measure of each and one of all."""
    balls = [one for one in quantities if one.unit == "balls"]
    words = context.source.slice(line)
    if len(balls) != 1 or not (_TOTAL.search(words) or _EACH.search(words)):
        return
    for unit in ("m", "yd", "g", "oz"):
        same = [one for one in quantities if one.unit == unit]
        if len(same) != 2:
            continue
        each, whole = sorted(same, key=lambda one: one.at(0) or 0)
        if len(each.figures) == 1:
            finding = _disagreeing(context, balls[0], each, whole)
            if finding is not None:
                yield finding
                return


def _disagreeing(context: Context, balls: Quantity, each: Quantity, whole: Quantity) -> Finding | None:
    names = context.pattern.sizes
    sizes = max(len(balls.figures), len(whole.figures))
    for size in range(sizes):
        number, one, wanted = balls.at(size), each.at(size), whole.at(size)
        if not number or not one or not wanted or number < 2:
            continue
        too_little, too_much = wanted > number * one * (1 + _SPARE), wanted <= (number - 1) * one * (1 + _SPARE / 5)
        if not too_little and not too_much:
            continue
        figure = whole.figures[min(size, len(whole.figures) - 1)]
        return context.finding_at(
            "yarn-total-disagrees",
            figure.span,
            sizes=(names[size],) if sizes > 1 else (),
            expected=f"{number * one:g} {each.unit}",
            found=f"{wanted:g} {whole.unit}",
            balls=f"{number:g} × {one:g} {each.unit}",
            size=f" for size {names[size]}" if sizes > 1 else "",
            related=(Related(balls.span, "so many balls"), Related(each.span, "so much on each")),
        )
    return None
