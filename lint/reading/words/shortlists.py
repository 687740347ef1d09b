"""Rows that are lists of stitches parted by other signs than commas: "inc-5sc-inc-5sc", "5sc; inc; 5sc; inc", "inc . 5sc . inc . 5sc"."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

_SIGNS = ("dash", ";", ".", "|", "/")
_ITEM = ("number", "stitch", "increase", "decrease")  # "3dc-cl" is one stitch, and so are those that a pattern names
_WORK = _ITEM[1:]
_PAIRED = ("stitch", "any_stitch", "special", "one_stitch", "group_word")
_ENDS = (",", ";", ".", "dash", "=", *OPENERS, *CLOSERS)
_FEWEST = 3  # items that make a list


def signs_as_commas(stream: Stream) -> Stream:
    """The row with such signs as commas, where it is nothing but short items and what ends it.

    A last item could as well be the printed count behind a sign, so that it has to stand in the list before, or the
    signs have to be hyphens without a space.
    """
    end = next((at for at, item in enumerate(stream.lexemes) if item.kind in (*OPENERS, "join", "turn", ",")), None)
    words = stream.lexemes[:end]
    while words and words[-1].kind in (".", ";"):
        words = words[:-1]
    for sign in _SIGNS:
        at = [index for index, item in enumerate(words) if item.kind == sign]
        items = _items(words, at)
        if not at or not all(map(_short, items)):
            continue
        glued = sign == "dash" and all(words[i].glued and words[i + 1].glued for i in at)
        listed = len(items) >= _FEWEST and _told(items[-1]) in map(_told, items[:-1])
        whole = end is None or stream.lexemes[end].kind != ","  # "8hdc-inc, 16sc" has its commas
        if glued and (len(items) >= _FEWEST or whole and _figure_glued(items[0])) or listed:
            changed = [replace(item, kind=",") if i in at else item for i, item in enumerate(stream.lexemes)]
            return Stream(changed, stream.vocabulary)
    return _into_one_place(stream)


def _into_one_place(stream: Stream) -> Stream:
    """The row with commas in lists that go into one place: "In each ch-4 sp: 1 sc; 5 dc; 1 sc", "1 sc; 5 dc; 1 sc in next sp"."""
    words = stream.lexemes
    cuts = [at for at, item in enumerate(words) if item.kind in (",", ";", ".")]
    items = _items(words, cuts)
    put: set[int] = set()
    first = 0
    while first < len(items):
        last = first  # of the items that follow it behind semicolons
        while last < len(cuts) and words[cuts[last]].kind == ";" and _short(items[last + 1]):
            last += 1
        listed = range(first, last)
        if _led_by_place(items[first]):
            told = [items[first][-2:], *items[first + 1 : last + 1]]
            put.update(cuts[at] for at in (listed[:-1] if _is_count(told) else listed))
        elif (
            _short(_work_of(items[first]))
            and last < len(cuts)
            and words[cuts[last]].kind == ";"
            and _goes(items[last + 1])
        ):
            put.update(cuts[at] for at in (*listed, last))
        first = last + 1
    if not put:
        return stream
    changed = [replace(item, kind=",") if at in put else item for at, item in enumerate(words)]
    return Stream(changed, stream.vocabulary)


def _work_of(item: list[Lexeme]) -> list[Lexeme]:
    """A clause without the star or the "work" before it."""
    at = 0
    while at < len(item) and item[at].kind in ("star", "make"):
        at += 1
    return item[at:]


def _goes(item: list[Lexeme]) -> bool:
    """Whether a clause is a number of a stitch with its place: "1 sc in each ch-4 sp"."""
    kinds = [one.kind for one in item]
    return kinds[:3] == ["number", "stitch", "in"] or kinds[:2] == ["stitch", "in"]


def _is_count(told: list[list[Lexeme]]) -> bool:
    """Whether the last of some short items counts the row: a sort that the list has, and far more than go into one place.

    The same stitch does not stand twice side by side in a list, and no end of one outweighs all the rest of it.
    """
    *before, (sort, number) = [_told_apart(item) for item in told]
    sorts = [one for one, _ in before]
    return sort in sorts and (sort == sorts[-1] or number > sum(often for _, often in before))


def _told_apart(item: list[Lexeme]) -> tuple[str, int]:
    """The stitch of a short item, and how many of it."""
    number = next((one.number for one in item if one.kind == "number"), 1)
    return next(one.value or one.lower for one in item if one.kind in _WORK), number


def _led_by_place(item: list[Lexeme]) -> bool:
    """Whether a clause names its place first, and its first stitches behind: "in each ch-4 sp work: 1 sc"."""
    kinds = [one.kind for one in item]
    return kinds[:1] == ["in"] and len(kinds) > 3 and _short(item[-2:])


def crosses(stream: Stream) -> Stream:
    """The row with the star of "8*(2 sc, inc)", "inc*6," as the cross that it is there: close between both words.

    The star that closes "*2 sc, inc*6" stays, and a cross is put behind it; so is one behind the figure of "(2 sc, inc) 6 (24)".
    """
    changed: list[Lexeme] = []
    words = stream.lexemes
    opened = False
    behind = set(_figures_behind_lists(stream))
    for at, one in enumerate(words):
        if one.kind not in ("star", "number"):
            changed.append(one)
            continue
        close = one.text == "*" and one.kind == "star" and one.glued and at and words[at + 1 : at + 2]
        after = words[at + 1] if close and words[at + 1].glued else None
        before = words[at - 1].kind if at else ""
        often = after is not None and after.kind == "number"
        shaped = (
            often
            and before in ("increase", "decrease", "together", *CLOSERS)
            and _stop(words, at + 2) in (*_ENDS, "end")
        )
        if after is not None and before == "number" and after.kind in OPENERS or shaped and not opened:
            changed.append(replace(one, kind="word", text="x"))
            continue
        changed.append(one)
        if one.kind == "number" and (at in behind or _figure_before_list(stream, at)):
            changed.append(Lexeme("word", "x", one.end, one.end, True))  # "6(inc, 3sc)"
        if opened and often and one.kind == "star" and _stop(words, at + 2) in ("end", *_ENDS):
            changed.append(Lexeme("word", "x", one.end, one.end, True))
        opened = opened != (one.kind == "star")
    return Stream(changed, stream.vocabulary)


def pairs_as_two(stream: Stream) -> Stream:
    """The row with "a pair of sc" as "2 sc"."""
    if not any(item.lower == "pair" for item in stream.lexemes):
        return stream
    found: list[Lexeme] = []
    at = 0
    while at < len(stream.lexemes):
        first = at + 1
        words = stream.lexemes[first : first + 3]
        pair = (
            stream.lexemes[at].kind == "the"
            and [item.lower for item in words[:2]] == ["pair", "of"]
            and words[-1].kind in _PAIRED
        )
        if pair and len(words) == 3:
            begun, end = stream.lexemes[at], words[1]
            found.append(Lexeme("number", "pair", begun.start, end.end, begun.glued, "word", 2))
            at = first + 2
        else:
            found.append(stream.lexemes[at])
            at += 1
    return Stream(found, stream.vocabulary) if len(found) < len(stream.lexemes) else stream


def _figure_before_list(stream: Stream, at: int) -> bool:
    """Whether a figure that opens a clause stands before a bracket of several clauses, which nothing else repeats."""
    words = stream.lexemes
    close = stream.matching(at + 1) if _stop(words, at + 1) in OPENERS else None
    if close is None or at and words[at - 1].kind not in (",", ";", ":"):
        return False
    inner = [item.kind for item in words[at + 2 : close]]
    listed = "," in inner and inner[0] in _ITEM and any(kind in _WORK for kind in inner)
    return listed and "counts" not in inner and _stop(words, close + 1) in (*_ENDS, "end")


_LONGEST_LIST = 40  # words in a bracket that a figure without "times" repeats


def _figures_behind_lists(stream: Stream) -> Iterator[int]:
    """The figures behind a bracket of several clauses, with a bracketed count and no more behind them: "(2 sc, inc) 6 (24)".

    In a pattern of several sizes, these are figures of the sizes.
    """
    words, open_at = stream.lexemes, []
    for at, one in enumerate(words if stream.vocabulary.sizes == 1 else ()):
        if one.kind in OPENERS:
            open_at.append(at)
        if one.kind not in CLOSERS or not open_at:
            continue
        begun = open_at.pop() + 1
        inner = [item.kind for item in words[begun:at]] if at - begun < _LONGEST_LIST else []
        if "," not in inner or inner[0] not in _ITEM or not any(kind in _WORK for kind in inner):
            continue
        counted = [item.kind for item in words[at + 1 : at + 6]]
        counted = [kind for index, kind in enumerate(counted) if index < 3 or kind not in ("stitch", "any_stitch")]
        shaped = counted[:1] == ["number"] and counted[1:2] and counted[1] in OPENERS and counted[2:3] == ["number"]
        if shaped and counted[3:4] and counted[3] in CLOSERS and [*counted[4:5], "end"][0] in (".", "end"):
            yield at + 1


def _stop(words: list[Lexeme], at: int) -> str:
    """The kind of the word at `at`."""
    return words[at].kind if at < len(words) else "end"


def _items(words: list[Lexeme], at: list[int]) -> list[list[Lexeme]]:
    cuts = [-1, *at, len(words)]
    return [words[start + 1 : end] for start, end in zip(cuts, cuts[1:], strict=False)]


def _short(item: list[Lexeme]) -> bool:
    """Whether an item is a stitch, or a number of one: "inc", "5sc", "sc 4"."""
    kinds = [one.kind for one in item]
    return 1 <= len(kinds) <= 2 and all(kind in _ITEM for kind in kinds) and sum(kind in _WORK for kind in kinds) == 1


def _figure_glued(item: list[Lexeme]) -> bool:
    """Whether a figure stands close to its stitch: "2sc-inc" are two stitches and an increase, "sc-inc" is one."""
    return len(item) == 2 and item[0].kind == "number" and item[1].glued


def _told(item: list[Lexeme]) -> tuple[str, ...]:
    return tuple(one.lower for one in item)
