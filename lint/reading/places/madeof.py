"""What a stitch is said to be made of: the "5-dc" of "5-dc bobble", the "of 7 dc" of "shell of 7 dc", the "inc" of "hdc inc"."""

from __future__ import annotations

from lint.amount import Amount
from lint.reading.words.stream import SIGNS, Stream
from lint.source import Span
from lint.tree import Work

DOUBLED = 3  # stitches: what a double increase makes of one, and a double decrease one of


def increase_told(stream: Stream) -> int | None:
    """The "inc" of "hdc inc", or the "3inc" of "dc3inc": how many go into one place."""
    if hung_on(stream, "increase"):
        stream.take()  # "dc-inc"
    if (word := stream.take_if("increase")) is not None:
        return DOUBLED if word.doubled else 2
    one = stream.kind() == "number" and stream.peek().amount is None and stream.peek().glued  # not "5sc 1inc"
    if one and stream.kind(1) == "increase" and stream.peek(1).glued:
        number = stream.take().number
        stream.take()
        return number
    return None


def hung_on(stream: Stream, kind: str) -> bool:
    """Whether a word of a kind hangs on by a dash."""
    return stream.kind() == "dash" and stream.peek().glued and stream.kind(1) == kind and stream.peek(1).glued


def legs_before(stream: Stream, number: Amount | None) -> Work | None:
    """The "5-dc" of "5-dc bobble", "7-dc shell" (the 5 is taken already): what the stitch or shell is made of."""
    ahead = 1 if stream.kind() == "dash" else 0
    if number is None or stream.kind(ahead) != "stitch":
        return None
    if stream.kind(ahead + 1) not in ("one_stitch", "group_word", "special") or stream.peek(ahead).value == "sl st":
        return None
    stream.at += ahead
    lexeme = stream.take()
    return Work(Span(lexeme.start, lexeme.end), lexeme.value, number)


def legs_behind(stream: Stream) -> Work | None:
    """The "of 7 dc" of "shell of 7 dc"."""
    if not (stream.kind() in ("of", "with") and stream.kind(1) == "number" and stream.kind(2) == "stitch"):
        return None
    start = stream.at
    stream.take()
    number = stream.take().quantity
    return Work(stream.span_from(start), stream.take().value, number)


def chains_of_loop(stream: Stream) -> Amount | None:
    """Takes "of 5 ch", "of ch-5", "of chain" behind a word for a loop: how long it is, where that is told."""
    start = stream.at
    if stream.take_if("of") is None:
        return None
    the = stream.take_if("the") is not None
    chained = stream.take_if("chain") is not None
    stream.take_if("dash")
    length = stream.take().quantity if stream.kind() == "number" and not the else None
    stream.take_if("dash")
    chained = chained or stream.take_if("chain") is not None
    ends = stream.kind() in (*SIGNS, "end", "around", "across") and stream.kind(start - stream.at - 2) != "unused"
    if chained and (length is not None or ends) and stream.kind() not in ("space", "turning_chain"):
        return length
    stream.at = start
    return None
