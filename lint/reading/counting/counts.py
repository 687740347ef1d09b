"""Reads printed counts in all their forms, and tells them from repeats, groups and remarks."""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.lexicon import Lexeme
from lint.pattern import Stated, StatedItem
from lint.reading.counting import twoprints
from lint.reading.counting.nocounts import (
    adds_work,
    counted_behind,
    goes_somewhere,
    led_to_a_side,
    noted_work,
    turning_chain,
)
from lint.reading.counting.shares import shares_begin
from lint.reading.counting.unitsfirst import units_first
from lint.reading.places import countunits
from lint.reading.places.alterations import bids_again
from lint.reading.words.rowending import ends_work, remark_at, sorts_end
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

LEADS = (".", ";", "...", "..", "…", "dash", "=", ":", "→", "•", "|", "●")
_ROW_ENDS = ("turn", "join")  # "…, turn 30 sts.": no sign stands before the count
_OFTEN = ("once", "twice", "thrice")
_NEXT_DEEDS = ("fasten_off", "no_fasten", "no_turn")  # what follows a count on a line of its own


def bracket_count(stream: Stream, start: int, close: int, worked: bool) -> Stated | None:
    """A count in the brackets at start..close, unless what follows makes it a group or a repeat."""
    after = close + 1
    kind = stream.lexemes[after].kind if after < len(stream.lexemes) else "end"
    text = stream.lexemes[after].lower if after < len(stream.lexemes) else ""
    if (
        not turning_chain(stream, after)
        and not _rows_told(stream, after)
        and kind in ("in", "over", "times", "number", "star", "around", "across", "to", "repeat", "×")
        or text
        in (
            "x",
            "×",
            "all",
        )
    ):
        return None
    if kind in (",",) and not ends_work(stream, after + 1):
        return None
    inner = stream.inside(start + 1, close)
    told = _told_in_words(inner, [item.lower for item in inner.lexemes])  # "(You will have 13 sts.)"
    if told is not None:
        last = close - 1 if stream.lexemes[close - 1].kind == "." else close
        inner = stream.inside(start + 1 + told, last)
    found = read(inner, bare=True)
    if found is None:
        return None
    if not worked and not found.items:
        return None
    if len(found.items) == 1 and len(inner.lexemes) > 2 and inner.lexemes[-1].lower in ("increased", "decreased"):
        return None  # "(4 sts increased)" is no count of the row
    ahead_of_work = start == 0 and kind in (":", "dash")  # "Rnd 2 (12): inc in each st"
    if (
        not ends_work(stream, after)
        and not ahead_of_work
        and len(found.items) == 1
        and found.items[0].unit == "stitches"
        and not found.items[0].words
    ):
        return None
    return found


def _rows_told(stream: Stream, at: int) -> bool:
    """Whether the "5 rows" of "(24) 5 rows" stands at an index, and nothing behind it: for how many the words are."""
    words = stream.lexemes[at : at + 3]
    kinds = [item.kind for item in words]
    return kinds[:1] == ["number"] and kinds[1:2] in (["row"], ["round"]) and kinds[2:] in ([], ["."], ["end"])


def list_ends(stream: Stream, index: int) -> bool:
    """Whether a row's work ends at `index`, where its count may still stand."""
    while index < len(stream.lexemes) and stream.lexemes[index].kind in (",", ";", ".", "dash", "="):
        index += 1
    if stream.lexemes[index - 1 : index] and stream.lexemes[index - 1].kind == "=" and stream.lexemes[index:]:
        counted = [item.kind for item in stream.lexemes[index : index + 2]]  # "= 32", "= 32 sts"
        return counted[0] == "number" and ends_work(stream, index + 1 + (counted[1:] in (["any_stitch"], ["stitch"])))
    if index < len(stream.lexemes) and stream.lexemes[index].kind in OPENERS:
        close = stream.matching(index)
        return close is not None and bracket_count(stream, index, close, True) is not None
    return ends_work(stream, index)


_ALTOGETHER = (["altogether"], ["total"], ["all together"])


