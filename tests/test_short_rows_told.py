"""Single rows in few words: figures for times, gaps beside groups, first clusters and chains; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_ROUND = "Pad\n\nUS terms\n\nPAD\nRnd 1: 16 sc in magic ring. (16)\nRnd 2: {}\n"
_FLAT = "Mat\n\nUS terms\n\nMAT\nRow 1: Fsc 16, turn. (16)\nRow 2: {}\n"
_FANS = (
    "Wrap\n\nUS terms\n\nSpecial Stitches\nFan: (2 dc, ch 1, 2 dc) in the st or sp indicated.\n\nWRAP\nRow 1: Fsc 16, turn. (16)\n"
    "Row 2: Ch 3 (counts as dc), skip next 2 sc, fan in next sc, (skip next 4 sc, fan in next sc) twice, skip next sc, "
    "dc in last sc, turn. (14 dc, 3 ch-1 sps)\nRow 3: Ch 3 (counts as dc), {}\n"
)
_LOOPS = (
    "Mat\n\nUS terms\n\nMAT\nRnd 1: 8 sc in magic ring, join. (8)\nRnd 2: Ch 1, *sc in next sc, ch 5, skip next sc; rep from * around, join. "
    "(4 sc, 4 ch-5 sps)\nRnd 3: {}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("*3 sc, inc* repeat 4", 20),
        ("*3 sc, inc*, rep 4 (20)", 20),
        ("*3 sc, inc; rep from * 4.", 20),
        ("*3 sc, inc; repeat 3 more", 20),
        ("*3 sc, inc*, 4x", 20),
        ("3 sc, inc; repeat from beg of rnd 3 more times", 20),
        ("3 s.c., 2 s.c. in next s.c. Rep. three times more.", 20),
        ("❁ (3 sc, inc) x 4 (20) ❁", 20),
        ("*3 sc, inc* repeat 20", None),
        ("2 sc x 8", 16),
        ("3 sc in next st x 2, sc x 14", 20),
        ("3 sc in each st x 2, sc x 14", None),
        ("(2 sc, dec) * 4 = 12; start stuffing", 12),
        ("Work a round of sc, increasing 4 evenly.", 20),
        ("Work 1 round in sc decreasing 4 sts evenly around (12)", 12),
        ("sc and hdc alternately around", 16),
    ],
)
def test_how_often_in_few_words(words: str, made: int | None) -> None:
    """A figure behind a starred passage or behind a cross says how often; one that fits neither way is not guessed."""
    assert counts(check(_ROUND.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc across, decreasing over last 2 sts, turn.", 15),
        ("Ch 1, sc in each st across, working last 3 sts together, turn.", 14),
        ("Ch 2, hdc in first st and in each st across, turn.", 16),
        ("Ch 3, dc in first st, *ch 1, skip next st, dc in next st; rep from * to last st, dc in last st, turn.", 9),
        ("Ch 3, dc in first st, dc in each st to last st, 2 dc in last st, turn.", 18),
        ("Ch 2, hdc in first st, *2 hdc in next st, hdc in next 2 sts; rep from * across, turn.", 21),
        ("Ch 3 (counts as dc), dc in first st and in each st across, turn.", 17),
        ("Ch 2, hdc in first st and in each st across, turn. (17)", 17),
        ("Ch 2 (counts as hdc), alternate FPdc and BPdc to last st, hdc in last st, turn.", 16),
    ],
)
def test_ends_of_a_flat_row(words: str, made: int) -> None:
    """A chain before one stitch in the first is none of a row that nowhere increases, unless a note or the count says so."""
    assert counts(check(_FLAT.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("fan in sp before next fan, *fan in sp before next fan; rep from * across, dc in top of ch-3.", 14),
        ("fan in sp before each fan, dc in top of ch-3.", 14),
        (
            "2 dc in sp before first fan, (3 dc in sp between next 2 fans) twice, 2 dc in sp after last fan, dc in top of ch-3.",
            12,
        ),
        ("(fan in next fan, dc in sp between this fan and next) twice, fan in next fan, dc in top of ch-3.", 16),
        ("fan in ch-1 sp of next 3 fans, dc in top of ch-3.", 14),
        ("3 dc in ch-1 sp of each of next 2 fans, fan in next fan, dc in top of ch-3.", 12),
        ("dc in 2nd dc of next 3 fans, dc in top of ch-3.", 5),
        ("fan in ch-1 sp of next 4 fans, dc in top of ch-3.", None),
        ("fan in sp after each fan, dc in top of ch-3.", None),
    ],
)
def test_places_in_and_beside_groups(words: str, made: int | None) -> None:
    """The gap is told by the group beside it; a part of so many groups is that part of each of them."""
    assert counts(check(_FANS.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, *sc in first, third and fifth ch of next ch-5 sp, ch 1; rep from * around, join.", 12),
        ("Ch 1, *sc in first and third ch of next ch-5, ch 1; rep from * around, join.", 8),
        ("Ch 1, *sc in 2nd and 4th ch of next ch-5 sp, ch 1; rep from * around, join.", 8),
    ],
)
def test_the_first_chain_is_numbered_like_the_others(words: str, made: int) -> None:
    """ "First and third" are chains of that loop, and not the first stitch of the round."""
    report = check(_LOOPS.format(words))
    assert counts(report)[-1] == made
    assert "places-run-out" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Ch 3, 2-dc cl in same st, ch 2, skip 1 st, *3-dc cl in next st, ch 2, skip 1 st; rep from * around, join in first cl.",
            8,
        ),
        ("Ch 2, puff in same st, ch 1, skip 1 st, *puff in next st, ch 1, skip 1 st; rep from * around, join.", 8),
        (
            "Ch 3 (counts as dc), cl in same st, ch 2, skip 1 st, *cl in next st, ch 2, skip 1 st; rep from * around, join.",
            9,
        ),
        (
            "Ch 3, cl in same st, dc in next st, *cl in next st, dc in next st; rep from * around, join in top of ch-3.",
            17,
        ),
    ],
)
def test_the_first_of_a_round_of_clusters(words: str, made: int) -> None:
    """The chain before it is a part of it, unless a note counts it by itself or other stitches stand between the clusters."""
    assert counts(check(_ROUND.format(words)))[-1] == made


def test_a_stitch_named_by_the_letter_x_is_no_cross() -> None:
    """Where X is a stitch, "2X" behind a comma is two of them, and does not say how often the row is worked."""
    pattern = (
        "Pea\n\nUS terms\n\nAbbreviations\nX = single crochet\nV = increase\n\nPEA\nR1: 6X in magic ring (6)\nR2: 6V (12)\n"
        "R3: V, 2X, 2V, 2X, V, 4X\nR4: (2 sc, V) * 4, 4X\n"
    )
    assert counts(check(pattern)) == [6, 12, 16, 20]


@pytest.mark.parametrize(
    ("words", "made"), [("2 sc inc x 5, sc", 21), ("1 sc dec x 5, 1 sc", 11), ("3 sc inc x4", 20), ("sc inc x 8", None)]
)
def test_two_clauses_without_a_comma_before_a_cross(words: str, made: int | None) -> None:
    """ "2 sc inc x 5" is two stitches and an increase, five times; of "sc inc x 8" the words do not tell."""
    report = check(_ROUND.format(words))
    assert (counts(report)[-1], "places-left-over" in [rule for rule, _ in all_findings(report)]) == (made, False)
