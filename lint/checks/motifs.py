"""Motifs of a size, laid out side by side, against the finished size of the whole."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.checks.assembly import talk
from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Related
from lint.reading.facts.assembly import laid_out, singular
from lint.reading.facts.gauge import gauge_zones
from lint.reading.facts.measures import Length, in_unit, read_lengths, read_pairs
from lint.source import Span

_GENERIC = frozenset({"square", "motif", "block"})
_ROUND_IT = expression(
    r"(?i)\b(?:border|edging|edge|fringe|tassels?|trim|sashing|join(?:ed|ing)? (?:row|round|rnd)s?)\b"
)
_SAID = (
    r"\b(?P<noun>[a-z]+)(?:\s*[=:]|\s+(?:is|are|measures?|measuring|equals|to)\b)?\s*(?:(?:about|approx\w*\.?|=)\s*)*$"
)
_BORDER = 30.0  # cm: no border makes a throw wider by more


def check_motifs(context: Context) -> Iterator[Finding]:
    """gauge-disagrees: six squares of 5 inches are 30 inches, not 36; rounds 1-3 of 5 inches are no mat of 4."""
    text = context.source.text
    if len(context.pattern.sizes) > 1:
        return
    lengths = read_lengths(text, 1)
    converted = {pair.second.span for pair in read_pairs(text, lengths)}
    own = [length for length in lengths if length.span not in converted]
    yield from _laid(context, own)
    yield from _first_rounds(context, own)


def _laid(context: Context, lengths: list[Length]) -> Iterator[Finding]:
    """So many motifs beside each other against the whole."""
    text = context.source.text
    named = [
        expression(r"[a-z]+").findall(expression(r"\([^)]*\)").sub("", part.name).lower())
        for part in context.pattern.parts
    ]
    nouns = _GENERIC | {singular(words[-1]) for words in named if words}
    layouts = [one for span in talk(context) if (one := laid_out(text, span, nouns)) is not None]
    motif, whole = _motif(context, lengths, nouns), _whole(context, lengths)
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
        gauge=f"{in_unit(motif.unit, side)} each",
        across=way,
        expected=in_unit(whole.unit, number * side),
        found=in_unit(whole.unit, said),
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
        said = expression(rf"(?i){_SAID}").search(expression(r"[;.]\s").split(before)[-1])
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


# the first rounds of one motif ---------------------------------------------------------------------------------

_ROUNDS = expression(
    r"(?i)\b(?:(?:rnds?|rounds?)\s*1\s*(?:-|–|to|through|thru)\s*(?P<last>\d{1,2})|first\s+(?P<last>\d{1,2})\s+(?:rnds?|rounds?)|after\s+(?:rnd|round)\s*(?P<last>\d{1,2}))\b[^.;\n\d]{0,40}$"
)
_ACROSS = expression(r"(?i)\b(?:across|diameter|wide|width|square)\b")


def _first_rounds(context: Context, lengths: list[Length]) -> Iterator[Finding]:
    """ "Rnds 1-3 = 3 in": as wide as the whole where these are all its rounds, and less wide where there are more."""
    text = context.source.text
    rounds = [row for row in context.ledger.rows if row.kind != "foundation"]
    if (
        not rounds
        or len({id(row.part) for row in rounds}) != 1
        or any(row.kind != "round" or row.open for row in rounds)
    ):
        return
    zones = {
        key: [section.span for section in context.pattern.sections if section.key == key] for key in ("gauge", "size")
    }
    swatch = [
        (one, int(said["last"]))
        for one in lengths
        if _inside(one, zones["gauge"]) and (said := _rounds_before(text, one))
    ]
    whole = [
        one
        for one in lengths
        if _inside(one, zones["size"]) and _ACROSS.search(text[one.span.end : one.span.end + 40].split("\n")[0])
    ]
    if len(swatch) != 1 or len(whole) != 1 or swatch[0][1] > len(rounds):
        return
    (first, number), (finished,) = swatch[0], whole
    there, said = (one.in_cm(one.sides[0][0].value or 0) for one in (first, finished))
    tolerance = context.book.materials.tolerances.gauge
    if not there or not said or (tolerance.allows(there, said) if number == len(rounds) else there < said):
        return
    yield context.finding(
        "gauge-disagrees",
        first.span,
        count=f"All {number} rounds" if number == len(rounds) else f"The first {number} of {len(rounds)} rounds",
        gauge="the gauge",
        across="across",
        expected=in_unit(first.unit, there),
        found=in_unit(finished.unit, said),
        where="",
        related=(
            Related(finished.span, "the finished size"),
            Related(rounds[number - 1].span, "the last of these rounds"),
        ),
    )


def _inside(length: Length, zones: list[Span]) -> bool:
    return any(zone.start <= length.span.start < zone.end for zone in zones) and len(length.sides[0]) == 1


def _rounds_before(text: str, length: Length) -> regex.Match | None:
    line = text[text.rfind("\n", 0, length.span.start) + 1 : length.span.start]
    return _ROUNDS.search(line)
