"""What is wrong with a row as worked: one fault a cell, under the name of its rule."""

from __future__ import annotations

from collections.abc import Sequence

from lint.ledger import Cell, Ledger, Outcome
from lint.pattern import Row
from lint.working.fabric import Made
from lint.working.rowworker import NO_STITCHES

SERIOUS = ("run out", "too often", "does not fit", "left", "left over")
RULES = {
    "run out": "places-run-out",
    "does not fit": "repeat-does-not-fit",
    "too often": "repeat-does-not-fit",
    "left": "places-left-over",
    "left over": "places-left-over",
}


def fault_of(cell: Cell) -> str | None:
    """The rule that a row breaks in one size, the gravest; None where it comes out."""
    if cell.leans:
        return "count-differs"
    if cell.made is None and not cell.misfits:
        return None
    serious = next((misfit for misfit in cell.misfits if misfit.kind in SERIOUS), None)
    if cell.assumed and cell.outcome is not Outcome.DIFFERS:
        return None  # which stitches lie below is not known, only how many are printed
    if serious is not None:
        return RULES[serious.kind]
    if cell.outcome is Outcome.DIFFERS:
        return "count-differs"
    if any(misfit.kind == "not there" for misfit in cell.misfits):
        return "place-not-there"
    if any(misfit.kind == "chains too" for misfit in cell.misfits):
        return "chains-called-stitches"
    if cell.made is not None and unequal_sides(cell.made) is not None:
        return "corners-differ"
    return None


def told_in(cells: Sequence[Cell], sizes: Sequence[int]) -> list[int]:
    """Of the sizes in which a row is at fault, those that its finding tells of.

    Where places are left over in all of them and the count comes out in some, these are likely left on purpose; what
    differs from the print in the others is certain.
    """
    left = all(fault_of(cells[size]) == "places-left-over" for size in sizes)
    apart = [size for size in sizes if cells[size].outcome is Outcome.DIFFERS]
    agree = all(cells[size].outcome is Outcome.AGREES for size in sizes if size not in apart)
    return apart if left and agree and 0 < len(apart) < len(sizes) else list(sizes)


def works_nothing(row: Row, cell: Cell) -> bool:
    """Whether a row with a label works nothing on the stitches below: its only clause may be lost."""
    if row.label is None:
        return False
    made = cell.made
    nothing = made is not None and not (made.stitches or made.spaces or made.slips)
    return cell.stopped_by == NO_STITCHES or nothing and bool(cell.below)


def unequal_sides(made: Made) -> tuple[int, ...] | None:
    """The sides where they are not alike; those of an oblong, or of a star's repeat, that come again in turn are."""
    sides = made.sides
    turns = (turn for turn in range(1, len(sides) // 2 + 1) if len(sides) % turn == 0)
    if len(sides) < 2 or any(sides == sides[:turn] * (len(sides) // turn) for turn in turns):
        return None
    if max(sides) - min(sides) > max(4, min(sides)):
        return None  # not a regular shape at all
    if len(sides) == 4 and _as_a_yoke(sides):
        return None
    return sides


def _as_a_yoke(sides: tuple[int, ...]) -> bool:
    """Whether two sides that face each other are alike, and the others unlike them and far from each other.

    So are two sleeves, a back and a front; a square or an oblong with one slip has sides of nearly the same length.
    """
    one, other = (sides[0], sides[2]), (sides[1], sides[3])
    alike, apart = (one, other) if one[0] == one[1] else (other, one)
    return alike[0] == alike[1] and alike[0] not in apart and abs(apart[0] - apart[1]) > _SLIP


_SLIP = 2  # stitches that a side has too many or too few by a slip; common practice, no source


def range_ends(ledger: Ledger) -> frozenset[int]:
    """The last rows (by place in the ledger) of ranges whose label names another number of rows than the words work."""
    ends = {}
    starts = {row.span.start for row, _, _, _ in ledger.range_faults}
    for index, row in enumerate(ledger.rows):
        if row.row.span.start in starts:
            ends[row.row.span.start] = index
    return frozenset(ends.values())
