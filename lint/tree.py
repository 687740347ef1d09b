"""The syntax tree: frozen nodes, each with its stretch of the text; every number is an Amount, maybe over sizes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from lint.amount import ONE, Amount
from lint.growth import Growth, ShapedWhere, Swap
from lint.place import Limit, Marked, Place, without_beginning
from lint.source import Span


@dataclass(frozen=True, slots=True)
class Counting:
    """A note that says whether a beginning chain counts, and as what."""

    span: Span
    counts: bool
    stitch: str | None = None
    space: int | None = None  # chains beyond the stitch, which make a space
    throughout: bool = False
    pieces: tuple[str, ...] = ()  # the parts it is for, by name; none: it is for all


@dataclass(frozen=True, slots=True)
class Chain:
    """So many chains: a start, a turning chain or a space, by where they stand."""

    span: Span
    length: Amount
    counting: Counting | None = None
    corner: bool = False  # "ch 2 for corner"


@dataclass(frozen=True, slots=True)
class Special:
    """A stitch that the pattern defines itself."""

    name: str
    span: Span
    items: tuple[Step, ...] = ()  # empty where the definition describes one stitch by hand movements
    one_stitch: bool = True
    uses: int = 1  # places that hand movements take; 0: the words do not tell for certain
    beginning: bool = False
    places_itself: bool = False  # its own words say where each stitch goes (a filet block)
    at: tuple[Place, ...] = ()  # the space that its words put it in, where a row names no place for it

    @property
    def plain_name(self) -> str:
        """The name without "beg": a beginning popcorn counts as a popcorn."""
        return without_beginning(self.name) if self.beginning else self.name


PLAIN = "st"  # the stitch that the row, or the row below, is worked in: "work to last 2 sts"


@dataclass(frozen=True, slots=True)
class Work:
    """So many of one stitch, in so many places."""

    span: Span
    stitch: str  # US key; "inc" and "dec" stand for themselves; or a special stitch's name
    number: Amount = ONE
    places: tuple[Place, ...] = ()
    together: int | None = None  # 2 for dc2tog
    special: Special | None = None
    post: bool = False
    number_after: bool = False  # "sc 3"
    closing: Counting | None = None  # "(counts as last ch-2 sp)"
    number_said: bool = False
    undefined: bool = False  # a shell, V-stitch… that the pattern nowhere defines
    between: Amount | None = None  # "with ch 1 between": so many chains after each but the last
    loop: str | None = None  # back | front | third, where the words of the clause name one
    in_pattern: bool = False  # "patt to last 4 sts"
    perhaps: bool = False  # "working first sc in same st" may only say where the stitches of the next clause begin


@dataclass(frozen=True, slots=True)
class Group:
    """Several stitches worked into one place."""

    span: Span
    items: tuple[Step, ...]
    places: tuple[Place, ...]
    loose: bool = False  # no brackets: "dc, ch 2, dc in next st" may also be a stitch here and a stitch there


class TimesKind(StrEnum):
    """How a number of times is meant."""

    IN_ALL = "in all"
    MORE = "more"
    UNCLEAR = "unclear"  # "rep from * 12 times"
    FILL = "fill"  # as often as fits, up to the limit


@dataclass(frozen=True, slots=True)
class Times:
    """How often a passage is worked."""

    span: Span
    kind: TimesKind
    number: Amount | None = None
    limit: Limit | None = None


class Covers(StrEnum):
    """What "sc 1, inc 1 (6 times)" repeats: all of the list, or the last of it alone; the row tells where it is open."""

    ALL = "all"
    RATHER_ALL = "rather all"
    RATHER_LAST = "rather the last"
    PERHAPS = "perhaps"  # a star that nothing closes: a mere sign, or a repeat to the row's end


@dataclass(frozen=True, slots=True)
class Repeat:
    """A passage and how often it is worked."""

    span: Span
    items: tuple[Step, ...]
    times: Times
    last_pass: tuple[Step, ...] | None = None  # where the text alters it: "ending last rep at **", "omitting last ch 2"
    breaks_off: bool = False  # the text goes on with "ending", so that the last pass may be cut short by what follows
    covers: Covers = Covers.ALL
    tail: int = 1  # how many items are "the last of it"


@dataclass(frozen=True, slots=True)
class Passage:
    """A part of a marked passage worked once more: "then from * to ** once"."""

    span: Span
    items: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class Either:
    """Two ways of working one thing, chosen by what lies below ("or 2 dc in next ch-2 sp")."""

    span: Span
    options: tuple[tuple[Step, ...], ...]
    over: tuple[str, ...] = ()  # what each is worked over, where the words say so: "stitch", "space"


@dataclass(frozen=True, slots=True)
class Skip:
    """Places passed over, or all that are left."""

    span: Span
    places: tuple[Place, ...]
    counting: Counting | None = None
    rest: bool = False  # everything that is left
    to: Place | None = None  # "skip to next gap": where the next clause goes, if it says "into it"


@dataclass(frozen=True, slots=True)
class Confined:
    """ "working over the first 6 sts only": the row goes no further; `first`: of the row below, else all that it has."""

    span: Span
    number: Amount
    first: bool = True
    only: bool = False  # "only", "alone": said to be for no others


@dataclass(frozen=True, slots=True)
class OtherSide:
    """ "working along the opposite side of the foundation ch": the chain is met again from its far end."""

    span: Span
    perhaps: bool = False  # "rotate" alone, which means that where the chain has just been used up


@dataclass(frozen=True, slots=True)
class AlongEdge:
    """ "working along side edge": from here on an edge that is not known; "in the unused front loops of Rnd 1": on those."""

    span: Span
    row: int = 0
    loop: str | None = None  # of that row: back | front, where the words name one
    piece: str = ""  # whose row it is, where they name that


@dataclass(frozen=True, slots=True)
class Evenly:
    """So many stitches along an edge: the count is the text's."""

    span: Span
    stitch: str
    number: Amount
    total: bool = True
    edge: bool = False  # the words name an edge of a piece, and no chain
    edges: int = (
        1  # how many are named for one figure that may be each one's: "20 sc down side, across bottom and up side"
    )


