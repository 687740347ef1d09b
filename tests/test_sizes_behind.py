"""Sizes that are named behind a clause work it alone; the figures and the wordings are invented, common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, worked_rows

HEAD = "Test vest\n\nUS terms\n\nSizes: Child (Teen, Adult)\n\nBACK\nRow 1: Fsc 16 (20, 26), turn.\nRow 2: {}\n"


def made(row: str) -> list[int | None]:
    """The stitches of the second row in every size; None where it is not recomputed."""
    cells = worked_rows(check(HEAD.format(row)))[1].cells
    return [cell.made.stitches if cell.made is not None else None for cell in cells]


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("Ch 1, sc in each st to end, increasing 1 st at each end for Teen and Adult only, turn.", [16, 22, 28]),
        ("Ch 1, sc in each st across, dec 4 sts evenly (Adult only), turn.", [16, 20, 22]),
        ("Ch 1, 3 sc in first st for the smallest size, sc in each st across, turn.", [18, 20, 26]),
        ("Ch 1, sc in each st across, 2 sc in last st in the two larger sizes, turn.", [16, 21, 27]),
        ("Ch 1, (sc2tog) twice for Adult, sc in each st across, turn.", [16, 20, 24]),
        ("Ch 1, skip next 3 sts for sizes Child and Teen, sc in each st across, turn.", [13, 17, 26]),
        ("Ch 1, 2 sc in first st (not for Child), sc in each st across, turn.", [16, 21, 27]),
        ("Ch 1, 2 sc in first st for all sizes except Teen, sc in each st across, turn.", [17, 20, 27]),
        ("Ch 1, 2 sc in first st for all sizes, sc in each st across, turn.", [17, 21, 27]),
    ],
)
def test_sizes_behind_a_clause(words: str, stitches: list[int]) -> None:
    """The sizes that are not named pass the clause over."""
    assert made(words) == stitches


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, 2 sc in first st (Adult), sc in each st across, turn.",
        "Ch 1, 2 sc in first st for other sizes, sc in each st across, turn.",
    ],
)
def test_sizes_that_are_not_sure_stop_the_row(words: str) -> None:
    """Where it is not said for certain who works a clause, nothing is said about the row."""
    assert made(words) == [None] * 3


def test_what_a_clause_is_for_is_no_size() -> None:
    """ "for the sleeve" says what it is for, and holds for every size."""
    words = "Ch 1, sc in next 4 sts for the front, ch 2 for the armhole, skip next 4 sts, sc in each st to end, turn."
    assert made(words) == [12, 16, 22]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, 2 sc in first st (Teen: 3 sc), sc in each st across, turn.",
        "Ch 1, sc2tog (none for Child), sc in each st across, turn.",
        "Ch 1, [sc2tog, sc in next 2 sts (3 sts for Adult)] twice, sc in each st across, turn.",
        "Ch 1, sc in each st to last st (last 2 sts on Adult), turn.",
        "Ch 1, sc2tog (Teen and Adult: twice), sc in each st across, turn.",
        "Ch 1, sc2tog once (twice), sc in each st across, turn.",
        "Ch 1, skip 1 st (2 sts, 3 sts, 4 sts), sc in each st across, turn.",
    ],
)
def test_brackets_for_some_sizes_are_not_passed_over(words: str) -> None:
    """What a bracket tells some of the sizes alters their row, which is not recomputed if it can't be read."""
    assert made(words) == [None] * 3


def test_brackets_that_speak_to_nobody() -> None:
    """Other remarks in brackets are remarks still."""
    assert made("Ch 1, sc in next 4 sts (see photo), sc2tog, sc in each st across (work loosely), turn.") == [
        15,
        19,
        25,
    ]


def test_the_unit_at_every_figure() -> None:
    """ "skip 1 st (2 sts, 3 sts)" is a list like "1 (2, 3) sts"."""
    assert made("Ch 1, skip 1 st (2 sts, 3 sts), sc in each st across, turn.") == [15, 18, 23]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, sc in next 4 sts, 2 sc in next st, sc to end (sizes Teen and Adult only), turn.",
        "Ch 1, 2 sc in first st, sc in each st across for Adult only, turn.",
        "Ch 1, sc in next 4 sts, inc (Adult only: inc twice), sc to end, turn.",
    ],
)
def test_sizes_of_the_whole_row_or_of_its_last_clause(words: str) -> None:
    """Behind a run to the row's end the whole row may be meant; a bracket right behind a clause may stand instead of it."""
    assert made(words) == [None, None, None]
