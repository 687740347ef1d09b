"""One reading for all sizes: words mean the same to every maker, whatever would bear out the count of her size.

A row is read so that its count comes out; where a count of one size is a slip, that alone could make its words mean
something else there.  Answers that the sizes give differently are settled by most of them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from lint.ledger import Outcome
from lint.working.cells import Entry
from lint.working.choices import Key

Settled = tuple[tuple[int, Key, int], ...]  # where the row's words begin, what is asked there, the answer
Answers = Mapping[int, Mapping[Key, tuple[int, int]]]  # by row: what was asked, the answer and what it is by default

_MOST_ROUNDS = 3  # what one row can mean no longer, the next may be made to mean


@dataclass(frozen=True)
class Column:
    """All rows of one size, worked: for each printed row, in order, what it comes to."""

    rows: tuple[tuple[Entry, ...], ...]
    stitches: int
    range_faults: tuple
    answers: Answers = field(default_factory=dict)  # of the rows whose counts come out

    @property
    def faults(self) -> int:
        """How many rows differ from their count or do not fit."""
        bad = (Outcome.DIFFERS, Outcome.NOT_RECOMPUTED)
        return sum(one.cell.outcome in bad or bool(one.cell.misfits) for entries in self.rows for one in entries)


def in_one_reading(
    sizes: int, worked: Callable[[int, Settled], Column], settled: Settled
) -> tuple[list[Column], Settled]:
    """The columns of all sizes, and the answers in which they had to be made alike.

    `worked`: the column of a size, with answers settled; `settled`: those that are to begin with.
    """
    columns = [worked(size, settled) for size in range(sizes)]
    for _ in range(_MOST_ROUNDS if sizes > 2 else 0):
        more = _settled_by_most(columns, lambda size, answers: worked(size, settled + answers))
        more = tuple(one for one in more if one not in settled)
        if not more:
            break
        settled += more
        columns = [worked(size, settled) for size in range(sizes)]
    return columns, settled


def _settled_by_most(columns: Sequence[Column], worked: Callable[[int, Settled], Column]) -> Settled:
    """The answers that not all sizes give and most do; where theirs does as well for all, that of the few."""
    settled: Settled = ()
    for row, key, by_size in _differing(columns):
        (most, number), *others = Counter(by_size.values()).most_common()
        if 2 * number <= len(by_size) or len(others) > 1:
            continue
        if not others:  # the others' counts do not come out in any way
            settled += ((row, key, most),) if 2 * number > len(columns) else ()
            continue
        few = others[0][0]
        as_few = ((row, key, few),)
        would_do = all(
            worked(size, as_few).faults <= columns[size].faults for size, taken in by_size.items() if taken == most
        )
        settled += as_few if would_do else ((row, key, most),)
    return settled


def _differing(columns: Sequence[Column]) -> Iterator[tuple[int, Key, dict[int, int]]]:
    """What sizes answer differently though the trade's habit is one for them: the row, what is asked, answers by size."""
    for row in dict.fromkeys(row for column in columns for row in column.answers):
        asked = [column.answers.get(row, {}) for column in columns]
        for key in dict.fromkeys(key for one in asked for key in one):
            given = {size: one[key] for size, one in enumerate(asked) if key in one}
            defaults, answers = {default for _, default in given.values()}, {taken for taken, _ in given.values()}
            unasked = any(column.faults for size, column in enumerate(columns) if size not in given)
            if len(defaults) == 1 and (len(answers) > 1 or unasked and answers != defaults):
                yield row, key, {size: taken for size, (taken, _) in given.items()}
