"""The words of a pattern as the maker of one size reads them: its own figure of every list, no row or clause of others.

Lines stay where they are: what is not for this size leaves an empty line, so that line numbers are those of the file.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import replace
from functools import cached_property

import regex

from lint.amount import without_thousands
from lint.expression import expression
from lint.inspection import Report
from lint.lexicon import Lexeme
from lint.maker.swaps import Swap, Swaps
from lint.pattern import Label, Row
from lint.reading.document import count_words
from lint.reading.lines.leaving import leavings
from lint.reading.sizes.audience import size_places
from lint.reading.sizes.figures import numbers_of
from lint.reading.sizes.gates import GateReader
from lint.reading.sizes.listings import STRONG, Figures, figures_of, listings
from lint.reading.sizes.sizeglosses import size_glosses
from lint.reading.sizes.sizes import shown_by_lists
from lint.reading.words.stream import Stream, Vocabulary
from lint.source import Span
from lint.working.onesize import fallen, sized_amounts, works

_CLOSERS = (")", "]", "}")
_FIGURES = expression(r"[(\[{]?\d.*\d(?:st|nd|rd|th)?\s*[)\]}]*", regex.S)  # of a label
_BEHIND_CLAUSE = expression(r"\s*[,;]\s*|\s+(?=\S)")
_BEFORE_CLAUSE = expression(r"\s*[,;]?\s*\Z")


class MakersWords:
    """What becomes of one pattern's words, size by size."""

    def __init__(self, report: Report) -> None:
        self.report = report
        self.text = report.source.text
        self.pattern = report.pattern
        self.sizes = len(report.pattern.sizes)
        names = report.pattern.sizes
        self.gates = GateReader(names, size_glosses(report.source.text, names))
        self.rows = sorted((row for part in self.pattern.parts for row in part.rows), key=lambda row: row.span)
        self.vocabulary = Vocabulary(
            {special.name: special for special in self.pattern.specials},
            self.sizes,
            frozenset(),
            *count_words(report.book),
            size_places(self.pattern.sizes),
            parted=shown_by_lists(self.text).parted,
        )
        self._lexemes: dict[Span, list[Lexeme]] = {}

    def swaps(self, size: int) -> Swaps:
        """Those of one size, counted from 0; none in a pattern of one size."""
        return Swaps.settled(self.text, _OneMaker(self, size).swaps() if self.sizes > 1 else ())

    def words(self, size: int) -> str:
        """The text as the maker of that size reads it, line by line as in the file."""
        return self.swaps(size).applied(self.text)

    @cached_property
    def other_lists(self) -> list[tuple[Span, Figures]]:
        """Lists in words that are no row: measures, amounts of yarn."""
        return [
            (one.span, figures)
            for one in listings(self.text, self.sizes)
            if self.sizes in one.numbers
            and not self.inside_row(one.span)
            and (figures := figures_of(without_thousands(self.text[one.span.start : one.span.end]), self.sizes))
            is not None
        ]

    def folded(self, span: Span, row: Row) -> list[Lexeme]:
        """The lexemes of a stretch of a row, its lists over the sizes folded into one each."""
        if span not in self._lexemes:
            lexemes = self.report.lexicon.read(self.text[span.start : span.end], span.start)
            vocabulary = replace(self.vocabulary, gate=row.sizes or ())
            self._lexemes[span] = Stream(lexemes, vocabulary).with_size_lists().lexemes
        return self._lexemes[span]

    def inside_row(self, span: Span) -> bool:
        """Whether a stretch begins in a row."""
        at = bisect_right(self.rows, span.start, key=lambda row: row.span.start)
        return at > 0 and span.start < self.rows[at - 1].span.end


