"""Passages that only some sizes work: "Sizes L and XL only: …", "All sizes:", "Size S: the crown is done; go on to Rnd 11."."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import regex

from lint.expression import expression
from lint.pattern import Label
from lint.reading.sizes.audience import Audience, Sizes, SizeWords

_AS_A_COLON = expression(r"\s[–—-]+>?\s*$")  # "M/L/XL --" in a line of its own
_SEVERAL = expression(
    r"[\p{L}\d]*\p{L}[\p{L}\d]*(?:\s*[,;/|&]\s*[\p{L}\d]*\p{L}[\p{L}\d]*)+"
)  # "M, L, XL" alone in a line
_LONGEST = 70  # characters before the end of a gate
_DONE = expression(
    r"(?i)\b(?:is|are)\s+(?:now\s+)?(?:done|completed?|finished)\b|\b(?:end|stop|finish)s?\s+here\b|^\W*(?:done|completed?|finished)\b"
)
_BEHIND_LABEL = expression(
    r"(?i)(?P<head>[^:()]{2,40}?)(?:(?:\s*[,–—-]\s*|\s+)(?P<said>(?:for\s+)?(?:the\s+)?(?:\w+\s+)?sizes?\b[^:]{0,40}?)"
    r"|\s*(?:,|\s[–—-])\s*(?P<said>(?:for\s+)?[^:(),]{1,40}?\s+only|for\s+[^:(),]{1,40}?))\s*:\s*(?=\S)"  # "Rnd 10, large only:"
)
_NAMED_IN_BRACKETS = expression(
    r"(?i)[(\[]\s*(?:for\s+)?(?:the\s+)?(?P<name>[^()\[\]:,;=]{1,20}?)(?:\s*[:=]\s*|\s+)(?:make\s+|work\s+)?(?:ch\s?)?\d"
)
_ALL_SIZES = expression(r"(?i)[(,–—-]\s*(?:for\s+)?(?:all|both)\s+sizes\b")
_NEXT_PIECE = expression(r"(?i)next\s+(?:section|part|piece|step)")
_LEFT_OUT = expression(
    r"(?i)\W*(?:skip|omit|miss|leave\s+out|do\s+not\s+(?:work|make)|don't\s+(?:work|make))\b[^.;]{0,30}?\b(?:rows?|rnds?|rounds?|rds?)\b"
)
_GO_ON = expression(
    r"(?i)\b(?:go|goes|going|skip|proceed|continue|move|jump|turn|cont)\s+(?:(?:on|straight|directly|now)\s+)*to\s+(?:the\s+)?(?P<where>[^.;:,]+)"
)


def goes_on_to(sentence: str) -> str | None:
    """Where a size is sent: the "Rnd 19" of "Continue on to Rnd 19."."""
    match = _GO_ON.search(sentence)
    return match["where"].strip() if match is not None and not _NEXT_PIECE.search(match["where"]) else None


@dataclass(frozen=True, slots=True)
class Gate:
    """Words that say which sizes work what follows, and where in the line those words end.

    `sizes`: None where the names are not the pattern's; `leaves`: these sizes stop here instead, and go on at `goes_on`.
    """

    sizes: Sizes | None
    end: int
    every: bool = False
    others: bool = False  # those that the gate before shuts out
    leaves: bool = False
    goes_on: str | None = None


class GateReader(SizeWords):
    """Knows the sizes of one pattern by their names."""

    def at_line(self, line: str) -> Gate | None:
        """The gate that a line begins with."""
        if self.number < 2:
            return None
        not_told: Gate | None = None  # unless other words of the line tell: "For size S, ch 40."
        for end, sign in _ends(line):
            words = line[:end]
            spoken = self.audience(words)
            if spoken is None or not _gates(words, sign, spoken):
                continue
            marks = " :,.)]–—-" + ("*_" if line.lstrip()[:1] in ("*", "_") else "")
            behind = len(line) - len(line[end:].lstrip(marks))
            rest = line[behind:]
            if expression(r"(?i)[;.]\s*(?:for\s+)?sizes?\s+\S+,(?![^.;:]{1,40}:)").search(rest):
                return Gate(None, len(line))  # "Size M, work Row 3; size L, …": two gates in one sentence
            if _LEFT_OUT.match(rest):
                return Gate(None, len(line))  # "Size S: omit Rows 3 and 4"
            if spoken.sizes and not spoken.every and self._others_named(rest, spoken.sizes):
                return None  # "Small: Ch 21 (for medium ch 23, for large ch 27)": a list, and a line for all
            if spoken.sizes and not spoken.every and (_GO_ON.search(rest) or _DONE.search(rest)):
                return Gate(spoken.sizes, len(line), leaves=True, goes_on=goes_on_to(rest))
            found = Gate(spoken.sizes, behind, spoken.every, spoken.others)
            if spoken.sizes is not None or spoken.every or spoken.others:
                return found
            not_told = not_told or found
        return not_told

    def _others_named(self, words: str, sizes: Sizes) -> bool:
        """Whether brackets give a figure of their own to sizes that are not among these."""
        named = (self.sizes_of(match["name"]) for match in _NAMED_IN_BRACKETS.finditer(words))
        return any(others is not None and not set(others) & set(sizes) for others in named)

    def behind_label(self, line: str) -> tuple[int, int, Sizes | None] | None:
        """Where the label of "Row 3, sizes M and L only: …" ends, where its words begin, and the sizes."""
        found = _BEHIND_LABEL.match(line) if self.number > 1 else None
        spoken = self.audience(found["said"]) if found is not None else None
        return (found.end("head"), found.end(), spoken.sizes) if found is not None and spoken is not None else None

    def for_all(self, words: str) -> bool:
        """Whether a label says that all sizes work its row: "Next Rnd (all sizes)", "Rnd 6, all sizes"."""
        return self.number > 1 and _ALL_SIZES.search(words) is not None

    def in_label(self, words: str) -> Sizes | None:
        """The sizes that a label's brackets name: "Row 9 (M and L only)"."""
        found = expression(
            r"\(\s*(?:for\s+)?(?P<said>sizes?\s+)?(?P<names>[^()]+?)(?P<said>\s+sizes?)?(?P<said>\s+only)?\s*\)",
            regex.I,
        ).search(
            words,
        )
        if found is None or self.number < 2 or not found["said"] and not found["names"].lstrip()[:1].isalpha():
            return None  # "Rows 2-(6, 8)" has rows in its brackets, though 6 and 8 may be sizes too
        return self.sizes_of(found["names"])


