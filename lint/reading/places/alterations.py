"""Tells remarks that may change what is worked: "(but not in the last two)", "in both", "(3 at a time)", "and again on the other side"."""

from __future__ import annotations

from lint.expression import expression
from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS

_NUMBER = r"(?:\d+|one|two|three|four|five|six|an?)"
_NTH = r"(?:other|second|2nd|third|3rd|fourth|4th|fifth|5th|alternate)"
_SOME = rf"(?:{_NUMBER}|every|each|both|last|first|ends?|corners?|sts?|stitch(?:es)?|sides?|unworked)"
# spaces are passed over by who works the stitches; lengths, tails and colours are none of them
_NO_STITCHES = r"(?:(?:long|short|tail|end\sof|yarn|row|colou?r|cm|mm|in|inch(?:es)?|yards?|metres?|meters?|m|ch(?:ain)?|sps?|spaces?)\b|\d|\")"
# what the words begin with, behind an "and", "but" or "then"
_ALTERS = expression(
    r"(?:(?:and|but|or|then|so)\s)*(?:"
    + "|".join(
        (
            rf"not\s(?:in|into|on|at|over)\s(?:the\s)?(?:{_SOME}|next|middle)\b",
            rf"(?:except|excluding|without|omit(?:ting)?|instead\sof|save\sfor|minus)\s(?:for\s|in\s|at\s|where\s)?(?:the\s)?(?:{_SOME}|marked)\b",
            rf"all\sbut\s(?:the\s)?{_SOME}\b",
            rf"(?:in|on|into|at|over)\s(?:(?:the\s)?alternate\b|every\s{_NTH}\b|(?:both|pairs|twos|threes)$)",
            rf"every\s{_NTH}\b",
            r"(?:only\s)?on\s(?:one|both|each|either|the\sother)\s(?:sides?|ends?|half|halves)\b",
            r"(?:twice|double|half|three\stimes)\s(?:as\s(?:many|much)|over|the\snumber|of\s(?:them|these))\b",
            r"(?:mirrored|reversed|doubled|halved|doubling)\b",
            rf"(?:plus\s|less\s|minus\s|and\s)?{_NUMBER}\s(?:more|less|fewer|extra|at\sa\stime|for\sluck)\b",
            rf"(?:plus|less)\s{_NUMBER}$",
            rf"(?:{_NUMBER}|once|twice)\s(?:times\s)?in\s(?:the|each|every)\s(?:corners?|last|first|middle|tip)\b",
            rf"(?:skipping|missing|omitting|adding|leaving)\s(?:the\s)?{_SOME}\b(?!\s?{_NO_STITCHES})",
            rf"keeping\s(?:the\s)?(?:{_NUMBER}|last|first)\b(?!\s?{_NO_STITCHES})",
            r"(?:working|doing|making)\s(?:double\b|(?:the\s)?(?:last|first)\s\w+\s(?:together|twice)\b)",
            r"as\s(?:many|often)\sas\b",
            r"as\sbefore\s(?:but|with|less|plus)\b",
            r"until\sit\b",
            rf"ending\s{_NUMBER}\s(?:st\s|sts\s|stitches\s)?(?:short|before)\b",
            r"starting\s(?:from|at|with)\sthe\s(?:second|2nd|third|3rd|last|middle)\b",
            rf"with\s{_NUMBER}\sin\s(?:the|each)\b",
            r"(?:then\s)?the\ssame\sagain\b",
            r"so\s(?:forth|on)$",
            r"over\s(?:two|three|four|2|3|4)\srows\b",
            r"(?:in)?to\sthe\srow\sbelow$",
            r"again\s(?:on|in|for|along)\b",
            r"repeat(?:ing)?\s(?:on|along)\sthe\s(?:other|second|opposite)\b",
            r"(?:in|de)creasing\s(?:evenly|as\s(?:needed|necessary|required))\b",
        )
    )
    + r")"
)


def may_alter(inside: list[Lexeme]) -> bool:
    """Whether the words of a remark may change the number of stitches, so that passing them over would guess."""
    while inside and inside[0].kind in (*OPENERS, ",", ";", "."):
        inside = inside[1:]
    while inside and inside[-1].kind in (*CLOSERS, ",", ";", "."):
        inside = inside[:-1]
    told = " ".join(item.lower for item in inside)
    return _ALTERS.match(told) is not None


def bids_again(words: list[Lexeme]) -> bool:
    """Whether words in brackets bid to work more: "work Row 2 again", "rep this row once", "do this twice", "twice"."""
    rows = any(item.kind in ("row", "round") or item.lower == "this" for item in words)
    if rows and any(item.kind == "repeat" for item in words):
        return True
    if any(item.kind == "repeat" for item in words) and any(item.kind == "star" for item in words):
        return True  # "(rep from * 6 times)"
    if words[:1] != [] and words[0].kind == "repeat" and any(item.kind == "number" for item in words[1:3]):
        return len(words) <= 3  # "sc, inc (rep 6)"
    often = words[-1:] != [] and (words[-1].lower in ("again", "twice", "thrice") or words[-1].kind == "times")
    bidden = rows and words[0].kind == "make" or words[:1] != [] and words[0].lower == "do"
    return often and (bidden or len(words) <= 2)
