"""Every number in a row's words that can be another by a slip: how often, how many, into how many, how long a chain."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from lint.amount import Amount
from lint.expression import expression
from lint.likely.edits import Edit, lowered, spliced
from lint.likely.numerals import in_list, numeral, often, ordinal, with_value
from lint.place import LimitKind, Place, TargetKind, Which
from lint.source import Span
from lint.tree import Chain, Evenly, Group, MakeRing, Repeat, Shaping, Skip, Step, TimesKind, Work, walk

_BY_ONE, _BY_MORE = 1.2, 1.5  # a figure is rather one off than any other
_FAR = 0.4  # more for one that has nothing in common with what is printed, and as much again for one far larger
_UNSAID = 0.5  # more where no figure is printed at all: "next sc" for "next 2 sc"
_EACH_MORE = 0.2  # more for every further place at which the same figure changes
_RUN = expression(r"(?i)(?:each of (?:the )?)?next \d+ $")
_ONE_SAID = expression(r"\b1 (?:sc|hdc|dc|htr|tr)\b")  # how a pattern says that it is one stitch
_NOUN = expression(r"(st|stitch|space|sp)(?:e?s)?\b")
_NEXT = expression(r"(?i)\bnext\s+")


@dataclass(frozen=True)
class Dial:
    """A number that can be turned: what it is now, the step with another, and how that reads."""

    role: str  # times | limit | chain | start | stitches | places | hook | space
    step: Step
    value: int
    turned: Callable[[int], Step]
    reads: Callable[[int], tuple[Span, str] | None]  # the stretch of the text, and its words with another number
    says: Callable[[int], str] | None = None  # the change in words of its own
    printed: bool = True
    listed: bool = False  # one figure of a list over the sizes
    whole: Span | None = None  # the group that the step is an item of: "(2 dc, ch 2, 2 dc) in next sp"

    def edit(self, text: str, number: int) -> Edit:
        """The edit that turns the number."""
        printed = self.reads(number)
        cost = slip_cost(self.value, number) + (0.0 if self.printed else _UNSAID)
        shown = self.whole or self.step.span
        clause = spliced(text, shown, *printed) if printed is not None else None
        if self.says is not None:
            change = self.says(number)
        else:
            old = " ".join(text[shown.start : shown.end].split())
            change = f"“{clause}” instead of “{old}”" if clause else f"{number} instead of {self.value} in “{old}”"
        span, words = printed if printed is not None else (None, None)
        return Edit(change, cost, self.step, (self.turned(number),), span, words, clause)


def slip_cost(old: int, new: int) -> float:
    """How unlikely it is that one number was printed for another."""
    if abs(old - new) == 1:
        return _BY_ONE
    one, other = str(old), str(new)
    near = abs(old - new) == 2 or sorted(one) == sorted(other)
    near = near or len(one) == len(other) and sum(a != b for a, b in zip(one, other, strict=True)) == 1
    far = 0 if near else 1 if new < 4 * old else 2
    return _BY_MORE + far * _FAR


def all_alike(found: list[Dial], text: str, number: int) -> Edit:
    """The same number changed wherever the row has it: "ch-2 sp" for "ch-3 sp", both times."""
    edits = [dial.edit(text, number) for dial in found]
    if found[0].role in ("space", "chain"):
        named = "ch-{} sp" if found[0].role == "space" else "ch {}"
        change = f"{named.format(number)} instead of {named.format(found[0].value)}"
    else:
        change = edits[0].change
    change += f", all {len(found)} times" if len(found) > 2 else ", both times"
    cost = slip_cost(found[0].value, number) + _EACH_MORE * (len(found) - 1)
    return together(edits, text, change, cost)


def together(edits: list[Edit], text: str, change: str, cost: float) -> Edit:
    """Several edits of a row as one."""
    stretch = words = None
    if all(edit.span is not None for edit in edits):
        ordered = sorted({(edit.span, edit.words) for edit in edits})
        stretch = Span(ordered[0][0].start, ordered[-1][0].end)
        pieces, at = [], stretch.start
        for span, new in ordered:
            pieces += [text[at : span.start], new or ""]
            at = span.end
        words = "".join(pieces)
    also = tuple((edit.old, edit.new) for edit in edits[1:])
    return Edit(change, cost, edits[0].old, edits[0].new, stretch, words, also=also)


def dials(steps: tuple[Step, ...], text: str, size: int) -> Iterator[Dial]:
    """Every number of a row's steps."""
    groups = [step for step in walk(steps) if isinstance(step, Group)]
    wholes = {id(item): group.span for group in groups for item in walk(group.items)}
    for dial in _dials(steps, text, size):
        yield replace(dial, whole=wholes.get(id(dial.step)))


