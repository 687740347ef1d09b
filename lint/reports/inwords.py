"""Says a step in plain words: "1 sc in each of the next 5 stitches"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.growth import Grows, ShapedWhere
from lint.place import LimitKind, Place, Target, TargetKind, Which
from lint.source import Span
from lint.tree import (
    AlongEdge,
    Alongside,
    Chain,
    Confined,
    Covers,
    Evenly,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    MakeRing,
    OpenWork,
    Passage,
    Repeat,
    RowCall,
    Shaping,
    Skip,
    Step,
    TimesKind,
    Turn,
    Work,
)

_GIVEN = (Place(Span(0, 0), Which.SAME, (Target(TargetKind.PLACE),)),)  # the place of a group, for what is in it
_SORTS = {
    TargetKind.ANY_STITCH: "stitch",
    TargetKind.SPACE: "space",
    TargetKind.CHAIN: "chain",
    TargetKind.RING: "ring",
    TargetKind.ROW_END: "row end",
    TargetKind.CORNER: "corner",
    TargetKind.TURNING_CHAIN: "beginning or turning chain",
    TargetKind.MARKED: "marked place",
    TargetKind.PLACE: "place",
}


def renamed(step: Step, names: dict[str, str]) -> Step:
    """The step with every stitch under its name in the pattern's terms: sc is dc in UK terms."""
    changes: dict[str, object] = {}
    if isinstance(step, (Work, Evenly, OpenWork)):
        changes["stitch"] = names.get(step.stitch or "", step.stitch)
    if isinstance(step, (Work, Group, Join, JoinYarn, Skip)):
        changes["places"] = tuple(
            replace(place, targets=tuple(replace(t, name=names.get(t.name or "", t.name)) for t in place.targets))
            for place in step.places
        )
    if isinstance(step, (Group, Repeat, Passage, Alongside)):
        changes["items"] = tuple(renamed(item, names) for item in step.items)
    if isinstance(step, Chain) and step.counting is not None:
        changes["counting"] = replace(step.counting, stitch=names.get(step.counting.stitch or "", step.counting.stitch))
    return replace(step, **changes) if changes else step


def in_words(step: Step) -> str | None:
    """One step in plain words; None for words that are no work."""
    if isinstance(step, Work):
        return _work(step)
    if isinstance(step, Group):
        return f"{_all(tuple(_within(item) for item in step.items))}, all {_places(step.places)}"
    if isinstance(step, Repeat):
        return f"({_all(step.items)}) {_times(step)}"
    if isinstance(step, Passage):
        return f"once more: {_all(step.items)}"
    if isinstance(step, Chain) and step.length.lone == 0:
        return "no chain at the end of the last row"
    if isinstance(step, Chain):
        return f"{step.length} chain{'s' if step.length.lone != 1 else ''}{_counting(step)}"
    if isinstance(step, Skip) and step.to is not None:
        return "pass on to the place named"
    if isinstance(step, Skip):
        return (
            "leave the rest unworked" if step.rest else "skip " + " and ".join(_skipped(place) for place in step.places)
        )
    if isinstance(step, Confined):
        return f"on {'the first ' if step.first else 'these '}{step.number} stitches alone"
    if isinstance(step, Evenly):
        return f"{step.number} {step.stitch} spread evenly along an edge"
    if isinstance(step, Shaping) and step.where is ShapedWhere.EVERY:
        return f"1 increase, of every {step.number} stitches in the last"
    if isinstance(step, Shaping) and step.where is ShapedWhere.SKIPPED:
        return f"1 of every {step.number} stitches skipped"
    if isinstance(step, Shaping):
        verb = "gain" if step.increase else "lose"
        return f"{verb} {step.number} {'st' if step.number.lone == 1 else 'sts'} {step.where.value}"
    if isinstance(step, OpenWork) and step.plain:
        return f"1 {step.stitch or 'stitch'} in each stitch"
    if isinstance(step, OpenWork):
        return f"{step.words}: how many stitches or rows that is, the words do not say"
    if isinstance(step, AlongEdge) and step.row:
        return f"on the {step.loop or ''} loops of round {step.row} that are left free".replace("  ", " ")
    if isinstance(step, AlongEdge):
        return "work along an edge, whose places are not known"
    if isinstance(step, MakeRing):
        return f"a ring of {step.length} chains" if step.length else "a magic ring"
    return _move(step)


