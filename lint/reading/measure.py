"""What a clause uses and makes, by its words alone: numbers where they fix it, else None.

This is for showing how a clause was read.  Patterns are never counted this way: they are worked on the fabric.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace

from lint.amount import Amount
from lint.growth import ShapedWhere
from lint.place import Place, TargetKind, Which
from lint.tree import (
    Alongside,
    Chain,
    Covers,
    Either,
    Evenly,
    Group,
    Join,
    JoinYarn,
    LastPlace,
    MakeRing,
    OpenWork,
    Passage,
    Repeat,
    RowCall,
    Shaping,
    Skip,
    Step,
    TimesKind,
    Work,
)

_STITCHES = (TargetKind.ANY_STITCH, TargetKind.STITCH)


@dataclass
class Measure:
    """Places used, stitches made, spaces made by their length; None where the words leave it open."""

    uses: int | None = 0
    makes: int | None = 0
    spaces: Counter = field(default_factory=Counter)
    clauses: list[tuple[Step, int | None, int | None]] = field(default_factory=list)  # what each uses and makes
    open: list[tuple[int, int]] = field(default_factory=list)  # runs "to the end": (uses, makes) a pass

    def add(self, other: Measure, times: int = 1) -> None:
        self._fixed_uses += times * (other.uses or 0)
        self._fixed_makes += times * (other.makes or 0)
        self.uses = None if self.uses is None or other.uses is None else self.uses + times * other.uses
        self.makes = None if self.makes is None or other.makes is None else self.makes + times * other.makes
        for length, number in other.spaces.items():
            self.spaces[length] += number * times
        self.open += other.open * times

    def settle(self, printed: int) -> None:
        """With one run to the end, the printed count tells how often it is worked."""
        if self.whole_row:
            self.uses = self.makes = printed
        if self.makes is None and len(self.open) == 1 and self.open[0][1]:
            uses, makes = self.open[0]
            fixed_uses, fixed_makes = self.fixed
            passes, rest = divmod(printed - fixed_makes, makes)
            if passes >= 0 and not rest:
                self.uses, self.makes = fixed_uses + passes * uses, printed

    @property
    def fixed(self) -> tuple[int, int]:
        """What the rest of the row uses and makes."""
        return self._fixed_uses, self._fixed_makes

    whole_row: bool = False  # "SC (24)": one stitch named for all the row

    _fixed_uses: int = 0
    _fixed_makes: int = 0


def measure(steps: tuple[Step, ...], heights: dict[str, int] | None = None) -> Measure:
    """The measure of a run of steps; `heights` (chains by stitch) tells which beginning chains count if unsaid."""
    total = Measure()
    placed = False
    if len(steps) == 1 and isinstance(steps[0], LastPlace):
        return Measure(1, 1)  # "working last st in top of tch"
    if (block := _block(steps)) is not None:
        return block
    for index, step in enumerate(steps):
        one = _of(step, steps, index)
        places = step.places if isinstance(step, (Work, Group)) else ()
        if one is not None and places and places[0].which is Which.SAME and not placed and one.uses == 0:
            again = isinstance(step, Work) and step.closing is not None and step.closing.counts
            again = again or places[0].from_words == "again"
            if places[0].targets[0].kind is not TargetKind.SPACE and not again:
                one.uses = 1  # the first stitch of the row below, not used by anything before
        if one is not None and places and all(place.skipped for place in places):
            if any(isinstance(before, Skip) for before in steps[:index]):
                one.uses = 0  # passed over before, and counted as used then
        placed = placed or bool(places) or isinstance(step, Repeat)
        if isinstance(step, Chain) and index == 0 and heights and one is not None and step.counting is None:
            one.makes = _counts_unsaid(step, steps, heights)
        if isinstance(step, Shaping) and step.increase and index and isinstance(steps[index - 1], Work):
            if steps[index - 1].places and step.where is ShapedWhere.EACH_END:
                one = Measure(0, 2 * _number(step.number))  # what the run before gains
        if one is not None:
            total.add(one)
            plain = isinstance(step, Work) and not step.places and not step.number_said and not step.together
            plain = plain and step.stitch not in ("inc", "dec", "sl st") or isinstance(step, OpenWork) and step.plain
            total.whole_row = plain and _alone(step, steps)
            if isinstance(step, (Work, Group, Repeat, Passage, Skip, Evenly)) and len(steps) > 1:
                total.clauses.append((step, one.uses, one.makes))
    return total


def _block(steps: tuple[Step, ...]) -> Measure | None:
    """ "ch 6; dc in 4th ch from hook, dc in next 2 ch": a block on its own chain, whose skipped chains are its space."""
    if len(steps) != 3 or not isinstance(steps[0], Chain) or not all(isinstance(step, Work) for step in steps[1:]):
        return None
    first, rest = steps[1], steps[2]
    hooked = len(first.places) == len(rest.places) == 1 and first.places[0].which is Which.FROM_HOOK
    if not hooked or first.stitch != rest.stitch or rest.places[0].targets[0].kind is not TargetKind.CHAIN:
        return None
    skipped, run = first.places[0].ordinals[0] - 1, _number(rest.places[0].number)
    if first.number.lone != 1 or run != 2 or skipped < 2 or skipped + 1 + run != _number(steps[0].length):
        return None
    return Measure(0, 3, Counter({skipped: 1}))


def _alone(step: Step, steps: tuple[Step, ...]) -> bool:
    """Whether nothing else in the row works."""
    return not any(other is not step and isinstance(other, (Work, Group, Repeat, Skip, Passage)) for other in steps)


def _counts_unsaid(step: Chain, steps: tuple[Step, ...], heights: dict[str, int]) -> int:
    """1 where an unsaid beginning chain is as tall as the stitch after it, by the trade's habit."""
    first = next((s for s in steps[1:] if isinstance(s, (Work, Group, Repeat, Skip))), None)
    if not isinstance(first, Work) or not first.places or first.stitch == "sl st":
        return 0
    if first.places[0].which in (Which.FROM_HOOK, Which.EACH) or first.places[0].targets[0].kind is TargetKind.RING:
        return 0
    height = heights.get(first.stitch, 0)
    return int(height >= 2 and _number(step.length) == height)


