"""Brackets that only hold together what is worked once: "(sc, inc), 10 sc, (sc, inc) x 3. (22)"."""

from __future__ import annotations

from lint.pattern import Stated
from lint.tree import MAKES_STITCHES, Step, Unread, Work

_SHAPED = ("inc", "dec")


def brackets_once(steps: list[Step], stated: Stated | None) -> list[Step]:
    """The steps with a bracket that no number of times follows as its stitches, where the row's count can speak for that.

    A bracket that is all the row works lacks its number; and without a printed count nothing would show a number left out.
    """
    loose = [step for step in steps if isinstance(step, Unread) and step.items and _say_where(step.items)]
    beside = any(isinstance(step, MAKES_STITCHES) for step in steps)
    if not loose or stated is None or not beside:
        return steps
    return [inner for step in steps for inner in (step.items if step in loose else (step,))]


def _say_where(items: tuple[Step, ...]) -> bool:
    """Whether each stitch goes to a place of its own: no "(dc, ch 1, dc)", which may be meant for one place."""
    works = [item for item in items if isinstance(item, Work)]
    told = all(item.places or item.stitch in _SHAPED for item in works)
    return len(works) == len(items) and (told or any(item.stitch in _SHAPED for item in works))
