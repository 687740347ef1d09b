"""A tester's course: the counts of one tester along one path, and where they leave what is due.

The first row at which a tester leaves the path is what counts; the rows after it are judged from there.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.testers.paths import Path, PathRow
from lint.testers.placing import Placed


@dataclass(frozen=True, slots=True)
class Step:
    """One count on the course: where on the path it is, and by how many it is more than due (None: nothing is due)."""

    at: int
    row: PathRow
    placed: Placed
    off: int | None


@dataclass(frozen=True, slots=True)
class Departure:
    """A stretch on which a tester is off the path.

    `first` is the step at which the path is left, `steps` all on the stretch; `before` the last count that was right
    (None: none was given), `between` the rows not counted between it and the first, `back` whether the path is met again.
    """

    first: Step
    steps: tuple[Step, ...]
    before: Step | None
    between: tuple[PathRow, ...]
    back: bool
    base: int = 0  # by how many the tester was off already, where one slip comes on top of another

    @property
    def offs(self) -> tuple[int, ...]:
        """By how many each count of the stretch is off through this slip."""
        return tuple((step.off or 0) - self.base for step in self.steps)


@dataclass(frozen=True)
class Course:
    """One tester on one path."""

    tester: str
    path: Path
    steps: tuple[Step, ...]
    departures: tuple[Departure, ...]

    @property
    def offs(self) -> dict[int, int]:
        """By place on the path, how far off the tester is."""
        return {step.at: step.off for step in self.steps if step.off is not None}


def course_of(tester: str, path: Path, placed: list[Placed]) -> Course:
    """The course of a tester's counts on one path, in the rows' own unit."""
    at_index = {row.index: at for at, row in enumerate(path.rows)}
    steps = sorted(
        (
            Step(at, row := path.rows[at], one, None if row.due.count is None else one.got - row.due.count)
            for one in placed
            if (at := at_index.get(one.index)) is not None
        ),
        key=lambda step: step.at,
    )
    return Course(tester, path, tuple(steps), tuple(_departures(path, steps)))


def on_path(step: Step) -> bool:
    """Whether a count is what the words make, or what is printed."""
    return step.off == 0 or step.placed.got == step.row.due.printed


def _departures(path: Path, steps: list[Step]) -> Iterator[Departure]:
    known = [step for step in steps if step.off is not None]
    index, before, base = 0, None, 0
    carried = 0  # by how many a sound count is off, for the pattern itself goes on from the printed count
    while index < len(known):
        step = known[index]
        if on_path(step) or step.off == carried:
            if step.off == 0 and step.row.row.cells[step.row.size].picked_up:
                carried = (step.row.due.made or 0) - (step.row.due.printed or 0)
            elif step.off == 0 or step.placed.got == step.row.due.printed:
                carried = 0
            before, index, base = step, index + 1, 0
            continue
        end, constant = index + 1, True
        while end < len(known) and not (on_path(known[end]) and not _goes_on_beside(known, end)):
            if constant and end - index > 1 and _leaves_again(known[end - 1], known[end]):
                break
            constant = constant and known[end].off == step.off
            end += 1
        back = end < len(known) and on_path(known[end])
        first = before.at + 1 if before is not None else 0
        between = tuple(row for row in path.rows[first : step.at] if not row.founds)
        yield Departure(step, tuple(known[index:end]), before, between, back, base)
        base = 0 if back else known[end - 1].off or 0
        before, index, carried = known[end - 1] if not back else before, end, 0


def _goes_on_beside(known: list[Step], at: int) -> bool:
    """Whether a count is the printed one by chance: as far off what the words make as those before it and behind it."""
    offs = {step.off for step in known[at - 1 : at + 2]}
    return at + 1 < len(known) and known[at].off != 0 and len(offs) == 1 and not on_path(known[at + 1])


def _leaves_again(same: Step, last: Step) -> bool:
    """Whether a count is off by another number than those before it, which neither shaping nor a drift explains."""
    was, due, moved = same.row.due.count, last.row.due.count, (last.off or 0) - (same.off or 0)
    if not was or not due or not moved:
        return False
    if was == due:
        return abs(moved) > 1 or moved * (same.off or 0) < 0
    return abs((last.off or 0) - (same.off or 0) * due / was) > 1
