"""Finds in plain text whatever looks like a list over the sizes, in each of the trade's shapes, however many figures.

`figures` reads lists of a known number of sizes; this tells how many there are, and which lists have too few.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import regex

from lint.amount import without_thousands
from lint.expression import expression
from lint.reading.sizes.figures import FIRST_BARE
from lint.remembered import WHOLE_TEXTS, remembered
from lint.source import Span

_ONE = r"(?:\d+(?:\.\d+)?(?:\s?[¼½¾⅓⅔⅛⅜⅝⅞]|\s\d/\d)?(?:st|nd|rd|th)?|[¼½¾]|[-–—](?=\s*[,:;)\]}])|\b(?:zero|one|two|three|four|five|six|seven|eight|nine|ten|twelve)\b)"
_EACH = expression(_ONE)
_EMPTY = r"[-–—]"
_MOST_EMPTY = 60  # more dashes than any pattern has sizes are a ruled line
_RUN = rf"{_ONE}(?:\s?[-–]\s?{_ONE})?"
_UNIT = expression(
    r"\s*(?:sts?|stitches|sc|hdc|htr|dc|tr|chs?|sps?|times|more|rows?|rnds?|rounds?|in|ins|inches|cm|unworked|sets?|rep(?:eat)?s?)\b"
)
_STITCHES = expression(r"\s*(?:sts?|stitches|sc|hdc|htr|dc|tr|chs?|d\.c|s\.c|ch\.)\b")
_GROUP = rf"[(\[{{]\s*{_ONE}(?:\s*[,:;]\s*{_ONE})*(?:,?\s+(?:and|&)\s+{_ONE})?\s*[)\]}}]"
_GAP = r"(?:\s|[^\S\n]{0,4})"  # spaces stand where there were the stars of "20 *(22)* 24"
_OPENS = rf"{_GAP}[(\[]"
_NOT_ROWS = r"(?<!\b(?:rows|rnds|rounds|rds)\.?\s)"  # "Rep Rows 2, 4, 6"
# "Ch 61 (71)" has a figure for another size in its brackets; "sl st in top of beg ch 3 (12)" ends with its count
_CHAINED = expression(r"(?i)(?<!\b(?:beg|beginning|starting|turning|first|of|top|to|the|in)\.?\s)\bch(?:ain)?s?\s*$")
_OF_ELSE = expression(
    r"(?i)(?:\bch(?:ain)?\s|#\s?|\brow\.?\s|\b(?:rows|rnds|rounds|rds)\.?\s\d+\s?(?:and|&|to|-|–)\s?)$"
)
_GOES_ON = expression(r"\s?,?\s?[(\[]\s*[\d-]")
_ROWS = expression(r"(?i)\b(?:rows?|rnds?|rounds?|rds?)\.?\s*$")
_NO_LABEL = r"(?!\s*\n\s*\d+(?:st|nd|rd|th)?(?:\s?(?:[-–]|to)\s?\d+(?:st|nd|rd|th)?)?\s?(?:[).:]|(?i:r(?:n?d|ow|ound)s?)\b))"  # the next line's label: "sc 12 [30]", "10) sc 6"
# "4 (5) 6 (7) 50 g balls", but "4 (5) 6 x 50 g"
_NO_WEIGHT = r"(?!\s?\d+\s?(?:(?:g|gr|grams?)\b|[x×](?!\p{L})(?!\s?\d+\s?(?:g|gr|grams?|m|oz)\b)))"
SHAPES = {
    "brackets first": expression(
        rf"(?<![\w.,/¼½¾)\]-])(?<![\d½¼¾)\]]\s)(?P<list>(?>[(\[]{_ONE}[)\]]\s?{_ONE}(?:\s?[(\[]{_ONE}[)\]]\s?{_ONE})*(?:\s?[(\[]{_ONE}[)\]])?))(?!\s?,?\s?[(\[]\s?\d)"
    ),
    "alternating": expression(
        rf"(?<![\w.,/¼½¾-])(?<!\d\s?[)\]]\s)(?P<list>(?>{_RUN}(?:{_OPENS}{_ONE}[)\]]{_NO_LABEL}{_NO_WEIGHT}{_GAP}{_ONE})+(?:{_OPENS}{_ONE}[)\]])?))(?!\s?,?\s?[(\[]\s?\d)"
    ),
    FIRST_BARE: expression(
        rf"(?<![\w.,/¼½¾-])(?<![\d–—-],\s)(?P<list>(?:(?P<head>{_RUN}), )+{_ONE}{_GAP}{_GROUP}(?:\s?,?\s?{_GROUP})*)"
    ),
    "groups": expression(
        rf"(?<![\w.,/¼½¾-])(?P<list>{_ONE}\s?,?{_GAP}{_GROUP}(?:\s?,?{_GAP}{_GROUP})+)"
    ),
    "brackets": expression(
        rf"(?<![\w.,/¼½¾-])(?P<list>(?P<head>{_RUN}|{_EMPTY}(?:\s?{_EMPTY}){{0,{_MOST_EMPTY}}}){_GAP}[(\[{{]\s*(?P<item>{_RUN})(?:(?P<sign>\s*[,:;/]\s*|\s?[-–]\s?)(?P<item>{_RUN}))*\s*[)\]}}])"
    ),
    "bars": expression(rf"(?<![\w.,/|]\s)(?<![\w.,/|])(?P<list>{_ONE}(?:\s?\|\s?{_ONE}){{2,}})(?!\s?\||\w|\.\d)"),
    "colons": expression(
        rf"(?im)(?<![\w.,/:¼½¾-])(?<!:\s)(?<!^\W{{0,4}}(?:row|rnd|round|rd|r)s?\.?\s?)(?P<list>{_ONE}(?>(?::{_ONE})+|(?: : {_ONE})+))(?!\w|\.\d|\s?:\s?\d)"
    ),
    "ampersands": expression(rf"(?<!\b(?:rows|rnds|rounds|rds)\s)(?<![\w.,/&])(?<!&\s)(?P<list>{_ONE}(?: & {_ONE})+)(?!\w|\.\d| &)"),
    "strokes": expression(
        rf"(?<![\w.,/])(?<!/\s)(?P<list>{_ONE}(?>(?:/{_ONE})+|(?: / {_ONE}){{2,}}))(?!\w|/|\.\d|\s/\s\d)"
    ),
    "dashes": expression(
        rf"(?i)(?<![\w.,/–—-])(?<![–—-]\s){_NOT_ROWS}(?P<list>\d+(?> [-–—] \d+){{2,}})(?!\w|\.\d|\s?[-–—]|\s?[½¼¾])"
    ),
    "all in brackets": expression(rf"(?<![\d¼½¾)\]]\s?)(?P<list>[(\[]\s*{_RUN}(?:\s*[,:;]\s*{_RUN})+\s*[)\]])"),
    "hyphens": expression(r"(?<![\w.,/-])(?P<list>\d+(?:-\d+){2,})(?![\w-])"),
    "or": expression(
        rf"(?i)(?<![\w.,/-])(?<!\d,?\s){_NOT_ROWS}(?P<list>{_ONE}(?>(?:, {_ONE}){{1,14}}),? or {_ONE})(?![\w-]|\.\d|, \d|\s?[½¼¾])"
    ),
    "bare": expression(
        rf"(?i)(?<![\w.,;/-])(?<!\d[,;]?\s){_NOT_ROWS}(?P<list>{_ONE}(?>(?:, {_ONE}){{2,}}|(?:; {_ONE}){{2,}}))(?!\s?[,;]?\s?(?:and|&)\s*{_ONE}|[\w-])"
    ),
}  # fmt: skip
# signs without which no list of a shape stands in a text: most texts have none of them
NEEDED = {
    "groups": expression(r"[)\]}]\s?,?\s?[(\[{]"),
    "strokes": expression(r"/"),
    "colons": expression(r":\S| : "),
}
STRONG = ("brackets first", "alternating", FIRST_BARE, "groups", "brackets")  # no other use of figures looks like them


@dataclass(frozen=True, slots=True)
class Listing:
    """What looks like a list over the sizes."""

    span: Span
    shape: str
    numbers: frozenset[int]  # how many numbers it can be read as

    @property
    def shown(self) -> int:
        return max(self.numbers)


def listings(text: str, sizes: int) -> Iterator[Listing]:
    """Every run of figures that looks like a list, each in the first shape that fits it; `sizes`: 0 where not known."""
    printed, text = text, without_thousands(text)
    taken = bytearray(len(text))
    for shape, match in _runs(text):
        start, end = match.span("list")
        span = Span(start - 1 if printed[start] == "," else start, end)  # "1,050 (1,150, 1,300)"
        if any(taken[span.start : span.end]):
            continue
        numbers = _numbers(shape, match, text, sizes)
        if numbers:
            taken[span.start : span.end] = b"\x01" * (span.end - span.start)
            yield Listing(span, shape, numbers)


@remembered()
@remembered(**WHOLE_TEXTS)  # how many sizes there are is known only when one was looked through
def _runs(text: str) -> tuple[tuple[str, regex.Match], ...]:
    """Every run of figures in a text that has one of the shapes, shape by shape."""
    some = [shape for shape in SHAPES if shape not in NEEDED or NEEDED[shape].search(text) is not None]
    return tuple((shape, match) for shape in some for match in SHAPES[shape].finditer(text))


def _numbers(shape: str, match: regex.Match, text: str, sizes: int) -> frozenset[int]:
    """How many numbers a run can be read as; none where it may be something else than a list over sizes."""
    counted = _UNIT.match(text, match.end()) is not None
    if shape == "brackets":
        counted = (
            counted
            or _CHAINED.search(text, max(0, match.start() - 24), match.start()) is not None
            and (
                match.captures("item") != [match["head"]]  # "Ch 61 (61)" counts the chain again
            )
        )
        signs = {sign.strip() for sign in match.captures("sign")}
        if _GOES_ON.match(text, match.end()) or len(signs - {"–", "-"}) > 1:
            return frozenset()
        items, ends = match.captures("item"), sum(len(_EACH.findall(item)) for item in match.captures("item"))
        runs = {1 + ends} if signs & {"-", "–"} else {1 + len(items)}
        empty = len(expression(_EMPTY).findall(match["head"])) if not expression(r"[\w½]").search(match["head"]) else 0
        if empty:  # each of these dashes is a size, or the first opens the count
            return frozenset(number + more for number in {len(items), ends} for more in (empty - 1, empty))
        if len(items) == 1:  # "28 (32-36)" is three numbers, or a number and a run of rows
            runs.add(1 + ends)
        return frozenset(runs) if max(runs) > 2 or sizes == 2 or counted else frozenset()
    if shape == "strokes":
        values = match["list"].split("/")
        fraction = len(values) == 2 and values[-1] in ("2", "3", "4", "8", "16")
        return frozenset() if fraction or len(values) == 2 != sizes and not counted else frozenset({len(values)})
    if shape == "colons" and match["list"].count(":") == 1:  # "a ratio of 3:1", "at 10:30"
        return frozenset({2}) if counted else frozenset()
    if shape == "ampersands" and match["list"].count("&") == 1:
        return frozenset({2}) if sizes > 2 and _STITCHES.match(text, match.end()) else frozenset()  # one is missing
    if shape == "bare" and _OF_ELSE.search(text, max(0, match.start() - 24), match.start()):
        # "Ch 1, 22, 24, 26 sc", "weight #4, 200, 220, 240 yds", "Rep Rows 3 and 4, 5, 6, 6 times"
        figures = len(_EACH.findall(match["list"]))
        return frozenset({figures - 1, figures})
    inner = match["list"].strip("()[] ")
    if shape == FIRST_BARE:  # what stands before the first bracket may also be told of something else
        heads = match.captures("head")
        figures = len(_EACH.findall(match["list"])) - sum(len(_EACH.findall(head)) - 1 for head in heads)
        return frozenset(range(figures - len(heads), figures + 1))
    if shape == "brackets first":
        figures = _EACH.findall(match["list"])
        numbered = figures[::2] == [str(number) for number in range(1, len(figures[::2]) + 1)]  # "(1) 6 (2) 12 (3) 18"
        return frozenset() if numbered or len(figures) < 3 else frozenset({len(figures)})
    if shape == "alternating":
        inner = expression(rf"^{_ONE}\s?[-–]\s?(?={_ONE})").sub("", inner)  # the first row of a range
    if shape == "hyphens" and _ROWS.search(text, max(0, match.start() - 12), match.start()):
        return frozenset({inner.count("-") + 1, inner.count("-")})  # "Rows 2-4-6-6": the first is where all begin
    parts = expression(r"\s*[,:;]\s*").split(inner) if shape == "all in brackets" else _EACH.findall(inner)
    return frozenset({len(parts)})


_ITEM = expression(r"\d+(?:\.\d+)?(?:\s?[¼½¾⅓⅔⅛⅜⅝⅞]|\s\d/\d)?(?:st|nd|rd|th)?|[¼½¾]|[-–—](?=\s*[,:;)\]}\s(])")
_RUN_OF_ITEM = expression(
    rf"{_ITEM.pattern[: _ITEM.pattern.rindex('|[-')]}(?:\s?[-–]\s?\d+(?:\.\d+)?(?:\s?[¼½¾])?)?|[-–—](?=\s*[,:;)\]}}\s(])"
)


@dataclass(frozen=True, slots=True)
class Figures:
    """The figures of a list over the sizes, as printed."""

    words: tuple[str, ...]

    @property
    def values(self) -> tuple[int | None, ...]:
        """Their numbers; None for a dash and for what is no whole number."""
        return tuple(int(word) if word.isdigit() else None for word in self.words)


def figures_of(words: str, sizes: int) -> Figures | None:
    """The figures of a list, runs as runs where that gives one for each size; None where they are not one for each."""
    for form in (_RUN_OF_ITEM, _ITEM):
        found = tuple(match[0].strip() for match in form.finditer(words))
        if len(found) == sizes:
            return Figures(found)
    return None


__all__ = ["STRONG", "Figures", "Listing", "figures_of", "listings"]
