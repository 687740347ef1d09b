"""The words that define a stitch as steps; some tell two ways of working it, of which what lies below picks one."""

from __future__ import annotations

from dataclasses import replace

import regex

from lint.amount import ONE, Amount
from lint.expression import expression
from lint.lexicon import Lexicon
from lint.place import Place, Target, TargetKind, Which
from lint.reading.clauses.reader import all_read, read_inside
from lint.reading.words.stream import Stream, Vocabulary
from lint.source import Span
from lint.tree import Chain, Either, Remark, Skip, Step, Turn, Unread, Work, walk

# "sk 2 sts (or 2 ch), dc in next dc", "dc in each of next 2 sts (or 2 dc in the sp), dc in next dc"
_OR_IN_BRACKETS = expression(r"(?i)(?P<left>\b(?:sk|skip|miss)\b[^,;()]*)?\s\(or (?P<other>[^()]+)\)")


# "dc in each of next 3 sts (over a sp: 2 dc in sp, dc in next dc)"
# "over a sp, 2 dc in sp, dc in next dc; over a bl, dc in each of next 3 dc"; "2 dc in sp, dc in dc (over a sp); …"
# a square may go by the pattern's own short name: "over an om: 2 tr in the 2ch-sp, 1 tr in tr"
_SHORT_NAME = r"(?!st\b|ch\b|[dst]c\b|d?tr\b|lp\b|p\b)\p{L}{1,3}(?=\s*[,:])"
_LYING_UNDER = rf"(?:when |if )?(?:worked |made |working )?over (?:an? |another )?(?:open |solid |filled )?(?:(?:sp|space|mesh|bl|block)s?|{_SHORT_NAME})"
_UNDER = expression(rf"(?i)\b{_LYING_UNDER}\b")
_OVER_ONE_OR_OTHER = expression(
    rf"(?i)\s*{_LYING_UNDER}\s*[,:]\s*(?P<one>[^;.]+)[;.]\s*(?:and |or )?{_LYING_UNDER}\s*[,:]\s*(?P<other>[^;.]+)(?:\.[^\d;]*)?"
    rf"|\s*(?P<one>[^;.()]+?)(?:\s\(|[;,]\s(?:or,? )?){_LYING_UNDER}\s*[,:]\s*(?P<other>[^;.()]+)\)?\s*\.?"
    rf"|\s*(?P<one>[^;.()]+)\({_LYING_UNDER}\)[;,.]\s*(?:and |or )?(?P<other>[^;.()]+)\({_LYING_UNDER}\)(?:\.[^\d;]*)?"
)


# "1 tr in each of next 3 sts, putting 2 tr into a space where you meet one"
_INTO_SPACES = expression(
    r"(?i),\s*(?:putting|working|placing|with)\s+(?P<number>\d)\s?(?P<stitch>\p{L}+)\s+in(?:to)?\s+(?:an?|any|each|the|every)\s+(?:ch-?\d[\s-]|\d[\s-]?ch[\s-])?(?:sp|space)s?"
    r"(?:\s+(?:where|when|if)\s+(?:you (?:meet|come to) (?:one|it)|there is one)|\s+(?:below|of (?:the )?(?:previous )?row(?: below)?))?\s*$"
)


# "a chain of 2 and a dc in the next dc, with the 2 stitches below passed over", "…, passing over 2 stitches"
_PASSED_OVER = expression(
    r"(?i),?\s+(?:with\s+(?:the\s+)?(?:next\s+)?(?P<number>\d)\s+(?:sts|stitches|dc|tr)(?:\s+below|\s+beneath)?\s+(?:passed\s+over|skipped|missed|left)"
    r"|(?:passing\s+over|skipping|missing)\s+(?:the\s+)?(?:next\s+)?(?P<number>\d)\s+(?:sts|stitches|dc|tr)(?:\s+below|\s+beneath)?)\s*$"
)


