"""Cuts a line that lists sizes into their names: "S (M, L)", "XS (S, M) (L, XL)", "0-3 (3-6, 6-12) months", "S/M/L".

A stroke or a hyphen may part two names or stand inside one ("S/M (L/XL)", "8-10-12"): every way to cut a line is
given, the likeliest first, and the number of figures in the pattern's lists settles which one is meant.
"""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.expression import expression
from lint.remembered import remembered

Names = tuple[str, ...]

_LONGEST = 24  # characters of one name
_PERSON = r"(?:preemie|prem(?:mie|ature)?|new\s?born|nb|infant|baby|babies|toddler|child(?:ren)?|kid|tween|teen(?:ager)?|youth|junior|adult|wom[ae]n|lad(?:y|ies)|gent(?:lem[ae]n)?|m[ae]n|girl|boy|unisex|doll|dog|cat)(?:['’]?s['’]?)?"
_LETTERS = r"(?:\d{0,2}x{0,6}[ -]?[sl]|xs|m|\d{1,2}x|(?:xx?|extra|very)?[ -]?(?:sm(?:al)?l?|med(?:ium)?|lge?|lrg|large)|petite|mini|plus|little|big|tiny|regular|full|slim)"
_FIGURE = r"\d{1,3}(?:[.,]5|\s?[½¼¾])?"
_SPAN = r"\s?(?:[-–—/]|to)\s?"
_CALLED = r"(?:(?:us|uk|eu|eur|europe(?:an)?|usa|sizes?|ages?|aged|shoe|t)\.?\s?)"
_UNIT = r"\s?(?:months?|mths?|mos?|m|years?|yrs?|y|yo|t|weeks?|wks?|kg|lbs?|cms?|in|ins|inch(?:es)?|[\"”″])\.?"
_LENGTH = expression(r"(?i)\d\s?(?:[½¼¾]\s?)?(cm|in|[\"”″])")  # "5 in (12.5 cm)" is one measure in two units
_CORE = rf"(?:{_LETTERS}(?:{_SPAN}{_LETTERS})*|{_FIGURE}(?:{_UNIT})?(?:{_SPAN}{_FIGURE})?(?:{_UNIT})?\+?(?:\s?old)?)"
_NAME = expression(
    rf"(?:(?:{_PERSON}|{_CALLED})\s*)*(?:{_PERSON}(?:{_SPAN}{_PERSON})*|{_CORE})(?:\s+(?:{_PERSON}|{_CORE}))?", regex.I
)
# what is longer than it is a name: "fits most", "about 30 cm across", "32 in bust"
_NO_NAME = expression(
    r"\d\s*(?:½|¼|¾|\d/\d)?\s*(?:cm|mm|ins?\b|inch|\"|”|″|'|[x×]\s?\d)"
    r"|^\W*(?:in|ins|inch(?:es)?|cm)\b|\b(?:about|approx|across|square|diameter|tall|long|wide|high|fits?|one size|sizes?|figures?|instructions?|directions?)\b",
    regex.I,
)
_EDGE = " \t.,:;*_#|•–—-"
_TAIL = expression(
    rf"(?i)\s*\b(?:(?<=[)\]}}]\s){_PERSON}\s+)?(?:(?:months?|years?|yrs?)\s+old|months?|mths?|mos?|years?|yrs?|old|sizes?|available|included|hands?|foot|feet|heads?|waist|hips?|bust|chest|wrist)\s*$"
)
_HEAD = expression(r"(?i)^\W*(?:(?:sizes?|included|available|range|ages?|aged|to fit|in|for)\b\s*:?\s*)+(?=\S)")
_PROSE = expression(r"[.!]\s|\s=\s(?=\D{0,30}\d)|\s[–—-]\s(?=(?:shown|sample|instructions|figures|model|to fit|finished|actual|(?:foot|feet|hand|palm|head|chest|bust|waist|hip)s? |circumference|measur))|,?\s\(?(?:to fit|fits|shown|sample|with|for|given)\b", regex.I)  # fmt: skip
_BY_LETTERS = expression(rf"(?i){_LETTERS}(?:[/-]{_LETTERS})*")
_UNIT_WORD = expression(r"(?i)\b(?:months?|mths?|mos?|years?|yrs?)\b")
_LEAD = expression(
    rf"(?i)(?:(?:{_PERSON}|{_CALLED})[\s:]*)+(?=\S)"
)  # "Women's S (M, L)": it goes without saying in the others
_MEASURED = expression(
    r"\s*[(\[]\s*(?:[^()\[\],;]*\s)?\d[^()\[\],;]*?(?:\d|½|¼|¾)\s?(?:cm|ins?\b|inch(?:es)?|\"|”|″)[^()\[\],;]*[)\]]",
    regex.I,
)
_OWN_MEASURE = expression(r"^(?P<name>[^:=–—]{1,20}?)\s*(?:[:=]|\s[-–—]\s)\s*\D{0,20}\d.*$")
_LETTER = expression(r"(?<![\p{L}\d])(?P<name>[A-L])(?:\s*[:=(]|\s[-–—]|\.?\s|(?=\d))(?=\s*\D{0,12}\d)")
# between names, the likeliest first; without brackets "and" goes with the commas
_CUTS = tuple(
    map(
        expression,
        (
            r"\s*[;|•]\s*",
            r"\s*,\s*(?:(?:and|&|or)\s+)?|\s+(?:and|&|or)\s+",
            r"\s*:\s*",
            r"\s+[-–—]\s+",
            r"\s+/\s+",
            r"(?<!\d [1-7])\s*/\s*",  # not the stroke of "25 1/2"
            r"\s*[-–—]\s*",
            r"\s{2,}|\t",
        ),
    )
)
_GLOSSED = expression(
    r"(?<!\s)\s*[(\[]([^()\[\],;|]+)[)\]]([\s,;/&|]*)"
)  # a bracket that holds one thing, and the sign behind it
_AS_MANY = expression(r"(?P<list>[^()\[\]]*[,;:/|][^()\[\]]*?)\s*[(\[][^()\[\]]*[,;:/|][^()\[\]]*[)\]]")
_EMPTY_BRACKETS = expression(r"[(\[{]\s*[)\]}]")
_BRACKET = expression(r"\s*,?\s*[()\[\]{}]\s*,?\s*")


