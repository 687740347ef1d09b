"""The unit of a printed figure: "dc", "ch-2 sps", "5-dc shells", "sc on each side"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from lint.amount import Amount
from lint.pattern import StatedItem
from lint.reading.places.madeof import chains_of_loop
from lint.reading.places.targets import is_space_word
from lint.reading.words.stream import OPENERS, Stream

_OF_A_SIDE = ("per", "along", "down", "for", "on", "in", "across", "between", "to", "from")


def unit(stream: Stream) -> tuple[str | None, str]:
    """The unit at the cursor as a StatedItem unit, with its words; None where there is none."""
    start = stream.at
    if stream.kind() == "corner" and stream.kind(1) == "space":
        stream.at += 2  # "4 corner sps, 8 ch-1 sps": not all the spaces
        return "corner", stream.words(start, stream.at)
    stream.skip("corner") if stream.kind() == "corner" and stream.kind(1) in ("chain", "number") else None
    lexeme = stream.peek()

    def words() -> str:
        return stream.words(start, stream.at)

    if lexeme.kind == "any_stitch":
        stream.take()
        return "stitches", words()
    if lexeme.kind == "stitch":
        stream.take()
        stream.take_if("any_stitch")
        if stream.kind() in ("group_word",) or stream.word("groups", "group"):
            stream.take()
            return "unknown", words()
        return f"kind:{lexeme.value}", words()
    if lexeme.kind == "number" or (lexeme.kind == "dash" and stream.kind(1) in ("chain", "stitch", "number")):
        # "4 2-ch sps", "12 5-dc shells", "4-ch sps"
        stream.take_if("dash")
        number = _chain_length(stream)
        stream.take_if("dash")
        if stream.kind() == "chain":
            stream.take()
            stream.take_if("dash")
            if is_space_word(stream):
                stream.take()
                return (f"space:{number}" if number is not None else "space"), words()
        elif stream.kind() == "stitch":
            stream.take()
            stream.take_if("dash")
            if stream.kind() in ("special", "group_word"):
                name = stream.take()
                return f"special:{singular(name.value or name.lower)}", words()
            if stream.word("group", "groups"):
                stream.take()
                return "unknown", words()
        stream.at = start
        return None, ""
    if lexeme.kind == "chain":
        stream.take()
        if stream.kind() == "dash":
            stream.take()
        number = _chain_length(stream)
        stream.take_if("dash")
        corner = stream.take() if stream.word("corner", "corners") else None
        if corner is not None and number is not None and (stream.done or stream.kind() in (",", "and", ";", ".")):
            return "corner", words()  # "6 ch-2 corners"
        if is_space_word(stream) or number is not None and stream.word(*_GAPS):
            stream.take()
            return (f"space:{number}" if number is not None else "space"), words()
        if number is not None and stream.take_if("picot"):
            return f"special:ch-{number} picot", words()
        if stream.kind() == "any_stitch":
            stream.take()
        return ("chain" if number is None else f"space:{number}"), words()
    if is_space_word(stream):
        if lexeme.kind == "special":
            stream.take()
            return f"special:{lexeme.value}", words()
        stream.take()
        length = chains_of_loop(stream)  # "12 loops of 7 ch"
        return (f"space:{length.lone}" if length is not None and length.lone else "space"), words()
    if lexeme.kind == "half" and stream.kind(1) in ("special", "group_word"):
        stream.take()
        half = stream.take()
        return f"special:half {singular(half.value or half.lower)}", words()
    if lexeme.kind in ("special", "one_stitch", "group_word", "picot"):
        stream.take()
        name = lexeme.value if lexeme.kind == "special" else lexeme.lower
        if stream.kind() == "of" and stream.kind(1) == "number":
            stream.at += 2
            stream.take_if("stitch")
        return f"special:{singular(name)}", words()
    if lexeme.kind == "back_loop" and lexeme.lower in ("bl", "bls"):
        stream.take()
        return "special:block", words()  # "(1 bl, 7 sps, 1 bl)" of filet
    if lexeme.kind == "corner":
        stream.take()
        return "corner", words()
    if lexeme.kind == "side":
        stream.take()
        return "side", words()
    if lexeme.kind == "word" and stream.kind(1) == "of" and stream.kind(2) == "number":
        stream.at += 3  # "4 groups of 3 dc"
        stream.take_if("stitch", "any_stitch")
        return "unknown", words()
    if lexeme.lower in _SHORT and stream.vocabulary.sizes == 1:
        stream.take()
        return "stitches", words()
    if lexeme.kind == "word" and len(lexeme.text) > 2 and lexeme.lower not in ("times", "inches", "total"):
        stream.take()
        return "unknown", words()
    return None, ""


# "(12 s)", "(12 pts)": short for stitches in houses that write no "st", where no size is called so
_SHORT = ("s", "pts")


def _chain_length(stream: Stream) -> int | None:
    """The 2 of "ch-2 sps"; a length that differs by size is left where it is, so that the count is not read."""
    return stream.take().number if stream.kind() == "number" and stream.peek().amount is None else None


# "2 ch-7 handles": what a run of chains over skipped stitches is for
_GAPS = ("handle", "handles", "strap", "straps", "buttonhole", "buttonholes")


def singular(name: str) -> str:
    """ "shells" is "shell"; names in -ss or of one letter stay."""
    return (
        name[:-2]
        if name.endswith(("ches", "shes"))
        else name[:-1]
        if len(name) > 2 and name.endswith("s") and not name.endswith("ss")
        else name
    )


def before_a_side(stream: Stream) -> bool:
    """Whether "per side", "each side" stands here, with no unit between it and the figure before."""
    start = stream.at
    found = (stream.word(*_OF_A_SIDE) or stream.kind() == "each") and of_a_side(stream)
    stream.at = start
    return found


def chains_counted(stream: Stream) -> str | None:
    """Takes ", counting each ch as a st", "including ch sps": "chains" or "spaces", which a figure of stitches takes in."""
    start = stream.at
    stream.take_if(",")
    told = stream.take() if stream.word("counting", "counting each", "including", "incl") else None
    if told is not None:
        every = "each" in told.lower or stream.take_if("each", "all") is not None
        stream.skip("the", "of") if every else None
        word, length = stream.take_if("chain"), None
        if word is not None:
            stream.take_if("dash")
            length = _chain_length(stream)
            stream.take_if("dash")
        spaces = is_space_word(stream) and stream.take()
        named = spaces or word
        if stream.take_if("as", "counts"):
            stream.skip("the")
            stream.take_if("number") if stream.word("1", "one") else None
            stream.take_if("any_stitch", "stitch")
        if named and (every or named.lower.endswith("s")) and (stream.done or stream.kind() in (";", ".")):
            return "spaces" if spaces or length is not None and length > 1 else "chains"
    stream.at = start
    return None


_CORNERS_OR_NOT = ("not", "counting", "including", "incl", "excluding", "without", "between")


def of_a_side(stream: Stream) -> bool:
    """Takes "per side", "on each of the 4 sides", "along each edge", "between corners": what a figure is for each side."""
    start = stream.at
    if stream.word("between") and stream.kind(1) in ("corner", "each", "the"):
        stream.take()
        stream.skip("each", "the", "corner")
        while stream.kind() in ("chain", "number", "dash", "space", "any_stitch", "corner"):
            stream.take()
        return True
    led = stream.word(*_OF_A_SIDE)
    per = stream.word("per")
    stream.take() if led else None
    each = stream.kind() == "each" or stream.word("every")
    if each:
        stream.take()
        stream.skip("of", "the", "number")
    if (per or each) and stream.take_if("side", "edge"):
        comma = int(stream.kind() == ",")
        if stream.word(*_CORNERS_OR_NOT, ahead=comma):
            stream.at += comma
            stream.pass_to(";", *OPENERS)  # "on each side, not counting the corner sc"
        return True
    stream.at = start
    return False


def in_each_corner(stream: Stream) -> bool:
    """Takes the "sc in each corner", "at the corners" of what is counted besides a side's stitches."""
    start = stream.at
    stream.take_if("stitch", "any_stitch")
    if stream.take_if("in", "at") and (stream.take_if("each", "all", "the") or stream.word("every") and stream.take()):
        stream.skip("of", "the", "number")
        if stream.take_if("corner"):
            stream.take_if("space", "any_stitch")
            return True
    stream.at = start
    return False


