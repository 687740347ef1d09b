"""Reads a side or piece that is worked as the mirror of another: "as Left Front, reversing shapings", "complete to match first side"."""

from __future__ import annotations

from lint.expression import expression
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import RowCall, Step

# a mirrored row makes as many stitches as the one that it mirrors
_MIRRORED = (
    r"(?:,\s*)?(?:but\s+)?(?:working\s+)?(?:revers(?:e|ing)\s+(?:all\s+)?(?:the\s+)?(?:(?:neck|armhole|front|side)\s+)?shapings?"
    r"|with\s+(?:all\s+)?(?:the\s+)?shapings?\s+reversed|in\s+reverse|mirrored|(?:in|as\s+a)\s+mirror\s+image)"
)
_REVERSAL = expression(rf"(?i){_MIRRORED}\s*")
_NAME = r"(?P<name>(?!first\s+\d)[^\d,;.]{3,36}?)"
_SIDE = r"(?:(?:this|the|that|second|other|right|left)\s+){1,2}(?:side|half|shoulder|front|piece|part)\s+"
_TO_MATCH = expression(
    rf"(?i)(?:(?:complete|finish|work|cont|continue)\s+(?:{_SIDE})?to\s+(?:match|correspond(?:\s+(?:to|with))?)"
    rf"|(?:complete|finish)\s+(?:{_SIDE})?(?:exactly\s+)?(?:as|same\s+as|the\s+same\s+as)(?:\s+(?:given|worked|told))?(?:\s+for)?)"
    rf"\s+(?:the\s+)?{_NAME}(?:\s*{_MIRRORED})?\s*"
)
_LONGEST = 24  # lexemes of such a sentence


def reversal(stream: Stream) -> bool:
    """Takes ", reversing shapings", to the sentence's end; nothing taken where something else is reversed or follows."""
    start, end = stream.at, stream.sentence_end(stream.at, ".", ";", "dash", *OPENERS)
    if start < end <= start + _LONGEST and _REVERSAL.fullmatch(stream.words(start, end)):
        stream.at = end
        return True
    return False


def to_match(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Complete to match first side, reversing shapings": what that side has more than is worked of this one."""
    if steps or start and stream.lexemes[start - 1].kind not in (".", *CLOSERS):
        return False
    end = stream.sentence_end(start, ".", ";", "dash", *OPENERS)
    told = _TO_MATCH.fullmatch(stream.words(start, end)) if end <= start + _LONGEST else None
    if told is None:
        return False
    stream.at = end
    steps.append(RowCall(stream.span_from(start), None, None, part=told["name"].strip(), rest=True))
    return True


__all__ = ["reversal", "to_match"]
