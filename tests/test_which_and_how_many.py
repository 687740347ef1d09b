"""Which places a clause means and how many stitches go there: made as said, or told as not understood, and never guessed.

Worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

HEAD = "Piece\n\nUS terms\n\nPIECE\n"
OPEN = ("places-left-over", "places-run-out", "repeat-does-not-fit", "turning-chain-missing", "count-differs")


def _round(stitches: int) -> str:
    return f"Rnd 1: {stitches} sc in magic ring. ({stitches})\nRnd 2: "


def _row(stitches: int) -> str:
    return f"Row 1: Fsc {stitches}, turn. ({stitches})\nRow 2: "


ROUND_OF_DC = "Rnd 1: Ch 3 (counts as dc), 9 dc in magic ring, join with sl st in top of ch-3. (10)\nRnd 2: "
ARCHES = (
    "Rnd 1: 8 sc in magic ring, join with sl st in first sc. (8)\n"
    "Rnd 2: Ch 1, sc in same st, ch 5, skip next sc, *sc in next sc, ch 5, skip next sc; rep from * around, join. (4 sc, 4 ch-5 lps)\nRnd 3: "
)
PETALS = (
    "Rnd 1: 8 sc in magic ring, join with sl st in first sc. (8)\n"
    "Rnd 2: Ch 1, sc in same st, 3 dc in next sc, *sc in next sc, 3 dc in next sc; rep from * around, join. (12 dc, 4 sc)\nRnd 3: "
)
SHELLS = (
    "Special stitch: V-st = (dc, ch 2, dc) in same place.\nRow 1: Fsc 11, turn. (11)\n"
    "Row 2: Ch 3 (counts as dc), *skip next 2 sc, V-st in next sc; rep from * 2 times more, dc in last sc, turn. (8 dc, 3 ch-2 sps)\nRow 3: "
)
SQUARE = (
    "Rnd 1: Ch 3 (counts as dc), dc in magic ring, ch 2, *2 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of ch-3. "
    "(8 dc, 4 ch-2 sps)\nRnd 2: "
)
SPACES = (
    "Row 1: Fdc 9, turn. (9)\nRow 2: Ch 4 (counts as dc, ch 1), skip next dc, dc in next dc, *ch 1, skip next dc, dc in next dc; "
    "rep from * across, turn. (5 dc, 4 ch-1 sps)\nRow 3: "
)
OVAL = "Ch 8.\nRnd 1: "


@pytest.mark.parametrize(
    ("before", "words", "made"),
    [
        # the same stitch once more
        (_round(6), "*BPdc around next st, sc in top of the same st; rep from * around.", 12),
        # several groups in one place
        (SHELLS, "Ch 3 (counts as dc), 2 V-sts in next V-st, V-st in each of last 2 V-sts, dc in tch, turn.", 10),
        (SHELLS, "Ch 3 (counts as dc), 2 V-sts in each V-st across, dc in tch, turn.", 14),
        # single chains of a loop, and the last of a loop or petal in every pass
        (ARCHES, "Ch 1, *sc in next sc, hdc in 2nd and 4th ch of lp; rep from * around, join.", 12),
        (ARCHES, "Ch 1, *sc in next sc, sc in 3rd ch of ch-5; rep from * around, join.", 8),
        (ARCHES, "Ch 1, *skip sc, sc in first ch, dc in next 3 ch, sc in last ch; rep from * around, join.", 20),
        (ARCHES, "Ch 1, *hdc in each of 5 chs, skip sc; rep from * around, join.", 20),
        (PETALS, "Ch 1, *sc in sc, sc in next dc, ch 2, sc in last dc; rep from * around, join.", 12),
        # gaps, and stitches beside them
        (ROUND_OF_DC, "Ch 1, *sc in next dc, sc in sp before next dc; rep from * around, join.", 20),
        (ROUND_OF_DC, "Working in spaces between dc, ch 1, 3 sc in each sp around, join.", 30),
        # chains from the hook, and the other side
        ("Ch 11.\nRow 1: ", "Hdc in each ch across, starting in 2nd ch from hook, turn.", 10),
        (OVAL, "Sc in 2nd ch from hook, sc 5, 3 sc in last ch, sc 5 back along other side, 2 sc in last ch, join.", 16),
        (OVAL, "Sc in 2nd ch from hook, sc in next 5 ch, 3 sc in last ch, sc up the other side, join.", 15),
        # increases told by times and by places; stitches that remain, by their number
        (_round(10), "Sc 4, inc 3 times over the next 3 sts, sc 3.", 13),
        (_round(10), "Sc in each st to the last st, 3 sc in it.", 12),
        (_row(10), "Ch 1, sc2tog over first and second sts, sc in each st to end, turn.", 9),
        (_row(10), "Ch 1, sc in next 4 sts, 2 hdc in each of the 2 center sts, sc in last 4 sts, turn.", 12),
        # all but the last
        (SQUARE, "Ch 1, sc in each dc and 2 sc in each ch-2 sp except the last, join.", 14),
    ],
)
def test_what_a_clause_makes(before: str, words: str, made: int) -> None:
    """Each word that tells a place or a number is heeded."""
    report = check(f"{HEAD}{before}{words}\n")
    assert counts(report)[-1] == made
    assert not [rule for rule, _ in all_findings(report) if rule in OPEN]


@pytest.mark.parametrize(
    ("before", "words"),
    [
        (_round(10), "*Sc in first 4 sts, inc in last st; rep from * around."),
        (ARCHES, "Ch 1, *sc in next sc, 2 sc in last ch; rep from * around, join."),
        (_round(10), "Sc 4, hdc next 6 sts tog in pairs."),
        (_round(10), "Sc 4, (sc2tog) over next 6 sts."),
        (_round(10), "Sc 4, 6 sc in next 3 sts, sc 3."),
        (_round(10), "With Red, starting with a standing hdc, work 3 hdc in each st around, join."),
        (_round(10), "Sc in next 5 sts, inc (optional), sc in next 4 sts."),
        (_round(10), "Sc in each st around (or 2 hdc for a ruffle)."),
        (_round(10), "Hdc in each st around, starting with the 2nd st."),
        (_round(10), "Sc in each st around; count the first 2 sts as one."),
        (_round(10), "Sc 4, 3 inc, continue around."),
        (_round(10), "Sc 4, stuff the body 6."),
        (_round(10), "Hdc around (3 increased)."),
        (_round(10), "Flatten and sc through both layers, 4 sc."),
        (SQUARE, "Ch 1, sc in each dc around, 3 sc in corner, join."),
        (SQUARE, "Ch 1, sc in each dc but the last, 2 sc in each ch-2 sp, join."),
        (SQUARE, "Ch 1, sc in each dc and 2 sc in each of the first 2 sps, join."),
        (SQUARE, "Ch 1, sc in each dc and 2 sc in each ch-2 sp (not in the last), join."),
        (SPACES, "Ch 1, sc in each st across (each ch-1 sp counts as a st), turn."),
        (SPACES, "Ch 1, sc in next 9 sts, turn."),
        (_round(10), "Hdc in pairs around."),
    ],
)
def test_what_is_not_surely_said_is_not_counted(before: str, words: str) -> None:
    """No number is given for it, and no fault is found in it."""
    report = check(f"{HEAD}{before}{words}\n")
    assert counts(report)[-1] is None
    assert not [rule for rule, _ in all_findings(report) if rule in OPEN]


def test_shaping_in_one_round_of_a_range_is_not_worked_in_all() -> None:
    """ "Dec 2 in Rnd 5" says nothing of where in that round."""
    report = check(
        f"{HEAD}Rnd 1: 6 sc in magic ring. (6)\nRnd 2: Inc around. (12)\nRnds 3-5: Sc in each st, dec 2 in Rnd 5.\n"
    )
    assert set(counts(report)[2:]) == {None}


@pytest.mark.parametrize(("count", "outcome"), [(66, None), (22, 22)])
def test_one_figure_over_several_edges_is_for_each_or_for_all(count: int, outcome: int | None) -> None:
    """The printed count tells which; without one it stays open."""
    rows = "".join(f"Row {row}: Ch 1, sc in each sc across, turn. (12)\n" for row in range(2, 10))
    square = f"{HEAD}Row 1: Fsc 12, turn. (12)\n{rows}Border\nRnd 1: Ch 1, 22 sc down side, across the bottom and up the other side"
    assert counts(check(f"{square}.\n"))[-1] is None
    assert counts(check(f"{square}. ({count})\n"))[-1] == count


def test_the_corner_that_a_round_comes_back_to_takes_all_of_its_last_side() -> None:
    """Stitches before the first corner are worked at the round's end."""
    text = (
        f"{HEAD}Rnd 1: 8 sc in magic ring, join. (8)\nRnd 2: Ch 1, sc in first sc, (sc, ch 1, sc) in next sc, *sc in next sc, (sc, ch 1, sc) in next sc; "
        "rep from * around, join. (12)\nRnd 3: Ch 1, sc in next 2 sc, 3 sc in ch-1 sp, *sc in next 3 sc, 3 sc in ch-1 sp; rep from * 2 more times, sc in last sc, join. (24)\n"
        "Rnd 4: Ch 1, *3 sc in corner sc, sc to next corner; rep from * around, join.\n"
    )
    assert counts(check(text))[-1] == 32


