"""What came of a row: its cell in the ledger, its misfits, and how the rows of all sizes stand side by side."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

from lint.ledger import Cell, LedgerRow, Misfit, Outcome
from lint.pattern import Part
from lint.place import Which
from lint.source import Span
from lint.tree import MAKES_STITCHES, Group, JoinYarn, Repeat, Skip, Step, TimesKind, Work, walk
from lint.working.bench import Worked
from lint.working.compare import Comparison, compare
from lint.working.fabric import Fabric
from lint.working.growth import counted
from lint.working.instances import Instance, Loop
from lint.working.trials import PieceState, Trial


@dataclass(frozen=True)
class Entry:
    """One row as worked in one size."""

    instance: Instance
    cell: Cell


def in_step(columns: Sequence[Sequence[Entry]]) -> Iterator[tuple[Entry | None, ...]]:
    """The rows that a printed row stands for, of all sizes: the first beside the first, and so on.

    Of a piece that is called for, the first rows of each of its printed rows stand beside each other: sizes may differ in
    how many there are.
    """
    by_row = [defaultdict(list) for _ in columns]
    for rows, column in zip(by_row, columns, strict=True):
        for entry in column:
            rows[entry.instance.again].append(entry)
    for printed in sorted({printed for rows in by_row for printed in rows}):
        yield from zip_longest(*(rows[printed] for rows in by_row))


def side_by_side(part: Part, entries: tuple[Entry | None, ...]) -> LedgerRow:
    """One row in all sizes, told by the first of those that work it."""
    first = next(one.instance for one in entries if one is not None)
    return LedgerRow(
        part,
        first.row,
        first.label,
        first.kind,
        first.number,
        first.row.label.span if first.row.label is not None else first.row.span,
        first.stated_index,
        tuple(with_count(one) if one is not None else Cell(Outcome.NOT_WORKED) for one in entries),
        first.index,
        first.length,
    )


def with_count(entry: Entry) -> Cell:
    """A cell with the printed count that it was, or would be, compared with."""
    instance, cell = entry.instance, entry.cell
    stated = instance.stated
    if stated is not None and stated.perhaps and (cell.outcome is Outcome.NOT_STATED or cell.stated is not None):
        return cell  # it was worked, or what is left of it when its squares are
    if stated is None and instance.loop is not None and cell.comparison is not None:
        stated = instance.loop.stated
    if stated is None and cell.outcome is Outcome.AGREES:
        stated = instance.inherited
    return replace(cell, stated=stated) if stated is not cell.stated else cell


def outcome_of(instance: Instance, best: Trial) -> tuple[Outcome, Comparison | None]:
    """What came of a row that was worked, and its printed count compared."""
    if best.agrees:
        return Outcome.AGREES, best.comparison
    if best.agrees is None or instance.stated is None:
        return Outcome.NOT_STATED, None
    return Outcome.DIFFERS, best.comparison


def at_loop_end(loop: Loop, cell: Cell, state: PieceState, size: int) -> Cell:
    """The last row of "rep … until n sts remain": its count compared, and whether n is what there is."""
    if cell.made is None:
        return cell
    if loop.stated is not None:
        comparison = compare(loop.stated, cell.made, size)
        outcome = Outcome.DIFFERS if comparison.agrees is False else Outcome.AGREES
        return replace(cell, comparison=comparison, outcome=outcome if comparison.agrees is not None else cell.outcome)
    if loop.until is not None and loop.until.at(size) != counted(loop.unit, cell.made):
        state.fabric = None
        sort = "sts" if loop.unit == "stitches" else f"of its {loop.unit.partition(':')[2] or 'space'}s"
        wanted = loop.until.at(size)
        stopped = f"rows like these never come to {wanted} {sort}"
        ends = (cell.below, cell.made.stitches) if cell.below is not None and loop.unit == "stitches" else None
        passed = (*ends, wanted) if ends is not None and wanted and min(ends) < wanted < max(ends) else None
        return Cell(Outcome.NOT_RECOMPUTED, stopped_by=stopped, stopped_at=loop.rows[-1].row.span, passed=passed)
    return cell


def joins_yarn(steps: tuple[Step, ...]) -> bool:
    """Whether new yarn is joined in these steps."""
    return any(isinstance(step, JoinYarn) for step in steps)


def skips_to_join(steps: tuple[Step, ...]) -> bool:
    """ "Skip next 12 sts, join yarn in next st": stitches that lie beside what was worked last."""
    first = next((step for step in steps if isinstance(step, (*MAKES_STITCHES, Skip, JoinYarn))), None)
    return isinstance(first, Skip)


def of_this_row(step: Step) -> Step:
    """A skip of stitches of a row named by its number, as one of the places that come next."""
    if not isinstance(step, Skip) or not step.places or step.places[0].which is not Which.ELSEWHERE:
        return step
    return replace(step, places=tuple(replace(place, which=Which.NEXT) for place in step.places))


def misfits(worked: Worked, instance: Instance) -> tuple[Misfit, ...]:
    """What lacks, is left over or does not come out in a row, with the words at which it arose."""
    found = [
        Misfit(n.trouble.kind, n.trouble.wanted, n.trouble.number, n.trouble.found, n.span) for n in worked.troubles
    ]
    if worked.left and not any(m.kind == "does not fit" for m in found):
        stitches = [node for node in worked.left if node.is_stitch]
        wanted = "st" if stitches else f"ch-{worked.left[0].length} sp"
        last = next((s for s in reversed(instance.steps) if isinstance(s, (Work, Group, Repeat))), None)
        found.append(
            Misfit(
                "left over",
                wanted,
                len(stitches) or len(worked.left),
                "",
                last.span if last is not None else instance.row.span,
            )
        )
    return tuple(found)


def unclear_times(best: Trial, steps: tuple[Step, ...], below: Fabric) -> tuple[Span, int, int, bool] | None:
    """A bare "n times": the number said, the passes taken, and whether the printed count settles it, or the places there are."""
    asked = best.worked.choices.asked
    if not asked:
        return None
    counted = below.known and bool(below.nodes) and below.nodes[0].kind != "ring"
    for step in walk(steps):
        if isinstance(step, Repeat) and step.times.kind is TimesKind.UNCLEAR and step.times.number is not None:
            taken = asked.get(("times", step.times.span.start))
            if taken is not None:
                said = step.times.number.values[0] or 0
                return (
                    step.times.span,
                    said,
                    said + taken[0],
                    best.fits and (bool(best.agrees) or counted and best.agrees is None and _uses_places(step)),
                )
    return None


def _uses_places(step: Repeat) -> bool:
    """Whether every pass takes places of the row below, so that only one number of passes fits it."""
    return any(
        place.which is Which.NEXT for s in walk(step.items) if isinstance(s, (Work, Group, Skip)) for place in s.places
    )
