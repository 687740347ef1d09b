"""Reads rows worked at intervals, one sort after the other: "every other row 3 times, then every 4th row 2 (3, 4) times"."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.amount import ONE, Amount
from lint.reading.repeating.times import said_in_all
from lint.reading.repeating.times import times as read_times
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.source import Span
from lint.tree import Remark, RowCall, Step, Times, TimesKind

FOLLOWS = ("ending", "turn", "no_turn", "fasten_off", "join", "no_fasten", "chain")
_SHAPES = ("increase", "decrease")
_NAMES = (*_SHAPES, "word")
_MOST_NAME = 3  # words of a row's name
_GO_ON = ("continue", "cont", "continuing", "keep", "keeping", "proceed")
_EVEN = tuple(
    f"{verb}{how}"
    for verb in ("", "work ", "cont ", "continue ")
    for how in ("even", "straight", "in patt", "in pat", "in pattern", "as set", "as established")
) + ("rows even", "rounds even", "rnds even")
_PATTERN = ("pattern", "patt", "pat", "established", "set", "as", "even")


@dataclass(frozen=True, slots=True)
class Rhythm:
    """One row in `step`, so often, or until so many stitches are there."""

    step: Amount
    times: Times | None
    until: Amount | None
    in_all: bool = False  # "3 times in total": a row that is named and has just been worked is the first

    def call(self, span: Span, **called: object) -> RowCall:
        """The rows: those between them are not told, and are worked even."""
        how = {
            "times": self.times,
            "until": self.until,
            "apart": rows_between(self.step),
            "every": self.step if self.step.lone is None else None,
            "times_in_all": self.in_all,
        }
        return RowCall(span, None, None, **how, **called)


def rhythms(stream: Stream) -> list[Rhythm] | None:
    """Takes "on every 4th row 3 times (more), then every 6th row twice", to the sentence's end; None and nothing taken for else."""
    start, found = stream.at, []
    while not found or not over(stream):
        if found:
            mark = stream.at
            stream.skip(",", "and", "then")
            stream.take() if stream.word("then") else None
            if stream.at == mark:
                break
        told = _one(stream)
        if told is None or found and found[-1].until is not None:
            found = []
            break
        if found and told.times is not None:  # the rows of the first sort may count the row named, these can't
            told = replace(told, times=replace(told.times, kind=TimesKind.MORE), in_all=False)
        found.append(told)
    if not found or not over(stream):
        stream.at = start
        return None
    return found


def over(stream: Stream) -> bool:
    """Whether the rows at intervals end here: the sentence does, or goes on ", then work even"."""
    ahead = 0
    while stream.kind(ahead) in (",", "and", "then"):
        ahead += 1
    even = stream.word("work even", "work straight", "work without shaping", ahead=ahead)
    more = stream.kind(ahead) == "make" and stream.kind(ahead + 1) == "number" and stream.peek(ahead + 2).lower in _EVEN
    return ends(stream) or ahead > 0 and (even or more)


def _one(stream: Stream) -> Rhythm | None:
    begun = stream.at
    stream.skip("in", "on", "of", "at", "over")
    stream.take() if stream.word("on", "work") else None
    if stream.kind() == "next" and stream.kind(1) in ("row", "round"):
        stream.at += 2  # "on next row, then on every 4th row 3 times"
        return Rhythm(ONE, Times(stream.span_from(begun), TimesKind.MORE, ONE), None)
    step = interval(stream)
    often = how_often(stream) if step is not None else None
    if step is None or often is None:
        return None
    number, until = often
    in_all = said_in_all(stream, number)
    if number is not None and number.kind is TimesKind.IN_ALL and not in_all:
        number = replace(number, kind=TimesKind.UNCLEAR)  # with the row that is named, or without
    return Rhythm(step, number, until, in_all)


