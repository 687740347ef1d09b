"""Finds and reads row labels: "Rnd 3 (RS):", "1st row -", "Rows 4 thru 12 (A):", "Next row:", "7-11)"."""

from __future__ import annotations

from dataclasses import dataclass, replace

import regex

from lint.amount import Amount
from lint.expression import expression
from lint.pattern import Label
from lint.reading.lines.labelforms import CARDINAL_WORDS, ORDINAL_WORDS, label_forms
from lint.reading.sizes.figures import numbers_of, sized_numbers
from lint.rulebook import LayoutFile
from lint.source import Span

# what may stand before "row" without being a row's name
_NO_TITLES = {
    "rep", "repeat", "work", "as", "for", "after", "from", "on", "at", "end", "each", "every", "all", "per", "this", "rows",
    "row", "rounds", "round", "rnd", "rnds", "join", "in", "skip", "continue", "cont", "complete", "same", "note", "to", "the",
    "with", "when", "before", "then", "these", "both", "do", "no", "see", "last", "turn", "begin", "start", "now", "working",
}  # fmt: skip
_BRACKETED = expression(r"\s*[(\[{][^()\[\]{}]*[)\]}]|/\d+")


_DOUBLED = expression(r"(?i)\s*(?:\p{L}+\s+){0,2}(?:round|rnd|row)\s*[-–—]\s*(?=(?:round|rnd|row)\s*\d+\s*[:.])")

# "Row 5 - Dec row: …", "Rnd 3, Increase Round: …", "Row 2 [Dec row]: …": a number, and the name that the row is called for by
_NO_NAME = (
    "as|same|like|rep|repeat|work|each|every|all|other|next|last|alternate|alt|following|foll|this|that|these|previous|prev|first|second|both|half|"
    "even|odd|any|more|of|in|on|to|for|from|and|the|a|skip|no|not|only|end|until|before|after|per|one|two|three"
)
_NAMED_BEHIND = expression(
    rf"(?P<label>(?i:rows?|rounds?|rnds?)\s*\d{{1,3}})\s*(?:[,–—]|\s-|\[)\s*(?P<name>(?:(?!(?i:{_NO_NAME})\b)\p{{L}}+[ -]){{1,2}}(?i:row|round|rnd))\s*\]?\s*:"
)

# bullets, marks and pictures before a label, and a box to tick
_LEAD = expression(
    r"(?:\[[ xX✓]?\](?=\s))?(?:\s*\[[ xX✓]?\](?=\s))?[\s•·*_|#>\p{So}\p{Sk}\p{Mn}\u200d✓✔–—-]*(?:\[[ xX✓]?\](?=\s)\s*)?"
)
# "**Rnd 1** 6 sc", "[Rnd 1] 6 sc", "(Row 2) Ch 1": the label in bold letters or brackets, with no sign of its own
_ENCLOSED = expression(
    r"(?:(?P<mark>\*{1,3}|_{1,2})(?P<in>(?=\S)[^*_\n]{1,60}?(?<=\S))(?P=mark)|\[(?P<in>[^\[\]\n]{3,60})\]|\((?P<in>[^()\n]{3,60})\))\s*[:.–-]?(?=\s*(?:\S|$))"
)
_HEADED = expression(
    r"\s*(?P<piece>\p{Lu}\p{L}+(?:\s\p{L}+){0,2})(?:\s*:|\s+[-–—])\s*(?=(?i:round|rnd|row)\s*\d+\s*(?:[:.]|\s(?:ch\b|\d+\s?ch\b|join\b|rejoin\b|with\b|miss\b|skip\b)))"
)


