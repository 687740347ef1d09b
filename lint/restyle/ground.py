"""The ground that restyling stands on: a pattern as read, its lexemes with their places, and what must not be touched."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import regex

from lint.expression import expression
from lint.house.model import House
from lint.lexicon import Lexeme, Lexicon
from lint.pattern import Part, Pattern, Row
from lint.reading.page.terms import Terms
from lint.restyle.propernames import not_stitches
from lint.rulebook import Rulebook
from lint.source import SourceText, Span
from lint.tree import Remark, Unread, walk

_ADDRESS = expression(r"(?<!\S)\S*(?:://|www\.|@|\.(?:com|net|org|co\.uk)\b)\S*")


@dataclass(frozen=True, slots=True)
class RowWords:
    """A row's words behind its label, as lexemes; `certain` where all of it was understood."""

    part: Part
    row: Row
    lexemes: tuple[Lexeme, ...]
    certain: bool


@dataclass(frozen=True)
class Ground:
    """One pattern and the house that it is to suit."""

    source: SourceText
    pattern: Pattern
    terms: Terms
    lexicon: Lexicon
    book: Rulebook
    house: House

    @cached_property
    def rows(self) -> tuple[RowWords, ...]:
        """Every row's words; remarks are left out of a row that is understood."""
        return tuple(
            RowWords(part, row, tuple(self._working_words(row)), not row.unread())
            for part in self.pattern.parts
            for row in part.rows
        )

    def all_words(self, row: Row) -> list[Lexeme]:
        """A row's lexemes behind its label, remarks too."""
        start = row.label.span.end if row.label is not None and row.label.span.end <= row.span.end else row.span.start
        start = max(start, row.span.start)
        return self.lexicon.read(self.source.text[start : row.span.end], start)

    def _working_words(self, row: Row) -> Iterator[Lexeme]:
        aside = [step.span for step in walk(row.steps) if isinstance(step, Remark) and step.counting is None]
        for lexeme in self.all_words(row):
            if not any(span.start <= lexeme.start < span.end for span in aside):
                yield lexeme

    @cached_property
    def outside_rows(self) -> tuple[Lexeme, ...]:
        """The lexemes of the lines that belong to no row, in the text's order."""
        found: list[Lexeme] = []
        at = 0
        for span in sorted((row.span for part in self.pattern.parts for row in part.rows), key=lambda one: one.start):
            found += self._by_lines(at, max(at, span.start))
            at = max(at, span.end)
        return tuple([*found, *self._by_lines(at, len(self.source.text))])

    @cached_property
    def document(self) -> tuple[Lexeme, ...]:
        """The lexemes of the whole text in its order: rows as they are read, all other lines one by one."""
        found: list[Lexeme] = []
        spans = sorted((row.span for part in self.pattern.parts for row in part.rows), key=lambda span: span.start)
        at = 0
        for span in spans:
            if span.start < at:
                continue
            found += self._by_lines(at, span.start)
            found += self.lexicon.read(self.source.slice(span), span.start)
            at = span.end
        return tuple([*found, *self._by_lines(at, len(self.source.text))])

    def _by_lines(self, start: int, end: int) -> list[Lexeme]:
        found: list[Lexeme] = []
        for line in self.source.text[start:end].splitlines(keepends=True):
            if line.strip():
                found += self.lexicon.read(line, start)
            start += len(line)
        return found

    @cached_property
    def names(self) -> tuple[Span, ...]:
        """Stretches that are names or addresses: the title, the materials, pieces' names wherever they stand, links."""
        text = self.source.text
        spans = [self.pattern.title_span] if self.pattern.title_span is not None else []
        spans += [section.span for section in self.pattern.sections if section.key == "materials"]
        spans += [Span(*match.span()) for match in _ADDRESS.finditer(text)]
        for name in {part.name for part in self.pattern.parts if part.name}:
            if any(lexeme.kind == "stitch" and lexeme.value != "sl st" for lexeme in self.lexicon.read(name)):
                found = expression(rf"(?i)(?<!\w){regex.escape(name)}(?!\w)", own_words=True)
                spans += [Span(*match.span()) for match in found.finditer(text)]
        at_work = {lexeme.start for row in self.rows for lexeme in row.lexemes if not _is_unread(row.row, lexeme)}
        told = (one for one in self.document if one.kind == "stitch" and one.start not in at_work)
        return (*spans, *not_stitches(text, self.lexicon, told))

    def named(self, span: Span) -> bool:
        """Whether a stretch stands in a name."""
        return any(name.start < span.end and span.start < name.end for name in self.names)

    def opens_sentence(self, at: int) -> bool:
        """Whether a word stands where this text would write a capital."""
        text = self.source.text
        before = text[:at].rstrip(" \t*[(•·")
        opens = before.endswith((":", ".", "!", "?", "\n")) or expression(r"\d\s?[-–—)]$").search(before) is not None
        return opens and text != text.lower()

    def begins_row(self, row: Row, at: int) -> bool:
        """Whether no other word stands between a row's label and this place."""
        start = max(row.span.start, row.label.span.end if row.label is not None else 0)
        return not any(character.isalnum() for character in self.source.text[start:at])

    def words(self, lexeme: Lexeme) -> str:
        """A lexeme as printed, with single spaces."""
        return " ".join(self.source.slice(lexeme.span).split())


def _is_unread(row: Row, lexeme: Lexeme) -> bool:
    return any(span.start <= lexeme.start < span.end for span in unread_spans(row))


def unread_spans(row: Row) -> list[Span]:
    """The words of a row that were not understood."""
    return [step.span for step in walk(row.steps) if isinstance(step, Unread)]
