"""Stitches whose legs stand apart, stitches written out by hand movements, and letters that come from another language."""

from __future__ import annotations

import pytest
from helpers import check, counts, outcomes

_BALL = "US terms\nBALL\nRnd 1: 8 sc in magic ring. (8)\n"


@pytest.mark.parametrize(
    "words",
    [
        "*Sc2tog over same st and next st; rep from * around. (8)",
        "*Hdc2tog over next st and same st; rep from * to end. (8)",
        "*Sc2tog over same st and next st; rep from * 7 more times. (8)",
        "Sc in first st, *sc2tog over same st and next st; rep from * around. (8)",
        "*Dc2tog over same st and next st, ch 1; rep from * around. (8 dc, 8 ch-1 sps)",
        "*Insert hook in same st, yo, pull up a loop. Insert hook in next st, yo, pull up a loop, yo, draw through all "
        "loops on hook; rep from * around. (8)",
    ],
)
def test_a_stitch_with_a_leg_in_the_same_and_one_in_the_next_is_one(words: str) -> None:
    """The zigzag stitch takes one new place each time, and in a round the last leg comes back to the first place."""
    report = check(f"{_BALL}Rnd 2: {words}\n")
    assert counts(report) == [8, 8]
    assert outcomes(report)[-1] == "agrees"


def test_a_wrong_count_of_zigzag_stitches_is_found() -> None:
    """Legs that stand apart do not make two stitches."""
    report = check(_BALL + "Rnd 2: *Sc2tog over same st and next st; rep from * around. (16)\n")
    assert outcomes(report)[-1] == "differs"


def test_a_single_crochet_written_out_is_one_stitch() -> None:
    """ "Insert hook, yo, pull up a loop, yo, draw through both loops" is a single crochet; behind a colon it only tells how."""
    written = "insert hook in {} st, yo, pull up a loop, yo, draw through both loops on hook"
    report = check(f"{_BALL}Rnd 2: {written.format('first').capitalize()}, sc in next 7 sts. (8)\n")
    assert counts(report) == [8, 8]
    assert report.ledger.rows[-1].cells[0].made.by_kind == {"sc": 8}
    report = check(f"{_BALL}Rnd 2: Sc in next st: {written.format('this')}. Sc in next 7 sts. (8)\n")
    assert counts(report)[-1] in (8, None)


def test_a_number_by_a_cross_in_front_leaves_the_next_number_for_one_place() -> None:
    """Where "3xsc" are three stitches, "1x2sc" is two in one stitch, once."""
    report = check(_BALL + "Rnd 2: (3xsc, 1x2sc) around. (10)\nRnd 3: (4xsc, 1x2sc) twice. (12)\n")
    assert counts(report) == [8, 10, 12]
    assert set(outcomes(report)) == {"agrees"}


def test_russian_letters_beside_sbn() -> None:
    """P and U are increase and decrease where sbn stands in the pattern and no count speaks against it (from memory)."""
    toy = "BALL\n1 row: 6 sbn in ring (6)\n2 row: 6P (12)\n3 row: (1sbn, 1P)*6 = {}\n4 row: (1Sbn, 1U)*6 = 12\n"
    assert counts(check(toy.format(18))) == [6, 12, 18, 12]
    assert counts(check(toy.format(20)))[2] is None


def test_bobbles_by_the_name_of_how_to_make_them() -> None:
    """ "6 bobbles" are those that "MB (make bobble)" makes."""
    text = "UK terms\nMB (make bobble): work 4 tr into next st leaving last loop of each on hook, yrh and draw through all "
    text += "5 loops.\nMake 14ch.\nRow 1: 1dc in 2nd ch from hook and in each ch to end, turn. (13 dc)\n"
    text += "Row 2: 1ch, 1dc in first 2 dc, *MB, 1dc in each of next 3 dc; rep from * to last 3 sts, MB, 1dc in last 2 dc. ({})\n"
    assert outcomes(check(text.format("3 bobbles, 10 dc")))[-1] == "agrees"
    assert outcomes(check(text.format("4 bobbles, 10 dc")))[-1] == "differs"


def test_a_stitch_over_several_places_takes_them_all() -> None:
    """Hand movements tell how many places a stitch takes; where they do not tell it for certain, its row is not counted."""
    text = "US terms\nTop: {}\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n"
    text += "Row 2: Ch 1, turn, *top; rep from * across.\n"
    three = "yo, insert hook in next st, pull up a loop, pull up a loop in next 2 sts, yo and draw through all 5 loops."
    assert counts(check(text.format(three)))[-1] == 4
    unclear = "*yo, insert hook in next st, pull up a loop; rep from * 2 more times, yo and draw through all loops."
    assert counts(check(text.format(unclear)))[-1] is None
    one = "(yo, insert hook in next st, pull up a loop) 3 times in same st, yo and draw through all loops."
    assert counts(check(text.format(one)))[-1] == 12


@pytest.mark.parametrize(
    "words",
    [
        "We knit behind the back wall (3 sc, inc) * 2. (10)",
        "For the back half-loop: (3 sc, inc) x 2. (10)",
        "(3 sc behind the front wall, inc) x 2. (10)",
    ],
)
def test_loops_by_their_names_in_translated_toys(words: str) -> None:
    """A wall, or a half-loop, of a stitch is its back or front loop; nothing of the row is lost."""
    report = check(f"{_BALL}Rnd 2: {words}\n")
    assert counts(report) == [8, 10]
    assert outcomes(report)[-1] == "agrees"


def test_a_wall_that_is_a_piece() -> None:
    """The back wall of a house is a part, and no loop."""
    part = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
    report = check(
        f"House\nUS terms\n\nBACK WALL\n{part}\nFront Wall (make 2)\n{part}\nSew the back wall to the front walls.\n"
    )
    assert [part.name for part in report.pattern.parts] == ["BACK WALL", "Front Wall"]
    assert counts(report)[1] == counts(report)[-1] == 10
