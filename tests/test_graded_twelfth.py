"""Rows told by number and run, stitches left in brackets, free loops of chains, pick-ups, tubes; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_SOCK = "Test sock\nUS terms\n\nSOCK\nCh 24, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (24 sc)\n{}\n"


def _made(text: str) -> list[int | None]:
    return [row.cells[0].made and row.cells[0].made.stitches for row in check(text).ledger.rows]


@pytest.mark.parametrize(
    "words",
    [
        "Crochet 3 rounds with 1 sc in each sc.",
        "Work 3 more rnds of 1 sc in each st around.",
        "Work 3 rounds, working sc in each st around. (24 sc)",
    ],
)
def test_so_many_rounds_with_one_run(words: str) -> None:
    """Each of them has a stitch in each."""
    assert _made(_SOCK.format(words))[2:] == [24, 24, 24]


@pytest.mark.parametrize(
    "words", ["Crochet 3 rounds with 2 sc in each sc.", "Work 3 rows of sc in each st, inc 1 st somewhere."]
)
def test_rounds_of_which_more_is_said(words: str) -> None:
    """Two in each, or shaping besides, is not that run: nothing is made up."""
    assert _made(_SOCK.format(words))[-1] is None


_HEEL = "Test heel\nUS terms\n\nHEEL\nCh 17.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (16 sc)\nRow 2: Ch 1, sc in next 11 sc, {}\n"


@pytest.mark.parametrize("told", ["turn (5 sc left unworked). (11 sc)", "turn. (5 sts remain unworked) (11 sc)"])
def test_what_is_left_in_brackets(told: str) -> None:
    """What a bracket says to be left is left on purpose, and is no count."""
    report = check(_HEEL.format(told))
    assert "places-left-over" not in {finding.rule for finding in report.findings}
    assert report.ledger.rows[-1].cells[0].outcome.value == "agrees"


def test_a_count_in_brackets_leaves_nothing() -> None:
    """A figure without the word for what is left counts the row."""
    report = check(_HEEL.format("turn. (5 sc)"))
    assert "places-left-over" in {finding.rule for finding in report.findings}
    assert report.ledger.rows[-1].cells[0].outcome.value == "differs"


_NECK = _SOCK.format("Rnd 2: Ch 1, sc in each sc around, join. Fasten off.") + "\nEDGING\n{}\nRnd 1: Ch 1, {}, join.\n"


@pytest.mark.parametrize(
    ("joined", "words", "made"),
    [
        ("Join yarn in free loop of first foundation ch.", "sc in free loop of each ch around", 24),
        ("Join yarn at the neck.", "sc in free loops of foundation ch around", 24),
        ("Join yarn at the neck.", "sc in free loop of each ch around", None),
    ],
)
def test_free_loops_of_chains(joined: str, words: str, made: int | None) -> None:
    """All chains of the foundation where it is named, here or where yarn is joined; else it may be any chain."""
    assert _made(_NECK.format(joined, words))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rnd 1: Ch 1, pick up and sc 30 sts evenly around armhole, join.", 30),
        ("Rnd 1: Ch 1, pick up and work 30 sc evenly around the neck, join.", 30),
        ("Row 1: Ch 1, 5 sc along neck sts, 8 sc up side of neck, 12 sc across back neck sts, turn.", 25),
        ("Rnd 1: Ch 1, pick up and knit 30 sts around armhole, join.", None),
    ],
)
def test_stitches_picked_up(words: str, made: int | None) -> None:
    """ "Pick up and sc" is sc along that edge; what is knitted is not crocheted."""
    assert _made(_SOCK.format("Fasten off.") + f"\nBAND\nJoin yarn at the seam.\n{words}\n")[-1] == made


def test_a_cuff_closed_with_its_chain() -> None:
    """The last row held against the beginning chain makes a tube: its row ends go round."""
    text = (
        "Test cuff\nUS terms\n\nCUFF\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\n"
        "Rows 2-20: Ch 1, sc in each st across, turn.\nHold the last row against the starting chain and sl st through both layers.\n\n"
        "HAND\nRnd 1: Ch 1, sc in each row end around, join.\n"
    )
    assert _made(text)[-1] == 20


_BACK = (
    "Test vest\nUS terms\n\nBACK\n\nRibbing\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\n"
    "Rows 2-20: Ch 1, sc in each st across, turn. (6 sc)\n\nMain Panel\nRow 1: Ch 1, sc in each row end across, turn. (20 sc)\n"
    "Rows 2-12: Ch 1, sc in each st across, turn. (20 sc)\n\nFRONT\n{}\n"
)


def test_a_row_of_which_section() -> None:
    """Two sections have a Row 10: up to which of them is not said, and not made up."""
    assert _made(_BACK.format("Work same as Back through Row 10."))[-1] is None


@pytest.mark.parametrize("words", ["Work same as Ribbing through Row 10.", "Work as for Ribbing to end of Row 10."])
def test_through_a_row(words: str) -> None:
    """ "Through Row 10" is up to its end."""
    assert _made(_BACK.format(words))[-10:] == [6] * 10
