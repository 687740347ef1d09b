"""Tells a printed count over the sizes from a number of stitches: "sc to last st, inc (26, 30, 34)", "sc (5, 6, 7)"."""

from __future__ import annotations

from collections.abc import Sequence

from lint.lexicon import Lexeme

_WORKED = ("stitch", "special", "increase", "decrease", "one_stitch", "group_word")
_ROW_NAMES = ("row", "round", "number", "ordinal", "the", "last", "dash", "and", "to")
_PLACES = ("any_stitch", "space", "ring", "turning_chain", "corner", "row_end", "edge", "side", "ending")
_LEAST = 8  # stitches of a row in any size: what is fewer may be how often


def counts_whole_row(before: Sequence[Lexeme], values: Sequence[int | None], behind: str) -> bool:
    """Whether a list in brackets behind a stitch's name, a place or "as Rnd 9" ends a row of more than this one clause, and so is its count.

    `before`: the row's words up to the list; `behind`: the kind of what stands behind it.
    """
    works = [item for item in before if item.kind in _WORKED]
    if _calls_row(before) or before and before[-1].kind in _PLACES:
        return behind in (".", "end")
    last = bool(works) and works[-1] is before[-1] and len(works) > 1
    figures = [value for value in values if value is not None]
    return last and behind in (".", "end") and bool(figures) and min(figures) >= _LEAST


def _calls_row(before: Sequence[Lexeme]) -> bool:
    """Whether words end in the row that they call: "as R9", "Rep Row 4", "as 4th row"."""
    at = len(before)
    while at and (before[at - 1].kind in _ROW_NAMES or before[at - 1].lower in ("r", "rs")):
        at -= 1
    return at < len(before) and at > 0 and before[at - 1].kind in ("as", "repeat")