_COLOUR_LED = expression(
    r"\s*(?i:with |using |in )?(?:\p{L}+ )?(?P<name>\p{L}+\d?)(?i: yarn| colou?r)?\s*:\s+(?=(?:\d|(?i:r(?:ou)?nds?|rows?|r)\b))"
)
# "Row 3 B:", "Rows 4-5 A:", "Rnd 2 (RS) MC:": the row's yarn behind its number, and before the sign
_COLOUR_BEHIND = expression(
    r"(?P<label>(?i:rows?|rounds?|rnds?|rds?)\s*\d{1,3}(?:\s?(?:[-–—&,]|(?i:to|and|thru|through)\b)\s?\d{1,3})*"
    r"(?:\s*\((?i:rs|ws)\))?)\s+(?P<name>MC|CC\d?|\p{L}+)\s*:"
)
_OTHER_ROWS = expression(r"\d\s*(?:[-–—]|\bto\b)\s*\d")  # "(31-34 for sizes L and XL)": rows of some sizes
_COUNT_BEHIND = expression(r"[(\[]\s*\d{1,4}\s*[)\]]$")


@dataclass(frozen=True, slots=True)
class Found:
    """A label found in a text: where it stands, and where the row's words begin."""

    label: Label
    start: int
    body: int
    piece: str | None = None  # "Border" of "Border Row 1:"

    def moved(self, by: int) -> Found:
        """The same label in the same words further on."""
        span = Span(self.label.span.start + by, self.label.span.end + by)
        return Found(replace(self.label, span=span), self.start + by, self.body + by, self.piece)


# what some rows come to, told of them: a shape and perhaps its size, and no word more, which might be of work
_MAKES_SHAPE = expression(
    r"(?i)\s*(?:make|create|give|produce)s?\s+(?:an?|the)\s+(?!magic)(?:[\w-]+\s+){0,3}"
    r"(?:circle|square|hexagon|octagon|pentagon|triangle|rectangle|oval|dis[ck]|cone|ball|tube)s?\b"
    r"(?:[\s,]*(?:that\s+(?:is|measures)|of|about|approx(?:imately)?|measuring|in|inch(?:es)?|cm|mm|across|wide|long|tall|diameter|[\d½¼¾.,/]*\d|[½¼¾\"”]))*"
    r"(?:[,;]\s*(?:and\s+)?(?:(?:rows?|rnds?|rounds?|rds?|r)\s?\d+(?:\s*(?:-|–|to|and)\s*(?:r|rnd|row)?\s?\d+)?|the\s+(?:last|next|other)\s+[\w ]{1,12})"
    r"\s+(?:(?:make|create|give|form|add)s?\s+)?(?:an?|the)\s+(?:[\w-]+\s+){0,3}(?:rim|border|edge|edging|frame|petals?|flower|circle|square|ruffle|lace|brim)s?)*"
    r"(?:[,;]\s*(?:rows?|rnds?|rounds?|rds?|r)\s?\d+\s+(?:an?|the)(?:\s+(?!(?:sc|h?dc|h?tr|dtr|ch|sts?|sl|inc|dec|each|in|next)\b)[\w-]+){0,2})?"  # cut by the line
    r"\s*[.!]?\s*$"
)
_SHORTENED = expression(
    r"(?i)\b(?:rep|foll?|follows?|as|no|approx|beg|cont|alt|prev|of|to|in|fig|see|pic|step)[.)\]};]\s*$"
)  # no sentence ends there
# "Cuff: next 4 rnds - …": a name for what the rows of the piece make, and the label behind it
_SECTION_LED = expression(
    r"\s*\p{Lu}\p{Ll}+(?: \p{L}+){0,2}: +(?=(?i:(?:work )?(?:the )?next (?:[\d(),/\[\] -]+)?(?:rows?|rounds?|rnds?)\b))(?i:work )?"
)
SEVERAL = ("rows", "rounds", "rnds", "rds")
HOW_MANY = "how many rows that is, is not said"  # by such a word without a number
_LONGEST = 500  # characters of a label, and more


