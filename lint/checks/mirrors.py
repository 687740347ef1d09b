"""Pieces that belong together: left and right, back and front, the parts that go on from each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lint.checks.assembly import begins, talk
from lint.checks.context import Context
from lint.checks.extent import in_halves, pieces_of
from lint.expression import expression
from lint.finding import Finding, Related
from lint.ledger import LedgerRow, Outcome
from lint.pattern import Part
from lint.reading.facts.assembly import sews
from lint.tree import RowCall

_HANDS = expression(r"(?i)\b(?:left|right)\b")
_SIDE_SEAMS = expression(r"(?i)\bside\s+seams?\b|\b(?:sew|seam|join)\w*\b[^.]{0,24}\bsides\b")
_SHOULDER_SEAMS = expression(r"(?i)\bshoulders?\b")
_SHOULDER = expression(r"(?i)\b(?:left|right|first|second)\b.*\b(?:shoulder|side|neck)\b")
_MANY = 3  # sizes from which on the others tell that two pieces are meant to be as high
_LITTLE = 1  # rows by which seams that are sewn to each other may differ


@dataclass(frozen=True, slots=True)
class _Shape:
    """What a part is made of in one size."""

    start: int
    end: int
    rows: int


def check_mirrors(context: Context) -> Iterator[Finding]:
    """pieces-do-not-mirror: a left front of 30 stitches and a right front of 31; edges-differ: a front with rows to spare."""
    by_name: dict[str, list[Part]] = {}
    for part in context.pattern.parts:
        if _HANDS.search(part.name):
            by_name.setdefault(_HANDS.sub("", part.name).lower().strip(), []).append(part)
    for pair in by_name.values():
        if len(pair) == 2 and {hand.lower() for part in pair for hand in _HANDS.findall(part.name)} == {
            "left",
            "right",
        }:
            yield from _mirrored(context, *pair)
    yield from _side_edges(context)
    yield from _heights(context)


def _mirrored(context: Context, one: Part, other: Part) -> Iterator[Finding]:
    """Left and right: not alike, and not different by the same in every size, as an overlap would be."""
    if any(
        isinstance(step, RowCall) and (step.part or step.rest) for row in (*one.rows, *other.rows) for step in row.steps
    ):
        return  # "Work as Left Front, reversing shapings": that one's rows, under its headings too
    shapes, others = _shapes(context, one), _shapes(context, other)
    if shapes is None or others is None:
        return
    for what, name in (("start", "starts with"), ("end", "ends with"), ("rows", "has")):
        apart = [getattr(b, what) - getattr(a, what) for a, b in zip(shapes, others, strict=True)]
        least = _LITTLE if what == "rows" else 0
        out = [size for size, number in enumerate(apart) if abs(number) > least]
        if not out or len(apart) > 1 and len(set(apart)) == 1:
            continue
        unit = "rows" if what == "rows" else "sts"
        values = getattr(shapes[out[0]], what), getattr(others[out[0]], what)
        yield _finding(
            context, "pieces-do-not-mirror", one, other, out,
            name, (f"{values[0]} {unit}", f"{values[1]} {unit}"),
        )  # fmt: skip
        return


def _side_edges(context: Context) -> Iterator[Finding]:
    """Back and front whose side edges are sewn, but which have not as many rows."""
    named = {
        word: [part for part in context.pattern.parts if part.name.strip().lower() == word]
        for word in ("back", "front")
    }
    if any(len(parts) != 1 for parts in named.values()):
        return
    (back,), (front,) = named["back"], named["front"]
    if not any(sews(words) and _SIDE_SEAMS.search(words) for words in map(context.source.slice, talk(context))):
        return
    if _goes_on_as(context, back) != _goes_on_as(context, front) or any(in_halves([part]) for part in (back, front)):
        return
    shapes, others = _shapes(context, back), _shapes(context, front)
    if shapes is None or others is None:
        return
    out = [size for size, (a, b) in enumerate(zip(shapes, others, strict=True)) if abs(a.rows - b.rows) > _LITTLE]
    if out:
        values = shapes[out[0]].rows, others[out[0]].rows
        yield _finding(context, "edges-differ", back, front, out, "has", (f"{values[0]} rows", f"{values[1]} rows"))


def _heights(context: Context) -> Iterator[Finding]:
    """Back and front that are sewn at the shoulders, one of them parted for its neck: where most sizes are as high, the others are asked about."""
    pieces = {word: [one for one in pieces_of(context) if one.words == {word}] for word in ("back", "front")}
    if any(len(found) != 1 for found in pieces.values()) or len(context.pattern.sizes) < _MANY:
        return
    if not any(sews(words) and _SHOULDER_SEAMS.search(words) for words in map(context.source.slice, talk(context))):
        return
    back, front = pieces["back"][0].parts, pieces["front"][0].parts
    heights, others = _height(context, back), _height(context, front)
    if len(back) == len(front) or heights is None or others is None:
        return
    out = [size for size, (a, b) in enumerate(zip(heights, others, strict=True)) if abs(a - b) > _LITTLE]
    if out and 2 * len(out) < len(heights):
        rows = tuple(f"{one[out[0]]} rows" for one in (heights, others))
        yield _finding(
            context, "edges-differ", back[0], front[0], out, "has", (rows[0], f"up to the shoulder {rows[1]}")
        )


def _height(context: Context, parts: Sequence[Part]) -> list[int] | None:
    """The rows of a piece up to the shoulder in every size: of two shoulders side by side those of the first."""
    if len(parts) == 1:
        counted = parts
    elif len(parts) == 3 and all(_SHOULDER.search(part.name) for part in parts[1:]):
        counted = parts[:2]
    else:
        return None
    shapes = [_shapes(context, part) for part in counted]
    if any(one is None for one in shapes):
        return None
    return [sum(one.rows for one in of_size) for of_size in zip(*(one or [] for one in shapes), strict=True)]


def _goes_on_as(context: Context, part: Part) -> str:
    """The heading under which a piece goes on behind its part; "" where it ends with it."""
    parts = context.pattern.parts
    at = next(index for index, one in enumerate(parts) if one is part)
    following = parts[at + 1] if at + 1 < len(parts) else None
    goes_on = following is not None and following.rows and not begins(following)
    return following.name.lower() if following is not None and goes_on else ""


def _shapes(context: Context, part: Part) -> list[_Shape] | None:
    """A part's shape in every size; None where a row of it is not known, is at fault, or may be many."""
    sizes = max(1, len(context.pattern.sizes))
    all_rows = [row for row in context.ledger.rows if row.part is part]
    if any(cell.outcome is Outcome.NOT_RECOMPUTED for row in all_rows for cell in row.cells):
        return None  # "Complete to match Right Front": rows that are not known
    rows = [row for row in all_rows if row.kind != "foundation"]
    if not rows or any(row.open or row.kind != "row" for row in rows):
        return None
    found = [_shape(rows, size) for size in range(sizes)]
    known = [one for one in found if one is not None]
    return known if len(known) == sizes else None


def _shape(rows: Sequence[LedgerRow], size: int) -> _Shape | None:
    cells = [row.cells[min(size, len(row.cells) - 1)] for row in rows]
    worked = [cell for cell in cells if cell.outcome is not Outcome.NOT_WORKED]
    made = [cell.made.stitches for cell in worked if cell.made is not None and not cell.misfits]
    if not worked or len(made) < len(worked) or any(cell.outcome is Outcome.DIFFERS for cell in worked):
        return None
    return _Shape(made[0], made[-1], len(made))


def _finding(
    context: Context, rule: str, first: Part, second: Part, out: list[int], what: str, values: tuple[str, str]
) -> Finding:
    names = context.pattern.sizes
    return context.finding(
        rule,
        second.span,
        second.name,
        sizes=tuple(names[size] for size in out) if len(out) < len(names) else (),
        size=f" in size {names[out[0]]}" if len(names) > 1 else "",
        expected=values[0],
        found=values[1],
        related=(Related(first.span, "the piece that it goes with"),),
        one=f"{first.name} {what} {values[0]}",
        other=f"{second.name} {values[1]}",
    )
