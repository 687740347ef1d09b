"""Rows that the notes at the front name and tell, "Dec row: ch 1, …", to be called for later: they are not worked there."""

from __future__ import annotations

from collections.abc import Sequence

from lint.pattern import Part, Row
from lint.tree import Chain, JoinYarn, MakeRing, RowCall, walk
from lint.working.rownames import answers_to


def rows_named_ahead(parts: Sequence[Part]) -> frozenset[int]:
    """The rows (by id) that stand before any piece, and are called for by their names further on."""
    ahead = parts[0].rows if parts else ()
    begun = any(isinstance(step, (Chain, MakeRing, JoinYarn)) for row in ahead for step in _before_work(row))
    named = [row for row in ahead if row.label is not None and not row.label.numbers]
    if begun or len(named) < len(ahead):
        return frozenset()
    calls = {
        step.name.lower()
        for part in parts[1:]
        for row in part.rows
        for step in walk(row.steps)
        if isinstance(step, RowCall) and step.name
    }
    told = all(
        any(answers_to(row.label.words.lower(), name) for name in calls) for row in named if row.label is not None
    )
    return frozenset(map(id, ahead)) if told else frozenset()


def _before_work(row: Row) -> tuple:
    """What of a row a piece may begin on: rings, yarn that is joined, and chains in lines of their own."""
    return row.steps if row.label is None else tuple(s for s in row.steps if not isinstance(s, Chain))
