"""Words that leave stitches, point at some of them, or add more: worked as they say, or the row is not recomputed.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, counts

_ROW = "Ch 25.\nRow 1: Hdc in 2nd ch from hook and in each ch across. (24 hdc)\nRow 2: Ch 1, turn, {}\n"
_ROUND = "Rnd 1: 7 sc in magic ring.\nRnd 2: 2 sc in each st around. (14)\nRnd 3: {}\n"
_TREBLES = (
    "Ch 17.\nRow 1: Dc in 4th ch from hook (skipped chs count as dc) and in each ch across. (15 dc)\n"
    "Row 2: Ch 3 (counts as dc), turn, {}\n"
)


def last(text: str, words: str) -> int | None:
    """What the row with these words makes."""
    return counts(check("Sampler\nUS terms\n\n" + text.format(words)))[-1]


@pytest.mark.parametrize(
    ("before", "words", "made"),
    [
        # how many are left, and where
        (_ROW, "hdc across, leave the last st unworked.", 23),
        (_ROW, "hdc in each st across, leaving the final 3 sts free.", 21),
        (_ROW, "hdc to end, leaving last st free.", 23),
        (_ROW, "leave the first 2 sts unworked, hdc in each st across.", 22),
        (_ROW, "leaving the last 5 sts unworked, hdc across.", None),
        (_ROW, "hdc across, leaving 2 sts unworked at either end.", None),
        (_ROW, "hdc in next 6 sts, leave next 4 sts unworked, hdc in each st to end.", 20),
        (_ROW, "hdc in next 6 sts, leaving 4 sts unworked, hdc in each st to end.", 20),
        (_ROW, "hdc in next 6 sts, leaving 18 sts unworked for the thumb, turn.", 6),
        (_ROW, "hdc across, leaving 4 sts unworked, turn.", 20),
        (_ROW, "hdc across leaving 4 sts unworked at the end.", 20),
        (_ROW, "hdc across, leaving a 30 cm end.", 24),
        (_ROUND, "sc around, leaving the last st unworked.", 13),
        (_TREBLES, "dc in each st across, leaving the turning ch unworked.", 14),
        (_ROW, "hdc in each st across, leaving the turning ch unworked.", 24),
        # some stitches picked out
        (_ROW, "hdc across with every 6th st doubled.", None),
        (_ROW, "for the next 12 sts, hdc in each st.", None),
        (_ROW, "hdc over the second half of the row.", None),
        (_ROUND, "inc in second half.", None),
        # more than there is
        (_ROW, "hdc in each st across, and 2 more hdc in the last st.", 26),
        (_ROW, "hdc in each st across, 2 hdc in last st.", 25),
        (_ROUND, "sc around, and 3 more sc.", None),
        (_ROUND, "sc around, then sc in next 3 sts.", None),
        # lists that go on
        (_ROUND, "inc, sc, inc, sc, and so on around.", 21),
        (_ROUND, "inc, sc, etc.", 21),
        (_ROUND, "5 sc, dec, repeated around.", 12),
        (_ROUND, "*5 sc, dec.", 12),
        (_ROUND, "*4 sc, dec.", None),
        (_ROUND, "(sc, inc) 4 times, sc for the rest of the round.", 18),
        (_ROUND, "8 sc followed by 6 inc.", 20),
        # one place or several
        (_ROW, "hdc over next 3 sts, hdc in each st to end.", None),
        (_ROW, "hdc over next 3 sts, hdc in each st to end. (24)", 24),
        (_ROW, "hdc over next 3 sts, hdc in each st to end. (22)", 22),
        (_ROW, "3 hdc over next 3 sts, hdc in each st to end.", 24),
        (_ROW, "4 hdc in next 3 sts together, hdc in each st to end.", None),
        (_ROUND, "(sc, inc) over the next 6 sts, sc to end.", None),
        (_ROUND, "7 sc, inc to end.", None),
        (_ROUND, "sc 6, inc, and again.", None),
        (_ROUND, "sc in 2nd and 5th st, sc to end.", 11),
        (_ROUND, "2inc 5sc 2inc 5sc", 18),
        (_ROUND, "4sc 1dec 4sc 1dec 2sc", 12),
        (_ROUND, "(sc, inc) x 7 in back loop of each st.", None),
        (_ROUND, "(1 sc, 2 sc) around.", 21),
        (_ROUND, "(1 sc, 2 sc) around. (21)", 21),
        (_ROUND, "14 sc around.", 14),
        (_ROUND, "14 inc around.", 28),
        (_ROUND, "2 sc around.", 28),
        (_ROUND, "9 sc around.", None),
        (_ROUND, "10 sc around, inc in last 4.", 18),
        (_ROUND, "11 sc, dec over last 3 sts.", 12),
        (_ROW, "hdc across (decreasing 3 sts evenly).", None),
        (_ROW, "hdc across (5 sts increased).", None),
        (_ROW, "2 hdc in first st, hdc to last st, 2 hdc in last st (2 sts increased).", 26),
        (_TREBLES, "dc in gap between each st across.", None),
        (_ROUND, "6 sc, sl st, 7 sc.", 13),
    ],
)  # fmt: skip
def test_the_words_are_worked_or_stop_the_row(before: str, words: str, made: int | None) -> None:
    """A number where the words alone give one; else none, and never the row as if they were not there."""
    assert last(before, words) == made


def test_a_count_settles_a_star_that_nothing_closes() -> None:
    """A lone star may be a mere sign, or a repeat to the end: the row, or its count, tells."""
    assert last(_ROUND, "*sc, inc. (21)") == 21
    assert last(_ROUND, "*12 sc, dec. (13)") == 13
    report = check("Sampler\nUS terms\n\n" + _ROUND.format("*sc, inc. (20)"))
    assert [finding.rule for finding in report.findings if finding.weight.value == "correction"].count(
        "count-differs"
    ) <= 1


def test_filet_blocks_over_a_stitch_or_a_space() -> None:
    """ "Dc in next st or ch-1 sp, dc in next dc": a block two stitches wide, whatever lies below."""
    report = check(
        "Panel\nUS terms\n\nSpecial stitches\nOpen mesh (om): Ch 1, skip 1 st or ch-1 sp, dc in next dc.\n"
        "Block (bl): Dc in next st or ch-1 sp, dc in next dc.\n\nPANEL\n"
        "Row 1: Ch 9, dc in 4th ch from hook (skipped chs count as dc) and in next 5 ch.\nRow 2: Ch 3 (counts as dc), turn, 1 om, 1 bl, 1 om. \n"
        "Row 3: Ch 3 (counts as dc), turn, 3 bl.\n"
    )
    assert counts(report) == [7, 5, 7]


def test_last_stitches_of_tunisian_rows_under_their_own_name() -> None:
    """ "Last st: insert hook under both loops": how the row's last stitch is worked, and no stitch of another name."""
    report = check(
        "Swatch\nTunisian crochet, US terms\n\nSpecial stitches\nLast st: Insert hook under both loops at the edge, yo, draw up a lp.\n\n"
        "Ch 12.\nRow 1: FP: Draw up a lp in 2nd ch from hook and in each ch across. RP. (12 sts)\n"
        "Row 2: Tss across to last st, work last st. RP. (12 sts)\nRow 3: Tss in next 4 sts, Tss2tog, Tss to last st, work last st. RP. (11 sts)\n"
    )
    assert counts(report) == [12, 12, 11]
