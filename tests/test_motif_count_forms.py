"""Printed counts of motifs in further forms: sums, series with "then", blocks and spaces as they follow in filet."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

_START = "Square\nUS terms\n\nSQUARE\nR1: 12 dc in magic ring. = 12\n"


@pytest.mark.parametrize("form", ["= {} + 4 corner spaces", "({} + 4 ch-2 sps)", "({} plus 4 ch-2 sps)"])
def test_stitches_plus_spaces(form: str) -> None:
    """ "24 + 4 corner spaces" is so many stitches, and spaces beside them."""
    round_ = f"R2: ch 1, [sc 2, (2 dc, ch 2, 2 dc) in next st] x 4. Sl st to first sc. {form}\n"
    assert outcomes(check(_START + round_.format(24))) == ["agrees", "agrees"]
    assert outcomes(check(_START + round_.format(28))) == ["agrees", "differs"]


@pytest.mark.parametrize("form", ["= 24, then {}", "(24, then {})", "(24, then {} sts)"])
def test_series_with_then(form: str) -> None:
    """ "= 24, then 48" gives each round of a range its count."""
    assert outcomes(check(f"{_START}R2-3: ch 1, 2 sc in each st. {form.format(48)}\n")) == ["agrees"] * 3
    assert outcomes(check(f"{_START}R2-3: ch 1, 2 sc in each st. {form.format(44)}\n"))[2] == "differs"


_FILET = (
    "Filet\nUS terms\nSp (space) = ch 2, sk 2 sts, dc in next dc.\nBl (block) = dc in each of next 3 sts.\n\nFILET\nCh 18.\n"
    "Row 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn. (16 dc)\n"
    "Row 2: Ch 3 (counts as dc), dc in next 3 dc, [ch 2, sk 2 dc, dc in next dc] 3 times, dc in last 3 sts, turn. COUNT\n"
)


@pytest.mark.parametrize(
    ("count", "outcome"),
    [
        ("(1 bl, 3 sps, 1 bl)", "agrees"),
        ("(2 bls, 3 sps)", "agrees"),
        ("- 1 bl, 3 sps, 1 bl", "agrees"),
        ("(1 bl, 4 sps, 1 bl)", "differs"),
        ("(3 bls, 3 sps)", "differs"),
    ],
)
def test_blocks_and_spaces_of_a_row_told_stitch_by_stitch(count: str, outcome: str) -> None:
    """Blocks and spaces are counted off the row, in the order of the row or added up."""
    assert outcomes(check(_FILET.replace("COUNT", count)))[1] == outcome


@pytest.mark.parametrize(
    "told",
    [
        "Join as before. Count them: 24!",
        "Join. Count your stitches: 24",
        "Join. Check: 24 tr.",
        "Join, and check that you have 24 tr.",
    ],
)
def test_counts_told_to_the_maker(told: str) -> None:
    """ "Count them: 24!" is a printed count, and a wrong one is found."""
    text = f"Coaster\nUK terms\n\nCOASTER\nRound 1: 2 ch - this is not a stitch. 12 tr into magic ring, ss to first tr. 12 tr\nRound 2: 2 ch (not a st). 2 tr into every st. {told}\n"
    assert outcomes(check(text)) == ["agrees", "agrees"]
    assert outcomes(check(text.replace("24", "22"))) == ["agrees", "differs"]
    assert ("turning-chain-unsaid", 5) not in all_findings(check(text))


@pytest.mark.parametrize(
    "words",
    [
        "*1 tr in the next stitch, then 2 tr in the stitch after it*. Repeat * to * right round and join.",
        "*1 tr in the next stitch, 2 tr in the following one*. Repeat * to * round and join.",
    ],
)
def test_the_stitch_after_it(words: str) -> None:
    """ "the stitch after it" is the next one, and "round and join" goes all the way."""
    text = f"Coaster\nUK terms\n\nCOASTER\nRound 1: 12 tr into magic ring, ss to first tr. 12 tr\nRound 2: 2 ch (not a st). {words} 18 tr\n"
    assert outcomes(check(text)) == ["agrees", "agrees"]


@pytest.mark.parametrize(
    "told",
    [
        "There is one stitch more in every row.",
        "You will have 1 more stitch in each row, so Row 5 has 14 stitches.",
    ],
)
def test_how_rows_grow_is_told(told: str) -> None:
    """A sentence on how rows grow works nothing, whatever figures it names."""
    text = (
        "Wedge\nUS terms\n\nWEDGE\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\n"
        f"Row 2: Ch 1, 2 sc in first st, sc in each st across, turn. (11)\nRows 3-5: Repeat Row 2. {told}\nRow 6: Ch 1, sc in each st across. (14)\n"
    )
    report = check(text)
    assert counts(report) == [10, 11, 12, 13, 14, 14]
    assert not corrections(report)


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        (
            "*sc in next 3 sts, FPdc around the sc of Rnd 2 below, sk the sc behind it, sc in next 2 sts; rep from * around",
            24,
        ),
        ("*sc in each of next 6 sts, 1 spike sc down between the groups of Rnd 2; rep from * around", 28),
    ],
)
def test_long_stitches_into_a_named_round_below(words: str, stitches: int) -> None:
    """ "of Rnd 2 below" and "down between the groups of Rnd 2" name places of that round."""
    text = (
        "Motif\nUS terms\n\nMOTIF\nRnd 1: 12 sc in magic ring, join. (12)\nRnd 2: Ch 1, (sc, ch 1) in each st around, join. (12)\n"
        f"Rnd 3: Ch 1, 2 sc in each ch-1 sp around, join. (24)\nRnd 4: Ch 1, {words}, join. ({stitches})\n"
    )
    assert outcomes(check(text))[3] == "agrees"


def test_ending_that_the_last_pass_has_done() -> None:
    """ "rep from * all round, ending 1 dc in each tr to end": the last pass went to the end, and nothing is wanting."""
    text = (
        "Square\nUK terms\n\nSQUARE\nRound 1: 4 ch, ss to form ring. 3 ch (counts as tr), 2 tr into ring, *2 ch, 3 tr into ring; rep from * twice more, 2 ch, ss into top of 3 ch. (12 tr)\n"
        "Round 2: 1 ch, 1 dc into same place as ss, 1 dc into each tr to corner, *3 dc into corner sp, 1 dc into each tr to next corner; rep from * all round, ending 1 dc into each tr to end, ss into first dc. (24 dc)\n"
    )
    report = check(text)
    assert counts(report) == [12, 24]
    assert not corrections(report)


def test_one_stitch_of_a_run_omitted() -> None:
    """ "omitting the last sc" takes one stitch from "sc in next 3 sts", not all of them."""
    text = (
        "Ring\nUS terms\n\nRING\nRnd 1: 12 sc in magic ring, join. (12)\n"
        "Rnd 2: Ch 1, sc in same st, *2 sc in next st, sc in next 3 sts; rep from * 2 more times, omitting the last sc of the last repeat, join. (15)\n"
    )
    assert outcomes(check(text)) == ["agrees", "agrees"]


def test_blocks_go_on_under_another_heading() -> None:
    """A cloth from corner to corner goes on in its blocks where its decreases stand under a heading of their own."""
    text = (
        "Cloth\nUS terms\n\nIncrease section\nRow 1: Ch 6, dc in 4th, 5th and 6th ch from hook. Turn. (1 block)\n"
        "Row 2: Ch 6, dc in 4th, 5th and 6th ch from hook; sl st in ch-3 sp of next block, ch 3, 3 dc in same sp. Turn. (2 blocks)\n"
        "Row 3: Ch 6, dc in 4th, 5th and 6th ch from hook; *sl st in ch-3 sp of next block, ch 3, 3 dc in same sp; rep from * to end. Turn. (3 blocks)\n\n"
        "Decrease section\nRow 4: Sl st in each of first 3 dc and in ch-3 sp, ch 3, 3 dc in same sp, *sl st in ch-3 sp of next block, ch 3, 3 dc in same sp; rep from * to last block, sl st in ch-3 sp of last block. Turn. (2 blocks)\n"
    )
    assert counts(check(text)) == [3, 6, 9, 6]


@pytest.mark.parametrize(
    ("ending", "rules"),
    [
        ("dc in top of turning ch—{} dc", ["count-differs"]),
        ("dc in top of beg ch--{} sts", ["count-differs"]),
        ("dc in turning ch—{} sts; turn", ["count-differs"]),
        ("dc in top of beg ch—3", []),
        ("dc in top of ch–3", []),
    ],
)
def test_a_count_behind_a_long_dash_that_touches_a_chain(ending: str, rules: list[str]) -> None:
    """ "top of beg ch—10 sts" has its count behind a dash, where "top of beg ch—3" names the chain by its length."""
    text = "Mat\nUS terms\n\nMAT\nRow 1: Fdc 10, turn. (10)\nRow 2: Ch 3 (counts as dc), dc in next 8 dc, {}.\n"
    report = check(text.format(ending.format(10)))
    assert counts(report) == [10, 10]
    assert corrections(report) == []
    assert [rule for rule, _ in corrections(check(text.format(ending.format(12))))] == rules
