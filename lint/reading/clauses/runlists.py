"""Lists of runs, "2 sc, inc x 6", and what the number behind the last of them is said of."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import LimitKind, TargetKind, Which
from lint.reading.counting.counts import list_ends
from lint.reading.repeating import repeats
from lint.reading.words.lists import bare
from lint.reading.words.stream import OPENERS, Stream
from lint.tree import MAKES_STITCHES, Chain, Covers, Loops, Remark, Repeat, Step, Times, TimesKind, Turn, UseYarn, Work

_STITCHES = (TargetKind.STITCH, TargetKind.ANY_STITCH)


def shapes(step: Step) -> bool:
    """Whether a step is an increase or decrease."""
    return isinstance(step, Work) and (step.stitch in ("inc", "dec") or step.together is not None)


def joined(stream: Stream, one: Step, other: Step) -> bool:
    """Whether only a comma, "and", "+", "/" or a tight hyphen ("3dc-ch2-3dc") stands between two steps."""
    between = [item for item in stream.lexemes if one.span.end <= item.start < other.span.start]
    tight = bool(between) and between[0].start == one.span.end and between[-1].end == other.span.start
    return all(item.kind in (",", "and", "+", "/") or item.kind == "dash" and tight for item in between)


def runs_before(stream: Stream, steps: list[Step], placed: bool = False) -> bool:
    """Whether all before the last step is runs with no place named, one joined to the next by commas.

    `placed`: "sc in next 2 sts" is such a run too.
    """
    *others, last = steps
    before = [step for step in others if not isinstance(step, (Chain, Turn, Loops, Remark, UseYarn))]
    chain = [*before, last]
    return (
        bool(before)
        and all(bare(step) or shapes(step) and not step.places or placed and _in_next(step) for step in before)
        and all(joined(stream, one, other) for one, other in zip(chain, chain[1:], strict=False))
    )


def times_of_last(stream: Stream, steps: list[Step], start: int) -> None:
    """ "sc 3, inc x 6": six increases, or six times all of a row's words, of a list's middle the run before; the row tells."""
    last = steps[-1]
    words = stream.lexemes[start : stream.at]
    told = any(item.lower in ("x", "×", "twice", "thrice") or item.kind == "times" for item in words)
    bound = any(item.kind in OPENERS for item in words)  # "dec (3 times)"
    if not told or not isinstance(last, Work) or not last.number_said or last.places:
        return
    ends = list_ends(stream, stream.at)
    if not ends and not (len(steps) > 1 and stream.kind() == "," and shapes(last) and not bound):
        return
    kept = 0 if ends else len(steps) - 2
    if not runs_before(stream, steps[kept:], placed=shapes(last)):
        return
    often = Times(last.span, TimesKind.IN_ALL, last.number)
    body = [*steps[kept:-1], replace(last, number=ONE, number_said=False, number_after=False)]
    if repeats.fold_row(body, often, last.span, Covers.RATHER_LAST):
        steps[kept:] = body


def _in_next(step: Step) -> bool:
    return isinstance(step, Work) and all(
        place.which is Which.NEXT and all(target.kind in _STITCHES for target in place.targets) for place in step.places
    )


def next_ones_in_turn(stream: Stream, steps: list[Step]) -> bool:
    """Folds "2 sc in next st, sc in next st around": the whole list goes on around, and not its last clause alone.

    A clause by itself, "2 sc in next st around", is of each stitch; so is one behind "in first st".
    """
    last = steps[-1]
    run = last.places[0] if isinstance(last, Work) and len(last.places) == 1 else None
    if run is None or run.which is not Which.EACH or run.limit is None or run.limit.kind is not LimitKind.END:
        return False
    said = [item.kind for item in stream.lexemes if run.span.start <= item.start < run.span.end]
    if said[:2] != ["in", "next"] and said[:1] != ["next"] or run.number != ONE or "each" in said:
        return False
    first = len(steps) - 1
    while (
        first
        and _in_next(steps[first - 1])
        and steps[first - 1].places
        and joined(stream, steps[first - 1], steps[first])
    ):
        first -= 1
    other = any(isinstance(step, (repeats.Mark, *MAKES_STITCHES)) for step in steps[:first])
    if first == len(steps) - 1 or other:
        return False  # "5 sc, inc in next st, sc in next st around": of which of them that is said is not clear
    once = replace(last, places=(replace(run, which=Which.NEXT, limit=None),))
    body = (*steps[first:-1], once)
    often = Times(run.span, TimesKind.FILL, limit=run.limit)
    steps[first:] = [Repeat(body[0].span.to(last.span), body, often, covers=Covers.RATHER_ALL)]
    return True
