"""Right and wrong side in row labels, against the turns between them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Related, Weight
from lint.ledger import LedgerRow, Outcome
from lint.pattern import Part, Row
from lint.reading.facts.facing import TurningHabit, facing_in, may_turn, turning_habit, turns_otherwise
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    AlongEdge,
    Chain,
    FastenOff,
    Join,
    JoinYarn,
    MakeRing,
    OpenWork,
    OtherSide,
    RowCall,
    Skip,
    Turn,
    Unread,
    walk,
)

_NAMES = {"rs": "a right-side (RS) row", "ws": "a wrong-side (WS) row"}
_WORKED = (*MAKES_STITCHES, Skip, RowCall)


def check_sides(context: Context) -> Iterator[Finding]:
    """side-of-work-disagrees: a label's RS or WS that the turns since another label contradict."""
    rows = [row for part in context.pattern.parts for row in part.rows]
    if not any(row.label is not None and row.label.side for row in rows):
        return
    habit = turning_habit(_talk(context, rows), context.source.text)
    if habit.unlike_others:
        return
    worked: dict[int, list[LedgerRow]] = {}
    for row in context.ledger.rows:
        worked.setdefault(id(row.row), []).append(row)
    names = context.pattern.sizes
    slips: dict[Span, list[tuple[int, _Slip]]] = {}
    for size in range(max(1, len(names))):
        for run in _Follower(context, habit, worked, size).runs():
            for slip in _slips(run):
                slips.setdefault(slip.claim.span, []).append((size, slip))
    for span, found in slips.items():
        slip = found[0][1]
        everywhere = len(found) == max(1, len(names))
        sure = everywhere and all(one.sure for _, one in found)
        unsaid = "" if slip.sure else " (Not every row says whether to turn; the usual way was taken.)"
        yield context.finding(
            "side-of-work-disagrees",
            span,
            slip.claim.part,
            slip.claim.words if slip.claim.of_row else f"“{slip.claim.words}”",
            sizes=() if everywhere else tuple(names[size] for size, _ in found),
            weight=Weight.CORRECTION if sure else Weight.QUERY,
            says=f"is called {_NAMES[slip.claim.side]}" if slip.claim.of_row else "is said here",
            other=f"{slip.other.words} is {_NAMES[slip.other.side]}"
            if slip.other.of_row
            else f"“{slip.other.words}” stands {'before it' if slip.other.span < slip.claim.span else 'after it'}",
            turned=slip.turned,
            would_be=_NAMES["ws" if slip.claim.side == "rs" else "rs"],
            more=unsaid,
            expected=("ws" if slip.claim.side == "rs" else "rs").upper(),
            found=slip.claim.side.upper(),
            related=(Related(slip.other.span, f"counted from here: {slip.other.side.upper()}"),),
        )


@dataclass(frozen=True, slots=True)
class _Claim:
    """A side that a label, or words before it, give; how often the work was turned before it, and how often unsaid."""

    span: Span
    side: str
    words: str
    part: str
    turns: int
    unsaid: int

    @property
    def of_row(self) -> bool:
        """Whether a row's label says it, and not words before the row ("with WS facing")."""
        return any(sign.isdigit() for sign in self.words) or "row" in self.words.lower()

    @property
    def phase(self) -> bool:
        """Whether right side falls on an even number of turns: the same for all claims that agree."""
        return (self.side == "rs") == (self.turns % 2 == 0)


@dataclass(frozen=True, slots=True)
class _Slip:
    """A claim that others contradict, and the nearest of those."""

    claim: _Claim
    other: _Claim

    @property
    def sure(self) -> bool:
        return self.claim.unsaid == self.other.unsaid

    @property
    def turned(self) -> str:
        turns = abs(self.claim.turns - self.other.turns)
        return "not turned" if not turns else "turned once" if turns == 1 else f"turned {turns} times"


def _slips(run: list[_Claim]) -> Iterator[_Slip]:
    """The claims in the minority, one for each block of them: where sides slip once, what follows only follows."""
    holding = sum(claim.phase for claim in run)
    # where as many say this as that, the first was there first
    phase = run[0].phase if holding * 2 == len(run) else holding * 2 > len(run)
    for index, claim in enumerate(run):
        if claim.phase == phase or index and run[index - 1].phase != phase:
            continue
        before = run[index - 1] if index else None
        after = next(other for other in (*run[index:], *reversed(run)) if other.phase == phase)
        yield _Slip(claim, before or after)


