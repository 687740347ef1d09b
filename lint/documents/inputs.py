"""Finds and reads what is named on the command line: files, folders of them, standard input."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from lint.documents.registry import MOST_BYTES, SUFFIXES, patterns_in, read_document
from lint.documents.unreadable import Unreadable
from lint.source import SourceText


@dataclass(frozen=True, slots=True)
class Input:
    """A pattern that was asked for: its bytes and its text, or what is wrong with it; `folder`: the one it was found under."""

    path: str
    raw: bytes = b""
    source: SourceText | None = None
    problem: str = ""
    folder: str | None = None


def gather(paths: Iterable[str]) -> Iterator[Input]:
    """Every pattern under the paths, in order; - is standard input."""
    for name in paths:
        path = Path(name)
        if name == "-":
            yield _read(name, sys.stdin.buffer.read(MOST_BYTES + 1))
        elif path.is_dir():
            inside = patterns_in(path)
            if not inside:
                yield Input(name, problem=f"no pattern is in this folder (files that end in {' '.join(SUFFIXES)})")
            for item in inside:
                yield replace(_opened(item), folder=name)
        else:
            yield _opened(path)


def _opened(path: Path) -> Input:
    try:
        with path.open("rb") as file:
            return _read(str(path), file.read(MOST_BYTES + 1))
    except FileNotFoundError:
        return Input(str(path), problem="there is no such file")
    except (OSError, ValueError) as error:
        return Input(str(path), problem=f"cannot be read ({getattr(error, 'strerror', None) or error})")


def _read(path: str, raw: bytes) -> Input:
    try:
        return Input(path, raw, read_document(raw, path))
    except Unreadable as error:
        return Input(path, raw, problem=str(error))
