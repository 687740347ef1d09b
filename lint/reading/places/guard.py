"""Sees to it that nothing is passed over in silence: words that hold work but were read as none become Unread."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

from lint.growth import ShapedWhere
from lint.lexicon import Lexeme
from lint.place import LimitKind, TargetKind, Which
from lint.reading.places.alterations import bids_again, may_alter
from lint.reading.places.targets import LOOPS
from lint.reading.words.stream import CLOSERS, OPENERS
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    AlongEdge,
    Chain,
    Evenly,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    MakeRing,
    NoJoin,
    OtherSide,
    Remark,
    Repeat,
    RowCall,
    Shaping,
    Skip,
    Step,
    Turn,
    Unread,
    UseYarn,
    Work,
    walk,
)

_IDLE = (Remark, UseYarn, NoJoin, Turn, FastenOff, AlongEdge, OtherSide)
_MAKES = ("stitch", "one_stitch", "group_word", "special", "increase", "decrease")
_PLACED = ("in", "over", "around", "across", "each", "next", "together", "evenly")
_NAMES = (
    *CLOSERS,
    "number",
    "first",
    "last",
    "next",
    "each",
    "same",
    "any",
    "of",
    "the",
    "in",
)  # before a stitch named
_SHAPED = ("increasing", "decreasing", "increased", "decreased", "inc'd", "dec'd")
_TELLS = ("made", "forming", "counts", "counts_not")
_WHY = "work stands among words that would otherwise be passed over"


def nothing_swallowed(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps; one that passes over words with work in them is Unread instead."""
    starts = [item.start for item in lexemes]

    def words(span: Span) -> list[Lexeme]:
        return lexemes[bisect_left(starts, span.start) : bisect_left(starts, span.end)]

    found: list[Step] = []
    for step in steps:
        inside = words(step.span)
        swallows = (
            isinstance(step, Remark)
            and (
                may_alter(inside)
                or _is_a_place(inside)
                or _says_where(inside)
                or _points_at_some(inside)
                or _shapes_in_brackets(inside, found)
                or _adds_in_brackets(inside, found)
                or _leaves_open(inside, found)
                or _ends_in_a_figure(inside)
                or _shapes_untold(inside, found)
                or inside[:1] != []
                and inside[0].kind in OPENERS
                and bids_again(inside[1:-1])
                or not any(isinstance(one, MAKES_STITCHES) for one in found)
                and _is_part_of_row(inside)
            )
            or _passes_the_others(step, inside, found)
            or bool(found)
            and isinstance(found[-1], RowCall)
            and (isinstance(step, AlongEdge) or isinstance(step, Remark) and _goes_on_along(inside))
            or isinstance(step, _IDLE)
            and not (isinstance(step, Remark) and step.seam)
            and not (found and isinstance(found[-1], Evenly) and inside and inside[0].kind in OPENERS)
            and not any(item.kind in _TELLS or item.lower in ("has", "have", "having") for item in inside)
            and not (inside and inside[0].lower == "until")
            and _holds_work(inside)
            or isinstance(step, (Join, JoinYarn, MakeRing))
            and _holds_more_work(inside)
            or isinstance(step, Skip)
            and any(_is_placed(inside, index) for index in range(len(inside)))
        )
        note = step.counting if isinstance(step, Chain) else step.closing if isinstance(step, Work) else None
        over_all = isinstance(step, Work) and [place.which for place in step.places] == [Which.EACH]
        if note is not None and over_all and note.space is None and note.counts:
            swallows = True  # "sc in each st (each ch-1 sp counts as a st)"
        if note is not None and note.span != step.span and not swallows:  # "join with dc" is its own note
            inside = words(note.span)
            swallows = not any(item.kind in ("row", "round") for item in inside) and any(
                (_is_placed(inside, i) or _is_numbered_and_placed(inside, i))
                and inside[i + 1].kind in _PLACED
                and not _stands_there(inside, i)
                for i in range(len(inside))
            )
        if swallows:
            shown = " ".join(item.text for item in inside)
            found.append(Unread(step.span, shown, _WHY))
        else:
            opens = lexemes[max(0, bisect_left(starts, step.span.start) - 1)].kind == "."
            opens = opens or bool(found) and isinstance(found[-1], JoinYarn)
            found.append(_behind_a_run(step, found, words, opens))
    return found


