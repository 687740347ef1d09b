"""Reads one working clause: how many of which stitch, and where."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lint.amount import ONE, Amount
from lint.lexicon import Lexeme
from lint.place import Limit, LimitKind, Place, Which
from lint.reading.places.countunits import singular
from lint.reading.places.freeloops import loops_of_all
from lint.reading.places.fromhook import from_nth_chain, so_many_from_hook
from lint.reading.places.howoften import (
    count_follows,
    over_its_stitches,
    several_may_be_meant,
    so_many_in_brackets,
    times_in_brackets,
)
from lint.reading.places.limits import limit
from lint.reading.places.madeof import DOUBLED, hung_on, increase_told, legs_before, legs_behind
from lint.reading.places.ordinals import merges
from lint.reading.places.places import places
from lint.reading.places.targets import ANY, LOOPS, of_a_row_below
from lint.reading.places.totals import into_an_edge
from lint.reading.words.lists import in_each_by_size
from lint.reading.words.onestitch import one_stitch_name
from lint.reading.words.stream import SIGNS, Stream
from lint.source import Span
from lint.tree import PLAIN, Special, Step, Work

_ONE_LOOP = ("back_loop", "front_loop", "third_loop")
_MOST_TOGETHER = 100  # no stitch closes more legs: beyond that the number is a slip of the pen
_AFTER_LOOP = ("in", "around", "across", ",", ".", "end")
_BEHIND_LOOPS = (*_AFTER_LOOP, ";", "(", "[", "{", ")", "dash", "=", "to")
_AFTER_COLOUR = (",", ";", ".", "end", "(", "[", ")", "]", "and", "dash", "star", "then")
GROUPS = ("group", "groups", "grp", "grps")


def post_stitch(key: str) -> bool:
    """Whether a stitch's key is that of a post stitch."""
    return key.startswith(("FP", "BP"))


def work(stream: Stream, start: int, number: Amount | None) -> Step | None:
    """The work clause at the cursor (any number before it is taken already); None if there is none."""
    before = stream.at
    step = _work(stream, start, number)
    if not isinstance(step, Work):
        return step
    if (step.together or 0) > _MOST_TOGETHER:
        return None
    loop = _loop_named(stream.lexemes[before : stream.at])
    return replace(step, loop=loop) if loop is not None else step


def _loop_named(lexemes: Sequence[Lexeme]) -> str | None:
    """The one loop that a clause names: "in back loop only", "in the 3rd loop of each st"."""
    for index, one in enumerate(lexemes):
        if one.kind in _ONE_LOOP:
            return one.kind.split("_")[0]
        third = one.kind == "ordinal" and one.number == 3
        if third and [word.lower for word in lexemes[index + 1 : index + 2]] in (["loop"], ["lp"]):
            return "third"
    return None


