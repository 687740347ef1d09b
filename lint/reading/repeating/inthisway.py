"""Reads rows that go on gaining or losing as those before: "Continue to inc in this way every other round until there are 38 sts"."""

from __future__ import annotations

from lint.expression import expression
from lint.reading.repeating.rhythms import rhythms
from lint.reading.words.stream import CLOSERS, Stream
from lint.tree import Step

_LONGEST = 10  # lexemes before it is said in which rows
_GOES_ON = expression(
    r"(?:(?:and|now|then) )?(?:continue|continuing|cont|keep|carry on|go on|proceed)(?: on| to| with)*+"
    r" (?:inc|dec|increas(?:e|es|ing)|decreas(?:e|es|ing))"
    r"(?: (?:in|as|like|this|that|the same|the|same|manner|way|fashion|established|est|set|before))++(?: on| in| at)?"
)


def in_this_way(stream: Stream, steps: list[Step], start: int) -> bool:
    """The rows of such a sentence; by how many each of them gains or loses, those before tell."""
    if steps or start and stream.lexemes[start - 1].kind not in (".", ";", *CLOSERS):
        return False
    for at in range(start + 3, min(start + _LONGEST, len(stream.lexemes))):
        said = stream.lexemes[start:at]
        if _GOES_ON.fullmatch(" ".join(item.lower for item in said)) is None:
            continue
        stream.at = at
        told = rhythms(stream)
        if told is not None and len(told) == 1 and told[0].until is not None:
            more = any(item.kind == "increase" or item.lower.startswith("inc") for item in said)
            steps.append(told[0].call(stream.span_from(start), as_before=1 if more else -1))
            return True
    stream.at = start
    return False
