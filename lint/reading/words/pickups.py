"""Reads what a row along an edge says before its stitches and of them: "RS facing, 4 mm hook, join yarn", "the 12 sts at center front"."""

from __future__ import annotations

from lint.reading.words.piecewords import PIECE_WORDS
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Remark, Step

_SIDES = ("right_side", "wrong_side")
_LENGTHS = ("mm", "cm")
_ALONG = ("along", "edge", "side")
_WHERE = (*PIECE_WORDS, "opening", "middle", "base", "top")


def side_and_hook(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes "RS facing" or "4 mm hook" as clauses of their own, where no stitch is worked yet."""
    words = stream.lexemes
    end = stream.next_of(*SIGNS, *OPENERS, *CLOSERS, "and", "end", start=start)
    said = words[start:end]
    facing = [item.kind for item in said] in ([side, "facing"] for side in _SIDES)
    hook = len(said) >= 2 and said[-1].kind == "hook" and said[0].kind in ("number", "decimal", "word")
    plain = all(item.kind in ("number", "decimal", "word", "hook", "-") or item.lower in _LENGTHS for item in said)
    sized = any(item.lower in (*_LENGTHS, "smaller", "larger", "size") for item in said)
    if not (facing or hook and plain and sized) or any(not isinstance(step, Remark) for step in steps):
        return False
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


def at_a_piece(stream: Stream) -> bool:
    """Takes the "at center front", "at the thumb opening" of "each of the 12 sts at …", in a row that picks up stitches."""
    start = stream.at
    before = stream.lexemes[:start]
    picks_up = any(item.kind == "unused" or item.kind in _ALONG or item.lower in _ALONG for item in before)
    behind = stream.lexemes[start:]
    runs = any(
        one.kind in ("each", "remaining") and not any(item.kind == "number" for item in behind[at + 1 : at + 4])
        for at, one in enumerate(behind)
    )  # "…, sc in each rem st": which of the places are left for it, is not known
    if not picks_up or runs or stream.take_if("at") is None:
        return False
    stream.skip("the")
    named = stream.at
    while stream.word(*_WHERE) or stream.kind() == "middle":
        stream.take()
    counted = stream.kind() == "number" and stream.peek().text[:1] in OPENERS  # "at the opening (10/12/14)"
    if (
        stream.at > named
        and counted
        or stream.at > named
        and stream.kind() in (*SIGNS, "end", "and", *OPENERS, *CLOSERS, "join", "turn")
    ):
        return True
    stream.at = start
    return False
