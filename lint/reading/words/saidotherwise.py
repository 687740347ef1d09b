"""Words that say in their own order what others say plainly: "the next corner's middle sc", "in the same way as Row 2"."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.words.stream import CLOSERS, OPENERS, Stream

_OWNERS = ("corner's", "corner’s")
_POINTING = ("next", "first", "last", "same", "each", "the")
_ROWS = ("row", "round", "number", "ordinal", "ordinals", "last", "the")
_MANNERS = ("way", "manner", "fashion")
_BEFORE_IT = ("previous", "prev", "last", "preceding")
_UNITS = ("any_stitch", "stitch", "chain")
_COUNTED = ("counting", "including", "incl")
_CLAUSE_ENDS = (",", ";", ".", "turn", *CLOSERS)


def said_plainly(stream: Stream) -> Stream:
    """The row's stream with such words in the order, or as the words, in which they are read."""
    changed = _chains_over(
        _all_across(
            _counted_among(
                _same_way(
                    _others_skipped(
                        _walked_over(
                            _of_the_corner(_in_rows_of(_past_short_rows(_past_the_turn(_rows_in_turn(stream.lexemes)))))
                        )
                    )
                )
            )
        )
    )
    return stream if changed is stream.lexemes else Stream(changed, stream.vocabulary)


def _past_the_turn(words: list[Lexeme]) -> list[Lexeme]:
    """ "each st to the turn, sc in next 4 sts of Rnd 1 beyond it" as "each st to end, sc in next 4 sts beyond it".

    What lies beyond the turn of a short row is of the row before it, and up to the turn are all of its own stitches.
    """
    beyond = [at for at, item in enumerate(words) if item.lower in ("beyond", "past")]
    for at in reversed(beyond):
        kinds = [item.kind for item in words[max(0, at - 3) : at]]
        if kinds in (["of", "row", "number"], ["of", "round", "number"]):
            words = [*words[: at - 3], *words[at:]]
    to_turn = [
        at for at in range(len(words) - 3) if [one.kind for one in words[at : at + 4]] == ["to", "the", "turn", ","]
    ]
    each = len(to_turn) == 1 and [item.kind for item in words[max(0, to_turn[0] - 2) : to_turn[0]]] == [
        "each",
        "any_stitch",
    ]
    if each and (beyond or any(item.lower == "unworked" for item in words[to_turn[0] :])):
        at = to_turn[0]
        words = [
            *words[: at + 1],
            replace(words[at + 2], kind="ending", text="end"),
            *words[at + 3 :],
        ]
    return words


def _past_short_rows(words: list[Lexeme]) -> list[Lexeme]:
    """ "sc in each st of previous short row, sc in next 3 sts" as "… next 3 sts beyond it": all of that row is worked before."""
    over = [at for at, item in enumerate(words) if item.lower == "short" and words[at - 1].lower in _BEFORE_IT]
    if len(over) != 1 or any(item.lower in ("beyond", "past") for item in words):
        return words
    run, behind = words[: over[0]], over[0] + 2
    clause = next((at for at in range(len(run), 0, -1) if run[at - 1].kind in _CLAUSE_ENDS), 0)
    whole = any(item.kind == "each" for item in run[clause:]) and not any(
        item.kind == "number" for item in run[clause:]
    )
    nexts = next((at for at in range(behind, len(words)) if words[at].kind == "next"), len(words))
    between = [item.kind for item in words[behind:nexts]]  # ", sc in": nothing else lies between the two
    kinds = [item.kind for item in words[nexts + 1 : nexts + 3]]
    straight = [kind for kind in between if kind not in (",", "and", "then")] in (
        ["stitch", "in"],
        ["number", "stitch", "in"],
    )
    if not whole or not straight or kinds not in (["number", unit] for unit in _UNITS) or not _ends(words, nexts + 3):
        return words
    if any(item.kind == "next" for item in words[nexts + 1 :]):
        return words
    end = words[nexts + 2].end
    beyond = [Lexeme("word", word, end, end, False) for word in ("beyond", "it")]
    return [*words[: nexts + 3], *beyond, *words[nexts + 3 :]]


def _in_rows_of(words: list[Lexeme]) -> list[Lexeme]:
    """ "in rounds of dc for 8 rounds", "in rows of sc until …" as "in dc …": how many rows it is, or how long, is told behind."""
    for at in range(len(words) - 4):
        kinds = [item.kind for item in words[at : at + 5]]
        if kinds[0] == "in" and kinds[1] in ("row", "round") and kinds[2:4] == ["of", "stitch"]:
            if kinds[4] == "for" or words[at + 4].lower in ("until", "till"):
                return [*words[: at + 1], *words[at + 3 :]]
    return words


