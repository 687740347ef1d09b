"""Reads a piece worked like another: "Work as for Back to end of Row 52", "Work as given for Back to armholes."."""

from __future__ import annotations

from lint.amount import Amount
from lint.expression import expression
from lint.reading.repeating.othersides import reversal
from lint.reading.repeating.rowcalls import ends_with_row
from lint.reading.words.piecewords import AGAIN
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import (
    THE_PIECE_BEFORE,
    Chain,
    FastenOff,
    JoinYarn,
    OpenWork,
    Remark,
    RowCall,
    Skip,
    Step,
    UseYarn,
)

_BEGINNING = (JoinYarn, UseYarn, Skip, Chain, Remark)  # what may stand before such a call: no stitch yet
_BEGIN = ("work", "make", "begin", "knit", "crochet")
_AS = ("as", "as for", "same as", "the same as", "like", "work same as", "work exactly as")
_FOLLOW = tuple(
    f"follow {what} for" for what in ("the instructions", "instructions", "the directions", "directions", "the pattern")
)
_FILL = ("given", "for", "the", "exactly", "described", "same")
_NOT_A_NAME = (
    "number",
    "ordinal",
    "ordinals",
    "stitch",
    "special",
    "chain",
    "row",
    "round",
    "star",
    "any_stitch",
    "next",
    "last",
)
_ENDINGS = ("no_fasten", "fasten_off", "turn", "no_turn")
_ANOTHER = expression(
    r"(?:work|make|crochet) (?:(?:a|the) (?:second|2nd|third)|another|(?:the )?other|one more) [\p{L}' -]{2,40}"
)
_TALK = ("word", "the", "ordinal", "other", "to", "as", "for", "first", "in", "same")  # no stitch, no row, no number
_MOST_WORDS = 4  # of a piece's name
_IN_LIST = ("the", "foundation", "row", "round", "number", "ordinal", "first", "and", ",", "to", "dash", "chain")
_NO_PIECE = (
    "far",
    "before",
    "usual",
    "normal",
    "above",
    "shown",
    "described",
    "always",
    "ever",
    "you",
    "soon",
    "long",
    "many",
)
_SIDES = expression(
    r"^rep(?:eat)?\s(?:this\s)?(?P<on>on|along|across|down|up)\s.*\b(?:side|edge|end)\b|\b(?:sides?|edges?|ends?)\b"
)
_COMPLETED = ("worked", "completed", "complete", "done", "finished", "completion", "end")
_DONE = ("has", "have", "been", "is", "are", "worked", "completed", "complete", "done", "finished", "made")


