"""Rows worked again that grow: the groups of a granny square's sides, and whether rows grow as their words say."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lint.amount import Amount
from lint.growth import Grows, Growth, ShapedWhere
from lint.pattern import Row, Stated, StatedItem
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.source import Span
from lint.tree import Chain, Group, Passage, Repeat, RowCall, Shaping, Skip, Step, Times, TimesKind, Unread, Work
from lint.working.betweenshapings import between_shapings
from lint.working.compare import measured
from lint.working.fabric import Made
from lint.working.swapped import swapped

_CORNER = Limit(LimitKind.BEFORE, target=Target(TargetKind.CORNER))


def growth_of(row: Row, steps: tuple[Step, ...] = ()) -> tuple[Growth, ...]:
    """What a row says of its growth, where it calls for another; `steps`: what it works.

    "Rep Rows 2 and 3, increasing 1 st at neck edge on every row" tells what these rows do, where they have the shaping.
    """
    call = next((step for step in row.steps if isinstance(step, RowCall) and (step.growth or step.shaped)), None)
    shaped = call.shaped if call is not None else None
    if shaped is None or any(isinstance(step, Shaping) for step in steps) or not steps:
        return call.growth if call is not None else ()
    number = (shaped.number.lone or 0) * (2 if shaped.where is ShapedWhere.EACH_END else 1)
    return (Growth(number if shaped.increase else -number, "stitches"),)


def grown_steps(steps: tuple[Step, ...], call: RowCall, index: int, rows: int, cycle: int = 1) -> tuple[Step, ...]:
    """The steps of a row that is called, the so-manyth of the rows of its call, with what they have more or are shaped by.

    `cycle`: how many rows are called for, over and over.

    "As Rnd 3, with one more group along each side": the groups between two corners, as often as there are spaces;
    "Rep Row 2, inc 1 st at each end": each of these rows with its run shaped; "…, working 1 more sc between incs".
    """
    if call.swap is not None:
        steps = swapped(steps, call.swap, call.span)
    if call.shaped is not None:
        return _with_shaping(steps, call.shaped)
    if not call.growth:
        return steps
    grown = call.growth[0]
    if grown.where in (Grows.BETWEEN, Grows.BETWEEN_SET):
        return between_shapings(steps, call, index // cycle, rows, cycle)
    if grown.where is Grows.EACH_SIDE:
        return _longer(steps)
    if grown.where is Grows.EACH_PART:
        return _in_parts(steps, call, grown.number * (index + 1))
    if grown.where in (Grows.PASSES_SET, Grows.PASSES_MORE):
        return _so_often(steps, call, grown, index)
    if not grown.unit.startswith("special:"):
        return steps  # so many stitches more: how often a passage is worked is not said
    return _other_times(steps, grown.number * (index + 1))


def _with_shaping(steps: tuple[Step, ...], shaped: Shaping) -> tuple[Step, ...]:
    """A plain row's steps with the shaping of its run; those of a row that has its own; Unread for any other."""
    works = [at for at, step in enumerate(steps) if isinstance(step, (Work, Repeat, Group, Skip))]
    run = steps[works[0]] if len(works) == 1 else None
    place = run.places[-1] if isinstance(run, Work) and len(run.places) == 1 else None
    to_end = place is not None and (place.limit is None or place.limit.kind is LimitKind.END)
    told = shaped.number.lone and shaped.where in (ShapedWhere.EACH_END, ShapedWhere.ONE_END)
    if len(works) > 1 and told:
        return steps  # it must grow as it is said to
    if place is None or place.which is not Which.EACH or not to_end:
        why = "how the row that is called is shaped so is not known here"
        return (Unread(shaped.span, why, why),)
    return (*steps[: works[0] + 1], shaped, *steps[works[0] + 1 :])


def _other_times(steps: tuple[Step, ...], more: int) -> tuple[Step, ...]:
    """The steps of a row whose one repeat is told by a number, with so many passes more or, below 0, fewer."""
    counted = [at for at, step in enumerate(steps) if isinstance(step, Repeat)]
    times = steps[counted[0]].times if len(counted) == 1 else None
    number = times.number.lone if times is not None and times.number is not None else None
    if times is None or number is None or times.kind not in (TimesKind.IN_ALL, TimesKind.MORE):
        return steps
    at, number = counted[0], number + more
    if number < 0 or not number and times.kind is TimesKind.IN_ALL:
        return (*steps[:at], *steps[at + 1 :]) if number == -(times.kind is TimesKind.MORE) else steps
    told = replace(steps[at], times=replace(times, number=Amount.of(number)))
    return (*steps[:at], told, *steps[at + 1 :])


def _in_parts(steps: tuple[Step, ...], call: RowCall, more: int) -> tuple[Step, ...]:
    """The steps with so many passes more, or below 0 fewer, of the one run in them that is told by a number.

    Where none is, the runs fit themselves to what lies below; of several, the words do not tell which.
    """
    runs = {run.span for run in _counted_runs(steps)}
    if not runs:
        return steps
    if len(runs) > 1:
        return (Unread(call.span, _WHICH_RUN, _WHICH_RUN),)
    return _in_run(steps, runs.pop(), more)


