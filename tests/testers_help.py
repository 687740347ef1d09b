"""Testers' reports for tests: a pattern in three sizes, and its review beside reports given as text."""

from __future__ import annotations

from typing import Any

from helpers import rulebook

HAT = """Alder Hat
US terms
Sizes: S (M, L)
Materials: DK yarn, 100 (120, 140) g; 4.5 mm hook
Gauge: 16 sc and 18 rnds = 10 cm
Finished size: 45 (50, 55) cm around, 20 cm deep

CROWN
Rnd 1: Make a magic ring, 6 (7, 8) sc in ring. (6 (7, 8) sc)
Rnd 2: 2 sc in each sc around. (12 (14, 16) sc)
Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (18 (21, 24) sc)
Rnd 4: *Sc in next 2 sc, 2 sc in next sc; rep from * around. (24 (28, 32) sc)
Rnds 5-8: Sc in each sc around. (24 (28, 32) sc)

BRIM
Rnd 1: *Sc in next 3 sc, 2 sc in next sc; rep from * around. (30 (35, 40) sc)
Rnd 2: Sc in each sc around. (30 (35, 40) sc)
"""


def inspected(pattern: str) -> Any:
    """The report on a pattern's text."""
    from lint.inspection import inspect
    from lint.source import SourceText

    return inspect(SourceText(pattern, "pattern.txt"), rulebook())


def reviewed(pattern: str, hide_names: bool = False, **reports: str | bytes) -> Any:
    """The review of reports, by file name with "_" for the dot: mia_eml="…" is mia.eml."""
    from lint.testers.review import review

    files = [
        (name.replace("_", "."), text if isinstance(text, bytes) else text.encode()) for name, text in reports.items()
    ]
    return review(inspected(pattern), files, hide_names)


def counts(review: Any) -> list[tuple]:
    """Tester, size, part, row and count of every count that was placed."""
    rows, sizes = review.report.ledger.rows, review.names.sizes or ("",)
    return [
        (one.tester, sizes[one.size], rows[one.index].part.name, rows[one.index].label, one.got)
        for one in review.placement.placed
    ]


def verdicts(review: Any) -> dict[tuple[str, str], str]:
    """By tester and row's label, the verdict."""
    return {(one.tester, one.step.row.label): one.verdict.value for one in review.judged}


def kinds(review: Any) -> list[str]:
    """The kinds of all points, in their order."""
    return [point.kind for point in review.points]
