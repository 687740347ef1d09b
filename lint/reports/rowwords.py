"""A pattern's rows in plain words, for an editor who doubts a count: how each clause was read, and how the sum comes."""

from __future__ import annotations

from collections.abc import Iterator

from lint.inspection import Report
from lint.ledger import LedgerRow
from lint.reports.rows import ShownRow, shown_rows, what_stopped
from lint.reports.wording import listed, where
from lint.reports.workings import ShownLine, shown_workings

_ROW, _ROUND = ("row", "r"), ("round", "rnd", "rd", "r")


def rows_in_words(report: Report, only: str = "") -> Iterator[str]:
    """The lines of every row, or of those that `only` names: "3rd round", "rnd 3", "Sleeve Row 2"."""
    wanted = _bare(only)
    chosen = [row for row in report.ledger.rows if wanted == "" or wanted in _names(row)]
    for row in shown_rows(report, chosen):
        yield from _row(report, row)


def _names(row: LedgerRow) -> set[str]:
    """Every name by which a row can be asked for: its label as printed, or its sort and number; with its part's name too."""
    words = _ROUND if row.kind == "round" else _ROW
    names = {_bare(row.label), *(f"{word} {row.number}" for word in words if row.number is not None)}
    return names | {f"{_bare(row.part.name)} {name}" for name in names}


def _bare(label: str) -> str:
    return " ".join(label.replace(":", " ").replace(",", " ").casefold().split())


def _row(report: Report, row: ShownRow) -> Iterator[str]:
    yield f"{row.first.part.name}, {row.label} ({where(report, row.first.row.span.start)})"
    for workings in shown_workings(report, row.first):
        if workings.sizes:
            yield f"  {listed(list(workings.sizes))}:"
        yield from (_line(line) for line in workings.lines)
        yield f"  in all {workings.sum}"
    if row.stopped:
        words, own = what_stopped(report, row)
        yield f"  not recomputed: “{words}” was not understood" if own else f"  not recomputed: {words}"
    yield ""


def _line(line: ShownLine) -> str:
    told = [said for said in (line.does, line.times) if said]
    made = " and ".join(part for part in (line.makes, line.spaces) if part not in ("", "0"))
    told += [f"uses {line.uses}"] if line.uses not in ("", "0") else []
    told += [f"makes {made}"] if made else []
    told += [f"so far {line.total}"] if line.total else []
    words, indent = " ".join(line.words.split()), "  " * (line.depth + 1)
    if not words:
        return f"{indent}{': '.join(told[:2])}{''.join(', ' + said for said in told[2:])}"  # "passes 1 to 3: uses …"
    return f"{indent}{words}" + (f" – {', '.join(told)}" if told else "")
