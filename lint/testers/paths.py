"""The paths that makers follow: the rows of one piece in one size, with what their numbers may show of a slip."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lint.inspection import Report
from lint.ledger import LedgerRow, Outcome
from lint.place import Which
from lint.testers.due import MAIN, Due, due_in
from lint.tree import Chain, FastenOff, Group, Join, MakeRing, RowCall, Work, walk
from lint.working.workings import Line


@dataclass(frozen=True, slots=True)
class Unit:
    """What a row works again and again: how often, how many places each uses, how many stitches each makes."""

    times: int
    uses: int
    makes: int

    @property
    def gain(self) -> int:
        return self.makes - self.uses


@dataclass(frozen=True, slots=True)
class PathRow:
    """One row on the path: its place in the ledger, what is due, and the facts that slips hang on."""

    index: int
    row: LedgerRow
    size: int
    due: Due
    chain_counts: bool | None  # whether the beginning chain counts as a stitch; None: there is none, or it is not known
    joined: bool
    on_chain: bool  # worked into a foundation chain
    units: tuple[Unit, ...]
    spaces: int

    @property
    def label(self) -> str:
        return self.row.label

    @property
    def founds(self) -> bool:
        return self.row.kind == "foundation"


@dataclass(frozen=True)
class Path:
    """The rows that the maker of one size works one upon the other."""

    size: int
    rows: tuple[PathRow, ...]

    def in_unit(self, unit: str) -> Path:
        """The same rows with what is due in another unit; what stitches are gained by says nothing there."""
        rows = (
            replace(row, due=due_in(row.row, self.size, unit), chain_counts=None, units=(), spaces=0)
            for row in self.rows
        )
        return Path(self.size, tuple(rows))


def paths_of(report: Report) -> list[Path]:
    """Every path: the rows of a part, and of parts whose numbers go on from it, in each size."""
    found = []
    for size in range(max(1, len(report.pattern.sizes))):
        run: list[PathRow] = []
        before: LedgerRow | None = None
        for index, row in enumerate(report.ledger.rows):
            if row.cells[size].outcome is Outcome.NOT_WORKED:
                continue
            if before is not None and row.part is not before.part and not _goes_on(before, row):
                found.append(Path(size, tuple(run)))
                run = []
            run.append(_path_row(index, row, size, run[-1] if run else None))
            before = row
        if run:
            found.append(Path(size, tuple(run)))
    return found


def _goes_on(before: LedgerRow, row: LedgerRow) -> bool:
    """Whether a part's first row is worked on the last of the part before it: its number goes on."""
    if row.number is None or before.number is None or row.number != before.number + 1:
        return False
    return not any(isinstance(step, FastenOff) for step in before.row.steps)


def _path_row(index: int, row: LedgerRow, size: int, before: PathRow | None) -> PathRow:
    cell = row.cells[size]
    steps = row.row.steps
    lines = cell.workings.lines if cell.workings is not None else ()
    called = any(isinstance(step, RowCall) for step in steps)
    on_chain = (
        before is not None and before.founds and not any(isinstance(s, MakeRing) for s in walk(before.row.row.steps))
    )
    return PathRow(
        index,
        row,
        size,
        due_in(row, size, MAIN),
        _chain_counts(row, lines),
        any(isinstance(step, Join) for step in steps) or called and before is not None and before.joined,
        on_chain or _from_hook(row),
        tuple(_units(lines)),
        sum(cell.made.spaces.values()) if cell.made is not None else 0,
    )


def _chain_counts(row: LedgerRow, lines: tuple[Line, ...]) -> bool | None:
    stands = next((line.stands for line in lines if line.stands is not None), None)
    if stands is not None:
        return stands.stitch is not None
    first = next((step for step in walk(row.row.steps) if isinstance(step, (Chain, Work, Group))), None)
    if not isinstance(first, Chain):
        return None
    return first.counting.counts if first.counting is not None else False


def _from_hook(row: LedgerRow) -> bool:
    for step in walk(row.row.steps):
        if isinstance(step, (Work, Group)):
            return any(place.which is Which.FROM_HOOK for place in step.places)
    return False


def _units(lines: tuple[Line, ...]) -> Iterator[Unit]:
    """The passes of the row's repeats, and runs of places that hold several stitches each."""
    for line in lines:
        if line.passes:
            often = max(line.passes, key=lambda one: one.times)
            if often.times > 1:
                yield Unit(often.times, often.uses, often.makes)
            for one in line.passes:
                yield from _units(one.lines) if one.times == 1 else ()
        elif len(line.units) == 1 and line.units[0][0] > 1 and line.units[0][1] > 1 and line.uses == line.units[0][0]:
            places, each = line.units[0]
            yield Unit(places, 1, each)


def labels_between(rows: list[PathRow]) -> str:
    """ "Rows 3 to 6" as the labels of the first and the last of some rows."""
    if not rows:
        return ""
    return rows[0].label if len(rows) == 1 else f"{rows[0].label} to {rows[-1].label}"
