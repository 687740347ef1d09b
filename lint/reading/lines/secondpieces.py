"""Sentences that bid to make a piece once more: "Make the second sock to match", "Repeat for other mitten"."""

from __future__ import annotations

from lint.expression import expression
from lint.pattern import Row
from lint.reading.lines.texts import PartText
from lint.reading.places.countunits import singular
from lint.source import SourceText
from lint.tree import THE_PIECE_BEFORE, RowCall

_AGAIN = expression(  # at a sentence's beginning: "before you make the second sock" bids nothing
    r"(?im)(?:^[ \t*•_(-]*|[.!?:]\s+)(?:(?:and|now|then|next|finally|so),?\s+)?"
    r"(?:(?:make|work|crochet)|(?P<rep>repeat(?:\s+(?:all|everything|these\s+instructions|from\s+the\s+beginning))?\s+for))"
    r"\s+(?:(?:the|a|your)\s+)?(?:second|2nd|other)\s+(?P<piece>\p{L}+)\b"
    r"(?P<how>\s*(?=[.!;\n]|$)|\s+(?:to\s+match|in\s+(?:exactly\s+)?the\s+same|(?:exactly\s+)?the\s+same|alike|likewise|exactly\s+like|as\s+(?:the\s+)?first|to\s+correspond)\b)"
)

_LONGEST = 160  # characters of a line that is no more than that


def made_again(source: SourceText, parts: list[PartText], title: str | None) -> None:
    """Tells the parts that are made twice so: those under the piece's name, or all before, where the title names it.

    A piece whose second has a heading of its own is not told, nor is a side or half of one, whose rows may be others.
    """
    for found in _AGAIN.finditer(source.text):
        piece = singular(found["piece"].lower())
        before = [part for part in parts if part.span.start < found.start()]
        named = [part for part in before if piece in _words(part.piece or part.name)]
        if any("second" in _words(part.name) and piece in _words(part.name) for part in parts):
            continue
        if not named and title is not None and piece in _words(title):
            named = before
        for part in named:
            part.of_piece = max(part.of_piece, 2)


def without_again(rows: list[Row], source: SourceText, told: bool) -> list[Row]:
    """A piece's rows without lines that only bid to make it once more; `told`: whether a sentence says that it is made twice."""
    return [row for at, row in enumerate(rows) if not at or not _bids_again(row, source, told)]


def _bids_again(row: Row, source: SourceText, told: bool) -> bool:
    """Whether a line calls for the piece itself, or is such a sentence with talk behind it: "…, and weave in the ends"."""
    if row.label is not None:
        return False
    if any(isinstance(step, RowCall) and step.part == THE_PIECE_BEFORE for step in row.steps):
        return True
    words = source.slice(row.span)
    found = _AGAIN.match(words) if told and len(words) < _LONGEST else None
    return found is not None and expression(r"\d").search(words, found.end()) is None


def _words(name: str) -> set[str]:
    """The words of a name, each as one of its things: "SOCKS" is a sock."""
    return {singular(word) for word in expression(r"\p{L}+").findall(name.lower())}
