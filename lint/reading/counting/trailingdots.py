"""Dots behind the first clauses of a row that leave it to the reader how it goes on: "sc, inc … (18)"."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.pattern import Stated
from lint.place import Which
from lint.reading.counting.nocounts import definite, least_made
from lint.reading.words.stream import OPENERS
from lint.source import Span
from lint.tree import MAKES_STITCHES, Evenly, Group, OpenWork, Repeat, RowCall, Step, Unread, Work

_DOTS = ("…", "...", "..")
_WHY = "how it goes on is not said"


def left_to_the_reader(steps: list[Step], lexemes: list[Lexeme], stated: Stated | None) -> list[Step]:
    """The steps, with such dots before the row's count as words that are not understood.

    Behind work that has gone all the way, or that comes to the count, they only lead to it.
    """
    for at, dots in enumerate(lexemes[:-1]):
        if dots.text not in _DOTS or lexemes[at + 1].kind not in ("number", "join", "turn", *OPENERS):
            continue
        before = [step for step in steps if step.span.start < dots.start]
        behind = [step for step in steps if step.span.start > dots.start and isinstance(step, MAKES_STITCHES)]
        works = [step for step in before if isinstance(step, MAKES_STITCHES)]
        if stated is not None and all(map(definite, works)) and _comes_to(works, stated):
            return steps
        listed = all(isinstance(step, Work) and not step.places for step in works)
        if behind or len(works) < 2 or not listed or _goes_all_the_way(before[-1]):
            continue
        unread = Unread(Span(dots.start, dots.end), dots.text, _WHY)
        return [*before, unread, *steps[len(before) :]]
    return steps


def _comes_to(works: list[Step], stated: Stated) -> bool:
    """Whether so many stitches are made as the count tells."""
    figures = [item.number.lone for item in stated.items]
    return len(figures) == 1 and figures[0] == sum(map(least_made, works))


def _goes_all_the_way(step: Step) -> bool:
    """Whether nothing more of the row is left to be told behind a step."""
    if isinstance(step, (Work, Group)):
        return bool(step.places) and step.places[-1].which in (Which.EACH, Which.LAST)
    return isinstance(step, (Repeat, RowCall, Evenly, OpenWork)) or not isinstance(step, MAKES_STITCHES)
