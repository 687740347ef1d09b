"""Puts comments into a .docx.  Bytes are only ever put in: taken out again, the document is the designer's, byte for byte.

A run that a comment begins or ends in is closed there and opened again with its own formatting; no other part of the
package changes but the comments themselves, their relation and their content type.
"""

from __future__ import annotations

import posixpath
import re
from collections.abc import Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape, quoteattr

from lint.documents.docx import Body, Node
from lint.documents.package import Package, repacked
from lint.documents.xmltree import Element, as_utf8, parse
from lint.source import Origin, Span

AUTHOR = "frogproof"
_TYPE = "application/vnd.openxmlformats-officedocument.wordprocessingml.comments+xml"
_UNWRITABLE = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


@dataclass(frozen=True, slots=True)
class Comment:
    """A comment: the stretch of the text that it is on, and its paragraphs."""

    span: Span
    paragraphs: tuple[str, ...]


def with_comments(raw: bytes, origin: Origin, comments: Sequence[Comment]) -> bytes:
    """A .docx with comments; `origin` as `docx.read` gave it for the same bytes.  Raises Unreadable as that does."""
    if not comments:
        return raw
    package = Package(raw)
    body = Body(package)
    body.blocks()
    part = _CommentsPart(package, body)
    ids = range(part.next_id, part.next_id + len(comments))
    marked = _Marks(body, origin)
    for number, comment in zip(ids, comments, strict=True):
        marked.add(number, comment.span)
    return repacked(package, {body.part: marked.written(), **part.written(zip(ids, comments, strict=True))})


@dataclass(frozen=True, slots=True)
class _Point:
    """A place in a text node, before a character."""

    node: Node
    at: int


class _Marks:
    """The marks to be put into the main part, by the byte that they go before."""

    def __init__(self, body: Body, origin: Origin) -> None:
        self._body = body
        self._origin = origin
        self._prefix, self._declared = _prefix_of(body.nodes[0].element if body.nodes else body.root, body.raw)
        self._at: dict[tuple[int, int], tuple[_Point, list[tuple[int, str]]]] = {}  # in the order they go in

    def add(self, number: int, span: Span) -> None:
        """Mark a stretch of the text as what a comment is on."""
        found = self._range(span)
        if found is None:
            return  # a document of text boxes alone: the comment stays in the list of comments
        start, end = found
        self._mark(start, 2, self._tag("commentRangeStart", number))
        reference = f"<{self._prefix}r{self._declared}>{self._tag('commentReference', number)}</{self._prefix}r>"
        self._mark(end, 1, self._tag("commentRangeEnd", number) + reference)

    def _range(self, span: Span) -> tuple[_Point, _Point] | None:
        """Where a comment begins and ends: at the words of the span, or at those nearest to it that can be marked."""
        free = [piece for piece in self._origin.within(span) if self._body.nodes[piece.node].free]
        if free:
            first, last = free[0], free[-1]
            start = max(0, span.start - first.start) + first.at
            end = max(min(span.end, last.end) - last.start + last.at, (start + 1) if first is last else 0)
            return _Point(self._body.nodes[first.node], start), _Point(self._body.nodes[last.node], end)
        others = [piece for piece in self._origin.pieces if piece.node >= 0 and self._body.nodes[piece.node].free]
        if not others:
            return None
        here = self._origin.piece(span.start)
        near = [piece for piece in others if here is not None and piece.place == here.place] or others
        piece = min(near, key=lambda piece: abs(piece.start - span.start))
        node = self._body.nodes[piece.node]
        return _Point(node, piece.at), _Point(node, piece.at + piece.end - piece.start)

    def _tag(self, local: str, number: int) -> str:
        name = self._prefix if self._prefix else ""
        return f'<{name}{local}{self._declared} {name or "w:"}id="{number}"/>'

    def _mark(self, point: _Point, order: int, tag: str) -> None:
        key = (point.node.text.byte_at(point.at), id(point.node))
        self._at.setdefault(key, (point, []))[1].append((order, tag))

    def written(self) -> bytes:
        """The main part with all marks in it."""
        insertions: list[tuple[int, int, bytes]] = []
        split: set[int] = set()
        for (byte, _), (point, tags) in self._at.items():
            marks = "".join(tag for _, tag in sorted(tags, key=lambda item: item[0]))
            place, before, after = self._opening(point, byte)
            if place == byte and 0 < point.at < len(point.node.text.value):
                split.add(id(point.node))
            insertions.append((place, len(insertions), before + marks.encode() + after))
        for node in self._body.nodes:
            if id(node) in split and node.element.get("space") != "preserve":
                tag_end = node.element.opened - 1
                insertions.append((tag_end, -1, b' xml:space="preserve"'))
        raw, parts, last = self._body.raw, [], 0
        for place, _, data in sorted(insertions, key=lambda item: item[:2]):
            parts += [raw[last:place], data]
            last = place
        return b"".join([*parts, raw[last:]])

    def _opening(self, point: _Point, byte: int) -> tuple[int, bytes, bytes]:
        """Where marks go, and what closes the run before them and opens it again behind them."""
        raw, node = self._body.raw, point.node
        run, element = node.run, node.element
        contents = [child for child in run.elements() if child.local != "rPr"]
        close_run = raw[_end_tag(raw, run) : run.closed]
        open_run = raw[run.start : run.opened] + _formatting(raw, run)
        whole = len(element.children) == 1
        if point.at == 0 and whole:
            if contents[0] is element:
                return run.start, b"", b""
            return element.start, close_run, open_run
        if point.at >= len(node.text.value) and whole:
            if contents[-1] is element:
                return run.closed, b"", b""
            return element.closed, close_run, open_run
        name = f"{self._prefix}t".encode()
        again = b"<" + name + self._declared.encode() + b' xml:space="preserve">'
        return byte, b"</" + name + b">" + close_run, open_run + again


