"""Another stitch's name: "dc" where the count, or the row after, speaks of sc."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from lint.expression import expression
from lint.likely.edits import Edit, spliced
from lint.pattern import Stated
from lint.source import Span
from lint.tree import Step, Work, walk

_OTHER = 1.3
_NAME = expression(
    r"(?i)(?:(?:half|extended)[ -])?(?:double|single|treble|triple)(?: (?:crochet|treble))?s?\b|\p{L}[\p{L}]*"
)
_NO_NAMES = ("work", "make", "place", "then", "a", "an", "one", "two", "three", "in", "into", "and", "each", "next")


def of_stitches(steps: tuple[Step, ...], names: Mapping[str, str], text: str) -> Iterator[Edit]:
    """Every plain stitch of a row as another; `names`: as this pattern prints the stitches that may be meant."""
    seen: set[int] = set()
    for step in walk(steps):
        if id(step) in seen or not _plain(step):
            continue
        seen.add(id(step))
        at = _name_at(step, text)
        old = " ".join(text[step.span.start : step.span.end].split())
        for stitch, name in names.items():
            if stitch == step.stitch or at is None:
                continue
            word = name[:1].upper() + name[1:] if text[at.start : at.start + 1].isupper() else name
            clause = spliced(text, step.span, at, word)
            other = replace(step, stitch=stitch)
            yield Edit(f"“{clause}” instead of “{old}”", _OTHER, step, (other,), at, word, clause)


def names_of(rows: Iterable[tuple[Step, ...]], stated: Stated | None, text: str) -> dict[str, str]:
    """By US name, the plain stitches of some rows, and of a printed count, as this pattern prints them."""
    found: dict[str, str] = {}
    for item in stated.items if stated is not None else ():
        unit, _, stitch = item.unit.partition(":")
        word = expression(r"[\p{L}]+(?: crochets?)?(?=\W*$)").search(text[item.span.start : item.span.end])
        if unit == "kind" and word is not None:
            found[stitch] = word.group().lower()
    for row in rows:
        for step in walk(row):
            at = _name_at(step, text) if _plain(step) else None
            if at is not None:
                found.setdefault(step.stitch, text[at.start : at.end].lower())
    return {stitch: name for stitch, name in found.items() if stitch not in ("sl st", "inc", "dec", "st")}


def _plain(step: Step) -> bool:
    return (
        isinstance(step, Work)
        and step.special is None
        and step.together is None
        and not step.post
        and step.stitch not in ("sl st", "inc", "dec")
        and not step.undefined
    )


def _name_at(step: Step, text: str) -> Span | None:
    for match in _NAME.finditer(text, step.span.start, step.span.end):
        if match.group().lower() not in _NO_NAMES:
            return Span(*match.span())
    return None
