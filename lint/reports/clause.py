"""How one clause is read, in plain words: what it uses and what it makes."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace
from typing import Any

import regex

from lint.expression import expression
from lint.lexicon import Lexicon
from lint.reading import definitions
from lint.reading.clauses.reader import Reading, read_row
from lint.reading.counting import counts
from lint.reading.document import count_words
from lint.reading.lines.labels import LabelReader
from lint.reading.measure import Measure, measure
from lint.reading.page.terms import find_terms
from lint.reading.sizes.listings import listings
from lint.reading.sizes.sizenames import is_size_name, split_names
from lint.reading.words import listentries
from lint.reading.words.houseletters import house_letters
from lint.reading.words.stream import Stream, Vocabulary
from lint.reports.inwords import in_words, renamed
from lint.rulebook import Rulebook
from lint.source import SourceText
from lint.tree import Chain, FastenOff, Group, Join, NoJoin, Passage, Remark, Special, Step, Turn, Unread, Work, walk


@dataclass(frozen=True)
class ClauseReading:
    """A clause, whether it was read, and its measure where the words alone fix it."""

    clause: str
    read: bool
    measure: Measure | None = None
    stopped_by: str | None = None
    said: tuple[str, ...] = field(default=())

    def as_data(self) -> dict[str, Any]:
        made = self.measure
        fixed = made is not None and made.makes is not None
        return {
            "clause": self.clause,
            "read": self.read,
            "uses": made.uses if made is not None else None,
            "makes": {"stitches": made.makes, "spaces": {f"ch-{n}": k for n, k in sorted(made.spaces.items())}}
            if fixed
            else None,
            "stopped_by": self.stopped_by,
        }

    def in_words(self) -> str:
        """What the clause says and what it uses and makes, for a person."""
        if not self.read:
            return f"{self.clause}\n  not understood: {self.stopped_by}"
        said = [f"  {words}" for words in self.said]
        if self.measure is None:
            return "\n".join([self.clause, *said, "  it works no stitches by itself"])
        uses = "as many places as there are" if self.measure.uses is None else _so_many(self.measure.uses, "place")
        makes = (
            "as many stitches as that gives" if self.measure.makes is None else _so_many(self.measure.makes, "stitch")
        )
        spaces = "".join(f" and {_so_many(k, f'ch-{n} space')}" for n, k in sorted(self.measure.spaces.items()))
        return "\n".join([self.clause, *said, f"  uses {uses}, makes {makes}{spaces}"])


def _so_many(number: int, word: str) -> str:
    plural = word + ("es" if word.endswith("ch") else "s")
    return f"{number} {word if number == 1 else plural}"


def read_clauses(lines: list[str], book: Rulebook, terms: str = "auto") -> list[ClauseReading]:
    """Read each line as one clause or row, by itself."""
    labels = LabelReader(book.layout)
    lexicons: dict[str, Lexicon] = {}
    answers = []
    for printed in lines:
        line = SourceText(printed).alike().text
        own = find_terms(line, book.layout, terms).terms
        lexicon = lexicons.setdefault(own, Lexicon(book, own))
        if letters := house_letters([], lexicon, SourceText(line)):
            lexicon = Lexicon(book, own, letters)
        answers.append(replace(_read(line, lexicon, labels), clause=printed))
    return answers


# What a fragment may be part of: a repeat's end without its beginning is still read.
_BEFORE = (
    "",
    "(",  # "Tss2tog, ch 1) twice": the bracket was opened before the clause was cut out
    "(sc in next st, ",
    "*sc in next st, ch 2, dc in next st, ch 2; rep from * around, ",
    "*sc in next st **, sc in next st* ",
    "* sc in next st; ",
    "* sc in next st **, sc in next st; ",
    "*sc in next st* ",
    "(sc in next st) ",
    "[ sc in next st ",
    "*dc in next st, ch 1, sc in next sc; rep from * around, ",
    "# sc in next st # ",
    "sc in each st around, ",
    "+ sc in next st + ",
    "† sc in next st † ",
)
_AFTER_WORK = ("sc in each st across. ",)
_SIZE_GATE = expression(r"(?i)^\W*(?:for\s+)?(?:all\s+sizes|sizes?\s[^:.*()\[\]]{1,40}?(?:\s+only)?)\s*:\s*")
_HEADING = expression(r"\s*(?P<name>\p{Lu}[\p{L} '-]{2,30}?)\s*\((?:make\s+|x\s?)?\d+\b[^()]*\)[;:.]?\s*$", regex.I)
_DEFINES = expression(
    r"\s*(?P<name>[^:=()]{3,40}?)\s*(?:\((?:uses? (?P<uses>[^()]{3,30})|[^()]{1,20})\))?\s*(?::|=|\s[–-]\s)", regex.I
)
_ONE_STITCH = expression(r"\s*\p{Lu}{1,5}\s*=\s*(?:\p{L}+[ -]){1,3}(?i:stitch)\s*[:.]?\s*")  # "JS = Joining Stitch:"
_SIZE_LINE = expression(r"(?i)(?:(?:\d?x{0,3}[sl]|\d?xs|\dx|m)(?:/(?:\d?x{0,3}[sl]|\dx|m))?[\s,()\[\]]*){3,}")
_AMOUNTS = expression(
    r"(?i)\d+(?:[\s,()\[\]]+\d+)+[\s)\]]*(?:skeins?|balls?|hanks?|g|grams|yds?|yards|m|metres|meters)\.?"
)
_LEGEND = expression(r"\s*[*()\[\]{}#†+\s]+=\s*\w")  # "* = repeat what follows": what a sign means
_WORKING = ("stitch", "increase", "decrease", "chain", "special")  # "27sc (27)" names no sizes
_NAMED = expression(
    r"\s*(?:note|nb|foundation|cent(?:er|re)|base ring|starting ch(?:ain)?|foundation ch(?:ain)? and row 1|set[- ]?up|side \d|start)\s*[:.]\s*",
    regex.IGNORECASE,
)


def _read(line: str, lexicon: Lexicon, labels: LabelReader) -> ClauseReading:
    found = labels.at_line(line, 0, bare_numbers=bool(expression(r"\s*\d+(?:\s*[-–]\s*\d+)?(?:\)|\.\s)").match(line)))
    body = line[found.body :] if found is not None else _NAMED.sub("", line, count=1)
    named = found is not None or body != line
    gate = _SIZE_GATE.match(body)
    if gate is not None:
        body = body[gate.end() :]
        inner = labels.at_line(body, 0)  # "Size 4 only: 9th round:"
        body = body[inner.body :] if inner is not None else body
    sizes = next(split_names(body.strip()), ())
    heading = _HEADING.match(body)
    alone = any(one.span.end - one.span.start == len(body.strip()) for one in listings(body.strip(), 0))
    if alone or _SIZE_LINE.fullmatch(body.strip()) or _AMOUNTS.fullmatch(body.strip()):
        return ClauseReading(line, True)
    if _LEGEND.match(body) or heading and not any(i.kind in _WORKING for i in lexicon.read(heading["name"])):
        return ClauseReading(line, True)
    lexemes = lexicon.read(body)
    works = any(lexeme.kind in _WORKING for lexeme in lexemes)
    if len(sizes) > 1 and not works and all(map(is_size_name, sizes)):
        return ClauseReading(line, True)
    if gate is not None and not body.strip():
        return ClauseReading(line, True)
    if not lexemes:
        return ClauseReading(line, True) if named else ClauseReading(line, False, None, "there are no words")
    if _ONE_STITCH.fullmatch(line):
        return ClauseReading(line, True, Measure(1, 1))
    defined = _DEFINES.match(line)
    standard = lexicon.read(defined["name"]) if defined else []
    if [item.kind for item in standard[:1]] == ["stitch"] and len(standard) in (1, 3) and "=" in defined[0]:
        together = standard[1].number if standard[-1].kind == "together" else 1
        if len(standard) == 1 or standard[-1].kind == "together":
            return ClauseReading(line, True, Measure(together, 1))  # "tr2tog = …", "sc = sc in back loop only"
    if defined and _names_stitch(defined["name"], lexicon):
        special = _definition(line, lexicon)
        uses = defined["uses"]
        if special is not None or uses:
            return ClauseReading(line, True, _defined(special, counted_words(uses, lexicon)))
    vocabulary = Vocabulary({}, _sizes(body), frozenset(), *count_words(lexicon.book))
    stopped = None
    # "Turn. 93 dc.": the end of a row, and its count
    ends_row = [item.kind for item in lexemes if item.kind != "."] == ["turn", "number", "stitch"]
    for before in (*(_AFTER_WORK if ends_row else ()), *_BEFORE):
        reading = read_row(Stream(lexicon.read(before + body), vocabulary))
        unread = next((step for step in walk(tuple(reading.steps)) if isinstance(step, Unread)), None)
        if unread is None:
            return _understood(line, reading, lexicon, len(before) if before != "(" else 0)
        stopped = stopped or unread.words
    count = counts.read(Stream(lexicon.read(body.strip(" .;:,-–—→()[]{}")), vocabulary), bare=True)
    if count is not None and any(item.unit != "unknown" for item in count.items):
        return ClauseReading(line, True)
    special = _definition(line, lexicon)
    if special is not None:
        return ClauseReading(line, True, measure(special.items) if special.items else None)
    return ClauseReading(line, False, None, stopped)


def _understood(line: str, reading: Reading, lexicon: Lexicon, before: int) -> ClauseReading:
    """`before`: how many characters were put before the clause to read it."""
    heights = {rule.key: rule.height for rule in lexicon.book.stitches.stitches}
    steps = tuple(s for s in reading.steps if s.span.start >= before and not (before and isinstance(s, Passage)))
    if before and not any(isinstance(step, (Work, Group)) for step in steps):
        idle = steps and all(isinstance(step, (Turn, Remark, NoJoin, Join, FastenOff)) for step in steps)
        return ClauseReading(line, True, Measure(0, 0) if idle else None)
    measured = measure(steps, heights) if steps else None
    if measured is not None and reading.stated is not None and len(reading.stated.items) == 1:
        item = reading.stated.items[0]
        if item.unit == "stitches" or item.unit.startswith("kind:"):
            measured.settle(item.number.values[0] or 0)
    if measured is not None and any(_open_ended(step) for step in walk(steps)):
        measured = Measure(None, None)
    names = {}
    if lexicon.terms == "uk":
        for rule in lexicon.book.stitches.stitches:
            names |= {rule.key: rule.uk[0], f"FP{rule.key}": f"FP{rule.uk[0]}", f"BP{rule.key}": f"BP{rule.uk[0]}"}
    each = {id(step): figures for step, *figures in (measured.clauses if measured is not None else ())}
    said = tuple(
        words + _uses_and_makes(*each.get(id(step), (None, None)))
        for step in steps
        if (words := in_words(renamed(step, names)))
    )
    return ClauseReading(line, True, measured, said=said)


def _uses_and_makes(uses: int | None, makes: int | None) -> str:
    """What one clause of several comes to, where its words alone fix it."""
    return "" if uses is None or makes is None else f": uses {uses}, makes {makes}"


def _open_ended(step: Step) -> bool:
    """Whether the words alone don't fix a number: one for each size, or a stitch that is not defined here."""
    if isinstance(step, Work):
        return step.undefined or len(step.number.values) > 1 or any(len(p.number.values) > 1 for p in step.places)
    return isinstance(step, Chain) and len(step.length.values) > 1


