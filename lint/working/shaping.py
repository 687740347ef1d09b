"""Spreads increases and decreases over a run: evenly, or at its ends."""

from __future__ import annotations

from lint.place import Place, Which
from lint.tree import Loops, Remark, ShapedWhere, Shaping, Step
from lint.working.fabric import Node

# Places that are worked together into one stitch, or one place and the number of stitches that go into it.
Unit = tuple[tuple[Node, ...], int]


def shaped(run: list[Node], step: Shaping, number: int) -> list[Unit] | None:
    """The units of a run shaped as told; None where it has too few places."""
    ends = 2 if step.where is ShapedWhere.EACH_END else 1
    if step.where is ShapedWhere.EVERY and (not step.increase or not number or len(run) % number):
        return None  # where the first of them falls is not said
    if step.where is ShapedWhere.SKIPPED:
        whole = number > 1 and not len(run) % number
        return [((node,), 1) for at, node in enumerate(run, 1) if at % number] if whole else None
    if not number:
        return [((node,), 1) for node in run]  # "dec 0 (1) st at each end"
    if step.increase:
        return _increased(run, step.where, number)
    if len(run) < 2 * number * ends:
        return None
    if step.where is ShapedWhere.EVENLY:
        plain = len(run) - 2 * number
        before = [plain * (k + 1) // number - plain * k // number for k in range(number)]
    else:
        before = [0] * number
        if step.where is ShapedWhere.EACH_END:
            before += [len(run) - 4 * number] + [0] * (number - 1)
    units: list[Unit] = []
    at = 0
    for plain in before:
        units += [((node,), 1) for node in run[at : at + plain]]
        units.append((tuple(run[at + plain : at + plain + 2]), 1))
        at += plain + 2
    return units + [((node,), 1) for node in run[at:]]


def _increased(run: list[Node], where: ShapedWhere, number: int) -> list[Unit] | None:
    if not run or where is ShapedWhere.EVENLY and len(run) < number:
        return None
    if where is ShapedWhere.EVERY:
        more = {at: 1 for at in range(number - 1, len(run), number)}
    elif where is ShapedWhere.EVENLY:
        more = {(2 * k + 1) * len(run) // (2 * number): 1 for k in range(number)}
    else:
        more = {0: number}
        if where is ShapedWhere.EACH_END:
            more[len(run) - 1] = more.get(len(run) - 1, 0) + number if len(run) == 1 else number
    return [((node,), 1 + more.get(index, 0)) for index, node in enumerate(run)]


def shaping_after(following: tuple[Step, ...], place: Place) -> Shaping | None:
    """The shaping that the next clause tells of the run in a place before it: "sc across, dec 1 st at each end"."""
    ahead = next((step for step in following if not isinstance(step, (Remark, Loops))), None)
    return ahead if isinstance(ahead, Shaping) and _is_of(ahead, place) else None


def _is_of(shaping: Shaping, place: Place) -> bool:
    """Whether a shaping is of what goes into a place: of so many stitches, or of any run where it names none."""
    return place.which is Which.EACH if shaping.over is None else shaping.over.span == place.span
