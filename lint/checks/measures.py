"""Measures that stand beside each other in inches and in centimetres and are not the same."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.checks.context import Context
from lint.finding import Finding, Related, Weight
from lint.reading.facts.measures import (
    CM_IN_AN_INCH,
    Figure,
    Length,
    Pair,
    centimetres,
    inches,
    read_lengths,
    read_pairs,
    size_of,
)
from lint.rulemodels import Tolerance

_SHORT = 2.5  # cm to the inch, as a rule of thumb has it
_LISTED = 4  # figures from which on a list shows how it was reckoned
_ROUNDED, _SURELY_OFF = (
    0.65,
    1.4,
)  # cm: what rounding to quarter inches and halves makes at most, and what it never does
_QUARTER = 0.13  # in: as far as rounding to quarters moves a figure
_ROUNDER = 2.5  # "about 6 in" may be so many times as far off before it is called wrong


@dataclass(frozen=True, slots=True)
class Mismatch:
    """Two figures that stand for each other and are not the same length."""

    pair: Pair
    first: Figure
    second: Figure
    index: int  # in their lists
    others: int  # how many figures their lists have
    blame: Figure  # the one that is out of line with its neighbours, else the second


def mismatches(pair: Pair, tolerance: Tolerance) -> tuple[Mismatch, ...]:
    """The figures of a pair of measures that disagree; () where the two lists are not of one shape."""
    if len(pair.first.sides) != len(pair.second.sides):
        return ()
    straight = _off(pair, list(zip(pair.first.sides, pair.second.sides, strict=True)), tolerance)
    straight = straight or _odd_one(pair)
    if straight and len(pair.first.sides) == 2:  # "8 x 11 in (28 x 20.5 cm)": the sides are only exchanged
        turned = _off(pair, list(zip(pair.first.sides, reversed(pair.second.sides), strict=True)), tolerance)
        return () if not turned else straight
    return straight


def _odd_one(pair: Pair) -> tuple[Mismatch, ...]:
    """The one figure of two lists that is out, where all the others show how closely they are rounded.

    "122, 134, 142 cm" beside "48, 52, 56 in": 2 cm are little at a chest, but no rounding makes them where the others have none.
    """
    if len(pair.first.sides) != 1 or len(pair.second.sides) != 1:
        return ()
    (one,), (other,) = pair.first.sides, pair.second.sides
    if len(one) != len(other) or len(one) < _LISTED or any(figure.value is None for figure in (*one, *other)):
        return ()
    figures = list(zip(one, other, strict=True))
    apart = [abs(pair.first.in_cm(a.value or 0) - pair.second.in_cm(b.value or 0)) for a, b in figures]
    index = max(range(len(apart)), key=apart.__getitem__)
    others = [gap for at, gap in enumerate(apart) if at != index]
    if apart[index] < _SURELY_OFF or max(others) > _ROUNDED:
        return ()
    first, second = figures[index]
    blame = first if _stray(pair.first, one, index) > _stray(pair.second, other, index) else second
    return (Mismatch(pair, first, second, index, len(one), blame),)


def _off(
    pair: Pair, sides: list[tuple[tuple[Figure, ...], tuple[Figure, ...]]], tolerance: Tolerance
) -> tuple[Mismatch, ...]:
    found = []
    for one, other in sides:
        if len(one) != len(other):
            return ()
        for index, (first, second) in enumerate(zip(one, other, strict=True)):
            if first.value is None or second.value is None:
                continue
            if not tolerance.allows(pair.first.in_cm(first.value), pair.second.in_cm(second.value)):
                blame = first if _stray(pair.first, one, index) > _stray(pair.second, other, index) else second
                found.append(Mismatch(pair, first, second, index, len(one), blame))
    return tuple(found)


def _stray(length: Length, figures: tuple[Figure, ...], index: int) -> float:
    """How far, in cm, a figure is off the line of its two nearest neighbours in its list; 0 where there are none."""
    near = sorted((i for i in range(len(figures)) if i != index), key=lambda i: abs(i - index))[:2]
    values = [figures[i].value for i in near]
    if len(near) < 2 or None in values or figures[index].value is None:
        return 0.0
    (i, a), (j, b) = zip(near, values, strict=True)
    return length.in_cm(abs(figures[index].value - (a + (b - a) * (index - i) / (j - i))))


def check_measures(context: Context) -> Iterator[Finding]:
    """measurement-disagrees: "27½ in (67.5 cm)"."""
    tolerance = context.book.materials.tolerances.measurement
    text, sizes = context.source.text, context.pattern.sizes
    short: list[Mismatch] = []
    for pair in read_pairs(text, read_lengths(text, max(1, len(sizes)))):
        wrong = mismatches(pair, tolerance)
        listed = sum(len(side) for side in pair.first.sides)
        if len(wrong) == listed > 1:
            yield _all_wrong(context, pair)
            continue
        for one in wrong:
            yield _finding(context, one, tolerance)
        if (farthest := _by_short_inch(pair, {one.first for one in wrong})) is not None:
            short.append(farthest)
    if short:
        yield _short_inch(context, short)


def _by_short_inch(pair: Pair, wrong: set[Figure]) -> Mismatch | None:
    """The figures farthest apart of two lists that were reckoned with 2.5 cm to the inch, not 2.54; None if they were not."""
    if [len(side) for side in pair.first.sides] != [len(side) for side in pair.second.sides]:
        return None
    found: list[tuple[float, Mismatch]] = []
    exact = 0
    for one, other in zip(pair.first.sides, pair.second.sides, strict=True):
        for index, (first, second) in enumerate(zip(one, other, strict=True)):
            if first in wrong or first.value is None or second.value is None:
                continue
            inch, cm = (first.value, second.value) if pair.first.unit == "in" else (second.value, first.value)
            if abs(cm / _SHORT - inch) > _QUARTER:
                return None
            apart = abs(cm / CM_IN_AN_INCH - inch)
            exact += apart <= 2 * _QUARTER
            found.append((apart, Mismatch(pair, first, second, index, len(one), second)))
    if len(found) < _LISTED or 2 * exact > len(found):
        return None
    return max(found, key=lambda one: one[0])[1]


def _short_inch(context: Context, short: list[Mismatch]) -> Finding:
    """One question for all lists that were reckoned with the short inch."""
    worst = short[0]
    first, second = worst.first, worst.second
    assert first.value is not None and second.value is not None
    label = "these all come out with 2.5 cm to the inch; an inch is 2.54 cm, and larger sizes are farther out"
    return context.finding_at(
        "measurement-disagrees",
        second.span,
        sizes=(),
        expected=_converted(worst.pair.first, first.value),
        found=_shown(worst.pair.second, second.value),
        related=tuple(Related(one.pair.second.span, label if one is worst else "and these") for one in short),
        weight=Weight.QUERY,
        other=_shown(worst.pair.first, first.value),
        back=_converted(worst.pair.second, second.value),
    )


def _finding(context: Context, wrong: Mismatch, tolerance: Tolerance) -> Finding:
    first, second = wrong.first, wrong.second
    figures = ((wrong.pair.first, first), (wrong.pair.second, second))
    (length, blame), (beside, other) = figures if wrong.blame is first else figures[::-1]
    assert blame.value is not None and other.value is not None
    apart = abs(length.in_cm(blame.value) - beside.in_cm(other.value))
    rough = wrong.pair.about and apart <= _ROUNDER * max(tolerance.cm, tolerance.share * beside.in_cm(other.value))
    right = _converted(beside, other.value)
    return context.finding_at(
        "measurement-disagrees",
        blame.span,
        sizes=size_of(wrong.index, wrong.others, context.pattern.sizes),
        expected=right,
        found=_shown(length, blame.value),
        related=(Related(other.span, f"{_shown(beside, other.value)} is {right}"),),
        weight=Weight.QUERY if rough else None,
        other=_shown(beside, other.value),
        back=_converted(length, blame.value),
    )


def _all_wrong(context: Context, pair: Pair) -> Finding:
    """No figure of two lists agrees: they may be of two different things, which is for the designer to say."""
    first, second = pair.first.sides[0][0], pair.second.sides[0][0]
    assert first.value is not None and second.value is not None
    return context.finding_at(
        "measurement-disagrees",
        pair.second.span,
        expected=_converted(pair.first, first.value),
        found=_shown(pair.second, second.value),
        related=(Related(pair.first.span, "the same measure in the other unit"),),
        weight=Weight.QUERY,
        other=_shown(pair.first, first.value),
        back=_converted(pair.second, second.value),
    )


def _shown(length: Length, value: float) -> str:
    return (
        f"{inches(value) if (value * 4).is_integer() else f'{value:g}'} in" if length.unit == "in" else f"{value:g} cm"
    )


def _converted(length: Length, value: float) -> str:
    return f"{centimetres(value * CM_IN_AN_INCH)} cm" if length.unit == "in" else f"{inches(value / CM_IN_AN_INCH)} in"
