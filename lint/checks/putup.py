"""A yarn's length in yards beside its metres, and its weight in ounces beside its grams."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Related, Weight
from lint.reading.facts.amounts import Quantity, read_quantities

# units that stand for each other: what one of the first is in the second, and how far labels are rounded
_PAIRS = {("yd", "m"): (0.9144, 0.035), ("oz", "g"): (28.35, 0.08)}
_BESIDE = expression(
    r"(?i)\s?[a-z]*\.?(?:\s+each|\s+per\s+\w+)?\s*(?:[(\[/=|≈]|\bor\b)\s*(?:(?:about|approx\w*\.?|ca\.?|or)\s+)?"
)


def check_put_up(context: Context) -> Iterator[Finding]:
    """measurement-disagrees: "200 yd (193 m)"."""
    text, sizes = context.source.text, max(1, len(context.pattern.sizes))
    for section in context.pattern.sections:
        if section.key != "materials":
            continue
        for first, second in pairwise(read_quantities(text, section.span, sizes)):
            if len(first.figures) == len(second.figures) and _BESIDE.fullmatch(text, first.span.end, second.span.start):
                yield from _compared(context, first, second)


def _compared(context: Context, first: Quantity, second: Quantity) -> Iterator[Finding]:
    """The first figure of a pair that is not the other one; nothing where the units do not stand for each other."""
    if (first.unit, second.unit) in _PAIRS:
        factor, rounding = _PAIRS[first.unit, second.unit]
    elif (second.unit, first.unit) in _PAIRS:
        factor, rounding = _PAIRS[second.unit, first.unit]
        factor = 1 / factor
    else:
        return
    for at, (one, other) in enumerate(zip(first.figures, second.figures, strict=True)):
        if not one.value or not other.value or abs(one.value * factor / other.value - 1) <= rounding:
            continue
        whole = len(first.figures) == len(context.pattern.sizes) > 1
        right, back = _shown(one.value * factor, second.unit), _shown(other.value / factor, first.unit)
        yield context.finding_at(
            "measurement-disagrees",
            other.span,
            sizes=(context.pattern.sizes[at],) if whole else (),
            weight=Weight.QUERY,  # a label is not at hand, and it may be of another put-up
            other=_shown(one.value, first.unit),
            expected=right,
            found=_shown(other.value, second.unit),
            back=back,
            related=(Related(one.span, f"{_shown(one.value, first.unit)} is {right}"),),
        )
        return


def _shown(value: float, unit: str) -> str:
    return f"{value:.0f} {unit}" if value >= 10 else f"{round(value, 2):g} {unit}"
