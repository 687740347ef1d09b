"""What printed counts of motifs count: sides, stitches beside groups that go undefined, loops joined to a neighbour."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, mades, outcomes, spaces

_SQUARE = (
    "Tile\nRnd 1: In magic ring, ch 3 (counts as dc), 2 dc, ch 2, (3 dc, ch 2) 3 times, join. (12 dc)\n"
    "Rnd 2: Ch 3 (counts as dc), dc in next 2 dc, (2 dc, ch 2, 2 dc) in corner, "
    "*dc in next 3 dc, (2 dc, ch 2, 2 dc) in corner; rep from * around, join. "
)


@pytest.mark.parametrize(
    "count",
    [
        "(7 dc on each side)",
        "{7 sts per side, 4 corner sps}",
        "[7 dc along each edge]",
        "(28 dc, 7 dc on each of the 4 sides)",
        "(7 sts between corners)",
        "(3 dc per side)",
    ],
)
def test_a_count_for_each_side_is_held_against_the_sides(count: str):
    """Seven between one corner space and the next; three, if those in the corners are told with the corners."""
    report = check(_SQUARE + count + "\n")
    assert counts(report) == [12, 28]
    assert outcomes(report) == ["agrees", "agrees"]


def test_a_wrong_count_for_each_side_is_found():
    """Eight is neither the side with its corners nor without them."""
    report = check(_SQUARE + "(8 dc on each side)\n")
    assert [rule for rule, _ in corrections(report)] == ["count-differs"]


@pytest.mark.parametrize(
    ("count", "found"),
    [
        ("(5 V-sts, 2 dc)", []),
        ("(2 dc, 5 V-sts)", []),
        ("(12 dc)", []),
        ("(5 V-sts, 4 dc)", ["count-differs"]),
    ],
)
def test_stitches_told_beside_groups_that_are_nowhere_defined(count: str, found: list[str]):
    """Ten of the twelve stand two and two in the five groups, whatever the pattern means by a V-st."""
    report = check(
        "Wrap\nRow 1: Ch 19, (dc, ch 1, dc) in 5th ch from hook (4 skipped ch count as dc and 1 skipped ch), "
        f"*sk 2 ch, (dc, ch 1, dc) in next ch; rep from * to last 2 ch, sk 1 ch, dc in last ch. {count}\n"
    )
    assert counts(report) == [12]
    assert [rule for rule, _ in corrections(report)] == found


def test_the_same_units_again_are_those_of_the_next_round():
    """A range's counts may stand one after the other, with semicolons between."""
    report = check(
        "Disc\nRnd 1: 6 sc in magic ring, join. (6 sc)\nRnd 2: Ch 1, 2 sc in each sc around, join. (12 sc)\n"
        "Rnds 3-4: Ch 4 (counts as dc and ch 1), dc in same st, (dc, ch 1, dc) in each st around, join. "
        "24 dc, 12 ch-1 sps; 48 dc, 24 ch-1 sps\n"
    )
    assert counts(report) == [6, 12, 24, 48]
    assert outcomes(report) == ["agrees"] * 4


_RING = "Rnd 1: Ch 4, join to form ring, ch 1, 6 sc in ring, join. (6 sc)\n"


@pytest.mark.parametrize(
    "join",
    [
        "(sc in next sc, ch 2, sl st in ch-5 loop of First Hexagon, ch 2) twice",
        "(sc, ch 2, sl st in ch-5 loop of First Hexagon, ch 2) in each of next 2 sc",
        "[sc in next sc, ch 2, join with sl st to corresponding loop of previous hexagon, ch 2] twice",
    ],
)
@pytest.mark.parametrize("count", ["(6 loops)", "(6 ch-5 loops)", "(6 sc, 6 ch-5 sps)"])
def test_a_loop_joined_half_way_is_still_one_loop(join: str, count: str):
    """The slip stitch into the other tile stands for the loop's middle chain, and no picot is made."""
    report = check(
        f"Chain of Tiles\nFirst Hexagon\n{_RING}Rnd 2: Ch 1, (sc, ch 5) in each sc around, join. (6 ch-5 loops)\n"
        f"Second Hexagon\n{_RING}Rnd 2: Ch 1, *sc in next sc, ch 5; rep from * 3 times more, {join}, join. {count}\n"
    )
    assert counts(report) == [6, 6, 6, 6]
    assert spaces(report)[3] == {5: 4, 4: 2}
    assert mades(report)[3].groups == {}
    assert outcomes(report) == ["agrees"] * 4


