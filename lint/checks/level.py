"""The skill level that a pattern says it has, against what its words ask of the maker.

The US yarn trade body's levels rate the project: the lowest has basic stitches and basic increases and decreases, the
next simple stitch patterns, colour work or shaping (project levels of 2018, as a technical editor's article tells them;
before that: beginner, with basic stitches and minimal shaping, and easy).
"""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding
from lint.source import Span
from lint.tree import Group, JoinYarn, Loops, UseYarn, Work, walk

_SAID = expression(
    r"(?im)^[^\w\n]*+(?:skill(?:\s+level)?|difficulty|level)\s*[:–-]?\s*(?P<level>(?:absolute\s+|total\s+)?beginners?\b|basic\b|novice\b)(?P<more>[^\n]*)"
)
_HIGH = expression(
    r"(?im)^[^\w\n]*+(?:skill(?:\s+level)?|difficulty|level)\s*[:–-]?\s*(?P<level>(?:very\s+)?(?:intermediate|advanced|experienced|complex|expert|difficult)\b)(?P<more>[^\n]*)"
)
_BELOW = expression(r"(?i)\b(?:beginner|easy|basic|to)\b|[-–/]")
_ROWS = 3  # rows from which on plain work is told to be plain
_ABOVE = expression(r"(?i)\b(?:advanced|adventurous|confident|plus|easy|intermediate|\+|to)\b|\+|[-–/]")
_BASIC = frozenset({"sl st", "sc", "hdc", "dc", "tr", "inc", "dec", "ch"})
_MANY = 3  # sorts of stitch beyond the basic ones


def check_level(context: Context) -> Iterator[Finding]:
    """level-too-low: "Skill level: beginner" over post stitches and clusters; level-too-high: "complex" over plain rows."""
    said = _SAID.search(context.source.text)
    if said is not None and not _ABOVE.search(said["more"]):
        asked = sorted(_asked(context))
        if len(asked) > 1:
            yield context.finding("level-too-low", Span(*said.span("level")), found=said["level"], asked=_and(asked))
    high = _HIGH.search(context.source.text)
    kinds = _plain_kinds(context) if high is not None and not _BELOW.search(high["more"]) else None
    if high is not None and kinds:
        words = [context.stitch_word(kind) for kind in sorted(kinds)]
        yield context.finding("level-too-high", Span(*high.span("level")), found=high["level"], asked=_and(words))


def _and(words: list[str]) -> str:
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def _plain_kinds(context: Context) -> set[str] | None:
    """The stitches of a pattern that is one flat piece of plain rows, every one of which was read and has one count."""
    rows = [row for row in context.ledger.rows if row.kind != "foundation"]
    made = [row.first.made for row in rows]
    if len(rows) < _ROWS or len(context.pattern.sizes) > 1 or len({id(row.part) for row in rows}) > 1:
        return None
    steps = [step for row in rows for step in walk(row.row.steps)]
    odd = (Group, UseYarn, JoinYarn, Loops)
    if any(one is None or one.spaces for one in made) or any(row.kind != "row" for row in rows):
        return None
    if len({one.stitches for one in made if one is not None}) > 1 or any(isinstance(step, odd) for step in steps):
        return None
    works = [step for step in steps if isinstance(step, Work)]
    if any(one.special or one.together or any(place.below for place in one.places) for one in works):
        return None
    kinds = {kind for one in made if one is not None for kind in one.by_kind}
    return kinds if kinds <= {"sc", "hdc", "dc"} and len(kinds) == 1 else None


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
