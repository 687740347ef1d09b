"""Motifs of a size, laid out side by side, against the finished size of the whole."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.checks.assembly import talk
from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.reading.assembly import laid_out, singular
from lint.reading.gauge import gauge_zones
from lint.reading.measures import CM_IN_AN_INCH, Length, inches, read_lengths, read_pairs

_GENERIC = frozenset({"square", "motif", "block"})
_ROUND_IT = regex.compile(
    r"(?i)\b(?:border|edging|edge|fringe|tassels?|trim|sashing|join(?:ed|ing)? (?:row|round|rnd)s?)\b"
)
_SAID = (
    r"\b(?P<noun>[a-z]+)(?:\s*[=:]|\s+(?:is|are|measures?|measuring|equals|to)\b)?\s*(?:(?:about|approx\w*\.?|=)\s*)*$"
)
_BORDER = 30.0  # cm: no border makes a throw wider by more


def check_motifs(context: Context) -> Iterator[Finding]:
    """gauge-disagrees: six squares of 5 inches are 30 inches, not 36."""
    text = context.source.text
    if len(context.pattern.sizes) > 1:
        return
    named = [regex.findall(r"[a-z]+", regex.sub(r"\([^)]*\)", "", part.name).lower()) for part in context.pattern.parts]
    nouns = _GENERIC | {singular(words[-1]) for words in named if words}
    lengths = read_lengths(text, 1)
    converted = {pair.second.span for pair in read_pairs(text, lengths)}
    own = [length for length in lengths if length.span not in converted]
    layouts = [one for span in talk(context) if (one := laid_out(text, span, nouns)) is not None]
    motif = _motif(context, own, nouns)
    whole = _whole(context, own)
    if motif is None or whole is None or len(layouts) != 1 or len(set(layouts[0].rows)) != 1:
        return
    side = motif.in_cm(motif.sides[0][0].value or 0)
    across, down = layouts[0].rows[0], len(layouts[0].rows)
    printed = [whole.in_cm(one[0].value or 0) for one in whole.sides]
    more = _BORDER if _ROUND_IT.search(text) else 0.0
    off = [
        [(number, said, way) for number, said, way in zip(pair, printed, ways, strict=True)
         if not _allows(context, said, number * side, more)]
        for pair, ways in (((across, down), ("wide", "long")), ((down, across), ("long", "wide")))
    ]  # fmt: skip
    if not all(off):
        return  # one way round or the other it comes out
    number, said, way = min(off, key=lambda ones: (len(ones), sum(abs(n * side - one) for n, one, _ in ones)))[0]
    yield context.finding(
        "gauge-disagrees",
        whole.span,
        count=f"{number} motifs",
        gauge=f"{_in(motif.unit, side)} each",
        across=way,
        expected=_in(whole.unit, number * side),
        found=_in(whole.unit, said),
        where="",
        related=(Related(motif.span, "one motif"), Related(layouts[0].span, "so many are laid out")),
    )


def _motif(context: Context, lengths: list[Length], nouns: frozenset[str]) -> Length | None:
    """The one measure of a motif that the gauge tells: "One square = 5 in", "5 in square" for a square."""
    text = context.source.text
    zones = gauge_zones(
        text, (section.span for section in context.pattern.sections if section.key in ("gauge", "size"))
    )
    found: list[Length] = []
    for length in lengths:
        if not any(zone.start <= length.span.start < zone.end for zone in zones):
            continue
        before = text[text.rfind("\n", 0, length.span.start) + 1 : length.span.start]
        said = regex.search(rf"(?i){_SAID}", regex.split(r"[;.]\s", before)[-1])
        sides = {side[0].value for side in length.sides}
        if said is not None and singular(said["noun"]) in nouns and len(sides) == 1 and None not in sides:
            found.append(length)
    return found[0] if len(found) == 1 else None


def _whole(context: Context, lengths: list[Length]) -> Length | None:
    """The one measure with two sides in the finished size."""
    zones = [section.span for section in context.pattern.sections if section.key == "size"]
    found = [
        length
        for length in lengths
        if len(length.sides) == 2
        and all(len(side) == 1 and side[0].value for side in length.sides)
        and any(zone.start <= length.span.start < zone.end for zone in zones)
    ]
    return found[0] if len(found) == 1 else None


def _allows(context: Context, printed: float, laid: float, more: float) -> bool:
    """Whether a printed side is that of the motifs, or as much longer as a border makes it."""
    return context.book.materials.tolerances.gauge.allows(printed, laid) or laid < printed <= laid + more


def _in(unit: str, cm: float) -> str:
    return f"{inches(cm / CM_IN_AN_INCH)} in" if unit == "in" else f"{round(cm * 2) / 2:g} cm"
