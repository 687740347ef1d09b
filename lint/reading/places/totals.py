"""Reads what is told behind work along an edge: "sc evenly around, working 84 sc", "30 sc along the cuff, one in each row"."""

from __future__ import annotations

from lint.amount import Amount
from lint.reading.words.stream import OPENERS, SIGNS, Stream


def told_in_all(stream: Stream, stitch: str) -> Amount | None:
    """Takes ", working 84 sc", ", for a total of 84 sc"; None and nothing taken where more than a number is told."""
    start = stream.at
    stream.take_if(",")
    told = bool(stream.take_if("make"))
    stream.skip("for", "the")
    told = bool(stream.take_if("total")) or told
    stream.skip("of")
    number = stream.amount() if told else None
    if number is not None and stream.kind() == "stitch" and stream.take().value == stitch:
        stream.take() if stream.word("in all", "altogether") else stream.take_if("total")
        if stream.done or stream.kind() in (".", ";", ",", "join", "turn", "dash", *OPENERS):
            return number
    stream.at = start
    return None


def one_in_each(stream: Stream, stitch: str) -> None:
    """Takes the ", one in each row (end)" behind "work 30 sc around the edge": where those go, and no more of them."""
    start = stream.at
    stream.take_if(",")
    one = stream.kind() == "number" and stream.peek().number == 1 and stream.peek().amount is None
    if one and stream.take():
        stream.take_if("any_stitch") if stream.peek().value != stitch else stream.take()
        if stream.take_if("in") and stream.take_if("each"):
            row = stream.take_if("row", "row_end")
            stream.take_if("ending", "row_end") if row is not None else None
            if row is not None and (stream.done or stream.kind() in (".", ";", ",", "join", "turn", "dash", *OPENERS)):
                return
    stream.at = start


def one_round_of(stream: Stream) -> bool:
    """Takes the "round of" of "1 round of 64 dc along the neck edge": that many, once."""
    one = stream.kind() in ("row", "round") and stream.kind(1) == "of" and stream.peek(-1).number == 1
    counted = one and stream.kind(2) == "number" and stream.kind(3) == "stitch"
    along = stream.kind(4) in ("across", "around", "evenly") or stream.word("along", "up", "down", ahead=4)
    stream.at += 2 if counted and along else 0
    return counted and along


def rows_follow(stream: Stream, ahead: int, alone: bool) -> bool:
    """Whether "rows" stands behind the number taken, or "row" behind "work 1", where nothing else is said before."""
    one = alone and stream.kind(-2) == "make" and stream.peek(-1).number == 1  # "Work 1 row in each colour"
    return stream.kind(ahead) in ("row", "round") and (one or not stream.word("row", "rnd", "round", ahead=ahead))


def into_an_edge(stream: Stream) -> bool:
    """Whether "evenly in row ends" goes into an edge, whose places are not told; or "evenly into these 20 sts" over so many."""
    words = stream.lexemes[stream.at : stream.next_of(*SIGNS)]
    pairs = zip(words, words[1:], strict=False)
    if all(item.kind != "each" for item in words) and any(
        one.kind == "number" and other.kind == "any_stitch" for one, other in pairs
    ):
        return True
    return any(item.kind in ("row_end", "edge", "side", "ending") for item in words)
