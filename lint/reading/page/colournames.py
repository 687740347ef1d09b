"""The letters and names of the yarns that a pattern's materials declare."""

from __future__ import annotations

from lint.expression import expression
from lint.rulebook import Rulebook

# "DK cotton; A navy 150 g, B mustard 100 g"
_LETTER_THEN_NAME = expression(r"(?:^|[,;:]|\band)\s*([A-H])\s+(?=\p{L}+(?: \p{L}+)?(?:\s*[,;.]|\s+(?:\d|and\b)|\s*$))")
_YARN_SAID = expression(r"(?i)\b(?:yarn|cotton|wool|acrylic|colou?rs?)\b")

# "A (oat)", "A: 2 balls"; but the letter of "Row 3 A:" is declared elsewhere, or names a part of the row
_DECLARED = expression(
    r"(?<!(?i:rows?|rounds?|rnds?|rds?)\s*\d{1,3}(?:\s?(?:[-–—&,]|to|and)\s?\d{1,3})*(?:\s*\([RrWw][Ss]\))?\s+)\b(MC|CC\d?|[A-H])\b\s*(?=[(,:=]|and\b)"
)


def colour_names(text: str, book: Rulebook) -> frozenset[str]:
    """Colour letters and names that the materials declare: "A (oat)", "MC (charcoal)", "color B"; and common names."""
    found = {match[1].lower() for match in _DECLARED.finditer(text)}
    found |= {match[1].lower() for match in expression(r"(?i)\bcolou?r\s+([A-H])\b").finditer(text)}
    if lines := [line for line in text.split("\n") if _YARN_SAID.search(line)]:  # "Black [B] and Natural [N]"
        bracketed = expression(r"(?<=\p{Ll} )[\[(]([A-IKN-RT-WYZ])[\])]").findall("\n".join(lines))
        found |= {letter.lower() for letter in bracketed if letter != "I" or len(set(bracketed)) > 1}  # no number one
        listed = {letter for line in lines for letter in _LETTER_THEN_NAME.findall(line)}
        found |= {letter.lower() for letter in listed} if {"A", "B"} <= listed else set()
    if expression(r"\bCC\d?\b").search(text):  # "MC black, CC white": a contrast colour, and so a main one
        found |= {match[0].lower() for match in expression(r"\b(?:MC|CC\d?)\b").finditer(text)}
    return frozenset(found).union(book.words.colour_names)


_LETTERED = expression(
    r"(?im)^\W*(?:rows?|rnds?|rounds?|rds?)\s*(?P<number>\d{1,3})(?:\s?(?:[-–—&,]|to|and)\s?\d{1,3})*(?:\s*\([rw]s\))?\s+(?P<letter>\p{L})\s*:"
)
_FEWEST = 3  # labels with such a letter, where it is declared nowhere


def names_for_labels(text: str, book: Rulebook, sizes: int) -> frozenset[str]:
    """Those names as they may stand in a label: no letters where "Row 2 A:" and "Row 2 B:" are parts of one row.

    A letter that is declared nowhere is a yarn's as well where several rows have one, each row its own, and two at least
    take turns: in a pattern of sizes it may be a size's.
    """
    found: dict[str, list[str]] = {}
    for match in _LETTERED.finditer(text):
        found.setdefault(match["number"], []).append(match["letter"].lower())
    if any(len(set(letters)) > 1 for letters in found.values()):
        return book.words.colour_names
    letters = {letter for letters in found.values() for letter in letters}
    undeclared = len(found) >= _FEWEST and len(letters) > 1 and sizes < 2
    return colour_names(text, book) | (letters if undeclared else set())
