"""Tells what hangs free in a row, on no stitch of the row below: chains, and the pattern's own loops of chains and picots."""

from __future__ import annotations

from lint.place import Which
from lint.tree import Chain, Step, Work, walk


def hangs_free(steps: tuple[Step, ...]) -> bool:
    """Whether chains and picots are all: "picot loop: ch 3, picot, ch 4, picot, ch 3" stands on no stitch."""
    works = [step for step in walk(steps) if isinstance(step, Work)]
    hung = (step.stitch == "picot" or step.places and step.places[0].which is Which.FROM_HOOK for step in works)
    return all(hung) and any(isinstance(step, Chain) for step in steps)


def is_loop(step: Step) -> bool:
    """Whether a step makes a loop: chains, or the pattern's own stitch of chains and picots."""
    own = isinstance(step, Work) and step.special is not None and not step.places
    return isinstance(step, Chain) or own and hangs_free(step.special.items)