def _shapes_untold(inside: list[Lexeme], before: list[Step]) -> bool:
    """Whether ", increasing in color B" hangs on a row called for or on work: by how much it grows is not said."""
    shapes = inside[:1] != [] and inside[0].lower in ("increasing", "decreasing")
    return shapes and bool(before) and isinstance(before[-1], (RowCall, Work))


def _stands_there(inside: list[Lexeme], index: int) -> bool:
    """Whether "counts as dc in same st" ends here: the chain stands where the yarn was joined, and nothing more is worked."""
    behind = [item.kind for item in inside[index + 1 :] if item.kind not in ("the", *CLOSERS, ".")]
    led = [item.kind for item in inside[:index] if item.kind not in ("number", "first", "the", *OPENERS)]
    return behind[:2] == ["in", "same"] and len(behind) <= 3 and led in (["counts"], ["counts", "as"])


def _behind_a_run(step: Step, before: list[Step], words: Callable[[Span], list[Lexeme]], opens: bool) -> Step:
    """Work behind "sc across": "1 more sc in the last st" goes into one that is worked already; else it may go beyond.

    `opens`: the work is a sentence of its own.
    """
    run = next((one for one in reversed(before) if not isinstance(one, (Remark, JoinYarn, OtherSide))), None)
    if not (isinstance(step, Work) and isinstance(run, Work) and step.stitch != "sl st"):
        return step
    to_the_end = any(one.which is Which.EACH and one.limit and one.limit.kind is LimitKind.END for one in run.places)
    if not to_the_end and not any(one.which is Which.LAST for one in run.places):
        return step
    inside = words(step.span)
    more = any(item.kind == "more" or item.lower in ("extra", "another", "further", "additional") for item in inside)
    place = step.places[0] if step.places else None
    if more and place is not None and place.which is Which.LAST:
        return replace(step, places=(replace(place, which=Which.SAME), *step.places[1:]))
    plain = place is not None and place.which is Which.NEXT and place.targets[0].kind is TargetKind.ANY_STITCH
    around = any(item.kind == "around" for item in words(run.span))
    if place is None and (more or around and opens) or plain and around:
        return Unread(step.span, " ".join(item.text for item in inside), "it may go beyond the round")
    return step


def _is_a_place(inside: list[Lexeme]) -> bool:
    """Whether the words are nothing but a place that the clause before has lost: "sp", "at each end"."""
    kinds = [item.kind for item in inside if item.lower != "both"]
    if kinds == ["space"]:
        return True
    where = kinds and kinds[-1] in ("ending", "side") and set(kinds) <= {"at", "each", "of", "the", "ending", "side"}
    return bool(where) and ("each" in kinds or len(kinds) < len(inside))


_WHERE = ("middle", "ending", "last", "first", "corner", "any_stitch", "stitch", "space")
_LEADS = (
    "not",
    "none",
    "nothing",
    "never",
    "only",
    "but",
    "also",
    "just",
    "except",
    "point",
    "points",
    "peak",
    "peaks",
)
_NAMED = ("corner", "space", "ring", "picot", "chain", "number", *LOOPS, "at", "in", "of", "each", "the", "all", "same")


def _goes_on_along(inside: list[Lexeme]) -> bool:
    """Whether words lead on from a called row, "continuing around the corner": how many come there is not said."""
    led = any(item.kind in ("around", "across") or item.lower in ("along", "up", "down") for item in inside)
    return led and any(
        item.kind in ("corner", "edge", "side") or item.lower in ("corner", "edge", "side") for item in inside
    )


def _says_where(inside: list[Lexeme]) -> bool:
    """Whether a few words without a verb say where in the row: "Not in the last.", "(not in the last)"."""
    if len(inside) > 2 and inside[0].kind in OPENERS and inside[1].lower in _LEADS:
        inside = inside[1:-1]
    if not 2 <= len(inside) <= 6 or inside[-1].kind not in _WHERE:
        return False
    lead, rest = inside[0], inside[1:-1]
    begins = lead.lower in _LEADS or lead.kind in _NAMED
    led = any(item.kind in ("in", "at", "the", "of", "each", "last", "first") for item in rest)
    return begins and led and all(item.kind in (*_WHERE, *_NAMED) or item.lower in _LEADS for item in rest)


