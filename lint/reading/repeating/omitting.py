"""Takes stitches out of a repeat's last pass: "omitting last ch 2", "omitting last corner"."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import Which
from lint.reading.words.lists import alike, without_group
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import Chain, Group, Remark, Repeat, RowCall, Step, Work

_TO_LAST = ("at", "the", "in", "ending", "of", "last")  # "at the end of the last"


def omit(stream: Stream, steps: list[Step], start: int, read_inside: Callable[[Stream], list[Step]]) -> bool:
    """ "omitting last ch 2": the last pass of the repeat before loses its last items."""
    stream.take()
    if no_last_chain(stream, steps, start):
        return True
    stream.skip("the", "last")
    group = stream.matching(stream.at) if stream.kind() in OPENERS else None  # "omitting last (2 dc, ch 2, 2 dc)"
    end = group + 1 if group is not None else stream.next_of(",", ";", ".", "join", *CLOSERS)
    lexemes = stream.lexemes[stream.at : end]
    if lexemes and lexemes[-1].kind == "and":
        lexemes = lexemes[:-1]  # "omit last sl st and join instead"
    said = next((i for i, item in enumerate(lexemes) if i and item.kind in ("in", "of", "at")), len(lexemes))
    which = said if any(item.kind == "repeat" for item in lexemes[said:]) else len(lexemes)  # "on final repeat"
    omitted = stream.inside(stream.at, stream.at + which)
    for index in range(len(steps) - 1, -1, -1):
        step = steps[index]
        if isinstance(step, Repeat):
            kept = _to_last_group(step.items) if _of_group(omitted, step.items) else None
            kept = kept or (without_group if group else without)(step.items, read_inside(omitted))
            if kept is None:
                return False
            stream.at = end
            steps[index] = replace(step, span=step.span.to(stream.span_from(start)), last_pass=kept)
            return True
    return False


def no_last_chain(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "omitting the ch-4 at end of last row", "do not ch 1 on last row": the last of the rows called for ends without it."""
    at = stream.at
    stream.skip("the", "make")
    chained = stream.take_if("chain", "turning_chain") is not None
    stream.take_if("dash")
    stream.amount()
    if stream.word("on"):
        stream.take()
    told = stream.at
    stream.skip(*_TO_LAST)
    said = [item.kind for item in stream.lexemes[told : stream.at]]
    if said and stream.kind() in ("row", "round"):
        stream.take()
        behind = said[-1] == "last"
    else:
        stream.at = told
        before = [item.kind for item in stream.lexemes[max(0, start - 4) : start]]
        behind = before[-3:-1] in (["last", "row"], ["last", "round"])  # "At end of last row, do not ch 1"
    ends = stream.kind() in (",", ";", ".", "end", "and", *CLOSERS)
    if not (chained and behind and ends and any(isinstance(step, RowCall) for step in steps)):
        stream.at = at
        return False
    steps.append(Chain(stream.span_from(start), Amount.of(0)))
    return True


def _of_group(omitted: Stream, items: tuple[Step, ...]) -> bool:
    """Whether "corner", "last bracket", "last corner group", "last shell" name the group that a passage ends in."""
    named = [item for item in omitted.lexemes if not (item.kind == "group_word" or item.lower in ("group", "set"))]
    if not named:  # no more than "shell": sure where it is the last thing worked
        return isinstance(items[-1], Group)
    return len(named) == 1 and (named[0].kind == "corner" or named[0].lower in ("bracket", "brackets"))


def _to_last_group(items: tuple[Step, ...]) -> tuple[Step, ...] | None:
    """A passage up to its last group, which is its corner."""
    index = next((i for i in range(len(items) - 1, -1, -1) if isinstance(items[i], Group)), None)
    return items[:index] if index is not None else None


def _as_many(step: Step, named: Step) -> bool:
    """Whether "3 sc" names the last "sc in next 3 dc" of a passage."""
    if not isinstance(step, Work) or not isinstance(named, Work) or step.stitch != named.stitch or named.places:
        return False
    run = len(step.places) == 1 and step.places[0].which is Which.NEXT and step.number.lone == 1
    return run and step.places[0].number == named.number


def _one_fewer(step: Step, named: Step) -> Step | None:
    """ "sc in next 3 sts" less "the last sc": one in each of two; None where all of it is named."""
    alone = isinstance(named, Work) and isinstance(step, Work) and named.number == ONE and not named.number_said
    place = step.places[0] if alone and len(step.places) == 1 else None
    number = place.number.lone if place is not None and place.which is Which.NEXT and not place.shared else None
    if number is None or number < 2 or named.places or step.together or step.number != ONE:
        return None
    return replace(step, places=(replace(place, number=Amount.of(number - 1)),))


def _fewer_in_one(step: Step, named: Step) -> Step | None:
    """ "3 dc in next st" less "the last dc", "1 dc", "the last 2 dc": fewer in that one; None where all of them are named."""
    works = isinstance(step, Work) and isinstance(named, Work) and len(step.places) == 1
    if not works or step.stitch != named.stitch or named.places or step.together or named.together:
        return None
    left = (step.number.lone or 0) - (named.number.lone or 0)
    if step.places[0].number != ONE or step.between is not None or named.number.lone is None or left < 1:
        return None
    return replace(step, number=Amount.of(left))


def without(items: tuple[Step, ...], omitted: list[Step]) -> tuple[Step, ...] | None:
    """A passage less the last of each step named; None where one of them is not in it."""
    kept = list(items)
    for item in reversed([step for step in omitted if not isinstance(step, Remark)]):
        last = _fewer_in_one(kept[-1], item) if kept else None
        if last is not None:
            kept[-1] = last
            continue
        index = next((i for i in range(len(kept) - 1, -1, -1) if alike(kept[i], item) or _as_many(kept[i], item)), None)
        if index is None:
            return None
        fewer = _one_fewer(kept[index], item)
        if fewer is not None:
            kept[index] = fewer
            continue
        del kept[index]
    return tuple(kept) if tuple(kept) != items else None
