"""What the words of a row say to the maker of one size: one number for every list, and no clause of other sizes.

Everything behind this works a pattern in one size.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache

from lint.amount import Amount
from lint.pattern import Pattern, Row
from lint.place import Limit, LimitKind, Place
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    Evenly,
    Group,
    MakeRing,
    Passage,
    Repeat,
    RowCall,
    Shaping,
    Skip,
    Special,
    Step,
    TimesKind,
    Work,
    walk,
)
from lint.working.apartrows import spaced


def for_size(steps: tuple[Step, ...], size: int) -> tuple[Step, ...]:
    """The steps that one size works, with its own numbers; a dash or a nought takes a clause away."""
    return tuple(map(spaced, _read_by(size, steps)))


def works(row: Row, size: int) -> bool:
    """Whether a size works a row: not with a dash for its number or count, nor where all its words fall away."""
    if row.sizes is not None and size not in row.sizes:
        return False
    if row.label is not None and not row.label.worked(size):
        return False
    stated = row.stated
    if stated is not None and stated.items and all(item.number.at(size) is None for item in stated.items):
        return False
    worked = any(isinstance(step, MAKES_STITCHES) for step in walk(row.steps))
    return not worked or any(isinstance(step, (*MAKES_STITCHES, RowCall)) for step in walk(for_size(row.steps, size)))


def pattern_for(pattern: Pattern, size: int) -> Pattern:
    """The pattern as the maker of one size reads it: the rows that size works, with its own numbers, as of one size."""
    parts = []
    for part in pattern.parts:
        rows = tuple(_row_for(row, size) for row in part.rows if works(row, size))
        parts.append(replace(part, rows=rows))
    return replace(pattern, parts=tuple(parts), sizes=())


def fallen(steps: tuple[Step, ...], size: int) -> Iterator[Step]:
    """The clauses that one size does not work, the outermost ones: "dec 0 (1, 2) times"."""
    for step in steps:
        read = _read_by(size, step)
        if read is step:
            continue
        if _falls_away(read, step):
            yield step
        else:
            yield from fallen(getattr(step, "items", ()), size)


def sized_amounts(row: Row) -> set[tuple[int | None, ...]]:
    """The figures of every list over the sizes that stands in a row."""
    return set(_lists_in((row.steps, row.stated)))


def _lists_in(value) -> Iterator[tuple[int | None, ...]]:
    if isinstance(value, Amount):
        if len(value.values) > 1:
            yield value.values
    elif isinstance(value, tuple):
        for item in value:
            yield from _lists_in(item)
    else:
        for name in _part_names(type(value)):
            yield from _lists_in(getattr(value, name))


def _row_for(row: Row, size: int) -> Row:
    label = row.label
    if label is not None and (label.by_size or label.rows is not None):
        rows = _read_by(size, label.rows) if label.rows is not None else None
        label = replace(label, numbers=label.at(size), by_size=(), rows=rows)
    return replace(row, label=label, steps=for_size(row.steps, size), stated=_read_by(size, row.stated), sizes=None)


_WHOLE = frozenset((str, int, bool, Span))  # what most fields hold, and no size reads in its own way


def _read_by(size: int, value):
    """Any part of the tree as one size reads it; in a tuple, what this size does not work is left out."""
    if isinstance(value, Amount):
        return value if len(value.values) == 1 else Amount((value.at(size),))
    if isinstance(value, tuple):
        read = [_read_by(size, item) for item in value]
        if all(new is old for new, old in zip(read, value, strict=True)):
            return value
        return tuple(new for new, old in zip(read, value, strict=True) if new is old or not _falls_away(new, old))
    changed = {}
    for name in _part_names(type(value)):
        old = getattr(value, name)
        if old is not None and type(old) not in _WHOLE and (new := _read_by(size, old)) is not old:
            changed[name] = new
    if not changed:
        return value
    if isinstance(value, Limit) and value.kind is LimitKind.LAST and not changed.get("number", value.number).lone:
        return Limit(LimitKind.END, Amount.of(0))  # "to last 0 (1, 2) sts"
    return replace(value, **changed)


def _falls_away(part, printed) -> bool:
    """Whether nothing is left of a step, or of a place: none of it is for this size."""
    if isinstance(part, (Work, Group, Skip)) and printed.places and not part.places:
        return True
    if isinstance(part, (Place, Work)):
        return not part.number.lone
    if isinstance(part, Chain):
        return not part.length.lone
    if isinstance(part, MakeRing):
        return part.length is not None and not part.length.lone
    if isinstance(part, Evenly):
        return not part.number.lone
    if isinstance(part, Repeat):
        number = part.times.number
        more = part.times.kind is TimesKind.MORE and number is not None and number.lone is not None  # "0 more times"
        return not part.items or number is not None and not number.lone and not more
    if isinstance(part, (Group, Passage)):
        return not part.items
    return isinstance(part, Shaping) and part.number.lone is None


@cache
def _part_names(kind: type) -> tuple[str, ...]:
    """The fields of a part of the tree; none of what is no part, nor of a stitch's definition, which is every size's."""
    return tuple(item.name for item in fields(kind)) if is_dataclass(kind) and kind is not Special else ()
