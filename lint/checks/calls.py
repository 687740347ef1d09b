"""Rows called for by their numbers: are they there, are they of the same side, does the range end where the text says."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Related
from lint.ledger import LedgerRow
from lint.pattern import Part, Row
from lint.source import Span
from lint.tree import RowCall, walk
from lint.working.instances import NOT_THERE

_NAMES = {"rs": "right-side", "ws": "wrong-side"}
_ENDS = expression(
    r"(?i)\bend(?:ing|s)?\s+(?:with|on|after)\s+(?:an?\s+|the\s+)?(?:(?P<side>RS|WS|right[- ]side|wrong[- ]side)\s+|(?:rows?|rnds?|rounds?|r)\s*(?P<number>\d+))"
)


def not_there(row: LedgerRow) -> bool:
    """Whether a row calls for one that was not met before it."""
    return any(cell.stopped_by is not None and cell.stopped_by.endswith(NOT_THERE) for cell in row.cells)


def check_called(context: Context) -> Iterator[Finding]:
    """row-not-there: "Rep Row 12" in a piece of nine rows, or a row that calls for itself."""
    seen: set[int] = set()
    for row in context.ledger.rows:
        call = next((step for step in walk(row.row.steps) if isinstance(step, RowCall)), None)
        if row.row.label is None or call is None or not not_there(row) or row.row.span.start in seen:
            continue
        seen.add(row.row.span.start)
        words = " ".join(context.source.slice(call.span).split())
        own = row.row.label.numbers
        first = call.first.lone if call.first is not None else None
        last = call.last.lone if call.last is not None else first
        itself = bool(own) and first is not None and last is not None and any(first <= n <= last for n in own)
        why = "which calls for itself" if itself else "and there is no such row before it"
        yield context.finding("row-not-there", call.span, row.part.name, row.label, words=words, why=why)


def check_called_sides(context: Context) -> Iterator[Finding]:
    """called-row-side: a right-side row worked "same as" a wrong-side one."""
    for part in context.pattern.parts:
        sides = _sides(part)
        for row in part.rows:
            call = _lone_call(row)
            if row.label is None or row.label.side is None or call is None:
                continue
            number = call.first.lone if call.first is not None else None
            called = sides.get(number) if number is not None else None
            if called is None or called[0] == row.label.side:
                continue
            yield context.finding(
                "called-row-side",
                call.span,
                part.name,
                row.label.words,
                words=" ".join(context.source.slice(call.span).split()),
                side=_NAMES[row.label.side],
                other=_NAMES[called[0]],
                related=(Related(called[1].label.span, f"said to be {called[0].upper()}"),),
            )


def check_cycle_ends(context: Context) -> Iterator[Finding]:
    """cycle-ends-elsewhere: "Rows 5-12: Rep Rows 2-4, ending with Row 4", where the count of rows ends on another."""
    for part in context.pattern.parts:
        sides = _sides(part)
        for row in part.rows:
            call = _lone_call(row)
            label = row.label
            if label is None or call is None or call.first is None or len(label.numbers) < 2 or label.by_size:
                continue
            first, last = call.first.lone, call.last.lone if call.last is not None else call.first.lone
            said = _ENDS.search(context.source.slice(row.span))
            if said is None or not first or not last or last < first:
                continue
            end = first + (len(label.numbers) - 1) % (last - first + 1)
            side = (said["side"] or "")[:1].lower()
            told = int(said["number"]) if said["number"] else None
            is_on = sides[end][0] if end in sides else None
            if told in (end, label.numbers[-1]) or told is None and (is_on is None or is_on[:1] == side):
                continue
            at = row.span.start + said.start()
            yield context.finding(
                "cycle-ends-elsewhere",
                Span(at, row.span.start + said.end()),
                part.name,
                label.words,
                words=" ".join(said.group().split()),
                number=len(label.numbers),
                end=f"Row {end}" + (f" ({is_on.upper()})" if is_on else ""),
            )


def _lone_call(row: Row) -> RowCall | None:
    calls = [step for step in walk(row.steps) if isinstance(step, RowCall)]
    return calls[0] if len(calls) == 1 and calls[0].part is None and calls[0].name is None else None


def _sides(part: Part) -> dict[int, tuple[str, Row]]:
    """The sides that labels of single rows give, by number."""
    return {
        row.label.numbers[0]: (row.label.side, row)
        for row in part.rows
        if row.label is not None and row.label.side and len(row.label.numbers) == 1
    }
