"""Clauses that a row may lack by what its printed count, or the places that are left, ask for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from lint.amount import Amount
from lint.expression import expression
from lint.likely.clauses import Twin
from lint.pattern import Stated
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.source import Span
from lint.tree import Chain, Group, Join, MakeRing, Repeat, Skip, Step, TimesKind, Work, walk
from lint.working.trials import Trial

_CHAIN, _SKIP, _STITCH, _PLAIN = 1.3, 1.5, 1.6, 1.7
_CHAIN_FIRST = expression(r"(?i)\bch \d+(?![-\w])")
_SKIP_WORD = expression(r"(?i)\b(sk|skip|miss)\b")
_MOST_SKIPPED = 5
_MOST_IN_ONE = 8  # stitches in one place: a shell


def lacking(
    steps: tuple[Step, ...], read: Trial | None, stated: Stated | None, short: int, names: Mapping[str, str], text: str
) -> Iterator[Twin]:
    """A chain for spaces that are printed and not made, a stitch for those of a kind; a skip for places that every pass of a
    repeat leaves; plain work where there is none.

    `names`: the stitches of the rows beside it, by their US names, as this pattern prints them.
    """
    span = steps[0].span if steps else Span(0, 0)
    made = read.worked.made.spaces if read is not None else {}
    for item in stated.items if stated is not None else ():
        unit, _, length = item.unit.partition(":")
        if unit == "space" and length.isdigit() and made.get(int(length), 0) < (item.number.lone or 0):
            words = f"ch {length}" if _CHAIN_FIRST.search(text) else f"{length} ch"
            yield Twin(Chain(span, Amount.of(int(length))), words, _CHAIN)
        lacks = (
            unit == "kind" and read is not None and read.worked.made.by_kind.get(length, 0) < (item.number.lone or 0)
        )
        for number in range(1, _MOST_IN_ONE) if lacks and length in names else ():
            place = Place(span, Which.NEXT, (Target(TargetKind.ANY_STITCH),))
            step = Work(span, length, Amount.of(number), (place,), number_said=number > 1)
            words = f"{f'{number} ' if number > 1 else ''}{names[length]} in next st"
            yield Twin(step, words, _STITCH + 0.02 * number)
    word = _SKIP_WORD.search(text)
    said = word[1].lower() if word else "skip"
    if any(isinstance(step, Repeat) and step.times.kind is TimesKind.FILL for step in steps) and _makes_too_many(read):
        for number in range(1, _MOST_SKIPPED):  # what runs to the end runs too often
            yield _skip(span, number, said)
    for step in walk(steps):
        passes = step.times.number.lone if isinstance(step, Repeat) and step.times.number is not None else None
        for passed in {passes, (passes or 0) + 1} if passes else ():
            if short > 0 and passed and short % passed == 0 and short // passed <= _MOST_SKIPPED:
                yield _skip(span, short // passed, said)


def _skip(span: Span, number: int, said: str) -> Twin:
    place = Place(span, Which.NEXT, (Target(TargetKind.ANY_STITCH),), number=Amount.of(number))
    words = f"{said} next {f'{number} sts' if number > 1 else 'st'}"
    return Twin(Skip(span, (place,)), words, _SKIP + 0.02 * number)


def _makes_too_many(read: Trial | None) -> bool:
    """Whether every figure that differs is smaller in print."""
    differences = read.comparison.differences if read is not None and read.comparison is not None else ()
    return bool(differences) and all(one.made > one.stated for one in differences)


def plain_work(
    steps: tuple[Step, ...], stated: Stated | None, names: Mapping[str, str], on_ring: bool
) -> Iterator[Twin]:
    """The only clause of a row that is left with none: the first round's stitches in its ring, or one into every stitch."""
    if any(isinstance(step, (Work, Group, Repeat)) and not _slips(step) for step in steps):
        return
    span = steps[-1].span if steps else Span(0, 0)
    total = next((item.number.lone for item in stated.items if not item.unit.startswith("space")), 0) if stated else 0
    ring = on_ring or any(isinstance(step, MakeRing) and step.length is None for step in steps)
    joined = any(isinstance(step, Join) or _slips(step) for step in steps)
    for stitch, name in names.items():
        if ring and total:
            place = Place(span, Which.NEXT, (Target(TargetKind.RING),))
            yield Twin(
                Work(span, stitch, Amount.of(total), (place,), number_said=True), f"{total} {name} in ring", _PLAIN
            )
        elif not ring:
            place = Place(span, Which.EACH, (Target(TargetKind.ANY_STITCH),), limit=Limit(LimitKind.END))
            words = f"{name} in each st {'around' if joined else 'across'}"
            yield Twin(Work(span, stitch, places=(place,)), words, _PLAIN)


def _slips(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch == "sl st"
