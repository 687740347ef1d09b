"""Reads places told by their number or as a chain's end: "3rd ch of beg ch-4", "2nd of next 3 sc", "top of ch-3"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import Place, Target, TargetKind, Which
from lint.reading.places.targets import ANY, how_many, of_last_row, target
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream


def ordinal(stream: Stream, start: int) -> Place | None:
    """ "4th ch from hook", "3rd ch of beg ch-4", "2nd of next 3 sc", "3rd dc of next shell"."""
    first = stream.take()
    ordinals = [1 if first.kind == "first" else first.number]
    share = stream.kind() == "of" and stream.word("sts", "stitches", ahead=1 + (stream.kind(1) == "the"))
    if share and first.text.isalpha() and stream.word("a", "an", "one", ahead=-2):
        return None  # "a third of the sts" is a share of the row, and no third stitch
    while True:
        before = stream.at
        stream.skip(",", "and")
        if stream.at > before and stream.kind() == "ordinal":
            ordinals.append(stream.take().number)
            continue
        stream.at = before
        break
    found = Target(TargetKind.CHAIN) if stream.kind() == "of" else target(stream)
    if found is None:
        return _the_one_behind(stream, start, ordinals)
    if stream.kind() == "from":
        stream.take()
        stream.skip("the")
        if not stream.take_if("hook", "ending"):  # "6th ch from the end"
            return None
        if found.kind is TargetKind.SPACE and found.length is None:
            found = Target(TargetKind.CHAIN)  # "2nd loop from the hook"
        return Place(
            stream.span_from(start), Which.FROM_HOOK, (found,), Amount.of(len(ordinals)), ordinals=tuple(ordinals)
        )
    stream.skip("made")
    if of_last_row(stream):
        return _numbered(stream, start, found, ordinals)
    if stream.kind() == "of" or stream.word("in") and stream.kind(1) in ("beginning", "turning_chain"):
        behind = stream.at
        stream.take()
        stream.skip("the")
        word = stream.take_if("next", "same", "last", "first", "each", "beginning", "any")
        among = how_many(stream)
        owner = target(stream)
        if word is not None and word.lower in ("these", "those") and (last := _last_told(stream, start)) is not None:
            if owner not in (None, last[1]) or among not in (None, last[0]):
                return None  # "… to last 5 tr, dc in 2nd of these 3 sc"
            return Place(
                stream.span_from(start), Which.NTH, (last[1],), last[0], ordinals=tuple(ordinals), from_words="last"
            )
        if owner is None:
            return None
        if (
            among is not None
            and stream.kind() in ("at", "in")
            and stream.kind(1) == "each"
            and stream.kind(2) == "corner"
        ):
            if among.lone != 2 * ordinals[0] - 1:
                return None  # not the middle one
            stream.at += 3  # "2nd of 3 sc at each corner"
            corner = Target(TargetKind.CORNER)
            return Place(stream.span_from(start), Which.EACH, (owner,), of=corner, middle=True)
        named = found.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH)
        if among is not None and owner.kind is TargetKind.SPECIAL and named:
            stream.at = behind  # "3rd dc of next 2 shells": of each of so many
            return Place(stream.span_from(start), Which.NTH, (found,), ordinals=tuple(ordinals))
        if among is not None and word is not None and word.kind == "next":  # "2nd of next 3 sc"
            return Place(stream.span_from(start), Which.NTH, (owner,), among, ordinals=tuple(ordinals))
        stitches = owner.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH)
        if among is not None and word is not None and word.kind in ("last", "same") and stitches:
            if word.kind == "same":
                return None  # "3rd of these 5 tr": which those are, no words tell
            return Place(
                stream.span_from(start), Which.NTH, (owner,), among, ordinals=tuple(ordinals), from_words="last"
            )
        arch = owner.kind is TargetKind.SPACE or owner.kind is TargetKind.CHAIN and owner.length is not None
        loop = owner.kind is TargetKind.SPACE and owner.name is None and word is None
        if found.kind is TargetKind.CHAIN and arch and (loop or word is not None and word.kind == "next"):
            sort = Target(TargetKind.SPACE, length=owner.length)  # "3rd ch of next ch-5": into the arch
            if len(ordinals) > 1:  # "2nd and 3rd ch of lp": single chains of one loop
                sort = Target(TargetKind.TURNING_CHAIN, length=owner.length)
                span = stream.span_from(start)
                return Place(span, Which.NEXT, (sort,), ordinals=tuple(ordinals), from_words="loop")
            return Place(stream.span_from(start), Which.NEXT, (sort,))
        if found.kind is TargetKind.CHAIN or owner.kind in (TargetKind.CHAIN, TargetKind.TURNING_CHAIN):
            return Place(
                stream.span_from(start),
                Which.NEXT,
                (Target(TargetKind.TURNING_CHAIN, length=owner.length),),
                ordinals=tuple(ordinals),
                from_words=word.kind if word else "",
            )
        # "3rd dc of any shell": where a round may begin
        which = {"each": Which.EACH, "any": Which.ANY}.get(word.kind if word else "", Which.NTH)
        return Place(
            stream.span_from(start),
            which,
            (found,),
            ordinals=tuple(ordinals),
            of=owner,
            of_which=word.kind if word else "",
        )
    return _numbered(stream, start, found, ordinals)


def first_and_others(stream: Stream, start: int) -> Place | None:
    """ "first, third and fifth ch of next ch-5": chains of one loop, or stitches of one group, as "1st, 3rd and 5th" are."""
    before = stream.at
    if stream.kind(1) in (",", "and") and stream.kind(2) == "ordinal":
        found = ordinal(stream, start)
        if found is not None and (found.of is not None or found.targets[0].kind is TargetKind.TURNING_CHAIN):
            return found
    stream.at = before
    return None


def _last_told(stream: Stream, start: int) -> tuple[Amount, Target] | None:
    """How many of what the clause before has come to: "rep from * to last 5 tr, dc in 3rd of these"."""
    at = start
    while at and stream.lexemes[at - 1].kind in ("number", "stitch", "in", "the", "make", ","):
        at -= 1
        if stream.lexemes[at].kind == ",":
            break
    told = next((i for i in range(at, max(0, at - 6), -1) if stream.lexemes[i].kind == "last"), None)
    if told is None:
        return None
    inner = stream.inside(told + 1, at)
    number, sort = how_many(inner), target(inner)
    return (number, sort) if number is not None and sort is not None and inner.done else None


def _the_one_behind(stream: Stream, start: int, ordinals: list[int]) -> Place | None:
    """The "9th" behind "dc in each of the next 8 ch": the next one."""
    clause = next((at for at in range(start - 1, -1, -1) if stream.lexemes[at].kind in SIGNS), 0)
    worked = [item.number for item in stream.lexemes[:clause] if item.kind == "number" and item.amount is None]
    if len(ordinals) > 1 or worked[-1:] != [ordinals[0] - 1] or stream.kind() not in (*SIGNS, "end", "turn"):
        return None
    return Place(stream.span_from(start), Which.NEXT, (ANY,))


def _numbered(stream: Stream, start: int, found: Target, ordinals: list[int]) -> Place:
    """ "3rd st", "1st and 2nd st"; "1st st" alone is the first."""
    worked, depth = False, 0  # behind other work, the "1st st" is not the row's; "ch 3 (= 1 dc)" is none
    for item in stream.lexemes[: max(0, start - 3)]:
        depth += (item.kind in OPENERS) - (item.kind in CLOSERS)
        worked = worked or depth <= 0 and item.kind in ("stitch", "increase", "decrease", "special", "one_stitch")
    if ordinals == [1] and not worked:
        return Place(stream.span_from(start), Which.FIRST, (found,))
    return Place(stream.span_from(start), Which.NTH, (found,), ordinals=tuple(ordinals))


def _of_its_chain(stream: Stream) -> Amount | None:
    """Takes the "of the starting 3 ch" of "top ch of the starting 3 ch": how long that is."""
    start = stream.at
    if stream.take_if("of") is not None:
        stream.skip("the", "first", "beginning")
        found = target(stream)
        if (
            found is not None
            and found.kind in (TargetKind.CHAIN, TargetKind.TURNING_CHAIN)
            and found.length is not None
        ):
            return found.length
    stream.at = start
    return None


def chain_top(stream: Stream, start: int) -> Place | None:
    """ "top of beg ch-3", "base of ch 3"."""
    word = stream.take().kind
    led = stream.at
    stream.skip("of", "the", "each", "next", "last", "same", "first", "in")
    last = any(item.kind == "last" for item in stream.lexemes[led : stream.at])
    starts = any(item.kind == "first" for item in stream.lexemes[led : stream.at])
    same = any(item.kind == "same" for item in stream.lexemes[led : stream.at])
    if stream.kind() == "ordinal":
        if stream.peek().number != 1:
            return ordinal(stream, start)  # "top of 2nd ch"
        stream.take()
    chain_words = stream.take_if("beginning")
    number = how_many(stream)
    found = target(stream)
    if found is None:
        if not chain_words:
            return None
        found = Target(TargetKind.CHAIN)
    if word == "base":
        joined = "join" if chain_words or starts else None  # where the round began
        return Place(stream.span_from(start), Which.SAME, (Target(TargetKind.PLACE, joined),))
    if found.kind is TargetKind.CHAIN:
        found = Target(TargetKind.TURNING_CHAIN, length=found.length or _of_its_chain(stream))
    if found.kind is TargetKind.STITCH and (stream.take_if("made") or last and number is None):
        return Place(stream.span_from(start), Which.JUST_MADE, (found,))  # "sl st in top of last sc": a picot's
    if same and number is None and found.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH):
        return Place(stream.span_from(start), Which.SAME, (found,))  # "FPdc around next st, dc in top of same st"
    if number is not None and found.kind is not TargetKind.TURNING_CHAIN:
        return Place(stream.span_from(start), Which.NEXT, (found,), number)  # "top of next 3 sts"
    return Place(stream.span_from(start), Which.NEXT, (found,), from_words="top")


def numbered_together(one: Place, other: Place) -> Place | None:
    """ "first and second sts": numbered like "1st and 2nd sts"."""
    first = one.which is Which.FIRST and one.number == ONE and one.of is None
    numbered = other.which is Which.NTH and other.of is None and other.number == ONE
    if not first or not numbered or not other.ordinals or other.ordinals[0] < 2:
        return None
    return replace(other, ordinals=(1, *other.ordinals), shared=one.shared, span=one.span.to(other.span))


def merges(one: Place, other: Place) -> bool:
    """ "each dc and each ch-1 sp": one run over both sorts of place."""
    runs = one.which is Which.EACH and other.which is Which.EACH and one.limit is None
    return runs and one.of is None and other.of is None and not other.ordinals and one.between is other.between