def _under_the_chain(text: str, start: int, lexicon: Lexicon) -> tuple[Step, ...] | None:
    """A filet space whose words tell behind its stitch what its chain passes over."""
    found = _PASSED_OVER.search(text)
    if found is None:
        return None
    head = _CHAIN_OF.sub(lambda chain: " " * len(chain[0]), text[: found.start()])
    read = read_inside(Stream(lexicon.read(head, start), Vocabulary()))
    if len(read) != 2 or not isinstance(read[0], Chain) or not isinstance(read[1], Work) or not all_read(read):
        return None
    span = Span(start + found.start(), start + len(text))
    place = Place(span, Which.NEXT, (Target(TargetKind.ANY_STITCH),), Amount.of(int(found["number"])))
    return (read[0], Skip(span, (place,)), read[1])


_CHAIN_OF = expression(r"(?i)^\s*an?\s+(?=ch(?:ain)?\s+of\s)")

# "2 dc worked over the space below, or in the 2 dc of a block below, and a dc in the next dc"
_SPACE_OR_BLOCK = expression(
    r"(?i)^\s*(?P<one>(?P<number>\d)\s?(?P<stitch>\p{L}+))\s+(?:(?:worked|made)\s+)?(?:over|in|into)\s+(?:the|an?)\s+(?:ch-?\d\s)?(?:sp|space)(?:\s+below)?"
    r",?\s+or\s+(?:(?:worked|made)\s+)?(?:over|in|into|on)\s+(?:the\s+)?(?P=number)\s?(?P=stitch)(?:\s+of\s+(?:the|an?)\s+(?:bl|block))?(?:\s+below)?"
    r"(?:,?\s+(?:and|then)|[,;])\s+(?P<rest>.+)$"
)


# "3 dc over the sp below or over the bl below": the last of them on the stitch that closes the square
_OVER_SQUARES = expression(
    r"(?i)^\s*(?P<one>(?P<number>[2-9])\s?(?P<stitch>\p{L}+))\s+(?:(?:worked|made)\s+)?over\s+(?:the|an?)\s+(?:sp|space|mesh)(?:\s+below)?\s+or\s+(?:over\s+)?(?:(?:the|an?)\s+)?(?:bl|block)(?:\s+below)?\s*(?:\([^()]*\))?\s*$"
)


def _over_squares(text: str, start: int, lexicon: Lexicon) -> tuple[Step, ...] | None:
    """A filet block over a square of either sort: all but one of its stitches within that, the last on its far edge."""
    found = _OVER_SQUARES.match(text)
    one = lexicon.read(found["one"], start + found.start("one")) if found is not None else []
    if [item.kind for item in one] != ["number", "stitch"]:
        return None
    span, within = one[0].span.to(one[1].span), int(found["number"]) - 1
    return (_space_or_stitches(span, one[1].value, within), Work(span, one[1].value))


def _space_or_stitches(span: Span, stitch: str, number: int) -> Either:
    """So many stitches in the space below, or one on each of so many below."""
    several = Amount.of(number)
    space = Place(span, Which.NEXT, (Target(TargetKind.SPACE),))
    each = Place(span, Which.NEXT, (Target(TargetKind.STITCH, stitch),), several, each_of=True)
    over = ((Work(span, stitch, several, (space,), number_said=True),), (Work(span, stitch, places=(each,)),))
    return Either(span, over, ("space", "stitch"))


def _over_either(text: str, start: int, lexicon: Lexicon) -> tuple[Step, ...] | None:
    """A filet block that goes into a space, or on the stitches of a block, and the stitch behind both."""
    found = _SPACE_OR_BLOCK.match(text)
    one = lexicon.read(found["one"], start + found.start("one")) if found is not None else []
    if [item.kind for item in one] != ["number", "stitch"]:
        return None
    rest = read_inside(Stream(lexicon.read(found["rest"], start + found.start("rest")), Vocabulary()))
    if len(rest) != 1 or not isinstance(rest[0], Work) or not all_read(rest):
        return None
    span = one[0].span.to(one[1].span)
    return (_space_or_stitches(span, one[1].value, int(found["number"])), rest[0])


