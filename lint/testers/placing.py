"""Puts testers' counts on the rows of the ledger, in their size; what cannot be placed is told, never guessed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from lint.inspection import Report
from lint.ledger import LedgerRow, Outcome
from lint.testers.claims import Counted, Intake, Place, Remark, Unmatched
from lint.testers.due import MAIN, Due, due_in, own_unit, unit_key
from lint.testers.names import Names, RowName


@dataclass(frozen=True, slots=True)
class Placed:
    """A count on its row: the row's place in the ledger, the size (from 0), what is due, and what was got."""

    claim: Counted
    tester: str
    index: int
    size: int
    unit: str
    due: Due
    got: int
    other_draft: bool = False  # the tester's copy says another printed count


@dataclass(frozen=True)
class Placement:
    """Every count that was placed, the rows that remarks speak of, and what was not placed."""

    placed: tuple[Placed, ...]
    remarks: tuple[tuple[Remark, int | None], ...]
    unmatched: tuple[Unmatched, ...]
    sizes: dict[str, int]  # by tester: the one size made


def place(report: Report, names: Names, intake: Intake) -> Placement:
    """Every claim of a row on the ledger."""
    return _Placer(report, names, intake).placement()


class _Placer:
    def __init__(self, report: Report, names: Names, intake: Intake) -> None:
        self.report = report
        self.names = names
        self.intake = intake
        self.unmatched: list[Unmatched] = []
        self.rows = report.ledger.rows
        self.sizes = self._sizes()
        self.implied = self._implied_parts()
        self.find = lru_cache(maxsize=None)(self._find)
        self.unit = lru_cache(maxsize=None)(lambda words: unit_key(words, report))
        self.due = lru_cache(maxsize=None)(lambda index, size, unit: due_in(self.rows[index], size, unit))

    def placement(self) -> Placement:
        by_key: dict[tuple[str, int, int, str], Placed] = {}
        for claim in self.intake.of(Counted):
            for one in self._counts(claim):
                key = (one.tester, one.size, one.index, one.unit)
                before = by_key.get(key)
                if before is not None and before.got != one.got:
                    self._tell(
                        before.claim.place,
                        f"{self.rows[one.index].label}: {before.got}",
                        f"{one.tester} counts {one.got} there later on ({one.claim.place}), which is taken",
                    )
                by_key[key] = one
        remarks = tuple((remark, self._row_of(remark)) for remark in self.intake.of(Remark))
        return Placement(tuple(by_key.values()), remarks, tuple(self.unmatched), self.sizes)

    def _tell(self, at: Place, what: str, why: str) -> None:
        self.unmatched.append(Unmatched(at, what, why))

    # sizes ------------------------------------------------------------------------------------------------------

    def _sizes(self) -> dict[str, int]:
        """The size of every tester who makes one only."""
        if len(self.names.sizes) < 2:
            return {claim.who.tester: 0 for claim in self.intake.claims}
        said: dict[str, set[int]] = {}
        for claim in self.intake.claims:
            size = self.names.size(claim.who.size) if claim.who.size else None
            if size is not None:
                said.setdefault(claim.who.tester, set()).add(size)
        return {tester: next(iter(sizes)) for tester, sizes in said.items() if len(sizes) == 1}

    def _size(self, claim: Counted) -> int | None:
        if len(self.names.sizes) < 2:
            return 0
        if claim.who.size:
            size = self.names.size(claim.who.size)
            if size is None:
                known = ", ".join(self.names.sizes)
                self._tell(claim.place, f"the size “{claim.who.size}”", f"it is none of this pattern's: {known}")
            return size
        size = self.sizes.get(claim.who.tester)
        if size is None:
            self._tell(
                claim.place, f"“{claim.quoted or claim.row}”", f"it is not said which size {claim.who.tester} made"
            )
        return size

    # rows -------------------------------------------------------------------------------------------------------

    def _find(self, part: str | None, words: str) -> tuple[tuple[int, ...], str]:
        """The rows of the ledger that are meant, or () with the reason why none is."""
        name = self.names.row(words)
        if name is None:
            named = [index for index, row in enumerate(self.rows) if row.label.casefold() == words.strip().casefold()]
            return (tuple(named), "") if len(named) == 1 else ((), "it names no row or round")
        part = self.names.part_beside(words) or part
        wanted = self.names.part(part) if part else None
        if part and wanted is None:
            return (), f"no part of the pattern goes by “{part}”"
        fitting = [index for index, row in enumerate(self.rows) if _is_meant(row, name)]
        fitting = _of_kind(self.rows, fitting, name)
        here = [index for index in fitting if self.rows[index].part.name == wanted] if wanted else fitting
        here = here or [index for index in fitting if wanted and self._goes_on_from(wanted, index)]
        if not here:
            where = f" in {wanted}" if wanted else ""
            return (), f"there is no such row{where}"
        numbers = [self.rows[index].number for index in here]
        if len(set(numbers)) < len(numbers):
            parts = list(dict.fromkeys(self.rows[index].part.name for index in here))
            where = f"in {' and in '.join(parts)}" if len(parts) > 1 else f"twice in {parts[0]}"
            return (), f"it stands {where}; which is meant is not said"
        return tuple(here), ""

    def _goes_on_from(self, part: str, index: int) -> bool:
        """Whether a row's number runs on from an earlier part: row 27 under "Shape armholes" is a row of the Back."""
        last = [row.number or 0 for row in self.rows[:index] if row.part.name == part]
        between = [row for row in self.rows[:index] if row.part is self.rows[index].part]
        number = (between[0] if between else self.rows[index]).number
        return bool(last) and number == max(last) + 1

    def _row_of(self, remark: Remark) -> int | None:
        if not remark.row:
            return None
        found, _ = self.find(remark.part, remark.row)
        return found[0] if found else None

    def _implied_parts(self) -> dict[int, str]:
        """By claim (its id), the one part that has every row of the list it stands in, where no part is said.

        A list goes on while one tester's numbers grow: rows 1 to 20 can only be those of a part with 20 rows.
        """
        found: dict[int, str] = {}
        runs: dict[tuple, list[tuple[Counted, RowName]]] = {}
        for claim in self.intake.of(Counted):
            key = (claim.place.file, claim.place.sheet, claim.who)
            name = self.names.row(claim.row)
            run = runs.setdefault(key, [])
            said = claim.part or self.names.part_beside(claim.row)
            if said or name is None or not name.numbers or run and name.numbers[0] <= run[-1][1].numbers[-1]:
                found |= self._part_of_run(run)
                run.clear()
            if not said and name is not None and name.numbers:
                run.append((claim, name))
        for run in runs.values():
            found |= self._part_of_run(run)
        return found

    def _part_of_run(self, run: list[tuple[Counted, RowName]]) -> dict[int, str]:
        fitting: set[str] | None = None
        for _, name in run:
            found = _of_kind(self.rows, [at for at, row in enumerate(self.rows) if _is_meant(row, name)], name)
            has = {
                number: {self.rows[at].part.name for at in found if self.rows[at].number == number}
                for number in name.numbers
            }
            for parts in has.values():
                fitting = parts if fitting is None else fitting & parts
        if len(run) < 2 or fitting is None or len(fitting) != 1:
            return {}
        (part,) = fitting
        return {id(claim): part for claim, _ in run}

    # counts -----------------------------------------------------------------------------------------------------

    def _counts(self, claim: Counted) -> Iterator[Placed]:
        size = self._size(claim)
        if size is None:
            return
        found, why = self.find(claim.part or self.implied.get(id(claim)), claim.row)
        shown = f"“{claim.row}” in “{claim.quoted}”" if claim.quoted not in ("", claim.row) else f"“{claim.row}”"
        if not found:
            self._tell(claim.place, shown, why)
            return
        worked = [index for index in found if self.rows[index].cells[size].outcome is not Outcome.NOT_WORKED]
        if not worked:
            name = self.names.sizes[size] if self.names.sizes else ""
            self._tell(claim.place, shown, f"size {name} does not work this row")
            return
        units = {index: self._unit_in(index, size, self.unit(claim.unit)) for index in worked}
        dues = {index: self.due(index, size, units[index]) for index in worked}
        if not claim.as_printed and len({due.count for due in dues.values()}) > 1:
            worked = worked[-1:]  # as in print, a count behind a run of rows is that of the last
        for index in worked:
            due = dues[index]
            got = claim.count
            if claim.as_printed or claim.off is not None:
                stated = due.printed if due.printed is not None else due.made
                got = None if stated is None else stated + (claim.off or 0)
            if got is None:
                self._tell(
                    claim.place, shown, "nothing is printed for this row that it could agree with or differ from"
                )
                continue
            other = (
                claim.printed is not None and due.printed is not None and not self._is_printed(claim, index, size, due)
            )
            yield Placed(claim, claim.who.tester, index, size, units[index], due, got, other)

    def _is_printed(self, claim: Counted, index: int, size: int, due: Due) -> bool:
        """Whether what a tester's copy says is printed for this row here too: the row's count, or one figure of it."""
        row = self.rows[index]
        stated = row.cells[size].stated
        items = stated.items if stated is not None else ()
        return claim.printed in {due.printed, *(item.at(size, row.stated_index) for item in items)}

    def _unit_in(self, index: int, size: int, said: str) -> str:
        """The unit that is counted in a row; one that the row does not have is taken for the row's own."""
        unit = own_unit(self.rows[index], size, said)
        return unit if self.due(index, size, unit).count is not None else MAIN


def _is_meant(row: LedgerRow, name: RowName) -> bool:
    if name.foundation:
        return row.kind == "foundation"
    return row.kind != "foundation" and row.number in name.numbers


def _of_kind(rows: tuple[LedgerRow, ...], found: list[int], name: RowName) -> list[int]:
    """Of the rows found, those of the kind that is said; all of them where none is of it."""
    own = [index for index in found if name.kind in (None, rows[index].kind)]
    return own or found
