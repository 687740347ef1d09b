"""What a row says besides the row that it calls: "Like 4th. Ch 3, turn." has the chain and the turn of Row 4 once."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.pattern import Row
from lint.tree import MAKES_STITCHES, Chain, Join, LastPlace, Remark, RowCall, Skip, Step, Turn, Unread, Work

_TURNING = (Chain, Turn)
_NONE = Amount.of(0)  # of the chains at the row's end, "do not ch 1 at end of last row"


def once(head: tuple[Step, ...], called: tuple[Step, ...], tail: tuple[Step, ...]) -> tuple[Step, ...]:
    """The called row's steps between what stands before and behind the call, without the turning that is said there."""
    begun = _without(called, head) if _turns_alone(head) else called
    if any(isinstance(step, Chain) and step.length == _NONE for step in tail):
        begun, tail = _unchained(begun), tuple(step for step in tail if not isinstance(step, Chain))
    ended = _without(begun[::-1], tail)[::-1] if _turns_alone(tail) else begun
    return (*head, *ended, *tail)


def into_last(called: tuple[Step, ...], said: tuple[Step, ...]) -> tuple[Step, ...]:
    """A called row's steps with its last stitches where the words behind the call put them: "Rep Row 6, working last 2 sc in last sc".

    They must be the very stitches that the row ends with, into one place: else they may be so many more than it has.
    """
    told = next((step for step in said if isinstance(step, LastPlace) and step.number != ONE), None)
    ends = [at for at, step in enumerate(called) if not isinstance(step, (*_TURNING, Remark, Join))]
    if told is None or not ends:
        return called
    last = called[ends[-1]]
    same = isinstance(last, Work) and (last.number, last.stitch) == (told.number, told.stitch)
    if not same or len(last.places) != 1 or last.places[0].number != ONE:
        return (*called, Unread(told.span, "", "whether the row called for ends in these stitches is not told"))
    return (*called[: ends[-1]], replace(last, places=told.places), *called[ends[-1] + 1 :])


def called_otherwise(row: Row, rows: int) -> bool:
    """Whether a row that calls for another need not have its count: several rows, or one that is grown, shaped, altered
    by words that were not read, or works or leaves stitches of its own besides."""
    calls = [step for step in row.steps if isinstance(step, RowCall)]
    altered = any(call.growth or call.shaped or call.swap or call.beside for call in calls) or row.unread()
    works = any(isinstance(step, (*MAKES_STITCHES, Skip)) for step in row.steps)
    return bool(calls) and (rows > 1 or bool(altered) or works)


def _unchained(called: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps of a row without the turning chain that it ends with, if it does."""
    run = next((i for i, step in enumerate(reversed(called)) if not isinstance(step, (*_TURNING, Remark))), len(called))
    ended = len(called) - run
    return (*called[:ended], *(step for step in called[ended:] if not isinstance(step, Chain)))


def _turns_alone(said: tuple[Step, ...]) -> bool:
    return any(isinstance(step, Turn) for step in said) and all(isinstance(step, (*_TURNING, Remark)) for step in said)


def _without(called: tuple[Step, ...], said: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps of a row without the chain and the turn that it begins with, as far as others are said instead."""
    kinds = {type(step) for step in said if isinstance(step, _TURNING)}
    run = next((i for i, step in enumerate(called) if not isinstance(step, (*_TURNING, Remark))), len(called))
    if not any(isinstance(step, Turn) for step in called[:run]):
        return called
    return (*(step for step in called[:run] if type(step) not in kinds), *called[run:])
