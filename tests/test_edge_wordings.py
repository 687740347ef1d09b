"""Edges, ends of rows, other pieces and old ways of saying a stitch: what each makes, worked out by hand.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, worked_rows

ROUND_6 = "Rnd 1: 6 sc in magic ring.\n"
ROW_12 = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n"

MADE = [
    # other pieces
    (ROUND_6, "Rnd 2: 9 sc around the second leg, 9 sc around the first leg.", 18),
    (ROUND_6, "Rnd 2: On the first leg: skip 1 st, 1 inc, 2 sc, 2 inc.", 8),
    (ROUND_6, "Rnd 2: Sc in next 6 sts, skip to the other leg, sc in each of the 6 sts of the second leg.", 12),
    (ROUND_6, "Rnd 2: Ch 3, sc in each of the 6 sts of the second leg, sc in the free loop of each of the 3 ch.", 9),
    # edges
    (ROW_12, "Row 2: Ch 1, turn work on its side, work 24 sc evenly along row ends.", 24),
    (ROW_12, "Row 2: Ch 1, working along side edge of strip, 2 sc in side of next sc, sc in next 5 row ends.", 7),
    (ROW_12, "Row 2: Ch 1, turn, evenly distribute 15 sc along.", 15),
    # one stitch, in old words
    (ROUND_6, "Rnd 2: Ch 1, *holding back the last loop of each dc on hook, 2 dc in next st, thread over and draw through all loops on hook, ch 1; rep from * around, join.", 6),
    (ROW_12, "Row 2: Ch 1, turn, sc in each of next 10 sts, on the last 2 sts sc2tog.", 11),
    (ROW_12, "Row 2: Ch 1, turn, sc in each st until you reach last 2 sts, sc2tog.", 11),
    (ROW_12, "Row 2: Ch 1, turn, sc in each of next 10 sc, 2 sctog over last 2 sc.", 11),
    # the hook, the loop and the hand
    (ROW_12, "Row 2: Ch 1, turn, working in the back ridges, sc in each st across.", 12),
    (ROUND_6, "Rnd 2: Insert hook in next sc, work 2 dc, *2 dc in next sc; rep from * around.", 12),
    (ROW_12, "Row 2: Ch 1, turn, sc in first 5 sc, place 3 sc in next sc, sc in last 6 sc.", 14),
    (ROUND_6, "Rnd 2: Shell of (2 dc, ch 1, 2 dc) in each st around.", 24),
    ("Ch 20 + 1 ch.\n", "Row 1: Sc in 2nd ch from hook and in each ch across.", 20),
]  # fmt: skip

NOT_TOLD = [
    (ROW_12, "Row 2: Ch 1, turn, working along side edge of strip, sc in each st across."),
    (ROW_12, "Row 2: Ch 1, turn, sc evenly along side edge."),
    (ROW_12, "Row 2: Ch 1, turn, work 9 sc along each edge and 3 sc in each corner."),
    (ROUND_6, "Rnd 2: Holding back last loop of each dc on hook, 2 dc in next st, ch 1, 2 dc in next st."),
    (ROUND_6, "Rnd 2: Work in leftover front loops of Rnd 1, sc in each st around."),
]


@pytest.mark.parametrize(("before", "words", "stitches"), MADE, ids=[words[:70] for _, words, _ in MADE])
def test_wording_makes(before: str, words: str, stitches: int) -> None:
    """The row is recomputed, and makes what its words say."""
    cell = worked_rows(check(before + words))[-1].cells[0]
    assert cell.made is not None, cell.stopped_by
    assert cell.made.stitches == stitches


@pytest.mark.parametrize(("before", "words"), NOT_TOLD, ids=[words[:70] for _, words in NOT_TOLD])
def test_what_is_not_told_is_not_counted(before: str, words: str) -> None:
    """Where the words do not say how many stitches there are, none are counted."""
    assert worked_rows(check(before + words))[-1].cells[0].made is None


def test_remark_does_not_swallow_the_work_behind_it() -> None:
    """ "Take off the marker and place 2 sc …" is a remark and work."""
    rows = worked_rows(
        check(ROUND_6 + "Rnd 2: Take off the marker and place 2 sc in the same stitch as last sc, inc in next 5 sts.")
    )
    assert rows[-1].cells[0].made is None or rows[-1].cells[0].made.stitches == 12


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("Ch 4 (counts as dc and ch 1), sk next ch, *dc in next ch, ch 1, sk next ch; rep from * around; join.", 20),
        ("Ch 1, *sc in next ch, ch 1, sk next ch; rep from * around; join.", 20),
        ("Ch 3 (counts as dc), sk 1 ch, *dc in next ch, ch 1, sk 1 ch; rep from * around; join.", 20),
        ("Ch 1, hdc in each ch around; join.", 40),
    ],
)
def test_a_ring_of_chains_is_worked_chain_by_chain(words: str, stitches: int) -> None:
    """Forty chains joined: whatever words speak of its chains first, each of them is a place."""
    report = check(f"Cowl\n\nCh 40, join with sl st to form a ring.\nRnd 1: {words}\n")
    assert counts(report)[-1] == stitches
    assert not corrections(report)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("34 dc up to beginning of neck shaping, 20 dc across back neck to left shoulder, 34 dc down left front", 88),
        ("34 dc up right front edge to the neck shaping, 20 dc along the neck", 54),
        ("34 dc up right front edge to the neck twice", None),
        ("34 dc to shoulder, dc down the left front edge to hem", None),
        ("dc in next 3 sts to left edge", None),
    ],
)
def test_how_far_up_an_edge_so_many_stitches_go(words: str, made: int | None) -> None:
    """ "34 dc up to start of neck shaping" has its number, and how far that goes is where the edge ends."""
    text = f"Vest\n\nUK terms\n\nEDGING\n1st row: Join yarn to lower edge of front, 1 ch, {words}, turn.\n"
    assert counts(check(text)) == [made]


_MESH = (
    "Scarf\n\nUS terms\n\nSCARF\nRow 1: Fdc 9, turn. (9)\n"
    "Row 2: Ch 4 (counts as dc and ch 1), skip next dc, *dc in next dc, ch 1, skip next dc; rep from * 2 more times, dc in last dc, turn. (5 dc)\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("dc in each ch-1 sp and in each dc across to beg ch-4, dc in sp of beg ch-4, dc in 3rd ch of same ch", 9),
        (
            "*dc in next ch-1 sp, dc in next dc; rep from * across to beginning ch-4, dc in ch-4 sp, dc in 3rd ch of ch-4",
            9,
        ),
        ("dc in each ch-1 sp and in each dc across to beg ch-4, 2 dc in beg ch-4", None),
        ("dc in each ch-1 sp and in each dc across to beg ch-4", None),
    ],
)
def test_a_run_up_to_the_beginning_chain_of_the_row_below(words: str, made: int | None) -> None:
    """What is worked before a ch 4 that holds a space is told where that space is named for itself."""
    assert counts(check(f"{_MESH}Row 3: Ch 3 (counts as dc), {words}, turn.\n"))[-1] == made
