"""Rows told once for every other number, and names of sizes with a noun behind them."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts, outcomes

_SCARF = """US terms
SCARF
Ch 21.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across. (20 sc)
{label} Ch 1, turn, sc in each st across. (20 sc)
Row 3: Ch 3 (counts as dc), turn, sk first st, dc in each st across. (20 dc)
Row 5: Ch 1, turn, sc2tog, sc in each st across. ({last} sc)
"""


@pytest.mark.parametrize(
    "label",
    [
        "Row 2 and all even rows:",
        "Row 2 and all even-numbered rows:",
        "Row 2 (and all WS rows):",
        "Row 2 and every alternate row:",
    ],
)
def test_every_other_row_is_worked_between(label: str) -> None:
    """The even rows lie under the odd ones that are printed, and nothing is said to be left out."""
    report = check(_SCARF.format(label=label, last=19))
    assert counts(report) == [20, 20, 20, 20, 19]
    assert all_findings(report, ("correction", "query")) == []
    assert outcomes(check(_SCARF.format(label=label, last=18)))[-1] == "differs"


def test_so_many_rows_in_all_says_again_how_many() -> None:
    """ "Rep Rows 2 and 3 twice more, 7 rows in all" works four rows."""
    text = _SCARF.format(label="Row 2:", last=19).split("Row 5")[0]
    report = check(text + "Rep Rows 2 and 3 twice more, 7 rows in all.\n")
    assert [made for made in counts(report)] == [20, 20, 20]
    assert len([row for row in report.ledger.rows if row.cells[0].made is not None]) == 8


@pytest.mark.parametrize("words", ["small (medium, large) hand", "S (M, L) head", "Small, Medium, Large"])
def test_names_of_sizes_with_a_noun_behind(words: str) -> None:
    """ "To fit: small (medium, large) hand" are three sizes."""
    text = f"Mitten\nUS terms\nTo fit: {words}\n\nCh 21 (25, 29).\nRow 1: Sc in 2nd ch from hook and in each ch across. 20 (24, 28) sc.\n"
    report = check(text)
    assert len(report.pattern.sizes) == 3
    assert [counts(report, size) for size in range(3)] == [[20], [24], [28]]


def test_the_last_size_may_be_a_word_for_people() -> None:
    """ "Baby (Toddler) Child" are three."""
    report = check(
        "Hat\nUS terms\nSizes: Baby (Toddler) Child\n\nCh 21 (25) 29.\nRow 1: Sc in 2nd ch from hook and in each ch. 20 (24) 28 sc.\n"
    )
    assert len(report.pattern.sizes) == 3


def test_a_bracket_for_one_size_inside_a_row() -> None:
    """ "(for size L only: sc in next 4 sts)" is worked by that size, and the others pass it."""
    text = "Mitt\nUS terms\nSizes: S (M, L)\n\nCh 21 (25, 29).\nRow 1: Sc in 2nd ch from hook and in each ch across. 20 (24, 28) sc.\n"
    text += "Row 2: Ch 1, turn, sc in next 8 sts, (for size L only: 2 sc in each of next 4 sts,) sc to end. 20 (24, {}) sc.\n"
    report = check(text.format(32))
    assert [counts(report, size)[-1] for size in range(3)] == [20, 24, 32]
    assert outcomes(check(text.format(28)), 2)[-1] == "differs"
    assert outcomes(check(text.format(28)), 0)[-1] == "agrees"
