"""What sentences of assembly say of seams: how many stitches are sewn, of what, and to how many others."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.amount import Amount
from lint.expression import expression
from lint.reading.sizes.figures import size_list
from lint.source import Span


@dataclass(frozen=True, slots=True)
class Seamed:
    """So many stitches of something that are sewn or joined, and whose they are."""

    span: Span
    number: Amount
    of: str  # the words behind "of": "the last row of one Sleeve"
    last_row: bool
    whole: bool = False  # "the 12 sts": all that there are, not "the first 12 sts", "12 unworked sts"


@dataclass(frozen=True, slots=True)
class SeamedTo:
    """Stitches that are sewn to stitches, both numbers said."""

    one: Seamed
    other: Seamed


_FIGURES = r"\d+(?:[\d\s(),\[\]/;:–-]*[\d)\]])?"
_SEAM = expression(
    rf"(?i)(?P<whole>\b(?:the|all)\s+)?\b(?P<number>{_FIGURES})\s*(?P<kind>(?:[a-z]+\s){{0,2}}?)(?:sts|stitches|loops)\b\s+(?:(?:of|from|on|along|at|in)\s+(?P<of>(?:(?!\b(?:to|with|and|between|into|onto|along|leaving|for)\b)[\w' -])+))?"
)
_LAST_ROW = expression(r"(?i)\b(?:last|final|top)\s+(?:row|rnd|round|edge)\b")
_TO = expression(r"(?i)^\s*(?:,\s*)?(?:to|with|onto)\s+(?:the\s+|each\s+of\s+the\s+|corresponding\s+)*$")
_EASES = expression(r"(?i)\b(?:eas(?:e|ing)|gather\w*|stretch\w*|evenly|pleat\w*|row[- ]?ends?)\b")


def seamed(text: str, span: Span, sizes: int) -> tuple[Seamed, ...]:
    """The numbers of stitches that a sentence of assembly sews or joins."""
    return tuple(found for found, _ in _seamed(text, span, sizes))


def seamed_to(text: str, span: Span, sizes: int) -> SeamedTo | None:
    """Two numbers of stitches that are sewn to each other, where nothing is eased in."""
    sentence = text[span.start : span.end]
    found = list(_seamed(text, span, sizes))
    if len(found) != 2 or _EASES.search(sentence):
        return None
    (one, end), (other, _) = found
    if not _TO.match(text[end : other.span.start]):
        return None
    return SeamedTo(one, other)


def _seamed(text: str, span: Span, sizes: int) -> Iterator[tuple[Seamed, int]]:
    for match in _SEAM.finditer(text, span.start, span.end):
        number = amount_of(match["number"], sizes)
        if number is not None:
            of = " ".join((match["of"] or "").split())
            whole = (
                match["whole"] is not None and expression(r"(?i)(?:[a-z]{2,3}\s)?").fullmatch(match["kind"]) is not None
            )
            yield Seamed(Span(*match.span("number")), number, of, _LAST_ROW.search(of) is not None, whole), match.end()


def amount_of(words: str, sizes: int) -> Amount | None:
    """A number, or a list over the sizes; None for figures that are neither."""
    if words.strip().isdigit():
        return Amount.of(int(words))
    same = {"[": "(", "]": ")", "–": "-", "—": "-"}
    tokens = [same.get(token, token) for token in expression(r"\d+|[(),\[\]/;:–-]").findall(words)]
    found = size_list(tokens, sizes, ("/", ";", ":", "-")) if sizes > 1 else None
    return Amount(found[0]) if found is not None and found[1] == len(tokens) else None
