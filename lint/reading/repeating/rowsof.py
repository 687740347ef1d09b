"""Reads rows told by their number: "Work 3 rows even", "Work in sc for 5 rows", "dec 1 st at each end of next 4 rows"."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.amount import ONE, Amount
from lint.expression import expression
from lint.lexeme import Lexeme
from lint.place import LimitKind, Which
from lint.reading.places.targets import LOOPS
from lint.reading.repeating.rhythms import FOLLOWS, ends, every_so_many, how_often, over, rhythms
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Chain, Loops, OpenWork, Remark, RowCall, Shaping, Step, Times, TimesKind, Turn, UseYarn, Work

# what may be said of rows that neither gain nor lose a stitch
_EVEN = {"work even", "work straight", "work without shaping", "work without decreasing", "work without increasing",
    "unchanged", "even", "straight", "evenly", "without shaping", "without decreasing", "without increasing",
    "without further shaping", "plain"}  # fmt: skip
_IN_PATTERN = {
    f"{verb}in {patt}" for verb in ("", "work ", "cont ", "continue ") for patt in ("patt", "pat", "pattern")
}
_EVEN_ROWS = {"rows even", "rounds even", "rnds even"}
_KINDS = {"number": "N", "row": "R", "round": "R", "stitch": "S", "make": "W", "in": "I", "of": "I", "for": "F",
    "more": "M", "another": "M", "the": "t", "same": "t", "all": "t", "any_stitch": "s", "over": "I", "unused": "x",
    "each": "Y", "both_loops": "L", "back_loop": "B", "front_loop": "B", "third_loop": "B", "as": "A", "ordinal": "O", "across": "X", "around": "X"}  # fmt: skip
_STITCHES = r"(?:It*N?s|IYsX?)?"  # "on these 45 sts", "in every st around"
_LOOP = r"(?:I?B)?"  # "in BLO"
_STYLE = r"(?:EIL|EP|PE|E|IS|P)"  # "even in both loops", "in sc", "straight in patt"
# "3 rows even", "3 rows even in sc", "Work 4 more rnds in sc", "Work 5 rows sc", "Two rows of sc across"
_NUMBER_FIRST = expression(rf"W*t*M?N(?:M?(?P<rows>R)(?:{_STYLE}|S)+X?|M?Q(?:I[SL]|P)?){_LOOP}X?{_STITCHES}")
# "Work even for 3 rows", "Work in sc for 5 rows", "sc for 4 more rows"
_FOR_ROWS = expression(rf"(?:W?{_STYLE}+|W*SE?){_LOOP}{_STITCHES}F?t*M?NM?R(?P<rows>)E?")
# "Work 1 row.", "Work 2 more rows.": as before, and without shaping
_AS_BEFORE = expression(r"W+t*M?NM?(?P<rows>R)M?")
# "Work even in sc", "hdc even": one row of it
_ONE_ROW = expression(rf"(?:W*R?E+(?:IS)?{_STITCHES}|W*SE|WIS)")
# "6 more rounds like round 3", "Work 4 rows as 2nd row", "Work 3 more rows the same as Row 2"
_AS_ROW = expression(r"W*t*M?N(?:M?R)A(?:tO|O)?R?N?R?")
_LIST_WITHIN = 6  # lexemes from the sentence's beginning in which its list begins


@dataclass(frozen=True, slots=True)
class _Told:
    """How a sentence tells plain rows: how many (None: this one), of which stitch (None: that of the row below)."""

    rows: Amount | None
    stitch: str | None
    over: Amount | None
    end: int
    loops: str | None = None  # back | front | third, where all stitches go in these
    pattern: str | None = None  # set | straight, where they are of the pattern's stitches


def rows_even(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work 3 rows even.", "Work even for 3 rows", "Work 2 rows in sc"; or one row: "Work straight in hdc"."""
    told = _told(stream, start)
    if told is None:
        return _as_row(stream, steps, start)
    stream.at = told.end
    span = stream.span_from(start)
    one = OpenWork(
        span, stream.words(start, told.end), plain=True, stitch=told.stitch, over=told.over, pattern=told.pattern
    )
    row = (one,) if told.loops is None else (Loops(span, told.loops), one)
    steps += row if told.rows is None else [RowCall(span, None, None, rows=told.rows, own=(row,))]
    return True


def _told(stream: Stream, start: int) -> _Told | None:
    listed = stream.bare_list(start, start + _LIST_WITHIN)
    if listed is not None:  # "Work 12-12-14 rows even", "Work 12, 12, 14 rows even": one word for the list
        at, behind, whole = listed
        told = _told(Stream([*stream.lexemes[:at], whole, *stream.lexemes[behind:]], stream.vocabulary), start)
        return replace(told, end=told.end + behind - at - 1) if told is not None else None
    end = stream.sentence_end(start, ".", ";", ",", "dash", *OPENERS)
    words = stream.lexemes[start:end]
    if not words or len(words) > 14:
        return None
    after = stream.lexemes[end + 1].kind if end + 1 < len(stream.lexemes) else "end"
    tail = stream.lexemes[end + 1 : stream.sentence_end(end + 1, ".", ";", "dash", *OPENERS)]
    loops = bool(tail) and all(item.kind in ("make", "in", "the", *LOOPS) for item in tail)  # ", working in both loops"
    if end < len(stream.lexemes) and stream.lexemes[end].kind == "," and after not in FOLLOWS and not loops:
        return None
    words = [_one(item, words[i + 1 : i + 2]) for i, item in enumerate(words)]
    signs = "".join(_sign(item) for item in words)
    for pattern in (_NUMBER_FIRST, _FOR_ROWS, _ONE_ROW, _AS_BEFORE):
        if pattern.fullmatch(signs) is None:
            continue
        row = next((i for i, sign in enumerate(signs) if sign in "RQ"), None)
        numbers = [i for i, item in enumerate(words) if item.kind == "number"]
        of_rows = [i for i in numbers if row is not None and signs[i + 1 : row + 1].strip("M") in ("R", "Q")]
        over = next((words[i].quantity for i in numbers if i not in of_rows), None)
        stitch = next((item.value for item in words if item.kind == "stitch"), None)
        if stitch == "sl st" or row is not None and not of_rows and pattern is not _ONE_ROW:
            return None
        style = "straight" if set("EQ") & set(signs) or pattern is _AS_BEFORE else "set"
        if pattern is _ONE_ROW and "P" in signs or "P" in signs and stitch is not None:
            return None
        loops = next((item.kind.split("_")[0] for item in words if _sign(item) == "B"), None)
        return _Told(
            words[of_rows[0]].quantity if of_rows else None,
            stitch,
            over,
            end,
            loops,
            style if "P" in signs or pattern is _AS_BEFORE else None,
        )
    return None


