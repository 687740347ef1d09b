"""Single slips of the pen, put into a sound pattern's text: one function an operator.

Each operator gives every edit that it can make of a pattern; the bench draws from them by seed.  The places come from
the pattern's tree, so that a number is known to be a count, a number of times, a chain's length or a place.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from lint.pattern import Pattern, Row
from lint.place import Which
from lint.source import Span
from lint.tree import Chain, Counting, Group, MakeRing, Remark, Repeat, Skip, Step, Work, walk
from lint.working.starts import founds

NUMERAL = re.compile(r"(?<![\w.-])\d+(?![\w.]|-\w)")  # not the 2 of "dc2tog", "2nd" or "ch-2 sp"
MEASURED = re.compile(r"\s*(?:cm|mm|in\b|inch|\"|yd|m\b)")
TIMES_WORDS = {"once": 1, "twice": 2, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7}
NUMBER_WORDS = {number: word for word, number in TIMES_WORDS.items() if word not in ("once", "twice")}


@dataclass(frozen=True)
class Mutant:
    """One edit: the words between `start` and `end` of the sound text become `words`; `home` is where it should show."""

    operator: str
    start: int
    end: int
    words: str
    home: Span | None  # in the sound text; None: anywhere

    def text(self, sound: str) -> str:
        """The pattern's text with the edit made."""
        return sound[: self.start] + self.words + sound[self.end :]

    def home_in_mutant(self) -> Span | None:
        """The rows in which the edit should show, in the edited text."""
        if self.home is None:
            return None
        return Span(self.home.start, self.home.end + len(self.words) - (self.end - self.start))


@dataclass(frozen=True)
class Site:
    """A printed row of the sound pattern, and the text up to the end of the row after it."""

    row: Row
    home: Span


@dataclass(frozen=True)
class Ground:
    """What an operator works on: the sound pattern's text and tree."""

    text: str
    pattern: Pattern
    terms: str
    sites: tuple[Site, ...]

    @classmethod
    def of(cls, text: str, pattern: Pattern, terms: str) -> Ground:
        sites = []
        for part in pattern.parts:
            for row, coming in zip(part.rows, (*part.rows[1:], None), strict=True):
                sites.append(Site(row, Span(row.span.start, (coming or row).span.end)))
        return cls(text, pattern, terms, tuple(sites))

    def steps(self, site: Site) -> Iterator[tuple[Step, tuple[Step, ...], int]]:
        """Every step of a row with its siblings and its index among them."""
        yield from _with_siblings(site.row.steps)


def _with_siblings(steps: tuple[Step, ...]) -> Iterator[tuple[Step, tuple[Step, ...], int]]:
    for index, step in enumerate(steps):
        yield step, steps, index
        if isinstance(step, (Repeat, Group)):
            yield from _with_siblings(step.items)


def _slips(number: int) -> list[int]:
    """What a number is mistyped as: one or two off, two figures changed about, a figure doubled."""
    wrong = {number - 1, number + 1, number + 2}
    figures = str(number)
    if len(figures) > 1:
        wrong.add(int(figures[-1] + figures[1:-1] + figures[0]))
    return sorted(other for other in wrong if other > 0 and other != number)


def _numerals(text: str, span: Span) -> Iterator[re.Match]:
    for match in NUMERAL.finditer(text, span.start, span.end):
        if not MEASURED.match(text, match.end()):
            yield match


def _inside(span: Span, others: list[Span]) -> bool:
    return any(other.start <= span.start and span.end <= other.end for other in others)


def printed_count(ground: Ground) -> Iterator[Mutant]:
    """A figure of a printed count."""
    for site in ground.sites:
        for item in site.row.stated.items if site.row.stated else ():
            for match in _numerals(ground.text, item.span):
                for wrong in _slips(int(match.group())):
                    yield Mutant("printed count", *match.span(), str(wrong), site.home)