def _over_spaces(text: str, start: int, lexicon: Lexicon) -> tuple[Step, ...] | None:
    """A filet block that goes into the stitches below, or in their place into a space, and the stitch behind that."""
    found = _INTO_SPACES.search(text)
    if found is None:
        return None
    read = read_inside(Stream(lexicon.read(text[: found.start()], start), Vocabulary()))
    one = read[0] if len(read) == 1 else None
    place = one.places[0] if isinstance(one, Work) and len(one.places) == 1 else None
    stitch = lexicon.read(found["stitch"])[0].value
    number = Amount.of(int(found["number"]))
    if place is None or place.which is not Which.NEXT or stitch != one.stitch:
        return None
    if place.number.lone != int(found["number"]) + 1:
        return None
    into = replace(one, number=number, places=(Place(one.span, Which.NEXT, (Target(TargetKind.SPACE),)),))
    behind = replace(one, places=(replace(place, number=ONE, each_of=False),))
    return (Either(one.span, ((into, behind), (one,))),)


def _out_of_brackets(found: regex.Match) -> str:
    """The same words as "sk 2 sts or 2 ch", ", or 2 dc in the sp;", of the same length: places are told by it."""
    other = found["other"]
    return f"{found['left']} or {other}  " if found["left"] else f", or {other};"


def read_options(text: str, start: int, lexicon: Lexicon) -> tuple[Step, ...] | None:
    """Steps of a definition; "…, or 2 dc in next ch-2 sp; dc in next dc" gives an Either and what follows."""
    vocabulary = Vocabulary()
    if (over := _OVER_ONE_OR_OTHER.fullmatch(text)) is not None:
        ways = [
            read_inside(Stream(lexicon.read(over[name], start + over.start(name)), vocabulary))
            for name in ("one", "other")
        ]
        return (Either(Span(start, start + len(text)), (tuple(ways[0]), tuple(ways[1]))),)
    if len(_UNDER.findall(text)) > 1:
        return None  # which of its ways is worked where, is not understood
    for told in (_over_spaces, _under_the_chain, _over_either, _over_squares):
        if (steps := told(text, start, lexicon)) is not None:
            return steps
    text = _OR_IN_BRACKETS.sub(_out_of_brackets, text)
    whole = [
        step
        for step in read_inside(Stream(lexicon.read(text, start), vocabulary))
        if not isinstance(step, (Remark, Turn))
    ]
    if whole and all_read(whole):
        return tuple(whole)
    match = expression(r",?\s+or\s+(?=\d|ch|dc|tr|sc)").search(text)
    if match:
        first, rest = text[: match.start()], text[match.end() :]
        cut = rest.find(";")
        second, tail = (rest[:cut], rest[cut + 1 :]) if cut >= 0 else (rest, "")
        one = read_inside(Stream(lexicon.read(first, start), vocabulary))
        two = read_inside(Stream(lexicon.read(second, start + match.end()), vocabulary))
        after = read_inside(Stream(lexicon.read(tail, start + match.end() + cut + 1), vocabulary)) if tail else []
        if not after and len(two) > 1 and _stitches(one) == _stitches(two[:-1]):
            two, after = two[:-1], two[-1:]  # "dc in next 2 dc or 2 dc in next sp, dc in next dc": the last for either
        elif not after and len(two) > 1 and _stitches(one) != _stitches(two):
            return None  # how many of the last words are for either way is not told
        span = Span(start, start + len(text))
        return (Either(span, (tuple(one), tuple(two))), *after)
    read = read_inside(Stream(lexicon.read(text, start), vocabulary))
    kept = [step for step in read if not isinstance(step, (Remark, Turn))]
    if any(isinstance(step, Unread) for step in walk(tuple(kept))):
        return None
    return tuple(kept)


def _stitches(steps: list[Step]) -> int:
    """How many stitches steps with lone numbers make, one by one or several in a place."""
    total = 0
    for step in steps:
        if isinstance(step, Work):
            places = sum(place.number.lone or 1 for place in step.places) or 1
            each = not step.number_said or step.number.lone == 1 or any(place.each_of for place in step.places)
            total += (step.number.lone or 1) * (places if each else 1)
    return total