@dataclass(frozen=True, slots=True)
class Shaping:
    """ "dec 1 st at each end", "inc 6 sts evenly": what a run over the row gains or loses."""

    span: Span
    number: Amount  # at each end, of all where they are spread evenly, or the n of "every nth stitch"
    increase: bool
    where: ShapedWhere
    over: Place | None = None  # so many stitches, where it is not a whole run; those of the clause before perhaps


@dataclass(frozen=True, slots=True)
class OpenWork:
    """ "work even until piece measures 25 cm", "in patt as established": work whose count the words do not give."""

    span: Span
    words: str
    plain: bool = False  # one row of nothing but the stitch below, or the one named: "Work straight in hdc."
    stitch: str | None = None
    over: Amount | None = None  # "on these 45 sts"
    pattern: str | None = None  # set | straight, "(straight) in patt": plain only where rows keep their number
    like: str = ""  # "in patt as given for Back": the piece whose pattern it is
    side: bool = False  # "dc across side": in a round with corners a stitch in each, as far as the next of them


@dataclass(frozen=True, slots=True)
class MakeRing:
    """A ring, of chains or drawn up."""

    span: Span
    length: Amount | None = None  # chains, None for a magic ring


@dataclass(frozen=True, slots=True)
class Join:
    """Closes a round."""

    span: Span
    places: tuple[Place, ...] = ()


@dataclass(frozen=True, slots=True)
class JoinYarn:
    """New yarn, and where it is joined."""

    span: Span
    colour: str | None = None
    stitch: str | None = None  # a stitch that is made in joining, sl st if none
    places: tuple[Place, ...] = ()


@dataclass(frozen=True, slots=True)
class UseYarn:
    """ "With A," at the start of a row: the yarn worked with, attached if it was not."""

    span: Span
    colour: str | None = None


@dataclass(frozen=True, slots=True)
class FastenOff:
    """The yarn, or the one colour named, is fastened off."""

    span: Span
    colour: str | None = None


@dataclass(frozen=True, slots=True)
class Turn:
    """The work is turned, or said not to be."""

    span: Span
    turned: bool = True


@dataclass(frozen=True, slots=True)
class NoJoin:
    """The round is left open."""

    span: Span


@dataclass(frozen=True, slots=True)
class Loops:
    """In which loops the stitches that follow go."""

    span: Span
    loop: str  # back | front | both | third


@dataclass(frozen=True, slots=True)
class Remark:
    """Words that are not work: a gloss, a marker, a how-to."""

    span: Span
    counting: Counting | None = None
    names: str | None = None  # "(shell made)" names what was just worked
    returns: bool = False  # the loops of a Tunisian row are worked off: no stitch is made or lost
    gains: bool = False  # "(increase made)": what was just worked is one stitch more, with the chain before it
    seam: bool = False  # edges of the piece are joined to each other: a strip becomes a tube
    unfit: int = 0  # a printed count over the sizes that has so many figures, and not one for each
    layers: str | None = None  # work "through both layers": of a round that is "folded", or "perhaps" of two pieces


