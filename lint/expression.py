"""A regular expression by its pattern: compiled when it is first used, and kept.

Hundreds of them stand in the modules, and one text needs perhaps half: to compile them all at the start would take a third
of a second.  A pattern that is looked up again costs as much as a look into a dictionary; from run to run `compiled` keeps
those of the modules.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import regex

from lint.compiled import compiled

# more than the modules hold; beyond them are those made of an author's own words
_MOST_KEPT = 4096


class Expression:
    """Stands for `regex.compile(pattern, flags)` and has its methods."""

    def __init__(self, pattern: str, flags: int = 0, own_words: bool = False) -> None:
        self.pattern = pattern
        self._flags = flags
        self._own_words = own_words

    def __getattr__(self, name: str) -> Any:
        """A method of the compiled expression, which from now on is this one's own attribute: it is looked for here once."""
        if name.startswith("__"):
            raise AttributeError(name)
        if "_compiled" not in self.__dict__:
            make = regex.compile if self._own_words else compiled
            self._compiled = make(self.pattern, self._flags)
        method = getattr(self._compiled, name)
        setattr(self, name, method)
        return method

    def __repr__(self) -> str:
        return f"Expression({self.pattern!r})"


@lru_cache(_MOST_KEPT)
def expression(pattern: str, flags: int = 0, own_words: bool = False) -> Expression:
    """The expression of this pattern; `flags` are those of `regex`.

    `own_words`: it is made of words of an author's, which are not kept when the run is over.
    Raises regex.error not here but at its first use.
    """
    return Expression(pattern, flags, own_words)
