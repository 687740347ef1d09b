"""Points at which the words allow two readings: what was asked in a row, and what is settled for the pattern."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

# A choice is named by its sort and what it hangs on: ("times", 812), ("chain counts", 3, "dc").
Key = tuple


CHAINS_BELOW = ("chains too", "below")  # the count of the row below takes its chains for stitches
CHAIN_KEYS = ("chain counts", "skipped chains count")  # one answer for the whole pattern


@dataclass
class Choices:
    """Answers for one trial of a row: forced ones first, then the pattern's habits, then the default."""

    habits: dict[Key, int] = field(default_factory=dict)
    forced: dict[Key, int] = field(default_factory=dict)
    asked: dict[Key, tuple[int, int]] = field(default_factory=dict)  # key -> (taken, how many options)
    hinted: set[Key] = field(default_factory=set)  # answered by other words of the row, such as the join
    settled: Mapping[Key, int] = field(default_factory=dict)  # what most sizes answer: no other reading
    defaults: dict[Key, int] = field(default_factory=dict)  # of what was asked

    def pick(self, key: Key, options: int, default: int, habit: Key | None = None) -> int:
        """The option (from 0) to take at this point; `habit` is the key under which the pattern settles it."""
        if key in self.asked:
            return self.asked[key][0]
        self.defaults[key] = default
        if key in self.settled:
            self.asked[key] = (self.settled[key], 1)
            return self.settled[key]
        taken = self.forced.get(key)
        if taken is None:
            taken = self.habits.get(habit or key, default)
        settled = key in self.habits and key[0] in CHAIN_KEYS  # the counts have spoken: no other reading now
        self.asked[key] = (taken, 1 if settled else options)
        return taken

    def others(self) -> list[tuple[Key, int]]:
        """Every answer that could have been given instead."""
        return [
            (key, other)
            for key, (taken, options) in self.asked.items()
            for other in range(options)
            if other != taken and options > 1
        ]
