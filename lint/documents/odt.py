"""Reads .odt: paragraphs, tables and numbered lists as printed, tracked changes taken as accepted.

Meaning of the elements: OASIS OpenDocument 1.3 part 3 (from memory).  What was struck out is kept apart from the text
there, so that to accept all changes is to read the text as it stands.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from lint.documents.blocks import Block, Paragraph, Table, laid_out, spaced
from lint.documents.lines import Words, in_lines, plain
from lint.documents.numerals import FORMATS, as_number
from lint.documents.package import Package
from lint.documents.unreadable import Unreadable
from lint.documents.xmltree import Element, Text, as_utf8, parse
from lint.expression import expression
from lint.source import SourceText

TRACKED = "Tracked changes were read as accepted: what was put in is read, what was struck out is not"
FOOTNOTES = "Footnotes were read behind all other text"
_INLINE = ("span", "a", "meta", "meta-field", "ruby", "ruby-base")  # with words of the paragraph in them
_HOLDERS = ("section", "index-body", "table-of-content", "alphabetical-index", "numbered-paragraph")
_MOST_REPEATS = 200  # of a space, a row or a cell that is written once; what is repeated more often is empty
_FORMATS = {"1": "decimal", "a": "lowerLetter", "A": "upperLetter", "i": "lowerRoman", "I": "upperRoman", "": "none"}
_POINTS = {"cm": 72 / 2.54, "mm": 7.2 / 2.54, "in": 72.0, "pt": 1.0, "pc": 12.0}


def read(raw: bytes, path: str) -> SourceText:
    """The text of an .odt; raises Unreadable."""
    package = Package(raw)
    manifest = package.optional("META-INF/manifest.xml") or b""
    if b"encryption-data" in manifest:
        raise Unreadable("is protected by a password")
    content = parse(as_utf8(package.read("content.xml")))
    styles = package.optional("styles.xml")
    body = _Body(content, parse(as_utf8(styles)) if styles is not None else None)
    text = content.find("body", "text")
    if text is None:
        raise Unreadable("is an OpenDocument file, but no text document")
    blocks = list(body.blocks(text))
    if body.footnotes:
        blocks.append(Paragraph((Words("Notes"),), True, 12.0))
        blocks += [Paragraph((Words(note),), False, 12.0) for note in body.footnotes]
    return laid_out(blocks, path, "odt", sorted(body.notes))


@dataclass(slots=True)
class _Level:
    numbered: bool
    format: str
    prefix: str
    suffix: str
    start: int
    shown: int  # how many levels the number shows


@dataclass(slots=True)
class _Listing:
    """A list under way: how far each of its levels has counted."""

    counted: dict[int, int] = field(default_factory=dict)


class _Body:
    def __init__(self, content: Element, styles: Element | None) -> None:
        self.notes: set[str] = set()
        self.footnotes: list[str] = []
        self._styles: dict[str, Element] = {}
        self._lists: dict[str, dict[int, _Level]] = {}
        for root in (styles, content):
            for holder in root.elements() if root is not None else ():
                if holder.local in ("styles", "automatic-styles"):
                    self._take(holder)
        self._ended: dict[str, _Listing] = {}  # lists by their names, and the last one of each style
        self._boxes: list[Element] = []
        self._space_after = 0.0

    def _take(self, holder: Element) -> None:
        for style in holder.elements():
            if style.local == "style":
                self._styles[style.get("name", "")] = style
            elif style.local == "list-style":
                levels = {as_number(level.get("level"), 1): _level(level) for level in style.elements()}
                self._lists[style.get("name", "")] = levels

    def blocks(self, holder: Element) -> Iterator[Block]:
        """The blocks in an element, in order."""
        for child in holder.elements():
            if child.local in ("p", "h"):
                yield from self._paragraph(child, "")
            elif child.local == "list":
                yield from self._list(child, None, 1)
            elif child.local == "table":
                yield self._table(child)
            elif child.local == "tracked-changes":
                if any(True for _ in child.elements()):
                    self.notes.add(TRACKED)
            elif child.local in ("frame", "text-box"):
                yield from self.blocks(child)
            elif child.local in _HOLDERS:
                yield from self.blocks(child)

    def _paragraph(self, element: Element, mark: str) -> Iterator[Block]:
        words = list(self._inline(element))
        filled = bool(plain(words).strip())
        before, after = self._space(element)
        space = before + self._space_after
        self._space_after = after
        heading = element.local == "h" or self._set_in_bold(element, words)
        yield Paragraph((Words(mark), *words) if filled else (), heading, space)
        boxes, self._boxes = self._boxes, []
        for box in boxes:
            yield from self.blocks(box)

    def _inline(self, holder: Element) -> Iterator[Words]:
        words: list[Words] = []
        for child in holder.children:
            if isinstance(child, Text):
                before = words[-1].text[-1:] if words else ""
                told = expression(r"[ \t\r\n]+").sub(" ", child.value)
                told = told.lstrip(" ") if before in (" ", "\n") else told  # runs of space are written as <s>
                words.append(Words(told))
            elif child.local == "s":
                words.append(Words(" " * min(_MOST_REPEATS, as_number(child.get("c"), 1))))
            elif child.local == "tab":
                words.append(Words("\t"))
            elif child.local == "line-break":
                words.append(Words("\n"))
            elif child.local == "note":
                self.notes.add(FOOTNOTES)
                for body in child.elements("note-body"):
                    told = [plain(list(self._inline(one))) for one in body.elements()]
                    self.footnotes.append(" ".join(" ".join(told).split()))
            elif child.local == "frame":
                self._boxes += child.elements("text-box")
            elif child.local in _INLINE:
                inner = [part for part in self._inline(child) if part.text]
                if inner and self._raised(child):
                    words = [*spaced(words, inner[0]), *inner[1:]]
                else:
                    words += inner
        yield from words

    # lists ---------------------------------------------------------------------------------------

    def _list(
        self, element: Element, listing: _Listing | None, level: int, outer: str | None = None
    ) -> Iterator[Block]:
        style = element.get("style-name") or outer
        if listing is None:
            listing = self._continued(element, style) or _Listing()
        for item in element.elements():
            if item.local not in ("list-item", "list-header"):
                continue
            mark = self._mark(listing, style, item, level) if item.local == "list-item" and _has_words(item) else ""
            for child in item.elements():
                if child.local in ("p", "h"):
                    yield from self._paragraph(child, mark)
                    mark = ""
                elif child.local == "list":
                    yield from self._list(child, listing, level + 1, style)
        if level > 1:
            listing.counted.pop(level, None)
            return
        for key in (element.get("id"), f"style {style}"):
            if key is not None:
                self._ended[key] = listing

    def _continued(self, element: Element, style: str | None) -> _Listing | None:
        """The list that this one goes on counting from."""
        named = element.get("continue-list")
        if named is not None:
            return self._ended.get(named)
        return self._ended.get(f"style {style}") if element.get("continue-numbering") == "true" else None

    def _mark(self, listing: _Listing, style: str | None, item: Element, at: int) -> str:
        levels = self._lists.get(style or "", {})
        level = levels.get(at)
        if level is None:
            return ""
        if not level.numbered:
            return "• "
        said = item.get("start-value")
        listing.counted[at] = as_number(said, level.start) if said else listing.counted.get(at, level.start - 1) + 1
        numbers = []
        for other in range(max(1, at - level.shown + 1), at + 1):
            one = levels.get(other)
            if one is not None and one.numbered:
                numbers.append(FORMATS[one.format](listing.counted.get(other, one.start)))
        number = ".".join(part for part in numbers if part)
        return f"{level.prefix}{number}{level.suffix} " if number or level.prefix.strip() else ""

    # tables --------------------------------------------------------------------------------------

    def _table(self, element: Element) -> Table:
        rows: list[tuple[tuple[Block, ...], ...]] = []
        for row in _rows(element):
            cells: list[tuple[Block, ...]] = []
            for cell in row.elements():
                if cell.local in ("table-cell", "covered-table-cell"):
                    inner = tuple(self.blocks(cell)) if cell.local == "table-cell" else ()
                    cells += [inner] * _repeats(cell, "number-columns-repeated", inner)
            rows += [tuple(cells)] * _repeats(row, "number-rows-repeated", [block for cell in cells for block in cell])
        return Table(tuple(rows))

    # styles --------------------------------------------------------------------------------------

    def _said(self, element: Element, kind: str, name: str) -> str | None:
        """What a style, or one that it is made from, says of a property."""
        style, seen = self._styles.get(element.get("style-name") or ""), []
        while style is not None and style not in seen:
            seen.append(style)
            said = style.find(f"{kind}-properties")
            value = said.get(name) if said is not None else None
            if value is not None:
                return value
            style = self._styles.get(style.get("parent-style-name") or "")
        return None

    def _raised(self, span: Element) -> bool:
        return (self._said(span, "text", "text-position") or "").startswith("super")

    def _space(self, paragraph: Element) -> tuple[float, float]:
        """The space before and after a paragraph, in points."""
        found = []
        for side in ("margin-top", "margin-bottom"):
            match = expression(r"([\d.]{1,9})([a-z]{2})").fullmatch(self._said(paragraph, "paragraph", side) or "")
            try:
                found.append(float(match[1]) * _POINTS.get(match[2], 0.0) if match else 0.0)
            except ValueError:
                found.append(0.0)
        return found[0], found[1]

    def _set_in_bold(self, paragraph: Element, words: list[Words]) -> bool:
        """Whether a short paragraph is bold from end to end, as headings are that have no style."""
        if not 0 < len(plain(words).split()) <= 9 or len(in_lines(words)) > 1:
            return False
        if self._said(paragraph, "text", "font-weight") == "bold":
            return True
        bare = any(isinstance(child, Text) and child.value.strip() for child in paragraph.children)
        spans = [child for child in paragraph.elements("span") if plain(list(self._inline(child))).strip()]
        return not bare and bool(spans) and all(self._said(one, "text", "font-weight") == "bold" for one in spans)


def _repeats(element: Element, name: str, blocks: Sequence[Block]) -> int:
    """How often a cell or row stands that is written once; one with a table in it is taken once, or bombs were made so."""
    times = min(_MOST_REPEATS, as_number(element.get(name), 1))
    return 1 if any(isinstance(block, Table) for block in blocks) else max(1, times)


def _rows(element: Element) -> Iterator[Element]:
    for child in element.elements():
        if child.local == "table-row":
            yield child
        elif child.local in ("table-header-rows", "table-rows", "table-row-group"):
            yield from _rows(child)


def _has_words(item: Element) -> bool:
    """Whether a list's item has a paragraph of its own, not only a list within."""
    return any(child.local in ("p", "h") for child in item.elements())


def _level(element: Element) -> _Level:
    return _Level(
        element.local == "list-level-style-number",
        _FORMATS.get(element.get("num-format") or "", "decimal"),
        element.get("num-prefix") or "",
        element.get("num-suffix") or "",
        as_number(element.get("start-value"), 1),
        as_number(element.get("display-levels"), 1),
    )
