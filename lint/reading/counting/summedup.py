"""Counts behind a comma that are what the words before them come to: "1 tr in each of next 3 ch, 1 tr in each of next 20 tr, 24 tr, turn"."""

from __future__ import annotations

from lint.amount import Amount
from lint.pattern import Stated
from lint.reading.counting.counts import read
from lint.reading.counting.nocounts import definite, least_made
from lint.reading.words.rowending import ends_work
from lint.reading.words.stream import Stream
from lint.tree import Chain, Group, Skip, Step, Turn, Work, walk

_ENDS = (".", ";", "turn", "no_turn", "join", "fasten_off")
_FEWEST = 6  # smaller figures come to what was made before by chance: "3 sc in next st, 3 sc, turn"


def summed_up(stream: Stream, steps: list[Step]) -> Stated | None:
    """Takes the count that stands at the cursor, last in the row, where in every size it is what the words before it make.

    By its looks it might as well be work, one stitch into each of so many: then all before it would name no places either.
    """
    start = stream.at
    end = stream.next_of(*_ENDS, start=start)
    behind = end
    if end > start and stream.lexemes[end - 1].kind == ",":
        end -= 1
    counted = stream.kind() == "number" and stream.kind(1) in ("stitch", "any_stitch")
    if stream.kind(-1) != "," or not counted or not ends_work(stream, behind):
        return None
    found = read(stream.inside(start, end), bare=False)
    if found is None or not found.items or found.items[0].series or not comes_to(steps, found.items[0].number):
        return None
    if not all(step.places for step in walk(tuple(steps)) if isinstance(step, (Work, Group))):
        return None  # "5 sc, inc, 7 sc"
    stream.at = end
    return found


def comes_to(steps: list[Step], counted: Amount) -> bool:
    """Whether two clauses or more make just so many stitches in every size, the beginning chain with them or not."""
    if not all(map(definite, steps)) or sum(least_made(step) > 0 for step in steps) < 2:
        return False
    first = next((step for step in steps if not isinstance(step, (Turn, Skip))), None)
    chain = isinstance(first, Chain) and first.length.lone != 1
    lacking = {
        (figure or 0) - sum(least_made(step, size) for step in steps)
        for size, figure in enumerate(counted.values)
        if figure is not None
    }
    enough = all((figure or _FEWEST) >= _FEWEST for figure in counted.values)
    return enough and (lacking == {0} or chain and lacking == {1})
