"""How often rows are worked again by the words that call for them."""

from __future__ import annotations

from lint.tree import RowCall, TimesKind

MOST_ROWS = 5000


def passes_of(call: RowCall, cycle: int) -> int | None:
    """How often a cycle of rows is worked, 0 where this size does not work it, None where it is not said."""
    if call.times is None or call.times.number is None or call.times.kind is TimesKind.FILL:
        return None
    return min(call.times.number.lone or 0, MOST_ROWS // max(1, cycle))
