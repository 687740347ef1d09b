"""Wordings of toys, hats and garments: a known row below, one clause said in another designer's voice, one count.

The counts are worked out by hand from what the trade's words do (semantics of written crochet; no published source).
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes


def _after(start: int, words: str, flat: bool = False) -> list[int | None]:
    """What a row of these words makes on so many single crochet; None where it is not recomputed."""
    first = f"Row 1: Fsc {start}, turn. ({start})" if flat else f"Rnd 1: {start} sc in magic ring. ({start})"
    label = "Row" if flat else "Rnd"
    return counts(check(f"Acorn\n\nTerms: US\n\nCAP\n{first}\n{label} 2: {words}\n"))[1:]


@pytest.mark.parametrize(
    "words",
    [
        "sc 3, inc, x5",
        "sc 3, inc; x 5",
        "3 sc, inc - 5 times",
        "*3 sc, inc* - 5 times",
        "5x (3 sc, inc)",
        "5 x (3sc, 1inc)",
        "3sc, inc *5",
        "(sc x3, inc x1) x5",
        "[sc in next 3 sts, inc in next st] rep 5 times total",
        "Work sc in each of next 3 sts, then 2 sc in next st; repeat this 5 times.",
        "*sc in 3, inc in 1* x5",
        "inc, 3 sc all the way around",
        "3 sc, inc all around",
        "Sc around, inc 5 times evenly spaced",
    ],
)
def test_a_list_worked_five_times(words: str) -> None:
    """Twenty stitches grow to twenty-five, wherever the number of times stands."""
    assert _after(20, words) == [25]


def test_a_round_that_loses_a_quarter() -> None:
    """Twenty stitches shrink to fifteen."""
    assert _after(20, "Dec 5 times evenly around") == [15]


def test_two_together_around_halves_the_round() -> None:
    """ "sc next 2 sts tog around" joins every pair."""
    assert _after(14, "sc next 2 sts tog around") == [7]
    assert _after(14, "7 decreases") == [7]


def test_increase_and_run_around_needs_its_count() -> None:
    """ "inc, sc around" is a repeat, or one increase and then a run: only a printed count tells."""
    assert _after(10, "inc, sc around") == [None]
    assert _after(10, "inc, sc around (15)") == [15]
    assert _after(10, "inc, sc around (11)") == [11]


def test_a_letter_never_explained_is_not_passed_over() -> None:
    """A capital A in a list may be a decrease in another house's letters."""
    assert _after(24, "(sc 2, A) x 6") == [None]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, sc2tog, sc in each st until there are 2 sts left, sc2tog, turn",
        "Ch 1, sc2tog, sc in each to last, sc in last, turn",
    ],
)
def test_how_far_a_run_goes(words: str) -> None:
    """A run that leaves the last stitches to the next clause."""
    assert _after(16, words, flat=True) == [14 if "there are" in words else 15]


@pytest.mark.parametrize(
    "words", ["sc all across, turn", "sc straight across, turn", "hdc even, turn", "Work even in dc, turn"]
)
def test_a_plain_row(words: str) -> None:
    """A row that neither gains nor loses."""
    assert _after(17, words, flat=True) == [17]


def test_loops_named_with_each() -> None:
    """ "in each front loop" is in each stitch."""
    assert _after(9, "2 sc in each front loop around") == [18]
    assert _after(9, "Ch 1, sc through back loop only in each st across, turn", flat=True) == [9]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 10.\nRnd 1: Inc in 2nd ch from hook, sc in next 7 ch, 4 sc in last ch, rotate, sc in next 7 ch, inc in last.",
        "Ch 10.\nRnd 1: 2 sc in 2nd ch from hook, sc in next 7 ch, 4 sc in end ch. Working along the bottom loops of the"
        " foundation ch, sc in next 7 ch, 2 sc in last ch.",
        "Ch 10.\nRnd 1: Starting in second chain, inc, 7 sc, 4 sc in last ch, turn the work, 7 sc on the other side, inc.",
        "Ch 10.\nRnd 1: 2 sc in 2nd ch from hook, sc in next 7 ch, 4 sc in last ch; continue on other side of chain: sc in"
        " next 7 ch, 2 sc in last ch.",
        "Ch 10.\nRnd 1: 2 sc in 2nd ch from hook, sc in next 7 ch, 4 sc in last ch, turn and work back along other side of"
        " ch, sc in next 7 ch, 2 sc in same ch as first 2 sc.",
        "Ch 10.\nRnd 1: 2 sc in 2nd ch from hook, sc in next 7 ch, 4 sc in last ch, working in unused loops of foundation"
        " chain, sc in next 7 ch, 2 sc in last.",
    ],
)
def test_an_oval_round_a_chain(words: str) -> None:
    """Nine chains worked on both sides: 2 + 7 + 4 + 7 + 2."""
    report = check(f"Boat\n\nTerms: US\n\nHULL\n{words} (22)\n")
    assert counts(report) == [22]
    assert outcomes(report) == ["agrees"]
    assert not [finding for finding in report.findings if finding.weight.value == "query" and "left" in finding.rule]


