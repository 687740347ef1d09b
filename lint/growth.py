"""How rows that are called again differ: what each of them has more or fewer of, and which stitch stands for another."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Grows(StrEnum):
    """Where a row has more than the one before it."""

    ROW = "row"  # anywhere: "increasing one tile in every row"
    EACH_SIDE = "each side"  # "with one more group along each side"
    EACH_PART = "each part"  # "with 1 less ch-3 loop in each pineapple": in the run within every pass
    PASSES_SET = "passes, set"  # "working the instructions in brackets 8 times": how often the run is worked
    PASSES_MORE = "passes, more"  # "working the bracket once more on every row"
    BETWEEN = "between"  # "working 1 more sc between incs each rnd": in every run between shapings
    BETWEEN_SET = "between, set"  # "but with 3 sc between incs": the number of those runs itself


class ShapedWhere(StrEnum):
    """Where in a run stitches are added or taken away."""

    EVENLY = "evenly"
    EACH_END = "at each end"
    ONE_END = "at one end"
    EVERY = "in every nth stitch"
    SKIPPED = "every nth stitch skipped"


@dataclass(frozen=True, slots=True)
class Growth:
    """What each of the rows has more of than the one before it; below 0, fewer."""

    number: int
    unit: str  # as of a printed count: "special:tile", "kind:dc", "stitches"
    where: Grows = Grows.ROW
    each: bool = True  # "in each row", "each time": else it is only said of one


@dataclass(frozen=True, slots=True)
class Swap:
    """ "with hdc instead of sc": a stitch in the place of another; of all the row's, where that is not said."""

    new: str
    old: str | None = None
