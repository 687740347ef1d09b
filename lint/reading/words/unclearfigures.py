"""Figures with no place that may be work or a count: "2 sc in each st, join. 24 sc – lovely", "1 bl. 11 sps. 1 bl. 18 dc. 11 ch-2 sps."."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.pattern import Stated
from lint.place import Which
from lint.tree import MAKES_STITCHES, Evenly, FastenOff, Join, Remark, Step, Turn, Unread, Work

_FEWEST = 3  # fewer may be a few more stitches
_WHY = "whether these are worked, or count the row, is not said"


def unclear_behind_join(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps, where the last work is such a figure behind the join or the cut yarn as words that are not understood."""
    last = next((at for at in range(len(steps) - 1, -1, -1) if isinstance(steps[at], MAKES_STITCHES)), None)
    if last is None or not _bare(steps[last]):
        return steps
    before = [step for step in steps[:last] if not isinstance(step, (Remark, Turn))]
    worked = any(isinstance(step, MAKES_STITCHES) and not _slip(step) for step in before[:-1])
    if not before or not (worked and _ends(before[-1]) or _near(before[-1], steps[last])):
        return steps
    return _unread(steps, last, lexemes)


def unclear_beside_squares(steps: list[Step], lexemes: list[Lexeme], stated: Stated | None) -> list[Step]:
    """The steps of a filet row; stitches behind its squares, right before its count of spaces, may belong to that count."""
    if stated is None or not stated.items or not all(item.unit.startswith("space") for item in stated.items):
        return steps
    works = [at for at, step in enumerate(steps) if isinstance(step, MAKES_STITCHES)]
    if len(works) < 2 or not _bare(steps[works[-1]]) or steps[works[-1]].span.end > stated.items[0].span.start:
        return steps
    before = [steps[at] for at in works[:-1]]
    if not any(isinstance(step, Work) and step.special is not None and step.special.places_itself for step in before):
        return steps
    return _unread(steps, works[-1], lexemes)


def _unread(steps: list[Step], at: int, lexemes: list[Lexeme]) -> list[Step]:
    span = steps[at].span
    words = " ".join(item.text for item in lexemes if span.start <= item.start < span.end)
    return [*steps[:at], Unread(span, words, _WHY), *steps[at + 1 :]]


def _bare(step: Step) -> bool:
    """Whether a step is so many stitches, and where they go is not told."""
    plain = isinstance(step, Work) and not step.places and step.number_said and step.together is None
    several = plain and step.stitch not in ("sl st", "inc", "dec") and step.special is None and step.between is None
    return several and all(number is None or number >= _FEWEST for number in step.number.values)


def _ends(step: Step) -> bool:
    """Whether the round is closed, or the yarn cut."""
    slips = _slip(step) and len(step.places) == 1
    return isinstance(step, (Join, FastenOff)) or slips and step.places[0].which is Which.FIRST


def _slip(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch == "sl st"


def _near(edge: Step, figure: Work) -> bool:
    """Whether a figure behind stitches along an edge is about as many: rather a slip of their count than more of them."""
    if not isinstance(edge, Evenly):
        return False
    pairs = zip(edge.number.values, figure.number.values, strict=False)
    return all(there is not None and 4 * abs(there - (told or 0)) <= there for there, told in pairs)
