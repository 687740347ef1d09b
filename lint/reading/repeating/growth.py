"""Reads how rows that are worked again grow: "increasing one tile in every row", "with one more group along each side"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.expression import expression
from lint.growth import Grows, Growth
from lint.lexicon import Lexeme
from lint.reading.places import countunits
from lint.reading.places.countunits import singular
from lint.reading.places.work import GROUPS
from lint.reading.repeating.untilcounts import until_count
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Group, OpenWork, Remark, Repeat, RowCall, Shaping, Step, Unread, UseYarn, Work

_UP = ("increasing", "adding", "gaining")
_DOWN = ("decreasing", "losing")
_LEADS = (
    "each time",
    "time",
    "always",
    "but",
    "having",
    "leaving",
    "adding",
    "that",
    "there",
    "is",
    "are",
    "working",
    "now",
)
_ADDS = ("adds", "gains", "grows", "increases")
_LOSES = ("loses", "shrinks", "decreases")
_BEFORE = ("before", "previous", "preceding")
_MORE = {"more": 1, "extra": 1, "additional": 1, "fewer": -1, "less": -1}

_PARTS = ("pineapple", "point", "section", "wedge", "leaf", "fan", "segment", "triangle")  # what narrows as it grows

_BRACKETED = (
    "bracket",
    "bracketed",
    "brackets",
    "parentheses",
    "instructions",
    "section",
    "part",
    "words",
    "repeats",
    "inside",
    "within",
)

_MOST_WORDS = 10
_GOES_ON = expression(
    r"(?:(?:continue|continuing|cont|keep|carry on|proceed|work)(?: on| to| with)*+(?: (?:inc|dec|increas(?:e|es|ing)|decreas(?:e|es|ing)|working))?"
    r"|(?:inc|dec|increase|decrease))"
    r"(?: (?:in|as|like|with|this|that|the same|the|same|manner|way|fashion|pattern|patt|established|est|set|before))++"
)


def shaped_calls(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps; "Rep Row 2, inc 1 st at each end" shapes each of the rows worked again, where no other rows are named.

    Which rows "inc at each end of every other row" shapes is not told by any of them: the call is Unread.  Other work
    behind a call, "Rep Row 2, 2 sc in last st", is of one row; of which, where several are called, is not said.
    """
    found: list[Step] = []
    for step in steps:
        at = next((i for i in range(len(found) - 1, -1, -1) if not isinstance(found[i], _IDLE)), None)
        call = found[at] if at is not None and isinstance(found[at], RowCall) else None
        between = (item for item in lexemes if call is not None and call.span.end <= item.start < step.span.start)
        if call is None or call.own or call.shaped or any(item.kind == "." for item in between):
            found.append(step)
            continue
        span = call.span.to(step.span)
        words = " ".join(item.text for item in lexemes if span.start <= item.start < span.end)
        if isinstance(step, Shaping) and _of_each(call, step, lexemes):
            found[at] = replace(call, shaped=step)
        elif isinstance(step, Shaping) or isinstance(step, OpenWork) and _SHAPES.search(step.words) is not None:
            found[at:] = [Unread(span, words, "which of these rows are shaped so is not known here")]
        elif isinstance(step, (Work, Group, Repeat)) and not (isinstance(step, Work) and step.stitch == "sl st"):
            of = "which of these rows has that besides is not said"
            found[at] = replace(call, beside=call.beside or Unread(span, of, of))
            found.append(step)
        else:
            found.append(step)
    return found


def _of_each(call: RowCall, shaped: Shaping, lexemes: list[Lexeme]) -> bool:
    """Whether shaping is said of every row that is called: of one row over and over, or "in each row"."""
    behind = [item for item in lexemes if item.start >= shaped.span.end]
    stop = next((i for i, item in enumerate(behind) if item.kind in (*SIGNS, "turn", *OPENERS)), len(behind))
    own = [item for item in lexemes if shaped.span.start <= item.start < shaped.span.end]
    if any(item.kind not in _EVERY_ROW and item.lower not in _AS_BEFORE for item in behind[:stop]):
        return False
    each = any(
        one.kind == "each" and other.kind in ("row", "round")
        for one, other in zip([*own, *behind[:stop]], [*own[1:], *behind[:stop]], strict=False)
    )
    return each or call.first == call.last and call.number == ONE


