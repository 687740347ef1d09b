"""The line on which a piece grows: one row off it, and rounds that will cup or ruffle where they are to lie flat."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import groupby

from lint.checks.context import Context
from lint.faults import fault_of
from lint.finding import Finding, Related
from lint.ledger import LedgerRow
from lint.reading.facts.hazards import words_in
from lint.rulemodels import Growth
from lint.tree import RowCall, Work, walk

_BESIDE = 2  # rows on the line before a row that is off it, and as many after
_FEWEST_INCREASES = 5
_FEWEST = 3  # rounds that grow, before anything is said of how they lie


def check_growth(context: Context) -> Iterator[Finding]:
    """growth-uneven: a row whose count leaves the line on which those before and after it grow."""
    for rows in _pieces(context):
        counts = [_count(row) for row in rows]
        said = -_BESIDE
        for at in range(_BESIDE, len(rows) - _BESIDE):
            window = counts[at - _BESIDE : at + _BESIDE + 1]
            off = _off_the_line(window) or _another_step(counts, at)
            if off is None or at - said <= _BESIDE:
                continue
            said = at
            row = rows[at]
            line = ", ".join(str(count) for count in window)
            yield context.finding(
                "growth-uneven",
                row.span,
                row.part.name,
                row.label,
                expected=off,
                found=counts[at],
                line=line,
                related=(Related(rows[at - 1].span, f"{rows[at - 1].label} has {counts[at - 1]} sts"),),
            )


def _off_the_line(window: list[int | None]) -> int | None:
    """What the middle of five counts would be on the line of the four others: 18 in 6, 12, 19, 24, 30."""
    if None in window:
        return None
    first, second, middle, fourth, last = window
    step = second - first
    if not step or last - fourth != step or fourth - second != 2 * step or middle == second + step:
        return None
    return second + step


def _another_step(counts: list[int | None], at: int) -> int | None:
    """What a row would have with the step of its neighbours: 30 in 12, 18, 24, 36, 42, 48."""
    window = counts[max(0, at - 3) : at + 3]
    if len(window) < 6 or None in window:
        return None
    steps = [later - earlier for earlier, later in zip(window, window[1:], strict=False)]
    around = {steps[0], steps[1], steps[3], steps[4]}
    step = steps[0]
    if len(around) != 1 or not step or steps[2] in (step, 0) or steps[2] * step < 0:
        return None
    return window[2] + step


def _pieces(context: Context) -> Iterator[list[LedgerRow]]:
    """The rows of each part that were recomputed, up to one that is at fault."""
    for _, group in groupby(context.ledger.rows, key=lambda row: id(row.part)):
        rows = list(group)
        faulty = next((i for i, row in enumerate(rows) if any(fault_of(cell) for cell in row.cells)), len(rows))
        yield rows[:faulty]


def _count(row: LedgerRow) -> int | None:
    made = row.cells[0].made  # always of one size: rows that lack in the first are not on a line with its others
    return made.stitches if made is not None and made.stitches and not made.spaces else None


def check_spread(context: Context) -> Iterator[Finding]:
    """shaping-uneven: one increase too near to the last and the next too far, in a round whose others are evenly spread."""
    for row in context.ledger.rows:
        gaps = Counter(row.first.spread)
        if len(row.first.spread) < _FEWEST_INCREASES or len(gaps) != 3 or fault_of(row.first) is not None:
            continue
        usual, often = gaps.most_common(1)[0]
        near, far = sorted(gap for gap in gaps if gap != usual)
        if often == len(row.first.spread) - 2 and near < usual < far and near + far == 2 * usual:
            close = {-1: "two go into one stitch", 0: "two stand side by side"}.get(near, f"once {near}")
            yield context.finding(
                "shaping-uneven", row.span, row.part.name, row.label, usual=usual, near=close, far=far
            )


def check_balanced(context: Context) -> Iterator[Finding]:
    """shaping-left-out: a plain row amid rows that each gain a stitch and lose one, as a slanting strip does."""
    for rows in _pieces(context):
        both = [_shapes(row) for row in rows]
        for at in range(_BESIDE, len(rows) - _BESIDE):
            around = [*both[at - _BESIDE : at], *both[at + 1 : at + 1 + _BESIDE]]
            counts = {_count(row) for row in rows[at - _BESIDE - 1 : at + _BESIDE + 1]}
            if both[at] == (False, False) and all(one == (True, True) for one in around) and len(counts) == 1:
                row = rows[at]
                beside = Related(rows[at - 1].span, f"{rows[at - 1].label} has both")
                yield context.finding("shaping-left-out", row.span, row.part.name, row.label, related=(beside,))


def _shapes(row: LedgerRow) -> tuple[bool, bool] | None:
    """Whether a row's words increase and decrease; None where they only call for other rows."""
    steps = tuple(walk(row.row.steps))
    if any(isinstance(step, RowCall) for step in steps):
        return None
    works = [step for step in steps if isinstance(step, Work)]
    more = any(step.stitch == "inc" or step.number.at(0) != 1 and step.places and not step.together for step in works)
    return more, any(step.stitch == "dec" or step.together for step in works)