_END_MARKS = {
    sign: expression(form)
    for sign, form in {
        ":": r":",
        "(": r"[)\]](?=\s*\S)",
        "-": r"\s[–—-]\s|[–—]|\.\s?-\s",
        ".": r"\.(?=\s)",
        "": r"$",
        ",": r",",
    }.items()
}


def _ends(line: str):
    """Where the words of a gate may end, and the sign there: the likeliest first."""
    for sign, form in _END_MARKS.items():
        places = [match.start() for match in form.finditer(line) if match.start() <= _LONGEST]
        yield from ((place, sign) for place in reversed(places[:6]))


def _gates(words: str, sign: str, spoken: Audience) -> bool:
    """Whether words that speak to some sizes are a gate, with the sign that stands behind them."""
    alone = words.strip(" :.*_#()[]|;!=~…–—>→»-")
    if sign == "(":
        return spoken.sure and words.lstrip()[:1] in ("(", "[")
    if sign == ".":
        return spoken.sure and expression(r"(?i)\b(?:sizes?|only)$").search(alone) is not None
    if sign == ",":
        return expression(r"(?i)\W*(?:for|in|sizes?)\b").match(words) is not None or alone.lower().endswith("only")
    if sign == "-" or sign == "":
        return (
            spoken.sure
            and (sign == "-" or not expression(r"(?i)\W*in\b").match(words))
            or sign == ""
            and (
                _is_name(alone)
                or spoken.sizes is not None
                and len(spoken.sizes) > 1
                and _SEVERAL.fullmatch(alone) is not None
                or _AS_A_COLON.search(words) is not None
                and expression(r"\p{L}").search(alone) is not None
            )
        )
    return spoken.sure or expression(r"\p{L}").search(alone) is not None


