"""Figures that stand where a printed count may, and are work."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.pattern import Stated
from lint.place import LimitKind, TargetKind, Which
from lint.reading.places.targets import LOOPS
from lint.reading.words.piecewords import tells_piece
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import (
    PLAIN,
    Chain,
    Group,
    Join,
    OpenWork,
    Remark,
    Repeat,
    Shaping,
    Skip,
    Step,
    TimesKind,
    Turn,
    Work,
    walk,
)

_BEFORE_PLACE = ("the", "each", "next", "first", "last", "same", "number", "ordinal", "beginning", "any", "of")
_PLACES = ("stitch", "any_stitch", "special", "chain", "space", "turning_chain", "turn", "loop", "ring")
_TOTALS = ("total", "in total", "altogether", "in all", "now", "count")
_LEFT = ("left", "remain", "remains")
_SIGNED = ("dash", "=", "→")  # what leads to a count at the end of words


def goes_somewhere(words: list[Lexeme]) -> bool:
    """Whether the stitches of "2 sc in each st around", "2 dc, 1 ch, 2 dc in next sp" go into a place: work, and no count."""
    kinds = [item.kind for item in words]
    for at, kind in enumerate(kinds):
        if kind == "in" and kinds[at - 1 : at] in (["stitch"], ["special"]):
            place = next((kind for kind in kinds[at + 1 :] if kind not in _BEFORE_PLACE), "end")
            if place in _PLACES:
                return True
        if kind == "at" and kinds[at - 1 : at] == ["stitch"] and "corner" in kinds[at + 1 : at + 4]:
            return True  # "making 3 sc at each corner"
    return False


def turning_chain(stream: Stream, at: int) -> bool:
    """Whether the next row's chain stands at an index, as the UK trade writes it: "3 ch, turn", "(12). 1 ch"."""
    kinds = [item.kind for item in stream.lexemes[at : at + 4]]
    if kinds[:2] != ["number", "chain"]:
        return False
    if len(kinds) == 2:
        return at > 1 and stream.lexemes[at - 2].kind in CLOSERS
    return "turn" in (kinds[2], kinds[3] if len(kinds) > 3 and kinds[2] in (",", "and", "then") else "")


def counted_behind(sentence: Stream) -> bool:
    """Whether a count ends the words, which are work then: "5 x (sc, inc) 2 sc (17)", "… 2 sc – 17 sts"."""
    opened = next((i for i, item in enumerate(sentence.lexemes) if item.kind in (*OPENERS, *_SIGNED)), None)
    if not opened:
        return False
    signed = sentence.lexemes[opened].kind in _SIGNED
    inside = [item.kind for item in sentence.lexemes[opened + 1 : None if signed else -1]]
    return inside[:1] == ["number"] and set(inside[1:]) <= {"stitch", "any_stitch"}


def noted_work(stream: Stream, start: int) -> bool:
    """Whether the bracket before `start` opens a clause and holds a word alone: "(X) 8 sc, (Y) 1 sc" is work with notes."""
    opened = next((i for i in range(start - 2, -1, -1) if stream.lexemes[i].kind in OPENERS), None)
    inside = stream.lexemes[opened + 1 : start - 1] if opened is not None else []
    begins = opened is not None and (not opened or stream.lexemes[opened - 1].kind in (",", ";", "star", *OPENERS))
    if any(item.lower in _TOTALS for item in inside):
        return False  # "6 inc, (total) 12 sc"
    first = stream.matching(0) if stream.lexemes[0].kind in OPENERS else None
    begins = begins or first is not None and _holds_words(stream.lexemes[1:first])  # "[X] 8 sc [Y] 1 sc"
    return begins and _holds_words(inside)


def _holds_words(inside: list[Lexeme]) -> bool:
    return bool(inside) and all(item.kind in ("word", "the", "color", "yarn") for item in inside)


def led_to_a_side(stream: Stream, colon: int) -> bool:
    """Whether the clause before a colon only says where work goes on: "…; on the other side: 2 sc (8)" is no count of 2.

    Nor is "…, join the first arm: 3 sc through arm and body, 3 sc".
    """
    start = next((i + 1 for i in range(colon - 1, -1, -1) if stream.lexemes[i].kind in (",", ";", ".")), 0)
    words = stream.lexemes[start:colon]
    kinds = {item.kind for item in words}
    limb = bool(kinds & {"join", "joining", "attach"}) and any(tells_piece(item.lower) for item in words)
    return ("other_side" in kinds or limb) and not kinds & {"stitch", "any_stitch", "increase", "decrease", "special"}