class _OneMaker:
    def __init__(self, words: MakersWords, size: int) -> None:
        self.all, self.size = words, size
        self.text, self.rows, self.pattern, self.gates = words.text, words.rows, words.pattern, words.gates

    def swaps(self) -> Iterator[Swap]:
        """The weightiest first: of two that meet, the first counts."""
        yield from self._rows_of_others()
        yield from self._gates()
        yield from self._names()
        worked = [row for row in self.rows if works(row, self.size)]
        for row in worked:
            yield from self._label(row)
        for row in worked:
            yield from self._clauses_of_others(row)
        for row in worked:
            yield from self._lists(row)
        for span, figures in self.all.other_lists:
            yield Swap(span, figures.words[self.size])

    # what is for other sizes --------------------------------------------------------------------------------

    def _rows_of_others(self) -> Iterator[Swap]:
        for part in self.pattern.parts:
            kept = [row for row in part.rows if works(row, self.size)]
            if not kept and part.span != self.pattern.title_span:
                yield Swap(self._line(part.span.start), "")
            for row in part.rows:
                if not works(row, self.size):
                    yield Swap(row.span, "")

    def _gates(self) -> Iterator[Swap]:
        """ "Sizes M and L only:", "All sizes:", "Size S stops here.": words that only say who reads on."""
        begun = min((part.span.start for part in self.pattern.parts), default=len(self.text))
        for start in self.all.report.source.line_starts:
            line = self._line(start)
            words = self.text[line.start : line.end]
            if start < begun or not words.strip():
                continue
            stops, begin = leavings(self.gates, words)
            if any(one.sizes is not None and self.size not in one.sizes for one in stops):
                yield Swap(Span(line.start + begin, line.end), "")
                continue
            gate = self.gates.at_line(words)
            if gate is None or gate.sizes is None or gate.others or self.all.inside_row(line):
                continue
            own = gate.every or self.size in gate.sizes
            row = next((row for row in self.rows if line.start <= row.span.start < line.end), None)
            if gate.leaves:
                if not own:
                    yield Swap(line, "")
            else:
                yield Swap(Span(line.start, line.start + gate.end if own or row is not None else line.end), "")

    def _clauses_of_others(self, row: Row) -> Iterator[Swap]:
        """ "dec 0 (1, 2) times," where this size works none."""
        for step in fallen(row.steps, self.size):
            span = step.span
            behind = _BEHIND_CLAUSE.match(self.text, span.end, row.span.end)
            before = _BEFORE_CLAUSE.search(self.text[row.span.start : span.start])
            if behind is not None and behind[0].strip():
                yield Swap(Span(span.start, behind.end()), "")
            else:
                yield Swap(Span(row.span.start + before.start() if before is not None else span.start, span.end), "")

    # figures ------------------------------------------------------------------------------------------------

    def _label(self, row: Row) -> Iterator[Swap]:
        label = row.label
        if label is None or not label.by_size:
            return
        figures = _FIGURES.search(self.text[label.span.start : label.span.end])
        if figures is None:
            return
        span = Span(label.span.start + figures.start(), label.span.start + figures.end())
        folded = Swaps.settled(self.text, [Swap(one.span, one.new) for one in self._folded(span, row)])
        words = replace_in(self.text, span, folded)
        yield Swap(span, words if numbers_of(words) == label.at(self.size) else _run(label, self.size))

    def _lists(self, row: Row) -> Iterator[Swap]:
        """The lists in a row as it was read: folded ones, and those without brackets that the tree has."""
        yield from self._folded(row.span, row)
        figures = sized_amounts(row)
        for one in listings(self.text[row.span.start : row.span.end], self.all.sizes):
            span = _shifted(one.span, row.span.start)
            own = figures_of(self.text[span.start : span.end], self.all.sizes)
            if own is not None and (one.shape in STRONG or own.values in figures):
                yield Swap(span, own.words[self.size])

    def _folded(self, span: Span, row: Row) -> Iterator[Swap]:
        found = self.all.folded(span, row)
        for index, item in enumerate(found):
            if item.amount is None:
                continue
            behind = found[index + 1 : index + 3]  # "S: 11 sts, M: 13 sts": the unit stands in the list
            unit = [other.text for other in behind if other.start < item.end and other.kind not in _CLOSERS]
            new = " ".join([_figure(item, self.size), *unit])
            if index and found[index - 1].start == item.start:  # a printed count that is all in brackets
                new = self.text[item.start] + new + self.text[item.end - 1]
            yield Swap(item.span, new)

    def _names(self) -> Iterator[Swap]:
        """The line that names the sizes: "S (M, L)" is M."""
        names = self.pattern.sizes
        between = r"[\s,;:/|()\[\]{}–—-]{1,6}(?:(?:and|&)\s+)?"
        form = expression(rf"(?<!\w){between.join(map(regex.escape, names))}(?!\w)(?:\s*[)\]}}])*")
        for match in form.finditer(self.text):
            start = before = match.start()
            while before and self.text[before - 1].isspace():
                before -= 1
            if before and self.text[before - 1] in "([{" and match[0].count(")") > match[0].count("("):
                start = before - 1
            yield Swap(Span(start, match.end()), names[self.size])

    # places -------------------------------------------------------------------------------------------------

    def _line(self, offset: int) -> Span:
        end = self.text.find("\n", offset)
        start = self.text.rfind("\n", 0, offset) + 1
        return Span(start, len(self.text) if end < 0 else end)


def replace_in(text: str, span: Span, swaps: Swaps) -> str:
    """A stretch of the text with swaps inside it made."""
    own = tuple(Swap(_shifted(swap.span, -span.start), swap.new) for swap in swaps.all)
    return Swaps(own).applied(text[span.start : span.end])


def _shifted(span: Span, by: int) -> Span:
    return Span(span.start + by, span.end + by)


def _figure(item: Lexeme, size: int) -> str:
    value = item.amount.at(size)
    if value is None:
        return "-"
    return _ordinal(value) if item.kind == "ordinals" else str(value)


def _ordinal(number: int) -> str:
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def _run(label: Label, size: int) -> str:
    """The numbers of a label as one size reads them: "5-10", "3, 5 and 7"."""
    numbers = label.at(size)
    if len(numbers) > 2 and numbers == tuple(range(numbers[0], numbers[-1] + 1)):
        return f"{numbers[0]}-{numbers[-1]}"
    return " and ".join(filter(None, [", ".join(map(str, numbers[:-1])), str(numbers[-1])]))
