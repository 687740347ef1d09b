"""Passages for sizes that the pattern does not have, and rows that cannot be counted only because of what stands before them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from lint.checks.context import Context
from lint.checks.extent import pieces_of
from lint.expression import expression
from lint.ledger import LedgerRow
from lint.pattern import Row
from lint.reading.sizes.audience import UNKNOWN_SIZES, canonical
from lint.reading.sizes.sizenames import is_size_name
from lint.source import Span
from lint.tree import RowCall, Unread, walk

_LINES_ABOVE = 6  # within which the words stand that say for whom a row is
_MOST_WORDS = 3  # of a name that is none of those in use
_ONLY = expression(r"(?i)\bsizes?\b|\bonly\b|\bfor\b")
_NAMES = expression(r"(?i)(?<!\w)(?!(?:for|and|or|the|sizes?|only|all|both)\b)[^\W_][^,;()\[\]&/:\n]*?(?=\s*(?:[,;()\[\]&/:\n]|$|\band\b|\bor\b|\bonly\b|\bsizes?\b))")  # fmt: skip


def unknown_sizes(context: Context) -> dict[int, Span]:
    """By where a row stands that is for sizes the pattern does not have: the first name that is none of its sizes."""
    return context.once(_unknown_sizes)


def _unknown_sizes(context: Context) -> dict[int, Span]:
    own = {canonical(name) for name in context.pattern.sizes}
    rows = [row for part in context.pattern.parts for row in part.rows if for_unknown_sizes(row)]
    found = ((row.span.start, _name(context.source.text, row, own)) for row in rows)
    return {start: span for start, span in found if span is not None}


def for_unknown_sizes(row: Row) -> bool:
    """Whether a row stands under "Sizes … only" with names that are not the pattern's."""
    return any(isinstance(step, Unread) and step.why == UNKNOWN_SIZES for step in row.steps)


def _name(text: str, row: Row, own: set[str]) -> Span | None:
    """The name that is no size of the pattern, in the row's label or in the line above it that says for whom it is."""
    end = row.label.span.end if row.label is not None else row.span.end
    start = text.rfind("\n", 0, row.span.start) + 1
    for _ in range(_LINES_ABOVE):
        if _ONLY.search(text, start, end):
            names = list(_NAMES.finditer(text, start, end))
            others = [name for name in names if canonical(name[0]) not in own]
            known = [name for name in others if is_size_name(name[0])]
            if not known and len(others) == len(names):  # "Finish all ends for S" names no size but its own
                known = [name for name in others[:1] if len(name[0].split()) <= _MOST_WORDS]
            return Span(*known[0].span()) if known else None
        start, end = text.rfind("\n", 0, max(0, start - 1)) + 1, max(0, start - 1)
    return None


def stands_on(context: Context, row: LedgerRow, spans: Sequence[Span]) -> bool:
    """Whether a row's own words are understood, and words that are told by themselves stand before it in its piece.

    So they do in the piece as which it is worked.
    """
    if row.row.unread() or not spans:
        return False
    piece = next((one.parts for one in pieces_of(context) if any(part is row.part for part in one.parts)), (row.part,))
    calls = any(
        isinstance(step, RowCall) and step.part for part in piece for one in part.rows for step in walk(one.steps)
    )
    start = 0 if calls else piece[0].span.start
    return any(start <= span.start < row.row.span.start for span in spans)


def names_of_no_size(context: Context) -> Iterator[Span]:
    """The names that such passages are for, each place once."""
    yield from sorted(set(unknown_sizes(context).values()), key=lambda span: span.start)
