"""Words of graded garments: hooks by number, rows called by their sort, pieces named before their stitches.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

FLAT = "Band\n\nUS terms\n\nBAND\nRow 1: Fsc 18, turn. (18 sc)\n"


@pytest.mark.parametrize("words", ["Using No. 4.50 hook, make 16 ch.", "With No. 4 hook make 16 ch."])
def test_a_hook_by_its_number(words: str) -> None:
    """The stop behind "No" ends no sentence, and the chain is made."""
    text = f"Band\n\nUS terms\n\nBAND\n{words}\nRow 1: Sc in 2nd ch from hook and in each ch to end, turn.\n"
    assert counts(check(text)) == [15]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rep 2nd and 3rd eyelet rows once more.", 20),
        ("Rep last 2 eyelet rows.", 20),
        ("Repeat [Rows 2-3] once more.", 20),
        ("Rep 2nd and 3rd cuff rows.", None),
    ],
)
def test_rows_called_by_their_sort(words: str, made: int | None) -> None:
    """The rows of that sort; rows of another sort are not taken for them."""
    text = (
        "Band\n\nUS terms\n\nBAND\n1st eyelet row: Fsc 18, turn. (18 sc)\n"
        "2nd eyelet row: Ch 1, 2 sc in first sc, sc in each sc to end, turn.\n3rd eyelet row: Ch 1, sc in each sc, turn.\n"
    )
    assert counts(check(text + "4th and 5th eyelet rows: " + words + "\n"))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in each st to last 5 sts, turn and leave these 5 sts", 13),
        ("sc in next 13 sts, turn, leave these sts", None),
        ("sc in next 7 sts, skip 4 body sts, sc in last 7 sts", 14),
        ("sc in each sc across body, turn", 18),
        ("sc in each sc across sleeve, sc in each sc across body, turn", None),
    ],
)
def test_stitches_told_by_the_piece(words: str, made: int | None) -> None:
    """What may be meant in two ways stays uncounted."""
    assert counts(check(FLAT + f"Row 2: Ch 1, {words}.\n"))[-1] == made


def test_a_chain_that_nobody_told() -> None:
    """A row counted from the hook on a row of stitches is not counted: where its chain comes from is not known."""
    text = (
        FLAT
        + "At the end of the last row, ch 9 for the sleeve, turn.\nRow 2: Dc in 4th ch from hook and in each ch, dc in each sc, turn.\n"
    )
    assert counts(check(text))[-1] is None


def test_a_gloss_on_the_chains_missed() -> None:
    """ "(3 ch = 1 dc)" behind the first stitch tells what the chains missed stand for."""
    text = "Band\n\nUS terms\n\nBAND\nCh 17.\nRow 1: Dc in 4th ch from hook (3 ch = 1 dc), dc in each ch to the end.\n"
    assert counts(check(text)) == [15]


def test_a_numbered_note_defines_a_stitch() -> None:
    """The number in front of a note, and what is said behind the bracket, are no part of the stitch."""
    text = "Yoke\n\nUS terms\n\nNOTES\n1. A wedge is (dc, ch 1, dc). In later rows it goes in the space.\n\nYOKE\n"
    rows = "Row 1: Fsc 9, turn. (9 sc)\nRow 2: Ch 2 (does not count as a st), dc in next 4 sc, wedge in next sc, dc in last 4 sc, turn.\n"
    assert counts(check(text + rows)) == [9, 10]


def test_another_of_the_same() -> None:
    """ "Make a second mitt" behind the last row takes nothing from its count; more rows of this one do."""
    last = "Row 2: Ch 1, sc in each sc, turn.\nFasten off. {}\n"
    assert counts(check(FLAT + last.format("Make a second mitt.")))[-1] == 18
    assert counts(check(FLAT + last.format("Make another row of sc.")))[-1] is None


def test_a_row_on_a_longer_chain_lacks_no_turning_chain() -> None:
    """The chain stands at the end of the row before."""
    text = (
        FLAT
        + "Row 2: Ch 1, sc in each sc, ch 6, turn.\nRow 3: Sc in 2nd ch from hook and in next 4 ch, sc in each sc, turn.\n"
    )
    report = check(text)
    assert counts(report)[-1] == 23
    assert not any(rule == "turning-chain-missing" for rule, _ in all_findings(report))