def _dials(steps: tuple[Step, ...], text: str, size: int) -> Iterator[Dial]:
    seen: set[Step] = set()
    worked = False
    for step in walk(steps):
        if id(step) in seen:
            continue
        seen.add(id(step))
        if isinstance(step, Repeat):
            yield from _times(step, text, size)
        elif isinstance(step, Chain):
            yield _chain(step, step.length, text, size, begins=not worked)
        elif isinstance(step, MakeRing) and step.length is not None:
            yield _chain(step, step.length, text, size, begins=True)
        elif isinstance(step, (Evenly, Shaping)):
            yield _plain(step, step.number, text, size)
        elif isinstance(step, (Work, Group, Skip)):
            if isinstance(step, Work) and step.stitch != "sl st":
                yield _stitches(step, text, size)
            for index, place in enumerate(step.places):
                yield from _place(step, index, place, text, size)
        worked = worked or isinstance(step, (Work, Group, Repeat))


def _printed(at: Span | None) -> Callable[[int], tuple[Span, str] | None]:
    return lambda number: (at, str(number)) if at is not None else None


def _plain(step: Evenly | Shaping, amount: Amount, text: str, size: int) -> Dial:
    at = numeral(text, step.span, amount, size)
    return Dial(
        "stitches",
        step,
        amount.at(size) or 0,
        lambda number: replace(step, number=with_value(amount, size, number)),
        _printed(at),
    )


def _times(step: Repeat, text: str, size: int) -> Iterator[Dial]:
    times = step.times
    if times.number is not None and times.kind is not TimesKind.FILL:
        amount = times.number
        at = numeral(text, times.span, amount, size)
        more = " more" if times.kind is TimesKind.MORE else ""
        value, listed = amount.at(size) or 0, in_list(text, at, times.span)

        def reads(number: int) -> tuple[Span, str] | None:
            if at is None:
                return None
            word = text[at.start : at.end].lower()
            if word in ("once", "twice"):
                return at, often(number)
            if number == 1 and not listed and text[at.end :].startswith(" times"):
                return Span(at.start, at.end + len(" times")), "once"
            return at, str(number)

        yield Dial(
            "times",
            step,
            value,
            lambda number: replace(step, times=replace(times, number=with_value(amount, size, number))),
            reads,
            lambda number: f"work the repeat {often(number)}{more} instead of {often(value)}{more}",
            listed=listed,
        )
    limit = times.limit
    if limit is not None and limit.kind is LimitKind.LAST:
        at = numeral(text, times.span, limit.number, size)
        yield Dial(
            "limit",
            step,
            limit.number.at(size) or 0,
            lambda number: replace(
                step, times=replace(times, limit=replace(limit, number=with_value(limit.number, size, number)))
            ),
            _printed(at),
            lambda number: f"repeat to the last {number} instead of the last {limit.number.at(size)}",
        )


def _chain(step: Chain | MakeRing, length: Amount, text: str, size: int, begins: bool) -> Dial:
    at = numeral(text, step.span, length, size)
    return Dial(
        "start" if begins else "chain",
        step,
        length.at(size) or 0,
        lambda number: replace(step, length=with_value(length, size, number)),
        _printed(at),
        (lambda number: f"begin with {number} ch instead of {length.at(size)}") if begins else None,
    )


