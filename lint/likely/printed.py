"""Another printed count: what the words make, or what the neighbours' figures lead one to expect."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lint.amount import Amount
from lint.expression import expression
from lint.ledger import Cell
from lint.likely.edits import Edit, with_item
from lint.likely.numbers import slip_cost
from lint.likely.numerals import numeral, with_value
from lint.pattern import Stated, StatedItem
from lint.source import Span

_NAMED = 1.6
_FIGURE = expression(r"(?P<figure>\d[\d\s,()/:-]*?)\s+(?P<name>\p{L}[\p{L} ]*)")
_LESS = 0.2  # a count is rather wrong than a number in the words, which must also use up the row below
_IN_STEP = 0.3  # taken off where the new figure is in step with those before and after


def as_made(stated: Stated, index: int | None, cell: Cell, text: str, size: int, in_step: bool) -> Iterator[Edit]:
    """The printed figures that differ, as the words make them."""
    differences = cell.comparison.differences if cell.comparison is not None else ()
    edited, changes, span, words, cost = stated, [], None, None, 0.0
    for difference in differences:
        item = difference.item
        current = next((other for other in edited.items if other.span == item.span and other.unit == item.unit), None)
        if current is None or not difference.made:
            return
        if item.unit.startswith("kind:") and cell.made is not None and difference.stated == cell.made.stitches:
            yield from _all_stitches(stated, current, text)
            return  # the number is right: it is a stitch that is called by another name
        cost += slip_cost(difference.stated, difference.made) - _LESS
        amount = _amount(current, index)
        at = numeral(text, item.span, amount, size) or numeral(text, item.span, amount, size, loose=True)
        edited = with_item(edited, current, _with_figure(current, index, size, difference.made))
        changes.append(f"print {difference.made} instead of {difference.stated}")
        span, words = at, str(difference.made) if at is not None else None
    if not changes:
        return
    if len(changes) > 1:
        span, words = None, None
    yield Edit(" and ".join(changes), cost - (_IN_STEP if in_step else 0.0), stated, edited, span, words)


def _all_stitches(stated: Stated, item: StatedItem, text: str) -> Iterator[Edit]:
    """ "48 dc" for "48 sts": the number of all stitches, called by the name of some."""
    figure = _FIGURE.search(text, item.span.start, item.span.end)
    if figure is not None and figure["name"].strip():
        at = Span(figure.start("name"), figure.end("name"))
        change = f"print “{figure['figure']} sts” instead of “{figure.group()}”"
        yield Edit(change, _NAMED, stated, with_item(stated, item, replace(item, unit="stitches")), at, "sts")


def _amount(item: StatedItem, index: int | None) -> Amount:
    return item.series[index] if item.series and index is not None and index < len(item.series) else item.number


def _with_figure(item: StatedItem, index: int | None, size: int, number: int) -> StatedItem:
    amount = with_value(_amount(item, index), size, number)
    if item.series and index is not None and index < len(item.series):
        series = (*item.series[:index], amount, *item.series[index + 1 :])
        last = amount if index == len(item.series) - 1 else item.number
        return replace(item, series=series, number=last)
    return replace(item, number=amount)
