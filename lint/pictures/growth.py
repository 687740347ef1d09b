"""A plot of how a piece grows: stitches a round, beside the line of a circle that lies flat."""

from __future__ import annotations

from collections.abc import Sequence

from markupsafe import Markup

_WIDE, _HIGH = 640, 260  # of the plot, in pixels; letters and margins come on top
_LEFT, _TOP, _RIGHT, _BOTTOM = 48, 14, 90, 34


def growth(labels: Sequence[str], counts: Sequence[int], flat: Sequence[float] | None, name: str) -> Markup:
    """An SVG element: counts of consecutive rounds, and what each would have if it lay flat, from the first round on."""
    most = 1.3 * max(counts, default=1) or 1
    flat = [value for value in flat or () if value <= most]  # a hollow piece soon leaves it
    step = _step(most)
    top = (int(most / step) + 1) * step

    def x(index: int) -> float:
        return _LEFT + (_WIDE * index / (len(counts) - 1) if len(counts) > 1 else _WIDE / 2)

    def y(value: float) -> float:
        return _TOP + _HIGH * (1 - value / top)

    body = []
    for value in range(0, top + 1, step):
        body.append(
            Markup('<path class="row-line" d="M{} {:.0f}h{}"/><text class="scale" x="{}" y="{:.0f}">{}</text>').format(
                _LEFT, y(value), _WIDE, _LEFT - 8, y(value) + 4, value
            )
        )
    every = max(1, (len(counts) - 1) // 12 + 1)
    for index in range(0, len(counts), every):
        figures = "".join(c for c in labels[index] if c.isdigit()) or labels[index]
        body.append(
            Markup('<text class="scale round" x="{:.0f}" y="{}">{}</text>').format(x(index), _TOP + _HIGH + 22, figures)
        )
    if flat:
        points = " ".join(f"{x(index):.0f},{y(value):.0f}" for index, value in enumerate(flat))
        body.append(Markup('<polyline class="flat" points="{}"/>').format(points))
        body.append(_at_end("lies flat", x(len(flat) - 1), y(flat[-1]), y(counts[len(flat) - 1])))
    points = " ".join(f"{x(index):.0f},{y(value):.0f}" for index, value in enumerate(counts))
    body.append(Markup('<polyline class="counts" points="{}"/>').format(points))
    for index, value in enumerate(counts):
        body.append(
            Markup('<circle class="counts" cx="{:.0f}" cy="{:.0f}" r="3.5"><title>{}: {}</title></circle>').format(
                x(index), y(value), labels[index], value
            )
        )
    title = f"Stitches in each round of {name}, from {counts[0]} to {counts[-1]}"
    return Markup(
        '<svg class="growth" role="img" viewBox="0 0 {} {}" xmlns="http://www.w3.org/2000/svg"><title>{}</title>{}</svg>'
    ).format(_LEFT + _WIDE + _RIGHT, _TOP + _HIGH + _BOTTOM, title, Markup("").join(body))


def _at_end(words: str, x: float, y: float, other: float) -> Markup:
    """A line's name at its end, clear of the other line's."""
    if abs(y - other) < 14:
        y = other - 14 if y <= other else other + 14
    return Markup('<text class="name" x="{:.0f}" y="{:.0f}">{}</text>').format(x + 8, y + 4, words)


def _step(most: float) -> int:
    """The distance of the plot's lines: 1, 2 or 5 times a power of ten, so that there are about five."""
    power = 1
    while True:
        for figure in (1, 2, 5):
            if most / (figure * power) <= 6:
                return figure * power
        power *= 10