class LabelReader:
    """Finds labels by the label words of rules/layout.yaml."""

    def __init__(
        self,
        layout: LayoutFile,
        sizes: int = 1,
        commas: bool = False,
        first_bare: bool = False,
        colours: frozenset[str] = frozenset(),
    ) -> None:
        """`commas`: whether the pattern's lists over the sizes are parted by commas alone; `first_bare`: "8, 9 (10, 11)".

        `colours`: what yarns are called, and no piece is.
        """
        self._layout, self.colours = layout, colours
        self._sizes = sizes
        self._commas, self._first_bare = commas, first_bare
        self._rows = {word.lower() for word in layout.row_words}
        self._rounds = {word.lower() for word in layout.round_words}
        self._either = {word.lower() for word in layout.either_words}
        self._patterns = label_forms(
            tuple(sorted(self._rows | self._rounds | self._either, key=len, reverse=True)),
            tuple(layout.named_rows),
            sizes > 1,
        )
        self._at_lines: dict[tuple[str, bool], Found | None] = {}  # many stages ask about the same line
        self._for_sizes: dict[int, LabelReader] = {}

    def at_line(self, line: str, offset: int, bare_numbers: bool = False) -> Found | None:
        """The label at the start of a line (bullets, stars and spaces before it are passed over)."""
        key = line, bare_numbers
        if key not in self._at_lines:
            self._at_lines[key] = self._read(line, bare_numbers)
        found = self._at_lines[key]
        return found.moved(offset) if found is not None and offset else found

    def _read(self, line: str, bare_numbers: bool) -> Found | None:
        lead = _LEAD.match(line).end()
        enclosed = _ENCLOSED.search(line, 0, lead + 64)
        if enclosed is not None and not line[: enclosed.start()].strip(" \t•·|#>–—-"):
            inner = self.at_line(enclosed["in"].rstrip(" :.–-") + ":", enclosed.start("in"))
            if inner is not None and inner.body >= enclosed.start("in") + len(enclosed["in"].rstrip(" :.–-")):
                return replace(inner, body=enclosed.end())
        doubled = _DOUBLED.match(line)
        if doubled is not None:  # "Joining Round - Round 5:"
            return self.at_line(line[doubled.end() :], doubled.end())
        section = _SECTION_LED.match(line)
        if section is not None and (inner := self.at_line(line[section.end() :], section.end())) is not None:
            return inner
        named = _NAMED_BEHIND.match(line, lead)
        inner = self.at_line(named["label"] + ":", named.start("label")) if named is not None else None
        if named is not None and inner is not None:
            span = Span(inner.label.span.start, named.end("name"))
            words = line[named.start("label") : named.end("name")]
            return replace(inner, label=replace(inner.label, span=span, words=words), body=named.end())
        told = _COLOUR_BEHIND.match(line, lead)
        if told is not None and told["name"].lower() in self.colours:
            inner = self.at_line(told["label"] + ":", told.start("label"))
            if inner is not None:
                return replace(inner, label=replace(inner.label, colour=told["name"]), body=told.end())
        led = _COLOUR_LED.match(line)
        if led is not None and (
            led["name"].lower() in self.colours or expression(r"[A-D]|MC|CC\d?").fullmatch(led["name"])
        ):
            inner = self.at_line(line[led.end() :], led.end())
            if inner is not None:
                return inner  # "Blue: 10-16 r. 8 sc", "With red: Rnd 5."
        headed = _HEADED.match(line)
        if headed is not None and headed["piece"].split()[0].lower() not in _NO_TITLES:  # "Border: Rnd 1:"
            inner = self.at_line(line[headed.end() :], headed.end())
            return replace(inner, piece=headed["piece"]) if inner is not None else None
        for name in (
            "alternating",
            "worded",
            "spelled",
            "ordinal",
            "kept apart",
            "several",
            "named",
            "start",
            "prefixed",
            "titled",
        ):
            match = self._patterns[name].match(line, lead)
            if match and self._real(match, line):
                return self._found(match)
        if bare_numbers:
            match = self._patterns["bare"].match(line, lead)
            if match:
                return self._found(match)
        return None

    def for_sizes(self, sizes: int) -> LabelReader:
        """The same reader for lists of another length."""
        if sizes not in self._for_sizes:
            self._for_sizes[sizes] = LabelReader(self._layout, sizes, self._commas, self._first_bare, self.colours)
        return self._for_sizes[sizes]

    def bare_number(self, line: str) -> bool:
        """Whether a line starts with a number as list items do: "3) …", "7-11) …", "4. …"."""
        return self._patterns["bare"].match(line, expression(r"[\s|]*").match(line).end()) is not None

    def inline(self, text: str, offset: int) -> list[Found]:
        """Labels inside a run-on paragraph: after a stop, with a colon or a dash of their own, or "White. Rnd 7. 36 sc"."""
        found = []
        for match in self._patterns["inline"].finditer(text):
            inner = self.at_line(text[match.end() : match.end() + _LONGEST], offset + match.end())
            if inner is not None and text[inner.body - offset - 1 : inner.body - offset + 0].strip() in (":", "", "."):
                before_body = text[: inner.body - offset].rstrip()
                stopped = before_body.endswith((".", " -")) and _is_stopped(inner, text, match.end(), offset)
                if before_body.endswith((":", "–", "—")) or stopped:
                    found.append(inner)
        return found

    @staticmethod
    def _real(match: regex.Match, line: str) -> bool:
        """Not "Rnds 1-3 = 4 in" (a gauge), "Rows 1 to 4 measure …" or "R1 to R4 make a flat circle"."""
        title = match.groupdict().get("prefix") or match.groupdict().get("title") or ""
        if title and (title.split()[0].lower() in _NO_TITLES or title.lower().endswith(" all")):
            return False  # "Chest all round: 46 cm"
        sign = (match.groupdict().get("sign") or "").strip()
        rest = line[match.end() :]
        if sign == "=" and expression(
            r"\s*\d[\d.,/½¼¾ ]*(?:[\"”]|in\b|ins\b|inch|cm|mm|sts?\b|stitches)?\W*(?:$|\n|square|wide|long|tall|high)|\s*\d[\d.,/½¼¾ ]*\s?(?:[\"”]|in\b(?!\s+(?:ring|mr|magic|each|ea|next|st))|ins\b|inch|cm|mm)"
        ).match(
            rest,
        ):
            return False
        several = (match.groupdict().get("word") or "").lower().endswith("s")
        if several and not sign and match.groupdict().get("name"):
            return False
        one = expression(r"\s*\d+\s*").fullmatch(match.groupdict().get("numbers") or "")
        if not sign and not one and _MAKES_SHAPE.match(rest):
            return False
        if several and one and sign in ("-", "–") and expression(r"\d").match(rest):
            return False  # "Rows 1-2 Cream", but not "Rows 5-7 - 24 sc"
        return True

    def _numbers(self, figures: str) -> tuple[tuple[int, ...], tuple[tuple[int, ...], ...], bool]:
        """The numbers of the first size, those of every size where they differ, and whether they can't be told."""
        if self._sizes == 1:
            return numbers_of(_BRACKETED.sub("", figures)), (), False
        found = sized_numbers(figures, self._sizes, self._commas, self._first_bare)
        if found is None:
            return numbers_of(_BRACKETED.sub("", figures)), (), True
        return next(numbers for numbers in found if numbers or len(found) == 1), found if len(found) > 1 else (), False

    def _found(self, match: regex.Match) -> Found:
        groups = match.groupdict()
        word = (groups.get("word") or "").lower()
        extra = groups.get("extra") or ""
        title = (groups.get("title") or "").lower()
        numbers, by_size, unclear = self._numbers(groups.get("numbers") or "")
        if title in ORDINAL_WORDS:
            numbers = (ORDINAL_WORDS[title],)
        if groups.get("spelled"):
            first = CARDINAL_WORDS[groups["spelled"].lower()]
            numbers = tuple(range(first, CARDINAL_WORDS.get((groups["until"] or "").lower(), first) + 1))
        if word in self._rows:
            kind = "row"
        elif word in self._rounds:
            kind = "round"
        elif word in self._either or not word:
            kind = "either"
        else:
            kind = "round" if word == "ring" else "row"
        name = (groups.get("name") or "").lower()
        if name.startswith(("foundation", "base", "start", "beginning ch")) and word not in self._rows | self._rounds:
            kind = "foundation"
        around = f"{groups.get('side') or ''} {extra}".lower()
        side = (
            "rs"
            if expression(r"\brs\b|right side").search(around)
            else "ws"
            if expression(r"\bws\b|wrong side").search(around)
            else None
        )
        words = " ".join(match.group(0).split()).rstrip(":.-–—;= ").strip("•*|#> ")
        rows = sized_numbers(groups["rows"], self._sizes, True) if groups.get("rows") else None
        rows = [(CARDINAL_WORDS[groups["how_many"].lower()],)] if groups.get("how_many") else rows
        label = Label(
            Span(match.start(), match.end("core")),
            kind,
            numbers,
            side,
            _colour(extra),
            words,
            by_size,
            Amount(tuple(one[0] if one else None for one in rows)) if rows else None,
            bool(groups.get("alternate")),
            unclear
            or bool(groups.get("rows"))
            and rows is None
            or bool(groups.get("onward"))
            or bool(groups.get("title") or not numbers and groups.get("name") and not rows)
            and word in SEVERAL  # "Ribbing rnds:", "Two dec rows:", "Next rnds:": how many is not said, or not here
            or self._sizes > 1
            and _OTHER_ROWS.search(extra) is not None,
            _is_tally(match, numbers, by_size),
        )
        body, count = match.end(), _COUNT_BEHIND.search(groups.get("numbers") or "")
        if count is not None and self._sizes == 1 and (groups.get("sign") or "").strip() in (":", "-", "–", "—"):
            body = match.start("numbers") + count.start()  # "Rnd 2 (12): inc in each st"
        piece = groups.get("prefix")  # "Short Row 1" is a sort of row, "Border Row 1" one of the border
        return Found(label, match.start(), body, None if (piece or "").strip().lower() == "short" else piece)


