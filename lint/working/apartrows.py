"""Rows shaped at intervals under a label for more rows than are shaped: "Rows 2-17: Inc 1 st at each end of every 4th row 4 times".

Which of the rows are the four is not said, but what all of them come to is, so that only the last has its number.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lint.pattern import Part, Row
from lint.tree import OpenWork, RowCall, Step
from lint.working.instances import passes_of
from lint.working.met import Called


def spaced(step: Step) -> Step:
    """A call of "every 4th (4th, 6th) row", read by one size, as one of a row in so many; any other step as it is."""
    number = step.every.lone if isinstance(step, RowCall) and step.every is not None else None
    if number is None:
        return step
    if not step.lead:
        return replace(step, apart=number if number > 1 else 0, every=None)
    even = (OpenWork(step.span, "even", plain=True),)
    return replace(
        step, own=((even,) * (number - 1)) + step.own, every=None
    )  # the first one is told: "in next row and …"


def ends_by_size(row: Row, call: RowCall) -> bool:
    """Whether such rows end at another number in each size: in which row the sizes stand beside each other is not known."""
    return call.apart and row.label is not None and any(len(own) > 1 for own in row.label.by_size)


def rows_apart(
    row: Row, numbers: list[int | None], call: RowCall, cycle: list[Called]
) -> tuple[list[Called], list[int | None]] | None:
    """The rows and their numbers, as many in each size, those worked even first; None where the rows are not such."""
    passes = passes_of(call, len(cycle))
    told = next((step for step in row.steps if isinstance(step, RowCall)), call)
    if not call.apart or not passes or told.times is None or told.times.number is None:
        return None
    most = max(passes, *(number or 0 for number in told.times.number.values)) * len(cycle)
    if row.label is None or len(numbers) <= most:
        return None
    even = Called((OpenWork(call.span, "even", plain=True),), None, cycle[0].kind, cycle[0].label, None)
    rows = [*[even] * (most - passes * len(cycle)), *cycle * passes]
    return rows, [*[None] * (most - 1), numbers[-1]]


def too_few_rows(row: Row, part: Part, call: RowCall) -> Iterator[tuple[Row, Part, int, int]]:
    """A label that does not reach from the first to the last row that is shaped: how many it names, how many they take."""
    passes = passes_of(call, 1)
    lone = len(call.own) < 2 and sum(isinstance(step, RowCall) for step in row.steps) == 1
    if passes and lone and row.label is not None and len(row.label.numbers) > 1:
        named = row.label.numbers[-1] - row.label.numbers[0] + 1
        if 0 < named <= (passes - 1) * call.apart:
            yield row, part, named, passes * call.apart