def _is_part_of_row(inside: list[Lexeme]) -> bool:
    """Whether words before all work say which stitches of the row it is for: "Starting at the 5th st", "For the first half"."""
    if not inside or inside[0].lower not in (
        "for",
        "using",
        "with",
        "starting",
        "beginning",
        "at",
        "from",
        "over",
        "on",
        "in",
        "along",
    ):
        return False
    ends = [(one.kind, two.kind) for one, two in zip(inside, inside[1:], strict=False)]
    numbered = any(
        one.kind in ("next", "first", "last") and two.kind == "number" and three.kind in ("any_stitch", "stitch")
        for one, two, three in zip(inside, inside[1:], inside[2:], strict=False)  # "for the next 15 sts"
    )
    return (
        numbered
        or any(item.lower in ("half", "halves") for item in inside)
        or any(one == "ordinal" and two in ("any_stitch", "stitch") for one, two in ends)
    )


def _shapes_in_brackets(inside: list[Lexeme], before: list[Step]) -> bool:
    """Whether "(increasing 4 sts evenly)" stands behind work that has no increase which it could be a note on."""
    if not inside or inside[0].kind not in OPENERS or not any(i.kind == "number" for i in inside):
        return False
    if not any(item.kind in ("increase", "decrease") or item.lower in _SHAPED for item in inside):
        return False
    works = [step for step in walk(tuple(before)) if isinstance(step, (Work, Group, Repeat, Shaping, RowCall))]
    plain = all(isinstance(step, Work) and step.places and _into_each(step) for step in works)
    return bool(works) and plain


def _passes_the_others(step: Step, inside: list[Lexeme], before: list[Step]) -> bool:
    """Whether "skipping the rest" stands behind "2 dc in every other st", which was read as work in the others, too."""
    every = bool(before) and isinstance(before[-1], Shaping) and before[-1].where is ShapedWhere.EVERY
    told = isinstance(step, Remark) and any(item.lower.startswith(_PASSES) for item in inside)
    return every and (told or isinstance(step, Skip) and step.rest)


_PASSES = ("skip", "miss", "leav", "omit")
_TAKES_BACK = ("except", "excluding", "omit", "omitting", "minus", "less", "plus", "save", "bar")


def _adds_in_brackets(inside: list[Lexeme], before: list[Step]) -> bool:
    """Whether "(3 in the tip)", "(twice in the last)", "[1 less in the middle]" stands behind work that it may change."""
    if len(inside) < 4 or inside[0].kind not in OPENERS:
        return False
    kinds = [item.kind for item in inside if item.kind not in ("the", ".", "all", "each", "any", "in", "corner")]
    if inside[1].lower in ("including", "include", "incl", "also") and kinds[2] in ("chain", "space", "unused"):
        return any(isinstance(step, MAKES_STITCHES) for step in before)  # "sc around (including the chains)"
    first, then = inside[1:3]
    corner = first.kind in ("corner", "middle") and then.kind in ("=", ":", "dash")  # "(corner = 3 sc)"
    takes_back = first.lower in _TAKES_BACK and then.lower != "than"  # "(less than five minutes!)"
    if (takes_back or corner) and any(isinstance(step, MAKES_STITCHES) for step in before):
        return True
    plain = (
        first.number == 1 and then.kind == "in" and inside[3].kind == "each"
    )  # "30 sc along the edge (one in each row end)"
    number = (first.kind == "number" or first.lower in ("once", "twice")) and not plain
    placed = then.kind in ("in", "at", "over") or then.kind == "more" or then.lower in ("less", "fewer", "extra")
    return number and placed and any(isinstance(step, MAKES_STITCHES) for step in before)


_NO_STITCHES = ("row", "round", "color", "size", "hook", "chain", "space")
_SHADES = ("shade", "no", "no.", "nr", "number", "col", "colour", "color")


def _ends_in_a_figure(inside: list[Lexeme]) -> bool:
    """Whether "stuff the head 11", "change to white 10" ends in a figure that may be stitches."""
    if len(inside) < 2 or inside[-1].kind != "number" or inside[0].kind not in ("stuff", "change"):
        return False
    return not any(item.kind in _NO_STITCHES or item.lower in _SHADES for item in inside)


_AT_WILL = ("desired", "needed", "necessary", "wanted", "wished", "like", "prefer", "wish", "want", "required")


