"""By how much rows gain that go on "in this way": as the printed counts of those before them do."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from lint.amount import Amount
from lint.growth import ShapedWhere
from lint.tree import RowCall, Shaping, Step
from lint.working.met import MetRow

_COUNTS = 3  # printed counts, one from the other by as many, that settle it


def own_rows(call: RowCall, met: Sequence[MetRow], size: int) -> tuple[tuple[Step, ...], ...]:
    """The rows that a call tells itself, or the one that goes on as the `met` ones do.

    That is not known where the last printed counts do not grow evenly, or in the other way.
    """
    if not call.as_before:
        return call.own
    counted = [entry.stated.items[0].at(size) for entry in met if entry.stated is not None and entry.stated.items]
    figures = [figure for figure, _ in groupby(counted) if figure is not None][-_COUNTS:]
    gains = {after - before for before, after in zip(figures, figures[1:], strict=False)}
    gain = next(iter(gains), 0)
    if len(figures) < _COUNTS or len(gains) != 1 or gain * call.as_before <= 0:
        return ()
    return ((Shaping(call.span, Amount.of(abs(gain)), gain > 0, ShapedWhere.EVENLY),),)
