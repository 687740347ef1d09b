"""A clause too many or too few: one dropped that its twin still has, one that stands twice."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace

from lint.amount import Amount
from lint.expression import expression
from lint.likely.edits import Edit, lowered, spliced
from lint.likely.numbers import dials
from lint.likely.numerals import numeral
from lint.place import Limit, LimitKind, Place, Which
from lint.source import Span
from lint.tree import Chain, Group, Join, MakeRing, Passage, Repeat, Skip, Step, Turn, Work, walk

_WORKING = (Work, Group, Chain, Skip)
_DOUBLED, _LEFT_OUT, _TWIN, _NEIGHBOURS, _REST = 1.0, 1.6, 1.4, 1.6, 1.6
_WITHIN = 0.1  # less for a clause of a repeat, which is lacking in every pass
_OTHER_PLACE = 0.2  # more for a clause that is like another but for where it goes
_PAIR = 0.1  # more for two clauses at once
_OTHER_NUMBER = 0.15  # more for a clause that is like another but for its number
_LONGEST_TURNING = 4  # chains: a longer one at a row's start is rather a space whose first stitches were lost
_TWICE = 0.25  # more for one beside its like: who means both says it once, with a greater number
_LIKE_BESIDE = 0.15  # less for each neighbour that the clause also has elsewhere
_CHAIN_ALONE = expression(r"(?i)ch \d+|\d+ ch")
_EVENS_OUT = (
    0.5  # less for one between two that are alike, or that the row elsewhere parts so: "A, ch 1, A, A, ch 1, A"
)
_COMMA_BEHIND = expression(r",\s+")
_COMMA_BEFORE = expression(r",\s+$")
_PLACES = expression(r"(?:each of )?next \d+ ")
_MARK = expression(r"\W*?\*\*")
_NOTE = expression(r"\s*\([^()]*\)")
_ENDS = expression(r"\b(?:last|first)\b")
_TO_END = expression(r"(?i)(?:to (?:the )?end|across|around|along)$")
_BEFORE_END = (1, 2, 3, 4)
_MOST_TWINS = 60


def too_many(steps: tuple[Step, ...], text: str) -> Iterator[Edit]:
    """Every clause left out; one that only says its neighbour again is the likeliest."""
    for siblings, group in _lists_and_groups(steps):
        for index, step in enumerate(siblings):
            if not isinstance(step, _WORKING) or len(siblings) < 2:
                continue
            words = words_of(step, text)
            neighbours = [words_of(other, text) for other in siblings[max(0, index - 1) : index + 2]]
            doubled = neighbours.count(words) > 1
            change = f"“{words}” once instead of twice" if doubled else f"leave out “{words}”"
            span = _with_comma(step.span, text)
            if group is not None and span is not None and not doubled:
                change = _regrouped(group, span, "", text)
            yield Edit(change, _DOUBLED if doubled else _LEFT_OUT, step, (), span, "" if span is not None else None)


def too_few(
    steps: tuple[Step, ...],
    beside: tuple[tuple[Step, ...], ...],
    text: str,
    short: int,
    missing: list[Twin],
) -> Iterator[Edit]:
    """Clauses of the row, or of the rows beside it, put in once more between two others.

    `short`: places left over; `missing`: other clauses that the printed count, or the places left, ask for.
    """
    twins = _twins(steps, beside, text, short, missing)
    pairs = {(_kin(one), _kin(other)) for one, other in _pairs((steps, *beside), text)}
    own = Counter((_kin(one), _kin(other)) for one, other in _pairs((steps,), text))

    def like(one: str, other: str) -> bool:
        return (_kin(one), _kin(other)) in pairs

    def less_by(one: str, between: str, other: str) -> float:
        """How much likelier a clause is lacking between two others by what else stands beside it in these rows."""
        chains = all(_CHAIN_ALONE.fullmatch(words) for words in (one, other)) and not _CHAIN_ALONE.fullmatch(between)
        alike = bool(one) and one == other != between  # who means both says it once, with a greater number
        parts = own[_kin(one), _kin(between)] and own[_kin(between), _kin(other)] and own[_kin(one), _kin(other)] == 1
        evens = chains or alike or parts
        return _LIKE_BESIDE * (like(one, between) + like(between, other)) + (_EVENS_OUT if evens else 0.0)

    if not any(isinstance(step, _WORKING[:2]) for step in walk(steps)):
        yield from _only_clause(steps, twins, text)
    for siblings, group in _lists_and_groups(steps):
        shown = [words_of(step, text) for step in siblings]
        ends = [words_of(_last_of(step), text) for step in siblings]
        makes = sum(
            isinstance(step, (Group, Repeat)) or isinstance(step, Work) and not _slips(step) for step in siblings
        )
        within = _WITHIN if siblings is not steps else 0.0
        for index, step in enumerate(siblings):
            if not isinstance(step, (*_WORKING, Repeat)):
                continue
            before = ends[index - 1] if index else ""
            after = shown[index + 1] if index + 1 < len(siblings) else ""
            opens = index == 0 or isinstance(siblings[index - 1], Repeat)
            for twin in twins:
                if len(siblings) > 2 and makes and _runs_to_end(twin.step):
                    continue  # beside other clauses there is nothing left for it
                if isinstance(step, Repeat) and step.last_pass is not None and step.items:
                    yield _between_marks(step, twin, text)
                if isinstance(step, Repeat) and isinstance(twin.step, Chain) and _ends_round(siblings[index + 1 :]):
                    yield _before_join(step, twin)
                if not isinstance(step, Repeat):
                    again = _TWICE if twin.words in (shown[index], after) else 0.0
                    less = within + less_by(shown[index], twin.words, after)
                    yield _behind(step, shown[index], twin, twin.cost + again - less, text, group)
                if opens and not _beginning(step, steps):
                    again = _TWICE if twin.words in (shown[index], before) else 0.0
                    less = within + less_by(before, twin.words, shown[index])
                    yield _ahead(step, shown[index], twin, twin.cost + again - less, text, group)
    last = next((step for step in reversed(steps) if isinstance(step, (*_WORKING, Repeat))), None)
    if short > 0 and last is not None:
        words = "leave remaining sts unworked" if short > 1 else "leave last st unworked"
        end = last.span.end
        rest = Skip(last.span, (), rest=True)
        yield Edit(f"“{words}” at the end", _REST, last, (last, rest), Span(end, end), f", {words}")


@dataclass(frozen=True)
class Twin:
    """A clause that may be lacking, its words, and how unlikely it is that it was forgotten."""

    step: Step
    words: str
    cost: float


def _twins(
    steps: tuple[Step, ...], beside: tuple[tuple[Step, ...], ...], text: str, short: int, missing: list[Twin]
) -> list[Twin]:
    """The clauses that may be lacking, each once, also with another number: "sc in next 6 sc" like "sc in next 4 sc"."""
    found: dict[str, Twin] = {}
    passes = {
        step.times.number.lone for step in walk(steps) if isinstance(step, Repeat) and step.times.number is not None
    }
    asked = {1, 2, short} | {short // often for often in passes if often and short > 0 and short % often == 0}
    for cost, rows in ((_TWIN, (steps,)), (_NEIGHBOURS, beside)):
        exact = [
            step
            for row in rows
            for siblings in _lists(row)
            for step in siblings
            if isinstance(step, _WORKING) and not _slips(step) and not _beginning(step, row)
        ]
        for step in exact:
            words = words_of(step, text)
            found.setdefault(words, Twin(step, words, cost))
        for step in exact:
            for dial in dials((step,), text, 0):
                if dial.role not in ("places", "stitches") or dial.step is not step or dial.listed:
                    continue  # a list with another figure in one size is no clause that was left out
                for number in sorted((asked | {dial.value - 1, dial.value + 1}) - {dial.value}):  # rounds grow by one
                    edit = dial.edit(text, number) if 0 < number < 100 else None
                    if edit is not None and edit.clause is not None:
                        words = lowered(edit.clause)
                        more = _OTHER_NUMBER if number < 3 or abs(number - dial.value) == 1 else 2 * _OTHER_NUMBER
                        found.setdefault(words, Twin(edit.new[0], words, cost + more))
    others = (*_elsewhere(steps, list(found.values()), text), *_elsewhere_in_row(list(found.values())), *missing)
    for twin in (*others, *_told_in_pairs(steps, text)):
        found.setdefault(twin.words, twin)
    return sorted(found.values(), key=lambda twin: twin.cost)[:_MOST_TWINS]


def _told_in_pairs(steps: tuple[Step, ...], text: str) -> Iterator[Twin]:
    """Two clauses that the row tells over and over: "3 dc in next ch-1 sp, ch 1"; the first and the last may say so."""
    shown = [
        (one, other, tuple(_ENDS.sub("next", words_of(step, text)) for step in (one, other)))
        for siblings in _lists(steps)
        for one, other in zip(siblings, siblings[1:], strict=False)
        if isinstance(one, (Work, Group)) and not _slips(one) and isinstance(other, Chain)
    ]
    often = Counter(words for *_, words in shown)
    for one, other, words in shown:
        place = one.places[0] if len(one.places) == 1 else None
        if often[words] > 1 and place is not None and place.which is Which.NEXT:
            yield Twin(Passage(one.span.to(other.span), (one, other)), ", ".join(words), _TWIN + _PAIR)


def _elsewhere(steps: tuple[Step, ...], twins: list[Twin], text: str) -> Iterator[Twin]:
    """Clauses of the rows beside it that go where this row's clauses go: "shell in next ch" like "shell in next sc"."""
    own = [step for step in walk(steps) if isinstance(step, (Work, Group)) and len(step.places) == 1]
    places = {" ".join(text[p.span.start : p.span.end].split()): p for step in own for p in step.places if _simple(p)}
    for twin in twins:
        step = twin.step
        if not isinstance(step, (Work, Group)) or len(step.places) != 1 or not _simple(step.places[0]):
            continue
        old = step.places[0]
        shown = " ".join(text[old.span.start : old.span.end].split())
        if old.span.end != step.span.end or shown in places or not twin.words.endswith(shown):
            continue
        for words, place in list(places.items())[:3]:
            other = replace(step, places=(place,))
            yield Twin(other, twin.words[: -len(shown)] + words, twin.cost + _OTHER_PLACE)


