"""Start chains that are no such multiple as the pattern says its stitch pattern needs, size by size."""

from __future__ import annotations

from collections.abc import Iterator

from lint.amount import Amount
from lint.checks.context import Context
from lint.checks.extent import Piece, pieces_of
from lint.finding import Finding, Related
from lint.ledger import Outcome
from lint.reading.facts.multiples import Multiple, multiples
from lint.source import Span
from lint.tree import Chain, MakeRing


def check_multiples(context: Context) -> Iterator[Finding]:
    """multiple-does-not-fit: "multiple of 6 + 2" and a start of 45 chains.

    Where several pieces start on a chain, only those are looked at of which most sizes are such a multiple: others may be
    worked in another stitch.
    """
    told = list(multiples(context.source.text))
    if len({(one.repeat, one.edge, one.chain) for one in told}) != 1:
        return
    multiple = told[0]
    sizes = max(1, len(context.pattern.sizes))
    starts = [(piece, start) for piece in pieces_of(context) if (start := _start(piece)) is not None]
    for piece, (span, chains) in starts:
        if len(chains.values) not in (1, sizes):
            continue
        out = [size for size in range(sizes) if not _fits(context, multiple, piece, chains, size)]
        if out and (2 * len(out) < sizes or len(starts) == 1):
            yield _finding(context, multiple, span, chains, out, sizes)


def _start(piece: Piece) -> tuple[Span, Amount] | None:
    """The chain, or ring of chains, that a piece begins on."""
    for step in piece.parts[0].rows[0].steps[:2]:
        if isinstance(step, (Chain, MakeRing)) and step.length is not None:
            return step.span, step.length
    return None


def _fits(context: Context, multiple: Multiple, piece: Piece, chains: Amount, size: int) -> bool:
    number = chains.at(size)
    if number is None:
        return True  # not worked in this size
    rows = [row for row in context.ledger.rows if row.part is piece.parts[0] and row.kind != "foundation"]
    cell = rows[0].cells[min(size, len(rows[0].cells) - 1)] if rows else None
    if cell is None or cell.made is None or cell.made.spaces or cell.misfits or cell.outcome is Outcome.DIFFERS:
        return True  # how many stitches the chains are for is not known, or is at fault already
    return multiple.fits(number, cell.made.stitches)


def _finding(context: Context, multiple: Multiple, span: Span, chains: Amount, out: list[int], sizes: int) -> Finding:
    names = context.pattern.sizes
    number = chains.at(out[0]) or 0
    low, high = multiple.nearest(number)
    return context.finding_at(
        "multiple-does-not-fit",
        span,
        sizes=tuple(names[size] for size in out) if len(out) < sizes else (),
        found=number,
        expected=f"{low} or {high}",
        words=" ".join(context.source.slice(multiple.span).split()),
        size=f" (size {names[out[0]]})" if sizes > 1 else "",
        related=(Related(multiple.span, "what the stitch pattern needs"),),
    )
