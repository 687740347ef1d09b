"""Rows under a name of their own, which define no stitch; shaping told with "work to last 2 sts"; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, counts

_FRONT = "Test vest\nUS terms\n\nFRONT\nRow 1: Fsc 30, turn. (30)\nRow 2: Ch 1, sc in each st across, turn.\n{}\n"


def _made(lines: str) -> list[int | None]:
    rows = check(_FRONT.format(lines)).ledger.rows
    return [row.first.made.stitches if row.first.made is not None else None for row in rows][2:]


@pytest.mark.parametrize(
    "words",
    [
        "sc in first 11 sts, turn. (11 sc)",
        "Sc in next 11 sts. (11 sc)",
        "sc in next 9 sts, sc2tog, sc in next st, leave remaining sts unworked. (11 sc)",
    ],
)
@pytest.mark.parametrize("name", ["Shape neck", "Left half", "Thumb gap", "Armhole shaping", "Heel"])
def test_a_row_under_a_name(name: str, words: str) -> None:
    """It is worked, and not taken for how a stitch of that name is made; the next row goes on from it."""
    assert _made(f"{name}: {words}\nNext row: Ch 1, sc2tog, sc in each st across. (10 sc)") == [11, 10]


def test_a_stitch_defined_between_rows() -> None:
    """What only tells how a stitch is made is no row."""
    lines = "Tuft: 5 dc in next st (drop loop)\nRow 3: Ch 1, sc in next st, tuft, sc in each st across, turn."
    assert len(_made(lines)) == 1


@pytest.mark.parametrize("sign", [":", " -", " –"])
def test_a_heading_and_a_row_in_one_line(sign: str) -> None:
    """ "Shape Neck - Row 3: …" is that row, under that heading."""
    assert _made(f"Shape Neck{sign} Row 3: Ch 1, sc in first 11 sts, turn. (11 sc)") == [11]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Dec 1 st, work to last 2 sts, dec 1 st. (28 sc)", 28),
        ("Dec 1 st, work to last 2 sts, dec 1 st.", 28),
        ("Inc 1 st, work to last st, inc 1 st. (32 sts)", 32),
    ],
)
def test_shaping_at_both_ends(words: str, made: int) -> None:
    """A printed count changes nothing: the figures are of places, and no stitches of their own."""
    assert _made(f"Row 3: {words}") == [made]


def test_figures_that_stand_for_stitches() -> None:
    """A toy's round of figures and decreases is read as before."""
    text = "Test toy\nUS terms\n\nHEAD\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: (2, dec) x 3 (9)\n"
    assert counts(check(text)) == [12, 9]


def test_a_loop_left_unworked_is_part_of_a_stitch() -> None:
    """ "Leaving last lp of each unworked" tells how a stitch is made, and leaves no stitches of a row."""
    lines = "Tuft: 4 dc in next st, leaving last lp of each unworked, yo, draw through all lps.\nRow 3: Ch 1, sc in next st, tuft, sc in each st across, turn."
    assert len(_made(lines)) == 1


def test_a_line_over_rows_that_shape() -> None:
    """ "Now increase 6 sts:" leads in to the round below it and makes nothing."""
    text = "Test toy\nUS terms\n\nHEAD\nRnd 1: 12 sc in magic ring. (12)\nNow increase 6 sts:\nRnd 2: (1 sc, inc) x 6 (18)\n"
    assert counts(check(text)) == [12, 18]