def named_row_worked(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work a dec row every 4th row 3 times", "Work Dec row": the row named by its label, as in "Rep Dec row every 4th row"."""
    stream.take()
    stream.skip("the")
    words = stream.at
    while stream.kind() in _NAMES and stream.at - words < _MOST_NAME:
        stream.take()
    if stream.at > words and stream.kind() in ("row", "round"):
        kind = stream.take().kind
        name = stream.words(words, stream.at)
        if (told := rhythms(stream)) is not None:
            span = stream.span_from(start)
            steps += [one.call(span, kind=kind, name=name) for one in told]
            return True
        shaped = any(
            item.kind in _SHAPES for item in stream.lexemes[words : stream.at]
        )  # "work eyelet row" may be told
        colon_before_figures(stream)
        how_often = None if ends(stream) else read_times(stream)  # "Work dec row 3 times in total", "work Dec row"
        if shaped and ends(stream) and (how_often is None or how_often.kind is not TimesKind.FILL):
            in_all = said_in_all(stream, how_often)
            steps.append(
                RowCall(stream.span_from(start), None, None, times=how_often, kind=kind, name=name, times_in_all=in_all)
            )
            return True
    stream.at = start
    return False


def going_on(stream: Stream, steps: list[Step], start: int) -> bool:
    """The "Cont in sc," "Work even," before rows at intervals: only says what lies between them."""
    if steps or start:
        return False
    end = stream.next_of(",", ";", ".", "end", *OPENERS)
    words, behind = stream.lexemes[start:end], stream.lexemes[end + 1 : end + 2]
    opens = words[0].lower in _GO_ON or words[0].kind in ("make", "open_work")
    told = all(item.kind in ("in", "stitch", "make") or item.lower in (*_GO_ON, *_PATTERN, *_EVEN) for item in words)
    if not opens or not told or stream.kind(end - stream.at) != "," or not behind:
        return False
    shaping = behind[0].lower in ("increasing", "decreasing")
    if not shaping and behind[0].kind not in ("repeat", "make", "increase", "decrease"):
        return False
    rest = stream.lexemes[end : stream.sentence_end(end + 1, ".", ";")]
    every = [at for at, item in enumerate(rest) if item.kind == "each"]
    often = any(item.kind in ("times", "to") or item.lower in ("once", "twice") for item in rest)
    if not often or not any(item.kind in ("row", "round") for at in every for item in rest[at : at + 4]):
        return False
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


def every_so_many(stream: Stream) -> int | None:
    """Takes "every row", "every 4th row", as `interval` does, where that is one for all sizes."""
    start = stream.at
    step = interval(stream)
    if step is None or step.lone is None:
        stream.at = start
        return None
    return step.lone


def rows_between(step: Amount) -> int:
    """Of how many rows one is shaped, 0 where each is; of a list over the sizes the most."""
    most = max(number or 0 for number in step.values)
    return most if most > 1 else 0


def interval(stream: Stream, following: bool = False) -> Amount | None:
    """Takes "every row", "every other row", "every foll alt row", "every 4th (4th, 6th) row", "every 4 rows": one row in how many.

    `following`: "5th and foll 4th rows" says the same without "every".
    """
    start = stream.at
    in_turn = stream.word("alternate", "alternating", "alt") or stream.kind() == "alternate"
    if in_turn and (stream.kind(-1) == "in" or stream.word("on", ahead=-1)) and stream.kind(1) in ("row", "round"):
        stream.at += 2  # "on alt rows"
        return Amount.of(2)
    if stream.take_if("each") is None and not (following and stream.word("following", "foll")):
        return None
    step = ONE
    while stream.word("following", "foll", "next"):
        stream.take()
    if stream.word("other", "alternate", "alt", "second") or stream.kind() == "alternate":
        stream.take()
        step = Amount.of(2)
    elif stream.kind() in ("ordinal", "ordinals", "number"):
        step = stream.take().quantity or Amount.of(0)
    if stream.word("following", "foll"):
        stream.take()
    if stream.kind() in ("right_side", "wrong_side") and stream.kind(1) == "row":
        stream.take()
        step = step.plus(step)  # "every RS row", "every other RS row"
    if stream.take_if("row", "round") and all(1 <= (number or 0) <= 40 for number in step.values):
        return step
    stream.at = start
    return None


def how_often(stream: Stream) -> tuple[Times | None, Amount | None] | None:
    """Takes "3 times (more)", "until 6 sts remain": how often, or how many stitches end it."""
    start = stream.at
    stream.take_if(",")
    stream.take_if("for")
    if stream.word("until", "till", "to"):
        stream.take()
        while stream.word("there", "are", "you", "have", "a", "total", "of") or stream.kind() == "total":
            stream.take()
        number = stream.amount()
        if number is not None and stream.take_if("any_stitch", "stitch"):
            while stream.kind() == "remaining" or stream.word("remain", "remains", "left", "are", "in", "total"):
                stream.take()
            return None, number
    else:
        often = read_times(stream, after_bracket=True)
        if often is not None and often.number is not None and often.kind is not TimesKind.FILL:
            return often, None
    stream.at = start
    return None


def colon_before_figures(stream: Stream) -> None:
    """Takes the colon of "Work the dec row: for S once more, for M twice more": a row called by its name, and how often."""
    if stream.kind() == ":" and stream.kind(1) == "number" and stream.kind(2) in ("times", "more"):
        stream.take()


def ends(stream: Stream) -> bool:
    """Whether the sentence ends here, or goes on to a count, a turn, or fastening off."""
    if stream.kind() == "," and stream.kind(1) in FOLLOWS:
        return True
    return stream.done or stream.kind() in (".", ";", "dash", "=", *OPENERS, *CLOSERS)


__all__ = [
    "FOLLOWS",
    "Rhythm",
    "ends",
    "every_so_many",
    "going_on",
    "how_often",
    "interval",
    "named_row_worked",
    "over",
    "rhythms",
    "rows_between",
]
