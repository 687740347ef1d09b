"""XML as a tree whose text knows at which byte of the file it stands; no entity is ever expanded.

A document type declaration is refused outright: word processors write none, and every XML bomb needs one.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.parsers import expat

from lint.documents.unreadable import Unreadable

MOST_DEPTH = 200
MOST_ELEMENTS = 500_000


@dataclass(slots=True, eq=False)
class Text:
    """Characters as parsed; `chunks` gives the first character and its byte for each stretch that stands as it is read."""

    value: str
    chunks: list[tuple[int, int]]
    end: int  # the byte behind the last character
    literal: bool = False  # in a CDATA section, which no tag can be put into

    def byte_at(self, character: int) -> int:
        """The byte of the file at which a character of the text begins (that after the last one: where it ends)."""
        if character >= len(self.value):
            return self.end
        first, byte = self.chunks[bisect_right(self.chunks, character, key=lambda chunk: chunk[0]) - 1]
        return byte + len(self.value[first:character].encode("utf-8"))


@dataclass(slots=True, eq=False)
class Element:
    """An element; `name` is "{namespace}local".  Bytes: of its start tag, behind that tag, and behind its end tag."""

    name: str
    attributes: dict[str, str]
    start: int
    parent: Element | None = None
    opened: int = 0
    closed: int = 0
    children: list[Element | Text] = field(default_factory=list)

    @property
    def local(self) -> str:
        return self.name.rpartition("}")[2]

    def elements(self, local: str | None = None) -> Iterator[Element]:
        """Child elements, of one local name where it is given."""
        for child in self.children:
            if isinstance(child, Element) and (local is None or child.local == local):
                yield child

    def find(self, *path: str) -> Element | None:
        """The first element down a path of local names."""
        found: Element | None = self
        for local in path:
            found = next(found.elements(local), None) if found is not None else None
        return found

    def get(self, local: str, default: str | None = None) -> str | None:
        """An attribute's value by its local name."""
        return next((value for name, value in self.attributes.items() if name.rpartition("}")[2] == local), default)


def as_utf8(raw: bytes) -> bytes:
    """XML in UTF-8: a part written in another encoding is turned into it, its declaration too."""
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        encoding = "utf-16"
    else:
        said = _ENCODING.match(raw)
        encoding = said[2].decode("ascii") if said else "utf-8"
    if encoding.lower() in ("utf-8", "us-ascii"):
        return raw
    try:
        text = raw.decode(encoding).encode("utf-8")
    except (UnicodeDecodeError, LookupError) as error:
        raise Unreadable("is damaged: a part of it is not in the encoding that it names") from error
    return _ENCODING.sub(rb"\1UTF-8", text, count=1)


_ENCODING = re.compile(rb"(\A\s*<\?xml[^>]{0,80}?encoding\s*=\s*[\"'])([A-Za-z][\w.-]*)")


def parse(raw: bytes) -> Element:
    """The tree of an XML file in UTF-8."""
    return _Builder(raw).root


class _Builder:
    def __init__(self, raw: bytes) -> None:
        self.raw = raw
        self.root: Element | None = None
        self.open: list[Element] = []
        self.number = 0
        self.words: list[tuple[str, int]] = []  # characters met since the last tag, with their bytes
        self.literal = False
        self.parser = expat.ParserCreate(namespace_separator="}")
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = lambda data: self.words.append((data, self.parser.CurrentByteIndex))
        self.parser.StartCdataSectionHandler = self._cdata
        self.parser.StartDoctypeDeclHandler = _refuse_doctype
        try:
            self.parser.Parse(raw, True)
        except expat.ExpatError as error:
            raise Unreadable(f"is damaged: line {error.lineno} of its text is no well-formed XML") from error

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        self.number += 1
        if self.number > MOST_ELEMENTS or len(self.open) >= MOST_DEPTH:
            raise Unreadable("is built from more parts within parts than any pattern is")
        self._flush()
        at = self.parser.CurrentByteIndex
        parent = self.open[-1] if self.open else None
        element = Element("{" * ("}" in name) + name, attributes, at, parent, _behind(self.raw, at))
        if parent is None:
            self.root = element
        else:
            parent.children.append(element)
        self.open.append(element)

    def _end(self, name: str) -> None:
        self._flush()
        element = self.open.pop()
        empty = self.raw.endswith(b"/>", element.start, element.opened)
        element.closed = element.opened if empty else _behind(self.raw, self.parser.CurrentByteIndex)

    def _flush(self) -> None:
        """Close the stretch of characters before a tag."""
        if not self.words:
            return
        chunks, length = [], 0
        for data, byte in self.words:
            chunks.append((length, byte))
            length += len(data)
        value = "".join(data for data, _ in self.words)
        self.open[-1].children.append(Text(value, chunks, self.parser.CurrentByteIndex, self.literal))
        self.words, self.literal = [], False

    def _cdata(self) -> None:
        self.literal = True


def _behind(raw: bytes, start: int) -> int:
    """The byte behind the tag that begins at `start`; a ">" within quotes does not end it."""
    return _TAG.match(raw, start).end()


_TAG = re.compile(rb"<(?:[^\"'>]|\"[^\"]*\"|'[^']*')*>")


def _refuse_doctype(*_: object) -> None:
    raise Unreadable("has a document type declaration in its XML, which is not read: no word processor writes one")
