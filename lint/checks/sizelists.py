"""Lists over the sizes that lack a number, or have one too many."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

import regex

from lint.checks.context import Context
from lint.finding import Finding
from lint.source import Span

_ONE = r"(?:\d+(?:[.,]\d+)?(?:\s?[¼½¾⅓⅔⅛⅜⅝⅞]|\s\d/\d)?(?:st|nd|rd|th)?|[¼½¾]|[-–—](?=\s*[,:;)\](])|\b(?:zero|one|two|three|four|five|six|seven|eight|nine|ten|twelve)\b)"
_EMPTY = r"[-–—]"
_RUN = rf"{_ONE}(?:\s?[-–]\s?{_ONE})?"
_UNIT = r"(?=\s*(?:sts?|stitches|sc|hdc|htr|dc|tr|chs?|sps?|times|more|rows?|rnds?|rounds?|in|ins|inches|cm|unworked|sets?|rep(?:eat)?s?)\b)"
# A list is judged only by the shape that the pattern itself gives its lists.
_SHAPES = {
    "brackets": regex.compile(
        rf"(?<![\w.,/¼½¾-])(?P<list>(?P<head>{_RUN}|{_EMPTY}(?:\s?{_EMPTY})*)\s?[(\[]\s*(?P<item>{_RUN})(?:(?P<sign>\s*[,:;/]\s*|\s?[-–]\s?)(?P<item>{_RUN}))*\s*[)\]])"
    ),
    "alternating": regex.compile(rf"(?<![\w.,/¼½¾-])(?P<list>{_RUN}(?:\s?\({_ONE}\)\s?{_ONE})+(?:\s?\({_ONE}\))?)(?!\s?[(,])"),
    "strokes": regex.compile(rf"(?<![\w.,/])(?P<list>{_ONE}(?:/{_ONE})+)(?!\w|/|\.\d)"),
    "all in brackets": regex.compile(rf"(?<![\d¼½¾)\]]\s?)(?P<list>[(\[]\s*{_RUN}(?:\s*[,:;]\s*{_RUN})+\s*[)\]])"),
    "hyphens": regex.compile(r"(?<![\w.,/-])(?P<list>\d+(?:-\d+){2,})(?![\w-])"),
}  # fmt: skip
_ENOUGH = 3  # right lists of a shape before a wrong one of it is called wrong


@dataclass(frozen=True, slots=True)
class _List:
    span: Span
    shape: str
    numbers: frozenset[int]  # how many numbers it can be read as

    @property
    def shown(self) -> int:
        return max(self.numbers)


def wrong_lists(context: Context) -> list[tuple[Span, int, int]]:
    """Lists that are not one number a size: where, how many numbers, and for how many sizes."""
    sizes = len(context.pattern.sizes)
    if sizes < 2:
        return []
    rows = [row for part in context.pattern.parts for row in part.rows if row.sizes is not None]
    right: Counter[str] = Counter()
    wrong: dict[str, list[_List]] = {}
    for one in _lists(context.source.text, sizes):
        gates = {len(row.sizes or ()) for row in rows if row.span.start <= one.span.start < row.span.end}
        if one.numbers & {sizes}:
            right[one.shape] += 1
        elif not one.numbers & gates:
            wrong.setdefault(one.shape, []).append(one)
    return [
        (one.span, one.shown, sizes)
        for shape, found in wrong.items()
        if right[shape] >= max(_ENOUGH, 2 * len(found))
        for one in found
    ]


def check_lists(context: Context) -> Iterator[Finding]:
    """size-list-length: "36/40/44 sts" in a pattern of four sizes."""
    for span, shown, sizes in wrong_lists(context):
        yield context.finding_at(
            "size-list-length",
            span,
            words=context.source.slice(span),
            expected=sizes,
            found=shown,
        )


def _lists(text: str, sizes: int) -> Iterator[_List]:
    """Every run of figures that looks like a list over sizes, each in the first shape that fits it."""
    taken: list[Span] = []
    for shape in ("alternating", "brackets", "strokes", "all in brackets", "hyphens"):
        for match in _SHAPES[shape].finditer(text):
            span = Span(*match.span("list"))
            if any(other.start < span.end and span.start < other.end for other in taken):
                continue
            numbers = _numbers(shape, match, text, sizes)
            if numbers:
                taken.append(span)
                yield _List(span, shape, numbers)


def _numbers(shape: str, match: regex.Match, text: str, sizes: int) -> frozenset[int]:
    """How many numbers a run can be read as; none where it may be something else than a list over sizes."""
    counted = regex.compile(_UNIT).match(text, match.end()) is not None
    if shape == "brackets":
        signs = {sign.strip() for sign in match.captures("sign")}
        if regex.match(r"\s?,?\s?[(\[]\s*[\d-]", text[match.end() :]) or len(signs - {"–", "-"}) > 1:
            return frozenset()  # "3, (4, 4, 5), (6, 6, 7)": grouped
        items, ends = match.captures("item"), sum(len(regex.findall(_ONE, item)) for item in match.captures("item"))
        runs = {1 + ends} if signs & {"-", "–"} else {1 + len(items)}
        empty = len(regex.findall(_EMPTY, match["head"])) if not regex.search(r"[\w½]", match["head"]) else 0
        if empty:  # each of these dashes is a size, or the first opens the count
            return frozenset(number + more for number in {len(items), ends} for more in (empty - 1, empty))
        if len(items) == 1:  # "28 (32-36)" is three numbers, or a number and a run of rows
            runs.add(1 + ends)
        return frozenset(runs) if max(runs) > 2 or sizes == 2 or counted else frozenset()
    if shape == "strokes":
        values = match["list"].split("/")
        fraction = len(values) == 2 and values[-1] in ("2", "3", "4", "8", "16")
        return frozenset() if fraction or len(values) == 2 != sizes and not counted else frozenset({len(values)})
    inner = match["list"].strip("()[] ")
    if shape == "alternating":
        inner = regex.sub(rf"^{_ONE}\s?[-–]\s?(?={_ONE})", "", inner)  # the first row of a range
    parts = regex.split(r"\s*[,:;]\s*", inner) if shape == "all in brackets" else regex.findall(_ONE, inner)
    return frozenset({len(parts)})