def test_a_first_leg_of_a_decrease_is_the_rows_turning_chain() -> None:
    """ "Ch 2, dc in next dc (counts as dc2tog)" begins with its chain."""
    report = check(
        f"{HEAD}Row 1: Fdc 8, turn. (8)\nRow 2: Ch 2, dc in next dc (counts as dc2tog), dc in each dc across, turn. (7)\n"
    )
    assert not [rule for rule, _ in all_findings(report) if rule in OPEN]


def test_what_clauses_made_is_no_count_of_the_row() -> None:
    """ "(1 block made)" stands behind two clauses of one row."""
    report = check(
        f"{HEAD}Row 1: Fdc 13, turn. (13)\nRow 2: Ch 3 (counts as dc), dc in next 3 dc (1 block made), (ch 2, skip 2 dc, dc in next dc) 2 times, "
        "dc in next 3 dc (1 block made), turn.\n"
    )
    assert counts(report)[-1] == 9
    assert not [rule for rule, _ in all_findings(report) if rule in OPEN]


def test_nothing_may_be_left_in_some_sizes() -> None:
    """ "To last 0 (2) sts, sc to end": the smaller size has no more to work."""
    text = (
        "Cap\n\nUS terms\nSizes: S (M)\n\nCAP\nRow 1: Fsc 12 (17), turn. (12 (17) sts)\n"
        "Row 2: Ch 1, *sc in next 3 (4) sts, 2 sc in next st; rep from * to last 0 (2) sts, sc to end, turn. (15 (20) sts)\n"
    )
    report = check(text)
    assert [counts(report, size)[-1] for size in (0, 1)] == [15, 20]
    assert not [rule for rule, _ in all_findings(report) if rule in OPEN]
