"""Where a row ends within its own words: what stands behind "Fasten off." is no part of it."""

from __future__ import annotations

from lint.expression import expression
from lint.pattern import Row
from lint.source import SourceText
from lint.tree import MAKES_STITCHES, Chain, FastenOff, Unread, walk

_SENTENCE_END = expression(r"[^.;:,\n]*(?:\.|\n)\s*(?=\S)")


def behind_fastening(row: Row, source: SourceText) -> int | None:
    """Where the sentence ends that fastens a worked row off, if words behind it were not understood; else None."""
    at = next((at for at, step in enumerate(row.steps) if isinstance(step, FastenOff) and step.colour is None), None)
    if at is None or not any(isinstance(step, MAKES_STITCHES) for step in row.steps[:at]):
        return None
    if any(isinstance(step, Unread) for step in walk(row.steps[:at])):
        return None
    unread = [step.span.start for step in walk(row.steps[at + 1 :]) if isinstance(step, Unread)]
    ends = _SENTENCE_END.match(source.text, row.steps[at].span.end)
    return ends.end() if ends is not None and unread and ends.end() <= min(unread) else None


def makes_stitches(row: Row, at: int) -> bool:
    """Whether a row works anything behind a place in its text."""
    behind = [step for step in walk(row.steps) if step.span.start >= at]
    return any(isinstance(step, (*MAKES_STITCHES, Chain)) for step in behind)
