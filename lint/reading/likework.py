"""Tells lines without a label that are work, or might be, from lines that only talk."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from itertools import groupby, pairwise

from lint.expression import expression
from lint.lexicon import Lexeme
from lint.place import Which
from lint.reading.clauses.reader import Reading
from lint.reading.words.stream import CLOSERS, OPENERS
from lint.tree import (
    MAKES_STITCHES,
    AlongEdge,
    Chain,
    FastenOff,
    Group,
    JoinYarn,
    MakeRing,
    OpenWork,
    OtherSide,
    Remark,
    Repeat,
    RowCall,
    Skip,
    Step,
    TimesKind,
    Turn,
    Unread,
    UseYarn,
    Work,
    walk,
)

_LIST_NUMBER = expression(r"\d+$")
_LONGEST_LABEL = 24  # lexemes
_IN_LABEL = ("number", "ordinal", "ordinals", "dash", ",", ";", "and", "to", *OPENERS, *CLOSERS)
_WORK_STEPS = (*MAKES_STITCHES, Chain, MakeRing, Skip, RowCall)


def is_work(reading: Reading, lexemes: list[Lexeme]) -> bool:
    """Whether an unlabelled stretch inside a part is work (or might be), not talk."""
    steps = reading.steps
    worked = [
        step
        for step in walk(tuple(steps))
        if isinstance(step, _WORK_STEPS) and not (isinstance(step, Work) and step.undefined)
    ]
    unread = [step for step in walk(tuple(steps)) if isinstance(step, Unread)]
    moves = [
        s
        for s in steps
        if isinstance(s, (AlongEdge, FastenOff, JoinYarn, OtherSide)) or isinstance(s, Remark) and s.seam
    ]
    if not unread:
        return bool(worked or moves) or _turns(steps, lexemes)
    if moves and all(isinstance(step, Skip) for step in worked):
        return True  # "Hold the work as before. Skip 4 sts, join yarn in next st."
    # Words with stitches and numbers that were not understood may be work: better said than passed over.
    first = next((step for step in steps if not isinstance(step, Remark)), None)  # "Do not fasten off. Ch 30 for …"
    if worked and first is not None and not isinstance(first, Unread):
        return True
    if any(isinstance(step, RowCall) and step.own or isinstance(step, OpenWork) and step.plain for step in steps):
        return True  # "Second shoulder / Work 17 rows even": a sentence of its own tells rows
    if _again(unread, lexemes) or _labelled_within(worked, lexemes) or _rows_told(lexemes):
        return True
    if _sentence_works(steps, lexemes):
        return True
    # a line that ends in a printed count of stitches is a row that lost its label
    stitchy = any(lexeme.kind in ("stitch", "special") for lexeme in lexemes)
    if reading.stated is not None and stitchy:
        return True
    numbered = bool(lexemes) and lexemes[0].kind in ("ordinal", "ordinals", "first", "number")
    starts_like_row = bool(lexemes) and (
        lexemes[0].kind in ("row", "round")
        or _LIST_NUMBER.match(lexemes[0].text) is not None
        or numbered
        and any(lexeme.kind in ("row", "round") for lexeme in lexemes[1:5])  # "3rd to 9th rnds, for the neck: …"
    )
    return starts_like_row and any(isinstance(step, (Work, Group)) for step in worked)


# "The skirt is worked in the front loops of Rnd 12.", "Go back to Rnd 12 and work in the unused loops"
_TO_LOOPS = expression(
    r"(?i)(?=[^.;]*\bloops?\b)(?=[^.;]*\b(?:(?:row|rnd|round|rd|r)\s?\d|(?:un(?:used|worked)|free|left-?over|remaining)\b[^.;]*\bloops?))(?=[^.;]*\b(?:in|into|to|on|work\w*|join\w*|find|use|using)\b)"
    r"(?![^.;]*\b(?:will be|later|afterwards?|for now|ch|chain|sew\w*|sewn|fold\w*|weave|thread|stuff\w*|eyes?|embroider\w*)\b)"
)
_LONGEST = 2_000  # characters of a sentence that bids anything: a longer one is a list, or no sentence


def goes_to_loops(reading: Reading, words: str) -> bool:
    """Whether a line that is not wholly understood may bid to work on loops of a round that it names by its number."""
    known = any(isinstance(step, AlongEdge) for step in walk(tuple(reading.steps)))
    sentences = (one for one in expression(r"[.;]").split(words) if len(one) < _LONGEST)
    return not known and any(_TO_LOOPS.match(sentence) is not None for sentence in sentences)


_OPENS = 5  # words in front of "row" in "Over the next 4 rows, sc …"
_AT_WORK = (["stitch"], ["special"], ["increase"], ["decrease"], ["skip"])


def _labelled_within(worked: Sequence[Step], lexemes: list[Lexeme]) -> bool:
    """Whether a row's label stands amid the words, and work behind it: "Now then - Next row: 3 ch, 1 tr in each tr"."""
    for at, item in enumerate(lexemes):
        if item.kind not in ("row", "round"):
            continue
        numbered = at > 1 and lexemes[at - 1].kind == "number" and lexemes[at - 2].kind == "next"  # "next 4 rnds - …"
        before, behind = (
            "next" if numbered else lexemes[at - 1].kind if at else "",
            [one.kind for one in lexemes[at + 1 : at + 3]],
        )
        if (
            behind[:1] in ([":"], ["dash"])
            and before in ("next", "last", "first", "ordinal")
            or behind == ["number", ":"]
            or before == "next"
            and at <= _OPENS
            and behind[:1] == [","]
            and behind[1:] in _AT_WORK
        ):
            return any(isinstance(step, MAKES_STITCHES) and step.span.start > item.start for step in worked)
    return False


