"""The skill level that a pattern says it has, against what its words ask of the maker.

The US yarn trade body's levels rate the project: the lowest has basic stitches and basic increases and decreases, the
next simple stitch patterns, colour work or shaping (project levels of 2018, as a technical editor's article tells them;
before that: beginner, with basic stitches and minimal shaping, and easy).
"""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.checks.context import Context
from lint.finding import Finding
from lint.source import Span
from lint.tree import Group, Work, walk

_SAID = regex.compile(
    r"(?im)^\W*(?:skill(?:\s+level)?|difficulty|level)\s*[:–-]?\s*(?P<level>(?:absolute\s+|total\s+)?beginners?\b|basic\b|novice\b)(?P<more>[^\n]*)"
)
_ABOVE = regex.compile(r"(?i)\b(?:advanced|adventurous|confident|plus|easy|intermediate|\+|to)\b|\+|[-–/]")
_BASIC = frozenset({"sl st", "sc", "hdc", "dc", "tr", "inc", "dec", "ch"})
_MANY = 3  # sorts of stitch beyond the basic ones


def check_level(context: Context) -> Iterator[Finding]:
    """level-too-low: "Skill level: beginner" over post stitches, clusters and pieces joined in the round."""
    said = _SAID.search(context.source.text)
    if said is None or _ABOVE.search(said["more"]):
        return
    asked = sorted(_asked(context))
    if len(asked) < 2:
        return
    yield context.finding(
        "level-too-low",
        Span(*said.span("level")),
        found=said["level"],
        asked=", ".join(asked[:-1]) + " and " + asked[-1],
    )


def _asked(context: Context) -> Iterator[str]:
    """What the rows ask beyond basic stitches, in words, each once."""
    kinds: set[str] = set()
    found: set[str] = set()
    for part in context.pattern.parts:
        for row in part.rows:
            for step in walk(row.steps):
                if isinstance(step, Work):
                    kinds.add(step.stitch)
                    if step.stitch.lower().startswith(("fp", "bp")):
                        found.add("stitches round the post")
                    if step.special is not None:
                        found.add("special stitches")
                    if step.together and step.together > 2:
                        found.add("decreases over three stitches or more")
                if isinstance(step, (Work, Group)) and any(place.below for place in step.places):
                    found.add("stitches into rows below")
    if len(kinds - _BASIC) >= _MANY:
        found.add("many sorts of stitch")
    if len(context.pattern.sizes) > 1 and len([part for part in context.pattern.parts if part.rows]) > 3:
        found.add("shaped pieces in several sizes")
    yield from found
