"""Reads work that gains and loses nothing until a length is reached: "Cont straight in patt until Back measures 30 cm"."""

from __future__ import annotations

from itertools import pairwise

from lint.amount import Amount
from lint.expression import expression
from lint.reading.places.limits import past_lengths
from lint.reading.words.stream import Stream
from lint.tree import OpenWork, RowCall, Step

_UNITS = {"cm", "mm", "in", "ins", "inch", "inches", '"'}
_LENGTHS = {"measures", "measure", "long", "length", "desired", "reaches", "deep", "matches", "match", "corresponds"}
# words of work behind "until": "until 5 sts before marker", "until armhole measures 18 cm and dec 1 st" say something else
_WORK = ("any_stitch", "stitch", "increase", "decrease", "skip", "chain", "times", "repeat", "each")
_MOST_WORDS = 14
_ONLY_TURNS = (",", "and", "then", "turn")  # behind a row in pattern
_GIVEN = ("as", "given", "worked", "set", "described", "directed", "established")
_COUNTED = ("number", "any_stitch")  # "on these 45 sts"

_VERB = r"(?:work(?:ing)?|continu(?:e|ing)|cont|keep(?: on| going)?|carry on|go on|proceed)"
_SHAPING = r"(?:shaping|(?:de|in)creas(?:ing|es?)|(?:inc|dec)s?)"
_NO_SHAPING = rf"(?:even|evenly|straight|without (?:(?:any|further|more) )*{_SHAPING}(?: (?:or|and) {_SHAPING})?)"
_SET = r"(?:as (?:now )?(?:set|est|established))"
_PATTERN = rf"(?:in (?:the )?(?:same )?(?:(?:basic|main|rib|body|stitch|st) )?(?:patt?|pattern)(?: st(?:itch)?)?(?: {_SET})?|{_SET})"
_STYLE = rf"(?P<pattern>{_PATTERN})|in (?P<stitch>STITCH)"
_LIKE = r" as (?:(?:given|worked|set|described|directed|established) )?(?:for|on) (?:the )?(?P<like>[a-z]+(?: [a-z]+)?)"
_OVER = r"(?: (?:on|over|across) (?:all |these |the |same )*(?:NUMBER )?(?:sts?|stitches))?"
_LEADS = r"(?:(?:and|then|now) )*"
_STRAIGHT = expression(
    rf"{_LEADS}(?:{_VERB} )*(?:(?:{_STYLE}) )?(?P<even>{_NO_SHAPING})(?: (?:{_STYLE}))?{_OVER}(?: as (?P<row>ROW) NUMBER)?"
)
_AS_SET = expression(rf"{_LEADS}{_VERB} (?:{_VERB} )?(?P<pattern>{_PATTERN})(?:{_LIKE})?{_OVER}")
_LIKE_ALONE = expression(rf"{_LEADS}{_VERB} (?:{_VERB} )?{_PATTERN}{_LIKE}")


def unshaped(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work straight until sleeve measures 43 cm", "Cont in dc without shaping for 5 cm", "Work in patt until …"."""
    near = stream.lexemes[start : start + _MOST_WORDS]
    ends = [start + at for at, one in enumerate(near) if one.kind in ("to", "for")]
    told_for = len(ends) > 1 and stream.lexemes[ends[0]].lower == "for" and stream.lexemes[ends[0] - 1].lower in _GIVEN
    end = ends[1] if told_for else ends[0] if ends else None  # "in patt as given for Back until …"
    if end is None or stream.lexemes[end].lower not in ("until", "till", "for"):
        return False
    words = stream.lexemes[start:end]
    said = " ".join(map(_sign, words))
    told = _STRAIGHT.fullmatch(said) or _AS_SET.fullmatch(said)
    if told is None or not _to_length(stream, end):
        stream.at = start
        return False
    parts = told.groupdict()
    row = next((i for i, word in enumerate(words) if word.kind in ("row", "round")), None)
    span = stream.span_from(start)
    over = next((one.quantity for one, behind in pairwise(words) if (one.kind, behind.kind) == _COUNTED), None)
    if parts.get("row") and row is not None and over is None:
        steps.append(
            RowCall(span, words[row + 1].quantity or Amount.of(0), None, kind=words[row].kind, open_ended=True)
        )
        return True
    stitch = next((word.value for word in words if word.kind == "stitch"), None)
    pattern = ("straight" if parts.get("even") else "set") if parts.get("pattern") else None
    if parts.get("row") or stitch == "sl st" or pattern and stitch is not None:
        stream.at = start
        return False
    like = parts.get("like") or ""
    steps.append(OpenWork(span, stream.words(start, stream.at), True, stitch, over, pattern, like=like))
    return True


def patterned_like(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work in patt as given for Back", of a row or rows that a label tells: no length ends them."""
    end = stream.sentence_end(start, ".", ";", ",")
    told = _LIKE_ALONE.fullmatch(" ".join(map(_sign, stream.lexemes[start:end])))
    behind = stream.lexemes[end : stream.sentence_end(start, ".", ";")]
    if told is None or not all(
        item.kind in _ONLY_TURNS for item in behind
    ):  # "…, inc 1 st at each end": not as it is there
        return False
    stream.at = end
    words = stream.words(start, end)
    steps.append(OpenWork(stream.span_from(start), words, True, pattern="set", like=told["like"]))
    return True


def _sign(lexeme) -> str:
    """A word of such a sentence, or what sort of word it is."""
    sorts = {"stitch": "STITCH", "number": "NUMBER", "row": "ROW", "round": "ROW"}
    return sorts.get(lexeme.kind, lexeme.lower)


def _to_length(stream: Stream, end: int) -> bool:
    """Takes "until piece measures 25 cm (or desired length)", "for 10 cm"; False where no length, or other work, is told."""
    stream.at = end
    past_lengths(stream, ",", "ending")
    if stream.kind() == "," and stream.word("or", ahead=1):
        stream.take()  # ", or 2 in less than desired length"
        past_lengths(stream, ",", "ending")
    told = stream.lexemes[end + 1 : stream.at]
    words = {item.lower for item in told}
    reached = words & _LENGTHS if stream.lexemes[end].lower != "for" else words & _UNITS
    return bool(reached) and not any(item.kind in _WORK for item in told)
