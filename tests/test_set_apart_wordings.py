"""Places and rows told by what they are for: rib row ends, handles, groups of so many, all that a row has skipped.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, counts, worked_rows


def made(rows: str) -> list[int | None]:
    """The counts of a piece's rows."""
    return counts(check(f"Piece\n\nUS terms\n\nPIECE\n{rows}\n"))


GRANNY = (
    "Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (13)\n"
    "Row 2: Ch 3 (counts as dc), dc in same st, *sk 2 sts, 3 dc in next st; rep from * to last 3 sts, sk 2 sts, "
    "2 dc in last st, turn. (13)\nRow 3: Ch 3, 3 dc in each sp between groups, dc in top of turning ch, turn. (14)\n"
)


@pytest.mark.parametrize("named", ["groups of 3 dc", "the groups of three dc", "groups of 3 dc across"])
def test_spaces_between_groups_of_so_many(named: str) -> None:
    """The row below has four groups of three: three spaces lie between them."""
    assert made(GRANNY + f"Row 4: Ch 3, dc in same st, 3 dc in each sp between {named}, 2 dc in top of ch-3.")[3:] == [
        13
    ]


def test_smaller_groups_beside_those_named() -> None:
    """Half groups stand at the row's ends: whether the spaces beside them are meant is not said."""
    rows = GRANNY.replace("between groups,", "between groups of 3 dc,")
    assert made(rows)[2:] == [None]


@pytest.mark.parametrize(
    "ends",
    ["the end of each rib row", "end of every row of the ribbing", "each ribbing row end", "the end of every rib row"],
)
def test_ends_of_rib_rows(ends: str) -> None:
    """One stitch for each of the ten rows of the band."""
    rib = "Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (5)\nRows 2-10: Ch 1, sc blo in each st, turn. (5)\n"
    report = check(
        f"Hat\n\nUS terms\n\nBAND\n{rib}Do not fasten off; turn to work along the long edge.\n\nBODY\n"
        f"Row 1: Ch 1, work 1 sc in {ends}, turn. (10)\nRow 2: Ch 1, 2 sc in each st. (20)\n"
    )
    assert counts(report)[-2:] == [10, 20]
    assert worked_rows(report)[-2].cells[0].stopped_by is None


@pytest.mark.parametrize("loops", ["handle", "handle loop", "ch-8 handle"])
def test_handles_are_worked_into(loops: str) -> None:
    """Two loops of chain with ten stitches in each."""
    rows = (
        "Rnd 1: 24 sc in magic ring. (24)\n"
        "Rnd 2: Ch 1, *sc in next 6 sts, ch 8, skip next 6 sts; rep from * once more, join. (12)\n"
    )
    assert made(rows + f"Rnd 3: Ch 1, sc in each sc and 10 sc in each {loops} around, join.")[2:] == [32]


def test_stitches_of_a_handle_are_no_loops() -> None:
    """ "Each handle ch" is not the loop: it is not taken for it."""
    rows = "Rnd 1: 12 sc in ring. (12)\nRnd 2: Ch 1, sc in next 6 sts, ch 8, skip next 6 sts, join. (6)\n"
    assert made(rows + "Rnd 3: Ch 1, sc in each sc and in each handle ch, join.")[2:] == [None]


def test_each_skipped_stitch_of_this_row() -> None:
    """All that the row has skipped is worked, and not one of it."""
    rows = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12)\n"
    words = "Row 2: Ch 1, skip 3 sts, sc in next 3 sts, 2 sc in each skipped st, sc in last 6 sts."
    assert made(rows + words)[1:] == [15]


@pytest.mark.parametrize("stitch", ["each skipped st", "each missed st", "same ch and in each ch and skipped st"])
def test_each_stitch_that_an_earlier_row_skipped(stitch: str) -> None:
    """How many an earlier round left for the sleeve is not known here: no count is made of it."""
    report = check(
        "Pullover\n\nUS terms\n\nYOKE\nCh 40, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (40)\n"
        "Rnd 2: Ch 1, sc in next 12 sts, ch 4, skip next 8 sts, sc in next 12 sts, ch 4, skip next 8 sts, join. (24)\n\n"
        f"SLEEVE\nRnd 1: Join yarn in first ch of underarm, ch 1, sc in next 3 ch, sc in {stitch} around, join. (12)\n"
    )
    assert counts(report)[-1:] == [None]
    assert not [one for one in report.findings if one.rule == "count-differs"]