def clause_number(ground: Ground) -> Iterator[Mutant]:
    """How many stitches, or into how many places."""
    for site in ground.sites:
        seen = set()
        for step, _, _ in ground.steps(site):
            if not isinstance(step, Work) or any(place.which is Which.FROM_HOOK for place in step.places):
                continue
            for match in _numerals(ground.text, step.span):
                if match.span() not in seen and not ground.text[: match.start()].lower().endswith("ch "):
                    seen.add(match.span())
                    for wrong in _slips(int(match.group())):
                        yield Mutant("number in clause", *match.span(), str(wrong), site.home)


def repeat_times(ground: Ground) -> Iterator[Mutant]:
    """How often a passage is repeated."""
    word = re.compile(r"(?i)\b(?:" + "|".join(TIMES_WORDS) + r")\b|" + NUMERAL.pattern)
    for site in ground.sites:
        for step, _, _ in ground.steps(site):
            if isinstance(step, Repeat) and step.times.number is not None:
                match = word.search(ground.text, step.times.span.start, step.times.span.end)
                if match is None:
                    continue
                said = match.group().lower()
                number = TIMES_WORDS.get(said) or int(said)
                for wrong in {number - 1, number + 1} - {0}:
                    shown = str(wrong)
                    if said in ("once", "twice"):
                        shown = {1: "once", 2: "twice"}.get(wrong, f"{wrong} times")
                    elif said in TIMES_WORDS:
                        shown = NUMBER_WORDS.get(wrong, shown)
                    yield Mutant("repeat times", *match.span(), shown, site.home)


def space_length(ground: Ground) -> Iterator[Mutant]:
    """The length of a chain between stitches."""
    for site in ground.sites:
        begun = False
        for step, _, _ in ground.steps(site):
            if isinstance(step, Chain) and begun:
                match = next(_numerals(ground.text, step.span), None)
                if match is not None:
                    for wrong in {int(match.group()) - 1, int(match.group()) + 1} - {0}:
                        yield Mutant("space length", *match.span(), str(wrong), site.home)
            begun = begun or isinstance(step, Work) and step.stitch != "sl st"


def _removed(ground: Ground, span: Span) -> Span | None:
    """The words of a clause with the comma that parts it from its neighbour."""
    text = ground.text
    behind = re.compile(r",\s+").match(text, span.end)
    if behind:
        return Span(span.start, behind.end())
    before = re.search(r",\s+$", text[: span.start])
    return Span(before.start(), span.end) if before else None


def dropped_clause(ground: Ground) -> Iterator[Mutant]:
    """A working clause is forgotten."""
    yield from _dropped(ground, "dropped clause", (Work, Group, Chain))


def dropped_skip(ground: Ground) -> Iterator[Mutant]:
    """A skip is forgotten."""
    yield from _dropped(ground, "dropped skip", (Skip,))


def _dropped(ground: Ground, operator: str, kinds: tuple) -> Iterator[Mutant]:
    for site in ground.sites:
        begun = False
        for step, siblings, _ in ground.steps(site):
            fits = isinstance(step, kinds) and (begun or not isinstance(step, Chain)) and len(siblings) > 1
            begun = begun or isinstance(step, (Work, Group))
            span = _removed(ground, step.span) if fits else None
            if span is not None and not (isinstance(step, Work) and step.stitch == "sl st"):
                yield Mutant(operator, span.start, span.end, "", site.home)


def doubled_clause(ground: Ground) -> Iterator[Mutant]:
    """A working clause stands twice."""
    for site in ground.sites:
        for step, _siblings, _index in ground.steps(site):
            if isinstance(step, (Work, Group)) and not (isinstance(step, Work) and step.stitch == "sl st"):
                words = ground.text[step.span.start : step.span.end]
                if words[:1].isupper():
                    words = words[:1].lower() + words[1:]
                yield Mutant("doubled clause", step.span.end, step.span.end, f", {words}", site.home)