def _names_stitch(name: str, lexicon: Lexicon) -> bool:
    """Whether words before a colon may name a stitch of the pattern's own: "Small shell", "2dc-cluster"."""
    kinds = [item.kind for item in lexicon.read(name)]
    return any(kind in ("group_word", "one_stitch") for kind in kinds) or name.lower().startswith("crossed")


def counted_words(uses: str | None, lexicon: Lexicon) -> int | None:
    """The 3 of "uses next 3 dc"."""
    numbers = [item.number for item in lexicon.read(uses or "") if item.kind == "number"]
    return numbers[0] if numbers else None


def _defined(special: Special | None, uses: int | None) -> Measure:
    """What a stitch of the pattern's own uses and makes."""
    if special is None or special.one_stitch:
        return Measure(uses or 1, 1)
    made = measure(special.items)
    return made if special.places_itself else Measure(uses or 1, made.makes, made.spaces)


def _definition(line: str, lexicon: Lexicon) -> Special | None:
    """A line that defines a stitch: "Shell (Sh): 2 dc, ch 2, 2 dc in st indicated."."""
    for entry in listentries.entries(line, 0, frozenset()):
        if entry.forms and entry.forms[0]:
            return definitions.special_of(entry, lexicon, lexicon.book)
    return None


_ONE = r"(?:\d+(?:[½¼¾]|\.\d+)?|-|–|zero|one|two|three|four|five|six)"
_LISTS = (
    expression(rf"(?<!\w)({_ONE}\s?[(\[]\s*{_ONE}(?:\s*[,;:/–-]\s*{_ONE})+\s*[)\]])"),  # 60 (66, 72)
    expression(rf"(?<![\w(\[])({_ONE}(?:\s+\({_ONE}\)\s+{_ONE})+(?:\s+\({_ONE}\))?)"),  # 60 (66) 72 (78)
    expression(rf"[(\[]({_ONE}(?:,\s*{_ONE}){{2,}})[)\]]"),  # (64, 68, 72)
    expression(rf"(?<![\w(\[/])({_ONE}(?:[,;]\s+{_ONE}){{2,}})(?![\w/])"),  # 44, 50, 56
    expression(
        rf"(?<![\w(\[])({_ONE}\s?\({_ONE}\))(?=\s*(?:sts?|sc|dc|hdc|tr|chs?|rows?|rnds?|times?|time\(s\)|more)\b)",
        regex.I,
    ),  # 9 (10) sts
    expression(r"(?<![\w(\[/-])(\d+(?:-\d+){2,})(?![\w/-])"),  # 24-28-28
    expression(r"(?<![\w(\[/-])(\d+(?:/\d+){2,})(?![\w/])"),  # 10/11/12
)


_FIGURE = expression(r"\d+(?:[½¼¾]|\.\d+)?|(?<![\w½¼¾])\s*[-–](?![\d])|zero|one|two|three|four|five|six")


def _sizes(text: str) -> int:
    """How many sizes a list in the clause shows: "60 (66, 72)" is three."""
    for form in _LISTS:
        found = Counter(len(_FIGURE.findall(match[1])) for match in form.finditer(text))
        if found:
            return found.most_common(1)[0][0]
    return 1
