"""A bench that keeps a record of what each step does, so that a row's workings can be told.

It works like any other bench and adds nothing of its own: it only looks on.  Rows are worked on it where a report asks
for the workings of all of them; else only a row that differs is, once more, in the reading that was kept.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from lint.place import Place
from lint.source import Span
from lint.tree import Chain, Passage, Repeat, Shaping, Skip, Step, Work
from lint.working.accounts import Accounts, Entry, LikeEntries
from lint.working.bench import Bench
from lint.working.fabric import Fabric, Node
from lint.working.likepasses import PassMark
from lint.working.workings import Role, Workings


class KeepingBench(Bench):
    """Works one row and remembers what a picture needs besides the stitches made."""

    def __init__(self, fabric: Fabric, *details, **more) -> None:
        super().__init__(fabric, *details, **more)
        self.first_side: list[Node] = []  # the foundation chain, once the work has gone round to its other side
        self.picots_on: list[tuple[int, int]] = []  # for each picot: stitches made before it, and its chains

    def picot(self, number: int, chains: int) -> None:
        super().picot(number, chains)
        self.picots_on += [(len(self.made), chains)] * number

    def restore(self, state: tuple) -> None:
        super().restore(state)
        del self.picots_on[self.picots :]

    def turn_round_chain(self, perhaps: bool) -> None:
        nodes, before = self.cursor.nodes, self.other_side
        super().turn_round_chain(perhaps)
        if self.other_side and not before:
            self.first_side = nodes


class RecordingBench(KeepingBench):
    """Works one row and remembers it step by step, the passes of repeats apart."""

    def __init__(self, fabric: Fabric, *details, **more) -> None:
        super().__init__(fabric, *details, **more)
        self.entry = Entry(Passage(Span(0, 0), ()), 0)  # the step that is being worked; at first the row as a whole

    def workings(self) -> Workings:
        """The workings of the row, once it is worked."""
        return Accounts(self.made, self.slip_row).workings(self.entry.passes[0])

    def run(self, steps: tuple[Step, ...], following: tuple[Step, ...]) -> None:
        if not self.entry.passes:
            self.entry.passes = []
        self.entry.passes.append([])
        super().run(steps, following)

    def step(self, step: Step, steps: tuple[Step, ...], index: int, following: tuple[Step, ...]) -> None:
        outer, into = self.entry, self.entry.passes[-1]
        before = self._marks()
        self.entry = Entry(step, len(self.made))
        super().step(step, steps, index, following)
        entry, self.entry = self.entry, outer
        entry.end = len(self.made)
        self._show_role(entry, before)
        into.append(entry)

    def plain_passes(self, step: Repeat, most: int, upto: int) -> int:
        return self._told_by_one(lambda: super(RecordingBench, self).plain_passes(step, most, upto))

    def like_passes(self, began: PassMark | None, most: int, upto: int) -> int:
        return self._told_by_one(lambda: super(RecordingBench, self).like_passes(began, most, upto))

    def _told_by_one(self, work: Callable[[], int]) -> int:
        """Passes that go as the watched one before them went, so that its record tells them all; else none."""
        before, at, made = self.save(), self.cursor.at, len(self.made)
        passes = work()
        if not passes:
            return 0
        wide, makes = (self.cursor.at - at) // passes, (len(self.made) - made) // passes
        watched = self.entry.passes[-1]
        if not isinstance(watched, LikeEntries) and made - watched[0].start != makes:
            self.restore(before)  # the first of a row may make one more
            return 0
        self.entry.passes.append(LikeEntries(passes, self.cursor.nodes[at - wide : self.cursor.at], makes))
        return passes

    def save(self) -> tuple:
        return (*super().save(), len(self.entry.passes))

    def restore(self, state: tuple) -> None:
        super().restore(state)
        self.entry.passes = self.entry.passes[: state[-1]]

    # what is passed over ---------------------------------------------------------------------------------

    def passes_over(self, nodes: Sequence[Node]) -> None:
        self.entry.passed = [*self.entry.passed, *nodes]

    def find(self, place: Place, following: tuple[Step, ...]) -> list[Node]:
        cursor, at = self.cursor, self.cursor.at
        found = super().find(place, following)
        self.entry.found = [*self.entry.found, *found]
        covered = place.below or place.ordinals and place.of is None  # "2nd of next 3 sc" passes all three
        if covered and cursor is self.cursor:
            self.passes_over([node for node in cursor.nodes[at : cursor.at] if node.is_stitch])
        return found

    def from_hook(self, place: Place, *details, **more) -> list[Node]:
        found = super().from_hook(place, *details, **more)
        self.passes_over(self.cursor.nodes[: place.ordinals[0] - 1])
        return found

    def skip(self, step: Skip) -> None:
        cursor, at, skipped = self.cursor, self.cursor.at, len(self.skipped)
        super().skip(step)
        here = cursor.nodes[at : cursor.at] if cursor is self.cursor else []
        self.passes_over(self.skipped[skipped:] or here)

    def skip_to(self, step: Skip, steps: tuple[Step, ...], index: int, following: tuple[Step, ...]) -> None:
        at = self.cursor.at
        super().skip_to(step, steps, index, following)
        self.passes_over(self.cursor.nodes[at : self.cursor.at])

    def slip(self, step: Work, asked: bool = False) -> None:
        moves_the_start = self.cursor.circular and not self.made and not self.begun  # what it passes comes round again
        super().slip(step, asked)
        self.entry.role = Role.SLIPPED
        if not moves_the_start:
            self.passes_over(self.entry.found)

    # what a chain or a joining stitch turned out to be ----------------------------------------------------

    def _marks(self) -> tuple:
        length = self.made[-1].length if self.made else 0
        return self.begun, self.cursor, self.leads, self.uncounted, self.closing, length

    def _show_role(self, entry: Entry, before: tuple) -> None:
        begun, cursor, leads, uncounted, closing, length = before
        step, nothing = entry.step, entry.start == entry.end
        if self.closing is not closing:
            entry.role = Role.CLOSES
        elif self.leads is not leads:
            entry.role = Role.LEG
        elif self.uncounted != uncounted:
            entry.uncounted = self.uncounted if isinstance(step, Chain) or self.uncounted > 1 else 0
        elif isinstance(step, Shaping):
            entry.ahead = self.shaping is step
        elif isinstance(step, Chain) and nothing:
            if self.cursor is not cursor:
                entry.role = Role.FOUNDATION
            elif begun and self.made and self.made[-1].length != length:
                entry.role = Role.LENGTHENS
            elif not begun and self.begun:
                entry.uncounted = self.amount(step.length)