@pytest.mark.parametrize(
    "words",
    [
        "MR 7",
        "Magic ring with 7 sc",
        "7 sc in magic ring, pull tight",
        "start 7 sc in a magic circle",
        "Start with cream, make a magic ring of 7 sc",
    ],
)
def test_a_ring_to_begin_with(words: str) -> None:
    """Seven stitches in a ring."""
    report = check(f"Button\n\nTerms: US\n\nBODY\nRnd 1: {words} (7)\nRnd 2: inc x 7 (14)\n")
    assert counts(report) == [7, 14]


def test_a_ring_and_its_chain_in_a_line_of_their_own() -> None:
    """The chain is the first round's, and the ring is still there to be worked into."""
    report = check(
        "Cap\n\nTerms: US\n\nCROWN\nMR, ch 2 (does not count as a st throughout).\n"
        "Rnd 1: 9 hdc in ring, join, ch 2. (9)\nRnd 2: 2 hdc in each st around, join, ch 2. (18)\n"
    )
    assert counts(report) == [9, 18]
    assert not corrections(report)


def test_counts_that_only_follow_a_stop() -> None:
    """A number alone at a row's end is its count; rows said once more in brackets are not."""
    report = check(
        "Peg\n\nTerms: US\n\nARM\nRound 1. 6 sc into the magic ring. 6\nRound 2. *1 sc, 2 sc in the next st*, repeat 3 times. 9\n"
        "Rounds 3 to 5. 9 sc in each round. 9\nR6-R7: sc around (9) [2 rounds]\n"
    )
    assert counts(report) == [6, 9, 9, 9, 9, 9, 9]
    assert outcomes(report) == ["agrees"] * 7


def test_a_note_that_names_the_chain_stands_anywhere_in_its_row() -> None:
    """ "hdc across (ch 2 does not count)" says it of the beginning chain."""
    report = check(
        "Strip\n\nTerms: US\n\nBAND\nRow 1: Fhdc 12, turn. (12)\nRow 2: Ch 2, hdc in each st across (ch 2 does not count as a st), turn. (12)\n"
    )
    assert counts(report) == [12, 12]
    assert "turning-chain-unsaid" not in {finding.rule for finding in report.findings}


@pytest.mark.parametrize(
    ("left", "right"),
    [
        ("turn, leave rem sts unworked.", "Skip the center 10 sts of Row 1, join yarn in next st."),
        ("turn and work on these sts only.", "With RS facing, skip next 10 sts, join yarn in next st."),
        ("turn, working on these 12 sts only.", "Leave centre 10 sts unworked and rejoin yarn in next st."),
    ],
)
def test_the_second_shoulder_begins_beside_the_first(left: str, right: str) -> None:
    """Twelve stitches each side of ten: yarn joined in a line of its own opens the row after it, on what was left."""
    report = check(
        "Slipover\n\nTerms: US\n\nFRONT\nRow 1: Fsc 34, turn. (34)\nFirst shoulder\n"
        f"Row 2: Ch 1, sc in first 12 sts, {left} (12)\nRow 3: Ch 1, sc2tog, sc across. (11)\nFasten off.\nSecond shoulder\n{right}\n"
        "Row 2: Ch 1, sc in same st, sc across, turn. (12)\nRow 3: Ch 1, sc to last 2 sts, sc2tog. (11)\n"
    )
    assert counts(report) == [34, 12, 11, 12, 11]
    assert not corrections(report)