def _middle_space(stream: Stream) -> bool:
    """Takes "center sp", "centre ch-2 sp": the one space in a shawl's middle, named last in a count and apart from the others."""
    start = stream.at
    if stream.take_if("middle") and (found := unit(stream)[0]) is not None and found.startswith("space"):
        if stream.done or stream.kind() in (".", ";", "turn"):
            return True
    stream.at = start
    return False


_FILET = ("special:block", "special:bl", "special:sp", "special:space", "space")


def summed(items: list[StatedItem]) -> list[StatedItem]:
    """ "1 bl, 7 sps, 1 bl": blocks and spaces as they follow along a filet row, each sort added up."""
    units = [item.unit for item in items]
    again = len(set(units)) == 2 and len(units) > 2 and all(one != other for one, other in pairwise(units))
    if not again or any(
        unit not in _FILET or item.number.lone is None for unit, item in zip(units, items, strict=True)
    ):
        return items
    if len(units) % 2 == 0:
        return items  # "2 bls, 3 sps; 3 bls, 2 sps" may be two rows
    return [
        replace(
            next(item for item in items if item.unit == unit),
            number=Amount.of(sum(item.number.lone or 0 for item in items if item.unit == unit)),
            span=items[0].span.to(items[-1].span),
        )
        for unit in dict.fromkeys(units)
    ]


