"""A row's workings: clause by clause, what each used of the row below and what it made, as the bench worked it.

Frozen values.  They are kept with the ledger and shown by the reports; `recording` fills them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate

from lint.source import Span


class Role(StrEnum):
    """What a line is, where it is not simply stitches into places."""

    WORK = "work"
    REPEAT = "repeat"
    FILLING = "filling"  # a repeat that runs as often as fits
    PASSAGE = "passage"  # clauses worked through once: a passage called for again, a choice of two, a block
    PASSED = "passed"  # places passed over because the words say so
    SLIPPED = "slipped"  # slip stitches on the way, which are not counted
    FOUNDATION = "foundation"  # chains that are worked into
    LEG = "leg"  # a beginning chain that counts together with the cluster after it
    LENGTHENS = "lengthens"  # chains that make the space before them longer
    CLOSES = "closes"  # a joining stitch that closes the round as its last space


@dataclass(frozen=True, slots=True)
class Stands:
    """What a beginning chain counts as (a US key; None: it does not count), and how many chains it is."""

    stitch: str | None
    chains: int


@dataclass(frozen=True, slots=True)
class Line:
    """One clause: its words, the places it used, the stitches and chain spaces it made.

    `uses` are places of the row below worked into for the first time in this row, or passed over because the words
    say so; `lacking` those it wanted and did not find.  A repeat's line holds its passes, and counts them all.
    """

    span: Span
    role: Role
    uses: int
    makes: int
    spaces: tuple[tuple[int, int], ...] = ()  # (chains, how many such spaces)
    units: tuple[tuple[int, int], ...] = ()  # (how many places, stitches in each): what `makes` is the sum of
    stands: Stands | None = None
    lacking: int = 0
    passes: tuple[Pass, ...] = ()


@dataclass(frozen=True, slots=True)
class Pass:
    """The clauses of one pass of a repeat, and how many passes one after the other were just like it."""

    times: int
    lines: tuple[Line, ...]

    @property
    def uses(self) -> int:
        return sum(line.uses for line in self.lines)

    @property
    def makes(self) -> int:
        return sum(line.makes for line in self.lines)


@dataclass(frozen=True, slots=True)
class Workings:
    """The lines of one row in one size."""

    lines: tuple[Line, ...]

    @property
    def uses(self) -> int:
        return sum(line.uses for line in self.lines)

    @property
    def makes(self) -> int:
        """The stitches that the row makes: always those that the ledger says."""
        return sum(line.makes for line in self.lines)

    @property
    def spaces(self) -> dict[int, int]:
        """The chain spaces that the row makes, by their length."""
        found: Counter = Counter()
        for line in self.lines:
            found.update(dict(line.spaces))
        return dict(found)

    def running(self) -> Iterator[tuple[Line, int]]:
        """Each line with the stitches made so far."""
        return zip(self.lines, accumulate(line.makes for line in self.lines), strict=True)
