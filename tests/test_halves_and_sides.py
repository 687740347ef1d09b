"""Rows whose second half is as their first, sides told by name, and what is worked beside a run: none is counted by a guess.

The patterns are invented; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

FILET = (
    "Filet Panel\nUS terms.\n\nSpecial stitches\nSpace (sp): ch 2, sk 2 sts, dc in next st.\nBlock (bl): dc in each of next 3 sts.\n\n"
    "Row 1: Ch 27, dc in 4th ch from hook (skipped ch count as dc) and in each ch across, turn. (25 dc)\n"
)
SQUARE = (
    "Tile\nUS terms.\n\nRnd 1: Ch 4, sl st in first ch to form ring. Ch 1, (5 sc in ring, ch 2) 4 times, sl st in first sc. "
    "(20 sc, 4 ch-2 sps)\n"
)


@pytest.mark.parametrize(
    ("squares", "made"),
    [
        ("3 sps; 1 bl; 3 sps; 1 bl.", 13),  # its second half is as its first, and counts nothing
        ("1 sp. 3 bls. 1 sp. 3 bls.", 21),
        ("1 sp; 1 bl; 3 bls, 3 sps; 4 sps; 4 bls.", 17),  # the last two count all
        ("2 sps. 4 bls. 2 sps. 4 sps. 4 bls.", 17),
        ("2 sps; 4 bls; 2 sps, turn; 4 sps; 4 bls.", 17),
    ],
)
def test_squares_that_count_and_squares_that_are_worked(squares: str, made: int) -> None:
    """Eight squares fill the row; what stands behind them is a count, and what fills it is none."""
    report = check(FILET + f"Row 2: Ch 3 (counts as dc), {squares}\n")
    assert counts(report)[1] == made
    assert corrections(report) == []


def test_half_a_row_of_squares_and_its_count() -> None:
    """A row that is turned half way has its count behind it, and no more squares."""
    report = check(FILET + "Row 2: Ch 3 (counts as dc), 3 sps, 1 bl, turn; 3 sps; 1 bl.\n")
    assert (counts(report)[1], outcomes(report)[1]) == (7, "agrees")


@pytest.mark.parametrize(
    "side",
    ["along one side", "across first side", "across last side", "along the other side"],
)
def test_one_side_is_not_all_sides(side: str) -> None:
    """Corners on all sides beside a run along one of them: what the others have is not said."""
    report = check(SQUARE + f"Rnd 2: Ch 1, 3 sc in each corner, sc in each sc {side}.\n")
    assert counts(report)[1] is None


@pytest.mark.parametrize("side", ["along each side", "along each of the 4 sides", "across all 4 sides"])
def test_all_sides_are_all_sides(side: str) -> None:
    """The run goes on over every side, with the corners on its way."""
    assert counts(check(SQUARE + f"Rnd 2: Ch 1, 3 sc in each corner, sc in each sc {side}.\n"))[1] == 32


@pytest.mark.parametrize("which", ["first", "next", "first and third", "last"])
def test_one_corner_beside_a_run_is_not_every_corner(which: str) -> None:
    """Of corners that are named one by one, not all are worked."""
    report = check(SQUARE + f"Rnd 2: Ch 1, sc in each sc around, working 3 sc in {which} corner sp.\n")
    assert counts(report)[1] is None


def test_decreases_beside_corners_are_not_guessed() -> None:
    """Which stitches go together beside the corners is not said, and the corners are not left out in silence."""
    report = check(SQUARE + "Rnd 2: Ch 1, sc2tog around, working 3 sc in each corner sp.\n")
    assert counts(report)[1] is None


@pytest.mark.parametrize("items", ["2 sc, 1 hdc", "1 sc, 1 hdc, 1 dc", "1 hdc, 2 sc, 1 dc"])
def test_a_list_behind_its_place_is_not_left_out(items: str) -> None:
    """Where it is not said how much of a list goes into the place, none of it is dropped, and no count is made up."""
    report = check(SQUARE + f"Rnd 2: Ch 1, *sc in next 5 sc, in corner sp work {items}; rep from * around.\n")
    assert counts(report)[1] is None


def test_a_join_behind_what_goes_into_a_corner() -> None:
    """The stitches go into the corner, and the slip stitch into the other motif makes none."""
    row = "Rnd 2: Ch 1, *sc in next 5 sc, in corner sp work 2 sc, sl st in next st of First Motif; rep from * around.\n"
    assert counts(check(SQUARE + row))[1] == 28


STRIP = "Strip\nUS terms.\n\nRow 1: Ch 15, sc in 2nd ch from hook and in each ch across. (14 sc)\n"


@pytest.mark.parametrize("join", ["Join B in 5th st", "Join B with sl st in 5th sc", "With B joined in 5th st"])
def test_a_row_that_begins_in_a_numbered_stitch(join: str) -> None:
    """Four stitches stand before the fifth, and a row that is worked to and fro does not come round to them."""
    report = check(STRIP + f"Fasten off.\nRow 2: {join}, ch 1, sc in same st and in each st across.\n")
    assert counts(report)[1] == 10


@pytest.mark.parametrize("place", ["16th st", "4th st from end"])
def test_a_row_that_begins_in_a_stitch_that_is_not_known(place: str) -> None:
    """Where the stitch is not there, or is told from the other end, the row begins in no other."""
    report = check(STRIP + f"Fasten off.\nRow 2: Join B in {place}, ch 1, sc in same st and in each st across.\n")
    assert counts(report)[1] is None


@pytest.mark.parametrize(
    "words",
    [
        "(2 sc, ch 1, 2 sc) on each side",  # a bracket that goes to no corner: how many sides there are, nothing tells
        "sc in each sc to next ch-2 sp, 3 sc in ch-2 sp, repeat around for 2 sides, sc in each remaining sc",
    ],
)
def test_how_many_sides_is_not_guessed(words: str) -> None:
    """Sides without a corner in what is worked again, and so many of them that may be in all or more."""
    assert counts(check(SQUARE + f"Rnd 2: Ch 1, {words}.\n"))[1] is None


def test_a_side_with_its_corner_on_each_side() -> None:
    """Where each pass goes to its corner, each pass is a side."""
    assert counts(check(SQUARE + "Rnd 2: Ch 1, [sc in next 5 sc, 3 sc in corner sp] on each side.\n"))[1] == 32


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("2 sc in next st and the following 2 sts, sc in last 11 sts", 17),  # two in each of the three
        ("3 sc in next st and the next 3 sts, sc in last 10 sts", 22),
        ("sc in next 3 sts and the next 3 sts, sc in last 8 sts", 14),
        ("sc in next 3 sts and the same 3 sts", None),
    ],
)
def test_so_many_in_one_place_and_in_the_next_few(words: str, made: int | None) -> None:
    """What goes into the one stitch goes into each of those behind "and the", whatever their number."""
    assert counts(check(STRIP + f"Row 2: Ch 1, {words}.\n"))[1] == made


def test_the_run_along_the_first_edge_is_worked_again() -> None:
    """A row worked "once more" begins with its first stitches, be they spread along an edge."""
    words = "20 sc along long edge, 3 sc in corner, 12 sc along short edge, 3 sc in corner; rep once more"
    assert counts(check(STRIP + f"Row 2: Ch 1, {words}.\n"))[1] in (76, None)


@pytest.mark.parametrize(
    "aside", ["(on the other side of the ch 5 sc)", "(along the other side of the ch 5 sc, 2 sc in last ch)"]
)
def test_work_on_the_other_side_in_brackets_is_not_left_out(aside: str) -> None:
    """Brackets that send the row round its chain, with stitches in them, explain nothing."""
    row = f"Rnd 1: Ch 7, sc in 2nd ch from hook, 4 sc, 3 sc in last ch {aside}.\n"
    assert counts(check(f"Sole\nUS terms.\n\n{row}"))[0] in (13, 15, None)


@pytest.mark.parametrize(("run", "made"), [("next sc", None), ("each sc", 32), ("next 5 sc", 32)])
def test_a_pass_that_takes_every_space_leaves_none_to_the_next(run: str, made: int | None) -> None:
    """Of "each ch-2 sp" in a repeat, one side each is worked where the run before it comes to it, or it is not known which."""
    report = check(SQUARE + f"Rnd 2: Ch 1, *sc in {run}, 3 sc in each ch-2 sp; rep from * around.\n")
    assert counts(report)[1] in (made, None)
