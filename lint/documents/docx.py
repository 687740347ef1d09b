"""Reads .docx: paragraphs and tables as printed, automatic numbers written out, tracked changes taken as accepted.

Meaning of the elements: ECMA-376 part 1, section 17 (from memory).  The tree keeps the bytes of every run, so that
`docxcomments` can put comments into the designer's own file and touch nothing else.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterator
from dataclasses import dataclass

from lint.documents.blocks import Block, Paragraph, Table, laid_out, spaced
from lint.documents.docxnumbers import Numbering
from lint.documents.docxstyles import Styles, switched_on
from lint.documents.lines import Words, in_lines, plain
from lint.documents.package import Package
from lint.documents.unreadable import Unreadable
from lint.documents.xmltree import Element, Text, as_utf8, parse
from lint.source import SourceText

_SIGNS = {"tab": "\t", "br": "\n", "cr": "\n", "noBreakHyphen": "-", "ptab": "\t"}
_HOLDERS = ("hyperlink", "ins", "moveTo", "smartTag", "fldSimple", "customXml", "dir", "bdo", "sdtContent", "sdt")
TRACKED = "Tracked changes were read as accepted: what was put in is read, what was struck out is not"
FOOTNOTES = "Footnotes were read behind all other text"
_NOTES = {"footnoteReference": ("footnotes.xml", "footnote"), "endnoteReference": ("endnotes.xml", "endnote")}


@dataclass(frozen=True, slots=True)
class Node:
    """A text node: the characters, their run and their `t`; `free` where Word lets a comment stand."""

    text: Text
    run: Element
    element: Element
    free: bool


def read(raw: bytes, path: str) -> SourceText:
    """The text of a .docx; raises Unreadable."""
    body = Body(Package(raw))
    blocks = body.blocks()
    return laid_out(blocks, path, "docx", body.notes())


class Body:
    """The main part of a .docx: its blocks, and its text nodes as they are numbered in the pieces of the text."""

    def __init__(self, package: Package) -> None:
        self.package = package
        self.part = _main_part(package)
        self.raw = as_utf8(package.read(self.part))
        self.root = parse(self.raw)
        self.nodes: list[Node] = []
        self._styles = Styles(self._beside("styles.xml"))
        self._numbering = Numbering(self._beside("numbering.xml"), self._styles)
        self._seen: set[str] = set()
        self._references: list[tuple[str, str]] = []  # to footnotes and endnotes: kind and number
        self._boxes: list[Element] = []
        self._inside_box = False
        self._pending: list[Words] = []  # of paragraphs whose end was struck out
        self._last: tuple[str | None, int] = (None, 0)  # style of the paragraph above, and the space after it

    def _beside(self, name: str) -> Element | None:
        data = self.package.optional(posixpath.join(posixpath.dirname(self.part), name))
        return parse(as_utf8(data)) if data is not None else None

    def blocks(self) -> list[Block]:
        """Paragraphs and tables in order."""
        body = self.root.find("body")
        if body is None:
            raise Unreadable("is damaged: it has no body")
        return [*self._blocks(body), *self._footnotes()]

    def _footnotes(self) -> Iterator[Block]:
        """The notes at the foot of pages and at the end, in the order of their numbers, under a heading of their own."""
        parts = {kind: self._beside(name) for kind, (name, _) in _NOTES.items()}
        if not any(parts[kind] is not None for kind, _ in self._references):
            return
        yield Paragraph((Words("Notes"),), True, 12.0)
        for kind, number in self._references:
            part, local = parts[kind], _NOTES[kind][1]
            for note in part.elements(local) if part is not None else ():
                if note.get("id") == number:
                    yield Paragraph((Words(" ".join(_all_text(note).split())),), False, 12.0)

    def notes(self) -> Iterator[str]:
        """What a reader of the report must know of how the document was read."""
        if self._seen & {"ins", "del", "moveFrom", "moveTo"}:
            yield TRACKED
        if self._references:
            yield FOOTNOTES

    def _blocks(self, holder: Element) -> Iterator[Block]:
        for child in holder.elements():
            if child.local == "p":
                yield from self._paragraph(child)
            elif child.local == "tbl":
                yield from self._table(child)
            elif child.local == "AlternateContent":
                yield from self._blocks(child.find("Choice") or child)
            elif child.local in _HOLDERS:
                yield from self._blocks(child)

    def _table(self, element: Element) -> Iterator[Block]:
        rows = []
        for row in _through(element, "tr"):
            if row.find("trPr", "del") is not None:
                self._seen.add("del")
                continue
            cells = []
            for cell in _through(row, "tc"):
                merged = cell.find("tcPr", "vMerge")
                goes_on = merged is not None and merged.get("val", "continue") == "continue"
                cells.append(() if goes_on else tuple(self._blocks(cell)))
            rows.append(tuple(cells))
        self._last = (None, 0)
        yield Table(tuple(rows))

    def _paragraph(self, element: Element) -> Iterator[Block]:
        words: list[Words] = []
        for part, raised in self._inline(element, element):
            words = spaced(words, part) if raised else [*words, part]
        struck_end = element.find("pPr", "rPr", "del") is not None
        if struck_end:
            self._seen.add("del")
            self._pending += words
            return
        number = self._numbering.label(element)
        words, self._pending = [*self._pending, *words], []
        filled = bool(plain(words).strip())
        before, after = self._styles.space(element)
        style = self._styles.of(element)
        close = element.find("pPr", "contextualSpacing") is not None and style == self._last[0]
        space = 0.0 if close else (before + self._last[1]) / 20
        self._last = (style, after)
        heading = self._styles.heading(element) or self._set_in_bold(element, words)
        yield Paragraph((Words(number), *words) if filled else (), heading, space)
        boxes, self._boxes = self._boxes, []
        for box in boxes:
            self._inside_box = True
            yield from self._blocks(box)
            self._inside_box = False

    def _set_in_bold(self, paragraph: Element, words: list[Words]) -> bool:
        """Whether a short paragraph is bold from end to end, as headings are that have no style."""
        short = 0 < len(plain(words).split()) <= 9 and len(in_lines(words)) == 1
        nodes = [self.nodes[part.node] for part in words if part.node >= 0 and part.text.strip()]
        return short and bool(nodes) and all(self._styles.bold(node.run, paragraph) for node in nodes)

    def _inline(self, holder: Element, paragraph: Element) -> Iterator[tuple[Words, bool]]:
        """The words of a paragraph, and whether they are set above the line."""
        for child in holder.elements():
            if child.local in ("ins", "del", "moveFrom", "moveTo"):
                self._seen.add(child.local)
            if child.local == "r":
                yield from self._run(child)
            elif child.local == "AlternateContent":
                yield from self._inline(child.find("Choice") or child, paragraph)
            elif child.local in _HOLDERS:
                yield from self._inline(child, paragraph)

    def _run(self, run: Element) -> Iterator[tuple[Words, bool]]:
        if switched_on(run, "vanish"):
            return
        place = run.find("rPr", "vertAlign")
        raised = place is not None and place.get("val") == "superscript"
        for child in run.elements():
            if child.local == "t":
                for text in child.children:
                    if isinstance(text, Text):
                        self.nodes.append(Node(text, run, child, not self._inside_box and not text.literal))
                        yield Words(text.value.replace("\n", " "), len(self.nodes) - 1), raised
            elif child.local in _SIGNS:
                yield Words(_SIGNS[child.local]), raised
            elif child.local == "sym":
                yield Words(_symbol(child.get("char", ""))), raised
            elif child.local in ("drawing", "pict", "AlternateContent", "object"):
                self._boxes += _boxes_in(child)
            elif child.local in _NOTES:
                self._references.append((child.local, child.get("id", "")))
            else:
                self._seen.add(child.local)


def _all_text(element: Element) -> str:
    """The text of a note, what was struck out left out."""
    found = []
    for child in element.children:
        if isinstance(child, Text):
            found.append(child.value if element.local == "t" else "")
        elif child.local not in ("del", "moveFrom", "instrText"):
            found.append(_all_text(child) + (" " if child.local == "p" else ""))
    return "".join(found)


def _through(element: Element, local: str) -> Iterator[Element]:
    """The rows or cells of a table, also those that stand in a content control or a change."""
    for child in element.elements():
        if child.local == local:
            yield child
        elif child.local in _HOLDERS:
            yield from _through(child, local)


def _boxes_in(element: Element) -> Iterator[Element]:
    """The text boxes of a drawing; what stands there a second time for old readers is left out."""
    for child in element.elements():
        if child.local == "txbxContent":
            yield child
        elif child.local != "Fallback":
            yield from _boxes_in(child)


def _symbol(code: str) -> str:
    """A sign of a symbol font: the sign for an unknown character where it is one of the font's own."""
    try:
        number = int(code, 16)
    except ValueError:
        return "\ufffd"
    return chr(number) if 0x20 <= number < 0xD800 else "\ufffd"


def _main_part(package: Package) -> str:
    """The name of the part that holds the document's text."""
    for relation in parse(as_utf8(package.read("_rels/.rels"))).elements("Relationship"):
        if (relation.get("Type") or "").endswith("/officeDocument"):
            return posixpath.normpath((relation.get("Target") or "").lstrip("/"))
    raise Unreadable("is no word-processor document: it names no main part")
