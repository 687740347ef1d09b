"""Finds out whether a pattern looks like a thing with small parts or cords, which calls for a standing note."""

from __future__ import annotations

import re

# Common practice, no source: the words under which sellers of handmade things are told to look for hazards.
_WORDS = (
    "toys?|dolls?|amigurumi|safety eyes?|button eyes?|toy stuffing|rattles?|teethers?"
    "|bab(?:y|ies|y's)|newborns?|infants?|toddlers?|booties?|bootees?|layettes?"
    "|drawstrings?|cords?|ribbons?"
)
_HAZARD = re.compile(rf"(?<![\w-])(?:{_WORDS})(?![\w-])", re.IGNORECASE)


def hazard_words(text: str, most: int = 4) -> list[str]:
    """The first few words of a text that speak of toys, babies or cords, each once, in lower case."""
    return list(dict.fromkeys(" ".join(word.lower().split()) for word in _HAZARD.findall(text.replace("’", "'"))))[
        :most
    ]
