"""Tells "1st", "2nd", "21st" from figures with a stitch behind them ("2st"), and where "1st" is just "first"."""

from __future__ import annotations

_ORDINAL_ENDINGS = {"st", "nd", "rd", "th", "d"}
_FIRST_AND = (["and", "last"], ["&", "last"])
_NUMBERED_ON = ("and", "&", ",", "/", "-", "–", "to", "or", "row", "rows", "rnd", "rnds", "round", "rounds", "r", "rd")
_COUNTED_FROM = ("st", "sts", "stitch", "stitches", "ch", "chain", "chains")  # "1st ch from hook", "1st and 2nd st"


def is_the_first(behind: list[str]) -> bool:
    """Whether "1st" is just "first", "1st sc", "1st corner", "1st st of the round", by the two words behind it."""
    if not behind or behind[0] in _NUMBERED_ON:
        return behind in _FIRST_AND
    return behind[0] not in _COUNTED_FROM or behind[1:] == ["of"]


def is_ordinal(number: str, ending: str) -> bool:
    """Whether a figure with these letters behind it tells a place in a row and not a number of stitches: "21st", not "2st"."""
    if ending not in _ORDINAL_ENDINGS:
        return False
    if ending == "st":
        return number.endswith("1") and not number.endswith("11")
    return True
