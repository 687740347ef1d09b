"""What a pattern says of its stitch multiple: "multiple of 6 sts + 2, plus 1 for the foundation chain"."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.expression import expression
from lint.source import Span


@dataclass(frozen=True, slots=True)
class Multiple:
    """A whole number of repeats of so many stitches, and so many more at the edges; chains for turning come on top."""

    span: Span
    repeat: int
    edge: int
    chain: int | None  # that the foundation chain has more; None where it is not said

    def fits(self, chains: int, stitches: int | None) -> bool:
        """Whether a start of so many chains, or a first row of so many stitches, is such a number.

        The chains for turning come on top of the chains alone.
        """
        ends = {self.edge % self.repeat, (self.edge + (self.chain or 0)) % self.repeat}
        return chains % self.repeat in ends or stitches is not None and (stitches - self.edge) % self.repeat == 0

    def nearest(self, chains: int) -> tuple[int, int]:
        """The numbers of chains next below and next above that are one."""
        low = chains - (chains - self.edge - (self.chain or 0)) % self.repeat
        return low, low + self.repeat


_MORE = r"(?:\s*[a-z]{2,10}\b(?<!\band|\bplus))?\s*(?:,\s*)?(?:\+|\bplus\b|\band\b)\s*(?P<edge>\d{1,3})(?!\d|\.\d)"
_CHAIN = r"[\s,;:(]*(?:sts?|stitches|chs?|chains?)?[\s,;:(]*(?:\+|\bplus\b|\badd(?:ing)?\b|\band\b)\s*(?P<chain>\d{1,2})\b[^.;\n)]{0,24}?\b(?:base|foundation|beginning|starting|turning)\b(?:\s+(?:row|chain|ch))?"
_MULTIPLE = expression(
    rf"(?i)\b(?:multiples?(?:\s+of|\s*:)|divisible\s+by)\s*(?P<repeat>\d{{1,3}})(?!\d|\.\d)(?:{_MORE}(?!\s*(?:more\s+)?(?:(?:sts?|chs?|chains?)\s+)?for\b))?(?:{_CHAIN})?"
)

_ADDED = expression(
    r"(?i)\b(?:add|adding|added|subtract\w*|remov\w*|more|fewer|less|by|in)\s+(?:(?:a|an|any|another|in)\s+)?$"
)  # "add a multiple of 8": to a number, which need not be one


def multiples(text: str) -> Iterator[Multiple]:
    """Every statement of a multiple, in the order of the text."""
    for match in _MULTIPLE.finditer(text):
        repeat = int(match["repeat"])
        if repeat > 1 and not _ADDED.search(text, max(0, match.start() - 30), match.start()):
            chain = int(match["chain"]) if match["chain"] else None
            yield Multiple(Span(*match.span()), repeat, int(match["edge"] or 0), chain)
