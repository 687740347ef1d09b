"""Finds what is said on the side in a row: words that neither work nor count, and stars that only set a count in bold."""

from __future__ import annotations

from itertools import pairwise

from lint.lexicon import Lexeme
from lint.reading.counting import counts
from lint.reading.places.targets import LOOPS
from lint.reading.places.thoseonly import several_on_them
from lint.reading.words.piecewords import through_pieces
from lint.reading.words.rowending import is_talk
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

_STITCHES = ("stitch", "number", "any_stitch", "increase", "decrease")
_SPELT = ("chain", "any_stitch", "space", "skip")  # "36 chain (ch)"
_NOT_ASIDE = ("counts", "counts_not", "forming", "number", "in", "make", "skip", "repeat", "chain")


_SHORT = ("stitch", "chain", "any_stitch", "space", "skip", "repeat", "round", "row", "increase", "decrease")
_POINTING = (
    "beg",
    "foll",
    "fol",
    "nxt",
    "ea",
    "rem",
    "prev",
    "alt",
    "cont",
)  # cut short; "in each. 3 sc" ends a sentence
_AGAIN = ("rep", "rpt")
_ROWS_NAMED = ("ordinal", "ordinals", "the", "row", "round", "last", "first")
_NOUNS = ("stitch", "chain", "any_stitch", "space", "row", "round", "special", "one_stitch", "corner")
_GOES_ON = (
    "unused",
    "from",
    "in",
    "at",
    "around",
    "across",
    "of",
    "to",
    "over",
    "together",
    "next",
    "each",
    "more",
    "between",
    "with",
    "and",
)
_BEFORE_CLAUSE = (",", ";", ".", ":", "star", "and", "then", "turn", "join", "dash", *OPENERS, *CLOSERS)


def asides(stream: Stream) -> set[int]:
    """Indexes of words said on the side: "(see Special Stitches)", "(this is an increase)", "loosely"."""
    found: set[int] = set()
    for index, lexeme in enumerate(stream.lexemes):
        if lexeme.kind == "manner" or lexeme.kind == "." and _ends_abbreviation(stream, index):
            found.add(index)
        elif (
            index and stream.lexemes[index - 1].kind in _STITCHES and (end := through_pieces(stream, index)) is not None
        ):
            found.update(range(index, end))  # "4 sc through arm and body together"
        elif lexeme.lower == "only" and _only_these(stream, index):
            found.add(index)  # "sc in the first 10 sts only"
        elif lexeme.kind == "dash" and _joins_name(stream, index):
            found.add(index)  # "5-dc-bobble" is a 5-dc bobble
        elif lexeme.kind == "half" and stream.lexemes[index - 1 : index] and stream.lexemes[index - 1].kind == "make":
            found.add(index)  # "work half a sc", which a new colour completes
        elif lexeme.kind == "star" and _footnote(stream, index):
            found.update(range(index, len(stream.lexemes)))
        elif lexeme.kind == '"' and index + 2 < len(stream.lexemes) and stream.lexemes[index + 2].kind == '"':
            found.update((index, index + 2))  # the "hump" of a chain
        elif lexeme.kind in OPENERS and index + 1 < len(stream.lexemes):
            close = stream.matching(index)
            inside = stream.lexemes[index + 1 : close] if close is not None else []
            if inside and _said_aside(stream, index, inside):
                found.update(range(index, close + 1))
    return found


def _footnote(stream: Stream, index: int) -> bool:
    """Whether a star behind the row's count leads to talk alone: "3 sc, bobble, 6 sc (14) *the thumb"; no star opens a repeat before."""
    words = stream.lexemes
    counted = [item.kind for item in words[max(0, index - 3) : index]]
    counted = len(counted) == 3 and counted[0] in (*OPENERS, "number") and counted[2] in CLOSERS and "number" in counted
    return counted and is_talk(words[index + 1 :]) and not any(item.kind == "star" for item in words[:index])


def _only_these(stream: Stream, index: int) -> bool:
    """Whether "only" stands behind so many stitches, or before them, and so leaves them as they are."""
    before = stream.lexemes[max(0, index - 2) : index]
    counted = [item.kind for item in before] == ["number", "any_stitch"]
    stop = stream.lexemes[index + 1].kind if index + 1 < len(stream.lexemes) else "end"
    if counted and stop in (",", ";", ".", "end", "turn", *OPENERS):
        return not several_on_them(stream, index + 1)  # "on first 6 sts only, sc2tog, sc in next 2 sts, sc2tog"
    ahead = [item.kind for item in stream.lexemes[index + 1 : index + 4] if item.kind != "the"]
    return bool(before) and before[-1].kind == "in" and ahead[:2] in (["first", "number"], ["next", "number"])


def _joins_name(stream: Stream, index: int) -> bool:
    """Whether a hyphen stands between the legs of a stitch and its name."""
    around = stream.lexemes[max(0, index - 3) : index + 2]
    kinds = [item.kind for item in around]
    glued = len(around) == 5 and all(item.glued for item in around[1:])
    return glued and kinds == ["number", "dash", "stitch", "dash", "one_stitch"]


