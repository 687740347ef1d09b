"""The templates of the HTML outputs, with everything that comes from a pattern or a report made safe to show."""

from __future__ import annotations

import sys
from contextlib import suppress
from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FileSystemBytecodeCache, FileSystemLoader, StrictUndefined
from jinja2.bccache import Bucket
from markupsafe import Markup, escape

from lint.reports import wording
from lint.writing import NotWritten, make_folder

_TEMPLATES = Path(__file__).parent / "templates"


@lru_cache(maxsize=1)
def environment() -> Environment:
    """The templates; whatever is put into them is escaped, and its control characters are shown."""
    environment = Environment(
        loader=FileSystemLoader(_TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_inert,
        trim_blocks=True,
        lstrip_blocks=True,
        bytecode_cache=_kept(),
    )
    environment.filters |= {"opening": wording.opening, "question": wording.question, "figure": wording.as_figure}
    return environment


def _inert(value: object) -> object:
    """Text with control characters shown; a carriage return is spelled out, or browsers would make a new line of it."""
    if type(value) is not str:
        return value
    value = wording.tame(value)
    return Markup(escape(value).replace("\r", Markup("&#13;"))) if "\r" in value else value


def _kept() -> FileSystemBytecodeCache | None:
    """Where compiled templates are kept: beside them, as Python keeps its modules, and under the same terms."""
    if sys.dont_write_bytecode:
        return None
    folder = _TEMPLATES / "__pycache__"
    try:
        make_folder(folder)
    except NotWritten:
        return None
    return _BesideTemplates(str(folder))


class _BesideTemplates(FileSystemBytecodeCache):
    """A folder that can't be written to is no fault of the pattern's: the template is compiled anew each time."""

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a compiled template, if it can be kept."""
        with suppress(OSError):
            super().dump_bytecode(bucket)
