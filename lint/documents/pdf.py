"""Reads .pdf: the text layer, letter by letter with its place on the page, put back into the lines that a reader sees.

Letters come from PDFium; `columns` orders what stands on a page, `flow` joins wrapped lines and leaves out running heads.
A scan, a picture of a page without letters, is refused: to read it would be to guess.
"""

from __future__ import annotations

import ctypes
import math
from collections import Counter
from collections.abc import Iterator
from contextlib import closing, contextmanager
from itertools import pairwise
from typing import Any

from lint.documents.columns import Fragment, Line, page_lines
from lint.documents.flow import flowed
from lint.documents.lines import Words
from lint.documents.unreadable import Unreadable
from lint.source import SourceText

MOST_PAGES = 600
MOST_LETTERS = 60_000  # on one page
_JUMP = 1.6  # of the letters' height: a wider gap on a line parts cells or columns
_LIGATURES = {"ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl", "ﬃ": "ffi", "ﬄ": "ffl", "ﬅ": "st", "ﬆ": "st"}
_HYPHENS = ("\x02", "\ufffe", "\xad")  # what PDFium says of a hyphen at a line's end
SCANNED = "is a scan: its pages are pictures, without letters that could be read. Give the file that it was made from"


def read(raw: bytes, path: str) -> SourceText:
    """The text of a .pdf; raises Unreadable."""
    pages: list[list[Line]] = []
    wordless: list[int] = []
    with opened(raw) as document:
        if len(document) > MOST_PAGES:
            raise Unreadable(f"has more than {MOST_PAGES} pages, which no pattern has")
        for number in range(len(document)):
            with closing(page_of(document, number)) as page:
                fragments, width = _fragments(page, number), page.get_size()[0]
            if not fragments:
                wordless.append(number + 1)
            pages.append(page_lines(fragments, number, width))
    if len(wordless) == len(pages):
        raise Unreadable(SCANNED if pages else "has no pages")
    notes = []
    if wordless:
        numbers = ", ".join(str(number) for number in wordless)
        notes.append(f"Without letters to read, and passed over: page {numbers}")
    return flowed(pages, path, notes)


@contextmanager
def opened(raw: bytes) -> Iterator[Any]:
    """A PDF as PDFium opens it; whatever is wrong with it is Unreadable."""
    import pypdfium2

    try:
        document = pypdfium2.PdfDocument(raw)
    except pypdfium2.PdfiumError as error:
        protected = "password" in str(error).lower()
        raise Unreadable("is protected by a password" if protected else "is damaged: it is no whole PDF") from error
    with closing(document):
        yield document


def page_of(document: Any, number: int) -> Any:
    """A page by its number from 0; raises Unreadable."""
    import pypdfium2

    try:
        return document[number]
    except pypdfium2.PdfiumError as error:
        raise Unreadable(f"is damaged: its page {number + 1} cannot be opened") from error


def letters_of(page: Any, number: int) -> Any:
    """What PDFium knows of a page's letters; raises Unreadable."""
    import pypdfium2

    try:
        return page.get_textpage()
    except pypdfium2.PdfiumError as error:
        raise Unreadable(f"is damaged: the text of its page {number + 1} cannot be read") from error


def _fragments(page: Any, number: int) -> list[Fragment]:
    """Runs of letters on one line without a wide gap, in no order that could be trusted."""
    with closing(letters_of(page, number)) as textpage:
        letters = _Letters(textpage, number)
        return list(letters.fragments())


