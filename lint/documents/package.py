"""Documents that are zip files of XML parts (.docx, .odt): opened within bounds, so that no bomb is unpacked."""

from __future__ import annotations

import io
import zipfile
import zlib

from lint.documents.unreadable import Unreadable

MOST_ENTRIES = 5_000
MOST_BYTES = 40_000_000  # of one part, unpacked; the longest pattern met is far below a hundredth of it


class Package:
    """A zip file's parts by name; every failure is Unreadable."""

    def __init__(self, raw: bytes) -> None:
        try:
            self._zip = zipfile.ZipFile(io.BytesIO(raw))
            self.entries = self._zip.infolist()
        except (zipfile.BadZipFile, ValueError, OSError, NotImplementedError) as error:
            raise Unreadable("is damaged: it is no whole zip file") from error
        if len(self.entries) > MOST_ENTRIES:
            raise Unreadable(f"holds more than {MOST_ENTRIES:,} parts, which no pattern does")
        self._names = {entry.filename: entry for entry in self.entries}

    def has(self, name: str) -> bool:
        """Whether there is a part of this name."""
        return name in self._names

    def read(self, name: str) -> bytes:
        """A part's bytes, no more of them than the bound allows."""
        try:
            with self._zip.open(self._names[name]) as part:
                data = part.read(MOST_BYTES + 1)
        except KeyError as error:
            raise Unreadable(f"is damaged: its part {name} is missing") from error
        except RuntimeError as error:  # what zipfile says of a password
            raise Unreadable("is protected by a password") from error
        except (zipfile.BadZipFile, zlib.error, EOFError, OSError, ValueError, NotImplementedError) as error:
            raise Unreadable(f"is damaged: its part {name} cannot be unpacked") from error
        if len(data) > MOST_BYTES:
            raise Unreadable(f"unpacks to more than {MOST_BYTES // 1_000_000} MB, which no pattern does")
        return data

    def optional(self, name: str) -> bytes | None:
        """A part's bytes, None where there is no such part."""
        return self.read(name) if self.has(name) else None


def repacked(package: Package, changed: dict[str, bytes]) -> bytes:
    """The package with some parts changed or added; every other part, and their order, as they were."""
    out = io.BytesIO()
    left = dict(changed)
    total = 0
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as target:
        for entry in package.entries:
            data = left.pop(entry.filename, None)
            data = package.read(entry.filename) if data is None else data
            total += len(data)
            if total > 10 * MOST_BYTES:
                raise Unreadable(f"unpacks to more than {10 * MOST_BYTES // 1_000_000} MB, which no pattern does")
            target.writestr(entry, data)
        for name, data in left.items():
            target.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), data, zipfile.ZIP_DEFLATED)
    return out.getvalue()
