"""What is due in a row: the printed count and the recount, in the unit that a tester counts in."""

from __future__ import annotations

from dataclasses import dataclass

from lint.expression import expression
from lint.inspection import Report
from lint.ledger import Cell, LedgerRow, Outcome
from lint.pattern import StatedItem
from lint.testers.names import plain
from lint.tree import Chain
from lint.working.compare import measured
from lint.working.onesize import for_size

MAIN = "main"  # the row's own count, whatever the print counts there


@dataclass(frozen=True, slots=True)
class Due:
    """The printed count and the recount of one row in one size and one unit; None where there is none."""

    printed: int | None
    made: int | None

    @property
    def count(self) -> int | None:
        """What the words make, or, where that is not known, what is printed."""
        return self.made if self.made is not None else self.printed


def unit_key(words: str | None, report: Report) -> str:
    """A unit as testers name it: "sts" is the row's own count, "ch-2 sps" is space:2, "shells" is special:shells."""
    key = plain(words or "")
    if not key or key in ("st", "sts", "stitch", "stitches"):
        return MAIN
    space = expression(r"ch (\d+) sp(?:s|aces?)?").fullmatch(key)
    if space:
        return f"space:{space[1]}"
    if key in ("sp", "sps", "space", "spaces"):
        return "space"
    if key in ("ch", "chs", "chain", "chains"):
        return "chain"
    if key in ("corner", "corners"):
        return "corner"
    stitch = _stitch(key, report)
    return f"kind:{stitch}" if stitch else f"special:{key}"


def _stitch(word: str, report: Report) -> str | None:
    for rule in report.book.stitches.stitches:
        if word in (form.lower() for form in (rule.uk if report.terms.terms == "uk" else rule.us)):
            return rule.key
    return None


def own_unit(row: LedgerRow, size: int, unit: str) -> str:
    """A unit as it counts in a row: "sc" in a row of nothing but sc is the row's own count."""
    if row.kind == "foundation" and unit == "chain" or unit.startswith("kind:") and _only_kind(row.cells[size], unit):
        return MAIN
    return unit


def due_in(row: LedgerRow, size: int, unit: str) -> Due:
    """What is due in a row."""
    cell = row.cells[size]
    if row.kind == "foundation":
        return _foundation(row, size) if unit == MAIN else Due(None, None)
    items = [] if cell.stated is None else [i for i in cell.stated.items if i.at(size, row.stated_index) is not None]
    if unit == MAIN:
        return _main(row, cell, size, items)
    own = [item for item in items if item.unit == unit or unit == "space" and item.unit.startswith("space")]
    printed = sum(item.at(size, row.stated_index) or 0 for item in own) if own else None
    made = None if cell.made is None else _made_in(cell, unit, own)
    return Due(printed, made)


def _foundation(row: LedgerRow, size: int) -> Due:
    chains = [step for step in for_size(row.row.steps, size) if isinstance(step, Chain)]
    length = chains[0].length.at(size) if chains else None
    return Due(length, length)


def _only_kind(cell: Cell, unit: str) -> bool:
    return cell.made is not None and list(cell.made.by_kind) == [unit.partition(":")[2]]


def _main(row: LedgerRow, cell: Cell, size: int, items: list[StatedItem]) -> Due:
    whole = [item for item in items if item.unit == "stitches"][:1]
    own = whole or [item for item in items if item.unit.startswith("kind:") and item.unit != "kind:sl st"]
    own = own or items[:1]
    if not own:
        made = None
        if cell.made is not None:
            made = cell.made.stitches or sum(cell.made.spaces.values()) or None
        return Due(None, made)
    printed = sum(item.at(size, row.stated_index) or 0 for item in own)
    if cell.made is None:
        return Due(printed, None)
    if cell.outcome is Outcome.AGREES:
        return Due(printed, printed)
    made = 0
    for item in own:
        figures = measured(item, cell.made, cell.stated)
        if not figures:
            return Due(printed, None)
        wanted = item.at(size, row.stated_index) or 0
        made += min(figures, key=lambda figure: abs(figure - wanted))
    return Due(printed, made)


def _made_in(cell: Cell, unit: str, own: list[StatedItem]) -> int | None:
    made = cell.made
    if own and cell.stated is not None:
        found = [measured(item, made, cell.stated) for item in own]
        return sum(figures[0] for figures in found) if all(found) else None
    sort, _, name = unit.partition(":")
    if sort == "kind":
        return made.by_kind.get(name)
    if sort == "space":
        return made.spaces.get(int(name), 0) if name else sum(made.spaces.values())
    if sort == "chain":
        return made.chains
    if sort == "corner":
        return made.corners or None
    return next((n for group, n in made.groups.items() if group.lower().rstrip("s") == name.rstrip("s")), None)
