"""The heading of the section on the gauge, which British patterns call the tension."""

from __future__ import annotations

from collections.abc import Iterator

from lint.expression import expression
from lint.restyle.edits import Edit, cased
from lint.restyle.ground import Ground
from lint.source import Span

RULE = "wording-not-house"


def edits(ground: Ground) -> Iterator[Edit]:
    """Gauge or tension, as the house has it, in headings only."""
    wanted = ground.house.wording.gauge
    if wanted is None:
        return
    for section in ground.pattern.sections:
        if section.key == "gauge":
            printed = ground.source.slice(section.heading)
            if expression(r"(?i)gauge|tension").fullmatch(printed):
                yield Edit(Span(section.heading.start, section.heading.end), cased(wanted, printed), RULE, "headings")
