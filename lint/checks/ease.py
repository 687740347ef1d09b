"""Ease: what the finished garment measures beyond the body it is to fit, against what the pattern says of it."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.reading.measures import Length, read_lengths, read_pairs
from lint.source import Span

_BODY = regex.compile(r"(?i)\b(?:to fit|fits|actual body|body)\b")
_FINISHED = regex.compile(r"(?i)\b(?:finished|garment|actual)\b")
_GIRTH = regex.compile(r"(?i)\b(?P<what>bust|chest|hips?|waist|head)\b")
_EASE = regex.compile(r"(?i)\b(?:ease|positive|negative)\b")
_NEGATIVE = regex.compile(r"(?i)\bnegative\b")


def check_ease(context: Context) -> Iterator[Finding]:
    """ease-disagrees: 'worn with 2 in of ease' where the finished chest is 4 in beyond the body's in one size or all."""
    text, sizes = context.source.text, context.pattern.sizes
    lengths = read_lengths(text, max(1, len(sizes)))
    converted = {pair.second.span for pair in read_pairs(text, lengths)}
    own = [one for one in lengths if one.span not in converted and len(one.sides) == 1]
    stated = [one for one in own if len(one.sides[0]) == 1 and _EASE.search(_around(text, one.span))]
    lists = [
        one for one in own if len(one.sides[0]) == max(1, len(sizes)) and not _EASE.search(_around(text, one.span))
    ]
    if len(stated) != 1 or not stated[0].sides[0][0].value:
        return
    body, finished = _girths(text, lists, _BODY), _girths(text, lists, _FINISHED)
    what = next(iter(body.keys() & finished.keys()), None)
    if what is None or len(body) != 1 or len(body[what]) != 1 or len(finished.get(what, ())) != 1:
        return  # which of several is meant is not for a program to say
    (fits,), (made,) = body[what], finished[what]
    ease = stated[0]
    sign = -1 if _NEGATIVE.search(_around(text, ease.span)) else 1
    told = sign * ease.in_cm(ease.sides[0][0].value or 0)
    tolerance = context.book.materials.tolerances.measurement
    out = []
    for index, (one, other) in enumerate(zip(fits.sides[0], made.sides[0], strict=True)):
        if one.value is None or other.value is None:
            continue
        there = made.in_cm(other.value) - fits.in_cm(one.value)
        if abs(there - told) > 2 * tolerance.cm:  # two measures, each rounded
            out.append((index, there))
    if not out:
        return
    index, there = out[0]
    unit = 2.54 if ease.unit == "in" else 1.0
    some = len(out) < len(made.sides[0])
    yield context.finding_at(
        "ease-disagrees",
        made.sides[0][index].span if some else ease.span,
        sizes=tuple(sizes[at] for at, _ in out) if some and len(sizes) > 1 else (),
        expected=f"{told / unit:g} {ease.unit}",
        found=f"{round(there / unit, 1):g} {ease.unit}",
        related=(
            Related(fits.sides[0][index].span, "the body that it is to fit"),
            Related(ease.span if some else made.sides[0][index].span, "the ease" if some else "the finished size"),
        ),
        what=what,
    )


def _girths(text: str, lists: list[Length], words: regex.Pattern) -> dict[str, list[Length]]:
    """The measures round a part of the body that are told with such words, by that part."""
    found: dict[str, list[Length]] = {}
    for one in lists:
        before = _around(text, one.span, behind=0)
        girth = _GIRTH.search(before)
        other = _BODY if words is _FINISHED else _FINISHED
        if girth and words.search(before) and not other.search(before):
            found.setdefault(girth["what"].lower().rstrip("s"), []).append(one)
    return found


def _around(text: str, span: Span, behind: int = 40) -> str:
    """The words of a measure's own line, up to it and a little beyond."""
    start = max(text.rfind("\n", 0, span.start) + 1, max(text.rfind(sign, 0, span.start) + 1 for sign in ";."))
    end = text.find("\n", span.end)
    end = min(end if end >= 0 else len(text), span.end + behind)
    return text[start : span.start] + regex.split(r"[;.\n]", text[span.end : end])[0]