def bracket(ground: Ground) -> Iterator[Mutant]:
    """An opening or closing bracket is forgotten, of work and not of a note."""
    for site in ground.sites:
        notes = [step.span for step in walk(site.row.steps) if isinstance(step, Remark)]
        notes += [item.span for item in _countings(site.row)]
        for match in re.finditer(r"[()\[\]]", ground.text[site.row.span.start : _work_end(site.row)]):
            at = site.row.span.start + match.start()
            label = site.row.label
            if (label is None or at >= label.span.end) and not _inside(Span(at, at + 1), notes):
                yield Mutant("bracket", at, at + 1, "", site.home)


def star(ground: Ground) -> Iterator[Mutant]:
    """An asterisk is forgotten at the place that it marks."""
    for site in ground.sites:
        row = ground.text[site.row.span.start : site.row.span.end]
        for match in re.finditer(r"(?<!from )(?<!to )(?<!at )(?<!\*)\*(?!\*)", row):
            at = site.row.span.start + match.start()
            yield Mutant("star", at, at + 1, "", site.home)


def _countings(row: Row) -> list[Counting]:
    found = [step.counting for step in walk(row.steps) if isinstance(step, (Chain, Skip, Remark)) and step.counting]
    return found + [step.closing for step in walk(row.steps) if isinstance(step, Work) and step.closing]


def _work_end(row: Row) -> int:
    return row.stated.span.start if row.stated is not None else row.span.end


def chain_note(ground: Ground) -> Iterator[Mutant]:
    """The note that says whether a beginning chain counts is forgotten, where nothing else says it."""
    said = {length for length, _ in ground.pattern.countings}
    for site in ground.sites:
        for step in walk(site.row.steps):
            if not isinstance(step, Chain) or step.counting is None:
                continue
            length = step.length.at(0)
            new = length not in said and None not in said
            said.add(length)
            note = re.compile(r"\s*\([^()]*\bcounts? [^()]*\)").match(ground.text, step.span.end)
            note = note or re.compile(r"[^()]*?(\s*\([^()]*\bcounts? [^()]*\))").match(ground.text, step.span.start)
            if new and note:
                start, end = note.span(note.lastindex or 0)
                yield Mutant("chain note", start, end, "", site.home)


def definition(ground: Ground) -> Iterator[Mutant]:
    """An entry of the pattern's own list is forgotten, of a word that the rows use."""
    work = " ".join(ground.text[site.row.span.start : site.row.span.end] for site in ground.sites)
    for entry in ground.pattern.abbreviations:
        used = any(re.search(rf"(?<![\w-]){re.escape(form)}(?![\w-])", work) for form in entry.forms)
        if used:
            end = ground.text.find("\n", entry.span.end) + 1 or len(ground.text)
            start = ground.text.rfind("\n", 0, entry.span.start) + 1
            if "\n" not in ground.text[start : end - 1] and _alone(ground, entry.span, start, end):
                yield Mutant("definition", start, end, "", None)


def _alone(ground: Ground, span: Span, start: int, end: int) -> bool:
    """Whether a line holds one entry only."""
    return sum(start <= other.span.start < end for other in ground.pattern.abbreviations) == 1


def swapped_rounds(ground: Ground) -> Iterator[Mutant]:
    """Two rows that follow each other change their words."""
    for site, other in zip(ground.sites, ground.sites[1:], strict=False):
        first, second = site.row, other.row
        if first.label is None or second.label is None or first.span.end > second.span.start:
            continue
        one, two = Span(first.label.span.end, first.span.end), Span(second.label.span.end, second.span.end)
        words = [ground.text[span.start : span.end] for span in (one, two)]
        if words[0].strip() != words[1].strip() and len(first.label.numbers) == len(second.label.numbers) == 1:
            between = ground.text[one.end : two.start]
            yield Mutant(
                "swapped rounds",
                one.start,
                two.end,
                words[1] + between + words[0],
                Span(site.home.start, other.home.end),
            )


