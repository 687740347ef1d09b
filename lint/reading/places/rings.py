"""The pattern's own words for the ring that a round begins with: "MR: magic ring", "8 sc in mc" """

from __future__ import annotations

import regex

from lint.expression import expression
from lint.reading.words.listentries import Entry

_EXPLAINED = expression(r"(?i)\b(?:magic|magical|adjustable|amigurumi|sliding) (?:ring|circle|loop)\b")
# "KA - amigurumi ring", in a line of its own under whatever heading
_LINE = expression(
    r"(?im)^[^\w\n]{0,8}(?P<form>\p{L}{2,4})[ \t]*(?:[:=–—-]|\bis\b)[ \t]*(?:an?[ \t]+)?"
    r"(?:magic|magical|adjustable|amigurumi|sliding)[ \t]+(?:ring|circle|loop)\b[^\n]{0,24}$"
)
# "8 sc in mc", "MC, 6 sc", "mc 6": mc where nothing is said of a main colour is the magic circle (common practice, no source)
_IN_MC = expression(
    r"(?i)\b\d+\s?(?:sc|dc|hdc|htr|x)\s+(?:in|into|inside)\s+(?:an?\s+|the\s+)?mc\b"
    r"|^[^\w\n]{0,4}(?:r|rnd|rd|round)?\s?1\s?[:.)–-]+\s*mc\b[\s,:;-]*(?:\d|with\s+\d|\(\d)"
    r"|^[^\w\n]{0,4}(?:r|rnd|rd|round)?\s?1\s?[:.)–-]+\s*\d+\s?(?:sc|dc|hdc|htr|x)\s+mc\b",
    regex.MULTILINE,
)
_MAIN_COLOUR = expression(
    r"(?i)\bmain (?:colou?r|shade|yarn)\b|(?-i:\bMC\s*(?:=|:|–|-(?!\s*\d)|\()|\bCC\b)|\b(?:with|in) MC,"
)


def ring_words(entries: list[Entry], text: str) -> list[str]:
    """The forms that stand for a ring in this pattern."""
    found = [form for entry in entries for form in entry.forms if _EXPLAINED.search(entry.body)]
    found += [form for line in _LINE.finditer(text) if (form := line["form"].lower()) not in found]
    if "mc" not in found and not any("mc" in entry.forms for entry in entries):
        if _IN_MC.search(text) and not _MAIN_COLOUR.search(text):
            found.append("mc")
    return found
