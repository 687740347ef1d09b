"""What checks of the assembly have in common: its sentences, and whether a part is a piece of its own."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.expression import expression
from lint.pattern import Part
from lint.place import TargetKind, Which
from lint.reading.facts.assembly import sentences
from lint.source import Span
from lint.tree import Chain, Group, MakeRing, RowCall, Work, walk

SEVERAL_NAMES = expression(r"(?i)[&+,/]|\b(?:and|with|or|to)\b")  # of a heading over several things


def begins(part: Part) -> bool:
    """Whether a part starts on a chain, a ring or a foundation of its own, or is worked as another part."""
    for row in part.rows[:2]:
        for step in walk(row.steps):
            if isinstance(step, MakeRing) or isinstance(step, RowCall) and step.part is not None:
                return True
            if isinstance(step, Chain) and row.label is None:
                return True
            places = step.places if isinstance(step, (Work, Group)) else ()
            if places and (places[0].which is Which.FROM_HOOK or places[0].targets[0].kind is TargetKind.RING):
                return True
    return False


def talk(context: Context) -> Iterator[Span]:
    """The sentences outside the labelled rows, from the first piece on."""
    text = context.source.text
    rows = [row for part in context.pattern.parts for row in part.rows if row.label is not None]
    if not rows:
        return
    end = min(row.span.start for row in rows)
    for row in sorted(rows, key=lambda row: row.span.start):
        if end < row.span.start:
            yield from sentences(text, Span(end, row.span.start))
        end = max(end, row.span.end)
    yield from sentences(text, Span(end, len(text)))
