"""Finds the sizes that a pattern is written for.

What the lists in the rows show is the measure: of several lines that might name the sizes, the one counts that has as
many names as the lists have figures.  Where none names them, a list of measures does ("Bust: 32 (36, 40) in"), and
where there is none of these either they are the 1st, 2nd and 3rd size.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import regex

from lint.expression import expression
from lint.reading.page.sections import SectionFinder
from lint.reading.sizes.figures import FIRST_BARE
from lint.reading.sizes.listings import STRONG, Listing, listings
from lint.reading.sizes.sizenames import Names, is_size_name, named_measures, split_names
from lint.remembered import WHOLE_TEXTS, remembered
from lint.source import SourceText, Span


@dataclass(frozen=True, slots=True)
class SizeLine:
    """The sizes in the order printed, () for a pattern in one size."""

    names: Names = ()
    unnamed: Span | None = None  # where the first list stands, if lists alone tell that there are sizes
    commas: bool = False  # whether the lists are parted by commas without brackets: "8, 9, 10 rows"
    first_bare: bool = False  # whether they are in groups, the first without brackets: "8, 9 (10, 11) rows"

    @classmethod
    def shown(cls, names: Names, shown: Shown, unnamed: Span | None = None) -> SizeLine:
        """Sizes of these names, with lists such as the text shows."""
        return cls(names, unnamed, shown.commas, shown.first_bare(len(names)))


@dataclass(frozen=True, slots=True)
class Shown:
    """What the lists of a text show of the number of sizes; 0 where they show nothing."""

    number: int = 0
    lists: tuple[Listing, ...] = ()
    worked: bool = False  # some of them are numbers of chains or stitches to work, which no count of several rows is
    parted: tuple[str, ...] = ()  # what parts the figures of those without brackets, as lexemes call it

    def fit(self, number: int) -> bool:
        """Whether most of the lists can be read as so many figures."""
        return not self.lists or 2 * self._readable(number) >= len(self.lists)

    @property
    def sure(self) -> bool:
        """Whether the lists alone tell that there are sizes."""
        strong = any(one.shape in STRONG for one in self.lists) or self.worked
        enough = max(_ENOUGH, (1 - 1 / _MOST) * len(self.lists))
        return strong and self._readable(self.number) >= enough

    @property
    def first(self) -> Span | None:
        return next((one.span for one in self.lists if self.number in one.numbers), None)

    @property
    def commas(self) -> bool:
        return any(one.shape in ("or", "bare") for one in self.lists)

    def first_bare(self, number: int) -> bool:
        """Whether lists of so many figures are in groups of which the first has no brackets."""
        so = sum(one.shape == FIRST_BARE and one.shown == number for one in self.lists)
        return so >= _ENOUGH and 2 * so >= len(self.lists)

    def _readable(self, number: int) -> int:
        return sum(number in one.numbers for one in self.lists)


_BARE = ("strokes", "colons", "dashes", "hyphens", "bare", "or")  # shapes without brackets
_MOST_SIZES = 40  # what names more is no list of sizes
_ENOUGH = 3
_MOST = 4
_FRONT = 60  # lines in which sizes may be named

_NUMBER_WORD = r"(?:\d{1,2}|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
_SENTENCES = (
    rf"\b(?:in|has|covers|offers|of|for)\s+(?:the\s+)?{_NUMBER_WORD}\s+(?:different\s+)?sizes?\b[^:.\n]{{0,20}}?[:,–—-]\s*(?P<names>(?:[^.\n]|\.(?=\d))+)",
    r"\b(?:avail\p{L}+|comes?|made|offered|graded|worked|written|given|instructions?|directions?|pattern)\s+(?:are\s+|is\s+)?(?:in|for|from)\s+(?:the\s+)?(?:sizes?\s+)?(?P<names>(?:[^.\n]|\.(?=\d))+)",
    r"\b(?:ages?|aged|bab(?:y|ies)|child(?:ren)?|toddlers?|infants?)\s+(?:of\s+|aged\s+|from\s+)?(?=\d)(?P<names>(?:[^.\n]|\.(?=\d))+)",
    r"(?:^|[.;:]\s+|\s[–—-]\s+|\bin\s+|\bfor\s+)\W{0,3}(?:(?!finished|hook|needle|actual|approx)[\p{L}’']+\s+)?sizes?:?\s+(?=[^:\s])(?P<names>(?:[^.\n]|\.(?=\d)){2,})",
    r"[(\[](?!(?:super\s+)?(?:lace|fine|light|medium|bulky|jumbo)\W+\d\s*[)\]])(?P<names>[^()\[\]\n]*\p{L}[^()\[\]\n]*)[)\]]",
    r"^\W*sizes?\s*(?:\||\t|\s{2,})\s*(?P<names>[^\n]+)$",
)
_SAYS = tuple(expression(form, regex.I | regex.M) for form in _SENTENCES)
_CONVERTED = expression(r"(?i)[(\[]\s*\d[^()\[\]\p{L}]*(?:cm|mm|ins?|inch(?:es)?|[\"”″])\s*[)\]]")  # "[51, 55, 58 cm]"
_IN_BRACKETS = expression(
    r"\b(?:for|in)\s+(?:the\s+)?(?:sizes?\s+)?(?P<first>[^\s,;.()][^,;.()]{0,20}?(?:\s+(?:months?|mths?|mos?|years?|yrs?)\b)?+)(?:\s+sizes?)?\b\s*[,;.(:–—-]*\s*"
    r"(?:and\s+|with\s+|the\s+|changes?\s+|figures?\s+|numbers?\s+|instructions?\s+|larger\s+|other\s+|those\s+|for\s+)*(?:sizes?\s+)?"
    r"(?P<rest>[^.()\n]{1,80}?)\s+(?:sizes?\s+)?(?:are\s+|is\s+|stand\s+|given\s+|shown\s+|written\s+|in order\s+)*(?:in|within|between)\s+(?:\w+\s+)?(?:parenthes|bracket)",
    regex.I,
)
_PASSAGE = expression(
    r"(?im)^[ \t*#_=~-]*(?:for\s+)?(?:the\s+)?size\s*:?\s+(?P<name>[^\n,;:&/]{1,30}?)(?:\s+only)?[ \t*#_=~:.-]*$"
)
_FOR_ALL = expression(
    r"(?i)\b(?:larger|bigger|other|remaining)\s+sizes?\b|\bsmallest\s+size\b|\bfor\s+(?:all|every|both)\s+sizes?\b|\b(?:applies|refers|is)\s+(?:to|for)\s+all\s+sizes\b"
)
_MEASURED_THING = expression(
    r"(?i)\b(?:to\s+)?fit|\b(?:bust|chest|waist|hips?|head|hand|foot|feet|sole|neck|body|brim|calf|leg|ankle|arm|wrist|palm|fingers?|width|length|height|weight|circumference|diameter|girth|around|wide|long|measure(?:s|ments?)?|dimensions?|finished|actual|sizes?|ages?|shoe)\b"
)
_NO_SIZE = expression(r"(?i)\b(?:hooks?|yarn|balls?|skeins?|hanks?|gauge|tension|rows?|rnds?|rounds|round\s\d|sts|sc|dc|buttons?|needles?|yds?|yards?|metres?|meters?|grams?)\b|\d\s?g\b")  # fmt: skip
_OF_LIST = expression(r"\d+(?:[.,]\d+)?(?:\s?[¼½¾]|\s\d/\d)?")
_RUN_OF_LIST = expression(rf"{_OF_LIST.pattern}(?:\s?[-–/]\s?{_OF_LIST.pattern})?")
_MEASURE = expression(r"(?i)\d\s*(?:½|¼|¾)?\s*(?:cm|mm|ins?\b|inch|months?|years?|[\"”″]|kg|lb)")


def find_sizes(source: SourceText, finder: SectionFinder) -> SizeLine:
    """The sizes of a pattern, and how they are told."""
    text = source.text
    shown = shown_by_lists(text)
    if not shown.number:
        alone = _by_passages(text)
        if alone:
            return SizeLine(alone)
    lines = text.splitlines()[:_FRONT]
    heading = next((at for at, line in enumerate(lines) if _size_heading(line, finder)), None)
    spoken = _spoken(["" if at == heading else line for at, line in enumerate(lines)])
    for several in (_headed(lines, finder), spoken):
        named = [
            names for names in several if len(names) <= _MOST_SIZES and (shown.number or not _is_span(names, lines))
        ]
        fits = [names for names in named if shown.fit(len(names))]
        # "35/37 (38/40-41/43)" is cut in two before it is cut in three: what most lists show decides
        fitting = next((names for names in fits if len(names) == shown.number), next(iter(fits), None))
        if fitting is not None or named and not shown.sure:
            told = shown.number > 1 and len(shown.lists) >= _ENOUGH  # what the lists show, a measure may name
            measured = _measured(lines, finder, shown.number) if fitting is None and told else ()
            return SizeLine.shown(fitting or measured or named[0], shown)
    measured = _measured(lines, finder, shown.number)
    if measured and len(measured) <= _MOST_SIZES:
        too_few = any(len(names) >= _ENOUGH for names in _headed(lines, finder))  # a line of sizes lacks a name
        return SizeLine.shown(measured, shown, shown.first if too_few else None)
    if shown.sure or shown.number and _FOR_ALL.search(text) is not None:
        names = tuple(f"{_ordinal(number)} size" for number in range(1, shown.number + 1))
        return SizeLine.shown(names, shown, shown.first)
    return SizeLine()


@remembered(**WHOLE_TEXTS)  # the checks ask again
def shown_by_lists(text: str) -> Shown:
    """How many figures the lists of a text have."""
    found = sorted(listings(text, 0), key=lambda one: one.span)
    for shapes in (
        STRONG,
        *(
            ((shape,))
            for shape in (
                "strokes",
                "bars",
                "colons",
                "dashes",
                "ampersands",
                "hyphens",
                "all in brackets",
                "or",
                "bare",
            )
        ),
    ):
        some = [one for one in found if one.shape in shapes]
        if len(some) < (1 if shapes is STRONG else 2):
            continue
        counted = Counter(number for one in some for number in one.numbers if number <= _MOST_SIZES)
        if not counted:
            continue
        most = max(counted, key=lambda number: (counted[number], number))
        if shapes is STRONG:  # "(40, 44, 48)" behind "41 (45, 49)" bears it out
            some += [one for one in found if one.shape == "all in brackets" and most in one.numbers]
        bracketed = shapes == ("all in brackets",)
        worked = bracketed and sum(_is_worked(text, one.span) and most in one.numbers for one in some) > 1
        return Shown(most, tuple(some), worked, _signs(text, some))
    return Shown()


def _signs(text: str, lists: list[Listing]) -> tuple[str, ...]:
    """What parts the figures of lists without brackets, as lexemes call it."""
    bare = [text[one.span.start : one.span.end] for one in lists if one.shape in _BARE]
    found = {sign.strip() for words in bare for sign in expression(r"\s?[,;:/–—-]\s?").findall(words)}
    return tuple(sorted({"dash" if sign in "-–—" else sign for sign in found}))


def _is_worked(text: str, span: Span) -> bool:
    """Whether a list stands behind "ch", "next" or "first"."""
    return (
        expression(r"(?i)\b(?:ch|chain|next|first|last)\s*$").search(text[max(0, span.start - 12) : span.start])
        is not None
    )


def _by_passages(text: str) -> Names:
    """The sizes of a pattern that is written out for each: "SIZE SMALL", further on "SIZE LARGE", in lines of their own."""
    found: dict[str, None] = {}
    for match in _PASSAGE.finditer(text):
        name = expression(r"\s*\([^()]*\)").sub("", match["name"]).strip()
        if is_size_name(name):
            found.setdefault(name, None)
    return tuple(found) if 1 < len(found) <= _MOST_SIZES else ()


def _is_span(names: Names, lines: list[str]) -> bool:
    """Whether two figures stand as one size in the text, which has no lists: "Size: 0-6 months"."""
    if len(names) != 2 or not all(name.isdigit() for name in names):
        return False
    span = rf"(?i)\b{names[0]}\s?[-–]\s?{names[1]}\s*(?:months?|mths?|mos?|years?|yrs?|cm|in)\b"
    return any(expression(span).search(line) for line in lines)


# named in words ----------------------------------------------------------------------------------------------


def _headed(lines: list[str], finder: SectionFinder) -> Iterator[Names]:
    """Every way in which the lines under a heading "Sizes" might name them, the likeliest first."""
    for index, line in enumerate(lines):
        content = _size_heading(line, finder)
        if content is None:
            continue
        yield from _in_words(line[content:])
        if not line[content:].strip():
            below = _block(lines, index + 1)
            yield from _line_by_line(below)  # before the first alone: 'S - 34-36" bust' would be two names
            if below:
                yield from _in_words(below[0])
            yield from (names for other in below[1:4] for names in split_names(other, known=True))


def _spoken(lines: list[str]) -> Iterator[Names]:
    """The same for sentences, tables, and lists that stand alone."""
    lines = [
        line if not _NO_SIZE.search(line) and not expression(r"(?i)\bonly\b").search(line) else "" for line in lines
    ]
    text = "\n".join(lines)
    for form in _SAYS:
        for match in form.finditer(text):
            if not _CONVERTED.fullmatch(match[0]):
                yield from split_names(match["names"], known=True)
    for match in _IN_BRACKETS.finditer(text, overlapped=True):
        first, rest = match["first"].strip(), next(split_names(match["rest"], known=True), (match["rest"].strip(),))
        if is_size_name(first) and all(map(is_size_name, rest)) and first not in rest:
            yield (first, *rest)
    for line in lines:
        if expression(r"\W*\p{L}").match(line):
            yield from (
                names for names in split_names(line, known=True) if expression(r"[(\[{]").search(line) or len(names) > 2
            )
    for index, (before, line) in enumerate(pairwise(["", *lines])):
        if not before.strip() or _own_size(before) is None:
            yield from _line_by_line([other for other in _block(lines, index) if line.strip()])


def _size_heading(line: str, finder: SectionFinder) -> int | None:
    """Where what a heading says of the sizes begins: "Sizes: …", "TO FIT …"."""
    heading = finder.at_line(line)
    if heading is None or heading.key != "size":
        return None
    told = line[heading.start : heading.end].lower().startswith(("size", "to fit", "sizing", "available"))
    bracketed = "(" in line[heading.end : heading.content]  # "Sizes (S, M, L)"
    return None if not told else heading.end if bracketed else heading.content


def _in_words(said: str) -> Iterator[Names]:
    yield from filter(None, [named_measures(said)])
    yield from split_names(said)


def _block(lines: list[str], start: int) -> list[str]:
    """The lines from one on to the next blank line; blank lines before them are passed over."""
    while start < len(lines) and not lines[start].strip():
        start += 1
    end = next((index for index in range(start, len(lines)) if not lines[index].strip()), len(lines))
    return lines[start:end]


def _line_by_line(block: list[str]) -> Iterator[Names]:
    """ "S: 32 in", "M: 36 in", each in a line of its own."""
    names: list[str] = []
    for line in block:
        name = _own_size(line)
        if name is None:
            break
        names.append(name)
    if len(names) > 1 and len(set(names)) == len(names):
        yield tuple(names)


def _own_size(line: str) -> str | None:
    """The size that a line with its measure begins with."""
    match = expression(
        r"[\s•*·-]*(?:sizes?\s+)?(?P<name>[^:=|(\t]{1,20}?)\s*(?:[:=|(\t]|\s[-–—]\s|\s{2,})(?P<rest>.*)$", regex.I
    ).match(line)
    if match is None or not is_size_name(match["name"]) or not expression(r"\p{L}").search(match["name"]):
        return None
    return match["name"] if _MEASURE.search(match["rest"]) else None


# named by their measures ---------------------------------------------------------------------------------------


def _measured(lines: list[str], finder: SectionFinder, number: int) -> Names:
    """The figures of "To fit 81 (86, 91) cm", which name the sizes where nothing else does."""
    for line in lines:
        if _NO_SIZE.search(line):
            continue
        heading, measure = _size_heading(line, finder) is not None, _MEASURE.search(line)
        thing = _MEASURED_THING.search(line)
        if not measure and thing is None:
            continue
        for one in listings(line, 0):
            if not measure and (thing is None or thing.end() > one.span.start):
                continue
            names = _figures(line, one, number)
            if number and len(names) == number or not number and heading and len(names) > 1:
                return names
    return ()


def _figures(line: str, one: Listing, number: int) -> Names:
    words = line[one.span.start : one.span.end]
    for form in (_RUN_OF_LIST, _OF_LIST):
        names = tuple(expression(r"\s").sub("", match[0]) for match in form.finditer(words))
        if len(set(names)) == len(names) and (not number or len(names) == number):
            return names
    return ()


def _ordinal(number: int) -> str:
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number, 'th') }"


__all__ = ["SizeLine", "find_sizes", "shown_by_lists"]
