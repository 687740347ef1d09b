"""Small edits under which one row comes out, each tried on the row below as it lies."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import permutations

from lint.expression import expression
from lint.faults import unequal_sides
from lint.likely.clauses import too_few, too_many, words_of
from lint.likely.edits import Edit
from lint.likely.missing import lacking, plain_work
from lint.likely.numbers import Dial, all_alike, dials, together
from lint.likely.numerals import Reader
from lint.likely.order import Swap
from lint.likely.rework import Outcome, Rework, comes_out, leaves
from lint.likely.stitches import names_of, of_stitches
from lint.likely.turning import of_turning_chain
from lint.tree import Chain, Group, MakeRing, Skip, Step, Work, walk
from lint.working.choices import Key
from lint.working.starts import founds
from lint.working.trials import Trial

MOST_STITCHES = 80_000  # worked in trying edits of one row: a bound that is the same on every machine
_FAR_FETCHED = (
    0.7  # more than the likeliest number: clauses less likely than that are not tried where a count is printed
)
_DEAREST = 9.0
_FARTHEST = 12  # rows: how far off one may be that is looked at for clauses like this one's
_MOST_BEFORE = 120  # clauses of the row before that may be too many or too few
_MOST_PAIRED = 24  # numbers of a row of which two may be off in contrary ways
_ROW_COST = 30  # what working a row costs beside its stitches, in stitches
_CLAUSES = 60  # of a row: beyond these each takes more time, since each looks through the row below for where it ends
_BEYOND = 8
_LIKE_A_TWIN = 0.5  # less for an edit that makes a clause the same as another of these rows
_UNLIKE_A_TWIN = 0.25  # more for one that makes a number another than its twin: the odd one is rather wrong
_UNSPOKEN = 0.5  # more for one that leaves stitches of a kind that the count does not speak of
_LIKE_A_NUMBER = 0.3  # less for one that makes a number the same as more of its like


@dataclass(frozen=True)
class Candidate:
    """An edit under which the row comes out, and what the row then leaves."""

    edit: Edit | Swap
    leaves: Outcome


class RowSearch:
    """The edits of one row that does not come out, and of those before it."""

    def __init__(self, rework: Rework, index: int, text: str, reader: Reader) -> None:
        self.rework = rework
        self.reader = reader
        self.index = index
        self.text = text
        self.moment = rework.moments[index]
        self.steps = self.moment.instance.steps
        self.read = rework.reading(self.moment)
        self.forced: dict[Key, int] = self.read.forced if self.read is not None else {}
        self.otherwise = self._otherwise()
        self.beside = self._beside()
        self.worked = 0
        self.clauses = sum(1 for _ in walk(self.steps))

    def candidates(self) -> list[Candidate]:
        """Every edit that makes the row come out, the likeliest first; of edits that say the same in two places, one."""
        found = [*self._of_numbers(), *self._before()]
        short = _short_of_places(self.read) if self.read is not None else 0
        stated = self.moment.instance.stated or self.moment.instance.inherited
        names = self._names()
        missing = [
            *plain_work(self.steps, stated, names, self._on_ring()),
            *lacking(self.steps, self.read, stated, short, names, self.text),
        ]
        others = [
            *too_many(self.steps, self.text),
            *self._of_stitches(),
            *of_turning_chain(self.steps, self.text, short if self._chain_below() else 0),
            *too_few(self.steps, self.beside, self.text, short, missing),
        ]
        counted = self.moment.instance.stated is not None  # a printed count bears out what is found
        nearest = min((one.edit.cost for one in found), default=_DEAREST)
        most = nearest + _FAR_FETCHED if counted else _DEAREST
        others = [edit for edit in others if edit.cost <= most]
        found += self._tried(sorted(others, key=lambda edit: edit.cost))  # the likeliest first: not all may be tried
        found.sort(key=lambda candidate: candidate.edit.cost)
        once: dict[object, Candidate] = {}
        for candidate in found:
            added = candidate.edit.change.partition("” ")[0] if candidate.edit.change.startswith("add ") else None
            once.setdefault((candidate.leaves, added or candidate.edit.change), candidate)
        return list(once.values())

    def _chain_below(self) -> bool:
        """Whether the row below is a flat one that began on a turning chain."""
        fabric = self.moment.state.fabric
        if fabric is None or fabric.circular or self.moment.instance.kind == "round":
            return False
        return fabric.uncounted > 0 or any(node.chain for node in fabric.nodes)

    def _on_ring(self) -> bool:
        fabric = self.moment.state.fabric
        return fabric is not None and bool(fabric.nodes) and fabric.nodes[0].kind == "ring"

    def _beside(self) -> tuple[tuple[Step, ...], ...]:
        others = {off: self.rework.moments.get(self.index + off) for off in (-1, 1, -2, 2)}
        goes_on = not founds(self.steps)  # under a heading inside a piece, the row before still speaks for this one
        rows = [
            other.instance.steps
            for off, other in others.items()
            if other is not None and (other.part is self.moment.part or off == -1 and goes_on)
        ]
        rows += [self.rework.entries[at].instance.steps for at in self._most_alike()]
        return tuple(row for row in dict.fromkeys(rows) if row != self.steps)

    def _most_alike(self) -> list[int]:
        """The rows farther off, one before and one after, that have the most clauses in common with this one."""
        own, found = self._clauses(self.steps), []
        for way in (-1, 1):
            near = [self.index + way * off for off in range(3, _FARTHEST + 1)]
            near = [at for at in near if 0 <= at < len(self.rework.entries)]
            shared = {at: len(own & self._clauses(self.rework.entries[at].instance.steps)) for at in near}
            best = max(near, key=lambda at: shared[at], default=None)
            if best is not None and shared[best] > 1:
                found.append(best)
        return found

    def _clauses(self, steps: tuple[Step, ...]) -> frozenset[str]:
        shown = (words_of(step, self.text) for step in walk(steps) if isinstance(step, (Work, Group, Skip)))
        return frozenset(expression(r"\d+").sub("n", words) for words in shown)

    # edits of the row itself -----------------------------------------------------------------------------

    def _otherwise(self) -> dict[Key, int] | None:
        """The reading with a bare "n times" taken the other way, where there is one."""
        asked = self.read.worked.choices.asked if self.read is not None else {}
        key = next((key for key in asked if key[0] == "times"), None)
        return {**self.forced, key: 1 - asked[key][0]} if key is not None else None

    def _try(self, edit: Edit, forced: dict[Key, int] | None = None) -> Trial | None:
        trial = self.rework.alone(self.moment, edit, self.forced if forced is None else forced)
        made = trial.worked.made.stitches if trial is not None else 0
        beyond = max(0, self.clauses - _CLAUSES)  # no row is so long but one that was written by a machine
        self.worked += _ROW_COST + max(made, self.clauses) + beyond * _BEYOND  # each clause takes its time
        return trial

    def _tried(self, edits: Iterable[Edit]) -> Iterator[Candidate]:
        for edit in edits:
            if self.worked > MOST_STITCHES:
                return
            trial = self._try(edit)
            if not comes_out(trial) and self.otherwise is not None:
                trial = self._try(edit, self.otherwise)
            if comes_out(trial) and not self._hides(trial):
                more = _UNSPOKEN if self._makes_more_than_printed(trial) else 0.0
                yield Candidate(replace(edit, cost=edit.cost + more), leaves(trial.worked.fabric.nodes))

    def _hides(self, trial: Trial) -> bool:
        """Whether a count that differs, or sides that do, could not be compared any more: that mends nothing."""
        if self.read is None:
            return False
        uneven = unequal_sides(self.read.worked.made) is not None
        return self.read.agrees is False and trial.agrees is None or uneven and not trial.worked.made.sides

    def _makes_more_than_printed(self, trial: Trial) -> bool:
        """Whether the row makes stitches or spaces of a sort that its count, told by sorts, does not speak of."""
        stated = self.moment.instance.stated
        items = stated.items if stated is not None else ()
        told = {
            sort: {item.unit.partition(":")[2] for item in items if item.unit.startswith(f"{sort}:")}
            for sort in ("kind", "space")
        }
        made = trial.worked.made
        plain = not any(item.unit.startswith("special:") or item.unit == "stitches" for item in items)
        more = bool(told["kind"]) and plain and not made.by_kind.keys() <= told["kind"]
        return more or bool(told["space"] - {""}) and not {str(length) for length in made.spaces} <= told["space"]

    def _of_numbers(self) -> Iterator[Candidate]:
        found = _turnable(self.steps, self.text, self.reader)
        like = self._likeness(found)
        for dial in found:
            if self.worked > MOST_STITCHES:
                return
            yield from self._tried(like(dial, number) for number in self._numbers(dial))
        for alike in _alike(found, self.text):
            yield from self._tried(all_alike(alike, self.text, number) for number in _near(alike[0].value))
        if self.read is not None and self.read.agrees and unequal_sides(self.read.worked.made) is not None:
            yield from self._tried(_cancelling(found, like, self.text))

    def _likeness(self, found: list[Dial]):
        """Makes a dial's edit, cheaper where a twin of the clause, or others of its numbers, speak for it."""
        shown = Counter(
            words_of(step, self.text)
            for row in (self.steps, *self.beside)
            for step in walk(row)
            if isinstance(step, (Work, Group, Skip, Chain))
        )
        numbers = Counter((dial.role, dial.value) for dial in found)

        def edit_of(dial: Dial, number: int) -> Edit:
            edit = dial.edit(self.text, number)
            if edit.clause is not None and shown[edit.clause]:
                return replace(edit, cost=edit.cost - _LIKE_A_TWIN)
            more = numbers[dial.role, number] > numbers[dial.role, dial.value] - 1
            if more and number > 1 and dial.role in ("times", "places", "stitches", "chain"):
                return replace(edit, cost=edit.cost - _LIKE_A_NUMBER)
            if numbers[dial.role, dial.value] > 1 and dial.role in ("places", "stitches"):
                return replace(edit, cost=edit.cost + _UNLIKE_A_TWIN)
            return edit

        return edit_of

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

    def _of_stitches(self) -> Iterator[Edit]:
        """Another stitch's name, where the kinds differ that are made and printed."""
        comparison = self.read.comparison if self.read is not None else None
        if comparison is None or not any(one.item.unit.startswith("kind:") for one in comparison.differences):
            return iter(())
        return of_stitches(self.steps, self._names(), self.text)

    def _names(self) -> dict[str, str]:
        rows = [self.steps, *self.beside]
        return names_of(rows, self.moment.instance.stated, self.text)

    # edits of a row before it ----------------------------------------------------------------------------

    def _before(self) -> Iterator[Candidate]:
        """Numbers of the row before, or of the chain that the piece begins on, which no count has held to account."""
        asked = self._asked()
        for first in sorted({self.index - 1, self._founding()}, reverse=True):
            moments = [self.rework.moments.get(index) for index in range(first, self.index + 1)]
            if first < 0 or first >= self.index or None in moments:
                continue
            found = _turnable(moments[0].instance.steps, self.text, self.reader)
            like = self._likeness(found)
            edits = [like(dial, dial.value + off) for dial in found for off in asked if dial.value + off > 0]
            edits += [
                all_alike(alike, self.text, alike[0].value + off)
                for alike in _alike(found, self.text)
                for off in (1, -1)
                if alike[0].value + off > 0
            ]
            if first == self.index - 1:
                steps = moments[0].instance.steps
                edits += of_stitches(steps, self._names(), self.text)
                if moments[0].instance.stated is None:
                    beside = (self.steps, *self.beside)
                    clauses = [*too_many(steps, self.text), *too_few(steps, beside, self.text, 0, [])]
                    edits += sorted(clauses, key=lambda edit: edit.cost)[:_MOST_BEFORE]
            for edit in edits:
                if self.worked > MOST_STITCHES:
                    return
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
            rings = (s.length for s in walk(moment.instance.steps) if isinstance(s, MakeRing))
            if founds(moment.instance.steps) or any(length is not None for length in rings):
                return index
        return -1

    def _asked(self) -> list[int]:
        """By how much a number of an earlier row may be off."""
        found = [1, -1, 2, -2, 10, -10]
        for measure in (_short_of_print, _short_of_places):
            short = measure(self.read) if self.read is not None else None
            if short and abs(short) < 100:
                found += [short, -short]
        return list(dict.fromkeys(found))


