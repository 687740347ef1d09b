"""Which side of the work faces the maker, as sentences tell it: "With RS facing", "wrong side towards you"."""

from __future__ import annotations

from dataclasses import dataclass

from lint.expression import expression
from lint.source import Span

_SIDE = r"(?P<side>RS|right[ -]side|WS|wrong[ -]side)"
_FACING = expression(
    rf"(?i)\b{_SIDE}\b(?:\s+of\s+(?:the\s+)?[\w-]+(?:\s[\w-]+)?)?\s+(?:is\s+|now\s+|still\s+|always\s+){{0,2}}(?:facing|faces|towards?)\b"
)
# words that may turn the work without being read as a turn
_UNSURE = expression(
    r"(?i)\bturn(?:s|ed|ing)?\b(?!\s?-?\s?(?:ch|chain|t-?ch))|\b(?:RS|WS)\b|\b(?:right|wrong)[ -]sides?\b"
)
_ROTATES = expression(
    r"(?i)\b(?:turn|rotate)(?:ing)?\s+(?:(?:the\s+)?(?:work|piece)\s+)?(?:\d+\s*(?:°|deg)|(?:by\s+)?(?:a\s+)?(?:quarter|90)|sideways|clockwise|counter|anti|upside|inside|to\s+(?:work|side))"
)
_UNTURNED = expression(
    r"(?i)\b(?:do(?:es)?\s?n[o']t|never|without|no|not)\s+(?:ever\s+)?turn(?:ed|ing)?\b|\b(?:RS|right[ -]side)\b[^.\n]{0,24}\b(?:fac\w+|throughout)\b[^.\n]{0,24}\b(?:throughout|you|(?:every|each|all)\s+(?:row|r(?:oun)?d|rnd)s?)\b"
    r"|\b(?:all|every|each)\s+(?:row|rnd|round)s?\b[^.\n]{0,50}\b(?:RS|right[ -]side)\b"
)
_TURNED_ROUNDS = expression(
    r"(?i)\bturn(?:ed|ing)?\b[^.\n]{0,40}\b(?:rnds?|rounds?)\b|\b(?:rnds?|rounds?|join\w*)\b[^.\n]{0,60}\bturn(?:ed|ing)?\b"
)
_NOT = expression(r"(?i)\b(?:not|n't|never|without|no)\b[^.\n]{0,12}\bturn")


@dataclass(frozen=True, slots=True)
class Facing:
    """A side said to face the maker."""

    span: Span
    side: str  # rs | ws


@dataclass(frozen=True, slots=True)
class TurningHabit:
    """What the text outside the rows says about turning; where it says something, silence in a row tells nothing."""

    rows_unturned: bool
    rounds_turned: bool
    unlike_others: bool  # a craft whose rows are not turned at all


def facing_in(text: str, offset: int = 0) -> Facing | None:
    """The last side that a stretch of text says to be facing."""
    found = None
    for match in _FACING.finditer(text):
        side = "rs" if match["side"].lower().startswith("r") else "ws"
        found = Facing(Span(offset + match.start(), offset + match.end()), side)
    return found


def may_turn(text: str) -> bool:
    """Whether words that were not read as work speak of turning or of a side."""
    return _UNSURE.search(text) is not None


def turns_otherwise(text: str) -> bool:
    """Whether a row turns the work round without showing its other side: "turn 90 degrees"."""
    return _ROTATES.search(text) is not None


def turning_habit(talk: str, whole: str) -> TurningHabit:
    """What notes say about turning; `talk` is the text outside the rows."""
    rounds = any(not _NOT.search(match.group(0)) for match in _TURNED_ROUNDS.finditer(talk))
    other = expression(r"(?i)\btunisian\b|\b(?:forward|return) pass\b|\bslip[- ]stitch crochet\b").search(whole)
    return TurningHabit(_UNTURNED.search(talk) is not None, rounds, other is not None)
