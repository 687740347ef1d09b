"""Lists of abbreviations that stand under no heading of their own: lines of "sc - single crochet", "ch = chain".

They hang below the materials, or below a line that tells the terms, and would be taken for a part of those.
"""

from __future__ import annotations

from collections.abc import Sequence

import regex

from lint.expression import expression
from lint.madeonce import made_once
from lint.reading.page.sections import SectionFinder
from lint.rulebook import Rulebook

_FEWEST = 3  # entries whose form the trade knows
_ENTRY = expression(
    r"[ \t]*[•*·]?[ \t]*(?P<form>\p{L}[\p{L}\d/ ]{0,9}(?:\(e?s\))?)(?:\s+[-–—~]+\s+|\s*[=:–—]\s*|\t+|\s{2,})(?P<meaning>\S.*)"
)
_SENTENCE = expression(r"[.!?]\s+\S|(?<=\p{L}{3})[.!?]\s*$")
_COLOURS = expression(r"(?i)(?:mc|cc\d*|[a-h])")  # "MC - cream" names a yarn

_COLOUR_WORDS = expression(r"colou?r|yarn")  # "A - main color"


@made_once
def _forms(book: Rulebook) -> frozenset[str]:
    """The trade's abbreviations in both countries, but for those of colours."""
    listed = [form.lower() for one in book.abbreviations.values() for rule in one.abbreviations for form in rule.forms]
    return frozenset(form for form in listed if not _COLOURS.fullmatch(form))


@made_once
def _meanings(book: Rulebook) -> frozenset[str]:
    """What these stand for, in lower case: "half double crochet"."""
    listed = [rule.meaning for one in book.abbreviations.values() for rule in one.abbreviations]
    whole = [meaning.partition(" (")[0].lower() for meaning in listed]
    return frozenset((*whole, *(meaning.removesuffix(" crochet") for meaning in whole)))


_BARE = expression(r"(?P<form>\p{L}{1,5}(?:\(e?s\))?) (?P<meaning>\p{L}[\p{L}()-]*(?: \p{L}[\p{L}()-]*){0,3})")
_PLURAL = expression(r"\(e?s\)")


def _set_apart(line: str, known: frozenset[str], meanings: frozenset[str]) -> str:
    """A line "htr half treble" with a sign between the form and just what the trade means by it."""
    found = _BARE.fullmatch(line) if len(line) < 40 else None
    if found is None:
        return line
    form, meaning = (_PLURAL.sub("", found[name].lower()) for name in ("form", "meaning"))
    return f"{found['form']} - {found['meaning']}" if form in known and meaning in meanings else line


def headless_lists(lines: Sequence[str], finder: SectionFinder, book: Rulebook) -> dict[int, int]:
    """The first line of each list without a heading, and where it begins there; none where one stands under a heading."""
    headings = [finder.at_line(line) for line in lines]
    if any(heading is not None and heading.key == "abbreviations" for heading in headings):
        return {}
    known, found, start = _forms(book), {}, 0
    meanings = _meanings(book)
    lines = [_set_apart(line, known, meanings) for line in lines]
    for index in range(len(lines) + 1):
        entry = _entry(lines[index]) if index < len(lines) and headings[index] is None else None
        if entry is not None and not _SENTENCE.search(entry["meaning"]):
            continue
        if _is_list(lines[start:index], known, meanings):
            found[start] = 0
        start = index + 1
        if index < len(lines) and (led := _led_list(lines[index], known)) is not None:
            found[index] = led
    return found


# "All use US abbreviations: ch, sl st, …", "Sts in common use: …", "(UK terms; ch = chain, …)": the words that lead to a list within a paragraph
_LEADS = expression(
    r"(?i)(?:^|(?<=[.!;]\s))[^.:;!\n]*\b(?:abbreviations|terms|terminology|stitches|sts)\b[^.:;!\n]{0,30}[:;]\s+(?=\S)"
)
_LONGEST = 2_000  # characters of such a list
_LEADING = ("abbreviations", "terms", "terminology", "stitches", "sts")


def _led_list(line: str, known: frozenset[str]) -> int | None:
    """Where a list of abbreviations begins in a paragraph of talk; None where there is none."""
    if not any(word in line.lower() for word in _LEADING):
        return None
    lead = _LEADS.search(line)
    if lead is None:
        return None
    words = line[lead.end() : lead.end() + _LONGEST]
    before = line[: lead.end()]
    words = words.rstrip(" .)") if before.count("(") > before.count(")") else words  # the whole list in brackets
    pieces = expression(r"[,;](?![^()]*\))").split(words)
    told = sum(expression(r"\s*([^(=–:]*?)\s*(?:[(=–:.]|$)").match(piece)[1].lower() in known for piece in pieces)
    return lead.end() if told >= _FEWEST and 2 * told > len(pieces) else None


def _entry(line: str) -> regex.Match | None:
    """A line as an entry; the blanks around it are no part of it, and would be tried from every one of them."""
    return _ENTRY.fullmatch(line.strip())


def _is_list(lines: Sequence[str], known: frozenset[str], meanings: frozenset[str]) -> bool:
    """Whether most of the lines explain an abbreviation that the trade knows, in words, or a letter of the pattern's own."""
    entries = [_entry(line) for line in lines]
    told = [
        one
        for one in entries
        if expression(r"\(e?s\)$").sub("", one["form"].strip().lower()) in known
        and one["meaning"][:1].isalpha()
        or _letter_told(one, known, meanings)
    ]
    return len(told) >= _FEWEST and 2 * len(told) > len(entries)


def _letter_told(entry: regex.Match, known: frozenset[str], meanings: frozenset[str]) -> bool:
    """Whether an entry gives a letter to a stitch: "X - single crochet", "V = inc", and not to a colour."""
    meant = entry["meaning"].strip(" .,;").lower()
    return len(entry["form"].strip()) == 1 and meant in (known | meanings) and not _COLOUR_WORDS.search(meant)
