"""Puts the colours of tapestry and mosaic rows out of the way: "2 sc A, 6 sc B", "(B) 8 sc", "with A sc 4, with B sc 2".

A colour within a row changes no count. Only letters and names that the pattern gives to its yarns are taken for colours.
Where figures stand with colours and no stitch is named, "3A, 4B, 3A", they are of the stitch that the rows are worked in.
"""

from __future__ import annotations

from dataclasses import replace

from lint.expression import expression
from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import PLAIN

_WORK = ("number", "stitch", "increase", "decrease", "special", "one_stitch")
_ENDS = (",", ";", ".", "and", "turn", "join", "star", *OPENERS, *CLOSERS)
_AFTER_FIGURE = (",", ";", ".", "and", "turn", "join", "star", *CLOSERS, "end", "=", "dash")
_UNTIL_WITHIN = 8  # words before "rows" in "until you have worked a total of 5 rows"
_LETTERS = ("A", "B", "C", "D", "E", "F", "G", "H", "MC", "CC")
_OTHERWISE = ("stitch", "increase", "decrease", "chain", "back_loop", "front_loop", "special", "group_word", "ring")

# "“5B, 3N” means 5 sc with Black, then 3 sc with Natural", "4A = 4 sc in colour A"
_EXPLAINED = expression(
    r"\b(?P<n>\d+) ?(?:MC|CC\d?|[A-Z])\b[^.\n]{0,24}?(?:=|\b(?:means?|is|are|stands? for|reads?|tells? you to)\b)[^.\n]{0,24}?\b(?P=n) (?:sc|dc|hdc|sts?|stitch(?:es)?|single|double)\b"
)
# "A5, B3 means 5 sc in A, then 3 sc in B"
_EXPLAINED_BEHIND = expression(
    r"\b(?:MC|CC\d?|[A-Z]) ?(?P<n>\d+)\b[^.\n]{0,24}?(?:=|\b(?:means?|is|are|stands? for|reads?|tells? you to)\b)[^.\n]{0,24}?\b(?P=n) (?:sc|dc|hdc|sts?|stitch(?:es)?|single|double)\b"
)
# "A figure before a letter tells how many in that colour", "the numbers before the colour letters are stitches"
_TOLD = expression(
    r"(?i)\b(?:(?:figures?|numbers?)\s(?:before|behind|after|in front of|with|beside|followed by)|(?:figure|number)\s(?:and|plus)(?=\san?\s))"
    r"\s(?:\p{L}+\s){0,3}(?:letters?|colou?rs?)\b[^.\n]{0,40}\b(?:how many|sts?|stitch(?:es)?|sc|dc)\b"
    r"|(?i)\b(?:figures?|numbers?) (?:tell|say|give|are|show)s? (?:you )?(?:how many|the number of) (?:sts|stitches|sc|dc)\b[^.\n]{0,20}\b(?:that|each|the) (?:yarn|colou?r|shade)\b"
)


def figures_explained(text: str) -> bool:
    """Whether a pattern says what a figure with a colour's letter means: so many stitches in that colour."""
    return any(told.search(text) is not None for told in (_EXPLAINED, _EXPLAINED_BEHIND, _TOLD))


def colours_apart(stream: Stream) -> Stream:
    """The row's stream without the colours that stand within its work; a sign behind one that opens a clause."""
    if not _may_name_colours(stream):
        return stream
    stream = _colour_ahead(stream)
    found: list[Lexeme] = []
    at, changed = 0, False
    figures, led = _figures(stream), _colours_first(stream)
    while at < len(stream.lexemes):
        if at in figures:  # "4A": four stitches
            one, changed = stream.lexemes[at], True
            found.append(Lexeme("stitch", one.text, one.start, one.end, one.glued, value=PLAIN))
            at += 1
            continue
        if at in led:  # "white 8": eight stitches
            number, changed = stream.lexemes[led[at]], True
            found += [number, Lexeme("stitch", stream.lexemes[at].text, number.end, number.end, True, value=PLAIN)]
            at = led[at] + 1
            continue
        skipped, sign = _colour_at(stream, at, found)
        if not skipped:
            found.append(stream.lexemes[at])
            at += 1
            continue
        changed, at = True, at + skipped
        if stream.lexemes[at - 1].kind in (":", "dash") and found and found[-1].kind in (";", "."):
            found[-1] = replace(found[-1], kind=",")  # "; B: 4 sc" is work, and no count behind a stop
        if sign:
            before = stream.lexemes[at - 1]
            found += [*stream.lexemes[at - skipped : at], Lexeme(sign, "", before.end, before.end, True)]
    return Stream(found, stream.vocabulary) if changed else stream