_WISHES = (
    "want",
    "prefer",
    "like",
    "wish",
    "need",
    "find",
    "fancy",
)  # "If you would like a wider rim, inc 2 sts in each row"


def _rows_told(lexemes: list[Lexeme]) -> bool:
    """Whether rows and a shaping with its figure are told, or a number of rows to work: "Work 2 rows as Row 2, then dec 1 st …"."""
    kinds = [item.kind for item in lexemes]
    rows = any(kind in ("row", "round") for kind in kinds)
    shaped = any(pair in (("increase", "number"), ("decrease", "number")) for pair in pairwise(kinds))
    bidden = kinds[:2] == ["make", "number"] and any(kind in ("row", "round") for kind in kinds[2:4])
    runs = ("for", "number", "row"), ("for", "number", "round")  # "Work in rows of 12 dc for 3 rows"
    bidden = (
        bidden
        or kinds[:2] == ["make", "in"]
        and any(run in runs for run in zip(kinds, kinds[1:], kinds[2:], strict=False))
    )
    wished = [item.lower for item in lexemes[:2]] == ["if", "you"] and any(
        item.lower in _WISHES for item in lexemes[2:5]
    )
    return (rows and shaped or bidden) and not wished


def _sentence_works(steps: Sequence[Step], lexemes: list[Lexeme]) -> bool:
    """Whether a sentence behind others is wholly read and works a whole row: "Close the gap. Sc in each st around."."""
    stops = [item.start for item in lexemes if item.kind == "."]
    for sentence, group in groupby(steps, lambda step: bisect_right(stops, step.span.start)):
        told = tuple(group)
        works = sentence > 0 and isinstance(told[0], (Work, Group, Repeat, Chain, Turn))
        if works and not any(isinstance(step, Unread) for step in walk(told)) and any(map(_whole_row, told)):
            return True
    return False


def _whole_row(step: Step) -> bool:
    """Whether a step goes on to the end of its row: "sc in each st", "(2 sc, ch 1) around"."""
    if isinstance(step, Repeat):
        return step.times.kind is TimesKind.FILL
    run = isinstance(step, Work) and not step.undefined
    return run and any(place.which is Which.EACH and place.limit is not None for place in step.places)


