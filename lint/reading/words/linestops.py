"""Puts the stops that a line's end stands for between a row's words, and takes away those that only end a short form.

A list of rows has many lines and few full stops; an old leaflet has one behind every "ch." and "tr.".
"""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.source import SourceText

_MAY_END = (
    "stitch",
    "any_stitch",
    "space",
    "special",
    "group_word",
    "one_stitch",
    "word",
    "turn",
    "times",
    "ending",
    ">",
    *CLOSERS,
)
_ROUNDED_OFF = ("around", "across", "ending")  # a figure in the line below is no number of stitches to work
# short forms, and what goes on with the same clause behind the full stop of one: "3 ch. and 4 tr. into next sp."
_SHORTENED = ("stitch", "special", "any_stitch", "chain", "space")
_GOES_ON = (",", ";", "and", "in", "over", "of", "to", "together", "evenly", "space", *CLOSERS)
_AGAIN, _HOW_OFTEN = (
    ("rep", "rpt"),
    ("number", "from", "star", "around", "across", "to", "between"),
)  # "Rep. twice more"
_NUMBER_WORDS, _FIGURES = ("no", "nr"), ("number", "decimal")  # "Using No. 4.00 hook"
_ROWS_NAMED = ("row", "round", "ordinal", "last", "the")
_BEFORE_FIGURES = (
    "=",
    "→",
    ":",
    ";",
    "dash",
    "|",
    "…",
    "...",
    "..",
)  # a figure that ends a line behind these is a count
_TALK = ("stuff", "rotate", "telling", "marker", "fasten_off", "no_fasten", "attach", "change")  # no unit of a count
_COUNTS = ([";"], ["="], ["→"], ["dash"])  # what leads to a count
_CLOSES = ("stitch", "join", "fasten_off", "turn")  # what may follow it below


def with_line_stops(lexemes: list[Lexeme], source: SourceText) -> list[Lexeme]:
    """The lexemes, with a stop where a line ends after what may end a sentence and the next begins with a capital.

    On the same line "(34 sc) Repeat Rows 8-12" begins a sentence: what is in the brackets is not repeated.
    """
    found: list[Lexeme] = []
    for index, lexeme in enumerate(lexemes):
        before = found[-1] if found else None
        if before is not None and lexeme.kind != "repeat" and lexeme.value != "cell":
            if "\n" not in source.text[before.end : lexeme.start]:
                found.append(lexeme)  # as most do
                continue
        if before is not None and before.kind in (*CLOSERS, ">") and lexeme.kind == "repeat":
            if lexeme.text[:1].isupper() and lexemes[index + 1 : index + 2] and lexemes[index + 1].kind in _ROWS_NAMED:
                found.append(Lexeme(".", "", before.end, before.end, True))
        counted = before is not None and before.kind == "number"
        counted = counted and (before.value == "cell" or found[-2:-1] and found[-2].kind in _BEFORE_FIGURES)
        if before is not None and "\n" in source.text[before.end : lexeme.start]:
            opens = lexeme.text[:1].isupper() and not lexeme.text.isupper() or counted and lexeme.kind in _TALK
            opens = opens or lexeme.kind == "word" and _bare_count(found)  # "[18]", and in the line below "fill"
            starred = before.kind == "star" and before.glued and _bare_count(found[:-1])  # "**(18)**"
            called = before.kind == "number" and [one.kind for one in found[-2:-1]] in (["row"], ["round"])
            ended = (
                counted or starred or called or before.kind in _MAY_END
            ) and opens  # "repeat Row 2", and below "Sew …"
            kinds = [one.kind for one in found[-3:]]  # "; 10 sts", and in the line below "sl st in next st"
            told = kinds[:1] in _COUNTS and kinds[1:] == ["number", "any_stitch"] and lexeme.kind in _CLOSES
            last_pass = before.kind == "ending" and found[-2:-1] != [] and found[-2].kind != "to"  # "…, ending / 2 sc"
            summed = before.kind in _ROUNDED_OFF and not last_pass and _counts_alone(lexemes[index:])
            again = before.kind in (*_MAY_END, *_ROUNDED_OFF, "number") and _rows_again(lexemes[index : index + 5])
            if ended or told or summed or again:
                found.append(Lexeme(".", "", before.end, before.end, True))
        elif before is not None and lexeme.value == "cell" and "\t" in source.text[before.end : lexeme.start]:
            found.append(Lexeme("|", "", before.end, before.end, True))  # the next column of a table
        found.append(lexeme)
    return found


