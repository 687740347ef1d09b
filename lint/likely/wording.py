"""Says what would come out if a likely cause were mended."""

from __future__ import annotations

from lint.ledger import LedgerRow
from lint.likely.edits import Edit
from lint.likely.order import Swap
from lint.source import SourceText
from lint.tree import RowCall


def what_then(
    source: SourceText,
    edit: Edit | Swap,
    row: LedgerRow,
    mended: list[LedgerRow],
    clean: bool,
    reader: tuple[int, str] | None = None,
) -> str:
    """ "Rnd 5 makes 60 sc as printed, and so do Rnds 6 to 8"; `clean`: no later row of the piece is at fault then.

    `reader`: the size in which it was tried, with its name, where the pattern has several.
    """
    if isinstance(edit, Swap):
        head = f"{row.label} comes out on the row below"
    elif not edit.in_words:
        head = f"that is what the words of {row.label} make"
    elif row.stated is not None and (row.row.stated is not None or not isinstance(edit.old, RowCall)):
        head = f"{row.label} makes {_printed(source, row, reader)}, as printed"
    else:
        head = f"{row.label} uses up the row below"
    if mended:
        tail = f", and {span_of(mended)} {'comes' if len({one.label for one in mended}) == 1 else 'come'} out too"
    elif clean:
        tail = ", and the rows after it come out"
    else:
        tail = ""
    return head + tail


def span_of(rows: list[LedgerRow]) -> str:
    """ "Rnd 6 to Rnd 8", or the one label that they have."""
    labels = list(dict.fromkeys(row.label for row in rows))
    if rows[0].part is not rows[-1].part:
        return f"{len(rows)} later rows"
    if len(labels) == 1:
        return labels[0]
    return f"{labels[0]} and {labels[1]}" if len(labels) == 2 else f"{labels[0]} to {labels[-1]}"


def _printed(source: SourceText, row: LedgerRow, reader: tuple[int, str] | None) -> str:
    """The printed count; where it has a figure for each size, that of the size in which the cause was tried."""
    stated = row.stated
    if reader is not None and any(len(item.number.values) > 1 for item in stated.items):
        figures = ((item.at(reader[0], row.stated_index), item.words) for item in stated.items)
        told = ", ".join(f"{number} {words}".strip() for number, words in figures if number is not None)
        return f"{told} in size {reader[1]}" if told else "the count"
    words = " ".join(source.slice(stated.span).split()).strip(" .:;-–—→=[](){}")
    whole = words.count("(") == words.count(")") and len(words) <= 60
    return words if whole else "the count"
