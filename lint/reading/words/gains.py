"""What is said of a stitch into the row's first one: "dc in first st (increase made)", "dc in first st for an increase"."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.place import Which
from lint.tree import Chain, Loops, Remark, Step, Turn, UseYarn, Work

_IDLE = (Remark, Turn, Loops, UseYarn)
_GAINS = ("increased", "increasing")


def increase_noted(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps, with a note behind a first stitch of which the words say that it is an increase; `lexemes` are all words."""
    at = next((at for at, step in enumerate(steps) if not isinstance(step, (Chain, *_IDLE))), None)
    first = steps[at] if at else None
    if not isinstance(first, Work) or [place.which for place in first.places] not in ([Which.FIRST], [Which.SAME]):
        return steps
    if not any(isinstance(step, Chain) for step in steps[:at]):
        return steps
    following = next((step.span.start for step in steps[at + 1 :] if not isinstance(step, _IDLE)), None)
    said = [item for item in lexemes if item.start >= first.span.end and (following is None or item.start < following)]
    told = next((item for item in said if item.kind == "increase" or item.lower in _GAINS), None)
    if told is None:
        return steps
    return [*steps[: at + 1], Remark(told.span, gains=True), *steps[at + 1 :]]


__all__ = ["increase_noted"]
