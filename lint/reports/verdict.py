"""The first page in plain words: how many rows come out, which do not, and what was not checked."""

from __future__ import annotations

from dataclasses import dataclass

from lint.faults import fault_of
from lint.inspection import Report
from lint.ledger import LedgerRow, Outcome
from lint.reports.wording import listed


@dataclass(frozen=True, slots=True)
class PlainVerdict:
    """Sentences for a reader who looks at nothing else; "" where there is nothing to say."""

    works: str
    does_not: str
    unprinted: str
    unchecked: str


def plain_verdict(report: Report) -> PlainVerdict:
    """What works and what does not, over all sizes; a row counts once, by the worst of its sizes."""
    rows = [row for row in report.ledger.rows if row.kind != "foundation"]
    if not rows:
        return PlainVerdict("", "", "", "No rows or rounds were found in this text, so no count could be checked.")
    unread = [row for row in rows if any(cell.outcome is Outcome.NOT_RECOMPUTED for cell in row.cells)]
    read = [row for row in rows if row not in unread]
    wrong = [row for row in read if any(fault_of(cell) is not None for cell in row.cells)]
    sound = [row for row in read if row not in wrong]
    agree = [row for row in sound if any(cell.outcome is Outcome.AGREES for cell in row.cells)]
    sizes = ", in every size" if len(report.pattern.sizes) > 1 else ""
    return PlainVerdict(
        _works(len(agree), len(rows), sizes),
        f"{_rows(wrong)} {'does' if len(wrong) == 1 else 'do'} not come out." if wrong else "",
        _unprinted(len(sound) - len(agree), sizes),
        f"{_many(len(unread))} could not be followed, and nothing is said about {'its' if len(unread) == 1 else 'their'} {'count' if len(unread) == 1 else 'counts'}."
        if unread
        else "",
    )


def _works(agree: int, of: int, sizes: str) -> str:
    if not agree:
        return ""
    if agree == of:
        return f"{'The one row' if of == 1 else f'All {of} rows and rounds'} {'comes' if of == 1 else 'come'} out as printed{sizes}."
    return f"{agree} of {of} rows and rounds {'comes' if agree == 1 else 'come'} out as printed{sizes}."


def _unprinted(number: int, sizes: str) -> str:
    if not number:
        return ""
    more = "works" if number == 1 else "work"
    return f"{_many(number)} {more}{sizes}, but {'has' if number == 1 else 'have'} no printed count to compare with."


def _many(number: int) -> str:
    return "One row or round" if number == 1 else f"{number} rows and rounds"


def _rows(rows: list[LedgerRow]) -> str:
    """ "Rnd 3 of SQUARE", or how many there are and the first of them."""
    names = [f"{row.label} of {row.part.name}" if row.part.name else row.label for row in rows]
    if len(names) <= 3:
        return listed(names)
    return f"{len(names)} rows and rounds, from {names[0]} on,"
