"""Files written whole or not at all, and never over what was read.  Nothing else in the package writes a file.

Each file is written under a name of its own beside its place, forced to the disk, and only then moved to its place, so that
a full disk, a lost power supply or an interruption leaves either the old file or the new one.
"""

from __future__ import annotations

import os
import secrets
import shutil
import stat
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

Content = str | bytes | Iterable[bytes]
STANDARD = "-"  # standard output, or standard input


class NotWritten(Exception):
    """A file that cannot be written; the message is one sentence that begins with its path."""


def refuse_unwritable(paths: Iterable[str], inputs: Iterable[str | Path] = ()) -> None:
    """Raises NotWritten for a place that cannot be written to, is named twice, or holds one of the inputs."""
    held = {identity for path in inputs if (identity := _identity(path)) is not None}
    places: dict[str, str] = {}
    for path in paths:
        if path == STANDARD:
            continue
        place = os.path.realpath(path)
        if place in places:
            raise NotWritten("two outputs cannot go to one file")
        places[place] = path
        if os.path.isdir(place):
            raise NotWritten(f"{path}: cannot be written (that is a folder)")
        folder = os.path.dirname(place)
        exists = os.path.exists(place)
        if not os.path.isdir(folder) or not os.access(place if exists else folder, os.W_OK):
            raise NotWritten(f"{path}: cannot be written (no such folder, or no leave to write there)")
        if exists and _identity(place) in held:
            raise NotWritten(f"{path}: that is one of the files that were read; name another file to write to")


def write_files(outputs: Mapping[str, Content], inputs: Iterable[str | Path] = ()) -> None:
    """Write every output to its path, "-" for standard output, or none of them; `inputs` are what was read.

    Raises NotWritten; then no file has been touched, for all are whole beside their places before the first is moved.
    """
    refuse_unwritable(outputs, inputs)
    ready: list[tuple[Path, str]] = []
    try:
        for path, content in outputs.items():
            if path == STANDARD:
                continue
            with _told(path):
                place = os.path.realpath(path)  # a link stays a link
                if os.path.exists(place) and not stat.S_ISREG(os.stat(place).st_mode):
                    with open(place, "wb") as device:  # a pipe or the like: there is nothing to lose
                        device.writelines(_pieces(content))
                    continue
                beside = Path(os.path.dirname(place)) / f".frogproof-{secrets.token_hex(6)}.part"
                ready.append((beside, place))
                _write_beside(beside, place, content)
        for beside, place in ready:
            with _told(place):
                os.replace(beside, place)
    finally:
        for beside, _ in ready:
            beside.unlink(missing_ok=True)
    if STANDARD in outputs:
        for piece in _pieces(outputs[STANDARD]):
            sys.stdout.buffer.write(piece)


def make_folder(path: Path) -> None:
    """A folder that files are to go into, with those above it.  Raises NotWritten."""
    with _told(str(path)):
        path.mkdir(parents=True, exist_ok=True)


def _write_beside(beside: Path, place: str, content: Content) -> None:
    with open(beside, "xb") as file:
        if os.path.exists(place):
            shutil.copymode(place, beside)
        file.writelines(_pieces(content))
        file.flush()
        os.fsync(file.fileno())


def _pieces(content: Content) -> Iterable[bytes]:
    if isinstance(content, str):
        return (content.encode("utf-8", "backslashreplace"),)
    return (content,) if isinstance(content, bytes) else content


@contextmanager
def _told(path: str) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise NotWritten(f"{path}: cannot be written ({error.strerror or error})") from error


def _identity(path: str | Path) -> tuple[int, int] | None:
    """What tells a file from every other, whatever links lead to it; None where there is none."""
    try:
        found = os.fstat(sys.stdin.fileno()) if path == STANDARD else os.stat(path)
    except (OSError, ValueError):
        return None
    return (found.st_dev, found.st_ino) if stat.S_ISREG(found.st_mode) else None
