"""Rows called for: how many of them, which, and how often ("Rep last 2 rnds 6 times more")."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from lint.amount import Amount
from lint.likely.edits import Edit, spliced
from lint.likely.numbers import slip_cost
from lint.likely.numerals import numeral, often, with_value
from lint.source import Span
from lint.tree import RowCall, Step, TimesKind, walk

_CALLED = 0.1  # more than a number of a row's own words


def of_calls(steps: tuple[Step, ...], text: str, size: int, rows: int) -> Iterator[Edit]:
    """Another number in a call for rows; `rows`: how many the label names, which a number of times must fill."""
    for call in walk(steps):
        if not isinstance(call, RowCall) or call.part is not None:
            continue
        passes = _passes(call, size)
        if call.first is None:
            found = (call.number.at(size) or 0, _numeral(text, call, call.number, size))
            asked = {found[0] + off for off in (1, -1, 2, -2)} | ({rows // passes} if passes else set())
            yield from _turned(call, text, *found, asked, lambda n: replace(call, number=_with(call.number, size, n)))
        else:
            first, last = call.first, call.last
            one = last is None or last.at(size) == first.at(size)  # "same as Row 2"
            value = first.at(size) or 0
            asked = {value + off for off in (1, -1, 2, -2)}
            at = _numeral(text, call, first, size)

            def begins(number: int, first: Amount = first, one: bool = one, call: RowCall = call) -> RowCall:
                begin = _with(first, size, number)
                return replace(call, first=begin, last=begin if one and call.last is not None else call.last)

            yield from _turned(call, text, value, at, asked, begins)
            if not one:
                end = last.at(size) or 0
                start = at.end if at is not None else call.span.start
                at = numeral(text, Span(start, call.span.end), last, size, loose=True)
                asked = {end + off for off in (1, -1, 2, -2)}
                yield from _turned(call, text, end, at, asked, lambda n: replace(call, last=_with(last, size, n)))
        times = call.times
        if passes and times is not None and times.number is not None:
            cycle = _cycle(call, size)
            asked = {passes - 1, passes + 1} | ({rows // cycle} if cycle and rows % cycle == 0 else set())
            number = times.number
            at = numeral(text, times.span, number, size)
            for value in sorted(asked - {passes}):
                if value > 0:
                    other = replace(call, times=replace(times, number=_with(number, size, value)))
                    change = f"work these rows {often(value)} instead of {often(passes)}"
                    words = _often_in_words(text, at, value)
                    yield Edit(change, slip_cost(passes, value) + _CALLED, call, (other,), at, words)


def _turned(
    call: RowCall, text: str, value: int, at: Span | None, asked: set[int], turned: Callable[[int], RowCall]
) -> Iterator[Edit]:
    old = " ".join(text[call.span.start : call.span.end].split())
    for number in sorted(asked - {value}):
        if number > 0:
            words = str(number) if at is not None else None
            change = (
                f"“{spliced(text, call.span, at, words)}” instead of “{old}”"
                if at
                else f"{number} instead of {value} in “{old}”"
            )
            yield Edit(change, slip_cost(value, number) + _CALLED, call, (turned(number),), at, words)


def _often_in_words(text: str, at: Span | None, number: int) -> str | None:
    if at is None:
        return None
    return often(number) if text[at.start : at.end].lower() in ("once", "twice") else str(number)


def _numeral(text: str, call: RowCall, amount: Amount, size: int) -> Span | None:
    return numeral(text, call.span, amount, size, loose=True)


def _with(amount: Amount, size: int, number: int) -> Amount:
    return with_value(amount, size, number)


def _passes(call: RowCall, size: int) -> int | None:
    times = call.times
    if times is None or times.number is None or times.kind is TimesKind.FILL:
        return None
    return times.number.at(size)


def _cycle(call: RowCall, size: int) -> int:
    if call.first is None:
        return call.number.at(size) or 0
    last = call.last if call.last is not None else call.first
    return (last.at(size) or 0) - (call.first.at(size) or 0) + 1
