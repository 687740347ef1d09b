"""The stitch diagram of one piece as SVG: every stitch by its chart symbol, standing on the place it was worked into."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from lint.pictures.labels import Label, set_label
from lint.pictures.layout import PlacedLayer, place
from lint.pictures.standing import Standing
from lint.pictures.symbols import UNIT, number
from lint.source import Span
from lint.working.graph import Layer, Piece, Stitch

MOST_STITCHES = 2_000  # drawn one by one; beyond them a piece is drawn as an outline
_YARNS = 6  # colours of the style sheet
_MARGIN = 1.4


@dataclass(frozen=True, slots=True)
class Mark:
    """A note of the report and the words it is about, so that its stitches can be marked."""

    number: int
    row: str | None  # the label of the row it names
    span: Span


def diagram(
    piece: Piece, heights: dict[str, int], name: str, marks: Sequence[Mark] = (), opened: bool = False
) -> Markup:
    """An SVG element of its own; its colours hang on the page's style sheet (classes yarn-0 … yarn-5, halo, label, left).

    `opened`: the rows are rounds that were cut open.
    """
    placed = place(piece, heights)
    standing, yarns, labels = Standing(placed, heights), _yarns(piece), []
    body = []
    for index, one in enumerate(placed):
        on = [mark for mark in marks if _is_on(mark, one.layer, placed[:index])]
        body += _layer(standing, index, yarns, on)
        words = _words(one.layer, on) if one.layer.row is not None and one.points else ""
        if words:
            labels.append(set_label(words, placed, index, labels))
            body.append(_label(labels[-1], bool(on)))
    points = [point for layer in placed for point in layer.points] or [(0.0, 0.0)]
    points += [(one.point[0] + side * (one.half - 1.0), one.point[1]) for one in labels for side in (-1, 1)]
    left = number(min(x for x, _ in points) - _MARGIN)
    top = number(min(y for _, y in points) - _MARGIN)
    wide = number(max(x for x, _ in points) + _MARGIN) - left
    high = number(max(y for _, y in points) + _MARGIN) - top
    rows = sum(layer.layer.row is not None for layer in placed)
    sort = "rounds" if opened or placed[-1].layer.circular else "rows"
    title = f"Stitch diagram of {name}: {rows} {sort if rows != 1 else sort[:-1]}{', cut open' if opened else ''}"
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


def _layer(standing: Standing, index: int, yarns: dict[str, int], on: Sequence[Mark]) -> Iterator[Markup]:
    """The stitches of one row, those of a colour in one path, with a halo round those that a note is about."""
    one = standing.placed[index]
    strokes: dict[int, list[str]] = {}
    dots: dict[int, list[str]] = {}
    halo: list[str] = []
    for at, stitch in enumerate(one.layer.stitches):
        colour = yarns.get(stitch.yarn, 0) if stitch.yarn else 0
        path = standing.strokes(index, at)
        if not path:
            continue
        (dots if stitch.kind == "sl st" else strokes).setdefault(colour, []).append(path)
        if any(_made_by(stitch, mark, one.layer) for mark in on):
            halo.append(path)
    if one.layer.picots and one.layer.stitches:
        last = one.layer.stitches[-1].yarn
        colour = yarns.get(last, 0) if last else 0
        for into, path in zip((strokes, dots), standing.picots(index), strict=True):
            into.setdefault(colour, []).append(path)
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
        x, y = standing.placed[layer].points[at]
        yield Markup('<circle class="left" cx="{}" cy="{}" r="{}"/>').format(number(x), number(y), number(0.4))
    yield Markup("</g>")


def _label(label: Label, noted: bool) -> Markup:
    x, y = label.point
    return Markup('<text class="label{}" x="{}" y="{}">{}</text>').format(
        " noted" if noted else "", number(x), number(y + 0.22), label.words
    )


def _words(layer: Layer, on: Sequence[Mark]) -> str:
    """The row's number, and in brackets those of the notes on it."""
    figures = "".join(c for c in layer.label if c.isdigit())
    return " ".join([figures, *(f"({mark.number})" for mark in on)]).strip()


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