def _within(step: Step) -> Step:
    """A step of a group that goes into one place: its stitches have no places of their own."""
    if isinstance(step, Repeat):
        return replace(step, items=tuple(_within(item) for item in step.items))
    bare = isinstance(step, Work) and not step.places and step.stitch not in ("inc", "dec") and not step.together
    return replace(step, places=_GIVEN) if bare else step


def _move(step: Step) -> str | None:
    if isinstance(step, Join):
        return "join the round"
    if isinstance(step, JoinYarn):
        joined = "join" if step.places and step.colour is None and step.stitch is None else "join new yarn"
        return joined + (f" {_places(step.places)}" if step.places else "")
    if isinstance(step, Turn):
        return "turn" if step.turned else "do not turn"
    if isinstance(step, FastenOff):
        return "fasten off"
    if isinstance(step, RowCall):
        if step.own:
            return f"so many rows, each: {_all(step.own[-1])}" if step.rows is None else _rows_of(step)
        if step.as_before:
            return f"so many rows, each {'gaining' if step.as_before > 0 else 'losing'} as those before do"
        if step.first is None:
            several = f"{step.number} rows" if step.number.lone != 1 else "row"
            return f"work the last {several} again{_changed(step)}"
        rows = f"row {step.first}" if step.first == step.last else f"rows {step.first} to {step.last}"
        return f"work {rows} again{_changed(step)}"
    if isinstance(step, Alongside):
        return f"on the way, {_all(tuple(_within(item) for item in step.items))} {_places((replace(step.place, limit=None),))}"
    return None


def _changed(call: RowCall) -> str:
    """What the rows that are called have more or fewer of, or are worked in instead."""
    said = ""
    if call.swap is not None:
        said = f", with {call.swap.new} in the place of {call.swap.old or 'its stitch'}"
    grown = call.growth[0] if call.growth else None
    if grown is not None and grown.where is Grows.BETWEEN_SET:
        said += f", with {grown.number} between one shaping and the next"
    elif grown is not None:
        where = {Grows.BETWEEN: " between one shaping and the next", Grows.EACH_SIDE: " along each side"}.get(
            grown.where, ""
        )
        more = f"{abs(grown.number)} {'more' if grown.number > 0 else 'fewer'}"
        said += f", with {more}{where}{' each time' if grown.each else ''}"
    return said


def _rows_of(step: RowCall) -> str:
    return f"{step.rows} row{'s' if step.rows.lone != 1 else ''}: {_all(step.own[-1])}"


def _all(items: tuple[Step, ...]) -> str:
    return ", ".join(words for words in (in_words(item) for item in items) if words)


def _counting(step: Chain) -> str:
    if step.counting is None:
        return ""
    if not step.counting.counts:
        return " (not counted)"
    space = f" and a ch-{step.counting.space} space" if step.counting.space else ""
    return f" (counted as {step.counting.stitch or 'a stitch'}{space})"


def _work(step: Work) -> str:
    stitch = step.stitch
    if stitch == "inc":
        return f"{step.number} increase{_s(step.number)} (2 stitches in one){_tail(step)}"
    if stitch == "dec" or step.together:
        legs = step.together or 2
        name = "stitches" if stitch == "dec" else stitch
        return f"{step.number} time{_s(step.number)} {legs} {name} worked together{_tail(step)}"
    if stitch == "ftss":
        return f"{step.number} yarn over, kept as a loop"
    if step.places == _GIVEN:
        return f"{step.number} {stitch}"
    if not step.places and (step.number_said and step.number.lone != 1):
        return f"{step.number} {stitch}, one in each of the next {step.number} stitches (or all in one, as the counts tell)"
    return f"{step.number} {stitch}{_tail(step) or ' in the next stitch'}"


