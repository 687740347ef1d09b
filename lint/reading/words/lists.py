"""Tells whether stitches in a row of words are a list that goes into one place."""

from __future__ import annotations

from lint.amount import Amount
from lint.place import Place, TargetKind, Which
from lint.reading.words.stream import CLOSERS, Stream
from lint.tree import Chain, Group, Loops, Remark, Skip, Step, UseYarn, Work


def in_each_by_size(number: int, places: Amount) -> bool:
    """ "2 sc in next 2 (3, 4) sts": what the other sizes can only take as two in each is that in the first, too."""
    return number > 1 and len(places.values) > 1 and set(places.values) != {number}


def bare(step: Step) -> bool:
    """Whether a step of a list says no place of its own."""
    if isinstance(step, Chain):
        return step.counting is None
    return isinstance(step, Work) and not step.places and step.stitch not in ("sl st", "inc", "dec")


def mirrored(items: list[Step]) -> bool:
    """Whether a list begins and ends with the same stitch, with something else between: all of it goes into one place."""
    first, last = items[0], items[-1]
    ends = isinstance(first, Work) and isinstance(last, Work) and first.stitch == last.stitch
    return ends and any(not isinstance(item, Work) or item.stitch != first.stitch for item in items)


def mirrored_behind_chain(items: list[Step]) -> bool:
    """Whether "ch 3, 2 dc, ch 2, 3 dc" is such a list, begun with the round's chain."""
    return len(items) > 3 and isinstance(items[0], Chain) and mirrored(items[1:])


def one_list(items: list[Step], place: Place) -> bool:
    """Whether the place after the last stitch of a list may be that of all the list.

    With chains between, of any place that is one; for spaces, also where other stitches stand between, and "each".
    """
    if place.shared:
        return True  # "all in next st"
    each = place.which is Which.EACH or place.each_of
    if not each and (place.number.lone or 2) != 1:
        return False
    space = place.targets[0].kind is TargetKind.SPACE
    if isinstance(items[-2], Chain):
        return not each or space or mirrored(items)
    if each:
        return space and len({item.stitch for item in items if isinstance(item, Work)}) > 1
    return space and mirrored(items)


def alike(step: Step, other: Step) -> bool:
    """Whether two steps are the same work, wherever it goes: how "ending with ch 4" names a part of a repeat."""
    if isinstance(step, Chain) and isinstance(other, Chain):
        return step.length == other.length
    if isinstance(step, Work) and isinstance(other, Work):
        same = step.stitch == other.stitch and step.together == other.together
        return same and (step.number == other.number or not other.number_said)
    return isinstance(step, Group) and isinstance(other, Group) and len(step.items) == len(other.items)


def without_group(items: tuple[Step, ...], omitted: list[Step]) -> tuple[Step, ...] | None:
    """A passage less its last group of these stitches: "omitting last (2 dc, ch 2, 2 dc)"."""
    named = [step for step in omitted if not isinstance(step, Remark)]
    named = list(named[0].items) if len(named) == 1 and isinstance(named[0], Group) else named
    for index in range(len(items) - 1, -1, -1):
        group = items[index].items if isinstance(items[index], Group) else ()
        if len(group) == len(named) and all(map(alike, group, named)):
            return (*items[:index], *items[index + 1 :])
    return None


def list_only(steps: list[Step]) -> bool:
    """Whether the row is a list of stitches so far, "1 sc, 1 dec": what a "repeat" at its end works over and over."""
    works = [step for step in steps if not isinstance(step, (Remark, Loops, UseYarn))]
    return len(works) > 1 and all(isinstance(step, (Work, Group, Skip)) for step in works)


def to_the_end(stream: Stream, ahead: int) -> bool:
    """Whether "the end", "end of the round" stands so far ahead."""
    ahead += stream.kind(ahead) == "the"
    return stream.kind(ahead) in ("ending", "row_end")


def count_alone(stream: Stream, ahead: int) -> bool:
    """Whether a bracket so far ahead only holds a count: "(18)", "[18 sc]"."""
    close = 3 if stream.kind(ahead + 2) in ("stitch", "any_stitch") else 2
    return stream.kind(ahead + 1) == "number" and stream.kind(ahead + close) in CLOSERS
