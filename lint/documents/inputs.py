"""Finds and reads what is named on the command line: files, folders of them, standard input."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePath

from lint.documents.registry import MOST_BYTES, SUFFIXES, own_report, read_document
from lint.documents.unreadable import Unreadable
from lint.source import SourceText

STANDARD_INPUT = "-"
IGNORED = "frogproof.ignore"  # in a folder of patterns: what is none of them


@dataclass(frozen=True, slots=True)
class Found:
    """A file that was asked for, or one in a folder that was; `name` is its path from that folder, or its own name."""

    path: str
    name: str
    problem: str = ""  # why there is nothing to read
    folder: str | None = None  # the one that was named


@dataclass(frozen=True, slots=True)
class Input:
    """A pattern that was asked for: its bytes and its text, or what is wrong with it; `folder`: the one it was found under."""

    path: str
    raw: bytes = b""
    source: SourceText | None = None
    problem: str = ""
    folder: str | None = None


def find(paths: Iterable[str], suffixes: Sequence[str] = SUFFIXES, ignore: Sequence[str] = ()) -> Iterator[Found]:
    """Every file under the paths, in order; of folders those of the kinds wanted, but for what is to be ignored.

    `ignore`: lines as a .gitignore has them, beside those of each folder's own frogproof.ignore.
    """
    for name in paths:
        if name != STANDARD_INPUT and os.path.isdir(name):
            yield from _inside(name, tuple(suffixes), ignore)
        else:
            yield Found(name, "standard-input" if name == STANDARD_INPUT else PurePath(name).name)


def _inside(folder: str, suffixes: tuple[str, ...], ignore: Sequence[str]) -> Iterator[Found]:
    ignored = _ignored(Path(folder), ignore)
    home = os.path.realpath(folder)
    number = 0
    for path, name in _walk(folder, "", ignored):
        if not name.lower().endswith(suffixes) or not os.path.isfile(path) or own_report(Path(path)):
            continue
        number += 1
        if os.path.islink(path) and not _is_in(os.path.realpath(path), home):
            yield Found(path, name, "is a link that leads out of its folder; name the file itself if it is wanted")
        else:
            yield Found(path, name, folder=folder)
    if not number:
        yield Found(
            folder, PurePath(folder).name, f"no pattern is in this folder (files that end in {' '.join(suffixes)})"
        )


def _walk(folder: str, below: str, ignored) -> Iterator[tuple[str, str]]:
    """Path and name from the top of every file, in the order of their names; hidden ones and links to folders are left."""
    try:
        entries = sorted(os.scandir(folder), key=lambda entry: entry.name)
    except OSError:
        return
    for entry in entries:
        name = f"{below}{entry.name}"
        if entry.name.startswith((".", "~$")):
            continue
        if entry.is_dir(follow_symlinks=False):
            if not ignored(f"{name}/"):
                yield from _walk(entry.path, f"{name}/", ignored)
        elif not ignored(name):
            yield entry.path, name


def _ignored(folder: Path, ignore: Sequence[str]):
    lines = list(ignore)
    try:
        lines += (folder / IGNORED).read_text(encoding="utf-8-sig", errors="replace").splitlines()
    except OSError:
        pass
    if not lines:
        return lambda name: False
    from pathspec import GitIgnoreSpec

    return GitIgnoreSpec.from_lines(lines).match_file


def _is_in(path: str, folder: str) -> bool:
    return os.path.commonpath([path, folder]) == folder


def content(found: Found) -> tuple[bytes, str]:
    """The bytes of a file, at most a few more than can be read, and "" or why there are none."""
    if found.problem:
        return b"", found.problem
    try:
        if found.path == STANDARD_INPUT:
            return sys.stdin.buffer.read(MOST_BYTES + 1), ""
        with open(found.path, "rb") as file:
            return file.read(MOST_BYTES + 1), ""
    except FileNotFoundError:
        return b"", "there is no such file"
    except (OSError, ValueError) as error:
        return b"", f"cannot be read ({getattr(error, 'strerror', None) or error})"


def gather(paths: Iterable[str]) -> Iterator[Input]:
    """Every pattern under the paths, read, in order; - is standard input."""
    for found in find(paths):
        raw, problem = content(found)
        source = None
        try:
            source = None if problem else read_document(raw, found.path)
        except Unreadable as error:
            problem = str(error)
        yield Input(found.path, raw, source, problem, found.folder)
