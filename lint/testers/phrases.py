"""Figures in a tester's sentence: a count, a gauge, yarn used, a measure.

Every function reads one line or cell and gives what it says, or None.
"""

from __future__ import annotations

from dataclasses import dataclass

from lint.expression import expression
from lint.reading.facts.measures import CM_IN_AN_INCH, number
from lint.rulemodels import HookSize

_N = r"(\d{1,4})(?![\d.,]*\d|\s*(?:%|cm\b|mm\b|in\b|inch|\"|”|g\b|gr\b|grams?\b|yds?\b|yards?\b|m\b|met))"
_UNIT = r"(?:\s*(?P<unit>(?:ch[-\s]?\d+\s*)?(?:sps?|spaces?)\b|sts?\b|stitch(?:es)?\b|[a-zA-Z]{1,3}sc\b|h?dc\b|sc\b|htr\b|d?tr\b|shells?\b|clusters?\b|groups?\b|(?:ch|chains?)\b(?!\s*\d)|corners?\b|v-?sts?\b|blocks?\b))?"
_GOT = (
    r"got|get|had|have|has|counted|count(?:\s+(?:is|was))?|made|ended(?:\s+up)?(?:\s+(?:with|at|on))?|end\s+up\s+with|"
    r"came(?:\s+(?:out|up))?\s+(?:at|with|to)|comes?(?:\s+(?:out|up))?\s+(?:at|with|to)|there\s+(?:are|were)|left\s+with|"
    r"finished\s+with|only|total(?:\s+(?:is|of|was))?|is|was|with|gives?(?:\s+me)?|makes?"
)
_DUE = (
    r"should(?:\s+(?:be|have(?:\s+been)?|say|read))?|says?|said|supposed\s+to\s+(?:be|have)|printed|expected|"
    r"pattern(?:\s+(?:count|has|states?|gives))?(?:\s+(?:is|of|as))?|states?|due"
)
_INSTEAD = r"instead\s+of|(?:an)?statt|rather\s+than|not(?:\s+the)?|vs\.?|versus|where\s+(?:it|the\s+pattern)\s+(?:says|has)|for|against|out\s+of|of|/"
_LIT = r"(?:\s+(?:the|a|about|only|just|exactly|me|in\s+total|it|as))*\s*"

