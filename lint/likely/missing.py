"""Clauses that a row may lack by what its printed count, or the places that are left, ask for."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.amount import Amount
from lint.likely.clauses import Twin
from lint.pattern import Stated
from lint.place import Place, Target, TargetKind, Which
from lint.source import Span
from lint.tree import Chain, Repeat, Skip, Step, walk
from lint.working.trials import Trial

_CHAIN, _SKIP = 1.3, 1.5
_CHAIN_FIRST = regex.compile(r"(?i)\bch \d+(?![-\w])")
_SKIP_WORD = regex.compile(r"(?i)\b(sk|skip|miss)\b")
_MOST_SKIPPED = 5


def lacking(
    steps: tuple[Step, ...], read: Trial | None, stated: Stated | None, short: int, text: str
) -> Iterator[Twin]:
    """A chain for spaces that are printed and not made; a skip for places that every pass of a repeat leaves."""
    span = steps[0].span if steps else Span(0, 0)
    made = read.worked.made.spaces if read is not None else {}
    for item in stated.items if stated is not None else ():
        unit, _, length = item.unit.partition(":")
        if unit == "space" and length.isdigit() and made.get(int(length), 0) < (item.number.lone or 0):
            words = f"ch {length}" if _CHAIN_FIRST.search(text) else f"{length} ch"
            yield Twin(Chain(span, Amount.of(int(length))), words, _CHAIN)
    word = _SKIP_WORD.search(text)
    for step in walk(steps):
        passes = step.times.number.lone if isinstance(step, Repeat) and step.times.number is not None else None
        for passed in {passes, (passes or 0) + 1} if passes else ():
            if short > 0 and passed and short % passed == 0 and short // passed <= _MOST_SKIPPED:
                number = short // passed
                place = Place(span, Which.NEXT, (Target(TargetKind.ANY_STITCH),), number=Amount.of(number))
                said = f"{word[1].lower() if word else 'skip'} next {f'{number} sts' if number > 1 else 'st'}"
                yield Twin(Skip(span, (place,)), said, _SKIP + 0.02 * number)
