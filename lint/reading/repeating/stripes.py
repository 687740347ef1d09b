"""Reads what is said of the yarns behind rows that are worked again: "in the following order: 2 rows B, 2 rows C"."""

from __future__ import annotations

from lint.amount import Amount
from lint.lexicon import Lexeme
from lint.reading.repeating.times import times
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import TimesKind

_LEADS = ("in", "the", "same", "next", "of", "as", "color", "with")
_ORDER = frozenset(("stripe", "stripes", "striped", "color", "colors", "colour", "colours", "sequence", "order"))
_ENDS = (".", "end", "turn", *OPENERS)
_WORK = ("stitch", "increase", "decrease", "special", "one_stitch", "group_word", "skip", "chain")


def striped(stream: Stream) -> tuple[Amount, bool] | None:
    """Takes ", working in the following stripe order: 2 rows B, 2 rows C": how many rows these are; None where it is none."""
    start = stream.at
    stream.take_if(",")
    stream.take_if("make")
    ordered = False
    while stream.kind() in _LEADS or not _ORDER.isdisjoint(stream.peek().lower.split()) or stream.word("pattern"):
        word = stream.take()
        ordered = ordered or not _ORDER.isdisjoint(word.lower.split())
    rows = None
    if ordered:
        stream.take_if(":", "dash", ",")
        rows = _order(stream)
    if rows is None or stream.kind() not in _ENDS:
        stream.at = start
        return None
    return Amount.of(rows), False


def _order(stream: Stream) -> int | None:
    """The rows of "2 rows B, 2 rows C", "*2 rows B, 1 row A; rep from * once more"."""
    star = stream.take_if("star")
    rows = 0
    while True:
        number = stream.amount() if stream.kind() == "number" else None
        if number is None or number.lone is None or stream.take_if("row", "round") is None:
            return None
        stream.take_if("of", "in", "with")
        if not _colour(stream):
            return None
        rows += number.lone
        before = stream.at
        stream.skip(",", ";", "and", "then")
        if stream.kind() != "number":
            stream.at = before
            break
    if star is None:
        return rows
    stream.skip(",", ";", ".")
    if stream.take_if("repeat") is None or stream.take_if("from") is None or stream.take_if("star") is None:
        return None
    often = times(stream)
    number = often.number.lone if often is not None and often.number is not None else None
    if number is None or often.kind not in (TimesKind.MORE, TimesKind.IN_ALL):
        return None
    return rows * (number + (often.kind is TimesKind.MORE))


def _colour(stream: Stream) -> bool:
    """Takes a colour by its letter or name."""
    stream.take_if("color", "yarn")
    item = stream.peek()
    letter = item.text.isupper() and len(item.text) <= 3 and item.kind in ("word", "the", "stitch")
    if letter or item.kind == "word" and item.lower in stream.vocabulary.colours:
        stream.take()
        return True
    return False


def in_one_colour(stream: Stream) -> None:
    """Passes the "in the same color" of "Rep Row 2 in the same color 5 times", before how often a row is called."""
    start = stream.at
    if stream.take_if("in", "with"):
        stream.skip("the", "same")
        named = stream.word("color", "colour", "colors", "colours") and stream.take() is not None
        if stream.peek().text in stream.vocabulary.colours or named and _is_letter(stream.peek()):
            stream.take()
            named = True
        stream.skip(",")
        if named and stream.kind() in ("number", "to", "for"):
            return
    stream.at = start


def _is_letter(item: Lexeme) -> bool:
    return item.kind in ("word", "the") and item.text.isupper() and len(item.text) == 1


def call_tail(stream: Stream) -> None:
    """Passes ", keeping to Color Sequence", "changing to B in last st" after a row call; not ", continuing in hdc"."""
    start = stream.at
    if stream.word("again") and stream.take() and not stream.done and stream.kind() not in (*SIGNS, "turn", "join"):
        stream.at = start
    start = stream.at
    if _in_a_colour(stream) or _posts_on_posts(stream):
        return
    stream.skip(",")
    if (
        stream.word("keeping", "changing", "alternating", "continuing")
        or (stream.kind() == "in" or stream.word("swapping", "switching", "using"))
        and any(stream.word("colors", "colours", "color", "colour", "sequence", ahead=ahead) for ahead in range(1, 6))
    ):
        words = stream.at
        stream.pass_to(".", ";", *OPENERS)
        passed = zip(stream.lexemes[words : stream.at], stream.lexemes[words - 1 : stream.at], strict=False)
        works = any(item.kind in _WORK and before.kind not in ("last", "final", "each") for item, before in passed)
        if not works and not _alters(stream.lexemes[words : stream.at]):
            return
    stream.at = start


def _posts_on_posts(stream: Stream) -> bool:
    """Takes ", working each FPdc around the FPdc 2 rows below": where the post stitches that the row has anyway go."""
    start = stream.at
    stream.skip(",")
    stream.take() if stream.word("but") else None
    if stream.take_if("make"):
        while True:
            one = _post(stream)
            over = stream.take_if("around", "over", "in") if one else None
            if over is None or _post(stream) != one:
                break
            while stream.kind() in ("number", "row", "round", "below") or stream.word("of", "from", "in", "the"):
                stream.take()
            if not stream.take_if("and"):
                if stream.kind() in (*SIGNS, "end", *OPENERS):
                    return True
                break
    stream.at = start
    return False


def _post(stream: Stream) -> str:
    """Takes "each FPdc", "the corresponding post sts": which post stitch that is; "" where none is named."""
    while stream.kind() in ("each", "all", "the", "same") or stream.word("corresponding", "matching"):
        stream.take()
    if stream.kind() == "stitch":
        value = stream.peek().value
        return stream.take().value if value.startswith(("FP", "BP")) else ""
    if stream.word("post", "raised") and stream.kind(1) == "any_stitch":
        stream.at += 2
        return "post"
    return ""


def _alters(words: list[Lexeme]) -> bool:
    """Whether words say how far or how often rows are worked, or with which others: "continuing for 6 rows"."""
    kinds = [item.kind for item in words]
    if not {"times", "unused", "edge", "side", "leave", "corner"}.isdisjoint(kinds):
        return True
    pairs = list(zip(kinds, kinds[1:], strict=False))
    if ("for", "number") in pairs or any(item.lower in ("until", "till") for item in words):
        return True
    return words[0].lower == "alternating" and any(pair in (("row", "number"), ("round", "number")) for pair in pairs)


def _in_a_colour(stream: Stream) -> bool:
    """Takes the "in MC" of "As Row 2 in MC"."""
    name, ends = stream.peek(1), stream.kind(2) in (*SIGNS, "end", "turn", "join", "dash")
    letters = name.text.isupper() and len(name.text) <= 3
    known = name.text in stream.vocabulary.colours or name.kind == "word" and letters
    if stream.kind() not in ("in", "with") or not known or not ends:
        return False
    stream.at += 2
    return True