def _elsewhere_in_row(twins: list[Twin]) -> Iterator[Twin]:
    """The same clauses where another stands in the row: "2 sc in next sp" like the "2 sc in last sp" that ends it.

    A run to the end may stop before what is worked at the end: "dc in each st to last 2 sts" like "dc in each st across".
    """
    for twin in twins:
        place = twin.step.places[0] if isinstance(twin.step, (Work, Group)) and len(twin.step.places) == 1 else None
        if place is None or place.of is not None:
            continue
        if place.which in (Which.LAST, Which.FIRST) and place.number.lone == 1:
            words = _ENDS.sub("next", twin.words, 1)
            if words != twin.words:
                step = replace(twin.step, places=(replace(place, which=Which.NEXT),))
                yield Twin(step, words, twin.cost + 1.5 * _OTHER_PLACE)
        end = _TO_END.search(twin.words) if _runs_to_end(twin.step) else None
        for number in _BEFORE_END if end is not None else ():
            limit = Limit(LimitKind.LAST, Amount.of(number))
            words = f"{twin.words[: end.start()]}to last {f'{number} sts' if number > 1 else 'st'}"
            step = replace(twin.step, places=(replace(place, limit=limit),))
            yield Twin(step, words, twin.cost + _OTHER_NUMBER)


