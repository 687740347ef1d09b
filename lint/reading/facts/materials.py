"""Hooks and yarns as they are printed: the sizes that name one hook, a word for a yarn's weight beside its number."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import regex

from lint.expression import Expression, expression
from lint.madeonce import made_once
from lint.rulemodels import MaterialFile, YarnWeight
from lint.source import Span


@dataclass(frozen=True, slots=True)
class HookName:
    """One name of a hook: "5 mm", "US H-8", "UK 6", "No. 7"."""

    span: Span
    scale: str  # mm | us | uk | any: a number of which no country is said
    letters: tuple[str, ...] = ()
    number: str | None = None  # as the rules write it: "10½"; of mm, the figure


@dataclass(frozen=True, slots=True)
class Hook:
    """The names of one hook that stand side by side: "5 mm (US H-8, UK 6)"."""

    span: Span
    names: tuple[HookName, ...]
    steel: bool

    @property
    def mm(self) -> float | None:
        """The millimetres, where exactly one figure of them is given."""
        given = [float(name.number) for name in self.names if name.scale == "mm" and name.number]
        return given[0] if len(given) == 1 else None


@dataclass(frozen=True, slots=True)
class YarnName:
    """Words for a yarn's weight with the number beside them: "DK weight yarn (3)"."""

    span: Span  # of the words
    number_span: Span
    number: int
    weights: tuple[YarnWeight, ...]  # several for "DK or worsted"
    sure: bool  # the number is surely a category: "#4", "category 4", or beside the word "weight"


# hooks ----------------------------------------------------------------------------------------------------------

_NUMBER = r"(?:10\s?(?:½|1/2|\.5)|(?:1\d|[1-9])|0{1,3})(?![\d½]|\s?1/2|[.,]\d)"
_MM = r"(?P<mm>\d{1,2}(?:[.,]\d{1,2})?)\s?mm\b\.?"
_US = r"(?:U\.?S\.?A?\.?|American)\s*(?:(?:size|sz\.?|no\.?|letter)\s*)?#?\s?"
_UK = r"(?:(?:old\s+)?(?:U\.?K\.?|English|British|Imperial|Canadian))\s*(?:(?:size|no\.?)\s*)?#?\s?"
_JOINT = r"\s?[-/–]?\s?"
_BOTH = rf"(?P<letters>(?![xX]\s)[A-Za-z](?:/[A-Za-z])?){_JOINT}(?P<number>{_NUMBER})|(?P<number>{_NUMBER})\s?[-/]\s?(?P<letters>[A-Za-z])(?![\w])"
_NAME = expression(
    rf"(?P<uk>(?i:{_UK}))(?P<number>{_NUMBER})(?![A-Za-z])"
    rf"|(?i:\b(?:no\.?|number|size|\#)\s?)(?P<number>{_NUMBER})\s*\(?(?P<uk>(?i:(?:old\s+)?(?:U\.?K\.?|English|Imperial)))\b\)?(?!\s?(?i:size\s?)?\d)"
    rf"|(?P<us>(?i:{_US}))?(?i:\bsize\s+)?(?<![A-Za-z])(?:{_BOTH})(?!\s?mm|[A-Za-z])"
    rf"|(?P<us>(?i:{_US}))(?:(?P<number>{_NUMBER})(?!\s?mm|[A-Za-z])|(?P<letters>[A-Z](?:/[A-Z])?)(?![\w']))"
    rf"|(?i:{_MM})"
    rf"|(?P<tag>(?i:\b(?:size|no\.?|number|hook)[ \t]*(?:size\s*)?|\#)[ \t]?)(?P<number>{_NUMBER})(?!\s?mm|[A-Za-z]|[./]\d)"
    rf"|(?:(?i:\bsize\s+))?(?<![\w'-])(?P<letters>[B-Z])(?![\w'&-]|\s?[.)])"
    rf"|(?<![\w'-])(?P<letters>[B-Z])(?=[)\]])"
)
_GLUE = expression(r"\s*(?:crochet\s+)?(?:hooks?\s*)?(?:[(\[/,|=–-]|\bor\b(?=\s*U))?\s*(?:size\s+)?", regex.I)
_MORE_BEFORE = expression(r"(?:\bmm\s*(?:,|and|&|or|to|/)\s*|[\d½)\]]\s?[-/–]\s?|[)\]]\s?)$")
_MORE_BEHIND = expression(
    r"\s*(?:(?:,\s*)?(?:and|&|or|to)\s+|[,/–-]\s*)(?:US\s*)?#?(?:[A-Z]\b|\d|[A-Za-z]-?\d)|\s?[(\[]\s?[A-Z\d]"
)
_THREAD_BEFORE = expression(
    r"(?i)\b(?:thread|cotton|yarn|floss)\s*,?\s*$"
)  # "Thread no. 10, 1.75 mm hook": the thread's number
# "colors A and B, 4 mm hook", "for S and M, 5.5 mm hook": letters of yarns or of sizes
_OTHER_LETTERS = expression(
    r"(?:(?i:\b(?:colou?rs?|yarns?|shades?|balls?|skeins?|in|of|for))\s*:?|\b[A-Z]+\s*(?:,|,?\s*(?:and|or|to)\b|[&/+–-]))\s*$"
)
_NO_HOOK = expression(r"(?i)\b(?:eyes?|beads?|buttons?|ribbon|elastic|ring|wire|noses?|snaps?)\b")
_STEEL = expression(r"(?i)\bsteel\b")
_HEADING = 32  # characters of a line that says what the next one lists: "Crochet hook"
_HOOK_WORD = expression(r"(?i)\b(?:hooks?|needles?|crochet)\b")