# rounds that are to lie flat -------------------------------------------------------------------------------------


def check_flat(context: Context) -> Iterator[Finding]:
    """may-not-lie-flat: rounds of one stitch that grow by fewer or more than that stitch needs, where flat is meant."""
    shapes = context.book.shapes
    growth = {one.stitch: one for one in shapes.growth}
    for rows in _pieces(context):
        if not rows or not _meant_flat(context, rows[0]):
            continue
        rounds = _growing(rows)
        kinds = {kind for row in rounds for kind in row.first.made.by_kind}
        if len(rounds) < _FEWEST or len(kinds) != 1 or not kinds <= growth.keys():
            continue
        yield from _judged(context, rounds, growth[kinds.pop()])


def _judged(context: Context, rounds: list[LedgerRow], needs: Growth) -> Iterator[Finding]:
    first, last = rounds[0].first.made.stitches, rounds[-1].first.made.stitches
    each = (last - first) / (len(rounds) - 1)
    from_centre = last / len(rounds)  # a round circle has its first round's stitches once for each round
    few, many = max(each, from_centre) < needs.least, min(each, from_centre) > needs.most
    if not few and not many:
        return
    row = rounds[-1]
    yield context.finding(
        "may-not-lie-flat",
        rounds[1].span,
        row.part.name,
        rounds[1].label,
        expected=needs.usual,
        found=f"{each:g}" if each == int(each) else f"{each:.1f}",
        first=rounds[0].label,
        last=row.label,
        stitch=context.stitch_word(needs.stitch),
        does="cups like a bowl" if few else "ruffles at the edge",
        how="fewer" if few else "more",
        related=(Related(row.span, f"{row.label} has {last} sts"),),
    )


def _growing(rows: list[LedgerRow]) -> list[LedgerRow]:
    """The rounds from the first one on, worked from a ring, that each add stitches to the one before and have no corners."""
    found: list[LedgerRow] = []
    for row in rows:
        made = row.first.made
        if row.kind == "foundation" and (made is None or not made.stitches):
            continue
        if row.kind != "round" or made is None or made.spaces or made.corners or not made.stitches:
            break
        if found and made.stitches <= found[-1].first.made.stitches:
            break
        found.append(row)
    return found if found and found[0].first.made.stitches <= 20 and found[0].number == 1 else []


def _meant_flat(context: Context, row: LedgerRow) -> bool:
    """Whether the title or the piece's heading names a flat thing, or a sentence says that it lies flat."""
    shapes, text = context.book.shapes, context.source.text
    named = f"{context.pattern.title or ''}\n{row.part.name}"
    if any(words_in(named, shapes.not_flat)):
        return False
    says = tuple(word for word in shapes.flat if "flat" in word)
    return any(words_in(named, shapes.flat)) or any(words_in(text, says))
