"""Finds which stitches a clause points back at.

"Each of those" are those that the run before it left out; "working 2 sc in first st", behind a run to the end, is told of
that run, whose first stitch is worked by then.
"""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.place import LimitKind, Place, TargetKind, Which
from lint.tree import Step, Unread, Work

_TOLD_OF_IT = ("working", "making", "placing", "putting", "crocheting", "with")
_BACK_AT_FIRST = "whether the run before it has these stitches in the place of its first is not told"
_NOT_TOLD = "which stitches are meant by “each of those” is not told"


def those_meant(steps: list[Step]) -> list[Step]:
    """The steps, with "sc around except the last 2, 2 sc in each of those" worked in the last two; else not understood."""
    found: list[Step] = []
    for step in steps:
        place = step.places[0] if isinstance(step, Work) and len(step.places) == 1 else None
        if place is None or not _points_back(place):
            found.append(step)
            continue
        before = found[-1] if found else None
        limit = before.places[-1].limit if isinstance(before, Work) and before.places else None
        if limit is not None and limit.kind is LimitKind.LAST and limit.number.lone:
            last = replace(place, which=Which.LAST, number=limit.number)
            found.append(replace(step, places=(last,)))
        else:
            found.append(Unread(step.span, "each of those", _NOT_TOLD))
    return found


def back_at_first(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps, with "sc around, working 2 sc in first st" not understood: the first stitch is worked by then."""
    opens = {item.start: item.lower for item in lexemes}
    found: list[Step] = []
    for before, step in zip((None, *steps), steps, strict=False):
        first = isinstance(step, Work) and bool(step.places) and step.places[0].which is Which.FIRST
        told = first and opens.get(step.span.start) in _TOLD_OF_IT
        run = before.places[-1] if isinstance(before, Work) and before.places else None
        whole = (
            run is not None and run.which is Which.EACH and run.limit is not None and run.limit.kind is LimitKind.END
        )
        words = " ".join(item.text for item in lexemes if step.span.start <= item.start < step.span.end) if told else ""
        found.append(Unread(step.span, words, _BACK_AT_FIRST) if told and whole else step)
    return found


def _points_back(place: Place) -> bool:
    """Whether a place is "each of those", with no number and no name of what they are."""
    plain = place.targets[0].kind is TargetKind.ANY_STITCH and place.number.lone == 1
    return place.which is Which.SAME and place.each_of and plain
