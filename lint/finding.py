"""What every check gives and every report shows."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from lint.source import Span


class Weight(StrEnum):
    """How an editor means a finding."""

    CORRECTION = "correction"  # certainly wrong
    QUERY = "query"  # a question for the designer
    STYLE = "style"  # house or common style


@dataclass(frozen=True, slots=True)
class Related:
    """Another place that explains a finding."""

    span: Span
    label: str


@dataclass(frozen=True, slots=True)
class Likely:
    """A likely cause: a change to the text, what would then come out, and the change as words for a stretch of the text."""

    change: str
    then: str
    span: Span | None = None
    replacement: str | None = None


@dataclass(frozen=True, slots=True)
class Finding:
    """One mistake or question, at the smallest stretch of text that shows it."""

    rule: str
    weight: Weight
    span: Span
    message: str
    part: str | None = None
    row: str | None = None
    sizes: tuple[str, ...] = ()
    expected: str | None = None
    found: str | None = None
    related: tuple[Related, ...] = ()
    likely: tuple[Likely, ...] = ()
    replacement: str | None = None
