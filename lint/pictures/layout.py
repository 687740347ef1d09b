"""Where every stitch of a piece lies on its picture: over the place that it was worked into, as far as its row has room.

Lengths are in stitch widths.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, tan

from lint.pictures.symbols import plain_kind
from lint.pictures.tracks import Arc, Line, Oval, Point, Polygon, Track
from lint.working.graph import Layer, Piece, Stitch

_HEIGHTS = {
    0: 0.7,
    1: 1.2,
    2: 1.7,
    3: 2.3,
    4: 2.9,
    5: 3.5,
    6: 4.1,
}  # drawn, by the chains of the stitch's turning chain

_UPRIGHT = {4: pi / 4, 6: 0.0, 8: pi / 8}  # where the first corner of a shape lies; the others have one at the top


@dataclass(frozen=True, slots=True)
class PlacedLayer:
    """A row with its line, and for each of its stitches how far along and where."""

    layer: Layer
    track: Track
    along: tuple[float, ...]
    points: tuple[Point, ...]

    def outward(self, index: int) -> Point:
        """The direction in which the work grows at a stitch, of length 1."""
        return self.track.outward(self.along[index])


def place(piece: Piece, heights: dict[str, int]) -> tuple[PlacedLayer, ...]:
    """Every layer of a piece, from the first on; `heights` gives the turning chain of each stitch by its US abbreviation."""
    layout = _Layout(heights)
    placed = layout.placed(piece)
    if layout.turned is not None:  # again, turned so that the first polygon stands upright
        sides = next(one.track.sides for one in placed if isinstance(one.track, Polygon))
        placed = _Layout(heights, _UPRIGHT.get(sides, pi / 2) - layout.turned).placed(piece)
    return tuple(placed)


def drawn_height(kind: str, heights: dict[str, int]) -> float:
    """How tall a stitch is drawn."""
    return _HEIGHTS[min(6, max(0, turning_chain(kind, heights)))]


def turning_chain(kind: str, heights: dict[str, int]) -> int:
    """Chains as tall as a stitch; a stitch of which nothing is known is as tall as a dc."""
    return heights.get(kind, heights.get(plain_kind(kind), 3))


def rise(chains: int) -> float:
    """How far the middle of a chain space stands out from the line of its row."""
    return min(1.0, 0.12 * chains)


def row_width(layer: Layer) -> float:
    """The room that a row's stitches and spaces take side by side."""
    return sum(_width(stitch) for stitch in layer.stitches)


