"""Words that scanning, typing or a change of font has damaged, where only one word can have stood there.

"2l sc", "1 O sc" and "l dc" have a letter for a digit, "s1 st" and "lnc" a digit or letter for another letter, "and ch" is "2nd ch",
"Sp first st" and "Skin next dc" say to skip.  A damaged word that could have been two others is not touched.
"""

from __future__ import annotations

from dataclasses import replace

from lint.expression import expression
from lint.lexeme import Lexeme
from lint.tokens import LATIN

_OPENS = (",", ";", ".", ":", "(", "[", "{", "star", "dash", "and", "then")  # what a clause may begin behind
_STITCHES = ("stitch", "one_stitch", "special")
_COUNTED = (*_STITCHES, "increase", "decrease", "chain", "any_stitch")
_SMALL_L, _ROUND_O = ("l",), ("O", "o", "\N{CYRILLIC CAPITAL LETTER O}", "\N{CYRILLIC SMALL LETTER O}")
_INC = expression(r"['’`1lI|]NC|lnc")  # "İNC" and "inc" as a font or a scanner leaves them
_MIXED = expression(r"\p{Latin}\p{Cyrillic}|\p{Cyrillic}\p{Latin}")
_CROSSES = ("\N{CYRILLIC SMALL LETTER HA}", "\N{CYRILLIC CAPITAL LETTER HA}")  # for the x of "(sc, inc) x 4"
_SKIP = ("sp", "skin")
# what a damaged word may look like: a line without any of these has none
MAYBE_DAMAGED = expression(
    r"(?i)\bl\b|(?<!\p{L})х(?!\p{L})|\dl\b|\d ?[oо]\b|\bs1 st|['’`1l|]nc\b|\bsp\b|\bskin\b|\p{Latin}\p{Cyrillic}|\p{Cyrillic}\p{Latin}|\band ch"
)


def misprints_mended(lexemes: list[Lexeme]) -> list[Lexeme]:
    """The lexemes with each damaged word as what it must have been, which its `meant` then says."""
    mended: list[Lexeme] = []
    at = 0
    while at < len(lexemes):
        found, length = _misprint(lexemes, at, mended[-1].kind if mended else ",")
        mended.append(found or _in_one_script(lexemes[at]))
        at += length or 1
    return mended


def _in_one_script(lexeme: Lexeme) -> Lexeme:
    """A stitch's word with letters of two scripts, which look alike: it was read as the Latin one."""
    if lexeme.text in _CROSSES:
        return replace(lexeme, text="x")  # looks right, and is told by no other letter
    mixed = not lexeme.meant and lexeme.kind != "word" and _MIXED.search(lexeme.text) is not None
    return replace(lexeme, meant=lexeme.text.translate(LATIN)) if mixed else lexeme


def _misprint(lexemes: list[Lexeme], at: int, before: str) -> tuple[Lexeme | None, int]:
    """What the damaged word at a place was, and how many lexemes it takes; None where there is none."""
    one, two, three = (*lexemes[at : at + 3], None, None)[:3]
    then = two.kind if two is not None else "end"
    if one.kind == "word" and one.text in _SMALL_L and then in _STITCHES and before in _OPENS:
        return replace(one, kind="number", number=1, meant="1"), 1
    if (
        one.kind == "number"
        and one.text.isdecimal()
        and two is not None
        and three is not None
        and three.kind in _COUNTED
        and not _in_one_place([item.kind for item in lexemes[at + 3 : at + 6]])
    ):
        if two.kind == "word" and two.text in _ROUND_O:
            return _figure(one, two, 10 * one.number), 2
        if two.kind == "word" and two.text in _SMALL_L and two.glued and not three.glued:
            return _figure(one, two, 10 * one.number + 1), 2
    if one.lower == "s" and two is not None and two.text == "1" and two.glued and three is not None:
        if three.lower in ("st", "sts") and not three.glued:
            return _joined(one, three, "s1 " + three.text, kind="stitch", value="sl st", meant="sl st"), 3
    if (found := _increase(one, two, before)) is not None:
        return found
    coloured = (
        one.lower == "skin" and at > 1 and lexemes[at - 2].kind in ("word", "color")
    )  # "4 sc black, skin next 4 sts"
    if (
        one.lower in _SKIP
        and not coloured
        and before in _OPENS
        and _names_stitch([item.kind for item in lexemes[at + 1 : at + 4]])
    ):
        return replace(one, kind="skip", value="skip", meant="skip"), 1
    if [item.kind for item in lexemes[at : at + 2]] == ["and", "chain"] and before == "in":
        if [item.lower for item in lexemes[at + 2 : at + 4]] == ["from", "hook"]:
            return replace(one, kind="ordinal", number=2, value="", meant="2nd"), 1
    return None, 0


def _increase(one: Lexeme, two: Lexeme | None, before: str) -> tuple[Lexeme, int] | None:
    """An "inc" whose first letter is damaged, behind its number or where a clause begins."""
    if one.kind == "word" and _INC.fullmatch(one.text) and (before in ("number", *_OPENS)):
        return replace(one, kind="increase", value="inc", meant="inc"), 1
    split = (
        one.text in ("1", "'", "’", "`", "|")
        and two is not None
        and two.glued
        and two.text in (("NC", "nc") if one.text == "|" else ("NC",))
    )
    if split and before in ("number", *_OPENS):
        return _joined(one, two, one.text + two.text, kind="increase", value="inc", meant="inc"), 2
    return None


def _names_stitch(kinds: list[str]) -> bool:
    """Whether words name stitches to be passed over: "first st", "next 2 dc", "2 sts"."""
    while kinds and kinds[0] in ("the", "first", "next", "number"):
        kinds = kinds[1:]
        if kinds[:1] in (["any_stitch"], ["stitch"]):
            return True
    return False


def _in_one_place(kinds: list[str]) -> bool:
    """Whether "in next st" follows: "1l sc in next st" may be 11 or 1, as a digit that was typed twice."""
    return kinds[:1] == ["in"] and kinds[1:2] in (["next"], ["same"], ["first"], ["last"]) and kinds[2:] != ["number"]


def _figure(one: Lexeme, two: Lexeme, number: int) -> Lexeme:
    gap = "" if two.glued else " "
    return _joined(one, two, one.text + gap + two.text, kind="number", number=number, meant=str(number))


def _joined(first: Lexeme, last: Lexeme, text: str, **changes) -> Lexeme:
    return replace(first, text=text, end=last.end, **changes)