def _shaping(step: Shaping) -> Measure:
    """A decrease by itself uses two places for one stitch, an increase one place for two."""
    if step.where in (ShapedWhere.EVERY, ShapedWhere.SKIPPED):
        return Measure(None, None)
    number = _number(step.number) * (2 if step.where is ShapedWhere.EACH_END else 1)
    return Measure(number, 2 * number) if step.increase else Measure(2 * number, number)


def _number(amount: Amount) -> int:
    return amount.values[0] or 0


def _of(step: Step, steps: tuple[Step, ...], index: int) -> Measure | None:
    if isinstance(step, Work):
        return _work(step)
    if isinstance(step, Group):
        return _group(step)
    if isinstance(step, Chain):
        return _chain(step, steps, index)
    if isinstance(step, Repeat) and step.covers is Covers.RATHER_LAST and step.times.number is not None:
        once, again = step.items[: -step.tail], step.items[-step.tail :]
        return measure((*once, replace(step, items=again, covers=Covers.ALL)))
    if isinstance(step, Repeat):
        return measure(step.items) if step.covers is Covers.PERHAPS else _repeat(step)
    if isinstance(step, Passage):
        return measure(step.items)
    if isinstance(step, Skip):
        passed = [place for place in step.places if place.targets[0].kind is not TargetKind.PLACE]
        return Measure(0 if step.rest else sum(_number(place.number) for place in passed), 0)
    if isinstance(step, Evenly):
        return Measure(None, _number(step.number))
    if isinstance(step, Shaping):
        return _shaping(step)
    if isinstance(step, OpenWork):
        over = _number(step.over) if step.over is not None else None
        return Measure(over, over)
    if isinstance(step, RowCall) and step.own:
        return measure(step.own[-1]) if len(step.own) == 1 and not step.lead else Measure(None, None)
    if isinstance(step, RowCall):
        return Measure(None, None)  # what the rows use and make that are called
    if isinstance(step, JoinYarn) and (step.stitch is not None or _stands_alone(step, steps, index)):
        return Measure(1, 1)  # a standing stitch
    if isinstance(step, (Join, MakeRing)):
        return Measure(0, 0)
    if isinstance(step, Either):
        return measure(step.options[0])
    if isinstance(step, Alongside):
        return Measure(None, None)
    return None


