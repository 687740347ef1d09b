"""Reads "each corner" beside a run that ends at a corner.

In a repeat, "*dc in each dc to corner, 3 dc in each corner; rep from * around", it is one corner in each pass.  Told once, "3 dc in
each corner, dc in each dc along each side", the run goes on over all sides.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise, permutations

from lint.amount import ONE
from lint.lexeme import Lexeme
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.reading.words.stream import SIGNS
from lint.source import Span
from lint.tree import MAKES_STITCHES, Alongside, Group, Passage, Repeat, Step, Times, TimesKind, Unread, Work


def corners_in_turn(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps of a row, in whose repeats "each corner" beside a run that ends at a corner is the next one.

    All the corners at once would pass over the stitches that the run is to work; outside of repeats the run works them all.
    """
    steps = [_in_repeat(step, lexemes) if isinstance(step, (Repeat, Passage)) else step for step in steps]
    works = [at for at, step in enumerate(steps) if isinstance(step, (*MAKES_STITCHES, Alongside))]
    if len(works) < 2:
        return [_unknown_sides(step, lexemes) for step in steps]
    if (sides := _sides(steps[works[-2] : works[-1] + 1], lexemes)) is not None:
        return [*steps[: works[-2]], sides, *steps[works[-1] + 1 :]]
    for before, behind in pairwise(works[:-1]):  # work behind them: what of the sides is worked by then is not said
        if any(_at_all(one, other) for one, other in permutations((steps[before], steps[behind]))):
            steps[behind] = _unread(steps[behind].span, lexemes, "how far round that goes is not said")
    one, other = (steps[at] for at in works[-2:])
    for run, corners in ((one, other), (other, one)):
        if isinstance(run, Work) and (beside := _beside(corners)) is not None and _runs_up_to(run, beside.place):
            if _of_one_side(run.places[0], lexemes):
                why = "what the other sides have is not said"
                steps[works[-2 if run is one else -1]] = _unread(run.span, lexemes, why)
                break
            on = replace(run, places=(replace(run.places[0], limit=Limit(LimitKind.END)),))
            steps[works[-2]], steps[works[-1]] = on, beside
            break
    return [_unknown_sides(step, lexemes) for step in steps]


_ONE_SIDE = ("one", "first", "last", "second", "third", "other", "remaining", "this", "that", "next")


def _told(span: Span, lexemes: list[Lexeme]) -> list[Lexeme]:
    return [item for item in lexemes if span.start <= item.start < span.end]


def _unread(span: Span, lexemes: list[Lexeme], why: str) -> Unread:
    return Unread(span, " ".join(item.text for item in _told(span, lexemes)), why)


def _at_all(run: Step, corners: Step) -> bool:
    """Whether a run goes up to a corner, and what stands beside it into each corner at once."""
    beside = _beside(corners) if isinstance(corners, (Work, Group)) else None
    place = beside.place if beside is not None else None
    return place is not None and place.which is Which.EACH and _at_corners(place) and _runs_up_to(run, place)


def _of_one_side(place: Place, lexemes: list[Lexeme]) -> bool:
    """Whether a run is along one side, by name: "sc in each sc along one side", "across first side"."""
    told = _told(place.span, lexemes)
    behind = next((at for at, item in enumerate(told) if item.kind in ("across", "to", "word") and at > 1), len(told))
    kinds, words = [item.kind for item in told[behind:]], [item.lower for item in told[behind:]]
    if "corner" in kinds:
        return "first" in words or "last" in words  # "to first corner"; "to next corner" may be each in its turn
    some = any(word in _ONE_SIDE for word in words) or "number" in kinds
    return "side" in kinds and some and "each" not in kinds and "all" not in kinds


def _unknown_sides(step: Step, lexemes: list[Lexeme]) -> Step:
    """ "sc in each of 20 row ends along each side" by itself: how many sides there are is not known."""
    place = step.places[0] if isinstance(step, Work) and len(step.places) == 1 else None
    if place is None or place.which is not Which.ELSEWHERE or not place.each_of:
        return step
    behind = [item for item in lexemes if item.start >= place.span.start]
    end = next((at for at, item in enumerate(behind) if item.kind in SIGNS), len(behind))
    if not _each_side(behind[:end]):
        return step
    words = " ".join(item.text for item in behind[:end])
    return Unread(step.span, words, "how many sides there are is not said")


