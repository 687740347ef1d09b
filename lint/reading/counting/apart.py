"""Printed counts that a row's end sets apart by signs with other uses: "~ 12 sts", "/12", "~30 dc: 10 each side~".

The signs are put into the common ones, brackets and a dash, so that the count reader knows them; each lexeme keeps its
place in the text.
"""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.counting import counts
from lint.reading.words.stream import COUNT_SIGNS, Stream

# what begins a clause that works nothing
_TALK = ("word", "change", "stuff", "fasten_off", "no_fasten", "attach", "marker", "put_marker", "movement", "telling")
_HANDS = ("put", "place", "insert", "pull", "leave", "leaving", "cut", "sew", "weave", "fold", "close")
_BEFORE_COUNT = (
    ".",
    ",",
    ";",
    "turn",
    "join",
    "around",
    "across",
    "any_stitch",
    "stitch",
    "increase",
    "decrease",
    "ending",
    "times",
    ")",
    "]",
    "}",
)


def counts_set_apart(stream: Stream) -> Stream:
    """The row's stream, with such a count at its end in brackets or behind a dash."""
    lexemes = stream.lexemes
    end = len(lexemes)
    while end and lexemes[end - 1].kind in (".", "|"):
        end -= 1
    behind = _behind_talk(stream, end)
    if behind is not None:
        last = lexemes[behind - 1].end
        stop = [Lexeme(".", "", last, last, True), replace(lexemes[behind], kind="dash", value="")]
        return Stream([*lexemes[:behind], *stop, *lexemes[behind + 1 :]], stream.vocabulary)
    found = _enclosed(stream, end) or _led(stream, end)
    if found is None:
        return stream
    put = {index: replace(lexemes[index], kind=kind, value="") for index, kind in found.items() if kind}
    kept = [put.get(index, item) for index, item in enumerate(lexemes) if found.get(index, "kept") is not None]
    return Stream(kept, stream.vocabulary)


def _enclosed(stream: Stream, end: int) -> dict[int, str | None] | None:
    """ "~12 sts~" becomes "– 12 sts"; None where no such count ends the row."""
    lexemes = stream.lexemes
    if not end or lexemes[end - 1].text != "~":
        return None
    first = next((index for index in range(end - 2, 0, -1) if lexemes[index].text == "~"), None)
    if first is None or not _count(stream, first + 1, end - 1):
        return None
    alone = sum(item.text == "~" for item in lexemes) == 2 and lexemes[first - 1].kind in _BEFORE_COUNT
    return {first: "dash", end - 1: None} if alone else None


def _behind_talk(stream: Stream, end: int) -> int | None:
    """ "…, stuff | 18", "…, change to blue in the last sc = 42": where the sign stands; None without such a count."""
    lexemes = stream.lexemes
    at = next((index for index in range(end - 1, 0, -1) if lexemes[index].text in COUNT_SIGNS), 0)
    if not at:
        return None
    begun = max((i + 1 for i in range(at) if lexemes[i].kind in (",", ";", ".")), default=0)
    starts = [begun, *(i + 1 for i in range(begun, at) if lexemes[i].kind in ("and", "then"))]
    talk = any(lexemes[i].kind in _TALK or lexemes[i].lower in _HANDS for i in starts)
    return at if talk and _count(stream, at + 1, end) else None


def _led(stream: Stream, end: int) -> dict[int, str | None] | None:
    """ "turn ~ 12 sts", "across /12", "6 times >> 18": a sign that stands nowhere else in the row, and a count behind it to the end."""
    lexemes = stream.lexemes
    for sign in ("~", "/", ">", "»"):
        places = [index for index, item in enumerate(lexemes) if item.text == sign]
        at = places[0] if places else 0
        twice = len(places) == 2 and places[1] == at + 1 and lexemes[at + 1].glued  # "turn >> 12 sts"
        if not at or sign != "/" and len(places) > 1 and not twice:
            continue
        often = lexemes[at - 1].kind == "number" and at > 1 and lexemes[at - 2].lower in ("x", "×")
        if lexemes[at - 1].kind not in _BEFORE_COUNT and not often:
            continue
        if sign == "/" and lexemes[at].glued:
            continue  # "2 tr/dc": two names of one stitch
        if sign == "/" and (len(places) > 1 and _named(lexemes[at:end]) or _of_another_sort(lexemes, at, end)):
            continue  # "6 sc / 6 hdc", "6 inc / 6 sc", "5 sc / inc / 5 sc": work parted by strokes
        if _count(stream, at + 1 + twice, end):
            return {at: None, at + 1: "dash"} if twice else {at: "dash"}
    return None


def _of_another_sort(lexemes: list[Lexeme], at: int, end: int) -> bool:
    """Whether the stitches named behind a sign are none that the words before name, nor all that a whole round comes to."""
    behind, before = (
        {item.value for item in some if item.kind == "stitch"} for some in (lexemes[at:end], lexemes[:at])
    )
    whole = any(item.kind in ("around", "across", "each", "turn", "join", "ending") for item in lexemes[:at])
    return not behind <= before and bool(before or not whole)


def _named(lexemes: list[Lexeme]) -> set[str]:
    """The stitches that words name."""
    return {item.value for item in lexemes if item.kind == "stitch"}


def _count(stream: Stream, first: int, last: int) -> bool:
    """Whether the words first..last (exclusive) are a count and nothing else."""
    inner = stream.inside(first, last)
    if inner.kind() != "number":
        return False
    found = counts.read(inner, bare=True)
    return found is not None and bool(found.items) and all(item.unit != "unknown" for item in found.items)
