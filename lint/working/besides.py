"""What a row says besides the row that it calls: "Like 4th. Ch 3, turn." has the chain and the turn of Row 4 once."""

from __future__ import annotations

from lint.tree import Chain, Remark, Step, Turn

_TURNING = (Chain, Turn)


def once(head: tuple[Step, ...], called: tuple[Step, ...], tail: tuple[Step, ...]) -> tuple[Step, ...]:
    """The called row's steps between what stands before and behind the call, without the turning that is said there."""
    begun = _without(called, head) if _turns_alone(head) else called
    ended = _without(begun[::-1], tail)[::-1] if _turns_alone(tail) else begun
    return (*head, *ended, *tail)


def _turns_alone(said: tuple[Step, ...]) -> bool:
    return any(isinstance(step, Turn) for step in said) and all(isinstance(step, (*_TURNING, Remark)) for step in said)


def _without(called: tuple[Step, ...], said: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps of a row without the chain and the turn that it begins with, as far as others are said instead."""
    kinds = {type(step) for step in said if isinstance(step, _TURNING)}
    run = next((i for i, step in enumerate(called) if not isinstance(step, (*_TURNING, Remark))), len(called))
    if not any(isinstance(step, Turn) for step in called[:run]):
        return called
    return (*(step for step in called[:run] if type(step) not in kinds), *called[run:])