BASE = "Rnd 1: 8 hdc in magic ring. (8)\nRnd 2: Ch 1, 2 hdc in each st, join. (16)\nRnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around, join. (24)\n"


@pytest.mark.parametrize(
    "words",
    [
        "Continue in the same way, with 2 sts between increases.",
        "Continue increasing in this manner, working 2 hdc between incs = 32 hdc.",
        "Cont as established, having 2 sts between increases, join. (32)",
    ],
)
def test_going_on_with_runs_of_so_many(words: str) -> None:
    """Runs of two between eight increases."""
    assert made(BASE + f"Rnd 4: {words}")[3:] == [32]


def test_runs_of_one_length_in_several_rounds() -> None:
    """A length that is the same in three rounds that grow is not understood."""
    assert made(BASE + "Rnds 4-6: Continue in the same way, with 2 sts between increases each rnd.")[3:6] == [None] * 3


@pytest.mark.parametrize(
    "words", ["As Rnd 3, with 2 sts between increases, hdc in next 5 sts.", "As Rnd 3, but with 3 popcorns, 30 hdc."]
)
def test_a_row_called_with_other_work_lends_no_count(words: str) -> None:
    """The row that is called had 24; what this one has is not known, and the next is not worked on 24."""
    assert made(BASE + f"Rnd 4: {words}\nRnd 5: Ch 1, hdc in each st around, join. (32)\n")[3:] == [None, None]


@pytest.mark.parametrize("sort", ["a dc row", "an sc row", "a RS row"])
def test_rows_worked_on_until_a_row_of_a_sort(sort: str) -> None:
    """Rows worked even keep their number, whatever row is the last."""
    rows = (
        "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20)\n"
        "Row 2: Ch 1, sc in each st across, turn. (20)\n"
        f"Work even in pattern until piece measures 12 cm, ending with {sort}.\nNext row: Ch 1, sc2tog, sc in each st to end.\n"
    )
    assert made(rows)[-1] == 19


@pytest.mark.parametrize("heading", ["Mittens (both alike)", "Sleeves - both the same", "Cuffs (work both alike)"])
def test_headings_of_two_alike(heading: str) -> None:
    """A heading between rows that says both are alike: a piece of its own, made twice."""
    report = check(
        "Set\n\nUS terms\n\nBAND\nRnd 1: 6 sc in magic ring. (6)\n"
        f"{heading}\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: 2 sc in each st around. (16)\n"
    )
    parts = {row.part.name: row.part.make for row in worked_rows(report)}
    assert parts == {"BAND": 1, heading.split()[0]: 2}


@pytest.mark.parametrize(
    "told", ["at the end of the last rnd", "in the last round", "at end of last rnd", "after last rnd"]
)
def test_a_heading_behind_a_count_at_the_last_round(told: str) -> None:
    """A count without a stop that ends in the word for a round: the line below is a heading, and not the row's."""
    report = check(
        "Vest\n\nUS terms\n\nYOKE\nRnd 1: 12 sc in magic ring. - 12 sc\n"
        f"Rnds 2 and 3: Ch 1, 2 sc in each st around, join. - 48 sc {told}\nBody\nRnd 1: Ch 1, sc in each st around, join. - 48 sc\n"
    )
    assert [row.part.name for row in worked_rows(report)] == ["YOKE", "YOKE", "YOKE", "Body"]
    assert counts(report) == [12, 24, 48, 48]


@pytest.mark.parametrize(
    ("words", "tail"),
    [
        ("Continue to increase 8 sts each rnd in the same way.", [32, 40]),
        ("Cont increasing 8 hdc every round in this manner (40).", [32, 40]),
        ("Inc 8 sts each rnd as established. (40)", [32, 40]),
        ("Continue to increase 8 sts every other rnd in the same way.", [None, None]),
        ("Continue to increase 8 sts each rnd in the same places as the leaves.", [None, None]),
    ],
)
def test_so_many_gained_each_round_in_the_same_way(words: str, tail: list[int | None]) -> None:
    """Where they fall is as before, and how many they are is said; anything else behind is not passed over."""
    assert made(BASE + f"Rnds 4-5: {words}")[3:] == tail
