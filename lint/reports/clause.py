"""How one clause is read, in plain words: what it uses and what it makes."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from typing import Any

import regex

from lint.lexicon import Lexicon
from lint.reading.clauses import read_row
from lint.reading.labels import LabelReader
from lint.reading.measure import Measure, measure
from lint.reading.stream import Stream, Vocabulary
from lint.reading.terms import find_terms
from lint.rulebook import Rulebook
from lint.tree import Unread, walk


@dataclass(frozen=True)
class ClauseReading:
    """A clause, whether it was read, and its measure where the words alone fix it."""

    clause: str
    read: bool
    measure: Measure | None = None
    stopped_by: str | None = None
    notes: tuple[str, ...] = field(default=())

    def as_data(self) -> dict[str, Any]:
        made = self.measure
        fixed = made is not None and made.makes is not None
        return {
            "clause": self.clause,
            "read": self.read,
            "uses": made.uses if made is not None else None,
            "makes": {"stitches": made.makes, "spaces": {f"ch-{n}": k for n, k in sorted(made.spaces.items())}}
            if fixed
            else None,
            "stopped_by": self.stopped_by,
        }

    def in_words(self) -> str:
        """One line for a person."""
        if not self.read:
            return f"{self.clause}\n  not understood: {self.stopped_by}"
        if self.measure is None:
            return f"{self.clause}\n  read; it works no stitches by itself"
        uses = "as many places as there are" if self.measure.uses is None else _so_many(self.measure.uses, "place")
        makes = (
            "as many stitches as that gives" if self.measure.makes is None else _so_many(self.measure.makes, "stitch")
        )
        spaces = "".join(f" and {_so_many(k, f'ch-{n} space')}" for n, k in sorted(self.measure.spaces.items()))
        lines = [self.clause, f"  uses {uses}, makes {makes}{spaces}"]
        lines += [f"  {step}" for step in self.measure.workings]
        return "\n".join(lines)


def _so_many(number: int, word: str) -> str:
    plural = word + ("es" if word.endswith("ch") else "s")
    return f"{number} {word if number == 1 else plural}"


def read_clauses(lines: list[str], book: Rulebook, terms: str = "auto") -> list[ClauseReading]:
    """Read each line as one clause or row, by itself."""
    labels = LabelReader(book.layout)
    lexicons: dict[str, Lexicon] = {}
    answers = []
    for line in lines:
        own = find_terms(line, book.layout, terms).terms
        lexicon = lexicons.setdefault(own, Lexicon(book, own))
        answers.append(_read(line, lexicon, labels))
    return answers


def _read(line: str, lexicon: Lexicon, labels: LabelReader) -> ClauseReading:
    found = labels.at_line(line, 0, bare_numbers=bool(regex.match(r"\s*\d+(?:\s*[-–]\s*\d+)?\)", line)))
    body = line[found.body :] if found is not None else line
    lexemes = lexicon.read(body)
    if not lexemes:
        return ClauseReading(line, found is not None, None, None if found is not None else "there are no words")
    reading = read_row(Stream(lexemes, Vocabulary(sizes=_sizes(body))))
    unread = next((step for step in walk(tuple(reading.steps)) if isinstance(step, Unread)), None)
    if unread is not None:
        return ClauseReading(line, False, None, unread.words)
    measured = measure(tuple(reading.steps)) if reading.steps else None
    if measured is not None and reading.stated is not None and not measured.workings:
        measured = None
    return ClauseReading(line, True, measured)


def _sizes(text: str) -> int:
    """How many sizes a list in the clause shows: "60 (66, 72)" is three."""
    found = Counter(
        1 + len(regex.findall(r"\d+|-", match[1]))
        for match in regex.finditer(r"(?<!\w)\d+\s?[(\[]((?:\d+|-)(?:\s*[,;:/-]\s*(?:\d+|-))+)[)\]]", text)
    )
    return found.most_common(1)[0][0] if found else 1
