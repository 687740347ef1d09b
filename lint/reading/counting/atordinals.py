"""Spreads work that is told by the numbers of its stitches over the row: "2 sc in 6th and 12th st, sc in the rest"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.lexicon import Lexeme
from lint.place import Limit, LimitKind, Place, TargetKind, Which
from lint.reading.places.targets import ANY
from lint.tree import Chain, Loops, NoJoin, Remark, Skip, Step, Turn, Unread, UseYarn, Work

_STITCHES = (TargetKind.ANY_STITCH, TargetKind.STITCH)
_NO_PLACES = (Loops, Remark, Turn, NoJoin, UseYarn)
_REST = ("rest", "remaining", "others", "other", "rem")
_BETWEEN = "what is worked in the stitches before and between is not said"


def at_ordinals(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps in the order in which they are worked: into numbered stitches, and into all others between them.

    Shaping in a numbered stitch, with nothing said of the stitches before it, is Unread.
    """
    found: list[Step] = []
    at = 0
    while at < len(steps):
        end = at
        while end < len(steps) and _positions(steps[end]) is not None:
            end += 1
        works = [step for step in steps[at:end] if isinstance(step, Work)]
        if not works or not any(_jumps(step) for step in works):
            found += steps[at : max(end, at + 1)]
            at = max(end, at + 1)
            continue
        behind = steps[end] if end < len(steps) else None
        if _is_run(behind) and _says_rest(behind, lexemes):
            found += spread(works, behind, taken(found))
            at = end + 1
        elif found and _is_run(found[-1]):  # "sc around, 2 sc in 6th and 12th st"
            found[-1:] = spread(works, found[-1], taken(found[:-1]))
            at = end
        else:
            done = taken(found)
            if done is not None and _follows(works, done):  # "sc in first 4 sts, 2 sc in fifth st"
                found += [replace(_next(step, len(_positions(step) or ())), number=step.number) for step in works]
                at = end
                continue
            opens = not any(isinstance(step, Work) for step in found)
            found += [_unsaid(step) if opens and _shapes(step) and _jumps(step) else step for step in works]
            at = end
    return found


def numbered(steps: list[Step]) -> bool:
    """Whether all steps are work into numbered stitches."""
    return all(_positions(step) is not None for step in steps)


def first_ones(steps: list[Step]) -> bool:
    """Whether all steps are work into the first stitches of the row, one after the other: "2 sc in first st"."""
    return numbered(steps) and not any(map(_jumps, steps))


def taken(steps: list[Step]) -> int | None:
    """How many stitches of the row below the first steps of a row have come past; None where they do not say."""
    taken = 0
    for step in steps:
        if isinstance(step, (Work, Skip)) and step.places:
            places = [place for place in step.places if place.which in (Which.NEXT, Which.FIRST)]
            sure = len(places) == len(step.places) and all(place.targets[0].kind in _STITCHES for place in places)
            numbers = [place.number.lone for place in places]
            if not sure or None in numbers or any(place.of is not None or place.limit for place in places):
                return None
            taken += sum(numbers)
        elif isinstance(step, Work) and step.number.lone is not None and step.special is None and not step.together:
            taken += step.number.lone * (2 if step.stitch == "dec" else 1)
        elif not isinstance(step, (*_NO_PLACES, Chain)) or isinstance(step, Chain) and step.length != ONE:
            return None  # whether a longer chain stands on the first stitch, is not told here
    return taken


def spread(works: list[Work], run: Work, done: int | None = 0) -> list[Step]:
    """Work into numbered stitches, with one of the run's stitches in every other; Unread where the numbers do not go up.

    `done`: how many stitches the row has come past before; None where that is not known.
    """
    found: list[Step] = []
    for step in works:
        for group in _groups(step):
            if done is None or group[0] <= done or group != tuple(range(group[0], group[0] + len(group))):
                span = works[0].span.to(run.span)
                return [Unread(span, "in numbered stitches", "which stitches these are does not come out")]
            if group[0] > done + 1:
                found.append(_next(run, group[0] - done - 1))
            found.append(replace(_next(step, len(group)), number=step.number, number_said=step.number_said))
            done = group[-1]
    to_end = Limit(LimitKind.LAST, Amount.of(0), ANY)  # "to the last 0": after the last stitch of all, none may be left
    return [*found, replace(run, places=(replace(run.places[0], which=Which.EACH, limit=to_end),))]


def _follows(works: list[Work], done: int) -> bool:
    """Whether the numbered stitches are just those that come next, where so many of the row have been worked."""
    plain = all(step.together is None and step.stitch != "dec" for step in works)
    numbers = [number for step in works for number in _positions(step) or ()]
    return plain and done > 0 and numbers == list(range(done + 1, done + 1 + len(numbers)))


def _groups(step: Work) -> list[tuple[int, ...]]:
    """The numbers of the stitches that each piece of the work takes: two for a decrease."""
    numbers = _positions(step) or ()
    wide = step.together or (2 if step.stitch == "dec" else 1)
    if wide == 1:
        return [(number,) for number in numbers]
    return (
        [tuple(numbers[at : at + wide]) for at in range(0, len(numbers), wide)] if len(numbers) % wide == 0 else [(0,)]
    )


def _next(step: Work, number: int) -> Work:
    shared = step.together is not None or step.stitch == "dec"
    place = Place(step.span, Which.NEXT, (ANY,), Amount.of(number), each_of=number > 1 and not shared, shared=shared)
    return replace(step, places=(place,))


def _positions(step: Step) -> tuple[int, ...] | None:
    """The numbers of the stitches that a clause goes into, counted from the row's start; None for any other clause."""
    if not isinstance(step, Work) or not step.places or step.special is not None:
        return None
    numbers: list[int] = []
    for place in step.places:
        plain = place.of is None and place.number == ONE and not place.middle and not place.below and not place.row
        if not plain or place.from_words or any(target.kind not in _STITCHES for target in place.targets):
            return None
        if place.which is Which.FIRST:
            numbers.append(1)
        elif place.which is Which.NTH and place.ordinals:
            numbers += place.ordinals
        else:
            return None
    return tuple(numbers)


def _jumps(step: Work) -> bool:
    """Whether stitches lie before the first of the numbered ones, or between them."""
    numbers = _positions(step) or (1,)
    return numbers != tuple(range(1, len(numbers) + 1))


def _shapes(step: Work) -> bool:
    several = len(_positions(step) or ()) > 1 and step.number != ONE  # "2 sc in 6th and 12th st"
    return step.stitch in ("inc", "dec") or step.together is not None or several


def _is_run(step: Step | None) -> bool:
    """Whether a clause is one stitch in each to the row's end."""
    run = step.places[0] if isinstance(step, Work) and len(step.places) == 1 else None
    if (
        run is None
        or run.which is not Which.EACH
        or step.number != ONE
        or step.stitch in ("inc", "dec")
        or step.together
    ):
        return False
    return (
        (run.limit is None or run.limit.kind is LimitKind.END) and run.targets[0].kind in _STITCHES and run.every == 1
    )


def _says_rest(step: Step, lexemes: list[Lexeme]) -> bool:
    return any(
        item.kind == "remaining" or any(word in _REST for word in item.lower.split())
        for item in lexemes
        if step.span.start <= item.start < step.span.end
    )


def _unsaid(step: Work) -> Unread:
    return Unread(step.span, _BETWEEN, _BETWEEN)