def _work(stream: Stream, start: int, number: Amount | None) -> Step | None:
    stream.take_if("beginning")
    lexeme = stream.peek()
    if lexeme.kind == "number" and number is not None:
        return None
    special, undefined, again, doubled = None, False, False, None
    legs = legs_before(stream, number)
    if legs is not None:
        lexeme, number = stream.peek(), None
    if lexeme.kind == "stitch" and stream.kind(1) == "one_stitch" and lexeme.value != "sl st":
        stream.take()  # "dc cluster in next st"
        stitch = one_stitch_name(stream.take().lower)
    elif lexeme.kind == "stitch":
        stitch = stream.take().value
    elif lexeme.kind == "special":
        stream.take()
        special = stream.vocabulary.specials.get(lexeme.value)
        stitch = lexeme.value
    elif lexeme.kind == "one_stitch":
        stream.take()
        stitch = one_stitch_name(lexeme.lower)
        legs = legs or legs_behind(stream)
    elif lexeme.kind == "group_word":
        stream.take()
        stitch, undefined = singular(lexeme.lower.replace(" - ", "-")), True
        legs = legs or legs_behind(stream)
        if legs is not None:
            special, undefined = Special(stitch, legs.span, (legs,), one_stitch=False), False
    elif lexeme.kind == "picot":
        stream.take()
        special = stream.vocabulary.specials.get("picot")
        stitch = "picot"
    elif lexeme.doubled and lexeme.kind == "increase":
        stream.take()
        return _increased(stream, start, PLAIN, DOUBLED, number)
    elif lexeme.kind in ("increase", "decrease"):
        stream.take()
        stitch, doubled = ("inc", None) if lexeme.kind == "increase" else ("dec", DOUBLED if lexeme.doubled else None)
    else:
        return None
    if lexeme.kind == "stitch" and number is not None and stream.word(*GROUPS) and stream.kind(1) in ("in", "over"):
        stream.take()  # "3 dc group in next sp"
    if lexeme.kind == "stitch" and number is not None and hung_on(stream, "group_word"):
        stream.take()  # "5dc-shell in next st"
        legs = Work(Span(lexeme.start, lexeme.end), stitch, number)
        lexeme, number = stream.take(), None
        stitch = singular(lexeme.lower)
        special = Special(stitch, legs.span, (legs,), one_stitch=False)
    if lexeme.kind == "stitch" and number is not None and hung_on(stream, "one_stitch"):
        legs = Work(Span(lexeme.start, lexeme.end), stitch, number)  # "3dc-cl": one stitch of three legs
        stream.take()
        stitch, number = one_stitch_name(stream.take().lower), None
    if lexeme.kind == "stitch" and stream.kind() == "dash" and stream.peek().glued and stream.kind(1) == "one_stitch":
        if stream.peek(1).glued:  # "dc-cl over next 3 sts"
            stream.take()
            stitch = one_stitch_name(stream.take().lower)
    if lexeme.kind == "stitch" and stitch != "sl st" and (several := increase_told(stream)) is not None:
        return _increased(stream, start, stitch, several, number)
    together = _together(stream) or doubled
    if together is not None and stream.kind() == "one_stitch":
        stitch = one_stitch_name(stream.take().lower)  # "dc3tog cluster"
    dash = int(hung_on(stream, "decrease"))  # "sc-dec"
    if together is None and stitch not in ("inc", "dec", "sl st", "picot") and stream.kind(dash) == "decrease":
        together = DOUBLED if stream.peek(dash).doubled else 2
        stream.at += dash + 1
    if number is not None and together is None and stream.kind() == "together":  # "2 dc tog"
        stream.take()
        together, number = number.lone or 2, None
    elif number is not None and lexeme.kind == "stitch" and stream.kind() == "together":
        return None
    number_after = in_each = False
    if number is None and over_its_stitches(stream, together):
        pass
    elif (
        number is None
        and stream.kind() == "number"
        and stream.peek().value != "cell"
        and not stream.word("once", "twice", "thrice")
        and stream.kind(1) not in ("together", "below")
        and not (together is not None and count_follows(stream, start))
        and not (stream.peek(1).glued and stream.kind(1) in ("stitch", "increase", "decrease"))  # "inc 5sc inc 5sc"
        and not (stream.kind(1) in ("row", "round") and stream.kind(2) == "below")
    ):
        after = stream.at
        number = stream.amount()
        if number is not None and (stream.kind() == "times" or stream.word("x", "×") and stream.kind(1) != "number"):
            stream.take()
        elif number is not None and stream.kind() == "more" and stream.kind(1) == "times" and stream.kind(2) == "in":
            stream.at += 2  # "dc 3 more times in same ch"
            again = True
        elif stream.kind() == "more" or number is None:
            stream.at, number = after, None
        else:
            number_after = True
    elif (
        number is None
        and stream.word("once", "twice", "thrice")
        and (together is not None or special is not None or stitch in ("inc", "dec"))
        and stream.kind(1) in (",", ";", ".", "end", "(", "[", ")", "dash", "=", "turn", "and", "star")
    ):
        number, number_after = stream.take().quantity, True  # "dc2tog twice, turn"
    elif number is None and stream.word("twice", "once") and stream.kind(1) == "in":
        number, in_each = stream.take().quantity, True
    elif number is None and (several := so_many_in_brackets(stream, together is not None)) is not None:
        number, number_after = several, True
    elif (
        number is None
        and (stitch in ("inc", "dec") or together is not None)
        and (bracketed := times_in_brackets(stream)) is not None
    ):
        number, number_after = bracketed, True
    two = (
        number is not None and lexeme.kind == "stitch" and stream.kind(-1) == "decrease"
    )  # "1 sc dec x 6": two clauses
    if number in (None, ONE) and not two and stream.word("x", "×") and stream.kind(1) == "number":
        stream.take()  # "inc x 6", "1 inc x6", "inc 1 x6"
        number, number_after = stream.amount(), True
    if stream.kind() == "any_stitch":  # "36 sc sts"
        stream.take()
    elif number is not None and stream.kind() == "more" and stream.kind(1) in (*_AFTER_LOOP, "(", "["):
        stream.take()  # "11 sc more around the leg"
    if stream.kind() == "(" and stream.word("instead", ahead=1) and (close := stream.matching(stream.at)):
        stream.at = close + 1  # "3 dc (instead of 5) in last sc"
    if any(hung_on(stream, loop) for loop in LOOPS):
        stream.take()  # "hdc-blo 60"
    if stream.kind() in LOOPS and stream.kind(1) != "of":  # "sc blo in each st": how, not where
        stream.take()
        if number is None and stream.kind() == "number":
            number, number_after = stream.amount(), True  # "sc blo 12"
    loop = 2 if stream.kind(1) == "the" else 1
    if stream.kind() == "in" and stream.kind(loop) in LOOPS and stream.kind(loop + 1) in _BEHIND_LOOPS:
        stream.at += loop + 1  # "30 sc in back loops", "hdc in the BLO in each st": how, not where
    if stream.word("made", "working", "worked") and stream.kind(1) in ("in", "around", "over"):
        stream.take()  # "V-st made in 5th ch", "3 dc working around next dc"
    shapes = stitch in ("inc", "dec") or together is not None  # "6 inc per round" goes somewhere among other stitches
    if (
        stream.kind() == "in"
        and stream.kind(1) in ("each", "all")
        and stream.kind(2) in ("row", "round")
        and not shapes
    ):
        stream.at += 3  # "6 sc in each round": said of every row of a range
    elif stream.word("per") and stream.kind(1) in ("row", "round") and number is not None and not shapes:
        stream.at += 2
    each = number is not None and stream.kind() == "each"
    each = each and (stream.kind(1) == "in" or stream.word("in all", ahead=1))
    if each:
        stream.take()  # "2 dc each in next 2 sps"
    if stream.kind() == "evenly" and stream.kind(1) == "in" and not (number is not None and into_an_edge(stream)):
        stream.take()  # "sc evenly in 3rd loop of each hdc"
    if stitch == "sl st" and stream.word("back") and stream.kind(1) == "in":
        stream.take()  # "ss back into top of the dc"
    if stream.kind() == "in" and stream.peek(1).lower in stream.vocabulary.colours and stream.kind(2) in _AFTER_COLOUR:
        if stream.peek(1).lower != "a" or stream.peek(1).text == "A":
            stream.at += 2  # "8 sc in black"
    said = number is not None
    several = number.lone if said and number is not None else None
    if (several or not said) and (run := from_nth_chain(stream, start, several)):
        return Work(stream.span_from(start), stitch, ONE, run, together, special, post=post_stitch(stitch))
    found = places(stream, allow_to=stitch == "sl st")
    found = found if said else so_many_from_hook(stream, found)
    if several and several > 1 and len(found) == 1 and loops_of_all(stream, found[0]):
        return None
    at_start = len(found) == 1 and found[0].from_words == "start" and found[0].which is Which.FIRST
    if several and several > 1 and at_start and stream.lexemes[stream.at - 2].kind == "at":
        return None  # "2 sc at beg, sc to end": both in the first, or one in each of two
    if in_each or len(found) == 1 and (each or several and in_each_by_size(several, found[0].number)):
        found = tuple(replace(place, each_of=True) for place in found)  # "sc twice in next 2 sts"
    if again:
        found = tuple(replace(place, from_words="again") for place in found)
    if found and stream.kind() == "in" and stream.kind(1) in LOOPS:  # "in each st in back loops around"
        stream.at += 2
    below = stream.at
    if not found and stream.kind() in ("number", "the", "row", "round") and of_a_row_below(stream):
        found = (Place(stream.span_from(below), Which.NEXT, (ANY,), below=True),)  # "FPdc 2 rows below"
    cell = stream.peek().value == "cell"  # "inc", and behind a tab the row's count
    counted = cell or together is not None and count_follows(stream, start)
    if not found and stream.kind() == "number" and not said and not counted and stream.kind(1) != "times":
        return None
    if not found:
        reach = limit(stream)
        if reach is not None:
            found = (Place(stream.span_from(start), Which.EACH, (ANY,), limit=reach),)
        elif stream.kind() == "in" and stream.kind(2 if stream.kind(1) == "the" else 1) == "other_side":
            pass  # "7 sc on the other side": which side, not where in it
        elif stream.kind() == "in" or (stream.kind() in ("over", "between") and stitch != "sl st"):
            return None
    elif len(found) == 1 and found[0].which is Which.EACH and found[0].limit is None:
        found = (replace(found[0], limit=limit(stream)),)
    elif found[-1].which is Which.EACH and found[-1].limit is None:
        found = (*found[:-1], replace(found[-1], limit=limit(stream)))
    elif stream.kind() == "and" and stream.kind(1) in ("across", "around"):  # "dc in next dc and across"
        stream.take()
        found = (*found, Place(stream.span_from(start), Which.EACH, found[-1].targets, limit=limit(stream)))
    elif _names_one(found[-1]) and (found[-1].bare or len(found) == 1 and _to_rows_end(stream)):
        reach = limit(stream)  # "V-st in V-st across", "hdc in next hdc across"
        found = _run_on(found, reach) if reach is not None else found
    elif _names_one(found[-1]) and stream.kind() in ("across", "around") and _goes_on(stream):
        return None  # "hdc in next hdc across, hdc in last 3": to where?
    else:
        _fill_limit(stream)
    if found and found[-1].which is Which.ELSEWHERE and stream.kind() == "at":  # "10 missed sts at centre front"
        stream.pass_to(",", ";", ".", "(", "[")
    if (
        not said
        and stream.kind() == "number"
        and stream.kind(1) == "times"
        and found
        and not several_may_be_meant(found)
    ):
        number = stream.amount()
        stream.take()
        said = True
    if stream.word("twice", "thrice") and len(found) == 1 and stream.kind(1) in (",", ";", ".", "end", ")", "]"):
        if found[0].which is Which.NEXT and found[0].number == ONE and not found[0].of:
            several = stream.take().quantity  # "2 sc in next sc twice"
            found = (replace(found[0], number=several, each_of=True),)
    if found and stream.kind() in ("next", "together") and stream.kind() == "together":
        stream.take()
        together = found[0].number.lone or 2
        reach = limit(stream) if len(found) == 1 and found[0].which is Which.NEXT else None
        if reach is not None:  # "sc next 2 sts tog around"
            found = (replace(found[0], which=Which.EACH, number=ONE, limit=reach),)
    legs_each = together or (2 if stitch == "dec" else 0)
    if len(found) == 1 and legs_each and found[0].number.lone == legs_each and _each_so_many(stream, found[0]):
        reach = limit(stream) or Limit(LimitKind.END)  # "dec over every two sts (to last 2 sts)"
        found = (replace(found[0], which=Which.EACH, number=ONE, limit=reach),)
    if stitch == "sl st" and found and stream.word("again") and stream.kind(1) in (*SIGNS, "end"):
        stream.take()  # "sl st over to the corner sp again"
    return Work(
        stream.span_from(start),
        stitch,
        number or ONE,
        found,
        together,
        special,
        post=post_stitch(stitch),
        number_after=number_after,
        number_said=said,
        undefined=undefined,
    )


