"""Stretches of a text that become other words, and where every other place of the text then stands."""

from __future__ import annotations

from bisect import bisect_left, bisect_right, insort
from collections.abc import Iterable
from dataclasses import dataclass, fields, is_dataclass, replace
from functools import cache, cached_property
from typing import Any

from lint.source import Span


@dataclass(frozen=True, slots=True)
class Swap:
    """One stretch and what stands there then; line ends in it are always kept."""

    span: Span
    new: str


@dataclass(frozen=True)
class Swaps:
    """Swaps that do not meet, in the order of the text."""

    all: tuple[Swap, ...]

    @classmethod
    def settled(cls, text: str, swaps: Iterable[Swap]) -> Swaps:
        """Of swaps that meet the first given is kept; those that change nothing are none."""
        kept: list[Swap] = []
        taken: list[Span] = []  # in the order of the text; as none meet, their ends are in order, too
        for swap in swaps:
            old = text[swap.span.start : swap.span.end]
            before = bisect_left(taken, swap.span.end, key=lambda span: span.start)
            if before and taken[before - 1].end > swap.span.start:
                continue
            insort(taken, swap.span)
            if old != swap.new:
                kept.append(Swap(swap.span, swap.new + "\n" * (old.count("\n") - swap.new.count("\n"))))
        return cls(tuple(sorted(kept, key=lambda swap: swap.span)))

    def applied(self, text: str) -> str:
        """The text with all of them made."""
        pieces, at = [], 0
        for swap in self.all:
            pieces += [text[at : swap.span.start], swap.new]
            at = swap.span.end
        return "".join([*pieces, text[at:]])

    def span(self, span: Span) -> Span:
        """Where a stretch of the old text stands in the new one; what is gone has no width."""
        start = self._offset(span.start, False)
        return Span(start, max(start, self._offset(span.end, True)))

    def moved(self, value: Any) -> Any:
        """Any frozen value of the tree with all its stretches where they stand now; what is the same stays the same."""
        known: dict[int, Any] = {}
        return self._moved(value, known)

    def _moved(self, value: Any, known: dict[int, Any]) -> Any:
        if isinstance(value, Span):
            return self.span(value)
        if isinstance(value, tuple):
            return tuple(self._moved(item, known) for item in value)
        if not is_dataclass(value):
            return value
        if id(value) not in known:
            parts = {name: self._moved(getattr(value, name), known) for name in _field_names(type(value))}
            known[id(value)] = replace(value, **parts)
        return known[id(value)]

    def _offset(self, offset: int, is_end: bool) -> int:
        """An offset in the new text; one inside a swap is at its near edge."""
        at = bisect_right(self.all, offset, key=lambda swap: swap.span.start)
        gone = self._gained[at - 1] if at else 0
        swap = self.all[at - 1] if at else None
        if swap is not None and is_end and offset == swap.span.start:  # the stretch ends where this one begins
            return offset + (self._gained[at - 2] if at > 1 else 0)
        if swap is None or offset >= swap.span.end:
            return offset + gone
        begin = swap.span.start + (self._gained[at - 2] if at > 1 else 0)
        return begin + (len(swap.new) if is_end else 0)

    @cached_property
    def _gained(self) -> tuple[int, ...]:
        """How many characters the text has gained behind each swap."""
        found, gained = [], 0
        for swap in self.all:
            gained += len(swap.new) - (swap.span.end - swap.span.start)
            found.append(gained)
        return tuple(found)


@cache
def _field_names(kind: type) -> tuple[str, ...]:
    return tuple(item.name for item in fields(kind) if item.init)
