"""Runs whose stitch is not named again, shaping told of the row's ends, colours behind stitches; counts worked by hand."""

from __future__ import annotations

import pytest
from helpers import assert_workings_hold, check, corrections, counts, mades


def _row(start: int, words: str, stitch: str = "sc") -> list[int | None]:
    report = check(f"Panel\n\nTerms: US\n\nFRONT\nRow 1: F{stitch} {start}, turn. ({start})\nRow 2: {words}\n")
    return counts(report)[1:]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, sc2tog, work to last 2 sts, sc2tog, turn",
        "Ch 1, dec, work even to last 2 sts, dec, turn",
        "Ch 1, sc2tog, work across next 12 sts, sc2tog, turn",
        "Ch 1, sc2tog, work 12, sc2tog, turn",
        "Ch 1, sc2tog, work in each st to last 2 sts, sc2tog, turn",
        "Ch 1, sc2tog, work in sc to last 2 sts, sc2tog, turn",
        "Work sc2tog at each end of the row, turn",
        "Ch 1, work in sc, dec 1 st at each end, turn",
    ],
)
def test_a_row_that_loses_one_at_each_end(words: str) -> None:
    """Sixteen stitches become fourteen."""
    assert _row(16, words) == [14]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, inc in first st, work even to last st, inc in last st, turn",
        "Ch 1, sc across 16 sts plus one st at each side, turn",
        "Ch 1, sc once in first 7 sts and twice in next 2 sts, sc in last 7 sts, turn",
        "Ch 1, sc in next 7 sts, sc twice in next 2 sts, sc in last 7 sts, turn",
    ],
)
def test_a_row_that_gains_two(words: str) -> None:
    """Sixteen stitches become eighteen."""
    assert _row(16, words) == [18]


@pytest.mark.parametrize(
    "words",
    [
        "*sc once into the next 3 sts and twice into the fourth st. Continue * all the way around",
        "*sc in next 3 sts, twice in next st; rep from * around",
        "*sc in 3 sts, 2 sc in 4th st* around",
        "*sc, sc, sc, inc; repeat around",
    ],
)
def test_every_fourth_stitch_doubled(words: str) -> None:
    """Twenty stitches become twenty-five."""
    report = check(f"Ball\n\nTerms: US\n\nBODY\nRnd 1: 20 sc in magic ring. (20)\nRnd 2: {words}.\n")
    assert counts(report) == [20, 25]


def test_the_stitch_of_a_plain_run_is_that_of_the_row_below() -> None:
    """ "work to last 2 sts" over half doubles is of half doubles; so is a decrease that names none."""
    report = check(
        "Panel\n\nTerms: US\n\nFRONT\nRow 1: Fhdc 12, turn. (12)\nRow 2: Ch 1, dec, work to last 2 sts, dec, turn. (10 hdc)\n"
    )
    assert mades(report)[1].by_kind == {"hdc": 10}
    assert not corrections(report)
    assert_workings_hold(report)


@pytest.mark.parametrize(
    "words",
    [
        "4 sc in black, 2 sc in white, 4 sc in black.",
        "In black, sc in next 4 sts, 2 sc in white, sc 4 in black.",
        "Sc 10 in B.",
    ],
)
def test_colours_behind_stitches(words: str) -> None:
    """A colour named behind a run is no place to work into."""
    report = check(
        f"Bee\n\nTerms: US\n\nMaterials\nA (gold)\nB (black)\n\nBODY\nRnd 1: 10 sc in magic ring. (10)\nRnd 2: {words} (10)\n"
    )
    assert counts(report) == [10, 10]


def test_a_colour_in_brackets_before_a_list_and_its_times() -> None:
    """ "2 sc, dec x 5" is five times both; a remark before it changes nothing."""
    report = check("Bee\n\nTerms: US\n\nBODY\nRnd 1: 20 sc in magic ring. (20)\nRnd 2: (black) 2 sc, dec x 5 (15)\n")
    assert counts(report) == [20, 15]


def test_a_number_glued_to_a_bracket_is_how_often() -> None:
    """ "[sc1, inc1]5"."""
    report = check("Bee\n\nTerms: US\n\nBODY\nRnd 1: 10 sc in magic ring. (10)\nRnd 2: [sc1, inc1]5 (15)\n")
    assert counts(report) == [10, 15]


