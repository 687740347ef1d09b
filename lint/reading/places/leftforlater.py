"""Reads what is said of stitches that an earlier row left: "the 6 sts left unworked", "next 3 sts beyond the turn", "left at this end"."""

from __future__ import annotations

from lint.reading.words.piecewords import PIECE_WORDS
from lint.reading.words.stream import CLOSERS, SIGNS, Stream


def left_for_later(stream: Stream) -> bool:
    """Takes the "left unworked" of "the 6 sts left unworked", the "left for the thumb", "skipped at the underarm"."""
    start = stream.at
    if _past_the_turn(stream):
        return True
    left = stream.word("left", "held") and bool(stream.take())
    unworked = (stream.kind() == "unused" or left and stream.word("free", "open")) and bool(stream.take())
    piece = stream.kind() in ("for", "at", "of", "in")
    ahead = 2 if piece and stream.kind(1) in ("the", "each") else 1
    if (left or unworked) and piece and stream.word(*PIECE_WORDS, ahead=ahead):
        stream.at += ahead
        while stream.word(*PIECE_WORDS, "opening"):
            stream.take()
        return True
    if left and not unworked and _left_where(stream):
        return True
    if left and unworked:
        return True
    stream.at = start
    return False


def _past_the_turn(stream: Stream) -> bool:
    """Takes the "beyond it", "past the turn" of "next 3 sts past the turn": stitches that a short row has left."""
    start = stream.at
    if not stream.word("beyond", "past"):
        return False
    stream.take()
    stream.skip("the", "last")
    stream.take_if("turn") if stream.kind() == "turn" else stream.word("it", "them", "gap") and stream.take()
    ended = stream.kind() in (*SIGNS, "end", "turn", "and", "then", *CLOSERS)
    stream.at = stream.at if ended and stream.at > start + 1 else start
    return stream.at > start


def _left_where(stream: Stream) -> bool:
    """Takes the "behind it", "over", "at this end" of "the 12 sts left at this end" behind short rows."""
    start = stream.at
    if stream.word("over", "behind", "there", "earlier", "before"):
        stream.take()
        stream.take() if stream.word("it", "them") else None
        return stream.kind() in (*SIGNS, "end", "turn", "and", "then", *CLOSERS)
    if stream.take_if("at"):
        stream.skip("the", "same", "each")
        stream.take() if stream.word("other", "far", "near") else None
        if stream.take_if("ending", "side", "edge") and stream.kind() in (*SIGNS, "end", "turn", "and", "then"):
            return True
    stream.at = start
    return False