_OFF = expression(
    r"(?i)(?P<n>\d{1,3}|one|two|three|four|five|six|a)\s*(?:sts?|stitch(?:es)?|sc|h?dc|tr)?\s*(?:too\s+)?"
    r"(?P<way>short|few|fewer|less|missing|under|many|extra|more|over|too\s+many|too\s+few)\b"
    r"|\b(?P<way>short|missing|over)\s+(?:by\s+)?(?P<n>\d{1,3}|one|two|three|four|five|six|a)\b"
)
_WORD_BEHIND = expression(r"\s*(\p{L}[\p{L}'’]*)")
_GOES_ON = frozenset(  # words that may follow a count without being what is counted
    "instead not but and in on at for rather vs versus where total so which as each per altogether all too here there now all except apart save "
    "then this when after before with or while because since though although only still again ok okay fine good exactly "
    "by the i i'm my it is was yay like got had counted pattern says said expected printed due should if even though".split()
)
_OFF_BY = expression(r"(?i)\b(?:off|out)\s+by\s+(?:\d{1,3}|one|two|three|a)\b")  # more or fewer is not said
_SIGNED = expression(r"\s*(?:[:=]\s*([+−-]\d{1,3})|(\+\d{1,3}))\s*(?:sts?)?\W*")
_SMALL = {"a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_PAIR = expression(rf"(?i)(?<![\w.]){_N}{_UNIT},?{_LIT}[(\[]?(?:{_INSTEAD}){_LIT}{_N}")
_DUE_FIRST = expression(rf"(?i)\b(?:{_DUE}){_LIT}[:=]?\s*(?<![\w.]){_N}")
_SIGN = r"(?:(?<=\s)|^)[–—-]|[=:→]"
_GOT_FIRST = expression(rf"(?i)(?:\b(?:{_GOT})|{_SIGN}){_LIT}(?<![\w.]){_N}{_UNIT}")
_DUE_BEHIND = expression(
    rf"(?i)(?<![\w.]){_N}{_UNIT}\s*(?:(?:is|are|was|were)\s+)?(?:expected|printed|stated|due|in\s+the\s+pattern)\b"
)
_BARE = expression(rf"(?i)(?<![\w.#-]){_N}{_UNIT}")


@dataclass(frozen=True, slots=True)
class CountWords:
    """A count as it is worded: what was got, or by how many it is off; what the print says where that is told."""

    count: int | None = None
    off: int | None = None
    printed: int | None = None
    unit: str | None = None
    more: tuple[tuple[int, str], ...] = ()  # further figures, each with its unit: "30 dc, 28 ch-1 sps"


def read_count(words: str) -> CountWords | None:
    """The count in words from which the row's label, the size and quoted passages have been taken out.

    None where there is none, and where several figures could be it ("127 at first, then 128").
    """
    pair = _PAIR.search(words)
    if pair is not None:
        return CountWords(int(pair[1]), None, int(pair[3]), pair["unit"])
    signed = _SIGNED.fullmatch(words)
    if signed is not None:
        return CountWords(None, int((signed[1] or signed[2]).replace("−", "-")))
    due = _DUE_BEHIND.search(words) or _DUE_FIRST.search(words)
    rest = words if due is None else f"{words[: due.start()]} , {words[due.end() :]}"
    rest = _OFF_BY.sub(" ", rest)
    printed = int(due[1]) if due is not None else None
    off, got = _OFF.search(rest), _GOT_FIRST.search(rest)
    if off is not None and (got is None or off.start() <= got.start(1) < off.end()):
        number_ = _SMALL.get(off["n"].lower()) or int(off["n"])
        less = off["way"].lower() in ("short", "few", "fewer", "less", "missing", "under", "too few")
        return CountWords(None, -number_ if less else number_, printed)
    found = list(_BARE.finditer(rest))
    first = next(
        (one for one in found if got is not None and one.start(1) == got.start(1)), found[0] if found else None
    )
    if first is None:
        return None
    others = [one for one in found if one is not first]
    if any(not one["unit"] for one in others):
        return None
    behind = _WORD_BEHIND.match(rest, first.end())
    if not first["unit"] and behind is not None and behind[1].lower() not in _GOES_ON:
        return None  # "has 12 increases"
    alone = rest.strip(" .:,;-–—()[]?~≈*!/&") == first[0].strip()
    if got is None and not (first["unit"] or due is not None or alone or words != rest and not others):
        return None
    return CountWords(int(first[1]), None, printed, first["unit"], tuple((int(one[1]), one["unit"]) for one in others))


def figures_in(words: str) -> list[int]:
    """The bare figures of words, for a run of rows with a count for each."""
    return [int(one[1]) for one in _BARE.finditer(words)]


# gauge ----------------------------------------------------------------------------------------------------------

_FIGURE = r"(\d+(?:[.,]\d+)?(?:\s?[½¼¾])?|[½¼¾])"
_GAUGE_WORD = expression(r"(?i)\b(?:gauge|tension|swatch(?:ed)?|maschenprobe)\b")
_STS = expression(rf"(?i){_FIGURE}\s*(?:sts?|stitch(?:es)?|h?dc|sc|htr|d?tr|maschen|(?-i:M|fM|Stb|hStb))\b(?!\s*rows?)")
_ROWS = expression(rf"(?i){_FIGURE}\s*(?:rows?|rnds?|rounds?|reihen?|runden?|(?-i:R|Rd))\b")
_OVER = expression(
    rf"(?i)(?:to|in|over|per|=|x|×|is|measures?|across|auf|pro)\s*(?:the\s+)?{_FIGURE}\s*(cm|in(?:ch(?:es)?)?|ins|[\"”])"
)
_ANY_LENGTH = expression(rf"(?i)(?<![\d.,]){_FIGURE}\s*(cm|in(?:ch(?:es)?)?|ins|[\"”])(?!\w)")
_MM = expression(r"(?i)(\d{1,2}(?:[.,]\d{1,2})?)\s*-?mm\b")
_US_HOOK = expression(
    r"(?i)\b(?:US\s*)?([B-Z])(?:\s?[-/]\s?(\d{1,2}(?:½|\.5)?))?\b(?=\s*hook)|\bhook(?:\s+(?:used|size|was|is))*\s*[:=]?\s*(?:US\s*)?([B-Z])(?:\s?[-/]\s?(\d{1,2}(?:½|\.5)?))?\b"
)


def read_gauge(words: str) -> tuple[float | None, float | None, float] | None:
    """Stitches, rows, and over how many cm: "17 sts and 12 rows to 10 cm"."""
    stitches, rows = _STS.search(words), _ROWS.search(words)
    over = _OVER.search(words) or (_ANY_LENGTH.search(words) if _GAUGE_WORD.search(words) else None)
    if stitches is None and rows is None or _GAUGE_WORD.search(words) is None and (stitches is None or over is None):
        return None
    cm = 10.0
    if over is not None:
        value = number(over[1]) or 0
        cm = value if over[2].lower() == "cm" else value * CM_IN_AN_INCH
        cm = 10.0 if abs(cm - 10.16) < 0.01 else cm  # "4 in [10 cm]" is one and the same square in the trade
    return number(stitches[1]) if stitches else None, number(rows[1]) if rows else None, cm or 10.0


def about_gauge(words: str) -> bool:
    """Whether a line speaks of the gauge."""
    return _GAUGE_WORD.search(words) is not None


def read_hook(words: str, hooks: list[HookSize]) -> float | None:
    """A hook's millimetres: "4.5 mm", "4,5mm", "H-8 hook"."""
    found = _MM.search(words)
    if found is not None:
        return float(found[1].replace(",", "."))
    found = _US_HOOK.search(words)
    if found is None:
        return None
    letter, figure = found[1] or found[3], found[2] or found[4]
    for hook in hooks:
        if letter.upper() in hook.letters and (figure is None or hook.number == figure.replace(".5", "½")):
            return hook.mm
    return None


# yarn -----------------------------------------------------------------------------------------------------------

_AMOUNT = expression(
    rf"(?i){_FIGURE}\s*(?P<unit>g|gr|gms?|grams?|grammes?|m|met(?:re|er)s?|yds?|yards?|balls?|skeins?|hanks?|knäuel|oz|ounces?)\b(?!\s*hook)"
)
_YARN_WORD = expression(
    r"(?i)\b(?:yarn|yardage|met(?:er|re)age|used|wool|cotton|went\s+through|garn|wolle|knäuel|grams?|yards?|balls?|skeins?)\b"
)
_TO_M = {"m": 1.0, "y": 0.9144}


def read_yarn(words: str, unit: str | None = None) -> list[tuple[float, str]]:
    """Amounts of yarn in g, m or balls, one of each; `unit` where the heading says it: a bare "210" is so many of those."""
    found: dict[str, float] = {}
    if unit is not None or _YARN_WORD.search(words):
        for one in _AMOUNT.finditer(words):
            amount, sort = _in_one_unit(number(one[1]) or 0.0, one["unit"])
            found.setdefault(sort, amount)
    bare = expression(rf"\s*(?:about|approx\.?|ca\.?|~)?\s*{_FIGURE}\s*").fullmatch(words)
    if not found and bare is not None and unit:
        return [_in_one_unit(number(bare[1]) or 0.0, unit)]
    return [(amount, sort) for sort, amount in found.items()]


def _in_one_unit(value: float, unit: str) -> tuple[float, str]:
    unit = unit.lower()
    if unit.startswith("g"):
        return value, "g"
    if unit.startswith("o"):
        return value * 28.349523125, "g"
    if unit.startswith(("b", "s", "h", "k")):
        return value, "ball"
    return value * _TO_M[unit[0]], "m"


# measures -------------------------------------------------------------------------------------------------------

_LENGTH = expression(
    rf"(?i){_FIGURE}(?:\s*(?:cm|in|[\"”])?\s*(?:x|×|by)\s*{_FIGURE})?\s*(cm|in(?:ch(?:es)?)?|ins|[\"”])(?!\w)"
)
_GLUE = expression(
    r"(?i)(?:\b(?:is|was|are|were|came|comes|out|at|to|measures?|measured|measuring|about|approx|my|mine|the|it|finished|measurements?|final|after|before|of|i|got|and|with)\b|[:;=.,–—()\[\]-])+"
)


def read_measures(words: str, unit: str | None = None) -> list[tuple[str, float]]:
    """Measures in cm with the words that say of what: "Chest 92 cm, length 20 in" are two."""
    lengths, found = list(_LENGTH.finditer(words)), []
    behind = bool(lengths) and not _what(words[: lengths[0].start()])  # "36 in along the top, 24 in deep"
    for at, one in enumerate(lengths):
        before = lengths[at - 1].end() if at else 0
        after = lengths[at + 1].start() if at + 1 < len(lengths) else len(words)
        what = _what(words[one.end() : after] if behind else words[before : one.start()])
        factor = 1.0 if one[3].lower() == "cm" else CM_IN_AN_INCH
        found.append((what, (number(one[1]) or 0.0) * factor))
        if one[2]:
            found.append((f"{what} other side".strip(), (number(one[2]) or 0.0) * factor))
    if not found and unit and (bare := expression(rf"\s*{_FIGURE}\s*").fullmatch(words)):
        return [("", (number(bare[1]) or 0.0) * (1.0 if unit.startswith("c") else CM_IN_AN_INCH))]
    return found


def _what(words: str) -> str:
    return " ".join(_GLUE.sub(" ", words).split()).lower()
