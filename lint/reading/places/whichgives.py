"""Reads what teaching patterns say in passing: ", which gives you the first space", "fill each space with 2 dc"."""

from __future__ import annotations

from lint.reading.places.places import places
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Remark, Step, Work

_GIVES = ("gives", "makes", "forms", "counts", "creates", "leaves", "completes", "is", "will")
_TELLING = (
    "word",
    "the",
    "first",
    "next",
    "space",
    "special",
    "group_word",
    "one_stitch",
    "corner",
    "as",
    "ring",
    "loop",
)


def which_gives(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes "which gives you the first space", "which makes a shell": what has just been worked, by its name."""
    end = stream.next_of(*SIGNS, *OPENERS, "end", start=start)
    words = stream.lexemes[start:end]
    if not steps or len(words) < 3 or words[0].lower != "which" or words[1].lower not in _GIVES:
        return False
    if words[-1].kind not in ("space", "special", "group_word", "one_stitch", "corner", "ring"):
        return False
    if any(item.kind not in _TELLING for item in words):
        return False  # "which makes 2 sc in next st" works
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


def filled_with(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes "fill each space with 2 dc": so many in each, the place told first."""
    if not (stream.word("fill", "filling") and stream.take()):
        return False
    found = places(stream, bare=True)
    stitch = None
    if found and stream.take_if("with"):
        number = stream.amount()
        stitch = stream.take_if("stitch") if number is not None else None
    if stitch is None or stitch.value == "sl st":
        stream.at = start
        return False
    steps.append(Work(stream.span_from(start), stitch.value, number, found, number_said=True))
    return True