def piece_again(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Make a second piece the same": told of the piece just worked, or alone under the heading of that second piece."""
    if start and stream.lexemes[start - 1].kind not in (".", *CLOSERS):
        return False
    end = stream.sentence_end(start, ".", ";")
    words = stream.words(start, end)
    told = AGAIN.match(words.lower())
    if told is None and steps and isinstance(steps[-1], FastenOff) and _ANOTHER.fullmatch(words.lower()):
        if all(item.kind in _TALK for item in stream.lexemes[start + 1 : end]):
            stream.at = end  # "Fasten off. Make a second mitt."
            steps.append(Remark(stream.span_from(start)))
            return True
    over = bool(steps) and (
        isinstance(steps[-1], FastenOff) or told is not None and told["other"] and _counted(stream, start)
    )
    if told is None or steps and not (told["piece"] or over):
        return False
    alike = told.end() == len(words)
    if steps and not alike:
        return False
    stream.at = end
    span = stream.span_from(start)
    again = RowCall(span, None, None, part=THE_PIECE_BEFORE) if alike else OpenWork(span, words)
    side = _SIDES.search(words.lower())
    more = side is not None and (bool(steps) or side["on"] is not None)
    again = OpenWork(span, words) if more else again  # of this piece: rows whose number of stitches is not told
    steps.append(again if more or not steps else Remark(span))  # "the same, but with 2 rows more": not as it was
    return True


def _counted(stream: Stream, start: int) -> bool:
    """Whether the row's count stands before the sentence at `start`: "(54 sc). Repeat for the other handle"."""
    kinds = [item.kind for item in stream.lexemes[max(0, start - 6) : start] if item.kind != "."]
    bracketed = kinds[-1:] != [] and kinds[-1] in CLOSERS and "number" in kinds[-3:-1]
    return (
        bracketed
        or kinds[-2:] in (["number", "stitch"], ["number", "any_stitch"])
        and kinds[-3:-2] in ([":"], ["="], ["dash"])
    )


def piece_call(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work as for Back (to Row n, to armholes)": the rows of that piece, worked again from its beginning."""
    begun = bool(steps) and all(isinstance(step, _BEGINNING) for step in steps)
    led = (
        (".", ",", ";", "and", "then", *CLOSERS) if begun else (".", *CLOSERS)
    )  # "rejoin yarn in next st and work as …", "with B, ch 22 and work as …"
    if steps and start and stream.lexemes[start - 1].kind not in led:
        return False
    if not _begins(stream):
        stream.at = start
        return False
    name = _name(stream)
    _from_start(stream)
    rows = _rows(stream) if name else None
    begin = _from_row(stream) if name and rows is None else None
    kind, last, to_part = _end(stream) if name and begin is None else (None, None, None)
    first = None
    if rows is not None:
        kind, first, last = rows
    if last is not None:
        ends_with_row(stream)  # "…, ending with a WS row": the number has said so
    counted = stream.kind() == "dash" or stream.kind() in OPENERS
    if not name:
        stream.at = start
        return False
    behind = 2 if stream.word("but", ahead=1) else 1
    bare = stream.word("but") and stream.kind(1) in _ENDINGS
    besides = bare or stream.kind() == "," and stream.kind(behind) in _ENDINGS
    counted = counted or besides  # "as for Leg 1, but do not fasten off": as they are, and that besides
    mirrored = not besides and reversal(stream)  # its rows make as many stitches as those that they mirror
    counted = counted or mirrored
    if not counted and stream.kind() not in (".", ";", "end"):  # "as for Back, in rib": not as they are
        stream.at = stream.sentence_end(start, ".", ";")
        steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
        return True
    steps.append(RowCall(stream.span_from(start), first, last, kind=kind, part=name, to_part=to_part, begin=begin))
    if besides:
        stream.take_if(",")
        stream.take() if stream.word("but") else None
    return True


def from_foundation(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Foundation row and 1st row: As for Back.", "Work foundation chain and Rows 1-4 of Back": that piece up to the row."""
    if steps or start:
        return False
    if stream.kind() == "make":
        stream.take()
    founded, kind, listed, numbers = False, "row", stream.at, []
    while stream.kind() in _IN_LIST or stream.word("foundation", "base"):
        founded = founded or stream.kind() == "foundation" or stream.word("foundation", "base")
        kind = stream.kind() if stream.kind() in ("row", "round") else kind
        number = stream.row_number()
        numbers += [number.lone] if number is not None else []
        stream.at += number is None
    signs = {item.kind for item in stream.lexemes[listed : stream.at]}
    last = numbers[-1] if numbers else None
    from_first = last is not None and (
        len(numbers) == last
        and numbers == list(range(1, last + 1))
        or numbers == [1, last]
        and signs & {"dash", "to"}
        or numbers == [last]
        and "first" in signs
    )
    stream.take_if(":", "dash")
    stream.take_if("as", "of") if stream.kind() == "of" or stream.word(*_AS) else None
    alike = stream.kind(-1) in ("as", "of")
    while stream.word(*_FILL):
        stream.take()
    name = _name(stream) if founded and alike and from_first else ""
    if not name or stream.kind() not in (".", ";", "end"):
        stream.at = start
        return False
    steps.append(RowCall(stream.span_from(start), None, Amount.of(last), kind=kind, part=name))
    return True


def _begins(stream: Stream) -> bool:
    """Takes "Work as given for the"."""
    if stream.word(*_BEGIN):
        stream.take()
        while stream.word("another", "exactly", "piece", "one"):
            stream.take()  # "Make another piece like the back"
    if not stream.word(*_AS, *_FOLLOW):
        return False
    stream.take()
    while stream.word(*_FILL):
        stream.take()
    return True


def _name(stream: Stream) -> str:
    start = stream.at
    ends = (".", ";", ",", "dash", "to", "from", "row_end", "row", "round", "end", *OPENERS, *CLOSERS)
    if stream.word(*_NO_PIECE):
        return ""
    while stream.kind() not in ends and stream.at - start < _MOST_WORDS and not stream.done:
        if stream.word("but", "with", "only", "reversing", "through", "thru") or stream.word(
            "mirror", "reverse", ahead=1
        ):
            break  # "the same as Back but mirrored": not as it is
        named = stream.at > start and len(stream.peek(-1).text) > 2  # "Leg 1", but not the row "R3"
        numbered = named and stream.kind() == "number" and stream.kind(1) in ends
        if stream.kind() in _NOT_A_NAME and not stream.word("first", "second") and not numbered:
            return ""
        stream.take()
    return stream.words(start, stream.at)


def _rows(stream: Stream) -> tuple[str, Amount, Amount] | None:
    """The rows of "like the head Rnds 2-5"."""
    start = stream.at
    stream.take_if(",")
    kind = stream.take().kind if stream.kind() in ("row", "round") else ""
    first = stream.row_number() if kind else None
    if first is not None and stream.take_if("dash", "to"):
        last = stream.row_number()
    else:
        last = first
    if first is None or last is None:
        stream.at = start
        return None
    return kind, first, last


def _from_start(stream: Stream) -> None:
    """Takes the "from the beginning", "from start to end" of a piece that is worked as another: all of it, or up to a row."""
    ahead = 2 if stream.kind(1) == "the" else 1
    begins = stream.kind(ahead) == "beginning" or stream.word("start", "beg", "bottom", ahead=ahead)
    if stream.kind() == "from" and begins:
        stream.at += ahead + 1
        _to_end(stream)


def _to_end(stream: Stream) -> bool:
    """Takes "to end", "to the end", where no row is named behind it."""
    ahead = 2 if stream.kind(1) == "the" else 1
    if stream.kind() != "to" or stream.kind(ahead) != "ending" or stream.kind(ahead + 1) == "of":
        return False
    stream.at += ahead + 1
    return True


def _from_row(stream: Stream) -> Amount | None:
    """Takes "from Rnd 3", "from R3 to end", "from 3rd row onwards": the row of the other piece that this one goes on with."""
    start = stream.at
    stream.take_if(",")
    if not stream.take_if("from"):
        stream.at = start
        return None
    stream.skip("the")
    if stream.take_if("row", "round") is None and stream.word("r") and stream.kind(1) == "number":
        stream.take()  # "R3"
    number = stream.row_number()
    stream.take_if("row", "round")
    if not _to_end(stream) and stream.word("on", "onward", "onwards"):
        stream.take()
    if number is None:
        stream.at = start
    return number


def _end(stream: Stream) -> tuple[str | None, Amount | None, str | None]:
    """ "to end of Row 52", "until 43rd row is complete", "to armhole shaping": up to which row, or which heading."""
    start = stream.at
    if not stream.take_if("to") and not (stream.word("through", "thru") and stream.take()):
        return None, None, None
    if stream.kind() == "and" and stream.word("including", "incl", ahead=1):
        stream.at += 2  # "up to and including row 23"
    if stream.kind() == "star" and len(stream.peek().value) > 1:
        return None, None, stream.take().value  # "to **": the row behind which the sign stands
    stream.skip("the")
    if stream.kind() == "row_end" and stream.kind(1) == "number":  # "end of Row" is one word to the lexicon
        kind = "row" if "row" in stream.take().lower else "round"
        return kind, stream.row_number(), None
    at_end = stream.take_if("ending") is not None
    if at_end:
        stream.skip("of", "the")
    kind = stream.take().kind if stream.kind() in ("row", "round") else None
    lettered = kind is None and stream.word("r") and stream.kind(1) == "number" and bool(stream.take())  # "R30"
    number = stream.row_number()
    if lettered and number is not None:
        return None, number, None
    if number is not None:
        if kind is None and stream.kind() in ("row", "round"):
            kind = stream.take().kind
        while stream.word(*_DONE, "inclusive", "incl"):
            stream.take()
        if kind is not None:
            return kind, number, None
    elif kind is None:
        words = stream.at
        while stream.kind() in ("word", "increase", "decrease", "beginning", "of", "the"):
            stream.take()
        done = at_end or any(item.lower in _COMPLETED for item in stream.lexemes[words : stream.at])
        if stream.at > words and not done:  # which row the shaping ends with is not said
            return None, None, stream.words(words, stream.at)
    stream.at = start
    return None, None, None
