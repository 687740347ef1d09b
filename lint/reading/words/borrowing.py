"""Passages borrowed from another row: "sc in first st, then rep from * to end as Row 1", "rep from * of Row 2 across"."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.pattern import Part, Row
from lint.place import Place, Target, TargetKind, Which
from lint.reading.words.stream import Stream
from lint.tree import Alongside, Group, Passage, Repeat, Step, Times, Unread, Work, walk


@dataclass(frozen=True, slots=True)
class Borrowed(Unread):
    """A repeat whose mark stands in another row: not understood until that row is found."""

    sign: str = "*"
    how_often: Times | None = None
    to_sign: str | None = None
    number: int = 0
    kind: str | None = None  # row | round; None where a letter stands for either


def other_row(stream: Stream) -> tuple[int, str | None] | None:
    """Takes the "as Row 1", "as in Rnd 2", "of 3rd row" that names the row in which a repeat's mark stands."""
    start = stream.at
    stream.skip(",")
    if stream.kind() not in ("as", "of", "in", "from") and not stream.word("complete as", "work same as"):
        stream.at = start
        return None
    stream.take()
    stream.skip("for", "in", "on", "the", "same")
    while stream.word("given", "for", "in", "on"):
        stream.take()
    stream.skip("the")
    if stream.peek().lower == "r" and stream.kind(1) == "number" and stream.peek(1).glued:
        stream.take()
        return (stream.row_number().lone or 0), None
    ordinal = stream.kind() == "ordinal" and stream.kind(1) in ("row", "round")
    named = stream.kind() in ("row", "round") and stream.kind(1) == "number"
    if not ordinal and not named:
        stream.at = start
        return None
    kind = stream.take().kind if named else None
    number = stream.row_number()
    kind = kind or stream.take().kind
    if number is None or number.lone is None:
        stream.at = start
        return None
    return number.lone, kind


def with_borrowed(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    """The parts, in which a repeat marked in another row of its part is worked as that row has it."""
    found = []
    for part in parts:
        rows: list[Row] = []
        for row in part.rows:
            if any(isinstance(step, Borrowed) for step in row.steps):
                row = replace(row, steps=tuple(_found(step, rows) for step in row.steps))
            rows.append(row)
        found.append(replace(part, rows=tuple(rows)))
    return tuple(found)


def _found(step: Step, before: list[Row]) -> Step:
    """The repeat that is borrowed, as the last row of that number has it; the step as it is where none has."""
    if not isinstance(step, Borrowed) or step.how_often is None:
        return step
    for row in reversed(before):
        label = row.label
        if label is None or step.number not in label.numbers or step.kind not in (None, label.kind):
            continue
        starred = [one for one in row.steps if isinstance(one, Repeat) and getattr(one, "sign", None) == step.sign]
        if len(starred) != 1:
            return step  # not there, or not told which
        one = starred[0]
        stop = getattr(one, "stop_sign", None)
        items = one.items[:stop] if stop and step.to_sign and step.to_sign != step.sign else one.items
        first = any(place.which is Which.FROM_HOOK for work in walk(row.steps) for place in getattr(work, "places", ()))
        if first:
            items = tuple(_on_stitches(item) for item in items)
        return Repeat(step.span, items, step.how_often)
    return step


def _on_stitches(step: Step) -> Step:
    """A step of a row along the foundation chain as it is worked along a row of stitches: "next ch" is the next stitch."""
    if isinstance(step, (Group, Repeat, Passage, Alongside)):
        step = replace(step, items=tuple(_on_stitches(item) for item in step.items))
    if isinstance(step, (Work, Group)) or hasattr(step, "places"):
        step = replace(step, places=tuple(_any_stitch(place) for place in step.places))
    return step


def _any_stitch(place: Place) -> Place:
    chains = bool(place.targets) and all(target.kind is TargetKind.CHAIN for target in place.targets)
    return replace(place, targets=(Target(TargetKind.ANY_STITCH),)) if chains and place.of is None else place
