"""Stitches told behind the round's join with no place: "2 sc in each st, join. 24 sc – lovely": a count, or work, is not said."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.place import Which
from lint.tree import MAKES_STITCHES, FastenOff, Join, Remark, Step, Turn, Unread, Work

_FEWEST = 3  # fewer may be a few more stitches
_WHY = "whether these are worked behind the join, or count the round, is not said"


def unclear_behind_join(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps, where the last work is such a figure behind the join or the cut yarn as words that are not understood."""
    last = next((at for at in range(len(steps) - 1, -1, -1) if isinstance(steps[at], MAKES_STITCHES)), None)
    if last is None or not _bare(steps[last]):
        return steps
    before = [step for step in steps[:last] if not isinstance(step, (Remark, Turn))]
    worked = any(isinstance(step, MAKES_STITCHES) for step in before[:-1])
    if not worked or not _ends(before[-1]):
        return steps
    span = steps[last].span
    words = " ".join(item.text for item in lexemes if span.start <= item.start < span.end)
    return [*steps[:last], Unread(span, words, _WHY), *steps[last + 1 :]]


def _bare(step: Step) -> bool:
    """Whether a step is so many stitches, and where they go is not told."""
    plain = isinstance(step, Work) and not step.places and step.number_said and step.together is None
    several = plain and step.stitch not in ("sl st", "inc", "dec") and step.special is None and step.between is None
    return several and all(number is None or number >= _FEWEST for number in step.number.values)


def _ends(step: Step) -> bool:
    """Whether the round is closed, or the yarn cut."""
    slip = isinstance(step, Work) and step.stitch == "sl st" and len(step.places) == 1
    return isinstance(step, (Join, FastenOff)) or slip and step.places[0].which is Which.FIRST
