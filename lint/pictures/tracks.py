"""The lines that rows and rounds lie on: circles, polygons, ovals, fans and straight lines.

Lengths are in stitch widths.  x runs to the right and y downwards, as in SVG; rounds run anticlockwise from the right and
rows start on the right (a right-hander's chart; sources in the standard's notes on chart symbols, reading order).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, cos, hypot, pi, sin, tan

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Line:
    """A row: `s` is the distance to the left of the middle."""

    y: float
    closed = False
    length = float("inf")

    def at(self, s: float) -> Point:
        return -s, self.y

    def project(self, point: Point) -> float:
        return -point[0]

    def outward(self, s: float) -> Point:
        return 0.0, -1.0


@dataclass(frozen=True, slots=True)
class Arc:
    """A whole circle, or the upper half of one: `s` runs along it anticlockwise from the right."""

    radius: float
    closed: bool = True

    @property
    def length(self) -> float:
        return (2 * pi if self.closed else pi) * self.radius

    def at(self, s: float) -> Point:
        angle = s / self.radius
        return self.radius * cos(angle), -self.radius * sin(angle)

    def project(self, point: Point) -> float:
        angle = atan2(-point[1], point[0])
        if self.closed:
            return angle % (2 * pi) * self.radius
        return (angle if angle > -pi / 2 else angle + 2 * pi) * self.radius

    def outward(self, s: float) -> Point:
        x, y = self.at(s)
        return x / self.radius, y / self.radius


@dataclass(frozen=True, slots=True)
class Polygon:
    """A regular polygon round the middle: `s` runs anticlockwise from its first corner, which lies at `turned` radians."""

    sides: int
    apothem: float
    turned: float
    closed = True

    @property
    def side(self) -> float:
        return 2 * self.apothem * tan(pi / self.sides)

    @property
    def length(self) -> float:
        return self.sides * self.side

    def at(self, s: float) -> Point:
        number, along = divmod(s % self.length, self.side)
        middle = self.turned + (number + 0.5) * 2 * pi / self.sides
        across = along - self.side / 2
        return (
            self.apothem * cos(middle) - across * sin(middle),
            -(self.apothem * sin(middle) + across * cos(middle)),
        )

    def project(self, point: Point) -> float:
        angle = (atan2(-point[1], point[0]) - self.turned) % (2 * pi)
        number = int(angle / (2 * pi / self.sides)) % self.sides
        from_middle = angle - (number + 0.5) * 2 * pi / self.sides
        across = hypot(*point) * sin(from_middle)  # straight down from the point to the side
        half = self.side / 2
        return number * self.side + half + min(half, max(-half, across))

    def outward(self, s: float) -> Point:
        number = int(s % self.length / self.side)
        middle = self.turned + (number + 0.5) * 2 * pi / self.sides
        return cos(middle), -sin(middle)


@dataclass(frozen=True, slots=True)
class Oval:
    """Round a foundation chain: two straight sides with half circles; `s` runs anticlockwise from the right of the top."""

    straight: float  # the length of the chain
    radius: float
    closed = True

    @property
    def length(self) -> float:
        return 2 * self.straight + 2 * pi * self.radius

    def at(self, s: float) -> Point:
        s %= self.length
        half, bend = self.straight / 2, pi * self.radius
        if s < self.straight:
            return half - s, -self.radius
        if s < self.straight + bend:
            angle = pi / 2 + (s - self.straight) / self.radius
            return -half + self.radius * cos(angle), -self.radius * sin(angle)
        if s < 2 * self.straight + bend:
            return s - self.straight - bend - half, self.radius
        angle = -pi / 2 + (s - 2 * self.straight - bend) / self.radius
        return half + self.radius * cos(angle), -self.radius * sin(angle)

    def project(self, point: Point) -> float:
        x, y = point
        half, bend = self.straight / 2, pi * self.radius
        if abs(x) <= half:
            return half - x if y < 0 else self.straight + bend + x + half
        if x < 0:
            return self.straight + (atan2(-y, x + half) % (2 * pi) - pi / 2) * self.radius
        return (2 * self.straight + bend + (atan2(-y, x - half) + pi / 2) * self.radius) % self.length

    def outward(self, s: float) -> Point:
        x, y = self.at(s)
        half = self.straight / 2
        x -= min(half, max(-half, x))
        return x / self.radius, y / self.radius


Track = Line | Arc | Polygon | Oval
