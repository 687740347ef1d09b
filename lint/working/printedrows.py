"""What a printed row stands for before it is run out: its own work, and the rows called for or told behind it."""

from __future__ import annotations

from dataclasses import replace

from lint.pattern import Row
from lint.tree import MAKES_STITCHES, OpenWork, RowCall


def pieces(row: Row) -> tuple[Row, ...]:
    """A row's own work, and the rows called for in a sentence after it: "Row 3: …, turn. Rep Rows 2 and 3 4 times."."""
    calls = [i for i, step in enumerate(row.steps) if isinstance(step, RowCall)]
    goes_on = (
        len(calls) > 1 or any(isinstance(s, MAKES_STITCHES) for s in row.steps[calls[0] + 1 :]) if calls else False
    )
    even = any(isinstance(step, OpenWork) and step.plain for i in calls for step in row.steps[i + 1 : i + 2])
    if row.label is None and goes_on and (even or any(by_itself(row.steps[i]) for i in calls)):
        cuts = [0]  # "Work even for 8 rows. Dec 1 st at each end of next row": each of them rows of its own
        for at, step in enumerate(row.steps[1:], 1):
            behind_call = isinstance(row.steps[at - 1], RowCall) and isinstance(step, MAKES_STITCHES)
            if isinstance(step, RowCall) and any(
                isinstance(one, (RowCall, *MAKES_STITCHES)) for one in row.steps[cuts[-1] : at]
            ):
                cuts.append(at)
            elif behind_call:
                cuts.append(at)
        pairs = list(zip(cuts, [*cuts[1:], len(row.steps)], strict=True))
        return tuple(
            Row(
                row.steps[start].span,
                None,
                row.steps[start:end],
                row.stated if end == len(row.steps) else None,
                row.sizes,
            )
            for start, end in pairs
        )
    at = calls[0] if calls else None
    if at is None or not any(isinstance(step, MAKES_STITCHES) for step in row.steps[:at]):
        return (row,)
    call = row.steps[at]
    own = row.stated is not None and row.stated.span.start < call.span.start
    return (
        replace(row, steps=row.steps[:at], stated=row.stated if own else None),
        Row(call.span, None, row.steps[at:], None if own else row.stated, row.sizes),
    )


def by_itself(call: RowCall) -> bool:
    """Whether a call tells rows of its own, or how many, and is no cycle that others of its sentence go on from."""
    return bool(call.own or call.rows is not None or call.lead or call.apart or call.until is not None)