_LINES_NEAR = 3  # lines to each side of a word for hooks: its own, one between, and one that the names may run on into
_LINE = 400  # characters to each side: as much of a line as may speak of the hook


def read_hooks(text: str) -> Iterator[Hook]:
    """Every hook that is named in more than one way, where the names surely speak of one hook."""
    behind = 0
    for first in _names_near_hooks(text):
        if first.start() < behind:
            continue
        names, end = [first], first.end()
        while (glue := _GLUE.match(text, end)) and (more := _NAME.match(text, glue.end())):
            if glue.end() == end and not glue[0]:
                break
            if (
                "\n" in glue[0]
                and first["letters"] is None
                and first["mm"] is None
                and not first["uk"]
                and not first["us"]
            ):
                break  # "CYC #3" at the end of the line above is the yarn's
            names.append(more)
            end = more.end()
        if len(names) < 2:
            if first["letters"] is None or first["number"] is None:
                continue
        behind = end
        start = max(text.rfind("\n", 0, first.start()) + 1, first.start() - _LINE)
        stop = text.find("\n", end, end + _LINE)
        line = text[start : stop if stop >= 0 else end + _LINE]
        before, after = text[start : first.start()], text[end : end + 24].split("\n")[0]
        if _MORE_BEFORE.search(before) or _THREAD_BEFORE.search(before) or _MORE_BEHIND.match(text, end):
            continue  # "4 mm and 5 mm (US G-6 and H-8)": which belong together is not read
        told = [_name(match) for match in names]
        bare = told[0].letters and not (told[0].number or first["us"] or first[0].lower().startswith("size"))
        if bare and names[0].end() < end and (_OTHER_LETTERS.search(before) or not _told_in_line(text, names, before)):
            continue
        if not _HOOK_WORD.search(line):
            heading = text[:start].rstrip("\n").rpartition("\n")[2]
            line = f"{heading} {line}" if len(heading) <= _HEADING else line
        if not _about_a_hook(told, line, after):
            continue
        yield Hook(Span(first.start(), end), tuple(told), bool(_STEEL.search(line)))


def _told_in_line(text: str, names: list[regex.Match], before: str) -> bool:
    """Whether the second name of a hook stands in the line of the first, or in the next one behind "Hook: G"."""
    same = "\n" not in text[names[0].end() : names[1].start()]
    return same or expression(r"(?i)^\W*(?:(?:crochet|size|hooks?)\W*)*$").match(before) is not None


