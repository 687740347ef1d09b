"""Workbooks that come out byte for byte the same whenever they are written: no clock goes into them."""

from __future__ import annotations

import io
import zipfile
from typing import Any

from lint.expression import expression

_WHEN = (1980, 1, 1, 0, 0, 0)  # the first moment that a zip file can name
_STAMP = expression(rb"(<dcterms:(?:created|modified)[^>]*>)[^<]*")


def as_bytes(book: Any) -> bytes:
    """An openpyxl workbook as the bytes of its file."""
    saved, out = io.BytesIO(), io.BytesIO()
    book.save(saved)
    with zipfile.ZipFile(saved) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for part in old.infolist():
            raw = old.read(part)
            if part.filename == "docProps/core.xml":
                raw = _STAMP.sub(rb"\g<1>1980-01-01T00:00:00Z", raw)
            kept = zipfile.ZipInfo(part.filename, _WHEN)
            kept.compress_type = zipfile.ZIP_DEFLATED
            new.writestr(kept, raw)
    return out.getvalue()