def test_a_chain_said_not_to_count_does_not_count_on_the_next_rows() -> None:
    """ "hdc2tog, hdc to end" comes to one less either way; it does not make the chain a stitch."""
    report = check(
        "Flap\n\nTerms: US\n\nFLAP\nRow 1: Fhdc 12, turn. (12)\nRow 2: Ch 2 (does not count), hdc2tog, hdc to end, turn. (11)\n"
        "Row 3: Ch 2, hdc2tog, hdc to end, turn. (10)\nRow 4: Ch 2, hdc in each of next 10 sts. (10)\n"
    )
    assert counts(report) == [12, 11, 10, 10]
    assert not corrections(report)


def test_thumb_worked_out_of_skipped_stitches() -> None:
    """Yarn joined in a skipped stitch: the round does not lie on the last round of the hand."""
    report = check(
        "Mitts\n\nTerms: US\n\nHAND\nRnd 1: Fsc 20, join. (20)\n"
        "Rnd 2: Ch 1, sc in first 7 sts, ch 2, skip next 6 sts, sc in last 7 sts, join. (14 sc, 1 ch-2 sp)\n"
        "Rnd 3: Ch 1, sc in each st and each ch, join. (16)\nTHUMB\nJoin yarn in first skipped st of Rnd 2.\n"
        "Rnd 1: Ch 1, sc in each of 6 skipped sts, 2 sc in ch-2 sp. (8)\nRnds 2-4: Sc around. (8)\n"
    )
    assert counts(report) == [20, 14, 16, 8, 8, 8, 8]
    assert not corrections(report)


@pytest.mark.parametrize(
    "seam",
    [
        "Sl st the last row to the foundation chain to make a tube.",
        "Sl st the short ends together.",
        "Sc both edges together to close.",
    ],
)
def test_a_seam_is_no_part_of_the_row_above_it(seam: str) -> None:
    """A sentence that joins edges makes no stitches of a row."""
    report = check(
        f"Cuff\n\nTerms: US\n\nCUFF\nRow 1: Fsc 8, turn. (8)\nRows 2-5: Ch 1, sc across, turn. (8)\n{seam}\n"
    )
    assert counts(report) == [8] * 5


def test_short_rows_under_their_heading_need_no_words() -> None:
    """In a heel that turns, rows turn before their end; elsewhere that is asked about."""
    rows = "Row 2: Ch 1, sc in next 7 sts, sc2tog, turn. (8)\nRow 3: Ch 1, sc in next 4 sts, sc2tog, turn. (5)\n"
    under = check(f"Sock\n\nTerms: US\n\nHEEL TURN\nRow 1: Fsc 12, turn. (12)\n{rows}")
    elsewhere = check(f"Sock\n\nTerms: US\n\nFLAP\nRow 1: Fsc 12, turn. (12)\n{rows}")
    assert "places-left-over" not in {finding.rule for finding in under.findings}
    assert "places-left-over" in {finding.rule for finding in elsewhere.findings}


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Join in other leg with inc, sc 8, inc in next st of second leg, sc 8.", 20),
        ("Sc in first leg, sc in next 8 sts, sc in each of next 9 sts of second leg.", 18),
        ("9 sc around first leg, ch 2, 9 sc around second leg, 2 sc along the other side of the chain.", 20),
    ],
)
def test_legs_joined_by_other_words(words: str, made: int) -> None:
    """Nine stitches a leg: after a stitch in the other leg, the run goes on there."""
    report = check(
        "Bear\n\nTerms: US\n\nLEG (make 2)\nRnd 1: 9 sc in MR. (9)\nRnds 2-4: Sc around. (9)\n"
        f"Fasten off the first leg. Do not fasten off the second leg.\nBODY\nRnd 5: {words}\n"
    )
    assert counts(report)[-1] == made
    assert not corrections(report)


def test_rows_from_the_nth_chain() -> None:
    """ "sc from 2nd ch" runs along the chain; an edge told by the body part takes its number from the words."""
    report = check(
        "Bow\n\nTerms: US\n\nBOW\nRow 1: Chain 15, turn, sc from 2nd ch (14)\nRow 2: Ch 1, turn, sc all (14)\n"
        "Neck edging: sc 20 across back neck.\n"
    )
    assert counts(report) == [14, 14, 20]
