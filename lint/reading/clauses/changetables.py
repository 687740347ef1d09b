"""Reads tables of rows that give a number of stitches and how it changes: "Rnd | Sts | Change", "13 | 22 | -7".

Their head must say so: with another head, of blocks or of beads, such figures are no stitches and stay unread.
"""

from __future__ import annotations

from lint.amount import Amount
from lint.expression import expression
from lint.growth import ShapedWhere
from lint.reading.clauses.base import Reading
from lint.reading.counting import counts
from lint.reading.words.stream import Stream
from lint.tree import OpenWork, Shaping

_HEAD = expression(
    r"(?im)^[^\w\n]*+(?:row|rnd|round|r)s?\W*\|\s*(?:number of |no\. of |# of )?(?:sts?|stitches|sc)(?: count| in all)?\s*"
    r"\|\s*(?:changes?|\+\s?/\s?[-–−]|inc(?:reases?)?\s?/\s?dec(?:reases?)?|increase or decrease|difference)\W*$"
)
_EVEN = ("no change", "0", "±0", "+0", "even", "none", "unchanged", "same")
_FIRST = (
    "",
    "-",
    "–",
    "—",
    "start",
    "begin",
    "beginning",
    "foundation",
    "ring",
    "magic ring",
    "into ring",
    "in ring",
    "in the ring",
    "into the ring",
    "in magic ring",
    "into magic ring",
)
_CHANGE = expression(r"(?P<sign>[-–−+])\s?(?P<number>\d{1,3})(?:\s?(?:sts?|stitches))?")


def has_change_table(text: str) -> bool:
    """Whether a pattern's text has such a table."""
    return _HEAD.search(text) is not None


def row_of_change(words: str, stream: Stream) -> Reading | None:
    """The row that "22 | -7" tells, or "24 | no change"; None for any other words."""
    cells = [cell.strip(" \t.") for cell in words.strip().removesuffix("|").split("|")]
    if len(cells) != 2 or not cells[0].isdigit():
        return None
    span, change = stream.span_from_all(), _CHANGE.fullmatch(cells[1])
    if change is not None and int(change["number"]):
        step = Shaping(span, Amount.of(int(change["number"])), change["sign"] == "+", ShapedWhere.EVENLY)
    elif cells[1].lower() in _EVEN:
        step = OpenWork(span, "even", plain=True)
    elif cells[1].lower() in _FIRST:
        step = OpenWork(span, words.strip())  # how the first row is made stands elsewhere
    else:
        return None
    return Reading([step], counts.read(stream.inside(0, 1), bare=True))
