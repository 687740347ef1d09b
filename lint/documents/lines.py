"""Puts a document's words together, line by line, and keeps where each of them was read."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from lint.documents.unreadable import Unreadable
from lint.source import Origin, Piece, SourceText

MOST_CHARACTERS = 4_000_000  # a thick book of patterns; what is longer is no pattern
CELL = " | "  # between the cells of a table's row, as the reader knows tables in plain text


@dataclass(frozen=True, slots=True)
class Words:
    """Words of one node of the document (see `lint.source.Piece`), character for character; -1: words of the reader's own."""

    text: str
    node: int = -1
    at: int = 0

    def cut(self, start: int, end: int) -> Words:
        """A part of the words, by its characters."""
        return Words(self.text[start:end], self.node, self.at + start if self.node >= 0 else 0)


class Lines:
    """A text under way; a blank line stands only where one is asked for, and never two.

    `named` gives the place of a node's words, where a line may run over several (pages); else a line names its own.
    """

    def __init__(self, named: Callable[[int], str] | None = None) -> None:
        self._named = named
        self._text: list[str] = []
        self._length = 0
        self._pieces: list[Piece] = []
        self._blank = False
        self._last = ""

    def line(self, words: list[Words], place: str) -> None:
        """Add a line; one of nothing but space is a blank line."""
        if not any(part.text.strip() for part in words):
            self.blank()
            return
        if self._blank and self._text:
            self._add("\n")
        self._blank = False
        for part in stripped(words):
            start = self._length
            self._add(part.text)
            at = self._named(part.node) if self._named is not None and part.node >= 0 else place
            self._pieces.append(Piece(start, self._length, at, part.node, part.at))
        self._last = plain(words).rstrip()
        self._add("\n")

    def blank(self) -> None:
        """Leave a line blank before the next one."""
        self._blank = True

    def apart(self, words: list[Words]) -> None:
        """Leave a line blank unless the next words clearly go on with the line above.

        They do within brackets, after a comma, as a list's item, and where a small letter follows no stop.
        """
        first = plain(words).lstrip()[:1]
        inside = opened(self._last) and not first.isupper()
        if not (
            inside or self._last.endswith(",") or first == "•" or first.islower() and self._last[-1:] not in ".:!?)]"
        ):
            self.blank()

    def _add(self, text: str) -> None:
        self._length += len(text)
        if self._length > MOST_CHARACTERS:
            raise Unreadable(f"holds more than {MOST_CHARACTERS:,} characters, which no pattern does")
        self._text.append(text)

    def source(self, path: str, kind: str, notes: tuple[str, ...] = ()) -> SourceText:
        """The text and its origin; Unreadable where there are no words at all."""
        if not self._pieces:
            raise Unreadable("has no text in it")
        return SourceText("".join(self._text), path, Origin(kind, tuple(self._pieces), notes))


def stripped(words: list[Words]) -> list[Words]:
    """Words without the space before the first and after the last, empty ones left out."""
    found = [part for part in words if part.text]
    while found and not found[0].text.strip():
        del found[0]
    while found and not found[-1].text.strip():
        del found[-1]
    if found:
        lead = len(found[0].text) - len(found[0].text.lstrip())
        found[0] = found[0].cut(lead, len(found[0].text))
        found[-1] = replace(found[-1], text=found[-1].text.rstrip())
    return found


def in_lines(words: list[Words]) -> list[list[Words]]:
    """Words cut at their line breaks."""
    lines: list[list[Words]] = [[]]
    for part in words:
        start = 0
        while (stop := part.text.find("\n", start)) >= 0:
            lines[-1].append(part.cut(start, stop))
            lines.append([])
            start = stop + 1
        lines[-1].append(part.cut(start, len(part.text)))
    return lines


def row_of(cells: list[list[list[Words]]]) -> list[Words]:
    """A table's row as one line: cells apart by a bar, the lines of a cell by a space."""
    line: list[Words] = []
    for number, cell in enumerate(cells):
        if number:
            line.append(Words(CELL))
        for at, words in enumerate(stripped(one) for one in cell):
            line += [Words(" "), *words] if at and words else words
    return line


def opened(text: str) -> bool:
    """Whether a bracket is still open at the end of a text."""
    return any(text.rfind(sign) > text.rfind(other) for sign, other in ("()", "[]", "{}"))


def plain(words: list[Words]) -> str:
    """Words as they read."""
    return "".join(part.text for part in words)