@dataclass(frozen=True, slots=True)
class Marker:
    """ "place a marker in center st", "pm"."""

    span: Span
    where: Marked
    number: int = 0


@dataclass(frozen=True, slots=True)
class LastPlace:
    """ "working last dc in top of turning ch": where the last stitch of the run before goes, or the last few of a row called for."""

    span: Span
    places: tuple[Place, ...]
    number: Amount = ONE
    stitch: str | None = None  # told where there are several


@dataclass(frozen=True, slots=True)
class Alongside:
    """ "working 3 sc in each ch-2 sp": done on the way, where the run before passes such a place."""

    span: Span
    items: tuple[Step, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class RowCall:
    """ "Rep Rows 2-5", "As 3rd row": rows worked again by their numbers."""

    span: Span
    first: Amount | None  # None: the row or rows just worked, or a piece from its beginning
    last: Amount | None
    number: Amount = ONE  # how many rows where they are named by "last 2 rows"
    times: Times | None = None
    kind: str | None = None  # row | round
    part: str | None = None
    name: str | None = None  # "Inc row"
    until: Amount | None = None  # so many stitches are left, or reached
    until_unit: str = "stitches"  # or what else is counted, as in a printed count: "until 1 block remains"
    open_ended: bool = False  # "until piece measures 25 cm"
    rows: Amount | None = None  # "for 12 rows"
    rows_in_all: bool = False  # "until there are 60 rows in all"
    rows_of: str = ""  # "rows in Back": the piece in which those in all are counted, where it is named
    to_part: str | None = None  # "as for Back to armholes"
    begin: Amount | None = None  # "as for Left Leg from Row 3": the first of its rows that is worked here
    own: tuple[tuple[Step, ...], ...] = ()  # the rows themselves, where the sentence tells them: "Work 3 rows even"
    lead: tuple[tuple[Step, ...], ...] = ()  # those before the first pass: "in next row and in every 4th row …"
    apart: int = 0  # one row of so many, those between are not told: 4 of "in every 4th row 3 times"
    every: Amount | None = None  # "every 4th (4th, 6th) row": how far apart, where that is not the same in all sizes
    growth: tuple[Growth, ...] = ()  # "each row adds 6 dc and 2 ch-1 sps"
    swap: Swap | None = None
    shaped: Shaping | None = None  # "inc 1 st at each end": of each of these rows
    beside: Unread | None = None  # other work behind the call, which one of several rows has
    times_in_all: bool = False  # "a total of 4 times": the rows just worked are the first of these
    as_before: int = 0  # "continue to inc in this way": rows that gain as those before do; below 0, lose
    rest: bool = False  # "complete to match first side": what that side or piece has more than is worked here


@dataclass(frozen=True, slots=True)
class Unread:
    """Words that were not understood, and why; `fault` where it is a slip of the pen with a rule of its own."""

    span: Span
    words: str
    why: str
    fault: str | None = None  # never opened | never closed | the repeat's missing sign
    items: tuple[Step, ...] = ()  # what stands in a bracket of which it is not said how often it is worked


Step = (
    Chain | Work | Group | Repeat | Passage | Either | Skip | Confined | Evenly | Shaping | OpenWork | OtherSide | AlongEdge | MakeRing
    | Join | JoinYarn | UseYarn | FastenOff | Turn | NoJoin | Loops | Remark | Marker | LastPlace | Alongside | RowCall | Unread
)  # fmt: skip

THE_PIECE_BEFORE = "the piece before"  # of "Make a second piece the same", which gives no name
NOT_UNDERSTOOD = "these words were not understood"
MAKES_STITCHES = (Work, Group, Repeat, Passage, Evenly, Shaping, OpenWork)
_HOLDERS = (Group, Repeat, Passage, Alongside, Either)  # what has steps inside it: few steps do


def children(step: Step) -> tuple[Step, ...]:
    """The steps inside a step."""
    if isinstance(step, Either):
        return tuple(item for option in step.options for item in option)
    return step.items if isinstance(step, _HOLDERS) else ()


def walk(steps: Iterable[Step]) -> Iterator[Step]:
    """Every step, those inside others too, in the order of the text."""
    for step in steps:
        yield step
        if isinstance(step, _HOLDERS):
            yield from walk(children(step))