def _stands_alone(step: JoinYarn, steps: tuple[Step, ...], index: int) -> bool:
    """ "Join B in any st, ch 3,": a chain as high as a stitch, with nothing behind it that it could belong to."""
    stitch = bool(step.places) and step.places[0].targets[0].kind in _STITCHES
    chain = steps[index + 1] if len(steps) == index + 2 else None
    return stitch and isinstance(chain, Chain) and chain.counting is None and _number(chain.length) == 3


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
            if (
                place.targets[0].kind is TargetKind.CORNER
                or place.limit is None
                and place.targets[0].kind in (TargetKind.RING, TargetKind.ROW_END)
            ):
                total += 1
                continue
            if _number(place.number) > 1 and place.limit is None:
                total += _number(place.number)  # "in remaining 25 sts"
                continue
            return None
        if place.between or place.skipped and place.from_words == "round before":
            continue
        if place.targets[0].kind is TargetKind.TURNING_CHAIN:
            total += 1
            continue
        if place.of is not None and place.middle and place.of.length is not None:
            total += _number(place.of.length)
            continue
        if place.ordinals and place.of is None and _number(place.number) > 1 and place.which is not Which.FROM_HOOK:
            total += _number(place.number)  # "2nd of next 3 sc" passes all three
            continue
        if place.which is Which.FROM_HOOK:
            total += len(place.ordinals) if len(place.ordinals) > 1 else place.ordinals[0]
        elif place.which is Which.SAME or place.which is Which.JUST_MADE or place.targets[0].kind is TargetKind.RING:
            continue
        elif place.ordinals and place.of is None:
            total += 1
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
    if step.stitch.startswith("f") and step.stitch[1:] in ("sc", "hdc", "dc", "tr", "tss"):
        return Measure(0, number)  # a foundation stitch brings its own base
    per = 2 if step.stitch == "inc" else 1
    if not step.places:
        if together:
            return Measure(number * together, number)
        if step.stitch == "inc":
            return Measure(number, 2 * number)
        return Measure(number, number)
    used = _places(step.places, together)
    if used is None:
        run = Measure(None, None)
        if len(step.places) == 1:
            run.open = [(together, number)] if together else [(1, per * number if step.stitch == "inc" else number)]
        return run
    if together:
        single = len(step.places) == 1 and not step.places[0].shared and used == 1
        if single and step.stitch == "dec" and step.places[0].targets[0].kind in _STITCHES:
            return Measure(2 * number, number)  # "dec in next st" takes the one after it too
        if single or any(place.targets[0].kind is TargetKind.SPACE and used == 1 for place in step.places):
            return Measure(used, number)
        return Measure(used, max(1, used // together))
    if any(place.shared and _number(place.number) > 1 for place in step.places):
        return Measure(used, number)
    on_piece = step.places[0].which is Which.ELSEWHERE and step.places[0].targets[0].name == "piece"
    if on_piece and _number(step.places[0].number) == 1:
        return Measure(number, number)  # "18 sc on the first leg": one in each
    made = 0
    for place in step.places:
        places = len(place.ordinals) if place.which is Which.FROM_HOOK else _number(place.number)
        if step.stitch == "inc":
            made += per * places
        elif place.ordinals and place.of is None and place.which is Which.NTH:
            made += number  # "2nd of next 3 sc" is one place
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
        run = Measure(None, None)
        if inner.uses is not None and inner.makes is not None:
            run.open = [(inner.uses, inner.makes)]
        return run
    total = Measure()
    total.add(inner, passes)
    return total


def _inner_chain(step: Chain) -> Measure:
    made = Measure(0, 0)
    made.spaces[_number(step.length)] += 1
    return made
