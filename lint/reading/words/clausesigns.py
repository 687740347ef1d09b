"""Signs other than commas between clauses that tell their places: "sc in next 2 sts + ch 3 + dc in next st", "sk 2 sts - dc in next st"."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.words.stream import Stream

_PLACED = (
    "in",
    "over",
    "around",
    "each",
    "next",
    "evenly",
)  # what stands behind a stitch that is worked, and not counted
_WORKED = (
    "stitch",
    "increase",
    "decrease",
    "special",
    "chain",
    "skip",
)  # before them stand a label, a colour or a side
_COUNTED = ("space", "loop", "any_stitch")


def clauses_parted(stream: Stream) -> Stream:
    """The row with a "+", a stroke or a dash that stands by itself before a clause of work as the comma that it stands for.

    A dash before "24 sc" may set a count apart: only work that goes somewhere, a chain or a skip follows it.
    """
    words = stream.lexemes
    begun = next((at for at, one in enumerate(words) if one.kind in _WORKED), len(words))
    later = range(begun + 1, len(words) - 1)
    found = {at for at in later if _stands_apart(words, at) and _begins_clause(stream, at + 1)}
    if not found:
        return stream
    return Stream([replace(one, kind=",") if at in found else one for at, one in enumerate(words)], stream.vocabulary)


def _stands_apart(words: list[Lexeme], at: int) -> bool:
    """Whether a sign has a space on either side and is none of a range, a sum or a list over the sizes."""
    one, before, after = words[at - 1 : at + 2][1], words[at - 1], words[at + 1]
    sign = one.kind in ("dash", "+", "/") and len(one.text) == 1
    chain = before.kind == "number" and [item.kind for item in words[at - 2 : at - 1]] == [
        "chain"
    ]  # "ch 3 / 3 dc in …"
    ranged = before.kind in ("number", "ordinal", "size") and not chain
    return sign and not one.glued and not after.glued and not ranged and before.kind != "star"


def _begins_clause(stream: Stream, index: int) -> bool:
    """Whether a clause of work begins at `index`: a stitch with its place, "ch 3" that is no space, "sk 2 sts"."""
    words = stream.lexemes
    at = index + (words[index].kind == "number")
    kinds = [one.kind for one in words[at : at + 4]] + ["end"] * 4
    if kinds[0] == "chain" and _turns(words, index):
        return False  # "– 31 sc – ch 1, turn": the next row's
    if kinds[0] == "chain":
        return kinds[1] == "number" and kinds[2] not in _COUNTED if at == index else kinds[1] not in ("dash", *_COUNTED)
    if kinds[0] == "skip":
        return True
    if kinds[0] in ("stitch", "increase", "special"):
        behind = [one.kind for one in words[at + 1 : at + 5]]
        if behind[:1] == ["in"] and any(kind in ("row", "round") for kind in behind):
            return False  # "– 48 sc in the last round" is told
        return kinds[1] in _PLACED or kinds[1] == "number" and kinds[2] in ("together", *_PLACED)
    return False


def _turns(words: list[Lexeme], index: int) -> bool:
    """Whether "ch 1, turn" stands at `index`, in either order of its words."""
    behind = [one.kind for one in words[index + 2 : index + 4]]
    return "turn" in behind
