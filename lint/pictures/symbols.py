"""The strokes of the standard chart symbols, each from the place that a stitch was worked into up to where it lies.

Forms as the trade describes them: an oval a chain, a dot a slip stitch, a plus a single crochet, a T whose slashes tell how
often the yarn goes round the hook (a US trade body's chart symbols, described by several teaching sites; cluster, bobble,
popcorn and post forms from memory).  Lengths come in stitch widths and go out in tenths of a pixel, as whole numbers.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, cos, degrees, hypot, pi, sin
from re import sub

from lint.pictures.tracks import Point

UNIT = 100  # a stitch width in the picture's own units
_ROUNDED = ("bobble", "puff", "popcorn", "pc")
_GATHERED = ("cluster", "cl", *_ROUNDED)


def plain_kind(kind: str) -> str:
    """The stitch that a post or foundation stitch is a sort of: "FPdc" and "fdc" are dc."""
    return sub(r"^(?:FP|BP|f)(?=[a-z])", "", kind)


def number(value: float) -> int:
    """A length in the picture's own units."""
    return round(value * UNIT)


def line(a: Point, b: Point) -> str:
    """A straight stroke."""
    return f"M{number(a[0])} {number(a[1])}l{number(b[0]) - number(a[0])} {number(b[1]) - number(a[1])}"


def oval(middle: Point, along: Point, length: float = 0.42, width: float = 0.22) -> str:
    """A chain: an open oval, lying in the direction `along`."""
    size = hypot(*along) or 1.0
    x, y = along[0] / size, along[1] / size
    turned = round(_degrees(x, y))
    a, b = number(length / 2), number(width / 2)
    fx, fy = number(middle[0] - x * length / 2), number(middle[1] - y * length / 2)
    dx, dy = number(x * length), number(y * length)
    return f"M{fx} {fy}a{a} {b} {turned} 1 0 {dx} {dy}a{a} {b} {turned} 1 0 {-dx} {-dy}"


def dot(middle: Point) -> str:
    """A slip stitch: a stroke without length, which round ends make a dot."""
    return f"M{number(middle[0])} {number(middle[1])}h0"


def chains_between(a: Point, b: Point, through: Point, chains: int) -> str:
    """A chain space: its ovals along a curve from one stitch to the next that passes near a point."""
    shown = min(chains, 12)
    bend = (2 * through[0] - (a[0] + b[0]) / 2, 2 * through[1] - (a[1] + b[1]) / 2)  # control of the curve
    length = min(0.42, 0.9 * (_between(a, through) + _between(through, b)) / max(1, shown))
    strokes = []
    for index in range(shown):
        t = (index + 1) / (shown + 1)
        middle = tuple((1 - t) ** 2 * a[k] + 2 * t * (1 - t) * bend[k] + t * t * b[k] for k in (0, 1))
        slope = tuple(2 * (1 - t) * (bend[k] - a[k]) + 2 * t * (b[k] - bend[k]) for k in (0, 1))
        strokes.append(oval(middle, slope, max(0.16, length), max(0.12, length * 0.55)))
    return "".join(strokes)


def chain_upright(base: Point, top: Point, chains: int) -> str:
    """A beginning chain that stands for a stitch: its ovals one above the other."""
    along = (top[0] - base[0], top[1] - base[1])
    length = hypot(*along) / max(1, chains)
    return "".join(
        oval(
            (base[0] + along[0] * (index + 0.5) / chains, base[1] + along[1] * (index + 0.5) / chains),
            along,
            min(0.45, length * 0.9),
            0.22,
        )
        for index in range(chains)
    )


