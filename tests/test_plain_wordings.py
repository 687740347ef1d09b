"""Plain words of common patterns: lengths before "ch", sides that face, orders between rows, the other side, picots.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_WITH_SPACE = (
    "Cowl\nUS terms\n\nBAND\nRnd 1: 10 dc in magic ring, join. (10 dc)\n"
    "Rnd 2: Ch 1, dc in next 4 sts, skip next 3 sts, ch 3, dc in next 3 sts, join. (7 dc)\n"
)


@pytest.mark.parametrize("space", ["the 3-ch sp", "3-ch sp", "the ch-3 sp", "ch-3 space"])
@pytest.mark.parametrize("run", ["dc in each dc and 3 dc in {}", "1 dc in each st around, 3 dc in {}"])
def test_a_space_named_by_its_length_first(space: str, run: str) -> None:
    """A space is one of its length whichever way round that is written, and is worked on the way round."""
    assert counts(check(f"{_WITH_SPACE}Rnd 3: Ch 1, {run.format(space)}, join.\n"))[-1] == 10


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("dc in each dc, 3 dc in ch-3 sp, dc in each dc", 10),
        ("dc in each st, (dc, ch 1, dc) in next ch-3 sp, dc in each st to end", 9),
        ("dc in each dc, 3 dc in 3-ch sp, dc in each dc to last 2 sts, 2 dc in each of last 2 sts", 12),
    ],
)
def test_a_run_ends_at_the_space_between_two(words: str, made: int) -> None:
    """Stitches in each, some in a space, stitches in each again: the first run goes to that space."""
    report = check(f"{_WITH_SPACE}Rnd 3: Ch 1, {words}, join.\n")
    assert counts(report)[-1] == made
    assert not [rule for rule, _ in corrections(report) if rule.startswith("places")]


def test_runs_with_a_space_too_many_are_not_counted() -> None:
    """Where the row below has more spaces than the words name, none is guessed to be passed over."""
    report = check(
        "Square\nUS terms\n\nSQUARE\nRnd 1: (3 dc, ch 2) 4 times in magic ring, join. (12 dc, 4 ch-2 sps)\n"
        "Rnd 2: Ch 1, sc in each dc, 3 sc in next ch-2 sp, sc in each dc to end, join.\n"
    )
    assert outcomes(report)[-1] == "not-recomputed"


@pytest.mark.parametrize(
    "line",
    [
        "With WS facing as for Row 1 of the first strap, skip next 5 sts and join yarn in next st.",
        "With the same side facing as in Row 1 of first strap, skip 5 sts, join yarn in next st.",
    ],
)
def test_a_side_that_faces_as_in_a_row_is_no_row(line: str) -> None:
    """Which side faces may be told by another row; that row is not worked again."""
    report = check(
        f"Top\nUS terms\n\nTOP\nRow 1: Fsc 25. (25 sc)\nFirst Strap\n"
        f"Row 1: Ch 1, turn, sc in next 8 sts, dec, leave remaining sts unworked. (9)\nRow 2: Ch 1, turn, sc in each st. (9)\n"
        f"Fasten off.\nSecond Strap\n{line}\nRow 1: Ch 1, dec, sc in each st across. (9)\n"
    )
    assert counts(report)[-1] == 9 and outcomes(report)[-1] == "agrees"


@pytest.mark.parametrize(
    "line",
    [
        "Before you go on, ch 5.",
        "Carry on in rows: skip 3 sts at each end.",
        "For the neck, leave 6 sts unworked.",
        "At this point add 6 ch at the end of the row.",
        "Hold the work as you did for the last row. Skip next 3 sts, join yarn in next st.",
    ],
)
def test_orders_between_rows_are_not_passed_over(line: str) -> None:
    """A chain, stitches left out or yarn joined in words not understood: the row behind them is not counted."""
    report = check(
        f"Panel\nUS terms\n\nPANEL\nRow 1: Fsc 16. (16)\nRow 2: Ch 1, turn, sc in each st.\n{line}\n"
        "Row 3: Ch 1, turn, sc in each st across. (16)\n"
    )
    assert outcomes(report)[-1] == "not-recomputed"


@pytest.mark.parametrize(
    "line",
    [
        "If you like it deeper, ch 5 more.",
        "Each time you turn, chain 1.",
        "Sew on a button: leave 3 sts free at the edge.",
    ],
)
def test_talk_between_rows_changes_nothing(line: str) -> None:
    """Advice and what is done with a needle are no work: the row behind them is counted as before."""
    report = check(
        f"Panel\nUS terms\n\nPANEL\nRow 1: Fsc 16. (16)\nRow 2: Ch 1, turn, sc in each st.\n{line}\n"
        "Row 3: Ch 1, turn, sc in each st across. (16)\n"
    )
    assert counts(report)[-1] == 16


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("hdc on the other side, 2 hdc in last ch", None),
        ("hdc on the other side of the chain", None),
        ("5 hdc on the other side, 2 hdc in last ch", 17),
        ("hdc in each of next 5 ch on the other side, 2 hdc in last ch", 17),
    ],
)
def test_stitches_on_the_other_side_have_a_number(words: str, made: int | None) -> None:
    """Stitches on the other side of a chain without a number are not taken for one."""
    report = check(
        f"Sole\nUS terms\n\nSOLE\nCh 8.\nRnd 1: Hdc in 2nd ch from hook and in next 5 ch, 4 hdc in last ch, {words}.\n"
    )
    assert counts(report)[-1] == made


def test_a_picot_in_a_repeat_takes_no_place() -> None:
    """A round begun past its first stitch by a slip stitch comes out, though picots stand in its repeat."""
    report = check(
        "Star\nUS terms\n\nPicot: Ch 3, sl st in last sc made.\n\nSTAR\nRnd 1: 18 dc in magic ring, join. (18 dc)\n"
        "Rnd 2: Ch 4 (counts as dc and ch 1), dc in same st, *skip 2 dc, sc in next dc, ch 5, sc in next dc, skip 1 dc**,"
        " (dc, ch 1, dc) in next dc; rep from * around, ending last rep at **, join in 3rd ch of beg ch-4. (12 sts)\n"
        "Rnd 3: Sl st in first ch-1 sp, ch 1, 2 sc in same sp, *(3 sc, picot, 2 sc) in next ch-5 sp, picot**, 2 sc in next"
        " ch-1 sp; rep from * around, ending last rep at **, join in first sc. (21 sc)\n"
    )
    assert counts(report)[-1] == 21
    assert not [rule for rule, _ in corrections(report) if rule.startswith(("repeat", "places"))]


@pytest.mark.parametrize(
    ("told", "made"),
    [
        ("Rep Row 2 another 5 times, until you have 7 rows.", True),
        ("Repeat Row 2 five more times, for a total of 7 rows.", True),
        ("Rep Row 2 another 5 times, until there are 8 rows in all.", False),
    ],
)
def test_times_and_rows_in_all_are_one_thing_said_twice(told: str, made: bool) -> None:
    """Where times and rows in all agree, the rows are worked; where they do not, none is counted and that is told."""
    report = check(
        f"Strip\nUS terms\n\nSTRIP\nRow 1: Fsc 9. (9)\nRow 2: Ch 1, turn, sc in blo of each st across.\n{told}\n"
        "Row 8: Ch 1, turn, 2 sc in first st, sc in each st across.\n"
    )
    assert counts(report)[-1] == (10 if made else None)
    assert (len(report.ledger.rows) == 8) is made
