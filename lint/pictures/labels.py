"""Where the number of a row or round stands: near its beginning, and clear of the strokes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from lint.pictures.layout import PlacedLayer
from lint.pictures.tracks import Line, Point

LETTER = 0.36  # width of a figure, in stitch widths
_CLEAR = 0.75  # beyond this it does not matter how far away the strokes are
_NEAR = 5  # stitches on either side of the beginning that could be in the way


@dataclass(frozen=True, slots=True)
class Label:
    """Words and the place of their middle."""

    words: str
    point: Point

    @property
    def half(self) -> float:
        """Half its width."""
        return len(self.words) * LETTER / 2


def set_label(words: str, placed: Sequence[PlacedLayer], index: int, others: Sequence[Label]) -> Label:
    """The label of a row: beside the beginning of a straight row, else the clearest place near a round's beginning."""
    one = placed[index]
    first, second = one.along[0], one.along[min(1, len(one.along) - 1)]
    back = -1.0 if second >= first else 1.0
    half = len(words) * LETTER / 2
    if isinstance(one.track, Line):
        x, y = one.track.at(first + back * (0.7 + half))
        return Label(words, (x, y + 0.3))
    strokes = _strokes_near(placed, index)
    best, clearest = (0.0, 0.0), -1.0
    for out in (-0.35, -0.8, 0.25, 0.7):
        for step in (0.8, 0.4, 1.2, 1.7, 0.0):
            s = first + back * step
            x, y = one.track.at(s)
            away = one.track.outward(s % one.track.length if one.track.closed else s)
            point = (x + away[0] * out, y + away[1] * out)
            clear = min(_clear(point, half, strokes), _apart(point, half, others))
            if clear >= _CLEAR:
                return Label(words, point)
            if clear > clearest:
                best, clearest = point, clear
    return Label(words, best)


def _strokes_near(placed: Sequence[PlacedLayer], index: int) -> list[Point]:
    """Points of the strokes round the beginning of a row: its own, those below it and those above it."""
    found: list[Point] = []
    for layer in range(max(0, index - 1), min(len(placed), index + 2)):
        one = placed[layer]
        number = len(one.points)
        for at in {*range(min(_NEAR, number)), *range(max(0, number - _NEAR), number)}:
            top = one.points[at]
            found.append(top)
            for below, place in one.layer.stitches[at].parents[:1]:
                base = placed[below].points[place]
                found += [
                    (base[0] + (top[0] - base[0]) * share, base[1] + (top[1] - base[1]) * share)
                    for share in (0.25, 0.5, 0.75)
                ]
    return found


def _clear(point: Point, half: float, strokes: Sequence[Point]) -> float:
    """How far the nearest stroke is from a label's box."""
    return min((hypot(max(0.0, abs(x - point[0]) - half), y - point[1]) for x, y in strokes), default=_CLEAR)


def _apart(point: Point, half: float, others: Sequence[Label]) -> float:
    return min(
        (
            hypot(max(0.0, abs(one.point[0] - point[0]) - half - one.half), one.point[1] - point[1])
            for one in others[-6:]
        ),
        default=_CLEAR,
    )
