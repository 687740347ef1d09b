"""Stitches bound or cast off, as translated garments say it, and rows shaped while they are worked even.

Common practice, no source: "bind off" with a number is a decrease at the edge, without one the end of the yarn.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections

_PANEL = (
    "Test panel\nSizes: S (M)\n\nPANEL\nCh 41 (45).\n"
    "Row 1: Hdc in 2nd ch from hook and in each ch across, turn. (40 (44) hdc)\n{}\n"
)


def _rows(words: str) -> list[tuple[int | None, ...]]:
    """What each row behind the first makes, in both sizes."""
    rows = [row for row in check(_PANEL.format(words)).ledger.rows if row.number not in (None, 1)]
    return [tuple(cell.made and cell.made.stitches for cell in row.cells) for row in rows]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Row 2: Bind off 4 (5) sts at each end, turn.", (32, 34)),
        ("Row 2: Cast off 4 (5) sts from both sides for the armholes. (32 (34) hdc)", (32, 34)),
        ("Row 2: Binding off 4 (5) sts at armhole edge, hdc to end, turn.", (36, 39)),
        ("Row 2: Cast off 4 (5) sts, hdc in each st to end.", (36, 39)),
        ("Row 2: Cast off the first 4 (5) hdc for underarm, hdc across.", (36, 39)),
        ("Row 2: Hdc to last 4 (5) sts, cast off last 4 (5) sts, turn.", (36, 39)),
        ("Row 2: Bind off 4 (5) sts for neck, hdc to last 3 sts, bind off 3 sts.", (33, 36)),
        ("Row 2: Hdc in each st across, bind off. (40 (44) hdc)", (40, 44)),
        ("Row 2: Dec 2 sts at each end, work even, turn.", (36, 40)),
        ("Row 2: Work even, binding off 2 sts at each side.", (36, 40)),
    ],
)
def test_stitches_bound_off(words: str, made: tuple[int, int]) -> None:
    """They are lost at the edge that is named, or slipped over where they come first or last."""
    assert [made] == _rows(words)
    assert not corrections(check(_PANEL.format(words)))


def test_bound_off_in_rows() -> None:
    """ "of next 4 rows" are rows, and their count is held against what is lost in them."""
    words = "Rows 2-5: Bind off 3 (4) sts at beg of next 4 rows. (28 (28) hdc)"

    assert (28, 28) == _rows(words)[-1]
    assert [("count-differs", 7)] == corrections(check(_PANEL.format(words.replace("28 (28)", "28 (29)"))))


@pytest.mark.parametrize(
    "words",
    [
        "Row 2: Bind off.",
        "Row 2: Bind off all sts.",
        "Row 2: Bind off 4 sts.",
        "Row 2: Bind off the centre 10 sts.",
        "Row 2: Hdc across, bind off 5 sts.",
        "Row 2: Hdc to last 4 sts, bind off first 4 sts.",
        "Row 2: Hdc in next 15 sts, bind off 10 sts, hdc in next 15 (19) sts.",
        "Row 2: Bind off 6 x 1 st in every 8th row",
    ],
)
def test_bound_off_who_knows_where(words: str) -> None:
    """Where neither edge nor order says which stitches are meant, or how the row is worked, it is not worked."""
    assert all(row == (None, None) for row in _rows(words))


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Row 2: Hdc to last 8 sts, bind off 8 sts at neck edge, turn.", (32, 36)),
        ("Row 2: Hdc in next 15 sts, bind off 8 sts at neck edge, turn.", (None, None)),
        ("Row 2: Hdc in next 15 sts, dec 8 sts at neck edge, turn.", (None, None)),
    ],
)
def test_an_edge_behind_work(words: str, made: tuple[int | None, ...]) -> None:
    """Behind a run that stops short they are its last ones; behind so many stitches nobody can tell what the rest is."""
    assert all(row == made for row in _rows(words))
