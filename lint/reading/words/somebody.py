"""Knows a sentence about somebody who is called as a stitch is: "Dc the cat will want to help." """

from __future__ import annotations

from lint.expression import expression
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

BEINGS = (
    "cat|dog|kitten|puppy|daughter|son|niece|nephew|sister|brother|friend|horse|pony|rabbit|bunny|bear|mole|hamster|"
    "hen|parrot|baby|teacher|neighbour|neighbor|tester|testers"
)
DOES = (
    "is|was|will|would|has|had|can|could|does|did|may|might|says?|said|loves?|likes?|wants?|helps?|sits?|sleeps?|"
    "lives?|looks?|needs?|knows?|thinks?"
)
# what follows the name: "the cat will", ", our cat, likes", "is my dog"
IS_SOMEBODY = expression(
    rf"(?i)(?:\s+the|\s*,\s+(?:my|our|the|a))\s+(?:\p{{L}}+\s+)?\p{{L}}+\s*,?\s+(?:who\s+)?(?:{DOES})\b"
    rf"|\s+(?:is|was)\s+(?:my|our|the)\s+(?:\p{{L}}+\s+)?(?:{BEINGS})\b"
)
_BEING = expression(rf"(?i)\b(?:{BEINGS})\b")
_WORK = ("stitch", "chain", "any_stitch", "special", "one_stitch", "space", "number", "skip", "repeat", "loop", "edge")


def about_somebody(stream: Stream, start: int) -> int | None:
    """Where a sentence that begins with a name at `start`, and has no other word of work, ends; None where it is work.

    Only of beings: "Sc the rest has to be worked" is left, for it may be work.
    """
    lexemes = stream.lexemes
    if start and lexemes[start - 1].kind not in (".", "!", *OPENERS, *CLOSERS) or not lexemes[start].text[:1].isupper():
        return None
    end = start + 1
    while end < len(lexemes) and lexemes[end].kind != ".":
        if lexemes[end].kind in _WORK:
            return None
        end += 1
    words = "".join(f" {lexeme.text}" for lexeme in lexemes[start + 1 : end])
    return end if IS_SOMEBODY.match(words) and _BEING.search(words) else None