def _of_the_corner(words: list[Lexeme]) -> list[Lexeme]:
    """ "the next corner's middle sc" as "the middle sc of the next corner": its words keep their places in the text."""
    owners = [at for at, item in enumerate(words) if item.lower in _OWNERS]
    for at in reversed(owners):
        named = [item.kind for item in words[at + 1 : at + 3]]
        if named not in (["middle", "stitch"], ["middle", "any_stitch"], ["middle", "chain"]):
            continue
        first = at
        while first and words[first - 1].kind in _POINTING:
            first -= 1
        corner = words[at]
        of = Lexeme("of", "of", corner.start, corner.start, False)
        owned = [*words[first:at], replace(corner, kind="corner", value="")]
        words = [*words[:first], *words[at + 1 : at + 3], of, *owned, *words[at + 3 :]]
    return words


def _same_way(words: list[Lexeme]) -> list[Lexeme]:
    """ "Keep going in the same way as Row 2", "Work in the same manner as Row 2" as "as Row 2", where a clause begins so."""
    if [item.kind for item in words[:3]] == ["same", "more", "as"] and words[1].lower == "again":
        words = [words[0], *words[2:]]  # "Same again as Rnds 4-6"
    for at, item in enumerate(words):
        if item.kind != "as" or not at or [w.kind for w in words[at + 1 : at + 2]] not in [[kind] for kind in _ROWS]:
            continue
        if not any(word.kind in ("row", "round") for word in words[at + 1 : at + 5]):
            continue
        first = _manner(words, at)
        if first is None:
            continue
        while first and words[first - 1].kind == "make":
            first -= 1
        if not first or words[first - 1].kind in (".", ",", ";"):
            return [*words[:first], *words[at:]]
    return words


def _manner(words: list[Lexeme], at: int) -> int | None:
    """Where "in the same way" before an "as" begins, or words of going on with it; None where other words stand there."""
    before = words[at - 1]
    if before.kind == "open_work":
        return at - 1 if before.lower.endswith(tuple(f"same {manner}" for manner in _MANNERS)) else None
    told = [item.lower for item in words[max(0, at - 5) : at] if item.lower not in ("exactly", "just")]
    if told[-1] in _MANNERS and told[-4:-1] == ["in", "the", "same"]:
        return max(index for index in range(at) if words[index].lower == "in")
    return None


def _others_skipped(words: list[Lexeme]) -> list[Lexeme]:
    """ "skip the other 15 sts", behind those that are worked, as "skip the next 15 sts"."""
    for at in range(2, len(words) - 2):
        one = words[at]
        if one.lower != "other" or [item.kind for item in words[at - 2 : at]] != ["skip", "the"]:
            continue
        if words[at + 1].kind == "number" and words[at + 2].kind in _UNITS and _ends(words, at + 3):
            words = [*words[:at], replace(one, kind="next"), *words[at + 1 :]]
    return words


def _ends(words: list[Lexeme], at: int) -> bool:
    """Whether a clause ends at an index."""
    return at >= len(words) or words[at].kind in _CLAUSE_ENDS


def _walked_over(words: list[Lexeme]) -> list[Lexeme]:
    """ "sl st over dc, 2 tr and 1 dtr" with a slip stitch before each sort that it is worked over, and before "and into next dtr".

    Only where the last sort hangs on the others with "and" and no clause of the list has a place of its own: "sl st over 2 dc,
    2 tr in next sp" works two trebles.
    """
    for at in range(len(words) - 2, 0, -1):
        slip = words[at - 1]
        if words[at].kind not in ("over", "across") or slip.value != "sl st":
            continue
        starts, end = _sorts(words, at + 1)
        if len(starts) > 1 and _worked_or_walked(words, starts):
            return [*words[:at], replace(words[at], kind="word"), *words[at + 1 :]]  # not understood
        if len(starts) < 2 or words[starts[-1] - 1].kind != "and":
            continue
        further = words[end : end + 2]
        leads = len(further) == 2 and further[0].kind == "and" and further[1].kind == "in"
        if not leads and not _ends(words, end):
            continue
        cuts = [*starts[1:], *([end + 1] if leads else [])]
        made: list[Lexeme] = []
        for index, word in enumerate(words):
            if index + 1 in cuts and word.kind in ("and", ","):
                made.append(replace(word, kind=","))
                continue
            if index in cuts:
                made.append(Lexeme("stitch", "", word.start, word.start, False, slip.value))
                if index in starts:
                    made.append(Lexeme(words[at].kind, words[at].text, word.start, word.start, False))
            made.append(word)
        return made
    return words


