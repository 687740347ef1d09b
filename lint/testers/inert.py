"""Text for the cells of a spreadsheet that no program will take for a formula."""

from __future__ import annotations

_BEGINS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "|", "%", "＝", "＋", "－", "＠")


def inert(text: str) -> str:
    """Text as a cell may hold it: what could begin a formula has an apostrophe before it, as spreadsheets take for text."""
    return (
        f"'{text}"
        if text.lstrip(" \u00a0").startswith(_BEGINS_A_FORMULA) or text.startswith(_BEGINS_A_FORMULA)
        else text
    )