def bare_count(stream: Stream, worked: bool, over: bool = False) -> Stated | None:
    """A count without brackets at the cursor: "– 12 dc, 4 ch-2 sps.", "You now have 26 dc.", ": 12 dc.".

    `over`: whether nothing can be worked any more, so that each sort may have a sentence: "Join. 24 dc. 4 sc."
    """
    start = stream.at
    if (
        turning_chain(stream, start)
        or stream.kind() in OPENERS
        or not (_opens_as_count(stream) or worked and (_stands_as_count(stream) or stream.kind(-1) in _ROW_ENDS))
    ):
        return None
    end = start
    depth = 0
    while end < len(stream.lexemes):
        kind = stream.lexemes[end].kind
        depth += kind in OPENERS
        depth -= kind in CLOSERS
        if depth < 0 or (not depth and (kind in (".", ";", "|") or end > start and kind in _NEXT_DEEDS)):
            break
        end += 1
    if any(item.kind == "turn" for item in stream.lexemes[start:end]):
        while end > start and stream.lexemes[end - 1].kind in ("turn", ",", "dash", "and", "then"):
            end -= 1
        own = stream.lexemes[start : end - 2]  # "= 12 sc, 1 ch, turn": the chain is the next row's
        if own and own[-1].kind == "," and turning_chain(stream, end - 2):
            end -= 3
    sentence = stream.inside(start, end)
    if goes_somewhere(sentence.lexemes):
        return None
    words = [item.lower for item in sentence.lexemes]
    in_words = _told_in_words(sentence, words)
    if in_words is not None:
        while [item.kind for item in stream.lexemes[end : end + 2]] == [";", "number"]:
            end = stream.sentence_end(end + 1, ".", ";")  # "You now have 60; 76; 92 dc.": of several rows
        inner = stream.inside(start + in_words, end)
        if inner.kind() in OPENERS and inner.matching(0) == len(inner.lexemes) - 1:
            inner = inner.inside(1, len(inner.lexemes) - 1)  # "Stitch count: (20)"
        found = read(inner, bare=True)
        shared = shares_begin(inner.lexemes) if found is None else 0
        found = read(inner.inside(0, shared), bare=True) if shared else found
        if found is not None:
            stream.at = end
            return found
    if not worked or start == 0:
        return None
    lead = stream.lexemes[start - 1].kind
    if lead == "dash" and stream.peek(-1).glued and stream.kind(-2) == "chain" and not stream.parts_from_count(-1):
        return None  # the 1 of "ch-1 sps"
    final = sentence.lexemes[-1].kind if sentence.lexemes else ""
    told = stream.kind() in OPENERS or final == "total" or words[-1:] in _ALTOGETHER
    told = told or lead in _ROW_ENDS and final == "any_stitch"
    if lead not in LEADS and lead not in CLOSERS and not (lead in (",", *_ROW_ENDS) and told):
        return None
    if stream.kind() not in ("number", "dash", *OPENERS):
        return None
    if (
        lead in CLOSERS
        and (noted_work(stream, start) or counted_behind(sentence))
        or lead == ":"
        and led_to_a_side(stream, start - 1)
    ):
        return None
    if lead == "dash" and stream.peek().glued and stream.peek(-1).glued and stream.peek(1).glued:
        return None  # "inc-5sc-inc-5sc"
    if lead == "dash" and (between := _between_dashes(stream, start, end)) is not None:
        return between
    stop = stream.lexemes[end].kind if end < len(stream.lexemes) else ""
    if stop == ";" or stop == "." and over:  # "48 dc; 60 dc" of a range of two
        longer = sorts_end(stream, end) if stop == ";" else end
        while stop == "." and [item.kind for item in stream.lexemes[longer : longer + 2]] == [".", "number"]:
            longer = stream.sentence_end(longer + 1, ".", ";")
        all_of_it = read(stream.inside(start, longer), bare=False) if ends_work(stream, longer) else None
        if all_of_it is not None:
            stream.at = longer
            return all_of_it
    if (remark := remark_at(stream, start, end)) is not None and lead in ("=", "→"):
        end, sentence = remark, stream.inside(start, remark)
    again = twoprints.bracket_behind(stream, end)
    if again is not None and bracket_count(stream, *again, True) is None:
        again = None
    if lead not in ("=", "→") and not ends_work(stream, end) and again is None:
        return None
    last = lead in (".", ";") and len(sentence.lexemes) == 1  # "… around. 12", "… around; 12. Fasten off."
    found = read(sentence, bare=last or lead in ("=", "dash", "→", ":", "|", "●", "..", "...", "…"))
    if found is None or (
        found.items and all(item.unit == "unknown" and not _unit_word(stream, item) for item in found.items)
    ):
        return None
    if again is not None and not over and not twoprints.of_squares(stream, found):
        return None  # "sc 5. 3 dc. (8)" is work
    stream.at = end
    return found


def _between_dashes(stream: Stream, start: int, end: int) -> Stated | None:
    """A count between dashes, before the next row's chain or the turn: "– 31 sc – ch 1, turn."."""
    close = next((i for i in range(start + 1, end) if stream.lexemes[i].kind == "dash"), None)
    if close is None or stream.lexemes[close].glued or not ends_work(stream, close + 1):
        return None
    found = read(stream.inside(start, close), bare=False)
    if found is None or any(item.unit == "unknown" for item in found.items):
        return None
    stream.at = close
    return found


