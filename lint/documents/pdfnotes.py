"""Puts highlights with notes into a .pdf; what stands in the file stays as it is, the notes are added at its end."""

from __future__ import annotations

import ctypes
import hashlib
import io
from collections import defaultdict
from collections.abc import Sequence
from contextlib import closing
from dataclasses import dataclass
from typing import Any

from lint.documents.pdf import letters_of, opened, page_of
from lint.documents.unreadable import Unreadable
from lint.expression import expression
from lint.source import Origin, Span

AUTHOR = "frogproof"
_VERSION = expression(rb"/ID ?\[ ?<[0-9A-Fa-f]+> ?<([0-9A-Fa-f]{32})>")


@dataclass(frozen=True, slots=True)
class Note:
    """A note: the stretch of the text that it is on, its words, its colour as red, green, blue of 255."""

    span: Span
    text: str
    colour: tuple[int, int, int]


def with_notes(raw: bytes, origin: Origin, notes: Sequence[Note]) -> bytes:
    """A .pdf with notes; `origin` as `pdf.read` gave it for the same bytes.  Raises Unreadable as that does."""
    if not notes:
        return raw
    import pypdfium2
    import pypdfium2.raw as pdfium

    by_page: dict[int, list[tuple[Note, list[tuple[int, int]]]]] = defaultdict(list)
    for note in notes:
        runs = _runs(origin, note.span)
        for at, page in enumerate(sorted({page for page, _, _ in runs})):
            here = [(start, end) for number, start, end in runs if number == page]
            by_page[page].append(
                (note if at == 0 else Note(note.span, "(goes on from the page before)", note.colour), here)
            )
    with opened(raw) as document:
        for number, placed in by_page.items():
            with closing(page_of(document, number)) as page, closing(letters_of(page, number)) as textpage:
                for note, runs in placed:
                    _highlight(pdfium, page, textpage, note, runs)
        target = io.BytesIO()
        try:
            document.save(target, flags=pdfium.FPDF_INCREMENTAL)
        except pypdfium2.PdfiumError as error:
            raise Unreadable("cannot be marked: it cannot be written again") from error
    return _named_by_content(target.getvalue(), len(raw))


def _named_by_content(marked: bytes, own: int) -> bytes:
    """The marked file with a name for its version that is made of its content and not by chance, so that a second run
    gives the same file; `own`: how many bytes at its head are the document's as it was."""
    name = _VERSION.search(marked, own)
    if name is None:
        return marked
    digest = hashlib.md5(marked[: name.start(1)], usedforsecurity=False).hexdigest().upper().encode()
    return marked[: name.start(1)] + digest + marked[name.end(1) :]


def _runs(origin: Origin, span: Span) -> list[tuple[int, int, int]]:
    """Page, first letter, letter behind the last, for every stretch of letters that a span takes."""
    found = []
    for piece in origin.within(span):
        start = piece.at + max(0, span.start - piece.start)
        end = piece.at + min(piece.end, max(span.end, span.start + 1)) - piece.start
        found.append((piece.node, start, end))
    if not found:
        here = origin.piece(span.start)
        near = [piece for piece in origin.pieces if piece.node >= 0 and here is not None and piece.place == here.place]
        if near:
            piece = min(near, key=lambda piece: abs(piece.start - span.start))
            found.append((piece.node, piece.at, piece.at + piece.end - piece.start))
    return found


def _highlight(pdfium: Any, page: Any, textpage: Any, note: Note, runs: list[tuple[int, int]]) -> None:
    boxes = []
    for start, end in runs:
        for at in range(textpage.count_rects(start, end - start)):
            boxes.append(textpage.get_rect(at))
    if not boxes:
        return
    annotation = pdfium.FPDFPage_CreateAnnot(page, pdfium.FPDF_ANNOT_HIGHLIGHT)
    if not annotation:
        raise Unreadable("cannot be marked: its pages take no notes")
    for left, bottom, right, top in boxes:
        quad = pdfium.FS_QUADPOINTSF(left, top, right, top, left, bottom, right, bottom)
        pdfium.FPDFAnnot_AppendAttachmentPoints(annotation, ctypes.byref(quad))
    around = pdfium.FS_RECTF(
        min(box[0] for box in boxes),
        max(box[3] for box in boxes),
        max(box[2] for box in boxes),
        min(box[1] for box in boxes),
    )
    pdfium.FPDFAnnot_SetRect(annotation, ctypes.byref(around))
    pdfium.FPDFAnnot_SetColor(annotation, pdfium.FPDFANNOT_COLORTYPE_Color, *note.colour, 255)
    for key, words in (("Contents", note.text), ("T", AUTHOR)):
        encoded = ctypes.create_string_buffer(words.encode("utf-16-le", "replace") + b"\0\0")
        pdfium.FPDFAnnot_SetStringValue(annotation, key.encode(), ctypes.cast(encoded, pdfium.FPDF_WIDESTRING))
    pdfium.FPDFAnnot_SetFlags(annotation, 4)  # printed, too
    pdfium.FPDFPage_CloseAnnot(annotation)