@remembered()
def is_size_name(words: str) -> bool:
    """Whether words are such as name a size: "XL", "Women's M", "6-12 months", "EU 36/37", "Toddler"."""
    return _NAME.fullmatch(words.strip(_EDGE)) is not None


_LONGEST_LIST = 1_500  # characters: more than any names of sizes come to, each with what it is for


def split_names(line: str, known: bool = False) -> Iterator[Names]:
    """Every way to cut a line into two names or more, the likeliest first; none where it is no list of sizes.

    `known`: only names such as the trade has; else whatever is short enough, as under a heading "Sizes".
    """
    if len(line) > _LONGEST_LIST:
        line = _PROSE.split(line, maxsplit=1)[0][:_LONGEST_LIST]
    seen: set[Names] = set()
    if glossed := _glossed(line):
        seen.add(glossed)
        yield glossed
    for text in _readings(line):
        for names in _cut(text):
            units = {unit[1].lower() for name in names if (unit := _LENGTH.search(name))}
            uncut = len(units) > 1 or any(expression(r"[,;|]").search(name) for name in names)
            if len(names) < 2 or uncut or names in seen or len(set(names)) < len(names):
                continue
            seen.add(names)
            usual = all(map(is_size_name, names)) or not known and _from_a_on(names)
            bracketed = expression(r"[(\[{]").search(text) is not None
            if usual or not known and bracketed and all(map(_short, names)):
                yield names


def _glossed(line: str) -> Names:
    """The names of "S (0-6 months), M (6-12 months)": each with what it is for in brackets of its own."""
    names, glosses = with_glosses(line)
    sorts = [{_sort(one) for one in some} for some in (names, glosses)]
    apart = all(len(some) == 1 and None not in some for some in sorts) and sorts[0] != sorts[1]
    apart = apart and sorts != [{"words"}, {"letters"}]  # "Child S (M), Adult S (M)": sizes of their own
    return names if apart and len(set(names)) == len(names) else ()


def with_glosses(line: str) -> tuple[Names, Names]:
    """Names, and what stands behind each in brackets of its own; () where the line is no such list."""
    pieces = _GLOSSED.split(_HEAD.sub("", line.strip(_EDGE)))
    names, glosses, between = pieces[:-1:3], pieces[1::3], pieces[2::3]
    if len(names) < 2 or pieces[-1].strip(_EDGE) or any(expression(r"[^\s,;/&|]").search(sign) for sign in between):
        return (), ()
    names = [expression(r"(?i)^[\W_]*(?:and\b|size\b)?\s*").sub("", name).strip(_EDGE) for name in names]
    return tuple(names), tuple(glosses)


def _sort(name: str) -> str | None:
    """What a size is named by: letters, a bare figure, a figure with its unit, or a person's word."""
    if not is_size_name(name):
        return None
    if expression(r"\d").search(name) is None:
        return "letters" if expression(rf"(?i)(?:{_LETTERS})|[A-L]").fullmatch(name.strip(_EDGE)) else "words"
    return "unit" if expression(r"\d\s*\p{L}").search(name) else "figure"


