"""How many sides "24 sc evenly along each side" is for: the figure is each one's, and not that of all of them."""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.lexicon import Lexeme
from lint.reading.words.piecewords import PIECE_WORDS

UNTOLD = Amount.of(0)  # "along each side": of how many is not said
_BETWEEN = ("of", "the", "number", "word", "first", "other")  # "each of the 4 sides", "each long edge"


def each_of_sides(words: list[Lexeme]) -> Amount:
    """The number of sides that these words give a figure to each of; one where they name no more than one edge."""
    for at, item in enumerate(words):
        if item.kind not in ("each", "all") or at and words[at - 1].kind == "around":
            continue  # "72 sc evenly around each armhole edge": a band of so many
        number: Amount | None = None
        for behind in words[at + 1 :]:
            if behind.kind in ("side", "edge"):
                several = item.kind == "each"
                return (number or UNTOLD) if several else ONE
            if behind.kind not in _BETWEEN or behind.lower in PIECE_WORDS:
                break
            number = behind.quantity if behind.kind == "number" else number
    return ONE


def times_sides(number: Amount, sides: Amount) -> Amount:
    """What a figure for each side comes to for all of them, in each size."""
    sizes = range(max(len(number.values), len(sides.values)))
    pairs = [(number.at(size), sides.at(size)) for size in sizes]
    return Amount(tuple(None if one is None or many is None else one * many for one, many in pairs))
