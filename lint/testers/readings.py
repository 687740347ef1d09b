"""How the words of a row could be read so that they give the testers' number.

The same search as for likely causes: the row is worked again as if the testers' number were its printed count, first in
every reading that its words allow, then with the small slips of lint/likely; of those under which it comes out, the one
under which the rows after it give the testers' numbers too comes first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from lint.amount import Amount
from lint.inspection import Report
from lint.ledger import Outcome
from lint.likely.clauses import too_many
from lint.likely.numbers import dials
from lint.likely.numerals import Reader
from lint.likely.rework import Moment, Rework
from lint.likely.search import Candidate, RowSearch, watched
from lint.pattern import Pattern, Stated, StatedItem
from lint.source import Span
from lint.working.choices import Key
from lint.working.onesize import pattern_for
from lint.working.trials import Trial

MOST_SEARCHES = 12  # rows whose words are searched in one report
_MOST_TRIED = 5  # edits worked through the whole pattern
_MOST_SHOWN = 3
_MOST_STITCHES = 250_000  # a pattern larger than this is searched row by row only


@dataclass(frozen=True, slots=True)
class Reading:
    """A way to read a row: in words, whether the words as printed allow it, and how many later counts it explains."""

    words: str
    allowed: bool  # a reading of the words as they stand; else of words slightly other
    explains: int
    span: Span | None = None
    replacement: str | None = None


class ReadingSearch:
    """Searches one pattern; every row and number once."""

    def __init__(self, report: Report) -> None:
        self.report = report
        self.patterns: dict[int, Pattern] = {}
        self.places: dict[int, list[int]] = {}
        self.spent = 0.0
        self._found: dict[tuple[int, int, int, bool], tuple[Reading, ...]] = {}

    def readings(
        self, index: int, size: int, got: int, later: Mapping[int, int], edits: bool = True
    ) -> tuple[Reading, ...]:
        """The readings of a row (by place in the ledger) that give `got`; `later`: what was got in later rows.

        `edits`: whether words slightly other than those printed are tried too, which takes longer.
        """
        key = (index, size, got, edits)
        if key not in self._found:
            cost = 1.0 if edits else 0.1
            if self.spent + cost > MOST_SEARCHES:
                return ()
            self.spent += cost
            self._found[key] = self._search(index, size, got, later, edits)
        return self._found[key]

    def _search(self, index: int, size: int, got: int, later: Mapping[int, int], edits: bool) -> tuple[Reading, ...]:
        if size not in self.patterns:
            self.patterns[size] = pattern_for(self.report.pattern, size)
            self.places[size] = self._worked(size)
        pattern, places = self.patterns[size], self.places[size]
        at = places.index(index)
        rework = Rework(pattern, self.report.book, watched(at))
        if len(rework.entries) != len(places) or at not in rework.moments:
            return ()
        moment = rework.moments[at] = _asked_for(rework.moments[at], got)
        trial = rework.reading(moment)
        found = []
        if trial is not None and trial.forced and trial.agrees and trial.fits:
            found += [Reading(words, True, 0) for words in self._forced(trial, moment)]
        if not edits:
            return tuple(found)
        reader = Reader(size, max(1, len(self.report.pattern.sizes)))
        search = RowSearch(rework, at, self.report.source.text, reader)
        candidates = [one for one in search.candidates() if not isinstance(one.edit.old, Stated)]
        whole = rework.column.stitches <= _MOST_STITCHES
        ranked = [
            (self._explained(one, pattern, places, later) if whole and rank < _MOST_TRIED else 0, -rank, one)
            for rank, one in enumerate(candidates)
        ]
        ranked.sort(key=lambda one: one[:2], reverse=True)
        found += [Reading(one.edit.change, False, n, one.edit.span, one.edit.words) for n, _, one in ranked]
        return tuple((found or list(self._unfinished(search, got)))[:_MOST_SHOWN])

    def _unfinished(self, search: RowSearch, got: int) -> Iterator[Reading]:
        """Edits that give the number and leave places of the row below unworked: a repeat too few, a clause left out."""
        text = self.report.source.text
        edits = [
            dial.edit(text, dial.value + off)
            for dial in dials(search.steps, text, search.rework.size)
            for off in (-1, 1)
            if dial.role == "times" and dial.value + off > 0
        ]
        for edit in (*edits, *too_many(search.steps, text)):
            trial = search.rework.alone(search.moment, edit, search.forced)
            if trial is not None and trial.worked.made.stitches == got:
                yield Reading(f"{edit.change}, though places are then left over", False, 0, edit.span, edit.words)

    def _worked(self, size: int) -> list[int]:
        rows = enumerate(self.report.ledger.rows)
        return [index for index, row in rows if row.cells[size].outcome is not Outcome.NOT_WORKED]

    def _explained(self, one: Candidate, pattern: Pattern, places: list[int], later: Mapping[int, int]) -> int:
        """How many of the testers' later counts come out with an edit."""
        if not later:
            return 0
        again = Rework(one.edit.of_pattern(pattern), self.report.book)
        if len(again.entries) != len(places):
            return 0
        made = {place: entry.cell.made for place, entry in zip(places, again.entries, strict=True)}
        return sum(made.get(place) is not None and made[place].stitches == got for place, got in later.items())

    def _forced(self, trial: Trial, moment: Moment) -> list[str]:
        """The choices under which the number comes, in words."""
        said = [_choice_words(self.report, key, taken, moment) for key, taken in trial.forced.items()]
        return [" and ".join(said)] if said else []


def _asked_for(moment: Moment, got: int) -> Moment:
    """A row as if this number of stitches were its printed count."""
    span = moment.instance.row.span
    stated = Stated(span, (StatedItem(span, Amount.of(got), "stitches"),))
    return replace(moment, instance=replace(moment.instance, stated=stated, stated_index=None, inherited=None))


def _choice_words(report: Report, key: Key, taken: int, moment: Moment) -> str:
    """A choice of lint/working as a maker would say it."""
    sort = key[0]
    if sort in ("chain counts", "skipped chains count"):
        which = "the beginning chain" if sort == "chain counts" else "the skipped chains"
        return f"{which} {'counted' if taken == 0 else 'not counted'} as a stitch"
    if sort == "times":
        words = _line_at(report, key[1])
        return f"“{words}” taken as so many times {'more' if taken else 'in all'}"
    if sort in ("times over", "covers"):
        what = "only the last of the list" if taken else "the whole list"
        return f"{what} worked again in “{_line_at(report, key[1])}”"
    if sort in ("bare number", "n in next n"):
        return (
            "a number before a stitch taken as so many into one place" if taken else "one into each of so many places"
        )
    if sort == "loose list":
        return f"“{_line_at(report, key[1])}” worked {'into several places' if taken else 'all into one place'}"
    if sort == "skip takes the first":
        return "the stitch under the beginning chain taken as one of those skipped"
    return "the words taken the other way"


def _line_at(report: Report, start: int) -> str:
    """A few words of the pattern from an offset on."""
    text = report.source.text[start : start + 60].split("\n")[0]
    stop = next((at for at, sign in enumerate(text) if sign in ".;,)]" and at > 3), len(text))
    return " ".join(text[:stop].split())
