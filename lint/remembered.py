"""What is made of a few words alone is made once for them: a line is asked about by many stages, and the wordings of one
pattern recur in the next.

Memory stays bounded however many patterns are read: so many words are kept for each function, and none that are long.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache, wraps
from typing import ParamSpec, TypeVar

_P = ParamSpec("_P")
_T = TypeVar("_T")
_MOST = 4096  # for one function: the lines of some twenty patterns
_LONGEST = 400  # characters: what is longer hardly recurs, and would fill the memory
WHOLE_TEXTS = {"most": 4, "longest": 10**9}  # for what several stages ask of one pattern's text
_kept: list[Callable[[], None]] = []


def remembered(
    words: int = 0, most: int = _MOST, longest: int = _LONGEST
) -> Callable[[Callable[_P, _T]], Callable[_P, _T]]:
    """Makes a function keep what it made of its arguments, of which the one numbered `words` is a text.

    What it makes must hang on nothing but them, and must not be changed by who gets it.
    """

    def keeps(make: Callable[_P, _T]) -> Callable[_P, _T]:
        kept = lru_cache(most)(make)
        _kept.append(kept.cache_clear)

        @wraps(make)
        def told(*given: _P.args, **no_others: _P.kwargs) -> _T:
            return kept(*given) if len(given[words]) <= longest else make(*given)

        return told

    return keeps


def forget_all() -> None:
    """Keep nothing of what was made so far, as a new process does: for measuring how long it takes to make it."""
    for forget in _kept:
        forget()