def _turnable(steps: tuple[Step, ...], text: str, size: int) -> list[Dial]:
    """The numbers of a row; a beginning chain's only where a piece begins on it."""
    return [
        dial
        for dial in dials(steps, text, size)
        if dial.role != "start" or founds(steps) or isinstance(dial.step, MakeRing)
    ]


def _alike(found: list[Dial], text: str) -> Iterator[list[Dial]]:
    """Numbers that stand in the row several times: lengths of chains and spaces, and those of one clause said again."""
    groups: dict[tuple, list[Dial]] = {}
    for dial in found:
        if dial.role in ("space", "chain"):
            groups.setdefault((dial.role, dial.value), []).append(dial)
        elif dial.role in ("places", "stitches"):
            groups.setdefault((dial.role, dial.value, words_of(dial.step, text)), []).append(dial)
    for alike in groups.values():
        if len(alike) > 1 and len({id(dial.step) for dial in alike}) == len(alike):
            yield alike


def _near(value: int) -> list[int]:
    return [value + off for off in (1, -1, 2, -2) if value + off > 0]


def _cancelling(found: list[Dial], edit_of: Callable[[Dial, int], Edit], text: str) -> list[Edit]:
    """Two numbers, one too great and one too small by as many, under which sides are as long as each other."""
    dials = [dial for dial in found if dial.role in ("stitches", "places")][:_MOST_PAIRED]
    edits = []
    for more, less in permutations(dials, 2):
        if more.role == less.role and less.value > 1 and more.step is not less.step:
            pair = [edit_of(more, more.value + 1), edit_of(less, less.value - 1)]
            pair.sort(key=lambda edit: edit.old.span.start)
            change = f"{pair[0].change}, and {pair[1].change}"
            edits.append(together(pair, text, change, pair[0].cost + pair[1].cost))
    return sorted(edits, key=lambda edit: edit.cost)


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
    return frozenset(range(max(0, index - 4), index + 3))