def _stitches(step: Work, text: str, size: int) -> Dial:
    value = step.number.at(size) or 0
    at = numeral(text, step.span, step.number, size, tuple(place.span for place in step.places))
    listed = in_list(text, at, step.span)

    def reads(number: int) -> tuple[Span, str] | None:
        if at is not None:
            goes = number == 1 and not listed and text[at.end : at.end + 1] == " " and not _ONE_SAID.search(text)
            return (Span(at.start, at.end + 1), "") if goes else (at, str(number))
        if value != 1:
            return None
        head = Span(step.span.start, step.span.start + 2)
        return head, f"{number} {lowered(text[head.start : head.end])}"

    return Dial(
        "stitches",
        step,
        value,
        lambda number: replace(step, number=with_value(step.number, size, number), number_said=True),
        reads,
        printed=at is not None,
        listed=listed,
    )


def _place(step: Work | Group | Skip, index: int, place: Place, text: str, size: int) -> Iterator[Dial]:
    def put(other: Place) -> Step:
        return replace(step, places=(*step.places[:index], other, *step.places[index + 1 :]))

    if place.which is Which.FROM_HOOK and place.ordinals:
        value = place.ordinals[0]
        at = numeral(text, place.span, Amount.of(value), size, loose=True)
        ending = Span(at.start, at.end + 2) if at is not None and text[at.end : at.end + 2].isalpha() else None
        yield Dial(
            "hook",
            step,
            value,
            lambda number: put(replace(place, ordinals=(number, *place.ordinals[1:]))),
            lambda number: (ending, ordinal(number)) if ending is not None else None,
            printed=False,  # the chain that a row begins in is rather right than the number of chains
        )
        return
    if place.which in (Which.NEXT, Which.FIRST, Which.LAST, Which.EACH) and place.limit is None and place.of is None:
        value = place.number.at(size) or 0
        at = numeral(text, place.span, place.number, size)
        listed = in_list(text, at, place.span)

        def reads(number: int) -> tuple[Span, str] | None:
            if at is not None:
                run = _RUN.search(text, place.span.start, at.end + 1) if number == 1 and not listed else None
                if run is None:
                    return at, str(number)
                noun = _NOUN.match(text, run.end())
                return Span(run.start(), noun.end() if noun else run.end()), f"next {noun[1] if noun else ''}"
            behind = _NEXT.search(text, place.span.start, place.span.end)
            if behind is None or value != 1:
                return None
            noun = _NOUN.match(text, behind.end())  # "next st", "next 2 sts"
            named = f"{noun[1]}{'es' if noun[1] == 'stitch' else 's'}" if noun else ""
            return Span(behind.end(), noun.end() if noun else behind.end()), f"{number} {named}"

        yield Dial(
            "places",
            step,
            value,
            lambda number: put(replace(place, number=with_value(place.number, size, number))),
            reads,
            printed=at is not None,
            listed=listed,
        )
    if place.limit is not None and place.limit.kind is LimitKind.LAST:
        limit = place.limit
        at = numeral(text, place.span, limit.number, size)
        yield Dial(
            "limit",
            step,
            limit.number.at(size) or 0,
            lambda number: put(replace(place, limit=replace(limit, number=with_value(limit.number, size, number)))),
            _printed(at),
        )
    for target in place.targets:
        if target.kind is TargetKind.SPACE and target.length is not None:
            length = target.length
            at = numeral(text, place.span, length, size, loose=True)
            targets = place.targets
            yield Dial(
                "space",
                step,
                length.at(size) or 0,
                lambda number, target=target, length=length, targets=targets: put(
                    replace(
                        place,
                        targets=tuple(
                            replace(one, length=with_value(length, size, number)) if one is target else one
                            for one in targets
                        ),
                    )
                ),
                _printed(at),
            )