def _is_stopped(found: Found, text: str, at: int, offset: int) -> bool:
    """Whether a label with a full stop for its sign begins a sentence: "Cuff, white. RND 18. Inc in each st", not "rep. rnd 3. 24 sc"."""
    behind = text[found.body - offset :].lstrip()
    begun = text[at : at + 1].isupper() or text[at : at + 1].isdigit()
    return begun and bool(found.label.numbers) and bool(behind) and _SHORTENED.search(text[:at]) is None


def _is_tally(match: regex.Match, numbers: tuple[int, ...], by_size: tuple[tuple[int, ...], ...]) -> bool:
    """Whether a number and a plural word, "4 rounds:", "3 (4, 5) rows:", may say how many rows there are."""
    groups = match.groupdict()
    word, figures = groups.get("word") or "", groups.get("numbers") or ""
    if not word.lower().endswith("s") or not figures or match.start("numbers") > match.start("word"):
        return False
    lone = len(numbers) == 1 and all(len(one) <= 1 for one in by_size)
    return lone and not expression(r"(?i)\d\s?(?:st|nd|rd|th)\b").search(figures)


def _colour(extra: str) -> str | None:
    """The colour in "(RS, MC)", "(Color B)", ", col B", "- (lavender)"."""
    for piece in expression(r"[(),\-–—:]").split(extra):
        words = expression(r"(?i)\b(colou?r|col|with|yarn)\b").sub("", piece).strip()
        if words and not expression(r"(?i)\b(rs|ws|right|wrong|side|step|rounds?|rows?|make|\d+)\b").search(words):
            return words
    return None


__all__ = ["HOW_MANY", "SEVERAL", "Found", "LabelReader"]
