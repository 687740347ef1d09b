"""The kinds of documents that can be read: READERS is the one registry, by content first and by name where content is mute.

Readers are imported when a document of their kind is met, so that plain text starts as fast as ever.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from lint.documents.bounds import within_bounds
from lint.documents.plaintext import decoded
from lint.documents.unreadable import Unreadable
from lint.source import SourceText

MOST_BYTES = 60_000_000  # of a file; pictures are in it
MOST_MARKUP = 20_000_000  # of a file that is all text
OWN_REPORT = b'<meta name="generator" content="frogproof">'  # of a page that this program wrote


@dataclass(frozen=True, slots=True)
class Reader:
    """How one kind of document is known and read: the ends of its files' names, its first bytes, its module."""

    kind: str
    suffixes: tuple[str, ...]
    begins: Callable[[bytes], bool]
    read: Callable[[bytes, str], SourceText]


def _docx(raw: bytes, path: str) -> SourceText:
    from lint.documents import docx

    return docx.read(raw, path)


def _odt(raw: bytes, path: str) -> SourceText:
    from lint.documents import odt

    return odt.read(raw, path)


def _rtf(raw: bytes, path: str) -> SourceText:
    from lint.documents import rtf

    return rtf.read(raw, path)


def _pdf(raw: bytes, path: str) -> SourceText:
    from lint.documents import pdf

    return pdf.read(raw, path)


def _html(raw: bytes, path: str) -> SourceText:
    from lint.documents import webpage

    return webpage.read(raw, path)


def _text(raw: bytes, path: str) -> SourceText:
    return SourceText(decoded(raw), path)


def _zipped(part: bytes) -> Callable[[bytes], bool]:
    return lambda raw: raw.startswith(_ZIP) and part in raw


def _marked_up(raw: bytes) -> bool:
    head = raw[:1000].lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    return head.startswith((b"<!doctype html", b"<html", b"<?xml")) and b"<html" in raw[:4000].lower()


_ZIP = b"PK\x03\x04"

READERS = (
    Reader("pdf", (".pdf",), lambda raw: b"%PDF-" in raw[:1024], _pdf),
    Reader("docx", (".docx", ".docm"), _zipped(b"word/"), _docx),
    Reader("odt", (".odt",), _zipped(b"content.xml"), _odt),
    Reader("rtf", (".rtf",), lambda raw: raw.startswith(b"{\\rtf"), _rtf),
    Reader("html", (".html", ".htm", ".xhtml"), _marked_up, _html),
    Reader("text", (".txt", ".md", ".markdown", ".text"), lambda raw: False, _text),
)
SUFFIXES = tuple(suffix for reader in READERS for suffix in reader.suffixes)

# what is no pattern's text, by its first bytes, and what is said of it
_REFUSED = (
    (b"\xd0\xcf\x11\xe0", "is an old or protected word-processor file; save it as .docx without a password"),
    (_ZIP, "is a zip file, but no .docx or .odt document"),
    (b"\x89PNG", "is a picture; its words cannot be read"),
    (b"\xff\xd8\xff", "is a picture; its words cannot be read"),
    (b"GIF8", "is a picture; its words cannot be read"),
)


def read_document(raw: bytes, path: str) -> SourceText:
    """The text of a document of any kind, with its places; raises Unreadable with one sentence."""
    if len(raw) > MOST_BYTES:
        raise Unreadable(f"is larger than {MOST_BYTES // 1_000_000} MB, which no pattern is")
    reader = _reader(raw, path)
    if reader.kind in ("rtf", "html", "text") and len(raw) > MOST_MARKUP:
        raise Unreadable(f"is larger than {MOST_MARKUP // 1_000_000} MB, which no pattern is")
    try:
        return within_bounds(reader.read(raw, path))
    except (RecursionError, MemoryError) as error:
        raise Unreadable("is built from more parts within parts than any pattern is") from error


def _reader(raw: bytes, path: str) -> Reader:
    for reader in READERS:
        if reader.begins(raw):
            return reader
    suffix = Path(path).suffix.lower()
    named = next((reader for reader in READERS if suffix in reader.suffixes), READERS[-1])
    if raw.startswith(_ZIP) and named.kind in ("docx", "odt"):
        return named  # damaged, and its reader says how
    for begin, said in _REFUSED:
        if raw.startswith(begin):
            raise Unreadable(said)
    if named.kind not in ("text", "html"):
        raise Unreadable(f"is no {named.suffixes[0]} document, although it is named one")
    return named


def own_report(path: Path) -> bool:
    """Whether a file is a page that this program wrote."""
    if path.suffix.lower() not in (".html", ".htm"):
        return False
    try:
        with path.open("rb") as file:
            return OWN_REPORT in file.read(2000)
    except OSError:
        return False
