"""Tells calls for the rows just worked from calls by number: "Rep this row", "Rep these 2 rows" against "Rep Row 2"."""

from __future__ import annotations

from lint.reading.words.stream import Stream

BACK = ("above", "previous", "preceding", "foregoing")


def points_back(stream: Stream, start: int) -> bool | None:
    """Whether the rows just worked are meant: "Rep this row 5 times", "Rep these 2 rows", "Rep the previous 2 rows".

    None where how many of them are meant, or which, is not said: "Rep these rows", "Rep 2 rows".
    """
    back = stream.word(*BACK) and bool(stream.take())
    determined = stream.at > start and (back or stream.kind(-1) in ("same", "the"))
    if stream.kind() in ("row", "round"):
        if not determined or stream.kind(-1) == "the" or _numbered(stream):
            return False  # "as the same Row 5"
        return None if stream.peek().lower.endswith("s") else True
    several = stream.kind() == "number" and stream.kind(1) in ("row", "round") and stream.peek(1).lower.endswith("s")
    if not several:
        return False
    return True if determined else None


def _numbered(stream: Stream) -> bool:
    """Whether a number behind the row word names the row, and tells no times."""
    often = stream.kind(2) in ("times", "more") or stream.word("x", "×", ahead=2)
    often = often or stream.word("once", "twice", "thrice", ahead=1)
    return stream.kind(1) == "number" and not often