def upright(kind: str, height: int, bases: Sequence[Point], top: Point, gathered: str | None = None) -> str:
    """A stitch: a stem from each of its places to one top, crossed as its height says.

    `height`: chains of its turning chain; `gathered`: the name of a cluster, bobble, popcorn…, of which the legs share a top.
    """
    name = (gathered or kind).lower()
    if any(word in name for word in _GATHERED) and len(bases) == 1:
        return _leaf(
            bases[0], top, height, popcorn="pop" in name or name == "pc", rounded=any(w in name for w in _ROUNDED)
        )
    strokes = []
    for base in bases:
        strokes.append(_stem(kind, height, base, top))
    across = _across(bases[len(bases) // 2], top)
    if height >= 2 or len(bases) > 1:
        wide = 0.27 if len(bases) == 1 else 0.2
        strokes.append(line(_off(top, across, -wide), _off(top, across, wide)))
    return "".join(strokes)


def cup(base: Point, outward: Point, loop: str) -> str:
    """A shallow arc under a stitch worked into one loop: open upwards for the back loop, downwards for the front loop.

    The third loop, which lies behind these, has a straight bar (no published form was found).
    """
    across = (-outward[1], outward[0])
    if loop == "third":
        return line(_off(base, across, -0.3), _off(base, across, 0.3))
    low = -0.16 if loop != "front" else 0.1
    ends = [_off(_off(base, across, side), outward, 0.0) for side in (-0.3, 0.3)]
    bend = _off(base, outward, low * 1.6)
    (ax, ay), (bx, by) = ((number(x), number(y)) for x, y in ends)
    return f"M{ax} {ay}q{number(bend[0]) - ax} {number(bend[1]) - ay} {bx - ax} {by - ay}"


def _stem(kind: str, height: int, base: Point, top: Point) -> str:
    across = _across(base, top)
    strokes = [line(base, top)]
    if kind.startswith(("FP", "BP")):
        strokes.append(_hook(base, across, 1 if kind.startswith("FP") else -1))
    if height <= 1:
        middle = _along(base, top, 0.62)
        strokes.append(line(_off(middle, across, -0.26), _off(middle, across, 0.26)))
    for index in range(max(0, height - 2)):
        middle = _along(base, top, 0.66 - 0.13 * index)
        slanted = _along(base, top, 0.66 - 0.13 * index + 0.07)
        strokes.append(line(_off(middle, across, -0.17), _off(slanted, across, 0.17)))
    return "".join(strokes)


def _hook(base: Point, across: Point, side: int) -> str:
    """The foot of a post stitch: under the post below it, and up again to the right (front) or to the left (back)."""
    down = (-across[1], across[0])
    bend = _off(_off(base, down, 0.4), across, 0.2 * side)
    end = _off(_off(base, down, -0.05), across, 0.4 * side)
    x, y = number(base[0]), number(base[1])
    return f"M{x} {y}q{number(bend[0]) - x} {number(bend[1]) - y} {number(end[0]) - x} {number(end[1]) - y}"


def picot(foot: Point, outward: Point, chains: int) -> str:
    """A tight loop of ovals standing on the work, at the slip stitch that closes it."""
    shown = min(max(chains, 2), 6)
    radius = 0.14 + 0.07 * shown
    middle = _off(foot, outward, radius + 0.12)
    across = (-outward[1], outward[0])
    long = min(0.42, 0.8 * 2 * pi * radius / (shown + 1))
    strokes = []
    for index in range(shown):
        turn = 2 * pi * (index + 1) / (shown + 1)  # from the foot round to the foot again
        away = tuple(-cos(turn) * outward[k] + sin(turn) * across[k] for k in (0, 1))
        along = tuple(sin(turn) * outward[k] + cos(turn) * across[k] for k in (0, 1))
        strokes.append(oval(_off(middle, away, radius), along, long, 0.18))
    return "".join(strokes)


def _leaf(base: Point, top: Point, height: int, popcorn: bool, rounded: bool) -> str:
    """Stems that share base and top: a closed leaf round one stem, with an oval on top for a popcorn."""
    across = _across(base, top)
    bend = _along(base, top, 0.62)
    fx, fy, tx, ty = number(base[0]), number(base[1]), number(top[0]), number(top[1])
    strokes = [line(base, top)]
    for side in (-0.5, 0.5):
        control = _off(bend, across, side)
        strokes.append(f"M{fx} {fy}q{number(control[0]) - fx} {number(control[1]) - fy} {tx - fx} {ty - fy}")
    if popcorn:
        strokes.append(oval(_along(base, top, 1.04), across, 0.34, 0.18))
    elif not rounded:
        strokes.append(line(_off(top, across, -0.25), _off(top, across, 0.25)))
    for index in range(max(0, height - 2)):
        middle = _along(base, top, 0.6 - 0.12 * index)
        strokes.append(line(_off(middle, across, -0.16), _off(_along(base, top, 0.67 - 0.12 * index), across, 0.16)))
    return "".join(strokes)


def _across(base: Point, top: Point) -> Point:
    """The direction across a stem, of length 1."""
    x, y = top[0] - base[0], top[1] - base[1]
    size = hypot(x, y) or 1.0
    return -y / size, x / size


def _off(point: Point, direction: Point, length: float) -> Point:
    return point[0] + direction[0] * length, point[1] + direction[1] * length


def _along(base: Point, top: Point, share: float) -> Point:
    return base[0] + (top[0] - base[0]) * share, base[1] + (top[1] - base[1]) * share


def _between(a: Point, b: Point) -> float:
    return hypot(a[0] - b[0], a[1] - b[1])


def _degrees(x: float, y: float) -> float:
    return degrees(atan2(y, x)) % 180