def rather_work(steps: list[Step], counted: int, unit: str, rest: list[Lexeme], signed: bool) -> bool:
    """Whether "…; 2 sc" goes on with the row, where clauses are parted by the same sign as a count is.

    It does where so many stitches are left for it ("… to last 2 sts; 2 sc"), where a greater count follows, or where the row
    has made far more by then, or far fewer: no slip of a printed count is a quarter of it, while that of the row before is half of it.
    `signed`: whether the clause before stands behind such a sign too, as in "6 sc; 3 hdc; 3 sc".
    """
    last = steps[-1] if steps else None
    limit = last.places[-1].limit if isinstance(last, Work) and last.places else None
    limit = last.times.limit if isinstance(last, Repeat) else limit
    if limit is not None and limit.kind is LimitKind.LAST:
        left = limit.number.values[0]
        single = limit.target is None or limit.target.kind in (TargetKind.ANY_STITCH, TargetKind.STITCH)
        return not single or left is None or counted <= left
    least = sum(map(least_made, steps))
    if counted < least + (not signed) and _not_made(steps, [unit]):
        return True  # "4 sc; 4 hdc; 4 dc", "6 sc; 6 hdc"
    if 0 < 3 * least + 2 < 2 * counted and all(map(definite, steps)):
        return True  # "2 sc; 3 sc in next st; 9 sc"
    return _greater_count(counted, rest) or (2 if signed else 4) * counted < least


def work_behind_note(steps: list[Step], found: Stated) -> bool:
    """Whether the figure behind a bracket that holds a note is work: "8 sc (white) 4 sc", while "… 4 sc (neat) 12 sc" sums up."""
    units = {item.unit for item in found.items}
    figure = found.items[0].number.lone if len(found.items) == 1 else None
    if figure is None or not any(unit and unit.startswith("kind:") for unit in units):
        return False
    return all(map(definite, steps)) and sum(map(least_made, steps)) != figure


def left_for_work(steps: list[Step], lexemes: list[Lexeme]) -> bool:
    """Whether "(4 sc, inc) around, 2 sc" rather works what the last pass leaves: no row is told as passes that makes fewer than two."""
    last = steps[-1] if steps else None
    kinds = [item.kind for item in lexemes[:2]]
    if not isinstance(last, Repeat) or last.times.kind is not TimesKind.FILL or kinds != ["number", "stitch"]:
        return False
    fewest = min((number for number in lexemes[0].quantity.values if number), default=0)  # of all sizes
    return fewest < 2 * sum(map(least_made, last.items))


def remaining_told(steps: list[Step], stated: Stated | None, lexemes: list[Lexeme]) -> Stated | None:
    """The count of "7 sts remain": of the row where it decreases, else perhaps of what it leaves unworked, which is none."""
    if stated is None or not stated.items:
        return stated
    end = stated.items[-1].span.end
    behind = next((item for item in lexemes if item.start >= end), None)
    if behind is None or behind.kind != "remaining" and behind.lower not in _LEFT:
        return stated
    inner = list(walk(tuple(steps)))
    works = [step for step in inner if isinstance(step, Work)]
    fewer = any(step.together or step.stitch == "dec" for step in works)
    fewer = fewer or any(isinstance(step, Shaping) and not step.increase for step in inner)
    fewer = fewer or any(isinstance(step, OpenWork) and "dec" in step.words.lower() for step in inner)
    leaves = any(
        isinstance(step, Skip) or isinstance(step, Work) and step.stitch == "sl st" and not step.post for step in inner
    )
    return stated if fewer and not leaves else None


def sorts_of_work(steps: list[Step], found: Stated, rest: list[Lexeme]) -> bool:
    """Whether "…; 3 hdc; 3 sc" goes on with the row: a sort told twice, or that the row has not made, or a sum behind it."""
    units = [item.unit or "" for item in found.items]
    figures = [item.number.values[0] or 0 for item in found.items]
    if len(set(units)) < len(units) or _greater_count(max(figures), rest):
        return True
    if units[-1] == "stitches" and all(unit.startswith("kind:") for unit in units[:-1]):
        return sum(figures[:-1]) < figures[-1]  # "; 3 sc; 12 sts"
    return _not_made(steps, units)


