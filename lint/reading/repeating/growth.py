"""Reads how rows that are worked again grow: "increasing one tile in every row", "with one more group along each side"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.expression import expression
from lint.growth import Grows, Growth
from lint.lexicon import Lexeme
from lint.reading.places.countunits import singular
from lint.reading.places.work import GROUPS
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
_MORE = {"more": 1, "extra": 1, "additional": 1, "fewer": -1, "less": -1}


_MOST_WORDS = 10
_GOES_ON = expression(
    r"(?:continue|continuing|cont|keep|carry on|proceed|work)(?: on| to| with)*+(?: (?:inc|dec|increas(?:e|es|ing)|decreas(?:e|es|ing)|working))?"
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
_AS_BEFORE = ("set", "established", "before", "usual")
_SHAPES = expression(r"(?i)\b(?:inc|dec)(?:reas\w*)?\b")


def growth(stream: Stream) -> Growth | None:
    """Takes ", making one tile fewer in every row": what each row has more or fewer of; None where nothing is told so."""
    start = stream.at
    stream.take_if(",")
    if stream.word("but"):
        stream.take()  # "As Row 10, but with one tile less in each row"
    told = stream.at
    found = _growth(stream)
    if found is None:
        stream.at = told
        found = _between(stream)
    if found is None or stream.kind() not in (*SIGNS, "end", *OPENERS):
        stream.at = start
        return None
    return found


def _growth(stream: Stream) -> Growth | None:
    sign = 1 if stream.word(*_UP) else -1 if stream.word(*_DOWN) else 0
    if not sign and stream.kind() not in ("make", "with"):
        return None
    stream.take()
    stream.skip("by")
    number = stream.amount()
    before = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(before)
    noun = stream.peek()
    group = noun.kind in ("group_word", "special") or noun.lower in GROUPS
    stitches = {"any_stitch": "stitches", "stitch": f"kind:{noun.value}"}.get(noun.kind)
    if number is None or number.lone is None or not (group or stitches):
        return None
    stream.take()
    behind = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(behind)
    said = before or behind
    if before and behind or sign and said and said != sign or not (sign or said):
        return None
    side = _each_side(stream)
    stream.take_if("in", "at", "for")
    if stream.take_if("each") is None or stream.take_if("row", "round", "times") is None:
        return None
    if stitches and (side or not sign):
        return None  # "with 2 sc more in each row" may be work
    unit = f"special:{singular(noun.lower)}" if group else stitches
    return Growth((sign or said) * number.lone, unit, Grows.EACH_SIDE if side else Grows.ROW)


def _between(stream: Stream) -> Growth | None:
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
        return None
    unit = "stitches" if sort.kind == "any_stitch" else f"kind:{sort.value}"
    behind = _MORE.get(stream.peek().lower, 0)
    stream.at += bool(behind)
    if stream.take_if("between") is None and not (stream.word("before", "after") and stream.take()):
        return None
    stream.skip("the", "each", "all")
    shaping = stream.take_if("increase", "decrease")
    if shaping is None or number is None or number.lone is None or before and behind:
        return None
    stream.take_if("in", "for") or stream.word("on") and stream.take()
    said = stream.take_if("each") is not None and stream.take_if("row", "round", "times") is not None
    each = each or said or stream.word("each time") and bool(stream.take())
    sign = before or behind or int(added)
    return Growth((sign or 1) * number.lone, unit, Grows.BETWEEN if sign else Grows.BETWEEN_SET, each)


def growing_on(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Continue increasing in this way, working 1 more sc between incs each rnd": the row just worked, with longer runs."""
    end = stream.next_of(",", ";", ".", start=start)
    if end - start > _MOST_WORDS or stream.kind(end - start) not in (",", ";"):
        return False
    if _GOES_ON.fullmatch(" ".join(item.lower for item in stream.lexemes[start:end])) is None:
        return False
    stream.at = end + 1
    found = _between(stream)
    if found is None or found.where is not Grows.BETWEEN or stream.kind() not in (*SIGNS, "end", *OPENERS):
        stream.at = start
        return False
    steps.append(RowCall(stream.span_from(start), None, None, growth=replace(found, each=True)))
    return True


def _each_side(stream: Stream) -> bool:
    """Takes "along each side", "on every side", "per side"."""
    start = stream.at
    led = stream.take_if("across", "in", "at", "for") or stream.word("along", "per") and stream.take()
    each = stream.take_if("each") or led and led.lower == "per"
    if led and each and stream.take_if("side"):
        return True
    stream.at = start
    return False
