"""Folds runs said side by side: "sc in each dc around, 3 sc in each ch-2 sp" is one way round, two sorts of place."""

from __future__ import annotations

from dataclasses import replace

from lint.place import LimitKind, Place, TargetKind, Which
from lint.reading.words.stream import Stream
from lint.source import Span
from lint.tree import Alongside, Group, Loops, OpenWork, Remark, Repeat, Skip, Step, Work

_PLAIN = (TargetKind.ANY_STITCH, TargetKind.STITCH)


def side_by_side(steps: list[Step]) -> list[Step]:
    """The steps, where a run to the end that follows a run to the end over other places is worked on the same way."""
    found: list[Step] = []
    base: int | None = None  # where in `found` the run stands that others may go beside
    steps = _sorts_by_name(steps)
    last = next((step for step in reversed(steps) if isinstance(step, (Work, Group, Repeat))), None)
    # "sc in each of 5 sc, sc in ch-1 sp, sc in each of 6 sc": some of a sort that comes twice, one after the other
    in_turn = sum(_of_all(step) and _plain(step.places[0]) for step in steps) > 1
    ordered = _come_again(steps)
    for step in steps:
        over = _run(found[base]) if base is not None and step is last else None
        crossed = over is not None and (over.limit is None or over.limit.target is None)  # no "along top edge"
        if crossed and _space_crossed(step):
            found.append(alongside(step))  # "sc in each st and 4 sc in the ch sp"
            continue
        if base is not None and not ordered and _beside(found[base], step):
            if isinstance(found[base], (Work, Group)) and _of_all(found[base]):
                place = replace(found[base].places[0], which=Which.EACH)
                found[base] = replace(found[base], places=(place,))
            if _of_corners(found[base]) and _plain(step.places[0]):  # "2 hdc in each corner and 1 in each other st"
                found[base], step = step, found[base]
            found.append(alongside(step))
            continue
        if not isinstance(step, (Alongside, Remark, Loops)):
            run = isinstance(step, (Work, Group)) and (_run(step) is not None or _of_all(step) and not in_turn)
            run = run and not (len(step.places) == 1 and _one_space(step.places[0]))
            base = len(found) if run else None
        found.append(step)
    return found


def _come_again(steps: list[Step]) -> bool:
    """ "sc in each sc, sc in each ch, sc in each sc": stitches and chains in the order in which they lie."""
    works = [step for step in steps if isinstance(step, (Work, Group)) and (_to_the_end(step) or _of_all(step))]
    runs = [step.places[-1] for step in works]
    sorts = [
        _plain(place)
        for place in runs
        if _plain(place) or place.targets[0].kind is TargetKind.CHAIN or _one_space(place)
    ]
    return len(sorts) > 2 and any(one == other != between for one, between, other in zip(sorts, sorts[1:], sorts[2:]))


def place_come_to(steps: list[Step]) -> list[Step]:
    """The steps, where "that sp" behind "to next sp" is the space come to."""
    found: list[Step] = []
    for step in steps:
        if isinstance(step, Repeat):
            step = replace(step, items=tuple(place_come_to(list(step.items))))
        before = found[-1] if found else None
        limit = before.places[-1].limit if isinstance(before, Work) and before.places else None
        if limit is not None and limit.kind is LimitKind.BEFORE and isinstance(step, (Work, Group)) and step.places:
            if step.places[0].from_words == "that":
                step = replace(step, places=(replace(step.places[0], which=Which.NEXT), *step.places[1:]))
        if limit is not None and limit.kind is LimitKind.LAST and limit.number.lone == 1 and limit.target is not None:
            if isinstance(step, (Work, Group)) and step.places and step.places[0].from_words == "that":
                last = replace(step.places[0], which=Which.LAST, targets=(limit.target,), from_words="")
                step = replace(step, places=(last, *step.places[1:]))  # "sc in each st to last st, 2 sc in it"
        come_to = before.to if isinstance(before, Skip) else None
        if come_to is not None and isinstance(step, (Work, Group)) and step.places:
            next_chain = before.places and step.places[0].targets[0].kind is TargetKind.CHAIN
            if step.places[0].from_words == "that" or next_chain:  # "skip to next gap, 3 dc into it"
                step = replace(step, places=(come_to, *step.places[1:]))
        found.append(step)
    return found


def alongside(step: Work | Group, span=None) -> Alongside:
    """The step as something done where the run before passes its place."""
    items = (replace(step, places=()),) if isinstance(step, Work) else step.items
    return Alongside(span or step.span, items, step.places[-1])


def _run(step: Step) -> Place | None:
    """The place of a step that goes on to the row's end, None for any other."""
    places = step.places if isinstance(step, (Work, Group)) else ()
    place = places[-1] if places else None
    to_end = (
        place is not None and place.which is Which.EACH and (place.limit is None or place.limit.kind is LimitKind.END)
    )
    return place if to_end and not place.between else None


def _to_the_end(step: Work | Group) -> bool:
    """ "sc in each sc", to the row's end or to the last of it."""
    place = step.places[-1] if step.places else None
    last = place is not None and place.which is Which.EACH and place.limit is not None
    return _run(step) is not None or last and place.limit.kind is LimitKind.LAST


def _of_all(step: Step) -> bool:
    """ "3 sc in each of the 4 corner sps", "sc in each of the 12 dc": all places of a sort, by their number."""
    places = step.places if isinstance(step, (Work, Group)) else ()
    if len(places) == 1 and _one_space(places[0]):
        return True
    return len(places) == 1 and places[0].each_of and places[0].bare and places[0].which is Which.NEXT


