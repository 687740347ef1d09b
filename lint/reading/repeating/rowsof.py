"""Reads rows told by their number: "Work 3 rows even", "Work in sc for 5 rows", "dec 1 st at each end of next 4 rows"."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.amount import ONE, Amount
from lint.expression import expression
from lint.lexeme import Lexeme
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.places.targets import ANY, LOOPS
from lint.reading.repeating.rhythms import FOLLOWS
from lint.reading.repeating.rowswith import rows_with_run
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Chain, Loops, OpenWork, Remark, RowCall, Step, Turn, UseYarn, Work

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
_NUMBER_FIRST = expression(rf"W*t*M?N(?:M?(?P<rows>R)M?(?:{_STYLE}|S)+X?|M?Q(?:I[SL]|P)?){_LOOP}X?{_STITCHES}")
# "Work even for 3 rows", "Work in sc for 5 rows", "sc for 4 more rows"
_FOR_ROWS = expression(rf"(?:W?{_STYLE}+|W*SE?){_LOOP}{_STITCHES}F?t*M?NM?R(?P<rows>)M?E?")
# "Work 1 row.", "Work 2 more rows.": as before, and without shaping
_AS_BEFORE = expression(r"W+t*M?NM?(?P<rows>R)M?")
# "Work even in sc", "hdc even": one row of it
_ONE_ROW = expression(rf"(?:W*R?E+(?:IS)?{_STITCHES}|W*SE|WIS)")
# "6 more rounds like round 3", "Work 4 rows as 2nd row", "Work 3 more rows the same as Row 2"
_AS_ROW = expression(r"W*t*M?N(?:M?R)A(?:tO|O)?R?N?R?")
# "Work 18 more rnds the same"
_THE_SAME = expression(r"W+M?NM?R")
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
    shaped: bool = False  # one row, of which the next words tell the shaping: "Work a round of sc, increasing 6 evenly"


def rows_even(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work 3 rows even.", "Work even for 3 rows", "Work 2 rows in sc"; or one row: "Work straight in hdc"."""
    told = _told(stream, start)
    if told is None:
        return _as_row(stream, steps, start) or rows_with_run(stream, steps, start)
    stream.at = told.end
    span = stream.span_from(start)
    if told.shaped:
        run = Place(span, Which.EACH, (ANY,), limit=Limit(LimitKind.END))
        steps.append(Work(span, told.stitch, places=(run,)))
        return True
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
    comma = end < len(stream.lexemes) and stream.lexemes[end].kind == ","
    shaped = next((at for at, item in enumerate(stream.lexemes[start : end + 2 * comma], start) if _shapes(item)), None)
    end = min(end, shaped) if shaped is not None else end
    words = stream.lexemes[start:end]
    if not words or len(words) > 14:
        return None
    after = stream.lexemes[end + 1].kind if end + 1 < len(stream.lexemes) else "end"
    tail = stream.lexemes[end + 1 : stream.sentence_end(end + 1, ".", ";", "dash", *OPENERS)]
    loops = bool(tail) and all(item.kind in ("make", "in", "the", *LOOPS) for item in tail)  # ", working in both loops"
    if end < len(stream.lexemes) and stream.lexemes[end].kind == "," and after not in FOLLOWS and not loops:
        if shaped is None:
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
        one = row is not None and (not of_rows or words[of_rows[0]].quantity == ONE)
        if shaped is not None and not (one and stitch is not None and over is None):
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
            shaped is not None,
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
    if _THE_SAME.fullmatch("".join(map(_sign, words[:-2]))) and [item.lower for item in words[-2:]] == ["the", "same"]:
        number = next(item.quantity for item in words if item.kind == "number")
        stream.at = end + (listed[1] - listed[0] - 1 if listed is not None else 0)
        steps.append(
            RowCall(stream.span_from(start), None, None, rows=number)
        )  # "Work 18 more rnds the same": as the last
        return True
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


def _shapes(item: Lexeme) -> bool:
    return item.kind in ("increase", "decrease") or item.lower in ("increasing", "decreasing")
