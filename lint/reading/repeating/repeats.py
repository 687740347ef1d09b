"""Reads repeats by their marks, and folds starred passages into Repeat steps."""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.place import Limit, LimitKind, Which
from lint.reading.repeating.endingatmark import ending_at_mark
from lint.reading.repeating.marks import Folded, Mark, Recalled, is_mark
from lint.reading.repeating.namedcalls import lettered_row, named_row_call
from lint.reading.repeating.rowcalls import names_rows, row_call
from lint.reading.repeating.times import bare_passes, counts_passes, times
from lint.reading.repeating.unmarked import begun, period
from lint.reading.words.borrowing import Borrowed, other_row
from lint.reading.words.lists import list_only
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.reading.words.untilmade import until_done, until_made
from lint.source import Span
from lint.tree import Covers, Evenly, Group, Passage, Repeat, Skip, Step, Times, TimesKind, Unread, Work


def pair(steps: list[Step]) -> bool:
    """Whether the last step is a mark that closes an earlier one of the same sign."""
    return (
        bool(steps)
        and isinstance(steps[-1], Mark)
        and any(isinstance(step, Mark) and step.sign == steps[-1].sign for step in steps[:-1])
    )


def open_star(steps: list[Step]) -> bool:
    """Whether a star stands among the steps that no repeat has folded yet."""
    return any(isinstance(step, Mark) for step in steps)


def fold_pair(steps: list[Step], how_often: Times, end: Span) -> None:
    """Fold "*…*" before a number of times."""
    sign = steps[-1].sign
    opened = max(i for i, step in enumerate(steps[:-1]) if isinstance(step, Mark) and step.sign == sign)
    body, marks = _unmarked(steps[opened + 1 : -1])
    span = steps[opened].span.to(end)
    stop = marks[-1][1] if marks else None
    steps[opened:] = [Folded(span, body, how_often, sign=sign, stop_sign=stop, marks=marks)]


def _unmarked(steps: list[Step]) -> tuple[tuple[Step, ...], tuple[tuple[str, int], ...]]:
    """Steps without the marks among them, and each mark with the index of the step it stood before."""
    body: list[Step] = []
    marks: list[tuple[str, int]] = []
    for step in steps:
        if isinstance(step, Mark):
            marks.append((step.sign, len(body)))
        else:
            body.append(step)
    return tuple(body), tuple(marks)


def passage(stream: Stream, steps: list[Step], start: int) -> bool:
    """A passage that is called for without "repeat": "work *-* 6 times", "work from * to end as Row 1"."""
    return _between_marks(stream, steps, start) or stream.kind() != "word" and _of_row(stream, steps, start)


