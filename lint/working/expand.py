"""Runs out ranges and repeats of rows for one size: which steps each numbered row works."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lint.amount import ONE, Amount
from lint.pattern import Part, Row, Stated
from lint.tree import MAKES_STITCHES, THE_PIECE_BEFORE, FastenOff, RowCall, Step, TimesKind, Unread
from lint.working.alternating import Alternates, label_word
from lint.working.apartrows import ends_by_size, rows_apart, too_few_rows
from lint.working.besides import into_last, once
from lint.working.gainsbefore import own_rows
from lint.working.growth import grown_steps
from lint.working.instances import (
    MOST_ROWS,
    NOT_THERE,
    TOLD_TWICE,
    WHICH_ROWS,
    Instance,
    Loop,
    looped,
    numbered,
    passes_of,
)
from lint.working.likepieces import (
    NO_BASE,
    foundation_before,
    last_rows,
    piece_before,
    piece_met,
    rows_called,
    told_once,
)
from lint.working.met import Called, MetRow, as_called, as_whole_piece
from lint.working.onesize import for_size, works
from lint.working.otherside import NO_REST, none_worked, rest_of_side
from lint.working.printedrows import by_itself
from lint.working.rownames import answers_to, counted_from_one

_ANY_ROW = (*(f"{which} {row}" for which in ("next", "last") for row in ("row", "round", "rnd")), "following row")


class Expander:
    """Knows the rows that one size has met so far, so that "Rep Rows 2-5" finds them."""

    def __init__(self, size: int = 0, in_all: bool = False, own_way: frozenset[int] = frozenset()) -> None:
        """`in_all`: "Rep last 2 rows 4 times" counts the rows just worked among the four.

        `own_way`: the parts (by id) that have rows of their own beside those of a piece they call for.
        """
        self.size = size
        self.in_all = in_all
        self.own_way = own_way
        self.met: list[MetRow] = []
        self.range_faults: list[tuple[Row, Part, int, int]] = []
        self.stretch = self.bare = 0  # how often yarn has been fastened off; rows without a label since then
        self.counted_on = True  # False after rows of which the text does not say how many they are
        self.alternates = Alternates()
        self.calling: tuple[Stated | None, bool] = None, False  # the call's printed count, and whether its heading ends
        self.preludes: dict[int, tuple[Step, ...]] = {}  # by part: the chain or ring before its first row

    def expand(self, row: Row, part: Part) -> list[Instance]:
        """The rows that a printed row (one of its `pieces`) stands for, in order; none if the size does not work it."""
        return self._expand(row, part) if works(row, self.size) else []

    def more(self, loop: Loop) -> list[Instance]:
        """The cycle of a loop once more, numbered on."""
        step = len(loop.rows)
        rows = tuple(
            replace(
                item,
                steps=grown_steps(loop.base, loop.call, loop.passes, 1) if loop.call is not None else item.steps,
                number=item.number + step if item.number is not None else None,
                label=numbered(item, item.number + step) if item.number is not None else item.label,
                loop=None,
            )
            for item in loop.rows
        )
        return [*rows[:-1], replace(rows[-1], loop=replace(loop, rows=rows, passes=loop.passes + 1))]

    def _expand(self, row: Row, part: Part) -> list[Instance]:
        label = row.label
        steps = for_size(row.steps, self.size)
        call = next((step for step in steps if isinstance(step, RowCall)), None)
        kind = "foundation" if label is None else "row" if label.kind == "next" else label.kind
        if label is None and call is None and not any(entry.part is part for entry in self.met):
            self.preludes[id(part)] = self.preludes.get(id(part), ()) + steps
        self.counted_on = self.counted_on or label is not None
        numbers = self._labelled(row, part)[:MOST_ROWS]
        between = self.alternates.due(part, self._last_number(part), numbers[0])
        self.alternates.meet(row, part, steps)
        if call is None:
            instances = [
                self._instance(row, kind, number, steps, None, i, len(numbers)) for i, number in enumerate(numbers)
            ]
        else:
            instances = self._called(row, steps, part, kind, numbers, call)
        if between is not None:
            told = self._instance(between.row, kind, between.number, between.steps, None, 0, 1)
            told = replace(told, stated=None, label=f"{label_word(between.row.label.words, kind)} {between.number}")
            instances = [told, *instances]
        for one in instances:
            if one.untold is None and one.number is not None or one.steps and (label is not None or call is not None):
                self.met.append(MetRow.of(one, one.stated or one.inherited, part, self.stretch))
        self.bare += label is None and call is None and any(isinstance(step, MAKES_STITCHES) for step in steps)
        if any(isinstance(step, FastenOff) for step in row.steps):
            self.stretch, self.bare = self.stretch + 1, 0
        return instances

    def _instance(self, row, kind, number, steps, inherited, index, length, untold=None) -> Instance:
        stated = row.stated
        if stated is not None and stated.series:
            stated_index = index if len(stated.series) == length else None
            shown = stated if stated_index is not None or index == length - 1 else None
        elif stated is not None:  # a count on a range is its last row's, and that of the others where none changes it
            stated_index, shown = None, stated if index == length - 1 else None
            inherited = inherited if shown is not None else stated
        else:
            stated_index, shown = None, None
        words = row.label.words if row.label is not None else "Foundation"
        if row.label is not None and number is not None and length > 1:
            words = f"{label_word(row.label.words, kind)} {number}"
        return Instance(row, kind, number, words, tuple(steps), shown, stated_index, inherited, index, length, untold)

    def _labelled(self, row: Row, part: Part) -> list[int | None]:
        """The numbers that a label gives this size; [None] for a row without a number."""
        label = row.label
        if label is not None and label.rows is not None:  # "Next 4 rows"
            return self._numbers_on(part, label.rows.at(self.size) or 0)
        return list(label.at(self.size)) if label is not None and label.numbers else [None]

    def _called(
        self, row: Row, steps: tuple[Step, ...], part: Part, kind: str, numbers: list[int | None], call: RowCall
    ) -> list[Instance]:
        at, self.calling = steps.index(call), (row.stated, part.rows[-1] is row)
        call = self._the_same_row(row, call, numbers, part)
        before, after = steps[:at], steps[at + 1 :]
        if passes_of(call, 1) == 0 and (row.label is None or numbers == [None]):
            return []  # "Rep last 2 rows - (2, 3) times": not in this size
        cycle = self._cycle(call, kind, part)
        whole = call.part is not None and call.first is None and row.label is not None and numbers != [None]
        calls = [step for step in steps if isinstance(step, RowCall)]
        mixed = len(calls) > 1 and any(map(by_itself, calls))
        in_turn = self._in_turn(calls, numbers, kind, part) if mixed else []
        unknown = call.rows_in_all and not self._rows_so_far(part, call.rows_of) or whole and len(numbers) != len(cycle)
        lacking = next((one for one in calls[1:] if not self._cycle(one, kind, part)), None)
        call = lacking or call  # "Rep Rows 2 and 3, then Row 7", and there is no Row 7
        if not cycle or unknown or lacking is not None:
            what = f"{call.kind or kind} {call.first}" if call.first else call.name or call.part or "the rows before"
            return self._not_told(row, kind, numbers, NO_REST if call.rest else f"{what} {NOT_THERE}")
        if mixed and not in_turn or ends_by_size(row, call):
            return self._not_told(row, kind, numbers, WHICH_ROWS)
        if not self._agree(call, cycle, part):
            return self._not_told(row, kind, numbers, TOLD_TWICE)
        call = self._without_the_first(call, cycle, part, len(numbers))
        apart = rows_apart(row, numbers, call, cycle)
        cycle, numbers = apart or (cycle, self._numbers(row, part, numbers, call, cycle))
        if call.lead or call.apart:
            cycle, numbers = self._led(row, part, cycle, numbers, call, kind)
        result = []
        if len(calls) > 1:  # "Rep Rows 5-8 3 times, then Rows 5 and 6 once"
            cycle = in_turn or [called for one in calls for called in self._passes_of(one, kind, part)]
            after = tuple(step for step in after if not isinstance(step, RowCall))
            if row.label is None or in_turn and numbers[0] is None:
                numbers = self._numbers_on(part, len(cycle))
            elif in_turn:
                numbers = [(numbers[0] or 0) + i for i in range(len(cycle))]
        elif call.part is not None and (call.first is None or set(numbers) == {None} and not self._rows_so_far(part)):
            if row.label is None or numbers == [None]:
                numbers = [called.number for called in cycle]  # a piece begun like another has its numbers too
        for index, number in enumerate(numbers):
            called = cycle[index % len(cycle)]
            head = before if index == 0 else ()
            tail = after if index == len(numbers) - 1 else ()
            off = any(isinstance(step, FastenOff) for step in tail)
            inner = tuple(s for s in into_last(called.steps, after) if off or not isinstance(s, FastenOff))
            own = row.label is not None
            worked = once(head, inner, tail) if call.beside is None or len(numbers) == 1 else (call.beside,)
            one = self._instance(
                row,
                kind if own else called.kind,
                number,
                grown_steps(worked, call, index, len(numbers), len(cycle)),
                called.stated,
                index,
                len(numbers),
            )
            if not own:
                one = replace(one, label=numbered(one, number) if number is not None else called.label)
            result.append(looped(replace(one, again=called.printed), called.loop, result))
        if call.rest:
            result[:1] = [replace(one, base=self._other_side(call, part)[0]) for one in result[:1]]
        settled = row.label is not None and len(row.label.at(self.size)) > 1  # "Rows 5-24: …, ending with Row 3"
        if call.until is not None or call.open_ended and not settled:
            rows = tuple(replace(one, stated=None) for one in result[-len(cycle) :])
            again = rows[len(call.lead) :]
            result[-len(cycle) :] = [
                *rows[:-1],
                replace(rows[-1], loop=Loop(again, call.until, call.until_unit, row.stated, *_growing(call, cycle))),
            ]
            self.counted_on = call.until is None
        return result

    def _agree(self, call: RowCall, cycle: list[Called], part: Part) -> bool:
        """Whether the times and the rows in all are one thing said twice: "6 more times, until you have 8 rows"."""
        passes, rows = passes_of(call, len(cycle)), call.rows if call.rows_in_all else None
        if passes is None or rows is None:
            return True
        more = (rows.lone or 0) - self._rows_so_far(part)
        fewer = call.times is not None and call.times.kind is TimesKind.UNCLEAR
        return more == passes * len(cycle) or fewer and more == (passes - 1) * len(cycle)

    def _without_the_first(self, call: RowCall, cycle: list[Called], part: Part, labelled: int) -> RowCall:
        """ "Rep Rows 2 and 3 a total of 4 times": where these are the rows just worked, they are the first of the four.

        Not where the label tells (`labelled`) that all four are its own: "Rows 4-11: Rep Rows 2 and 3, four times in all".
        """
        here = [entry.number or entry.label for entry in self.met if entry.part is part]
        just_worked = here[-len(cycle) :] == [one.number or one.label for one in cycle]
        unclear = call.times is not None and call.times.kind is TimesKind.UNCLEAR
        in_all = call.times_in_all or self.in_all and unclear
        if not in_all or call.times is None or call.times.number is None or not just_worked:
            return call
        number = call.times.number.at(self.size)
        if number and labelled > 1 and labelled == number * len(cycle):
            return call
        fewer = Amount.of(max(0, (number or 0) - 1))
        return replace(call, times=replace(call.times, number=fewer))

    def _led(
        self, row: Row, part: Part, cycle: list[Called], numbers: list[int | None], call: RowCall, kind: str
    ) -> tuple[list[Called], list[int | None]]:
        """Rows that begin with others than the cycle's ("in next row and …"), or that lie apart and have no numbers."""
        if call.apart:
            self.counted_on, self.range_faults = False, [*self.range_faults, *too_few_rows(row, part, call)]
            return cycle, [None] * len(numbers) if row.label is None else numbers
        lead = [Called(steps, None, cycle[0].kind, cycle[0].label, None) for steps in call.lead]
        if call.until is None:
            cycle = [*lead, *(cycle * (passes_of(call, len(cycle)) or 1))]
        else:
            cycle = [*lead, *cycle]
        if len(own := self._labelled(row, part)) == 1 and own[0] is not None:
            return cycle, [own[0] + i for i in range(len(cycle))]  # "Row 3: inc at each end of this and every 4th row"
        free = row.label is None or own == [None]
        return cycle, self._numbers_on(part, len(cycle)) if free else numbers

    def _not_told(self, row: Row, kind: str, numbers: list[int | None], why: str) -> list[Instance]:
        """The rows of a label, of which it is not known what they work."""
        return [self._instance(row, kind, n, (), None, i, len(numbers), why) for i, n in enumerate(numbers)]

    def _in_turn(self, calls: list[RowCall], numbers: list[int | None], kind: str, part: Part) -> list[Called]:
        """The rows of "Row 3: Rep Row 2, then work 5 rows even", which go on from the label; [] where they do not fit it."""
        rows: list[Called] = []
        for call in calls:
            if (
                call.until
                or call.open_ended
                or call.apart
                or call.lead
                or call.rows_in_all
                or call.beside
                or call.shaped
            ):
                return []
            passes = self._passes_of(call, kind, part)
            said = call.rows.lone or 0 if call.rows is not None else len(passes)
            rows += [passes[at % len(passes)] for at in range(min(said, MOST_ROWS))] if passes else []
        return rows if len(numbers) in (1, len(rows)) else []

    def _passes_of(self, call: RowCall, kind: str, part: Part) -> list[Called]:
        """All rows of one call among several."""
        cycle = self._cycle(call, kind, part)
        passes = passes_of(call, len(cycle))
        return cycle * (1 if passes is None else passes)

    def _numbers(
        self, row: Row, part: Part, numbers: list[int | None], call: RowCall, called: list[Called]
    ) -> list[int | None]:
        """The numbers of the rows that a call works: as labelled, or going on from the last row."""
        cycle = len(called)
        passes = passes_of(call, cycle)
        rows = cycle * passes if passes is not None else cycle
        if call.rows is not None:
            said = call.rows.lone or 0
            last = self._rows_so_far(part) if row.label is None or numbers == [None] else (numbers[0] or 1) - 1
            passes, rows = 1, max(0, said - last if call.rows_in_all else said)
        if row.label is None or numbers == [None]:
            return self._numbers_on(part, rows) if passes is not None or rows > 1 or row.label is None else numbers
        if len(numbers) == 1 and rows > 1 and numbers[0] is not None:
            return [numbers[0] + i for i in range(rows)]  # "Row 4: Rep Rows 2 and 3 four times more."
        extra = sum(isinstance(step, RowCall) for step in row.steps) > 1
        own = any(one.number == numbers[0] for one in called)  # "Rows 2-17: Rep Rows 2 and 3 seven times more"
        fits = len(numbers) == rows or own and len(numbers) == rows + cycle
        if passes is not None and len(numbers) > 1 and not fits and not extra:
            self.range_faults.append((row, part, len(numbers), rows))
        return numbers

    def _last_number(self, part: Part) -> int:
        """The number of the row met last in a piece, 0 if none is or the rows since then are not counted."""
        return self.met[-1].number if self.counted_on and self.met and self.met[-1].part is part else 0

    def _rows_so_far(self, part: Part, of: str = "") -> int:
        """The number of the row met last in a piece (called `of`), or how many of them were met without numbers."""
        own = [entry for entry in self.met if entry.part is part and (not of or answers_to(part.name, of))]
        from_one = self.counted_on and counted_from_one([entry.number for entry in own], part)
        return len(own) if from_one or not any(entry.number for entry in own) else self._last_number(part)

    def _numbers_on(self, part: Part, rows: int) -> list[int | None]:
        """The numbers of so many rows after the last one met in a piece; none where it has none."""
        last = self._last_number(part)
        return [last + 1 + i for i in range(min(rows, MOST_ROWS))] if last else [None] * min(rows, MOST_ROWS)

    def _cycle(self, call: RowCall, kind: str, part: Part) -> list[Called]:
        """The rows called for, in order; [] where one of them is not there."""
        here = [entry for entry in self.met if entry.part is part]
        if call.own or call.as_before:
            sort = here[-1].kind if here else "row" if kind == "foundation" else kind
            label = "Row" if sort == "row" else "Rnd"
            return [Called(steps, None, sort, label, None) for steps in own_rows(call, here, self.size) if steps]
        if call.name is not None and call.first is None and call.number == ONE:
            name = call.name.lower()  # "Dec row", "Next row (dec)"
            forms = [lambda label: answers_to(label, name), lambda label: label.startswith(name)]
            found = (e for is_it in forms for e in reversed(self.met) if is_it(e.label.lower()))
            named = next(found, None)
            there = self._piece(call.part, part) if call.part is not None else []
            rows = [as_called(named)] if named is not None else []
            return self._begun(rows, there, part) if there and named is there[0] else rows
        if call.rest and not none_worked(part, self.met):
            return [as_called(entry) for entry in self._other_side(call, part)[1]]
        if call.part is not None:
            there = self._piece(call.part, part)
            if call.first is None:
                rows = rows_called(there, call, id(part) in self.own_way, *self.calling) if there else []
                return self._begun([as_whole_piece(entry) for entry in rows], there, part)
            here = list(reversed(told_once(there, call.part)))  # the first rows of these numbers from that piece on
        if call.name is not None:  # "Rep 2nd and 3rd lace rows"
            here = [entry for entry in here if call.name.lower() in entry.label.lower()]
        if call.first is None:
            return [as_called(entry) for entry in last_rows(here, call.number.lone or 0)]
        first = call.first.lone or 0
        last = (call.last.lone or 0) if call.last is not None else first
        if not 0 <= last - first <= MOST_ROWS:
            return []
        found = []
        for number in range(first, last + 1):
            rows = [entry for entry in reversed(here) if entry.number == number]
            match = next((entry for entry in rows if call.kind is None or entry.kind == call.kind), None)
            match = match or next(iter(rows), None)
            if (
                match is None and call.part is None and call.name is None
            ):  # a row of the same piece under an earlier heading
                wanted = kind if kind != "foundation" else call.kind or kind
                match = next((e for e in reversed(self.met) if e.number == number and e.kind == wanted), None)
            if match is None:
                return []
            found.append(match)
        if call.part is None:
            return [as_called(entry) for entry in found]
        begun = id(part) in self.preludes or any(entry.part is part for entry in self.met)
        before = [] if begun else foundation_before(found[0], there)
        rows = [as_called(entry) for entry in (*before, *found)]
        if before and kind != "foundation":  # "Row 1: as Row 1 of Back", with no foundation of its own
            rows = [
                replace(one, steps=(Unread(call.span, NO_BASE, NO_BASE), *one.steps)) for one in rows[len(before) :]
            ]
        return self._begun(rows, there, part) if before or found[0] is there[0] else rows

    def _the_same_row(self, row: Row, call: RowCall, numbers: list[int | None], part: Part) -> RowCall:
        """ "3rd row: As given for Back", "Foundation row: As for Back": the row of that name there, not the whole piece."""
        if call.part is None or call.first is not None or call.last is not None or call.to_part or row.label is None:
            return call
        there = self._piece(call.part, part if call.part != THE_PIECE_BEFORE else None)
        if numbers != [None]:
            known = {entry.number for entry in there}
            first, last = numbers[0], numbers[-1]
            return replace(call, first=Amount.of(first), last=Amount.of(last)) if known.issuperset(numbers) else call
        name = row.label.words.lower()
        same = name not in _ANY_ROW and any(entry.label.lower() == name for entry in there)
        return replace(call, name=row.label.words) if same else call

    def _piece(self, name: str, part: Part | None) -> list[MetRow]:
        """The rows met from the first one of a piece on; `part`: the piece that calls for them."""
        return piece_before(self.met, part) if name == THE_PIECE_BEFORE else piece_met(self.met, name, part)

    def _other_side(self, call: RowCall, part: Part) -> tuple[tuple[int, int] | None, Sequence[MetRow]]:
        """What is left to work of the side or piece that this one is to match, and the row of it that this stands at."""
        return rest_of_side(self.met, call.part or "", part, self.stretch, self.bare)

    def _begun(self, rows: list[Called], there: list[MetRow], part: Part) -> list[Called]:
        """Rows of another piece, begun on a chain or ring as that one was where the piece has none of its own."""
        if not rows or id(part) in self.preludes or (rows[0].number or 0) != there[0].number:
            return rows
        return [replace(rows[0], steps=self.preludes.get(id(there[0].part), ()) + rows[0].steps), *rows[1:]]


def _growing(call: RowCall, cycle: list[Called]) -> tuple[RowCall, tuple[Step, ...]] | tuple[()]:
    """The call and the steps of one row that has more, or less, each time it is worked again."""
    return (call, cycle[0].steps) if call.growth and len(cycle) == 1 and not call.lead else ()
