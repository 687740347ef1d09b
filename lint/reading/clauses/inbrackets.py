"""Tells what the items of a bracket are: squares of filet, a picot, shaping, one sort in one place and another in several."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.lexicon import Lexeme
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.places import notes
from lint.reading.places.targets import ANY
from lint.reading.repeating import repeats
from lint.reading.words.stream import Stream
from lint.tree import Chain, Counting, NoJoin, Repeat, Step, Times, TimesKind, Turn, Work


def shapes(last: list[Step]) -> bool:
    """Whether the last step works several stitches in one place, or one over several."""
    works = [step for step in last if isinstance(step, Work)]
    return any(step.together is not None or step.places and step.number.lone != 1 for step in works)


def is_square(step: Step) -> bool:
    """Whether a step works squares of filet, which the pattern defines with the places that they go into."""
    return isinstance(step, Work) and step.special is not None and step.special.places_itself


def squares(steps: tuple[Step, ...]) -> dict[str, int] | None:
    """How many squares of each sort the steps work; None where that is not told."""
    found: dict[str, int] = {}
    for step in steps:
        inner, often = (step.items, step.times.number) if isinstance(step, Repeat) else ((), ONE)
        own = {step.stitch: step.number.lone or 0} if is_square(step) else squares(inner)
        if own is None or isinstance(step, Repeat) and (often is None or step.times.kind is not TimesKind.IN_ALL):
            return None
        for name, number in own.items():
            found[name] = found.get(name, 0) + number * (often.lone or 0)
    return found


def picot_of(items: list[Step]) -> list[Step]:
    """The chain and the slip stitch that closes it, at the head of a bracket; [] where it begins otherwise."""
    head = items[:2]
    closed = len(head) == 2 and isinstance(head[0], Chain) and isinstance(head[1], Work) and head[1].stitch == "sl st"
    return head if closed and head[1].places else []


def one_place_each(items: list[Step]) -> list[Step]:
    """The items of a bracket; "2 sc, sc 2" tells two sorts apart: two in one place, one in each of two."""
    bare = [item for item in items if isinstance(item, Work) and not item.places and item.together is None]
    after = any(item.number_after and item.stitch not in ("inc", "dec") for item in bare)
    first = any(item.number_said and not item.number_after and item.number != ONE for item in bare)
    if not after or not first:
        return items
    return [
        replace(item, places=(Place(item.span, Which.NEXT, (ANY,)),))
        if item in bare and item.number_said and not item.number_after and item.stitch not in ("inc", "dec")
        else item
        for item in items
    ]


def holds_work(lexemes: list[Lexeme]) -> bool:
    """Whether a number of stitches and a place for them stand among the words of a bracket."""
    kinds = [item.kind for item in lexemes]
    counted = next(
        (i for i, pair in enumerate(zip(kinds, kinds[1:], strict=False)) if pair == ("number", "stitch")), None
    )
    return counted is not None and "in" in kinds[counted:]


def plain_turns(items: list[Step]) -> list[Step]:
    """The turns, and the words against a join, among the items."""
    return [step for step in items if isinstance(step, (Turn, NoJoin))]


def shapes_over_several(items: list[Step], place: Place) -> bool:
    """Whether "(sc, inc) in the remaining 6" rather is a repeat over them: an increase stands in a place of its own."""
    shapes = any(isinstance(step, Work) and step.stitch in ("inc", "dec") for step in items) and len(items) > 1
    shapes = (
        shapes or len(items) == 1 and isinstance(items[0], Work) and bool(items[0].together) and not items[0].places
    )
    return shapes and (place.which is Which.EACH or place.number.lone != 1)


def only_star_before(steps: list[Step]) -> bool:
    """Whether the bracket stands right behind a star."""
    return bool(steps) and isinstance(steps[-1], repeats.Mark)


def one_pass_each(items: list[Step], found: tuple[Place, ...]) -> Times | None:
    """ "(dc in next st, ch 1, dc in same st) in each st around": a passage of one stitch, and so a repeat over all of them."""
    first, *others = items
    begins = isinstance(first, Work) and len(first.places) == 1 and first.places[0].which is Which.NEXT
    same = all(
        isinstance(item, Chain) or isinstance(item, Work) and [place.which for place in item.places] == [Which.SAME]
        for item in others
    )
    if not (begins and same) or first.places[0].number != ONE or len(found) != 1 or found[0].which is not Which.EACH:
        return None
    each = found[0]
    if first.places[0].targets != each.targets or each != Place(each.span, Which.EACH, each.targets, limit=each.limit):
        return None
    return Times(each.span, TimesKind.FILL, limit=each.limit or Limit(LimitKind.END))


def starred_repeat(inner: Stream, steps: list[Step]) -> bool:
    """Reads the "rep from * around" of "*sc in next st, ch 1 (rep from * around)", where it is all that the bracket holds."""
    if (
        inner.kind() != "repeat"
        or not any(item.kind == "star" for item in inner.lexemes)
        or not repeats.open_star(steps)
    ):
        return False
    trial = list(steps)
    if not repeats.repeat_clause(inner, trial, 0) or not inner.done:
        inner.at = 0
        return False
    steps[:] = trial
    return True


def closes_last_loop(stream: Stream, steps: list[Step], start: int, close: int) -> bool:
    """ "dc in first sc (last loop made)": that stitch closes the round as its last space."""
    inside = stream.lexemes[start + 1 : close]
    last = steps[-1] if steps else None
    made = notes.tells_made(inside) and any(item.kind == "space" for item in inside)
    if not made or not isinstance(last, Work) or last.closing is not None or len(last.places) != 1:
        return False
    if last.places[0].which is not Which.FIRST or last.stitch == "sl st":
        return False
    span = stream.span_from(start)
    steps[-1] = replace(last, closing=Counting(span, True, None, 0))
    return True