def _of_row(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "work from * to end as Row 1", "as Row 1 from *": a passage whose mark stands in another row."""
    source = other_row(stream)
    if source is None:
        stream.take()
    stream.skip(",")
    ahead = 2 if stream.kind(1) in ("first", "the") else 1
    opens = stream.kind() == "from" and stream.kind(ahead) == "star" and not open_star(steps)
    if opens and repeat_clause(stream, steps, start, source) and isinstance(steps[-1], Borrowed):
        return True
    stream.at = start
    return False


def _between_marks(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "…*, work *-* 6 times in all", "do * to * twice": a passage that is told by its marks alone, without "repeat"."""
    kinds = [stream.kind(ahead) for ahead in range(1, 4)]
    pair_named = kinds[0] == kinds[2] == "star" and kinds[1] in ("dash", "to")
    return pair_named and open_star(steps) and repeat_clause(stream, steps, start)


def repeat_clause(stream: Stream, steps: list[Step], start: int, source: tuple[int, str | None] | None = None) -> bool:
    """ "rep from * …", "rep * to * …", "rep between …", "Rep Rows 2-5 …"; `source`: the row in which the mark stands."""
    stream.take()
    if lettered_row(stream) and not open_star(steps):
        stream.at = start
        return named_row_call(stream, steps, start)
    if names_rows(stream):
        stream.at = start
        if row_call(stream, steps, start):
            return True
        stream.at = start + 1  # "Rep the rib row 4 times more": named, and not by a number
    if stream.kind() in ("increase", "decrease", "word", "the") and not open_star(steps):
        stream.at = start
        if named_row_call(stream, steps, start):
            return True
        stream.at = start + 1
    early = _told_before_mark(stream)
    stream.skip("from", "between", "the", "first", "all", "instructions", "then")
    this = stream.word("this", "these", "that") and (
        stream.kind(1) in ("number", "around", "across", "to") or stream.word("sequence", "pattern", "steps", ahead=1)
    )
    if this:
        stream.take()  # "repeat this 6 times"
    while stream.word("directions", "pattern", "sequence", "steps"):
        stream.take()
    if stream.kind(1) == "between" and stream.word("instructions", "part", "section", "bit", "everything"):
        stream.take()
    if stream.kind() == "in" and stream.word("bracket", "brackets", ahead=2 if stream.kind(1) == "the" else 1):
        stream.skip("in", "the")
        stream.take()  # "the steps in the brackets"
    stream.skip("from", "between", "first", "the")
    if (stream.kind() == "beginning" or stream.word("start")) and not open_star(steps):
        stream.take()  # "repeat from beg of rnd 5 more times"
        stream.skip("of", "the", "row", "round")
    named = stream.word("star", "asterisk") and stream.kind(-1) == "the" and open_star(steps)  # "repeat from the star"
    both = stream.word("stars", "asterisks") and stream.kind(-1) in ("between", "the") and pair(steps)
    if not is_mark(stream) and not named and not both:
        if stream.kind() in OPENERS and stream.kind(1) in CLOSERS:
            stream.at += 2
        how_often = times(stream) or (bare_passes(stream) if open_star(steps) else None)
        if steps and isinstance(steps[-1], Repeat) and how_often is None:
            return False
        if pair(steps):
            fold_pair(
                steps,
                how_often or Times(stream.span_from(start), TimesKind.FILL, limit=Limit(LimitKind.END)),
                stream.span_from(start),
            )
            return True
        ends = stream.kind() in (".", ";", "end", "|", "dash", "=", *OPENERS) and stream.kind(-1) == "repeat"
        if how_often is None and ends and (open_star(steps) or list_only(steps)):  # "*1 dc, 2 dc in next; repeat"
            how_often = Times(stream.span_from(start), TimesKind.FILL, limit=Limit(LimitKind.END))
        if open_star(steps) and how_often is not None:  # "*sc, sc, dec; repeat around"
            last = next(step for step in reversed(steps) if isinstance(step, Mark))
            return _fold(steps, last.sign, None, how_often, stream.span_from(start)) is not None
        if how_often is None:
            return False
        sentence = last_sentence(stream, steps, start) if this else 0
        return fold_row(steps, how_often, stream.span_from(start), sentence=sentence)
    opening = stream.take()
    sign, to_sign = "*" if named else opening.value, None
    if both:  # "repeat between the stars all the way around"
        sign = to_sign = steps[-1].sign
    if stream.word("s", ahead=1) and stream.word("'", "’"):
        stream.take()
    if stream.word("s") and stream.peek().glued:
        stream.take()  # "between *s", "between †'s"
        to_sign = sign
    while stream.word("pattern") and stream.peek().glued:
        stream.take()  # "repeat *pattern"
    before = stream.at
    stream.skip("dash", "and", "last")
    if stream.take_if("to"):
        stream.skip("next", "ordinal", "second", "last", "first")
    if is_mark(stream) and (stream.at > before or stream.kind(-1) in ("star", "+")):
        to_sign = stream.take().value
    else:
        stream.at = before
    if sign == "**" and to_sign is None and not any(isinstance(step, Mark) and step.sign == "**" for step in steps):
        sign, to_sign = "*", "*"
    stream.skip("the", "for")
    if stream.kind() == "evenly" and stream.kind(1) in ("around", "across"):
        stream.take()  # "rep from * evenly around"
    if stream.kind() == "make" and stream.kind(1) == "number" and stream.kind(2) == "times":
        stream.take()  # "from * work 3 times in total"
    for_total = stream.word("a") and stream.kind(1) == "total"
    if for_total:
        stream.take()
    # "end" after a comma begins the ending, not the repeat
    source = source or other_row(stream)  # "rep from * of Row 1 to end"
    opened = max((i for i, step in enumerate(steps) if isinstance(step, Mark) and step.sign == sign), default=None)
    said = until_made(stream, steps, opened) if opened is not None and opened < len(steps) - 1 else None
    said = said or until_done(stream) or times(stream) or bare_passes(stream) or early
    how_often = said or Times(stream.span_from(start), TimesKind.FILL, limit=Limit(LimitKind.END))
    if said is not None and stream.kind(-1) in ("around", "across"):
        stream.take_if("evenly")
    source = source or other_row(stream)  # "rep from * to end as Row 1"
    on = stream.kind() in (",", ";") and stream.work_at(stream.at + 1)
    ends = [step for step in steps[(opened or 0) + 1 :] if isinstance(step, Mark) and step.sign == to_sign != sign]
    if len(ends) > 1:
        why = f"more than one {to_sign} stands before this repeat"
        steps.append(Unread(stream.span_from(start), stream.words(start, stream.at), why))
        return True
    step = _fold(steps, sign, to_sign, how_often, stream.span_from(start), said is None and on)
    if step is None:
        span, words = stream.span_from(start), stream.words(start, stream.at)
        if source is None:
            steps.append(Unread(span, words, f"no {sign} stands before this repeat", sign))
        else:
            if to_sign and not said and stream.lexemes[start].kind == "make":  # "work from * to * of Row 3": once
                how_often = Times(span, TimesKind.IN_ALL, ONE)
            why = f"the row that it names is not there, or has no one passage from {sign}"
            steps.append(Borrowed(span, words, why, None, (), sign, how_often, to_sign, *source))
    ending_at_mark(stream, steps)
    return True


def _told_before_mark(stream: Stream) -> Times | None:
    """Takes the "around" of "repeat around from *", the "5 times" of "rep 5 times from *"."""
    start = stream.at
    found = times(stream) if not is_mark(stream) and stream.kind() != "from" else None
    if found is not None and stream.kind() == "from" and stream.kind(2 if stream.kind(1) == "the" else 1) == "star":
        return found
    stream.at = start
    return None


def last_sentence(stream: Stream, steps: list[Step], start: int) -> int:
    """How many of the steps make up the sentence that "repeat this" points at; 0 where the row has no other work."""
    if not steps:
        return 0
    stops = [item.start for item in stream.lexemes[:start] if item.kind == "." and item.start < steps[-1].span.start]
    said = [step for step in steps if stops and step.span.start > stops[-1]]
    works = [any(isinstance(step, (Work, Group)) for step in part) for part in (said, steps[: len(steps) - len(said)])]
    return len(said) if all(works) else 0


_WORKED = (Work, Group, Skip, Repeat, Evenly)


def fold_row(steps: list[Step], how_often: Times, end: Span, covers: Covers = Covers.ALL, sentence: int = 0) -> bool:
    """ "sc 1, inc 1, repeat around", with no star: the row's words so far, but for its beginning chain.

    `sentence`: of "repeat this", which rather means the last so many steps, and may mean all.
    """
    before = begun(steps)
    first = next((i for i, s in enumerate(steps) if i >= before and isinstance(s, _WORKED)), None)
    told = all(isinstance(s, Repeat) and s.times.kind is TimesKind.IN_ALL for s in steps[:-1] if isinstance(s, Repeat))
    if first is None or any(isinstance(s, (Mark, Unread)) for s in steps) or not told or isinstance(steps[-1], Repeat):
        return False  # "(dc, ch 1) twice, 5 dc in corner; rep around" is of the whole list
    body = tuple(steps[first:])
    places = [place for s in body if isinstance(s, (Work, Group, Skip)) for place in s.places]
    if any(place.which in (Which.SAME, Which.FIRST, Which.EACH, Which.FROM_HOOK) for place in places):
        return False  # where the repeat begins is not said
    if how_often.kind is TimesKind.FILL:
        body = period(body)
    open_ = Covers.RATHER_LAST if sentence else covers if len(body) > 1 else Covers.ALL
    steps[first:] = [Repeat(body[0].span.to(end), body, how_often, covers=open_, tail=sentence or 1)]
    return True


def _fold(
    steps: list[Step], sign: str, to_sign: str | None, how_often: Times, span: Span, perhaps: bool = False
) -> Step | None:
    """Fold the steps since the mark into a Repeat in place; None if the mark is not there.

    `perhaps`: a passage that is called for between other work is worked once more, or as often as fits: the row must tell.
    """
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
    within, marks_within = _unmarked(steps[opened + 1 : closed])
    body, stop = list(within), marks_within[-1][1] if marks_within else None
    if to_sign and to_sign != sign and stop is not None:
        after = body[stop:]
        body, tail = body[:stop], after + tail
        if after:
            # "*A**, B; rep from * to ** once": A, B, A
            passage = Recalled(span, tuple(body), sign, tuple(body))
            steps[opened:] = [*body, *after, passage]
            return passage
        stop = None
    if any(isinstance(step, (Work, Group, Repeat)) for step in tail):
        # "*A*, B; rep from * to * once": A, B, A
        number = how_often.number.lone if how_often.number is not None else None
        fixed: Step = Recalled(span, tuple(body) * min(number or 1, 999), sign, tuple(body))
        if not number:
            covers = Covers.PERHAPS if perhaps else Covers.ALL
            fixed = Folded(span, tuple(body), how_often, covers=covers, sign=sign)
        steps[opened:] = [*body, *tail, fixed]
        return fixed
    whole = steps[opened].span.to(span)
    folded = Folded(whole, tuple(body), how_often, sign=sign, stop_sign=stop, marks=marks_within)
    steps[opened:] = [folded, *tail]
    return folded


def _passage(steps: list[Step], sign: str, to_sign: str | None, how_often: Times, span: Span) -> Step | None:
    """ "then from * to ** once" after the passage has been folded."""
    for step in reversed(steps):
        items = _marked(step, sign, to_sign) if isinstance(step, Folded) else None
        items = step.one if isinstance(step, Recalled) and step.sign == sign else items
        if items is not None:
            number = how_often.number.lone if how_often.number else 1
            if how_often.kind is TimesKind.FILL and how_often.number is None:
                number = 1
            again_ = Passage(span, tuple(items) * max(1, min(number or 1, 999)))
            steps.append(again_)
            return again_
    return None


def _marked(step: Folded, sign: str, to_sign: str | None) -> tuple[Step, ...] | None:
    """The steps of a folded repeat from one mark to another; None where these marks are not in it."""
    if step.sign == sign:
        return step.items[: step.stop_sign] if to_sign and to_sign != sign and step.stop_sign else step.items
    first = next((at for mark, at in step.marks if mark == sign), None)
    ends = [at for mark, at in step.marks if mark == (to_sign or sign) and first is not None and at > first]
    return step.items[first : ends[-1]] if ends else None


def again(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "(and|then) from * to ** once|again"."""
    stream.take()
    stream.skip("first", "the")
    if not is_mark(stream):
        return False
    sign = stream.take().value
    to_sign = None
    if stream.take_if("to"):
        stream.skip("first", "next")
        if not is_mark(stream):
            return False
        to_sign = stream.take().value
    how_often = times(stream) or Times(stream.span_from(start), TimesKind.IN_ALL, Amount.of(1))
    stream.skip("more")
    return _passage(steps, sign, to_sign, how_often, stream.span_from(start)) is not None


def done_so_often(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "4 sc, dec. Do this 6 times.": the passes are counted from the first, unlike those of "repeat this 6 times"."""
    if open_star(steps) or not stream.word("this", "these", "that", ahead=1):
        return False
    stream.at += 2
    how_often = times(stream, after_bracket=True) if counts_passes(stream) else None
    if how_often is None or stream.kind() not in (*SIGNS, "end", "dash", "="):
        return False
    return fold_row(steps, how_often, stream.span_from(start), sentence=last_sentence(stream, steps, start))