def _behind_row_end(lexemes: list[Lexeme], at: int) -> int:
    """The index behind "At the end of Row 12:", "At end of this row," that leads to a count; `at` where nothing does."""
    end = at
    while end < len(lexemes) and lexemes[end].lower in ("at", "the", "end", "of", "this", "last"):
        end += 1
    if end == at or lexemes[at].lower != "at" or end >= len(lexemes):
        return at
    by_letter = lexemes[end].lower == "r" and lexemes[end - 1].lower == "of"  # "At end of R20"
    if (
        not by_letter
        and lexemes[end].kind != "row_end"
        and (lexemes[end].kind not in ("row", "round") or lexemes[end - 1].kind == "at")
    ):
        return at
    end += 1
    end += end < len(lexemes) and lexemes[end].kind in ("number", "ordinal")
    signed = end < len(lexemes) and lexemes[end].kind in (":", ",", "dash", "=")
    return end + 1 if signed else end


def _opens_as_count(stream: Stream) -> bool:
    """Whether the next words tell of a count: "You now have …", "At the end of Row 12: 72 dc"."""
    behind = _behind_row_end(stream.lexemes, stream.at)
    if behind > stream.at:
        return _row_end_tells(stream, behind)
    opening = " ".join(item.lower for item in stream.lexemes[stream.at : stream.at + 6])
    return opening.startswith(stream.vocabulary.count_openers)


def _row_end_tells(stream: Stream, behind: int) -> bool:
    """Whether a count stands behind "At the end of Row 12": in words, or a figure behind a sign."""
    opening = " ".join(item.lower for item in stream.lexemes[behind : behind + 6])
    signed = stream.lexemes[behind - 1].kind in (":", ",", "dash", "=")
    figure = signed and behind < len(stream.lexemes) and stream.lexemes[behind].kind in ("number", *OPENERS)
    return figure or opening.startswith(stream.vocabulary.count_openers)


def _stands_as_count(stream: Stream) -> bool:
    """Whether a figure stands where a count may: behind a stop, a dash, a bracket…"""
    lead = stream.kind(-1)
    return (lead == "," or lead in LEADS or lead in CLOSERS) and stream.kind() in ("number", "dash")


def _unit_word(stream: Stream, item: StatedItem) -> bool:
    """Whether a unit that no stitch's name says is one that counts are given in: "4 groups of 3 dc"."""
    return item.words.lower().split(" ")[0] in stream.vocabulary.count_units


def _told_in_words(sentence: Stream, words: list[str]) -> int | None:
    """Index of the first number in "You now have 26 dc", "Stitch count: 12 dc", "There should be …"."""
    if not words:
        return None
    lead = _behind_row_end(sentence.lexemes, 0)
    opening = " ".join(words[:6])
    telling = opening.startswith(sentence.vocabulary.count_openers)
    if not telling and not (lead and _row_end_tells(sentence, lead)):
        return None
    for index, lexeme in enumerate(sentence.lexemes):
        if index < lead:
            continue
        if index and lexeme.kind in ("increase", "decrease", "each", "make", "skip"):
            return None  # "making sure you inc 1 st at each end"
        if index and lexeme.kind == "number" and sentence.lexemes[index - 1].lower == "or":
            return None  # "This makes the edge curl for a round or two."
        if lexeme.kind in ("number", *OPENERS):
            return index
    return None