class _Layout:
    def __init__(self, heights: dict[str, int], start: float = 0.0) -> None:
        self.heights = heights
        self.start = start  # radians at which the first round begins
        self.done: list[PlacedLayer] = []
        self.turned: float | None = None  # of the polygons, so that their corners stand over each other

    def placed(self, piece: Piece) -> list[PlacedLayer]:
        for index, layer in enumerate(piece.layers):
            coming = piece.layers[index + 1] if index + 1 < len(piece.layers) else None
            self.done.append(self.base(layer, coming) if layer.row is None else self.row(layer))
        return self.done

    def base(self, layer: Layer, coming: Layer | None) -> PlacedLayer:
        """What the piece begins on: a ring in the middle, a chain, or an edge drawn as a plain row."""
        ring = all(stitch.kind == "ring" for stitch in layer.stitches)
        if ring:
            number = row_width(coming) if coming is not None else 0
            full = coming is None or coming.circular
            room = number / (2 * pi if full else pi)
            radius = max(0.9, room - self.height(coming) if coming is not None else 0)
            return PlacedLayer(
                layer, Arc(radius, full), (0.0,) * len(layer.stitches), ((0.0, 0.0),) * len(layer.stitches)
            )
        if any(stitch.under for stitch in layer.stitches):
            return _both_sides(layer)
        around = layer.circular and all(stitch.kind != "ch" for stitch in layer.stitches)
        widths = [_width(stitch) for stitch in layer.stitches]
        track: Track = Arc(max(1.5, sum(widths) / (2 * pi))) if around else Line(0.0)
        along = _in_a_row(widths, track, self.start)
        return PlacedLayer(layer, track, along, tuple(track.at(s) for s in along))

    def row(self, layer: Layer) -> PlacedLayer:
        track = self.track(layer)
        along = self.corners(layer, track) if isinstance(track, Polygon) else None
        along = along or self.over_places(layer, track)
        return PlacedLayer(layer, track, along, tuple(track.at(s) for s in along))

    def height(self, layer: Layer) -> float:
        """The tallest stitch of a row, as drawn."""
        return max(
            (drawn_height(stitch.kind, self.heights) if stitch.kind != "space" else 0.8 for stitch in layer.stitches),
            default=1.0,
        )

    def crest(self, layer: Layer) -> float:
        """How far the chain spaces that a row is worked into stand out from their own row's line."""
        below = (self.done[at].layer.stitches[index] for stitch in layer.stitches for at, index in stitch.parents)
        return max((rise(one.length) for one in below if one.kind == "space"), default=0.0)

    # the line of a row -------------------------------------------------------------------------------------

    def track(self, layer: Layer) -> Track:
        below = self.done[-1] if self.done else None
        room = row_width(layer)
        height = self.height(layer) + self.crest(layer)
        corners = sum(stitch.corner for stitch in layer.stitches)
        cornered = layer.circular and 3 <= corners <= 8
        if below is None and cornered:
            self.turned = _UPRIGHT.get(corners, pi / 2)
            return Polygon(corners, max(1.5, room / (2 * corners * tan(pi / corners))), self.turned)
        if below is None:
            return Arc(max(1.5, room / (2 * pi))) if layer.circular else Line(0.0)
        track = below.track
        if isinstance(track, Line) and not layer.circular:
            return Line(track.y - height)
        if isinstance(track, Line) and all(stitch.kind == "ch" for stitch in below.layer.stitches):
            straight = max(1.0, sum(not stitch.under for stitch in below.layer.stitches) - 2.0)
            return Oval(straight, max(height, (room - 2 * straight) / (2 * pi)))
        if isinstance(track, Oval):
            return Oval(track.straight, max(track.radius + height, (room - 2 * track.straight) / (2 * pi)))
        inner = _reach(track) if not isinstance(track, Line) else 1.5
        if cornered:
            apothem = track.apothem if isinstance(track, Polygon) else inner
            apothem = max(apothem + height, room / (2 * corners * tan(pi / corners)))
            if self.turned is None:
                self.turned = self.first_turn(layer, apothem)
            return Polygon(corners, apothem, self.turned)
        full = layer.circular or not isinstance(track, Arc) or track.closed
        return Arc(max(inner + height, room / (2 * pi if full else pi)), full)

    def first_turn(self, layer: Layer, apothem: float) -> float:
        """Where the first corner of the first polygon lies: over the place that it was worked into."""
        along = self.over_places(layer, Arc(apothem))
        first = next(index for index, stitch in enumerate(layer.stitches) if stitch.corner)
        return along[first] / apothem

    # the stitches along it -----------------------------------------------------------------------------------

    def corners(self, layer: Layer, track: Polygon) -> tuple[float, ...] | None:
        """Corners at the corners, and what lies between them evenly along the side."""
        number = len(layer.stitches)
        corners = [index for index, stitch in enumerate(layer.stitches) if stitch.corner]
        if len(corners) != track.sides:
            return None
        start = track.turned
        if self.done:
            start = self.over_places(layer, Arc(track.apothem))[corners[0]] / track.apothem
        first = round((start - track.turned) / (2 * pi / track.sides)) % track.sides
        along = [0.0] * number
        for side, corner in enumerate(corners):
            until = corners[(side + 1) % len(corners)]
            between = [(corner + step) % number for step in range(1, (until - corner) % number or number)]
            begin = (first + side) * track.side
            along[corner] = begin
            widths = [_width(layer.stitches[index]) for index in between]
            room = track.side / (sum(widths) + 1) if widths else 0
            at = begin + room / 2
            for index, width in zip(between, widths, strict=True):
                along[index] = at + width * room / 2
                at += width * room
        return tuple(along)

    def over_places(self, layer: Layer, track: Track) -> tuple[float, ...]:
        widths = [_width(stitch) for stitch in layer.stitches]
        wanted = self.wanted(layer, track)
        if sum(place is not None for place in wanted) < 2:
            return _in_a_row(widths, track, self.start)
        filled = _filled(wanted, track.length if track.closed else None)
        backwards = filled[-1] < filled[0]
        end = (
            0.0 if track.length == float("inf") else track.length
        )  # what lies at s lies at end - s from the other side
        along = _spread([end - s for s in filled] if backwards else filled, widths, track)
        return tuple(end - s for s in along) if backwards else along

    def wanted(self, layer: Layer, track: Track) -> list[float | None]:
        """How far along the middle of each stitch's places lies; on closed lines going on from the stitch before."""
        found: list[float | None] = []
        last = None
        for stitch in layer.stitches:
            places = [self.done[at].points[index] for at, index in stitch.parents if _has_a_side(self.done[at])]
            if not places:
                found.append(None)
                continue
            s = sum(_near(track, track.project(point), track.project(places[0])) for point in places) / len(places)
            if last is not None:
                s = _near(track, s, last)
            last = s
            found.append(s)
        return found