@dataclass(frozen=True, slots=True)
class _Turns:
    """How often a row turns the work before its first stitch and after its last; None where that is not known."""

    before: int | None
    after: int | None
    never: bool = False  # "do not turn"


class _Follower:
    """Follows the turns of one size through the pattern, and keeps what labels say on the way."""

    def __init__(self, context: Context, habit: TurningHabit, worked: dict[int, list[LedgerRow]], size: int) -> None:
        self.context = context
        self.habit = habit
        self.worked = worked
        self.size = size
        self.done: list[list[_Claim]] = []
        self._begin()

    def runs(self) -> list[list[_Claim]]:
        """The claims between which every turn is known, run by run."""
        end = 0
        for part in self.context.pattern.parts:
            own: list[_Turns] = []
            for index, row in enumerate(part.rows):
                edging = row.label is not None and row.label.kind == "round"  # a border in rounds is held as one likes
                if not index and (edging or not self._goes_on(row)):
                    self._begin()
                if end < row.span.start:
                    self._between(self.context.source.text[end : row.span.start], end, part, index == 0)
                end = max(end, row.span.end)
                self._row(part, row, own)
        self._begin()
        return [run for run in self.done if len(run) > 1]

    def _begin(self) -> None:
        """Nothing is known of the side that faces: what comes is not held against what was."""
        self.done.append([])
        self.turns = self.unsaid = 0
        self.last: _Turns | None = None  # of the row just worked; None: the side at hand is that of the next row
        self.number: int | None = None
        self.off = self.in_rounds = False

    def _claim(self, span: Span, side: str, words: str, part: Part) -> None:
        self.done[-1].append(_Claim(span, side, words, part.name, self.turns, self.unsaid))

    def _goes_on(self, row: Row) -> bool:
        """Whether the first row under a new heading goes on from the row above it: by its number, or "Next row"."""
        if row.label is None or self.last is None or self.off:
            return False
        numbers = row.label.at(self.size)
        return numbers[0] == (self.number or 0) + 1 if numbers else row.label.kind == "next"

    def _between(self, text: str, offset: int, part: Part, heading: bool) -> None:
        """Words between two rows that are no work."""
        facing = facing_in(text, offset)
        if facing is not None:
            self._begin()
            self._claim(facing.span, facing.side, " ".join(self.context.source.slice(facing.span).split()), part)
        elif may_turn(text) or heading and self.off:
            self._begin()

    # rows ----------------------------------------------------------------------------------------

    def _row(self, part: Part, row: Row, own: list[_Turns]) -> None:
        entries = [
            one for one in self.worked.get(id(row), []) if one.cells[self.size].outcome is not Outcome.NOT_WORKED
        ]
        if (
            row.sizes is not None
            and self.size not in row.sizes
            or row.label is not None
            and not row.label.worked(self.size)
        ):
            return
        if row.label is None and not any(isinstance(step, RowCall) for step in walk(row.steps)):
            self._unlabelled(part, row)
            return
        if turns_otherwise(self.context.source.slice(row.span)):
            return self._begin()
        turns = self._called(row, own) if any(isinstance(s, RowCall) for s in walk(row.steps)) else _turns_of(row)
        numbers = row.label.at(self.size) if row.label is not None else ()
        if not any(isinstance(step, RowCall) for step in walk(row.steps)):
            own.append(turns)
        text = self.context.source.slice(row.span)
        at = row.label.span.end if row.label is not None else row.span.start
        facing = facing_in(self.context.source.text[at : row.span.end], at)
        if numbers and self.number is not None and numbers[0] != self.number + 1 or facing is not None:
            self._begin()
        if facing is not None:
            if turns.before:  # "With RS facing, turn": words of a kind that are not known
                return self._begin()
            self._claim(facing.span, facing.side, " ".join(self.context.source.slice(facing.span).split()), part)
        joins = any(isinstance(step, JoinYarn) for step in walk(row.steps))
        if self.last is not None:
            self._turn(self.last, turns, row, joins)
        count = len(numbers) or len(entries)
        unclear = (
            row.label is not None
            and row.label.unclear
            or numbers != tuple(range(numbers[0], numbers[0] + len(numbers)) if numbers else ())
        )
        if row.label is not None and row.label.side and count == 1 and not unclear:
            self._claim(row.label.span, row.label.side, row.label.words, part)
        self.in_rounds = _in_rounds(row)
        for _ in range(count - 1):
            self._turn(turns, turns, row, False)
        open_ended = any(
            isinstance(s, RowCall)
            and (s.open_ended or s.until is not None and not numbers)
            or isinstance(s, OpenWork)
            and not s.plain
            and not numbers
            for s in walk(row.steps)
        )
        if not count or numbers and entries and len(entries) != count or open_ended or unclear or turns.after is None:
            return self._begin()
        if turns.before is None or any(isinstance(s, (OtherSide, AlongEdge)) for s in walk(row.steps)):
            return self._begin()
        self.last, self.number = turns, numbers[-1] if numbers else None
        self.off = (
            any(isinstance(step, FastenOff) and not step.colour for step in row.steps) or "fasten off" in text.lower()
        )

    def _unlabelled(self, part: Part, row: Row) -> None:
        text = self.context.source.slice(row.span)
        facing = facing_in(text, row.span.start)
        moves = (Chain, MakeRing, FastenOff, JoinYarn, OpenWork, Unread, *_WORKED)
        turns = [step for step in row.steps if isinstance(step, Turn)]
        if facing is not None:
            self._begin()
            self._claim(facing.span, facing.side, " ".join(self.context.source.slice(facing.span).split()), part)
        elif any(isinstance(step, moves) for step in walk(row.steps)) or (may_turn(text) and len(turns) != 1):
            self._begin()
        elif turns and self.last is not None and self.last.after is not None:
            turned = sum(step.turned for step in turns)
            self.last = _Turns(self.last.before, self.last.after + turned, not turned)

    def _called(self, row: Row, own: list[_Turns]) -> _Turns:
        """The turns of rows worked again: known where all rows of the piece turn in the same way."""
        call = next(step for step in walk(row.steps) if isinstance(step, RowCall))
        if call.part is not None or not own:
            return _Turns(None, None)
        later = {(one.before, one.after, one.never) for one in own[1:]} or {(own[0].before, own[0].after, own[0].never)}
        first = (own[0].before, own[0].after, own[0].never)
        if len(later) > 1 or first not in later and not (first == (0, 0, False) and later == {(1, 0, False)}):
            return _Turns(None, None)
        return _Turns(*next(iter(later)))

    def _turn(self, before: _Turns, after: _Turns, row: Row, joins: bool) -> None:
        """What happens between two rows; where that is not known a new run begins."""
        if before.after is None or after.before is None or before.after + after.before > 1:
            return self._begin()
        if before.after + after.before == 1:
            self.turns += 1
            return None
        if before.never:
            return None
        joined = any(isinstance(step, Join) for step in walk(row.steps))
        is_round = _in_rounds(row)
        if self.off or joins or joined and not is_round or is_round != self.in_rounds:
            return self._begin()
        if is_round and self.habit.rounds_turned or not is_round and self.habit.rows_unturned:
            return self._begin()
        self.turns += 0 if is_round else 1
        self.unsaid += 1
        return None


def _turns_of(row: Row) -> _Turns:
    before = after = 0
    worked, never = False, False
    for step in row.steps:
        if isinstance(step, Turn):
            if not step.turned:
                never = True
            elif worked:
                after += 1
            else:
                before += 1
        elif isinstance(step, _WORKED):
            if after:  # turned in the middle: what comes after it is another row
                return _Turns(before, None)
            worked = True
            if any(isinstance(inner, Turn) for inner in walk((step,)) if inner is not step):
                return _Turns(before, None)
        elif isinstance(step, Unread) and may_turn(step.words):
            return _Turns(before if worked else None, None)
    return _Turns(before, after, never)


def _in_rounds(row: Row) -> bool:
    label = row.label
    return label is not None and (
        label.kind == "round" or expression(r"(?i)\br(?:ou)?n?ds?\b").search(label.words) is not None
    )


def _talk(context: Context, rows: list[Row]) -> str:
    """The text outside the rows with labels."""
    pieces, end = [], 0
    for row in sorted((row for row in rows if row.label is not None), key=lambda row: row.span.start):
        pieces.append(context.source.text[end : row.span.start])
        end = row.span.end
    return "\n".join([*pieces, context.source.text[end:]])