def _formatting(raw: bytes, run: Element) -> bytes:
    properties = run.find("rPr")
    return raw[properties.start : properties.closed] if properties is not None else b""


def _end_tag(raw: bytes, element: Element) -> int:
    return raw.rindex(b"</", element.start, element.closed)


def _prefix_of(element: Element, raw: bytes) -> tuple[str, str]:
    """The prefix that the document writes its elements with, with the colon, and a declaration where there is none."""
    name = re.match(rb"<([\w.-]+:)?", raw[element.start : element.opened])
    prefix = (name[1] or b"").decode() if name is not None else ""
    namespace = element.name[1:].rpartition("}")[0]
    return (prefix, "") if prefix else ("", f" xmlns:w={quoteattr(namespace)}")


class _CommentsPart:
    """The part that holds the comments, new or with some in it already, and what ties it to the document."""

    def __init__(self, package: Package, body: Body) -> None:
        self._package = package
        self._body = body
        folder, name = posixpath.split(body.part)
        self._relations = posixpath.join(folder, "_rels", name + ".rels")
        self._namespace = body.root.name[1:].rpartition("}")[0]
        self._name, self._tied = self._find(folder)
        self._raw = as_utf8(package.optional(self._name) or b"")
        self.next_id = 1 + max(self._ids(), default=-1)

    def _find(self, folder: str) -> tuple[str, bool]:
        relations = self._package.optional(self._relations)
        for relation in parse(as_utf8(relations)).elements("Relationship") if relations else ():
            if (relation.get("Type") or "").endswith("/comments"):
                target = relation.get("Target") or ""
                path = target.lstrip("/") if target.startswith("/") else posixpath.join(folder, target)
                return posixpath.normpath(path), True
        name = posixpath.join(folder, "comments.xml")
        while self._package.has(name):  # one that nothing refers to
            name = name.replace(".xml", "0.xml")
        return name, False

    def _ids(self) -> list[int]:
        found = re.findall(rb":id=[\"'](\d{1,9})[\"']", self._raw)
        found += re.findall(
            rb"<\w+:comment(?:RangeStart|RangeEnd|Reference)[^>]*?:id=[\"'](\d{1,9})[\"']", self._body.raw
        )
        return [int(one) for one in found]

    def written(self, comments) -> dict[str, bytes]:
        """The parts that change."""
        added = "".join(self._comment(number, comment) for number, comment in comments).encode("utf-8")
        parts = {self._name: self._with(added)}
        if self._tied:
            return parts
        kind = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/comments"
        if "purl.oclc.org" in self._namespace:
            kind = "http://purl.oclc.org/ooxml/officeDocument/relationships/comments"
        target = posixpath.basename(self._name)
        relations = self._package.optional(self._relations)
        space = "http://schemas.openxmlformats.org/package/2006/relationships"
        if relations is None:
            relations = f'<?xml version="1.0" encoding="UTF-8" standalone="yes"?><Relationships xmlns="{space}"></Relationships>'.encode()
        relations = as_utf8(relations)
        number = 1
        while f'"rIdFrogproof{number}"'.encode() in relations:
            number += 1
        tie = f'<Relationship xmlns="{space}" Id="rIdFrogproof{number}" Type="{kind}" Target="{target}"/>'
        parts[self._relations] = _before_end(relations, tie.encode())
        types = as_utf8(self._package.read("[Content_Types].xml"))
        space = "http://schemas.openxmlformats.org/package/2006/content-types"
        override = f'<Override xmlns="{space}" PartName="/{self._name}" ContentType="{_TYPE}"/>'
        parts["[Content_Types].xml"] = _before_end(types, override.encode())
        return parts

    def _with(self, added: bytes) -> bytes:
        if not self._raw:
            head = f'<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<w:comments xmlns:w={quoteattr(self._namespace)}>'
            return head.encode() + added + b"</w:comments>"
        return _before_end(self._raw, added)

    def _comment(self, number: int, comment: Comment) -> str:
        paragraphs = "".join(
            f'<w:p><w:r><w:t xml:space="preserve">{escape(_UNWRITABLE.sub(chr(0xFFFD), text))}</w:t></w:r></w:p>'
            for text in comment.paragraphs
        )
        return (
            f'<w:comment xmlns:w={quoteattr(self._namespace)} w:id="{number}" w:author={quoteattr(AUTHOR)} '
            f'w:initials="fp">{paragraphs}</w:comment>'
        )


def _before_end(raw: bytes, added: bytes) -> bytes:
    """An XML file with something put in as the last of its root."""
    root = parse(raw)
    if raw.endswith(b"/>", root.start, root.opened):
        name = re.match(rb"<([\w.:-]+)", raw[root.start : root.opened])[1]
        return raw[: root.opened - 2] + b">" + added + b"</" + name + b">" + raw[root.opened :]
    end = _end_tag(raw, root)
    return raw[:end] + added + raw[end:]