def _is_name(words: str) -> bool:
    """Whether words that are no more than sizes' names are long enough to head a passage: "MEDIUM", not "M"."""
    return len(words) > 3 and words.replace(" ", "").isalpha()


@dataclass
class Passage:
    """Which sizes work the lines that are read now."""

    reader: GateReader
    now: Sizes | None = None  # None: all
    over_headings: bool = False  # a whole passage for one size, with pieces of its own
    unknown: bool = False  # a gate whose sizes are not the pattern's
    away: dict[int, str | None] = field(default_factory=dict)  # sizes that stopped, and where they go on
    number: int = 0  # of the gate, counted through the text; 0 before the first
    _last: Sizes = ()  # those of the gates since "all sizes", which "other sizes" shuts out
    _before: tuple | None = None  # what held before a gate that is for its own line

    def open(self, gate: Gate, before_heading: bool = False, line_only: bool = False) -> None:
        """What a gate says of the lines behind it, or of the rest of its own line."""
        self.number += 1
        if gate.others:
            shut_out = [size for size in range(self.reader.number) if size not in self._last]
            gate = replace(gate, sizes=tuple(shut_out) if self._last else None)
        elif not gate.every and not gate.leaves:
            self._last = tuple(sorted({*self._last, *(gate.sizes or ())}))
        if gate.every or gate.others:
            self._last = ()
        if line_only:
            self._before = self.now, self.unknown, self.over_headings
        if gate.leaves:
            self.away |= dict.fromkeys(gate.sizes or (), gate.goes_on)
            return
        self.now = None if gate.every else gate.sizes
        self.unknown = gate.sizes is None
        self.over_headings = before_heading and not gate.every
        if gate.every:
            self.away = {size: where for size, where in self.away.items() if where is not None}

    def next_line(self) -> None:
        """A gate that was for one line only has ended."""
        if self._before is not None:
            (self.now, self.unknown, self.over_headings), self._before = self._before, None

    def heading(self, name: str) -> None:
        """A new piece: a gate ends with the piece it stands in, and sizes that were done work this one."""
        self._last = ()
        if not self.over_headings:
            self.now, self.unknown = None, False
        wanted = name.lower()
        self.away = {
            size: where for size, where in self.away.items() if where is not None and not _meant(where, wanted)
        }

    def row(self, label: Label | None) -> Sizes | None:
        """The sizes that work a row here; None for all."""
        for size, where in list(self.away.items()):
            if label is not None and where is not None and _is_label(where, label, size):
                del self.away[size]
        if label is not None and self.reader.for_all(label.words):
            self.open(Gate(tuple(range(self.reader.number)), 0, every=True))
            self.away.clear()
        own = self.reader.in_label(label.words) if label is not None and not label.unclear else None
        sizes = own or self.now
        if not self.away:
            return sizes
        return tuple(size for size in (sizes or range(self.reader.number)) if size not in self.away)


def names_place(where: str, line: str, label: Label | None, sizes: Sizes) -> bool:
    """Whether a later line is where a size is sent: a row by its label, or a heading."""
    if label is not None:
        return any(_is_label(where, label, size) for size in sizes)
    return len(line.split()) < 8 and not expression(r"\d").search(where) and _meant(where, line.strip(" :.*_#").lower())


def _meant(where: str, heading: str) -> bool:
    """Whether "go on to the Body" means this heading."""
    where = expression(r"(?i)^(?:the|section)\s+").sub("", where.strip().lower())
    return bool(heading) and (where in heading or heading in where)


def _is_label(where: str, label: Label, size: int) -> bool:
    """Whether "go on to Rnd 11" means this label, as the size reads it."""
    number = expression(r"\d+").search(where)
    numbers = label.at(size)
    if number is None or int(number[0]) not in numbers[:1]:
        return False
    said = (
        "round"
        if expression(r"(?i)\br(?:ou)?n?ds?\b").search(where)
        else "row"
        if expression(r"(?i)\brow").search(where)
        else None
    )
    return said is None or label.kind in (said, "either")