def _as_row(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work 6 more rounds like round 3": so many rows, each as the one named."""
    listed = stream.bare_list(start, start + _LIST_WITHIN)
    whole = stream
    if listed is not None:
        at, behind, one = listed
        whole = Stream([*stream.lexemes[:at], one, *stream.lexemes[behind:]], stream.vocabulary)
    end = whole.sentence_end(start, ".", ";", ",", "dash", *OPENERS)
    words = whole.lexemes[start:end]
    if len(words) > 10 or _AS_ROW.fullmatch("".join(map(_sign, words))) is None:
        return False
    numbers = [item for item in words if item.kind in ("number", "ordinal")]
    row = [item for item in words if item.kind in ("row", "round")]
    if len(numbers) != 2 or len(row) != 2:
        return False
    stream.at = end + (listed[1] - listed[0] - 1 if listed is not None else 0)
    named = numbers[1].quantity
    steps.append(RowCall(stream.span_from(start), named, None, kind=row[1].kind, rows=numbers[0].quantity))
    return True


_MORE_WORK = ("stitch", "special", "increase", "decrease", "skip", "each", "then")


def _goes_on(rest: Stream) -> bool:
    """Whether work stands behind "for 4 rnds": ", dec around", ". Inc in next st"; a figure behind a stop is a count."""
    after = rest.kind(1)
    return rest.kind() in (",", ";", ".") and (after in _MORE_WORK or rest.kind() != "." and after == "number")


def run_for_rows(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "sc in each st around for 4 rnds", "… for the next 3 rows": the row so far, so many times."""
    ahead = 1
    while stream.kind(ahead) in ("the", "next", "another", "total") or stream.word("a", ahead=ahead):
        ahead += 1
    rest = stream.inside(start + ahead, len(stream.lexemes))
    number = rest.amount()
    rest.take_if("more")
    works = [step for step in steps if not isinstance(step, (Chain, Loops, Remark, Turn, UseYarn))]
    run = works[0].places[-1] if len(works) == 1 and isinstance(works[0], Work) and works[0].places else None
    whole = run is not None and run.which is Which.EACH and (run.limit is None or run.limit.kind is LimitKind.END)
    if (
        number is None
        or not whole
        or rest.take_if("row", "round") is None
        or rest.kind() not in (*SIGNS, "end", *OPENERS)
        or _goes_on(rest)
    ):
        return False
    stream.at = start + ahead + rest.at
    span = steps[0].span.to(stream.span_from(start))
    steps[:] = [RowCall(span, None, None, rows=number, own=(tuple(steps),))]
    return True


def _one(item: Lexeme, behind: list[Lexeme]) -> Lexeme:
    """The "a" of "work a round of sc" as a number, any other word as it is."""
    one = item.lower == "a" and bool(behind) and behind[0].kind in ("row", "round")
    return replace(item, kind="number", number=1) if one else item


def _sign(item) -> str:
    """One letter for what a word is in such a sentence."""
    if item.lower in _EVEN_ROWS:
        return "Q"
    if item.lower in _IN_PATTERN:
        return "P"
    if item.lower in _EVEN or item.kind == "unchanged":
        return "E"
    if item.lower in ("continue", "cont", "now", "then"):
        return "W"
    return _KINDS.get(item.kind, "?")


def shaped_rows(stream: Stream, shaping: Shaping, start: int) -> tuple[Step, ...] | None:
    """The rows that a shaping is worked in: "(of) next 4 rows", "every row until 6 sts remain", "every 4th row 3 times"."""
    before = stream.at
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
    step = every_so_many(stream, following=nth)
    if step is None:
        stream.at = before
        return None
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
    cycle = (*(((even,),) * (step - 1)), (shaping,))
    number, until = often
    more, in_all = (number is not None and number.kind is kind for kind in (TimesKind.MORE, TimesKind.IN_ALL))
    in_all = in_all and any(item.kind == "total" for item in stream.lexemes[start : stream.at])
    sure = step == 1 or bool(first) and (until is not None or more or in_all)
    if first and sure and until is None:
        fewer = Amount(tuple(one and one - 1 for one in number.number.values))  # the next row is one of all
        passes = Times(number.span, TimesKind.IN_ALL, fewer if in_all else number.number)
        return RowCall(span, None, None, times=passes, own=cycle, lead=first)
    if first and not sure:
        stream.at = before
        return None
    if step > 1 and not first:
        cycle = ((shaping,),)  # in which of the rows the first falls is not said
    if number is not None and number.kind is TimesKind.MORE and not first:
        number = Times(number.span, TimesKind.IN_ALL, number.number)
    return RowCall(span, None, None, times=number, until=until, own=cycle, lead=first, apart=step > 1 and not first)


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


__all__ = ["rows_even", "shaped_rows"]