_IDLE = (Remark, UseYarn)
_EVERY_ROW = ("each", "row", "round", "of", "in", "the", "as")
_AS_BEFORE = ("on", "set", "established", "before", "usual")
_SHAPES = expression(r"(?i)\b(?:inc|dec)(?:reas\w*)?\b")


def growth(stream: Stream) -> tuple[Growth, ...]:
    """Takes ", making one tile fewer in every row", ". Each row adds 6 dc and 2 ch-1 sps": what each row has more or fewer
    of; nothing where that is not told so."""
    start = stream.at
    sentence = stream.kind() in (";", ".") and stream.kind(1) == "each"
    stream.take_if(",", *((";", ".") if sentence else ()))
    if stream.word("but"):
        stream.take()  # "As Row 10, but with one tile less in each row"
    told = stream.kind() == "each" and stream.kind(1) in ("row", "round")
    words = stream.at
    found = _told_of_each_row(stream) if told else _growth(stream) or _you_gain(stream, words)
    if not found:
        stream.at = words
        found = _in_each_part(stream)
    if not found:
        stream.at = words
        found = _passes_set(stream) or _between(stream)
    if not found or stream.kind() not in (*SIGNS, "end", *OPENERS):
        stream.at = start
        return ()
    return found


def _growth(stream: Stream) -> tuple[Growth, ...]:
    if stream.word("always"):
        stream.take()
    elif stream.kind() == "each" and stream.kind(1) == "times":
        stream.at += 2
    sign = 1 if stream.word(*_UP) else -1 if stream.word(*_DOWN) else 0
    led = sign or stream.kind() in ("make", "with") or stream.word("having")
    if led:
        stream.take()
    elif stream.kind() != "number" and not stream.word("a", "an"):
        return ()
    stream.skip("by")
    number = stream.amount() or (ONE if stream.word("a", "an") and stream.take() else None)
    before = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(before)
    noun = stream.peek()
    group = noun.kind in ("group_word", "special") or noun.lower in GROUPS
    stitches = {"any_stitch": "stitches", "stitch": f"kind:{noun.value}"}.get(noun.kind)
    if number is None or number.lone is None or not (group or stitches):
        return ()
    stream.take()
    behind = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(behind)
    besides = _besides(stream, sign) if sign else ()
    said = before or behind
    if before and behind or sign and said and said != sign or not (sign or said) or stitches and not led:
        return ()
    side = _each_side(stream)
    if stitches and not side and _than_before(stream):
        return (Growth((sign or said) * number.lone, stitches), *besides)
    stream.take_if("in", "at", "for")
    per = stream.word("per") and stream.take() is not None
    if not per and stream.take_if("each") is None or stream.take_if("row", "round", "times") is None:
        return ()
    if stitches and (side or not sign):
        return ()  # "with 2 sc more in each row" may be work
    unit = f"special:{singular(noun.lower)}" if group else stitches
    return (Growth((sign or said) * number.lone, unit, Grows.EACH_SIDE if side else Grows.ROW), *besides)


def _in_each_part(stream: Stream) -> tuple[Growth, ...]:
    """Takes "having 1 less ch-3 lp in each pineapple on each rnd", "working one loop fewer per pineapple"."""
    down = False
    while stream.kind() in ("with", "make") or stream.word("having", "leaving", "there", "will", "be", *_DOWN):
        down = stream.take().lower in _DOWN or down
    number = stream.amount() or (ONE if stream.word("a", "an") and stream.take() else None)
    before = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(before)
    unit = countunits.unit(stream)[0] if number is not None and number.lone is not None else None
    behind = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(behind)
    sign = before or behind or -int(down)
    if unit is None or not unit.startswith("space") or not sign or before and behind:
        return ()
    led = stream.take_if("in", "across", "at", "of") or stream.word("per", "along") and stream.take()
    each = stream.take_if("each") or led and led.lower == "per"
    if not (led and each and singular(stream.peek().lower) in _PARTS):
        return ()
    stream.take()
    timed = stream.at
    stream.take_if("in", "at", "for")
    if stream.take_if("each") is None or stream.take_if("row", "round", "times") is None:
        stream.at = timed
        stream.at += bool(stream.word("each time"))
    return (Growth(sign * number.lone, unit, Grows.EACH_PART),)


