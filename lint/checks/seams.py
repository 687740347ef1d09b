"""Stitches that are sewn against those of the last row, or against each other."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.assembly import SEVERAL_NAMES, begins, talk
from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Related, Weight
from lint.ledger import LedgerRow, Outcome
from lint.pattern import Part
from lint.reading.facts.assembly import sews, singular
from lint.reading.lines.seams import Seamed, seamed, seamed_to
from lint.tree import FastenOff, JoinYarn

_OTHER_EDGE = expression(
    r"(?i)\d|\b(?:foundation|beginning|starting|cast|first|bottom|lower|side|sides|base|armhole|opening|neck|unworked|skipped|missed|center|centre|underarm|row|rnd|round)\b"
)
_MANY = 4  # sizes of which all but one agree: then the last one means the same


def check_seams(context: Context) -> Iterator[Finding]:
    """seam-counts-differ: stitches that are sewn against those of the last row, or against each other."""
    sizes = max(1, len(context.pattern.sizes))
    text = context.source.text
    for span in talk(context):
        if not sews(context.source.slice(span)):
            continue
        pair = seamed_to(text, span, sizes)
        if pair is not None:
            unlike = [size for size in range(sizes) if _differ(pair.one.number.at(size), pair.other.number.at(size))]
            if unlike:
                yield _seam(
                    context,
                    pair.other,
                    unlike,
                    f"they are sewn to {pair.one.number} sts",
                    pair.one.number,
                    Related(pair.one.span, "sewn to these"),
                )
                continue
        for one in seamed(text, span, sizes):
            yield from _against_rows(context, one, sizes)


def _differ(one: int | None, other: int | None) -> bool:
    return one is not None and other is not None and one != other


def _against_rows(context: Context, one: Seamed, sizes: int) -> Iterator[Finding]:
    meant = _seamed_parts(context, one) if one.whole else []
    lasts = {id(part): last_rows(context, part, sizes) for part in meant}
    if not meant or any(row is None for rows in lasts.values() for row in rows):
        return
    off = [
        size
        for size in range(sizes)
        if (claimed := one.number.at(size)) is not None
        and not {claimed, 2 * claimed} & {rows[size].cells[size].made.stitches for rows in lasts.values()}
    ]
    sure = one.last_row or sizes >= _MANY and len(off) == 1  # the last row is meant, as all the other sizes tell
    unlike = [size for size in off if sure or one.number.at(size) not in _counts(context, meant, size)]
    if not unlike:
        return
    last = lasts[id(meant[0])][unlike[0]]
    made = last.cells[unlike[0]].made.stitches
    yield _seam(
        context,
        one,
        unlike,
        f"{last.part.name} ends with {made} sts ({last.label})",
        made,
        Related(last.span, f"the last row: {made} sts"),
        None if one.last_row else Weight.QUERY,  # else another edge may be meant
    )


def _seam(
    context: Context,
    one: Seamed,
    unlike: list[int],
    why: str,
    expected: object,
    related: Related,
    weight: Weight | None = None,
) -> Finding:
    names = context.pattern.sizes
    number = one.number.at(unlike[0])
    concerned = tuple(names[size] for size in unlike) if len(unlike) < len(names) else ()
    return context.finding(
        "seam-counts-differ",
        one.span,
        sizes=concerned,
        number=number,
        why=why,
        size=f" in size {names[unlike[0]]}" if concerned else "",
        expected=expected,
        found=number,
        weight=weight,
        related=(related,),
    )


def _seamed_parts(context: Context, one: Seamed) -> list[Part]:
    """The parts whose last row a seam can mean; none where another edge may be meant."""
    segments = expression(r"\s+of\s+(?:the\s+)?").split(one.of)
    if one.last_row and len(segments) > 1:
        segments = segments[1:]
    words = {singular(word) for word in expression(r"[a-z]+").findall(segments[0].lower())}
    if not segments[0] or _OTHER_EDGE.search(segments[0]):
        return []
    found = []
    for index, part in enumerate(context.pattern.parts):
        name = expression(r"[a-z]+").findall(expression(r"\([^)]*\)").sub("", part.name).lower())
        if not name or singular(name[-1]) not in words or SEVERAL_NAMES.search(part.name):
            continue
        others = context.pattern.parts[index + 1 :]
        if others and goes_on(part, others[0]):
            return []  # the piece ends under another heading
        found.append(part)
    return found


def goes_on(part: Part, following: Part) -> bool:
    """Whether the rows under the next heading go on with the same piece."""
    ended = any(isinstance(step, FastenOff) for row in part.rows[-2:] for step in row.steps)
    joined = any(isinstance(step, JoinYarn) for row in following.rows[:2] for step in row.steps)
    return not (ended or joined or begins(following))


def last_rows(context: Context, part: Part, sizes: int) -> list[LedgerRow | None]:
    """The row with which each size ends a part; None where it is not recomputed or is itself at fault."""
    found: list[LedgerRow | None] = []
    for size in range(sizes):
        rows = [
            row for row in context.ledger.rows if row.part is part and row.cells[size].outcome is not Outcome.NOT_WORKED
        ]
        last = rows[-1] if rows else None
        cell = last.cells[size] if last is not None else None
        sure = cell is not None and cell.made is not None and cell.outcome is not Outcome.DIFFERS and not cell.misfits
        # the chains of spaces may be sewn too, and what is made of slip stitches alone is not counted
        plain = sure and cell.made.stitches and not any(cell.made.spaces.values())
        found.append(last if plain and last.kind != "foundation" else None)
    return found


def _counts(context: Context, parts: list[Part], size: int) -> set[int]:
    """Every count of these parts in a size: a seam may take another row's edge."""
    return {
        row.cells[size].made.stitches
        for row in context.ledger.rows
        if any(row.part is part for part in parts) and row.cells[size].made is not None
    }
