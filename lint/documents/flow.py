"""Makes running text of the lines of pages: running heads left out, wrapped lines joined, hyphens at line ends settled."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from itertools import pairwise
from statistics import median

from lint.documents.columns import Line
from lint.documents.lines import Lines, Words, opened, plain
from lint.expression import expression
from lint.source import SourceText

# never a running head, and never the end of a wrapped line above: the label of a row
_LABEL = expression(
    r"(?i)\W*(?:(?:rows?|rnds?|rounds?|r)\b?\.?\s*\d+[^:.]{0,20}|\d+(?:st|nd|rd|th)\s+(?:row|rnd|round)\b[^:.]{0,12})[:.–—-]"
)
_ANY_LABEL = expression(r"(?i)\W*(?:rows?|rnds?|rounds?|r)\b?\.?\s*\d")
_PAGE_NUMBER = expression(
    r"(?i)\W*(?:(?:page|pg\.?|p\.?)\s*(\d{1,3})(?:\s*(?:of|/)\s*\d{1,3})?|(\d{1,3})\s*(?:of|/)\s*\d{1,3}|(\d{1,3}))\W*"
)
_ITEM = expression(r"[•·▪◦●○]|\d{1,3}[.)]\s")
# an abbreviation with what it means, among others of a line each
_ENTRY = expression(r"[A-Za-z][A-Za-z()-]{0,9}(?P<sign> [-–—=] |: )")
# words that no line of its own ends with
_HANGING = expression(
    r"(?i)\b(?:of|to|in|into|the|and|a|an|at|from|for|with|as|on|or|by|next|each|last|rep|repeat|thru|through)$"
)
# a hyphen after or before these belongs to the word: ch-2, sl-st, dc-cluster, V-stitch, half-double, multi-coloured
_HYPHENED = expression(
    r"(?i)(?:ch|chs|sl|sc|hdc|dc|tr|htr|dtr|st|sts|sp|inc|dec|rep|beg|front|back|half|double|treble|single|post|self|multi|non|"
    r"pre|re|mid|semi|two|three|four|five|six|seven|eight|nine|ten|one|left|right|well|off|in|side|colou?r|stitch|cross|cm|mm|x|\w)"
)
_HYPHENED_AFTER = expression(
    r"(?i)(?:ch|chs|sl|sc|hdc|dc|tr|htr|dtr|st|sts|sp|sps|stitch|stitches|space|spaces|loop|loops|ring|picot|cluster|shell|post|"
    r"colou?red|sided|piece|wide|long|inch|weight|ply|\w)\b"
)
RUNNING = "Running heads and page numbers were left out"


def flowed(pages: list[list[Line]], path: str, notes: Iterable[str]) -> SourceText:
    """The text of all pages, each word with its page."""
    heads = _running(pages)
    lines = [line for page in pages for line in page if id(line) not in heads]
    known = {word.lower() for line in lines for word in expression(r"\w+(?:-\w+)*").findall(plain(line.words))}
    wrapped = _wrapped(lines)
    space = _Space(lines, wrapped)
    text = Lines(_page_name)
    paragraph: list[Words] = []
    page = 0
    for number, line in enumerate(lines):
        if number and wrapped[number - 1]:
            paragraph = _joined(paragraph, line.words, known)
            continue
        if paragraph:
            text.line(paragraph, _page_name(page))
        space.before(number, text)
        paragraph, page = list(line.words), line.page
    if paragraph:
        text.line(paragraph, _page_name(page))
    return text.source(path, "pdf", (*notes, *([RUNNING] if heads else [])))


def _page_name(page: int) -> str:
    return f"page {page + 1}"


# running heads -----------------------------------------------------------------------------------


def _running(pages: list[list[Line]]) -> set[int]:
    """The lines that only say where in the document one is: what stands at one place of most pages, and page numbers.

    A row's label keeps a line in the text, whatever stands around it.
    """
    outer = [[line for line in page if line.top and not _ANY_LABEL.match(plain(line.words))] for page in pages]
    filled = sum(bool(page) for page in pages)
    alike = Counter(key for page in outer for key in {_likeness(line) for line in page})
    numbers = Counter(
        number - line.page for page in outer for line in page if (number := _page_number(line)[0]) is not None
    )
    found: set[int] = set()
    for page in outer:
        for line in page:
            number, named = _page_number(line)
            repeated = filled > 1 and alike[_likeness(line)] >= max(2, 0.6 * filled)
            counted = number is not None and (
                named or numbers[number - line.page] >= max(2, 0.6 * filled) or _alone_below(line, pages[line.page])
            )
            if repeated or counted:
                found.add(id(line))
    everything = sum(len(page) for page in pages)
    return found if len(found) < everything else set()


def _likeness(line: Line) -> tuple[str, int]:
    """What two running heads have in common: their words but for the page's number, and their height on the page."""
    words = " ".join(plain(line.words).split())
    return expression(r"^\d{1,3}\b|\b\d{1,3}$").sub("#", words), round(line.base / 4)


