"""Reads how often a clause is worked, where that stands behind it: "dec (3 times)", "sc in ring 8 times"."""

from __future__ import annotations

from lint.amount import Amount
from lint.lexeme import Lexeme
from lint.place import Place, TargetKind, Which
from lint.reading.words.rowending import ends_work
from lint.reading.words.stream import OPENERS, Stream
from lint.tree import Step, Work


def several_may_be_meant(found: tuple[Place, ...]) -> bool:
    """Whether "n times" behind a place may be of as many places: "sc in next 2 sts 3 times", not "sc in ring 8 times"."""
    if any(place.between for place in found):
        return True  # "V-st between next 2 V-sts 4 times"
    onward = any(place.which in (Which.NEXT, Which.EACH) for place in found)
    return onward and any(target.kind in (TargetKind.ANY_STITCH, TargetKind.STITCH) for target in found[-1].targets)


def times_in_brackets(stream: Stream) -> Amount | None:
    """ "dec (3 times)", "hdc2tog (twice)"."""
    start = stream.at
    if stream.take_if("("):
        word = stream.peek()
        if word.lower in ("once", "twice", "thrice"):
            stream.take()
            number: Amount | None = Amount.of(word.number)
        else:
            number = stream.amount()
            if not stream.take_if("times"):
                number = None
        if number is not None and stream.take_if(")"):
            return number
    stream.at = start
    return None


def so_many_in_brackets(stream: Stream, shaped: bool) -> Amount | None:
    """ "sc (5, 6, 7)": a number for each size; behind a `shaped` stitch that ends the row, "…, sc2tog (18, 20, 22)", its count."""
    start = stream.at
    number = stream.amount() if stream.kind() in ("(", "[") and stream.vocabulary.sizes > 1 else None
    if number is not None and shaped and start > 1 and _last(stream, 0):
        stream.at = start
        return None
    return number


def count_follows(stream: Stream, start: int) -> bool:
    """Whether "29 sts." that ends the row stands at the cursor, behind the "sc2tog" at `start` that is not its only work."""
    if not any(one.kind in ("stitch", "increase", "decrease") for one in stream.lexemes[:start]):
        return False
    units = stream.peek(1).lower in ("sts", "stitches") and stream.kind(2) in (".", "end")
    enclosed = stream.peek().text[:1] in OPENERS  # a list over the sizes is one number with its brackets
    return stream.kind() == "number" and (enclosed or units) and _last(stream, 1 + units)


def _last(stream: Stream, ahead: int) -> bool:
    """Whether the row ends so many words ahead, and these do not say how often something is worked."""
    often = stream.kind(ahead) in ("times", "more") or stream.word("x", "×", ahead=ahead)
    return not often and ends_work(stream, stream.at + ahead)


def over_its_stitches(stream: Stream, together: int | None) -> bool:
    """Takes the "3 sts" of "sc3tog 3 sts": just those that it works together."""
    told = together is not None and stream.kind() == "number" and stream.peek().number == together
    told = told and stream.peek().text.isdigit() and stream.peek(1).lower in ("sts", "stitches")
    stream.at += 2 * told
    return told


def clauses_of(step: Step, lexemes: list[Lexeme]) -> tuple[Step, ...] | None:
    """ "2 sc inc" in "2 sc inc x 6" is two clauses; "sc inc" may be that or one increase: None.  Any other clause is itself."""
    words = [item for item in lexemes if step.span.start <= item.start < step.span.end]
    kinds = [item.kind for item in words]
    if kinds[-1:] not in (["increase"], ["decrease"]) or "stitch" not in kinds:
        return (step,)
    if kinds[:-1] != ["number", "stitch"]:
        return None
    number, stitch, shaped = words
    plain = Work(number.span.to(stitch.span), stitch.value, number.quantity, number_said=True)
    return plain, Work(shaped.span, "inc" if shaped.kind == "increase" else "dec")