def _each_side(words: list[Lexeme]) -> bool:
    return any(one.kind == "each" and other.kind == "side" for one, other in pairwise(words))


def _sides(steps: list[Step], lexemes: list[Lexeme]) -> Repeat | None:
    """ "1 dc in each of the 3 dc of each side and 3 dc in each corner": a side and its corner, as often as there are sides."""
    side, corner = steps[0], steps[-1]
    if not isinstance(side, Work) or not isinstance(corner, (Work, Group)):
        return None
    if len(side.places) != 1 or len(corner.places) != 1:
        return None
    place, there = side.places[0], corner.places[0]
    told = [item for item in lexemes if place.span.start <= item.start < corner.span.start]
    if there is None or not (
        _each_side(told) and place.each_of and place.which is Which.ELSEWHERE and _at_corners(there)
    ):
        return None
    items = (
        replace(side, places=(replace(place, which=Which.NEXT, of=None, of_which=""),)),
        *steps[1:-1],
        replace(corner, places=(_next(there),)),
    )
    span = side.span.to(corner.span)
    return Repeat(span, items, Times(span, TimesKind.FILL, limit=Limit(LimitKind.END)))


def _corner(place: Place) -> bool:
    target = place.of or place.targets[0]
    return target.kind is TargetKind.CORNER or target.corner


def _at_corners(place: Place) -> bool:
    return place.which is Which.EACH and _corner(place)


def _beside(step: Step) -> Alongside | None:
    """A step that works into one sort of place, as one that is worked beside a run."""
    if isinstance(step, (Work, Group)) and len(step.places) == 1:
        items = step.items if isinstance(step, Group) else (replace(step, places=()),)
        return Alongside(step.span, items, step.places[0])
    return step if isinstance(step, Alongside) else None


def _in_repeat(step: Repeat | Passage, lexemes: list[Lexeme]) -> Repeat | Passage:
    items = list(step.items)
    around = isinstance(step, Repeat)  # the last of its items stands before the first
    for at, item in enumerate(items):
        if isinstance(item, (Repeat, Passage)):
            items[at] = _in_repeat(item, lexemes)
        elif isinstance(item, (Work, Group)) and len(item.places) == 1:
            beside = [items[at - 1]] if at or around else []
            beside += [items[(at + 1) % len(items)]] if at + 1 < len(items) or around else []
            place = item.places[0]
            if not any(_runs_up_to(other, place) for other in beside):
                continue
            if not place.each_of:
                items[at] = replace(item, places=(_next(place),))
            elif place.number != ONE and _corner(place):  # "in each of next 2 corners": and what stands between them?
                items[at] = _unread(item.span, lexemes, "what the side between these corners has is not said")
    return replace(step, items=tuple(items)) if tuple(items) != step.items else step


def _runs_up_to(step: Step, place: Place) -> bool:
    """Whether a step is a run that ends where such places stand."""
    limit = step.places[0].limit if isinstance(step, Work) and len(step.places) == 1 else None
    return (
        (place.which is Which.EACH or place.each_of)
        and place.limit is None
        and limit is not None
        and limit.kind is LimitKind.BEFORE
        and _ends_there(limit, place.of or place.targets[0])
    )


def _ends_there(limit: Limit, target: Target) -> bool:
    end = limit.target
    if end is None:
        return False
    corner = target.kind is TargetKind.CORNER or target.corner
    at_corner = end.kind is TargetKind.CORNER or end.corner
    return (
        corner
        and (at_corner or end.kind is TargetKind.SPACE)
        or (target.kind is TargetKind.SPACE and (at_corner or (end.kind, end.length) == (target.kind, target.length)))
    )


def _next(place: Place) -> Place:
    which = Which.NTH if place.ordinals else Which.NEXT
    return replace(place, which=which, of_which="next" if place.of is not None else "")