def _page_number(line: Line) -> tuple[int | None, bool]:
    """The number that a line consists of, and whether it is called a page's."""
    match = _PAGE_NUMBER.fullmatch(plain(line.words))
    if match is None:
        return None, False
    return int(match[1] or match[2] or match[3]), match[3] is None


def _alone_below(line: Line, page: list[Line]) -> bool:
    """Whether a line is the page's own number, well below everything else on it."""
    others = [other.base for other in page if other is not line]
    return _page_number(line)[0] == line.page + 1 and bool(others) and line.base < min(others) - 1.5 * line.size


# wrapped lines -----------------------------------------------------------------------------------


def _edges(lines: list[Line]) -> dict[tuple[int, int], float]:
    """How far right the lines of each column go; a column that no line comes near the end of wraps none."""
    found: dict[tuple[int, int], float] = {}
    by_column: dict[tuple[int, int], list[Line]] = {}
    for line in lines:
        if not line.row:
            by_column.setdefault(_column(line), []).append(line)
    for column, own in by_column.items():
        most = max(line.right for line in own)
        left, edge = min(line.left for line in own), own[0].edge
        near = sum(line.right > most - 0.12 * (most - left) for line in own)
        if most > edge - 0.12 * (edge - left) or near >= max(3, 0.3 * len(own)):
            found[column] = most
    return found


def _column(line: Line) -> tuple[int, int]:
    """Lines of one column end at one edge, on whatever page."""
    return (round(line.edge / 12), 0)


def _wrapped(lines: list[Line]) -> list[bool]:
    """For every line but the first, whether it goes on with the one above: its first word would not have fitted there.

    Wrapped lines follow each other at one distance; the sentences that surely go on say which.
    """
    edges = _edges(lines)
    listed = [_entry_begins(lines[max(0, number - 3) : number + 1]) for number in range(1, len(lines))]
    full = [
        not entry and _full(above, below, edges) for (above, below), entry in zip(pairwise(lines), listed, strict=True)
    ]
    sure = [
        (above.base - below.base) / above.size
        for (above, below), no_room in zip(pairwise(lines), full, strict=True)
        if no_room and _same_column(above, below) and not _stops(above) and plain(below.words)[0].islower()
    ]
    usual = median(sure) if sure else 1.3
    return [
        no_room and _follows(above, below, usual) for (above, below), no_room in zip(pairwise(lines), full, strict=True)
    ]


def _same_column(above: Line, below: Line) -> bool:
    return above.page == below.page and not below.first


def _stops(line: Line) -> bool:
    return plain(line.words).rstrip()[-1:] in ".:!?)]"


def _entry_begins(lines: list[Line]) -> bool:
    """Whether the last of some lines begins an entry of a list, as one before it does."""
    entry = _ENTRY.match(plain(lines[-1].words))
    above = [plain(line.words) for line in lines[:-1]]
    return entry is not None and any(
        (other := _ENTRY.match(words)) and other["sign"] == entry["sign"] and words.count(other["sign"]) == 1
        for words in above
    )


