"""Sizes that leave off as the rows of a pattern are laid out: now, after a row above, or after one that is not reached yet."""

from __future__ import annotations

from dataclasses import dataclass, field

from lint.pattern import Label
from lint.reading.lines.headings import Line
from lint.reading.lines.leaving import Leaving, cut_after, leavings
from lint.reading.lines.sizedlines import SizedLines
from lint.reading.lines.texts import PartText
from lint.reading.sizes.gates import GateReader

_NO_ROW = 10**9


@dataclass
class Leavers:
    """Keeps what was said of sizes that leave off, until the rows come that it is about."""

    sized: SizedLines
    later: list[Leaving] = field(default_factory=list)  # after a row that is not reached yet
    ahead: list[Leaving] = field(default_factory=list)  # told before the first piece: "S: stop after Rnd 3"

    def tell_ahead(self, reader: GateReader, line: str) -> None:
        """What a line before the first piece says of its rows; of which piece is not known where several begin anew."""
        told, _ = leavings(reader, line)
        after = [one for one in told if one.sizes and one.after is not None]
        if after and sum(self._begins(one) for one in self.sized.lines) < 2:
            self.ahead += after

    def _begins(self, line: Line) -> bool:
        found = self.sized.labels.at_line(line.text, line.start, self.sized.bare)
        return found is not None and found.label.numbers[:1] == (1,)

    def opened(self) -> None:
        """A new piece begins: what was told of the rows of the last one is over."""
        self.later.clear()

    def leave(self, leaving: Leaving, part: PartText | None) -> None:
        """Sizes leave off; the rows that they work no more are taken from the labels of those that stand above."""
        if leaving.after is not None and leaving.sizes and leaving.after > _last_number(part):
            self.later.append(leaving)  # "MEDIUM, stop after Row 30", told above Row 28
            return
        self.sized.passage.open(self.sized.leaving_gate(leaving))
        for row in part.rows if part is not None and leaving.after is not None else ():
            if row.label is not None:
                row.label = cut_after(row.label, leaving, self.sized.sizes)

    def come_to(self, label: Label | None) -> Label | None:
        """The label of a row that is reached, without the rows that some sizes work no more."""
        self.later, self.ahead = [*self.later, *self.ahead], []
        gone = tuple(self.sized.passage.away)
        for one in [one for one in self.later if label is not None and label.numbers]:
            ended = max(label.numbers) >= (one.after or 0)
            label = cut_after(label, one, self.sized.sizes, gone)
            if ended:  # from the next row on
                self.later.remove(one)
                self.sized.passage.open(self.sized.leaving_gate(one))
        return label


def _last_number(part: PartText | None) -> int:
    """The highest row number that stands in a part so far; any other where rows have no numbers."""
    labels = [row.label for row in part.rows if row.label is not None] if part else []
    return max((label.numbers[-1] for label in labels if label.numbers), default=_NO_ROW)
