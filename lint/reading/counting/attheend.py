"""Reads a count right behind a run to the row's end, which no sign sets apart: "sc in each st around 12 sts", "… around *12*"."""

from __future__ import annotations

from lint.pattern import Stated
from lint.reading.counting.counts import read
from lint.reading.places.countunits import left_over
from lint.reading.words.stream import OPENERS, Stream
from lint.tree import FastenOff, OpenWork, Remark, RowCall, Shaping, Step

# what may lead to it: nothing is left of the row that these could go into
_LEADS = ("make", "makes", "making", "ending", "ends", "you", "have", "now", "gives", "giving")
# only among such words: "to make", "ending with"; "to 2 sts", "with 3 sts" alone tell something else
_BESIDE = ("to", "with", "so")
_UNTIL = ("until", "till")
_HAVE = ("there", "are", "you", "have", "only", "a total of")
_SIGNS = ("*", "**", "***", "#", ">", ">>", "·", "•", "/", "✓")
_ENDS = (".", ";", "end", "turn", "no_turn", "join", "fasten_off", "dash", "=")


def shaped_until(steps: list[Step], stream: Stream) -> Stated | None:
    """The count that shaping ends with, whose rows are not told one by one: "dec … AT THE SAME TIME dec … until 12 sts rem"."""
    last = next((step for step in reversed(steps) if not isinstance(step, (FastenOff, Remark))), None)
    if not _shapes(last):
        return None
    inside = stream.inside(0, sum(item.start < last.span.end for item in stream.lexemes))
    inside.at = max((at for at, item in enumerate(inside.lexemes) if item.lower in _UNTIL), default=-1)
    if inside.at < 0 or inside.lexemes[inside.at].start < last.span.start:
        return None
    inside.take()
    while inside.word(*_HAVE):
        inside.take()
    begun = inside.at
    counted = inside.amount() is not None and inside.kind() in ("stitch", "any_stitch")
    end = inside.at + 1
    behind = end + left_over(inside, 1)
    ends = all(item.kind in (".", "fasten_off", "and") for item in inside.lexemes[behind:])
    return read(inside.inside(begun, end), bare=False) if counted and ends else None


def _shapes(last: Step | None) -> bool:
    """Whether rows are shaped: in words that do not tell them one by one, or at two edges, each so many times."""
    if isinstance(last, RowCall):
        return last.until is None and any(isinstance(step, Shaping) for row in last.own for step in row)
    return isinstance(last, OpenWork) and any(word in last.words.lower() for word in ("dec", "inc"))


def count_at_end(stream: Stream) -> Stated | None:
    """The count at the cursor, behind a run to the end; None, and nothing taken, where more is said.

    A figure with neither unit nor sign might be anything, and "for 12 sts" would be odd behind such a run.
    """
    start = stream.at
    led = 0
    told = beside = False
    while stream.kind() == "star" or stream.word(*_LEADS, *_BESIDE, *_SIGNS):
        led += stream.kind() == "star" or stream.word(*_SIGNS)
        told, beside = told or stream.word(*_LEADS), beside or stream.word(*_BESIDE)
        stream.take()
    begin = stream.at
    number = stream.amount()
    unit = stream.take_if("any_stitch", "stitch") if number is not None else None
    end = stream.at
    while stream.kind() == "star" or stream.word(*_SIGNS):
        stream.take()
    alone = (
        number is not None
        and (told or not beside)
        and (unit is not None or led > 0)
        and stream.kind() in (*_ENDS, ",", *OPENERS)
    )
    after = 1 if stream.kind() == "," else 0
    sl_st = stream.peek(after).value == "sl st" and stream.kind(after + 1) in ("to", "join")
    if not alone or after and not sl_st and stream.kind(after) not in ("turn", "no_turn", "join", "fasten_off"):
        stream.at = start
        return None
    found = read(stream.inside(begin, end), bare=True)
    if found is None:
        stream.at = start
    return found