def _again(unread: Sequence[Unread], lexemes: list[Lexeme]) -> bool:
    """Whether rows are named, and how often is among what was not understood: "[like Row 2 above] twice more"."""
    often = [item.start for item in lexemes if item.kind == "times" or item.lower in ("once", "twice", "thrice")]
    named = any(item.kind in ("row", "round") for item in lexemes)
    return named and any(step.span.start <= at < step.span.end for step in unread for at in often)


def _turns(steps: Sequence[Step], lexemes: list[Lexeme]) -> bool:
    """ "Turn." in a line of its own is done once; "Turn at the end of each rnd" is talk of all."""
    alone = bool(steps) and isinstance(steps[-1], Turn) and all(isinstance(s, (Remark, Turn, UseYarn)) for s in steps)
    return alone and steps[-1].turned and not any(lexeme.kind in ("row", "round") for lexeme in lexemes)


_GOES_ON = expression(
    r"(?i)\W*(?:(?:continue|cont|proceed|carry\s+on|go\s+on|keep\s+(?:on|\p{L}+ing)|do\s+(?:this|so|the\s+same)|repeat\s+(?:this|in\s+\w+))\b)"
    r"[^.;]*?\b(?:(?:\d+|two|three|four|five|six|seven|eight|nine|ten)\s+(?:more\s+|further\s+|additional\s+)?(?:rows?|rnds?|rounds?)|until|till)\b"
)


_SHAPES = expression(
    r"(?i)\b(?:inc(?:reas(?:e|ing))?|dec(?:reas(?:e|ing))?)\b(?=[^.;]{0,200}\b(?:rows?|rnds?|rounds?)\b)[^.;]{0,200}\b(?:times|until|till|to\s+\d)\b"
)


# "Using B, work Rnds 1-4 as for the base of the bag."
_CALLS_ROWS = expression(
    r"(?i)\W*(?:(?:with|using|in)\s[^.;,]{1,30},\s)?(?:then\s|now\s)?(?:work|rep|repeat|make|crochet|follow|complete)\s(?!sure\b)(?:(?:as|the|same|for|like|instructions|of|also)\s)*(?:(?:rows?|rnds?|rounds?|r)\s?\d|(?:rows?|rnds?|rounds?)\s(?-i:\p{Lu})\b)(?![^.;]*\b(?:loose|tight|firm|snug|careful)(?:ly|er)?\b)"
)


# "Work foundation row and 1st row as given for Back.", "Work the first 4 rows of Back."
_ROWS_OF_ANOTHER = expression(
    r"(?i)\W*(?:(?:work|rep|repeat|make|crochet|follow|complete)\s(?:[^.;]*?\s)?(?:rows?|rnds?|rounds?)\b|foundation\s)[^.;]*?\s"
    r"(?:as\s(?:(?:given|written|described|worked|set|told)\s(?:out\s)?)?(?:for|on|in|of)|(?:the\s)?same\sas|like(?=\s\w)|(?:of|from)\s(?:the\s)?(?-i:\p{Lu})\w*)\b"
)


# "Rep the pattern 3 times more.", "Repeat 2 rows until …"
_REPEATS = expression(r"(?i)\W*(?:(?:then|now|and)\s+)?rep(?:eat)?\b[^.;]*\b(?:times?|once|twice|thrice|until|till)\b")


def goes_on(reading: Reading, words: str) -> bool:
    """Whether a line bids to go on for some rows in a way that is not known: "Keep increasing like this for 7 rounds".

    So does one that shapes them, "Work in patt, and dec 1 st at each end of every 3rd row 4 times", or calls for others.
    """
    told = any((_GOES_ON.match(words), _SHAPES.search(words), _CALLS_ROWS.match(words), _ROWS_OF_ANOTHER.match(words)))
    told = told or _REPEATS.match(words) is not None
    return told and any(isinstance(step, Unread) for step in reading.steps)


_ALONG = ("along", "up", "down")