def _sorts_by_name(steps: list[Step]) -> list[Step]:
    """The steps; in "sc in dc, dc in sc across" each clause goes into every stitch of its sort."""
    found = list(steps)
    for index, (step, later) in enumerate(zip(steps, steps[1:], strict=False)):
        if _named_sort(step) and _bare_run(later, step):
            for at, one in ((index, step), (index + 1, later)):
                found[at] = replace(one, places=(replace(one.places[0], which=Which.EACH, bare=False),))
    return found


def _named_sort(step: Step) -> bool:
    """ "sc in dc": a sort of stitch by its bare name, neither next nor first."""
    place = step.places[0] if isinstance(step, Work) and len(step.places) == 1 and not step.number_said else None
    bare = place is not None and place.bare and place.which is Which.NEXT and not place.each_of and place.of is None
    return bare and place.number.lone == 1 and all(target.kind is TargetKind.STITCH for target in place.targets)


def _bare_run(step: Step, first: Work) -> bool:
    """ "dc in sc across" behind "sc in dc": the other sort, by its bare name, to the row's end."""
    place = _run(step)
    named = place is not None and place.bare and all(target.kind is TargetKind.STITCH for target in place.targets)
    return named and set(place.targets).isdisjoint(first.places[0].targets)


def _one_space(place: Place) -> bool:
    """ "dc in each dc, 4 dc in ch-5 sp": the one space of its length, neither next nor same."""
    target = place.targets[0]
    bare = place.bare and place.which is Which.NEXT and place.number.lone == 1 and not place.each_of
    return bare and target.kind is TargetKind.SPACE and target.length is not None


def _space_crossed(step: Step) -> bool:
    """ "4 sc in the ch sp", the one of whatever length, behind a run over all stitches."""
    place = step.places[0] if isinstance(step, (Work, Group)) and len(step.places) == 1 else None
    bare = place is not None and place.bare and place.which is Which.NEXT and place.number.lone == 1
    one = bare and not (place.each_of or place.of or place.below or place.between or place.ordinals)
    target = place.targets[0] if one else None
    if target is not None and target.kind is TargetKind.CHAIN:  # several stitches: one goes into a turning chain
        return isinstance(step, Work) and (step.number.lone or 0) > 2
    corner = target is not None and target.kind is TargetKind.CORNER  # "sc in each dc around, 3 sc in corner"
    return target is not None and (corner or target.kind is TargetKind.SPACE and not target.corner)


def _but_last(step: Step) -> bool:
    """ "3 sc in each ch-2 sp except last"."""
    place = step.places[0] if isinstance(step, (Work, Group)) and len(step.places) == 1 else None
    short = place is not None and place.which is Which.EACH and place.limit is not None
    return short and place.limit.but and place.limit.target == place.targets[0] and not _plain(place)


def _beside(base: Step, step: Step) -> bool:
    one = _run(base) or (base.places[0] if _of_all(base) else None)
    other = _run(step) or (step.places[0] if _of_all(step) or _but_last(step) else None)
    if one is None or other is None or len(step.places) != 1:
        return False
    if isinstance(step, Work) and (step.stitch in ("sl st", "dec") or step.together):
        return False
    if _on_an_edge(one) != _on_an_edge(other):
        return False  # "sc in each st across, 2 sc in each row end": no row end is passed on the way across
    if other.of is not None or other.middle or other.targets[0].kind is TargetKind.CORNER:
        return True
    plain = _plain(one)
    if _plain(other) != plain:
        return True
    if one.each_of or other.each_of:
        return False
    any_stitch = any(target.kind is TargetKind.ANY_STITCH for target in other.targets)
    return not any_stitch and set(one.targets).isdisjoint(other.targets)


def _on_an_edge(place: Place) -> bool:
    """Whether a run is along another edge than the row below: row ends, the chain along the bottom."""
    along = place.limit.target if place.limit is not None else None
    chain = place.targets[0].kind is TargetKind.CHAIN and along is not None and along.name in ("bottom", "top")
    return place.targets[0].kind is TargetKind.ROW_END or chain


def _of_corners(step: Step) -> bool:
    place = _run(step)
    return place is not None and len(step.places) == 1 and place.targets[0].kind is TargetKind.CORNER


def _plain(place: Place) -> bool:
    return any(target.kind in _PLAIN for target in place.targets)


def begins_at(stream: Stream, steps: list[Step], found: tuple[Place, ...], span: Span) -> bool:
    """ "sc in each ch across, beginning with 2nd ch from hook": where the run that was told before begins."""
    if stream.kind() == "," and stream.kind(1) in (
        "stitch",
        "number",
        "special",
        "make",
        "(",
        "[",
    ):  # "…, start from second sc, sc in each ch"
        steps.append(
            OpenWork(span, " ".join(item.text for item in stream.lexemes if span.start <= item.start < span.end))
        )
        return True
    run = steps[-1]
    each = isinstance(run, Work) and [place.which for place in run.places] == [Which.EACH]
    worked = [step for step in steps if isinstance(step, (Work, Group, Repeat, Skip))]
    hooked = len(found) == 1 and found[0].which is Which.FROM_HOOK and len(found[0].ordinals) == 1
    if not each or len(worked) > 1 or not hooked or run.places[0].targets[0].kind is not TargetKind.CHAIN:
        return False
    steps[-1] = replace(run, places=(*found, *run.places), span=run.span.to(found[0].span))
    return True