def row_label(ground: Ground) -> Iterator[Mutant]:
    """A row's number is wrong."""
    for site in ground.sites:
        label = site.row.label
        if label is None or len(label.numbers) != 1:
            continue
        match = re.compile(r"\d+").search(ground.text, label.span.start, label.span.end)
        if match and int(match.group()) == label.numbers[0]:
            for wrong in (label.numbers[0] + 1, label.numbers[0] - 1, label.numbers[0] + 10):
                if wrong > 0:
                    yield Mutant("row label", *match.span(), str(wrong), site.home)


def start_chain(ground: Ground) -> Iterator[Mutant]:
    """The number of chains that a piece begins on."""
    for site in ground.sites:
        if not founds(site.row.steps) or any(isinstance(step, MakeRing) for step in site.row.steps):
            continue
        step = next((step for step in site.row.steps if isinstance(step, Chain)), None)
        match = next(_numerals(ground.text, step.span), None) if step is not None else None
        if match is not None and int(match.group()) < 5:
            continue  # a beginning chain
        for off in (-2, -1, 1, 2, 10) if match is not None else ():
            if int(match.group()) + off > 1:
                yield Mutant("start chain", *match.span(), str(int(match.group()) + off), site.home)


def hook_chain(ground: Ground) -> Iterator[Mutant]:
    """The chain from the hook at which a row begins."""
    names = {2: "2nd", 3: "3rd", 4: "4th", 5: "5th", 6: "6th", 7: "7th", 8: "8th"}
    for site in ground.sites:
        row = ground.text[site.row.span.start : site.row.span.end]
        for match in re.finditer(r"\b(\d)(?:st|nd|rd|th) ch(?:ain)? from", row):
            for wrong in (int(match[1]) - 1, int(match[1]) + 1):
                if wrong in names:
                    start = site.row.span.start + match.start()
                    yield Mutant("chain from hook", start, start + 3, names[wrong], site.home)


def stitch_word(ground: Ground) -> Iterator[Mutant]:
    """Another stitch's name in a working clause."""
    others = {"sc": "dc", "dc": "tr", "hdc": "dc", "tr": "dc", "htr": "dc"}
    for site in ground.sites:
        for step, _, _ in ground.steps(site):
            if isinstance(step, Work) and step.special is None:
                match = re.compile(r"(?<![\w-])(sc|hdc|dc|htr|tr)(?![\w-])", re.I).search(
                    ground.text, step.span.start, step.span.end
                )
                other = others.get(match[1].lower()) if match else None
                if other and not (ground.terms == "uk" and match[1].lower() == "sc"):
                    words = other.capitalize() if match[1][0].isupper() else other
                    yield Mutant("other stitch", *match.span(), words, site.home)


def term_word(ground: Ground) -> Iterator[Mutant]:
    """A word of the other country's terms."""
    others = {"sc": "htr", "hdc": "htr", "skip": "miss", "sk": "miss"} if ground.terms == "us" else {}
    others = others or {"htr": "hdc", "dc": "sc", "ss": "sl st", "miss": "skip"}
    for site in ground.sites:
        for step, _, _ in ground.steps(site):
            words = re.compile(r"(?<![\w-])(" + "|".join(others) + r")(?![\w-])")
            if isinstance(step, (Work, Skip)):
                match = words.search(ground.text, step.span.start, step.span.end)
                if match and others[match[1]] in ("htr", "hdc", "sc"):
                    yield Mutant("term word", *match.span(), others[match[1]], site.home)


OPERATORS: tuple[Callable[[Ground], Iterator[Mutant]], ...] = (
    printed_count,
    clause_number,
    repeat_times,
    space_length,
    dropped_clause,
    doubled_clause,
    dropped_skip,
    start_chain,
    hook_chain,
    stitch_word,
    bracket,
    star,
    chain_note,
    definition,
    term_word,
    swapped_rounds,
    row_label,
)
COUNT_FAULTS = frozenset(
    {
        "printed count",
        "number in clause",
        "repeat times",
        "space length",
        "dropped clause",
        "doubled clause",
        "dropped skip",
        "start chain",
        "chain from hook",
    }
)
