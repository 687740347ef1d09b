"""Names as testers write them: the pattern's sizes, parts and rows, shortened, spelled out or only numbered."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import regex

from lint.expression import Expression, expression
from lint.testerwords import TesterFile

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_LONGEST_RUN = 2000
_NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


_OF_PART = expression(
    r"\s*(?:of|in|on)\s+(?:the\s+)?([\p{L} ]{2,24}?)\s*(?=[:,.–—(-]|\bI\b|$)|\s*[(\[]([\p{L} ]{2,24})[)\]]"
)


def plain(words: str) -> str:
    """Words in lower case, without punctuation, with single blanks; letters and figures stand apart."""
    words = expression(r"[^\p{L}\p{N}✓✔✅]+").sub(" ", words.casefold())
    return " ".join(words.split())


@dataclass(frozen=True, slots=True)
class RowName:
    """A row as a tester names it: its numbers (a run has several), row or round if said, or the foundation."""

    numbers: tuple[int, ...] = ()
    kind: str | None = None  # row | round
    foundation: bool = False


@dataclass(frozen=True)
class Names:
    """Knows the names of one pattern's sizes and parts, and the words of rules/testers.yaml."""

    words: TesterFile
    sizes: tuple[str, ...]
    parts: tuple[str, ...]

    @cached_property
    def headings(self) -> dict[str, str]:
        """What a column's heading means, by its plain words."""
        measures = {plain(name): "measure" for name in self.words.measures}
        return measures | {plain(phrase): key for key, listed in self.words.columns.items() for phrase in listed}

    # sizes ------------------------------------------------------------------------------------------------------

    def size(self, said: str) -> int | None:
        """The place of a size among the pattern's (from 0), by name, or by "2nd size"; None where it is none of them."""
        key = expression(r"^(?:size|sz)\s+|\s+size$").sub("", plain(said))
        if key in self._sizes:
            return self._sizes[key]
        common = self._common.get(key)
        if common is not None:
            for place, name in enumerate(self.sizes):
                if self._common.get(plain(name)) == common:
                    return place
        place = _ordinal(key)
        return place - 1 if place is not None and 0 < place <= len(self.sizes) else None

    @cached_property
    def _sizes(self) -> dict[str, int]:
        return {plain(name): place for place, name in enumerate(self.sizes)}

    @cached_property
    def _common(self) -> dict[str, str]:
        return {plain(word): key for key, listed in self.words.size_names.items() for word in listed}

    @cached_property
    def in_words(self) -> Expression:
        """Finds a size that is named in a sentence: "size M", "(M)", "in the large"."""
        named = sorted({*self._sizes, *(word for word in self._common if len(word) > 1)}, key=len, reverse=True)
        one = "|".join(regex.escape(word).replace(r"\ ", r"[\s/–-]+") for word in named) or "(?!)"
        return expression(
            rf"(?i)\b(?:size|sz)\b\s*[:=]?\s*(?P<size>{one}|[\w/–-]+)\b(?!\s*(?:[\"”x×]|cm|in\b))|[(\[]\s*(?P<size>{one})\s*[)\]]"
            rf"|\bin\s+(?:the\s+)?(?:size\s+)?(?P<size>{one})\b(?=\s*(?:[,.;:–—-]|$|size))"
        )

    @cached_property
    def size_made(self) -> Expression:
        """Finds a sentence that tells which size a tester made: "I made the large", "testing size M"."""
        known = {*self._sizes, *self._common}
        one = "|".join(regex.escape(word).replace(r"\ ", r"[\s/–-]+") for word in sorted(known, key=len, reverse=True))
        return expression(
            rf"(?i)\b(?:made|making|make|tested|testing|worked|working|did|doing|chose|crocheted|crocheting)\s+(?:up\s+)?"
            rf"(?:(?:the|a|in)\s+)?(?:(?:size|the)\s+)?(?P<size>{one or '(?!)'})\b(?:\s+(?:size|one|version))?"
            rf"(?=\s*(?:[.,;:!()–—]|$|\b(?:and|but|with|in|for|this|of)\b))"
        )

    # parts ------------------------------------------------------------------------------------------------------

    def part(self, said: str) -> str | None:
        """The pattern's part that is meant: its name, or short for it, or the one name that has all the words."""
        wanted = self._meant(said)
        if not wanted:
            return None
        found = [name for name, words in self._parts.items() if words == wanted]
        found = found or [name for name, words in self._parts.items() if set(wanted) <= set(words)]
        found = found or [name for name, words in self._parts.items() if set(words) <= set(wanted)]
        if not found and all(len(word) > 1 for word in wanted):
            found = [
                name
                for name, words in self._parts.items()
                if all(any(other.startswith(word) for other in words) for word in wanted)
            ]
        return found[0] if len(found) == 1 else None

    def _meant(self, said: str) -> tuple[str, ...]:
        words = [self.words.short_names.get(word, word) for word in plain(said).split()]
        return tuple(_singular(word) for word in words if word not in ("the", "of", "part", "section", "piece"))

    @cached_property
    def _parts(self) -> dict[str, tuple[str, ...]]:
        return {name: self._meant(name) for name in self.parts}

    # rows -------------------------------------------------------------------------------------------------------

    @cached_property
    def _row_words(self) -> dict[str, str | None]:
        rows = {word: "row" for word in self.words.row_words}
        rounds = {word: "round" for word in self.words.round_words}
        return {**rows, **rounds} | {word: None for word in rows.keys() & rounds.keys()}

    @cached_property
    def row_pattern(self) -> Expression:
        """Finds a row's label in a sentence: "Rnd 5", "R5", "rows 4-9", "3rd row", "round five", "foundation ch"."""
        word = "|".join(sorted((regex.escape(word) for word in self._row_words), key=len, reverse=True))
        spelled = "|".join(sorted((*_NUMBERS, *_ORDINALS), key=len, reverse=True))
        start = "|".join(
            sorted(
                (regex.escape(w) for w in self.words.foundation_words if " " in w or len(w) > 5), key=len, reverse=True
            )
        )
        joint = r"\s*(?:-|–|—|to|through|thru|until|/|&|and|,)\s*"
        last = rf"(?:(?:{word})s?\.?\s*\#?)?\d{{1,4}}(?:st|nd|rd|th)?(?![.,]?\d|\s*(?:sts?|stitch|sc|h?dc|tr|x|got|ch|sps?)\b)"
        return expression(
            rf"(?i)(?<![\p{{L}}\d])(?:(?P<word>{word})(?P<plural>s?)\.?\s*(?:no\.?|number)?\s*\#?\s*"
            rf"(?P<first>\d{{1,4}}|(?:{spelled})\b)(?!\s*%|[.,]\d|\d)(?P<rest>(?:{joint}{last})*)"
            rf"|(?P<first>\d{{1,4}})(?:st|nd|rd|th)?(?P<rest>{joint}\d{{1,4}}(?:st|nd|rd|th))\s+(?P<word>{word})s?\b"
            rf"|(?P<first>\d{{1,4}}(?:st|nd|rd|th)|(?:{spelled}))\s+(?P<word>{word})s?\b(?!\s*\d)"
            rf"|(?P<start>{start})\b)(?:\s*[(\[](?:RS|WS)[)\]])?"
        )

    def row(self, said: str) -> RowName | None:
        """The row that a cell or a label names; a bare number is one of either kind.  None where it names none."""
        found = self.labels_in(said)
        if found:
            return self.row_of(found[0])
        key = plain(said)
        bare = expression(r"(\d{1,4})(?:\s*(?:-|–|—|to)\s*(\d{1,4}))?\.?").fullmatch(said.strip())
        if bare:
            return _run(int(bare[1]), int(bare[2] or bare[1]), None)
        if key in self.words.foundation_words:
            return RowName(foundation=True)
        number = _ordinal(key)
        return RowName((number,)) if number is not None else None

    def row_of(self, found: regex.Match) -> RowName | None:
        """The row or rows of a match of `row_pattern`: "Rows 3, 4 and 6-8" are five."""
        if found["start"]:
            return RowName(foundation=True)
        first = _ordinal(found["first"].casefold())
        kind = self._row_words.get(found["word"].casefold())
        if first is None:
            return None
        numbers = [first]
        for joint, number in expression(r"(-|–|—|to|through|thru|until|/|&|and|,)[^\d]*(\d+)").findall(
            found["rest"] or ""
        ):
            run = joint not in ("/", "&", "and", ",") and numbers[-1] < int(number) <= numbers[-1] + _LONGEST_RUN
            numbers += range(numbers[-1] + 1, int(number) + 1) if run else [int(number)]
        return RowName(tuple(numbers), kind)

    def part_beside(self, words: str) -> str | None:
        """The part that is named beside a row's label: "Sleeve R3", "Row 3 (Sleeve)", "Rnd 5 of the sleeve"."""
        found = self.labels_in(words)
        if not found:
            return None
        behind = _OF_PART.match(words, found[0].end())
        for said in (words[: found[0].start()].strip(" ,:;–—-.*•"), (behind[1] or behind[2]) if behind else ""):
            if said and self.part(said):
                return said
        return None

    def labels_in(self, words: str) -> list[regex.Match]:
        """Every row's label in a sentence.

        "Row 8 - 49" and "Row 8, 49" are a row and its count: only a plural, or a dash without blanks, makes a run.
        """
        found = []
        at = 0
        while (one := self.row_pattern.search(words, at)) is not None:
            rest = one["rest"] or ""
            plural = (one["word"] or "").lower().endswith("s") or one["plural"]
            listed = expression(r"\band\b|&").search(rest) is not None
            if rest and not plural and not listed and expression(r"\s+[-–—]|\s*[-–—]\s+|\s*,").match(rest):
                one = self.row_pattern.search(words, one.start(), one.start("rest"))
            found.append(one)
            at = one.end()
        return found


def _run(first: int, last: int, kind: str | None) -> RowName:
    if last < first or last - first > _LONGEST_RUN:
        return RowName((first,), kind)
    return RowName(tuple(range(first, last + 1)), kind)


def _ordinal(word: str) -> int | None:
    found = expression(r"(\d{1,4})(?:st|nd|rd|th)?").fullmatch(word)
    if found:
        return int(found[1])
    for listed in (_ORDINALS, _NUMBERS):
        if word in listed:
            return listed.index(word) + 1
    return None


def _singular(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word
