"""Lists over the sizes that lack a number, or have one too many."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from lint.checks.context import Context
from lint.checks.gated import for_unknown_sizes
from lint.expression import expression
from lint.finding import Finding
from lint.pattern import Row
from lint.reading.sizes.figures import FIRST_BARE
from lint.reading.sizes.listings import Listing, listings
from lint.reading.sizes.sizes import shown_by_lists
from lint.source import Span
from lint.tree import Remark

_TWO = expression(r"\b\d+\s?[(\[]\s*\d+\s*[)\]]$")
_WEIGHT = expression(
    r"(?i)\s?\d+\s?(?:g|gr|grams?)\b(?!\s*(?:balls?|skeins?|hanks?))"
)  # "150 (200) 250 g": one of the list
_ENOUGH = 3  # right lists of a shape before a wrong one of it is called wrong


def wrong_lists(context: Context) -> list[tuple[Span, int, int]]:
    """Lists that are not one number a size: where, how many numbers, and for how many sizes.

    A list is judged only by the shape that the pattern itself gives its lists.
    """
    return context.once(_wrong_lists)


def _wrong_lists(context: Context) -> list[tuple[Span, int, int]]:
    sizes = len(context.pattern.sizes)
    if sizes < 2:
        return []
    rows = [row for part in context.pattern.parts for row in part.rows]
    right: Counter[str] = Counter()
    wrong: dict[str, list[Listing]] = {}
    first_bare = shown_by_lists(context.source.text).first_bare(sizes)
    for one in listings(context.source.text, sizes):
        if one.shape == FIRST_BARE and not first_bare:  # "ch 1, 20 (24, 28) sc" is a number and a list
            one = replace(one, numbers=frozenset({min(one.numbers)}))
        around = [row for row in rows if row.span.start <= one.span.start < row.span.end]
        if any(for_unknown_sizes(row) for row in around):
            continue  # for how many sizes it is cannot be told
        gates = {len(row.sizes) for row in around if row.sizes is not None}
        labels = [row.label for row in around if row.label is not None and row.label.span.end <= one.span.start]
        gates |= {len(label.numbers) for label in labels}  # a count for each row of a range
        if one.numbers & {sizes} or one.shown == sizes - 1 and _WEIGHT.match(context.source.text, one.span.end):
            right[_family(one)] += 1
        elif not one.numbers & gates:
            wrong.setdefault(_family(one), []).append(one)
    for span in _short_in_labels(context, rows):
        if not any(_meet(one.span, span) for found in wrong.values() for one in found):
            wrong.setdefault("brackets", []).append(Listing(span, "brackets", frozenset({2})))
    lists = [
        (one.span, one.shown, sizes)
        for shape, found in wrong.items()
        if right[shape] >= max(_ENOUGH, 2 * len(found))
        for one in found
    ]
    counts = [step for row in rows for step in row.steps if isinstance(step, Remark) and step.unfit]
    if not right and len(counts) >= _ENOUGH:
        counts = counts[:1]  # no list fits the sizes: they are misread or misprinted, which is one question
    told = [span for span, _, _ in lists]
    lists += [(step.span, step.unfit, sizes) for step in counts if not any(_meet(span, step.span) for span in told)]
    return lists


def _meet(one: Span, other: Span) -> bool:
    return one.start < other.end and other.start < one.end


def _short_in_labels(context: Context, rows: list[Row]) -> Iterator[Span]:
    """Two figures in a label of more sizes, "Rnds 4-20 (22):", that is not one row for each."""
    if len(context.pattern.sizes) < 3:
        return
    for row in rows:
        if row.label is not None and row.label.unclear and not row.label.rows:
            found = _TWO.search(context.source.text, row.label.span.start, row.label.span.end)
            if found is not None:
                yield Span(*found.span())


def _family(one: Listing) -> str:
    """The shape, by which lists are judged together: "4 (5, 6) (7)" may lack its second bracket."""
    return "brackets" if one.shape in ("groups", FIRST_BARE) else one.shape


def check_lists(context: Context) -> Iterator[Finding]:
    """size-list-length: "36/40/44 sts" in a pattern of four sizes."""
    for span, shown, sizes in wrong_lists(context):
        words = context.source.slice(span)
        guess = _by_the_row(context, span) or _by_the_steps(words, sizes) or _by_another(context, words)
        yield context.finding_at("size-list-length", span, words=words, expected=sizes, found=shown, guess=guess)


def _by_the_row(context: Context, span: Span) -> str:
    """The figures that a count would have by the words of its row, where that could be worked."""
    row = next((one for one in context.ledger.rows if one.row.span.start <= span.start < one.row.span.end), None)
    if row is None or row.row.stated is not None or any(cell.made is None for cell in row.cells):
        return ""
    made = [cell.made.stitches for cell in row.cells if cell.made is not None]
    if not all(made):  # a foundation chain has a length, and no count
        return ""
    first, *others = map(str, made)
    return f" By the words of the row the counts are {first} ({', '.join(others)})."


def _by_the_steps(words: str, sizes: int) -> str:
    """Between which figures one is left out: where one step is twice all the others."""
    figures = _figures(words)
    steps = [b - a for a, b in pairwise(figures)]
    wide = [at for at, step in enumerate(steps) if step == 2 * min(steps)]
    if len(figures) != sizes - 1 or len(steps) < _ENOUGH or len(wide) != 1 or len(set(steps)) != 2 or min(steps) <= 0:
        return ""
    return f" Is one left out between {figures[wide[0]]} and {figures[wide[0] + 1]}?"


def _by_another(context: Context, words: str) -> str:
    """Between which figures one is left out, where all the others are those of a whole list moved by one number.

    So a chain's lengths lie over the counts of the row that is worked into it.
    """
    figures = _figures(words)
    if len(figures) != len(context.pattern.sizes) - 1 or len(figures) < _ENOUGH:
        return ""
    places = set()
    for one in listings(context.source.text, len(context.pattern.sizes)):
        other = _figures(context.source.slice(one.span))
        if len(other) == len(figures) + 1:
            apart = [{a - b for a, b in zip(figures, other[:at] + other[at + 1 :], strict=True)} for at in range(len(other))]  # fmt: skip
            fits = [at for at, moved in enumerate(apart) if len(moved) == 1]
            places |= set(fits) if len(fits) == 1 else set()
    if len(places) != 1 or not 0 < (at := places.pop()) < len(figures):
        return ""
    return f" Is one left out between {figures[at - 1]} and {figures[at]}?"


def _figures(words: str) -> list[int]:
    return [int(figure) for figure in expression(r"\d+").findall(words)]


def check_named(context: Context) -> Iterator[Finding]:
    """sizes-unnamed: lists over sizes, and no line that says which they are."""
    span, sizes = context.pattern.sizes_unnamed, len(context.pattern.sizes)
    if span is not None:
        yield context.finding_at("sizes-unnamed", span, words=context.source.slice(span), found=sizes)
