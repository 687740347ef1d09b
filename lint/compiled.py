"""Compiled expressions kept beside the modules, as Python keeps its modules: a cold start would compile hundreds of them anew.

To compile the expressions that one pattern needs takes almost half a second, to take them from here a hundredth of it.
They are kept under the terms of Python's own: none is added where `sys.dont_write_bytecode` is set, and a folder that can't
be written to is no fault of the pattern's.
"""

from __future__ import annotations

import atexit
import pickle
import sys
from contextlib import suppress
from importlib.util import cache_from_source
from pathlib import Path

import regex

_MOST_KEPT = 2000  # expressions; beyond them stand those of older versions of the modules
_Key = tuple[str, int]


def place() -> Path | None:
    """The file in which they are kept, for one version of Python and of the library; None where modules are kept nowhere."""
    tag = sys.implementation.cache_tag
    return Path(cache_from_source(__file__)).with_name(f"expressions.{tag}-{regex.__version__}.kept") if tag else None


class Kept:
    """Expressions by pattern and flags; those of earlier runs are unpacked when they are asked for."""

    def __init__(self, file: Path | None) -> None:
        """`file`: where they are kept from run to run; None: nowhere."""
        self._file = file
        self._packed = _read(file) if file is not None else {}
        self._new: dict[_Key, bytes] = {}

    def compiled(self, pattern: str, flags: int) -> regex.Pattern:
        """The expression.  Raises regex.error."""
        packed = self._packed.get((pattern, flags))
        if packed is not None:
            with suppress(Exception):  # whatever is wrong with what is kept, it can be made anew
                return pickle.loads(packed)
        made = regex.compile(pattern, flags)
        if self._file is not None:
            self._new[pattern, flags] = pickle.dumps(made)
        return made

    def write(self) -> None:
        """Keep what was compiled in this run."""
        if self._file is None or not self._new or sys.dont_write_bytecode:
            return
        from lint.writing import NotWritten, write_files

        earlier = _read(self._file)  # another process may have added to it
        kept = {**earlier, **self._new} if len(earlier) + len(self._new) <= _MOST_KEPT else self._new
        self._new = {}
        with suppress(NotWritten, OSError):
            write_files({str(self._file): pickle.dumps(kept)})


def _read(file: Path) -> dict[_Key, bytes]:
    with suppress(Exception):
        kept = pickle.loads(file.read_bytes())
        if isinstance(kept, dict):
            return kept
    return {}


_standing: Kept | None = None


def compiled(pattern: str, flags: int) -> regex.Pattern:
    """The expression, from those that are kept.  Raises regex.error."""
    global _standing
    if _standing is None:
        _standing = Kept(place())
        atexit.register(_standing.write)
    return _standing.compiled(pattern, flags)