def _passes_set(stream: Stream) -> tuple[Growth, ...]:
    """Takes "working (the instructions) between brackets 8 times", "working the bracket once more on every row"."""
    start = stream.at
    if stream.take_if("make", "repeat") is None:
        return ()
    named = False
    while stream.kind() in ("the", "each", "in", "between", "repeat", "section") or stream.word(*_BRACKETED):
        named = stream.take().kind == "repeat" or stream.word(*_BRACKETED[:4], ahead=-1) or named
    number = stream.take().quantity if stream.word("once", "twice", "thrice") else stream.amount()
    if named and number is not None and (more := _times_more(stream)):
        return (Growth(more * (number.lone or 0), "passes", Grows.PASSES_MORE),)
    if named and number is not None and number.lone and stream.take_if("times"):
        if stream.word("instead"):
            stream.pass_to(*SIGNS, *OPENERS)
        return (Growth(number.lone, "passes", Grows.PASSES_SET),)
    stream.at = start
    return ()


def _times_more(stream: Stream) -> int:
    """Takes "more on every row", "time less each row" behind a figure: 1 or -1; 0 where it is not said of each row."""
    start = stream.at
    stream.take_if("times")
    sign = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(sign)
    stream.take_if("times")
    stream.take_if("in", "at", "for")
    if sign and stream.take_if("each") is not None and stream.take_if("row", "round", "times") is not None:
        return sign
    stream.at = start
    return 0


def _between(stream: Stream) -> tuple[Growth, ...]:
    """Takes "working one more sc between incs each rnd", "with 2 sc between increases": how long the runs are."""
    words = []
    while stream.word(*_LEADS) or stream.kind() in ("with", "make", "each"):
        words.append(stream.take().lower)
    each = any("each" in word for word in words)
    added = "adding" in words
    number = stream.amount()
    if number is None and stream.word("an", "a"):
        stream.take()
        number = ONE
    before = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(before)
    sort = stream.take_if("stitch", "any_stitch")
    if sort is None:
        return ()
    unit = "stitches" if sort.kind == "any_stitch" else f"kind:{sort.value}"
    behind = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(behind)
    if stream.take_if("between") is None and not (stream.word("before", "after") and stream.take()):
        return ()
    stream.skip("the", "each", "all")
    shaping = stream.take_if("increase", "decrease")
    if shaping is None or number is None or number.lone is None or before and behind:
        return ()
    stream.take_if("in", "for") or stream.word("on") and stream.take()
    said = stream.take_if("each") is not None and stream.take_if("row", "round", "times") is not None
    each = each or said or stream.word("each time") and bool(stream.take())
    sign = before or behind or int(added)
    return (Growth((sign or 1) * number.lone, unit, Grows.BETWEEN if sign else Grows.BETWEEN_SET, each),)


