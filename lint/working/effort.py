"""How much work one pattern may ask for: stitches made and places sought, in all readings of all its rows and sizes.

A number that is a slip of the pen makes a row of a hundred thousand stitches, and so does every row on it; what goes
beyond the bound is said not to be recomputed.  A bound on work, and not on time, is the same on every machine.
"""

from __future__ import annotations

MOST_WORKED = 1_000_000  # a pullover in six sizes comes to an eighth; twelve sizes in fine yarn may come to most of it
A_READING = 30  # stitches that a row takes as long as, however short it is


class Effort:
    """What is left to be spent."""

    def __init__(self, most: int = MOST_WORKED) -> None:
        self.left = most

    @property
    def spent(self) -> bool:
        return self.left <= 0

    def spend(self, stitches: int) -> None:
        self.left -= stitches
