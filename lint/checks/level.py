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
from lint.ledger import LedgerRow, Outcome
from lint.source import Span
from lint.tree import Group, JoinYarn, Loops, OpenWork, Repeat, RowCall, Skip, Step, Unread, UseYarn, Work, walk

_SAID = expression(
    r"(?im)^[^\w\n]*+(?:skill(?:\s+level)?|difficulty|level)\s*[:–-]?\s*(?P<level>(?:absolute\s+|total\s+)?beginners?\b|basic\b|novice\b)(?P<more>[^\n]*)"
)
_HIGH = expression(
    r"(?im)^[^\w\n]*+(?:skill(?:\s+level)?|difficulty|level)\s*[:–-]?\s*(?P<level>(?:very\s+)?(?:intermediate|advanced|experienced|complex|expert|difficult)\b)(?P<more>[^\n]*)"
)
_HIGHEST = expression(r"(?i)advanced|experienced|complex|expert")
_BELOW = expression(r"(?i)\b(?:(?:beginner|novice|starter|newcomer|basic)s?|easy|to)\b|[-–/]")
_BESIDES = expression(
    r"(?i)\b(?:charts?|graphs?|embroider\w*|surface|lace|cables?|tapestry|appliqu\w*|smock\w*|colou?rwork)\b"
)
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
    if high is None or _BELOW.search(high["more"]) or _BESIDES.search(context.source.text):
        return  # work that is drawn, or told in other words than rows
    words = _plain_work(context, _HIGHEST.search(high["level"]) is not None)
    if words:
        yield context.finding("level-too-high", Span(*high.span("level")), found=high["level"], asked=_and(words))


def _and(words: list[str]) -> str:
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def _plain_work(context: Context, may_shape: bool) -> list[str] | None:
    """What a pattern of plain rows alone asks for, all of them read; None where there is more to it.

    `may_shape`: increases, decreases, sizes and pieces may be there; else it is one flat piece, and has one count.
    """
    rows = [row for row in context.ledger.rows if row.kind != "foundation"]
    made = [cell.made for row in rows for cell in row.cells if cell.outcome is not Outcome.NOT_WORKED]
    steps = [step for row in rows for step in walk(row.row.steps)]
    unread = any(isinstance(step, Unread) for step in steps) or not may_shape and None in made
    unread = unread or not all(_says_something(row) for row in rows)
    if len(rows) < _ROWS or unread or any(one is not None and one.spaces for one in made):
        return None
    if any(isinstance(step, (Group, UseYarn, JoinYarn, Loops)) and not _of_one_yarn(step) for step in steps):
        return None
    works = [step for step in steps if isinstance(step, Work)]
    if any(
        one.special or one.undefined or (one.together or 0) > 2 or any(place.below for place in one.places)
        for one in works
    ):
        return None
    one_piece = len(context.pattern.sizes) <= 1 and len({id(row.part) for row in rows}) == 1
    one_count = len({one.stitches for one in made if one is not None}) == 1 and not any(one.together for one in works)
    shaped = not (one_piece and one_count and all(row.kind == "row" for row in rows))
    kinds = {kind for one in made if one is not None for kind in one.by_kind}
    if shaped:
        kinds = {kind.removesuffix("2tog") for kind in kinds}
    if shaped and not may_shape or not kinds <= {"sc", "hdc", "dc"} or not 0 < len(kinds) <= 1 + shaped:
        return None
    return [context.stitch_word(kind) for kind in sorted(kinds)] + ["simple shaping"] * shaped


def _says_something(row: LedgerRow) -> bool:
    """Whether a row was recomputed in every size, or has plain work in it at least: "work sc evenly around neck edge"."""
    recomputed = all(cell.made is not None for cell in row.cells if cell.outcome is not Outcome.NOT_WORKED)
    steps = list(walk(row.row.steps))
    lace = any(isinstance(step, (Repeat, Skip)) for step in steps)  # "*sc, ch 1, skip 1; rep from * across"
    return recomputed or not lace and any(isinstance(step, (Work, OpenWork)) for step in steps)


def _of_one_yarn(step: Step) -> bool:
    """ "Join yarn in next st" takes up no colour, and is no art."""
    return isinstance(step, JoinYarn) and step.colour is None


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
    if any(isinstance(step, RowCall) and step.apart > 1 for row in context.ledger.rows for step in walk(row.row.steps)):
        found.add("shaping at intervals")
    yield from found
