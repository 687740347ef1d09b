"""Phrases of the rule files that say several things in one: "(move|slip) (|the|your) marker(|s)".

Brackets with strokes hold alternatives, of which one may be empty; brackets without a stroke are words like others.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import product

from lint.expression import expression

MOST_PHRASES = 2_000  # that one may stand for: more is a slip of the pen


def spelled_out(phrase: str) -> list[str]:
    """Every phrase that one with alternatives stands for, in the order of its words.

    Raises ValueError, in one sentence, where a bracket within a bracket leaves it unclear, or where there are too many.
    """
    parts = expression(r"\(([^()]*\|[^()]*)\)").split(phrase)  # words, alternatives, words, …
    if any("|" in words for words in parts[::2]):
        raise ValueError(f"the alternatives of “{phrase}” are not in one pair of brackets each")
    choices = [part.split("|") if index % 2 else [part] for index, part in enumerate(parts)]
    number = 1
    for choice in choices:
        number *= len(choice)
    if number > MOST_PHRASES:
        raise ValueError(f"“{phrase}” stands for {number} phrases; {MOST_PHRASES} are the most")
    return [" ".join("".join(words).split()) for words in product(*choices)]


def all_spelled_out(phrases: Iterable[str]) -> list[str]:
    """The phrases of a list, each once, with those spelled out that stand for several."""
    return list(
        dict.fromkeys(one for phrase in phrases for one in (spelled_out(phrase) if "|" in phrase else [phrase]))
    )
