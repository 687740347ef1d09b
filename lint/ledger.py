"""What came of every row and round: the ledger that checks read and reports show."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from lint.pattern import Part, Row, Stated
from lint.source import Span
from lint.tree import OpenWork, RowCall, walk
from lint.working.columns import Columns
from lint.working.compare import Comparison
from lint.working.fabric import Made
from lint.working.workings import Workings


class Outcome(StrEnum):
    """What came of a row in one size; the values are those of the JSON report."""

    AGREES = "agrees"
    DIFFERS = "differs"
    NOT_STATED = "not-stated"
    NOT_RECOMPUTED = "not-recomputed"
    NOT_WORKED = "not-worked"


@dataclass(frozen=True, slots=True)
class Misfit:
    """Something that does not fit the row below, with the words it arose at."""

    kind: str  # run out | does not fit | left | not there | uncounted chain | passed
    wanted: str
    number: int
    found: str
    span: Span


@dataclass(frozen=True, slots=True)
class Cell:
    """One row in one size."""

    outcome: Outcome
    made: Made | None = None
    comparison: Comparison | None = None
    misfits: tuple[Misfit, ...] = ()
    stopped_by: str | None = None
    stopped_at: Span | None = None
    below: int | None = None  # stitches of the row below, where known
    unsaid_chain: tuple[Span, bool | None] | None = (
        None  # a beginning chain of which nothing is said, and whether it was read as counting; None: either agrees
    )
    unclear_times: tuple[Span, int, int, bool] | None = (
        None  # "n times": the passes taken, and whether the counts settled it
    )
    picked_up: bool = False  # the next row is worked on the printed count, not on what this row makes
    assumed: bool = False  # worked on a printed count, for the row below was not recomputed or differs
    leans: str = ""  # the row not worked out on whose printed count this one would differ from its own
    workings: Workings | None = (
        None  # how the count comes, clause by clause; of rows that differ, or of all if asked for
    )
    stated: Stated | None = None  # the printed count that speaks of this row in this size
    columns: Columns | None = None  # what its post stitches are worked around
    passed: tuple[int, int, int] | None = None  # by rows "until there are 57 sts": what was made before, and behind; 57
    spread: tuple[int, ...] = ()  # plain stitches between its increases, where each is a clause of its own


@dataclass(frozen=True, slots=True)
class LedgerRow:
    """A row as worked: ranges and "Rep Rows" are run out, one entry a row."""

    part: Part
    row: Row
    label: str
    kind: str
    number: int | None
    span: Span  # of the label (or line) that it comes from
    stated_index: int | None
    cells: tuple[Cell, ...]  # one a size, aligned from the range's start
    index_in_range: int = 0
    range_length: int = 1  # in the first size that works this row

    @property
    def first(self) -> Cell:
        """The cell of the first size that works the row."""
        return next((cell for cell in self.cells if cell.outcome is not Outcome.NOT_WORKED), self.cells[0])

    @property
    def worked_in(self) -> list[int]:
        """The sizes that work the row."""
        return [size for size, cell in enumerate(self.cells) if cell.outcome is not Outcome.NOT_WORKED]

    @property
    def open(self) -> bool:
        """Whether it stands for as many rows as are wanted: "until piece measures 25 cm"."""
        steps = walk(self.row.steps)
        return any(isinstance(step, OpenWork) or isinstance(step, RowCall) and step.open_ended for step in steps)

    @property
    def stated(self) -> Stated | None:
        """The printed count that speaks of this row in any size."""
        return next((cell.stated for cell in self.cells if cell.stated is not None), None)


@dataclass(frozen=True, slots=True)
class Ledger:
    """Every row worked, the stitches made in all, and ranges whose length the words contradict."""

    rows: tuple[LedgerRow, ...] = ()
    stitches: int = 0  # made in all, over all sizes
    range_faults: tuple[tuple[Row, Part, int, int], ...] = field(
        default_factory=tuple
    )  # row, part, rows in the label, rows in the words

    def recomputed(self) -> tuple[int, int]:
        """Rows (times sizes) recomputed, and all of them; what a piece is begun on is no row, where there are others."""
        rows = [row for row in self.rows if row.kind != "foundation"] or self.rows
        cells = [cell for row in rows for cell in row.cells if cell.outcome is not Outcome.NOT_WORKED]
        return sum(cell.made is not None for cell in cells), len(cells)
