"""The stitch diagram of one piece as SVG: every stitch by its chart symbol, standing on the place it was worked into."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from lint.pictures.layout import PlacedLayer, place
from lint.pictures.symbols import UNIT, chain_upright, chains_between, cup, dot, number, oval, upright
from lint.pictures.tracks import Point
from lint.source import Span
from lint.working.graph import Layer, Piece, Stitch

MOST_STITCHES = 2_000  # drawn one by one; beyond them a piece is drawn as an outline
_YARNS = 6  # colours of the style sheet
_MARGIN = 1.6


@dataclass(frozen=True, slots=True)
class Mark:
    """A note of the report and the words it is about, so that its stitches can be marked."""

    number: int
    row: str | None  # the label of the row it names
    span: Span


def diagram(piece: Piece, heights: dict[str, int], name: str, marks: Sequence[Mark] = ()) -> Markup:
    """An SVG element of its own; its colours hang on the page's style sheet (classes yarn-0 … yarn-5, halo, label, left)."""
    placed = place(piece, heights)
    yarns = _yarns(piece)
    body = [Markup("").join(_layer(placed, index, heights, yarns, marks)) for index in range(len(placed))]
    points = [point for layer in placed for point in layer.points] or [(0.0, 0.0)]
    left = number(min(x for x, _ in points) - _MARGIN)
    top = number(min(y for _, y in points) - _MARGIN)
    wide = number(max(x for x, _ in points) + _MARGIN) - left
    high = number(max(y for _, y in points) + _MARGIN) - top
    rows = sum(layer.layer.row is not None for layer in placed)
    sort = "rounds" if placed[-1].layer.circular else "rows"
    title = f"Stitch diagram of {name}: {rows} {sort if rows != 1 else sort[:-1]}"
    return Markup(
        '<svg class="diagram" role="img" viewBox="{} {} {} {}" style="--wide: {}" xmlns="http://www.w3.org/2000/svg">'
        "<title>{}</title>{}</svg>"
    ).format(left, top, wide, high, round(wide / UNIT, 1), title, Markup("").join(body))


def _yarns(piece: Piece) -> dict[str, int]:
    """The yarns named, each with its colour's number."""
    names: dict[str, int] = {}
    for layer in piece.layers:
        for stitch in layer.stitches:
            if stitch.yarn is not None and stitch.yarn not in names:
                names[stitch.yarn] = len(names) % _YARNS
    return names


def yarns_shown(piece: Piece) -> tuple[tuple[str, int], ...]:
    """The yarns of a piece with the number of their colour, where there are several to be told apart."""
    names = _yarns(piece)
    return tuple(names.items()) if len(names) > 1 else ()


def _layer(placed, index, heights, yarns, marks):
    one: PlacedLayer = placed[index]
    strokes: dict[int, list[str]] = {}
    dots: dict[int, list[str]] = {}
    on = [mark for mark in marks if _is_on(mark, one.layer, placed[:index])]
    halo: list[str] = []
    for at, stitch in enumerate(one.layer.stitches):
        colour = yarns.get(stitch.yarn, 0) if stitch.yarn else 0
        path = _stitch(placed, index, at, heights)
        if not path:
            continue
        (dots if stitch.kind == "sl st" else strokes).setdefault(colour, []).append(path)
        if any(_made_by(stitch, mark, one.layer) for mark in on):
            halo.append(path)
    yield Markup("<g>")
    if one.layer.label and one.layer.row is not None:
        counted = sum(stitch.kind not in ("space", "ch", "ring", "sl st") for stitch in one.layer.stitches)
        yield Markup("<title>{}: {} {}</title>").format(
            one.layer.label, counted, "stitch" if counted == 1 else "stitches"
        )
    if halo:
        yield Markup('<path class="halo" d="{}"/>').format("".join(halo))
    for colour, paths in strokes.items():
        yield Markup('<path class="yarn-{}" d="{}"/>').format(colour, "".join(paths))
    for colour, paths in dots.items():
        yield Markup('<path class="yarn-{} dots" d="{}"/>').format(colour, "".join(paths))
    for layer, at in one.layer.left:
        x, y = placed[layer].points[at]
        yield Markup('<circle class="left" cx="{}" cy="{}" r="{}"/>').format(number(x), number(y), number(0.4))
    yield from _label(one, on)
    yield Markup("</g>")


