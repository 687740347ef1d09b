"""Runs the stages in order on one pattern: read, work, check, grade.  The only module that knows the order."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.checks import run_checks
from lint.checks.context import Context
from lint.finding import Finding
from lint.grade import Grade, grade
from lint.house.model import House
from lint.ledger import Ledger
from lint.lexicon import Lexicon
from lint.likely.causes import explain
from lint.pattern import Pattern
from lint.reading.document import read_pattern
from lint.reading.page.terms import Terms
from lint.rulebook import Rulebook, load_rulebook
from lint.source import SourceText
from lint.working.pieces import PatternWorker


@dataclass(frozen=True, repr=False)
class Report:
    """Everything found out about one pattern; reports only show it."""

    source: SourceText
    pattern: Pattern
    terms: Terms
    ledger: Ledger
    findings: tuple[Finding, ...]
    grade: Grade
    book: Rulebook
    lexicon: Lexicon
    house: House | None = None
    maker: str | None = None  # the size whose maker reads it so; None: all sizes

    def __repr__(self) -> str:
        return f"Report({self.source.path!r}, {len(self.findings)} findings)"

    @property
    def recomputed(self) -> tuple[int, int]:
        """Rows (times sizes) recomputed, out of all."""
        return self.ledger.recomputed()


@dataclass(frozen=True, repr=False)
class Worked:
    """A pattern read and worked, and nothing found out about it yet."""

    source: SourceText
    pattern: Pattern
    terms: Terms
    lexicon: Lexicon
    ledger: Ledger
    book: Rulebook


def work(source: SourceText, book: Rulebook, terms: str = "auto", workings: bool = False) -> Worked:
    """Read and work one pattern's text.  Never raises for what its author wrote."""
    pattern, found_terms, lexicon = read_pattern(source.alike(), book, terms)
    worker = PatternWorker(pattern, book, workings)
    ledger = worker.ledger()
    return Worked(source, replace(pattern, settled=worker.settled), found_terms, lexicon, ledger, book)


def inspect(
    source: SourceText,
    book: Rulebook | None = None,
    terms: str = "auto",
    workings: bool = True,
    house: House | None = None,
) -> Report:
    """Check one pattern's text.  Never raises for what its author wrote.

    `house`: whose form it is held to; `book` then is `house.loading.book_for` of it.
    `workings`: how the count of every row comes is kept as well, for reports that show it; else only of rows that differ.
    """
    book = book or load_rulebook()
    worked = work(source, book, terms, workings)
    pattern, terms_found, lexicon, ledger = worked.pattern, worked.terms, worked.lexicon, worked.ledger
    read = source.alike()
    causes = explain(read, pattern, book, ledger)
    findings = run_checks(Context(read, pattern, terms_found, lexicon, ledger, book, causes, house))
    done, of = ledger.recomputed()
    return Report(source, pattern, terms_found, ledger, findings, grade(findings, done, of, book), book, lexicon, house)