def works_an_edge(reading: Reading, lexemes: list[Lexeme]) -> bool:
    """Whether a line that is not understood works stitches along an edge: "Work a total of 40 sc along the neck edge"."""
    for step in (step for step in reading.steps if isinstance(step, Unread)):
        words = [item for item in lexemes if step.span.start <= item.start < step.span.end]
        at = next((at for at, item in enumerate(words) if item.kind in ("stitch", "any_stitch")), len(words))
        counted = any(item.kind in ("number", "row", "round") for item in words[:at])
        along = any(item.kind in ("across", "around") or item.lower in _ALONG for item in words[at:])
        if counted and along and any(item.kind == "make" or item.lower in ("pick", "pick up") for item in words[:2]):
            return True
    return False


_AS_ANOTHER = expression(
    r"(?i)\W*(?![^.;]*\b(?:buttonholes?|pom-?poms?|tassels?|fringes?)\b)(?!\w+\s(?:even|straight)\s(?:until|till)\b)"
    r"(?:work|make|crochet|rep(?:eat)?|begin|complete|finish|cont(?:inue)?)\s+(?:[^\W\d]+\s+){0,6}?(?:exactly\s+)?(?:the\s+)?(?:as\s+(?:given\s+|written\s+)?for|same\s+as|as\s+(?:first|other|1st))\b"
)


def as_another_piece(reading: Reading, words: str) -> bool:
    """Whether a line works a piece like another one in a way that is not known: "Work as for Left Front, reversing shaping"."""
    first = reading.steps[0] if reading.steps else None
    return isinstance(first, (OpenWork, Unread)) and _AS_ANOTHER.match(words) is not None


def label_in_vain(lexemes: list[Lexeme]) -> int | None:
    """Where a label ends that was not read as one, though what stands behind it calls rows: "5th to 9th (…) rows - as Row 2"."""
    head = lexemes[:_LONGEST_LABEL]
    if (sign := _over_stitches(head, lexemes)) is not None:
        return sign
    row = next((at for at, item in enumerate(head) if item.kind in ("row", "round")), None)
    if row is None or row > 0 and head[0].kind not in ("ordinal", "ordinals"):
        return None
    sign = next((at for at in range(row + 1, len(head) - 1) if head[at].kind in (":", "dash")), None)
    if sign is None or head[sign + 1].lower not in ("as", "rep", "repeat", "ch"):
        return None
    return sign if all(item.kind in _IN_LABEL for item in head[row + 1 : sign]) else None


def _over_stitches(head: list[Lexeme], lexemes: list[Lexeme]) -> int | None:
    """The sign in "3rd rnd, once over: sc in each sc": a row of a number, a sign, and a stitch behind it with its place."""
    sign = next((at for at, item in enumerate(head) if item.kind in (":", "dash")), None)
    if sign is None or sign + 1 == len(lexemes) or vain_number(head[:sign]) is None:
        return None
    kinds = [item.kind for item in lexemes]
    worked = any(
        kind in ("stitch", "increase", "decrease") and after in ("in", "around", "across", "each", "next", "number")
        for kind, after in zip(kinds[sign + 1 :], kinds[sign + 2 :], strict=False)
    )
    return sign if worked else None


def vain_number(label: list[Lexeme]) -> tuple[str, int] | None:
    """The row word and the number that such a label begins with, "Rnd 3", "3rd rnd": round, 3; not "3 more rnds"."""
    row = next((at for at, item in enumerate(label[:5]) if item.kind in ("row", "round")), None)
    if row is None or not all(item.kind in _IN_LABEL for item in label[1:row]):
        return None
    beside = label[row + 1 : row + 2] if row == 0 else label[:1]
    if not beside or beside[0].kind not in (("number",) if row == 0 else ("ordinal", "ordinals", "first")):
        return None
    return label[row].kind, 1 if beside[0].kind == "first" else beside[0].number


__all__ = ["as_another_piece", "goes_on", "goes_to_loops", "is_work", "label_in_vain", "vain_number", "works_an_edge"]
