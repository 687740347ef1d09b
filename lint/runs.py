"""What a run of stitches tells of where it ends."""

from __future__ import annotations

from lint.place import Target
from lint.tree import Step, Work


def stops_before(step: Step | None, target: Target) -> bool:
    """Whether a run goes up to the next place of a sort: "dc in each dc to next ch-2 sp"."""
    limit = step.places[-1].limit if isinstance(step, Work) and step.places else None
    return limit is not None and limit.up_to(target)
