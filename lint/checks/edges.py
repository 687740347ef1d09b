"""Edges that are joined to each other stitch for stitch, and do not have as many stitches."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from lint.checks.assembly import SEVERAL_NAMES, talk
from lint.checks.context import Context
from lint.checks.seams import goes_on, last_rows
from lint.expression import expression
from lint.finding import Finding, Related
from lint.ledger import Outcome
from lint.pattern import Part
from lint.reading.facts.assembly import sews, singular
from lint.source import Span

# words that say that every stitch of one edge meets one of the other
_STITCH_FOR_STITCH = expression(
    r"(?i)\b(?:match\w*\s+(?:the\s+|each\s+)?(?:sts?|stitch\w*)(?:\s+(?:for|by|to|one)\b)?|(?:st|stitch)[\s-]+(?:for|by|to)[\s-]+(?:st|stitch)|through\s+(?:each|every)\s+(?:pair\s+of\s+)?(?:sts?|stitch\w*)\s+of\s+both|through\s+corresponding\s+(?:sts|stitches))\b"
)
_CROCHETED = expression(
    r"(?i)\bthrough\s+(?:both|the\s+two)\s+(?:layers|thicknesses|pieces)\b|\b(?:sc|dc|sl st|ss|crochet)\b[^.]{0,200}\btogether\b"
)
_LAST_EDGE = expression(r"(?i)\b(?:last|final|top)\s+(?:rows?|rnds?|rounds?|edges?)\b")
_OTHER_EDGE = expression(
    r"(?i)\b(?:foundation|beginning|starting|first|bottom|lower|(?<!right )(?<!wrong )sides?|row[- ]ends?|armhole|neck|opening|eas(?:e|ing)|gather\w*|evenly|from|except|leav\w+|marker\w*|between)\b"
)
_TOGETHER = expression(
    r"(?i)\b(?:together|to\s+each\s+other|to\s+the\s+next|into\s+(?:strips|rows)|side\s+by\s+side)\b"
)
_OF_A_SIZE = expression(r"(?i)\b(?:half|quarter|small\w*|large\w*|big|little|mini|tiny|giant|cent(?:re|er)|border)\b")
_MOST_APART = 4  # stitches of a side: beyond them the motifs are of different sizes by design


def check_edges(context: Context) -> Iterator[Finding]:
    """joined-edges-differ: last rows that are joined stitch for stitch, and sides of motifs that are joined together."""
    spans = [span for span in talk(context) if _joins(context.source.slice(span))]
    for span in spans:
        yield from _last_edges(context, span)
    yield from _motifs(context, spans)


def _joins(sentence: str) -> bool:
    return sews(sentence) or _CROCHETED.search(sentence) is not None


def _last_edges(context: Context, span: Span) -> Iterator[Finding]:
    """Two pieces that one sentence names, joined along their last rows, or all round, stitch for stitch."""
    sentence = context.source.slice(span)
    if not _STITCH_FOR_STITCH.search(sentence) or _OTHER_EDGE.search(sentence):
        return
    named = [part for part in context.pattern.parts if part.rows and _is_named(part, sentence)]
    if len(named) != 2 or any(SEVERAL_NAMES.search(part.name) for part in named):
        return
    if any(goes_on(a, b) for a, b in zip(context.pattern.parts, context.pattern.parts[1:], strict=False) if a in named):
        return
    sizes = max(1, len(context.pattern.sizes))
    one, other = (last_rows(context, part, sizes) for part in named)
    if any(row is None for row in (*one, *other)):
        return
    in_rounds = all(row.kind == "round" for row in (*one, *other))
    if not in_rounds and not _LAST_EDGE.search(sentence):
        return  # which of its edges is meant?
    counts = [(one[size].cells[size].made.stitches, other[size].cells[size].made.stitches) for size in range(sizes)]
    unlike = [size for size, (a, b) in enumerate(counts) if a != b]
    if not unlike:
        return
    size = unlike[0]
    names = context.pattern.sizes if sizes > 1 else ()
    yield context.finding(
        "joined-edges-differ",
        span,
        sizes=tuple(names[size] for size in unlike) if len(unlike) < len(names) else (),
        one=f"{named[0].name} ends with {counts[size][0]} sts",
        other=f"{named[1].name} with {counts[size][1]}",
        size=f" in size {names[size]}" if names and len(unlike) < len(names) else "",
        related=tuple(
            Related(rows[size].span, f"the last row: {count} sts")
            for rows, count in zip((one, other), counts[size], strict=True)
        ),
    )


def _is_named(part: Part, sentence: str) -> bool:
    """Whether a sentence names a piece by all words of its heading."""
    words = expression(r"[a-z]+").findall(expression(r"\([^)]*\)").sub("", part.name).lower())
    said = {singular(word) for word in expression(r"[a-z]+").findall(sentence.lower())}
    return bool(words) and all(singular(word) in said for word in words)


def _motifs(context: Context, spans: list[Span]) -> Iterator[Finding]:
    """Motifs of one shape, all joined to each other, whose sides differ by a stitch or a few."""
    by_shape: dict[tuple[str, int], list[tuple[Part, int, Span]]] = {}
    for part in context.pattern.parts:
        words = expression(r"[a-z]+").findall(expression(r"\([^)]*\)").sub("", part.name).lower())
        last = _last_round(context, part)
        if last is None or _OF_A_SIZE.search(part.name) or SEVERAL_NAMES.search(part.name):
            continue
        noun = next((word for word in map(singular, reversed(words)) if len(word) > 2), "")
        sides, span = last
        by_shape.setdefault((noun, len(sides)), []).append((part, sides[0], span))
    for (noun, _), motifs in by_shape.items():
        joined = next((span for span in spans if _all_joined(context.source.slice(span), noun)), None)
        if joined is None:
            continue
        for (one, a, span), (other, b, other_span) in combinations(motifs, 2):
            if 0 < abs(a - b) <= _MOST_APART:
                yield context.finding(
                    "joined-edges-differ",
                    joined,
                    one=f"a side of {one.name} has {a} sts between its corners",
                    other=f"one of {other.name} {b}",
                    size="",
                    related=(Related(span, f"{a} sts a side"), Related(other_span, f"{b} sts a side")),
                )
                return


def _last_round(context: Context, part: Part) -> tuple[tuple[int, ...], Span] | None:
    """The sides of a motif's last round, all alike in every size; None where they are not, or not known."""
    rows = [row for row in context.ledger.rows if row.part is part]
    if not rows:
        return None
    found = {cell.made.sides if cell.made is not None else () for cell in rows[-1].cells}
    sides = next(iter(found))
    sure = all(cell.outcome is not Outcome.DIFFERS and not cell.misfits for cell in rows[-1].cells)
    if len(found) != 1 or len(set(sides)) != 1 or not sure:
        return None
    return sides, rows[-1].span


def _all_joined(sentence: str, noun: str) -> bool:
    """Whether all motifs of a noun are joined to each other: "sew the squares together", "join motifs together"."""
    said = [
        word for word in expression(r"[a-z]+").findall(sentence.lower()) if singular(word) in (noun, "motif", "block")
    ]
    return bool(_TOGETHER.search(sentence)) and any(singular(word) != word for word in said)
