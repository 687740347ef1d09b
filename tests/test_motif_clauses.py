"""Clauses that only motifs, filet and flat work have: sides worked four times, meshes, rows named before their stitches."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes, spaces

_SQUARE = "Tile\nRnd 1: In magic ring, ch 3 (counts as dc), 3 dc, ch 2, (4 dc, ch 2) 3 times, join. (16 dc)\n"


@pytest.mark.parametrize(
    ("words", "made", "gaps"),
    [
        ("(hdc, ch 2, hdc) in corner ch-2 sp, then hdc across. 4 times.", 24, {2: 4}),
        ("(dc, ch 3, dc) in corner sp; dc in each st across. Four times.", 24, {3: 4}),
        ("(dc, ch 3, dc) in corner sp, *ch 1, sk 1, dc. From * across. 4 times.", 16, {3: 4, 1: 8}),
    ],
)
def test_a_side_and_its_corner_so_often(words: str, made: int, gaps: dict[int, int]):
    """ "Across" is across the side, for the four sides are told by the sentence behind."""
    report = check(f"{_SQUARE}Rnd 2: Sl st in next 3 dc, {words} Join.\n")
    assert counts(report) == [16, made]
    assert spaces(report)[1] == gaps


def test_meshes_and_blocks_that_are_nowhere_defined_are_not_counted():
    """They are understood as units, and their stitches are not known."""
    report = check(
        "Filet\nRow 1: Ch 20, dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * across, turn. (5 open meshes)\n"
        "Row 2: 2 open meshes, 1 solid mesh, 2 open meshes, turn.\nRow 3: Make 2 sps, 1 bl, 2 sps, turn.\n"
    )
    assert counts(report) == [6, None, None]
    assert outcomes(report)[0] == "agrees"


_POSTS = (
    "Panel\nRow 1: Ch 12, sc in 2nd ch from hook and in each ch across, turn. (11 sc)\n"
    "Row 2: Ch 1, sc in first sc, *FPdc around next sc, sc in next sc; rep from * across, turn. (11 sts)\n"
    "Row 3: Ch 1, sc in each st across, turn. (11 sc)\n"
)


def test_stitches_of_a_row_named_before_them():
    """What is skipped there is not skipped in the working row; the post stitch covers the stitch behind it."""
    report = check(
        _POSTS + "Row 4: Ch 1, sc in first sc, *on 2nd row below, sk next sc, FPdc around next FPdc; on working row, "
        "sc in next sc; rep from * across, turn. (11 sts)\n"
    )
    assert counts(report) == [11, 11, 11, 11]


def test_on_the_last_time_something_else_instead():
    """The last pass ends without its last stitch, and the slip stitch closes the round."""
    report = check(
        "Disc\nRnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\n"
        "Rnd 2: Ch 4 (counts as dc, ch 1), *dc in next dc, ch 1, dc in next dc, ch 1; rep from * around, but on the last time, "
        "sl st to 3rd ch of ch-4 instead of working dc and ch 1.\n"
    )
    assert counts(report)[0] == 12


@pytest.mark.parametrize(
    ("words", "rows"),
    [
        ("Rows 7-14: Repeat 2 rows each of Row 3 and then Row 5.", [11, 11, 12, 13, 13, 13, 14, 15]),
        ("Rows 7-10: Rep Row 3 twice, then Row 5 twice.", [11, 11, 12, 13]),
        ("Rows 7-10: Rep Rows 3 and 5.", [11, 12, 12, 13]),
    ],
)
def test_rows_called_in_turn(words: str, rows: list[int]):
    """Row 3 keeps the number of stitches, Row 5 adds one."""
    report = check(
        "Cloth\nRow 1: Ch 12, sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each sc across, turn.\n"
        "Row 3: Ch 3 (counts as dc), dc in each st across, turn.\nRow 4: Ch 1, sc in each st across, turn.\n"
        "Row 5: Ch 1, 2 sc in first st, sc in each st across, turn.\nRow 6: Ch 1, sc2tog, sc in each st across, turn.\n"
        f"{words}\n"
    )
    assert counts(report)[6:] == rows


def test_a_label_said_twice_is_one():
    """ "Joining Round – Round 3:" is Round 3."""
    report = check(f"{_SQUARE}Joining Round – Round 2: Ch 1, sc in each dc and 3 sc in each sp around, join. (28 sc)\n")
    assert counts(report) == [16, 28]
    assert corrections(report) == []


def test_a_chain_that_closes_a_popcorn_is_a_part_of_it():
    """No space is made by it."""
    report = check(
        "Mat\nSpecial stitch\nPopcorn (pc): 4 dc in st, drop loop, insert hook in first dc, pick up loop and draw through.\n\n"
        "Rnd 1: Ch 4, join to form ring, ch 1, 8 sc in ring, join. (8 sc)\n"
        "Rnd 2: Ch 1, *pc in next sc, ch 1. This ch 1 is part of the popcorn. Ch 2, sc in next sc, ch 2; rep from * around, join. (8 sts)\n"
    )
    assert counts(report) == [8, 8]
    assert spaces(report)[1] == {2: 8}


def test_round_the_edge_of_a_round():
    """All round, where the row below is a round; along the edge of a flat piece is not known."""
    edging = "*3 sc, ch 3, sl st in 3rd ch from hook* around the outer edge, join.\n"
    assert (
        counts(
            check(
                f"{_SQUARE}Rnd 2: Ch 1, sc in each dc and 2 sc in each sp around, join. (24 sc)\nRnd 3: Ch 1, {edging}"
            )
        )[2]
        == 24
    )
    flat = "Cloth\nRow 1: Ch 13, sc in 2nd ch from hook and in each ch across. (12 sc)\nRnd 1: Ch 1, " + edging
    assert counts(check(flat))[1] is None


def test_a_colour_table_makes_no_rows():
    """ "Rows 1-2 Cream" says which yarn, and works nothing."""
    report = check(
        "Wrap\nRow 1: Ch 12, sc in 2nd ch from hook and in each ch across, turn. (11 sc)\nRow 2: Ch 1, sc in each sc across, turn.\n"
        "\nColours\nRows 1-2  Cream\nRows 3-4  Moss\n"
    )
    assert counts(report) == [11, 11]
    assert corrections(report) == []