def _may_name_colours(stream: Stream) -> bool:
    """Whether a colour's name, the letter of one or the word "colour" stands in a row: without them it has none."""
    named = stream.vocabulary.colours
    return any(item.kind == "color" or item.lower in named or item.text in _LETTERS for item in stream.lexemes)


def _colour_ahead(stream: Stream) -> Stream:
    """The row with the colour that it begins with, "dark brown, 18 sc", set apart by the sign of "Dark brown: 18 sc"."""
    comma = next((at for at in range(1, 4) if _kind(stream, at) == ","), 0)
    named = stream.lexemes[:comma]
    if not comma or any(one.kind != "word" for one in named) or not _colour(stream, comma - 1):
        return stream
    if not _begins_work(stream, comma + 1):
        return stream
    sign = replace(stream.lexemes[comma], kind=":")
    return Stream([named[-1], sign, *stream.lexemes[comma + 1 :]], stream.vocabulary)


def _counts_rows(read: list[Lexeme]) -> bool:
    """Whether the words end in a number of rows that is to be reached: "until there are 5 rows"."""
    return read[-1].kind in ("row", "round") and any(item.lower in ("until", "till") for item in read[-_UNTIL_WITHIN:])


def _colour_at(stream: Stream, at: int, read: list[Lexeme]) -> tuple[int, str]:
    """How many lexemes from `at` on are a colour to be passed; and the sign to be put behind them where they stay."""
    one = stream.lexemes[at]
    after = [_kind(stream, at + ahead) for ahead in range(4)]
    opens = not read or read[-1].kind in _ENDS
    if one.kind == "in" and read and (read[-1].kind == "join" or _counts_rows(read)):
        return 0, ""  # "join in B, 8 sc": new yarn; "until there are 5 rows in B": not in all
    if one.kind in OPENERS and _colour(stream, at + 1) and after[2] in CLOSERS and after[3] in _WORK:
        return (3, "") if opens else (0, "")  # "(B) 8 sc"
    led = _led_colour(stream, at) if opens else 0
    if led and _begins_work(stream, at + led):
        return led, "," if one.kind == "with" else "" if read else ":"  # "with B sc 2", "in red 6 sc"
    if led and read and _kind(stream, at + led) in (":", ",") and _begins_work(stream, at + led + 1):
        return led + 1, ""  # "; with B: 2 sc", ", in red, 6 sc"
    numbered = after[1] == "color" and after[2] == "number"  # "in colour 2"
    named = 3 if numbered else 2
    if (
        one.kind in ("in", "with")
        and (numbered or _colour(stream, at + 1))
        and after[named] in (*_ENDS, "end", "=", "dash")
    ):
        whole_row = bool(read) and read[-1].kind in ("around", "across")
        behind = one.kind == "in" and not opens  # "2 sc in each st in MC", "[…] 3 times in CC"
        return (named, "") if _worked(read) or whole_row or behind else (0, "")  # "2 sc in A,", "sc around in A"
    if one.kind == "color" and after[1] == "number" and opens:
        if after[2] in (":", "dash") and after[3] in (*_WORK, *OPENERS):
            return 3, ""  # "color 1: 6 sc"
        if _begins_work(stream, at + 2):
            return 2, ""  # "color 1 6 sc"
    if not _colour(stream, at):
        return 0, ""
    leads = after[1] in (":", "dash") and after[2] in (*_WORK, *OPENERS)
    if read and opens and read[-1].kind in (",", ";", ".", "star", *OPENERS) and leads:
        return 2, ""  # ", B: 4 sc", "*B: 4 sc"
    if opens and (one.text in _LETTERS or one.kind == "word") and _begins_work(stream, at + 1):
        return (
            1,
            "" if read else ":",
        )  # "B 6 sc", "A (sc, inc) x 6"; the first colour of a row is kept, as a clause of its own
    if after[1] in (*_ENDS, "end", "in") and _worked(read):
        return 1, ""  # "6 sc B,", "6 sc B in ring"
    return 0, ""


def _led_colour(stream: Stream, at: int) -> int:
    """How many lexemes "with B", "in red", "in color A" take; 0 where none of them stands."""
    if stream.lexemes[at].lower not in ("with", "in"):
        return 0
    named = 2 if _kind(stream, at + 1) == "color" else 1
    lettered = named == 1 and any(len(colour) == 1 for colour in stream.vocabulary.colours)  # where B is one, A is, too
    lettered = lettered and any(item.text in _LETTERS for item in stream.lexemes[at + 1 : at + 2])
    numbered = named == 2 and _kind(stream, at + 2) == "number"
    return named + 1 if numbered or lettered or _colour(stream, at + named) else 0


