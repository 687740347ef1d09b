"""What ends rows that are worked again: "until 10 sts remain", "until there are 40 blocks", "until piece measures 25 cm"."""

from __future__ import annotations

from lint.amount import Amount
from lint.expression import expression
from lint.lexeme import Lexeme
from lint.place import LimitKind, Target, TargetKind
from lint.reading.places.countunits import singular
from lint.reading.places.limits import past_lengths
from lint.reading.places.targets import target
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Times, TimesKind

Until = tuple[Amount | None, bool, str]  # so many, or a length that is not known in rows; and the unit counted in

_LENGTHS = ("measures", "measure", "long", "length", "desired", "reaches")
_MEASURED = expression(
    r"(?i)(?:\d|[½¼¾)\]])\s?(?:[\"”″]|cm\b|mm\b|ins\b|inch(?:es)?\b|in\b(?=\W*$|\s+(?:from|long|deep|tall|high|wide|or|above|below|less|shorter|longer|measured)\b))"
)
_COMPARED = (
    "shorter",
    "longer",
    "less",
    "fewer",
    "short",
    "than",
)  # with another piece, whose rows are not counted here
_RECKONED = ("has", "have", "above", "below", "from", "since", "past", "beyond", *_COMPARED)
_LEADS = ("the", "word")  # "there are", "you have"
_DONE = ("decreased", "increased", "worked", "made", "added", "skipped", "completed", "each", "either", "both")
_TAIL = (
    *("remain", "remains", "remaining", "rem", "left", "only", "are", "is", "been", "have", "in", "all", "total", "on"),
    *("the", "hook", "this", "row", "round", "rnd", "at", "end", "of", "altogether", "around", "across"),
)
_TAIL_KINDS = ("remaining", "total", "around", "across", "the", "in", "row", "round")
_WHERE = ("the", "back", "front", "left", "right", "neck", "shoulder", "top", "crown", "tip", "toe", "point")


def until_count(stream: Stream, how_often: Times | None) -> Until:
    """What ends the rows, if that is said at the cursor; none of it taken where it is something else that ends them."""
    none, limit = (None, False, "stitches"), how_often.limit if how_often is not None else None
    desired = 1 if stream.kind() in ("to", "for") else 0  # "for" may be taken already
    led = desired or stream.kind(-1) == "for"
    if how_often is None and led and stream.word("desired", "required", ahead=desired):
        stream.pass_to(".", ";", ",")  # "to desired length"
        return None, True, "stitches"
    if limit is not None and limit.kind is LimitKind.LAST:
        unit = _counted_in(limit.target)
        return (limit.number, False, unit) if unit else (None, True, "stitches")
    if how_often is not None and how_often.kind is not TimesKind.FILL or not stream.word("until", "till"):
        return none
    start = stream.at
    last = 2 if stream.kind(1) == "the" else 1
    if stream.kind(last) == "ending" and stream.kind(last + 1) in (*SIGNS, "end"):
        stream.at += last + 1  # "Rnd 3 – end: Rep Rnd 2 until end"
        return None, True, "stitches"
    past_lengths(stream, "ending")
    end, stream.at = stream.at, start
    words = stream.lexemes[start:end]
    measured = any(item.lower in _LENGTHS for item in words) or _MEASURED.search(stream.words(start, end)) is not None
    if measured or _counts_rows(words) and any(item.lower in _RECKONED for item in words):
        stream.at = end  # "until Back has 14 rows above the armhole": where the count begins is not told
        return None, True, "stitches"
    stream.take()
    while stream.kind() in _LEADS and not stream.word(*_DONE) and not stream.done:
        stream.take()
    if stream.kind() == "to" and stream.word("down", "up", "back", ahead=-1):
        stream.take()  # "until you're down to 3 sc"
    number = stream.bare_amount() or stream.amount()
    sort = stream.kind() in ("any_stitch", "stitch") and stream.take() or target(stream)
    unit = "stitches" if sort is None or not isinstance(sort, Target) else _counted_in(sort)
    while stream.kind() in _TAIL_KINDS or stream.word(*_TAIL):
        stream.take()
    if stream.word("for"):  # "until 8 sts remain for the back neck"
        stream.take()
        while stream.word(*_WHERE):
            stream.take()
    ended = stream.at >= end or stream.kind() in (",", "dash", *OPENERS)
    odd = stream.kind(-1) == "for" or any(item.lower == "unworked" for item in words)
    if number is None or not unit or not ended or odd:
        stream.at = start  # "until 6 sts have been decreased", "until there are 20 sts between the markers"
        return none
    return number, False, unit


def _counts_rows(words: list[Lexeme]) -> bool:
    """Whether "14 rows", "6 more rnds" stands there, or the number of a row; "4 sts left on the row" counts none."""
    rows = [at for at, item in enumerate(words) if item.kind in ("row", "round")]
    near = [item.kind for at in rows for item in (*words[max(0, at - 2) : at], *words[at + 1 : at + 2])]
    stitches = any(item.kind in ("any_stitch", "stitch") for at in rows for item in words[max(0, at - 2) : at])
    return "number" in near and not stitches


def _counted_in(sort: Target | None) -> str:
    """The unit of a printed count that a sort of place is; "" where it is none."""
    if sort is None or sort.kind in (TargetKind.ANY_STITCH, TargetKind.STITCH):
        return "stitches"
    if sort.kind is TargetKind.SPECIAL and sort.name:
        return f"special:{singular(sort.name)}"
    length = sort.length.lone if sort.length is not None else None
    return (f"space:{length}" if length else "space") if sort.kind is TargetKind.SPACE else ""


def _letters(word: str) -> bool:
    """Whether a word is the letters of a yarn: "B", "CC1"."""
    return word.isupper() and len(word) < 4


def names_piece(stream: Stream) -> bool:
    """Whether "in Back", "in the panel" ends the words at the cursor; "in sc", "in each stripe", "in Color B" name none."""
    ahead = 2 if stream.kind(1) == "the" else 1
    words = stream.lexemes[stream.at + ahead : stream.next_of(*SIGNS, "ending")]
    plain = all(item.kind == "word" and item.text not in stream.vocabulary.colours for item in words)
    coloured = any(item.lower in ("color", "colour", "same") or _letters(item.text) for item in words)
    return stream.kind() == "in" and bool(words) and plain and not coloured


def piece_counted(stream: Stream) -> str:
    """Takes the "in Back" of "until there are 40 rows in Back": the piece in which so many are counted; "" where none is named."""
    if not names_piece(stream):
        return ""
    stream.skip("in", "the")
    words = stream.at
    stream.at = stream.next_of(*SIGNS, "ending")
    return " ".join(item.lower for item in stream.lexemes[words : stream.at])


__all__ = ["names_piece", "piece_counted", "until_count"]
