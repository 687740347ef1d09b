"""Tells from what a row has worked whether it is over, so that a figure with no sign before it counts it: "…, join, 24 sc."."""

from __future__ import annotations

from lint.amount import Amount
from lint.place import LimitKind, TargetKind, Which
from lint.reading.counting.nocounts import definite, least_made
from lint.tree import (
    MAKES_STITCHES,
    Evenly,
    FastenOff,
    Group,
    Join,
    LastPlace,
    OpenWork,
    Remark,
    Repeat,
    RowCall,
    Step,
    TimesKind,
    Turn,
    Work,
)


def goes_to_end(step: Step | None) -> bool:
    """Whether a clause goes on to the row's end, or all the way along an edge."""
    if isinstance(step, OpenWork):
        return "evenly" in step.words
    if isinstance(step, Repeat):
        limit = step.times.limit
        return step.times.kind is TimesKind.FILL and (limit is None or limit.kind is LimitKind.END)
    run = step.places[-1] if isinstance(step, Work) and step.places else None
    return run is not None and run.which is Which.EACH and (run.limit is None or run.limit.kind is LimitKind.END)


def surely_over(steps: list[Step]) -> bool:
    """Whether nothing is left to be worked: the round is closed, the yarn cut, a row called, or the last clause is at the end."""
    told = [
        step for step in steps if not isinstance(step, (Remark, LastPlace))
    ]  # "(counts as 1 dc) and in each ch across"
    if not told:
        return False
    *before, last = told
    if isinstance(last, RowCall):
        return True
    if isinstance(last, Turn) and last.turned and before:
        return _at_the_end(before[-1], before[:-1]) or _in_last(before[-1])
    return isinstance(last, (Join, FastenOff)) and _worked(before) or _at_the_end(last, before)


def comes_to(steps: list[Step], figure: Amount) -> bool:
    """Whether the row may be over, and is if it has made as many stitches as a figure tells: in every size.

    "73 sc evenly along the hem, 73 sc" counts, and "…, 3 sc, turn" goes on; "sl st in first sc" closes a round, or goes on.
    """
    told = [step for step in steps if not isinstance(step, (Remark, LastPlace))]
    last = told[-1] if told else None
    slips = isinstance(last, Work) and last.stitch == "sl st" and last.places and last.places[0].which is Which.FIRST
    if not (slips or isinstance(last, Evenly)) or not _worked(told):
        return False
    works = [step for step in told if isinstance(step, MAKES_STITCHES)]
    if not all(isinstance(step, Evenly) or definite(step) for step in works):
        return bool(slips)
    made = [sum(_made(step, size) for step in works) for size in range(len(figure.values))]
    return all(one == there for one, there in zip(figure.values, made, strict=True))


def _made(step: Step, size: int) -> int:
    return (step.number.at(size) or 0) if isinstance(step, Evenly) else least_made(step, size)


def _worked(steps: list[Step]) -> bool:
    """Whether any stitches were worked, slip stitches apart."""
    works = (step for step in steps if isinstance(step, MAKES_STITCHES))
    return any(not isinstance(step, Work) or step.stitch != "sl st" for step in works)


def _at_the_end(step: Step, before: list[Step]) -> bool:
    """Whether a clause goes to the row's end, or, behind other work, into the turning chain."""
    if isinstance(step, Group) and step.places:
        last = step.places[-1]
        return last.which is Which.EACH and (last.limit is None or last.limit.kind is LimitKind.END)
    chain = isinstance(step, Work) and step.places and step.places[-1].targets[0].kind is TargetKind.TURNING_CHAIN
    return goes_to_end(step) or bool(chain) and _worked(before)


def _in_last(step: Step) -> bool:
    """Whether a clause goes into the row's last stitch: round a chain, work goes on behind it where nothing is turned."""
    return isinstance(step, (Work, Group)) and bool(step.places) and step.places[-1].which is Which.LAST
