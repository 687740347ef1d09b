"""Reads repeats: how often, from which mark; folds starred passages into Repeat steps."""

from __future__ import annotations

from dataclasses import dataclass

from lint.amount import Amount
from lint.reading.places import limit, places
from lint.reading.stream import CLOSERS, OPENERS, Stream
from lint.source import Span
from lint.tree import (
    Limit,
    LimitKind,
    Passage,
    Repeat,
    RowCall,
    Step,
    Times,
    TimesKind,
    Unread,
)


@dataclass(frozen=True, slots=True)
class Mark:
    """A star or other repeat mark among the steps of a row, until it is folded away."""

    span: Span
    sign: str


@dataclass(frozen=True, slots=True)
class Folded(Repeat):
    """A starred repeat that still knows its sign and where ** stood, for "from * to ** once" and "ending at **"."""

    sign: str = "*"
    stop_sign: int | None = None
    between: int | None = None


def times(stream: Stream, after_bracket: bool = False) -> Times | None:
    """How often, at the cursor: "4 times", "twice more", "x 6", "another 2 times", "around", "to last 2 sts"."""
    start = stream.at
    if after_bracket and stream.kind() == "(" and stream.kind(1) == "number" and stream.kind(2) == "times":
        stream.take()  # "(inc) (6 times)"
        found = times(stream)
        if found is not None and stream.take_if(")"):
            return found
        stream.at = start
        return None
    if after_bracket and stream.kind() == "repeat":
        stream.take()
        stream.skip("all", "the")
    total = bool(stream.take_if("total")) or (
        stream.word("for") and stream.kind(1) == "total" and bool(stream.take()) and bool(stream.take())
    )
    another = bool(stream.take_if("another", "more"))
    if stream.word("x", "×", "*") and stream.kind(1) in ("number", "(", "["):
        stream.take()
        number = stream.amount()
        if number is not None:
            stream.take_if("times")
            return Times(stream.span_from(start), TimesKind.IN_ALL, number)
    once = stream.peek()
    if once.kind == "number" and once.lower in ("once", "twice", "thrice"):
        stream.take()
        more = another or bool(stream.take_if("more"))
        kind = TimesKind.MORE if more else (TimesKind.IN_ALL if after_bracket or total else TimesKind.UNCLEAR)
        return Times(stream.span_from(start), kind, Amount.of(once.number))
    number = stream.amount()
    if number is not None:
        more = another or bool(stream.take_if("more"))
        if stream.kind() == "times" or stream.word("x", "×", "xs"):
            glued_x = stream.take()
            del glued_x
            more = more or bool(stream.take_if("more", "another"))
            stream.skip("more")
            in_all = total or (stream.kind() == "total" and bool(stream.take()))
            if stream.kind() in ("around", "across"):
                stream.take()
            kind = TimesKind.MORE if more else (TimesKind.IN_ALL if after_bracket or in_all else TimesKind.UNCLEAR)
            return Times(stream.span_from(start), kind, number)
        stream.at = start
        return None
    reach = limit(stream)
    if reach is not None:
        return Times(stream.span_from(start), TimesKind.FILL, limit=reach)
    stream.at = start
    if after_bracket and start and stream.kind(-1) == "repeat":
        stream.at = start
    return None


def pair(steps: list[Step]) -> bool:
    """Whether the last step is a mark that closes an earlier one of the same sign."""
    return (
        bool(steps)
        and isinstance(steps[-1], Mark)
        and any(isinstance(step, Mark) and step.sign == steps[-1].sign for step in steps[:-1])
    )


def open_star(steps: list[Step]) -> bool:
    return any(isinstance(step, Mark) for step in steps)


def fold_pair(steps: list[Step], how_often: Times, end: Span) -> None:
    """Fold "*…*" before a number of times."""
    sign = steps[-1].sign
    opened = max(i for i, step in enumerate(steps[:-1]) if isinstance(step, Mark) and step.sign == sign)
    body = [step for step in steps[opened + 1 : -1] if not isinstance(step, Mark)]
    span = steps[opened].span.to(end)
    steps[opened:] = [Folded(span, tuple(body), how_often, sign=sign)]


