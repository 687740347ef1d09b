"""The assembly as a plan: motifs laid out in their rows, hexagons set half a motif to the side of each other."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import cos, radians, sin

from markupsafe import Markup

from lint.pictures.symbols import number
from lint.pictures.tracks import Point
from lint.reading.facts.layouts import LaidMotif, Layout

_HEXAGON = tuple((cos(radians(60 * k + 30)) / 3**0.5, sin(radians(60 * k + 30)) / 3**0.5) for k in range(6))  # 1 wide
_SQUARE = ((0.5, -0.5), (0.5, 0.5), (-0.5, 0.5), (-0.5, -0.5))


@dataclass(frozen=True, slots=True)
class Motif:
    """A motif of the pattern as it is joined: its corners, and the stitches of each side."""

    noun: str
    half: bool
    corners: int
    sides: tuple[int, ...]


def plan(layout: Layout, motifs: tuple[Motif, ...], name: str) -> Markup:
    """An SVG element; colours hang on the page's style sheet (classes motif, other, label)."""
    by_name = {(motif.noun, motif.half): motif for motif in motifs}
    nouns = list(dict.fromkeys((motif.noun, motif.half) for row in layout.rows for motif in row))
    body, points = [], []
    middles = _middles(layout, by_name)
    for y, row in zip(middles, layout.rows, strict=True):
        six = any(_corners(motif, by_name) == 6 for motif in row)
        x = -_wide(row) / 2
        for at, motif in enumerate(row):
            width = 0.5 if motif.half else 1.0
            kind = nouns.index((motif.noun, motif.half)) % 4
            for _ in range(motif.number):
                shape = _shape(six, motif.half, at < len(row) / 2)
                placed = [(px + x + (width / 2 if not motif.half else _middle(at, row)), py + y) for px, py in shape]
                points += placed
                path = "L".join(f"{number(px)} {number(py)}" for px, py in placed)
                body.append(Markup('<path class="motif motif-{}" d="M{}z"/>').format(kind, path))
                x += width
    left, top = min(px for px, _ in points) - 0.9, min(py for _, py in points) - 0.2
    wide, high = max(px for px, _ in points) + 0.2 - left, max(py for _, py in points) + 0.2 - top
    for index in range(len(layout.rows)):
        body.append(
            Markup('<text class="label" x="{}" y="{}">{}</text>').format(
                number(left + 0.4), number(middles[index] + 0.08), index + 1
            )
        )
    return Markup(
        '<svg class="plan" role="img" viewBox="{} {} {} {}" style="--wide: {}" xmlns="http://www.w3.org/2000/svg"><title>{}</title>{}</svg>'
    ).format(
        number(left),
        number(top),
        number(wide),
        number(high),
        round(wide, 1),
        f"Layout of {name}",
        Markup("").join(body),
    )


def edges(layout: Layout, motifs: tuple[Motif, ...]) -> tuple[str, ...]:
    """What the sides that meet have, in words: one line for each motif whose sides are known."""
    used = {(motif.noun, motif.half) for row in layout.rows for motif in row}
    lines = []
    for motif in motifs:
        if (motif.noun, motif.half) in used and motif.sides:
            each = sorted(set(motif.sides))
            name = f"half {motif.noun}" if motif.half else motif.noun
            counts = str(each[0]) if len(each) == 1 else " and ".join(map(str, each))
            lines.append(f"Each side of the {name} has {counts} sts between its corners.")
    return tuple(dict.fromkeys(lines))


def interlocks(layout: Layout, motifs: tuple[Motif, ...]) -> bool:
    """Whether hexagons lie between those of the next row wherever two rows of them meet; True of squares."""
    by_name = {(motif.noun, motif.half): motif for motif in motifs}
    return all(_fit(a, b) for a, b in pairwise(layout.rows) if _six(a, by_name) and _six(b, by_name))


def _middles(layout: Layout, by_name: dict[tuple[str, bool], Motif]) -> list[float]:
    """How far down the middle of each row lies; hexagons that interlock lie closer."""
    found = [0.0]
    for a, b in pairwise(layout.rows):
        six = _six(a, by_name) or _six(b, by_name)
        found.append(found[-1] + (1.0 if not six else 3**0.5 / 2 if _fit(a, b) else 2 / 3**0.5))
    return found


def _six(row: tuple[LaidMotif, ...], by_name: dict[tuple[str, bool], Motif]) -> bool:
    return any(_corners(motif, by_name) == 6 for motif in row)


def _fit(a: tuple[LaidMotif, ...], b: tuple[LaidMotif, ...]) -> bool:
    """Whether the whole motifs of two rows lie half a motif to the side of each other."""
    first, second = ((_wide(row) / 2 - (0.5 if row[0].half else 0.0)) % 1 for row in (a, b))
    return first != second


def _corners(motif: LaidMotif, by_name: dict[tuple[str, bool], Motif]) -> int:
    known = by_name.get((motif.noun, False)) or by_name.get((motif.noun, motif.half))
    if known is not None and known.corners:
        return known.corners
    return 6 if "hex" in motif.noun else 4


def _wide(row: tuple[LaidMotif, ...]) -> float:
    return sum(motif.number * (0.5 if motif.half else 1.0) for motif in row)


def _middle(at: int, row: tuple[LaidMotif, ...]) -> float:
    """Where the cut edge of a half lies in its place: to the outside."""
    return 0.0 if at < len(row) / 2 else 0.5


def _shape(six: bool, half: bool, left_end: bool) -> tuple[Point, ...]:
    """A motif round its middle; half of one lies with its cut edge to the outside."""
    if not half:
        return _HEXAGON if six else _SQUARE
    whole = _HEXAGON if six else _SQUARE
    tall = max(y for _, y in whole)
    cut = [(0.0, tall), (0.0, -tall)]
    if left_end:  # what remains of the right half
        side = [(x, y) for x, y in whole if x > 0.01]
        return tuple(
            sorted(((0.0, -tall), *side, (0.0, tall)), key=lambda p: (p[1], p[0]))
            if six
            else ((0.0, -0.5), (0.5, -0.5), (0.5, 0.5), (0.0, 0.5))
        )
    side = [(x, y) for x, y in whole if x < -0.01]
    return tuple(
        sorted((*cut, *side), key=lambda p: (p[1], -p[0]))
        if six
        else ((0.0, -0.5), (-0.5, -0.5), (-0.5, 0.5), (0.0, 0.5))
    )
