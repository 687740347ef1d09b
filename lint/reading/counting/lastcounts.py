"""Counts that stand last in a row with no sign of their own: "(sc, inc) x 6 18 sts.", "70 hdc, join", a table's last cell."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.lexicon import Lexeme
from lint.pattern import Stated
from lint.reading.counting.counts import LEADS, read
from lint.reading.counting.nocounts import turning_chain
from lint.reading.places import countunits
from lint.reading.words.rowending import ends_work
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import Step, Work

_FOUNDING = ("fsc", "fhdc", "fdc", "ftr")
_FEWEST = 3  # fewer stitches behind a join are rather a few more of them than all there are
_IN_ALL = ("total", "all", "altogether", "made")
_GROUPS = ("special", "one_stitch", "group_word")


def of_last_cell(stream: Stream) -> Stated | None:
    """A count that is the last line or column of a row by itself: "6 sts", or a bare "6" behind a tab."""
    start, lone = stream.at, stream.kind() == "number" and stream.peek().value == "cell"
    if (
        not lone
        or stream.kind(-1) in (",", "and", "star", "+")
        or stream.kind(1) not in ("stitch", "any_stitch", ".", "end")
    ):
        return None
    end = start + 1 + (stream.kind(1) in ("stitch", "any_stitch"))
    if stream.kind(end - start) not in (".", "end"):
        return None
    found = read(stream.inside(start, end), bare=True)
    if found is not None:
        stream.at = end
    return found


def without_sign(stream: Stream) -> Stated | None:
    """Takes "18 sts", or a list over the sizes in brackets, that stands last in a row straight behind its work."""
    wave = int(stream.word("~"))  # "… ~ 18 sts": no star
    signed = stream.kind(-1) in (*LEADS, ",", "and", "then", "to", "over", "star", *CLOSERS)
    if stream.kind(wave) != "number" or signed and not wave:
        return None
    unit = stream.peek(wave + 1)
    units = (
        unit.kind == "any_stitch"
        and unit.lower != "st"
        and stream.kind(wave + 2) in (".", "end", "fasten_off", "no_fasten")
    )
    enclosed = stream.peek(wave).text[:1] in OPENERS
    begin, end = stream.at + wave, stream.at + wave + 1 + units
    if not (units or enclosed) or not ends_work(stream, end):
        return None
    found = read(stream.inside(begin, end), bare=True)
    stream.at = end if found is not None else stream.at
    return found


def of_one_sort(stream: Stream) -> bool:
    """Whether "70 hdc," stands behind a comma with no place to go into, and only a join or turn comes after it."""
    number = (
        stream.kind(-1) == "," and stream.kind() == "number" and stream.kind(1) in ("stitch", "any_stitch", *_GROUPS)
    )
    if number and stream.peek(1).value in _FOUNDING:
        return False  # "sc across, 6 fsc, turn": they widen the row
    if number and stream.kind(1) in _GROUPS and min((one or 9 for one in stream.peek().quantity.values), default=9) < 3:
        return False  # "…; rep from * to end, 1 shell, turn": the last of them
    behind = 3 if countunits.left_over(stream, 2) else 2
    behind += stream.kind(behind) in (",", ";", ".")
    return number and (
        stream.kind(behind) in ("join", "turn", "no_turn", "fasten_off", "end")
        or turning_chain(stream, stream.at + behind)
        or stream.peek(behind).value == "sl st"
        and stream.kind(behind + 1) in ("to", "join")
    )


def last_figure(stream: Stream) -> int | None:
    """Index behind "24 sc", "24 sc in total", or behind a comma a bare "24", where these are the last words of a row."""
    if stream.kind() != "number" or stream.kind(-1) in ("and", "then", "+", "to"):
        return None  # "in each st around and 12 sc" goes on
    unit = stream.kind(1) in ("stitch", "any_stitch")
    value = stream.peek().quantity.lone
    if value is not None and value < _FEWEST or unit and stream.peek(1).value in ("sl st", *_FOUNDING):
        return None
    behind = 1 + unit
    if not unit and stream.kind(-1) != ",":
        return None
    if unit and stream.kind(behind) in ("in", "the") and stream.peek(behind + 1).lower in _IN_ALL:
        behind += 2
    elif unit and stream.peek(behind).lower in _IN_ALL:
        behind += 1
    last = behind
    while stream.kind(last) in (".", ",", ";", "and", "then"):
        last += 1
    done = stream.kind(last) in ("end", "join", "fasten_off", "turn", "no_turn") or stream.peek(last).value == "sl st"
    return stream.at + behind if done and ends_work(stream, stream.at + last) else None


def perhaps_more(steps: list[Step], stated: Stated | None, lexemes: list[Lexeme], sizes: int) -> Stated | None:
    """The count; straight behind a decrease, "…, sc2tog 8 sts" or "…, sc2tog (2, 3, 4)" over the sizes, it may be how much more of it is worked."""
    item = stated.items[0] if stated is not None and len(stated.items) == 1 else None
    if item is None or stated.perhaps or item.series:
        return stated
    before = [step for step in steps if step.span.start < stated.span.start]
    last = before[-1] if before and isinstance(before[-1], Work) and before[-1].together else None
    words = [one for one in lexemes if last is not None and last.span.end <= one.start]
    listed = bool(words) and (words[0].kind in OPENERS or words[0].text[:1] in OPENERS)
    straight = bool(words) and (listed and sizes > 1 or words[0].kind == "number")
    if last is None or last.number_said or not straight or words[0].start > stated.span.start:
        return stated
    each = 1 if listed else last.together
    figures = [figure for figure in item.number.values if figure is not None]
    if any(figure % each or figure < each for figure in figures):
        return stated
    more = Amount(tuple(None if figure is None else figure // each - 1 for figure in item.number.values))
    return replace(stated, perhaps=(Work(item.span, last.stitch, more, together=last.together, number_said=True),))
