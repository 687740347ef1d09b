"""Reads the rows that a shaping is worked in: "dec 1 st at each end of next 4 rows", "every foll alt row until 40 sts rem"."""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.growth import ShapedWhere
from lint.reading.repeating.rhythms import ends, every_so_many, how_often, interval, over, rhythms, rows_between
from lint.reading.words.stream import Stream
from lint.tree import OpenWork, RowCall, Shaping, Step, Times, TimesKind


def shaped_rows(stream: Stream, shaping: Shaping, start: int) -> tuple[Step, ...] | None:
    """The rows that a shaping is worked in: "(of) next 4 rows", "every row until 6 sts remain", "every 4th row 3 times"."""
    before = stream.at
    if shaping.where is ShapedWhere.EVENLY and any(item.lower == "over" for item in stream.lexemes[start:before]):
        return None  # "dec 4 sts evenly over the next 2 rows": in each of them, or in all
    several = _next_and_following(stream, shaping, start)
    if several is None:
        stream.at = before
        several = (one,) if (one := _shaped_rows(stream, shaping, start)) is not None else None
    if several is None:
        stream.at = before
        told = rhythms(stream) or []
        span = stream.span_from(start)
        several = tuple(one.call(span, own=((shaping,),)) for one in told) if len(told) > 1 else None
        stream.at = stream.at if several else before
    return several


def _next_and_following(stream: Stream, shaping: Shaping, start: int) -> tuple[Step, ...] | None:
    """ "next row and 3 foll alt rows", "next 5 rows, then every foll alt row until 40 sts rem": rows that follow each other."""
    stream.skip("in", "of", "over", "for", "the")
    stream.take() if stream.word("on") else None
    if stream.take_if("next") is None:
        return None
    number = stream.amount()
    if stream.take_if("row", "round") is None and (number is not None or stream.kind() != "and"):
        return None  # but "next and foll 3 alt rows"
    steps = [RowCall(stream.span_from(start), None, None, rows=number or ONE, own=((shaping,),))]
    while not ends(stream):
        behind = stream.at
        stream.take_if(",")
        if stream.kind() != "and" and not stream.word("then"):
            return None
        while stream.kind() in ("and", "then", "at", "each", "ending", "in", "of", "the") or stream.word("then", "on"):
            if stream.kind() == "each" and stream.kind(1) != "ending":
                break
            stream.take()  # "and then at each end of the foll 2 rows"
        told = _counted_following(stream)
        if told is not None:
            times, until, step = Times(stream.span_from(behind), TimesKind.IN_ALL, told[0]), None, told[1]
        elif number is None and len(steps) == 1 or (step := every_so_many(stream)) is None:
            return None  # "next row and every foll 4th row": one cycle, and read so
        elif (often := how_often(stream)) is None or often[0] and often[0].kind is TimesKind.MORE:
            return None
        else:
            times, until = often
        cycle = (*(((OpenWork(stream.span_from(behind), "even", plain=True),),) * (step - 1)), (shaping,))
        steps.append(RowCall(stream.span_from(behind), None, None, times=times, until=until, own=cycle))
    return tuple(steps) if len(steps) > 1 else None


def _counted_following(stream: Stream) -> tuple[Amount, int] | None:
    """Takes "3 foll alt rows", "foll 4 alt rows", "foll alt row", "2 foll 4th rows": how many rows, and one in how many."""
    number = stream.amount()
    if stream.kind() != "next" or not stream.take():
        return None
    number = stream.amount() if number is None else number
    step = 1
    if stream.word("alternate", "alt") or stream.kind() == "alternate":
        stream.take()
        step = 2
    elif stream.kind() == "ordinal":
        step = stream.take().number
    several = stream.word("rows", "rounds", "rnds", "rds")
    if stream.take_if("row", "round") is None or not 1 <= step <= 40 or several is (number is None):
        return None  # "foll alt rows": how many is not said
    return number or ONE, step


def _shaped_rows(stream: Stream, shaping: Shaping, start: int) -> RowCall | Shaping | None:
    before = stream.at
    if stream.kind() in ("in", "of", "over", "for") or stream.word("on"):
        stream.take()
    every_following = stream.kind() == "each" and stream.word("following", "foll", ahead=1)
    if stream.kind(1) in ("next", "number") and not every_following:
        stream.skip("the", "each", "same")
    now = _this_row(stream)
    behind = stream.kind(1 if stream.kind() == "," else 0)
    if now and behind not in ("and", "then"):
        if ends(stream):
            return shaping
        stream.at = before
        return None
    first = ((shaping,),) if now else ()
    if now:
        stream.take_if(",")
        stream.skip("and", "then", "in", "on", "of")
    if stream.kind() == "next" and not now:
        stream.take()
        number = stream.amount()
        if number is not None and stream.take_if("row", "round") and ends(stream):
            return RowCall(stream.span_from(start), None, None, rows=number, own=((shaping,),))
        stream.at = before
        return None
    nth = not now and _nth_row_and(stream)
    every = interval(stream, following=nth)
    if every is None:
        stream.at = before
        return None
    step, listed = rows_between(every) or 1, every if every.lone is None else None
    often = how_often(stream)
    if nth and (often is None or often[1] is None):  # whether the 5th row is one of all "6 times" is not said
        stream.at = before
        return None
    if not (over if often is not None else ends)(stream) or often is None and step != 1:
        stream.at = before
        return None
    span = stream.span_from(start)
    if often is None:
        return shaping  # "of every row", under a label that says which
    even = OpenWork(span, "even", plain=True)
    cycle = (*(((even,),) * (step - 1 if listed is None else 0)), (shaping,))
    number, until = often
    more, in_all = (number is not None and number.kind is kind for kind in (TimesKind.MORE, TimesKind.IN_ALL))
    in_all = in_all and any(item.kind == "total" for item in stream.lexemes[start : stream.at])
    sure = step == 1 or bool(first) and (until is not None or more or in_all)
    if first and sure and until is None:
        fewer = Amount(tuple(one and one - 1 for one in number.number.values))  # the next row is one of all
        passes = Times(number.span, TimesKind.IN_ALL, fewer if in_all else number.number)
        return RowCall(span, None, None, times=passes, own=cycle, lead=first, every=listed)
    if first and not sure:
        stream.at = before
        return None
    if step > 1 and not first:
        cycle = ((shaping,),)  # in which of the rows the first falls is not said
    if number is not None and number.kind is TimesKind.MORE and not first:
        number = Times(number.span, TimesKind.IN_ALL, number.number)
    apart = step if step > 1 and not first else 0
    return RowCall(span, None, None, times=number, until=until, own=cycle, lead=first, apart=apart, every=listed)


def _this_row(stream: Stream) -> bool:
    """Takes "next row", "this row"; "next" alone where "and every alt row" follows."""
    this = any(item.lower == "this" for item in stream.lexemes[max(0, stream.at - 2) : stream.at])
    if this and stream.kind() == "and" and stream.kind(1) == "each":
        return True  # "of this (row)" is taken already
    if stream.kind() in ("next", "same") and stream.kind(1) == "and" and stream.kind(2) == "each":
        stream.take()
        return True
    if stream.kind() in ("next", "same") and stream.kind(1) in ("row", "round"):
        stream.at += 2
        return True
    return False


def _nth_row_and(stream: Stream) -> bool:
    """Takes the "5th and", "3rd row and" before "every foll 4th row"."""
    row = stream.kind(1) in ("row", "round")
    told = stream.kind() == "ordinal" and stream.kind(1 + row) == "and"
    if told:
        stream.at += 2 + row
    return told