def fold_loose(steps: list[Step]) -> list[Step]:
    """A pair of stars with no repeat words runs to the end of the round; a lone star is only a sign."""
    while True:
        marks = [i for i, step in enumerate(steps) if isinstance(step, Mark)]
        pairs = [(a, b) for a, b in zip(marks, marks[1:]) if steps[a].sign == steps[b].sign]
        if not pairs:
            break
        first, last = pairs[-1]
        span = steps[first].span.to(steps[last].span)
        fill = Times(steps[last].span, TimesKind.FILL, limit=Limit(LimitKind.END))
        steps = [*steps[:first], Folded(span, tuple(steps[first + 1 : last]), fill), *steps[last + 1 :]]
    return [step for step in steps if not isinstance(step, Mark)]


def repeat_clause(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "rep from * …", "rep * to * …", "rep between …", "Rep Rows 2-5 …"."""
    stream.take()
    if _row_words(stream):
        stream.at = start
        return row_call(stream, steps, start)
    stream.skip("from", "between", "the", "first", "all", "instructions", "then")
    while stream.word("directions", "pattern", "sequence", "steps"):
        stream.take()
    stream.skip("from", "between", "first")
    if stream.kind() != "star":
        if stream.kind() in OPENERS and stream.kind(1) in CLOSERS:
            stream.at += 2
        how_often = times(stream)
        if steps and isinstance(steps[-1], Repeat) and how_often is None:
            return False
        if pair(steps):
            fold_pair(
                steps,
                how_often or Times(stream.span_from(start), TimesKind.FILL, limit=Limit(LimitKind.END)),
                stream.span_from(start),
            )
            return True
        return False
    opening = stream.take()
    sign, to_sign = opening.value, None
    before = stream.at
    stream.skip("dash", "and", "last")
    if stream.take_if("to"):
        stream.skip("next", "ordinal", "second", "last", "first")
    if stream.kind() == "star" and stream.at > before or (stream.kind() == "star" and stream.kind(-1) == "star"):
        to_sign = stream.take().value
    else:
        stream.at = before
    if sign == "**" and to_sign is None and not any(isinstance(step, Mark) and step.sign == "**" for step in steps):
        sign, to_sign = "*", "*"
    stream.skip("the", "for")
    for_total = stream.word("a") and stream.kind(1) == "total"
    if for_total:
        stream.take()
    # "end" after a comma begins the ending, not the repeat
    how_often = times(stream) or Times(stream.span_from(start), TimesKind.FILL, limit=Limit(LimitKind.END))
    step = _fold(steps, sign, to_sign, how_often, stream.span_from(start))
    if step is None:
        words = " ".join(item.text for item in stream.lexemes[start : stream.at])
        steps.append(Unread(stream.span_from(start), words, f"no {sign} stands before this repeat"))
    ending_at_mark(stream, steps)
    return True


def _fold(steps: list[Step], sign: str, to_sign: str | None, how_often: Times, span: Span) -> Step | None:
    """Fold the steps since the mark into a Repeat in place; None if the mark is not there."""
    marks = [i for i, step in enumerate(steps) if isinstance(step, Mark) and step.sign == sign]
    if not marks:
        return _passage(steps, sign, to_sign, how_often, span)
    opened = marks[-1]
    tail: list[Step] = []
    if opened == len(steps) - 1 and len(marks) > 1:  # "*…*, rep from * across"
        opened, closed = marks[-2], len(steps) - 1
    elif to_sign == sign and len(marks) > 1 and opened > marks[-2] + 1:  # "*…*, x, rep from * to *"
        opened, closed = marks[-2], opened
        tail = steps[closed + 1 :]
    else:
        closed = len(steps)
    body: list[Step] = []
    stop = None
    for step in steps[opened + 1 : closed]:
        if isinstance(step, Mark):
            stop = len(body)
        else:
            body.append(step)
    if to_sign and to_sign != sign and stop is not None:
        after = body[stop:]
        body, tail = body[:stop], after + tail
        if after:
            # "*A**, B; rep from * to ** once": A, B, A
            passage = Passage(span, tuple(body))
            steps[opened:] = [*body, *after, passage]
            return passage
        stop = None
    whole = steps[opened].span.to(span)
    folded = Folded(whole, tuple(body), how_often, sign=sign, stop_sign=stop)
    steps[opened:] = [folded, *tail]
    return folded


def _passage(steps: list[Step], sign: str, to_sign: str | None, how_often: Times, span: Span) -> Step | None:
    """ "then from * to ** once" after the passage has been folded."""
    for step in reversed(steps):
        if isinstance(step, Folded) and step.sign == sign:
            items = (
                step.items[: step.stop_sign]
                if to_sign and to_sign != sign and step.stop_sign is not None
                else step.items
            )
            number = how_often.number.lone if how_often.number else 1
            if how_often.kind is TimesKind.FILL and how_often.number is None:
                number = 1
            again_ = Passage(span, tuple(items) * max(1, min(number or 1, 999)))
            steps.append(again_)
            return again_
    return None


def again(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "(and|then) from * to ** once|again"."""
    stream.take()
    stream.skip("first", "the")
    if stream.kind() != "star":
        return False
    sign = stream.take().value
    to_sign = None
    if stream.take_if("to"):
        stream.skip("first", "next")
        if stream.kind() != "star":
            return False
        to_sign = stream.take().value
    how_often = times(stream) or Times(stream.span_from(start), TimesKind.IN_ALL, Amount.of(1))
    stream.skip("more")
    return _passage(steps, sign, to_sign, how_often, stream.span_from(start)) is not None


def ending_at_mark(stream: Stream, steps: list[Step]) -> bool:
    """ ", ending last rep at **": the last pass of the repeat before stops there."""
    start = stream.at
    stream.skip(",", ";", "and")
    if stream.kind() not in ("ending", "repeat"):
        stream.at = start
        return False
    while stream.kind() in ("ending", "last", "repeat", "the") or stream.word("on", "last"):
        stream.take()
    if not stream.take_if("at", "in") or stream.kind() != "star":
        stream.at = start
        return False
    stream.take()
    for index in range(len(steps) - 1, -1, -1):
        step = steps[index]
        if isinstance(step, Folded):
            stop = step.stop_sign if step.stop_sign is not None else None
            if stop is None:
                break
            steps[index] = Folded(
                step.span.to(stream.span_from(start)), step.items, step.times, stop, sign=step.sign, stop_sign=stop
            )
            return True
    stream.at = start
    return False


def omit(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "omitting last ch 2": the last pass of the repeat before loses its last items."""
    stream.take()
    stream.skip("the", "last")
    from lint.reading.clauses import read_inside  # a clause inside a clause

    end = stream.at
    while end < len(stream.lexemes) and stream.lexemes[end].kind not in (",", ";", ".", "join", *CLOSERS):
        end += 1
    items = read_inside(stream.inside(stream.at, end))
    for index in range(len(steps) - 1, -1, -1):
        step = steps[index]
        if isinstance(step, Repeat) and items:
            stream.at = end
            values = dict(
                span=step.span.to(stream.span_from(start)),
                items=step.items,
                times=step.times,
                stop=step.stop,
                omit=tuple(items),
            )
            steps[index] = (
                Folded(**values, sign=step.sign, stop_sign=step.stop_sign)
                if isinstance(step, Folded)
                else Repeat(**values)
            )
            return True
    return False


def _row_words(stream: Stream) -> bool:
    """Whether row numbers follow: "Rows 2-5", "2nd row", "last 2 rows", "from Row 2", "as Row 2"."""
    for ahead in range(0, 6):
        kind = stream.kind(ahead)
        if kind in ("row", "round"):
            return True
        if kind == "word" and stream.peek(ahead).lower == "r" and stream.kind(ahead + 1) == "number":
            return True
        if kind not in (
            "from",
            "the",
            "as",
            "last",
            "number",
            "ordinal",
            "dash",
            "and",
            "to",
            "this",
            "same",
            ",",
            "of",
            "these",
        ):
            return False
    return False


def row_call(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Rep Rows 2-5 (n times)", "As 3rd row", "Same as ROW 4", "Repeat last 2 rows 3 times more"."""
    stream.skip("repeat", "as", "same", "from", "the", "work", "this", "these", "for")
    if stream.kind() == "at" or stream.kind() == "star":
        return False
    last_words = bool(stream.take_if("last"))
    numbers: list[int] = []
    kind: str | None = None
    spread = False
    while True:
        lexeme = stream.peek()
        if lexeme.kind in ("row", "round") or lexeme.lower == "r" and stream.kind(1) == "number":
            kind = lexeme.kind if lexeme.kind != "word" else kind
            stream.take()
            if numbers and stream.kind() != "number":
                break
        elif lexeme.kind in ("number", "ordinal"):
            if (
                kind
                and numbers
                and stream.kind(1) in ("times",)
                or (kind and stream.kind(1) == "more" and numbers)
                or lexeme.lower in ("once", "twice")
            ):
                break
            numbers.append(lexeme.number)
            stream.take()
        elif (
            lexeme.kind in ("dash", "to", "and", ",")
            and numbers
            and stream.kind(1) in ("number", "ordinal", "row", "round")
        ):
            if lexeme.kind == "," and not (
                stream.kind(1) in ("number", "ordinal") and stream.kind(2) in (",", "and", "row", "round", "dash")
            ):
                break
            if stream.kind(1) == "number" and stream.kind(2) == "times":
                break
            spread = spread or lexeme.kind in ("dash", "to")
            stream.take()
        elif lexeme.lower in ("thru", "through") and numbers:
            spread = True
            stream.take()
        else:
            break
    if kind is None and not (numbers and last_words):
        return False
    part = None
    if stream.kind() == "of":
        at = stream.at
        stream.take()
        stream.skip("the")
        words = []
        while not stream.done and stream.kind() in ("word", "back_loop", "side", "special", "group_word", "ring"):
            words.append(stream.take().text)
        part = " ".join(words) or None
        if part is None:
            stream.at = at
    stream.skip("for", "consecutively", "alternate")
    while stream.word("consecutively", "pattern", "patt"):
        stream.take()
    stream.skip(",")
    bracket = stream.kind() == "("
    how_often = times(stream, after_bracket=bracket)
    if how_often is None and stream.kind(-1) == ",":
        stream.at -= 1
    if how_often is not None and how_often.kind is TimesKind.FILL:
        how_often = None
        while not stream.done and stream.kind() not in (".", ";", *OPENERS):
            stream.take()
    if last_words:
        steps.append(RowCall(stream.span_from(start), None, None, numbers[0] if numbers else 1, how_often, kind))
        return True
    if not numbers:
        return False
    first, last = numbers[0], numbers[-1]
    if len(numbers) > 2 and not spread and numbers != list(range(first, last + 1)):
        return False
    steps.append(RowCall(stream.span_from(start), first, last, times=how_often, kind=kind, part=part))
    _call_tail(stream)
    return True


def _call_tail(stream: Stream) -> None:
    """Passes ", keeping to Color Sequence", "changing to B in last st" after a row call."""
    start = stream.at
    stream.skip(",")
    if (
        stream.word("keeping", "changing", "alternating", "continuing")
        or stream.kind() == "in"
        and any(stream.word("colors", "colours", "color", "colour", "sequence", ahead=ahead) for ahead in range(1, 6))
    ):
        while not stream.done and stream.kind() not in (".", ";", *OPENERS):
            stream.take()
        return
    stream.at = start


__all__ = [
    "Folded",
    "Mark",
    "again",
    "fold_loose",
    "fold_pair",
    "omit",
    "pair",
    "places",
    "repeat_clause",
    "row_call",
    "times",
]
