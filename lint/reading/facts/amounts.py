"""Yarn amounts as materials list them: numbers of balls, lengths and weights, each one figure or one a size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.amount import THOUSANDS, without_thousands
from lint.expression import expression
from lint.reading.facts.measures import Figure, read_lists
from lint.source import Span

_PACKAGE = r"(?:balls?|skeins?|hanks?|cakes?|cones?|spools?)(?![\w-])"
_BALLS = rf"(?:(?:[x×]\s?)?(?:[a-z%&-]+\s+){{0,3}}?{_PACKAGE})"
_UNITS = {
    "balls": _BALLS,
    "g": r"g(?:rams?|ms?)?(?![\w-])",
    "oz": r"oz(?![\w-])|ounces?",
    "yd": r"(?:yds?|yards?)(?![\w-])",
    "m": r"m(?:et(?:re|er)s?|ts?)?(?![\w-])",
}


@dataclass(frozen=True, slots=True)
class Quantity:
    """So many balls, metres, yards, grams or ounces."""

    span: Span
    unit: str  # balls | g | oz | yd | m
    figures: tuple[Figure, ...]

    def at(self, size: int) -> float | None:
        """The figure of one size."""
        return self.figures[size].value if len(self.figures) > 1 else self.figures[0].value


def read_quantities(text: str, zone: Span, sizes: int) -> tuple[Quantity, ...]:
    """Every amount in a stretch of the text; of "6 x 50 g balls" the 6 are balls and the 50 are grams."""
    thousands = {match.start() + 1: match.start() for match in THOUSANDS.finditer(text, 0, zone.end)}
    words = without_thousands(text[: zone.end])
    found: list[Quantity] = []
    for unit, form in _UNITS.items():
        if not expression(rf"(?i)[\d)\]½]\s?{form}").search(words, pos=zone.start):
            continue
        for span, sides in read_lists(words, form, sizes):
            if span.start < zone.start:
                continue
            if len(sides) == 2:
                found.append(_quantity("balls", sides[0]))
            found.append(_quantity(unit, sides[-1]))
    found = [_at_its_place(one, thousands) for one in found if len(one.figures) in (1, sizes)]
    return tuple(sorted(_each_once(found), key=lambda one: one.span.start))


def _at_its_place(quantity: Quantity, thousands: dict[int, int]) -> Quantity:
    figures = tuple(
        Figure(Span(thousands.get(one.span.start, one.span.start), one.span.end), one.value) for one in quantity.figures
    )
    return _quantity(quantity.unit, figures)


def _quantity(unit: str, figures: tuple[Figure, ...]) -> Quantity:
    return Quantity(Span(figures[0].span.start, figures[-1].span.end), unit, figures)


def _each_once(found: list[Quantity]) -> Iterator[Quantity]:
    """Of two that share a figure ("6 x 50 g balls": 50 balls, 50 g) the weight or length."""
    for one in dict.fromkeys(found):
        others = (other for other in found if other.span.start < one.span.end and one.span.start < other.span.end)
        if one.unit != "balls" or all(other.unit == "balls" for other in others):
            yield one
