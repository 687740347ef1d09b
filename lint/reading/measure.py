"""What a clause uses and makes, by its words alone: numbers where they fix it, else None.

This is for showing how a clause was read.  Patterns are never counted this way: they are worked on the fabric.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

from lint.amount import Amount
from lint.tree import (
    Alongside,
    Chain,
    Either,
    Evenly,
    Group,
    Join,
    MakeRing,
    Passage,
    Place,
    Repeat,
    Skip,
    Step,
    TargetKind,
    TimesKind,
    Which,
    Work,
)


@dataclass
class Measure:
    """Places used, stitches made, spaces made by their length; None where the words leave it open."""

    uses: int | None = 0
    makes: int | None = 0
    spaces: Counter = field(default_factory=Counter)
    workings: list[str] = field(default_factory=list)

    def add(self, other: Measure, times: int = 1) -> None:
        self.uses = None if self.uses is None or other.uses is None else self.uses + times * other.uses
        self.makes = None if self.makes is None or other.makes is None else self.makes + times * other.makes
        for length, number in other.spaces.items():
            self.spaces[length] += number * times


def measure(steps: tuple[Step, ...]) -> Measure:
    """The measure of a run of steps."""
    total = Measure()
    for index, step in enumerate(steps):
        one = _of(step, steps, index)
        if one is not None:
            total.add(one)
            if isinstance(step, (Work, Group, Repeat, Passage, Skip, Evenly)) and len(steps) > 1:
                uses = "?" if one.uses is None else one.uses
                makes = "?" if one.makes is None else one.makes
                total.workings.append(f"{_name(step)}: uses {uses}, makes {makes}")
    return total


def _name(step: Step) -> str:
    if isinstance(step, Work):
        return step.stitch
    return {
        Group: "group into one place",
        Repeat: "repeat",
        Passage: "passage once more",
        Skip: "skip",
        Evenly: "evenly",
    }.get(type(step), "step")


def _number(amount: Amount) -> int:
    return amount.values[0] or 0


def _of(step: Step, steps: tuple[Step, ...], index: int) -> Measure | None:
    if isinstance(step, Work):
        return _work(step)
    if isinstance(step, Group):
        return _group(step)
    if isinstance(step, Chain):
        return _chain(step, steps, index)
    if isinstance(step, Repeat):
        return _repeat(step)
    if isinstance(step, Passage):
        return measure(step.items)
    if isinstance(step, Skip):
        return Measure(
            None
            if step.rest
            else sum(
                _number(place.number) for place in step.places if place.targets[0].kind is not TargetKind.TURNING_CHAIN
            ),
            0,
        )
    if isinstance(step, Evenly):
        return Measure(None, _number(step.number))
    if isinstance(step, (Join, MakeRing)):
        return Measure(0, 0)
    if isinstance(step, Either):
        return measure(step.options[0])
    if isinstance(step, Alongside):
        return Measure(None, None)
    return None


def _chain(step: Chain, steps: tuple[Step, ...], index: int) -> Measure:
    length = _number(step.length)
    if step.counting is not None:
        made = Measure(0, 1 if step.counting.counts else 0)
        if step.counting.counts and step.counting.space:
            made.spaces[step.counting.space] += 1
        return made
    before = any(isinstance(other, (Work, Group, Repeat)) for other in steps[:index])
    after = any(isinstance(other, (Work, Group, Repeat, Skip)) for other in steps[index + 1 :])
    made = Measure(0, 0)
    if before or (after and not isinstance(steps[0], Chain)):
        made.spaces[length] += 1
    return made


def _places(places: tuple[Place, ...], together: int) -> int | None:
    """How many places are used; None for "each … across"."""
    total = 0
    for place in places:
        if place.which is Which.EACH:
            return None
        if place.which is Which.FROM_HOOK:
            total += len(place.ordinals) if len(place.ordinals) > 1 else place.ordinals[0]
        elif place.which is Which.SAME or place.which is Which.JUST_MADE or place.targets[0].kind is TargetKind.RING:
            continue
        elif place.ordinals and place.of is None:
            total += place.ordinals[0]
        else:
            total += _number(place.number)
    return total


def _work(step: Work) -> Measure:
    number = _number(step.number)
    together = step.together or (2 if step.stitch == "dec" else 0)
    if step.stitch == "sl st":
        return Measure(_places(step.places, 0) if step.places else 1, 0)
    if step.stitch == "picot":
        return Measure(0, 0)
    per = 2 if step.stitch == "inc" else 1
    if not step.places:
        if together:
            return Measure(number * together, number)
        if step.stitch == "inc":
            return Measure(number, 2 * number)
        return Measure(number, number)
    used = _places(step.places, together)
    if used is None:
        return Measure(None, None)
    if together:
        single = len(step.places) == 1 and not step.places[0].shared and used == 1
        if single or any(place.targets[0].kind is TargetKind.SPACE and used == 1 for place in step.places):
            return Measure(used, number)
        return Measure(used, max(1, used // together))
    if any(place.shared and _number(place.number) > 1 for place in step.places):
        return Measure(used, number)
    made = 0
    for place in step.places:
        places = len(place.ordinals) if place.which is Which.FROM_HOOK else _number(place.number)
        if step.stitch == "inc":
            made += per * places
        elif place.which in (Which.FROM_HOOK, Which.SAME) or place.each_of or number == 1 or places == 1:
            made += number * places
        else:
            made += places if number == places else number * places
    return Measure(used, made)


def _group(step: Group) -> Measure:
    inner = measure(step.items)
    used = _places(step.places, 0)
    spaces = Counter()
    for item in step.items:
        if isinstance(item, Chain):
            spaces[_number(item.length)] += 1
        elif isinstance(item, Repeat):
            inner_spaces = _inside(item)
            for length, number in inner_spaces.items():
                spaces[length] += number
    if used is None:
        return Measure(None, None)
    places = sum(_number(place.number) for place in step.places)
    made = Measure(used, None if inner.makes is None else inner.makes * places)
    for length, number in spaces.items():
        made.spaces[length] += number * places
    if any(place.targets[0].kind is TargetKind.RING for place in step.places):
        made.uses = 0
    return made


def _inside(step: Repeat) -> Counter:
    spaces: Counter = Counter()
    times = _passes(step) or 1
    for item in step.items:
        if isinstance(item, Chain):
            spaces[_number(item.length)] += times
    return spaces


def _passes(step: Repeat) -> int | None:
    if step.times.kind is TimesKind.FILL or step.times.number is None:
        return None
    number = _number(step.times.number)
    return number + 1 if step.times.kind is TimesKind.MORE else number


def _repeat(step: Repeat) -> Measure:
    inner = Measure()
    for index, item in enumerate(step.items):
        one = _of(item, step.items, index) if not isinstance(item, Chain) else _inner_chain(item)
        if one is not None:
            inner.add(one)
    passes = _passes(step)
    if passes is None:
        return Measure(None, None)
    total = Measure()
    total.add(inner, passes)
    return total


def _inner_chain(step: Chain) -> Measure:
    made = Measure(0, 0)
    made.spaces[_number(step.length)] += 1
    return made
