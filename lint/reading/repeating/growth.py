"""Reads how rows that are worked again grow: "increasing one tile in every row", "with one more group along each side"."""

from __future__ import annotations

from lint.reading.places.countunits import singular
from lint.reading.places.work import GROUPS
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Growth

_UP = ("increasing", "adding", "gaining")
_DOWN = ("decreasing", "losing")
_MORE = {"more": 1, "extra": 1, "additional": 1, "fewer": -1, "less": -1}


def growth(stream: Stream) -> Growth | None:
    """Takes ", making one tile fewer in every row": what each row has more or fewer of; None where nothing is told so."""
    start = stream.at
    stream.take_if(",")
    if stream.word("but"):
        stream.take()  # "As Row 10, but with one tile less in each row"
    found = _growth(stream)
    if found is None or stream.kind() not in (*SIGNS, "end", *OPENERS):
        stream.at = start
        return None
    return found


def _growth(stream: Stream) -> Growth | None:
    sign = 1 if stream.word(*_UP) else -1 if stream.word(*_DOWN) else 0
    if not sign and stream.kind() not in ("make", "with"):
        return None
    stream.take()
    stream.skip("by")
    number = stream.amount()
    before = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(before)
    noun = stream.peek()
    group = noun.kind in ("group_word", "special") or noun.lower in GROUPS
    stitches = {"any_stitch": "stitches", "stitch": f"kind:{noun.value}"}.get(noun.kind)
    if number is None or number.lone is None or not (group or stitches):
        return None
    stream.take()
    behind = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(behind)
    said = before or behind
    if before and behind or sign and said and said != sign or not (sign or said):
        return None
    side = _each_side(stream)
    stream.take_if("in", "at", "for")
    if stream.take_if("each") is None or stream.take_if("row", "round", "times") is None:
        return None
    if stitches and (side or not sign):
        return None  # "with 2 sc more in each row" may be work
    unit = f"special:{singular(noun.lower)}" if group else stitches
    return Growth((sign or said) * number.lone, unit, side)


def _each_side(stream: Stream) -> bool:
    """Takes "along each side", "on every side", "per side"."""
    start = stream.at
    led = stream.take_if("across", "in", "at", "for") or stream.word("along", "per") and stream.take()
    each = stream.take_if("each") or led and led.lower == "per"
    if led and each and stream.take_if("side"):
        return True
    stream.at = start
    return False
