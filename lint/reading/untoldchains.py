"""Beginning chains that only a note tells: "Every row starts 3ch, which is the first tr", and no row prints them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from lint.amount import Amount
from lint.expression import expression
from lint.pattern import Part, Row
from lint.place import Which
from lint.source import Span
from lint.tree import MAKES_STITCHES, Chain, Counting, JoinYarn, RowCall, Step, Unread, Work, walk

_EVERY = expression(
    r"(?i)\b(?:every|each|all)\s+(?P<kind>row|round|rnd)s?\s+(?:starts?|begins?)\s+(?:with\s+)?(?:an?\s+)?"
    r"(?:(?P<number>\d)\s?ch(?:ain)?s?\b|ch(?:ain)?\s?-?\s?(?P<number>\d)\b)"
)


def with_untold_chains(
    parts: tuple[Part, ...], notes: Iterable[tuple[int | None, Counting]], text: str
) -> tuple[Part, ...]:
    """The parts, with the chain of such a note at the head of each row of its kind that begins with stitches.

    Only a chain that counts is missing there, for no other is a place or a stitch; and only where no row of the pattern
    prints it, for else it stands where it is meant.
    """
    told = _EVERY.search(text)
    if told is None:
        return parts
    length = Amount.of(int(told["number"]))
    counting = next((note for long, note in notes if long == length.lone and note.counts and note.stitch), None)
    rows = [row for part in parts for row in part.rows if row.label is not None]
    if counting is None or any(length in _first_chains(row) for row in rows):
        return parts
    kind = "row" if told["kind"].lower() == "row" else "round"
    return tuple(replace(part, rows=tuple(_begun(row, kind, length, counting) for row in part.rows)) for part in parts)


def _first_chains(row: Row) -> list[Amount]:
    """The chains that a row begins with, before any stitch."""
    begun = next((at for at, step in enumerate(row.steps) if not isinstance(step, Chain) and _makes(step)), None)
    return [step.length for step in row.steps[:begun] if isinstance(step, Chain)]


def _makes(step: Step) -> bool:
    return isinstance(step, (*MAKES_STITCHES, RowCall, JoinYarn, Unread))


def _begun(row: Row, kind: str, length: Amount, counting: Counting) -> Row:
    """A row with the chain before its first stitch; as it is where it calls another, joins yarn or begins on a chain."""
    first = next((at for at, step in enumerate(row.steps) if _makes(step)), None)
    if row.label is None or row.label.kind != kind or first is None:
        return row
    if isinstance(row.steps[first], (RowCall, JoinYarn, Unread)) or any(map(_from_hook, walk(row.steps))):
        return row
    span = Span(row.steps[first].span.start, row.steps[first].span.start)
    return replace(row, steps=(*row.steps[:first], Chain(span, length, counting), *row.steps[first:]))


def _from_hook(step: Step) -> bool:
    return isinstance(step, Work) and any(place.which is Which.FROM_HOOK for place in step.places)


__all__ = ["with_untold_chains"]