def _so_often(steps: tuple[Step, ...], call: RowCall, grown: Growth, index: int) -> tuple[Step, ...]:
    """The steps with the runs in them that are told by a number worked so often, or so much oftener in each row of the call;
    all of them were worked as often before."""
    runs = list(_counted_runs(steps))
    often = {(run.times.number.lone, run.times.kind) for run in runs}
    if len(often) != 1 or often.copy().pop()[1] is not TimesKind.IN_ALL:
        return (Unread(call.span, _WHICH_RUN, _WHICH_RUN),)
    for run in {run.span: run for run in runs}.values():
        set_to = grown.number - run.times.number.lone
        more = set_to if grown.where is Grows.PASSES_SET else grown.number * (index + 1)
        if run.times.number.lone + more < 0:
            return (Unread(call.span, _WHICH_RUN, _WHICH_RUN),)
        steps = _in_run(steps, run.span, more)
    return steps


_WHICH_RUN = "which of the runs of the row that is called has more or fewer is not known here"


def _counted_runs(steps: tuple[Step, ...]) -> Iterator[Repeat]:
    """The repeats within others, or by themselves, that are told by a number: the last pass has them, too."""
    for step in steps:
        inside = list(_counted_runs((*step.items, *(getattr(step, "last_pass", None) or ())))) if _holds(step) else []
        yield from inside
        if isinstance(step, Repeat) and not inside and step.times.number is not None:
            yield step


def _holds(step: Step) -> bool:
    return isinstance(step, (Repeat, Passage))


def _in_run(steps: tuple[Step, ...], run: Span, more: int) -> tuple[Step, ...]:
    found: list[Step] = []
    for step in steps:
        if step.span == run and isinstance(step, Repeat):
            found += _other_times((step,), more)
        elif isinstance(step, Repeat):
            last = _in_run(step.last_pass, run, more) if step.last_pass is not None else None
            found.append(replace(step, items=_in_run(step.items, run, more), last_pass=last))
        elif isinstance(step, Passage):
            found.append(replace(step, items=_in_run(step.items, run, more)))
        else:
            found.append(step)
    return tuple(found)


def grows(row: Row, steps: tuple[Step, ...], before: Made | None, made: Made) -> bool:
    """Whether a row has as many more than the one before it as its words say; those that say nothing are let be."""
    return all(_grows_by(one, before, made) for one in growth_of(row, steps))


def _grows_by(grown: Growth, before: Made | None, made: Made) -> bool:
    if grown.where in (Grows.BETWEEN, Grows.BETWEEN_SET, Grows.PASSES_SET, Grows.PASSES_MORE):
        return True
    there, now = (counted(grown.unit, one) for one in (before, made))
    if grown.where is Grows.EACH_PART:
        more = now - there if there is not None and now is not None else 0
        return more * grown.number > 0 and more % grown.number == 0
    sides = made.corners if grown.where is Grows.EACH_SIDE else 1
    return there is not None and now is not None and sides > 0 and now - there == grown.number * sides


def counted(unit: str, made: Made | None) -> int | None:
    """How many a row makes of what a printed count would count in this unit."""
    if made is None:
        return None
    item = StatedItem(Span(0, 0), Amount.of(0), unit, unit.partition(":")[2])
    alike = replace(made, parted=False)  # how many more there are of one sort, whatever stands beside
    return next(iter(measured(item, alike, Stated(item.span, (item,)))), None)


def _longer(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps with each run of "ch 1, 3 dc in next ch-1 sp" between corners as often as it fits."""
    found: list[Step] = []
    for step in steps:
        chain = found[-1] if found else None
        if isinstance(step, Repeat) and not _is_pair(step.items):
            step = replace(step, items=_longer(step.items))
        elif isinstance(step, Repeat):
            step = _as_often(step.items)
        elif chain is not None and _is_pair((chain, step)):
            found.pop()
            step = _as_often((chain, step))
            if found and isinstance(found[-1], Repeat) and _alike(found[-1].items, step.items):
                continue  # two such groups, one after the other
        found.append(step)
    return tuple(found)


def _as_often(pair: tuple[Step, ...]) -> Repeat:
    return Repeat(pair[0].span.to(pair[-1].span), pair, Times(pair[-1].span, TimesKind.FILL, limit=_CORNER))


def _is_pair(steps: tuple[Step, ...]) -> bool:
    return len(steps) == 2 and isinstance(steps[0], Chain) and _into_a_side_space(steps[1])


def _alike(one: tuple[Step, ...], other: tuple[Step, ...]) -> bool:
    pairs = _is_pair(one) and _is_pair(other) and one[0].length == other[0].length
    return pairs and (one[1].stitch, one[1].number) == (other[1].stitch, other[1].number)


def _into_a_side_space(step: Step) -> bool:
    """Whether so many stitches go into the next space, and that is no corner."""
    place: Place | None = step.places[0] if isinstance(step, (Work, Group)) and len(step.places) == 1 else None
    if place is None or place.which is not Which.NEXT or place.number != Amount.of(1):
        return False
    space = place.targets[0]
    return isinstance(step, Work) and space.kind is TargetKind.SPACE and not space.corner and space.length is not None