def _names_near_hooks(text: str) -> Iterator[regex.Match]:
    """What may be a hook's name, in the lines that speak of hooks or stand beside one that does."""
    done = 0
    for word in _HOOK_WORD.finditer(text):
        start, end = word.span()
        for _ in range(_LINES_NEAR):
            start, end = text.rfind("\n", 0, max(0, start)), text.find("\n", end + 1)
            end = len(text) if end < 0 else end
        for match in _NAME.finditer(text, max(done, start), end):
            done = match.end()
            yield match
        done = max(done, end)


def _name(match: regex.Match) -> HookName:
    span = Span(*match.span())
    if match["mm"]:
        return HookName(span, "mm", number=match["mm"].replace(",", "."))
    printed = match["number"]
    number = expression(r"\s?(?:1/2|\.5|½)$").sub("½", printed) if printed else None
    letters = tuple(letter.upper() for letter in match["letters"].split("/")) if match["letters"] else ()
    scale = "uk" if match["uk"] else "us" if match["us"] or letters else "any"
    return HookName(span, scale, letters, number)


def _about_a_hook(names: list[HookName], line: str, after: str) -> bool:
    """Whether some names are those of a hook: said so in the line, or by a country or a letter with its number."""
    if _NO_HOOK.search(after) or not any(name.scale != "mm" for name in names):
        return False
    return _HOOK_WORD.search(line) is not None


# yarn -----------------------------------------------------------------------------------------------------------

_OF_YARN = r"weight|wt\.?|yarns?|wool|cotton|acrylic|thread|alpaca|merino|linen|bamboo|blend|fib(?:re|er)|chenille|tweed|silk|nylon|mohair|ply"
_SURE = expression(r"(?i)#|\b(?:category|cat\.?|cyca?|craft yarn council|symbol|weight)\b")
_LITTLE = r"(?:(?!(?:in|of|for|with|and|or|held|used|each|to|balls?|skeins?)\b)[\p{L}'-]+)"
_DIGIT = r"(?P<digit>[0-7])(?![\d.,½¼¾/]\d|\d|\s?(?:[½¼¾x×]|ply|mm|oz|g\b|balls?|skeins?|hanks?|cones?|yards?|yds?|m\b|metres?|meters?|sts?\b|to\b|or\b|-\s?\d))"
_TAG = r"(?:\#|\b(?:category|cat\.|cyca?|weight)\s*(?:category|no\.?|number)?\s*:?\s*\#?)\s*"
_NOT_OF_HOOK = r"(?![^\n;()\[\]]{0,24}\b(?:hooks?|needles?|steel)\b)"


