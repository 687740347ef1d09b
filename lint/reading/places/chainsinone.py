"""A chain told in two pieces: "ch 20, ch 1 for turning, sc in 2nd ch from hook" begins on 21 chains."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.place import Which
from lint.tree import Chain, Group, Remark, Skip, Step, Work


def chains_in_one(steps: list[Step]) -> list[Step]:
    """The steps with two chains as one where the chain counted from the hook lies beyond the second of them.

    "Ch 3, ch 4, sl st in 4th ch from hook" keeps both: its picot is of the second alone.  Words of chains and nothing
    else, "Ch 20, then ch 3 more.", are one chain too.
    """
    chains = [step for step in steps if not isinstance(step, Remark)]
    if len(chains) == 2 and all(isinstance(step, Chain) and step.counting is None for step in chains):
        between = [step for step in steps if isinstance(step, Remark)]
        return [_joined(*chains), *between]
    at = 0
    while at + 2 < len(steps):
        first, second = steps[at], steps[at + 1]
        behind = at + 2
        while behind < len(steps) - 1 and isinstance(steps[behind], Remark):
            behind += 1
        if isinstance(first, Chain) and isinstance(second, Chain) and _reaches_past(steps[behind], second.length):
            return [*steps[:at], _joined(first, second), *steps[at + 2 :]]
        at = behind - 1
    return steps


def _joined(first: Chain, second: Chain) -> Chain:
    return replace(second, span=first.span.to(second.span), length=first.length.plus(second.length))


def _reaches_past(step: Step, length: Amount) -> bool:
    """Whether a step goes into a chain further from the hook than so many chains, in every size."""
    place = step.places[0] if isinstance(step, (Work, Group, Skip)) and step.places else None
    if place is None or place.which is not Which.FROM_HOOK or not place.ordinals:
        return False
    return all(figure is not None and figure < place.ordinals[0] for figure in length.values)
