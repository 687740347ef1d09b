"""Letters for stitches that toys print without a list, where the counts bear out what they mean: "R3: (X, V)*6 (18)"."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from lint.expression import expression

_SHAPING_LETTER = expression(
    r"(?i)(?<!\p{L})[vp](?!\p{L})"
)  # an increase, without which no letters are known for what they are
# a row of such letters and its count: "R3: (x, v)*6 (18)"
_COUNTED = expression(
    r"(?im)^[^\w\n(]{0,8}(?:(?:r|rnd|round|row)?[ \t]{0,4}(?P<label>\d{1,3}(?:[^:).\n]{0,12}[:).]|[ \t]{1,4}(?:row|rnd|round)\b)))?[ \t]{0,4}"
    r"(?:we (?:knit|crochet|work)\b[^(\d\n]{0,40})?(?P<words>[^\n]{1,120}?)[ \t]{0,4}[(=\[][ \t]{0,4}(?P<count>\d{1,4})[ \t]{0,4}[)\]]?[ \t]{0,4}$"
)
# Russian abbreviations in Latin letters: sbn is the single crochet, p and u are increase and decrease (from memory)
_RUSSIAN = expression(r"(?i)(?<!\p{L})(?:sbn|pssn|ssn)(?!\p{L})")
_USES = {"sc": 1, "x": 1, "v": 1, "p": 1, "a": 2, "u": 2, "w": 1, "m": 3}  # common practice, no source
_MAKES = {"sc": 1, "x": 1, "v": 2, "p": 2, "a": 1, "u": 1, "w": 3, "m": 1}
_DOUBLE = {"w": "increase", "m": "decrease"}  # of three: other houses call other stitches so
_MEANT = {
    "x": ("stitch", "sc"),
    "v": ("increase", "inc"),
    "p": ("increase", "inc"),
    "a": ("decrease", "dec"),
    "u": ("decrease", "dec"),
}


@dataclass(frozen=True, slots=True)
class _Row:
    """A row in letters: how often each is worked, its count, and the count of the row before where that is known."""

    letters: Counter[str]
    count: int
    before: int | None

    @property
    def made(self) -> int:
        return sum(times * _MAKES[letter] for letter, times in self.letters.items())

    @property
    def used(self) -> int:
        return sum(times * _USES[letter] for letter, times in self.letters.items())


def bare_letters(text: str) -> list[tuple[str, str, str]]:
    """x (sbn), v (p) and a (u) for single crochet, increase and decrease, as toys print them without a list, where all
    counts bear it out; w and m for three in one stitch and three together only where the row below does so as well.

    Common practice, no source.
    """
    russian = _RUSSIAN.search(text) is not None
    if not russian and not _SHAPING_LETTER.search(text):
        return []
    rows = list(_rows(text))
    plain = [row for row in rows if not _DOUBLE.keys() & row.letters.keys()]
    used = {letter for row in plain for letter in row.letters}
    agree = sum(row.made == row.count for row in plain)
    russian = russian and used <= {"p", "u", "sc"}
    if agree < len(plain) or not (agree and russian or agree >= 3 and {"v", "p"} & used):
        return []
    found = [(letter, *meant) for letter, meant in _MEANT.items() if letter in used]
    for letter, kind in _DOUBLE.items():
        own = [row for row in rows if row.letters[letter]]
        if own and all((row.used, row.made) == (row.before, row.count) for row in own):
            found.append((letter, kind, "double"))
    return [form for letter, kind, value in found for form in ((letter, kind, value), (letter.upper(), kind, value))]


def _rows(text: str) -> Iterator[_Row]:
    """The rows of a text that are told in letters alone, and have a count."""
    number, count = 0, None
    for line in _COUNTED.finditer(text):
        figures = [int(figure) for figure in expression(r"\d+").findall(line["label"] or "")]
        before = count if figures and figures[0] == number + 1 else None
        letters = _letters(line["words"].lower())
        number, count = figures[-1] if figures else 0, int(line["count"])
        if letters is not None:
            yield _Row(letters, count, before)


def _letters(words: str) -> Counter[str] | None:
    """How often "(2x, v)*6" works each letter; None for words that are not such letters alone."""
    total: Counter[str] = Counter()
    for item in expression(r",(?![^()]*\))").split(words):
        group = expression(r"\s*\(([^()]*)\)\s*[*x×]?\s*(\d*)\s*").fullmatch(item)
        one = expression(r"\s*(\d*)\s*(x|sc|sbn|[vpauwm])(?:\s+in(?:to)? .*)?\s*").fullmatch(item)
        if group is not None:
            inner = _letters(group[1])
            if inner is None:
                return None
            for letter, times in inner.items():
                total[letter] += times * int(group[2] or 1)
        elif one is not None:
            total["sc" if one[2] == "sbn" else one[2]] += int(one[1] or 1)
        else:
            return None
    return total