def _begins_work(stream: Stream, at: int) -> bool:
    """Whether work stands at `at` that a colour's letter may lead: a number and a stitch, a stitch, a bracket of work."""
    kind, after = _kind(stream, at), _kind(stream, at + 1)
    if kind in OPENERS:
        return after in _WORK and _kind(stream, at + 2) not in CLOSERS
    return kind in _WORK and (kind != "number" or after in _WORK and after != "number")


def _figures(stream: Stream) -> frozenset[int]:
    """Where colours stand that are the only word for stitches in a row of figures: "3A, 4B, 3A", "(2 red, 1 white) x 6".

    Figures with colours may be rows of stripes as well; they are stitches where the row's count is printed behind them, and
    one such figure alone only where it is the whole row.
    """
    found = [
        at
        for at in range(1, len(stream.lexemes))
        if _colour(stream, at)
        and stream.lexemes[at - 1].kind == "number"
        and (at == 1 or stream.lexemes[at - 2].kind in _ENDS)
        and (_kind(stream, at + 1) in _AFTER_FIGURE or _counted(stream, at + 1))
    ]
    alone = found == [1] and not any(item.kind in _WORK[1:] for item in stream.lexemes)
    behind = range(found[-1] + 1, len(stream.lexemes)) if found else ()
    counted = any(_counted(stream, at) or stream.lexemes[at].kind in ("=", "dash") for at in behind)
    tail = [item.kind for item in stream.lexemes if item.kind != "."][-3:]
    counted = counted or tail in (["turn", "number", "any_stitch"], ["join", "number", "any_stitch"])  # "turn. 76 sts"
    if stream.vocabulary.figured:
        return frozenset(found)
    return frozenset(found) if counted and (len(found) > 1 or alone) else frozenset()


def _colours_first(stream: Stream) -> dict[int, int]:
    """Where the colours of "white 8, red 4 (12)", "white: 8, red: 4 = 12" stand, and the number behind each; no stitch is named.

    They are stitches where nothing else is worked and the row's count is printed behind them, or the pattern says that they are.
    """
    found: dict[int, int] = {}
    for at in range(len(stream.lexemes)):
        if at and stream.lexemes[at - 1].kind not in _ENDS or not _colour(stream, at):
            continue
        number = at + (2 if _kind(stream, at + 1) in (":", "dash") else 1)
        ended = _kind(stream, number + 1) in _AFTER_FIGURE or _counted(stream, number + 1)
        if _kind(stream, number) == "number" and ended:
            found[at] = number
    last = max(found.values(), default=0)
    count = next((at for at in range(last + 1, len(stream.lexemes)) if _counts_row(stream, at)), None)
    worked = any(item.kind in _WORK[1:] for item in stream.lexemes[:count])
    told = len(found) > 1 and count is not None or stream.vocabulary.figured
    return found if told and not worked else {}


def _counts_row(stream: Stream, at: int) -> bool:
    """Whether the row's count is printed at a place: "(18)", "= 18", "- 18 sts"."""
    return _counted(stream, at) or _kind(stream, at) in ("=", "dash") and _kind(stream, at + 1) == "number"


def _counted(stream: Stream, at: int) -> bool:
    """Whether a printed count stands at `at`: "(18)", "[18 sc]"."""
    return _kind(stream, at) in OPENERS and _kind(stream, at + 1) == "number" and _kind(stream, at + 2) != ","


def _kind(stream: Stream, at: int) -> str:
    return stream.lexemes[at].kind if at < len(stream.lexemes) else "end"


def _colour(stream: Stream, at: int) -> bool:
    if at >= len(stream.lexemes):
        return False
    item, named = stream.lexemes[at], stream.vocabulary.colours
    if item.kind in _OTHERWISE:  # "A: decrease" is no colour
        return False
    return item.lower in named and (item.kind == "word" or item.text in _LETTERS)


def _worked(read: list[Lexeme]) -> bool:
    """Whether a stitch with its number, and no more, stands last: "2 sc", "sc 6", "inc"."""
    kinds = [item.kind for item in read[-3:]]
    if kinds[-1:] in (["increase"], ["decrease"]) and (len(kinds) < 2 or kinds[-2] in (*_ENDS, "number", ":")):
        return True
    listed = kinds[-2:] in (["number", "stitch"], ["stitch", "number"])
    return listed and (len(kinds) < 3 or kinds[0] in (*_ENDS, ":"))
