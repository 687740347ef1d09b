"""Words of a speaking hand put into those that are read: "just", "per st", "whichever you like", "the st you joined to"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

_STARTS = (",", ";", ".", ":", "dash", "star", "and", "then", *OPENERS)
_ENDS = (",", ";", ".", "turn", *CLOSERS)
_AS_YOU_LIKE = (
    *(["you", wish] for wish in ("like", "please", "want", "choose", "wish", "fancy")),
    ["of", "your", "choice"],
)
_YOU_JOINED = (["you", "joined"], ["that", "you", "joined"], ["where", "you", "joined"])
_AS_IF = ("if", "for", "to", "work", "working", "make", "making", "a", "you", "were")
_ON_THE_HOOK = ("tss", "tks", "tps", "tfs")
_TIPS = ("tip of", "top of", "point of", "peak of")
_PLACES = (
    "next",
    "last",
    "middle",
    "corner",
    "marker_word",
    "marked",
    "space",
    "chain",
    "stitch",
    "any_stitch",
    "ending",
)
_FARTHEST = 6  # words between a word and what is said of it


def in_known_words(stream: Stream) -> Stream:
    """The row's stream with such words left out, or as the words that say the same."""
    words = stream.lexemes
    for change in (
        _plainly,
        _kept_correct,
        _next_rows_told,
        _in_each,
        _any_one,
        _joined_to,
        _of_each,
        _at_tip,
        _as_if_for,
        _as_far_as,
        _along_edge,
    ):
        words = change(words)
    return stream if words is stream.lexemes else Stream(words, stream.vocabulary)


def _ends(words: list[Lexeme], at: int) -> bool:
    """Whether a clause ends at an index."""
    return at >= len(words) or words[at].kind in _ENDS


def _plainly(words: list[Lexeme]) -> list[Lexeme]:
    """ "just sc around", "simply 1 dc in each st" without the word that only says how little there is to it."""
    for at in range(len(words) - 2, -1, -1):
        begins = not at or words[at - 1].kind in _STARTS
        works = [item.kind for item in words[at + 1 : at + 3] if item.kind != "number"]
        if words[at].lower in ("just", "simply") and begins and works[:1] == ["stitch"]:
            words = [*words[:at], *words[at + 1 :]]
    return words


def _kept_correct(words: list[Lexeme]) -> list[Lexeme]:
    """ "work to last st keeping rib correct" with a comma before what is kept."""
    for at in range(len(words) - 1, 0, -1):
        kept = words[at].kind == "telling" and words[at].lower.startswith("keeping")
        if kept and words[at - 1].kind in ("any_stitch", "stitch", "ending", "across", "around"):
            words = [*words[:at], Lexeme(",", ",", words[at].start, words[at].start, True), *words[at:]]
    return words


def _next_rows_told(words: list[Lexeme]) -> list[Lexeme]:
    """ "at each end of the following rows: 2 rows for S, 3 rows for M" with the figures in the place of "rows:"."""
    for at in range(len(words) - 4):
        kinds = [item.kind for item in words[at : at + 5]]
        if kinds in (["next", "row", ":", "number", "row"], ["next", "round", ":", "number", "round"]):
            if words[at + 3].amount is not None:
                return [*words[: at + 1], *words[at + 3 :]]
    return words


def _in_each(words: list[Lexeme]) -> list[Lexeme]:
    """ "1 sc per st" as "1 sc in each st"."""
    for at in range(len(words) - 2, 0, -1):
        per = words[at]
        led = words[at - 2].kind if at > 1 else ","
        worked = words[at - 1].kind == "stitch" and led in ("number", *_STARTS)
        worked = worked or words[at - 1].kind == "increase" and led in _STARTS
        if per.lower != "per" or not worked or words[at + 1].kind not in ("any_stitch", "stitch"):
            continue
        if _ends(words, at + 2) or words[at + 2].kind in ("around", "across", "to", *OPENERS):
            led = Lexeme("in", per.text, per.start, per.start, False)
            words = [*words[:at], led, replace(per, kind="each", text="each"), *words[at + 1 :]]
    return words


def _any_one(words: list[Lexeme]) -> list[Lexeme]:
    """ "in whichever corner you like", "in any ch-2 sp of your choice" as "in any corner"."""
    for at in range(len(words) - 1, -1, -1):
        word = words[at]
        if word.kind != "any" and word.lower != "whichever":
            continue
        for begins in range(at + 2, at + _FARTHEST):
            said = [item.lower for item in words[begins : begins + 3]]
            wish = next((tail for tail in _AS_YOU_LIKE if said[: len(tail)] == tail), None)
            if wish is not None and not any(item.kind in _ENDS for item in words[at:begins]):
                left = words[begins + len(wish) :]
                words = [*words[:at], replace(word, kind="any"), *words[at + 1 : begins], *left]
                break
    return words


