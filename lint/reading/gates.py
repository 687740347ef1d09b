"""Passages that only some sizes work: "Sizes L and XL only: …", "All sizes:", "Size S: the crown is done; go on to Rnd 11."."""

from __future__ import annotations

from dataclasses import dataclass, field

import regex

from lint.pattern import Label

Sizes = tuple[int, ...]

# one name for all the ways to print a size
_CANON = (
    (r"\s*(?:months?|mos?|years?|yrs?)\b\.?", ""),
    (r"\bextra[ -]?", "x"),
    (r"\bsm(?:al)?l?\b|\bsmall\b", "s"),
    (r"\bmed(?:ium)?\b", "m"),
    (r"\bl(?:arge|ge|g)\b", "l"),
    (r"x[ -]?small\b", "xs"),
    (r"x[ -]?large\b", "xl"),
    (r"(?<=x)[ -](?=[sl]\b)", ""),
    (r"\bxxxl\b|\b3x(?:l)?\b", "3x"),
    (r"\bxxl\b|\b2x(?:l)?\b", "2x"),
    (r"\b([4-9])xl\b", r"\1x"),
    (r"\s*\([^()]*\)", ""),
)
_AND = regex.compile(r"\s*(?:,\s*(?:and|&|or)\b|,|;|&|\band\b|\bor\b|\+)\s*", regex.I)
_RANGE = regex.compile(r"\s*(?:\bto\b|\bthrough\b|\bthru\b|[-–—])\s*", regex.I)
_ALL = regex.compile(
    r"(?i)[\W_]*(?:for\s+|in\s+|both\s+)?(?:all|both)\s+sizes(?:\s+again)?[*_)\]]*\s*(?P<sign>[:.–—-]|$)\W*"
)
_NAMES = r"[\w/][\w/.,&+ ()–-]{0,60}?"
_FORMS = (
    regex.compile(rf"(?i)[\W_]*(?:for\s+|in\s+)?(?:the\s+)?sizes?\s+(?P<names>{_NAMES})(?:\s+(?P<only>only))?[*_)\]]*\s*(?P<sign>:|[–—]\s|$|\.$)\W*"),
    regex.compile(rf"(?i)[\W_]*(?:for\s+|in\s+)?(?:the\s+)?(?P<names>{_NAMES})\s+sizes?(?:\s+(?P<only>only))?[*_)\]]*\s*(?P<sign>:|[–—]\s|$|\.$)\W*"),
    regex.compile(rf"(?i)[\W_]*(?:for\s+|in\s+)?(?P<names>{_NAMES})\s+(?P<only>only)[*_)\]]*\s*(?P<sign>:|[–—]\s|$|\.$)\W*"),
)  # fmt: skip
_NUMBER_WORDS = {"two": 2, "three": 3, "four": 4, "five": 5, "2": 2, "3": 3, "4": 4, "5": 5}
_DONE = regex.compile(
    r"(?i)\b(?:is|are)\s+(?:now\s+)?(?:done|completed?|finished)\b|\b(?:end|stop|finish)s?\s+here\b|^\W*(?:done|completed?|finished)\b"
)
_NEXT_PIECE = regex.compile(r"(?i)next\s+(?:section|part|piece|step)")
_GO_ON = regex.compile(
    r"(?i)\b(?:go|goes|going|skip|proceed|continue|move|jump|turn|cont)\s+(?:on\s+)?(?:straight\s+|directly\s+|now\s+)?to\s+(?:the\s+)?(?P<where>[^.;:,]+)"
)


def goes_on_to(sentence: str) -> str | None:
    """Where a size is sent: the "Rnd 19" of "Continue on to Rnd 19."."""
    match = _GO_ON.search(sentence)
    return match["where"].strip() if match is not None and not _NEXT_PIECE.search(match["where"]) else None


def canonical(name: str) -> str:
    """One name for a size however it is printed: "Medium" and "med" are m, "XXL" and "2XL" are 2x."""
    name = name.strip().lower()
    for form, to in _CANON:
        name = regex.sub(form, to, name)
    return " ".join(name.split()).strip(" .:")


def size_places(names: tuple[str, ...]) -> dict[str, int]:
    """The place of each size in the order printed, by its canonical name."""
    return {canonical(name): at for at, name in enumerate(names)}


@dataclass(frozen=True, slots=True)
class Gate:
    """Words that say which sizes work what follows, and where in the line those words end.

    `sizes`: None where the names are not the pattern's; `leaves`: these sizes stop here instead, and go on at `goes_on`.
    """

    sizes: Sizes | None
    end: int
    every: bool = False
    leaves: bool = False
    goes_on: str | None = None


