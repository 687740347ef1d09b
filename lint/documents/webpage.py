"""Reads .html: the blocks of a page as lines, its lists with their numbers, its tables row by row.

What is not the page's text is left out: scripts, styles, menus and forms, what is hidden or marked as deleted.
"""

from __future__ import annotations

from collections.abc import Iterator

import regex
from lxml import etree

from lint.documents.blocks import Block, Paragraph, Table, laid_out, spaced
from lint.documents.lines import Words, plain
from lint.documents.numerals import as_number, letters, roman
from lint.documents.plaintext import decoded
from lint.documents.unreadable import Unreadable
from lint.expression import expression
from lint.source import SourceText

_LEFT_OUT = {
    "script", "style", "template", "noscript", "nav", "form", "button", "select", "textarea", "svg", "math", "iframe",
    "object", "audio", "video", "canvas", "head", "title", "del",
}  # fmt: skip
_BLOCKS = {
    "address", "article", "aside", "blockquote", "body", "caption", "center", "dd", "details", "dialog", "div", "dl", "dt",
    "fieldset", "figcaption", "figure", "footer", "header", "hr", "html", "legend", "li", "main", "menu", "ol", "p", "pre",
    "section", "summary", "ul",
}  # fmt: skip
_HEADINGS = {"h1", "h2", "h3", "h4", "h5", "h6"}
_APART = {"p", "blockquote", "ul", "ol", "dl", "pre", "figure", "hr", "section", "article"}  # printed with space around
_NUMBERS = {"1": str, "a": letters, "i": roman, "A": lambda n: letters(n).upper(), "I": lambda n: roman(n).upper()}
_CHARSET = expression(rb"(?i)<meta[^>]{0,200}?charset\s*=\s*[\"']?\s*([\w-]+)")
_SPACE = expression(r"[ \t\r\n\f]+")
_HIDDEN = expression(r"(?i)display\s*:\s*none|visibility\s*:\s*hidden")
DELETED = "What the page marks as deleted was left out"


def read(raw: bytes, path: str) -> SourceText:
    """The text of a web page; raises Unreadable."""
    parser = etree.HTMLParser(no_network=True, huge_tree=False, remove_comments=True, remove_pis=True)
    text = expression(r"^\s*<\?xml[^>]*>").sub(
        "", decoded_page(raw)
    )  # lxml takes no declaration in what is decoded already
    try:
        root = etree.fromstring(text, parser)
    except (etree.XMLSyntaxError, ValueError) as error:
        raise Unreadable("is no web page") from error
    if any("depth" in entry.message.lower() for entry in parser.error_log):
        raise Unreadable("is built from more parts within parts than any pattern is")
    page = _Page()
    if root is not None:
        page.element(root)
    return laid_out(page.closed(), path, "html", [DELETED] if page.deleted else [])


def decoded_page(raw: bytes) -> str:
    """The page's characters: in the encoding it names, where it names one that there is."""
    named = _CHARSET.search(raw[:4000])
    if named and not raw.startswith((b"\xff\xfe", b"\xfe\xff", b"\xef\xbb\xbf")):
        try:
            return raw.decode(named[1].decode("ascii"))
        except (LookupError, UnicodeDecodeError):
            pass
    return decoded(raw)


