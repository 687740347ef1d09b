"""The pattern's text, never altered, and places in it."""

from __future__ import annotations

import hashlib
import unicodedata
from bisect import bisect_right
from dataclasses import dataclass, field, replace

import regex

from lint.expression import expression


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A stretch of the text: offsets from 0, in characters, end exclusive."""

    start: int
    end: int

    def to(self, other: Span) -> Span:
        """The stretch from the start of this span to the end of the other."""
        return Span(self.start, max(self.end, other.end))


@dataclass(frozen=True, slots=True)
class Position:
    """Where a character stands: line and column from 1, offset from 0."""

    line: int
    column: int
    offset: int


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of the text, and where in the document it was read: character for character from one of its nodes.

    `node` numbers the document's text nodes or pages from 0, `at` is the first character's number in it; a node of -1
    says that the words are not written in the document as they stand here (an automatic number, a cell's border).
    """

    start: int
    end: int
    place: str  # "paragraph 14", "table 1, row 3", "page 2"
    node: int = -1
    at: int = 0


@dataclass(frozen=True, slots=True)
class Origin:
    """The document that a text was read out of: its kind, the text's pieces in order, and what a reader must be told."""

    kind: str  # docx | odt | rtf | pdf | html
    pieces: tuple[Piece, ...] = ()
    notes: tuple[str, ...] = ()  # sentences without a stop: "Tracked changes were read as accepted"

    def piece(self, offset: int) -> Piece | None:
        """The piece that a character stands in, or the last before it; the first for what stands before all."""
        at = bisect_right(self.pieces, offset, key=lambda piece: piece.start) - 1
        return self.pieces[max(at, 0)] if self.pieces else None

    def within(self, span: Span) -> list[Piece]:
        """The pieces of the document's own words that a stretch of the text touches, in order."""
        first = max(bisect_right(self.pieces, span.start, key=lambda piece: piece.start) - 1, 0)
        found = []
        for piece in self.pieces[first:]:
            if piece.start >= max(span.end, span.start + 1):
                break
            if piece.end > span.start and piece.node >= 0:
                found.append(piece)
        return found


# Signs that mean the same in a pattern, one character for one, so that places stay right: spaces and hyphens of word
# processors, and the wide signs of Chinese and Japanese keyboards.
_ALIKE = str.maketrans(
    dict.fromkeys("\u00a0\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000", " ")
    | {
        "\u2010": "-",
        "\u2011": "-",
        "\u2012": "–",
        "\u2015": "—",
        "\u3010": "[",
        "\u3011": "]",
        "\u3001": ",",
        "\u3002": ".",
        "\u2039": "<",
        "\u203a": ">",
        "\u2329": "<",
        "\u232a": ">",
        "\u27e8": "<",
        "\u27e9": ">",
        "\u3008": "<",
        "\u3009": ">",
    }
    | {chr(0xFEE0 + code): chr(code) for code in range(0x21, 0x7F)}
)


# "hook no. 3,5", "3,5 mm": a size in the decimals of the continent
_HOOK_COMMA = expression(
    r"(?i),(?:(?=\d\b)(?<=\bhook\s(?:size\s|(?:no|nr|number)\.?\s?)?\d{1,2},)|(?=\d{1,2}\s?mm\b)(?<=\b\d{1,2},))"
)
# "V–st", "X–stitch": the hyphen of a name as an office program sets it
_JOINED_NAME = expression(r"(?i)(?<=\b\p{L}{1,3})–(?=st(?:s|itch|itches)?\b)")
# "20 <22, 24>", "<34 sts>", "S «M, L»": a list or a count in other brackets
_IN_ANGLES = expression(  # across a line's end nothing but a count
    r"[<«]([^<>«»\n]*(?:\d|,)[^<>«»\n]*|\d[\d\s()\[\],:;/–-]{0,120}(?:\s(?:sts?|stitches|sc|h?dc|h?tr))?)[>»]"
)
# "20 *(22-24)*", "20 **(22)** 24": a list over the sizes whose brackets are slanted or bold, figures alone within them
_SLANTED = expression(r"(?<=\d\s?)(?P<sign>[*_]{1,3})(?P<list>[(\[]\s?\d[\d ,:;/.½¼¾–—-]*[)\]])(?P=sign)")
_FOREIGN_DIGIT = expression(r"(?V1)[\d--[0-9]]")


def _as_digit(match: regex.Match) -> str:
    """A digit of another script as one of ours; of a script that is not known here, as no digit."""
    value = unicodedata.decimal(match[0], None)
    return str(value) if value is not None else "\ufffd"


@dataclass(frozen=True, slots=True)
class SourceText:
    """A pattern's text as read, with its path and its document, and its line starts for finding positions."""

    text: str
    path: str = "-"
    origin: Origin | None = None  # None: the file is plain text itself
    line_starts: tuple[int, ...] = field(init=False, repr=False)

    def alike(self) -> SourceText:
        """The same text with signs that mean the same written in one way, every character at its place."""
        text = self.text.translate(_ALIKE).replace("\r\n", " \n")
        text = text if text.isascii() else _FOREIGN_DIGIT.sub(_as_digit, text)
        text = _HOOK_COMMA.sub(".", text)
        text = _JOINED_NAME.sub("-", text) if "–" in text else text
        text = _IN_ANGLES.sub(r"[\1]", text) if "<" in text or "«" in text else text
        if "*" in text or "_" in text:
            text = _SLANTED.sub(lambda found: found["list"].center(len(found[0])), text)
        return self if text == self.text else replace(self, text=text)

    def __post_init__(self) -> None:
        starts = [0]
        for index, character in enumerate(self.text):
            if character == "\n":
                starts.append(index + 1)
        object.__setattr__(self, "line_starts", tuple(starts))

    @property
    def sha256(self) -> str:
        return hashlib.sha256(self.text.encode("utf-8", "surrogatepass")).hexdigest()

    def position(self, offset: int) -> Position:
        line = bisect_right(self.line_starts, offset)
        return Position(line, offset - self.line_starts[line - 1] + 1, offset)

    def line_of(self, span: Span) -> int:
        return self.position(span.start).line

    def place(self, offset: int) -> str | None:
        """Where in its document a character stands: "page 2", "paragraph 14"; None for plain text."""
        piece = self.origin.piece(offset) if self.origin is not None else None
        return piece.place if piece is not None else None

    def slice(self, span: Span) -> str:
        return self.text[span.start : span.end]
