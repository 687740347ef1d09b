"""Ease: what the finished garment measures beyond the body it is to fit, against what the pattern says of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from lint.checks.context import Context
from lint.checks.lines import FIRST, stray
from lint.expression import Expression, expression
from lint.finding import Finding, Related
from lint.reading.facts.measures import CM_IN_AN_INCH, Length, read_lengths, read_pairs
from lint.reading.sizes.audience import canonical
from lint.source import Span

_BODY = expression(r"(?i)\b(?:to fit|fits|actual body|body)\b")
_FINISHED = expression(r"(?i)\b(?:finished|garment|actual)\b")
_GIRTH = expression(r"(?i)\b(?P<what>bust|chest|hips?|waist|head)\b")
_MOST_WORDS = 300  # characters before a measure that tell what it is of
_EASE = expression(r"(?i)\b(?:ease|positive|negative)\b")
_ENDS = expression(r"[;\n]|\.(?!\d)")
_SIZE_TOLD = expression(r"(?i)\b(?:in|a|wears?(?:\s+a)?)\s+size\s+(?P<name>[\w./-]{1,12})")
_NEGATIVE = expression(r"(?i)\bnegative\b")


def check_ease(context: Context) -> Iterator[Finding]:
    """ease-disagrees: 'worn with 2 in of ease' where the finished chest is 4 in beyond the body's in one size or all."""
    text, sizes = context.source.text, context.pattern.sizes
    lengths = read_lengths(text, max(1, len(sizes)))
    converted = {pair.second.span for pair in read_pairs(text, lengths)}
    own = [one for one in lengths if one.span not in converted and len(one.sides) == 1]
    of_ease = {one.span for one in own if _EASE.search(_around(text, one.span))}
    stated = [one for one in own if len(one.sides[0]) == 1 and one.span in of_ease]
    lists = [one for one in own if len(one.sides[0]) == max(1, len(sizes)) and one.span not in of_ease]
    heads = [section for section in context.pattern.sections if section.key == "size"]
    of_garment = [one.span for one in heads if _FINISHED.search(_heading(text, one.heading))]
    body, finished = _girths(text, lists, _BODY), _girths(text, lists, _FINISHED, of_garment)
    what = next(iter(body.keys() & finished.keys()), None)
    if what is None or len(body) != 1 or len(body[what]) != 1 or len(finished.get(what, ())) != 1:
        return  # which of several is meant is not for a program to say
    (fits,), (made,) = body[what], finished[what]
    there = {
        index: made.in_cm(other.value) - fits.in_cm(one.value)
        for index, (one, other) in enumerate(zip(fits.sides[0], made.sides[0], strict=True))
        if one.value is not None and other.value is not None
    }
    if len(stated) == 1 and stated[0].sides[0][0].value:
        told = _SIZE_TOLD.search(_around(text, stated[0].span))  # "shown in size M with 2 in of ease": said of that one
        shown = [at for at, name in enumerate(sizes) if told is not None and canonical(name) == canonical(told["name"])]
        there = {at: one for at, one in there.items() if at in shown} if shown else there
        yield from _against_words(context, what, fits, made, there, stated[0])
    elif not stated:
        yield from _against_others(context, what, fits, made, there)


def _against_words(
    context: Context, what: str, fits: Length, made: Length, there: dict[int, float], ease: Length
) -> Iterator[Finding]:
    """The ease that is told against that of the figures."""
    sizes = context.pattern.sizes
    sign = -1 if _NEGATIVE.search(_around(context.source.text, ease.span)) else 1
    told = sign * ease.in_cm(ease.sides[0][0].value or 0)
    tolerance = context.book.materials.tolerances.measurement
    out = [index for index, one in there.items() if abs(one - told) > 2 * tolerance.cm]  # two measures, each rounded
    if not out:
        return
    some = len(out) < len(made.sides[0])
    yield context.finding_at(
        "ease-disagrees",
        made.sides[0][out[0]].span if some else ease.span,
        sizes=tuple(sizes[at] for at in out) if some and len(sizes) > 1 else (),
        expected=_in(ease.unit, told),
        found=_in(ease.unit, there[out[0]]),
        related=(
            Related(fits.sides[0][out[0]].span, "the body that it is to fit"),
            Related(ease.span if some else made.sides[0][out[0]].span, "the ease" if some else "the finished size"),
        ),
        told="is said to be",
        what=what,
    )


def _against_others(
    context: Context, what: str, fits: Length, made: Length, there: dict[int, float]
) -> Iterator[Finding]:
    """The one size that has another ease than all the others, where nothing is said of it."""
    tolerance = context.book.materials.tolerances.measurement
    sizes = context.pattern.sizes
    if len(there) < FIRST or len(sizes) < FIRST:
        return
    for index, one in there.items():
        others = [other for at, other in there.items() if at != index]
        middle = sum(others) / len(others)
        if max(others) - min(others) > tolerance.cm or abs(one - middle) <= 2 * tolerance.cm:
            continue
        factor = 1.0 if made.unit == "in" else CM_IN_AN_INCH
        values = [figure.value for figure in made.sides[0]]
        broken = stray(values, 0.3 * factor, 1.25 * factor)
        if broken is None or broken.index != index:  # else the step says it
            yield context.finding_at(
                "ease-disagrees",
                made.sides[0][index].span,
                sizes=(sizes[index],),
                expected=_in(made.unit, middle),
                found=_in(made.unit, one),
                related=(Related(fits.sides[0][index].span, "the body that it is to fit"),),
                told="in the other sizes is",
                what=what,
            )
        return


def _in(unit: str, cm: float) -> str:
    return f"{round(cm / (CM_IN_AN_INCH if unit == 'in' else 1.0), 1):g} {unit}"


def _heading(text: str, heading: Span) -> str:
    """A section's heading, with the line right above it: "FINISHED MEASUREMENTS" over "Bust: …"."""
    above = text.rfind("\n", 0, max(0, text.rfind("\n", 0, heading.start)))
    return text[above + 1 : heading.end]


def _girths(
    text: str, lists: list[Length], words: Expression, sections: Sequence[Span] = ()
) -> dict[str, list[Length]]:
    """The measures round a part of the body that are told with such words, or in such sections, by that part."""
    found: dict[str, list[Length]] = {}
    for one in lists:
        before = _around(text, one.span, behind=0)
        girth = _GIRTH.search(before)
        other = _BODY if words is _FINISHED else _FINISHED
        under = any(section.start <= one.span.start < section.end for section in sections)
        if girth and (under or words.search(before)) and not other.search(before):
            found.setdefault(girth["what"].lower().rstrip("s"), []).append(one)
    return found


def _around(text: str, span: Span, behind: int = 40) -> str:
    """The words of a measure's own line, up to it and a little beyond."""
    start = max(0, span.start - _MOST_WORDS)
    start = max(start, *(text.rfind(sign, start, span.start) + 1 for sign in "\n;."))
    end = text.find("\n", span.end)
    end = min(end if end >= 0 else len(text), span.end + behind)
    after = text[span.end : end].removeprefix(".")  # "4 in. of ease"
    return text[start : span.start] + _ENDS.split(after, 1)[0]