def _tail(step: Work) -> str:
    return f" {_places(step.places)}" if step.places else ""


def _s(number: Amount) -> str:
    return "" if number.lone == 1 else "s"


def _places(places: tuple[Place, ...]) -> str:
    return " and ".join(_place(place) for place in places)


_NTH = {1: "first", 2: "second", 3: "third", 4: "fourth", 5: "fifth", 6: "sixth"}


def _place(place: Place) -> str:
    sort = " or ".join(_sort(target) for target in place.targets)
    if place.between:
        gaps = "the gap" if place.number.lone == 1 else f"each of the next {place.number} gaps"
        return f"in {gaps} between {_plural(sort)}"
    if place.which is Which.FROM_HOOK:
        return "in chain number " + " and ".join(str(ordinal) for ordinal in place.ordinals) + " from the hook"
    if place.which is Which.EACH:
        return f"in each {f'{_NTH.get(place.every, place.every)} ' if place.every > 1 else ''}{sort}{_limit(place)}"
    if place.targets[0].kind in (TargetKind.RING, TargetKind.TURNING_CHAIN):
        return f"in the {sort}"
    if place.skipped:
        return f"in the skipped {sort}" if place.number.lone == 1 else f"in the {place.number} skipped {_plural(sort)}"
    if place.which is Which.NTH and len(place.ordinals) == 1 and place.of is None and not place.below:
        nth = f"{_NTH.get(place.ordinals[0], f'{place.ordinals[0]}th')}"
        after = f" of the next {place.number}" if place.number.lone != 1 else ""
        return f"in the {nth} {sort}{after}"
    word = {Which.SAME: "same ", Which.FIRST: "first ", Which.LAST: "last ", Which.NEXT: "next "}.get(place.which, "")
    if place.number.lone == 1:
        return f"in the {word}{sort}"
    return f"in each of the {word}{place.number} {_plural(sort)}"


def _skipped(place: Place) -> str:
    sort = _sort(place.targets[0])
    return f"{place.number} {sort if place.number.lone == 1 else _plural(sort)}"


def _plural(word: str) -> str:
    """Plain words take an s; stitch names are the same for many."""
    if word not in _SORTS.values() and word != "group" and not word.endswith("space"):
        return word
    return word + ("es" if word.endswith("ch") else "s")


def _sort(target: Target) -> str:
    if target.kind is TargetKind.SPACE and target.length is not None:
        return f"ch-{target.length} space"
    return _SORTS.get(target.kind) or target.name or "place"


def _limit(place: Place) -> str:
    limit = place.limit
    none_left = limit is not None and limit.kind is LimitKind.LAST and limit.number.lone == 0
    if limit is None or limit.kind is LimitKind.END or none_left:
        return " to the end"
    if limit.kind is LimitKind.HALF:
        return " up to the middle of the row"
    if limit.kind is LimitKind.SIDE:
        return " up to the last side"
    if limit.kind is LimitKind.SECTION:
        return " up to the end of this section"
    sort = _sort(limit.target) if limit.target is not None else "stitch"
    if limit.kind is LimitKind.LAST:
        return f" up to the last {limit.number} {sort if limit.number.lone == 1 else _plural(sort)}"
    if limit.short is not None and limit.target is not None and limit.target.kind is not TargetKind.MARKED:
        stitches = "stitch" if limit.short.lone == 1 else "stitches"
        return f" up to {limit.short} {stitches} before the next {sort}"
    return f" up to the next {sort}"


def _times(step: Repeat) -> str:
    times = step.times
    if step.covers is Covers.PERHAPS:
        return "once, or as often as fits (the row must tell)"
    if step.covers is Covers.RATHER_LAST and times.number is not None:
        return f"{times.number} times (the last of it alone, or all: the row must tell)"
    if times.kind is TimesKind.FILL or times.number is None:
        return "as often as fits"
    if times.kind is TimesKind.MORE:
        return f"and {times.number} times more"
    if times.kind is TimesKind.UNCLEAR:
        return f"{times.number} times (in all, or more: the counts must tell)"
    return "once" if times.number == ONE else f"{times.number} times"
