"""Reads rows worked again by their numbers: "Rep Rows 2-5 3 times more", "As 3rd row", "Same as ROW 4"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from lint.amount import ONE, Amount
from lint.place import LimitKind
from lint.reading.counting.nocounts import count_behind_dash
from lint.reading.repeating.growth import growth
from lint.reading.repeating.othersides import reversal
from lint.reading.repeating.pointsback import BACK, points_back
from lint.reading.repeating.rhythms import rhythms
from lint.reading.repeating.stripes import call_tail, in_one_colour, striped
from lint.reading.repeating.swaps import swap
from lint.reading.repeating.times import said_in_all, times
from lint.reading.repeating.untilcounts import names_piece, piece_counted, until_count
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import MAKES_STITCHES, Join, OpenWork, RowCall, Step, Times, TimesKind, Turn

_THERE_ARE = ("there", "are", "you", "have", "a", "total", "of", "piece", "work", "has")
_WORKED = tuple("have has been are is worked crocheted made completed complete done altogether finished total".split())


_MOST_PASSES = 100
_NO_SORT = ("more", "other", "further", "full", "whole", "previous", "next", "following", "whole", "complete")
_PIECE_NAMES = (
    "word",
    "back_loop",
    "side",
    "special",
    "group_word",
    "ring",
    "first",
    "last",
    "ordinal",
    "corner",
    "edge",
    "half",
    "middle",
)


def _base_or_top(stream: Stream) -> bool:
    """ "Base", "the Top", "Sides" as the name of a piece: words that tell places, too."""
    named = stream.word("base", "top", "sides", "side", "edge")
    of_two = stream.kind(1) == "word" and stream.peek(1).text[:1].isupper()  # "Top Piece"
    return named and (of_two or stream.kind(1) in (",", ";", ".", "end", *OPENERS))


def names_rows(stream: Stream) -> bool:
    """Whether row numbers follow: "Rows 2-5", "2nd row", "last 2 rows", "from Row 2", "as Row 2"."""
    for ahead in range(0, 6):
        kind = stream.kind(ahead)
        if kind in ("row", "round"):
            return True
        if stream.word(*BACK, ahead=ahead):
            continue
        if kind == "." and stream.kind(ahead - 1) == "number" and stream.kind(ahead + 1) in ("row", "round"):
            return True  # "like 2. row"
        if _row_by_letter(stream, ahead):
            return True
        if ahead and _sort_of_row(stream, ahead) or ahead < 2 and kind in OPENERS:
            continue
        if kind not in (
            "from",
            "the",
            "as",
            "last",
            "number",
            "ordinal",
            "ordinals",
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
    if any(isinstance(step, MAKES_STITCHES) for step in steps) and not isinstance(steps[-1], (Turn, Join, RowCall)):
        if start and stream.lexemes[start - 1].kind not in (".", *CLOSERS):
            return False  # "2 sc in first st, rep Row 2 to end" is neither this row nor that
    stream.skip("repeat", "as", "same", "from", "the", "work", "this", "these", "for")
    if stream.kind() == "number" and stream.kind(1) in ("row", "round") and stream.kind(2) == "each":
        return _rows_of_each(stream, steps, start)
    if stream.kind() == "at" or stream.kind() == "star":
        return False
    opened = bool(stream.take_if(*OPENERS))  # "Repeat [Rows 3-6] 5 more times"
    pointed = points_back(stream, start)
    if pointed is None:
        return False
    last_words = bool(stream.take_if("last")) or pointed
    numbers: list[Amount] = []
    kind, sort = None, None
    spread, joined = False, True
    while True:
        lexeme = stream.peek()
        by_letter = _row_by_letter(stream, 0)
        if lexeme.kind in ("row", "round") or by_letter:
            kind = lexeme.kind if lexeme.kind in ("row", "round") else kind or "numbered"
            stream.take()
            stream.take_if(":", ".") if by_letter else None
            if numbers and stream.kind() != "number":
                break
        elif (numbers or last_words) and kind is None and _sort_of_row(stream, 0):
            sort = stream.take().text  # "2nd and 3rd lace rows"
        elif last_words and kind is not None:
            break  # "last row 3 times more": how often, not which
        elif (joined or not numbers) and lexeme.lower not in ("once", "twice") and (number := stream.row_number()):
            numbers.append(number)
            joined = False
            continue
        elif (
            lexeme.kind in ("dash", "to", "and", ",")
            and not stream.word("until", "till")
            and numbers
            and (
                stream.kind(1) in ("number", "ordinal", "ordinals", "row", "round")
                or _row_by_letter(stream, 1)
                and lexeme.kind != ","
            )
        ):
            if lexeme.kind == "," and not (
                stream.kind(1) in ("number", "ordinal", "ordinals")
                and stream.kind(2) in (",", "and", "row", "round", "dash")
            ):
                break
            if _times_follow(stream) or count_behind_dash(stream):
                break
            spread, joined = spread or lexeme.kind in ("dash", "to"), True
            stream.take()
        elif lexeme.kind == "." and numbers and stream.kind(1) in ("row", "round"):
            stream.take()  # "like 2. row"
        elif lexeme.lower in ("thru", "through") and numbers:
            spread, joined = True, True
            stream.take()
        else:
            break
    if opened and stream.take_if(*CLOSERS) is None:
        return False
    bare = stream.lexemes[start].kind == "as" and stream.kind(-1) == "ordinal"  # "6th row: Like 4th."
    bare = bare and not steps and stream.kind() in (".", ";", ",", "end", *OPENERS)
    if kind is None and not (numbers and (last_words or bare)):
        return False
    kind = None if kind == "numbered" else kind  # "R2" may be a row or a round
    part = None
    if stream.kind() == "of" or stream.word("as", "as for", "same as"):
        at = stream.at
        alike = stream.take().kind != "of"
        while stream.word("for", "given", "on", "the"):
            stream.take()
        words = []
        told = (
            any(item.lower.endswith("for") for item in stream.lexemes[at : stream.at])
            or stream.peek().text[:1].isupper()
        )
        named = not alike or told  # "as for first flap", "as Left Front", not "as before"
        while named and not stream.done and (stream.kind() in _PIECE_NAMES or not words and _base_or_top(stream)):
            words.append(stream.take().text)
        if words and stream.kind() == "number" and stream.kind(1) in (".", ",", ";", "end", *OPENERS):
            words.append(stream.take().text)  # "of Motif 1"
        stream.take() if words and stream.word("above", "below") and stream.kind(1) in (".", ",", "end") else None
        part = " ".join(words) or None
        if part is None:
            stream.at = at
    ordered = _in_that_order(stream)
    stream.skip("for", "consecutively", "alternate")
    while stream.word("consecutively", "pattern", "patt"):
        stream.take()
    stream.skip(",", ":")
    in_one_colour(stream)
    one = last_words and numbers in ([], [ONE]) or not last_words and len(numbers) == 1
    if one and (told := rhythms(stream)) is not None:
        row = None if last_words else numbers[0]  # "Rep Row 2 every 4th row 3 times"
        span = stream.span_from(start)
        steps += [replace(one.call(span, kind=kind, part=part), first=row, last=row) for one in told]
        return True
    bracket = stream.kind() == "("
    how_often = None if stream.word("until", "till") else times(stream, after_bracket=bracket)
    if how_often is None and stream.kind(-1) == ",":
        stream.at -= 1
    if how_often is not None and how_often.limit is not None and how_often.limit.kind is LimitKind.LAST:
        return _untold(stream, steps, start)  # "work as Row 3 to last 4 sts": a part of one row
    said = rows_said(stream) or striped(stream) if how_often is None else None
    until, open_ended, unit = until_count(stream, how_often) if said is None else (None, False, "stitches")
    at = stream.at
    if how_often is not None and how_often.kind is not TimesKind.FILL and (in_rows := rows_said(stream)) is not None:
        said = in_rows if in_rows[1] else None  # "6 more times, until you have 8 rows"
        stream.at = stream.at if said else at
    if how_often is not None and how_often.kind is TimesKind.FILL:
        how_often = None
        stream.pass_to(".", ";", *OPENERS)
    told = how_often is not None or until is not None or said is not None
    open_ended = ends_with_row(stream) and not told or open_ended
    if not told and not open_ended and stream.word("until", "till"):
        return _untold(stream, steps, start)  # "until there are 5 rows in blue"
    rows, rows_in_all = said or (None, False)
    counted_in = piece_counted(stream) if rows_in_all else ""
    goes_on = {
        "name": sort,
        "until": until,
        "until_unit": unit,
        "open_ended": open_ended,
        "rows": rows,
        "rows_in_all": rows_in_all,
        "rows_of": counted_in,
        "times_in_all": said_in_all(stream, how_often),
    }
    if last_words:
        number = numbers[0] if numbers else ONE
        steps.append(RowCall(stream.span_from(start), None, None, number, how_often, kind, **goes_on))
        _growing(stream, steps, start)
        return True
    if not numbers:
        return False
    first, last = numbers[0], numbers[-1]
    if (
        len(numbers) > 1
        and not spread
        and (ordered or any((two.lone or 0) - (one.lone or 0) != 1 for one, two in pairwise(numbers)))
    ):
        often = how_often.number.lone if how_often is not None and how_often.number is not None else None
        if any((until, rows, sort)) or (how_often is not None and not often) or not all(n.lone for n in numbers):
            return False
        span = stream.span_from(start)  # "Rep Rows 5 and 3 (twice)", "Alternate Rows 3 and 2, ending with a Row 3"
        called = [RowCall(span, number, number, kind=kind, part=part, open_ended=open_ended) for number in numbers]
        steps += called * min(often or 1, _MOST_PASSES)
        return True
    steps.append(RowCall(stream.span_from(start), first, last, times=how_often, kind=kind, part=part, **goes_on))
    call_tail(stream)
    _growing(stream, steps, start)
    return True


def _sort_of_row(stream: Stream, ahead: int) -> bool:
    """Whether a word for a sort of rows stands there: the "lace" of "2nd and 3rd lace rows"."""
    return (
        stream.kind(ahead) == "word"
        and stream.kind(ahead + 1) in ("row", "round")
        and not stream.word(*_NO_SORT, ahead=ahead)
    )


def _growing(stream: Stream, steps: list[Step], start: int) -> None:
    """Takes the ", increasing one tile in every row" behind a call."""
    if told := growth(stream):
        steps[-1] = replace(steps[-1], growth=told, span=stream.span_from(start))
    if (instead := swap(stream)) is not None:
        steps[-1] = replace(steps[-1], swap=instead, span=stream.span_from(start))


def _rows_of_each(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "2 rows each of Row 3 and then Row 5": each of them so often, in turn."""
    number = stream.amount()
    stream.at += 2
    stream.skip("of")
    found: list[RowCall] = []
    while True:
        by_letter = _row_by_letter(stream, 0)
        if not (by_letter or stream.kind() in ("row", "round") and stream.kind(1) == "number"):
            break
        stream.take()
        row = stream.row_number()
        span = stream.span_from(start)
        found.append(RowCall(span, row, row, times=Times(span, TimesKind.IN_ALL, number)))
        stream.skip("and", "then", ",")
    if not found:
        return False
    steps += found
    return True


