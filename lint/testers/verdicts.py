"""Who is right in each row: the print, the testers, or the words.

The rule (after pattern tests that were written about; see the words in rules/testers.yaml): testers who agree with
each other and with the recount show the print wrong; testers who agree with each other and not with the recount read
the words otherwise than meant; one who differs has slipped, and the numbers may show how.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass
from enum import StrEnum

from lint.testers.courses import Course, Departure, Step
from lint.testers.due import MAIN
from lint.testers.paths import PathRow
from lint.testers.readings import Reading, ReadingSearch
from lint.testers.signatures import Suggestion, suggestions
from lint.testerwords import TesterFile

_UNWORKABLE = ("run out", "too often", "does not fit")  # words that nobody can work to the letter
_MANY = 2  # testers who agree with each other


class Verdict(StrEnum):
    """What is said of one count of one tester; the values are those of the JSON report."""

    AGREES = "agrees"
    PRINT_WRONG = "print-wrong"
    WORDS = "words-misread"
    SLIP = "testers-slip"
    FOLLOWS = "follows"
    CANNOT_TELL = "cannot-tell"


@dataclass(frozen=True, slots=True)
class Judged:
    """One count with its verdict and the reason in one sentence; `since` is the row at which the path was left."""

    step: Step
    tester: str
    verdict: Verdict
    why: str
    likely: tuple[Suggestion, ...] = ()
    readings: tuple[Reading, ...] = ()
    since: str | None = None


@dataclass(frozen=True, slots=True)
class _Vote:
    """One tester's count in a row, freed of a slip made earlier."""

    course: Course
    step: Step
    off: int  # from what the words make (or what is printed), through this row alone
    departure: Departure | None  # one that begins here
    following: Departure | None  # one that began before


def judge(
    courses: list[Course], words: TesterFile, search: ReadingSearch, at_fault: frozenset[int] = frozenset()
) -> list[Judged]:
    """Every count of every course, judged beside those of the other testers in the same row.

    `at_fault`: the rows (by place in the ledger) whose own count or words are wrong, not only those of a row before.
    """
    rows: dict[tuple[int, str], list[_Vote]] = defaultdict(list)
    for course in courses:
        for vote in _votes(course):
            rows[vote.step.row.index, vote.step.placed.unit].append(vote)
    return [
        judged
        for _, votes in sorted(rows.items(), key=lambda one: one[0])
        for judged in _Row(votes, words, search, at_fault).judged()
    ]


def _votes(course: Course) -> list[_Vote]:
    begins = {departure.first.at: departure for departure in course.departures}
    inside: dict[int, tuple[Departure, int]] = {}
    for departure in course.departures:
        before = departure.first.off or 0
        for step in departure.steps[1:]:
            inside[step.at] = (departure, before)
            before = step.off or 0
    votes = []
    for step in course.steps:
        departure = begins.get(step.at)
        following, before = inside.get(step.at, (None, 0))
        base = departure.base if departure is not None else before
        votes.append(_Vote(course, step, (step.off or 0) - base, departure, following))
    return votes


