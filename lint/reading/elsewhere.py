"""Tells lines between rows that set the work somewhere else, in words that are not understood: "Working over the 6 skipped sts:".

Passed over as talk, they would let the next row stand on the row below.
"""

from __future__ import annotations

from lint.expression import expression
from lint.place import Place, Target, TargetKind, Which
from lint.source import Span
from lint.tree import AlongEdge, JoinYarn, OpenWork, OtherSide, Step, walk

_WORK = r"(?:work(?:ing|ed)?|crochet(?:ing|ed)?|cont(?:inue|inuing)?|pick(?:ing)?\sup|return(?:ing)?|go(?:ing)?\sback|start(?:ing)?|begin(?:ning|s)?|insert(?:ing)?\s(?:the\s|your\s)?hook|(?:re)?join(?:ing)?)"
_STITCHES = r"(?:sts?|stitch(?:es)?|sc|dc|hdc|tr|htr|ch|chains?|loops?)"
_AN_EDGE = r"(?:openings?|armholes?|foundation|starting\s(?:ch|chain)|skipped|missed|unworked|row\sends?|ends\sof\s(?:the\s)?rows|(?:other|opposite|second|left|right|under)\s?side\sof|side\sof\sthe|edges?)"
_LIMB = r"(?:leg|arm|half|shoulder|front|back|panel|section|strap|flap|ear|wing|sleeve|foot|finger|thumb|tentacle)"
_OF_TWO = r"(?:first|second|1st|2nd|other|left|right|front|back|next|each)"
_SOMEWHERE = expression(
    rf"(?i)\b{_WORK}\b[^.;:]*\b(?:in|into|along|around|round|over|on|at|across|from|to|up)\b[^.;:]*\b{_AN_EDGE}\b"
    rf"|^\W*(?:on|along|around|in|over)\s(?:the\s)?[^.;:]*\b{_AN_EDGE}\b[^.;]*:\s*$"
    rf"|\b{_WORK}\b[^.;:]*\b(?:on|over|across)\s(?:the\s|only\s)*(?:(?:first|next|last|remaining|rem|following|other|front|back|left|right)\s\d+|\d+)\s{_STITCHES}\b"
    rf"|\b{_WORK}\b[^.;:]*\b(?:on|over|across)\s(?:the\s|your\s)?(?:{_OF_TWO}\s{_LIMB}s?|{_LIMB}s?\sonly|half\s(?:of\s)?the)\b"
    rf"|\b{_WORK}\b[^.;:]*\bheld\s{_STITCHES}\b"
)
# no talk, whatever stands beside it
_SURELY = expression(
    rf"(?i)\bleav(?:e|ing)\s(?:the\s)?(?:last|first|remaining|rem|other|next)\s(?:\d+\s)?{_STITCHES}\sunworked\b"
    rf"|\bpick(?:ing)?\sup\s(?:and\s\w+\s)?\d+\s"
    rf"|\b(?:divide|separate)\b[^.;]*\b(?:legs|arms|halves|sides)\b"
    rf"|\b(?:sc|hdc|dc|htr|tr|work)\s\d+\s(?:more|extra|further)\b"
    rf"|\b{_LIMB}s\s(?:\w+\s)?separately\b|^\W*join\s(?:the\s|both\s)*(?:{_OF_TWO}\s)?{_LIMB}s?\b[^.;]*\bwith\b"
    rf"|\b(?:work(?:ing)?|crochet(?:ing)?|sc|hdc|dc|stitch(?:ing)?)\b[^.;]*\bthrough\s(?:both|all)\s(?:the\s)?(?:layers|thicknesses|walls)\b"
    rf"|^\W*add\s\d+\s(?:ch|chains?)\b"
)
_TALK = expression(
    r"(?i)\b(?:sew\w*|sewn|stuff\w*|fill\w*|eyes?|embroider\w*|seam\w*|weave|glue|pin|will|later|if|can|may|should|measure\w*|photo|picture|diagram|marker?s?|thread|fold(?:ed)?\sunder|block|attach(?:ed)?|needle|worked\sin|are|is)\b"
)
_KNOWN = (AlongEdge, JoinYarn, OtherSide)


_JOINS = expression(r"(?i)\W*(?:(?:with|using)\s[\w ]{1,20},\s)?(?:re)?join\b")


def set_elsewhere(steps: tuple[Step, ...], words: str, span: Span) -> JoinYarn | OpenWork | None:
    """The line as work that is not known, or as yarn joined there, if it may set the work elsewhere.

    `steps`: what was read of it.
    """
    if any(isinstance(step, _KNOWN) for step in walk(steps)):
        return None
    sentences = expression(r"(?<=[.;])\s").split(words)
    told = any(_SURELY.search(one) or _SOMEWHERE.search(one) and not _TALK.search(one) for one in sentences)
    if told and _JOINS.match(words) is not None:
        return JoinYarn(span, None, None, (Place(span, Which.ELSEWHERE, (Target(TargetKind.PLACE),)),))
    return OpenWork(span, words) if told else None


__all__ = ["set_elsewhere"]
