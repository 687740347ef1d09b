"""Whether the figures of a list over the sizes lie on one line: the one that is off it, and the one that falls.

Sizes are rounded unevenly, and steps change between small and large sizes: only a single figure that breaks an
otherwise straight line by a whole step, or the order of the sizes, is looked at.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import gcd

from lint.expression import expression

_MANY = 6  # sizes from which on a line that is straight in all the others is taken to be meant straight
_STRAIGHT = 1e-6
_LEAP, _LEAP_OF_EVEN = (
    3,
    2.5,
)  # times the largest of the other steps: no table of sizes ends so, least where all are even
_LEAST_OFF = 0.4  # of what is a break elsewhere: there a smaller one shows
FIRST, _ENDS = 4, 5  # sizes from which on a figure inside, and at either end of, a list is looked at


@dataclass(frozen=True, slots=True)
class Stray:
    """The figure of a list that is off the line of the others: which one, what the line has in its place, and its step."""

    index: int
    line: float
    step: float


def stray(values: Sequence[float | None], rounding: float, least: float) -> Stray | None:
    """The one figure that breaks the line of all the others, if there is one.

    `rounding`: how far a figure may lie off a straight line by rounding; `least`: less than this is never a break.
    """
    if len(values) < FIRST or any(value is None for value in values):
        return None
    known = [float(value) for value in values if value is not None]
    found = [one for index in range(len(known)) if (one := _without(known, index, rounding, least)) is not None]
    if not found:
        found = [one for index in (0, len(known) - 1) if (one := _leap(known, index, least)) is not None]
    return found[0] if len(found) == 1 else None


def stray_count(values: Sequence[int | None]) -> Stray | None:
    """The same for counts of stitches or rows: off by more than the unit in which all of them grow, as repeats fall."""
    found = stray(values, 0.0, 2.0)
    if found is None:
        return None
    known = [value for value in values if value is not None]
    unit = gcd(*(abs(b - a) for a, b in pairwise(known)))
    return found if abs(known[found.index] - found.line) > max(unit, 1) else None


def _without(values: list[float], index: int, rounding: float, least: float) -> Stray | None:
    others = [(i, value) for i, value in enumerate(values) if i != index]
    (first, low), (last, high) = others[0], others[-1]
    step = (high - low) / (last - first)
    if step <= 0 or any(abs(low + step * (i - first) - value) > rounding for i, value in others):
        return None
    line = low + step * (index - first)
    off = values[index] - line
    inside = 0 < index < len(values) - 1
    if inside:
        straight = all(abs(low + step * (i - first) - value) < _STRAIGHT for i, value in others)
        part = 1.0 if len(values) == FIRST else 0.2 if straight and len(values) >= _MANY else 0.5
        least = least if part > 0.2 else _LEAST_OFF * least
        broken = abs(off) >= max(part * step, least) - 1e-9
    else:  # steps often change at the ends: there, only what stands out of the order of the sizes
        beyond = off > 0 if index == 0 else off < 0
        broken = len(values) >= _ENDS and beyond and abs(off) >= max(step, least) - 1e-9
    return Stray(index, line, step) if broken else None


def _leap(values: list[float], index: int, least: float) -> Stray | None:
    """The first or the last figure, where its step is larger than any other by far; the others need not lie straight."""
    rest = values[1:] if index == 0 else values[:-1]
    steps = [b - a for a, b in pairwise(rest)]
    if len(values) < _ENDS or min(steps) < 0 or not max(steps):
        return None
    own = values[1] - values[0] if index == 0 else values[-1] - values[-2]
    usual = (rest[-1] - rest[0]) / len(steps)
    line = values[1] - usual if index == 0 else values[-2] + usual
    times = _LEAP if max(steps) - min(steps) > _STRAIGHT else _LEAP_OF_EVEN
    return Stray(index, line, usual) if own >= max(times * max(steps), least) - 1e-9 else None


def fall(values: Sequence[float | None], strict: bool) -> int | None:
    """The figure that is less than the one before it, in a list that else rises; None where there is none, or several.

    `strict`: the others have to grow from each to the next, so that two that changed places are all there is.
    """
    if len(values) < 3 or any(value is None for value in values):
        return None
    known = [float(value) for value in values if value is not None]
    falls = [index for index in range(1, len(known)) if known[index] < known[index - 1]]
    if len(falls) != 1 or known[-1] <= known[0]:
        return None
    at = falls[0]
    others = [[value for index, value in enumerate(known) if index != left_out] for left_out in (at, at - 1)]
    if strict and not any(all(a < b for a, b in pairwise(some)) for some in others):
        return None
    return at


_NAMED = {name: rank for rank, names in enumerate(
    (("preemie", "newborn"), ("xxs", "baby"), ("xs", "toddler", "x-small", "extra small"), ("s", "small", "sm", "child"),
     ("m", "medium", "med", "teen"), ("l", "large", "lg", "adult"), ("xl", "1x", "x-large", "extra large"),
     ("xxl", "2x", "2xl"), ("3x", "3xl"), ("4x", "4xl"), ("5x", "5xl"), ("6x", "6xl")), 1) for name in names}  # fmt: skip


def ascending(names: Sequence[str]) -> bool:
    """Whether the names of the sizes surely run from small to large: S (M, L), 2 (4, 6) years, 32 (34, 36)."""
    known = [rank for rank in _ranks(names) if rank is not None]
    return len(known) == len(names) and all(a < b for a, b in pairwise(known))


def _ranks(names: Sequence[str]) -> Sequence[float | None]:
    """The places of sizes by their names: letters and persons in their order, else the figures that they begin with."""
    ranks = [_NAMED.get(name.lower().strip()) for name in names]
    if None not in ranks:
        return ranks
    numbers = [expression(r"\d+(?:\.\d+)?").match(name.strip()) for name in names]
    return [float(match[0]) if match else None for match in numbers]


_PERSON = ("preemie", "newborn", "baby", "toddler", "child", "teen", "adult")
_WIDER = 1.5  # times the largest of the other steps between the sizes' own names


def sizes_leap(names: Sequence[str], index: int) -> bool:
    """Whether the first or last size is by its name further from the others than they are from each other: what it measures may leap.

    "2 (4, 6, 8, adult)", "S (M, L, 3X)", "2 (4, 6, 8, 14) years", "newborn (2, 4, 6) years".
    """
    if index not in (0, len(names) - 1) or len(names) < FIRST:
        return False
    ranks, others = _ranks(names), [name for at, name in enumerate(names) if at != index]
    numbered = [any(sign.isdigit() for sign in name) for name in (names[index], *others)]
    if None in ranks:
        return all(one != numbered[0] for one in numbered[1:])
    if (names[index].lower().strip() in _PERSON) != any(name.lower().strip() in _PERSON for name in others):
        return True
    steps = [(b or 0) - (a or 0) for a, b in pairwise(ranks)]
    own = steps.pop(0 if index == 0 else -1)
    return own >= _WIDER * max(steps) > 0
