"""Printed counts at a row's end with words about them: "ending with 12 sts", "Sts = 12", "(makes 12 sc)", "12 sc in total".

They are put into the common form, a figure behind a dash or in brackets, so that the count reader knows them; each lexeme
keeps its place in the text.
"""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, Stream

# words before the figure that say by themselves that it is a count, and those that may stand among them
_SURE = ("count", "ct", "total", "totals", "sum", "result", "has", "have", "are", "makes", "gives", "giving", "σ", "#")
_SURE_OF_STITCHES = (
    "ends",
    "ending",
    "end",
    "ended",
    "finish",
    "finished",
    "finishing",
    "now",
    "making",
)
_AMONG = ("st", "sts", "stitch", "stitches", "with", "there", "the", "rnd", "round", "row", "this", "you", "should")
_AMONG += ("for", "will", "be", "of", "to", "so", "=", ":", "no", "number", "then", "a", "and", "must", "that")
# and behind it
_SURE_BEHIND = (
    "total",
    "altogether",
    "in total",
    "in all",
    "all",
    "rnd",
    "round",
    "row",
    "row_end",
    "count",
    "stitches",
)
_BEHIND = (
    "in",
    "on",
    "at",
    "the",
    "this",
    "end",
    "of",
    "per",
    "st",
    "stitch",
    "sts",
    "made",
    "around",
    "now",
    "at end",
)
_BEFORE = (
    ",",
    ".",
    ";",
    ":",
    "dash",
    "any_stitch",
    "stitch",
    "turn",
    "around",
    "across",
    "ending",
    "…",
    "..",
    "...",
    *CLOSERS,
)
_AT_END = ("around", "across", "turn", "join", "row_end", "ending")
_UNITS = ("stitch", "any_stitch")
_NOT_AMONG = ("excluding", "excl", "not", "don't", "without", "does", "doesn't")
_JOINS = ("join", "joining", "joins", "slip", "ss", "sl")
_MOST = 12  # words that such a count has


def counts_in_words(stream: Stream) -> Stream:
    """The row's stream with such a count at its end in the common form."""
    lexemes = stream.lexemes
    end = len(lexemes)
    while end and lexemes[end - 1].kind in (".", "|"):
        end -= 1
    if not end:
        return stream
    if lexemes[end - 1].kind in CLOSERS:
        opened = next((i for i in range(end - 1, -1, -1) if stream.matching(i) == end - 1), None)
        if not opened:
            return stream
        if _spaces_apart(lexemes, opened, end - 1):  # "24 dc (4 ch-2 sps)"
            comma = replace(lexemes[opened], kind=",", text=",")
            return _put(stream, opened, end, [comma, *lexemes[opened + 1 : end - 1]])
        inside = _figure(lexemes[opened + 1 : end - 1])
        if inside is None and (before := _having(lexemes, opened)) < opened:
            return _put(stream, before, opened, [])
        return stream if inside is None else _put(stream, opened + 1, end - 1, inside)
    begun = _begin(lexemes, end)
    told = _figure(lexemes[begun:end]) if begun else None
    if told is not None and _may_be_work(lexemes, begun, end):
        return stream
    if told is None or not any(item.kind in ("stitch", "increase", "decrease", "special") for item in lexemes[:begun]):
        return stream
    last = lexemes[begun - 1].end
    signs = [Lexeme(".", "", last, last, True), Lexeme("dash", "", last, last, False)]
    if lexemes[begun - 1].kind in (",", ".", ";", ":", "dash"):
        begun -= 1
    return _put(stream, begun, end, [*signs, *told])


def _may_be_work(lexemes: list[Lexeme], begun: int, end: int) -> bool:
    """Whether "6 sc in this rnd", "6 sc at end of rnd" may be worked: nothing before says that the row has come to its end."""
    words = lexemes[begun:end]
    if words[-1].kind == "row_end" and words[-1].lower.endswith("ends"):
        return True  # "12 sc in row ends" goes into them
    sure = any(_is(item, (*_SURE, *_SURE_OF_STITCHES)) for item in words if item.kind != "total")
    if sure or any(item.kind == "any_stitch" for item in words):
        return False
    before = [item.kind for item in lexemes[max(0, begun - 2) : begun]]
    return not any(kind in _AT_END or kind in CLOSERS for kind in before)