def _label(one: PlacedLayer, on: list[Mark]):
    """The row's number where it begins, and the numbers of the notes on it."""
    if one.layer.row is None or not one.points:
        return
    first, second = one.along[0], one.along[min(1, len(one.along) - 1)]
    back = first - (0.9 if second >= first else -0.9)
    x, y = one.track.at(back)
    figures = "".join(c for c in one.layer.label if c.isdigit())
    noted = " ".join(f"({mark.number})" for mark in on)
    words = " ".join(part for part in (figures, noted) if part)
    if words:
        yield Markup('<text class="label{}" x="{}" y="{}">{}</text>').format(
            " noted" if on else "", number(x), number(y + 0.22), words
        )


def _is_on(mark: Mark, layer: Layer, before: Sequence[PlacedLayer]) -> bool:
    """Whether a note is on a row: on the one that it names, else on the first that comes from its words."""
    row = layer.row
    if row is None or not row.span.start <= mark.span.start < max(row.span.end, row.span.start + 1):
        return False
    if mark.row is not None and mark.row == layer.label:
        return True
    named = mark.row is not None and mark.row != layer.label and layer.label.startswith(mark.row)
    return named or not any(other.layer.row is row for other in before)


def _made_by(stitch: Stitch, mark: Mark, layer: Layer) -> bool:
    """Whether the words of a note made a stitch; words that made none, as a printed count, speak of the whole row."""
    if any(_overlap(other.words, mark.span) for other in layer.stitches):
        return _overlap(stitch.words, mark.span)
    return True


def _overlap(a: Span | None, b: Span) -> bool:
    return a is not None and a.start < b.end and b.start < a.end


def _stitch(placed, index: int, at: int, heights: dict[str, int]) -> str:
    """The strokes of one stitch."""
    one: PlacedLayer = placed[index]
    stitch, top = one.layer.stitches[at], one.points[at]
    if stitch.kind == "ring":
        radius = number(one.track.length / (6.2832 if one.track.closed else 3.1416))
        return (
            f"M{-radius} 0a{radius} {radius} 0 1 0 {2 * radius} 0a{radius} {radius} 0 1 0 {-2 * radius} 0"
            if at == 0
            else ""
        )
    if stitch.kind == "ch":
        return oval(top, _sideways(one.outward(at)))
    if stitch.kind == "space":
        return _space(one, at, stitch)
    if stitch.kind == "sl st":
        return dot(top)
    height = heights.get(
        stitch.kind, heights.get(stitch.kind.removeprefix("fp").removeprefix("bp").removeprefix("f"), 3)
    )
    bases = [_foot(placed, parent, top) for parent in stitch.parents]
    if not bases:
        out = one.outward(at)
        bases = [(top[0] - out[0] * 1.2, top[1] - out[1] * 1.2)]
    if stitch.chain:
        return chain_upright(bases[0], top, stitch.chain)
    path = upright(stitch.kind, height, bases, top, stitch.special if stitch.kind not in heights else None)
    if stitch.loop:
        path += cup(bases[0], one.outward(at), stitch.loop)
    return path


def _foot(placed, parent: tuple[int, int], top: Point) -> Point:
    """Where a stitch stands: a little above the place that it was worked into."""
    layer, at = parent
    below: PlacedLayer = placed[layer]
    base = below.points[at]
    if below.layer.stitches[at].kind == "ring":
        radius = below.track.length / (6.2832 if below.track.closed else 3.1416)
        size = (top[0] ** 2 + top[1] ** 2) ** 0.5 or 1.0
        return top[0] / size * radius, top[1] / size * radius
    size = ((top[0] - base[0]) ** 2 + (top[1] - base[1]) ** 2) ** 0.5 or 1.0
    return base[0] + (top[0] - base[0]) * min(0.18 / size, 0.4), base[1] + (top[1] - base[1]) * min(0.18 / size, 0.4)


def _space(one: PlacedLayer, at: int, stitch: Stitch) -> str:
    number_of = len(one.points)
    before, after = one.points[at - 1], one.points[(at + 1) % number_of]
    if not one.layer.circular and at in (0, number_of - 1):
        inner = one.points[1] if at == 0 and number_of > 1 else before
        here = one.points[at]
        outer = (2 * here[0] - inner[0], 2 * here[1] - inner[1])
        before, after = (outer, inner) if at == 0 else (inner, outer)
    out = one.outward(at)
    lift = min(1.0, 0.12 * stitch.length)
    x, y = one.points[at]
    return chains_between(before, after, (x + out[0] * lift, y + out[1] * lift), stitch.length)


def _sideways(outward: Point) -> Point:
    return -outward[1], outward[0]
