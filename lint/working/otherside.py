"""What "Complete to match first side, reversing shaping" calls for: what that side has more than is worked of this one.

A mirrored row makes as many stitches as the one that it mirrors, if it is worked on as many: so the rows are that
side's as they stand, and the row that they go on from must have made what the row there has made.
"""

from __future__ import annotations

from collections.abc import Sequence

from lint.expression import expression
from lint.pattern import Part
from lint.tree import MAKES_STITCHES, Skip
from lint.working.likepieces import piece_met
from lint.working.met import MetRow

NO_REST = "what is left to work to match the other side is not known here"
_ANY_SIDE = expression(
    r"(?i)(?:first|other|opposite|previous|1st|left|right)(?:\s+(?:hand|neck|front|back))?"
    r"(?:\s+(?:side|half|shoulder|front|strap|edge|part))?(?:\s+of\s+(?:the\s+)?(?:neck|neckline|front|back))?"
)
Rest = tuple[tuple[int, int] | None, Sequence[MetRow]]


def none_worked(part: Part, met: Sequence[MetRow]) -> bool:
    """Whether nothing is worked of a piece yet: "RIGHT FRONT", and below it "Work to match Left Front", is all of that."""
    bare = (row for row in part.rows if row.label is None)
    works = any(isinstance(step, MAKES_STITCHES) for row in bare for step in row.steps)
    return not works and not any(one.part is part for one in met)


def rest_of_side(met: Sequence[MetRow], name: str, part: Part, stretch: int, bare: int) -> Rest:
    """The row of the other side that this one stands at, and those behind it; none where that can't be told.

    `stretch`: of the side that is worked; `bare`: how many of its rows have no label.
    """
    named = piece_met(met, name, part)
    named = [one for one in named if one.stretch == named[0].stretch]  # up to where its yarn is fastened off
    here = [one for one in met if one.stretch == stretch]
    there = named or (_side(met, stretch) if _ANY_SIDE.fullmatch(name) else [])
    rows = len(here) + bare
    if not rows or not there or there[-1].stretch == stretch:
        return None, []
    last = (here[-1].number, here[-1].kind) if here and not bare else (0, "")
    same = [at for at, one in enumerate(there) if last[0] and (one.number, one.kind) == last]
    at = same[0] if len(same) == 1 else min(rows, len(there)) - 1
    rest = there[at + 1 :]
    return (there[at].key, rest) if rest else (None, [])


def _side(met: Sequence[MetRow], stretch: int) -> Sequence[MetRow]:
    """The side worked before: from the last row on that leaves stitches for another, up to where its yarn is fastened off."""
    before = [one for one in met if one.stretch == stretch - 1]
    leaves = [at for at, one in enumerate(before) if any(isinstance(s, Skip) and s.rest for s in one.steps)]
    return before[leaves[-1] :] if leaves else []
