"""What is made of the rules alone is made once for them, however many patterns are read by them."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

_P = ParamSpec("_P")
_T = TypeVar("_T")
_MOST = 64  # a house's rulebook shares all but a few parts with the one that it was made from


def made_once(make: Callable[_P, _T]) -> Callable[_P, _T]:
    """A function of parts of the rulebook (and of words) that keeps what it made of them; they are told apart by identity.

    The parts are kept with what was made of them, so that their ids can't pass to others.
    """
    kept: dict[tuple, tuple[tuple, _T]] = {}

    @wraps(make)
    def made(*rules: _P.args, **no_others: _P.kwargs) -> _T:
        key = tuple(one if isinstance(one, str) else id(one) for one in rules)
        if key not in kept:
            while len(kept) >= _MOST:
                del kept[next(iter(kept))]
            kept[key] = (rules, make(*rules, **no_others))
        kept[key] = kept.pop(key)  # the one longest unused is the first to go
        return kept[key][1]

    return made
