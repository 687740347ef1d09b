"""Whether a part whose labels tell neither rows nor rounds is worked in rounds."""

from __future__ import annotations

from collections.abc import Sequence

from lint.expression import expression
from lint.reading.lines.texts import PartText
from lint.source import SourceText

_BOTH_SIDES = expression(r"(?i)\b(?:other|opposite|second) side\b")
_LAID_OTHERWISE = expression(  # the piece lies another way, and the work goes on as before
    r"\bturn(?:ing)?\b[^,;:.]{0,30}?\b(?:upside\s+down|inside\s+out|right\s+side\s+out|on\s+(?:its|to\s+its|the)\s+side|sideways|by\s+90)\b"
)


# a round's end; not "join yarn in next st", "join B with sl st", where a row begins as well
_JOINED = expression(
    r"\bjoin\b(?!\s+(?:(?:the|new|main)\s+)*(?:(?:yarn|wool|thread|cotton|colou?r)\b|[a-z]\s+(?:in|with|to|at)\b))|\bsl st (?:in|to) (?:first|top)"
)
# "sc around", "sc in each st around": no row is worked so
_AROUND = expression(r"\baround\s*(?:[.,;:()\[\]=–-]|\d|$)")
# "R1: 6X (6)", "1) 8 sc (8)": in a ring that is left unsaid
_RING_UNSAID = expression(
    r"\W*(?P<number>[4-9]|1[0-2])\s?(?:x|sc|sbn|dc)\b\W*[(\[=]\s*(?P=number)\s?(?:sts?|sc|dc|x)?\W*$"
)
_LIMBS_TOGETHER = expression(
    r"\b(?:first|second|1st|2nd|other|both)\s+(?:leg|foot|feet|arm|paw|ear|horn|tentacle|half)s?\b"
)


def round_by_words(
    source: SourceText, part: PartText, goes_on: bool, rings: Sequence[str] = (), after_rounds: bool = False
) -> bool:
    """Whether a part labelled "R1", "1)" is worked in rounds: a ring, a join, a spiral, both sides of a chain.

    `goes_on`: its numbers go on from rounds of the part before, which is `after_rounds`.  `rings`: the pattern's own
    words for a ring.
    """
    words = " ".join(source.slice(row.span).lower() for row in part.rows[:6])
    first = next((i for i, row in enumerate(part.rows) if row.label is not None), 0)
    worked = [
        row for i, row in enumerate(part.rows[:6]) if row.label is not None or i < first
    ]  # no seam told after them
    joins = " ".join(source.slice(row.span).lower() for row in worked)
    later = " ".join(
        source.slice(row.span).lower() for row in worked if row.label is not None and row is not worked[first]
    )
    turned = (
        expression(r"(?<!\bnot |n't |without )\bturn(?:ing)?\b(?! ch)").search(_LAID_OTHERWISE.sub(" ", later))
        is not None
    )
    if turned and not expression(r"\bjoin|\bs(?:l )?st? (?:in|to|into) ").search(later):
        return False  # a half circle begins in a ring, too
    if goes_on or any(_BOTH_SIDES.search(source.slice(row.span)) for row in worked[: first + 1]):
        return True
    if expression(
        r"\b(?:in|into|make|magic)\s.{0,12}\b(?:mr|ring|circle|loop)\b|\bas rounds\b|(?:^|[:.)\-–]\s*)mr\b|^\W*mc\W{0,3}\d"
    ).search(words):
        return True
    if any(f" in {word} " in words or f" into {word} " in words for word in rings):
        return True
    begins = source.slice(worked[first].span).lower() if first < len(worked) else ""
    if not expression(r"\bturn|\bch(?:ain)?\b").search(words) and _RING_UNSAID.match(begins):
        return True
    if after_rounds and _LIMBS_TOGETHER.search(begins):
        return True  # the body, worked on from the legs
    if "turn" not in words and any(_AROUND.search(source.slice(row.span).lower()) for row in worked):
        return True
    if _JOINED.search(joins):
        return True
    if not expression(r"(?i)spiral|continuous round").search(source.text):
        return False
    return "turn" not in _LAID_OTHERWISE.sub(" ", words)