def _has_a_side(placed: PlacedLayer) -> bool:
    """Whether the places of a layer lie on one side of the work each: not so a ring, or a chain joined to a ring."""
    stitches = placed.layer.stitches
    if any(stitch.under for stitch in stitches):
        return True
    return not all(stitch.kind == "ring" for stitch in stitches) and not (
        placed.layer.circular and all(stitch.kind == "ch" for stitch in stitches)
    )


def _both_sides(layer: Layer) -> PlacedLayer:
    """A foundation chain that is worked round: its other side just under it, from the far end back."""
    upper = sum(not stitch.under for stitch in layer.stitches)
    track = Line(0.0)
    along = [at - (upper - 1) / 2 for at in range(upper)]
    back = [along[max(0, upper - 2 - at)] for at in range(len(layer.stitches) - upper)]
    points = [(-s, -0.05) for s in along] + [(-s, 0.05) for s in back]
    return PlacedLayer(layer, track, (*along, *back), tuple(points))


def _near(track: Track, s: float, other: float) -> float:
    """The same place on a closed line, counted so that it lies nearest to another."""
    return s + round((other - s) / track.length) * track.length if track.closed else s


def _reach(track: Arc | Polygon | Oval) -> float:
    """How far from the middle a line reaches."""
    return track.apothem / cos(pi / track.sides) if isinstance(track, Polygon) else track.radius


def _width(stitch: Stitch) -> float:
    if stitch.kind == "space":
        return max(0.7, min(6.0, 0.5 * stitch.length))
    return 0.6 if stitch.kind == "sl st" else 1.0


def _in_a_row(widths: list[float], track: Track, start: float) -> tuple[float, ...]:
    """Evenly from the start of a closed line, or round the middle of an open one."""
    total = sum(widths)
    scale = track.length / total if track.length != float("inf") and total else 1.0
    at = 0.0 if track.length != float("inf") else -total / 2
    if isinstance(track, Arc) and track.closed:
        at = start * track.radius
    along = []
    for width in widths:
        along.append(at + width * scale / 2)
        at += width * scale
    return tuple(along)


def _filled(wanted: list[float | None], around: float | None) -> list[float]:
    """Stitches without a place of their own lie between their neighbours; `around`: the length of a closed line."""
    known = [index for index, s in enumerate(wanted) if s is not None]
    first, last = known[0], known[-1]
    number = len(wanted)
    if around is not None:  # what comes before the first comes after the last, too
        whole = around if wanted[last] >= wanted[first] else -around
        ends = [(last - number, wanted[last] - whole), (first + number, wanted[first] + whole)]
    else:
        ends = [(-1, wanted[first]), (number, wanted[last])]
    stops = [ends[0], *((index, wanted[index]) for index in known), ends[1]]
    filled: list[float] = list(wanted)
    for (before, low), (after, high) in pairwise(stops):
        for index in range(max(0, before + 1), min(number, after)):
            filled[index] = low + (index - before) / (after - before) * (high - low)
    return filled


def _spread(wanted: list[float], widths: list[float], track: Track) -> tuple[float, ...]:
    """As near to where they are wanted as may be, in order, each with room for its width (isotonic regression)."""
    offsets, at = [], 0.0
    for width in widths:
        offsets.append(at + width / 2)
        at += width
    blocks: list[list[float]] = []  # [sum, number]
    for s, offset in zip(wanted, offsets, strict=True):
        blocks.append([s - offset, 1])
        while len(blocks) > 1 and blocks[-2][0] / blocks[-2][1] >= blocks[-1][0] / blocks[-1][1]:
            total, number = blocks.pop()
            blocks[-1][0] += total
            blocks[-1][1] += number
    shifts = [total / number for total, number in blocks for _ in range(int(number))]
    along = [shift + offset for shift, offset in zip(shifts, offsets, strict=True)]
    if track.length == float("inf") or len(along) < 2:
        return tuple(along)
    span = along[-1] - along[0]
    room = track.length - (widths[0] + widths[-1]) / 2
    if span > room > 0:
        middle = (along[0] + along[-1]) / 2
        along = [middle + (s - middle) * room / span for s in along]
    if not track.closed:
        shift = max(0.0, widths[0] / 2 - along[0]) or min(0.0, track.length - widths[-1] / 2 - along[-1])
        along = [s + shift for s in along]
    return tuple(along)
