"""How a difference goes on from row to row: one more in every row, one now and then, or the same all along."""

from __future__ import annotations

from lint.testers.courses import Course, Departure

_NEARLY_ALL = 0.8  # of the counts have to be on the line: a tester who drifts also miscounts


def every_row(course: Course, departure: Departure, sign: int) -> bool:
    """Whether each row adds one more (or one fewer, `sign` -1), from some row after the last sound count on."""
    offs, ats = departure.offs, [step.at for step in departure.steps]
    if max(sign * off for off in offs) < 2 or sign * offs[0] < 1:
        return False
    start = ats[0] - sign * offs[0] + 1  # the row in which it would have begun
    rows = course.path.rows
    lowest = departure.before.at + 1 if departure.before is not None else 0
    first_due = next((at for at, row in enumerate(rows) if not row.founds), 0)
    if start < max(lowest, first_due):
        return False
    if len(offs) == 1 and start > max(lowest, first_due) + 1:
        return False  # a lone count can have come by a drift from any row on
    on_line = sum(off == sign * (at - start + 1) for off, at in zip(offs, ats, strict=True))
    return on_line >= _NEARLY_ALL * len(offs)


def now_and_then(departure: Departure) -> bool:
    """Whether one is lost here and there, at least twice, and none is gained."""
    offs, ats = (0, *departure.offs), [step.at for step in departure.steps]
    before = departure.before.at if departure.before is not None else ats[0] - 1
    drops = [a - b for a, b in zip(offs, offs[1:], strict=False)]
    rows = [b - a for a, b in zip((before, *ats), ats, strict=False)]
    single = all(0 <= drop <= min(1, gone) for drop, gone in zip(drops, rows, strict=True))
    return single and sum(drops) > 1 and 0 in drops


def steady(departure: Departure) -> bool:
    """Whether the difference stays, or grows only as the row itself does where every stitch is worked twice."""
    first, due = departure.offs[0], departure.first.row.due.count
    for step, off in zip(departure.steps, departure.offs, strict=True):
        grown = first * (step.row.due.count or 0) / due if due else first
        if off != first and abs(off - grown) > 0.5:
            return False
    return True
