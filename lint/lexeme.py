"""A word or phrase with its kind, and the words for the loops of a stitch among such."""

from __future__ import annotations

from dataclasses import dataclass, field

from lint.amount import Amount
from lint.source import Span


@dataclass(frozen=True, slots=True)
class Lexeme:
    """A word or phrase with its kind.

    `kind` is a kind of rules/words.yaml, or: stitch, special, number, decimal, ordinal, star, dash, word, or the sign itself.
    A list over the sizes is one "number", or "ordinals".
    `value` is the stitch's key, the special stitch's name; `number` the value of a number or ordinal.
    `meant` is the word that a damaged one must have been: "1" of "l dc".
    """

    kind: str
    text: str
    start: int
    end: int
    glued: bool
    value: str = ""
    number: int = 0
    amount: Amount | None = None  # of a list over the sizes, which is one lexeme like a single number
    meant: str = ""
    lower: str = field(init=False, repr=False, compare=False)  # the text in lower case: what is asked for most

    def __post_init__(self) -> None:
        object.__setattr__(self, "lower", self.text.lower())

    @property
    def quantity(self) -> Amount:
        """The number, or the list over the sizes."""
        return self.amount or Amount.of(self.number)

    @property
    def span(self) -> Span:
        return Span(self.start, self.end)

    @property
    def doubled(self) -> bool:
        """Whether an increase is a double one, which makes three of one stitch, or a decrease, which makes one of three."""
        said = self.lower.startswith("double") or self.value == "double"  # by a house's own letter
        return self.kind in ("increase", "decrease") and said


IN_LOOP = "+"  # in the value of a word that names a stitch and its loop: "sc+blo"


def stitch_and_loop(word: Lexeme, bare: str = "") -> list[Lexeme]:
    """ "scBLO", or a pattern's own word for it, as the stitch and, with no width, the loop that it goes into.

    `bare`: the stitch's own letters, where the word is made of its name and the loop's.
    """
    stitch, _, loop = word.value.partition(IN_LOOP)
    if not loop:
        return [word]
    kind = "back_loop" if loop[0] == "b" else "front_loop"
    return [
        Lexeme("stitch", bare or word.text, word.start, word.end, word.glued, stitch),
        Lexeme(kind, loop if bare else "", word.end, word.end, True),
    ]


def third_loops(lexemes: list[Lexeme]) -> list[Lexeme]:
    """ "3rd loop of each hdc", "third loops around": the loop of a stitch; not "3rd loop from the hook", nor a loop of lace."""
    for index in range(len(lexemes) - 2, -1, -1):
        third = lexemes[index]
        if third.kind != "ordinal" or third.number != 3:
            continue
        loop, after = (*lexemes[index + 1 : index + 3], None)[:2]
        if loop.lower not in ("loop", "loops", "lp", "lps"):
            continue
        only = after is not None and after.lower == "only"
        rest = [one.lower for one in lexemes[index + 2 + only : index + 4 + only]]
        of_stitches = only or rest[:1] in (["around"], ["across"], [":"]) or rest[:1] == ["of"]
        if of_stitches or third.lower == "third" and rest[:1] != ["from"]:
            last = after if only else loop
            words = " ".join(one.text for one in lexemes[index : index + 2 + only])
            lexemes[index : index + 2 + only] = [Lexeme("third_loop", words, third.start, last.end, third.glued)]
    return lexemes