class _Row:
    """All counts of one row, in all sizes."""

    def __init__(self, votes: list[_Vote], words: TesterFile, search: ReadingSearch, at_fault: frozenset[int]) -> None:
        self.votes = votes
        self.words = words
        self.search = search
        self.at_fault = at_fault
        self.sound = [vote for vote in votes if vote.off == 0 and vote.following is None]
        self.with_recount = [v for v in votes if v.off == 0 and v.step.row.due.made is not None]
        self.off = Counter(vote.off for vote in votes if vote.departure is not None)
        self.as_print = [v for v in votes if v.departure is None and v.following is None and _is_print_alone(v.step)]

    def judged(self) -> list[Judged]:
        return [self._judged(vote) for vote in self.votes]

    def _judged(self, vote: _Vote) -> Judged:
        due, step = vote.step.row.due, vote.step
        if due.count is None:
            return _say(vote, Verdict.CANNOT_TELL, "nothing is printed for this row, and it was not recomputed")
        if vote.off == 0 and None not in (due.made, due.printed) and due.made != due.printed and not _by_chance(vote):
            return self._print_wrong(vote)
        if vote.departure is not None:
            return self._left(vote, vote.departure)
        if vote.following is not None:
            return _follows(vote, vote.following)
        if step.off == 0:
            return _say(vote, Verdict.AGREES, _agrees_with(step.row))
        if _is_print_alone(step):
            return self._print_alone(vote)
        return _say(vote, Verdict.FOLLOWS, "goes on from the row before, where the print and the words differ")

    # the print ---------------------------------------------------------------------------------------------------

    def _print_wrong(self, vote: _Vote) -> Judged:
        row = vote.step.row
        alike = [v for v in self.with_recount if v.step.row.due.printed != v.step.row.due.made and not _by_chance(v)]
        testers = len({v.course.tester for v in alike})
        who = f"{testers} testers and the recount" if testers > 1 else "one tester and the recount"
        if vote.following is not None:
            who += f" (less what was off before, since {vote.following.first.row.label})"
        return _say(vote, Verdict.PRINT_WRONG, f"{who} come to {row.due.made}, printed is {row.due.printed}")

    def _print_alone(self, vote: _Vote) -> Judged:
        """A tester with the printed count where the words as read here make another."""
        row = vote.step.row
        before = [step.row for step in vote.course.steps if step.at < vote.step.at and _is_print_alone(step)]
        if row.index not in self.at_fault and before:
            own = next((one for one in before if one.index in self.at_fault), before[0])
            why = f"goes on from {own.label}, where the testers have the printed count"
            return _say(vote, Verdict.FOLLOWS, why, since=own.label)
        made = f"the words as read here make {row.due.made}, and the print says {row.due.printed}"
        if any(misfit.kind in _UNWORKABLE for misfit in row.row.cells[row.size].misfits):
            why = "the words do not fit the row below, and the printed count was reached otherwise than they say"
            return _say(vote, Verdict.WORDS, why, readings=self._readings(vote))
        testers = {v.course.tester for v in self.as_print}
        if len(self.with_recount) >= len(testers) and self.with_recount:
            return _say(
                vote,
                Verdict.CANNOT_TELL,
                f"{made}; was it counted, or taken from the print? Others came to {row.due.made}",
            )
        if len(testers) >= _MANY:
            readings = self._readings(vote)
            return _say(
                vote, Verdict.WORDS, f"{len(testers)} testers come to the printed count; {made}", readings=readings
            )
        return _say(vote, Verdict.CANNOT_TELL, f"one tester alone comes to the printed count; {made}")

    # a tester who leaves the path --------------------------------------------------------------------------------

    def _left(self, vote: _Vote, departure: Departure) -> Judged:
        row, off = vote.step.row, vote.off
        alike = {v.course.tester for v in self.votes if v.departure is not None and v.off == off}
        right = {v.course.tester for v in self.sound}
        likely = suggestions(vote.course, departure, self.words)
        if len(alike) >= _MANY and row.due.made is None:
            why = f"{len(alike)} testers agree with each other and not with the print, and the row was not recomputed"
            return _say(vote, Verdict.CANNOT_TELL, why, likely)
        if len(alike) >= _MANY:
            most = len(alike) > len(right)
            readings = self._readings(vote, most)
            if most or any(reading.allowed for reading in readings):
                others = f"; {len(right)} came to what they make" if right else ""
                shown = (
                    f"{len(alike)} testers agree with each other: {_by(off)} what the words make as read here{others}"
                )
                return _say(vote, Verdict.WORDS, shown, likely, readings)
        if not right and not likely:
            why = (
                "one tester, one count, and nothing in the numbers that shows a slip"
                if len(self.votes) == 1
                else ("the testers differ from each other and from the print")
            )
            return _say(vote, Verdict.CANNOT_TELL, why)
        if not right and row.due.made is None:
            return _say(vote, Verdict.CANNOT_TELL, "the row was not recomputed, and no other tester counted it", likely)
        alone = {v.step.row.due.count for v in self.sound} == {row.due.count}
        others = (
            f"{len(right)} other {'tester has' if len(right) == 1 else 'testers have'} "
            f"{row.due.count if alone else 'what is due in their sizes'}"
            if right
            else (
                "the print and the recount agree"
                if row.due.printed == row.due.made
                else "the recount has another number"
            )
        )
        return _say(vote, Verdict.SLIP, f"{_by(off)} what is due, {row.due.count}; {others}", likely)

    def _readings(self, vote: _Vote, edits: bool = True) -> tuple[Reading, ...]:
        if vote.step.placed.unit != MAIN:
            return ()
        later = {step.row.index: step.placed.got for step in vote.course.steps if step.at > vote.step.at}
        row = vote.step.row
        return self.search.readings(
            row.index, row.size, vote.step.placed.got - (vote.step.off or 0) + vote.off, later, edits
        )


def _say(
    vote: _Vote,
    verdict: Verdict,
    why: str,
    likely: tuple[Suggestion, ...] = (),
    readings: tuple[Reading, ...] = (),
    since: str | None = None,
) -> Judged:
    return Judged(vote.step, vote.course.tester, verdict, why, likely, readings, since)


def _follows(vote: _Vote, departure: Departure) -> Judged:
    label = departure.first.row.label
    return _say(vote, Verdict.FOLLOWS, f"off since {label}; judged from there", since=label)


def _by_chance(vote: _Vote) -> bool:
    """Whether a tester who has been off since before has just the printed count by it."""
    return vote.following is not None and vote.step.placed.got == vote.step.row.due.printed


def _is_print_alone(step: Step) -> bool:
    due = step.row.due
    return due.made is not None and due.made != due.printed and step.placed.got == due.printed


def _agrees_with(row: PathRow) -> str:
    if row.due.made is None:
        return "agrees with the print; the row was not recomputed"
    return (
        "agrees with print and recount"
        if row.due.printed is not None
        else "agrees with the recount; no count is printed"
    )


def _by(off: int) -> str:
    return f"{abs(off)} {'more than' if off > 0 else 'fewer than'}"
