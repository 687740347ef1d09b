"""Printed counts among the clauses of a row, in any of their forms."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.pattern import Stated
from lint.place import LimitKind, Which
from lint.reading.clauses.otherwords import WordClauses
from lint.reading.counting import counts, lastcounts
from lint.reading.counting.attheend import count_at_end
from lint.reading.counting.nocounts import left_for_work, rather_work, sorts_of_work, work_behind_note
from lint.reading.counting.rowover import comes_to, goes_to_end, surely_over
from lint.reading.counting.summedup import summed_up
from lint.reading.places.countunits import left_over
from lint.reading.words.stream import CLOSERS, OPENERS
from lint.tree import (
    MAKES_STITCHES,
    FastenOff,
    Join,
    OpenWork,
    Remark,
    Repeat,
    RowCall,
    Shaping,
    TimesKind,
    Turn,
    UseYarn,
    Work,
    walk,
)


class CountClauses(WordClauses):
    """ "(12 dc)", "– 12 sts", "You now have 18 sc.", told from work that looks like it."""

    def count(self) -> bool:
        """A printed count at the cursor, in any of its forms."""
        if not self.top:
            return False
        worked = any(isinstance(step, (*MAKES_STITCHES, RowCall)) for step in walk(tuple(self.steps)))
        stream = self.stream
        turned = bool(self.steps) and isinstance(self.steps[-1], (Turn, Join)) and stream.kind(-1) == "dash"
        if turned and stream.kind() == "number" and stream.kind(1) == "word" and stream.kind(2) in (".", "end"):
            stream.at += 2  # "turn – 7 points."
            self.steps.append(Remark(stream.span_from(stream.at - 2)))
            return True
        if worked and stream.kind() == "number" and stream.kind(1) == "any_stitch" and "hook" in stream.peek(1).lower:
            self.reading.stated = counts.read(stream.inside(stream.at, stream.at + 2), bare=False)
            stream.at += 2  # "…, 16 loops on hook"
            return self.reading.stated is not None
        if left_for_work(self.steps, stream.lexemes[stream.at :]):
            return False
        if worked and (found := lastcounts.without_sign(stream)) is not None:
            self.reading.stated = found
            return True
        if lastcounts.of_one_sort(stream) and (
            self.runs_to_end() or self.turned_behind_run() or worked and stream.kind(1) == "any_stitch"
        ):
            self.reading.stated = counts.read(stream.inside(stream.at, stream.at + 2), bare=False)
            stream.at += 3 if left_over(stream, 2) else 2  # "hdc in each st around, 70 hdc, join"
            return self.reading.stated is not None
        if (
            worked
            and (end := lastcounts.last_figure(stream)) is not None
            and (self.closed() or comes_to(self.steps, stream.peek().quantity))
        ):
            unit = stream.kind(1) in ("stitch", "any_stitch")
            found = counts.read(stream.inside(stream.at, stream.at + 1 + unit), bare=True)
            if found is not None:
                stream.at = end  # "sl st in first sc, 24 sc.", "in each st across 24 sc"
                self.reading.stated = replace(found, perhaps=self.as_work(found))
                return True
        if worked and (found := summed_up(stream, self.steps)) is not None:
            self.reading.stated = replace(found, perhaps=self.as_work(found))
            return True
        if self.runs_to_end() and self.runs_on(stream.at) and (found := count_at_end(stream)) is not None:
            self.reading.stated = found
            return True
        told = bool(self.steps) and isinstance(self.steps[-1], OpenWork) and stream.kind() == "number"
        worked = worked or told and left_over(stream, 2)  # "Dec … AT SAME TIME dec …. 12 sts rem."
        found = lastcounts.of_last_cell(stream) if worked else None
        found = found or self.bare_count(worked or turned)
        if found is None or not worked and any(item.unit != "unknown" for item in found.items):
            return False
        found = self.of_the_run(found)
        self.reading.stated = found if found.perhaps else replace(found, perhaps=self.as_squares(found))
        return True

    def of_the_run(self, found: Stated) -> Stated:
        """ "Spaces all along: there should be 12.": a figure without a unit behind a run of filet squares counts these."""
        last = self.steps[-1] if self.steps else None
        run = isinstance(last, Work) and last.special is not None and last.special.places_itself
        run = run and len(last.places) == 1 and last.places[0].which is Which.EACH
        item = found.items[0] if len(found.items) == 1 else None
        if not run or item is None or item.unit != "stitches" or item.words:
            return found
        return replace(found, items=(replace(item, unit=f"special:{last.special.plain_name}"),))

    def bare_count(self, worked: bool) -> Stated | None:
        """A count without brackets at the cursor, unless it rather is work behind the sign that parts clauses here."""
        stream, start = self.stream, self.stream.at
        parted = stream.kind(-1) in (";", ".", ":", "|") and stream.kind(1) == "stitch"
        last = self.steps[-1] if self.steps else None
        found = counts.bare_count(stream, worked, self.over() or isinstance(last, Turn) or self.closed())
        noted = stream.lexemes[start - 1 : start] and stream.lexemes[start - 1].kind in CLOSERS
        if found is not None and noted and isinstance(last, Remark):
            again = any(item.kind in OPENERS for item in stream.lexemes[start : stream.at])
            if not again and not work_behind_note(self.steps, found):
                return found
            stream.at = start
            return None  # "8 sc (white) 4 sc"
        if found is None or not parted or self.runs_to_end() or self.over():
            return found
        if isinstance(last, RowCall) and (found.series or len(found.items) > 1):
            return found  # "Rows 4 to 6: As Row 3. 9 dc, 11 dc, 13 dc", "Rep Row 2. 16 dc; 15 ch-1 sps."
        if stream.lexemes[start - 1].kind == ":" and self.changes_colour(start) and not self.runs_to_end(2):
            stream.at = start
            return None  # "sc in next 6, change to red: 6 sc"
        rest = stream.lexemes[start + 2 :]
        if len({item.unit for item in found.items}) == 1:
            first = found.items[0]
            number = (*first.series, first.number)[0].values[0]
            signed = self.behind_sign(stream.lexemes[start - 1])
            work = number is not None and rather_work(self.steps, number, first.unit or "", rest, signed)
        else:
            work = sorts_of_work(self.steps, found, stream.lexemes[stream.at :])
        if not work:
            return replace(found, perhaps=self.as_work(found))
        stream.at = start
        return None

    def as_work(self, found: Stated) -> tuple[Work, ...]:
        """The stitches that a figure behind a full stop would be if it were no count; none behind a turn."""
        item = found.items[0]
        sort, _, stitch = item.unit.partition(":")
        turned = any(isinstance(step, Turn) and step.turned for step in self.steps)
        if len(found.items) > 1 or item.series or sort != "kind" or turned:
            return ()
        return (Work(item.span, stitch, item.number, number_said=True),)

    def as_squares(self, found: Stated) -> tuple[Work, ...]:
        """The filet squares that "; 2 sps; 1 bl." would be if they counted none; none behind a turn, a join or a full run."""
        turned = any(isinstance(step, Turn) and step.turned for step in self.steps[2:])  # "Ch 3, turn, 2 sps;"
        if turned or self.over() or any(one.series for one in found.items):
            return ()
        named = [self.stream.vocabulary.specials.get(one.unit.removeprefix("special:")) for one in found.items]
        squares = [one for one in named if one is not None and one.places_itself]
        if len(squares) < len(named):
            return ()
        works = zip(found.items, squares, strict=True)
        return tuple(Work(one.span, made.name, one.number, special=made, number_said=True) for one, made in works)

    def changes_colour(self, at: int) -> bool:
        """Whether the last clause before an index is a change of colour."""
        last = self.steps[-1] if self.steps else None
        words = [item.kind for item in self.stream.lexemes[:at] if last is not None and item.start >= last.span.start]
        return isinstance(last, (Remark, UseYarn)) and words[:1] == ["change"]

    def over(self) -> bool:
        """Whether the round is closed and maybe the yarn cut, or its last clause has been worked as often as there is room."""
        last = next((step for step in reversed(self.steps) if not isinstance(step, FastenOff)), None)
        filled = isinstance(last, Repeat) and last.times.kind is TimesKind.FILL
        return isinstance(last, Join) or filled and (last.times.limit is None or last.times.limit.kind is LimitKind.END)

    def closed(self) -> bool:
        """Whether nothing is left to be worked; behind the comma of a called row, "Rep Row 2, 3 sc", more may be."""
        called = bool(self.steps) and isinstance(self.steps[-1], RowCall)
        more = called and self.stream.kind(-1) == "," and self.stream.kind(1) == "stitch"
        return surely_over(self.steps) and not more

    def behind_sign(self, sign: Lexeme) -> bool:
        """Whether the last clause stands behind the same sign as the words at the cursor do."""
        begins = self.steps[-1].span.start if self.steps else 0
        before = [item for item in self.stream.lexemes if item.end <= begins]
        return bool(before) and before[-1].kind == sign.kind

    def turned_behind_run(self) -> bool:
        """Whether the row has run to its end and is turned, and all that is left of it are the words at the cursor."""
        turned = bool(self.steps) and isinstance(self.steps[-1], Turn) and self.steps[-1].turned
        return (
            turned
            and self.runs_to_end(2)
            and not any(item.kind == "turn" for item in self.stream.lexemes[self.stream.at :])
        )

    def runs_to_end(self, back: int = 1) -> bool:
        """Whether the clause before, or the one so many back, goes on to the row's end, or all the way along an edge."""
        earlier = self.steps[len(self.steps) - back :: -1] if len(self.steps) >= back else ()
        last = next(
            (step for step in earlier if not isinstance(step, Shaping)), None
        )  # "… to end, inc 4 sts evenly, 60 dc"
        return goes_to_end(last)
