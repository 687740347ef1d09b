"""A piece as a plain outline, where it is too large to draw stitch by stitch: from above, or from the side if it is hollow."""

from __future__ import annotations

from math import hypot, pi, sqrt

from markupsafe import Markup

from lint.pictures.layout import PlacedLayer, place, row_width
from lint.pictures.symbols import number
from lint.pictures.tracks import Line, Point, Polygon
from lint.pictures.tubes import lies_flat, tallest
from lint.working.graph import Layer, Piece

MOST_STITCHES = 20_000  # laid out one by one to find the edges; larger pieces have no picture
_EVERY = 10  # rows between thin lines


def outline(piece: Piece, heights: dict[str, int], name: str) -> Markup:
    """An SVG element; colours hang on the page's style sheet (classes edge, row-line, label)."""
    rounds = [layer for layer in piece.layers if layer.row is not None and layer.circular]
    rows = sum(layer.row is not None for layer in piece.layers)
    if rounds and len(rounds) == rows and not lies_flat(rounds, heights):
        return _svg(
            _profile(rounds, heights), f"Outline of {name} from the side, as it stands when filled: {rows} rounds"
        )
    shape = _from_above(place(piece, heights))
    return _svg(shape, f"Outline of {name}, laid flat: {rows} {'rounds' if rounds else 'rows'}")


def _from_above(placed: tuple[PlacedLayer, ...]) -> list[tuple[str, list[Point], str]]:
    """Lines with their class and what is written at their start."""
    found: list[tuple[str, list[Point], str]] = []
    worked = [one for one in placed if one.points]
    if any(isinstance(one.track, Line) for one in worked):
        lines = [one for one in worked if isinstance(one.track, Line) and one.layer.row is not None]
        right = [max(one.points) for one in lines]
        left = [min(one.points) for one in lines]
        found.append(("edge", [*right, *reversed(left), right[0]], ""))
        for index, one in enumerate(lines):
            if index % _EVERY == 0 and index:
                found.append(("row-line", [right[index], left[index]], _figures(one.layer)))
        worked = [one for one in worked if not isinstance(one.track, Line)]
    for index, one in enumerate(worked):
        last = one is worked[-1]
        if last or index % _EVERY == 0:
            found.append(("edge" if last else "row-line", _round_it(one), _figures(one.layer)))
    return found


def _round_it(one: PlacedLayer) -> list[Point]:
    steps = one.track.sides if isinstance(one.track, Polygon) else 72
    length = one.track.length
    points = [one.track.at(length * step / steps) for step in range(steps)]
    return [*points, points[0]] if one.track.closed else [*points, one.track.at(length)]


def _profile(rounds: list[Layer], heights: dict[str, int]) -> list[tuple[str, list[Point], str]]:
    """Half the girth to each side, and as much upwards as the round's height leaves after it has widened."""
    y, before = 0.0, 0.0
    right: list[Point] = [(0.0, 0.0)]
    marks: list[tuple[str, list[Point], str]] = []
    for index, layer in enumerate(rounds):
        radius = row_width(layer) / (2 * pi)
        y -= sqrt(max(0.0, tallest(layer, heights) ** 2 - (radius - before) ** 2))
        before = radius
        right.append((radius, y))
        if index % _EVERY == _EVERY - 1:
            marks.append(("row-line", [(radius, y), (-radius, y)], _figures(layer)))
    left = [(-x, y) for x, y in reversed(right)]
    return [("edge", [*right, *left], ""), *marks]


def _figures(layer: Layer) -> str:
    return "".join(c for c in layer.label if c.isdigit())


def _svg(lines: list[tuple[str, list[Point], str]], title: str) -> Markup:
    points = [point for _, some, _ in lines for point in some] or [(0.0, 0.0)]
    size = max(hypot(*point) for point in points) or 1.0
    margin = 0.08 * size + 1.0
    left, top = min(x for x, _ in points) - margin, min(y for _, y in points) - margin
    wide, high = max(x for x, _ in points) + margin - left, max(y for _, y in points) + margin - top
    letter = max(wide, high) / 36
    body = []
    for sort, some, words in lines:
        path = "L".join(f"{number(x)} {number(y)}" for x, y in some)
        body.append(Markup('<path class="{}" d="M{}"/>').format(sort, path))
        if words:
            x, y = some[0]
            body.append(
                Markup('<text class="label" style="font-size: {}px" x="{}" y="{}">{}</text>').format(
                    number(letter), number(x + letter), number(y), words
                )
            )
    return Markup(
        '<svg class="outline" role="img" viewBox="{} {} {} {}" xmlns="http://www.w3.org/2000/svg"><title>{}</title>{}</svg>'
    ).format(number(left), number(top), number(wide), number(high), title, Markup("").join(body))
