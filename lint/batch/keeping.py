"""What came of patterns, kept in a folder: a pattern that has not changed is not checked again.

The key is the pattern's bytes and path, its house, what is asked, and the program with its rules, byte for byte.  Any of
the files may be deleted at any time; one that is damaged or of another version counts for nothing.
"""

from __future__ import annotations

import hashlib
import json
import sys
import zlib
from dataclasses import asdict
from functools import lru_cache
from importlib import metadata
from pathlib import Path

from lint.batch.task import Task
from lint.reports.outputs import Asked, Output
from lint.reports.summary import Checked, Summary
from lint.rulefolder import rules_folder
from lint.writing import make_folder, write_files

_READ_WITH = ("spacy", "regex", "lxml", "striprtf", "pypdfium2", "jinja2")  # other versions may read otherwise
_MOST_BYTES = 200_000_000  # of one entry unpacked


class Kept:
    """A folder of results."""

    def __init__(self, folder: Path, asked: Asked) -> None:
        make_folder(folder)
        self._folder = folder
        self._asked = f"{asked}|{program()}".encode()

    def get(self, task: Task) -> Checked | None:
        """What came of a pattern at an earlier time, if nothing has changed since."""
        try:
            packed = self._path(task).read_bytes()
            data = json.loads(zlib.decompressobj().decompress(packed, _MOST_BYTES))
            shares = {Output(name): share for name, share in data["shares"].items()}
            return Checked(task.path, Summary(**data["summary"]), shares)
        except (OSError, ValueError, zlib.error, KeyError, TypeError, AttributeError, RecursionError):
            return None

    def put(self, task: Task, one: Checked) -> None:
        """Keep what came of a pattern.  Raises NotWritten."""
        if one.summary is None:
            return  # what was wrong may have been mended: a missing library, a fault of the program
        shares = {output.value: share for output, share in one.shares.items()}
        packed = zlib.compress(json.dumps({"summary": asdict(one.summary), "shares": shares}).encode(), 6)
        path = self._path(task)
        make_folder(path.parent)
        write_files({str(path): packed})

    def _path(self, task: Task) -> Path:
        parts = (
            self._asked,
            task.raw,
            task.path.encode("utf-8", "surrogatepass"),
            task.house.encode(),
            task.anchor.encode(),
        )
        digest = hashlib.sha256(b"".join(hashlib.sha256(part).digest() for part in parts)).hexdigest()
        return self._folder / digest[:2] / f"{digest[2:]}.kept"


@lru_cache(maxsize=1)
def program() -> str:
    """What tells this program with its rules from every other version."""
    digest = hashlib.sha256(sys.version.encode())
    for name in _READ_WITH:
        digest.update(f"{name} {metadata.version(name)};".encode())
    for folder, endings in ((Path(__file__).parents[1], (".py", ".html", ".css")), (rules_folder(), (".yaml",))):
        for path in sorted(path for path in folder.rglob("*") if path.suffix in endings):
            digest.update(path.relative_to(folder).as_posix().encode() + b"\0" + path.read_bytes() + b"\0")
    return digest.hexdigest()
