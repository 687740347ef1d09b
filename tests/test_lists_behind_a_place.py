"""Lists that stand behind the place they go into: "In first corner sp: ch 3, 2 dc, ch 2, 3 dc."; worked by hand, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, mades

SQUARE = """US terms.

ABBREVIATIONS
ch chain, dc double crochet, sc single crochet, sl st slip stitch, sp space, beg beginning, rnd round

SQUARE
Ch 4, join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in 3rd ch of beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: {}
"""


@pytest.mark.parametrize(
    "words",
    [
        "In first corner sp: ch 3, 2 dc, ch 2, 3 dc. In each remaining corner: 3 dc, ch 2, 3 dc. Join. (24 dc, 4 ch-2 sps)",
        "In first corner sp work: ch 3, 2 dc, ch 2, 3 dc. In each remaining corner work: 3 dc, ch 2, 3 dc. Join. (24 dc, 4 ch-2 sps)",
        "In first corner sp work ch 3, 2 dc, ch 2, 3 dc; in each remaining corner work 3 dc, ch 2, 3 dc; join. (24 dc, 4 ch-2 sps)",
    ],
)
def test_list_with_the_rounds_chain_goes_into_its_place_whole(words):
    """The chain stands for the first of three dc in the corner."""
    report = check(SQUARE.format(words))
    assert counts(report)[-1] == 24
    assert dict(mades(report)[-1].spaces) == {2: 4}
    assert corrections(report) == []


def test_list_behind_a_colon_with_no_mirror():
    """A colon leads to all of its sentence: each corner takes sc, ch 3, dc and another sc."""
    report = check(SQUARE.format("In each corner sp: sc, ch 3, dc, sc. Join."))
    assert counts(report)[-1] == 12


def test_what_has_a_place_of_its_own_is_no_part_of_the_list():
    """The sc go into the side."""
    report = check(
        SQUARE.format(
            "Ch 1, *in next sp: 3 dc, ch 2, 3 dc, sc in next 3 dc; rep from * around, join.".replace("rep", "repeat")
        )
    )
    assert counts(report)[-1] == 36
