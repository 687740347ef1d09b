"""How pieces are held against each other: "Hold the belly against the back, wrong sides together"."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Remark, Step

_HELD = (
    "word",
    "the",
    "and",
    "with",
    "together",
    ",",
    "number",
    "group_word",
    "half",
    "ordinal",
    "first",
    "in",
    "to",
    "top",
)
_NOT_HELD = ("hook", "loop", "loops", "yarn", "work", "yarns", "strand", "strands", "stitches", "sts")
_FACED = ("side", "facing", "together", "each")
_FACED_WORDS = ("out", "outside", "outward", "outwards", "other", "touching", "towards", "toward", "in", "inside")


def _tells_side(words: list[Lexeme]) -> bool:
    """Whether "wrong sides together", "WS", "right sides" stands there."""
    first = words[0]
    named = first.lower in ("wrong", "right") and len(words) > 1 and words[1].kind == "side"
    return named or first.kind in ("right_side", "wrong_side") or first.lower.endswith("sides together")


def faced(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Hold the belly against the back, wrong sides together", "Place front and back with RS facing out"."""
    end = stream.sentence_end(stream.at, ".", ";", ":")
    told = next((at for at in range(stream.at, end) if _tells_side(stream.lexemes[at : at + 2])), end)
    words = stream.lexemes[stream.at : told]
    idle = all(item.kind in _HELD and (item.kind != "number" or item.number == 2) for item in words)
    if told == end or not words or not idle or any(item.lower in _NOT_HELD for item in words):
        return False
    behind = told + 1
    while behind < end and (stream.lexemes[behind].kind in _FACED or stream.lexemes[behind].lower in _FACED_WORDS):
        behind += 1
    if behind < end and stream.lexemes[behind].kind not in (*SIGNS, "and", *OPENERS):
        return False
    stream.at = behind
    steps.append(Remark(stream.span_from(start)))
    return True