def _leaves_open(inside: list[Lexeme], before: list[Step]) -> bool:
    """Whether "(optional)", "(if desired)", "(or 2 sc for a wider brim)" leaves the work before it to the maker."""
    if len(inside) < 3 or inside[0].kind not in OPENERS or not before or not isinstance(before[-1], MAKES_STITCHES):
        return False
    if isinstance(before[-1], Work) and before[-1].stitch == "sl st":
        return False
    words = [item.lower for item in inside[1:-1]]
    if (
        words[0] == "or"
        and inside[2].kind == "number"
        and (len(inside) == 4 or inside[3].kind in (*_MAKES, "any_stitch"))
    ):
        return True
    at_will = any(word in (*_AT_WILL, "some") for word in words)
    alters = any(item.kind in ("increase", "decrease") or item.lower in _SHAPED for item in inside)
    alters = alters or any(
        one.kind == "number" and (then.kind == "in" or then.kind in (*_MAKES, "any_stitch"))
        for one, then in pairwise(inside)
    )
    if at_will and alters:
        return True  # "(dec where necessary)", "(add 1 st if needed)", "(2 in some sts to keep flat)"
    return words[0] in ("optional", "optionally") or words[0] == "if" and words[-1] in _AT_WILL


def _into_each(step: Work) -> bool:
    """Whether one plain stitch goes into every place of a run."""
    run = step.places[0].which is Which.EACH and len(step.places) == 1
    return run and step.number.lone == 1 and step.together is None and step.stitch not in ("inc", "dec")


def _points_at_some(inside: list[Lexeme]) -> bool:
    """Whether words behind work pick out stitches of it: "with every 5th st doubled"; a marker in them changes nothing."""
    if not inside or inside[0].kind in ("marker", "telling", *OPENERS):
        return False
    if [item.lower for item in inside if item.kind not in ("and", "then", ",")] == ["again"]:
        return True
    kinds = [item.kind for item in inside]
    return any(
        kinds[i : i + 2] == ["each", "ordinal"] and kinds[i + 2 : i + 3] in (["any_stitch"], ["stitch"])
        for i in range(len(kinds))
    )


def _holds_work(inside: list[Lexeme]) -> bool:
    """Whether a number of stitches, or a stitch and where it goes, stands among these words.

    In brackets that only explain, "(2 sc increased)", a number of stitches is no work.
    """
    if inside and inside[0].kind in OPENERS:
        if any(item.kind in ("row", "round") for item in inside):
            return False  # "(1 hdc dec each row)"
        return any(_is_placed(inside, i) or _is_numbered_and_placed(inside, i) for i in range(len(inside)))
    return any(_is_placed(inside, index) or _is_numbered(inside, index) for index in range(len(inside)))


def _holds_more_work(inside: list[Lexeme]) -> bool:
    """Whether more is worked than the one stitch that joins."""
    several = any(_is_numbered(inside, index, least=2) for index in range(len(inside)))
    return several or sum(_is_placed(inside, index) for index in range(len(inside))) > 1


def _is_numbered(inside: list[Lexeme], index: int, least: int = 1) -> bool:
    """Whether "3 dc", "6 inc" ends here; "ch-3 dc" names one dc."""
    if inside[index].kind not in _MAKES or inside[index].value == "sl st" or not index:
        return False
    before = inside[index - 1]
    chain = index > 1 and inside[index - 2].kind in ("chain", "dash")
    named = index > 1 and inside[index - 2].kind in ("any", "between")  # "between (any) 2 dc"
    return before.kind == "number" and before.number >= least and not chain and not named


def _is_numbered_and_placed(inside: list[Lexeme], index: int) -> bool:
    """Whether "3 dc in" stands here."""
    return _is_numbered(inside, index) and index + 1 < len(inside) and inside[index + 1].kind in _PLACED


def _is_placed(inside: list[Lexeme], index: int) -> bool:
    """Whether "dc in", "sc2tog", "inc 6" begins here."""
    item = inside[index]
    if item.kind not in _MAKES or item.value == "sl st" or index + 1 >= len(inside):
        return False
    if item.kind != "decrease" and any(after.kind in LOOPS for after in inside[index + 2 : index + 3]):
        return False  # "all sts are dc in back loop"
    if index and inside[index - 1].kind in _NAMES:
        return False  # a stitch that is named, not worked: "with the last dc in top of ch"
    after = inside[index + 1].kind
    if item.kind == "stitch" and after == "number" and index and inside[index - 1].kind == ",":
        return inside[index + 2 : index + 3] == [] or inside[index + 2].kind in (
            ",",
            ".",
            *CLOSERS,
        )  # ", sc 2": a clause
    tog = after == "number" and any(item.kind == "together" for item in inside[index + 2 : index + 3])
    return after in _PLACED or tog or after == "number" and item.kind in ("increase", "decrease")
