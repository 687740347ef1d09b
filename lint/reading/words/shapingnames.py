"""Entries that name an increase or a decrease and tell beside it how it is worked: "V = increase, 2 sc in the same stitch"."""

from __future__ import annotations

from itertools import pairwise

from lint.lexeme import Lexeme

_APART = (",", ";", ":", "dash", "=")
_SHAPINGS = ("increase", "decrease")
_THAT_IS = ("that", "is", "i.e", "i.e.", "ie", "meaning")
_ALIKE = ("make", "in", "the", "same", "next", "any_stitch", "stitch", "number", "together", "over", "as", ".")
_MORE = ("chain", "skip", "each", "special", "join")


def recipe_beside(words: list[Lexeme]) -> list[Lexeme] | None:
    """The words that tell how a shaping is worked, where its name stands apart from them; None where it does not.

    The name is no work beside the work that explains it: both are one.
    """
    sides, _ = _sides(words)
    name = next((side for side in sides if _bare(side)), None)
    if name is None:
        return None
    told = next(side for side in sides if side is not name)
    while told and told[0].lower.strip(".,") in _THAT_IS:
        told = told[1:]
    return told


def shaping_told(words: list[Lexeme]) -> list[Lexeme]:
    """The name alone, where the words beside it tell the same: two single crochet in one place, or two together as one."""
    told = recipe_beside(words)
    if told is None:
        return words
    sides, in_brackets = _sides(words)
    shaping = next(word for side in sides if _bare(side) for word in side if word.kind in _SHAPINGS)
    if any(word.value != "sc" for word in words if word.kind == "stitch"):
        return words
    if in_brackets and all(word.kind not in _MORE and word.number < 3 for word in told):
        return [shaping]  # "increase (sc twice in one stitch)", "decrease (invisible)"
    return [shaping] if _tells(told, shaping.kind == "increase") else words


def _sides(words: list[Lexeme]) -> tuple[tuple[list[Lexeme], ...], bool]:
    """What stands before and behind the one sign that sets a name apart; whether the second stands in brackets."""
    words = words[:-1] if words and words[-1].kind == "." else words
    opened = next((at for at, word in enumerate(words) if word.kind == "("), 0)
    at = next((at for at, word in enumerate(words) if word.kind in _APART), 0)
    if opened and words[-1].kind == ")" and not 0 < at < opened:
        return (words[:opened], words[opened + 1 : -1]), True
    return ((words[:at], words[at + 1 :]) if 0 < at < len(words) - 1 else ()), False


def _bare(words: list[Lexeme]) -> bool:
    """ "increase", "single crochet increase", "increase by 1 stitch"."""
    at = next((at for at, word in enumerate(words) if word.kind in _SHAPINGS), None)
    if at is None or [word.kind for word in words[:at]] not in ([], ["stitch"]):
        return False
    return all(
        word.kind in ("by", "any_stitch") or word.kind == "number" and word.number == 1 for word in words[at + 1 :]
    )


def _tells(words: list[Lexeme], grows: bool) -> bool:
    """Whether words tell two in one, or two as one, and nothing besides."""
    kinds = [word.kind for word in words]
    if not set(kinds) <= set(_ALIKE):
        return False
    numbers = [word.number for word in words if word.kind == "number"]
    ones = [number for number in numbers if number == 1]
    if grows:
        first = next((at for at, kind in enumerate(kinds) if kind == "number"), None)
        if first is None or "in" not in kinds or "together" in kinds or "over" in kinds:
            return False
        counted = kinds[first + 1 : first + 2] in (["stitch"], ["any_stitch"])
        return counted and numbers[0] == 2 and numbers[1:] == ones and kinds.index("in") > first
    as_one = all(one.kind == "as" for one, number in pairwise(words) if number.kind == "number" and number.number == 1)
    return (
        numbers.count(2) == 1 and len(numbers) == 1 + len(ones) and as_one and ("together" in kinds or "over" in kinds)
    )
