"""Which rows of a new draft are those of the old one: by their words first, then by their label; never by line number."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher

from lint.expression import expression
from lint.inspection import Report
from lint.pattern import Part, Row
from lint.source import Span


@dataclass(frozen=True)
class Alignment:
    """Pairs of places in the ledgers of two drafts: from the old to the new and back; what has no partner is missing."""

    new_of: dict[int, int]
    old_of: dict[int, int]
    reworded: frozenset[int]  # rows of the old draft whose words are others in the new one


def plain_words(text: str) -> str:
    """Words in lower case with single blanks, for comparing what two drafts say."""
    return " ".join(expression(r"[^\p{L}\p{N}*+()\[\]-]+").sub(" ", text.casefold()).split())


def align(old: Report, new: Report) -> Alignment:
    """The rows of two drafts, paired part by part."""
    new_of: dict[int, int] = {}
    reworded = set()
    indexes = {id(report): _by_printed_row(report) for report in (old, new)}
    for part, other in _parts(old.pattern.parts, new.pattern.parts):
        for row, partner, same in _rows(old, new, part, other):
            before, after = indexes[id(old)].get(id(row), {}), indexes[id(new)].get(id(partner), {})
            for key, index in before.items():
                if key in after:
                    new_of[index] = after[key]
                    if not same:
                        reworded.add(index)
    return Alignment(new_of, {other: index for index, other in new_of.items()}, frozenset(reworded))


def _by_printed_row(report: Report) -> dict[int, dict[int, int]]:
    """By printed row (its identity) and place in its range, the place in the ledger."""
    found: dict[int, dict[int, int]] = {}
    for index, row in enumerate(report.ledger.rows):
        own = found.setdefault(id(row.row), {})
        own[len(own)] = index
    return found


def _parts(old: tuple[Part, ...], new: tuple[Part, ...]) -> Iterator[tuple[Part, Part]]:
    """Parts of one name; those left over in order, where as many are left on both sides."""
    left = list(new)
    rest = []
    for part in old:
        same = next((other for other in left if plain_words(other.name) == plain_words(part.name)), None)
        if same is None:
            rest.append(part)
        else:
            left.remove(same)
            yield part, same
    if len(rest) == len(left):
        yield from zip(rest, left, strict=True)


def _rows(old: Report, new: Report, part: Part, other: Part) -> Iterator[tuple[Row, Row, bool]]:
    """Printed rows paired, and whether their words are the same."""
    ours, theirs = [_words(old, row) for row in part.rows], [_words(new, row) for row in other.rows]
    for kind, a, b, c, d in SequenceMatcher(None, ours, theirs, autojunk=False).get_opcodes():
        if kind == "equal":
            yield from ((part.rows[a + at], other.rows[c + at], True) for at in range(b - a))
        elif kind == "replace":
            by_label = {_label(row): row for row in other.rows[c:d]}
            for at, row in enumerate(part.rows[a:b]):
                partner = by_label.get(_label(row)) if _label(row) else None
                if partner is None and b - a == d - c:
                    partner = other.rows[c + at]
                if partner is not None:
                    yield row, partner, False


def _label(row: Row) -> str:
    return plain_words(row.label.words) if row.label is not None else ""


def _words(report: Report, row: Row) -> str:
    """A row's words without its label and without its printed count."""
    start = row.label.span.end if row.label is not None else row.span.start
    spans = [Span(start, row.span.end)]
    if row.stated is not None and row.stated.span.start >= start:
        spans = [Span(start, row.stated.span.start), Span(row.stated.span.end, row.span.end)]
    return plain_words(" ".join(report.source.slice(span) for span in spans))
