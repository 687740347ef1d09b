"""Tells lines between rows that set the work somewhere else, in words that are not understood: "Working over the 6 skipped sts:".

Passed over as talk, they would let the next row stand on the row below.
"""

from __future__ import annotations

from lint.expression import Expression, expression
from lint.place import Place, Target, TargetKind, Which
from lint.source import Span
from lint.tree import AlongEdge, JoinYarn, OpenWork, OtherSide, Step, walk

_WORK = r"(?:work(?:ing|ed)?|crochet(?:ing|ed)?|cont(?:inue|inuing)?|pick(?:ing)?\sup|return(?:ing)?|go(?:ing)?\sback|start(?:ing)?|begin(?:ning|s)?|insert(?:ing)?\s(?:the\s|your\s)?hook|(?:re)?join(?:ing)?)"
_STITCHES = r"(?:sts?|stitch(?:es)?|sc|dc|hdc|tr|htr|ch|chains?|loops?)"
_AN_EDGE = r"(?:openings?|armholes?|foundation|starting\s(?:ch|chain)|skipped|missed|unworked|row\sends?|ends\sof\s(?:the\s)?rows|(?:other|opposite|second|left|right|under)\s?side\sof|side\sof\sthe|edges?)"
_LIMB = r"(?:leg|arm|half|shoulder|front|back|panel|section|strap|flap|ear|wing|sleeve|foot|finger|thumb|tentacle)"
_OF_TWO = r"(?:first|second|1st|2nd|other|left|right|front|back|next|each)"
# one behind the other in a clause: each is looked for behind the first of the one before
_SOMEWHERE = (
    (
        expression(rf"(?i)\b{_WORK}\b"),
        expression(r"(?i)\b(?:in|into|along|around|round|over|on|at|across|from|to|up)\b"),
        expression(rf"(?i)\b{_AN_EDGE}\b"),
    ),
    (
        expression(rf"(?i)\b{_WORK}\b"),
        expression(
            rf"(?i)\b(?:on|over|across)\s(?:the\s|only\s)*(?:(?:first|next|last|remaining|rem|following|other|front|back|left|right)\s\d+|\d+)\s{_STITCHES}\b"
        ),
    ),
    (
        expression(rf"(?i)\b{_WORK}\b"),
        expression(
            rf"(?i)\b(?:on|over|across)\s(?:the\s|your\s)?(?:{_OF_TWO}\s{_LIMB}s?|{_LIMB}s?\sonly|half\s(?:of\s)?the)\b"
        ),
    ),
    (expression(rf"(?i)\b{_WORK}\b"), expression(rf"(?i)\bheld\s{_STITCHES}\b")),
)
_HEADS = expression(rf"(?i)^\W*(?:on|along|around|in|over)\s(?:the\s)?[^.;:]*\b{_AN_EDGE}\b[^.;]*:\s*$")
# no talk, whatever stands beside it
_SURELY = expression(
    rf"(?i)\bleav(?:e|ing)\s(?:the\s)?(?:last|first|remaining|rem|other|next)\s(?:\d+\s)?{_STITCHES}\sunworked\b"
    rf"|\bpick(?:ing)?\sup\s(?:and\s\w+\s)?\d+\s"
    rf"|\b(?:next|following|coming)\s(?:\w+\s)?(?:rows?|rounds?|rnds?)\b[^.;:]{{0,60}}\bworked\s(?:in|on|over|across)\s(?:only\s)?(?:the\s|these\s|those\s)*(?:(?:remaining|rem|skipped|missed|unworked|other|first|last)\b|\d+\s{_STITCHES}\b)"
    rf"|^\W*(?:now\s)?(?:go|going|return|returning)\s(?:back\s)?to\s(?:the\s)?(?:row|round|rnd)\b"
    rf"|\b(?:divide|separate)\b[^.;]*\b(?:legs|arms|halves|sides)\b"
    rf"|\b(?:sc|hdc|dc|htr|tr|work)\s\d+\s(?:more|extra|further)\b"
    rf"|\b{_LIMB}s\s(?:\w+\s)?separately\b|^\W*join\s(?:the\s|both\s)*(?:{_OF_TWO}\s)?{_LIMB}s?\b[^.;]{{0,80}}\bwith\s(?!\d)"
    rf"|\b(?:work(?:ing)?|crochet(?:ing)?|sc|hdc|dc|stitch(?:ing)?)\b[^.;]{{0,80}}\bthrough\s(?:both|all)\s(?:the\s)?(?:layers|thicknesses|walls)\b"
    rf"|^\W*add\s\d+\s(?:more\s|extra\s|new\s)*{_STITCHES}\b(?!\s(?:apart|between|from|below|above|away))"
    rf"|^\W*(?:rip|unravel|frog|undo|pull)\s(?:back\s|out\s)*(?:the\s)?(?:last|previous|one|two|\d+)\s(?:\d+\s)?(?:rows?|rounds?|rnds?)\b"
    rf"|^\W*(?:from\s(?:now|here|this\spoint)\son|(?:on|in|over|for)\sthe\s(?:next|following)\s(?:\d+\s)?(?:rows?|rounds?|rnds?)),?\s(?:dec(?:rease)?|inc(?:rease)?|skip|miss|omit|add|leave)\b"
    rf"|^\W*(?:skip|miss|omit)\s(?:the\s)?(?:first|last)\s(?:\d+\s)?{_STITCHES}\b"
    rf"|^\W*cut\soff\s(?:the\s)?(?:last|first)\s(?:\d+\s)?{_STITCHES}\b"
)
# an order, wherever it stands in its sentence: "Before continuing, ch 4.", "Continue in rows: leave 6 sts unworked."
_FIRST = r"(?:^\W*|[,:]\s|\b(?:and|then|now|point|next)\s)"
_ORDERED = expression(
    rf"(?i){_FIRST}(?:add\s)?(?:ch|chain)\s\d+\b|{_FIRST}add\s\d+\s(?:ch|chains?)\b"
    rf"|{_FIRST}(?:sk|skip|miss|leave)\s(?:(?:the|next|first|last|center|centre|middle|remaining)\s)*\d+\s{_STITCHES}\b"
)
_WISHES = expression(
    r"(?i)\b(?:for\san?\s\w+er\b|longer|wider|larger|bigger|smaller|shorter|extra|multiple|instead|adjust\w*|always|each\stime|would|when(?:ever)?|every)\b"
)
_TALK = expression(
    r"(?i)\b(?:sew\w*|sewn|stuff\w*|fill\w*|eyes?|embroider\w*|seam\w*|weave|glue|pin|will|later|if|can|may|should|measure\w*|photo|picture|diagram|marker?s?|thread|fold(?:ed)?\sunder|block|attach(?:ed)?|needle|worked\sin|are|is)\b"
)
_KNOWN = (AlongEdge, JoinYarn, OtherSide)


