"""Row ends by the stitch that their rows are of: "sc in each sc row end, 2 sc in each dc row end"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.pattern import Row
from lint.place import Place, Target, TargetKind, Which
from lint.tree import Alongside, OpenWork, RowCall, Step, Work
from lint.working.trials import PieceState

_TO_A_LENGTH = {"until", "till", "for"}
_EACH_END = Target(TargetKind.ROW_END, "each")


def rows_told(row: Row) -> bool:
    """Whether it is told how many rows a printed row comes to: not "until piece measures 6 in", nor rows that lie apart."""
    calls = [step for step in row.steps if isinstance(step, RowCall)]
    works = [step for step in row.steps if isinstance(step, OpenWork)]
    open_work = any(not step.plain or set(step.words.lower().split()) & _TO_A_LENGTH for step in works)
    return not open_work and not any(call.open_ended or call.apart for call in calls)


def row_ends_counted(steps: tuple[Step, ...], state: PieceState) -> tuple[Step, ...]:
    """The steps; what goes into each row end of one stitch, with the number of such rows where all are known."""
    side = state.side
    if not any(_by_rows(step) for step in steps):
        return steps
    if not side.rows or len(side.kinds) != side.rows or "" in side.kinds or side.seamed or state.unworked:
        return steps
    return tuple(_counted(_by_itself(step), side.kinds) for step in steps)


def _by_rows(step: Step) -> bool:
    """Whether a step goes into the ends of rows of one stitch."""
    places = step.places if isinstance(step, Work) else (step.place,) if isinstance(step, Alongside) else ()
    return any(place is not None and place.targets[0].rows_of for place in places)


def _by_itself(step: Step) -> Step:
    """ "…, 2 sc in each dc row end" behind a run to the end is work of its own: the run is over the ends of other rows."""
    if isinstance(step, Alongside) and step.place.targets[0].rows_of and len(step.items) == 1:
        item = step.items[0]
        return replace(item, places=(step.place,)) if isinstance(item, Work) and not item.places else step
    return step


def _counted(step: Step, kinds: tuple[str, ...]) -> Step:
    place = step.places[0] if isinstance(step, Work) and len(step.places) == 1 else None
    stitch = place.targets[0].rows_of if place is not None else ""
    if place is None or not stitch:
        return step
    number = kinds.count(stitch)
    one = place.which is not Which.EACH  # "in the end of the sc row": there is just one of these
    if not number or one and number > 1:
        return step
    return replace(step, places=(_of_so_many(place, number),))


def _of_so_many(place: Place, number: int) -> Place:
    told = Amount.of(number)
    return replace(place, which=Which.ELSEWHERE, targets=(_EACH_END,), number=told, each_of=True, limit=None)


__all__ = ["row_ends_counted", "rows_told"]
