"""How a house writes a thing, read from a sample: "Row 1:", "(12 sts)", "60 (66, 72)".

A house file shows what it wants by an example instead of naming it.  Every function gives a frozen value, or raises
ValueError with samples that would be right.
"""

from __future__ import annotations

from dataclasses import dataclass

from lint.expression import expression

_SIGN = r"(?P<sign>\s?[:.)=]|\s[-–—])?"


@dataclass(frozen=True, slots=True)
class LabelForm:
    """A row's label: its word, whether the number comes first as an ordinal, and the sign that closes it."""

    word: str
    ordinal: bool
    space: str
    joint: str  # between the first and the last number of a range
    sign: str

    @property
    def singular(self) -> str:
        """The word over one row: Row, Rnd, Round."""
        return self.word[:-1] if self.word.endswith("s") and len(self.word) > 1 else self.word


def label_form(sample: str) -> LabelForm:
    """ "Row 1:", "R1:", "1st row:"."""
    plain = expression(rf"(?P<word>\p{{L}}+)\.?(?P<space> ?)1{_SIGN}").fullmatch(sample)
    if plain:
        return LabelForm(plain["word"], False, plain["space"], "-", plain["sign"] or "")
    ordinal = expression(rf"1st (?P<word>\p{{L}}+){_SIGN}").fullmatch(sample)
    if ordinal:
        return LabelForm(ordinal["word"], True, " ", "-", ordinal["sign"] or "")
    raise ValueError(f"'{sample}' shows no label of row 1; write it as 'Row 1:', 'Rnd 1 -', 'R1:' or '1st row:'")


def range_form(sample: str) -> LabelForm:
    """ "Rows 2-5:", "Rnds 2 to 5 -", "2nd to 5th rows:"."""
    joint = r"(?P<joint>\s?[-–—]\s?|\s(?:to|thru|through)\s)"
    match = expression(rf"(?P<word>\p{{L}}+)\.?(?P<space> ?)2{joint}5{_SIGN}").fullmatch(sample)
    ordinal = expression(rf"2nd{joint}5th (?P<word>\p{{L}}+){_SIGN}").fullmatch(sample)
    if ordinal:
        return LabelForm(ordinal["word"], True, " ", ordinal["joint"], ordinal["sign"] or "")
    if match is None:
        raise ValueError(
            f"'{sample}' shows no label of rows 2 to 5; write it as 'Rows 2-5:', 'Rnds 2 to 5:' or '2nd to 5th rows:'"
        )
    return LabelForm(match["word"], False, match["space"], match["joint"], match["sign"] or "")


@dataclass(frozen=True, slots=True)
class CountForm:
    """A printed count: the signs before and behind it, and whether a bare number gets "sts"."""

    opening: str
    closing: str
    unit: bool


def count_form(sample: str) -> CountForm:
    """ "(12 sts)", "[12]", "— 12 sts", "; 12 sts", "= 12 sts"."""
    match = expression(r"(?P<open>[(\[{]|[—–=;:]\s|-\s)12(?P<unit> sts)?(?P<close>[)\]}]?\.?)").fullmatch(sample)
    pairs = {"(": ")", "[": "]", "{": "}"}
    if match is None or pairs.get(match["open"], "") != match["close"].rstrip("."):
        raise ValueError(
            f"'{sample}' shows no count of 12; write it as '(12 sts)', '[12 sts]', '— 12 sts' or '; 12 sts'"
        )
    return CountForm(match["open"], match["close"], match["unit"] is not None)


@dataclass(frozen=True, slots=True)
class ListForm:
    """A list over the sizes: what opens it behind the first number, the sign between two sizes, what closes it.

    A list without brackets is opened by its sign alone: 60/66/72.
    """

    opening: str
    between: str
    closing: str

    def written(self, numbers: list[str]) -> str:
        """Numbers of all sizes as the house writes them."""
        return f"{numbers[0]}{self.opening or self.between}{self.between.join(numbers[1:])}{self.closing}"


def list_form(sample: str) -> ListForm:
    """ "60 (66, 72)", "60 [66: 72]", "60 (66-72)"."""
    if sample == "60/66/72":
        return ListForm("", "/", "")
    match = expression(r"60(?P<space> ?)(?P<open>[(\[{])66(?P<between>, |: ?|; ?|-|/)72(?P<close>[)\]}])").fullmatch(
        sample
    )
    if match is None or {"(": ")", "[": "]", "{": "}"}[match["open"]] != match["close"]:
        raise ValueError(
            f"'{sample}' shows no list over sizes; write it as '60 (66, 72)', '60 [66: 72]', '60 (66-72)' or '60/66/72'"
        )
    return ListForm(match["space"] + match["open"], match["between"], match["close"])


@dataclass(frozen=True, slots=True)
class EntryForm:
    """An entry of the abbreviation list: which side comes first, and what stands between."""

    separator: str
    abbreviation_first: bool = True

    def written(self, abbreviation: str, meaning: str) -> str:
        """The entry in one line."""
        if self.separator == "(":
            return f"{meaning} ({abbreviation})" if not self.abbreviation_first else f"{abbreviation} ({meaning})"
        first, second = (abbreviation, meaning) if self.abbreviation_first else (meaning, abbreviation)
        return f"{first}{self.separator}{second}"


def entry_form(sample: str) -> EntryForm:
    """ "ch = chain", "ch: chain", "ch – chain", "chain (ch)"."""
    plain = expression(r"ch(?P<separator>\s?[:=–—-]\s|\s?\.{3,}\s|\t| {2,})chain").fullmatch(sample)
    if plain:
        return EntryForm(plain["separator"])
    if sample in ("chain (ch)", "ch (chain)"):
        return EntryForm("(", sample.startswith("ch ("))
    raise ValueError(f"'{sample}' shows no entry; write it as 'ch = chain', 'ch: chain', 'ch – chain' or 'chain (ch)'")