class GateReader:
    """Knows the sizes of one pattern by their names."""

    def __init__(self, names: tuple[str, ...]) -> None:
        self.number = len(names)
        self.index = size_places(names)

    def at_line(self, line: str) -> Gate | None:
        """The gate that a line begins with."""
        if self.number < 2:
            return None
        every = _ALL.match(line)
        if every:
            return Gate(tuple(range(self.number)), every.end(), every=True)
        alone = line.strip(" :.*_#")
        if len(alone) > 3 and alone.isalpha() and canonical(alone) in self.index:
            return Gate((self.index[canonical(alone)],), len(line))  # "MEDIUM" over a whole passage
        for form in _FORMS:
            match = form.match(line)
            if match is None or match["names"].count("(") > match["names"].count(")"):
                continue  # "Row 2 (Size L only)" is a label
            sizes = self.sizes_of(match["names"])
            if sizes is None and not (match.groupdict().get("only") and "size" in match[0].lower()):
                continue
            rest = line[match.end() :]
            if sizes is not None and (_GO_ON.search(rest) or _DONE.search(rest)):
                return Gate(sizes, len(line), leaves=True, goes_on=goes_on_to(rest))
            return Gate(sizes, match.end())
        return None

    def in_label(self, words: str) -> Sizes | None:
        """The sizes that a label's brackets name: "Row 9 (M and L only)"."""
        found = regex.search(
            r"\(\s*(?:for\s+)?(?P<said>sizes?\s+)?(?P<names>[^()]+?)(?P<said>\s+sizes?)?(?P<said>\s+only)?\s*\)",
            words,
            regex.I,
        )
        if found is None or self.number < 2 or not found["said"] and not found["names"].lstrip()[:1].isalpha():
            return None  # "Rows 2-(6, 8)" has rows in its brackets, though 6 and 8 may be sizes too
        return self.sizes_of(found["names"])

    def sizes_of(self, words: str) -> Sizes | None:
        """The sizes that are named; None where any word is not a size's name."""
        told = self._told(words)
        if told is not None:
            return told
        found: list[int] = []
        for piece in _AND.split(words.strip()):
            named = self._named(piece)
            if named is None:
                return None
            found += named
        return tuple(sorted(set(found)))

    def _named(self, piece: str) -> list[int] | None:
        """One name, two with a stroke between, or a run of sizes from one to another."""
        piece = regex.sub(r"(?i)^sizes?\s+|\s+sizes?$", "", piece.strip())
        if canonical(piece) in self.index:
            return [self.index[canonical(piece)]]
        ends = [self.index.get(canonical(end)) for end in _RANGE.split(piece)]
        if len(ends) == 2 and None not in ends and ends[0] < ends[1]:
            return list(range(ends[0], ends[1] + 1))
        parts = [self.index.get(canonical(part)) for part in piece.split("/")]
        return parts if len(parts) > 1 and None not in parts else None

    def _told(self, words: str) -> Sizes | None:
        """ "smallest", "two largest", "largest": sizes by their place in the order."""
        match = regex.fullmatch(
            r"(?i)\s*(?:the\s+)?(?:(?P<n>\w+)\s+)?(?P<end>smaller|smallest|larger|largest)\s*", words
        )
        if match is None:
            return None
        last = match["end"].lower().startswith("larg")
        number = _NUMBER_WORDS.get((match["n"] or "").lower(), 1 if match["n"] is None else 0)
        exact = match["n"] or match["end"].lower().endswith("est") or self.number == 2
        if not exact or not 0 < number < self.number:
            return None
        return tuple(range(self.number - number, self.number)) if last else tuple(range(number))


@dataclass
class Passage:
    """Which sizes work the lines that are read now."""

    reader: GateReader
    now: Sizes | None = None  # None: all
    over_headings: bool = False  # a whole passage for one size, with pieces of its own
    unknown: bool = False  # a gate whose sizes are not the pattern's
    away: dict[int, str | None] = field(default_factory=dict)  # sizes that stopped, and where they go on
    number: int = 0  # of the gate, counted through the text; 0 before the first
    _before: tuple | None = None  # what held before a gate that is for its own line

    def open(self, gate: Gate, before_heading: bool = False, line_only: bool = False) -> None:
        """What a gate says of the lines behind it, or of the rest of its own line."""
        self.number += 1
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
        own = self.reader.in_label(label.words) if label is not None else None
        sizes = own or self.now
        if not self.away:
            return sizes
        return tuple(size for size in (sizes or range(self.reader.number)) if size not in self.away)


def names_place(where: str, line: str, label: Label | None, sizes: Sizes) -> bool:
    """Whether a later line is where a size is sent: a row by its label, or a heading."""
    if label is not None:
        return any(_is_label(where, label, size) for size in sizes)
    return len(line.split()) < 8 and not regex.search(r"\d", where) and _meant(where, line.strip(" :.*_#").lower())


def _meant(where: str, heading: str) -> bool:
    """Whether "go on to the Body" means this heading."""
    where = regex.sub(r"(?i)^(?:the|section)\s+", "", where.strip().lower())
    return bool(heading) and (where in heading or heading in where)


def _is_label(where: str, label: Label, size: int) -> bool:
    """Whether "go on to Rnd 11" means this label, as the size reads it."""
    number = regex.search(r"\d+", where)
    numbers = label.at(size)
    if number is None or int(number[0]) not in numbers[:1]:
        return False
    said = (
        "round"
        if regex.search(r"(?i)\br(?:ou)?n?ds?\b", where)
        else "row"
        if regex.search(r"(?i)\brow", where)
        else None
    )
    return said is None or label.kind in (said, "either")
