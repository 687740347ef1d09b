"""Numbers as lists print them: 1, a, iv, First."""

from __future__ import annotations

from collections.abc import Callable

_MOST = 100_000  # no list counts further
_ROMAN = (
    ("m", 1000), ("cm", 900), ("d", 500), ("cd", 400), ("c", 100), ("xc", 90), ("l", 50), ("xl", 40),
    ("x", 10), ("ix", 9), ("v", 5), ("iv", 4), ("i", 1),
)  # fmt: skip
_CARDINALS = ("Zero", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven", "Twelve")
_ORDINALS = (
    "Zeroth", "First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth", "Tenth", "Eleventh",
    "Twelfth",
)  # fmt: skip


def as_number(words: str | None, default: int = 0) -> int:
    """A whole number of a document's own markup; the default for anything else, and nothing beyond what a list counts."""
    try:
        return max(-_MOST, min(_MOST, int(words or "")))
    except ValueError:
        return default


def roman(number: int) -> str:
    """ "iv"; figures where the Romans had none."""
    if not 0 < number < 4000:
        return str(number)
    text = ""
    for sign, value in _ROMAN:
        times, number = divmod(number, value)
        text += sign * times
    return text


def letters(number: int) -> str:
    """ "a" to "z", then "aa", "bb" as word processors go on."""
    if not 0 < number <= 780:
        return str(number)
    times, at = divmod(number - 1, 26)
    return chr(ord("a") + at) * (times + 1)


def ordinal(number: int) -> str:
    """ "1st"."""
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


# as .docx names them; other readers use the same
FORMATS: dict[str, Callable[[int], str]] = {
    "decimal": str,
    "decimalZero": "{:02d}".format,
    "lowerRoman": roman,
    "upperRoman": lambda number: roman(number).upper(),
    "lowerLetter": letters,
    "upperLetter": lambda number: letters(number).upper(),
    "ordinal": ordinal,
    "cardinalText": lambda number: _CARDINALS[number] if 0 <= number < len(_CARDINALS) else str(number),
    "ordinalText": lambda number: _ORDINALS[number] if 0 <= number < len(_ORDINALS) else ordinal(number),
    "none": lambda number: "",
}
