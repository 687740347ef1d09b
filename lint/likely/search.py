"""Small edits under which one row comes out, each tried on the row below as it lies."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.likely.clauses import too_few, too_many
from lint.likely.edits import Edit
from lint.likely.numbers import Dial, dials
from lint.likely.rework import Moment, Outcome, Rework, comes_out, leaves
from lint.tree import Chain, walk
from lint.working.choices import Key
from lint.working.starts import founds
from lint.working.trials import Trial

MOST_STITCHES = 60_000  # worked in trying edits of one row: a bound that is the same on every machine
_ROW_COST = 30  # what working a row costs beside its stitches, in stitches


@dataclass(frozen=True)
class Candidate:
    """An edit under which the row comes out, and what the row then leaves."""

    edit: Edit
    leaves: Outcome


class RowSearch:
    """The edits of one row that does not come out, and of those before it."""

    def __init__(self, rework: Rework, index: int, text: str) -> None:
        self.rework = rework
        self.index = index
        self.text = text
        self.moment = rework.moments[index]
        self.read = rework.reading(self.moment)
        self.forced: dict[Key, int] = self.read.forced if self.read is not None else {}
        self.worked = 0

    def candidates(self) -> list[Candidate]:
        """Every edit that makes the row come out, the likeliest first."""
        steps = self.moment.instance.steps
        found = list(self._of_numbers())
        found += self._tried(too_many(steps, self.text))
        found += list(self._before())
        found += self._tried(too_few(steps, self._beside(), self.text))
        return sorted(found, key=lambda candidate: candidate.edit.cost)

    def _beside(self) -> tuple:
        others = [self.rework.moments.get(self.index + off) for off in (-1, 1)]
        return tuple(other.instance.steps for other in others if other is not None and other.part is self.moment.part)

    # edits of the row itself -----------------------------------------------------------------------------

    def _try(self, edit: Edit) -> Trial | None:
        trial = self.rework.alone(self.moment, edit, self.forced)
        self.worked += _ROW_COST + (trial.worked.made.stitches if trial is not None else 0)
        return trial

    def _tried(self, edits: Iterator[Edit]) -> Iterator[Candidate]:
        for edit in edits:
            if self.worked > MOST_STITCHES:
                return
            trial = self._try(edit)
            if comes_out(trial):
                yield Candidate(edit, leaves(trial.worked.fabric.nodes))

    def _of_numbers(self) -> Iterator[Candidate]:
        founding = founds(self.moment.instance.steps)
        for dial in dials(self.moment.instance.steps, self.text, self.rework.size):
            begins = isinstance(dial.step, Chain) and dial.says is not None
            if not begins or founding:
                yield from self._tried(dial.edit(self.text, number) for number in self._numbers(dial))

    def _numbers(self, dial: Dial) -> list[int]:
        """The neighbours of a number, and those that the count or the row below ask for."""
        near = [dial.value + off for off in (1, -1, 2, -2)]
        far = []
        more = self._try(dial.edit(self.text, dial.value + 1))
        if more is not None and self.read is not None:
            for measure in (_short_of_print, _short_of_places):
                now, then = measure(self.read), measure(more)
                if now is not None and then is not None and now != then and not now % (now - then):
                    far.append(dial.value + now // (now - then))
        return [number for number in dict.fromkeys([*near, *far]) if 0 < number < 1000 and number != dial.value]

    # edits of a row before it ----------------------------------------------------------------------------

    def _before(self) -> Iterator[Candidate]:
        """Numbers of the row before, or of the chain that the piece begins on, which no count has held to account."""
        for first in sorted({self.index - 1, self._founding()}, reverse=True):
            moments = [self.rework.moments.get(index) for index in range(first, self.index + 1)]
            if first < 0 or first >= self.index or None in moments:
                continue
            asked = self._asked()
            for dial in dials(moments[0].instance.steps, self.text, self.rework.size):
                begins = isinstance(dial.step, Chain) and dial.says is not None
                if begins and not founds(moments[0].instance.steps):
                    continue
                for off in asked:
                    if dial.value + off < 1 or self.worked > MOST_STITCHES:
                        continue
                    edit = dial.edit(self.text, dial.value + off)
                    out, left = self.rework.stretch(moments, edit)
                    self.worked += 3 * _ROW_COST + 2 * len(left)
                    if out:
                        yield Candidate(edit, left)

    def _founding(self) -> int:
        """The row on whose chain the piece begins, where it is near."""
        for index in range(self.index - 1, max(-1, self.index - 4), -1):
            moment = self.rework.moments.get(index)
            if moment is None or moment.part is not self.moment.part:
                break
            if founds(moment.instance.steps) and not any(
                type(step).__name__ == "MakeRing" for step in walk(moment.instance.steps)
            ):
                return index
        return -1

    def _asked(self) -> list[int]:
        """By how much a number of an earlier row may be off."""
        found = [1, -1, 2, -2]
        for measure in (_short_of_print, _short_of_places):
            short = measure(self.read) if self.read is not None else None
            if short and abs(short) < 100:
                found += [short, -short]
        return list(dict.fromkeys(found))


def _short_of_print(trial: Trial) -> int | None:
    """How many more the printed count has than the words make."""
    if trial.comparison is None:
        return None
    if not trial.comparison.differences:
        return 0
    first = trial.comparison.differences[0]
    return first.stated - first.made


def _short_of_places(trial: Trial) -> int:
    """How many more places the row below has than the words use."""
    lacking = sum(n.trouble.number for n in trial.worked.troubles if n.trouble.kind == "run out")
    unfit = sum(n.trouble.number for n in trial.worked.troubles if n.trouble.kind == "does not fit")
    return len(trial.worked.left) + unfit - lacking


def watched(index: int) -> frozenset[int]:
    """The rows whose moments a search needs: the row, its neighbours, and the chain that it may begin on."""
    return frozenset(range(max(0, index - 4), index + 2))


def moments_of(rework: Rework, index: int) -> Moment | None:
    """The moment of a row, where it was kept."""
    return rework.moments.get(index)
