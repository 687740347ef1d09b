"""Runs that are told to go over all of a row, "sc in all sts", "across the whole row", "closing the gap": past where short rows were turned."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.place import WHOLE_ROW, Which
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Remark, Step, Work

_WHOLE = ("whole", "entire", "full", "complete")
_GAPS = ("gap", "gaps", "hole", "holes")
_SO_MANY = ("number", "next", "first", "last", "each", "same", "remaining")  # "the 5 unworked sts" are told apart
_CLOSING = ("closing", "close")
_WHERE = ("the", "at", "each", "turn", "both", "as", "all", "of", "made", "in", "middle")
_WHERE_WORDS = ("both", "you", "go", "left", "by", "between", "turning", "turns", "heel", "short", "point", "points")


def over_whole_row(steps: list[Step], words: list[Lexeme]) -> list[Step]:
    """The steps of a row, its run marked where the words say that it goes over all there is."""
    if not any(_tells_all(words, at) for at in range(len(words))):
        return steps
    return [_marked(step) if isinstance(step, Work) else step for step in steps]


def _marked(step: Work) -> Work:
    run = step.places and step.places[0].which is Which.EACH and not step.places[0].from_words
    return replace(step, places=(replace(step.places[0], from_words=WHOLE_ROW), *step.places[1:])) if run else step


def _tells_all(words: list[Lexeme], at: int) -> bool:
    word, behind = words[at], words[at + 1 : at + 2]
    if word.lower in _CLOSING:
        return any(item.lower in _GAPS for item in words[at + 1 : at + 4])
    if word.lower in _WHOLE:
        return bool(behind) and (behind[0].kind in ("row", "round") or behind[0].lower == "width")
    apart = at > 0 and words[at - 1].kind in _SO_MANY
    told = word.kind == "all" or word.lower.startswith("in all") or word.lower == "unworked" and not apart
    of = any(item.kind == "of" for item in words[at + 2 : at + 3])  # "all sts of the sleeve"
    return told and bool(behind) and behind[0].kind == "any_stitch" and not of


def gap_closed(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes "closing the gap", "close both gaps at the turns" behind a run: no stitch more, for the run tells them."""
    words = stream.lexemes
    if words[start].lower not in _CLOSING or not steps:
        return False
    end = stream.next_of(*SIGNS, *OPENERS, *CLOSERS, "end", start=start)
    said = words[start + 1 : end]
    gaps = [item for item in said if item.lower in _GAPS]
    if len(gaps) != 1 or any(item.kind not in _WHERE and item.lower not in (*_WHERE_WORDS, *_GAPS) for item in said):
        return False  # "closing the gap with sc2tog", "close the gap by working 1 sc"
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


def without_over_all(words: list[Lexeme]) -> list[Lexeme]:
    """The words of a row without the "working over all sts," before its run, and the "all sts" of "across all sts"."""
    for at in range(len(words) - 2):
        kinds = [item.kind for item in words[at : at + 5]]
        ends = [*kinds[3:4], "end"][0] in (*SIGNS, ":", "end")
        if kinds[:3] in (["across", "all", "any_stitch"], ["around", "all", "any_stitch"]) and ends:
            return [*words[: at + 1], *words[at + 3 :]]
        said = [item.lower for item in words[at : at + 2]]
        opens = not at or words[at - 1].kind in (*SIGNS, ":")
        if opens and said[0] in ("work", "working") and kinds[1:2] in (["over"], ["across"]):
            if kinds[2:4] == ["all", "any_stitch"] and [*kinds[4:5], "end"][0] in (",", ":"):
                return [*words[:at], *words[at + 5 :]]
    return words
