"""Rows called again with longer runs: "as Rnd 3, working one more sc between incs each rnd"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.growth import Grows
from lint.place import TargetKind, Which
from lint.tree import Remark, Repeat, RowCall, Shaping, Step, Unread, Work, walk

_STITCHES = (TargetKind.STITCH, TargetKind.ANY_STITCH)
_NOT_TOLD = "how the row that is called has its runs longer is not known here"


def between_shapings(steps: tuple[Step, ...], call: RowCall, index: int, rows: int, cycle: int) -> tuple[Step, ...]:
    """The steps with the one run of each pass longer, shorter, or of the number said; Unread where there is no such run.

    Of several rows each must be said to grow, and how many they are must be known beforehand.  `index`: the so-manyth time
    that the row is worked again; of a `cycle` of rows those without shaping are worked as they are.
    """
    grown = call.growth[0]
    if cycle > 1 and not any(
        isinstance(one, Shaping) or isinstance(one, Work) and _shapes_any(one) for one in walk(steps)
    ):
        return steps
    fixed = grown.where is Grows.BETWEEN_SET
    open_ended = call.open_ended or call.until is not None and rows > 1
    repeats = [at for at, step in enumerate(steps) if isinstance(step, Repeat) and _shapes(step)]
    others = (step for at, step in enumerate(steps) if at not in repeats)
    alone = len(repeats) == 1 and not any(
        isinstance(one, Work) and one.stitch != "sl st" for one in walk(tuple(others))
    )
    if alone and not open_ended and (grown.each or rows == 1):
        at = repeats[0]
        number = grown.number if fixed else grown.number * (index + 1)
        items = _longer(steps[at].items, number, fixed, grown.unit)
        if items is not None and steps[at].last_pass is None:
            return (*steps[:at], replace(steps[at], items=items), *steps[at + 1 :])
    return (Unread(call.span, _NOT_TOLD, _NOT_TOLD),)


def _shapes(step: Repeat) -> bool:
    return any(isinstance(item, Work) and _is_shaping(item) for item in step.items)


def _shapes_any(item: Work) -> bool:
    """Whether a clause may gain or lose stitches."""
    several = any(place.shared for place in item.places) or item.number != ONE and bool(item.places)
    return item.stitch in ("inc", "dec") or item.together is not None or item.special is not None or several


def _is_shaping(item: Work) -> bool:
    """Whether a clause is an increase in one place, or a decrease."""
    place = item.places[0] if len(item.places) == 1 else None
    in_one = place is not None and place.which is Which.NEXT and place.number == ONE and (item.number.lone or 0) > 1
    return item.stitch in ("inc", "dec") and item.number == ONE or item.together is not None or in_one


def _longer(items: tuple[Step, ...], number: int, fixed: bool, unit: str) -> tuple[Step, ...] | None:
    """The items of a pass with their one run of so many more stitches, or of so many; None where there is no such run."""
    works = [item for item in items if not isinstance(item, Remark)]
    shapings = [item for item in works if isinstance(item, Work) and _is_shaping(item)]
    runs = [at for at, item in enumerate(items) if isinstance(item, Work) and _run_of(item) is not None]
    around = len(shapings) == 2 and len(works) == 3 and items[runs[0]] is works[1] if runs else False
    if len(runs) != 1 or not around and (len(shapings), len(works)) != (1, 2):
        return None  # "[sc2tog, sc in next 8 sts, sc2tog] twice" has its run between two shapings
    at = runs[0]
    if unit not in ("stitches", f"kind:{items[at].stitch}"):
        return None
    long = number if fixed else _run_of(items[at]) + number
    if long < 1:
        return (*items[:at], *items[at + 1 :]) if long == 0 else None
    return (*items[:at], _of_length(items[at], Amount.of(long)), *items[at + 1 :])


def _run_of(item: Work) -> int | None:
    """How many stitches a run has, one in each place; None for any other clause."""
    if item.special is not None or item.together is not None or item.stitch in ("inc", "dec"):
        return None
    if not item.places:
        return item.number.lone
    place = item.places[0] if len(item.places) == 1 else None
    plain = place is not None and place.which is Which.NEXT and place.targets[0].kind in _STITCHES and place.of is None
    return place.number.lone if plain and item.number == ONE and not place.ordinals else None


def _of_length(item: Work, number: Amount) -> Work:
    if not item.places:
        return replace(item, number=number, number_said=True)
    return replace(item, places=(replace(item.places[0], number=number, each_of=True),))
