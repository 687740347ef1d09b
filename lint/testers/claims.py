"""What testers say: counts, gauges, yarn, measures and remarks, each with the place where it stands.

Values only; the stages before the ledger make them, those behind it read them.
"""

from __future__ import annotations

from dataclasses import dataclass

LONGEST_LINE = 2000  # characters that a tester's line or cell may have: longer ones are told, and not read


@dataclass(frozen=True, slots=True)
class Place:
    """Where something stands in what testers sent: file, sheet, line (from 1) and column ("D")."""

    file: str
    line: int
    sheet: str | None = None
    column: str | None = None

    def __str__(self) -> str:
        sheet = f", sheet {self.sheet}" if self.sheet else ""
        cell = f", cell {self.column}{self.line}" if self.column else f", line {self.line}"
        return f"{self.file}{sheet}{cell}"


@dataclass(frozen=True, slots=True)
class Who:
    """The tester, and the size that was made where it is said."""

    tester: str
    size: str | None = None


@dataclass(frozen=True, slots=True)
class Counted:
    """A count of one row, or of each row of a run ("Rows 4-9").

    Exactly one of these is said: `count`; `off`, by how many it is more than due; `as_printed`, that it is as printed.
    """

    who: Who
    row: str
    place: Place
    count: int | None = None
    off: int | None = None
    as_printed: bool = False
    part: str | None = None
    unit: str | None = None
    printed: int | None = None  # what the tester's copy of the pattern says
    note: str = ""
    quoted: str = ""


@dataclass(frozen=True, slots=True)
class GaugeGot:
    """A gauge that was got; stitches and rows over `over_cm`, and the hook in mm."""

    who: Who
    place: Place
    stitches: float | None = None
    rows: float | None = None
    over_cm: float = 10.0
    hook_mm: float | None = None
    quoted: str = ""


@dataclass(frozen=True, slots=True)
class YarnUsed:
    """Yarn that was used, in one unit: g, m or ball."""

    who: Who
    place: Place
    amount: float
    unit: str
    quoted: str = ""


@dataclass(frozen=True, slots=True)
class Measured:
    """A measure of the finished thing in cm, with the words that say of what."""

    who: Who
    place: Place
    what: str
    cm: float
    quoted: str = ""


@dataclass(frozen=True, slots=True)
class Remark:
    """What a tester says in words.  `kind`: typo | unclear | suggestion | error | note."""

    who: Who
    place: Place
    kind: str
    words: str
    part: str | None = None
    row: str | None = None
    about: str = ""  # words of the pattern that are quoted


@dataclass(frozen=True, slots=True)
class Unmatched:
    """Something that could not be matched to a meaning, to a row or to a size: what, why, and where it stands."""

    place: Place
    what: str
    why: str


Claim = Counted | GaugeGot | YarnUsed | Measured | Remark


@dataclass(frozen=True)
class Intake:
    """All that was read from testers' reports, in the order in which it stands there."""

    claims: tuple[Claim, ...] = ()
    unmatched: tuple[Unmatched, ...] = ()
    unread: tuple[tuple[str, str], ...] = ()  # files that could not be read, and why

    def of(self, kind: type) -> list:
        """The claims of one kind."""
        return [claim for claim in self.claims if isinstance(claim, kind)]
