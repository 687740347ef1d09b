"""Stitch names that are no stitches: a dog called Treble, a maker's mark, "treble the amount of yarn".

They are told by what stands beside them.  Words that are worked are never names.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from lint.expression import expression
from lint.lexicon import Lexeme, Lexicon
from lint.reading.words.somebody import BEINGS, DOES, IS_SOMEBODY
from lint.source import Span

# who or what is called so
_INTRODUCED = expression(
    r"(?:\b(?:called|named|nicknamed|christened|(?i:mr|mrs|ms|dr|aunt|auntie|uncle|granny|grandma|grandpa|cousin))\.?"
    rf"|(?i:\b(?:my|our|his|her|their|your|the)\s+(?:\p{{L}}+\s+)?(?:{BEINGS})),?|©)\s+\Z"
)
# three times as much: a verb, and no stitch
_AS_MUCH = expression(
    r"\s+(?:(?:the|your|this|that|its)\s+(?:\p{L}+\s+){0,2})?(?:amount|number|quantity|size|length|yardage|stuffing|wool|thread|width|chain|yarn|thickness|"
    r"multiple|recipe|count|time|times)\b"
)
_ACTS = expression(rf"\s+(?:{DOES})\b")  # said of a name that was told before
_NEXT_WORD = expression(r"[ \t]+(\p{Lu}\p{Ll}+)")


def not_stitches(text: str, lexicon: Lexicon, stitches: Iterable[Lexeme]) -> Iterator[Span]:
    """The places of stitch words that are somebody's name, or no name at all."""
    stitches = list(stitches)
    names = {one.text for one in stitches if _is_name(text, lexicon, one)}
    for one in stitches:
        again = one.text in names and (not _opens(text, one) or _ACTS.match(text, one.end))
        if again or _is_name(text, lexicon, one) or one.lower == "treble" and _AS_MUCH.match(text, one.end):
            yield one.span


def _begins_like_name(words: str) -> bool:
    return words[:1].isupper() and not (len(words) > 3 and words.isupper())


def _is_name(text: str, lexicon: Lexicon, one: Lexeme) -> bool:
    if not _begins_like_name(one.text):
        return False
    before = text[max(0, one.start - 60) : one.start]
    if _INTRODUCED.search(before) or IS_SOMEBODY.match(text, one.end):
        return True
    following = _NEXT_WORD.match(text, one.end)
    if following is None or _opens(text, one) or expression(r"[\d,]\s*\Z").search(before):
        return False
    return not lexicon.knows(following[1]) and not expression(r"\p{Lu}\p{L}*\s+\Z").search(before)


def _opens(text: str, one: Lexeme) -> bool:
    """Whether a word begins a sentence or a line."""
    return expression(r"(?:[.!?:\n)\]]\s*|\A)[\"“(*•-]*\Z").search(text[max(0, one.start - 40) : one.start]) is not None