def _rows_again(lexemes: list[Lexeme]) -> bool:
    """Whether a line opens with rows that are called for, "Repeat rnds 4 and 5", "Rep last 2 rows": no repeat of its clause."""
    kinds = [one.kind for one in lexemes]
    rows = next((at for at, kind in enumerate(kinds) if kind in ("row", "round")), 0)
    called = all(kind in ("number", "word", *_ROWS_NAMED) for kind in kinds[1:rows])
    return kinds[:1] == ["repeat"] and lexemes[0].text[:1].isupper() and rows > 0 and called


_WORKS = ("stitch", "special", "chain", "increase", "decrease", "skip", "repeat", "make", "one_stitch", "group_word")


def without_emphasis(lexemes: list[Lexeme], source: SourceText) -> list[Lexeme]:
    """The lexemes without the stars around a line that works nothing, "*Change to white.*": they only slant its letters."""
    text, taken = source.text, set()
    stars = [at for at, one in enumerate(lexemes) if one.kind == "star"]
    for first, last in zip(stars, stars[1:], strict=False):
        start, end = lexemes[first], lexemes[last]
        alone = not text[text.rfind("\n", 0, start.start) + 1 : start.start].strip()
        alone = alone and not text[end.end : (text.find("\n", end.end) + 1 or len(text) + 1) - 1].strip()
        same = start.text == end.text and "\n" not in text[start.start : end.start]
        if alone and same and not any(one.kind in _WORKS for one in lexemes[first:last]):
            taken |= {first, last}
    return [one for at, one in enumerate(lexemes) if at not in taken] if taken else lexemes


def _counts_alone(lexemes: list[Lexeme]) -> bool:
    """Whether the words to the end are a figure of stitches, "12 sc", "13 sts total"."""
    kinds = ["total" if one.lower == "total" else one.kind for one in lexemes]
    return (
        kinds[:1] == ["number"] and kinds[1:2] in (["stitch"], ["any_stitch"]) and kinds[2:] in ([], ["."], ["total"])
    )


def _bare_count(lexemes: list[Lexeme]) -> bool:
    """Whether words end in a number alone in brackets, "[18]", "(18 sc)"."""
    units = ("stitch", "any_stitch")
    kinds = [one.kind for one in lexemes[-4:] if one.kind not in units or one is lexemes[-1]]
    return len(kinds) > 2 and kinds[-3] in OPENERS and kinds[-2] == "number" and kinds[-1] in CLOSERS


def without_short_stops(stream: Stream) -> Stream:
    """A stream without the full stops of "3 ch. and 4 d.c. into next sp.", "No. 4 hook", behind which the clause goes on."""
    stops = set()
    for index, (before, stop, after) in enumerate(
        zip(stream.lexemes, stream.lexemes[1:], stream.lexemes[2:], strict=False)
    ):
        if stop.kind != "." or not stop.glued:
            continue
        short = before.kind in _SHORTENED
        goes_on = after.kind in _GOES_ON or after.kind == "make" and _place_first(stream.lexemes[: index + 1])
        goes_on = goes_on or after.kind == "number" and before.kind == "chain" and _opens_clause(stream.lexemes, index)
        numbered = after.kind in _FIGURES and before.lower in _NUMBER_WORDS
        again = before.lower in _AGAIN and after.kind in _HOW_OFTEN
        measured = before.kind == "in" and stream.lexemes[max(0, index - 1)].kind in (*_FIGURES, *CLOSERS)
        inches = measured and after.text[:1].islower()  # "until skirt is 7 in. below the waist"
        if numbered or again or inches or short and goes_on and not after.text[:1].isupper():
            stops.add(index + 1)
    return stream.without(stops)


def _opens_clause(lexemes: list[Lexeme], at: int) -> bool:
    """Whether the "ch." of "Ch. 3, turn" begins its clause, so that the figure behind it tells how many."""
    return not at or lexemes[at - 1].kind in (",", ";", ".", ":", "and", "then", "star", "turn", *OPENERS)


def _place_first(before: list[Lexeme]) -> bool:
    """Whether the clause so far only names a place, whose verb is to come: "into next 2-ch. sp. work 2 tr."."""
    for at in range(len(before) - 1, -1, -1):
        ahead = before[at - 1].kind if at else ","
        opens = ahead in (",", ";", ":", "star", *OPENERS) or ahead == "." and before[at].text[:1].isupper()
        if opens:
            return before[at].kind in ("in", "over")
    return False