def _said_aside(stream: Stream, index: int, inside: list[Lexeme]) -> bool:
    """Whether the words of the bracket at `index` only point elsewhere, explain, or say the same again."""
    before = stream.lexemes[index - 1] if index else None
    if len(inside) == 1 and before is not None and inside[0].kind == before.kind:
        if before.kind == "stitch":  # "double crochet (dc)"
            return before.value == inside[0].value and before.lower != inside[0].lower
        return before.kind in ("repeat", *_SPELT, *LOOPS)  # "Repeat (rep) from *", "BLO (back loop only)"
    made_of = [item.kind for item in inside if item.kind != "of"]
    if before is not None and before.kind == "one_stitch" and made_of in (["number", "stitch"], ["number", "space"]):
        after = stream.matching(index)
        return stream.lexemes[after + 1 : after + 2] != [] and stream.lexemes[after + 1].kind in ("in", "over", "next")
    if inside[0].kind == "or" and before is not None and before.kind == ".":
        return True  # "58 fsc. (Or ch 59, sc in 2nd ch from hook …)": another way to the same
    refers = inside[0].lower in ("see", "illustration")
    glosses = len(inside) > 1 and inside[0].lower == "this" and inside[1].lower in ("is", "makes")
    inside = inside[:-1] if len(inside) > 1 and inside[-1].kind == "." else inside
    numbered = refers and inside[-1].kind == "number" and inside[-2:-1] and inside[-2].kind not in _SPELT
    told = inside[:-1] if numbered else inside  # "(see photo 3)"
    return (refers or glosses) and not any(item.kind in _NOT_ASIDE for item in told)


def _ends_abbreviation(stream: Stream, index: int) -> bool:
    """Whether a full stop only ends an abbreviation: "1 dc. in 2nd ch. from hook"."""
    lexemes = stream.lexemes
    if not index or index + 1 >= len(lexemes) or not lexemes[index].glued:
        return False
    before, after = lexemes[index - 1], lexemes[index + 1]
    beyond = lexemes[index + 2].kind if index + 2 < len(lexemes) else "end"
    if after.kind == "dash" and before.kind == "chain":
        return beyond == "space"  # "into next ch.-sp."
    if before.lower in _AGAIN:
        return after.kind in (*_GOES_ON, *_ROWS_NAMED)  # "Rep. 2nd row until", "rep. from *"
    if after.kind == "number":
        if before.kind in ("increase", "decrease"):
            evenly = any(item.kind == "evenly" for item in lexemes[index + 3 : index + 5])
            return (
                after.number == 1 or evenly
            ) and beyond == "any_stitch"  # "dec. 1 st. at each end", "inc. 4 sts. evenly"
        if before.lower in _POINTING:
            return beyond not in ("times", "more")  # "in foll. 3 d.c."
        pointed = index > 1 and lexemes[index - 2].kind in ("next", "each", "in")
        if before.kind == "chain" and beyond == "space" and pointed and not lexemes[index + 2].lower.endswith("s"):
            return True  # "in next ch. 5 loop", "in each ch. 1 sp.", but "in last ch. 5 sps." may end with a count
        begins = index < 2 or lexemes[index - 2].kind in _BEFORE_CLAUSE
        return before.kind == "skip" or before.kind == "chain" and begins  # "ch. 3, sk. 2 ch."
    if not after.text[:1].islower():
        return False
    if before.kind == "chain" and after.kind == "space":
        return True  # "into next ch. sp."
    if before.lower in _POINTING:
        return after.kind in (*_NOUNS, *_GOES_ON)  # "in beg. ch.", "in each foll. st."
    return before.kind in _SHORT and after.kind in _GOES_ON


def emphasis(stream: Stream) -> set[int]:
    """Indexes of the stars that set a printed count in bold or slanting: "**(12 sc)**", "*(12 sc)*", "**10 sc**"."""
    stars = [i for i, lexeme in enumerate(stream.lexemes) if lexeme.kind == "star"]
    found: set[int] = set()
    for first, last in pairwise(stars):
        sign = stream.lexemes[first].value
        if sign[0] == "*" and sign == stream.lexemes[last].value and first not in found:
            found |= _set_off(stream, first, last, len(stars) == 2)
    return found


_TOLD_BEFORE = (".", ";", ":", "|", *CLOSERS)


def _set_off(stream: Stream, first: int, last: int, alone: bool) -> set[int]:
    """The two stars, where nothing but a count stands between them and no work or repeat follows."""
    if last < first + 2 or not stream.lexemes[first + 1].glued or not stream.lexemes[last].glued:
        return set()
    inner = stream.inside(first + 1, last)
    bracketed = inner.lexemes[0].kind in OPENERS and inner.matching(0) == len(inner.lexemes) - 1
    inner = inner.inside(1, len(inner.lexemes) - 1) if bracketed else inner
    behind = stream.lexemes[last + 1 : last + 2]
    ends = not behind or behind[0].kind in (".", "|")
    talk = (
        bool(behind) and behind[0].text[:1].isupper() and behind[0].kind not in ("repeat", "stitch", "chain", "number")
    )
    told = first > 0 and stream.lexemes[first - 1].kind in _TOLD_BEFORE
    if not (bracketed and (ends or talk) or told and ends and (alone or stream.lexemes[first].value == "**")):
        return set()
    count = counts.read(inner, bare=True)
    return {first, last} if count is not None and count.items else set()