def _worked_or_walked(words: list[Lexeme], starts: list[int]) -> bool:
    """Whether "sl st over 2 dc, 1 tr," may walk over the treble or work it: another sort, and no place of its own."""
    sort = next(at for at in range(starts[1], len(words)) if words[at].kind == "stitch")
    before = words[starts[1] - 2].value
    return words[starts[1] - 1].kind == "," and words[sort].value != before and _ends(words, sort + 1)


def _sorts(words: list[Lexeme], at: int) -> tuple[list[int], int]:
    """Where each sort of "dc, 2 tr and 1 dtr" begins, and where the list ends."""
    starts: list[int] = []
    while True:
        begun = at
        while at < len(words) and words[at].kind in ("the", "next", "first", "number"):
            at += 1
        if at >= len(words) or words[at].kind != "stitch":
            return starts, begun - 1 if starts else begun
        starts.append(begun)
        at += 1
        if at >= len(words) or words[at].kind not in (",", "and"):
            return starts, at
        last = words[at].kind == "and"
        at += 1
        if last and len(starts) > 1 and words[starts[-1] - 1].kind == "and":
            return starts, at - 1


def _counted_among(words: list[Lexeme]) -> list[Lexeme]:
    """ "32 tr, counting the 3 missed ch as 1 tr" without its comma: the words tell what is among those counted."""
    for at in range(2, len(words) - 1):
        if words[at].kind != "," or words[at + 1].lower not in _COUNTED:
            continue
        counted = words[at - 1].kind in ("stitch", "any_stitch") and words[at - 2].kind == "number"
        led = at < 3 or words[at - 3].kind in (".", "dash", "=", *OPENERS)
        end = next((i for i in range(at + 1, len(words)) if words[i].kind in (".", ",", ";", *CLOSERS)), len(words))
        if counted and led and any(item.kind in ("chain", "turning_chain") for item in words[at + 2 : end]):
            return [*words[:at], *words[at + 1 :]]
    return words


def _rows_in_turn(words: list[Lexeme]) -> list[Lexeme]:
    """ "(Rep Row 2, then Row 3) 3 times" as "(Rep Row 2 and Row 3) 3 times": in a bracket of their own both are meant."""
    kinds = [item.kind for item in words]
    for at in range(1, len(words) - 5):
        if kinds[at] != "repeat" or kinds[at - 1] not in OPENERS or kinds[at + 1] not in ("row", "round"):
            continue
        sign = at + 3
        behind = sign + (kinds[sign] == ",")
        behind += kinds[behind : behind + 1] == ["then"]
        if behind == sign or kinds[behind : behind + 2] != kinds[at + 1 : sign] or kinds[at + 2] != "number":
            continue
        follows = words[at + 2].number + 1 == words[behind + 1].number
        if follows and [*kinds[behind + 2 : behind + 3], "end"][0] in CLOSERS:
            return [*words[:sign], replace(words[sign], kind="and", text="and"), *words[behind:]]
    return words


def _all_across(words: list[Lexeme]) -> list[Lexeme]:
    """ "sc in every hdc and hdc in every sc, all across" without the comma before how far that goes."""
    for at in range(3, len(words)):
        far = words[at].kind in ("across", "around") and words[at].lower.startswith("all ") and _ends(words, at + 1)
        if far and words[at - 1].kind == "," and [item.kind for item in words[at - 3 : at - 1]] == ["each", "stitch"]:
            return [*words[: at - 1], *words[at:]]
    return words


def _chains_over(words: list[Lexeme]) -> list[Lexeme]:
    """ "sc in each sc, ch 1 and sk each ch-1 sp", "ch 1, sk 1 over each ch-1 sp" as "and ch 1 over each ch-1 sp".

    Both run along the row side by side, as they come: the spaces are not all skipped behind the last stitch.
    """
    for at in range(4, len(words) - 3):
        if words[at].kind != "skip" or [item.kind for item in words[at - 3 : at - 1]] != ["chain", "number"]:
            continue
        before = [item.kind for item in words[max(0, at - 8) : at - 3] if item.kind not in ("across", "around")]
        along = before[-3:] in (["each", "stitch", ","], ["each", "stitch", "and"])
        if not along or words[at - 1].kind not in ("and", ","):
            continue
        one = 1 + (words[at + 1].kind == "number")  # "sk 1 over each", "sk each"
        one += words[at + one].kind == "over"
        if words[at + one].kind != "each" or not _space(words[at + one + 1 : at + one + 5]):
            continue
        over = Lexeme("over", words[at].text, words[at].start, words[at + one].start, False)
        led = replace(words[at - 4], kind="and")
        return [*words[: at - 4], led, *words[at - 3 : at - 1], over, *words[at + one :]]
    return words


def _space(words: list[Lexeme]) -> bool:
    """Whether words name a chain space: "ch-1 sp", "sp"."""
    return any(item.kind == "space" for item in words)


__all__ = ["said_plainly"]
