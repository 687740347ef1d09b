"""Reads .rtf: what is printed of it, tables row by row, tracked changes taken as accepted.

The characters are decoded by striprtf.  What it knows nothing of is settled before, token by token: words struck out or
hidden, cells and rows, raised figures, headings.  They pass through it as signs of a private use area.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import regex

from lint.documents.blocks import Block, Paragraph, Table, laid_out
from lint.documents.lines import Words
from lint.documents.unreadable import Unreadable
from lint.expression import expression
from lint.source import SourceText

_TOKEN = expression(
    r"\\(?P<word>[a-zA-Z]{1,32}+)(?P<number>-?\d{1,10})?+ ?|\\'(?P<hex>[0-9a-fA-F]{2})|\\(?P<sign>[^a-zA-Z])|(?P<brace>[{}])"
    r"|[\r\n]++|(?P<text>[^\\{}\r\n]++)",
    regex.DOTALL,
)
# groups that are not the document's text
_LEFT_OUT = {
    "annotation", "atnauthor", "atnid", "bkmkend", "bkmkstart", "colortbl", "fldinst", "footer", "footerf", "footerl",
    "footerr", "generator", "header", "headerf", "headerl", "headerr", "info", "listoverridetable", "listtable",
    "nonshppict", "object", "pict", "pntext", "revtbl", "stylesheet", "themedata", "xmlnstbl",
}  # fmt: skip
_MOST_DEPTH = 1000
_MOST_FONTS = 60_000  # characters of the table of fonts
# APART stands once for every point of space
CELL, ROW, LINE, RAISED, HEADING, APART = (chr(0xE010 + number) for number in range(6))
TRACKED = "Tracked changes were read as accepted: what was put in is read, what was struck out is not"
FOOTNOTES = "Footnotes were read behind all other text"


def read(raw: bytes, path: str) -> SourceText:
    """The text of an .rtf; raises Unreadable."""
    from striprtf.striprtf import rtf_to_text

    settled = _Settled(raw.decode("latin-1"))
    try:
        text = rtf_to_text(settled.text(), errors="replace")
    except (ValueError, LookupError, TypeError, IndexError) as error:
        raise Unreadable("is damaged: its RTF cannot be followed") from error
    text = text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")  # signs that are written in two halves
    text = expression(rf"(?<=\d){RAISED}(?=\d)").sub(" ", text).replace(RAISED, "").replace("\xad", "")
    return laid_out(list(_blocks(text)), path, "rtf", sorted(settled.notes))


@dataclass(frozen=True, slots=True)
class _State:
    """What holds in a group, and goes with it."""

    out: bool = False  # not the document's text
    fonts: bool = False  # the table of fonts, which striprtf wants
    struck: bool = False
    hidden: bool = False
    raised: bool = False
    bold: bool = False
    in_table: bool = False
    heading: bool = False
    apart: int = 0  # space before and after the paragraph, in twentieths of a point


class _Settled:
    """RTF with everything taken out that is not printed, and private signs where tables and headings are."""

    def __init__(self, raw: str) -> None:
        self.notes: set[str] = set()
        self._raw = raw
        self._state = _State()
        self._stack: list[_State] = []
        self._parts: list[str] = []
        self._footnotes: list[str] = []
        self._outside: tuple[int, list[str], bool, str] | None = None  # where a footnote is: what goes on behind it
        self._bold = True  # all words of the paragraph so far
        self._words = ""  # its first words
        self._fonts = 0
        self._fresh = False  # a group has just been opened

    def text(self) -> str:
        """The settled RTF."""
        at = 0
        while (match := _TOKEN.match(self._raw, at)) is not None:
            at = match.end()
            if match["word"] == "bin":
                at += max(0, int(match["number"] or 0))
            self._token(match)
            self._fresh = match["brace"] == "{" or self._fresh and match["sign"] == "*"
        if self._footnotes and "}" in self._parts:
            last = len(self._parts) - 1 - self._parts[::-1].index("}")
            self._parts[last:last] = ["\\par ", _private(HEADING), "Notes\\par ", *self._footnotes]
        return "".join(self._parts)

    def _footnote(self) -> None:
        """What comes until the group closes is set behind the text."""
        self.notes.add(FOOTNOTES)
        if self._outside is None:
            self._outside = len(self._stack), self._parts, self._bold, self._words
            self._parts = self._footnotes
            self._parts.append("{")
            self._state = replace(self._state, in_table=False, raised=False, heading=False)

    def _footnote_ends(self) -> None:
        self._parts.append("\\par }")
        _, self._parts, self._bold, self._words = self._outside
        self._outside = None

    def _token(self, match: regex.Match) -> None:
        if match["brace"] == "{":
            if len(self._stack) > _MOST_DEPTH:
                raise Unreadable("is built from more parts within parts than any pattern is")
            self._stack.append(self._state)
            self._parts.append("{")
        elif match["brace"]:
            if self._outside is not None and len(self._stack) == self._outside[0]:
                self._footnote_ends()
            self._state = self._stack.pop() if self._stack else self._state
            self._parts.append("}")
        elif match["word"]:
            self._word(match["word"], match["number"], match[0])
        elif match["hex"] or match["text"] or match["sign"]:
            self._written(match)

    def _written(self, match: regex.Match) -> None:
        state = self._state
        if state.out or state.struck or state.hidden:
            return
        words = match["text"] or ""
        if state.fonts:
            self._fonts += len(match[0])
            if self._fonts > _MOST_FONTS:
                raise Unreadable("is damaged: its table of fonts does not end")
            self._parts.append(match[0])
            return
        if match["sign"] is None and (words.strip() or match["hex"]):
            self._bold = self._bold and state.bold
            self._words += words if len(self._words) < 200 else ""
        if state.raised and words[:1].isdigit():
            self._parts.append(_private(RAISED))
        written = (
            match[0]
            if match["text"] is None
            else expression(r"[\x80-\xff]").sub(lambda high: f"\\'{ord(high[0]):02x}", words)
        )
        self._parts.append(written)

    def _word(self, word: str, number: str | None, written: str) -> None:
        state = self._state
        on = number != "0"
        if word in _LEFT_OUT and self._fresh:
            self._state = replace(state, out=True)
        elif word == "footnote" and self._fresh and not state.out:
            self._footnote()
        elif word == "fonttbl":
            self._state = replace(state, fonts=True)
            self._parts.append(written)
        elif state.out:
            return
        elif word in ("deleted", "revised"):
            if on:
                self.notes.add(TRACKED)
            self._state = replace(state, struck=on) if word == "deleted" else state
        elif word == "v":
            self._state = replace(state, hidden=on)
        elif word in ("super", "nosupersub", "sub"):
            self._state = replace(state, raised=word == "super" and on)
        elif word == "b":
            self._state = replace(state, bold=on)
        elif word == "plain":
            self._state = replace(state, struck=False, hidden=False, raised=False, bold=False)
            self._parts.append(written)
        elif word == "pard":
            self._state = replace(state, in_table=False, heading=False, apart=0)
        elif word == "intbl":
            self._state = replace(state, in_table=True)
        elif word == "outlinelevel":
            self._state = replace(state, heading=number is not None and int(number) < 9)
        elif word in ("sb", "sa"):
            self._state = replace(state, apart=state.apart + max(0, min(600, int(number or 0))))
        elif word in ("cell", "nestcell"):
            self._parts.append(_private(CELL))
        elif word in ("row", "nestrow"):
            self._parts.append(_private(ROW))
        elif word == "par" and not (state.struck or state.hidden):
            self._paragraph_ends()
        elif not (state.struck or state.hidden) and not self._broken(word, number):
            self._parts.append(written if written.endswith(" ") else written + " ")

    def _paragraph_ends(self) -> None:
        state = self._state
        if state.in_table:
            self._parts.append(_private(LINE))
        else:
            heading = state.heading or self._bold and 0 < len(self._words.split()) <= 9
            signs = HEADING * heading + APART * (state.apart // 20)
            self._parts.append(_private(signs) + "\\par ")
        self._bold, self._words = True, ""

    @staticmethod
    def _broken(word: str, number: str | None) -> bool:
        """Control words that need a number and have none, or one that no character has (or a sign of our own)."""
        if word == "uc":
            return number is None or not 0 <= int(number) <= 8
        if word != "u":
            return False
        code = int(number) % 0x10000 if number is not None and -0x8000 <= int(number) <= 0xFFFF else -1
        return code < 0 or chr(code) in (CELL, ROW, LINE, RAISED, HEADING, APART)


def _private(signs: str) -> str:
    return "".join(f"{{\\uc1\\u{ord(sign)} ?}}" for sign in signs)


def _blocks(text: str) -> Iterator[Block]:
    """The lines of a text with private signs as paragraphs and tables."""
    rows: list[tuple[tuple[Block, ...], ...]] = []
    cells: list[tuple[Block, ...]] = []
    for line in expression(rf"(?<=[\n{CELL}{ROW}])").splititer(text):
        end, words = line[-1:], line.rstrip("\n" + CELL + ROW)
        if end == CELL:
            cells.append(tuple(_paragraph(one) for one in words.split(LINE)))
        elif end == ROW:
            rows.append(tuple(cells))
            cells = []
        elif words.strip() or not (rows or cells):
            if cells:
                rows.append(tuple(cells))
                cells = []
            if rows:
                yield Table(tuple(rows))
                rows = []
            yield _paragraph(words)
    if cells:
        rows.append(tuple(cells))
    if rows:
        yield Table(tuple(rows))


def _paragraph(words: str) -> Paragraph:
    bare = words.replace(HEADING, "").replace(APART, "").replace(LINE, " ")
    told = (Words(bare),) if bare.strip() else ()
    return Paragraph(told, HEADING in words, words.count(APART))
