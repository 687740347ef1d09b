"""Sees to it that no words for some sizes are passed over: a remark that tells them other figures alters their row."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.sizes.namedlists import TIMES, name_at
from lint.reading.words.stream import CLOSERS, OPENERS, Vocabulary
from lint.tree import Remark, Step, Unread, walk

_BEFORE = ("for", "in", "on", "size", "sizes", "if")
_BEHIND = ("only", "size", "sizes")
_UNITS = ("any_stitch", "stitch", "chain", "space")
_BETWEEN = (",", ";", "/", "and", "or", "times", *OPENERS, *CLOSERS)
_WHY = "what it tells some of the sizes was not understood"


def none_passed_over(steps: list[Step], lexemes: list[Lexeme], vocabulary: Vocabulary) -> list[Step]:
    """The steps, and an Unread for each remark that speaks to some sizes, or gives times or numbers for other ones."""
    if vocabulary.sizes < 2:
        return steps
    found: list[Step] = []
    for step in walk(tuple(steps)):
        if not isinstance(step, Remark) or step.unfit or step.counting is not None:
            continue
        inside = [item for item in lexemes if step.span.start <= item.start < step.span.end]
        if _names_some(inside, vocabulary) or _gives_others(inside):
            found.append(Unread(step.span, " ".join(item.text for item in inside), _WHY))
    return [*found, *steps] if found else steps


def _names_some(inside: list[Lexeme], vocabulary: Vocabulary) -> bool:
    """Whether a size stands where words speak to it: "none for S", "M: 3 sc", "on L", "M and L only"."""
    for at in range(len(inside)):
        named = name_at(inside, at, vocabulary.size_names)
        if named is None:
            continue
        before, behind = inside[:at], inside[named[1] :]
        while before and before[-1].lower == "the":
            before.pop()
        told = behind[:1] and (behind[0].kind in (":", "=") or behind[0].lower in _BEHIND)
        if told or before and before[-1].lower in _BEFORE:
            return True
    return False


def _gives_others(inside: list[Lexeme]) -> bool:
    """Whether brackets hold nothing but times, "(twice, 3 times)", or numbers each with its unit, "(2 sts, 3 sts)"."""
    if not inside or inside[0].kind not in OPENERS:
        return False
    numbers = [at for at, item in enumerate(inside) if item.kind == "number"]
    rest = [item for item in inside if item.kind not in ("number", *_BETWEEN, *_UNITS)]
    if not numbers or rest:
        return False
    if any(item.kind == "times" or item.lower in TIMES for item in inside):
        return not any(item.kind in _UNITS for item in inside)
    return all(inside[at + 1].kind in _UNITS for at in numbers) and len(numbers) > 1
