"""The abbreviations in a row's words: which they are, as they are printed, and whether a list has them in one of its forms."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import regex

from lint.expression import expression
from lint.lexicon import Lexeme


def as_printed(lexeme: Lexeme, word: str) -> str:
    """A word as it is printed, without the words of the phrase that it stands in: the "FO" of "do not FO"."""
    found = expression(rf"(?i)(?<!\w){regex.escape(word)}(?!\w)", own_words=True).search(lexeme.text)
    if found is not None and " " in lexeme.text and " " not in word:
        return found[0]
    return lexeme.text if len(lexeme.text) <= 12 else word


def joined(lexemes: Iterable[tuple[str, str, Lexeme]]) -> Iterator[tuple[str, str, Lexeme]]:
    """Puts "dc", "2", "tog" together again as the one abbreviation that they are in a list."""
    held: list[tuple[str, str, Lexeme]] = []
    for part, row, lexeme in lexemes:
        if lexeme.kind == "together" and lexeme.glued and len(held) == 2:
            first = held[0][2]
            text = first.text + held[1][2].text + lexeme.text
            yield part, row, Lexeme("together", text, first.start, lexeme.end, first.glued)
            held = []
            continue
        if lexeme.kind == "number" and lexeme.glued and len(held) == 1:
            held.append((part, row, lexeme))
            continue
        yield from held
        held = []
        if lexeme.kind == "stitch":
            held = [(part, row, lexeme)]
        else:
            yield part, row, lexeme
    yield from held


def abbreviations_in(lexeme: Lexeme, standard: frozenset[str]) -> list[str]:
    """The abbreviations in a lexeme: itself, or the words of a phrase ("turning ch")."""
    if lexeme.kind in ("number", "decimal", "ordinal", "star"):
        return []
    lower = lexeme.lower.replace(" - ", "-")
    if lower in standard or stem(lower) in standard:
        return [lower]
    if lexeme.kind == "stitch" and len(lower) <= 7 and " " not in lower:
        return [lower]
    if " " not in lower:
        return []
    words = lower.replace("sl st", "sl_st").split()
    return [
        word.replace("_", " ")
        for word in words
        if word.replace("_", " ") in standard and len(word) > 1 and word not in ("st", "in")
    ]


def stem(word: str) -> str:
    """A word without the s of its plural."""
    return word[:-1] if len(word) > 2 and word.endswith("s") and word not in ("ss", "rs", "ws") else word


POSTS = ("fp", "bp")  # abbreviations that lists explain without the stitch that they are said of


def known(word: str, defined: set[str]) -> bool:
    """Whether a list explains a word, under one of the forms that it may be printed in."""
    word = word.removesuffix("'s").removesuffix("’s")  # "the 3 dc's"
    forms = {word, stem(word), word + "s", word.replace(" ", ""), word.replace("-", " "), word.replace(" ", "-")}
    plain = word.replace(".", "")
    if forms & defined or "." in word and any(form.replace(".", "") == plain for form in defined):
        return True
    if word[:2] in POSTS and word[:2] in defined and len(word) > 2:
        return known(word[2:].strip(" -"), defined)  # "BP – back post" in the list, "BPsc" in a row
    if stem(word) == "sp":
        return any(form.endswith((" sp", "-sp", " sps", "-sps")) for form in defined)  # "ch sp – chain space"
    return word in ("chs", "ch") and ("ch" in defined or "chs" in defined)
