"""Tells how many rows from the number of a row: "4 rounds:" is so many unless the numbers around it lead to round 4."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lint.amount import Amount
from lint.expression import expression
from lint.lexicon import Lexeme
from lint.pattern import Label
from lint.reading.lines.texts import PartText
from lint.reading.words.cursor import OPENERS, SIGNS
from lint.tree import OpenWork, Remark, Step

_ROWS_TOLD = expression(r"(?i)\d{1,3} (?:rows|rounds|rnds|rds)(?: unchanged)?")


def tell_tallies(parts: Sequence[PartText]) -> None:
    """Settle every label of a number and a plural word, in place."""
    for part in parts:
        rows = [row for row in part.rows if row.label is not None]
        for first, last in _runs([row.label for row in rows]):
            before = _number(rows[first - 1].label, -1) if first else 0
            after = _number(rows[last].label, 0) if last < len(rows) else None
            after = None if after == 1 else after  # numbered anew
            settled = _settled([row.label for row in rows[first:last]], before, after)
            for row, label in zip(rows[first:last], settled, strict=True):
                row.label = label


def without_rows_told(label: Label, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """A row's steps where "– 8 rows" behind them only says what the label's range says, too."""
    told = steps[-1] if len(steps) > 1 else None
    if not isinstance(told, OpenWork) or len(label.numbers) < 2 or _ROWS_TOLD.fullmatch(told.words) is None:
        return steps
    return (*steps[:-1], Remark(told.span))


def without_each_row(label: Label | None, lexemes: list[Lexeme]) -> list[Lexeme]:
    """The words of a row without the "each" of "Rnds 4-9: 36 sc each", which is said of the rows; "2 sc each" is of stitches."""
    if label is not None and len(label.numbers) < 2 and label.rows is None and not label.by_size:
        return _last_row_again(lexemes)
    if label is None or len(label.numbers) < 2 or not any(item.kind == "each" for item in lexemes):
        return lexemes
    return [item for at, item in enumerate(lexemes) if item.kind != "each" or not _behind_run(lexemes, at)]


def _last_row_again(lexemes: list[Lexeme]) -> list[Lexeme]:
    """ "Row 4: The same again." as "repeat last row": of several rows it is not told which they are."""
    first = next((at for at, item in enumerate(lexemes) if item.kind not in ("the", "make") and item.lower != "do"), 0)
    again = [item.kind for item in lexemes[first : first + 2]] == ["same", "more"] and lexemes[
        first + 1
    ].lower == "again"
    behind = lexemes[first + 2].kind if first + 2 < len(lexemes) else "end"
    if not again or behind not in (".", "end", "=", "dash", *OPENERS):
        return lexemes
    same, more = lexemes[first : first + 2]
    called = (
        replace(same, kind="repeat"),
        replace(more, kind="last", text="last"),
        replace(more, kind="row", text="row"),
    )
    return [*called, *lexemes[first + 2 :]]


def _behind_run(lexemes: list[Lexeme], at: int) -> bool:
    """Whether a word stands between the stitches of a run and the end of its clause."""
    pair = lexemes[max(0, at - 2) : at]
    number = next((item.number for item in pair if item.kind == "number"), None) or 0
    after = lexemes[at + 1] if at + 1 < len(lexemes) else None
    ends = after is None or after.kind in (*SIGNS, *OPENERS, "dash", "=") or after.text in ("→", "|")
    return sorted(item.kind for item in pair) == ["number", "stitch"] and number > 2 and ends


def _runs(labels: list[Label]) -> list[tuple[int, int]]:
    """Where such labels follow each other: the first of each run, and the one behind its last."""
    runs: list[tuple[int, int]] = []
    for index, label in enumerate(labels):
        if label.tally and runs and runs[-1][1] == index:
            runs[-1] = (runs[-1][0], index + 1)
        elif label.tally:
            runs.append((index, index + 1))
    return runs


def _number(label: Label | None, at: int) -> int | None:
    """The first or last number of a label beside a run; None where it has none."""
    return label.numbers[at] if label is not None and label.numbers else None


def _settled(labels: list[Label], before: int | None, after: int | None) -> list[Label]:
    """The labels of a run as numbers of rows, as so many rows, or as neither where that cannot be told."""
    figures = [label.numbers[0] for label in labels]
    begins = figures[0] if before is None else before + 1
    in_order = figures == list(range(begins, begins + len(figures)))
    numbers = in_order and after in (None, figures[-1] + 1) or after == figures[-1] + 1
    tally = before is None or after is None or after == before + sum(figures) + 1
    if numbers and tally:
        numbers = in_order and (before is not None or after is not None)
        tally = not (numbers and (after is not None or len(figures) > 1 or figures == [1]))
    if numbers and not tally:
        return [replace(label, tally=False) for label in labels]
    if tally and not numbers:
        return [replace(label, rows=_amount(label), numbers=(), by_size=()) for label in labels]
    return [replace(label, unclear=True) for label in labels]


def _amount(label: Label) -> Amount:
    """How many rows a label tells, in each size."""
    if not label.by_size:
        return Amount((label.numbers[0],))
    return Amount(tuple(one[0] if one else None for one in label.by_size))
