"""How one part goes on from another: the stitches that are said to be there, and the side that comes next, in every size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from lint.checks.assembly import begins, talk
from lint.checks.context import Context
from lint.checks.sides import check_sides
from lint.expression import expression
from lint.finding import Finding, Related
from lint.ledger import LedgerRow, Outcome
from lint.pattern import Part
from lint.reading.facts.assembly import sews
from lint.reading.lines.seams import amount_of
from lint.source import Span
from lint.tree import JoinYarn

_FIGURES = (
    r"\d+(?:[\d\s(),\[\]/;:–-]{0,200}[\d)\]])?"  # bounded: a line of nothing but figures would be tried from each
)
_ON = expression(
    rf"(?i)\b(?:continu\w+|work\w*|go\w*\s+on|proceed\w*)\b[^.;\n]{{0,30}}\b(?:on|over|across)\s+(?:(?:these|the|all|your|rem(?:aining)?)\s+)*(?P<number>{_FIGURES})\s*(?:rem(?:aining)?\s+)?(?:sts|stitches)\b"
    rf"|\b(?:you\s+(?:should\s+)?(?:now\s+)?have|there\s+(?:are|should\s+be)(?:\s+now)?|leaving|with)\s+(?P<number>{_FIGURES})\s*(?:sts|stitches)\b(?!\s+(?:each|per|between|from|in each))"
    rf"|\b(?P<number>{_FIGURES})\s*(?:sts|stitches)\s+(?:now\s+)?(?:rem|remain|remaining|left)\b"
)
_TURNED_BY_SIDE = expression(r"\b(?:RS|WS)\b|\b(?i:right|wrong)\s+(?i:side)\b")


def check_carried(context: Context) -> Iterator[Finding]:
    """stitches-told-differ, row-parity-differs."""
    if len(context.pattern.sizes) < 2:
        return
    yield from _told(context)
    yield from _parity(context)


def _told(context: Context) -> Iterator[Finding]:
    """ "Continue on 60 (66, 70) sts" behind a row of 60 (66, 72): where some sizes agree, the others are asked about."""
    names = context.pattern.sizes
    for span in talk(context):
        if sews(context.source.slice(span)):
            continue
        for match in _ON.finditer(context.source.text, span.start, span.end):
            number = amount_of(match["number"], len(names))
            if number is None or number.lone is not None:
                continue
            before = [_row_before(context, match.start(), size) for size in range(len(names))]
            made = [_made(row, size) for size, row in enumerate(before)]
            if None in made or None in number.values:
                continue
            out = [size for size, one in enumerate(made) if number.at(size) != one]
            if out and 2 * len(out) < len(names) + 1 and len(out) < len(names):
                row = before[out[0]]
                assert row is not None
                yield context.finding_at(
                    "stitches-told-differ",
                    Span(*match.span("number")),
                    sizes=tuple(names[size] for size in out),
                    expected=made[out[0]],
                    found=number.at(out[0]),
                    size=names[out[0]],
                    label=row.label,
                    related=(Related(row.span, f"{made[out[0]]} sts here"),),
                )


def _row_before(context: Context, at: int, size: int) -> LedgerRow | None:
    """The row that a size has worked last before a place in the text."""
    rows = [
        row
        for row in context.ledger.rows
        if row.row.span.end <= at and row.cells[size].outcome is not Outcome.NOT_WORKED and row.kind != "foundation"
    ]
    return rows[-1] if rows else None


def _made(row: LedgerRow | None, size: int) -> int | None:
    cell = row.cells[size] if row is not None else None
    if cell is None or cell.made is None or cell.outcome is Outcome.DIFFERS or cell.misfits or cell.made.spaces:
        return None
    return cell.made.stitches


# sides ---------------------------------------------------------------------------------------------------------


def _parity(context: Context) -> Iterator[Finding]:
    """One size alone that has an odd number of rows before the work goes on, where sides are told and not in labels."""
    names = context.pattern.sizes
    parts = context.pattern.parts
    if len(names) < 3 or not _TURNED_BY_SIDE.search(context.source.text):
        return
    told = [one.span.start for one in check_sides(context)]  # sides in labels are followed row by row
    labelled = any(row.label is not None and row.label.side for part in parts for row in part.rows)
    piece: list[Part] = []
    asked = False  # of one piece once: what comes later in it has as many rows too many
    for part, following in zip(parts, parts[1:], strict=False):
        new = begins(part) or not piece
        piece, asked = ([part], False) if new else ([*piece, part], asked)
        if asked or not following.rows or begins(following) or not _goes_on_by_sides(following, labelled):
            continue
        rows = [
            row for row in context.ledger.rows if any(row.part is one for one in piece) and row.kind != "foundation"
        ]
        numbers = _numbers(rows, len(names))
        odd = [size for size, number in enumerate(numbers) if number % 2]
        alone = odd if len(odd) == 1 else [size for size in range(len(names)) if size not in odd]
        if not numbers or len(alone) != 1:
            continue
        if any(following.span.start <= start < following.rows[-1].span.end for start in told):
            continue  # said there already
        (size,) = alone
        other, asked = next(one for one in range(len(names)) if one != size), True
        yield context.finding(
            "row-parity-differs",
            following.span,
            following.name,
            sizes=(names[size],),
            found=numbers[size],
            size=names[size],
            odd="an odd number" if numbers[size] % 2 else "an even number",
            other=f"{numbers[other]} for size {names[other]}",
            related=(Related(piece[-1].rows[-1].span, "the last rows before it"),),
        )


def _goes_on_by_sides(part: Part, labelled: bool) -> bool:
    """Whether a part goes on from the last row, all sizes with the same one, and by its label on a side if labels tell any."""
    first = next((row for row in part.rows if row.label is not None), None)
    if any(isinstance(step, JoinYarn) for row in part.rows[:2] for step in row.steps):
        return False  # yarn is joined on whichever side is told
    if first is None or not labelled:
        return not labelled
    return first.label is not None and first.label.side is not None and first.sizes is None


def _numbers(rows: Sequence[LedgerRow], sizes: int) -> list[int]:
    """Rows worked by each size; none where they are rounds, or one may stand for many."""
    if not rows or any(row.open or row.kind != "row" for row in rows):
        return []
    cells = [
        [row.cells[size] for row in rows if row.cells[size].outcome is not Outcome.NOT_WORKED] for size in range(sizes)
    ]
    if any(cell.made is None for some in cells for cell in some):
        return []
    return [len(some) for some in cells]