@pytest.mark.parametrize("note", ["(dc + ch 1)", "(1 dc, 1 ch)", "[dc and ch-1]"])
def test_what_a_chain_is_made_up_of_may_stand_in_brackets_without_a_verb(note: str):
    """Three chains are as high as a dc, and one is left for the space."""
    report = check(
        "Mat\nRnd 1: Ch 4, join to form ring, ch 1, 10 sc in ring, join. (10 sc)\n"
        f"Rnd 2: Ch 4 {note}, *dc in next sc, ch 1; rep from * around, join to 3rd ch of ch 4. (10 ch-1 sps)\n"
    )
    assert counts(report) == [10, 10]
    assert spaces(report)[1] == {1: 10}
    assert "turning-chain-unsaid" not in [rule for rule, _ in all_findings(report)]


def test_heights_that_do_not_add_up_explain_no_chain():
    """Three chains of five are a dc's, and the other two are not told."""
    report = check("Mat\nRnd 1: Ch 4, join to form ring, ch 5 (dc + ch 1), 10 dc in ring, join.\n")
    assert counts(report) == [None]


def test_post_stitches_round_their_stitches_and_round_a_stem():
    """ "Round" is the British "around"."""
    report = check(
        "Cloth\nRow 1: Ch 12, 1 tr in 4th ch from hook (3 missed ch count as 1 tr), 1 tr in each ch to end, turn. (10 tr)\n"
        "Row 2: Ch 3 (counts as 1 tr), *FPtr round next tr, BPtr round stem of next tr; rep from * to last tr, 1 tr in last tr. (10 sts)\n",
        "uk",
    )
    assert counts(report) == [10, 10]


@pytest.mark.parametrize("count", ["28 dc, 7 each side", "(28 dc, 7 per side)", "(28 dc; 7 on each side)"])
def test_a_figure_for_each_side_with_no_unit_of_its_own(count: str):
    """It is of the stitches named before."""
    report = check(_SQUARE + count + "\n")
    assert outcomes(report) == ["agrees", "agrees"]


def test_picots_named_by_their_chains():
    """A loop within a place, or one that is closed into a stitch: both are called so."""
    start = "Trim\nRnd 1: Ch 12, join to form ring; ch 1, sc in each ch around; join. (12 sc)\nRnd 2: Ch 1, "
    loops = check(
        start + "*sc in next 2 sc, (sc, ch 3, sc) in next sc; rep from * around; join. (16 sc, 4 ch-3 picots)\n"
    )
    closed = check(
        start + "*sc in next 3 sc, ch 3, sl st in last sc made; rep from * around; join. (12 sc, 4 ch-3 picots)\n"
    )
    assert outcomes(loops) == outcomes(closed) == ["agrees", "agrees"]


def test_a_piece_named_before_its_first_label():
    """ "Border: Rnd 1:" begins a piece of its own, with its own numbers."""
    report = check(_SQUARE + "\nBorder: Rnd 1: Ch 1, sc in each dc and 3 sc in each corner sp around, join. (40 sc)\n")
    assert [part.name for part in report.pattern.parts][-1] == "Border"
    assert counts(report) == [12, 28, 40]


def test_stitches_worked_backwards_are_no_other_countrys():
    """ "Rev sc" is a US name like sc."""
    report = check(
        "Mat\nRnd 1: 8 sc in magic ring, join. (8 sc)\nRnd 2: Rev sc in each st around, join. (8 sc)\n", "us"
    )
    assert corrections(report) == []
