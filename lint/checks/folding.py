"""One cause, one finding: rows that only follow from an earlier mistake are told of in its finding."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from lint.checks.context import Context
from lint.checks.rows import finding_of
from lint.finding import Finding, Related, Weight
from lint.ledger import LedgerRow


@dataclass
class _Open:
    """A finding of its own, to which rows that follow from it are added."""

    finding: Finding
    source: int  # offset of the printed row
    mended: bool  # its likely cause is in the words: what that leaves at fault is another mistake
    followers: list[LedgerRow] = field(default_factory=list)

    @property
    def taints(self) -> bool:
        """Whether the mistake leaves the row below wrong for the rows after it."""
        return self.finding.weight is Weight.CORRECTION and self.finding.rule != "place-not-there"


def check_rows(context: Context) -> Iterator[Finding]:
    """count-differs, corners-differ, repeat-does-not-fit, places-left-over, places-run-out, place-not-there."""
    heirs = {other: index for index, explained in context.causes.items() for other in explained.mends}
    found: dict[int, _Open] = {}
    last: _Open | None = None  # the mistake just before this row, if nothing has come right since
    for index, row in enumerate(context.ledger.rows):
        if index and row.part is not context.ledger.rows[index - 1].part:
            last = None
        finding = finding_of(row, context)
        if finding is None:
            if any(cell.made is not None for cell in row.cells):
                last = None
            continue
        cause = found.get(heirs.get(index, -1)) or _led_by(last, finding, row, index in context.causes)
        if cause is not None:
            cause.followers.append(row)
            continue
        explained = context.causes.get(index)
        if explained is not None:
            finding = replace(finding, likely=explained.likely)
        last = found[index] = _Open(finding, row.row.span.start, explained is not None and explained.in_words)
        if any(cell.picked_up for cell in row.cells):
            last = None  # work went on from the printed count: later rows don't follow from this
    for opened in found.values():
        yield _folded(opened)


def _led_by(last: _Open | None, finding: Finding, row: LedgerRow, explained: bool) -> _Open | None:
    """The mistake just before, where a row of the same printed words, or the row after it, comes of it."""
    if last is None:
        return None
    if last.source == row.row.span.start:
        return last
    own = last.mended and explained
    return last if finding.rule != "place-not-there" and last.taints and not own else None


def _folded(opened: _Open) -> Finding:
    rows = [row for row in opened.followers if row.row.span.start != opened.source]
    if not rows:
        return opened.finding
    labels = list(dict.fromkeys(row.label for row in rows))
    one = len(labels) == 1
    follow = (
        labels[0] if one else f"{labels[0]} and {labels[1]}" if len(labels) == 2 else f"{labels[0]} to {labels[-1]}"
    )
    related = tuple(Related(row.span, "follows from this") for row in rows[:6])
    return replace(
        opened.finding,
        message=f"{opened.finding.message} {follow} {'follows' if one else 'follow'} from this.",
        related=(*opened.finding.related, *related),
    )