def test_the_long_way_round_a_base() -> None:
    """Sides told by number, the foundation chain worked from below."""
    report = check(
        "Tote\n\nTerms: US\n\nBASE\nRow 1: Ch 21, sc in 2nd ch from hook and in each ch across, turn. (20)\n"
        "Rows 2-6: Ch 1, sc across, turn. (20)\n"
        "Rnd 1: Ch 1, sc 6 down the side, sc 20 in foundation chain, sc 6 up the other side, sc 20 across the top, join. (52)\n"
    )
    assert counts(report)[-1] == 52
    assert not corrections(report)


@pytest.mark.parametrize("side", ["other side:", "working along opposite side,", "other side of ch:"])
def test_the_other_side_without_its_chain(side: str) -> None:
    """In a round that began in the chain from the hook, the other side is the chain's."""
    report = check(
        f"Crab\n\nTerms: US\n\nSHELL\nRnd 1: Ch 8, sc in 2nd ch from hook, sc 5, 3 sc in last ch; {side} sc 5, 2 sc in last ch. (16)\n"
    )
    assert counts(report) == [16]


def test_a_group_that_the_row_below_does_not_show_is_not_guessed() -> None:
    """After a plain row the 3-sc groups are gone: where their middles were is not known."""
    report = check(
        "Yoke\n\nTerms: US\n\nYOKE\nRow 1: Fsc 20, turn. (20)\nRow 2: Ch 1, sc in next 9 sc, 3 sc in next sc, sc in last 10 sc, turn. (22)\n"
        "Row 3: Ch 1, sc across, turn. (22)\nRow 4: Ch 1, sc to center sc of 3-sc group, 3 sc in center sc, sc across, turn. (24)\n"
    )
    assert counts(report) == [20, 22, 22, None]
    assert not corrections(report)


def test_letters_that_the_patterns_own_list_explains() -> None:
    """X, V and A of a toy's list are stitches where they stand in capitals; a small x is still "times"."""
    report = check(
        "Wasp\n\nTerms: US\n\nAbbreviations\nX: single crochet\nV: increase\nA: decrease\nMR: magic ring\n\nBODY\n"
        "R1: MR, 6X (6)\nR2: 6V (12)\nR3: (X, V) x 6 (18)\nR4: (2X, V) * 6 (24)\nR5-R6: 24X (24)\nR7: (2X, A) x 6 (18)\n"
    )
    assert counts(report) == [6, 12, 18, 24, 24, 24, 18]
    assert not corrections(report)


def test_labels_spelled_out() -> None:
    """ "Row one", "Rows three to five"; a chain's length in words is told in the question about it."""
    report = check(
        "Pouch\n\nTerms: US\n\nPOUCH\nChain twelve.\nRow one: single crochet in second chain from hook and in each chain to end. Eleven stitches.\n"
        "Row two: chain one, turn, single crochet in each stitch.\nRows three to five: as row two.\n"
        "Row six: chain three, turn, double crochet in each stitch.\n"
    )
    assert counts(report)[:5] == [11] * 5
    asked = [finding.message for finding in report.findings if finding.rule == "turning-chain-unsaid"]
    assert len(asked) == 1 and "ch 3" in asked[0]


@pytest.mark.parametrize(
    "words",
    [
        "Sc around in a spiral.",
        "Sc around, leaving a 3 cm opening for stuffing.",
        "Sc in each st around, working over the tail.",
        "Work in BLO only: sc around.",
        "Hdc in the third loop around.",
        "Sc around, inserting stuffing.",
    ],
)
def test_words_beside_a_plain_round(words: str) -> None:
    """How the round is worked changes nothing of its count."""
    report = check(f"Egg\n\nTerms: US\n\nBODY\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {words} (12)\n")
    assert counts(report) == [12, 12]
    assert not corrections(report)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("2 sc in next st, 1 sc in next st around. (18)", 18),
        ("sc in next st, inc in next st around (18)", 18),
        ("sc in next st, inc in next st around", None),  # nothing tells whether all of it goes on
        ("sc in next 2 sts, inc in next st around (16)", 16),
        ("inc in first st, sc in next st around (13)", 13),
        ("2 sc in next st around", 24),
        ("2 sc in next st, 1 sc in next st around. (13)", 13),  # the count tells that only the last goes on
        ("5 sc, inc in next st, sc in next st around (13)", 13),
    ],
)
def test_next_ones_in_turn_around(words: str, made: int | None) -> None:
    """ "2 sc in next st, sc in next st around" goes on as a whole; a clause alone, or behind the first stitch, by itself."""
    report = check(
        f"Ball\n\nUS terms.\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st. (12)\nRnd 3: {words}\n"
    )
    assert counts(report)[2] == made
    assert corrections(report) == []
