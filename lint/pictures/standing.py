"""The strokes of one stitch as it stands: from the place that it was worked into up to where it lies."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import hypot

from lint.pictures.layout import PlacedLayer, rise, turning_chain
from lint.pictures.symbols import chain_upright, chains_between, cup, dot, number, oval, picot, plain_kind, upright
from lint.pictures.tracks import Point

_ABOVE = 0.18  # how far over its place a stitch stands
_SPREAD_FROM = 2.2  # width of a chain space from which its stitches stand beside each other, not on one point


class Standing:
    """Draws the stitches of a piece that is laid out."""

    def __init__(self, placed: Sequence[PlacedLayer], heights: dict[str, int]) -> None:
        self.placed = placed
        self.heights = heights
        self.bases = lru_cache(maxsize=2)(self._bases)  # of the row that is drawn

    def strokes(self, index: int, at: int) -> str:
        """One stitch, by its row's number in the piece and its own in the row; "" where another stroke shows it."""
        one = self.placed[index]
        stitch, top = one.layer.stitches[at], one.points[at]
        if stitch.kind == "ring":
            return _circle(one) if at == 0 and _is_ring(one) else ""
        if stitch.kind == "ch":
            return "" if stitch.under else oval(top, _sideways(one.outward(at)))
        if stitch.kind == "space":
            return chains_between(*self.arc(one, at), stitch.length)
        if stitch.kind == "sl st":
            return dot(top)
        bases = self.bases(index)[at]
        if stitch.chain and stitch.special is None and plain_kind(stitch.kind) in self.heights:
            return chain_upright(bases[0], top, stitch.chain)
        height = turning_chain(stitch.kind, self.heights)
        path = upright(stitch.kind, height, bases, top, stitch.special if stitch.kind not in self.heights else None)
        if stitch.loop:
            path += cup(bases[0], one.outward(at), stitch.loop)
        return path

    def picots(self, index: int) -> tuple[str, str]:
        """The picots of a row, each on the stitch that it follows; and the slip stitches that close them."""
        one = self.placed[index]
        loops, closings = [], []
        for loop in one.layer.picots:
            at = min(max(0, loop.after - 1), len(one.points) - 1)
            (x, y), (right, down) = one.points[at], one.outward(at)
            loops.append(picot((x, y), (right, down), loop.chains))
            closings.append(dot((x + right * 0.14, y + down * 0.14)))
        return "".join(loops), "".join(closings)

    def arc(self, one: PlacedLayer, at: int) -> tuple[Point, Point, Point]:
        """A chain space: from the stitch before it to the stitch after it, and the point that it passes between them."""
        count = len(one.points)
        before, after = one.points[at - 1], one.points[(at + 1) % count]
        here = one.points[at]
        if not one.layer.circular and at in (0, count - 1):
            inner = one.points[1] if at == 0 and count > 1 else before
            outer = (2 * here[0] - inner[0], 2 * here[1] - inner[1])
            before, after = (outer, inner) if at == 0 else (inner, outer)
        out = one.outward(at)
        lift = rise(one.layer.stitches[at].length)
        return before, after, (here[0] + out[0] * lift, here[1] + out[1] * lift)

    def _bases(self, index: int) -> list[list[Point]]:
        """For each stitch of a row the points that its stems stand on."""
        one = self.placed[index]
        shared: dict[tuple[int, int], list[int]] = {}
        bases: list[list[Point]] = []
        for at, stitch in enumerate(one.layer.stitches):
            top = one.points[at]
            bases.append([self._foot(parent, top) for parent in stitch.parents])
            if not bases[-1]:
                out = one.outward(at)
                bases[-1].append((top[0] - out[0] * 1.2, top[1] - out[1] * 1.2))
            for layer, place in stitch.parents[:1]:
                if stitch.kind != "space" and self.placed[layer].layer.stitches[place].kind == "space":
                    shared.setdefault((layer, place), []).append(at)
        for (layer, place), sharing in shared.items():
            for at, foot in zip(*self._along(one, layer, place, sharing), strict=True):
                bases[at][0] = _above(foot, one.points[at])
        return bases

    def _along(self, one: PlacedLayer, layer: int, place: int, sharing: list[int]) -> tuple[list[int], list[Point]]:
        """The stitches in one chain space in the order of its chains, and where along these each of them stands."""
        before, after, through = self.arc(self.placed[layer], place)
        chord = (after[0] - before[0], after[1] - before[1])
        wide = hypot(*chord)
        ordered = sorted(sharing, key=lambda at: one.points[at][0] * chord[0] + one.points[at][1] * chord[1])
        first, last = one.points[ordered[0]], one.points[ordered[-1]]
        tops = hypot(last[0] - first[0], last[1] - first[1])  # no farther apart than the stitches themselves
        spread = min(0.8, max(0.0, wide - _SPREAD_FROM) / wide, tops / wide) if wide and len(ordered) > 1 else 0.0
        feet = []
        for nth in range(len(ordered)):
            t = 0.5 + spread * (nth / (len(ordered) - 1) - 0.5 if len(ordered) > 1 else 0.0)
            feet.append(_on_arc(before, after, through, t))
        return ordered, feet

    def _foot(self, parent: tuple[int, int], top: Point) -> Point:
        """Where a stitch stands: a little above the place that it was worked into."""
        layer, at = parent
        below = self.placed[layer]
        if below.layer.stitches[at].kind == "ring" and _is_ring(below):
            radius = _radius(below)
            size = hypot(*top) or 1.0
            return top[0] / size * radius, top[1] / size * radius
        return _above(below.points[at], top)


def _above(base: Point, top: Point) -> Point:
    size = hypot(top[0] - base[0], top[1] - base[1]) or 1.0
    share = min(_ABOVE / size, 0.4)
    return base[0] + (top[0] - base[0]) * share, base[1] + (top[1] - base[1]) * share


def _on_arc(before: Point, after: Point, through: Point, t: float) -> Point:
    """A point of the curve on which the ovals of a chain space lie."""
    bend = (2 * through[0] - (before[0] + after[0]) / 2, 2 * through[1] - (before[1] + after[1]) / 2)
    one, two, three = (1 - t) ** 2, 2 * t * (1 - t), t * t
    return one * before[0] + two * bend[0] + three * after[0], one * before[1] + two * bend[1] + three * after[1]


def _is_ring(placed: PlacedLayer) -> bool:
    """Whether a layer is the ring in the middle: an edge that is left to work on may have a ring among its stitches."""
    return all(stitch.kind == "ring" for stitch in placed.layer.stitches)


def _radius(ring: PlacedLayer) -> float:
    return ring.track.length / (6.2832 if ring.track.closed else 3.1416)


def _circle(ring: PlacedLayer) -> str:
    radius = number(_radius(ring))
    return f"M{-radius} 0a{radius} {radius} 0 1 0 {2 * radius} 0a{radius} {radius} 0 1 0 {-2 * radius} 0"


def _sideways(outward: Point) -> Point:
    return -outward[1], outward[0]