def _increased(stream: Stream, start: int, stitch: str, several: int, number: Amount | None) -> Work | None:
    """ "hdc inc", "hdc inc 4", "hdc inc in each st": two of the stitch in each of so many places; "a 5 dc inc in next st"."""
    before = number
    if number is None and stream.kind() == "number":
        number = stream.amount()
    found = places(stream)
    if before is not None and found and all(place.number == ONE for place in found):
        if not before.lone:
            return None  # "0 (1, 2) sc inc in next st": an increase for some sizes?
        several = (
            before.lone if before.lone > 1 else several
        )  # so many in one place; "1 sc inc in next st" is an increase
    if not found:
        reach = limit(stream)
        if reach is not None:
            found = (Place(stream.span_from(start), Which.EACH, (ANY,), limit=reach),)
        else:
            found = (Place(stream.span_from(start), Which.NEXT, (ANY,), number or ONE, each_of=True),)
    elif found[-1].which is Which.EACH and found[-1].limit is None:
        found = (*found[:-1], replace(found[-1], limit=limit(stream)))
    return Work(stream.span_from(start), stitch, Amount.of(several), found, number_said=True)


def _run_on(found: tuple[Place, ...], reach: Limit) -> tuple[Place, ...]:
    """ "V-st in V-st across", "hdc in each st and in the ch around": one run, over both sorts where two are named."""
    last = replace(found[-1], which=Which.EACH, limit=reach)
    if len(found) > 1 and merges(found[-2], last):
        both = replace(
            found[-2], targets=found[-2].targets + last.targets, limit=reach, span=found[-2].span.to(last.span)
        )
        return *found[:-2], both
    return *found[:-1], last


