"""A drawn piece: its lines so far, and what each of its rows makes."""

from __future__ import annotations

from dataclasses import dataclass, field

from drawnstyles import Figure, Style

CHAINS = {"sc": 1, "hdc": 2, "dc": 2}  # of a turning chain that does not count


@dataclass
class Piece:
    """The lines of a pattern so far, the counts of its rows, and the mistake to be planted in one printed count."""

    style: Style
    wrong: int | None = None  # the line of work whose printed count is out
    by: int = 0
    lines: list[str] = field(default_factory=list)
    made: list[Figure] = field(default_factory=list)
    worked: int = 0  # lines of work so far
    planted: str = ""  # the words of the line that is wrong

    def sized(self, first: int, step: int = 0) -> list[int]:
        """A figure for each size."""
        return [first + step * size for size in range(self.style.sizes)]

    def told(self, figures: list[int]) -> Figure:
        """The figures, or the one that all sizes have."""
        return figures[0] if len(figures) == 1 else figures

    def work(
        self, label: str, clauses: list[str], figures: list[int], kind: str = "any", rows: list[list[int]] | None = None,
        counted: bool = True,
    ) -> None:  # fmt: skip
        """A line of work and its printed count, if it is `counted`; `rows`: what each row of a range makes, one unless given."""
        self.worked += counted
        printed = list(figures)
        if counted and self.worked == self.wrong:
            printed[-1] += self.by
        line = self.style.line(label, clauses, self.told(printed) if counted else None, kind)
        self.planted = line if counted and self.worked == self.wrong else self.planted
        self.lines.append(line)
        self.made += [self.told(row) for row in (rows or [figures])]

    def round(
        self,
        number: int,
        clauses: list[str],
        figures: list[int],
        kind: str,
        last: int | None = None,
        counted: bool = True,
    ) -> None:
        """A round, or a range of rounds that are alike."""
        last = last or number
        self.work(
            self.style.label(number, last, around=True),
            clauses,
            figures,
            kind,
            [figures] * (last - number + 1),
            counted,
        )

    def row(
        self, number: int, clauses: list[str], figures: list[int], kind: str, last: int | None = None, chain: int = 0
    ) -> None:
        """A row that is turned as the style has it, with its turning chain; or a range of such rows."""
        last = last or number
        chained = [f"ch {chain}, turn" if self.style.turns_first else f"ch {chain}"] if chain else []
        turned = [] if self.style.turns_first else ["turn"]
        self.work(
            self.style.label(number, last, around=False),
            [*chained, *clauses, *turned],
            figures,
            kind,
            [figures] * (last - number + 1),
        )
