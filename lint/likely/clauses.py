"""A clause too many or too few: one dropped that its twin still has, one that stands twice."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.likely.edits import Edit
from lint.source import Span
from lint.tree import Chain, Group, Repeat, Skip, Step, Work

_WORKING = (Work, Group, Chain, Skip)
_DOUBLED, _LEFT_OUT, _TWIN, _NEIGHBOURS = 1.0, 1.5, 1.4, 1.7
_COMMA_BEHIND = regex.compile(r",\s+")
_COMMA_BEFORE = regex.compile(r",\s+$")
_MOST_TWINS = 10


def too_many(steps: tuple[Step, ...], text: str) -> Iterator[Edit]:
    """Every clause left out; one that only says its neighbour again is the likeliest."""
    for siblings in _lists(steps):
        for index, step in enumerate(siblings):
            if not isinstance(step, _WORKING) or len(siblings) < 2:
                continue
            words = _words(step, text)
            neighbours = [_words(other, text).lower() for other in siblings[max(0, index - 1) : index + 2]]
            doubled = neighbours.count(words.lower()) > 1
            change = f"“{words}” once instead of twice" if doubled else f"leave out “{words}”"
            span = _with_comma(step.span, text)
            yield Edit(change, _DOUBLED if doubled else _LEFT_OUT, step, (), span, "" if span is not None else None)


def too_few(steps: tuple[Step, ...], beside: tuple[tuple[Step, ...], ...], text: str) -> Iterator[Edit]:
    """Every clause of the row, or of the rows beside it, put in once more at every place between two clauses."""
    twins: dict[str, tuple[Step, float]] = {}
    for cost, rows in ((_TWIN, (steps,)), (_NEIGHBOURS, beside)):
        for row in rows:
            for siblings in _lists(row):
                for step in siblings:
                    slips = isinstance(step, Work) and step.stitch == "sl st"
                    if isinstance(step, _WORKING) and not slips and not _beginning(step, row):
                        twins.setdefault(_words(step, text).lower(), (step, cost))
    for siblings in _lists(steps):
        for index, step in enumerate(siblings):
            if not isinstance(step, (*_WORKING, Repeat)):
                continue
            for words, (twin, cost) in list(twins.items())[:_MOST_TWINS]:
                if not isinstance(step, Repeat):
                    change = f"add “{words}” after “{_words(step, text)}”"
                    yield Edit(change, cost, step, (step, twin), Span(step.span.end, step.span.end), f", {words}")
                if index == 0 or isinstance(siblings[index - 1], Repeat):
                    first = text[step.span.start : step.span.start + 1]
                    before = Span(step.span.start, step.span.start + 1)
                    opens = isinstance(step, Repeat)
                    change = "add “{}” before {}".format(words, "the repeat" if opens else f"“{_words(step, text)}”")
                    shown = None if opens else f"{words}, {first.lower()}"
                    yield Edit(change, cost + 0.1, step, (twin, step), None if opens else before, shown)


def _lists(steps: tuple[Step, ...]) -> Iterator[tuple[Step, ...]]:
    """The row's own clauses, and those of every repeat and bracket in it."""
    yield steps
    for step in steps:
        if isinstance(step, (Repeat, Group)):
            yield from _lists(step.items)


def _beginning(step: Step, row: tuple[Step, ...]) -> bool:
    """Whether a chain opens its row."""
    first = next((other for other in row if isinstance(other, (Chain, Work, Group, Repeat))), None)
    return isinstance(step, Chain) and first is step


def _words(step: Step, text: str) -> str:
    return " ".join(text[step.span.start : step.span.end].split())


def _with_comma(span: Span, text: str) -> Span | None:
    """A clause with the comma that parts it from its neighbour; None where none does."""
    behind = _COMMA_BEHIND.match(text, span.end)
    if behind:
        return Span(span.start, behind.end())
    before = _COMMA_BEFORE.search(text, max(0, span.start - 4), span.start)
    return Span(before.start(), span.end) if before else None