def _full(above: Line, below: Line, edges: dict[tuple[int, int], float]) -> bool:
    """Whether there was no room left on a line for the first word of the next, which begins nothing of its own."""
    edge = edges.get(_column(above))
    words = plain(below.words)
    if edge is None or above.row or below.row or abs(above.size - below.size) > 0.15 * above.size:
        return False
    upper = plain(above.words)
    bracketed = opened(upper) or _HANGING.search(upper) is not None
    if not bracketed and (above.bold != below.bold and below.bold or _LABEL.match(words) or _ITEM.match(words)):
        return False
    goes_on = words[0].islower() and not _stops(above) or bracketed
    slack = 0.03 * (edge - above.left) if goes_on else 1.0
    return above.right + 0.2 * above.size + below.word > edge - slack


def _follows(above: Line, below: Line, usual: float) -> bool:
    if _same_column(above, below):
        return above.base - below.base <= 1.12 * usual * above.size
    return plain(below.words)[0].islower() or not _stops(above) or opened(plain(above.words))


def _joined(above: list[Words], below: list[Words], known: set[str]) -> list[Words]:
    """A line with the one that goes on with it; the hyphen of a divided word goes, that of ch-2 stays."""
    head, tail = plain(above), plain(below)
    before = expression(r"([\w-]*\w)-$").search(head)
    after = expression(r"\w+").match(tail)
    if expression(r"\w\)?[—–]$").search(head):
        return [*above, *below]  # a dash that stands without space
    if before is None or after is None:
        return [*above, Words(" "), *below]
    if not _divided(before[1], after[0], known):
        return [*above, *below]
    last = above[-1]
    return [*above[:-1], last.cut(0, len(last.text) - 1), *below]


def _divided(before: str, after: str, known: set[str]) -> bool:
    """Whether a hyphen only divides a word at the line's end."""
    if not (before.replace("-", "").isalpha() and after.isalpha() and after.islower()):
        return False
    if f"{before}{after}".lower() in known:
        return True
    last = before.rpartition("-")[2]
    if f"{before}-{after}".lower() in known or _HYPHENED.fullmatch(last) or _HYPHENED_AFTER.fullmatch(after):
        return False
    return len(last) > 1 and len(after) > 1


# space between paragraphs ------------------------------------------------------------------------


class _Space:
    """Knows where the print leaves a line blank: more space than between most paragraphs, or larger or bolder letters."""

    def __init__(self, lines: list[Line], wrapped: list[bool]) -> None:
        self._lines = lines
        self._size = median(line.size for line in lines)
        gaps = sorted(
            gap for number, new in enumerate(wrapped, 1) if not new and (gap := self._gap(number)) is not None
        )
        self._usual = gaps[len(gaps) // 5] if gaps else 0.0
        varied = sum(gap > 1.35 * self._usual for gap in gaps) * 12 > len(gaps)
        self._tells = varied or any(self._heading(number) for number in range(1, len(lines)))

    def _gap(self, number: int) -> float | None:
        """How far a line is from the one above, in the height of its letters."""
        above, line = self._lines[number - 1], self._lines[number]
        if line.first or above.page != line.page:
            return None
        return (above.base - line.base) / max(1.0, min(above.size, line.size))

    def _heading(self, number: int) -> bool:
        above, line = self._lines[number - 1], self._lines[number]
        set_off = line.size > 1.15 * self._size or line.bold and not above.bold
        return set_off and len(plain(line.words).split()) <= 9

    def before(self, number: int, text: Lines) -> None:
        """Leave the space that the print leaves before a line."""
        if not number:
            return
        line = self._lines[number]
        gap = self._gap(number)
        if self._heading(number):
            text.blank()
        elif gap is None:
            text.apart(line.words)  # what stood at the end of a page or column cannot be seen
        elif self._tells and gap > 1.35 * self._usual:
            text.blank()
        elif not self._tells and gap > 1.7:
            text.apart(line.words)