def _joined_to(words: list[Lexeme]) -> list[Lexeme]:
    """ "sc in the st you joined to", "in the sp where you joined" as "in the same st as join"."""
    for at in range(len(words) - 3, 0, -1):
        told = [item.lower for item in words[at + 1 : at + 4]]
        length = next((len(said) for said in _YOU_JOINED if told[: len(said)] == said), 0)
        if words[at].kind not in ("any_stitch", "stitch", "space") or not length:
            continue
        behind = at + 1 + length
        behind += behind < len(words) and words[behind].lower in ("to", "in", "into")
        start, end = words[at + 1].start, words[behind - 1].end
        led = at - (words[at - 1].kind == "the")
        same = Lexeme("same", "same", words[at].start, words[at].start, False)
        joined = [Lexeme(kind, kind, start, end, False) for kind in ("as", "join")]
        words = [*words[:led], same, words[at], *joined, *words[behind:]]
    return words


def _of_each(words: list[Lexeme]) -> list[Lexeme]:
    """ "in back bump of 2nd ch from hook and of each ch across" with one "of" for both."""
    for at in range(len(words) - 3, 3, -1):
        kinds = [item.kind for item in words[at : at + 4]]
        if kinds[:3] != ["and", "of", "each"] or kinds[3:] != ["chain"]:
            continue
        before = [item.kind for item in words[max(0, at - 10) : at]]
        if before[-2:] == ["from", "hook"] and any(pair == ("third_loop", "of") for pair in pairwise(before)):
            words = [*words[: at + 1], *words[at + 2 :]]
    return words


def _at_tip(words: list[Lexeme]) -> list[Lexeme]:
    """ "1 dc in the tr at the tip of next petal" as "in the middle tr of next petal"."""
    for at in range(len(words) - 3, 0, -1):
        if words[at].kind != "at" or words[at - 1].kind != "stitch":
            continue
        tip = at + 1 + (words[at + 1].kind == "the")
        told = " ".join(item.lower for item in words[tip : tip + 2])  # "tip of" may be one word or two
        behind = tip + (1 if words[tip].lower.endswith(" of") else 2)
        led = at - 2 if at > 1 and words[at - 2].kind == "the" else at - 1
        named = any(item.kind in ("group_word", "special") for item in words[behind : behind + 2])
        if told.startswith(_TIPS) and named and led and words[led - 1].kind in ("in", "to", "with"):
            start, end = words[at - 1].start, words[behind - 1].end
            middle = Lexeme("middle", "middle", start, start, False)
            of = Lexeme("of", "of", words[at].start, end, False)
            words = [*words[:led], middle, words[at - 1], of, *words[behind:]]
    return words


def _as_if_for(words: list[Lexeme]) -> list[Lexeme]:
    """ "sl st in each bar across as if for tss" without what tells how the hook goes in."""
    for at in range(len(words) - 2, 1, -1):
        if words[at].kind != "as":
            continue
        end = at + 1
        while end < len(words) and words[end].lower in _AS_IF:
            end += 1
        manner = end < len(words) and words[end].kind == "stitch" and words[end].value in _ON_THE_HOOK
        if manner and words[at - 1].kind in ("across", "any_stitch") and _ends(words, end + 1):
            words = [*words[:at], *words[end + 1 :]]
    return words


def _as_far_as(words: list[Lexeme]) -> list[Lexeme]:
    """ "dc in each dc as far as the corner" as "to the corner"; "as far as you like" is no place."""
    for at in range(len(words) - 4, 0, -1):
        far = [item.lower for item in words[at : at + 3]] == ["as", "far", "as"]
        behind = at + 3 + (words[at + 3].kind == "the")
        if far and behind < len(words) and words[behind].kind in _PLACES:
            words = [*words[:at], replace(words[at], kind="to", end=words[at + 2].end), *words[at + 3 :]]
    return words


def _along_edge(words: list[Lexeme]) -> list[Lexeme]:
    """ "sc in each of 60 ch round the lower edge" as "along the lower edge": the number tells how many those are."""
    for at in range(len(words) - 2, 1, -1):
        counted = words[at - 2].kind == "number" and words[at - 1].kind in ("any_stitch", "stitch", "chain")
        end = next((i for i in range(at + 1, min(at + 4, len(words))) if words[i].kind == "edge"), 0)
        named = end and all(item.kind in ("the", "word") for item in words[at + 1 : end])
        if words[at].lower in ("around", "round") and counted and named and _ends(words, end + 1):
            words = [*words[:at], replace(words[at], kind="across", text="along"), *words[at + 1 :]]
    return words


__all__ = ["in_known_words"]