_JOINS = expression(r"(?i)\W*(?:(?:with|using)\s[\w ]{1,20},\s)?(?:re)?join\b")

_GREATER = r"(?:bigger|larger|taller|longer|wider|deeper|higher|thicker)"
_OWN_WISH = rf"(?:for|to\s(?:make|get))\s(?:an?|your)\s(?:\w+\s)?{_GREATER}\s(?!sizes?\b|versions?\b)[\w-]+(?:\s[\w-]+)?|for\s{_GREATER}\s(?!sizes\b|versions\b|ones\b)[\w-]+s|if\syou(?:['’]d|\swould)?\s(?:want|like|prefer|wish|need)\b[^.,:;]*\b{_GREATER}\b[^.,:;]*"
_OTHER_SIZES = rf"(?:for|(?:to|if\s(?:you\sare\s)?)\s?(?:make|making|work|working))\s(?:(?:an?|the|any|your)\s)?{_GREATER}\s(?:sizes?|versions?|ones?)"
_GO_ON = r"(?:simply\s|just\s|you\scan\s)?(?:rep(?:eat)?|work|add|continue)\b[^.;:\n]*\b(?:rows?|rnds?|rounds?)\b[^.;:\n]*[.!]?\s*$"
# "For a taller pot, repeat Round 6 before you go on.": who does so has other counts than those printed
_AT_WILL = expression(rf"(?i)(?:^|(?<=[.!?]\s))\W*(?:{_OWN_WISH}),?\s{_GO_ON}")
# "For larger sizes, repeat Rnd 2." in a pattern of one size, which has no larger ones
_IN_OTHER_SIZES = expression(rf"(?i)(?:^|(?<=[.!?]\s))\W*(?:{_OTHER_SIZES}),?\s{_GO_ON}")


def without_wishes(words: str, one_size: bool = False) -> str:
    """A line between rows without the sentence at its end that is only for who wants the piece bigger than it is."""
    found = _AT_WILL.search(words) or (_IN_OTHER_SIZES.search(words) if one_size else None)
    return words[: found.start()] if found is not None else words


def set_elsewhere(steps: tuple[Step, ...], words: str, span: Span) -> JoinYarn | OpenWork | None:
    """The line as work that is not known, or as yarn joined there, if it may set the work elsewhere.

    `steps`: what was read of it.
    """
    if any(isinstance(step, _KNOWN) for step in walk(steps)):
        return None
    sentences = expression(r"(?<=[.;])\s").split(words)
    told = any(_SURELY.search(one) or _sets(one) and not _TALK.search(one) for one in sentences)
    if told and _JOINS.match(words) is not None:
        return JoinYarn(span, None, None, (Place(span, Which.ELSEWHERE, (Target(TargetKind.PLACE),)),))
    return OpenWork(span, words) if told else None


def _sets(sentence: str) -> bool:
    """Whether a sentence may set the work elsewhere, if it is no talk."""
    return _is_somewhere(sentence) or _ORDERED.search(sentence) is not None and not _WISHES.search(sentence)


def _is_somewhere(sentence: str) -> bool:
    """Whether a sentence says that work goes into, or along, a place that may not be the row below."""
    clauses = expression(r"[.;:]").split(sentence)
    return _HEADS.search(sentence) is not None or any(
        _in_order(clause, wanted) for clause in clauses for wanted in _SOMEWHERE
    )


def _in_order(words: str, wanted: tuple[Expression, ...]) -> bool:
    at = 0
    for one in wanted:
        found = one.search(words, at)
        if found is None:
            return False
        at = found.end()
    return True


__all__ = ["set_elsewhere", "without_wishes"]
