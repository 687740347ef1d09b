"""Repeats by marks, by brackets and by "so many times": what each makes on a row that is known, worked out by hand.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import assert_workings_hold, check, corrections, counts, worked_rows

ROUND_12 = "Rnd 1: 12 sc in magic ring, join with sl st in first sc.\n"
ROUND_24 = "Rnd 1: 24 sc in magic ring, join with sl st in first sc.\n"
ROW_20 = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"

MADE = [
    # a passage called for after other work is worked once more
    (ROW_20, "Row 2: Ch 1, *2 sc in next sc*, sc in next 18 sc, rep from * to * once, turn.", 22),
    (ROUND_12, "Rnd 2: Ch 1, *sc in next 4 sc*, 2 sc in each of next 4 sc; rep between *s once, join.", 16),
    (ROUND_12, "Rnd 2: Ch 1, +sc in next sc, # 2 sc in next sc, # sc in next sc; rep from + 3 times in all, # sc in last 3 sc, join.", 15),
    # marks within a starred passage
    (ROUND_24, "Rnd 2: Ch 1, *sc in next 3 sc, # 2 sc in next sc #, sc in next sc; rep from * 3 times more, then from # to # once, sc in last 3 sc, join.", 29),
    (ROUND_24, "Rnd 2: Ch 1, *sc in next 2 sc **, 2 sc in next sc* rep 7 times more ending last rep at **, sc in last sc, join.", 31),
    # how often all the words before are worked
    (ROUND_24, "Rnd 2: Sc next 3, 2 sc next, around.", 30),
    (ROUND_24, "Rnd 2: Sc in next 2 sc, 2 sc in next sc, 8 times.", 32),
    (ROUND_24, "Rnd 2: Repeat [sc in next sc, 2 sc in next sc] around.", 36),
    # n stitches in one place, one in each of n
    (ROUND_24, "Rnd 2: {2 sc, sc 2} eight times.", 32),
    # numbers in words
    (ROUND_24, "Rnd 2: Ch 1, sc in each of next twenty-two sc, sc2tog, join.", 23),
    # the last pass leaves something out
    (ROUND_24, "Rnd 2: Ch 1, *sc in next sc, ch 2, sk next sc; rep from * around. At end of last rep, do not ch 2; join.", 12),
    # increases told by the place they fall on
    (ROUND_24, "Rnd 2: Increase in every 3rd stitch.", 32),
    (ROUND_24, "Rnd 2: Sc in each st around, increasing 6 more sts, evenly.", 30),
    (ROUND_24, "Rnd 2: 2 sc in next sc twice, sc in each of next 22 sc.", 26),
    (ROUND_24, "Rnd 2: Repeat (rep) from * around.\n", None),
]  # fmt: skip


@pytest.mark.parametrize(("before", "words", "stitches"), MADE, ids=[words[:70] for _, words, _ in MADE])
def test_repeat_makes(before: str, words: str, stitches: int | None) -> None:
    """The row is recomputed and makes what its words say; a repeat of nothing is not recomputed."""
    cell = worked_rows(check(before + words))[-1].cells[0]
    assert (cell.made.stitches if cell.made is not None else None) == stitches


def test_increases_that_do_not_fall_evenly_are_not_guessed() -> None:
    """With 12 stitches, "in every 5th" leaves open where the first of them falls."""
    cell = worked_rows(check(ROUND_12 + "Rnd 2: Increase in every 5th stitch."))[-1].cells[0]
    assert cell.made is None


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("*sc in next 3 sts, 2 sc in next st; rep from * across", 50),
        ("*sc in next 2 sts, sc2tog; rep from * 9 times more", 30),
        ("*sc in next 3 sts, 2 sc in next st; rep from * to last 4 sts, sc in last 4 sts", 49),
        ("sc in first 3 sts, *sc2tog, sc in next st; rep from * 4 times more, sc in each rem st", 35),
        ("*sc in next st, 3 sc in next st; rep from * 3 times more, sc in same st, sc in each rem st", 49),
        ("*sc in next st, 3 sc in next st; rep from * to last 2 sts, sc2tog", 77),
    ],
)
def test_many_passes_of_plain_stitches(words: str, count: int) -> None:
    """Whole passes, passes up to a limit, and what follows in the last place; of forty stitches, by arithmetic."""
    report = check(f"Panel\n\nTerms: US\n\nFRONT\nRow 1: Fsc 40, turn. (40)\nRow 2: Ch 1, {words}.\n")
    assert counts(report) == [40, count]
    assert_workings_hold(report)


def test_passes_of_plain_stitches_that_do_not_come_out() -> None:
    """Of forty-one stitches, one is left behind ten passes of four: no count is given for it in silence."""
    report = check(
        "Panel\n\nTerms: US\n\nFRONT\nRow 1: Fsc 41, turn. (41)\nRow 2: Ch 1, *sc in next 3 sts, 2 sc in next st; rep from * across. (50)\n"
    )
    assert [rule for rule, _ in corrections(report)] == ["repeat-does-not-fit"]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("*sc 1, inc; rep from * until you have 21 sts.", 21),
        ("sc 2, *3 sc in next st, sc 1; rep from * until there are 26 sts in total.", 26),
        ("*sc 1, inc; rep from * until you have 12 sts, sc in each st to end.", 18),
        ("*sc 1, inc; rep from * until you have 20 sts.", None),
    ],
)
def test_a_repeat_until_there_are_so_many_stitches(row: str, made: int | None) -> None:
    """So many passes as make that number; a number that none of them comes to is not worked."""
    report = check(f"Toy\n\nUS terms\n\nEAR\nRnd 1: 14 sc in magic ring. (14)\nRnd 2: {row}\n")
    assert counts(report) == [14, made]
