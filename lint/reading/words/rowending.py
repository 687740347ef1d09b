"""Tells where the work of a row is over, so that what follows may be its count."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

# what words in brackets are that only tell something, of what was made or what is done to it
_TALKS = (
    "word",
    "stuff",
    "telling",
    "marker",
    "the",
    "then",
    "change",
    "to",
    "with",
    "of",
    "and",
    "in",
    "place",
    "same",
    "edge",
    ",",
    ".",
)
_TALKS += (
    "number",
    "any_stitch",
    "one_stitch",
    "special",
    "yarn",
    "color",
    "right_side",
    "wrong_side",
    "facing",
    "manner",
    "side",
    "end",
    "!",
    "?",
    "'",
    '"',
)
# words by which they may be of more work, or of other work than was told
_CHANGES = (
    "double",
    "doubled",
    "extra",
    "again",
    "more",
    "further",
    "less",
    "fewer",
    "only",
    "both",
    "other",
    "others",
    "even",
    "odd",
    "once",
    "twice",
)
_CHANGES += (
    "thrice",
    "half",
    "short",
    "do",
    "until",
    "till",
    "except",
    "but",
    "not",
    "without",
    "instead",
    "either",
    "also",
    "through",
    "between",
)


_WORKS = (
    "stitch",
    "increase",
    "decrease",
    "chain",
    "number",
    "skip",
    "repeat",
    "back_loop",
    "front_loop",
    "third_loop",
    "leave",
)


_DRAWN = ("forward_pass", "stitch", "special")
_AFTER_WORDS = {"change", "turn", "no_turn", "fasten_off", "join", "no_join", "no_fasten", "end", "attach", "marker"}


def ends_work(stream: Stream, index: int) -> bool:
    """Whether nothing is worked from here on in the row (turning, joining, fastening off may follow)."""
    position = index
    while position < len(stream.lexemes):
        kind = stream.lexemes[position].kind
        if kind in _AFTER_WORDS:
            return True
        if kind == "return_pass":  # "Fwd: … – 24 loops. Return: as Row 1": loops are worked off there
            return not any(item.kind in _DRAWN for item in stream.lexemes[position:])
        told = kind == "=" and rows_told_last(stream, position + 1)  # "(52) = 7 rounds"
        if not told and kind not in (",", ";", ".", ":", "|", "dash", "and", "then", *CLOSERS):
            lexeme = stream.lexemes[position]
            if (noted := _past_note(stream, position)) is not None:
                position = noted
                continue
            if (told := _past_telling(stream, position)) is not None:
                position = told
                continue
            if kind == "number" and any(item.lower == "unchanged" for item in stream.lexemes[position : position + 4]):
                return True  # "– 8 rows unchanged"
            if rows_told_last(stream, position):
                position += 2
                continue
            if (past := _past_rows(stream, position) or past_talk(stream, position)) is not None:
                position = past
                continue
            if kind == "repeat" and _calls_rows(stream, position):
                return True
            if kind in (
                "stitch",
                "increase",
                "decrease",
                "chain",
                "number",
                "special",
                *OPENERS,
                "star",
                "skip",
                "in",
                "repeat",
            ):
                if lexeme.kind == "stitch" and lexeme.value == "sl st":
                    return True
                before = int(kind == "number")  # "— 15 bls. 3 ch, turn", as the UK trade writes it
                if [item.kind for item in stream.lexemes[position + before : position + before + 1]] == ["chain"]:
                    # "(42) ch 3, turn": the next row's chain
                    ahead = stream.lexemes[position + before + 1 : position + 6]
                    # "(45) ch 1", "(45). 1 ch"
                    last = bool(ahead or before) and all(item.kind in ("number", ".", "dash") for item in ahead)
                    return last or any(item.kind == "turn" for item in ahead)
                return False
        position += 1
    return True


def sorts_end(stream: Stream, start: int) -> int:
    """Index behind "24 dc; 12 ch-1 sps" from the semicolon at `start` on: the full stop, or what is done behind the work."""
    end = stream.sentence_end(start + 1, ".", "join", "turn", "fasten_off", "no_fasten", "no_turn")
    while end > start + 1 and stream.lexemes[end - 1].kind in (",", ";", "and", "then"):
        end -= 1
    return end


def _past_note(stream: Stream, index: int) -> int | None:
    """Index behind a sentence that only says whether a chain counts: "The ch 2 never counts."."""
    if not index or stream.lexemes[index - 1].kind != ".":
        return None
    end = stream.sentence_end(index, ".", ";", ",")
    words = stream.lexemes[index:end]
    if any(item.kind in (*OPENERS, "in", "make", "star", "join", "turn", "next") for item in words):
        return None
    noted = any(item.kind in ("counts", "counts_not") for item in words[1:])
    subject = words[0].kind == "the" or words[0].kind == "each" or words[0].lower in ("this", "these")
    return end if noted and subject and any(item.kind == "chain" for item in words[:4]) else None


def _past_telling(stream: Stream, index: int) -> int | None:
    """Index behind a sentence that only tells something: "Insert eyes between R5 and R6, 5 sts apart."."""
    opens = bool(index) and stream.lexemes[index - 1].kind in (".", ";", *CLOSERS)
    if not opens or stream.lexemes[index].kind not in ("telling", "stuff", "place"):
        return None
    end = stream.sentence_end(index, ".", ";")
    return end if not any(stream.work_at(i) or stream.leads_to_work(i) for i in range(index + 1, end)) else None


def _calls_rows(stream: Stream, index: int) -> bool:
    """Whether a sentence begins at `index` that calls for rows: "Rep last row until …", "Rep Rows 2-5 twice"."""
    opens = bool(index) and stream.lexemes[index - 1].kind in (".", ";", "|", *CLOSERS)
    ahead = stream.lexemes[index + 1 : index + 9]
    rows = next((i for i, item in enumerate(ahead) if item.kind in ("row", "round")), None)
    idle = ("last", "number", "same", "the", "first", "next", "ordinal", "all", "each", "and", "to", "dash", ",", ".")
    named = (*idle, "word", "increase", "decrease")  # "Rep Short Row 3", "Rep Dec row"
    return opens and rows is not None and all(item.kind in named for item in ahead[:rows])


def rows_told_last(stream: Stream, index: int) -> bool:
    """Whether a sentence ends in "– 8 rows" or ", 3 rounds" at `index`: how many rows that were."""
    told = stream.lexemes[index : index + 3]
    kinds = [item.kind for item in told]
    several = kinds[:2] in (["number", "row"], ["number", "round"]) and told[1].lower.endswith("s")
    apart = index > 0 and stream.lexemes[index - 1].kind in ("dash", ",", "=", *CLOSERS)
    return several and apart and kinds[2:] in ([], ["."])


def _past_rows(stream: Stream, index: int) -> int | None:
    """Index behind the "(5 rnds)" or "[3 rounds]" at `index`, which says once more how many rows a label stands for."""
    close = stream.matching(index) if stream.lexemes[index].kind in OPENERS else None
    inner = stream.lexemes[index + 1 : close] if close is not None else []
    rows = len(inner) > 1 and inner[0].kind == "number" and inner[-1].kind in ("row", "round")
    return close + 1 if rows and len(inner) <= 3 else None


def past_talk(stream: Stream, index: int) -> int | None:
    """Index behind the brackets at `index` that hold talk and no work: "(18) (stuff the head)", "= 12 (two legs are in place)"."""
    close = stream.matching(index) if stream.lexemes[index].kind in OPENERS else None
    return close + 1 if close is not None and is_talk(stream.lexemes[index + 1 : close]) else None


def is_talk(words: list[Lexeme]) -> bool:
    """Whether words behind a count hold talk and no work; a number in them is one of things, or tells how far apart they are."""
    told = any(item.kind in ("word", "stuff", "telling", "marker", "manner") for item in words)
    if not told or any(item.kind not in _TALKS or item.lower in _CHANGES for item in words):
        return False
    kinds = [item.kind for item in words] + ["end", "end"]
    for at, item in enumerate(words):
        apart = kinds[at + 1] == "any_stitch" and [one.lower for one in words[at + 2 : at + 3]] == ["apart"]
        if item.kind == "number" and kinds[at + 1] != "word" and not apart:
            return False
        if (
            item.kind in ("any_stitch", "one_stitch", "special")
            and at
            and kinds[at - 1] == "number"
            and not [one.lower for one in words[at + 1 : at + 2]] == ["apart"]
        ):
            return False
    return True


def remark_at(stream: Stream, start: int, end: int) -> int | None:
    """Index of brackets behind a count that hold talk or the number of rows: "→ 14 (his foot!)", "= 28 (4 rnds)"."""
    opening = next((i for i in range(start + 1, end) if stream.lexemes[i].kind in OPENERS), None)
    if opening is None:
        return None
    first, second = (stream.lexemes[i].kind if i < end else "end" for i in (opening + 1, opening + 2))
    tells_rows = first == "number" and second in ("row", "round")
    inside = stream.lexemes[opening + 1 : stream.matching(opening)]
    idle = first == "word" and not any(item.kind in _WORKS or item.lower in _CHANGES for item in inside)
    return opening if tells_rows or idle or is_talk(inside) else None


_STITCHES = ("stitch", "increase", "decrease")


def ends_in_stitches(words: list[Lexeme]) -> bool:
    """Whether work stands at the end of words that tell something: "keeping neck edge straight | sc 10", "taking care | 10 sc"."""
    told = [item.kind for item in words]
    alone = len(told) == 2 and told[0] == "number" and told[1] in _STITCHES
    return alone or len(told) > 1 and told[-1] == "number" and told[-2] in _STITCHES