class _Page:
    """The blocks of a page, or of a cell, as its elements are met."""

    def __init__(self, deleted: bool = False) -> None:
        self.deleted = deleted
        self._blocks: list[Block] = []
        self._words: list[Words] = []
        self._heading = False
        self._apart = False
        self._kept = 0  # how many <pre> we are in
        self._raised = 0
        self._bold = 0
        self._set_in_bold = True  # all words of the block so far
        self._marks: list[str] = []  # numbers or bullets that wait for the words of their items

    def closed(self) -> list[Block]:
        """What was read."""
        self._close()
        return self._blocks

    def element(self, element: etree._Element) -> None:
        """Read an element with all that is in it."""
        tag = element.tag if isinstance(element.tag, str) else ""
        if _left_out(element, tag):
            self.deleted = self.deleted or tag == "del"
        elif tag == "br":
            self._words.append(Words("\n"))
        elif tag == "table":
            self._close()
            self._blocks.append(self._table(element))
        elif tag in _BLOCKS or tag in _HEADINGS:
            self._close(tag in _APART)
            self._heading, outer = tag in _HEADINGS or self._heading, self._heading
            number = len(self._blocks)
            self._inside(element, tag)
            if tag in ("p", "div") and self._words and len(self._blocks) == number and not plain(self._words).strip():
                self._blocks.append(Paragraph(()))  # a line left empty by hand
            self._close(tag in _APART)
            self._heading = outer
        else:
            self._inside(element, tag)

    def _inside(self, element: etree._Element, tag: str) -> None:
        self._kept += tag == "pre"
        self._raised += tag == "sup"
        self._bold += tag in ("b", "strong")
        number = _numbers(element) if tag == "ol" else iter(())
        self._text(element.text)
        for child in element:
            if child.tag == "li":
                own = child.get("value")
                mark = next(number, "") if own is None else _mark(element, as_number(own))
                if own is not None:
                    number = _numbers(element, as_number(own) + 1)
                self._marks.append(mark or "• ")
            self.element(child)
            self._text(child.tail)
        self._kept -= tag == "pre"
        self._raised -= tag == "sup"
        self._bold -= tag in ("b", "strong")

    def _text(self, data: str | None) -> None:
        if not data:
            return
        if not self._kept:
            data = _SPACE.sub(_one_space, data)
            before = self._words[-1].text[-1:] if self._words else "\n"
            data = data.lstrip(" ") if before in (" ", "\n") else data
            if not data:
                return
        words = Words(data.replace("\r\n", "\n"))
        self._set_in_bold = self._set_in_bold and (self._bold > 0 or not data.strip())
        if self._marks and data.strip():
            self._words.append(Words(self._marks[-1]))
            self._marks.clear()
        if self._raised:
            self._words = spaced(self._words, words)
        else:
            self._words.append(words)

    def _close(self, apart: bool = False) -> None:
        words, self._words = self._words, []
        if plain(words).strip():
            heading = self._heading or self._set_in_bold and len(plain(words).split()) <= 9
            self._blocks.append(Paragraph(tuple(words), heading, 12.0 * self._apart))
            self._apart = False
        self._set_in_bold = True
        self._apart = self._apart or apart

    def _table(self, element: etree._Element) -> Table:
        rows = []
        for row in _parts(element, "tr"):
            cells = []
            for cell in _parts(row, "td", "th"):
                inner = _Page(self.deleted)
                inner._inside(cell, "td")
                cells.append(tuple(inner.closed()))
                self.deleted = inner.deleted
            rows.append(tuple(cells))
        return Table(tuple(rows))


def _one_space(run: regex.Match) -> str:
    """A page shows one space for many; two typed on one line part the columns of a list, and are kept for that."""
    return "  " if len(run[0]) > 1 and not run[0].strip(" ") else " "


def _left_out(element: etree._Element, tag: str) -> bool:
    hidden = element.get("hidden") is not None or _HIDDEN.search(element.get("style") or "") is not None
    return not tag or tag in _LEFT_OUT or hidden


def _parts(element: etree._Element, *tags: str) -> Iterator[etree._Element]:
    """The rows of a table or the cells of a row, not those of a table within."""
    for child in element:
        if child.tag in tags:
            if not _left_out(child, child.tag):
                yield child
        elif child.tag in ("thead", "tbody", "tfoot"):
            yield from _parts(child, *tags)


def _numbers(element: etree._Element, start: int | None = None) -> Iterator[str]:
    """The numbers of a list's items, as printed."""
    number = as_number(element.get("start"), 1) if start is None else start
    while True:
        yield _mark(element, number)
        number += -1 if element.get("reversed") is not None else 1


def _mark(element: etree._Element, number: int) -> str:
    return _NUMBERS.get(element.get("type") or "1", str)(number) + ". "