def _each_so_many(stream: Stream, place: Place) -> bool:
    """Whether a place is told as "every two sts": over and over, not the next two."""
    said = [item.kind for item in stream.lexemes if place.span.start <= item.start < place.span.end]
    return place.which is Which.NEXT and "each" in said and not {"next", "first", "last", "of"} & set(said)


def _names_one(place: Place) -> bool:
    return place.which is Which.NEXT and place.number == ONE and not place.each_of


def _to_rows_end(stream: Stream) -> bool:
    """Whether an "across" or "around" stands at the cursor behind which the row works nothing more."""
    if stream.kind() not in ("across", "around"):
        return False
    if stream.kind(1) in (",", ";", "and", "dash"):
        return stream.kind(2) in ("end", "turn", "join", "number")
    return stream.kind(1) in ("end", ".", "turn", "join", "(", "[", "=")


def _goes_on(stream: Stream) -> bool:
    """Whether more stitches are told behind the "across" at the cursor, not a repeat that fills the row."""
    ahead = 2 if stream.kind(1) in (*SIGNS, "and") else 1
    return stream.kind(ahead) in ("stitch", "number", "increase", "decrease", "special", "one_stitch", "in")


def _fill_limit(stream: Stream) -> None:
    """Passes an idle "across" or "around" after a place that says its own number."""
    ends = (",", ";", ".", "end", "(", "[", "{", "turn", "and")
    if stream.kind() in ("across", "around") and stream.kind(1) in ends:
        stream.take()
    elif stream.kind() in ("across", "around"):  # "across row to end"
        start = stream.at
        stream.take()
        stream.skip("the", "row", "round")
        stream.skip("to", "ending") if stream.kind() == "to" and stream.kind(1) == "ending" else None
        if stream.kind() not in ends or stream.kind(-1) not in ("row", "round", "ending"):
            stream.at = start


def _together(stream: Stream) -> int | None:
    """The number in "dc2tog" or "dc 2 tog"."""
    if stream.kind() == "number" and stream.peek().amount is None and stream.kind(1) == "together":
        number = stream.take().number
        stream.take()
        return number
    return None