def named_measures(line: str) -> Names:
    """The names of "S: 32 in, M: 36 in" or "Small (32 in), Medium (36 in)": a measure stands behind each."""
    bare, brackets = _MEASURED.subn("", line.strip(_EDGE))
    if brackets > 1:
        names = next(split_names(bare, known=True), ())
        return names if len(names) >= brackets else ()
    lettered = _lettered(line)
    if lettered:
        return lettered
    found = [_OWN_MEASURE.match(piece.strip(_EDGE)) for piece in expression(r"\s*[,;|/]\s*(?=[^\d\s])").split(line)]
    names = tuple(match["name"].strip(_EDGE) for match in found if match is not None)
    return names if len(names) == len(found) > 1 and all(map(is_size_name, names)) else ()


def _from_a_on(names: Names) -> bool:
    """Whether names are the first letters of the alphabet: "A, B, C, D"."""
    return len(names) > 2 and "".join(names).upper() == "ABCDEFGHIJKL"[: len(names)]


def _lettered(line: str) -> Names:
    """The letters of "A - 6 years, B - 8 years", "A 130, B 136 and C 142": from A on, a figure behind each."""
    pieces = _LETTER.split(line)
    names = pieces[1::2]
    told = all(expression(r"\d").search(said) and len(said) <= _LONGEST for said in pieces[2::2])
    in_order = names == [chr(ord("A") + at) for at in range(len(names))]
    alone = (
        not expression(r"\d").search(pieces[0])
        and expression(r"\W*(?:\p{L}+\W+){0,4}").fullmatch(pieces[0]) is not None
    )
    return tuple(names) if len(names) > 1 and told and in_order and alone else ()


def _readings(line: str) -> Iterator[str]:
    """The line's words with and without what may stand around the names."""
    line = line.strip(" \t*_#|")
    texts = [line, _PROSE.split(line, maxsplit=1)[0]]
    glossed = _AS_MANY.fullmatch(line.rstrip(_EDGE))
    if glossed is not None:  # "S:M:L (child : woman : man)": one list, and what else these sizes are called
        texts.append(glossed["list"])
    closed = expression(r"[^()\[\]{}.]*(?:[(\[{][^()\[\]{}]+[)\]}][ ,]*[^()\[\]{}.,;:]{0,12})*[)\]}]").match(line)
    if closed is not None:
        texts.append(closed[0])
    for text in dict.fromkeys(texts):
        text = _HEAD.sub("", text.strip(" .,;:*_"))
        for_all = len(_UNIT_WORD.findall(text)) == 1 or expression(r"[)\]}]\s*(?:[\p{L}’']+\s)?\p{L}+\W*$").search(text)
        yield _TAIL.sub("", text) if for_all else text


def _cut(text: str) -> Iterator[Names]:
    """The ways to cut words at their brackets, and at one sign inside these."""
    if len(text) < 2 or _EMPTY_BRACKETS.search(text):
        return
    chunks = [chunk for chunk in _BRACKET.split(text) if chunk.strip(_EDGE)]
    hyphened = len(chunks) == 2 and expression(r"\p{L}\s?[-–—]\s?\p{L}").search(chunks[1]) is not None
    if len(chunks) > 1 and not hyphened and all(not expression(r"[,;:|&]|\band\b").search(chunk) for chunk in chunks):
        yield _stripped(chunks)  # "S (M) L", "S/M (L/XL)", but not "Small (Medium-Large)"
    by_space = text.split()
    if len(by_space) > 2 and all(map(_BY_LETTERS.fullmatch, by_space)):
        yield _stripped(by_space)  # "XS/S M L XL": a table's heads, with nothing but space between them
    for sign in _CUTS:
        pieces = [sign.split(chunk) for chunk in chunks]
        if any(len(some) > 1 for some in pieces):
            yield _stripped([piece for some in pieces for piece in some])


def _stripped(pieces: list[str]) -> Names:
    names = [name for piece in pieces if (name := piece.strip(_EDGE))]
    names = [name if is_size_name(name) else _TAIL.sub("", name) for name in names]
    lead = _LEAD.match(names[0]) if len(names) > 1 else None
    if lead is not None and is_size_name(names[0][lead.end() :]) and not any(map(_LEAD.match, names[1:])):
        names[0] = names[0][lead.end() :]
    return tuple(names)


def _short(name: str) -> bool:
    return 0 < len(name) <= _LONGEST and _NO_NAME.search(name) is None and len(name.split()) <= 4


__all__ = ["Names", "is_size_name", "named_measures", "split_names", "with_glosses"]
