"""The two old questions about turning chains: does it count, and is the last stitch worked into it?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lint.likely.edits import Edit
from lint.place import Place, Target, TargetKind, Which
from lint.source import Span
from lint.tree import Chain, Counting, Repeat, Step, Work, walk

_COUNTED, _INTO_CHAIN = 1.4, 1.15
_SAID_HERE = 0.3  # more where the row itself says what the chain is


def of_turning_chain(steps: tuple[Step, ...], text: str, short: int) -> Iterator[Edit]:
    """The beginning chain counted the other way; a last stitch into the chain below, where one place is left over."""
    first = next((step for step in steps if isinstance(step, (Chain, Work, Repeat))), None)
    if isinstance(first, Chain) and (first.length.at(0) or 0) > 1:  # ch 1 never counts
        words = " ".join(text[first.span.start : first.span.end].split())
        counts = first.counting is not None and first.counting.counts
        note = first.counting or Counting(first.span, counts)
        other = replace(note, counts=not counts, stitch=None, space=None)
        said = f"the “{words}” at the start {'does not count' if counts else 'counts'} as a stitch"
        cost = _COUNTED + (_SAID_HERE if first.counting is not None else 0.0)
        yield Edit(said, cost, first, (replace(first, counting=other),))
    last = next((step for step in reversed(steps) if isinstance(step, (Work, Repeat))), None)
    stitch = next((step for step in walk(steps) if isinstance(step, Work) and step.special is None), None)
    if short == 1 and last is not None and stitch is not None and stitch.stitch not in ("sl st", "inc", "dec"):
        word = _stitch_word(stitch, text)
        place = Place(last.span, Which.NEXT, (Target(TargetKind.TURNING_CHAIN),), from_words="top")
        added = Work(last.span, stitch.stitch, places=(place,))
        end = last.span.end
        words = f"{word} in top of turning ch"
        yield Edit(f"add “{words}” at the end", _INTO_CHAIN, last, (last, added), Span(end, end), f", {words}")


def _stitch_word(step: Work, text: str) -> str:
    """The stitch's name as this pattern prints it: the first word of the clause that is no number."""
    words = text[step.span.start : step.span.end].split()
    return next((word.lower() for word in words if not word.isdigit()), step.stitch)