def _runs_to_end(step: Step) -> bool:
    place = step.places[0] if isinstance(step, (Work, Group)) and step.places else None
    return (
        place is not None and place.which is Which.EACH and (place.limit is None or place.limit.kind is LimitKind.END)
    )


def _simple(place: Place) -> bool:
    return place.which is Which.NEXT and place.number.lone == 1 and place.limit is None and place.of is None


def _only_clause(steps: tuple[Step, ...], twins: list[Twin], text: str) -> Iterator[Edit]:
    """A clause for a row that works nothing: behind its turn, or between its chain and its join, which look like a ring."""
    ring = next((step for step in steps if isinstance(step, MakeRing) and step.length is not None), None)
    drawn = next((step for step in steps if isinstance(step, MakeRing) and step.length is None), None)
    turn = next((step for step in steps if isinstance(step, Turn)), None)
    for twin in twins:
        if not isinstance(twin.step, (Work, Group)):
            continue
        if ring is not None:
            at = numeral(text, ring.span, ring.length, 0)
            new: tuple[Step, ...] = (Chain(ring.span, ring.length), twin.step, Join(ring.span))
            anchor: Step = ring
        elif drawn is not None:
            at, anchor, new = drawn.span, drawn, (drawn, twin.step)
        elif turn is not None:
            at, anchor, new = turn.span, turn, (turn, twin.step)
        else:
            return
        end = at.end if at is not None else anchor.span.end
        yield Edit(f"add “{twin.words}”", twin.cost, anchor, new, Span(end, end), f", {twin.words}", clause=twin.words)


def _behind(step: Step, shown: str, twin: Twin, cost: float, text: str, group: Group | None) -> Edit:
    note = _NOTE.match(text, step.span.end) if isinstance(step, Chain) else None  # "ch 3 (counts as dc)"
    end = note.end() if note else step.span.end
    at, words = Span(end, end), f", {twin.words}"
    change = _regrouped(group, at, words, text) if group else f"add “{twin.words}” after “{shown}”"
    return Edit(change, cost, step, (step, twin.step), at, words, clause=twin.words)


