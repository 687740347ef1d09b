"""How wide and how long the pieces of a pattern are, in stitches and in rows, as far as every row of them is known.

An extent is given only where it is clear which rows a measure speaks of: a thing worked around in one count, two alike
pieces whose chest is told, one flat piece of one width, or a piece that the measure names.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lint.checks.assembly import begins
from lint.checks.context import Context
from lint.expression import expression
from lint.ledger import LedgerRow, Outcome
from lint.pattern import Part
from lint.reading.facts.assembly import singular
from lint.reading.facts.measures import read_lengths
from lint.source import Span
from lint.tree import MAKES_STITCHES, FastenOff, JoinYarn, RowCall, walk
from lint.working.fabric import Made

_MOST_OFTEN = 4  # rows of one count before that count is the piece's own
_NEARLY_ALL = 0.9
_TURNED_UP = expression(r"(?i)\b(?:fold|turn|roll)\w*\s+(?:\w+\s+){0,3}?(?:up|back|over|in half)\b")
_DESIRED = expression(r"(?i)\b(?:desired|required|wanted|as long as|to fit)\b")
_NO_WORK = expression(r"(?i)\b(?:tail|end|yarn|thread|leav\w+|hook|gauge)\b[^.;\n]*$")
_WORKED_ON = expression(
    r"(?i)\b(?:rib\w*|band|hem|border|edging|collar|yoke|welt|waist\w*|skirt|peplum|hood|bottom|lower|body)\b"
)
_AT_ANOTHER_EDGE = expression(
    r"(?i)\b(?:neck\w*|sleeves?|cuffs?|armholes?|fronts?|button\w*)\b(?!.*\b(?:and|hem|lower|bottom)\b)"
)
_EDGING = expression(r"(?i)\b(?:edging|border|trim|neck\w*|collar|button\w*|band)\b")
_BESIDE = expression(r"(?i)\b(?:left|right|first|second|other|shoulders?|neck|straps?)\b")
_FOLDED = expression(r"(?i)\b(?:fold|sew|seam|gather|pleat|felt|shrink|graft|ruch|hem)\w*")


@dataclass(frozen=True, slots=True)
class Extent:
    """Stitches or rows that make up a measure: for each size the counts that may be meant, and a row that shows them."""

    counts: tuple[tuple[int, ...], ...]
    row: LedgerRow
    across: str  # as it is said: "around", "wide", "long"
    pieces: int = 1
    of_rows: bool = False
    draws_in: bool = (
        False  # a cuff: narrower than its gauge, so that only one size unlike all the others tells anything
    )


@dataclass(frozen=True, slots=True)
class Piece:
    """Parts that are one piece: from a beginning of its own to the next ("Back", "Shape armholes")."""

    parts: tuple[Part, ...]

    @property
    def words(self) -> frozenset[str]:
        """The words of its name, in the singular; none of a name that is nothing but numbers and signs."""
        name = expression(r"\([^)]*\)").sub("", self.parts[0].name).lower()
        return frozenset(singular(word) for word in expression(r"[a-z]+").findall(name))


def pieces_of(context: Context) -> tuple[Piece, ...]:
    """The pieces of a pattern, in the order of the text."""
    found: list[list[Part]] = []
    for part in context.pattern.parts:
        if part.rows and (not found or begins(part) or _is_edging(part)):
            found.append([part])
        elif part.rows:
            found[-1].append(part)
    return tuple(Piece(tuple(parts)) for parts in found)


def _is_edging(part: Part) -> bool:
    """A neckband, a border: worked on to an edge with yarn joined anew, it is no part of the piece printed before it."""
    steps = [step for row in part.rows[:2] for step in walk(row.steps)]
    return _EDGING.search(part.name) is not None and any(isinstance(step, JoinYarn) for step in steps)


def rows_of(context: Context, piece: Piece, size: int) -> list[LedgerRow] | None:
    """The rows that a size works of a piece, without its foundation; None where one is not known, or may be many."""
    rows = [
        row
        for row in context.ledger.rows
        if any(row.part is part for part in piece.parts)
        and row.kind != "foundation"
        and row.cells[min(size, len(row.cells) - 1)].outcome is not Outcome.NOT_WORKED
    ]
    known = all(row.cells[min(size, len(row.cells) - 1)].made is not None and not row.open for row in rows)
    return rows if rows and known else None


def worked_to_a_measure(text: str, span: Span, sizes: int) -> bool:
    """Whether words in a stretch of rows leave their number to a measure: "continue until piece measures 25 cm"."""
    if _DESIRED.search(text, span.start, span.end):
        return True
    return any(
        span.start <= length.span.start < span.end
        and not _NO_WORK.search(text, max(span.start, length.span.start - 40), length.span.start)
        for length in read_lengths(text, sizes)
    )


def _sizes(context: Context) -> int:
    return max(1, len(context.pattern.sizes))


# stitches ------------------------------------------------------------------------------------------------------


def _own_count(rows: Sequence[LedgerRow], size: int) -> int | None:
    """The count that most rows have and none goes beyond, in one size; None where there is none, or rows have spaces."""
    made = [row.cells[min(size, len(row.cells) - 1)].made for row in rows]
    counts = Counter(one.stitches + one.counted for one in made if one is not None and _plain(one))
    most = max((one.stitches + sum(one.spaces.values()) for one in made if one is not None), default=0)
    if not counts:
        return None
    count, times = counts.most_common(1)[0]
    return count if times >= _MOST_OFTEN and count == most else None


def _plain(made: Made) -> bool:
    """Whether a row has no chain spaces but those that the pattern counts as stitches, each as one."""
    return not made.spaces or made.counted == sum(made.spaces.values())


def _width(made: Made) -> int:
    return made.stitches + made.counted


def _of_one_count(rows: Sequence[LedgerRow], sizes: int, across: str, pieces: int = 1) -> Extent | None:
    counts = [_own_count(rows, size) for size in range(sizes)]
    if not rows or any(not count for count in counts):
        return None
    made = [row for row in rows if row.first.made is not None and _width(row.first.made) == counts[0]]
    if not made:
        return None
    mains = [_main(row) for row in made]
    shown = made[mains.index(Counter(mains).most_common(1)[0][0])]  # of the stitch that most rows are of
    return Extent(tuple((count or 0,) for count in counts), shown, across, pieces)


def around(context: Context) -> Extent | None:
    """A hat, a cowl, a mitt: rounds of one count, and none wider."""
    rounds = [row for row in context.ledger.rows if row.kind == "round"]
    return _of_one_count(rounds, _sizes(context), "around")


def chest(context: Context) -> Extent | None:
    """A body in rounds; back and front of one width, or one panel made twice."""
    sizes = _sizes(context)
    named = {word: [row for row in context.ledger.rows if row.part.name.strip().lower() == word]
             for word in ("back", "front", "body")}  # fmt: skip
    if named["body"] and all(row.kind != "row" for row in named["body"]):
        return _of_one_count([row for row in named["body"] if row.kind == "round"], sizes, "around")
    if any(row.kind == "round" for rows in named.values() for row in rows):
        return None
    if named["back"]:
        back = _of_one_count(named["back"], sizes, "around", 2)
        if back is None or not named["front"]:
            return None
        front = _of_one_count(named["front"], sizes, "around", 2)
        return back if front is not None and front.counts == back.counts else None
    flat = {id(row.part): row.part for row in context.ledger.rows if row.kind == "row"}
    if len(flat) == 1:
        (part,) = flat.values()
        rows = [row for row in context.ledger.rows if row.part is part]
        return _of_one_count(rows, sizes, "around", 2) if part.make == 2 else None
    return None


def flat_width(context: Context) -> Extent | None:
    """One flat piece, all of whose rows have one count."""
    rows = [row for row in context.ledger.rows if row.kind != "foundation"]
    if len({id(row.part) for row in rows}) != 1 or any(row.kind != "row" for row in rows):
        return None
    extent = _of_one_count(rows, _sizes(context), "wide")
    if extent is None or rows[0].part.make != 1 or len(extent.counts) < len(rows[0].cells):
        return None
    for row in rows:
        for size, cell in enumerate(row.cells):
            if cell.made is not None and ((_width(cell.made),) != extent.counts[size] or not _plain(cell.made)):
                return None
    return extent


# rows ----------------------------------------------------------------------------------------------------------


def length(context: Context) -> Extent | None:
    """All rows or rounds of a pattern that is one piece of one count throughout, with nothing folded or sewn."""
    pieces = pieces_of(context)
    if len(pieces) != 1 or len(pieces[0].parts) != 1 or pieces[0].parts[0].make != 1:
        return None
    flat = flat_width(context)
    if flat is None and (around(context) is None or not _one_count_throughout(context)):
        return None
    if (_FOLDED if flat is not None else _TURNED_UP).search(context.source.text):
        return None  # what is sewn or folded is not as long as it was worked
    return _all_rows(context, pieces[0], "long" if flat is not None else "tall")


def _one_count_throughout(context: Context) -> bool:
    made = [cell.made for row in context.ledger.rows if row.kind != "foundation" for cell in row.cells[:1]]
    return len({one.stitches for one in made if one is not None}) == 1


def _of_one_height(rows: Sequence[LedgerRow]) -> bool:
    """Whether nearly all rows are of one stitch, so that one row gauge can speak of them."""
    mains = Counter(_main(row) for row in rows if row.first.made is not None)
    return not mains or mains.most_common(1)[0][1] >= _NEARLY_ALL * len(rows)


def _main(row: LedgerRow) -> str:
    """The stitch that most of a row is made of."""
    kinds = row.first.made.by_kind if row.first.made is not None else {}
    return max(kinds, key=kinds.__getitem__, default="")


def _span(context: Context, piece: Piece) -> Span:
    """A piece in the text: from its heading to its last row, and what is said behind that up to the next part."""
    later = [part.span.start for part in context.pattern.parts if part.span.start > piece.parts[-1].span.start]
    return Span(piece.parts[0].span.start, min(later, default=len(context.source.text)))


def in_halves(parts: Sequence[Part]) -> bool:
    """Whether some rows lie beside others, as those of two shoulders do: then all of them are no length."""
    steps = [step for part in parts for row in part.rows for step in walk(row.steps)]
    ended = next((index for index, step in enumerate(steps) if isinstance(step, FastenOff)), len(steps))
    joined = any(isinstance(step, JoinYarn) for step in steps[2:])
    goes_on = any(isinstance(step, (*MAKES_STITCHES, RowCall)) for step in steps[ended:])
    return joined or goes_on or any(_BESIDE.search(part.name) for part in parts[1:])


def _all_rows(context: Context, piece: Piece, across: str) -> Extent | None:
    if worked_to_a_measure(context.source.text, _span(context, piece), _sizes(context)) or in_halves(piece.parts):
        return None
    rows = [rows_of(context, piece, size) for size in range(_sizes(context))]
    if any(one is None or not _of_one_height(one) for one in rows) or not rows[0]:
        return None
    return Extent(tuple((len(one or ()),) for one in rows), rows[0][-1], across, of_rows=True)


def back_length(context: Context) -> Extent | None:
    """All rows of the back of a garment that has nothing worked on to it."""
    every = pieces_of(context)
    backs = [piece for piece in every if piece.words == {"back"}]
    others = [part.name for part in context.pattern.parts if not _AT_ANOTHER_EDGE.search(part.name)]
    if len(backs) != 1 or any(_WORKED_ON.search(name) for name in others):
        return None
    return _all_rows(context, backs[0], "long")


# pieces that a measure names ------------------------------------------------------------------------------------


def named(context: Context, words: str, of_rows: bool) -> Extent | None:
    """The piece that the words about a measure name: all its rows, or every count that it has; None where not one alone is."""
    told = {singular(word) for word in expression(r"[a-z]+").findall(words.lower())}
    every = pieces_of(context)
    meant = [piece for piece in every if piece.words and piece.words <= told]
    if len(every) < 2 or len(meant) != 1 and not (meant and expression(r"(?i)\bback\s+and\s+front\b").search(words)):
        return None
    piece = meant[0]  # of "Back and Front: … wide" the back, which is not parted for the neck
    if of_rows:
        shaped_by_edges = any(row.kind == "round" for row in context.ledger.rows if row.part in piece.parts)
        return None if shaped_by_edges else _all_rows(context, piece, "long")
    rows = [rows_of(context, piece, size) for size in range(_sizes(context))]
    if any(one is None for one in rows) or not rows[0]:
        return None
    counts = tuple(tuple(dict.fromkeys(_counts(one or [], size))) for size, one in enumerate(rows))
    widest = max(rows[0], key=lambda row: row.cells[0].made.stitches if row.cells[0].made else 0)
    return Extent(counts, widest, "wide") if all(counts) else None


def sleeve_top(context: Context) -> Extent | None:
    """The widest row of the one sleeve, in every size: the upper arm."""
    rows = _rows_of_sleeve(context)
    counts = tuple(tuple(_counts(one, size))[:1] for size, one in enumerate(rows))
    if not rows or not all(counts) or not rows[0]:
        return None
    widest = max(rows[0], key=lambda row: row.cells[0].made.stitches if row.cells[0].made else 0)
    return Extent(counts, widest, "wide") if widest.kind == "row" else None


def sleeve_cuff(context: Context) -> Extent | None:
    """The first row of the one sleeve, where that is its narrowest in every size: the cuff."""
    rows = _rows_of_sleeve(context)
    counts = []
    for size, one in enumerate(rows):
        every, first = tuple(_counts(one, size)), tuple(_counts(one[:1], size))
        if len(every) < 2 or first != every[-1:] or one[0].kind != "row":
            return None
        counts.append(first)
    return Extent(tuple(counts), rows[0][0], "wide", draws_in=True) if counts else None


def _rows_of_sleeve(context: Context) -> list[list[LedgerRow]]:
    """The rows of the one sleeve in each size; none where there are several, or one is not followed."""
    sleeves = [piece for piece in pieces_of(context) if piece.words == {"sleeve"}]
    if len(sleeves) != 1:
        return []
    return [rows_of(context, sleeves[0], size) or [] for size in range(_sizes(context))]


def _counts(rows: Sequence[LedgerRow], size: int) -> Iterator[int]:
    """Every count of some rows, the widest first; none at all where chain spaces make up part of the width."""
    made = [row.cells[min(size, len(row.cells) - 1)].made for row in rows]
    if any(one is not None and not _plain(one) for one in made):
        return
    yield from sorted({_width(one) for one in made if one is not None and one.stitches}, reverse=True)
