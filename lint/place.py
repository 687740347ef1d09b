"""Where a stitch goes, as the words name it: frozen values, each with the stretch of text that it was read from."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from lint.amount import ONE, Amount
from lint.source import Span


class TargetKind(StrEnum):
    """What sort of place a stitch can go into."""

    ANY_STITCH = "any stitch"
    STITCH = "stitch"  # of the kind named
    SPECIAL = "special"  # a shell, V-stitch, cluster… as the pattern defines it
    SPACE = "space"  # a chain space, of the length named if one is
    CHAIN = "chain"  # a single chain
    RING = "ring"
    ROW_END = "row end"
    CORNER = "corner"
    TURNING_CHAIN = "turning chain"
    MARKED = "marked"  # where a marker hangs
    PLACE = "place"  # "same place", "hole": whatever stands there


OF_STITCH = "of "  # in the name of row ends: before the stitch of which those rows are


@dataclass(frozen=True, slots=True)
class Target:
    """A sort of place, as named."""

    kind: TargetKind
    name: str | None = None  # US key of a stitch, or the name of a special stitch
    length: Amount | None = None  # of a chain space
    corner: bool = False  # "corner sp": only those at the corners
    apart: bool = False  # "ch-2 sp between shells": only those that lie in no shell

    @property
    def rows_of(self) -> str:
        """The stitch of which the rows are whose ends are meant, "each dc row end"; "" where that is not said."""
        return (self.name or "").partition(OF_STITCH)[2] if self.kind is TargetKind.ROW_END else ""


UNWORKED = "unworked"  # said of stitches to work into: those of the row below, or those that a short row has left
WHOLE_ROW = "whole row"  # of a run that is told to go over all there is: short rows, and what they have left
FREE_CHAIN = Target(TargetKind.CHAIN, "free")  # a chain whose free loop is worked into, of a chain named before


class Which(StrEnum):
    """Which of the places of a sort is meant."""

    NEXT = "next"
    EACH = "each"
    SAME = "same"
    FIRST = "first"
    LAST = "last"
    ANY = "any"
    FROM_HOOK = "from hook"  # the nth chain from the hook
    JUST_MADE = "just made"  # the space or stitch made last in this row
    NTH = "nth"  # the nth part of something: "3rd dc of next shell"
    ELSEWHERE = "elsewhere"  # a named place outside the row below, or row ends


class LimitKind(StrEnum):
    """How far a run of "each" or a repeat goes."""

    END = "end"
    LAST = "last"  # to the last n places
    BEFORE = "before"  # to the next place of a sort
    SIDE = "side"  # to the last side of a shape
    HALF = "half"  # to the middle of a row that has one between two stitches
    SECTION = "section"  # to where the front, a sleeve or the back of a yoke ends


@dataclass(frozen=True, slots=True)
class Limit:
    """Where a run ends."""

    kind: LimitKind
    number: Amount = ONE
    target: Target | None = None
    middle: bool = False  # "to center sc of next corner"
    short: Amount | None = None  # "to 1 st before marker"
    but: bool = False  # "except the last": those alone are left out, of this sort of place
    remain: bool = False  # "until 6 sts remain": left unworked, or all that there then are

    def up_to(self, target: Target) -> bool:
        """Whether the work stands before a place of that sort then: "dc in each dc to next ch-2 sp"."""
        plain = self.kind is LimitKind.BEFORE and self.target is not None and self.short is None and not self.middle
        return plain and (self.target.kind, self.target.length) == (target.kind, target.length)


@dataclass(frozen=True, slots=True)
class Place:
    """Where a stitch goes, as the clause says it."""

    span: Span
    which: Which
    targets: tuple[Target, ...]
    number: Amount = ONE  # how many places
    limit: Limit | None = None
    ordinals: tuple[int, ...] = ()
    of: Target | None = None  # "1-ch sp of next V-st"
    middle: bool = False  # the middle stitch of a group
    each_of: bool = False  # "each of next 3"
    shared: bool = False  # "over next 2", "all in": several places for one stitch or one place for all
    below: bool = False  # in a row below the one being worked into: a long stitch
    between: bool = False  # in the gap before the next such places
    from_words: str = ""
    skipped: bool = False  # "in skipped st": one that this row passed over
    row: int = 0  # of a place below, the number of its row: "next dc of Rnd 1"
    every: int = 1  # "in every other st": each second one
    of_which: str = ""  # which of those that it is part of: "next", "same", "each", "last"…, as it is said
    bare: bool = False  # "in corner sp", "in each of the 4 sps": neither next nor same is said


class Marked(StrEnum):
    """Where a marker is put."""

    JUST_MADE = "in the stitch just made"
    SPACE_MADE = "in the space just made"
    GROUP_MIDDLE = "in the middle of the group just made"
    NTH = "in the nth stitch"
    EACH_MIDDLE = "in the middle of each group"
    MIDDLE = "in the row's middle stitch"
    FIRST = "in the first stitch"
    EACH_SPACE = "in each space"
    EACH_CORNER = "in each corner"
    BETWEEN = "between two stitches"
    ASIDE = "moved to other stitches"
    UNCLEAR = "not told"


def without_beginning(name: str) -> str:
    """The "cl" of "beg cl"; any other name as it is."""
    for word in ("beginning", "begin", "beg", "starting", "start", "first"):
        if name.lower().startswith(word):
            return name[len(word) :].lstrip(" -.") or name
    return name