def _ahead(step: Step, shown: str, twin: Twin, cost: float, text: str, group: Group | None) -> Edit:
    change = f"add “{twin.words}” before " + ("the repeat" if isinstance(step, Repeat) else f"“{shown}”")
    if isinstance(step, Repeat):
        at = Span(step.span.start, step.span.start)
        return Edit(change, cost, step, (twin.step, step), at, f"{twin.words}, ", clause=twin.words)
    head = Span(step.span.start, step.span.start + 2)
    words = f"{twin.words}, {lowered(text[head.start : head.end])}"
    if group is not None:
        change = _regrouped(group, head, words, text)
    return Edit(change, cost, step, (twin.step, step), head, words, clause=twin.words)


def _ends_round(following: tuple[Step, ...]) -> bool:
    """Whether nothing but the join follows."""
    joins = any(isinstance(step, Join) or _slips(step) for step in following)
    return joins and not any(isinstance(step, (*_WORKING, Repeat)) and not _slips(step) for step in following)


def _before_join(step: Repeat, twin: Twin) -> Edit:
    """The last space of a round, which is often left unsaid: "*ch 2, dc in next st; rep from * around, ch 2, join"."""
    at = Span(step.span.end, step.span.end)
    change = f"add “{twin.words}” before the join"
    return Edit(change, twin.cost - _EVENS_OUT, step, (step, twin.step), at, f", {twin.words}", clause=twin.words)


def _between_marks(step: Repeat, twin: Twin, text: str) -> Edit:
    """A clause behind the mark at which the last pass ends: "*A, B**, … ; rep from * around, ending last rep at **"."""
    last = step.items[-1]
    mark = _MARK.match(text, last.span.end)
    end = mark.end() if mark else last.span.end
    new = replace(step, items=(*step.items, twin.step))
    change = f"add “{twin.words}” at the end of the repeat, all but the last time"
    return Edit(change, twin.cost - _WITHIN, step, (new,), Span(end, end), f", {twin.words}", clause=twin.words)


def _regrouped(group: Group, at: Span, words: str, text: str) -> str:
    """A group as it would read, against what it says: a clause of it alone does not show where it stands."""
    return f"“{lowered(spliced(text, group.span, at, words))}” instead of “{words_of(group, text)}”"


def words_of(step: Step, text: str) -> str:
    """A clause's words as they would stand within a sentence."""
    return lowered(" ".join(text[step.span.start : step.span.end].split()))


def _kin(words: str) -> str:
    """A clause's words without how many places it goes into: rounds that grow differ by that alone."""
    return _PLACES.sub("next ", words)


def _pairs(rows: tuple[tuple[Step, ...], ...], text: str) -> Iterator[tuple[str, str]]:
    """Clauses that follow each other."""
    for row in rows:
        for siblings in _lists(row):
            shown = [words_of(step, text) for step in siblings]
            yield from zip(shown, shown[1:], strict=False)


def _lists(steps: tuple[Step, ...]) -> Iterator[tuple[Step, ...]]:
    """The row's own clauses, and those of every repeat and bracket in it."""
    for siblings, _ in _lists_and_groups(steps):
        yield siblings


def _lists_and_groups(
    steps: tuple[Step, ...], group: Group | None = None
) -> Iterator[tuple[tuple[Step, ...], Group | None]]:
    """The same lists, each with the bracket that holds it."""
    yield steps, group
    for step in steps:
        if isinstance(step, (Repeat, Group)):
            yield from _lists_and_groups(step.items, step if isinstance(step, Group) else group)


def _slips(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch == "sl st"


def _last_of(step: Step) -> Step:
    """What is worked last before the next clause: of a repeat, its last clause."""
    return step.items[-1] if isinstance(step, Repeat) and step.items else step


def _beginning(step: Step, row: tuple[Step, ...]) -> bool:
    """Whether a chain opens its row."""
    first = next((other for other in row if isinstance(other, (Chain, Work, Group, Repeat))), None)
    return isinstance(step, Chain) and first is step and (step.length.at(0) or 0) <= _LONGEST_TURNING


def _with_comma(span: Span, text: str) -> Span | None:
    """A clause with the comma that parts it from its neighbour; None where none does."""
    behind = _COMMA_BEHIND.match(text, span.end)
    if behind:
        return Span(span.start, behind.end())
    before = _COMMA_BEFORE.search(text, max(0, span.start - 4), span.start)
    return Span(before.start(), span.end) if before else None