def _spaces_apart(lexemes: list[Lexeme], opened: int, close: int) -> bool:
    """Whether a bracket behind a count in stitches holds the number of spaces, and nothing else."""
    stitches = [item.kind for item in lexemes[max(0, opened - 2) : opened]]
    inside = [item.kind for item in lexemes[opened + 1 : close]]
    counted = stitches in (["number", "stitch"], ["number", "any_stitch"])
    lead = lexemes[opened - 3].kind if opened > 2 else ""
    return counted and lead in (".", ";", "dash", "=", ":", "→") and inside[:1] == ["number"] and inside[-1] == "space"


def _having(lexemes: list[Lexeme], opened: int) -> int:
    """Where the "you should have" begins that leads to a bracket; the bracket's place without it."""
    at = opened
    while at and _is(lexemes[at - 1], ("you", "now", "should", "will", "have", "then", "and")):
        at -= 1
    return at if opened - at > 1 and lexemes[opened - 1].lower == "have" else opened


def _put(stream: Stream, first: int, last: int, told: list[Lexeme]) -> Stream:
    return Stream([*stream.lexemes[:first], *told, *stream.lexemes[last:]], stream.vocabulary)


def _begin(lexemes: list[Lexeme], end: int) -> int | None:
    """Where the last clause begins whose words may be about a count; None where there is none."""
    figures = [index for index in range(max(0, end - _MOST), end) if lexemes[index].kind == "number"]
    if not figures:
        return None
    at = figures[-1]
    while at and _is(lexemes[at - 1], (*_SURE, *_SURE_OF_STITCHES, *_AMONG)) and not _ends_run(lexemes, at - 1):
        at -= 1
    if lexemes[at].kind in (":", "="):
        return None
    return at if at and lexemes[at - 1].kind in _BEFORE else None


def _ends_run(lexemes: list[Lexeme], at: int) -> bool:
    """Whether the "end" at an index is that of "(sc, hdc) to the end = 12 sts": how far to work, and no word of the count."""
    before = at - 1 - (lexemes[at - 1].kind == "the" if at else 0)
    return lexemes[at].kind == "ending" and before >= 0 and lexemes[before].kind == "to"


def _figure(words: list[Lexeme]) -> list[Lexeme] | None:
    """The figure, with what it counts, of words that tell one count; None where they tell it without more words, or none."""
    figures = [index for index, item in enumerate(words) if item.kind == "number"]
    if len(figures) != 1 or len(words) > _MOST:
        return None
    at = figures[0]
    before, behind = words[:at], words[at + 1 :]
    if [item.lower for item in behind[:1]] == ["total"] and behind[1:2] and behind[1].kind in _UNITS:
        behind = [behind[1], behind[0], *behind[2:]]  # "12 total stitches"
    unit = behind[:1] if behind and behind[0].kind in _UNITS else []
    behind = _without_joins(behind[len(unit) :])
    if behind is None:
        return None
    if not unit and [item.kind for item in before] == ["stitch", ":"]:
        return [words[at], before[0]] if not behind else None  # "sc: 12"
    excluded = len(behind) != len(words) - at - 1 - len(unit)
    led = all(_is(item, (*_SURE, *_SURE_OF_STITCHES, *_AMONG)) for item in before)
    tailed = all(_is(item, (*_SURE_BEHIND, *_BEHIND)) for item in behind)
    if not led or not tailed or not unit and any(item.kind in ("row", "round") for item in (*before, *behind)):
        return None  # "a total of 12 rounds", "end with round 12"
    sure = any(_is(item, _SURE) for item in before) or any(_is(item, _SURE_BEHIND) for item in behind) and bool(unit)
    sure = sure or bool(unit) and unit[0].kind == "any_stitch" and any(_is(item, _SURE_OF_STITCHES) for item in before)
    sure = sure or [item.kind for item in before[-2:]] in (["any_stitch", ":"], ["any_stitch", "="])  # "sts = 12"
    return [words[at], *unit] if sure or excluded else None


def _without_joins(behind: list[Lexeme]) -> list[Lexeme] | None:
    """The words without ", not counting sl st", "excluding the join"; None where something else is not counted."""
    cut = next((i for i, item in enumerate(behind) if item.lower in _NOT_AMONG or item.kind == "counts_not"), None)
    if cut is None:
        return behind
    rest = behind[cut:]
    joins = any(item.kind == "join" or item.value == "sl st" or item.lower in _JOINS for item in rest)
    other = any(item.kind in ("chain", "turning_chain", "number", "corner", "space") for item in rest)
    if not joins or other:
        return None
    cut -= bool(cut) and behind[cut - 1].kind in (",", "dash", ";")
    return behind[:cut]


def _is(item: Lexeme, words: tuple[str, ...]) -> bool:
    return item.lower in words or item.kind in words and item.kind != "make"


__all__ = ["counts_in_words"]
