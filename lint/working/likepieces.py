"""Which rows "Work as for Back" calls for: those of the piece, and of the headings within it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol, TypeVar

from lint.pattern import Part, Stated
from lint.tree import MAKES_STITCHES, Chain, Remark, RowCall, Step, UseYarn

NO_BASE = "what it is worked on is not told: the piece has no foundation"
_WITHIN = ("shap", "armhole", "neck", "shoulder", "divide", "dividing", "raglan", "crown")  # headings inside a piece


def _of_one_piece(one: Part, other: Part) -> bool:
    """Whether two headings stand under that of one piece."""
    return bool(one.piece) and one.piece == other.piece


class RowMet(Protocol):
    """A row met so far: its sort, its number (0: none), its label, its printed count and its part."""

    kind: str
    number: int
    label: str
    steps: tuple[Step, ...]
    stated: Stated | None
    part: Part
    mark: str


Met = TypeVar("Met", bound=RowMet)


def within_piece(part: Part) -> bool:
    """Whether a heading tells a section of the piece before it: "Shape Armholes", "NECK SHAPING"."""
    return any(word in part.name.lower() for word in _WITHIN)


def piece_met(met: Sequence[Met], name: str, calling: Part | None) -> Sequence[Met]:
    """The rows met from the first one of a piece on, or those of its sections where these have headings of their own.

    A section of the `calling` piece calls for the section of the same name: "FRONT", "Ribbing", "Work as for Back".
    """
    wanted = name.lower()
    first = next((i for is_it in (_is_named, _named) for i, one in enumerate(met) if is_it(one.part, wanted)), len(met))
    if first == len(met) or wanted not in met[first].part.piece.lower():
        return met[first:]
    rows = [one for one in met[first:] if one.part.piece == met[first].part.piece]
    if calling is None or not calling.piece:
        return rows
    return [one for one in rows if one.part.name.lower() == calling.name.lower()]


def piece_before(met: Sequence[Met], part: Part | None) -> Sequence[Met]:
    """The rows of the last heading before this one; [] where the piece began under an earlier one."""
    last = met[-1].part if met else None
    rows = [entry for entry in met if entry.part is last]
    return rows if last is not part and rows and rows[0].number in (0, 1) else []


def foundation_before(first: Met, there: Sequence[Met]) -> Sequence[Met]:
    """The foundation rows of a piece, where the `first` row that is called for is worked on these."""
    before = there[: next(at for at, one in enumerate(there) if one is first)]
    return before if all(not one.number and "foundation" in one.label.lower() for one in before) else []


def last_rows(met: Sequence[Met], number: int) -> Sequence[Met]:
    """The last rows of those met; [] where there are not so many: "Foundation: Ch 40" is none."""
    rows = met[-number:] if len(met) >= number > 0 else []
    chained = any(
        all(isinstance(step, (Chain, UseYarn, Remark)) for step in one.steps)
        and any(isinstance(step, Chain) for step in one.steps)
        for one in rows
    )
    return [] if chained else rows


def told_once(rows: Sequence[Met], name: str) -> Sequence[Met]:
    """The rows of a piece; none where several of its sections, under headings of their own, have rows of one number."""
    if rows and name.lower() not in rows[0].part.piece.lower():
        return rows  # a section is called by its own name
    numbers: dict[tuple[str, int], int] = {}
    clash = any(
        one.number and numbers.setdefault((one.kind, one.number), id(one.part)) != id(one.part)
        for one in rows
        if one.part.piece
    )
    return [] if clash else rows


def _is_named(part: Part, wanted: str) -> bool:
    return wanted in (part.name.lower(), part.piece.lower())


def _named(part: Part, wanted: str) -> bool:
    return wanted in part.name.lower() or part.name.lower() in wanted or wanted in part.piece.lower()


def own_ways(parts: Sequence[Part]) -> frozenset[int]:
    """The parts (by id) with rows of their own beside those they call for, here or under a heading within them."""
    return frozenset(
        id(part)
        for part, coming in zip(parts, (*parts[1:], None), strict=False)
        if coming is not None
        and within_piece(coming)
        or any(
            row.label is not None and any(isinstance(step, MAKES_STITCHES) for step in row.steps) for row in part.rows
        )
    )


def _row_called(rows: Sequence[Met], call: RowCall, counted: Stated | None, ends: bool) -> int | None:
    """Where the last row called for stands among those of a piece: "as Back through Row 30"; None where that is not told.

    Of several sections with a row of that number it is the one whose row has the count that is printed on the call, or that
    ends there, where the calling piece begins a new heading there, too.
    """
    last = call.last.lone if call.last is not None else None
    there = [at for at, one in enumerate(rows) if last and one.number == last and call.kind in (None, one.kind)]
    whole = rows and (call.part or "").lower() in rows[0].part.piece.lower()  # not a section by its own name
    if not whole or not there:
        return there[0] if there else None
    firsts = {id(rows[at].part): at for at in reversed(there) if _of_one_piece(rows[0].part, rows[at].part)}
    found = list(firsts.values()) or there[:1]
    if len(found) > 1 and counted is not None:
        alike = [at for at in found if _same_count(rows[at].stated, counted)]
        found = alike if len(alike) == 1 and all(rows[at].stated is not None for at in found) else found
    if len(found) > 1 and ends:
        found = [at for at in found if at + 1 < len(rows) and rows[at + 1].part is not rows[at].part]
    return found[0] if len(found) == 1 else None


def _same_count(one: Stated | None, other: Stated) -> bool:
    """Whether two printed counts give the same figures."""
    return one is not None and [item.number for item in one.items] == [item.number for item in other.items]


def rows_called(rows: Sequence[Met], call: RowCall, own_way: bool, counted: Stated | None, ends: bool) -> Sequence[Met]:
    """The rows of a piece that are called for, from its first one on, or from "Row 3", where it has one row of that number."""
    found = _rows_up_to(rows, call, own_way, counted, ends)
    if call.begin is None:
        return found
    first = [at for at, one in enumerate(found) if one.number == call.begin.lone]
    return found[first[0] :] if len(first) == 1 else []


def _rows_up_to(rows: Sequence[Met], call: RowCall, own_way: bool, counted: Stated | None, ends: bool) -> Sequence[Met]:
    """The rows of a piece up to the last one called for; [] if it is not there, or can't be told.

    `rows`: those met from the first of the piece on.  `own_way`: the piece that calls has other rows too, so that
    how much of a piece with headings within it is meant is not said.  `counted`: what is printed on the call.
    `ends`: whether the heading under which the call stands ends with it.
    """
    if call.last is not None:
        end = _row_called(rows, call, counted, ends)
        return rows[: end + 1] if end is not None else []
    if call.to_part is not None and call.to_part.startswith("*"):
        marked = [at for at, one in enumerate(rows) if one.mark == call.to_part]
        alone = marked and marked == list(range(marked[0], marked[-1] + 1))  # one row, or one worked several times
        return rows[: marked[-1] + 1] if alone else []
    if call.to_part is not None:
        wanted = call.to_part.lower().split()[-1 if len(call.to_part.split()) == 1 else -2].rstrip("s")
        at = next((i for i, e in enumerate(rows) if wanted in e.part.name.lower() and e.part is not rows[0].part), None)
        return rows[:at] if at else []
    end, numbered = 1, rows[0].number if rows else 0
    while end < len(rows) and (rows[end].part is rows[0].part or rows[end].number == numbered + 1):
        numbered = rows[end].number or numbered  # "Next row" has none, and a Row 1 behind it begins anew
        end += 1
    whole = end
    while whole < len(rows) and (within_piece(rows[whole].part) or _of_one_piece(rows[0].part, rows[whole].part)):
        whole += 1
    return rows[:whole] if whole == end or not own_way else []
