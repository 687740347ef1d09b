"""Stitches told by the side they are on, in a row that tells its corners: "dc in each dc of that side", "3 sc along the side".

Between two corners the words for a side add nothing to a number of stitches, and a run along it goes to the next corner.
"""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream

_ALONG = ("of", "across")
_WHICH = ("the", "same")
_STITCHES = ("stitch", "any_stitch")
_BEHIND = (*SIGNS, "end", "and", "then", "star", "repeat", *CLOSERS)
_BEFORE = (*SIGNS, "and", "then", "star", *OPENERS)
_POINTING = ("each", "of", "the", "next")


def sides_to_corners(stream: Stream) -> Stream:
    """The row's stream with such words left out, or put as "to next corner"; as it is where no corner is told."""
    words = stream.lexemes
    if not any(item.kind == "corner" for item in words) or not any(item.kind in ("star", "repeat") for item in words):
        return stream
    for side in range(len(words) - 1, 1, -1):
        first = _along(words, side)
        if first is not None and (told := _told(words, first)) is not None:
            words = [*words[:first], *_to_corner(words[first], told), *words[side + 1 :]]
    return stream if words is stream.lexemes else Stream(words, stream.vocabulary)


def _along(words: list[Lexeme], side: int) -> int | None:
    """Where "along the (one) side" begins, whose last word is at `side`; None if it does not stand there."""
    behind = words[side + 1].kind if side + 1 < len(words) else "end"
    if words[side].kind != "side" or words[side].lower != "side" or behind not in _BEHIND:
        return None
    first = side - 1 - (words[side - 1].kind in _WHICH)
    return first if first > 0 and (words[first].kind in _ALONG or words[first].lower in ("on", "down")) else None


def _told(words: list[Lexeme], first: int) -> str | None:
    """What stands before: "some" stitches, "each" one, a stitch "alone" that stands for all; None for anything else."""
    at = first - 1
    if words[at].kind not in _STITCHES:
        return None
    pointed = at
    while pointed and (words[pointed - 1].kind in _POINTING or words[pointed - 1].kind == "number"):
        pointed -= 1
    kinds = [item.kind for item in words[pointed:at]]
    begins = not pointed or words[pointed - 1].kind in _BEFORE
    if begins and not kinds and words[at].kind == "stitch":
        return "alone"
    if begins and kinds == ["number"] and words[at].kind == "stitch":
        return "some"
    into = pointed and words[pointed - 1].kind == "in"
    if "number" in kinds and ("each" in kinds or "next" in kinds or into):
        return "some"
    return "each" if kinds == ["each"] else None


def _to_corner(at: Lexeme, told: str) -> list[Lexeme]:
    """What is put in the place of the words for the side."""
    kinds = {
        "some": (),
        "each": ("to", "next", "corner"),
        "alone": ("in", "each", "any_stitch", "to", "next", "corner"),
    }
    texts = {"any_stitch": "st"}
    return [Lexeme(kind, texts.get(kind, kind), at.start, at.start, False) for kind in kinds[told]]
