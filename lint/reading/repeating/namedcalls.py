"""Reads rows worked again by their names: "Rep Inc row 4 more times", "Rep Dec row every 4th row 3 times more"."""

from __future__ import annotations

from lint.expression import expression
from lint.reading.repeating.rhythms import colon_before_figures, rhythms
from lint.reading.repeating.rowcalls import rows_said
from lint.reading.repeating.times import said_in_all, times
from lint.reading.repeating.untilcounts import until_count
from lint.reading.words.stream import Stream
from lint.tree import RowCall, Step, TimesKind

_MOST_TURNS = 50
_LETTER = expression(r"\p{Lu}")


def lettered_row(stream: Stream) -> bool:
    """Whether "Row B" stands at the cursor, a row whose label is a letter."""
    return stream.kind() in ("row", "round") and _LETTER.fullmatch(stream.peek(1).text) is not None


def named_row_call(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Rep Inc row 4 more times": the row named by its label."""
    stream.skip("repeat", "the")
    words = stream.at
    while stream.kind() in ("increase", "decrease", "word") and stream.at - words < 3:
        stream.take()
    lettered = stream.at == words and lettered_row(stream)
    if lettered and stream.kind(2) in (",", "and"):
        return _several_letters(stream, steps, start)
    if stream.at == words and not lettered or stream.kind() not in ("row", "round"):
        return False
    kind = stream.take().kind
    stream.take() if lettered else None  # "Rep Rnd B"
    name = stream.words(words, stream.at)
    told = stream.kind() == "number" and not stream.word("once", "twice", "thrice")
    number = stream.row_number() if told and stream.kind(1) not in ("times", "more") else None
    if number is not None and stream.lexemes[words].lower == "short":
        name = stream.words(words, stream.at)  # "Rep Short Row 3": a sort of row, and no piece
    elif number is not None:  # "Rep Hat Round 2, 3 times more": a row of another piece
        name = stream.words(words, words + 1)
        stream.take_if(",")
        how_often = times(stream)
        steps.append(RowCall(stream.span_from(start), number, number, times=how_often, kind=kind, part=name))
        return how_often is None or how_often.kind is not TimesKind.FILL
    if (told := rhythms(stream)) is not None:
        span = stream.span_from(start)
        steps += [one.call(span, kind=kind, name=name) for one in told]
        return True
    rows, in_rows = rows_said(stream) or (None, False)  # "until there are 66 rows in all"
    by_count = rows is None and stream.word("until", "till")
    until, open_ended, unit = until_count(stream, None) if by_count else (None, False, "stitches")
    colon_before_figures(stream)
    how_often = None if until is not None or open_ended or rows is not None else times(stream)
    if how_often is not None and how_often.kind is TimesKind.FILL:
        return False
    in_all = said_in_all(stream, how_often)
    ends = {"until": until, "until_unit": unit, "open_ended": open_ended, "rows": rows, "rows_in_all": in_rows}
    steps.append(
        RowCall(stream.span_from(start), None, None, times=how_often, kind=kind, name=name, times_in_all=in_all, **ends)
    )
    return True


def _several_letters(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Rep Rnds B and C 3 times": those rows in turn, so often."""
    kind, letters = stream.take().kind, []
    while _LETTER.fullmatch(stream.peek().text) is not None:
        letters.append(stream.take().text)
        stream.skip(",", "and")
    how_often = times(stream)
    number = how_often.number.lone if how_often is not None and how_often.number is not None else 1
    if not number or number > _MOST_TURNS or stream.kind() not in (".", ";", ",", "end"):
        return False
    span = stream.span_from(start)
    steps += [RowCall(span, None, None, kind=kind, name=f"row {letter}") for letter in letters] * number
    return True
