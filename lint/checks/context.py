"""What every check reads: the pattern, its tree, its ledger, and the rules."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, TypeVar

from lint.finding import Finding, Likely, Related
from lint.house.model import House
from lint.ledger import Ledger
from lint.lexicon import Lexicon
from lint.likely.causes import Explained
from lint.pattern import Part, Pattern, Row
from lint.reading.facts.gauge import Gauge, pattern_gauges
from lint.reading.page.terms import Terms
from lint.rulebook import Rulebook
from lint.source import SourceText, Span

_T = TypeVar("_T")


@dataclass(frozen=True)
class Context:
    """One pattern, read and worked."""

    source: SourceText
    pattern: Pattern
    terms: Terms
    lexicon: Lexicon
    ledger: Ledger
    book: Rulebook
    causes: Mapping[int, Explained] = field(default_factory=dict)  # by place in the ledger
    house: House | None = None  # whose form the pattern is held to, if any

    @cached_property
    def _found(self) -> dict[Callable, Any]:
        return {}

    def once(self, find: Callable[[Context], _T]) -> _T:
        """What a search over the whole pattern finds, which several checks ask for."""
        if find not in self._found:
            self._found[find] = find(self)
        return self._found[find]

    @cached_property
    def gauges(self) -> tuple[Gauge, ...]:
        """Every gauge in stitches that the pattern gives."""
        return pattern_gauges(self.source.text, self.pattern, self.book.stitches)

    def finding(
        self,
        rule: str,
        span: Span,
        part: str | None = None,
        row: str | None = None,
        sizes: tuple[str, ...] = (),
        expected: object = None,
        found: object = None,
        related: tuple[Related, ...] = (),
        likely: tuple[Likely, ...] = (),
        replacement: str | None = None,
        weight=None,
        **values: object,
    ) -> Finding:
        """A finding of a rule, its message made from the rule's own sentence."""
        entry = self.book.rule(rule)
        told = {"row": row or f"line {self.source.line_of(span)}", "part": part or "this pattern"}  # outside the rows
        return Finding(
            rule,
            weight or entry.weight,
            span,
            entry.message.format(**told, expected=expected, found=found, **values),
            part,
            row,
            sizes,
            None if expected is None else str(expected),
            None if found is None else str(found),
            related,
            likely,
            replacement,
        )

    def place(self, span: Span) -> tuple[Part | None, Row | None]:
        """The part and the row that a stretch of the text stands in, if any."""
        for part in self.pattern.parts:
            for row in part.rows:
                if row.span.start <= span.start < row.span.end:
                    return part, row
        return None, None

    def finding_at(self, rule: str, span: Span, **values: Any) -> Finding:
        """A finding at a stretch of the text, with the part and the row that it stands in."""
        part, row = self.place(span)
        label = row.label.words if row is not None and row.label is not None else None
        return self.finding(rule, span, part.name if part is not None else None, label, **values)

    def stitch_word(self, key: str) -> str:
        """A stitch's name in the pattern's own terms: sc is dc in UK terms."""
        return self.book.stitch_word(self.terms.terms, key)