class _Letters:
    """The letters of one page."""

    def __init__(self, textpage: Any, number: int) -> None:
        import pypdfium2.raw as pdfium

        self._api, self._page, self._number = pdfium, textpage, number
        self._of = textpage.count_chars()
        if self._of > MOST_LETTERS:
            raise Unreadable(f"has more than {MOST_LETTERS:,} letters on page {number + 1}, which no pattern has")
        turned = Counter(
            round(pdfium.FPDFText_GetCharAngle(textpage, at) / (math.pi / 2)) % 4 for at in range(self._of)
        )
        self._turn = turned.most_common(1)[0][0] if turned else 0  # most letters stand upright; on a turned page, none

    def fragments(self) -> Iterator[Fragment]:
        """The runs of letters; words that stand across the page's own direction are left out."""
        run: list[tuple[int, str, tuple[float, float, float, float], float]] = []
        unknown = 0
        for at in range(self._of):
            sign = chr(self._api.FPDFText_GetUnicode(self._page, at) % 0x110000)
            if sign in "\r\n":
                yield from self._closed(run)
                run = []
                continue
            if round(self._api.FPDFText_GetCharAngle(self._page, at) / (math.pi / 2)) % 4 != self._turn:
                continue
            box, size = self._box(at), self._size(at)
            if run and self._parts(run[-1], box, size, sign):
                yield from self._closed(run)
                run = []
            unknown += sign == "\ufffd" or self._api.FPDFText_HasUnicodeMapError(self._page, at) > 0
            run.append((at, sign, box, size))
        yield from self._closed(run)
        if unknown * 5 > self._of:
            raise Unreadable(
                f"does not say which letters it shows (page {self._number + 1}); give the file it was made from"
            )

    def _box(self, at: int) -> tuple[float, float, float, float]:
        """Left, baseline, right, top of a letter, the page turned so that the letter stands upright."""
        left, bottom, right, top = self._page.get_charbox(at, loose=True)
        x, y = ctypes.c_double(), ctypes.c_double()
        self._api.FPDFText_GetCharOrigin(self._page, at, x, y)
        corners = [self._upright(*corner) for corner in ((left, bottom), (right, top))]
        base = self._upright(x.value, y.value)[1]
        return (
            min(corner[0] for corner in corners),
            base,
            max(corner[0] for corner in corners),
            max(corner[1] for corner in corners),
        )

    def _upright(self, x: float, y: float) -> tuple[float, float]:
        return ((x, y), (-y, x), (-x, -y), (y, -x))[self._turn]  # PDFium counts a letter's turn clockwise

    def _size(self, at: int) -> float:
        """The letter's size in points: what its font is set in, as large as the page shows it."""
        matrix = self._api.FS_MATRIX()
        scale = 1.0
        if self._api.FPDFText_GetMatrix(self._page, at, matrix):
            scale = math.hypot(matrix.c, matrix.d) or 1.0
        return max(1.0, self._api.FPDFText_GetFontSize(self._page, at) * scale)

    @staticmethod
    def _parts(last: tuple, box: tuple, size: float, sign: str) -> bool:
        """Whether a letter begins a new run."""
        _, _, before, height = last
        tall = max(size, height)
        gap = box[0] - before[2]
        return abs(box[1] - before[1]) > 0.5 * tall or gap > _JUMP * tall or gap < -1.5 * tall and sign != " "

    def _closed(self, run: list) -> Iterator[Fragment]:
        while run and run[0][1].isspace():
            run = run[1:]
        while run and run[-1][1].isspace():
            run = run[:-1]
        if not run:
            return
        heights = sorted(height for _, sign, _, height in run if not sign.isspace())
        size = heights[len(heights) // 2]
        base = sorted(box[1] for _, sign, box, _ in run if not sign.isspace())
        words = tuple(self._words(run))
        yield Fragment(
            words,
            min(box[0] for _, _, box, _ in run),
            max(box[2] for _, _, box, _ in run),
            base[len(base) // 2],
            size,
            self._bold(run[0][0]) and self._bold(run[-1][0]),
            next((last[2][2] for last, one in pairwise(run) if one[1].isspace()), run[-1][2][2]) - run[0][2][0],
        )

    def _words(self, run: list) -> Iterator[Words]:
        """The letters as words, those together that follow each other in the page's own numbering."""
        text, start = "", -1
        last: tuple | None = None
        for at, sign, box, size in run:
            raised = last is not None and box[1] > last[2][1] + 0.15 * last[3] and sign.isdigit() and last[1].isdigit()
            sign = "-" if sign in _HYPHENS else sign
            if text and (
                at != start + len(text) or sign in _LIGATURES or raised or last[1] == " " and _wide(last[2], box)
            ):
                yield Words(text, self._number, start)
                text = ""
            if raised or last is not None and last[1] == " " and _wide(last[2], box):
                yield Words(" ")  # PDFium shows one space for several
            if sign in _LIGATURES:
                yield Words(_LIGATURES[sign])
            else:
                text, start = text + sign, start if text else at
            last = (at, sign, box, size)
        if text:
            yield Words(text, self._number, start)

    def _bold(self, at: int) -> bool:
        weight = self._api.FPDFText_GetFontWeight(self._page, at)
        name = ctypes.create_string_buffer(128)
        flags = ctypes.c_int()
        self._api.FPDFText_GetFontInfo(self._page, at, name, 128, ctypes.byref(flags))
        return weight >= 600 or b"bold" in name.value.lower()


def _wide(space: tuple[float, float, float, float], box: tuple[float, float, float, float]) -> bool:
    """Whether there is room for another space between a space and the letter after it."""
    return box[0] - space[2] > 0.8 * (space[2] - space[0])
