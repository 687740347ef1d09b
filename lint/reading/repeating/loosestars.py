"""Stars that no words of a repeat close: a pair runs to the end of the round, a single one may."""

from __future__ import annotations

from lint.place import Limit, LimitKind, Which
from lint.reading.repeating.marks import Folded, Mark
from lint.tree import (
    Chain,
    Covers,
    FastenOff,
    Group,
    Join,
    NoJoin,
    Repeat,
    Skip,
    Step,
    Times,
    TimesKind,
    Turn,
    Work,
)


def fold_loose(steps: list[Step]) -> list[Step]:
    """A pair of stars with no repeat words runs to the end of the round; a lone star is only a sign."""
    while True:
        marks = [i for i, step in enumerate(steps) if isinstance(step, Mark)]
        pairs = [(a, b) for a, b in zip(marks, marks[1:], strict=False) if steps[a].sign == steps[b].sign]
        if not pairs:
            break
        first, last = pairs[-1]
        span = steps[first].span.to(steps[last].span)
        fill = Times(steps[last].span, TimesKind.FILL, limit=Limit(LimitKind.END))
        steps = [*steps[:first], Folded(span, tuple(steps[first + 1 : last]), fill), *steps[last + 1 :]]
    return [step for step in _perhaps_repeated(steps) if not isinstance(step, Mark)]


def _perhaps_repeated(steps: list[Step]) -> list[Step]:
    """A row's only star, with nothing but a list of stitches behind it, may begin a repeat that is not called for."""
    marks = [i for i, step in enumerate(steps) if isinstance(step, Mark)]
    if len(marks) != 1 or steps[marks[0]].sign != "*":
        return steps
    ends = (i for i, step in enumerate(steps) if i > marks[0] and isinstance(step, (Join, NoJoin, Turn, FastenOff)))
    first, end = marks[0] + 1, next(ends, len(steps))
    body = steps[first:end]
    works = [step for step in body if isinstance(step, (Work, Group, Skip, Chain))]
    placed = {place.which for step in works if not isinstance(step, Chain) for place in step.places}
    if len(works) < 2 or len(works) < len(body) or not placed <= {Which.NEXT}:
        return steps
    fill = Times(body[-1].span, TimesKind.FILL, limit=Limit(LimitKind.END))
    again = Repeat(steps[marks[0]].span.to(body[-1].span), tuple(body), fill, covers=Covers.PERHAPS)
    return [*steps[: first - 1], again, *steps[end:]]
