"""Rows that divide a yoke by the names of its sections: "dc in each dc across back, ch 4, skip sleeve sts, …".

Such names are one lexeme, "section": where a section ends is told by the row below, not by these words.
"""

from __future__ import annotations

from lint.reading.words.stream import SIGNS, Lexeme, Stream

_SLEEVE = ("sleeve",)
_MIDDLE = ("front", "back")
_SIDES = ("left", "right")
_AROUND = ("for", "section", "in", "other", "second", *_SIDES)
_OF_SLEEVE = ("all", "the", "each", "next", "first", "ordinal", "of", "any_stitch", "stitch", "remaining")
_STITCH = ("any_stitch", "stitch")
_ONE_SPACE = ("the", "next", "first", "chain", "dash", "number")
_OVER = ("of", "across", "over")


def sections_named(stream: Stream) -> Stream:
    """The row with what it calls sections of a yoke folded, where it leaves a sleeve out; else as it is."""
    skips = [at for at, item in enumerate(stream.lexemes) if item.kind == "skip"]
    if not any(_leaves_sleeve(stream, at) for at in skips):
        return stream
    lexemes: list[Lexeme] = []
    at = 0
    while at < len(stream.lexemes):
        item = stream.lexemes[at]
        lexemes.append(item)
        at += 1
        if item.kind == "skip" and (end := _sleeve_end(stream, at)):
            onward = (
                stream.lexemes[end : end + 1] and stream.lexemes[end].kind == "to"
            )  # "all sts of sleeve to next sp"
            unnamed = [one for one in stream.lexemes[at:end] if one.kind in ("all", "each", *_STITCH)]
            lexemes += unnamed if onward else [_section(stream, at, end)]
            at = end
        elif item.kind == "each" and (run := _run(stream, at)) is not None:
            sort, end, bounded = run
            lexemes += [stream.lexemes[sort]] if bounded else [stream.lexemes[sort], _section(stream, at, end)]
            at = end
        elif item.kind == "number" and _named(stream, at) > at:
            named = _named(stream, at)
            at = named if stream.lexemes[named : named + 1] and stream.lexemes[named].kind in _STITCH else at
    return Stream(lexemes, stream.vocabulary)


def _leaves_sleeve(stream: Stream, skip: int) -> bool:
    """Whether the skip at an index is of a sleeve, counted or not."""
    end = stream.next_of(*SIGNS, start=skip)
    return any(item.lower in _SLEEVE for item in stream.lexemes[skip + 1 : end])


def _sleeve_end(stream: Stream, at: int) -> int:
    """Where "all dc of first sleeve", "the sleeve sts" ends that stands at an index; 0 where more is said, or a number."""
    end = stream.next_of(*SIGNS, "and", "then", "to", start=at)
    words = stream.lexemes[at:end]
    named = any(item.lower in _SLEEVE for item in words)
    plain = all(item.kind in _OF_SLEEVE or item.lower in (*_SLEEVE, *_AROUND) for item in words)
    return end if named and plain and not any(item.value == "sl st" for item in words) else 0


def _run(stream: Stream, at: int) -> tuple[int, int, bool] | None:
    """The stitch, the end and whether a limit follows of "dc of front", "back st to …" behind "each"."""
    named = _named(stream, at)
    if named > at and stream.lexemes[named : named + 1] and stream.lexemes[named].kind in _STITCH:
        bounded = stream.lexemes[named + 1 : named + 2] and stream.lexemes[named + 1].kind in ("to", "across")
        return named, named + 1, bool(bounded)
    if not (stream.lexemes[at : at + 1] and stream.lexemes[at].kind in _STITCH):
        return None
    over = stream.lexemes[at + 1 : at + 2]
    if not over or not (over[0].kind in _OVER or over[0].lower in ("for", "along", "on")):
        return None
    end = _named(stream, at + 2)
    if end == at + 2:
        return None
    while stream.lexemes[end : end + 1] and (
        stream.lexemes[end].lower == "section" or stream.lexemes[end].kind == "any_stitch"
    ):
        end += 1
    return at, _to_its_space(stream, end), False


def _to_its_space(stream: Stream, end: int) -> int:
    """Behind the "to next ch-1 sp" that only says once more where the section ends; the index itself where none stands there."""
    words = [item.kind for item in stream.lexemes[end : stream.next_of(*SIGNS, start=end)]]
    space = words[:1] == ["to"] and words[-1:] == ["space"] and all(kind in _ONE_SPACE for kind in words[1:-1])
    return end + len(words) if space else end


def _named(stream: Stream, at: int) -> int:
    """Where "the left front", "back" ends that stands at an index; the index itself where none does."""
    end = at
    while stream.lexemes[end : end + 1] and (stream.lexemes[end].kind == "the" or stream.lexemes[end].lower in _SIDES):
        end += 1
    return end + 1 if stream.lexemes[end : end + 1] and stream.lexemes[end].lower in _MIDDLE else at


def _section(stream: Stream, at: int, end: int) -> Lexeme:
    first, last = stream.lexemes[at], stream.lexemes[end - 1]
    return Lexeme("section", stream.words(at, end), first.start, last.end, first.glued)