class YarnReader:
    """Knows the words for yarn weights by the list of rules/materials.yaml."""

    def __init__(self, weights: list[YarnWeight]) -> None:
        self._weights = {weight.word: weight for weight in weights}
        words = sorted(self._weights, key=len, reverse=True)
        self._listed = "|".join(regex.escape(one).replace(r"\ ", "[ -]?") for one in words)
        self._words = rf"(?<![\w-])(?P<words>(?:{self._listed})\b(?:[-\s](?:weight|wt)\b)?(?:\s*(?:/|,?\s\bor\b|\bto\b|\band\b)\s*(?:{self._listed})\b)*)"
        self._word = expression(rf"\b(?:{self._listed})\b", regex.I)
        # what no number before a word for a weight can do without
        self._led = expression(rf"[0-7]\s*[,:/(\[–-]?\s*(?:{self._listed})\b", regex.I)

    @cached_property
    def _behind(self) -> Expression:
        """ "DK weight cotton (#3, light)", "worsted weight #4", "DK/3"; "sport cotton (3, 3, 4) balls" is a list over the sizes."""
        return expression(
            rf"{self._words}(?P<between>(?:[\s-]+{_LITTLE}){{0,4}}?)\s*,?\s*(?:[(\[]\s*(?:{_LITTLE}\s*,?\s+|{_TAG}|{_LITTLE}\s*,?\s*{_TAG})?{_DIGIT}(?!\s*[,:;-]\s*\d)\s*(?=[)\],\s:-])|{_TAG}{_DIGIT}{_NOT_OF_HOOK}|[/]\s?#?{_DIGIT}(?!\w){_NOT_OF_HOOK})",
            regex.I,
        )

    @cached_property
    def _before(self) -> Expression:
        """ "#3 DK", "(3) DK", "3/DK"."""
        return expression(
            rf"(?<![\w(]){_TAG}{_DIGIT}\s*[,:/(\[–-]?\s*{self._words}|[(\[]\s*{_TAG}?{_DIGIT}\s*[,:/–-]?\s*{self._words}"
            rf"|(?<![\w/.,])(?P<digit>[0-7])\s?/\s?{self._words}",
            regex.I,
        )

    def read(self, text: str, materials: Sequence[Span] = ()) -> Iterator[YarnName]:
        """Every word for a weight that has a number beside it; in a list of materials no other word need say "yarn"."""
        for pattern in (self._behind, self._before) if self._led.search(text) is not None else (self._behind,):
            taken = -1  # "light worsted" holds another word for a weight
            for match in pattern.finditer(text, overlapped=True):
                if match.end("words") <= taken:
                    continue
                taken = match.end("words")
                weights = tuple(self._weights[self._key(found)] for found in self._word.findall(match["words"]))
                start = text.rfind("\n", 0, match.start()) + 1
                line = text[start : text.find("\n", match.end()) if "\n" in text[match.end() :] else len(text)]
                sure = _SURE.search(match[0]) is not None
                everyday = all(weight.plain for weight in weights)
                listed = any(zone.start <= match.start() < zone.end for zone in materials)
                if not everyday and listed:
                    pass
                elif (everyday or not sure) and not (
                    _of_yarn(match, text) if everyday else expression(rf"(?i)\b(?:{_OF_YARN})\b").search(line)
                ):
                    continue
                yield YarnName(
                    Span(*match.span("words")), Span(*match.span("digit")), int(match["digit"]), weights, sure
                )

    def weights_named(self, text: str, zone: Span) -> tuple[YarnWeight, ...]:
        """Every weight that a stretch of the text names by its word; everyday words only with "weight" behind them."""
        found = []
        for match in self._word.finditer(text, zone.start, zone.end):
            weight = self._weights[self._key(match[0])]
            if not weight.plain or expression(r"(?i)[\s-]*(?:weight|wt)\b").match(text[match.end() : match.end() + 10]):
                found.append(weight)
        return tuple(found)

    def _key(self, printed: str) -> str:
        word = expression(r"[ -]+").sub(" ", printed.lower())
        if word in self._weights:
            return word
        return next(key for key in self._weights if key.replace(" ", "") == word.replace(" ", ""))


@made_once
def yarn_reader(materials: MaterialFile) -> YarnReader:
    """The reader for the weights of rules/materials.yaml."""
    return YarnReader(materials.yarn_weights)


def _of_yarn(match: regex.Match, text: str) -> bool:
    """Whether an everyday word speaks of yarn: "fine yarn (2)", "Light (3) wool"; not "light blue (4)", "fine merino (3)"."""
    between = match.groupdict().get("between") or ""
    fibres = _OF_YARN if expression(r"(?i)\b(?:weight|wt)\b").search(match["words"]) else r"weight|wt|yarns?"
    if any(not expression(rf"(?i){fibres}").fullmatch(word) for word in expression(r"[\s-]+").split(between) if word):
        return False
    behind = expression(rf"[)\]]\s+(?:{_LITTLE}\s+){{0,2}}(?:{_OF_YARN})\b", regex.I)
    return (
        _SURE.search(match[0]) is not None
        or expression(rf"(?i)\b(?:{_OF_YARN})\b").search(match[0]) is not None
        or bool(behind.match(text, match.end()))
    )
