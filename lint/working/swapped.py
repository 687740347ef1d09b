"""A row called again in another stitch: "as Rnd 3, but with hdc instead of sc"."""

from __future__ import annotations

from dataclasses import replace

from lint.growth import Swap
from lint.source import Span
from lint.tree import Either, Group, Passage, Repeat, Step, Unread, Work, walk

_OPEN = ("inc", "dec", "sl st", "picot")
_NOT_TOLD = "which of the stitches of the row that is called are changed is not known here"


def swapped(steps: tuple[Step, ...], swap: Swap, span: Span) -> tuple[Step, ...]:
    """The steps with one stitch in another's place; Unread where the row has no such stitch, or several may be meant."""
    kinds = {step.stitch for step in walk(steps) if isinstance(step, Work)} - set(_OPEN)
    old = swap.old if swap.old is not None else next(iter(kinds)) if len(kinds) == 1 else None
    if old not in kinds or any(isinstance(step, Work) and step.special is not None for step in walk(steps)):
        return (Unread(span, _NOT_TOLD, _NOT_TOLD),)
    return tuple(_with(step, old, swap.new) for step in steps)


def _with(step: Step, old: str, new: str) -> Step:
    if isinstance(step, Work):
        return replace(step, stitch=new) if step.stitch == old else step
    if isinstance(step, Repeat):
        last = step.last_pass
        last = tuple(_with(item, old, new) for item in last) if last is not None else None
        return replace(step, items=tuple(_with(item, old, new) for item in step.items), last_pass=last)
    if isinstance(step, (Group, Passage)):
        return replace(step, items=tuple(_with(item, old, new) for item in step.items))
    if isinstance(step, Either):
        return replace(step, options=tuple(tuple(_with(item, old, new) for item in one) for one in step.options))
    return step
