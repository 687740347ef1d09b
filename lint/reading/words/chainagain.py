"""A row that is worked once more along its chain: "Sc in 2nd ch from hook and in each ch across (12). Repeat on the other side of the ch"."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS

_CALLS = ("repeat on the other", "rep on the other")
_ENDS = (".", ",", ";", "turn", "join", "end", *OPENERS, *CLOSERS)
# "Sc in 2nd ch from hook and in each (rem) ch across", "From the 2nd ch: 12 sc": a stitch in each chain there is
_RUNS = (
    ["stitch", "in", "ordinal", "chain", "from", "hook", "and", "in", "each", "chain", "across"],
    ["stitch", "in", "ordinal", "chain", "from", "hook", "and", "each", "chain", "across"],
    ["from", "ordinal", "chain", ":", "number", "stitch"],
)


def again_along_chain(words: list[Lexeme]) -> list[Lexeme]:
    """The words of such a row with the second half told as the first is; a row that does more than that is left as it is."""
    called = next(((at, end) for at in range(len(words)) if (end := _call_end(words, at))), None)
    if called is None:
        return words
    at, end = called
    body = words[:at]
    while body and body[-1].kind in (".", ",", ";"):
        body = body[:-1]
    whole, body = body, _without_count(body)
    while body and body[-1].kind in (".", ",", ";"):
        body = body[:-1]
    number = next(
        (item for item in reversed(whole) if item.kind == "number"), None
    )  # else 23 or 24 on both sides of 12
    if number is None or [item.kind for item in body if item.kind not in ("the", "remaining")] not in _RUNS:
        return words
    stitch, call = next(item for item in body if item.kind == "stitch"), words[at]
    told = (("across", "along"), ("other_side", "other side of"), ("chain", "ch"), (",", ","))
    run = (("in", "in"), ("next", "next"), ("number", number.text), ("chain", "ch"))
    first, second = (
        replace(call, end=call.start + 1),
        replace(call, start=call.start + 2),
    )  # no step lies over another's words
    along = [replace(first, kind=kind, text=text) for kind, text in ((",", ","), *told)]
    again = [replace(second, kind=kind, text=text) for kind, text in run]
    again[2] = replace(number, start=second.start, end=second.end)
    return [*body, *along, replace(stitch, start=second.start, end=second.end), *again, *words[end:]]


def _call_end(words: list[Lexeme], at: int) -> int:
    """The index behind "Repeat on the other side (of the ch)" at an index; 0 where other words stand there."""
    kinds = [item.kind for item in words[at : at + 4]]
    if words[at].lower in _CALLS and kinds[1:2] == ["side"]:
        end, of = at + 2, kinds[2:3] == ["of"]
        end += of
    elif kinds[:1] == ["repeat"] and kinds[1:2] in (["in"], ["across"]):
        end = at + 2 + (kinds[2:3] == ["the"])
        if [item.kind for item in words[end : end + 1]] != ["other_side"]:
            return 0
        of = words[end].lower.endswith(" of")
        end += 1
    else:
        return 0
    if of:
        end += words[end].kind == "the" if end < len(words) else 0
        end += words[end].kind == "beginning" if end < len(words) else 0
        if end >= len(words) or words[end].kind not in ("chain", "foundation"):
            return 0
        end += 1
    return end if end >= len(words) or words[end].kind in _ENDS else 0


def _without_count(words: list[Lexeme]) -> list[Lexeme]:
    """The words without the bracket at their end that holds a count of the first half."""
    if not words or words[-1].kind not in CLOSERS:
        return words
    opened = max((at for at, item in enumerate(words) if item.kind in OPENERS), default=0)
    inside = [item.kind for item in words[opened + 1 : -1]]
    counted = inside[:1] == ["number"] and inside[1:] in ([], ["stitch"], ["any_stitch"])
    return words[:opened] if counted and opened else words