def series_of(items: list[StatedItem]) -> list[StatedItem]:
    """ "48 dc; 60 dc", "24 dc, 4 ch-2 sps; 36 dc, 4 ch-2 sps": the same units again are the next row's of a range."""
    units = [item.unit for item in items]
    period = len(set(units))
    passes = len(items) // period if period else 0
    if passes < 2 or len(items) != period * passes or units != units[:period] * passes or "unknown" in units:
        return items
    if any(item.series for item in items):
        return items
    found = []
    for at in range(period):
        numbers = tuple(item.number for item in items[at::period])
        last = items[at + period * (passes - 1)]
        found.append(StatedItem(items[at].span.to(last.span), numbers[-1], last.unit, last.words, numbers))
    return found


def left_over(stream: Stream, ahead: int = 0) -> bool:
    """Whether the "remain" of "7 sts remain", the "made" of "24 sc made" stands so many words ahead."""
    return stream.kind(ahead) in ("remaining", "made") or stream.word("remain", "remains", "left", ahead=ahead)


def whole_count(stream: Stream) -> bool:
    """Whether a figure is told as the whole by what stands behind it: "12 in all", "12 at end of rnd"; "6 made" may be of shells."""
    if stream.kind() == "at":
        at = 2 if stream.kind(1) == "the" else 1
        return stream.kind(at) == "row_end" and stream.at + at + 1 >= len(stream.lexemes)
    words = 2 if stream.word("all") and stream.word("together", ahead=1) else 1
    told = words == 2 or stream.kind() == "total" or stream.word("altogether")
    return told and stream.at + words >= len(stream.lexemes)


def one_more(stream: Stream) -> str | None:
    """The unit of "plus scallop", "and a shell", ", center sp" behind a figure, which is one of these; nothing is taken where it is none."""
    start, joint = stream.at, stream.peek(-1).lower
    article = stream.take_if("the")
    if (joint in (",", "and", "+", "plus") or article is not None) and _middle_space(stream):
        return "unknown"
    if joint not in ("plus", "+") and (joint != "and" or article is None or article.lower not in ("a", "one")):
        stream.at = start
        return None
    named = stream.kind() in ("group_word", "special", "one_stitch")
    found, _ = unit(stream) if named else (None, "")
    stream.at = start if found is None else stream.at
    return found
