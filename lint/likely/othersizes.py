"""An edit that was thought of in one size, as it changes the words of another: these have figures of their own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace

from lint.amount import Amount
from lint.likely.edits import Edit
from lint.likely.order import Swap
from lint.pattern import Pattern, Stated
from lint.tree import Step, walk


class _Apart(Exception):
    """The other size has other words at a place that changes."""


def in_other_size(edit: Edit | Swap, pattern: Pattern) -> Edit | Swap | None:
    """The edit for another size's pattern; None where it changes what that size does not read, or reads otherwise."""
    if isinstance(edit, Swap):
        return edit
    try:
        own = _own(edit.old, pattern)
        new = _merged(edit.old, edit.new, own) if isinstance(edit.old, Stated) else _items(edit.old, edit.new, own)
        also = tuple((_own(old, pattern), _items(old, more, _own(old, pattern))) for old, more in edit.also)
    except _Apart:
        return None
    return replace(edit, old=own, new=new, also=also)


def changes_a_list(edit: Edit | Swap, pattern: Pattern) -> bool:
    """Whether what changes is one figure of a list over the sizes; `pattern`: as written, for all sizes."""
    if isinstance(edit, Swap):
        return False
    pairs = [(edit.old, edit.new if isinstance(edit.old, Stated) else edit.new[:1])]
    pairs += [(old, new[:1]) for old, new in edit.also]
    for old, new in pairs:
        own = next((found for found in _there(old, pattern) if type(found) is type(old)), None)
        if own is None:
            continue
        if _listed(old, new, own) if isinstance(old, Stated) else _listed((old,), new, (own,)):
            return True
    return False


def _listed(old, new, own) -> bool:
    """Whether a figure differs between `old` and `new` for which the pattern as written has a list."""
    if old == new:
        return False
    if isinstance(old, Amount) and isinstance(own, Amount):
        return len(own.values) > 1
    if isinstance(old, tuple) and isinstance(new, tuple) and isinstance(own, tuple):
        same = len(old) == len(new) == len(own)
        return same and any(_listed(*three) for three in zip(old, new, own, strict=True))
    if is_dataclass(old) and type(new) is type(old) and type(own) is type(old):
        names = [field.name for field in fields(old)]
        return any(_listed(getattr(old, name), getattr(new, name), getattr(own, name)) for name in names)
    return False


def _items(old: Step, new: tuple[Step, ...], own: Step) -> tuple[Step, ...]:
    return _merged((old,), new, (own,))


def _own(old: Step | Stated, pattern: Pattern) -> Step | Stated:
    """What the other size reads at the same place of the text."""
    for found in _there(old, pattern):
        if type(found) is type(old):
            return found
    raise _Apart


def _there(old: Step | Stated, pattern: Pattern) -> Iterator[Step | Stated]:
    for part in pattern.parts:
        for row in part.rows:
            if isinstance(old, Stated):
                if row.stated is not None and row.stated.span == old.span:
                    yield row.stated
            elif row.span.start <= old.span.start < row.span.end:
                yield from (step for step in walk(row.steps) if step.span == old.span)


def _merged(old, new, own):
    """The other size's words with the same change made: what is new in `new`, and all else as the other size has it."""
    if old == new:
        return own
    if old == own:
        return new
    if isinstance(old, Amount) or type(old) is not type(own):
        raise _Apart  # the figure that changes is one of a list: another size has its own
    if isinstance(old, tuple) and isinstance(new, tuple):
        return _run(old, new, own)
    if is_dataclass(old) and type(new) is type(old):
        values = {field.name: [getattr(one, field.name) for one in (old, new, own)] for field in fields(old)}
        return type(old)(**{name: _merged(*three) for name, three in values.items()})
    raise _Apart


def _run(old: tuple, new: tuple, own: tuple) -> tuple:
    """Items of a run: those before and behind the change are the other size's."""
    if len(old) != len(own):
        raise _Apart
    if len(old) == len(new):
        return tuple(_merged(*three) for three in zip(old, new, own, strict=True))
    shortest = min(len(old), len(new))
    first = next((at for at in range(shortest) if old[at] != new[at]), shortest)
    last = next((at for at in range(shortest - first) if old[-1 - at] != new[-1 - at]), shortest - first)
    if old[first : len(old) - last] != own[first : len(old) - last]:
        raise _Apart
    return (*own[:first], *new[first : len(new) - last], *own[len(own) - last :])


__all__ = ["changes_a_list", "in_other_size"]