def rows_of_piece(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work Rows 1-20 as for Left Front", "Work Rows 2-5 three times": rows to be worked that stand elsewhere."""
    stream.take()
    before = len(steps)
    if names_rows(stream) and row_call(stream, steps, start):
        call, several = steps[-1], len(steps) - before
        listed = several > 1 and stream.lexemes[start + 1].kind != "number"
        if listed or not isinstance(call, RowCall):  # "Work Rows 3, 2 and 3", but not "Work 2, 2, 3 rows"
            return True
        del steps[before:]
        if call.part is not None:
            reversal(stream)
        if call.part is not None and stream.kind() == ",":  # "as for Left Front, in rib": not as they are
            stream.at = stream.sentence_end(start, ".", ";")
            call = OpenWork(stream.span_from(start), stream.words(start, stream.at))
        again = stream.kind(-1) == "more" and stream.word("again", ahead=-1)
        if isinstance(call, OpenWork) or call.part is not None or call.times is not None or again:
            steps.append(call)
            return True
    stream.at = start
    return False


def _in_that_order(stream: Stream) -> bool:
    """Takes "in that order", "in the order given" behind the numbers of rows."""
    start = stream.at
    if stream.take_if("in"):
        stream.skip("the", "same", "this")
        stream.take() if stream.word("that", "following") else None
        if stream.word("order"):
            stream.take()
            stream.take() if stream.word("given", "stated", "listed") else None
            return True
    stream.at = start
    return False


def _untold(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes the whole sentence of a call of which is not understood how far it goes."""
    stream.at = stream.sentence_end(start, ".", ";")
    steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
    return True


def _times_follow(stream: Stream) -> bool:
    """Whether the sign at the cursor parts row numbers from how often: "Rep Rows 2 and 3, 4 or 5 times"."""
    behind = stream.inside(stream.at + 1, len(stream.lexemes))
    return behind.amount() is not None and behind.kind() == "times"


def rows_said(stream: Stream) -> tuple[Amount, bool] | None:
    """ "for 12 rows", "until there are 60 rows in all", "– 60 rows in all", "until Row 40 is complete".

    How many rows, and whether those before are among them.
    """
    start = stream.at
    opened = bool(stream.take_if(",", "dash", *OPENERS))
    until = stream.word("until", "till") and bool(stream.take())
    how_long = bool(stream.take_if("for")) or stream.kind(-1) == "for"
    total = False
    while stream.word(*_THERE_ARE) or stream.kind() == "total":
        total = stream.take().kind == "total" or total
    by_number = until and bool(stream.take_if("row", "round"))
    listed = stream.one_of_numbers() or (stream.bare_amount() if until else None)
    number = listed or stream.row_number() if opened or until or how_long else None
    more = bool(stream.take_if("more", "another"))
    named = by_number or bool(stream.take_if("row", "round"))
    more = bool(stream.take_if("more")) or more
    while stream.word(*_WORKED) or stream.kind() == "total":
        word = stream.take()
        total = "total" in (word.kind, word.lower) or total
    _row_included(stream)
    stream.take_if(*CLOSERS)
    ended = stream.done or stream.kind() in (".", ";", ",", "dash", "ending", *OPENERS)
    ended = ended or until and names_piece(stream)  # "until there are 40 rows in Back", but not "in blue"
    if number is None or not named or not ended or not (until or how_long or total or more):
        stream.at = start
        return None
    return number, (until or total) and not more


def _row_included(stream: Stream) -> None:
    """Takes ", Row 1 included", ", including the first row" behind a number of rows in all."""
    start = stream.at
    stream.skip(",")
    before = stream.word("including", "counting") and bool(stream.take())
    stream.skip("the")
    first = stream.take_if("row", "round", "first") is not None
    first = first and (stream.kind(-1) == "first" and stream.take_if("row", "round") or stream.take_if("number"))
    behind = not before and first and stream.word("included", "counted") and bool(stream.take())
    stream.at = stream.at if first and (before or behind) else start


def _row_by_letter(stream: Stream, ahead: int) -> bool:
    """Whether "R42", "R 42", "R: 42" or "R. 42" stands there."""
    behind = ahead + 2 if stream.kind(ahead + 1) in (":", ".") else ahead + 1
    return stream.peek(ahead).lower in ("r", "rs") and stream.kind(behind) == "number"


def ends_with_row(stream: Stream) -> bool:
    """Takes ", ending with a Row 2", "ending with a RS row", "ending with a dc row"."""
    start = stream.at
    stream.skip(",")
    if stream.take_if("ending"):
        stream.skip("with", "in", "on", "the")
        if stream.word("after") and stream.take():
            stream.skip("the")
        side = stream.take_if("right_side", "wrong_side", "ordinal")
        if side is not None and stream.kind() == "facing":
            stream.pass_to()  # "ending with RS facing for next row"
            return True
        if side is None and stream.kind(1) in ("row", "round"):
            stream.take_if("stitch")
        if stream.take_if("row", "round"):
            stream.take_if("number")
            return True
    stream.at = start
    return False