def _not_made(steps: list[Step], units: list[str]) -> bool:
    """Whether a row surely has no stitch of such a sort; an increase, a chain, a figure of a colour or a word of the pattern's own may be one."""
    inner = list(walk(tuple(steps)))
    if any(
        isinstance(step, Work) and step.special is not None or isinstance(step, Chain) and step.length.lone != 1
        for step in inner
    ):
        return False
    made = {step.stitch for step in inner if isinstance(step, Work)}
    made |= {stitch[1:] for stitch in made if stitch.startswith("f")}  # "Fsc 12, turn. 12 sc."
    sorts = [unit.partition(":")[2] for unit in units if unit.startswith("kind:")]
    return bool(made) and made.isdisjoint(("inc", "dec", PLAIN)) and any(sort and sort not in made for sort in sorts)


def _greater_count(counted: int, rest: list[Lexeme]) -> bool:
    """Whether a greater count stands in these words: "(12)", "– 12", "12 sc"; "leaving a 30 cm tail", "in st 20" are none."""
    for at, item in enumerate(rest):
        if item.kind != "number" or item.number <= counted:
            continue
        before = rest[at - 1].kind if at else ""
        behind = rest[at + 1].kind if at + 1 < len(rest) else "end"
        bracketed = before in OPENERS and behind in CLOSERS
        signed = before in _SIGNED and behind in (".", ";", ",", "end")
        if bracketed or signed or behind in ("stitch", "any_stitch"):
            return True
    return False


def definite(step: Step) -> bool:
    """Whether the words alone tell how many stitches a step makes."""
    if isinstance(step, Repeat):
        told = step.times.kind in (TimesKind.IN_ALL, TimesKind.MORE) and step.times.number is not None
        return told and all(map(definite, step.items))
    if isinstance(step, Group):
        return all(map(definite, step.items)) and all(place.which is not Which.EACH for place in step.places)
    if isinstance(step, Work):
        plain = step.special is None and not step.undefined
        return plain and all(place.limit is None and place.which is not Which.EACH for place in step.places)
    return isinstance(step, (Chain, Skip, Remark, Turn, Join))


def least_made(step: Step, size: int = 0) -> int:
    """The fewest stitches that a step can make in a size."""
    if isinstance(step, Repeat):
        times = (step.times.number.at(size) or 0) if step.times.number is not None else 0
        return (times + (step.times.kind is TimesKind.MORE)) * sum(least_made(item, size) for item in step.items)
    if isinstance(step, Group):
        return sum(least_made(item, size) for item in step.items)
    if not isinstance(step, Work) or step.stitch == "sl st":
        return 0
    number = step.number.at(size) or 0
    if step.together:
        return number
    places = [place for place in step.places if not place.shared]
    each = (2 if step.stitch == "inc" else 1) * number
    return each * sum((place.number.at(size) or 0) for place in places) if places else each


def count_behind_dash(stream: Stream) -> bool:
    """Whether the dash at the cursor opens a printed count: "Rep Row 2 — 60 (64, 68) hdc"."""
    start = stream.at
    if not stream.take_if("dash") or stream.amount() is None:
        stream.at = start
        return False
    while stream.kind() == ";" and stream.kind(1) == "number":
        stream.at += 2  # "Rep Rnd 3 – 60; 76; 92 dc", one for each round
    counted = stream.kind() in ("any_stitch", "stitch", "special", "chain", "one_stitch", "group_word", "row", "round")
    stream.at = start
    return counted


def adds_work(words: list[Lexeme]) -> bool:
    """Whether words in brackets behind a count may be of work beside it: "(skip the next 2 sts)", "(in the back loops)", "(2 more)"."""
    kinds = [item.kind for item in words]
    then = "then" in kinds and any(kind in ("stitch", "increase", "decrease", "chain") for kind in kinds)
    return then or kinds[-1:] == ["more"] or any(kind in ("skip", "leave", *LOOPS) for kind in kinds)
