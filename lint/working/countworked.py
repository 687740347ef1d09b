"""A figure that was taken for the printed count and is work: "9 inc. 9 sc." on 18 stitches."""

from __future__ import annotations

from dataclasses import replace

from lint.working.cursor import PlacesUnknown
from lint.working.rowstate import NotDefined, TooMany
from lint.working.trials import PieceState, Task, Trial, best_reading


def count_worked(task: Task, best: Trial, state: PieceState) -> tuple[Task, Trial]:
    """The row with its figure worked, where only so it comes out on the row below.

    A row worked to and fro may stop short of its end: there a figure that is what the row makes stays its count, but not
    "2 sps; 1 bl; 2 sps; 1 bl.", whose second half is as many squares as the first for the pattern's sake.
    """
    stated = task.instance.stated
    if stated is None or not stated.perhaps or not best.worked.left:
        return task, best
    if best.agrees and not task.circular and not any(step.special for step in stated.perhaps):
        return task, best
    at = sum(step.span.start < stated.span.start for step in task.steps)
    steps = (*task.steps[:at], *stated.perhaps, *task.steps[at:])
    told = replace(task, steps=steps, instance=replace(task.instance, steps=steps, stated=stated.without_perhaps()))
    try:
        trial = best_reading(told, state)
    except (PlacesUnknown, NotDefined, TooMany):
        return task, best
    better = trial.agrees is not False or best.agrees is False  # than the figure as a count, by what else is printed
    return (told, trial) if trial.fits and not trial.open and better else (task, best)