def growing_on(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Continue increasing in this way, working 1 more sc between incs each rnd", "…, with 4 sts between incs": the row just
    worked, with longer runs, or with runs of so many."""
    end = stream.next_of(",", ";", ".", start=start)
    if end - start > _MOST_WORDS or stream.kind(end - start) not in (",", ";"):
        return False
    if _GOES_ON.fullmatch(" ".join(item.lower for item in stream.lexemes[start:end])) is None:
        return False
    stream.at = end + 1
    found = _growth(stream)
    groups = bool(found) and found[0].unit.startswith("special:")  # of stitches, how they are gained is read elsewhere
    if groups and stream.kind() in (*SIGNS, "end", *OPENERS):
        steps.append(RowCall(stream.span_from(start), None, None, growth=found))
        return True
    stream.at = end + 1
    found = _between(stream)
    every = found[:1] and found[0].where is Grows.BETWEEN_SET and found[0].each  # of one length in rows that grow?
    each = bool(found) and found[0].where is Grows.BETWEEN
    until, unit = _until(stream) if each else (None, "stitches")
    counted = stream.kind() == ":" and stream.kind(1) == "number"
    if not found or every or not counted and stream.kind() not in (*SIGNS, "=", "end", *OPENERS):
        stream.at = start
        return False
    grown = (replace(found[0], each=each),)
    steps.append(RowCall(stream.span_from(start), None, None, until=until, until_unit=unit, growth=grown))
    return True


def _until(stream: Stream) -> tuple[Amount | None, str]:
    """Takes ", until 12 sts remain": how many of what end rows that grow on; nothing taken for a length."""
    start = stream.at
    stream.take_if(",")
    until, open_ended, unit = until_count(stream, None) if stream.word("until", "till") else (None, False, "stitches")
    if until is None or open_ended:
        stream.at = start
        return None, "stitches"
    return until, unit


def _told_of_each_row(stream: Stream) -> tuple[Growth, ...]:
    """ "Each row adds 6 dc and 2 ch-1 sps", "every round grows by 6 sts"."""
    stream.take()
    if stream.take_if("row", "round") is None:
        return ()
    verb = stream.take()
    up, down = verb.kind == "increase" or verb.lower in _ADDS, verb.kind == "decrease" or verb.lower in _LOSES
    stream.skip("by")
    first = _so_many(stream, 1 if up else -1) if up or down else None
    return (first, *_besides(stream, 1 if up else -1)) if first is not None else ()


def _you_gain(stream: Stream, start: int) -> tuple[Growth, ...]:
    """ "and you'll gain 6 dc every row", "so you add 4 sc in each round"."""
    stream.at = start
    stream.take() if stream.kind() in ("and", "then") or stream.word("so") else None
    if not (stream.word("you", "you'll", "you’ll") and stream.take()):
        return ()
    stream.take() if stream.word("will", "should") else None
    sign = 1 if stream.word("gain", "add") else -1 if stream.word("lose") else 0
    found = _so_many(stream, sign) if sign and stream.take() else None
    stream.take_if("in", "at", "for", "with")
    each = found is not None and stream.take_if("each") is not None and stream.take_if("row", "round", "times")
    return (found,) if each else ()


def _besides(stream: Stream, sign: int) -> tuple[Growth, ...]:
    """Takes "and 2 ch-1 sps", ", 2 ch-1 sps": what else there is more of."""
    found: list[Growth] = []
    while stream.kind() in (",", "and", "+") and stream.kind(1) == "number":
        start = stream.at
        stream.take()
        item = _so_many(stream, sign)
        if item is None:
            stream.at = start
            break
        found.append(item)
    return tuple(found)


def _so_many(stream: Stream, sign: int) -> Growth | None:
    """Takes "6 dc", "2 ch-1 sps", "2 more groups"."""
    number = stream.amount()
    stream.take() if stream.peek().lower in _MORE and _MORE[stream.peek().lower] == sign else None
    unit = countunits.unit(stream)[0] if number is not None and number.lone is not None else None
    return Growth(sign * number.lone, unit) if unit is not None and unit != "unknown" else None


def _than_before(stream: Stream) -> bool:
    """Takes "than (in) the row before", "than before", "than the previous round"."""
    start = stream.at
    if stream.word("than"):
        stream.take()
        stream.skip("in", "the")
        before = stream.word(*_BEFORE) or stream.kind() == "last"
        stream.at += before
        row = stream.take_if("row", "round") is not None
        if before or row and stream.word(*_BEFORE) and stream.take():
            return True
    stream.at = start
    return False


def _each_side(stream: Stream) -> bool:
    """Takes "along each side", "on every side", "per side"."""
    start = stream.at
    led = stream.take_if("across", "in", "at", "for") or stream.word("along", "per") and stream.take()
    each = stream.take_if("each") or led and led.lower == "per"
    if led and each and stream.take_if("side"):
        return True
    stream.at = start
    return False