def read(stream: Stream, bare: bool) -> Stated | None:
    """A whole stretch as a count: amounts with units.  `bare`: a number without unit may stand alone."""
    span = stream.span_from_all()
    items: list[StatedItem] = []
    pending: list[Amount] = []
    per_side: Amount | None = None
    if not (stream.kind() == "dash" and stream.kind(1) == ","):  # "-, 14, 16 sc": no figure for the first size
        stream.skip("=", "dash", ":", "the")
    if stream.kind() == "total":
        stream.take()
    if bare and stream.kind() != "number" and (by_unit := units_first(stream)) is not None:
        return by_unit
    begin = stream.at
    while not stream.done:
        if not pending:
            begin = stream.at
        stream.skip(",", "and", "+", ";", "/", "plus", "with", ":", ".", "then") if items or pending else None
        if stream.done:
            break
        if stream.kind() in OPENERS and items and not pending:
            close = stream.matching(stream.at)
            if close is None:
                return None
            inner = stream.inside(stream.at + 1, close)
            if bids_again(inner.lexemes) or adds_work(inner.lexemes):
                return None  # "– 9 sc (work Row 2 again)", "– 9 sc (then sc 3 more)"
            side = inner.amount()
            if side is not None and any(item.lower == "per" for item in inner.lexemes):
                per_side = side
            stream.at = close + 1
            if stream.word(*_OFTEN) or stream.kind() == "number" and stream.kind(1) == "times":
                return None  # "– 9 sc [Row 2, then Row 3] twice": what is repeated is no remark
            continue
        at = stream.at
        number = stream.amount()
        if number is None and items and not pending and (single := countunits.one_more(stream)) is not None:
            items.append(StatedItem(stream.span_from(at), ONE, single))
            continue
        if number is None:
            if stream.word(*_OFTEN):
                return None  # "– 9 sc twice"
            if items and all(
                item.lower in stream.vocabulary.count_tails
                or item.kind in stream.vocabulary.count_tails
                or item.kind
                in (
                    "number",
                    "stitch",
                    "chain",
                    "dash",
                    "space",
                    "row",
                    "round",
                    "beginning",
                    "turning_chain",
                    "any_stitch",
                    "as",
                )
                for item in stream.lexemes[stream.at :]
            ):
                break
            return None
        if items and items[-1].unit.startswith("per side") and countunits.in_each_corner(stream):
            continue  # "7 sc along each side, 3 sc in each corner": those of the sides tell
        if stream.word("x", "×"):
            stream.take()
            if stream.done:
                return None  # "(6x)": how often, not how many
        unit, words = ("stitches", "") if countunits.before_a_side(stream) else countunits.unit(stream)
        if unit is None and not pending and not items and (stream.kind() == "+" or stream.word("plus")):
            items.append(StatedItem(stream.span_from(at), number, "stitches"))  # "24 + 4 corner spaces"
            continue
        whole = countunits.left_over(stream) and stream.kind() != "made" or stream.word("total", "in total")
        if unit is None and (whole or not items and countunits.whole_count(stream)):
            unit = "stitches"  # "(7 rem)", "(36 total)", "12 in all", but "(2 made)" may be shells
        if unit is None:
            pending.append(number)
            if stream.done or stream.kind() in (",", "and", ";", ":", "dash", "/"):
                stream.take_if("dash", "/")
                continue
            return None
        if (unit or "").partition(":")[0] in ("stitches", "kind") and (besides := countunits.chains_counted(stream)):
            unit = f"with {besides}"
        series = (*pending, number) if pending else ()
        if stream.kind() == "at" and stream.kind(1) == "each":
            unit = "unknown"  # "3 dc at each end": a part of them
        if unit.partition(":")[0] in ("stitches", "kind") and countunits.of_a_side(stream):
            unit = "per side" + unit.removeprefix("stitches").replace("kind", "")
        items.append(StatedItem(stream.span_from(begin if pending else at), number, unit, words, series))
        pending = []
        _tail(stream)
    slashed = bool(items) and any(item.kind == "/" for item in stream.lexemes)  # "24 dc/4 ch-2 sps"
    if pending and (not bare or items) or slashed and len({item.unit for item in items}) < len(items):
        return None  # "24 dc/36 dc": of two sizes, or of two rows
    if pending:
        if len(pending) == stream.vocabulary.sizes > 1 and all(number.lone is not None for number in pending):
            whole = Amount(tuple(number.lone for number in pending))
            return Stated(span, (StatedItem(span, whole, "stitches"),))
        return Stated(
            span, (StatedItem(span, pending[-1], "stitches", "", tuple(pending) if len(pending) > 1 else ()),)
        )
    return Stated(span, tuple(countunits.series_of(countunits.summed(items))), per_side) if items else None


def _tail(stream: Stream) -> None:
    """Passes "in each row", "made", "counting starting ch as 1 dc" after a unit."""
    while not stream.done and (
        stream.kind() in stream.vocabulary.count_tails
        or stream.peek().lower in stream.vocabulary.count_tails
        or stream.word("after")
    ):
        if stream.kind() == "and":
            return
        if stream.kind() == "at" or stream.word("if"):  # "at the end of Row 34", "if chaining 42"
            stream.pass_to(",", ";", *OPENERS)
            return
        of_row = any(stream.kind(ahead) in ("row", "round") for ahead in (1, 2, 3))
        if (stream.kind() == "in" or stream.word("after", "by")) and not of_row:
            return
        if stream.kind() in ("in", "counts") or stream.word("counting", "including", "incl", "after", "by"):
            stream.pass_to(",", ";", *OPENERS)
            return
        stream.take()
        if stream.kind() == "number" and stream.kind(-1) in ("row", "round"):
            stream.take()
