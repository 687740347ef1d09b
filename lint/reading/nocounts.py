"""Figures that stand where a printed count may, and are work."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.place import LimitKind, Which
from lint.reading.stream import CLOSERS, OPENERS, Stream
from lint.tree import Chain, Group, Join, Remark, Repeat, Skip, Step, TimesKind, Turn, Work

_BEFORE_PLACE = ("the", "each", "next", "first", "last", "same", "number", "ordinal", "beginning", "any", "of")
_PLACES = ("stitch", "any_stitch", "special", "chain", "space", "turning_chain", "turn", "loop", "ring")
_SIGNED = ("dash", "=", "→")  # what leads to a count at the end of words


def goes_somewhere(words: list[Lexeme]) -> bool:
    """Whether the stitches of "2 sc in each st around", "2 dc, 1 ch, 2 dc in next sp" go into a place: work, and no count."""
    kinds = [item.kind for item in words]
    for at, kind in enumerate(kinds):
        if kind == "in" and kinds[at - 1 : at] in (["stitch"], ["special"]):
            place = next((kind for kind in kinds[at + 1 :] if kind not in _BEFORE_PLACE), "end")
            if place in _PLACES:
                return True
    return False


def turning_chain(stream: Stream, at: int) -> bool:
    """Whether the next row's chain stands at an index, as the UK trade writes it: "3 ch, turn", "(12). 1 ch"."""
    kinds = [item.kind for item in stream.lexemes[at : at + 4]]
    if kinds[:2] != ["number", "chain"]:
        return False
    if len(kinds) == 2:
        return at > 1 and stream.lexemes[at - 2].kind in CLOSERS
    return "turn" in (kinds[2], kinds[3] if len(kinds) > 3 and kinds[2] in (",", "and", "then") else "")


def counted_behind(sentence: Stream) -> bool:
    """Whether a count ends the words, which are work then: "5 x (sc, inc) 2 sc (17)", "… 2 sc – 17 sts"."""
    opened = next((i for i, item in enumerate(sentence.lexemes) if item.kind in (*OPENERS, *_SIGNED)), None)
    if not opened:
        return False
    signed = sentence.lexemes[opened].kind in _SIGNED
    inside = [item.kind for item in sentence.lexemes[opened + 1 : None if signed else -1]]
    return inside[:1] == ["number"] and set(inside[1:]) <= {"stitch", "any_stitch"}


def noted_work(stream: Stream, start: int) -> bool:
    """Whether the bracket before `start` opens a clause and holds a word alone: "(X) 8 sc, (Y) 1 sc" is work with notes."""
    opened = next((i for i in range(start - 2, -1, -1) if stream.lexemes[i].kind in OPENERS), None)
    inside = stream.lexemes[opened + 1 : start - 1] if opened is not None else []
    begins = opened is not None and (not opened or stream.lexemes[opened - 1].kind in (",", ";", "star", *OPENERS))
    return begins and bool(inside) and all(item.kind in ("word", "the", "color", "yarn") for item in inside)


def led_to_a_side(stream: Stream, colon: int) -> bool:
    """Whether the clause before a colon only says where work goes on: "…; on the other side: 2 sc (8)" is no count of 2."""
    start = next((i + 1 for i in range(colon - 1, -1, -1) if stream.lexemes[i].kind in (",", ";", ".")), 0)
    kinds = {item.kind for item in stream.lexemes[start:colon]}
    return "other_side" in kinds and not kinds & {"stitch", "any_stitch", "increase", "decrease", "special"}


def rather_work(steps: list[Step], counted: int, rest: list[Lexeme]) -> bool:
    """Whether "…; 2 sc" goes on with the row, where clauses are parted by the same sign as a count is.

    It does where stitches are left for it ("… to last 2 sts; 2 sc"), where a greater count follows, or where the row has
    made far more by then, or far fewer: slips of printed counts are small.
    """
    last = steps[-1] if steps else None
    limit = last.places[-1].limit if isinstance(last, Work) and last.places else None
    limit = last.times.limit if isinstance(last, Repeat) else limit
    if limit is not None and limit.kind is LimitKind.LAST:
        return True
    if any(item.kind == "number" and item.number > counted for item in rest):
        return True
    made = sum(map(_least, steps))
    return 4 * counted < 3 * made or 0 < 3 * made + 2 < 2 * counted and all(map(_definite, steps))


def _definite(step: Step) -> bool:
    """Whether the words alone tell how many stitches a step makes."""
    if isinstance(step, Repeat):
        told = step.times.kind in (TimesKind.IN_ALL, TimesKind.MORE) and step.times.number is not None
        return told and all(map(_definite, step.items))
    if isinstance(step, Group):
        return all(map(_definite, step.items)) and all(place.which is not Which.EACH for place in step.places)
    if isinstance(step, Work):
        plain = step.special is None and not step.undefined
        return plain and all(place.limit is None and place.which is not Which.EACH for place in step.places)
    return isinstance(step, (Chain, Skip, Remark, Turn, Join))


def _least(step: Step) -> int:
    """The fewest stitches that a step can make."""
    if isinstance(step, Repeat):
        times = (step.times.number.values[0] or 0) if step.times.number is not None else 0
        return (times + (step.times.kind is TimesKind.MORE)) * sum(map(_least, step.items))
    if isinstance(step, Group):
        return sum(map(_least, step.items))
    if not isinstance(step, Work) or step.stitch == "sl st":
        return 0
    number = step.number.values[0] or 0
    if step.together:
        return number
    places = [place for place in step.places if not place.shared]
    each = (2 if step.stitch == "inc" else 1) * number
    return each * sum((place.number.values[0] or 0) for place in places) if places else each
